"""How much current a dead short passes, at most and at least.

In scope: direct current from one bank through a two-conductor run of copper; a bolted short.
Out of scope: an arcing short, which passes less; chargers and alternators that feed the short too;
aluminium. Highest figures take the source at its best and cold copper, lowest ones the opposite.
The source is in `fault_source`, what the conductor takes in `withstand`, the fuse in `clearing`.
"""

from dataclasses import dataclass, replace
from functools import cache
from math import exp
from typing import Annotated

from calc.electrical import fuses
from calc.electrical.conductors import at_temperature
from calc.electrical.drop import loop_resistance
from calc.electrical.fault_source import ShortSource
from calc.electrical.run import Run, RunResult, run_of
from calc.electrical.withstand import Withstand, withstand_of, withstand_time
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import NotCovered
from calc.units.si import (
    Amperes,
    Celsius,
    Count,
    Henries,
    Number,
    Ohms,
    OhmsPerMetre,
    Share,
    ShortSeconds,
    Tag,
    Volts,
)

# In ohm·m, at the temperature below: IEC 60028
ANNEALED_RESISTIVITY: Annotated[float, Tag("resistivity of annealed copper")] = 1 / 58e6
# IEC 60028
ANNEALED_AT: Annotated[Celsius, Tag("temperature of annealed copper's resistivity")] = 20.0
# 1 − e⁻³ is 95 %
SETTLED: Annotated[Number, Tag("time constants to 95 %")] = 3.0
# Our choice: what a fast fuse may see
EARLY: Annotated[ShortSeconds, Tag("time after which a rising short is told")] = 0.001
# Common practice, no source
CHARGE_TO_REST_RATIO: Annotated[Number, Tag("highest charging voltage against that at rest")] = 1.2


@dataclass(frozen=True, kw_only=True)
class SolidRun:
    """A run at its least: solid annealed copper of the named area, out and back.

    `stated` is its resistance per length at `ANNEALED_AT`, `per_length` that when cold.
    """

    stated: OhmsPerMetre
    per_length: OhmsPerMetre
    resistance: Ohms

    @property
    def reference(self) -> Celsius:
        """The temperature for which the resistivity stands."""
        return ANNEALED_AT


@dataclass(frozen=True, kw_only=True)
class FaultLevel:
    """A bolted short: the `current` that `voltage` drives round a `loop`, its `source` in it.

    `interrupting_class` is the smallest published class that breaks it, None beyond all of them.
    `withstand` is how long the conductor of the run takes it.
    """

    voltage: Volts
    source: Ohms
    loop: Ohms
    current: Amperes
    interrupting_class: Amperes | None
    withstand: ShortSeconds


@dataclass(frozen=True, kw_only=True)
class Rise:
    """How fast the highest short rises in a loop of some `inductance`.

    `settled` is when it has come to 95 %, `early` what flows after a millisecond. Fuses for such a
    current are `tested_at` this time constant or more.
    """

    inductance: Henries
    time_constant: ShortSeconds
    settled: ShortSeconds
    early: Amperes
    tested_at: ShortSeconds


@dataclass(frozen=True, kw_only=True)
class ShortCircuit:
    """Every short of a run from a bank: the highest at its two ends, and the lowest.

    `laid` is the run by the table, cold; `least` the same at its least; `warm` and `hot` are one
    conductor each way, at work and at the end of a short. `joint` is one of so many `joints`;
    `ageing` is the share by which source and joints have grown worse, `empty` that of the voltage
    which an empty bank has left, `max_voltage` the highest on the circuit, which is taken from that
    at rest where it is not known.

    `far` and `near` are the highest shorts, at the far end and right at the source. The lowest, at
    the far end, falls from `lowest_start` to `lowest` as the copper heats; `loop` is by the table.
    """

    source: ShortSource
    laid: RunResult
    least: SolidRun
    warm: RunResult
    hot: RunResult
    joints: Count
    joint: Ohms
    ageing: Share
    empty: Share
    max_voltage: Volts
    max_voltage_known: bool
    loop: Ohms
    withstand: Withstand
    far: FaultLevel
    near: FaultLevel
    lowest: FaultLevel
    lowest_start: FaultLevel
    rise: Rise | None

    @property
    def breaking(self) -> tuple[tuple[str, Amperes, bool], ...]:
        """Kinds of fuse by what they break at the bank's highest voltage, the least first.

        Each with whether only memory says so.
        """
        voltage = self.max_voltage
        return tuple(
            (family.name, breaks, family.from_memory(voltage, breaks))
            for family, breaks in fuses.by_breaking(voltage)
        )

    @property
    def joints_total(self) -> Ohms:
        """All joints of the loop, new and clean."""
        return self.joints * self.joint

    @property
    def charge_to_rest(self) -> Number:
        """What the highest voltage is taken as, against that at rest, where it is not known."""
        return CHARGE_TO_REST_RATIO

    @property
    def overheated(self) -> bool:
        """Whether the copper is hotter than its insulation takes, before there is a short."""
        return not at_most(self.laid.run.temperature, self.withstand.insulation.initial)


def least_resistance(*, area: float) -> float:
    """Return the resistance [ohm/m] at `ANNEALED_AT` of solid annealed copper of `area` [m²].

    No stranded conductor of that area resists less; tables hold the most that is permitted, or an
    average. Source: IEC 60028.
    """
    return ANNEALED_RESISTIVITY / area


def least_run(laid: RunResult) -> SolidRun:
    """Return the least that a run can resist, cold: what the highest short at its end is held by.

    Solid annealed copper of the named area, out and back. Source: IEC 60028.
    """
    run = laid.run
    stated = least_resistance(area=laid.copper.named_area)
    per_length = at_temperature(stated, ANNEALED_AT, run.temperature)
    return SolidRun(
        stated=stated,
        per_length=per_length,
        resistance=loop_resistance(run.length, per_length) / run.parallel,
    )


def bolted(*, voltage: float, source: float, rest: float) -> float:
    """Return the bolted short [A] that `voltage` [V] drives through `source` and `rest` [ohm].

    Both are of its loop. Ohm's law.
    """
    return voltage / (source + rest)


@cache
def classes() -> tuple[float, ...]:
    """Return the published classes of interrupting rating [A], smallest first."""
    return tuple(sorted(float(row["class_a"]) for row in table("interrupting_classes").rows))


def interrupting_class(current: float) -> float | None:
    """Return the smallest published class [A] that can break `current` [A], or None beyond."""
    return next((one for one in classes() if at_least(one, current)), None)


def current_after(*, current: float, time: float, time_constant: float) -> float:
    """Return the current [A] of a rising short after `time` [s]: i = I (1 − e^(−t/τ)), τ = L/R.

    `time_constant` [s]. Inductance slows a short; it does not lower what it comes to.
    """
    return current * (1 - exp(-time / time_constant))


@cache
def _tested() -> tuple[tuple[float, float], ...]:
    return tuple(
        (float(row["from_a"]), float(row["time_constant_s"]))
        for row in table("fuse_test_time_constants").rows
    )


def tested_time_constant(current: float) -> float:
    """Return the time constant [s] at which d.c. fuses are tested to break `current` [A].

    30 CFR 28.41(b), "or more" of each row. In a slower circuit the arc has more to feed on.
    """
    return max(constant for least, constant in _tested() if at_least(current, least))


def fault_level(*, voltage: float, source: float, rest: float, withstand: Withstand) -> FaultLevel:
    """Return the bolted short that `voltage` [V] drives through `source` and the `rest` [ohm].

    Both are of its loop. Ohm's law; `withstand` is the conductor's.
    """
    current = bolted(voltage=voltage, source=source, rest=rest)
    return FaultLevel(
        voltage=voltage,
        source=source,
        loop=source + rest,
        current=current,
        interrupting_class=interrupting_class(current),
        withstand=withstand_time(let_through=withstand.let_through, current=current),
    )


def short_circuit(
    *,
    source: ShortSource,
    run: Run,
    insulation_name: str,
    joints: float,
    joint: float,
    ageing: float,
    empty: float,
    max_voltage: float | None,
    inductance: float | None,
) -> ShortCircuit:
    """Return every short of a `run` from a bank.

    The run's own temperature is the coldest that it is met with. `joint` [ohm] is one of so many
    `joints` in the loop; `ageing` [0..] is the share by which source and joints have grown worse,
    `empty` [0..1] that of the voltage that an empty bank has left, `max_voltage` [V] the highest
    on the circuit, None where it is not known, `inductance` [H] that of the loop.
    Raises NotCovered for a highest voltage below that at rest, and for an unknown name.
    """
    if max_voltage is not None and not at_least(max_voltage, source.voltage):
        raise NotCovered("max_voltage", f"must be {source.voltage:g} V or more: the bank at rest.")
    laid = run_of(run)
    withstand = withstand_of(insulation_name=insulation_name, area=laid.copper.area)
    around = withstand.insulation
    # one of several may lie alone, come off its stud: the lowest short is through one each way
    warm = run_of(replace(run, temperature=around.initial, parallel=1.0))
    hot = run_of(replace(run, temperature=around.final, parallel=1.0))
    least = least_run(laid)
    clean = joints * joint
    best, worn = source.resistance.low, source.resistance.high * (1 + ageing)
    worn_joints = clean * (1 + ageing)
    far = fault_level(
        voltage=source.voltage, source=best, rest=least.resistance + clean, withstand=withstand
    )
    lowest, lowest_start = (
        fault_level(
            voltage=empty * source.voltage,
            source=worn,
            rest=worn_joints + copper.resistance,
            withstand=withstand,
        )
        for copper in (hot, warm)
    )
    return ShortCircuit(
        source=source,
        laid=laid,
        least=least,
        warm=warm,
        hot=hot,
        joints=joints,
        joint=joint,
        ageing=ageing,
        empty=empty,
        max_voltage=CHARGE_TO_REST_RATIO * source.voltage if max_voltage is None else max_voltage,
        max_voltage_known=max_voltage is not None,
        loop=best + laid.resistance + clean,
        withstand=withstand,
        far=far,
        near=fault_level(voltage=source.voltage, source=best, rest=0.0, withstand=withstand),
        lowest=lowest,
        lowest_start=lowest_start,
        rise=rise(inductance, far) if inductance is not None else None,
    )


def rise(inductance: float, level: FaultLevel) -> Rise:
    """Return how fast the short `level` rises in a loop of `inductance` [H]: τ = L/R."""
    time_constant = inductance / level.loop
    return Rise(
        inductance=inductance,
        time_constant=time_constant,
        settled=SETTLED * time_constant,
        early=current_after(current=level.current, time=EARLY, time_constant=time_constant),
        tested_at=tested_time_constant(level.current),
    )

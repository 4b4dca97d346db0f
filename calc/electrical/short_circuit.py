"""How much current a dead short passes, and how long a copper conductor withstands it.

In scope: direct current from one bank through a two-conductor run of copper; a bolted short.
Out of scope: an arcing short, which passes less; chargers and alternators that feed the short too;
aluminium. Highest figures take the source at its best and cold copper, lowest ones the opposite.
What the fuse of the run does is in `clearing`.
"""

from dataclasses import dataclass, replace
from functools import cache
from math import exp, log, sqrt
from typing import Annotated

from calc.electrical.conductors import COPPER_ZERO_RESISTANCE, at_temperature
from calc.electrical.drop import loop_resistance
from calc.electrical.run import Run, RunResult, run_of
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Amperes,
    AmpereSquaredSeconds,
    Celsius,
    Coulombs,
    Count,
    Henries,
    Number,
    Ohms,
    OhmsPerMetre,
    PerSecond,
    Share,
    ShortCircuitCoefficient,
    ShortSeconds,
    SquareMetres,
    Tag,
    Volts,
)

# IEC 60949 and the annex of IEC 60364-5-54
K_COPPER: Annotated[ShortCircuitCoefficient, Tag("constant of k of copper")] = 226e6
# Beyond it heat leaves the conductor meanwhile: BS 7671 434.5.2
ADIABATIC_LIMIT: Annotated[ShortSeconds, Tag("longest short that keeps its heat")] = 5.0
ANNEALED_RESISTIVITY = 1 / 58e6  # ohm·m of copper at the temperature below: IEC 60028
ANNEALED_AT: Annotated[Celsius, Tag("temperature of annealed copper's resistivity")] = 20.0
# 1 − e⁻³ is 95 %
SETTLED: Annotated[Number, Tag("time constants to 95 %")] = 3.0
EARLY: Annotated[ShortSeconds, Tag("time after which a rising short is told")] = 0.001
# Common practice, no source
CHARGE_TO_REST_RATIO: Annotated[Number, Tag("highest charging voltage against that at rest")] = 1.2


class SourceKnown(Enumeration):
    """How the resistance of a source is known."""

    MAKER = "maker"
    TWO_READINGS = "two-readings"
    ESTIMATE = "estimate"


@dataclass(frozen=True, kw_only=True)
class OhmsRange:
    """A resistance that is not known better than from `low` to `high`."""

    low: Ohms
    high: Ohms


@dataclass(frozen=True, kw_only=True)
class TwoReadings:
    """A source's voltage without load and under `current`, each read with an `error`."""

    open_voltage: Volts
    loaded_voltage: Volts
    current: Amperes
    error: Volts

    @property
    def sag(self) -> Volts:
        """What the load pulls the voltage down by."""
        return self.open_voltage - self.loaded_voltage

    @property
    def off(self) -> Volts:
        """What both readings may be off together."""
        return 2 * self.error


@dataclass(frozen=True, kw_only=True)
class Estimate:
    """A lead-acid battery of `capacity`, whose short-circuit current goes by its type alone."""

    chemistry: str
    capacity: Coulombs
    per_capacity: "PerCapacity"


@dataclass(frozen=True, kw_only=True)
class ShortSource:
    """A bank as the source of a short: `strings` side by side of `series` batteries each.

    `voltage` is the bank's, at rest and full. `one` is the resistance of what is known, a battery
    or a string, `resistance` that of the bank; `maker_current` tells that the maker states a
    short-circuit current. What it is known from is in `readings` or `estimate`, else None.
    """

    voltage: Volts
    known: SourceKnown
    strings: Count
    series: Count
    one: OhmsRange
    resistance: OhmsRange
    maker_current: bool
    readings: TwoReadings | None
    estimate: Estimate | None

    @property
    def usual_low(self) -> Amperes | None:
        """Where the usual band of an estimate begins; None without one."""
        one = self.estimate
        return one.per_capacity.low * one.capacity * self.strings if one else None

    @property
    def usual_high(self) -> Amperes | None:
        """Where the usual band of an estimate ends; None without one."""
        one = self.estimate
        return one.per_capacity.usual * one.capacity * self.strings if one else None

    @property
    def capacity(self) -> Coulombs | None:
        """The capacity of all its strings, None where it was not asked."""
        return self.estimate.capacity * self.strings if self.estimate else None


@dataclass(frozen=True)
class Insulation:
    """A conductor's insulation: its copper's temperatures at work and after a short.

    `printed` is the k that a list prints, in A·√s/mm², or None; `listed` tells that the end
    temperature stands in a text for this very insulation.
    """

    name: str
    label: str
    initial: Celsius
    final: Celsius
    printed: float | None
    listed: bool


@dataclass(frozen=True, kw_only=True)
class Withstand:
    """What a short may heat a conductor with: `area` of copper in its `insulation`.

    `k` is the coefficient of both; `let_through` the I²t that brings it to its end temperature.
    """

    insulation: Insulation
    area: SquareMetres
    k: ShortCircuitCoefficient
    let_through: AmpereSquaredSeconds

    @property
    def constant(self) -> ShortCircuitCoefficient:
        """The constant of copper that k is worked from."""
        return K_COPPER


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


@cache
def insulations() -> tuple[Insulation, ...]:
    """Return the insulations with published end temperatures."""
    return tuple(
        Insulation(
            row["insulation"],
            row["label"],
            float(row["initial_c"]),
            float(row["final_c"]),
            float(row["printed_k"]) if row["printed_k"] else None,
            row["confidence"] != "computed",
        )
        for row in table("k_values").rows
    )


def insulation(name: str) -> Insulation:
    """Return the insulation `name`. Raises NotCovered."""
    for one in insulations():
        if one.name == name:
            return one
    names = ", ".join(one.name for one in insulations())
    raise NotCovered("insulation", f"must be one of: {names}; not {name!r}.")


def heat_coefficient(*, initial: float, final: float) -> float:
    """Return k [A·√s/m²] of copper that a short heats from `initial` to `final` [°C].

    k = 226 √(ln((234.5 + Tf)/(234.5 + Ti))) A·√s/mm², IEC 60949 and the annex of IEC 60364-5-54.
    Adiabatic: all heat stays in the copper. `final` is above `initial`.
    """
    return K_COPPER * sqrt(
        log((final - COPPER_ZERO_RESISTANCE) / (initial - COPPER_ZERO_RESISTANCE))
    )


def least_resistance(*, area: float) -> float:
    """Return the resistance [ohm/m] at `ANNEALED_AT` of solid annealed copper of `area` [m²].

    No stranded conductor of that area resists less; tables hold the most that is permitted, or an
    average. Source: IEC 60028.
    """
    return ANNEALED_RESISTIVITY / area


def joule_integral(*, k: float, area: float) -> float:
    """Return the I²t [A²·s] that brings a conductor of `area` [m²] to its end temperature."""
    return (k * area) ** 2


def withstand_time(*, let_through: float, current: float) -> float:
    """Return the time [s] in which `current` [A] brings a conductor to its end temperature.

    `let_through` [A²·s] does so. t = k²S²/I², BS 7671 543.1.3 and 434.5.2, for t up to 5 s; beyond,
    it errs to the safe side.
    """
    return let_through / current**2


def from_two_readings(
    *, open_voltage: float, loaded_voltage: float, current: float, error: float
) -> OhmsRange:
    """Return the resistance of a source whose voltage sags under a load of `current` [A].

    R = ΔV/I, each reading [V] being off by no more than `error` [V]. Raises NotCovered where the
    sag is lost in the error: any resistance, and so any fault current, would fit.
    """
    sag, off = open_voltage - loaded_voltage, 2 * error
    if sag <= 0:
        raise NotCovered("loaded_voltage", "must be below the voltage without load.")
    if at_least(off, sag):
        raise NotCovered(
            "loaded_current",
            "must be larger: the sag is no more than your meter's error on two readings, "
            "so no resistance can be told from it.",
        )
    return OhmsRange(low=(sag - off) / current, high=(sag + off) / current)


@dataclass(frozen=True, kw_only=True)
class PerCapacity:
    """Short-circuit current against capacity: the least, the usual highest, and the most."""

    low: PerSecond
    usual: PerSecond
    most: PerSecond


@cache
def _by_capacity() -> dict[str, PerCapacity]:
    return {
        row["chemistry"]: PerCapacity(
            low=float(row["low_a_per_ah"]) / HOUR,
            usual=float(row["high_a_per_ah"]) / HOUR,
            most=float(row["most_a_per_ah"]) / HOUR,
        )
        for row in table("battery_short_circuit").rows
    }


def short_circuit_current_per_ah(chemistry: str) -> PerCapacity:
    """Return the short-circuit current for each ampere-hour, as current per capacity [1/s].

    Lead-acid only: k·C with k close to 10 and below 20 A for each A·h; another text goes up to 40,
    which is what a device must be able to break. Table `battery_short_circuit`.
    Raises NotCovered for lithium.
    """
    if chemistry not in _by_capacity():
        raise NotCovered(
            "chemistry",
            f"must be a lead-acid one to estimate from: no published figure fits {chemistry}. "
            "Look in its data sheet for the short-circuit current or the inner resistance; the "
            "limit of its BMS is neither. Ask the maker, or take two readings under load.",
        )
    return _by_capacity()[chemistry]


def parallel_strings(*, resistance: float, series: float, strings: float) -> float:
    """Return the resistance [ohm] of a bank of `strings` of `series` batteries, each alike.

    Currents of strings side by side add; batteries in series add resistance as well as voltage.
    """
    return resistance * series / strings


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


def short_source(
    *,
    voltage: float,
    known: SourceKnown,
    strings: float,
    series: float,
    maker_resistance: float | None,
    maker_current: float | None,
    readings: TwoReadings | None,
    chemistry: str,
    capacity: float,
) -> ShortSource:
    """Return a bank of `voltage` [V] as the source of a short, by what is `known` of it.

    MAKER: `maker_resistance` [ohm] or `maker_current` [A], when shorted, of one battery of `series`
    in each string. TWO_READINGS: `readings` of one string. ESTIMATE: by `chemistry` and `capacity`
    [A·s] of one string. Raises NotCovered for lithium that is to be estimated, for readings that
    tell nothing, and for an unknown name.
    """
    known = SourceKnown(known)
    estimate = None
    if known is SourceKnown.ESTIMATE:
        rates = short_circuit_current_per_ah(chemistry)
        estimate = Estimate(chemistry=chemistry, capacity=capacity, per_capacity=rates)
        one = OhmsRange(
            low=voltage / (rates.most * capacity), high=voltage / (rates.low * capacity)
        )
    elif known is SourceKnown.TWO_READINGS and readings is not None:
        one = from_two_readings(
            open_voltage=readings.open_voltage,
            loaded_voltage=readings.loaded_voltage,
            current=readings.current,
            error=readings.error,
        )
    elif maker_current is not None:
        one = OhmsRange(low=voltage / series / maker_current, high=voltage / series / maker_current)
    elif maker_resistance is not None:
        one = OhmsRange(low=maker_resistance, high=maker_resistance)
    else:
        raise NotCovered("source_resistance", "must be given, as a resistance or a current.")
    in_series = series if known is SourceKnown.MAKER else 1.0
    return ShortSource(
        voltage=voltage,
        known=known,
        strings=strings,
        series=in_series,
        one=one,
        resistance=OhmsRange(
            low=parallel_strings(resistance=one.low, series=in_series, strings=strings),
            high=parallel_strings(resistance=one.high, series=in_series, strings=strings),
        ),
        maker_current=maker_current is not None,
        readings=readings if known is SourceKnown.TWO_READINGS else None,
        estimate=estimate,
    )


def withstand_of(*, insulation_name: str, area: float) -> Withstand:
    """Return what a conductor of `area` [m²] of copper takes in its insulation. NotCovered."""
    around = insulation(insulation_name)
    k = heat_coefficient(initial=around.initial, final=around.final)
    return Withstand(insulation=around, area=area, k=k, let_through=joule_integral(k=k, area=area))


def fault_level(*, voltage: float, source: float, rest: float, withstand: Withstand) -> FaultLevel:
    """Return the bolted short that `voltage` [V] drives through `source` and the `rest` [ohm].

    Both are of its loop. Ohm's law; `withstand` is the conductor's.
    """
    current = voltage / (source + rest)
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
    stated = least_resistance(area=laid.copper.named_area)
    per_length = at_temperature(stated, ANNEALED_AT, run.temperature)
    least = SolidRun(
        stated=stated,
        per_length=per_length,
        resistance=loop_resistance(run.length, per_length) / run.parallel,
    )
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

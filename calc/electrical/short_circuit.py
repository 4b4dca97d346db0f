"""How much current a dead short passes, and how long a copper conductor bears it.

In scope: direct current from one bank through a two-conductor run of copper; a bolted short.
Out of scope: an arcing short, which passes less; chargers and alternators that feed the short too;
aluminium. Highest figures take the source at its best and cold copper, lowest ones the opposite.
"""

from dataclasses import dataclass
from functools import cache
from math import exp, log, sqrt
from typing import Annotated

from calc.electrical.conductors import COPPER_ZERO_RESISTANCE
from calc.tables import table
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.covered import NotCovered
from calc.units.si import (
    Celsius,
    Number,
    PerSecond,
    ShortCircuitCoefficient,
    ShortSeconds,
    Tag,
)

# IEC 60949 and the annex of IEC 60364-5-54
K_COPPER: Annotated[ShortCircuitCoefficient, Tag("constant of k of copper")] = 226e6
# Beyond it heat leaves the conductor meanwhile: BS 7671 434.5.2
ADIABATIC_LIMIT: Annotated[ShortSeconds, Tag("longest short that keeps its heat")] = 5.0
ANNEALED_RESISTIVITY = 1 / 58e6  # ohm·m of copper at the temperature below: IEC 60028
ANNEALED_AT: Annotated[Celsius, Tag("temperature of annealed copper's resistivity")] = 20.0
# Common practice, no source
CHARGE_TO_REST_RATIO: Annotated[Number, Tag("highest charging voltage against that at rest")] = 1.2


@dataclass(frozen=True)
class Range:
    """A figure that is not known better than from `low` to `high`."""

    low: float
    high: float


@dataclass(frozen=True)
class Insulation:
    """A conductor's insulation: its copper's temperatures [°C] at work and after a short.

    `printed` is the k that a list prints, in A·√s/mm², or None; `listed` tells that the end
    temperature stands in a text for this very insulation.
    """

    name: str
    label: str
    initial: float
    final: float
    printed: float | None
    listed: bool


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
    """Return the insulation `name`. Raises KeyError."""
    for one in insulations():
        if one.name == name:
            return one
    raise KeyError(name)


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


def withstand(*, energy: float, current: float) -> float:
    """Return the time [s] in which `current` [A] brings a conductor to its end temperature.

    t = k²S²/I², BS 7671 543.1.3 and 434.5.2, for t up to 5 s; beyond, it errs to the safe side.
    """
    return energy / current**2


def from_short_circuit_current(*, voltage: float, current: float) -> float:
    """Return the resistance [ohm] of a battery that passes `current` [A] when shorted."""
    return voltage / current


def from_two_readings(
    *, open_voltage: float, loaded_voltage: float, current: float, error: float
) -> Range:
    """Return the resistance [ohm] of a source whose voltage sags under a load of `current` [A].

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
    return Range((sag - off) / current, (sag + off) / current)


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

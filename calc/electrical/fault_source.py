"""The source of a short: how little resistance a bank has, by what is known of it.

In scope: batteries alike, in strings side by side. Out of scope: chargers and alternators.
"""

from dataclasses import dataclass
from functools import cache

from calc.tables import table
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Amperes, Coulombs, Count, Ohms, PerSecond, Volts


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
class PerCapacity:
    """Short-circuit current against capacity: the least, the usual highest, and the most."""

    low: PerSecond
    usual: PerSecond
    most: PerSecond


@dataclass(frozen=True, kw_only=True)
class Estimate:
    """A lead-acid battery of `capacity`, whose short-circuit current goes by its type alone."""

    chemistry: str
    capacity: Coulombs
    per_capacity: PerCapacity


@dataclass(frozen=True, kw_only=True)
class ShortSource:
    """A bank as the source of a short: `strings` side by side of `series` batteries each.

    `voltage` is the bank's, at rest and full. `one` is the resistance of what is known, a battery
    or a string, `resistance` that of the bank; `maker_current` tells that the maker states a
    short-circuit current. `each_fused` tells that each string has its own fuse at its post. What it
    is known from is in `readings` or `estimate`, else None.
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
    each_fused: bool = False

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

    Lead-acid only: k·C with k close to 10 and below 20 A for each Ah; another text goes up to 40,
    which is what a device must be able to break. Table `battery_short_circuit`.
    Raises NotCovered for lithium.
    """
    if chemistry not in _by_capacity():
        raise NotCovered(
            "chemistry",
            f"must be lead-acid for an estimate: no published value fits {chemistry}. "
            "Look in its data sheet for the short-circuit current or the inner resistance; the "
            "limit of its BMS is neither. Ask the maker, or take two readings under load.",
        )
    return _by_capacity()[chemistry]


def parallel_strings(*, resistance: float, series: float, strings: float) -> float:
    """Return the resistance [ohm] of a bank of `strings` of `series` batteries, each alike.

    Currents of strings side by side add; batteries in series add resistance as well as voltage.
    """
    return resistance * series / strings


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
    each_fused: bool = False,
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
        each_fused=each_fused,
    )

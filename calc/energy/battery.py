"""What a bank holds, gives, takes back and loses, by chemistry.

Peukert's law in rated-hours form, with capacity first corrected for cold; size of a bank with room
for ageing; efficiency, self-discharge and the temperatures at which it may be charged. In scope: a
healthy bank of one chemistry. Rested voltage is in `rested`, acceptance over time in `charging`.
"""

from functools import cache
from itertools import pairwise

from calc.tables import SEEN, table
from calc.units.compare import at_least, at_most

LEAD_ACID = ("AGM", "gel", "flooded")
CHEMISTRIES = ("LFP", *LEAD_ACID)
FROST_MARGIN = 3.0  # K, our choice
MONTH = 365.25 / 12 * 86400.0  # s
BASE_TEMPERATURE = 25.0  # °C, IEEE 485


@cache
def _cold_factors() -> tuple[tuple[float, float], ...]:
    rows = table("ieee485_temperature").rows
    return tuple(((float(row["temperature_f"]) - 32) * 5 / 9, float(row["factor"])) for row in rows)


def coldest() -> float:
    """Return the lowest temperature [°C] of the IEEE 485 table."""
    return _cold_factors()[0][0]


def seen_from() -> float:
    """Return the temperature [°C] from which on the rows were seen in a text, not remembered."""
    rows = table("ieee485_temperature").rows
    return min((float(r["temperature_f"]) - 32) * 5 / 9 for r in rows if r["confidence"] == SEEN)


def cold_factor(temperature: float) -> float:
    """Return the IEEE 485 factor by which a lead-acid bank must be larger at `temperature` [°C].

    Straight line between the printed rows; from 25 °C up it is 1: warmth is not credited. Raises
    ValueError below the table (-3.9 °C). Rows below 4.4 °C are from memory.
    """
    if temperature >= BASE_TEMPERATURE - 1e-9:
        return 1.0
    rows = _cold_factors()
    if temperature < rows[0][0] - 1e-9:
        raise ValueError(f"the table ends at {rows[0][0]:.1f} °C")
    for (low, at_low), (high, at_high) in pairwise(rows):
        if temperature <= high:
            share = (temperature - low) / (high - low)
            return at_low + share * (at_high - at_low)
    return 1.0


def peukert_runtime(
    *, capacity: float, rated_time: float, current: float, exponent: float, usable: float
) -> float:
    """Return run time [s] of `capacity` [A·s], rated over `rated_time` [s], at `current` [A].

    t = usable H (C/(I H))^k. At the rated current C/H it returns usable·H for every exponent. The
    short form t = C/I^k is right only where C is the capacity at 1 A, and is not used. Holds near
    the rated current and above; well below it the formula credits more than the nameplate.
    """
    share: float = (capacity / (current * rated_time)) ** exponent
    return usable * rated_time * share


@cache
def exponent_range(chemistry: str) -> tuple[float, float]:
    """Return the published lowest and highest Peukert exponent of `chemistry`. Raises KeyError."""
    for row in table("peukert").rows:
        if row["chemistry"] == chemistry:
            return float(row["low"]), float(row["high"])
    raise KeyError(chemistry)


@cache
def usual(name: str, column: str) -> dict[str, str]:
    """Return a column of a table by chemistry as text: usual shares and exponents."""
    return {row["chemistry"]: row[column] for row in table(name).rows}


@cache
def _limit(chemistry: str, column: str) -> float:
    return float(usual("battery_limits", column)[chemistry])


def usable_share(chemistry: str) -> float:
    """Return the share [0..1] of capacity usually used. Common practice, no source. KeyError."""
    return float(usual("usable_share", "share")[chemistry])


def charge_efficiency(chemistry: str) -> float:
    """Return charge out per charge in (coulombic, [0..1]). Lead-acid: a textbook's 85 %. KeyError.

    Over most of the range; near full a lead-acid bank gasses and takes far less.
    """
    return _limit(chemistry, "coulombic")


def energy_efficiency(chemistry: str) -> float:
    """Return energy out per energy in [0..1], the low figure of those published. Raises KeyError.

    It contains the coulombic loss: apply one of the two, not both.
    """
    return _limit(chemistry, "energy")


def self_discharge(chemistry: str) -> float:
    """Return the share of capacity that a bank loses by itself [1/s] near 25 °C.

    Our choice within `self_discharge_range`; a management system's own draw is not in it. KeyError.
    """
    return _limit(chemistry, "self_discharge") / MONTH


def self_discharge_range(chemistry: str) -> tuple[float, float]:
    """Return the lowest and highest self-discharge [1/s] of the pages that we saw. KeyError."""
    return _limit(chemistry, "self_low") / MONTH, _limit(chemistry, "self_high") / MONTH


def warmth_factor(temperature: float) -> float:
    """Return by what self-discharge grows at `temperature` [°C]: twice for each 10 K above 25 °C.

    Common practice. Below 25 °C it is 1: the cold is not credited.
    """
    factor: float = 2.0 ** (max(0.0, temperature - BASE_TEMPERATURE) / 10.0)
    return factor


def charge_range(chemistry: str) -> tuple[float, float]:
    """Return the lowest and highest temperature [°C] at which the bank may be charged. KeyError.

    LFP from 0 °C: a cell maker's specification. The rest is common practice: data sheets govern.
    """
    return _limit(chemistry, "charge_low_c"), _limit(chemistry, "charge_high_c")


def may_charge(*, chemistry: str, temperature: float) -> bool:
    """Return whether a bank at `temperature` [°C] may be charged at all, by `charge_range`.

    It does not know whether a flat lead-acid bank has frozen: that one must thaw first.
    """
    low, high = charge_range(chemistry)
    return at_least(temperature, low) and at_most(temperature, high)


def size(*, charge: float, usable: float, cold: float, ageing: float) -> float:
    """Return the rated capacity [A·s] that still gives `charge` [A·s] when cold and old.

    C = Q f / (u (1 - a)): `usable` share u, IEEE 485 factor f for cold, share `ageing` a lost by
    the time the bank is replaced. Raises ZeroDivisionError for u = 0 or a = 1.
    """
    return charge * cold / (usable * (1.0 - ageing))


def standing_time(*, capacity: float, drop: float, drain: float, loss: float) -> float:
    """Return the time [s] in which state of charge falls by `drop` [0..1].

    dt = drop C / (I + r C), with `drain` I [A] and `loss` r, the share of capacity that a bank
    loses by itself [1/s], taken as steady: it is rather slower as the bank empties. Raises
    ZeroDivisionError if nothing drains it.
    """
    return drop * capacity / (drain + loss * capacity)


def count_share(*, capacity: float, rated_time: float, current: float, exponent: float) -> float:
    """Return the share [0..1] of a charge that comes out at `current` [A], by Peukert's law.

    (C/(I H))^(k-1), never more than 1: a light load is not credited. See `peukert_runtime`.
    """
    share: float = (capacity / (current * rated_time)) ** (exponent - 1.0)
    return min(1.0, share)


def _between(rows: tuple[tuple[float, float], ...], at: float) -> float:
    for (low, at_low), (high, at_high) in pairwise(rows):
        if at <= high:
            return at_low + max(0.0, (at - low) / (high - low)) * (at_high - at_low)
    return rows[-1][1]


@cache
def _columns(name: str, of: str, to: str) -> tuple[tuple[float, float], ...]:
    return tuple((float(row[of]), float(row[to])) for row in table(name).rows)


def freezing_point(state: float) -> float:
    """Return the temperature [°C] at which the acid of a lead-acid bank at `state` [0..1] freezes.

    Gravity of a flooded battery by its state, then freezing by gravity, straight lines between the
    printed rows: between them up to about 1 K too cold, so keep `FROST_MARGIN`. Sealed batteries
    mostly hold stronger acid and freeze later.
    """
    gravity = _between(_columns("acid_gravity", "state_percent", "specific_gravity"), state * 100)
    fahrenheit = _between(_columns("acid_freezing", "specific_gravity", "freezes_f"), gravity)
    return (fahrenheit - 32) * 5 / 9

"""What a bank holds, gives, takes back and loses, by chemistry.

Peukert's law in rated-hours form, with capacity first corrected for cold; size of a bank with room
for ageing; efficiency, self-discharge and the temperatures at which it may be charged. In scope: a
healthy bank of one chemistry. Rested voltage is in `rested`, acceptance over time in `charging`.
"""

from functools import cache
from itertools import pairwise

from calc.compare import at_least, at_most
from calc.tables import SEEN, table

LEAD_ACID = ("AGM", "gel", "flooded")
CHEMISTRIES = ("LFP", *LEAD_ACID)
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

    Common practice, no source, high end. It about doubles for each 10 K (common practice); a
    management system's own draw is not in it. Raises KeyError.
    """
    return _limit(chemistry, "self_discharge") / MONTH


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

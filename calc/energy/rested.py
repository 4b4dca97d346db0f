"""What a rested voltage tells of the state of charge: a band, never a point.

Each published table gives its own state for a voltage, and a meter has its error; an LFP cell
besides reads differently after a charge than after a discharge (hysteresis). The band holds all of
that. In scope: healthy banks near 25 °C that have rested. Out of scope: under load, on charge or
soon after, where voltage tells no state at all.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from calc.energy import battery
from calc.tables import table

JOINED = {"gel": ("gel", "AGM")}  # one table of gel was found; AGM is its nearest kin
ONE_CELL = 0.05  # states either way, our choice: the LFP table is of one measured cell
HYSTERESIS = 0.025  # V a cell, LFP: high end of 5 to 25 mV, article on hysteresis of LFP cells
EMPTY = {"LFP": 2.5, "lead-acid": 1.75}  # V a cell: common practice, no source


class TooHigh(ValueError):
    """No rested bank stands so high: something charges it, or its surface charge is still there."""


@dataclass(frozen=True)
class Band:
    """States of charge [0..1] between which the bank lies."""

    low: float
    high: float


@dataclass(frozen=True)
class _Row:
    state_low: float
    state_high: float
    low: float  # V a cell
    high: float


@cache
def _tables(chemistry: str) -> tuple[tuple[str, str, tuple[_Row, ...]], ...]:
    """Return each published table of `chemistry`: its source, its form and rows by voltage."""
    found: dict[tuple[str, str, str], list[_Row]] = {}
    for row in table("rested_states").rows:
        if row["chemistry"] in JOINED.get(chemistry, (chemistry,)):
            cells = float(row["cells"])
            found.setdefault((row["chemistry"], row["source"], row["form"]), []).append(
                _Row(
                    float(row["state_low"]) / 100,
                    float(row["state_high"]) / 100,
                    float(row["low_v"]) / cells,
                    float(row["high_v"]) / cells,
                )
            )
    if not found:
        raise KeyError(chemistry)
    return tuple((source, form, tuple(rows)) for (_, source, form), rows in found.items())


def sources(chemistry: str) -> tuple[str, ...]:
    """Return the sources of the tables used for `chemistry`. Raises KeyError."""
    return tuple(dict.fromkeys(source for source, _, _ in _tables(chemistry)))


def rest_needed(chemistry: str) -> float:
    """Return the rest [s] without charge or load before a reading tells anything. KeyError.

    6 h lead-acid (an owner manual, which prefers 24 h), 24 h LFP (a paper's abstract).
    """
    return float(battery.usual("battery_limits", "rest_h")[chemistry]) * 3600.0


def highest(chemistry: str) -> float:
    """Return the highest rested voltage [V a cell] of the tables. Raises KeyError."""
    return max(row.high for _, _, rows in _tables(chemistry) for row in rows)


def lowest(chemistry: str) -> float:
    """Return the voltage [V a cell] below which a rested bank is past empty, or has a dead cell."""
    return EMPTY["LFP" if chemistry == "LFP" else "lead-acid"]


def _span(form: str, rows: tuple[_Row, ...], voltage: float) -> tuple[float, float]:
    """Return the lowest and highest state that one table gives for `voltage` [V a cell]."""
    if voltage > rows[-1].high:
        return 1.0, 1.0
    if form == "bands":
        slack = 1e-9
        hit = [row for row in rows if row.low - slack <= voltage <= row.high + slack]
        return min(row.state_low for row in hit), max(row.state_high for row in hit)
    first = rows[0]
    if voltage < first.low:
        return 0.0, first.state_high
    for one, two in pairwise(rows):
        if voltage <= two.low:
            share = (voltage - one.low) / (two.low - one.low)
            state = one.state_low + share * (two.state_low - one.state_low)
            return state, state
    return rows[-1].state_low, rows[-1].state_high


def band(*, chemistry: str, voltage: float, meter: float) -> Band:
    """Return between which states a rested `voltage` [V a cell] puts the bank.

    `meter` [V a cell] is by how much the reading may be off. From the lowest state that any table
    gives at the low end of the reading to the highest at its high end. Raises KeyError, and TooHigh
    where even the low end of the reading stands above every table.
    """
    off = meter + (HYSTERESIS if chemistry == "LFP" else 0.0)
    if voltage - meter > highest(chemistry) * (1 + 1e-9):
        raise TooHigh(f"no rested {chemistry} cell stands above {highest(chemistry):.3f} V")
    ends = [
        (_span(form, rows, voltage - off)[0], _span(form, rows, voltage + off)[1])
        for _, form, rows in _tables(chemistry)
    ]
    spread = ONE_CELL if chemistry == "LFP" else 0.0
    low, high = min(low for low, _ in ends) - spread, max(high for _, high in ends) + spread
    return Band(max(0.0, low), min(1.0, high))

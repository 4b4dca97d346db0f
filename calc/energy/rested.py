"""What a rested voltage tells of the state of charge: a band, never a point.

Each published table gives its own state for a voltage, and a meter has its error; an LFP cell
besides reads differently after a charge than after a discharge (hysteresis). The band holds all of
that. In scope: healthy banks near 25 °C that have rested. Out of scope: under load, on charge or
soon after, where voltage tells no state at all.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Annotated

from calc.energy import voltages
from calc.energy.battery import Chemistry
from calc.energy.limits import HIGHEST_READING, LOWEST_READING
from calc.energy.voltages import ShownVoltage
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import NotCovered
from calc.units.si import Share, Tag, Volts

# One table of gel was found; AGM is its nearest kin
JOINED = {Chemistry.GEL: (Chemistry.GEL, Chemistry.AGM)}
# States either way, our choice: the LFP table is of one measured cell
ONE_CELL: Annotated[Share, Tag("spread of the state of other LFP cells")] = 0.05
# A cell: high end of 5 to 25 mV, article on hysteresis of LFP cells
HYSTERESIS: Annotated[Volts, Tag("hysteresis of an LFP cell")] = 0.025

# Of the reading: a plain hand meter; common practice, no source
HAND_METER: Annotated[Share, Tag("error of a plain hand meter")] = 0.005


class TooHigh(ValueError):
    """No rested bank stands so high: something charges it, or its surface charge is still there."""


@dataclass(frozen=True)
class Band:
    """States of charge [0..1] between which the bank lies."""

    low: Share
    high: Share


@dataclass(frozen=True)
class _Row:
    state_low: Share
    state_high: Share
    low: Volts  # a cell
    high: Volts


@cache
def _tables(chemistry: Chemistry) -> tuple[tuple[str, str, tuple[_Row, ...]], ...]:
    """Return each published table of `chemistry`: its source, its form and rows by voltage."""
    chemistry = Chemistry(chemistry)
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
    return tuple((source, form, tuple(rows)) for (_, source, form), rows in found.items())


def sources(chemistry: Chemistry) -> tuple[str, ...]:
    """Return the sources of the tables used for `chemistry`. Raises NotCovered."""
    return tuple(dict.fromkeys(source for source, _, _ in _tables(chemistry)))


def highest(chemistry: Chemistry) -> float:
    """Return the highest rested voltage [V a cell] of the tables. Raises NotCovered."""
    return max(row.high for _, _, rows in _tables(chemistry) for row in rows)


@dataclass(frozen=True, kw_only=True)
class RestedVoltage(ShownVoltage):
    """The voltage of a bank that has rested, and the `band` of states that it allows.

    `state` is what is stated beside it, None where nothing is. The band is None where the voltage
    is above that of any rested bank.
    """

    state: Share | None
    band: Band | None

    @property
    def below_stated(self) -> bool:
        """Whether the voltage allows less than what is stated."""
        if self.band is None or self.state is None:
            return False
        return not at_most(self.state, self.band.high)

    @property
    def above_stated(self) -> bool:
        """Whether the voltage says more than what is stated."""
        if self.band is None or self.state is None:
            return False
        return not at_least(self.state, self.band.low)


def rested_voltage(
    *,
    chemistry: Chemistry,
    voltage: float,
    count: int,
    state: float | None,
    meter: float = HAND_METER,
    parameter: str = "rested_voltage",
) -> RestedVoltage:
    """Return what a rested `voltage` [V] of `count` blocks says beside a stated `state` [0..1].

    `meter` [0..1] is by what share it may be off. Raises NotCovered, as of `parameter`, for a
    reading that such a bank never shows.
    """
    chemistry = Chemistry(chemistry)
    fits(voltage, count, parameter)
    cell = voltage / count / voltages.cells(chemistry)
    try:
        allowed: Band | None = band(chemistry=chemistry, voltage=cell, meter=meter * cell)
    except TooHigh:
        allowed = None
    return RestedVoltage(
        chemistry=chemistry,
        blocks=float(count),
        voltage=voltage,
        past_empty=count * voltages.past_empty(chemistry),
        state=state,
        band=allowed,
    )


def fits(voltage: float, count: int, parameter: str) -> None:
    """Raise NotCovered, as of `parameter`, where no bank of `count` blocks shows `voltage` [V]."""
    one = voltage / count
    if not (at_least(one, LOWEST_READING) and at_most(one, HIGHEST_READING)):
        nominal = voltages.NOMINAL * count
        raise NotCovered(
            parameter, f"does not fit a {nominal:g} V bank: choose the bank's nominal voltage."
        )


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


def band(*, chemistry: Chemistry, voltage: float, meter: float) -> Band:
    """Return between which states a rested `voltage` [V a cell] puts the bank.

    `meter` [V a cell] is by how much the reading may be off. From the lowest state that any table
    gives at the low end of the reading to the highest at its high end. Raises NotCovered, and
    TooHigh where even the low end of the reading stands above every table.
    """
    off = meter + (HYSTERESIS if chemistry == Chemistry.LFP else 0.0)
    if voltage - meter > highest(chemistry) * (1 + 1e-9):
        raise TooHigh(f"no rested {chemistry} cell reads above {highest(chemistry):.3f} V")
    ends = [
        (_span(form, rows, voltage - off)[0], _span(form, rows, voltage + off)[1])
        for _, form, rows in _tables(chemistry)
    ]
    spread = ONE_CELL if chemistry == Chemistry.LFP else 0.0
    low, high = min(low for low, _ in ends) - spread, max(high for _, high in ends) + spread
    return Band(max(0.0, low), min(1.0, high))

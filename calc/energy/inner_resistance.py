"""The resistance inside a bank by chemistry and capacity, where it is not known better.

Batteries of one kind have about the same resistance times capacity, so twice the bank has half of
it. Out of scope: age, cold and a low state of charge, which all raise it.
"""

from dataclasses import dataclass
from functools import cache

from calc.electrical.fault_source import short_circuit_current_per_ah
from calc.energy.battery import Chemistry
from calc.energy.voltages import NOMINAL, cells
from calc.tables import table
from calc.units.constants import HOUR
from calc.units.si import Ohms


@dataclass(frozen=True, kw_only=True)
class InnerResistance:
    """The resistance inside a bank: the `usual` one, and the `low` end of what is published.

    Where it is `known`, both are that.
    """

    low: Ohms
    usual: Ohms
    known: bool


@cache
def _of_a_cell() -> dict[str, tuple[float, float]]:
    """Return the resistance times the capacity [ohm A·s] of a cell, low and usual."""
    return {
        row["chemistry"]: (float(row["low_ohm_ah"]) * HOUR, float(row["usual_ohm_ah"]) * HOUR)
        for row in table("battery_resistance").rows
    }


def _of_a_block(chemistry: Chemistry) -> tuple[float, float]:
    """Return the resistance times the capacity [ohm A·s] of a 12 V block, low and usual."""
    if chemistry.lead_acid:
        rates = short_circuit_current_per_ah(chemistry)
        return NOMINAL / rates.usual, NOMINAL / rates.low
    low, usual = _of_a_cell()[chemistry]
    return cells(chemistry) * low, cells(chemistry) * usual


def inner_resistance(
    *, chemistry: Chemistry, capacity: float, blocks: float, known: float | None
) -> InnerResistance:
    """Return the resistance of a bank of `capacity` [A·s] with so many 12 V `blocks` in series.

    `known` [ohm] stands in for it. Lead-acid from its short-circuit current, 10 A and at most 20 A
    for each ampere-hour, table `battery_short_circuit`; LFP from a published cell model at 1C,
    table `battery_resistance`. Raises NotCovered for a name that is no chemistry.
    """
    if known is not None:
        return InnerResistance(low=known, usual=known, known=True)
    low, usual = (blocks * one / capacity for one in _of_a_block(Chemistry(chemistry)))
    return InnerResistance(low=low, usual=usual, known=False)

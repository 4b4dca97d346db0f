"""What a battery of a nominal 12 V shows, by chemistry: under load, charged, empty.

A bank of 24 V or 48 V is two or four such blocks in series. Rested voltage against state of charge
is in `rested`.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.energy.battery import Chemistry, by_chemistry
from calc.tables import table
from calc.units.si import Number, Tag, Volts

# On charge or at rest: common practice, no source
BLOCK_SHOWS: Annotated[Volts, Tag("voltage that a 12 V block about shows")] = 13.0
SYSTEMS = (1, 2, 4)  # blocks of 12, 24 and 48 V, which vans have: common practice, no source
NOMINAL: Annotated[Volts, Tag("nominal voltage of a block")] = 12.0  # by name


@dataclass(frozen=True, kw_only=True)
class ShownVoltage:
    """The `voltage` that a bank of so many 12 V `blocks` shows before a charge.

    Below `past_empty` it was drawn too deep, or has a shorted or dead cell.
    """

    chemistry: Chemistry
    blocks: Number
    voltage: Volts
    past_empty: Volts

    @property
    def fault(self) -> str:
        """What a voltage below `past_empty` says, in words."""
        if self.chemistry.lead_acid:
            return "a cell is likely shorted or dead"
        return "its cells are discharged too deeply"


def shown_voltage(*, chemistry: Chemistry, voltage: float, count: int) -> ShownVoltage:
    """Return what a bank of `count` blocks shows, a load perhaps still on it. Raises NotCovered."""
    return ShownVoltage(
        chemistry=Chemistry(chemistry),
        blocks=float(count),
        voltage=voltage,
        past_empty=count * loaded_empty(chemistry),
    )


def blocks(voltage: float) -> int:
    """Return how many 12 V blocks a bank that shows `voltage` [V] has in series: see `SYSTEMS`.

    The nearest, so that a flat bank of 48 V is not taken for a full one of 36 V.
    """
    return min(SYSTEMS, key=lambda count: (abs(voltage / BLOCK_SHOWS - count), -count))


@cache
def _column(column: str) -> dict[str, float]:
    return {name: float(text) for name, text in by_chemistry("battery_voltage", column).items()}


def cells(chemistry: Chemistry) -> int:
    """Return the cells in series of a 12 V block. Raises NotCovered."""
    return int(_column("cells")[Chemistry(chemistry)])


def under_load(chemistry: Chemistry) -> float:
    """Return the mean voltage [V] of a 12 V block over a discharge. Common practice. NotCovered."""
    return _column("under_load_v")[Chemistry(chemistry)]


def usual_voltages() -> dict[str, float]:
    """Return the mean voltage [V] of a 12 V block over a discharge, by chemistry."""
    return dict(_column("under_load_v"))


def max_charge_voltage(chemistry: Chemistry) -> float:
    """Return the most [V] that a 12 V block is commonly given near 25 °C. Raises NotCovered.

    Common practice, no source; of LFP, 3.65 V a cell, a maker's absolute limit.
    """
    return _column("max_charge_v")[Chemistry(chemistry)]


def past_empty(chemistry: Chemistry) -> float:
    """Return the rested voltage [V] of a 12 V block below which it is past empty. NotCovered.

    Drawn too deep, or with a shorted or dead cell. Common practice, no source.
    """
    return _column("past_empty_v")[Chemistry(chemistry)]


def loaded_empty(chemistry: Chemistry) -> float:
    """Return the same [V] where a load may still hang on the block. Common practice. NotCovered."""
    return _column("loaded_empty_v")[Chemistry(chemistry)]


@cache
def charge_end(chemistry: Chemistry) -> float:
    """Return the voltage [V] at which the charge of a 12 V block usually ends. Raises NotCovered.

    Table `charge_voltage`: lead-acid by a charger's manual, LFP common practice.
    """
    chemistry = Chemistry(chemistry)
    row = next(row for row in table("charge_voltage").rows if row["chemistry"] == chemistry)
    return float(row["charge_v"]) * cells(chemistry) / float(row["cells"])


@cache
def full_at_rest(chemistry: Chemistry) -> float:
    """Return the voltage [V] of a full 12 V block at rest, near 25 °C. Raises NotCovered.

    Table `rested_voltage`.
    """
    chemistry = Chemistry(chemistry)
    row = next(row for row in table("rested_voltage").rows if row["chemistry"] == chemistry)
    return float(row["full_v"]) * cells(chemistry) / float(row["cells"])

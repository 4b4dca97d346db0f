"""What a fuel holds as heat, and what the cold does to it.

By its lower heating value, since a heater's exhaust leaves as steam. Out of scope: fuel that is wet
or old.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.comfort.flame import HeatSource
from calc.tables import table
from calc.units.compare import at_most
from calc.units.si import (
    Celsius,
    CubicMetres,
    Joules,
    JoulesPerCubicMetre,
    KilogramsPerCubicMetre,
    Tag,
)

BTU: Annotated[Joules, Tag("British thermal unit")] = 1055.056  # ISO
GALLON: Annotated[CubicMetres, Tag("US gallon")] = 3.785411784e-3  # by definition
LITRE: Annotated[CubicMetres, Tag("litre")] = 1e-3  # by definition
# At which diesel that is not of winter grade turns waxy: from memory
DIESEL_WAXES: Annotated[Celsius, Tag("where diesel not of winter grade waxes")] = -10.0
# At which that of winter grade does too: from memory
WINTER_DIESEL_WAXES: Annotated[Celsius, Tag("where winter diesel waxes")] = -15.0
# At which propane hardly gives gas; alone it boils near -42 °C: from memory
PROPANE_HARDLY_BOILS: Annotated[Celsius, Tag("where propane hardly boils")] = -30.0
_FAILS_AT = {HeatSource.DIESEL: WINTER_DIESEL_WAXES, HeatSource.PROPANE: PROPANE_HARDLY_BOILS}


@dataclass(frozen=True)
class Fuel:
    """A fuel with its lower heating value and its density as a liquid."""

    name: HeatSource
    heating: JoulesPerCubicMetre
    density: KilogramsPerCubicMetre


@cache
def fuels() -> dict[HeatSource, Fuel]:
    """Return every fuel of the table by name."""
    return {
        HeatSource(row["fuel"]): Fuel(
            HeatSource(row["fuel"]),
            float(row["lower_heating_btu_gal"]) * BTU / GALLON,
            float(row["density_kg_m3"]),
        )
        for row in table("fuels").rows
    }


def fuel_volume(heat: float, heating: float, efficiency: float) -> float:
    """Return the liquid fuel [m³] for `heat` [J] at `heating` [J/m³] and `efficiency` of a share.

    V = E/(η H). The efficiency is that of the heat that stays aboard.
    """
    return heat / (heating * efficiency)


@dataclass(frozen=True, kw_only=True)
class FuelInCold:
    """A fuel in air of a temperature `outside`."""

    fuel: HeatSource
    outside: Celsius

    @property
    def fails(self) -> bool:
        """Whether the fuel itself may fail: winter diesel waxes, propane hardly boils."""
        fails_at = _FAILS_AT.get(self.fuel)
        return fails_at is not None and at_most(self.outside, fails_at)

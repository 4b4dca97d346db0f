"""What a shell loses to the cold, or takes in from the sun.

Steady heat flow through plane layers (ISO 6946), air changes, and a lumped warm-up. In scope: a
shell of few parts with one temperature inside. Out of scope: moisture, heat stored in the layers,
corners, metal that crosses the insulation (bounded here by area weighting, not solved).
"""

from collections.abc import Iterable
from functools import cache
from math import log
from typing import Annotated

from calc.tables import table
from calc.units.covered import Enumeration
from calc.units.si import (
    JoulesPerCubicMetreKelvin,
    JoulesPerKilogramKelvin,
    Metres,
    Tag,
    WattsPerMetreKelvin,
)

# Sustainable Energy, appendix E: 1.2 kJ/(m³·K)
AIR_HEAT_BY_VOLUME: Annotated[JoulesPerCubicMetreKelvin, Tag("heat of mild air by volume")] = 1200.0
SKIN: Annotated[Metres, Tag("thickness of body sheet")] = 0.001  # common practice, no source
STEEL: Annotated[WattsPerMetreKelvin, Tag("conductivity of steel")] = 50.0  # EN ISO 10456
# Of 500 kg/m³: EN ISO 10456
PLYWOOD: Annotated[WattsPerMetreKelvin, Tag("conductivity of plywood")] = 0.13
# EN ISO 10456
TIMBER_HEAT: Annotated[JoulesPerKilogramKelvin, Tag("specific heat of timber")] = 1600.0


class Part(Enumeration):
    """A part of the shell, by the way heat takes through it: up, sideways or down."""

    ROOF = "roof"
    WALL = "wall"
    FLOOR = "floor"


class Insulation(Enumeration):
    """A material of the table of conductivities."""

    MINERAL_WOOL = "mineral-wool"
    GLASS_WOOL = "glass-wool"
    POLYURETHANE_FOAM = "polyurethane-foam"
    POLYURETHANE_BOARD = "polyurethane-board"
    POLYISOCYANURATE_BOARD = "polyisocyanurate-board"
    EXTRUDED_POLYSTYRENE = "extruded-polystyrene"
    RUBBER_FOAM = "closed-cell-rubber-foam"
    POLYETHYLENE_FOAM = "polyethylene-foam"
    SHEEP_WOOL = "sheep-wool"


@cache
def surfaces(part: Part) -> tuple[float, float]:
    """Return the inside and outside surface resistance [m²·K/W] of a roof, wall or floor.

    ISO 6946 table 7, ordinary surfaces: heat goes up through a roof, down through a floor. Raises
    NotCovered.
    """
    rows = {Part(row["part"]): row for row in table("iso6946_surface").rows}
    row = rows[Part(part)]
    return float(row["inside_m2k_w"]), float(row["outside_m2k_w"])


@cache
def materials() -> dict[Insulation, dict[str, str]]:
    """Return the rows of the conductivity table by material."""
    rows = table("thermal_conductivity").rows
    return {Insulation(row["material"].replace(" ", "-")): row for row in rows}


def resistance(thickness: float, conductivity: float) -> float:
    """Return the resistance [m²·K/W] of a layer: R = d/λ, with d [m] and λ [W/(m·K)]. ISO 6946."""
    return thickness / conductivity


def transmittance(resistances: Iterable[float]) -> float:
    """Return U [W/(m²·K)] of layers in series, surfaces included: U = 1/ΣR. ISO 6946.

    For layers that are alike over the whole area. Raises ZeroDivisionError without resistance.
    """
    return 1 / sum(resistances)


def area_weighted(parts: Iterable[tuple[float, float]]) -> float:
    """Return the mean U [W/(m²·K)] of parts (area or share, U) side by side.

    Paths that exchange no heat sideways: the upper limit of ISO 6946. A steel rib also gathers heat
    through the lining beside it, so this bounds the layers, not every rib.
    """
    pairs = tuple(parts)
    return sum(area * u for area, u in pairs) / sum(area for area, _ in pairs)


def covered(u: float, added: float) -> float:
    """Return U [W/(m²·K)] of glazing of `u` with a cover of resistance `added` [m²·K/W] on it.

    The cover fits at its edges, so that no air passes behind it; a loose one adds far less.
    """
    return 1 / (1 / u + added)


def air_coefficient(changes: float, volume: float) -> float:
    """Return the heat carried off by air changes [W/K]: c n V, `changes` [1/s], `volume` [m³].

    With 1200 J/(m³·K), the third of a watt-hour of building practice; air at 0 °C holds 8 % more.
    """
    return AIR_HEAT_BY_VOLUME * changes * volume


def warm_up(capacity: float, coefficient: float, power: float, rise: float) -> float | None:
    """Return the time [s] to warm by `rise` [K] from cold, or None if `power` [W] never gets there.

    Lumped: everything that has to warm is one heat capacity [J/K] at one temperature, that loses
    `coefficient` [W/K]. t = −(C/H) ln(1 − H ΔT/P). Furniture lags behind the air, so the air feels
    warm earlier and the walls stay cold longer.
    """
    share = coefficient * rise / power
    if share >= 1:
        return None
    if coefficient == 0:
        return capacity * rise / power
    return -capacity / coefficient * log(1 - share)


def sun_through_glass(irradiance: float, area: float, passed: float) -> float:
    """Return the sun's heat [W] through glazing: `irradiance` [W/m²], `area` [m²], share `passed`.

    `passed` is the g-value: what comes through directly and what the glass takes up and gives in.
    """
    return irradiance * area * passed


def sun_on_sheet(
    irradiance: float, area: float, absorbed: float, u: float, outside: float
) -> float:
    """Return the sun's heat [W] through a sunlit sheet, above what the air alone brings.

    Sol-air temperature: the sun acts like air warmer by α I R_se, with `outside` R_se [m²·K/W], and
    heat radiated to the sky is left out, on the safe side.
    """
    return u * area * absorbed * irradiance * outside

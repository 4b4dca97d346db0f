"""What a van loses in the cold, part by part.

Steady heat flow by ISO 6946 and air changes (`calc.comfort.envelope`). In scope: a box with one
temperature inside, insulated alike on walls and roof. Out of scope: wind, the sky, moisture; metal
ribs are bounded, not solved.
"""

from dataclasses import dataclass

from calc.comfort import envelope
from calc.comfort.airflow import AIR_HEAT_BY_MASS, density
from calc.comfort.envelope import Insulation, Part
from calc.units.covered import NotCovered
from calc.units.si import (
    AirChangesPerSecond,
    Celsius,
    HeatWatts,
    JoulesPerCubicMetreKelvin,
    Kelvins,
    Metres,
    RoomCubicMetres,
    Share,
    SquareMetreKelvinsPerWatt,
    SurfaceSquareMetres,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)


@dataclass(frozen=True, kw_only=True)
class Box:
    """The heated space: its sides, and what of the walls is `glazing`."""

    length: Metres
    width: Metres
    height: Metres
    glazing: SurfaceSquareMetres
    plane: SurfaceSquareMetres
    wall_area: SurfaceSquareMetres
    volume: RoomCubicMetres


@dataclass(frozen=True, kw_only=True)
class Shell:
    """The layers of the shell, and U-values of its parts: of bare sheet and covered glass too."""

    insulation: Metres
    floor_insulation: Metres
    material: Insulation
    conductivity: WattsPerMetreKelvin
    lining: Metres
    glazing_u: WattsPerSquareMetreKelvin
    cover: SquareMetreKelvinsPerWatt
    rsi_wall: SquareMetreKelvinsPerWatt
    rsi_roof: SquareMetreKelvinsPerWatt
    rsi_floor: SquareMetreKelvinsPerWatt
    rse: SquareMetreKelvinsPerWatt
    wall_u: WattsPerSquareMetreKelvin
    roof_u: WattsPerSquareMetreKelvin
    floor_u: WattsPerSquareMetreKelvin
    bare_u: WattsPerSquareMetreKelvin
    cover_u: WattsPerSquareMetreKelvin


@dataclass(frozen=True, kw_only=True)
class HeatLoss:
    """What a box loses: part by part, in all, with windows covered, and its bounds.

    `bridges` is put on for metal that crosses the insulation, `denser` for air colder than the
    mild air of `infiltration`. `low` and `high` are without such metal and with the ribs bare.
    """

    box: Box
    shell: Shell
    inside: Celsius
    outside: Celsius
    thermal_bridge: Share
    ribs: Share
    air_changes: AirChangesPerSecond
    rise: Kelvins
    wall_loss: HeatWatts
    roof_loss: HeatWatts
    floor_loss: HeatWatts
    bridges: HeatWatts
    glass_loss: HeatWatts
    conduction: HeatWatts
    infiltration: HeatWatts
    cold_air: JoulesPerCubicMetreKelvin
    denser: HeatWatts
    loss: HeatWatts
    covered_loss: HeatWatts
    low: HeatWatts
    high: HeatWatts


def box(*, length: float, width: float, height: float, glazing: float) -> Box:
    """Return the space of a box with sides in metres and `glazing` [m²] in its walls.

    Raises NotCovered where the glazing is more than the walls.
    """
    walls = 2 * (length + width) * height
    if glazing > walls:
        raise NotCovered("glazing", f"must be at most {walls:.3g} m², the whole of the walls.")
    return Box(
        length=length,
        width=width,
        height=height,
        glazing=glazing,
        plane=length * width,
        wall_area=walls - glazing,
        volume=length * width * height,
    )


def shell(
    *,
    insulation: float,
    floor_insulation: float,
    material: Insulation,
    conductivity: float,
    lining: float,
    glazing_u: float,
    cover: float,
) -> Shell:
    """Return U-values [W/(m²·K)] of body sheet, insulation [m] of `conductivity`, and lining [m].

    `cover` [m²·K/W] is that of window covers. Resistances in series, ISO 6946; glass by its own U.
    Raises NotCovered for a material without a row.
    """
    rsi = {part: envelope.surfaces(part)[0] for part in Part}
    rse = envelope.surfaces(Part.WALL)[1]
    skin = envelope.resistance(envelope.SKIN, envelope.STEEL)
    inner = envelope.resistance(lining, envelope.PLYWOOD)

    def layers(part: Part, thickness: float) -> float:
        middle = envelope.resistance(thickness, conductivity)
        return envelope.transmittance((rsi[part], skin, middle, inner, rse))

    return Shell(
        insulation=insulation,
        floor_insulation=floor_insulation,
        material=Insulation(material),
        conductivity=conductivity,
        lining=lining,
        glazing_u=glazing_u,
        cover=cover,
        rsi_wall=rsi[Part.WALL],
        rsi_roof=rsi[Part.ROOF],
        rsi_floor=rsi[Part.FLOOR],
        rse=rse,
        wall_u=layers(Part.WALL, insulation),
        roof_u=layers(Part.ROOF, insulation),
        floor_u=layers(Part.FLOOR, floor_insulation),
        bare_u=envelope.transmittance((rsi[Part.WALL], skin, rse)),
        cover_u=envelope.covered(glazing_u, cover),
    )


def heat_loss(
    space: Box,
    layers: Shell,
    *,
    inside: float,
    outside: float,
    thermal_bridge: float,
    ribs: float,
    air_changes: float,
) -> HeatLoss:
    """Return what a box loses from `inside` to `outside` [°C], with `air_changes` [1/s].

    `thermal_bridge` is the share put on for metal in the insulation, `ribs` the share of bare area
    of the upper bound, which is never less than the loss. Raises NotCovered where it is no colder
    outside.
    """
    if not inside > outside:
        raise NotCovered(
            "outside", "must be colder than inside: this sheet is for heat that leaves."
        )
    rise = inside - outside
    walls, roof, floor = (
        layers.wall_u * space.wall_area * rise,
        layers.roof_u * space.plane * rise,
        layers.floor_u * space.plane * rise,
    )
    plain = walls + roof + floor
    glass = layers.glazing_u * space.glazing * rise
    air = envelope.air_coefficient(air_changes, space.volume) * rise
    cold_air = density(outside) * AIR_HEAT_BY_MASS
    denser = max(air * (cold_air / envelope.AIR_HEAT_BY_VOLUME - 1), 0.0)
    conduction = plain * (1 + thermal_bridge) + glass
    loss = conduction + air + denser
    bare = layers.bare_u * (space.wall_area + 2 * space.plane) * rise
    ribbed = envelope.area_weighted(((1 - ribs, plain), (ribs, bare)))
    return HeatLoss(
        box=space,
        shell=layers,
        inside=inside,
        outside=outside,
        thermal_bridge=thermal_bridge,
        ribs=ribs,
        air_changes=air_changes,
        rise=rise,
        wall_loss=walls,
        roof_loss=roof,
        floor_loss=floor,
        bridges=plain * thermal_bridge,
        glass_loss=glass,
        conduction=conduction,
        infiltration=air,
        cold_air=cold_air,
        denser=denser,
        loss=loss,
        covered_loss=loss - (layers.glazing_u - layers.cover_u) * space.glazing * rise,
        low=plain + glass + air + denser,
        high=max(loss, ribbed + glass + air + denser),
    )

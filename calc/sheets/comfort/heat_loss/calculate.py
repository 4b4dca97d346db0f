"""The sum of heat-loss: a box that loses heat, the heater for it, and a night of it."""

from dataclasses import asdict, dataclass
from functools import cache

from calc.comfort import airflow, envelope, heaters
from calc.energy.loads import bank_current
from calc.sheets.parts.comfort import ELECTRIC
from calc.worksheet.fields import Problem


@dataclass(frozen=True)
class Material:
    """An insulation: the conductivity that is used, the span that was found, and by whom."""

    name: str
    used: str
    span: str
    source: str

    def __str__(self) -> str:
        return f"{self.name}: {self.used}, found {self.span} ({self.source})"


@cache
def materials() -> tuple[Material, ...]:
    """Return every insulation of the table with its source."""
    return tuple(
        Material(
            name,
            f"{row['used_w_mk']}\u00a0W/(m·K)",
            f"{row['low_w_mk']} to {row['high_w_mk']}",
            row["source"] if row["confidence"] == "seen in text" else f"{row['source']}; {row['confidence']}",
        )
        for name, row in envelope.materials().items()
    )


@dataclass(frozen=True, kw_only=True)
class HeatLoss(heaters.Night):
    """Heat [W] a shell loses, by part, its bounds, and what a heater must give."""

    rsi_wall: float
    rsi_roof: float
    rsi_floor: float
    rse: float
    skin: float
    skin_conductivity: float
    lining_conductivity: float
    wall_u: float
    roof_u: float
    floor_u: float
    bare_u: float
    plane: float
    wall_area: float
    volume: float
    rise: float
    wall_loss: float
    roof_loss: float
    floor_loss: float
    glass_loss: float
    bridges: float
    conduction: float
    air_heat: float
    infiltration: float
    cold_air: float
    denser: float
    loss: float
    cover_u: float
    covered_loss: float
    low: float
    high: float
    people_heat: float
    fresh: float | None
    night_loss: float
    heater: float
    rate: float
    wood_heat: float
    store: float
    power: float
    warm_share: float
    time_constant: float
    warm_up: float | None
    warm_fuel: float | None
    warm_charge: float | None
    headroom: float
    start_energy: float
    gives: float
    bank_share: float
    co_points: tuple[heaters.Point, ...] | None
    materials: tuple[Material, ...]
    flame: bool
    sure: bool


def run(
    *, length: float, width: float, height: float, insulation: float, floor_insulation: float, material: str,
    conductivity: float, glazing: float, glazing_u: float, cover: float, thermal_bridge: float, ribs: float,
    air_changes: float, inside: float, outside: float, people: float, person: float, lining: float, margin: float,
    contents: float, heater_output: float | None, hours: float, fuel: str, exhaust: str, alarm: str, efficiency: float,
    draw: float, voltage: float, capacity: float, usable: float,
) -> HeatLoss:
    """Return what a box loses from `inside` to `outside` [°C], and what `hours` [s] of that heat take."""
    if not inside > outside:
        raise Problem("outside", "Outside must be colder than inside: this sheet is for heat that leaves.")
    walls = 2 * (length + width) * height - glazing
    if walls < 0:
        raise Problem("glazing", f"Glazing must be at most {walls + glazing:.3g} m², the whole of the walls.")
    rsi = {part: envelope.surfaces(part)[0] for part in ("wall", "roof", "floor")}
    rse = envelope.surfaces("wall")[1]
    sheet = envelope.resistance(envelope.SHEET, envelope.SHEET_CONDUCTIVITY)
    inner = envelope.resistance(lining, envelope.LINING_CONDUCTIVITY)

    def layers(part: str, thickness: float) -> float:
        middle = envelope.resistance(thickness, conductivity)
        return envelope.transmittance((rsi[part], sheet, middle, inner, rse))

    plane, rise = length * width, inside - outside
    wall_u, roof_u, floor_u = layers("wall", insulation), layers("roof", insulation), layers("floor", floor_insulation)
    bare_u = envelope.transmittance((rsi["wall"], sheet, rse))
    parts = (wall_u * walls * rise, roof_u * plane * rise, floor_u * plane * rise)
    plain = sum(parts)
    glass = glazing_u * glazing * rise
    cover_u = envelope.covered(glazing_u, cover)
    air = envelope.air_coefficient(air_changes, length * width * height) * rise
    cold_air = airflow.density(outside) * airflow.AIR_HEAT
    denser = max(air * (cold_air / envelope.AIR_HEAT - 1), 0.0)
    conduction = plain * (1 + thermal_bridge) + glass
    loss = conduction + air + denser
    bare = bare_u * (walls + 2 * plane) * rise
    heater = loss * (1 + margin)
    power = heater if heater_output is None else heater_output
    store = contents * envelope.WOOD_HEAT
    night = heaters.night(loss=loss, hours=hours, fuel=fuel, efficiency=efficiency, draw=draw, starting=heaters.START, voltage=voltage)
    flame, gives = fuel != ELECTRIC, capacity * usable
    warm_up = envelope.warm_up(store, loss / rise, power, rise)
    warm_fuel = warm_charge = None
    if warm_up is not None:
        warm_charge = (draw / voltage if flame else bank_current(power, voltage, efficiency)) * warm_up
        if night.heating is not None:
            warm_fuel = heaters.fuel_volume(power * warm_up, night.heating, efficiency)
    return HeatLoss(
        **asdict(night),
        **{f"rsi_{part}": value for part, value in rsi.items()},
        rse=rse,
        skin=envelope.SHEET,
        skin_conductivity=envelope.SHEET_CONDUCTIVITY,
        lining_conductivity=envelope.LINING_CONDUCTIVITY,
        wall_u=wall_u,
        roof_u=roof_u,
        floor_u=floor_u,
        bare_u=bare_u,
        plane=plane,
        wall_area=walls,
        volume=length * width * height,
        rise=rise,
        wall_loss=parts[0],
        roof_loss=parts[1],
        floor_loss=parts[2],
        glass_loss=glass,
        bridges=plain * thermal_bridge,
        conduction=conduction,
        air_heat=envelope.AIR_HEAT,
        infiltration=air,
        cold_air=cold_air,
        denser=denser,
        loss=loss,
        cover_u=cover_u,
        covered_loss=loss - (glazing_u - cover_u) * glazing * rise,
        low=plain + glass + air + denser,
        high=max(loss, envelope.area_weighted(((1 - ribs, plain), (ribs, bare))) + glass + air + denser),
        people_heat=people * person,
        fresh=length * width * height * air_changes / people if people else None,
        night_loss=max(loss - people * person, 0.0),
        heater=heater,
        rate=loss / rise,
        wood_heat=envelope.WOOD_HEAT,
        store=store,
        power=power,
        warm_share=loss / power,
        time_constant=store * rise / loss,
        warm_up=warm_up,
        warm_fuel=warm_fuel,
        warm_charge=warm_charge,
        headroom=max(power / loss - 1, 0.0),
        start_energy=heaters.START,
        gives=gives,
        bank_share=night.charge / gives,
        co_points=heaters.carbon_monoxide() if flame else None,
        materials=materials(),
        flame=flame,
        sure=heater_output is not None,
    )

"""heater-night: fuel or battery?"""

from dataclasses import asdict, dataclass

from calc.comfort import heaters
from calc.sheets.parts.comfort import (
    ALARM,
    BANK,
    BANK_SHARE,
    CHARGE_TAKEN,
    CO_POINTS,
    CO_STEP,
    CO_TABLE,
    DRAW,
    ELECTRIC,
    ELECTRIC_CHARGE,
    EXHAUST,
    FLAME_STOPS,
    FUEL_USED,
    HEAT_FROM,
    HEATER_EFFICIENCY,
    NIGHT_BETWEEN,
    NIGHT_REMARKS,
    USABLE,
    USUAL_HEATER,
    VOLTAGE_FIELD,
    burns,
    night_steps,
    throttled,
    unchecked,
)
from calc.units.compare import at_most
from calc.units.kinds import CHARGE, COUNT, ENERGY, LENGTH, RATIO, TIME, heat
from calc.units.shown import DOWN, UP, quantity_text
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Quantity
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

THIN_AIR = 1500.0  # m, from which makers ask for an adjustment: common practice, no source


@dataclass(frozen=True)
class Way:
    """One way to the same heat: fuel [m³, kg] or none, charge [A·s] and its share of what is used."""

    way: str
    fuel: float | None
    mass: float | None
    charge: float
    share: float

    def __str__(self) -> str:
        burnt = "" if self.fuel is None else f"{quantity_text(self.fuel, heat.VOLUME, way=UP)} and "
        return f"{self.way}: {burnt}{quantity_text(self.charge, CHARGE, way=UP)}, {quantity_text(self.share, RATIO, way=UP)} of what you use of the bank"


@dataclass(frozen=True, kw_only=True)
class HeaterNight(heaters.Night):
    """Fuel [m³, kg] and charge [A·s] for a night, and what resistive heat would take."""

    density: float | None
    fuel_mass: float | None
    gives: float
    bank_share: float
    electric_share: float
    air_share: float
    compared: tuple[Way, ...]
    co_points: tuple[heaters.Point, ...] | None
    flame: bool


def run(
    *, loss: float, hours: float, fuel: str, efficiency: float, draw: float, voltage: float, starts: float,
    start_energy: float, capacity: float, usable: float, exhaust: str, alarm: str, altitude: float,
) -> HeaterNight:
    """Return what holding `loss` [W] for `hours` [s] costs in `fuel` and from the bank."""
    gives, flame = capacity * usable, fuel != ELECTRIC
    starting = starts * start_energy

    def by(name: str) -> heaters.Night:
        share = efficiency if name == fuel else heaters.USUAL[name]
        return heaters.night(loss=loss, hours=hours, fuel=name, efficiency=share, draw=draw, starting=starting, voltage=voltage)

    def mass(name: str, volume: float | None) -> float | None:
        return None if volume is None else volume * heaters.fuels()[name].density

    nights = {name: by(name) for name in heaters.USUAL}
    own = nights[fuel]
    return HeaterNight(
        **asdict(own),
        density=heaters.fuels()[fuel].density if flame else None,
        fuel_mass=mass(fuel, own.fuel_used),
        gives=gives,
        bank_share=own.charge / gives,
        electric_share=own.electric_charge / gives,
        air_share=heaters.air_pressure_share(altitude),
        compared=tuple(Way(name, one.fuel_used, mass(name, one.fuel_used), one.charge, one.charge / gives) for name, one in nights.items()),
        co_points=heaters.carbon_monoxide() if flame else None,
        flame=flame,
    )


WORKSHEET = Worksheet(
    id="heater-night",
    title="Heater night",
    question="Fuel or battery?",
    entry_question="What does a warm night cost?",
    about="Litres and amp-hours for a night of heat, and what keeps it safe.",
    calculate=run,
    fields=(
        Quantity(id="loss", label="Heat to hold", symbol="P", kinds=(heat.HEAT,), default="900 W", low="10 W", high="20 kW", hint="What the van loses, from the heat loss sheet."),
        Quantity(id="hours", label="Hours of heating", symbol="t", kinds=(TIME,), default="9 h", low="0.1 h", high="336 h", hint="The whole time it must be held."),
        HEAT_FROM,
        EXHAUST,
        ALARM,
        DRAW,
        VOLTAGE_FIELD,
        BANK,
        USABLE,
        HEATER_EFFICIENCY,
        Quantity(id="starts", advanced=True, label="Starts in that time", symbol="k", kinds=(COUNT,), default="1", low="0", high="200", hint="Each takes charge for the glow plug, and more when it fails."),
        Quantity(id="start_energy", advanced=True, label="Energy of a start", symbol="E_s", kinds=(ENERGY,), default="10 W·h", low="0 W·h", high="100 W·h", hint="Glow plug and running down (no source)."),
        Quantity(id="altitude", advanced=True, label="Altitude", symbol="h", kinds=(LENGTH,), default="0 m", low="0 m", high="6000 m", hint="Above the sea: thin air burns rich and sooty."),
    ),
    results=(
        FUEL_USED,
        CHARGE_TAKEN,
        ELECTRIC_CHARGE,
        Output(id="fuel_mass", label="Fuel, by mass", symbol="m", kind=heat.MASS, rounding=UP, hide_if_none=True),
        BANK_SHARE,
        Output(id="electric_share", label="That share if heated electrically", symbol="s_e", kind=RATIO, rounding=UP),
        Output(id="compared", label="The same night by each way"),
        CO_POINTS,
    ),
    intermediates=(
        *NIGHT_BETWEEN,
        Output(id="density", label="Density of the fuel", symbol="ρ", kind=heat.DENSITY),
        Output(id="air_share", label="Air pressure against sea level", symbol="p", kind=RATIO, rounding=DOWN),
    ),
    steps=(
        *night_steps("starts * start_energy", "Of the bank, before you call it empty."),
        Step(of="density", source="fuel-density", when=burns, says="Of liquid {fuel}."),
        Step(of="fuel_mass", formula="fuel_used * density", when=burns, says="Bottles are sold by mass."),
        Step(of="electric_share", formula="electric_charge / gives", says="More than 100 %: no such bank does it in one night."),
        Step(of="air_share", source="atmosphere", when=lambda v: v.flame and v.altitude > 0, says="At {altitude} the air holds that share of its oxygen."),
        Step(of="compared", source="practice", says="Each fuel with its usual efficiency, yours with the one above."),
        CO_STEP,
    ),
    rules=(
        *FLAME_STOPS,
        Verdict(verdict=STOP, when=lambda v: not at_most(v.charge, v.gives), says="This takes {charge}, and you use {gives} of the bank: it will not last the night."),
        Verdict(verdict=CAUTION, when=lambda v: not v.flame, says="{charge}, {bank_share} of what you use of the bank, for heat alone."),
        Verdict(verdict=CAUTION, when=unchecked, says="{fuel_used} of {fuel} and {charge}. First make sure of the exhaust, the combustion air and the alarm."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.altitude, THIN_AIR), says="{fuel_used} of {fuel} and {charge}; at {altitude} the heater must be made for thin air."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.loss, USUAL_HEATER), says="{fuel_used} of {fuel} and {charge}, but {loss} is more than the heaters of most vans give."),
        Verdict(verdict=CAUTION, when=throttled, says="{fuel_used} of {fuel} and {charge} at the least: {loss} is below the lowest step of most heaters, which then start and stop all night."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.bank_share, 0.25), says="{fuel_used} of {fuel}, and {charge}: {bank_share} of what you use of the bank goes to run the heater."),
        Verdict(verdict=FINE, says="{fuel_used} of {fuel} and {charge}; electrically it would be {electric_charge}."),
    ),
    remarks=(
        *NIGHT_REMARKS,
        Remark(when=lambda v: v.flame and not at_most(v.altitude, THIN_AIR), source="atmosphere",
               says="The air's pressure here is {air_share} of that at sea level. Unless the maker allows this height or its adjustment is made, the flame burns rich: soot, carbon monoxide and failed starts."),
        Remark(when=lambda v: v.electric_share > 1, source="practice", says="Electric heat would take {electric_charge}, {electric_share} of what you use of the bank. On shore power it is another matter."),
        Remark(level=NOTE, when=lambda v: v.fuel == "diesel", source="practice", says="Diesel that is not of winter grade turns waxy in hard frost and stops pump and filter: before a cold trip, fill up where winter grade is sold."),
    ),
    valid="Steady heat through the night. A heater throttled to its lowest step, or that starts again and again, burns and draws more.",
    summary="{fuel_used} and {charge}",
    summary_none="{charge} from the bank",
    keep_distinct=(("charge", "gives"),),
    tables=(
        Table(of="compared", columns=(
            Output(id="way", label="Heat from"), Output(id="fuel", label="Fuel", kind=heat.VOLUME, rounding=UP), Output(id="mass", label="By mass", kind=heat.MASS, rounding=UP),
            Output(id="charge", label="From the bank", kind=CHARGE, rounding=UP), Output(id="share", label="Of what you use", kind=RATIO, rounding=UP))),
        CO_TABLE,
    ),
)

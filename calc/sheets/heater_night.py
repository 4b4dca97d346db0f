"""heater-night: fuel or battery?"""

from dataclasses import dataclass
from types import SimpleNamespace

from calc.comfort import heaters
from calc.compare import at_most
from calc.declare import CAUTION, FINE, NOTE, STOP, Named, Remark, Rule, Step
from calc.energy.loads import bank_current
from calc.fields import Choice, Option, Quantity
from calc.kinds import CHARGE, COUNT, CURRENT, ENERGY, LENGTH, POWER, RATIO, TIME
from calc.kinds import heat as heat
from calc.sheets.comfort import (
    ALARM,
    BANK,
    EXHAUST,
    INSIDE,
    NO_ALARM,
    UNCHECKED,
    USABLE,
    flame_remarks,
)
from calc.sheets.shared import bank_voltage
from calc.shown import DOWN, UP, quantity_text
from calc.tabled import Table
from calc.worksheet import Worksheet

ELECTRIC = "electric"
USUAL = {"diesel": 0.75, "petrol": 0.75, "propane": 0.75, ELECTRIC: 1.0}  # common practice, no source
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
class HeaterNight:
    """Fuel [m³, kg] and charge [A·s] for a night, and what resistive heat would take."""

    night_heat: float
    heating: float | None
    density: float | None
    fuel_used: float | None
    fuel_mass: float | None
    running: float
    charge: float
    electric_factor: float
    electric_charge: float
    electric_current: float
    gives: float
    bank_share: float
    electric_share: float
    air_share: float
    compared: tuple[Way, ...]
    co_points: tuple[heaters.Point, ...]
    flame: bool


def run(
    *, loss: float, hours: float, fuel: str, efficiency: float, draw: float, voltage: float, starts: float,
    start_energy: float, capacity: float, usable: float, exhaust: str, alarm: str, altitude: float,
) -> HeaterNight:
    """Return what holding `loss` [W] for `hours` [s] costs in `fuel` and from the bank."""
    night, gives, flame = loss * hours, capacity * usable, fuel != ELECTRIC
    burnt = heaters.fuels().get(fuel)
    used = heaters.fuel_volume(night, burnt.heating, efficiency) if burnt else None
    running = draw * hours + starts * start_energy
    factor = 1.0 if flame else efficiency
    current = bank_current(loss, voltage, factor)
    electric = current * hours
    charge = running / voltage if flame else electric

    def way(name: str) -> Way:
        one, share = heaters.fuels().get(name), efficiency if name == fuel else USUAL[name]
        volume = heaters.fuel_volume(night, one.heating, share) if one else None
        taken = running / voltage if one else electric
        return Way(name, volume, volume * one.density if one and volume is not None else None, taken, taken / gives)

    return HeaterNight(
        night_heat=night,
        heating=burnt.heating if burnt else None,
        density=burnt.density if burnt else None,
        fuel_used=used,
        fuel_mass=used * burnt.density if burnt and used is not None else None,
        running=running,
        charge=charge,
        electric_factor=factor,
        electric_charge=electric,
        electric_current=current,
        gives=gives,
        bank_share=charge / gives,
        electric_share=electric / gives,
        air_share=heaters.air_pressure_share(altitude),
        compared=tuple(map(way, USUAL)),
        co_points=heaters.carbon_monoxide() if flame else (),
        flame=flame,
    )


def _unchecked(v: SimpleNamespace) -> bool:
    return v.flame and UNCHECKED in (v.exhaust, v.alarm)


def _flame(v: SimpleNamespace) -> bool:
    return bool(v.flame)


WORKSHEET = Worksheet(
    id="heater-night",
    title="Heater night",
    question="Fuel or battery?",
    asks="What does a warm night cost?",
    about="Litres and amp-hours for a night of heat, and what keeps it safe.",
    run=run,
    fields=(
        Quantity(id="loss", label="Heat to hold", symbol="P", kinds=(heat.HEAT,), default="900 W", low="10 W", high="20 kW", hint="What the van loses, from the heat loss sheet."),
        Quantity(id="hours", label="Hours of heating", symbol="t", kinds=(TIME,), default="9 h", low="0.1 h", high="336 h", hint="The whole time it must be held."),
        Choice(id="fuel", label="Heat from", default="diesel", options=(Option("diesel"), Option("petrol", aliases=("gasoline",)), Option("propane", aliases=("lpg",)), Option(ELECTRIC, "electric, from the bank", aliases=("battery",))),
               hint="Propane stands for bottled gas."),
        EXHAUST,
        ALARM,
        Quantity(id="draw", label="Draw while it runs", symbol="P_d", kinds=(POWER,), default="30 W", low="0 W", high="500 W", hint="Fan, pump and controls of a fuel heater, on average. Not used for electric heat."),
        bank_voltage("12.8 V"),
        BANK,
        USABLE,
        Quantity(id="efficiency", more=True, label="Efficiency", symbol="η", kinds=(RATIO,), low="10 %", high="100 %", usual=("fuel", {name: f"{share * 100:g} %" for name, share in USUAL.items()}),
                 hint="Heat into the van from what goes in: fuel heaters 75 to 85 % (no source). Electric through an inverter: its efficiency."),
        Quantity(id="starts", more=True, label="Starts in that time", symbol="k", kinds=(COUNT,), default="0", low="0", high="200", hint="Each takes charge for the glow plug, and more when it fails."),
        Quantity(id="start_energy", more=True, label="Energy of a start", symbol="E_s", kinds=(ENERGY,), default="10 W·h", low="0 W·h", high="100 W·h", hint="Glow plug and running down (no source)."),
        Quantity(id="altitude", more=True, label="Altitude", symbol="h", kinds=(LENGTH,), default="0 m", low="0 m", high="6000 m", hint="Above the sea: thin air burns rich and sooty."),
    ),
    results=(
        Named(id="fuel_used", label="Fuel used", symbol="V_f", kind=heat.VOLUME, way=UP, both=True),
        Named(id="charge", label="Charge from the bank", symbol="Q", kind=CHARGE, way=UP),
        Named(id="electric_charge", label="Charge if heated electrically", symbol="Q_e", kind=CHARGE, way=UP),
        Named(id="fuel_mass", label="Fuel, by mass", symbol="m", kind=heat.MASS, way=UP),
        Named(id="bank_share", label="Share of what you use of the bank", symbol="s", kind=RATIO, way=UP),
        Named(id="electric_share", label="That share if heated electrically", symbol="s_e", kind=RATIO, way=UP),
        Named(id="compared", label="The same night by each way"),
        Named(id="co_points", label="Carbon monoxide: alarms and limits"),
    ),
    between=(
        Named(id="night_heat", label="Heat in that time", symbol="E", kind=ENERGY, way=UP),
        Named(id="heating", label="Lower heating value", symbol="H", kind=heat.ENERGY_DENSITY, digits=4),
        Named(id="density", label="Density of the fuel", symbol="ρ", kind=heat.DENSITY),
        Named(id="running", label="Energy to run it", symbol="E_d", kind=ENERGY, way=UP),
        Named(id="electric_factor", label="Efficiency of electric heat", symbol="η_e", kind=RATIO),
        Named(id="electric_current", label="Current of electric heat", symbol="I_e", kind=CURRENT, way=UP),
        Named(id="gives", label="What you use of the bank", symbol="Q_u", kind=CHARGE, way=DOWN),
        Named(id="air_share", label="Air pressure against sea level", symbol="p", kind=RATIO, way=DOWN),
    ),
    steps=(
        Step(of="night_heat", formula="loss * hours", says="Heat flow over time is heat."),
        Step(of="heating", source="fuel-heat", when=_flame, says="{fuel}, with the steam leaving as steam."),
        Step(of="fuel_used", formula="night_heat / (heating * efficiency)", source="fuel-heat", when=_flame, says="What goes up the exhaust has to be burnt too."),
        Step(of="density", source="fuel-density", when=_flame, says="Of liquid {fuel}."),
        Step(of="fuel_mass", formula="fuel_used * density", when=_flame, says="Bottles are sold by mass."),
        Step(of="running", formula="draw * hours + starts * start_energy", source="practice", when=_flame, says="Fan, pump and starts."),
        Step(of="charge", formula="running / voltage", source="ohm", when=_flame, says="A fuel heater still needs the bank."),
        Step(of="electric_factor", source="practice", says="A resistor straight on the bank turns all of it into heat; an inverter takes its part."),
        Step(of="electric_current", formula="loss / (electric_factor * voltage)", source="ohm", says="All night long."),
        Step(of="electric_charge", formula="loss * hours / (electric_factor * voltage)", source="ohm", says="The same heat from the bank alone."),
        Step(of="charge", formula="electric_charge", when=lambda v: not v.flame, says="Electric heat is all charge; the fan's draw becomes heat as well."),
        Step(of="gives", formula="capacity * usable", says="Of the bank, before you call it empty."),
        Step(of="bank_share", formula="charge / gives", says="Everything else aboard comes on top."),
        Step(of="electric_share", formula="electric_charge / gives", says="More than 100 %: no such bank does it in one night."),
        Step(of="air_share", source="atmosphere", when=lambda v: v.flame and v.altitude > 0, says="At {altitude} the air holds that share of its oxygen."),
        Step(of="compared", source="practice", says="Each fuel with its usual efficiency, yours with the one above."),
        Step(of="co_points", source="co-limits", when=_flame, says="Parts per million by volume, with the time an alarm takes or a person may."),
    ),
    rules=(
        Rule(verdict=STOP, when=lambda v: v.flame and v.exhaust == INSIDE, says="Do not light it: a flame that breathes your air and exhausts into it can kill while you sleep."),
        Rule(verdict=STOP, when=lambda v: v.flame and v.alarm == NO_ALARM, says="Fit a carbon monoxide alarm first. The sum itself: {fuel_used} of {fuel} and {charge}."),
        Rule(verdict=STOP, when=lambda v: not at_most(v.charge, v.gives), says="This takes {charge}, and you use {gives} of the bank: it will not last the night."),
        Rule(verdict=CAUTION, when=lambda v: not v.flame, says="{charge}, {bank_share} of what you use of the bank, for heat alone."),
        Rule(verdict=CAUTION, when=_unchecked, says="{fuel_used} of {fuel} and {charge}. First make sure of the exhaust, the combustion air and the alarm."),
        Rule(verdict=CAUTION, when=lambda v: not at_most(v.altitude, THIN_AIR), says="{fuel_used} of {fuel} and {charge}; at {altitude} the heater must be made for thin air."),
        Rule(verdict=CAUTION, when=lambda v: not at_most(v.bank_share, 0.25), says="{fuel_used} of {fuel}, and {charge}: {bank_share} of what you use of the bank goes to run the heater."),
        Rule(verdict=FINE, says="{fuel_used} of {fuel} and {charge}; electrically it would be {electric_charge}."),
    ),
    remarks=(
        *flame_remarks(_flame),
        Remark(when=lambda v: v.flame and not at_most(v.altitude, THIN_AIR), source="atmosphere",
               says="The air's pressure here is {air_share} of that at sea level. Unless the maker allows this height or its adjustment is made, the flame burns rich: soot, carbon monoxide and failed starts."),
        Remark(when=lambda v: not v.flame, source="practice", says="{electric_current} for hours heats every loose joint on the way: check wire, fuse and torque first. Keep elements clear of bedding, and never leave one on that lies or can fall against cloth."),
        Remark(when=lambda v: v.electric_share > 1, source="practice", says="Electric heat would take {electric_charge}, {electric_share} of what you use of the bank. On shore power it is another matter."),
        Remark(when=lambda v: v.fuel == "propane", source="practice", says="Gas is heavier than air and gathers on the floor: a drop-out hole, a tight system, and a sniff before any spark. In frost butane stays liquid and only propane burns; the bottle takes a chill as it gives."),
        Remark(when=lambda v: v.flame and not at_most(v.bank_share, 0.25), source="practice", says="A tired or cold bank may sag below the heater's cut-out before morning, and in frost that is when it is missed. Leave a reserve."),
        Remark(level=NOTE, when=_flame, source="fuel-heat", says="Lower heating values. Higher ones stand in many tables and would promise about 6 to 8 % more."),
    ),
    valid="Steady heat through the night. A heater throttled to its lowest step, or that starts again and again, burns and draws more.",
    gist="{fuel_used} and {charge}",
    gist_none="{charge} from the bank",
    apart=(("charge", "gives"),),
    tables=(
        Table(of="compared", columns=(
            Named(id="way", label="Heat from"), Named(id="fuel", label="Fuel", kind=heat.VOLUME, way=UP), Named(id="mass", label="By mass", kind=heat.MASS, way=UP),
            Named(id="charge", label="From the bank", kind=CHARGE, way=UP), Named(id="share", label="Of what you use", kind=RATIO, way=UP))),
        Table(of="co_points", folded=True, columns=(Named(id="ppm", label="ppm"), Named(id="means", label="What it means"), Named(id="source", label="By"))),
    ),
)

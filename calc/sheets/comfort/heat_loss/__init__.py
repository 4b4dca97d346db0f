"""heat-loss: what does the van lose on a cold night?"""

# fmt: off
from collections.abc import Mapping
from dataclasses import replace

from calc.comfort import envelope
from calc.comfort.envelope import Insulation
from calc.comfort.heaters import START_ENERGY
from calc.comfort.rules import flame as of_flames
from calc.comfort.rules import heat_loss as of_loss
from calc.comfort.rules import heaters as of_heaters
from calc.energy.rules import draw as of_draws
from calc.energy.rules import loads as of_loads
from calc.sheets.comfort.heat_loss.calculate import calculate, listed
from calc.sheets.comfort.heat_loss.words import FINE, FINE_TO_BUY, STEPS
from calc.sheets.parts import comfort
from calc.tables import SEEN
from calc.units.kinds import (
    CHARGE,
    COUNT,
    ENERGY,
    LENGTH,
    NUMBER,
    RATIO,
    RISE,
    TEMPERATURE,
    TIME,
    heat,
)
from calc.units.shown import UP
from calc.worksheet.declare import Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Parts
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet


def _label(row: Mapping[str, str]) -> str:
    return row["material"] if row["confidence"] == SEEN else f"{row['material']} (no source)"


_TOO_COLD = "{inside} is colder than advised for sleep: heat to 18 °C, and never stay long below 16 °C."
_TOO_LITTLE = "{power} is too little above the loss of {loss}: no reserve for wind and warming up."

WORKSHEET = Worksheet(
    id="heat-loss",
    title="Heat loss",
    question="How big a heater does this van need?",
    about="Heat lost through walls, glass and air, and the heater you need.",
    calculate=calculate,
    picture=Parts(
        parts=(
            ("wall_loss", "Walls"), ("roof_loss", "Roof"), ("floor_loss", "Floor"), ("glass_loss", "Glazing"), ("bridges", "Metal ribs"),
            ("infiltration", "Air changes"), ("denser", "Denser cold air"),
        ),
        caption="Where the heat goes",
    ),
    fields=(
        Quantity(id="length", label="Length inside", symbol="L", kinds=(LENGTH,), default="3.6 m", low="0.5 m", high="15 m", hint="Heated space, cab included if no curtain separates it."),
        Quantity(id="width", advanced=True, label="Width inside", symbol="W", kinds=(LENGTH,), default="1.75 m", low="0.5 m", high="4 m", hint="From lining to lining."),
        Quantity(id="height", advanced=True, label="Height inside", symbol="H", kinds=(LENGTH,), default="1.85 m", low="0.5 m", high="4 m", hint="From floor to ceiling."),
        Quantity(id="insulation", label="Insulation of walls and roof", symbol="d", kinds=(LENGTH,), default="30 mm", low="0 mm", high="300 mm",
                 hint="Average as fitted, with compressed parts. Ribs are under More options."),
        Choice(id="material", advanced=True, label="Insulation material", default=Insulation.MINERAL_WOOL, example="like mineral wool",
               of=Insulation,
               options=tuple(Option(name, _label(row)) for name, row in envelope.materials().items()), hint="Sets the conductivity; the maker's value is better."),
        Quantity(id="glazing", label="Glazing", symbol="A_g", kinds=(heat.SURFACE,), default="3 m²", low="0 m²", high="30 m²", hint="Windscreen, doors, windows and roof lights together."),
        Quantity(id="air_changes", advanced=True, label="Air changes", symbol="n", kinds=(heat.RATE,), default="3 per hour", low="0 per hour", high="30 per hour",
                 hint="Closed van 0.5 to 3 per hour (no source); two sleepers 3."),
        Quantity(id="inside", advanced=True, label="Inside", symbol="T_i", kinds=(TEMPERATURE,), default="18 °C", low="0 °C", high="35 °C", hint="18 °C is the usual advice for a bedroom at night."),
        Quantity(id="outside", label="Outside", symbol="T_o", kinds=(TEMPERATURE,), default="-5 °C", low="-60 °C", high="30 °C", hint="The coldest night to plan for."),
        Quantity(id="heater_output", label="Heater you have", symbol="P_h", kinds=(heat.HEAT,), optional=True, low="50 W", high="30 kW", example="2 kW",
                 hint="Its highest heat output. Empty: the size needed is given."),
        Quantity(id="hours", advanced=True, label="Hours of heating", symbol="t_n", kinds=(TIME,), default="9 h", low="0.1 h", high="336 h", hint="Time for fuel and charge."),
        *(replace(one, advanced=True) for one in (comfort.HEAT_FROM, comfort.EXHAUST, comfort.ALARM)),
        Quantity(**comfort.BURNS, id="altitude", advanced=True, since=2, label="Altitude", symbol="h", kinds=(LENGTH,), default="0 m", low="0 m", high="6000 m", hint="Above sea level: in thin air a heater soots."),
        Quantity(id="people", advanced=True, label="Sleepers", symbol="N", kinds=(COUNT,), default="2", low="0", high="12", hint="Their heat helps, but is not counted for the heater."),
        Quantity(id="conductivity", advanced=True, label="Conductivity", symbol="λ", kinds=(heat.CONDUCTIVITY,), low="0.01 W/(m·K)", high="2 W/(m·K)",
                 default_by=("material", {name: f"{float(row['used_w_mk']):g} W/(m·K)" for name, row in envelope.materials().items()}), hint="Of the dry insulation. Empty: the highest published value."),
        Quantity(id="floor_insulation", advanced=True, label="Insulation of the floor", symbol="d_f", kinds=(LENGTH,), default="20 mm", low="0 mm", high="300 mm", hint="Of the same material."),
        Quantity(id="lining", advanced=True, label="Lining of plywood", symbol="d_l", kinds=(LENGTH,), default="4 mm", low="0 mm", high="50 mm", hint="Inside the insulation, all round."),
        Quantity(id="glazing_u", advanced=True, label="U-value of the glazing", symbol="U_g", kinds=(heat.CONDUCTANCE,), default="5.8 W/(m²·K)", low="0.5 W/(m²·K)", high="7 W/(m²·K)",
                 hint="Single glass 5.8, double 2.8 to 3, without covers."),
        Quantity(id="cover", advanced=True, label="Resistance of window covers", symbol="R_c", kinds=(heat.INSULANCE,), default="0.3 m²·K/W", low="0 m²·K/W", high="5 m²·K/W",
                 hint="Close-fitting quilted mat about 0.3 (no source); loose: little."),
        Quantity(id="thermal_bridge", advanced=True, label="Added by metal ribs", symbol="b", kinds=(RATIO,), default="20 %", low="0 %", high="200 %", hint="On walls, roof and floor (no source)."),
        Quantity(id="ribs", advanced=True, label="Bare metal, share of the area", symbol="r", kinds=(RATIO,), default="10 %", low="0 %", high="80 %", hint="Ribs and frames without insulation, for the upper bound."),
        Quantity(id="person", advanced=True, label="Heat of a sleeper", symbol="P_1", kinds=(heat.HEAT,), default="50 W", low="0 W", high="200 W", hint="About 70 W asleep, part of it as moisture."),
        Quantity(id="margin", advanced=True, label="Margin for the heater", symbol="m", kinds=(RATIO,), default="30 %", low="0 %", high="200 %", hint="For wind, damp insulation and warming up (no source)."),
        Quantity(id="contents", advanced=True, label="Mass of the fit-out", symbol="M", kinds=(heat.MASS,), default="200 kg", low="1 kg", high="3000 kg", hint="Furniture, lining, bedding, stores."),
        comfort.HEATER_EFFICIENCY,
        replace(comfort.DRAW, advanced=True),
        replace(comfort.BANK_CHEMISTRY, advanced=True),
        replace(comfort.VOLTAGE_FIELD, advanced=True, symbol="U"),
        replace(comfort.BANK, advanced=True),
        replace(comfort.USABLE, advanced=True),
    ),
    results=(
        Output(id="loss", label="Heat lost", symbol="P", kind=heat.HEAT, both=True, at="heat.loss"),
        Output(id="to_buy", label="Heater needed, at least", symbol="P_b", kind=heat.HEAT, rounding=UP, both=True, at="size.to_buy"),
        comfort.FUEL_USED,
        comfort.CHARGE_TAKEN,
        comfort.ELECTRIC_CHARGE,
        comfort.INVERTER_CHARGE,
        comfort.BANK_SHARE,
        Output(id="heater", label="Heater, with margin", symbol="P_m", kind=heat.HEAT, both=True, at="size.heater"),
        Output(id="conduction", label="Through the shell", symbol="P_c", kind=heat.HEAT, at="heat.conduction"),
        Output(id="infiltration", label="With the air", symbol="P_a", kind=heat.HEAT, at="heat.infiltration"),
        Output(id="wall_loss", label="Walls", symbol="P_w", kind=heat.HEAT, at="heat.wall_loss"),
        Output(id="roof_loss", label="Roof", symbol="P_r", kind=heat.HEAT, at="heat.roof_loss"),
        Output(id="floor_loss", label="Floor", symbol="P_f", kind=heat.HEAT, at="heat.floor_loss"),
        Output(id="glass_loss", label="Glazing, uncovered", symbol="P_g", kind=heat.HEAT, at="heat.glass_loss"),
        Output(id="covered_loss", label="All, with windows covered", symbol="P_cov", kind=heat.HEAT, at="heat.covered_loss"),
        Output(id="night_loss", label="Heat still needed beside sleepers", symbol="P_n", kind=heat.HEAT, at="sleepers.night_loss"),
        Output(id="low", label="Lower bound: no metal bridges", symbol="P_low", kind=heat.HEAT, at="heat.low"),
        Output(id="high", label="Upper bound: bare ribs", symbol="P_high", kind=heat.HEAT, at="heat.high"),
        Output(id="warm_up", label="Time to warm up from cold, about", symbol="t", kind=TIME, digits=2, at="warming.time"),
        Output(id="warm_fuel", label="Extra fuel for that", symbol="V_t", kind=heat.VOLUME, both=True, hide_if_none=True, at="warming.fuel"),
        Output(id="warm_charge", label="Extra charge for that", symbol="Q_t", kind=CHARGE, hide_if_none=True, at="warming.charge"),
        comfort.CO_POINTS,
        Output(id="materials", label="Insulation: values and sources", needs_step=False, find=lambda _: listed()),
    ),
    intermediates=(
        *comfort.NIGHT_BETWEEN,
        Output(id="rsi_wall", label="Inner surface, wall", symbol="R_iw", kind=heat.INSULANCE, at="heat.shell.rsi_wall"),
        Output(id="rsi_roof", label="Inner surface, roof", symbol="R_ir", kind=heat.INSULANCE, at="heat.shell.rsi_roof"),
        Output(id="rsi_floor", label="Inner surface, floor", symbol="R_if", kind=heat.INSULANCE, at="heat.shell.rsi_floor"),
        Output(id="rse", label="Outer surface", symbol="R_e", kind=heat.INSULANCE, at="heat.shell.rse"),
        Output(id="skin", label="Body sheet", symbol="d_s", kind=LENGTH, find=comfort.constant(envelope.SKIN)),
        Output(id="skin_conductivity", label="Conductivity of steel", symbol="λ_s", kind=heat.CONDUCTIVITY, find=comfort.constant(envelope.STEEL)),
        Output(id="lining_conductivity", label="Conductivity of plywood", symbol="λ_l", kind=heat.CONDUCTIVITY, find=comfort.constant(envelope.PLYWOOD)),
        Output(id="wall_u", label="U-value of the wall", symbol="U_w", kind=heat.CONDUCTANCE, at="heat.shell.wall_u"),
        Output(id="roof_u", label="U-value of the roof", symbol="U_r", kind=heat.CONDUCTANCE, at="heat.shell.roof_u"),
        Output(id="floor_u", label="U-value of the floor", symbol="U_f", kind=heat.CONDUCTANCE, at="heat.shell.floor_u"),
        Output(id="bare_u", label="U-value of bare sheet", symbol="U_b", kind=heat.CONDUCTANCE, at="heat.shell.bare_u"),
        Output(id="cover_u", label="U-value of covered glazing", symbol="U_cov", kind=heat.CONDUCTANCE, at="heat.shell.cover_u"),
        Output(id="plane", label="Area of the floor, and of the roof", symbol="A", kind=heat.SURFACE, at="heat.box.plane"),
        Output(id="wall_area", label="Area of the walls", symbol="A_w", kind=heat.SURFACE, at="heat.box.wall_area"),
        Output(id="volume", label="Volume of air", symbol="V", kind=heat.SPACE, at="heat.box.volume"),
        Output(id="rise", label="Inside warmer by", symbol="ΔT", kind=RISE, at="heat.rise"),
        Output(id="bridges", label="Added by metal", symbol="P_rib", kind=heat.HEAT, at="heat.bridges"),
        Output(id="air_heat", label="Heat capacity of air", symbol="c", kind=heat.AIR_HEAT, find=comfort.constant(envelope.AIR_HEAT_BY_VOLUME)),
        Output(id="cold_air", label="Heat capacity of the air outside", symbol="c_o", kind=heat.AIR_HEAT, digits=4, at="heat.cold_air"),
        Output(id="denser", label="Addition for denser cold air", symbol="P_o", kind=heat.HEAT, at="heat.denser"),
        Output(id="people_heat", label="Heat of the sleepers", symbol="P_p", kind=heat.HEAT, at="sleepers.people_heat"),
        Output(id="fresh", label="Fresh air for each sleeper", symbol="Q_1", kind=heat.AIRFLOW, at="sleepers.fresh"),
        Output(id="rate", label="Loss per degree", symbol="K", kind=heat.HEAT_RATE, at="warming.rate"),
        Output(id="wood_heat", label="Specific heat of timber", symbol="c_w", kind=heat.SPECIFIC_HEAT, find=comfort.constant(envelope.TIMBER_HEAT)),
        Output(id="store", label="Heat capacity of the fit-out", symbol="C_f", kind=heat.HEAT_STORE, at="warming.store"),
        Output(id="power", label="Heater output used", symbol="P_t", kind=heat.HEAT, at="size.power"),
        Output(id="warm_share", label="Loss as a share of the heater", symbol="s", kind=NUMBER, at="warming.warm_share"),
        Output(id="time_constant", label="Time constant", symbol="τ", kind=TIME, at="warming.time_constant"),
        Output(id="headroom", label="Heater output above the loss", kind=RATIO, at="size.headroom"),
        Output(id="air_share", label="Air pressure against sea level", symbol="p", kind=RATIO),
        Output(id="start_energy", label="Energy of a start", symbol="E_s", kind=ENERGY, find=comfort.constant(START_ENERGY)),
    ),
    steps=STEPS,
    rules=(
        *comfort.FLAME_STOPS,
        Placed(rule=of_loss.TOO_WEAK, at="size", headline="{heater_output} cannot hold {inside} at {outside}: the van loses {loss}. It needs at least {to_buy}."),
        Placed(rule=of_draws.BEYOND_BANK, at="heating.draw", headline="Not enough: {hours} take {charge}, and the bank gives {gives}. The van loses {loss}."),
        Placed(rule=of_loss.WARM_UP_BEYOND_BANK, headline="Not enough: warming up takes {warm_charge}, {hours} after it {charge}, and the bank gives {gives}."),
        Placed(rule=of_loads.ALL_BECOMES_HEAT, at="heating.from_bank", headline="Heat with fuel: {hours} take {charge}, {bank_share} of the usable bank."),
        Placed(rule=of_loss.NO_SPARE, at="size", headline="{heater_output} leaves too little reserve over a loss of {loss}. At least {to_buy} is needed."),
        Placed(rule=of_heaters.BEYOND_USUAL, at="size.heater", headline="A heater of {heater} is more than most vans carry. Insulate, cover the glass, close the gaps."),
        Placed(rule=of_loss.LITTLE_OUTPUT, at="size", headline=_TOO_LITTLE),
        Placed(rule=of_loss.SLOW, at="own_warming", headline=_TOO_LITTLE),
        Placed(rule=of_loss.STRAINS_HEART, at="heat", headline=_TOO_COLD),
        Placed(rule=of_loss.COLD, at="heat", headline=_TOO_COLD),
        *placed("sleepers", of_loss.STUFFY),
        of_heaters.THIN_AIR_FLAME,
        Placed(rule=of_heaters.FUEL_FAILS, at="fuel_in_cold", headline="At {outside} {fuel} may fail: carry fuel for such cold, and a second way to keep warm."),
        comfort.LITTLE_LEFT_BY_HEATER,
        Placed(rule=of_flames.UNCHECKED, at="flame", headline="Check exhaust, combustion air and alarm first. The van loses {loss} and needs at least {to_buy}."),
        FINE_TO_BUY, FINE,
        *comfort.NIGHT_ADVICE,
        *placed("heating", of_heaters.BELOW_LOWEST_STEP),
        of_loss.LARGER_THAN_NEEDED,
        *placed("size", of_loss.RIBS_BEYOND_HEATER),
        of_loss.NEVER_SEAL,
        *placed("sleepers", of_loss.FRESH_AIR_FOR_SLEEPERS),
        *placed("heat", of_loss.WATER_FREEZES, of_loss.RIBS_MATTER, of_loss.GLASS_MATTERS),
        *placed("warming", of_loss.LONG_TO_WARM),
        *placed("fuel_in_cold", of_heaters.DIESEL_TURNS_WAXY, of_heaters.PROPANE_STAYS_LIQUID),
        of_loss.HIGHEST_CONDUCTIVITY, of_loss.ROUND_FIGURE_OF_AIR, of_loss.BEDROOM,
    ),
    leads=(
        Lead(label="Fuel and charge for a night of that", sheet="heater-night",
             carry=alike("loss", "hours", "fuel", "exhaust", "alarm", "draw", "chemistry", "voltage", "capacity", "usable", "efficiency", "altitude")),
    ),
    valid="Steady cold, dry insulation, one temperature inside, wind and sky not counted. Metal ribs are bounded, not solved.",
    summary="{loss} lost; heater {heater}",
    older_defaults=({"people": "0", "air_changes": "1 per hour", **comfort.OLDER_BANK, **comfort.OLDER_FLAME},),
    keep_distinct=(("power", "heater"), ("power", "loss"), ("charge", "gives")),
    tables=(
        comfort.CO_TABLE,
        Table(of="materials", folded=True, columns=(
            Output(id="name", label="Insulation"), Output(id="used", label="Used"), Output(id="span", label="Found"), Output(id="source", label="By"))),
    ),
)

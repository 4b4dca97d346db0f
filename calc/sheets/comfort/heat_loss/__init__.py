"""heat-loss: what does the van lose on a cold night?"""

from dataclasses import replace
from types import SimpleNamespace

from calc.comfort import envelope
from calc.sheets.comfort.heat_loss.calculate import run
from calc.sheets.parts import comfort
from calc.units.compare import at_least, at_most
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
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

BREATHES, STRAINS = 16.0, 12.0  # °C: housing advice after WHO
FRESH = 15 / 3600  # m³/s of outside air a sleeper: common practice, no source
LEAST = 1.1  # of the loss, below which nothing is left for wind: common practice, no source
SLOW = 4 * 3600.0  # s to warm up, beyond which a night begins cold: common practice, no source
WAXES, WINTER, LIQUID = -10.0, -15.0, -30.0  # °C, where diesel waxes, that of winter grade too, and propane hardly boils: from memory


def _label(name: str) -> str:
    return name if envelope.materials()[name]["confidence"] == "seen in text" else f"{name} (no source)"


def _holds(v: SimpleNamespace) -> bool:
    return not v.sure or at_least(v.power, v.loss)


def _tight(v: SimpleNamespace) -> bool:
    return not at_least(v.power, LEAST * v.loss)


def _slow(v: SimpleNamespace) -> bool:
    return v.warm_up is None or not at_most(v.warm_up, SLOW)


def _spare(v: SimpleNamespace) -> bool:
    return not v.sure or (at_least(v.power, v.heater) and at_least(v.power, v.high))


def _stuffy(v: SimpleNamespace) -> bool:
    return not at_least(v.air_changes, 0.5 / 3600) or (v.fresh is not None and not at_least(v.fresh, FRESH))


def _dear(v: SimpleNamespace) -> bool:
    """The bank runs the heater through the night, but not through the warming up before it too."""
    return not _slow(v) and not at_most(v.charge + v.warm_charge, v.gives)


def _stiff(v: SimpleNamespace) -> bool:
    """The fuel itself may fail in such cold."""
    return at_most(v.outside, {"diesel": WINTER, "propane": LIQUID}.get(v.fuel, -273.15))


WORKSHEET = Worksheet(
    id="heat-loss",
    title="Heat loss",
    question="What does the van lose on a cold night?",
    entry_question="How big a heater?",
    about="Heat lost through walls, glass and air, and the heater that holds it.",
    calculate=run,
    fields=(
        Quantity(id="length", label="Length inside", symbol="L", kinds=(LENGTH,), default="3.6 m", low="0.5 m", high="15 m", hint="Of the heated space, cab included if no curtain parts it off."),
        Quantity(id="width", label="Width inside", symbol="W", kinds=(LENGTH,), default="1.75 m", low="0.5 m", high="4 m", hint="From lining to lining."),
        Quantity(id="height", label="Height inside", symbol="H", kinds=(LENGTH,), default="1.85 m", low="0.5 m", high="4 m", hint="From floor to ceiling."),
        Quantity(id="insulation", label="Insulation of walls and roof", symbol="d", kinds=(LENGTH,), default="30 mm", low="0 mm", high="300 mm",
                 hint="As it lies, squeezed parts included; bare parts belong to the ribs below."),
        Choice(id="material", label="Insulation material", default="mineral wool", example="like mineral wool",
               options=tuple(Option(name, _label(name)) for name in envelope.materials()), hint="Sets the conductivity; the maker's figure is better."),
        Quantity(id="glazing", label="Glazing", symbol="A_g", kinds=(heat.SURFACE,), default="3 m²", low="0 m²", high="30 m²", hint="Windscreen, doors, windows and roof lights together."),
        Quantity(id="air_changes", label="Air changes", symbol="n", kinds=(heat.RATE,), default="1 per hour", low="0 per hour", high="30 per hour",
                 hint="How often the air is renewed. A closed van 0.5 to 3 per hour (no source); people need some."),
        Quantity(id="inside", label="Inside", symbol="T_i", kinds=(TEMPERATURE,), default="18 °C", low="0 °C", high="35 °C", hint="18 °C is the usual advice for a bedroom at night."),
        Quantity(id="outside", label="Outside", symbol="T_o", kinds=(TEMPERATURE,), default="-5 °C", low="-60 °C", high="30 °C", hint="The coldest night you mean to sleep through."),
        Quantity(id="heater_output", label="Heater you have", symbol="P_h", kinds=(heat.HEAT,), optional=True, low="50 W", high="30 kW", example="2 kW",
                 hint="Its highest output as heat. Empty: the sheet says what is needed."),
        Quantity(id="hours", label="Hours of heating", symbol="t_n", kinds=(TIME,), default="9 h", low="0.1 h", high="336 h", hint="The night that fuel and charge are reckoned for."),
        comfort.HEAT_FROM,
        comfort.EXHAUST,
        comfort.ALARM,
        Quantity(id="people", label="Sleepers", symbol="N", kinds=(COUNT,), default="0", low="0", high="12", hint="Their warmth is a help, not counted for the heater."),
        Quantity(id="conductivity", advanced=True, label="Conductivity", symbol="λ", kinds=(heat.CONDUCTIVITY,), low="0.01 W/(m·K)", high="2 W/(m·K)",
                 default_by=("material", {name: f"{float(row['used_w_mk']):g} W/(m·K)" for name, row in envelope.materials().items()}), hint="Of the insulation, dry. Empty: the highest figure found for the material, listed below the answer."),
        Quantity(id="floor_insulation", advanced=True, label="Insulation of the floor", symbol="d_f", kinds=(LENGTH,), default="20 mm", low="0 mm", high="300 mm", hint="Of the same material."),
        Quantity(id="lining", advanced=True, label="Lining of plywood", symbol="d_l", kinds=(LENGTH,), default="4 mm", low="0 mm", high="50 mm", hint="Inside the insulation, all round."),
        Quantity(id="glazing_u", advanced=True, label="U-value of the glazing", symbol="U_g", kinds=(heat.CONDUCTANCE,), default="5.8 W/(m²·K)", low="0.5 W/(m²·K)", high="7 W/(m²·K)",
                 hint="Single glass 5.8, double 2.8 to 3, without covers."),
        Quantity(id="cover", advanced=True, label="Resistance of window covers", symbol="R_c", kinds=(heat.INSULANCE,), default="0.3 m²·K/W", low="0 m²·K/W", high="5 m²·K/W",
                 hint="Of a close-fitting quilted mat about 0.3 (no source). A loose one adds little."),
        Quantity(id="thermal_bridge", advanced=True, label="Added by metal ribs", symbol="b", kinds=(RATIO,), default="20 %", low="0 %", high="200 %", hint="On top of walls, roof and floor (no source). The bounds show what is at stake."),
        Quantity(id="ribs", advanced=True, label="Bare metal, share of the area", symbol="r", kinds=(RATIO,), default="10 %", low="0 %", high="80 %", hint="Ribs and frames without insulation, for the upper bound."),
        Quantity(id="person", advanced=True, label="Heat of a sleeper", symbol="P_1", kinds=(heat.HEAT,), default="50 W", low="0 W", high="200 W", hint="About 70 W asleep, part of it as moisture."),
        Quantity(id="margin", advanced=True, label="Margin for the heater", symbol="m", kinds=(RATIO,), default="30 %", low="0 %", high="200 %", hint="For wind, damp insulation and warming up (no source)."),
        Quantity(id="contents", advanced=True, label="Fit-out that has to warm", symbol="M", kinds=(heat.MASS,), default="200 kg", low="1 kg", high="3000 kg", hint="Furniture, lining, bedding, stores."),
        comfort.HEATER_EFFICIENCY,
        replace(comfort.DRAW, advanced=True),
        replace(comfort.VOLTAGE_FIELD, advanced=True, symbol="U"),
        replace(comfort.BANK, advanced=True),
        replace(comfort.USABLE, advanced=True),
    ),
    results=(
        Output(id="loss", label="Heat lost", symbol="P", kind=heat.HEAT, rounding=UP, both=True),
        Output(id="heater", label="Heater, with margin", symbol="P_m", kind=heat.HEAT, rounding=UP, both=True),
        comfort.FUEL_USED,
        comfort.CHARGE_TAKEN,
        comfort.ELECTRIC_CHARGE,
        comfort.BANK_SHARE,
        Output(id="conduction", label="Through the shell", symbol="P_c", kind=heat.HEAT, rounding=UP),
        Output(id="infiltration", label="With the air", symbol="P_a", kind=heat.HEAT, rounding=UP),
        Output(id="wall_loss", label="Walls", symbol="P_w", kind=heat.HEAT, rounding=UP),
        Output(id="roof_loss", label="Roof", symbol="P_r", kind=heat.HEAT, rounding=UP),
        Output(id="floor_loss", label="Floor", symbol="P_f", kind=heat.HEAT, rounding=UP),
        Output(id="glass_loss", label="Glazing, uncovered", symbol="P_g", kind=heat.HEAT, rounding=UP),
        Output(id="covered_loss", label="All, with windows covered", symbol="P_cov", kind=heat.HEAT, rounding=UP),
        Output(id="night_loss", label="Left for the heater beside sleepers", symbol="P_n", kind=heat.HEAT, rounding=UP),
        Output(id="low", label="Bound: no metal bridges", symbol="P_low", kind=heat.HEAT, rounding=DOWN),
        Output(id="high", label="Bound: ribs bare", symbol="P_high", kind=heat.HEAT, rounding=UP),
        Output(id="warm_up", label="To warm up from cold, about", symbol="t", kind=TIME, rounding=UP, digits=2),
        Output(id="warm_fuel", label="Fuel for that, on top", symbol="V_t", kind=heat.VOLUME, rounding=UP, both=True, hide_if_none=True),
        Output(id="warm_charge", label="Charge for that, on top", symbol="Q_t", kind=CHARGE, rounding=UP, hide_if_none=True),
        comfort.CO_POINTS,
        Output(id="materials", label="Insulation: figures and sources", needs_step=False),
    ),
    intermediates=(
        *comfort.NIGHT_BETWEEN,
        Output(id="rsi_wall", label="Inner surface, wall", symbol="R_iw", kind=heat.INSULANCE),
        Output(id="rsi_roof", label="Inner surface, roof", symbol="R_ir", kind=heat.INSULANCE),
        Output(id="rsi_floor", label="Inner surface, floor", symbol="R_if", kind=heat.INSULANCE),
        Output(id="rse", label="Outer surface", symbol="R_e", kind=heat.INSULANCE),
        Output(id="skin", label="Body sheet", symbol="d_s", kind=LENGTH),
        Output(id="skin_conductivity", label="Conductivity of steel", symbol="λ_s", kind=heat.CONDUCTIVITY),
        Output(id="lining_conductivity", label="Conductivity of plywood", symbol="λ_l", kind=heat.CONDUCTIVITY),
        Output(id="wall_u", label="U-value of the wall", symbol="U_w", kind=heat.CONDUCTANCE, rounding=UP),
        Output(id="roof_u", label="U-value of the roof", symbol="U_r", kind=heat.CONDUCTANCE, rounding=UP),
        Output(id="floor_u", label="U-value of the floor", symbol="U_f", kind=heat.CONDUCTANCE, rounding=UP),
        Output(id="bare_u", label="U-value of bare sheet", symbol="U_b", kind=heat.CONDUCTANCE, rounding=UP),
        Output(id="cover_u", label="U-value of covered glazing", symbol="U_cov", kind=heat.CONDUCTANCE, rounding=UP),
        Output(id="plane", label="Area of the floor, and of the roof", symbol="A", kind=heat.SURFACE),
        Output(id="wall_area", label="Area of the walls", symbol="A_w", kind=heat.SURFACE),
        Output(id="volume", label="Volume of air", symbol="V", kind=heat.SPACE),
        Output(id="rise", label="Inside warmer by", symbol="ΔT", kind=RISE),
        Output(id="bridges", label="Added by metal", symbol="P_b", kind=heat.HEAT),
        Output(id="air_heat", label="Heat held by air", symbol="c", kind=heat.AIR_HEAT),
        Output(id="cold_air", label="Heat held by the air outside", symbol="c_o", kind=heat.AIR_HEAT, digits=4),
        Output(id="denser", label="More, as cold air is denser", symbol="P_o", kind=heat.HEAT, rounding=UP),
        Output(id="people_heat", label="Warmth of the sleepers", symbol="P_p", kind=heat.HEAT, rounding=DOWN),
        Output(id="fresh", label="Fresh air for each sleeper", symbol="Q_1", kind=heat.AIRFLOW, rounding=DOWN),
        Output(id="rate", label="Loss per degree", symbol="K", kind=heat.HEAT_RATE),
        Output(id="wood_heat", label="Specific heat of timber", symbol="c_w", kind=heat.SPECIFIC_HEAT),
        Output(id="store", label="Heat held by the fit-out", symbol="C_f", kind=heat.HEAT_STORE),
        Output(id="power", label="Heater at work", symbol="P_t", kind=heat.HEAT, rounding=UP),
        Output(id="warm_share", label="Loss as a share of the heater", symbol="s", kind=NUMBER),
        Output(id="time_constant", label="Time constant", symbol="τ", kind=TIME),
        Output(id="headroom", label="Heater above the loss by", kind=RATIO, rounding=DOWN),
        Output(id="start_energy", label="Energy of a start", symbol="E_s", kind=ENERGY),
    ),
    steps=(
        Step(of="rise", formula="inside - outside", says="What drives the heat out."),
        Step(of="plane", formula="length * width", says="Roof and floor alike."),
        Step(of="wall_area", formula="2 * (length + width) * height - glazing", says="Four walls less the glazing."),
        Step(of="volume", formula="length * width * height", says="Furniture not taken off."),
        Step(of="wall_u", formula="1 / (rsi_wall + skin / skin_conductivity + insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946",
             says="Resistances in a row add up: air film, lining, {material}, body sheet, air film. Heat goes sideways."),
        Step(of="roof_u", formula="1 / (rsi_roof + skin / skin_conductivity + insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946", says="The same layers; heat goes up."),
        Step(of="floor_u", formula="1 / (rsi_floor + skin / skin_conductivity + floor_insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946", says="Heat goes down, with open air below."),
        Step(of="bare_u", formula="1 / (rsi_wall + skin / skin_conductivity + rse)", source="iso-10456", says="Steel itself resists next to nothing: only the air films do."),
        Step(of="wall_loss", formula="wall_u * wall_area * rise", source="iso-6946", says="Conductivity of {material}: {conductivity}. Without ribs."),
        Step(of="roof_loss", formula="roof_u * plane * rise", source="conductivity", says="Without ribs."),
        Step(of="floor_loss", formula="floor_u * plane * rise", source="iso-6946", says="Without ribs."),
        Step(of="bridges", formula="thermal_bridge * (wall_loss + roof_loss + floor_loss)", source="practice", says="A share put on for metal that crosses the insulation."),
        Step(of="glass_loss", formula="glazing_u * glazing * rise", source="iso-6946", says="Uncovered."),
        Step(of="conduction", formula="wall_loss + roof_loss + floor_loss + bridges + glass_loss", says="Everything that goes through the shell."),
        Step(of="infiltration", formula="air_heat * air_changes * volume * rise", source="mackay-air", says="Each change of air carries its warmth out."),
        Step(of="cold_air", source="ideal-gas", says="By its density at {outside} and 1006 J/(kg·K), dry and at sea level."),
        Step(of="denser", formula="max(infiltration * (cold_air / air_heat - 1), 0)", source="ideal-gas", says="The round figure is for mild air; this is put on for the cold."),
        Step(of="loss", formula="conduction + infiltration + denser", says="The heat that has to be made good, all night."),
        Step(of="heater", formula="loss * (1 + margin)", source="practice", says="With the margin you chose."),
        Step(of="low", formula="wall_loss + roof_loss + floor_loss + glass_loss + infiltration + denser", says="If no metal crossed the insulation."),
        Step(of="high", formula="max(loss, (1 - ribs) * (wall_loss + roof_loss + floor_loss) + ribs * bare_u * (wall_area + 2 * plane) * rise + glass_loss + infiltration + denser)", source="iso-6946-upper",
             says="If that share of the area were bare sheet, weighed by area, and no less than with the share put on. Ribs also draw heat from beside them, so even this can be passed."),
        Step(of="cover_u", formula="1 / (1 / glazing_u + cover)", source="iso-6946", says="A close cover adds its resistance."),
        Step(of="covered_loss", formula="loss - (glazing_u - cover_u) * glazing * rise", says="What is lost with every window covered."),
        Step(of="people_heat", formula="people * person", source="metabolic", says="A sleeper gives about 40 W/m² over 1.8 m² of body, 72 W, of which the damp part does not warm the air."),
        Step(of="night_loss", formula="max(loss - people_heat, 0)", says="A help through the night. The heater is still chosen without it."),
        Step(of="fresh", formula="air_changes * volume / people", when=lambda v: v.fresh is not None, says="What comes in from outside for each of them."),
        Step(of="store", formula="contents * wood_heat", source="iso-10456", says="The fit-out taken as timber."),
        Step(of="rate", formula="loss / rise", says="What each degree costs."),
        Step(of="time_constant", formula="store / rate", source="lumped", says="After this time the van has come about two thirds of the way to where the heater at full power would bring it."),
        Step(of="warm_share", formula="loss / power", says="Of {power}, the heater at work."),
        Step(of="warm_up", formula="time_constant * ln(1 / (1 - warm_share))", source="lumped", when=lambda v: v.warm_up is not None, says="All as one lump: the air feels warm sooner, the walls stay cold longer."),
        *comfort.night_steps("start_energy", "Of the bank, before you call it empty."),
        Step(of="warm_fuel", formula="power * warm_up / (heating * efficiency)", source="fuel-heat", when=lambda v: v.warm_fuel is not None, says="The heater at full power until the cold van is warm, before the {hours} begin."),
        Step(of="warm_charge", formula="draw * warm_up / voltage", source="ohm", when=lambda v: v.flame and v.warm_charge is not None, says="To run it meanwhile."),
        Step(of="warm_charge", formula="power * warm_up / (electric_factor * voltage)", source="ohm", when=lambda v: not v.flame and v.warm_charge is not None, says="The same from the bank."),
        comfort.CO_STEP,
    ),
    rules=(
        *comfort.FLAME_STOPS,
        Verdict(verdict=STOP, when=lambda v: not _holds(v), says="{heater_output} does not hold {inside} at {outside}: the van loses {loss}."),
        Verdict(verdict=STOP, when=lambda v: not at_most(v.charge, v.gives), says="The van loses {loss}: look for a heater of {heater}. But {hours} of it take {charge}, and you use {gives} of the bank."),
        Verdict(verdict=STOP, when=_dear, says="The van loses {loss}: look for a heater of {heater}. But warming up takes {warm_charge} and {hours} after it {charge}, and you use {gives} of the bank."),
        Verdict(verdict=CAUTION, when=lambda v: not v.flame, says="The van loses {loss}: look for a heater of {heater} or more. {hours} take {charge}, {bank_share} of what you use of the bank, for heat alone."),
        Verdict(verdict=CAUTION, when=lambda v: not _spare(v), says="{loss} lost, and {heater_output} leaves too little to spare: {heater} with margin, {high} if the ribs are bare."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.heater, comfort.USUAL_HEATER), says="{loss} lost: a heater of {heater} is more than most vans carry. Insulate, cover the glass, close the gaps."),
        Verdict(verdict=CAUTION, when=lambda v: _tight(v) or _slow(v), says="{loss} lost, and {power} leaves too little for wind, or for warming up from cold in good time."),
        Verdict(verdict=CAUTION, when=lambda v: v.inside < BREATHES, says="{loss} lost, but {inside} is colder than advised for sleep: 18 °C, and never long below 16 °C."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.high, v.heater), says="{loss} lost by the share put on for ribs, {high} if they are bare: look for a heater of that or more."),
        Verdict(verdict=CAUTION, when=_stuffy, says="The van loses {loss}: a heater of {heater}, {fuel_used} of {fuel} and {charge} for {hours}. But there is little fresh air: open a vent, count it, and heat what it lets in."),
        Verdict(verdict=CAUTION, when=_stiff, says="The van loses {loss}: a heater of {heater}, {fuel_used} of {fuel} and {charge} for {hours}. But at {outside} {fuel} itself may fail: carry what its seller vouches for in such cold, and a second way to keep warm."),
        Verdict(verdict=CAUTION, when=comfort.throttled, says="The van loses {loss}, below the lowest step of most fuel heaters, which then start and stop all night. {hours} take {fuel_used} of {fuel} and {charge} at the least."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.bank_share, 0.25), says="The van loses {loss}. {hours} take {fuel_used} of {fuel}, and {charge}: {bank_share} of what you use of the bank."),
        Verdict(verdict=CAUTION, when=comfort.unchecked, says="The van loses {loss}: look for a heater of {heater} or more. {hours} take {fuel_used} of {fuel} and {charge}. First make sure of the exhaust, the combustion air and the alarm."),
        Verdict(verdict=FINE, says="The van loses {loss}: {power} holds it with {headroom} to spare. {hours} take {fuel_used} of {fuel} and {charge}."),
    ),
    remarks=(
        *comfort.NIGHT_REMARKS,
        Remark(when=lambda v: v.inside < STRAINS, source="who-rooms", says="Below 12 °C the heart is strained, and at 9 °C the body cools within about two hours. Do not plan a night like this for anyone."),
        Remark(when=lambda v: STRAINS <= v.inside < BREATHES, source="who-rooms", says="Below 16 °C the risk to the lungs rises. Small children, the old and the ill need 20 °C."),
        Remark(source="practice", says="Never seal a van tight to save heat: people, cooking and any flame need air. Whatever burns aboard takes its air from outside and sends its exhaust outside, with a carbon monoxide alarm near the bed."),
        Remark(when=lambda v: _stuffy(v) or v.people == 0, source="practice", says="Each sleeper wants about 15 m³/h of outside air (no source); with less it grows stale and damp, and water runs down the glass."),
        Remark(when=lambda v: v.outside < 0, source="practice", says="Water freezes where the heat does not reach: tanks, pipes and pumps outside the shell want draining or heat of their own. An LFP bank must not be charged below 0 °C."),
        Remark(when=lambda v: not at_most(v.high, 1.25 * v.loss), source="iso-6946-upper", says="The ribs matter here: from {low} to {high}, by how much metal is bare. Insulate over the ribs, however thinly."),
        Remark(when=lambda v: v.glazing > 0 and v.glass_loss > 0.3 * v.loss, source="iso-6946", says="The glass alone loses {glass_loss}. Close covers on all of it bring the whole down to {covered_loss}."),
        Remark(when=lambda v: v.warm_up is not None and v.warm_up > 2 * 3600, source="lumped", says="From cold this takes about {warm_up}. Start early or choose more power, and count the fuel for it."),
        Remark(when=lambda v: v.fuel == "diesel" and at_most(v.outside, WAXES), source="memory", says="At {outside} diesel that is not of winter grade turns waxy and stops pump and filter. Fill up where winter grade is sold, before the cold."),
        Remark(when=lambda v: v.fuel == "propane" and at_most(v.outside, LIQUID), source="memory", says="At {outside} even propane hardly turns to gas, and a small bottle gives less than a heater asks. Do not warm it with a flame."),
        Remark(level=NOTE, source="conductivity", says="Conductivities are the highest that we found for each material; what was found, and by whom, is listed with the answer. Wet insulation conducts several times more, so keep room air from reaching cold metal."),
        Remark(level=NOTE, source="mackay-air", says="The book's round 1.2 kJ/(m³·K) is for mild air; what colder air holds more is put on as a line of its own. Rooms: 0.5 per hour draught-proofed, 3 very draughty."),
        Remark(level=NOTE, source="who-rooms", says="Housing advice for sleep: 18 °C, or 20 °C with small children, the old or the ill."),
    ),
    valid="Steady cold, dry insulation, one temperature inside, wind and sky not counted. Metal ribs are bounded, not solved.",
    summary="{loss} lost; heater {heater}",
    keep_distinct=(("power", "heater"), ("power", "loss"), ("charge", "gives")),
    tables=(
        comfort.CO_TABLE,
        Table(of="materials", folded=True, columns=(
            Output(id="name", label="Insulation"), Output(id="used", label="Used"), Output(id="span", label="Found"), Output(id="source", label="By"))),
    ),
)

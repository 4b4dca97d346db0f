"""enclosure-airflow: does the electrical bay breathe?"""

# fmt: off
from calc.comfort.airflow import AIR_HEAT_BY_MASS, GAS, GRAVITY, PRESSURE
from calc.comfort.enclosure import EARLIER, WALLS
from calc.comfort.rules import enclosure as of_bays
from calc.sheets.comfort.enclosure_airflow.calculate import calculate, onward
from calc.sheets.comfort.enclosure_airflow.words import FINE, STEPS
from calc.sheets.parts.comfort import constant
from calc.units.constants import ABSOLUTE_ZERO
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    LENGTH,
    NUMBER,
    POWER,
    RATIO,
    RISE,
    TEMPERATURE,
    TIME,
)
from calc.units.kinds import heat as heat_
from calc.units.shown import UP
from calc.worksheet.declare import placed
from calc.worksheet.fields import Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Section
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="enclosure-airflow",
    title="Enclosure airflow",
    question="How much air does the electrical bay need?",
    about="Heat of chargers and inverters, vents or fan, and output left.",
    calculate=calculate,
    picture=Section(
        heat="heat", outside="outside", inside="at", height="height", need_flow="airflow", need_vent="vent_area",
        vent="vents", fan="fan", draught="draught", caption="Cool air in low, warm air out high",
    ),
    fields=(
        Quantity(id="throughput", label="Output of the device", symbol="P_o", kinds=(POWER,), default="400 W", low="0 W", high="20 kW", hint="At full load: a 30 A charger at 13.5 V gives 400 W."),
        Quantity(id="efficiency", label="Its efficiency", symbol="η", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output. The rest becomes heat."),
        Quantity(id="inside_limit", advanced=True, label="Warmest you allow inside", symbol="T_i", kinds=(TEMPERATURE,), default="45 °C", low="10 °C", high="80 °C", hint="Limit for the most heat-sensitive device in it."),
        Quantity(id="outside", label="Air drawn in", symbol="T_o", kinds=(TEMPERATURE,), default="30 °C", low="0 °C", high="60 °C", hint="Where the vents open: often the living space."),
        Quantity(id="height", label="Height between the vents", symbol="h", kinds=(LENGTH,), default="0.4 m", low="2 cm", high="4 m", hint="From the middle of the low one to the high one's."),
        Quantity(id="vents", label="Free area of each vent", symbol="A", kinds=(heat_.OPENING,), optional=True, default="200 cm²", low="0 cm²", high="20000 cm²", example="200 cm²", hint="Grilles leave half to two thirds. Closed bay: 0. Empty: not known."),
        Quantity(id="fan", advanced=True, label="Fan", symbol="Q_f", kinds=(heat_.AIRFLOW,), optional=True, low="0.1 m³/h", high="5000 m³/h", example="60 m³/h", hint="As fitted, often half of its label. Empty: none."),
        Quantity(id="rated_to", advanced=True, label="Full output up to", symbol="T_r", kinds=(TEMPERATURE,), default="40 °C", low="10 °C", high="90 °C", hint="From the device's sheet."),
        Quantity(id="derating", advanced=True, label="Derating above that", symbol="k", kinds=(heat_.DERATING,), default="2.5 %/K", low="0.1 %/K", high="20 %/K", hint="Output lost for each degree; 2 to 5 %/K (no source)."),
        Quantity(id="given_heat", advanced=True, label="Heat of the device, if known", symbol="P_k", kinds=(heat_.HEAT,), optional=True, low="0.1 W", high="5 kW", example="45 W", hint="Instead of output and efficiency."),
        Quantity(id="throughput_2", advanced=True, label="Output of a second device", symbol="P_o2", kinds=(POWER,), default="0 W", low="0 W", high="20 kW", example="200 W", hint="Working at the same time."),
        Quantity(id="efficiency_2", only_above="throughput_2", advanced=True, label="Efficiency of the second", symbol="η_2", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output."),
        Quantity(id="throughput_3", advanced=True, label="Output of a third device", symbol="P_o3", kinds=(POWER,), default="0 W", low="0 W", high="20 kW", example="200 W", hint="Working at the same time."),
        Quantity(id="efficiency_3", only_above="throughput_3", advanced=True, label="Efficiency of the third", symbol="η_3", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output."),
        Quantity(id="rated", advanced=True, label="Charger's rated current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.1 A", high="500 A", hint="For the charge lost to heat in a drive."),
        Quantity(id="hours", advanced=True, label="Hours of the drive", symbol="t", kinds=(TIME,), default="2 h", low="0.1 h", high="24 h", hint="With the bay as hot as that."),
        Quantity(id="discharge", advanced=True, label="Discharge coefficient", symbol="C_d", kinds=(NUMBER,), default="0.62", low="0.2", high="1", hint="Sharp-edged opening 0.60 to 0.65; less behind mesh."),
    ),
    results=(
        Output(id="airflow", label="Air needed", symbol="Q", kind=heat_.AIRFLOW, both=True, at="needed.airflow"),
        Output(id="vent_area", label="Two vents, each", symbol="A_v", kind=heat_.OPENING, rounding=UP, both=True, at="needed.vent_area"),
        Output(id="heat", label="Heat made in the bay", symbol="P", kind=heat_.HEAT, both=True, at="bay.heat"),
        Output(id="reached", label="Bay temperature reached", symbol="T", kind=TEMPERATURE, hide_if_none=True, at="air.reached"),
        Output(id="output_left", label="Output left", symbol="x", kind=RATIO, hide_if_none=True, at="derated.output_left"),
        Output(id="charge_lost", label="Charge lost to heat in a drive", symbol="Q_l", kind=CHARGE, hide_if_none=True, at="derated.charge_lost"),
        Output(id="carried", label="Go on with", needs_step=False, hide_if_none=True, find=onward),
        Output(id="thermostat", label="Set the fan's thermostat to", symbol="T_s", kind=TEMPERATURE, hide_if_none=True),
    ),
    intermediates=(
        Output(id="first_heat", label="Heat of the device", symbol="P_1", kind=heat_.HEAT, at="bay.first.heat"),
        Output(id="other_heat", label="Heat of the others", symbol="P_2", kind=heat_.HEAT, at="bay.other_heat"),
        Output(id="pressure", label="Air pressure", symbol="p", kind=heat_.PRESSURE, digits=6, find=constant(PRESSURE)),
        Output(id="gas", label="Gas constant of air", symbol="R", kind=heat_.SPECIFIC_HEAT, digits=5, find=constant(GAS)),
        Output(id="zero", label="Absolute zero", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=5, find=constant(ABSOLUTE_ZERO)),
        Output(id="gravity", label="Gravity", symbol="g", kind=heat_.ACCELERATION, find=constant(GRAVITY)),
        Output(id="air_heat", label="Specific heat of air", symbol="c", kind=heat_.SPECIFIC_HEAT, digits=4, find=constant(AIR_HEAT_BY_MASS)),
        Output(id="density", label="Density of the air drawn in", symbol="ρ", kind=heat_.DENSITY, at="bay.density"),
        Output(id="rise", label="Temperature rise allowed", symbol="ΔT", kind=RISE, at="needed.rise"),
        Output(id="speed", label="Draught per open area", symbol="w", kind=heat_.SPEED, at="needed.speed"),
        Output(id="effective", label="Free area as one opening", symbol="A_e", kind=heat_.OPENING, at="needed.effective"),
        Output(id="fan_rise", label="Temperature rise with the fan", symbol="ΔT_f", kind=RISE, at="air.fan_rise"),
        Output(id="wall_rise", label="Temperature rise with walls only", symbol="ΔT_w", kind=RISE, at="air.wall_rise"),
        Output(id="vent_speed", label="Air speed of the fan in the vents", symbol="w_f", kind=heat_.SPEED, at="air.vent_speed"),
        Output(id="at", label="Bay temperature used", symbol="T_b", kind=TEMPERATURE, at="derated.at"),
        Output(id="draught", label="Draught through the vents", symbol="Q_d", kind=heat_.AIRFLOW, at="air.draught"),
        Output(id="walls", label="Heat the walls pass", symbol="U", kind=heat_.HEAT_RATE, find=constant(WALLS)),
        Output(id="earlier", label="Margin below the limit", symbol="ΔT_s", kind=RISE, find=constant(EARLIER)),
    ),
    steps=STEPS,
    rules=(
        of_bays.NO_COOLER_AIR, of_bays.SHUT, of_bays.RUINED, of_bays.BEYOND_VENTS, of_bays.FAR_OVER_LIMIT,
        *placed("derated", of_bays.NO_OUTPUT),
        of_bays.AIR_UNKNOWN, of_bays.SHUT_AND_WARM, of_bays.OVER_LIMIT, of_bays.TOO_HOT_FOR_CABLE, of_bays.FAN_IN_CLOSED_BAY, of_bays.VENTS_TOO_SMALL_FOR_FAN,
        *placed("derated", of_bays.LESS_OUTPUT),
        of_bays.WARM_AMBIENT,
        FINE,
        of_bays.HEAT_AGES,
        *placed("bay", of_bays.DRAUGHT, of_bays.FAN),
        of_bays.NO_THERMOSTAT,
        *placed("bay", of_bays.NOT_PAST_GAS),
        of_bays.WALLS_DO,
        *placed("bay", of_bays.CHECK_FIGURE),
    ),
    valid="Well mixed air, still outside, steady heat, walls that pass no heat above 40 W. Hot spots above a heat sink are warmer than the bay.",
    summary="{airflow}, or vents of {vent_area} each",
    summary_none="air this warm cannot cool it",
    older_defaults=({"vents": ""},),
)

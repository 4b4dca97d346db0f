"""cooling-day: what does cooling cost?"""

# fmt: off
from dataclasses import replace

from calc.comfort.airflow import AIR_HEAT_BY_MASS
from calc.comfort.cooling import DIFFUSE, OUTER, PERSON, STUFFY, RunningTime
from calc.comfort.rules import cooling as of_cooling
from calc.energy.rules import bank as of_banks
from calc.energy.rules import draw as of_draws
from calc.sheets.comfort.cooling_day.calculate import calculate
from calc.sheets.comfort.cooling_day.words import FINE, STEPS
from calc.sheets.parts.comfort import (
    BANK,
    BANK_CHEMISTRY,
    OLDER_BANK,
    USABLE,
    VOLTAGE_FIELD,
    constant,
    inverter_kills,
)
from calc.sheets.parts.fields import EFFICIENCY, ROUTE
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    ENERGY,
    POWER,
    RATIO,
    RISE,
    TEMPERATURE,
    TIME,
    heat,
)
from calc.worksheet.declare import Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Bars, Either, Limit, Parts, Row
from calc.worksheet.work import Worksheet

_IF = ("basis", RunningTime.HEAT_LOAD)

WORKSHEET = Worksheet(
    id="cooling-day",
    title="Cooling day",
    question="Can the bank run an air conditioner?",
    about="Amp-hours for a cooler, how long the bank lasts, and what helps most.",
    calculate=calculate,
    picture=Either((
        Parts(
            needs="heat_load",
            parts=(("glass_heat", "Sun through the glass"), ("roof_heat", "Sun on the roof"), ("shell_heat", "Warm air outside"), ("people_heat", "People"), ("devices", "Devices")),
            caption="Where the heat comes from",
        ),
        Bars(
            rows=(Row("Cooling takes", "charge"),), limits=(Limit("The bank gives", "gives"),),
            caption="Charge for the cooling, against the bank",
        ),
    )),
    fields=(
        Quantity(id="cooling", label="Cooling of the unit", symbol="P_c", kinds=(heat.HEAT,), default="5000 BTU/h", low="50 W", high="20 kW", hint="Cooling power from its label, not its power draw."),
        Quantity(id="efficiency_ratio", advanced=True, label="Efficiency ratio", symbol="k", kinds=(heat.PERFORMANCE,), default="10 EER", low="0.2 COP", high="10 COP", hint="COP: watts of cooling per watt. EER: BTU/h per watt."),
        Choice(id="basis", advanced=True, label="Running time from", of=RunningTime, default=RunningTime.DUTY, options=(Option(RunningTime.DUTY, "a share of the time"), Option(RunningTime.HEAT_LOAD, "the van's heat load", aliases=("heat load",))), hint="Estimate it, or calculate from sun, people and walls."),
        Quantity(id="duty", advanced=True, only_if=("basis", RunningTime.DUTY), label="Share of the time it runs", symbol="d", kinds=(RATIO,), default="50 %", low="1 %", high="100 %", hint="Hot and sunny: near 100 %."),
        Quantity(id="hours", label="Hours", symbol="t", kinds=(TIME,), default="4 h", low="0.1 h", high="72 h", hint="Time it is switched on."),
        BANK_CHEMISTRY,
        VOLTAGE_FIELD,
        *(replace(one, advanced=True) for one in (ROUTE, EFFICIENCY)),
        BANK,
        replace(USABLE, advanced=True),
        Quantity(id="sun", advanced=True, only_if=_IF, label="Sun", symbol="G", kinds=(heat.IRRADIANCE,), default="600 W/m²", low="0 W/m²", high="1200 W/m²", hint="1000 W/m² at noon, 600 on average of a bright day."),
        Quantity(id="glazing", advanced=True, only_if=_IF, label="Glass in the sun", symbol="A_g", kinds=(heat.SURFACE,), default="2 m²", low="0 m²", high="30 m²", hint="The part in direct sun."),
        Quantity(id="outside", advanced=True, only_if=_IF, label="Outside", symbol="T_o", kinds=(TEMPERATURE,), default="33 °C", low="10 °C", high="55 °C", hint="In the shade."),
        Quantity(id="inside", advanced=True, only_if=_IF, label="Inside", symbol="T_i", kinds=(TEMPERATURE,), default="26 °C", low="15 °C", high="35 °C", hint="Temperature to hold."),
        Quantity(id="people", advanced=True, only_if=_IF, label="People", symbol="N", kinds=(COUNT,), default="2", low="0", high="12", hint="Each gives about 115 W, moisture included."),
        Quantity(id="devices", advanced=True, only_if=_IF, label="Heat of devices inside", symbol="P_d", kinds=(heat.HEAT,), default="60 W", low="0 W", high="5 kW", hint="Fridge, chargers, inverter, cooking, lights."),
        Quantity(id="shell", advanced=True, only_if=_IF, label="Shell and air, per degree", symbol="K", kinds=(heat.HEAT_RATE,), default="60 W/K", low="1 W/K", high="1000 W/K", hint="Loss divided by degrees: see heat loss."),
        Quantity(id="passed", advanced=True, only_if=_IF, label="Share the glass lets in", symbol="g", kinds=(RATIO,), default="87 %", low="5 %", high="100 %", hint="Clear single glass 87 %, tinted less."),
        Quantity(id="cover_passes", advanced=True, only_if=_IF, label="Share that covers let in", symbol="g_c", kinds=(RATIO,), default="30 %", low="0 %", high="100 %", hint="Outside covers about 10 %, inside 30 to 50 % (no source)."),
        Quantity(id="roof", advanced=True, only_if=_IF, label="Roof in the sun", symbol="A_r", kinds=(heat.SURFACE,), default="6 m²", low="0 m²", high="40 m²", hint="Walls in the sun may be added."),
        Quantity(id="roof_u", advanced=True, only_if=_IF, label="U-value of the roof", symbol="U_r", kinds=(heat.CONDUCTANCE,), default="1.2 W/(m²·K)", low="0.1 W/(m²·K)", high="7 W/(m²·K)", hint="About 1 with 30 mm of insulation, 6 bare."),
        Quantity(id="absorbed", advanced=True, only_if=_IF, label="Sunlight absorbed by the paint", symbol="α", kinds=(RATIO,), default="60 %", low="5 %", high="100 %", hint="White 25 to 40 %, dark 90 % (no source)."),
    ),
    results=(
        Output(id="charge", label="Charge from the bank", symbol="Q", kind=CHARGE, at="drawn.charge"),
        Output(id="power", label="Power while it runs", symbol="P", kind=POWER, at="cooler.load.power"),
        Output(id="current", label="Current while it runs", symbol="I", kind=CURRENT, at="cooler.load.current"),
        Output(id="duty_used", label="Share of the time it runs", symbol="x", kind=RATIO),
        Output(id="carries", label="The bank runs it for", symbol="t_b", kind=TIME),
        Output(id="needed", label="Bank needed", symbol="C_n", kind=CHARGE),
        Output(id="heat_load", label="Heat to remove", symbol="P_l", kind=heat.HEAT, both=True, hide_if_none=True),
        Output(id="covers_save", label="Heat saved by covers on the glass", symbol="P_s1", kind=heat.HEAT, both=True, hide_if_none=True, at="savings.covers_save"),
        Output(id="shade_saves", label="Heat saved by full shade", symbol="P_s2", kind=heat.HEAT, both=True, hide_if_none=True, at="savings.shade_saves"),
        Output(id="covers_charge", label="Charge saved by covers", symbol="Q_s1", kind=CHARGE, hide_if_none=True, at="savings.covers_charge"),
        Output(id="shade_charge", label="Charge saved by full shade", symbol="Q_s2", kind=CHARGE, hide_if_none=True, at="savings.shade_charge"),
        Output(id="vent_flow", label="Or ventilation, a little warmer than outside", symbol="Q_v", kind=heat.AIRFLOW, both=True, hide_if_none=True, at="savings.vent_flow"),
    ),
    intermediates=(
        Output(id="factor", label="Efficiency applied", symbol="η_r", kind=RATIO, at="cooler.load.factor"),
        Output(id="outer", label="Outer surface", symbol="R_e", kind=heat.INSULANCE, find=constant(OUTER)),
        Output(id="glass_heat", label="Sun through the glass", symbol="P_g", kind=heat.HEAT, at="gain.glass_heat"),
        Output(id="roof_heat", label="Sun through the roof", symbol="P_r", kind=heat.HEAT, at="gain.roof_heat"),
        Output(id="warmer", label="Outside warmer by", symbol="ΔT", kind=RISE, at="gain.warmer"),
        Output(id="shell_heat", label="Heat through shell and air", symbol="P_w", kind=heat.HEAT, at="gain.shell_heat"),
        Output(id="each", label="Heat of a person", symbol="P_1", kind=heat.HEAT, find=constant(PERSON)),
        Output(id="people_heat", label="Heat of the people", symbol="P_p", kind=heat.HEAT, at="gain.people_heat"),
        Output(id="energy", label="Energy from the bank", symbol="E", kind=ENERGY),
        Output(id="gives", label="Usable charge of the bank", symbol="Q_u", kind=CHARGE, at="drawn.bank.gives"),
        Output(id="bank_share", label="Share of that", symbol="s", kind=RATIO, at="drawn.share"),
        Output(id="diffuse", label="Share of the sun's heat in shade", symbol="f", kind=RATIO, find=constant(DIFFUSE)),
        Output(id="stuffy", label="Warmer than outside by", symbol="ΔT_v", kind=RISE, find=constant(STUFFY)),
        Output(id="density", label="Density of the air", symbol="ρ", kind=heat.DENSITY),
        Output(id="air_heat", label="Specific heat of air", symbol="c", kind=heat.SPECIFIC_HEAT, digits=4, find=constant(AIR_HEAT_BY_MASS)),
    ),
    steps=STEPS,
    rules=(
        of_cooling.TOO_SMALL,
        of_cooling.BEYOND_ANY_BANK,
        Placed(rule=of_draws.BEYOND_BANK, at="drawn", headline="Not enough: {charge} in {hours}, and the bank gives {gives}. It lasts {carries}."),
        *placed("compressor", of_banks.BEYOND_ANY_BANK, of_banks.HEAVY_LOAD),
        *placed("drawn", of_draws.LITTLE_TO_SPARE),
        of_cooling.GUESSED, of_cooling.LITTLE_IN_HAND,
        Placed(rule=of_cooling.SEASONAL_RATIO, at="cooler", headline="Type the ratio measured at 35 °C: this one is too good for a hot day."),
        FINE,
        of_cooling.HALF_OF_BANK_TAKEN, of_cooling.SELDOM_RESTS,
        of_cooling.NO_ENGINE_BESIDE_SLEEPERS,
        inverter_kills("cooler.load"),
        of_cooling.OPEN_UP, of_cooling.AIR_TOO_HOT, of_cooling.CLOSED_VAN_KILLS,
        of_cooling.LABELS,
    ),
    valid="Steady averages over the hours. Damp air needs more; a van hot from the sun needs an hour or two to cool down.",
    summary="{charge} in {hours}",
    keep_distinct=(("charge", "gives"),),
    older_defaults=({"hours": "8 h", **OLDER_BANK},),
)

"""cooling-day: what does cooling cost?"""

from dataclasses import dataclass
from types import SimpleNamespace

from calc.comfort import airflow, cooling, envelope
from calc.energy.loads import bank_current
from calc.sheets.parts.comfort import BANK, ONE_BATTERY, USABLE, VOLTAGE_FIELD, inverter_remark
from calc.sheets.parts.fields import EFFICIENCY, INVERTER, ROUTE
from calc.units.compare import at_most
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
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.work import Worksheet

cooler = cooling  # a field is called `cooling` too
DUTY, LOAD = "duty", "heat load"
OUTER = 0.07  # m²·K/W, a roof in still air: CIBSE Guide A, table A3.6, sheltered
DIFFUSE = 0.2  # of the sun's heat, that reaches into full shade from the sky: common practice, no source
RATED_AT = 35.0  # °C, outside air for which labels are measured: common practice, no source
SEASONAL = 4.5  # COP, more than labels at 35 °C show: common practice, no source
BUSY = 0.8  # of the time, beyond which a cooler has little in hand: common practice, no source
PERSON = 115.0  # W, seated at rest, dry and damp heat: Air Conditioning Engineering, table 7.16
LARGE = 8 * 3.6e6  # J, about 600 A·h at 12.8 V: more than most vans carry; common practice, no source
STUFFY = 3.0  # K above outside that moving air leaves: common practice, no source


@dataclass(frozen=True, kw_only=True)
class CoolingDay:
    """What a cooler takes [W, A, A·s], how long the bank carries it, and what would save it."""

    factor: float
    power: float
    current: float
    outer: float
    glass_heat: float
    roof_heat: float
    warmer: float
    shell_heat: float
    each: float
    people_heat: float
    heat_load: float | None
    duty_used: float
    charge: float
    energy: float
    gives: float
    carries: float
    needed: float
    bank_share: float
    covers_save: float | None
    covers_charge: float | None
    diffuse: float
    shade_saves: float | None
    shade_charge: float | None
    stuffy: float
    density: float
    air_heat: float
    vent_flow: float | None
    reckoned: bool
    keeps_up: bool


def run(
    *, cooling: float, efficiency_ratio: float, basis: str, duty: float, hours: float, voltage: float, route: str,
    efficiency: float, capacity: float, usable: float, glazing: float, sun: float, passed: float, cover_passes: float,
    roof: float, roof_u: float, absorbed: float, shell: float, outside: float, inside: float, people: float, devices: float,
) -> CoolingDay:
    """Return what `cooling` [W] at `efficiency_ratio` takes over `hours` [s], part of the time."""
    factor = efficiency if route == INVERTER else 1.0
    power = cooler.electric_power(cooling, efficiency_ratio)
    current = bank_current(power, voltage, factor)
    glass = envelope.sun_through_glass(sun, glazing, passed)
    top = envelope.sun_on_sheet(sun, roof, absorbed, roof_u, OUTER)
    warmer = outside - inside
    within = people * PERSON + devices
    load = max(glass + top + shell * warmer + within, 0.0)
    reckoned = basis == LOAD
    share = min(cooler.duty(load, cooling), 1.0) if reckoned else duty
    charge, gives = current * share * hours, capacity * usable
    density = airflow.density(outside)
    covers, shade = glass * (1 - cover_passes), (glass + top) * (1 - DIFFUSE)

    def saved(heat_: float) -> float | None:
        rest = min(cooler.duty(max(load - heat_, 0.0), cooling), 1.0)
        return max(charge - current * rest * hours, 0.0) if reckoned else None

    return CoolingDay(
        factor=factor,
        power=power,
        current=current,
        outer=OUTER,
        glass_heat=glass,
        roof_heat=top,
        warmer=warmer,
        shell_heat=shell * warmer,
        each=PERSON,
        people_heat=people * PERSON,
        heat_load=load if reckoned else None,
        duty_used=share,
        charge=charge,
        energy=charge * voltage,
        gives=gives,
        carries=gives / (current * share) if share else hours,
        needed=charge / usable,
        bank_share=charge / gives,
        covers_save=covers if reckoned else None,
        covers_charge=saved(covers),
        diffuse=DIFFUSE,
        shade_saves=shade if reckoned else None,
        shade_charge=saved(shade),
        stuffy=STUFFY,
        density=density,
        air_heat=airflow.AIR_HEAT,
        vent_flow=airflow.carrying_flow(glass + top + within, STUFFY, outside) if reckoned else None,
        reckoned=reckoned,
        keeps_up=not reckoned or at_most(load, cooling),
    )


def _reckoned(v: SimpleNamespace) -> bool:
    return bool(v.reckoned)


def _seasonal(v: SimpleNamespace) -> bool:
    return not at_most(v.efficiency_ratio, SEASONAL)


_IF = ("basis", LOAD)

WORKSHEET = Worksheet(
    id="cooling-day",
    title="Cooling day",
    question="What does cooling cost?",
    entry_question="Can the bank run an air conditioner?",
    about="Amp-hours for a cooler, how long the bank carries it, what saves it.",
    calculate=run,
    fields=(
        Quantity(id="cooling", label="Cooling of the unit", symbol="P_c", kinds=(heat.HEAT,), default="5000 BTU/h", low="50 W", high="20 kW", hint="The cold it makes, from its label, not what it takes from the supply."),
        Quantity(id="efficiency_ratio", label="Efficiency ratio", symbol="k", kinds=(heat.PERFORMANCE,), default="10 EER", low="0.2 COP", high="10 COP", hint="COP is watts of cold for a watt; EER is BTU/h for a watt. Not a seasonal figure."),
        Choice(id="basis", label="Running time from", default=DUTY, options=(Option(DUTY, "a share of the time"), Option(LOAD, "the van's heat load")), hint="Guess the share, or reckon it from sun, people and walls."),
        Quantity(id="duty", label="Share of the time it runs", symbol="d", kinds=(RATIO,), default="50 %", low="1 %", high="100 %", hint="Not used when the heat load is reckoned. On a hot day in the sun it is near 100 %."),
        Quantity(id="hours", label="Hours", symbol="t", kinds=(TIME,), default="8 h", low="0.1 h", high="72 h", hint="Over which it is switched on."),
        VOLTAGE_FIELD,
        ROUTE,
        EFFICIENCY,
        BANK,
        USABLE,
        Quantity(id="sun", only_if=_IF, label="Sun", symbol="G", kinds=(heat.IRRADIANCE,), default="600 W/m²", low="0 W/m²", high="1200 W/m²", hint="On glass and roof: 1000 W/m² at noon square on, 600 on average of a bright day."),
        Quantity(id="glazing", only_if=_IF, label="Glass in the sun", symbol="A_g", kinds=(heat.SURFACE,), default="2 m²", low="0 m²", high="30 m²", hint="The part that the sun meets."),
        Quantity(id="outside", only_if=_IF, label="Outside", symbol="T_o", kinds=(TEMPERATURE,), default="33 °C", low="10 °C", high="55 °C", hint="In the shade."),
        Quantity(id="inside", only_if=_IF, label="Inside", symbol="T_i", kinds=(TEMPERATURE,), default="26 °C", low="15 °C", high="35 °C", hint="What you want to hold."),
        Quantity(id="people", only_if=_IF, label="People", symbol="N", kinds=(COUNT,), default="2", low="0", high="12", hint="Each gives about 115 W, moisture included."),
        Quantity(id="devices", only_if=_IF, label="Heat of devices inside", symbol="P_d", kinds=(heat.HEAT,), default="60 W", low="0 W", high="5 kW", hint="Fridge, chargers, inverter, cooking, lights."),
        Quantity(id="shell", advanced=True, only_if=_IF, label="Shell and air, per degree", symbol="K", kinds=(heat.HEAT_RATE,), default="60 W/K", low="1 W/K", high="1000 W/K", hint="Loss divided by degrees, from the heat loss sheet."),
        Quantity(id="passed", advanced=True, only_if=_IF, label="Share the glass lets in", symbol="g", kinds=(RATIO,), default="87 %", low="5 %", high="100 %", hint="Clear single glass 87 %, tinted less."),
        Quantity(id="cover_passes", advanced=True, only_if=_IF, label="Share that covers let in", symbol="g_c", kinds=(RATIO,), default="30 %", low="0 %", high="100 %", hint="Of what came in before: outside covers about 10 %, inside ones 30 to 50 % (no source)."),
        Quantity(id="roof", advanced=True, only_if=_IF, label="Roof in the sun", symbol="A_r", kinds=(heat.SURFACE,), default="6 m²", low="0 m²", high="40 m²", hint="Walls in the sun may be added."),
        Quantity(id="roof_u", advanced=True, only_if=_IF, label="U-value of the roof", symbol="U_r", kinds=(heat.CONDUCTANCE,), default="1.2 W/(m²·K)", low="0.1 W/(m²·K)", high="7 W/(m²·K)", hint="About 1 with 30 mm of insulation, 6 bare."),
        Quantity(id="absorbed", advanced=True, only_if=_IF, label="Sun the paint takes up", symbol="α", kinds=(RATIO,), default="60 %", low="5 %", high="100 %", hint="White 25 to 40 %, dark 90 % (no source)."),
    ),
    results=(
        Output(id="charge", label="Charge from the bank", symbol="Q", kind=CHARGE, rounding=UP),
        Output(id="power", label="Power while it runs", symbol="P", kind=POWER, rounding=UP),
        Output(id="current", label="Current while it runs", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="duty_used", label="Share of the time it runs", symbol="x", kind=RATIO, rounding=UP),
        Output(id="carries", label="What you use of the bank carries it", symbol="t_b", kind=TIME, rounding=DOWN),
        Output(id="needed", label="Bank it would take", symbol="C_n", kind=CHARGE, rounding=UP),
        Output(id="heat_load", label="Heat to be pumped out", symbol="P_l", kind=heat.HEAT, rounding=UP, both=True, hide_if_none=True),
        Output(id="covers_save", label="Covers on the glass take off", symbol="P_s1", kind=heat.HEAT, rounding=DOWN, both=True, hide_if_none=True),
        Output(id="shade_saves", label="Full shade takes off", symbol="P_s2", kind=heat.HEAT, rounding=DOWN, both=True, hide_if_none=True),
        Output(id="covers_charge", label="Covers save of the charge", symbol="Q_s1", kind=CHARGE, rounding=DOWN, hide_if_none=True),
        Output(id="shade_charge", label="Full shade saves of the charge", symbol="Q_s2", kind=CHARGE, rounding=DOWN, hide_if_none=True),
        Output(id="vent_flow", label="Or air through, a little warmer than outside", symbol="Q_v", kind=heat.AIRFLOW, rounding=UP, both=True, hide_if_none=True),
    ),
    intermediates=(
        Output(id="factor", label="Efficiency applied", symbol="η_r", kind=RATIO),
        Output(id="outer", label="Outer surface", symbol="R_e", kind=heat.INSULANCE),
        Output(id="glass_heat", label="Sun through the glass", symbol="P_g", kind=heat.HEAT, rounding=UP),
        Output(id="roof_heat", label="Sun through the roof", symbol="P_r", kind=heat.HEAT, rounding=UP),
        Output(id="warmer", label="Outside warmer by", symbol="ΔT", kind=RISE),
        Output(id="shell_heat", label="Warmth through shell and air", symbol="P_w", kind=heat.HEAT, rounding=UP),
        Output(id="each", label="Heat of a person", symbol="P_1", kind=heat.HEAT),
        Output(id="people_heat", label="Heat of the people", symbol="P_p", kind=heat.HEAT),
        Output(id="energy", label="Energy from the bank", symbol="E", kind=ENERGY, rounding=UP),
        Output(id="gives", label="What you use of the bank", symbol="Q_u", kind=CHARGE, rounding=DOWN),
        Output(id="bank_share", label="Share of that", symbol="s", kind=RATIO, rounding=UP),
        Output(id="diffuse", label="Sun's heat that reaches into shade", symbol="f", kind=RATIO),
        Output(id="stuffy", label="Warmer than outside by", symbol="ΔT_v", kind=RISE),
        Output(id="density", label="Density of the air", symbol="ρ", kind=heat.DENSITY),
        Output(id="air_heat", label="Specific heat of air", symbol="c", kind=heat.SPECIFIC_HEAT, digits=4),
    ),
    steps=(
        Step(of="power", formula="cooling / efficiency_ratio", source="eer", says="Cold made over the ratio; an EER is turned into a COP first."),
        Step(of="factor", source="practice", when=lambda v: v.route == INVERTER, says="Through an inverter its loss comes on top."),
        Step(of="current", formula="power / (voltage * factor)", source="ohm", says="At the bank, while the compressor works."),
        Step(of="glass_heat", formula="sun * glazing * passed", source="g-value", when=_reckoned, says="What the glass lets in and gives in."),
        Step(of="outer", source="cibse-surface", when=_reckoned, says="Of a roof in still air, which the sun heats most; wind would make it less."),
        Step(of="roof_heat", formula="roof_u * roof * absorbed * sun * outer", source="sol-air", when=_reckoned, says="Sun on the sheet acts like warmer air outside; the sky's coolness is left out."),
        Step(of="warmer", formula="outside - inside", when=_reckoned, says="Below zero the shell helps."),
        Step(of="shell_heat", formula="shell * warmer", source="iso-6946", when=_reckoned, says="Walls, glass and air changes together."),
        Step(of="people_heat", formula="people * each", source="jones-people", when=_reckoned, says="Seated at rest; the damp part has to be pumped out too."),
        Step(of="heat_load", formula="max(glass_heat + roof_heat + shell_heat + people_heat + devices, 0)", when=_reckoned, says="All that comes in or is made inside."),
        Step(of="duty_used", formula="min(heat_load / cooling, 1)", when=_reckoned, says="A unit just large enough never stops."),
        Step(of="duty_used", formula="duty", when=lambda v: not v.reckoned, says="As you guess it."),
        Step(of="charge", formula="current * duty_used * hours", source="ohm", says="Current over the time it really runs."),
        Step(of="energy", formula="charge * voltage", source="ohm", says="The same as energy."),
        Step(of="gives", formula="capacity * usable", says="Before you call the bank empty."),
        Step(of="bank_share", formula="charge / gives", says="Everything else aboard comes on top."),
        Step(of="carries", formula="gives / (current * duty_used)", source="ohm", when=lambda v: v.duty_used > 0, says="With nothing else on and no sun on a panel."),
        Step(of="carries", formula="hours", when=lambda v: v.duty_used == 0, says="It need not run at all."),
        Step(of="needed", formula="charge / usable", says="To do it and no more."),
        Step(of="covers_save", formula="glass_heat * (1 - cover_passes)", source="practice", when=_reckoned, says="Off the heat load, for as long as they are on."),
        Step(of="covers_charge", formula="max(charge - current * min(max(heat_load - covers_save, 0) / cooling, 1) * hours, 0)", when=_reckoned, says="By how much less it runs; nothing while it still never stops."),
        Step(of="shade_saves", formula="(glass_heat + roof_heat) * (1 - diffuse)", source="practice", when=_reckoned, says="The sun's part, but for what the bright sky still sends."),
        Step(of="shade_charge", formula="max(charge - current * min(max(heat_load - shade_saves, 0) / cooling, 1) * hours, 0)", when=_reckoned, says="In the same way."),
        Step(of="vent_flow", formula="(glass_heat + roof_heat + people_heat + devices) / (density * air_heat * stuffy)", source="energy-balance", when=_reckoned, says="Moving air holds the van at {stuffy} above outside, for the few watts of a fan."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not v.keeps_up, says="The unit is too small: {heat_load} comes in and it pumps {cooling}. It would run all the time and not hold {inside}."),
        Verdict(verdict=STOP, when=lambda v: not at_most(v.charge, v.gives) and not at_most(v.energy / v.usable, LARGE), says="{charge} in {hours}: no bank of reasonable size does this. It would take {needed}."),
        Verdict(verdict=STOP, when=lambda v: not at_most(v.charge, v.gives), says="{charge} in {hours}, and you use {gives} of the bank: it carries this for {carries}."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.current, ONE_BATTERY), says="{charge} in {hours}, at {current} while it runs: more than one usual battery is made to give."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.bank_share, 0.5), says="{charge} in {hours}: {bank_share} of what you use of the bank goes into cooling."),
        Verdict(verdict=CAUTION, when=lambda v: not v.reckoned and v.duty < 1, says="{charge} in {hours}, if it really runs only {duty_used} of the time. In the sun it seldom rests."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.duty_used, BUSY) or (v.reckoned and not at_most(v.outside, RATED_AT)),
             says="{charge} in {hours}, with little in hand: it runs {duty_used} of the time, and in air above the 35 °C of its label it makes less cold from more power."),
        Verdict(verdict=CAUTION, when=_seasonal, says="{charge} in {hours}, by a ratio that is too good for a hot day: look for the one measured at 35 °C."),
        Verdict(verdict=FINE, says="{charge} in {hours}, {bank_share} of what you use of the bank."),
    ),
    remarks=(
        Remark(when=lambda v: not at_most(v.charge, v.gives), source="practice", says="Shade, covers on the outside of the glass and a fan cost next to nothing; shore power or a drive has to carry the rest. Never run an engine or a generator for it beside people asleep: its exhaust kills."),
        Remark(when=lambda v: not at_most(v.current, ONE_BATTERY), source="practice", says="Cable, fuse and every joint must be rated for {current}, and for the compressor's start, which is several times that for a moment."),
        inverter_remark(lambda v: v.route == INVERTER),
        Remark(when=_seasonal, source="practice", says="So high a ratio is usually a seasonal figure or one for mild weather. On the hottest day the ratio falls by a third or more."),
        Remark(when=lambda v: v.reckoned and v.outside <= v.inside, source="practice", says="It is no warmer outside than the {inside} you want: open up and let air through instead."),
        Remark(when=lambda v: v.reckoned and v.outside > 32, source="practice", says="Air moved at {outside} takes the stuffiness away, but cools nobody by much. Shade first, and a place higher up or by the water."),
        Remark(source="practice", says="A closed van in the sun can kill a child or an animal within minutes, and a flat bank stops the cooler without a word. Never leave either to a machine."),
        Remark(level=NOTE, source="practice", says="Labels are measured at 35 °C outside or thereabouts. Hotter air, a dirty coil and short ducts make less cold from more power."),
    ),
    valid="Steady averages over the hours. Damp air asks more; a van heated through in the sun takes an hour or two to come down.",
    summary="{charge} in {hours}",
    keep_distinct=(("charge", "gives"),),
)

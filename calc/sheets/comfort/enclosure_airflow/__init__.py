"""enclosure-airflow: does the electrical bay breathe?"""

from dataclasses import dataclass
from math import sqrt
from types import SimpleNamespace

from calc.comfort import airflow
from calc.energy.alternator import charger_current, without_taper
from calc.units.compare import at_least, at_most
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
from calc.units.shown import DOWN, UP, rounded
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Quantity
from calc.worksheet.next_steps import Move
from calc.worksheet.pictures import Section
from calc.worksheet.work import Worksheet

EARLIER = 5.0  # K before the limit, where a thermostat starts the fan: common practice, no source
WARM = 50.0  # °C, beyond which ampacities taken for 30 °C no longer hold: common practice, no source
CABLE = 60.0  # °C, where common cable and plastics reach their own limit: common practice, no source
RUIN = 150.0  # °C, which nothing in a bay survives: common practice, no source
LARGEST = 0.2  # m² of each vent, more than a bay has room for: common practice, no source
LEAST_CARRIED = 0.01  # the least output that the sum of the drive takes
RUSH = 2.0  # m/s through a vent, beyond which a small fan no longer moves what it says: common practice, no source


@dataclass(frozen=True, kw_only=True)
class EnclosureAirflow:
    """Heat [W] of the bay, the air [m³/s] and vents [m²] that hold it, and what a hot device keeps.

    None where no air of that temperature can hold the limit, or nothing tells what is reached.
    """

    first_heat: float
    other_heat: float
    heat: float
    pressure: float
    gas: float
    zero: float
    gravity: float
    air_heat: float
    density: float
    rise: float | None
    airflow: float | None
    speed: float | None
    effective: float | None
    vent_area: float | None
    fan_rise: float | None
    vent_speed: float | None
    reached: float | None
    at: float | None
    draught: float | None
    output_left: float | None
    charge_lost: float | None
    carried: tuple[Move, ...] | None
    earlier: float
    thermostat: float | None
    cool: bool
    ruined: bool
    by: str


def run(
    *, throughput: float, efficiency: float, given_heat: float | None, inside_limit: float, outside: float, height: float,
    vents: float | None, fan: float | None, rated_to: float, derating: float, rated: float, hours: float, discharge: float,
    throughput_2: float, efficiency_2: float, throughput_3: float, efficiency_3: float,
) -> EnclosureAirflow:
    """Return the air that a bay needs between `outside` and `inside_limit` [°C], and what it has."""
    first = airflow.dissipated(throughput, efficiency) if given_heat is None else given_heat
    others = airflow.dissipated(throughput_2, efficiency_2) + airflow.dissipated(throughput_3, efficiency_3)
    heat, density = first + others, airflow.density(outside)
    cool = outside < inside_limit
    rise = inside_limit - outside if cool else None
    flow = speed = area = fan_rise = draught = None
    if rise is not None:
        flow = airflow.carrying_flow(heat, rise, outside)
        speed = airflow.stack_flow(1.0, discharge, height, outside, inside_limit)
        area = airflow.vent_area(flow, discharge, height, outside, inside_limit)
    by = "fan" if fan is not None else "vents" if vents is not None else "asked"
    reached = None
    if fan is not None:
        fan_rise = heat / (density * airflow.AIR_HEAT * fan)
        reached = outside + fan_rise
    elif vents is not None:
        reached = airflow.reached_by_draught(heat, vents, discharge, height, outside)
    ruined = reached is not None and not at_most(reached, RUIN)
    if ruined:
        fan_rise = reached = None
    if by == "vents" and vents is not None and reached is not None:
        draught = airflow.stack_flow(airflow.series_area(vents, vents), discharge, height, outside, reached)
    at = inside_limit if by == "asked" and cool else reached
    left = airflow.output_left(at, rated_to, derating) if at is not None else None
    starts = min(rated_to, inside_limit) - EARLIER
    return EnclosureAirflow(
        first_heat=first,
        other_heat=others,
        heat=heat,
        pressure=airflow.PRESSURE,
        gas=airflow.GAS,
        zero=airflow.ZERO,
        gravity=airflow.GRAVITY,
        air_heat=airflow.AIR_HEAT,
        density=density,
        rise=rise,
        airflow=flow,
        speed=speed,
        effective=area / sqrt(2) if area is not None else None,
        vent_area=area,
        fan_rise=fan_rise,
        vent_speed=fan / vents if fan is not None and vents is not None else None,
        reached=reached,
        at=at,
        draught=draught,
        output_left=left,
        charge_lost=_charge(rated, 1 - left, hours) if left is not None else None,
        carried=_carried(rated, left, hours),
        earlier=EARLIER,
        thermostat=starts if starts > outside else None,
        cool=cool,
        ruined=ruined,
        by=by,
    )


def _charge(rated: float, share: float, hours: float) -> float:
    """Return what a `share` of a charger's `rated` current [A] puts in, as alternator-charge does."""
    return without_taper(charger_current(limit=rated, output_left=share)).after(hours)


def _carried(rated: float, left: float | None, hours: float) -> tuple[Move, ...] | None:
    """Return the way on to the sum of the drive, with what the heat leaves."""
    if left is None or not at_least(left, LEAST_CARRIED):
        return None
    texts = (("output_left", f"{rounded(100 * left, 4, DOWN)} %"), ("charger_limit", f"{rated:.6g} A"), ("hours", f"{hours / 3600:.6g} h"))
    return (Move("What the drive then brings", texts, "alternator-charge"),)


def _within(v: SimpleNamespace) -> bool:
    return v.at is not None and at_most(v.at, v.inside_limit)


def _reached(v: SimpleNamespace) -> bool:
    return v.reached is not None


def _full(v: SimpleNamespace) -> bool:
    return v.output_left is not None and at_least(v.output_left, 1.0)


WORKSHEET = Worksheet(
    id="enclosure-airflow",
    title="Enclosure airflow",
    question="Does the electrical bay breathe?",
    entry_question="Why does the charger go slow when it is hot?",
    about="Heat of chargers and inverters, vents or a fan, and output left.",
    calculate=run,
    picture=Section(
        heat="heat", outside="outside", inside="at", height="height", need_flow="airflow", need_vent="vent_area",
        vent="vents", fan="fan", draught="draught", caption="Cool air in low, heat taken up, warm air out high",
    ),
    fields=(
        Quantity(id="throughput", label="Output of the device", symbol="P_o", kinds=(POWER,), default="400 W", low="0 W", high="20 kW", hint="What it delivers while it works hardest: a 30 A charger at 13.5 V gives about 400 W."),
        Quantity(id="efficiency", label="Its efficiency", symbol="η", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output. What does not come out stays as heat."),
        Quantity(id="inside_limit", label="Warmest you allow inside", symbol="T_i", kinds=(TEMPERATURE,), default="45 °C", low="10 °C", high="80 °C", hint="Air in the bay, for the most delicate thing in it."),
        Quantity(id="outside", label="Air drawn in", symbol="T_o", kinds=(TEMPERATURE,), default="30 °C", low="0 °C", high="60 °C", hint="From where the vents open: often the living space."),
        Quantity(id="height", label="Height between the vents", symbol="h", kinds=(LENGTH,), default="0.4 m", low="2 cm", high="4 m", hint="From the middle of the low one to the middle of the high one."),
        Quantity(id="vents", label="Free area of each vent", symbol="A", kinds=(heat_.OPENING,), optional=True, low="0.1 cm²", high="20000 cm²", example="100 cm²", hint="Of the two that are there: grilles leave half or two thirds. Empty: the sheet says what is needed."),
        Quantity(id="fan", label="Fan", symbol="Q_f", kinds=(heat_.AIRFLOW,), optional=True, low="0.1 m³/h", high="5000 m³/h", example="60 m³/h", hint="What it moves as fitted, often half of its label. Empty: none."),
        Quantity(id="rated_to", label="Full output up to", symbol="T_r", kinds=(TEMPERATURE,), default="40 °C", low="10 °C", high="90 °C", hint="From the device's sheet."),
        Quantity(id="derating", label="Then less by", symbol="k", kinds=(heat_.DERATING,), default="2.5 %/K", low="0.1 %/K", high="20 %/K", hint="Share of the output lost for each degree; 2 to 5 %/K (no source)."),
        Quantity(id="given_heat", advanced=True, label="Heat of the device, if known", symbol="P_k", kinds=(heat_.HEAT,), optional=True, low="0.1 W", high="5 kW", example="45 W", hint="Instead of output and efficiency."),
        Quantity(id="throughput_2", advanced=True, label="Output of a second device", symbol="P_o2", kinds=(POWER,), default="0 W", low="0 W", high="20 kW", hint="Working at the same time."),
        Quantity(id="efficiency_2", advanced=True, label="Efficiency of the second", symbol="η_2", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output."),
        Quantity(id="throughput_3", advanced=True, label="Output of a third device", symbol="P_o3", kinds=(POWER,), default="0 W", low="0 W", high="20 kW", hint="Working at the same time."),
        Quantity(id="efficiency_3", advanced=True, label="Efficiency of the third", symbol="η_3", kinds=(RATIO,), default="90 %", low="30 %", high="99 %", hint="At that output."),
        Quantity(id="rated", advanced=True, label="Charger's rated current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.1 A", high="500 A", hint="For the charge that heat costs over a drive."),
        Quantity(id="hours", advanced=True, label="Hours of the drive", symbol="t", kinds=(TIME,), default="2 h", low="0.1 h", high="24 h", hint="With the bay as hot as reckoned."),
        Quantity(id="discharge", advanced=True, label="Discharge coefficient", symbol="C_d", kinds=(NUMBER,), default="0.62", low="0.2", high="1", hint="Sharp-edged opening 0.60 to 0.65; less behind mesh."),
    ),
    results=(
        Output(id="airflow", label="Air needed", symbol="Q", kind=heat_.AIRFLOW, rounding=UP, both=True),
        Output(id="vent_area", label="Two vents, each", symbol="A_v", kind=heat_.OPENING, rounding=UP, both=True),
        Output(id="heat", label="Heat made in the bay", symbol="P", kind=heat_.HEAT, rounding=UP, both=True),
        Output(id="reached", label="The bay gets to", symbol="T", kind=TEMPERATURE, rounding=UP, hide_if_none=True),
        Output(id="output_left", label="Output left", symbol="x", kind=RATIO, rounding=DOWN, hide_if_none=True),
        Output(id="charge_lost", label="Charge lost to heat in a drive", symbol="Q_l", kind=CHARGE, rounding=UP, hide_if_none=True),
        Output(id="carried", label="Take it along", needs_step=False, hide_if_none=True),
        Output(id="thermostat", label="A thermostat starts the fan at", symbol="T_s", kind=TEMPERATURE, rounding=DOWN, hide_if_none=True),
    ),
    intermediates=(
        Output(id="first_heat", label="Heat of the device", symbol="P_1", kind=heat_.HEAT, rounding=UP),
        Output(id="other_heat", label="Heat of the others", symbol="P_2", kind=heat_.HEAT, rounding=UP),
        Output(id="pressure", label="Air pressure", symbol="p", kind=heat_.PRESSURE, digits=6),
        Output(id="gas", label="Gas constant of air", symbol="R", kind=heat_.SPECIFIC_HEAT, digits=5),
        Output(id="zero", label="Absolute zero", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=5),
        Output(id="gravity", label="Gravity", symbol="g", kind=heat_.ACCELERATION),
        Output(id="air_heat", label="Specific heat of air", symbol="c", kind=heat_.SPECIFIC_HEAT, digits=4),
        Output(id="density", label="Density of the air drawn in", symbol="ρ", kind=heat_.DENSITY),
        Output(id="rise", label="Warmer by at most", symbol="ΔT", kind=RISE),
        Output(id="speed", label="Draught per open area", symbol="w", kind=heat_.SPEED),
        Output(id="effective", label="Free area as one opening", symbol="A_e", kind=heat_.OPENING, rounding=UP),
        Output(id="fan_rise", label="Warmer with the fan by", symbol="ΔT_f", kind=RISE, rounding=UP),
        Output(id="vent_speed", label="The fan's air in the vents", symbol="w_f", kind=heat_.SPEED, rounding=UP),
        Output(id="at", label="Bay reckoned at", symbol="T_b", kind=TEMPERATURE, rounding=UP),
        Output(id="draught", label="Draught through the vents", symbol="Q_d", kind=heat_.AIRFLOW, rounding=DOWN),
        Output(id="earlier", label="Before the limit", symbol="ΔT_s", kind=RISE),
    ),
    steps=(
        Step(of="first_heat", formula="throughput * (1 / efficiency - 1)", source="device-loss", when=lambda v: v.given_heat is None, says="What goes in and does not come out."),
        Step(of="first_heat", formula="given_heat", when=lambda v: v.given_heat is not None, says="As you know it."),
        Step(of="other_heat", formula="throughput_2 * (1 / efficiency_2 - 1) + throughput_3 * (1 / efficiency_3 - 1)", source="device-loss", says="Of the others at work beside it."),
        Step(of="heat", formula="first_heat + other_heat", says="All of it must leave with the air; what the walls pass is not counted."),
        Step(of="density", formula="pressure / (gas * (outside - zero))", source="ideal-gas", says="Of the air as it is drawn in, at sea level."),
        Step(of="rise", formula="inside_limit - outside", when=lambda v: v.cool, says="A difference of temperatures, not a temperature."),
        Step(of="airflow", formula="heat / (density * air_heat * rise)", source="energy-balance", when=lambda v: v.cool, says="Air that is warmed by just that much carries the heat off."),
        Step(of="speed", formula="discharge * sqrt(2 * gravity * height * rise / (inside_limit - zero))", source="stack", when=lambda v: v.cool, says="Warm air rises: the draught of this height, in absolute temperature."),
        Step(of="effective", formula="airflow / speed", source="stack", when=lambda v: v.cool, says="As if there were one opening."),
        Step(of="vent_area", formula="sqrt(2) * effective", source="series-vents", when=lambda v: v.cool, says="Air passes two openings in a row, so each must be larger than one alone."),
        Step(of="fan_rise", formula="heat / (density * air_heat * fan)", source="energy-balance", when=lambda v: v.by == "fan" and _reached(v), says="What its air is warmed by, if the fan blows cool air in; one that draws warm air out carries some 5 % less for each 15 K."),
        Step(of="vent_speed", formula="fan / vents", when=lambda v: v.vent_speed is not None, says="All of its air must pass the vents."),
        Step(of="reached", source="energy-balance", when=lambda v: v.by == "fan" and _reached(v), says="{fan_rise} above {outside}. The fan decides; draught is not added."),
        Step(of="reached", source="stack", when=lambda v: v.by == "vents" and _reached(v), says="Where the draught through two vents of {vents} each carries off just the heat that is made, found by halving."),
        Step(of="draught", formula="discharge * vents / sqrt(2) * sqrt(2 * gravity * height * (reached - outside) / (reached - zero))", source="stack", when=lambda v: v.draught is not None, says="At that temperature."),
        Step(of="at", when=lambda v: v.by == "asked" and v.cool, says="The limit, if the vents or the fan are as asked for above; closed, it gets hotter."),
        Step(of="at", when=_reached, says="What it comes to."),
        Step(of="output_left", source="practice", when=_full, says="At {at}, no warmer than {rated_to}, so the device gives all it has."),
        Step(of="output_left", formula="max(0, 1 - derating * (at - rated_to))", source="practice", when=lambda v: v.output_left is not None and not _full(v), says="A straight line beyond {rated_to}; the maker's curve is better."),
        Step(of="charge_lost", formula="rated * (1 - output_left) * hours", when=lambda v: v.output_left is not None, says="Of a charger that would give {rated} for {hours}: the sum of alternator charge."),
        Step(of="thermostat", source="practice", when=lambda v: v.thermostat is not None, says="{earlier} below the lower of {rated_to} and {inside_limit}: early enough for the fan to get ahead, above the air that is drawn in."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not v.cool, says="No air at {outside} holds a bay below {inside_limit}: draw it from somewhere cooler, or move the devices."),
        Verdict(verdict=STOP, when=lambda v: v.ruined, says="The bay gets hotter than anything in it survives: it needs {airflow}, or two vents of {vent_area} each."),
        Verdict(verdict=STOP, when=lambda v: v.by == "asked" and not at_most(v.vent_area, LARGEST), says="{heat} to carry off, and no vents do that: two of {vent_area} each to hold {inside_limit}. It takes a fan that moves {airflow}, or cooler air."),
        Verdict(verdict=CAUTION, when=lambda v: v.by == "asked", says="{heat} to carry off. Closed it gets hotter than {inside_limit}; to hold that it needs {airflow}, or two vents of {vent_area} each. Say what is there."),
        Verdict(verdict=STOP, when=lambda v: not _within(v), says="The bay gets to {reached}, above the {inside_limit} you allow: it needs {airflow}, or two vents of {vent_area} each."),
        Verdict(verdict=STOP, when=lambda v: v.output_left < 1e-9, says="At {reached} the device gives nothing: keep the bay cooler."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.reached, CABLE), says="The bay gets to {reached}: within the limit you set, but too hot for common cable."),
        Verdict(verdict=CAUTION, when=lambda v: v.by == "fan" and v.vents is None, says="The bay gets to {reached} if the fan really moves {fan}. Say what the air comes in by: a fan in a closed bay moves nothing."),
        Verdict(verdict=CAUTION, when=lambda v: v.vent_speed is not None and not at_most(v.vent_speed, RUSH), says="Through vents of {vents} the fan would have to blow at {vent_speed}, and no small fan does. Give it larger ones."),
        Verdict(verdict=CAUTION, when=lambda v: not _full(v), says="At {reached} the device keeps {output_left} of its output; {charge_lost} less in {hours}."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.reached, WARM), says="The bay gets to {reached}, within {inside_limit}. Give the conductor sheets that as their ambient: cable bears less in it."),
        Verdict(verdict=FINE, says="The bay gets to {reached}, within {inside_limit}, and the device keeps its full output."),
    ),
    remarks=(
        Remark(when=lambda v: v.by == "asked" or not _within(v), source="practice", says="Heat ages electronics and softens plastics: the trade reckons half the life for each 10 K. Do not cover the devices, and keep cables and insulation clear of them."),
        Remark(when=lambda v: v.reached is not None and not at_most(v.reached, CABLE), source="practice", says="Risk of fire: at {reached} common cable and plastics pass their own limits, and every ampacity must be taken for that ambient. Stop and give it air first."),
        Remark(when=lambda v: v.by == "vents", source="stack", says="Draught needs one vent low and one high, both open to the same air. Wind, a filter or a grille full of dust can undo it: a fan and a thermostat are surer."),
        Remark(when=lambda v: v.by == "fan", source="energy-balance", says="A fan needs a way in and a way out for its air, and should it fail the bay gets hotter than this. Fit one that starts with the charger or by thermostat."),
        Remark(when=lambda v: v.thermostat is None, source="practice", says="The air drawn in is so warm that a thermostat would never rest: let the fan run with the charger."),
        Remark(when=lambda v: v.output_left is not None and not _full(v), source="practice", says="When you reckon what a drive brings, take {output_left} of the charger's rating: {charge_lost} less."),
        Remark(source="practice", says="Never vent a bay with vented lead-acid cells past sparking parts, and never draw its air from near an exhaust or a gas locker. How much air a battery needs is another sum."),
        Remark(level=NOTE, source="energy-balance", says="Check figure: 500 W and 10 K want about 148 m³/h of air at 20 °C. In thin air at 2000 m it takes a quarter more."),
    ),
    valid="Well mixed air, still outside, steady heat, walls that pass none. Hot spots above a heat sink are warmer than the bay.",
    summary="{airflow}, or vents of {vent_area} each",
    summary_none="no air this warm can do it",
)

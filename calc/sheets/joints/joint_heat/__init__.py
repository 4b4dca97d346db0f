"""joint-heat: is this joint bad?"""

from types import SimpleNamespace

from calc.electrical import contact
from calc.sheets.joints.joint_heat.calculate import run
from calc.units.compare import at_least, at_most
from calc.units.kinds import CURRENT, NUMBER, POWER, RATIO, RESISTANCE, RISE, TEMPERATURE, VOLTAGE
from calc.units.kinds.joints import VOLTAGE_PER_KELVIN
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Bar
from calc.worksheet.work import Worksheet

LIKE, AIR = "like joint", "air"


def _softens(v: SimpleNamespace) -> bool:
    return v.reaches and not at_most(v.full_drop, v.softening)


def _loses(v: SimpleNamespace) -> bool:
    return v.reaches and not at_most(v.full_drop, v.most_drop)


def _glows(v: SimpleNamespace) -> bool:
    return at_least(v.worst_heat, contact.GLOWS_MOST)


def _too_hot(v: SimpleNamespace) -> bool:
    return not at_most(v.temperature, v.hot_metal)


def _stops(v: SimpleNamespace) -> bool:
    lossy = not v.reaches or not at_most(v.drop, v.most_drop) or _loses(v) or _softens(v)
    return lossy or v.priority == 1 or _glows(v) or _too_hot(v)


def _cool(v: SimpleNamespace) -> bool:
    """Two bad joints are alike: only the air tells that a joint stays cool."""
    return v.rise is not None and v.rise_over == AIR and v.priority == 0 and not v.light


def _near(v: SimpleNamespace) -> bool:
    return v.growth_left is not None and not at_least(v.growth_left, contact.GROWTH_LEAST)


def _warm(v: SimpleNamespace) -> bool:
    return at_least(v.worst_heat, contact.GLOWS_LEAST)


def _beyond_like(v: SimpleNamespace) -> bool:
    return v.ratio is not None and not at_most(v.ratio, contact.LIKE_MOST)


def _like_worse(v: SimpleNamespace) -> bool:
    return v.ratio is not None and not at_least(v.ratio, 1 / contact.LIKE_MOST)


def _ill_kept(v: SimpleNamespace) -> bool:
    return not at_most(v.resistance, contact.WELL_KEPT)


WORKSHEET = Worksheet(
    id="joint-heat",
    title="Joint heat",
    question="Is this joint bad?",
    entry_question="Is this joint bad?",
    about="A millivolt reading across a joint under load, and what heat it means.",
    calculate=run,
    picture=Bar(value="full_drop", limit="most_drop", caption="Voltage lost in this one joint at full current"),
    fields=(
        Quantity(id="drop", label="Drop across the joint", symbol="U", kinds=(VOLTAGE,), default="35 mV", low="0.01 mV", high="5 V",
                 hint="Under steady load. One probe on the metal of the lug, the other on the part it is bolted to; not on the nut or the screw head. Leave out the sign."),
        Quantity(id="current", label="Current while measuring", symbol="I", kinds=(CURRENT,), default="80 A", low="0.5 A", high="2000 A",
                 hint="Through this joint, read at the same moment."),
        Quantity(id="full_current", label="Full current", symbol="I_f", kinds=(CURRENT,), default="200 A", low="0.5 A", high="2000 A",
                 hint="The most that this joint is asked to carry."),
        Quantity(id="good_drop", label="Drop of a like joint", symbol="U_g", kinds=(VOLTAGE,), optional=True, low="0.01 mV", high="5 V",
                 example="12 mV", hint="Same parts, same current. The best comparison there is."),
        Quantity(id="rise", label="Warmer by", symbol="ΔT", kinds=(RISE,), optional=True, low="0.1 K", high="300 K", example="8 K",
                 hint="At the same current, when it no longer climbs. Empty if not measured."),
        Choice(id="rise_over", label="Warmer than", default=LIKE,
               options=(Option(LIKE, "a like joint", aliases=("like",)), Option(AIR, "the air round it", aliases=("ambient",))),
               hint="What the temperature was compared with."),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="6 V", high="120 V", advanced=True,
                 hint="Nominal: 12, 24 or 48 V."),
        Quantity(id="temperature", label="Metal round the joint", symbol="T₀", kinds=(TEMPERATURE,), default="60 °C", low="0 °C", high="150 °C",
                 advanced=True, hint="Lug and bar at full current; 60 °C is a warm, well loaded cable."),
    ),
    results=(
        Output(id="resistance", label="Resistance of the joint", symbol="R", kind=RESISTANCE, rounding=UP),
        Output(id="heat", label="Heat now", symbol="P", kind=POWER, rounding=UP),
        Output(id="full_heat", label="Heat at full current", symbol="P_f", kind=POWER, rounding=UP, hide_if_none=True),
        Output(id="full_drop", label="Drop at full current", symbol="U_f", kind=VOLTAGE, unit="millivolt", rounding=UP, hide_if_none=True),
        Output(id="drop_share", label="Share of the supply lost here", kind=RATIO, rounding=UP, hide_if_none=True),
        Output(id="ratio", label="Drop over that of the like joint", kind=NUMBER, rounding=UP, hide_if_none=True),
        Output(id="severity", label="Class of the temperature (NETA)"),
        Output(id="spot", label="Hottest contact spot, up to", symbol="T_s", kind=TEMPERATURE, rounding=UP, hide_if_none=True),
        Output(id="growth_left", label="Growth of resistance until the drop is too much", kind=NUMBER, rounding=DOWN, hide_if_none=True),
        Output(id="growth", label="What a loose joint does next, at full current"),
    ),
    intermediates=(
        Output(id="worst_heat", label="Heat, now or at full current", kind=POWER, rounding=UP),
        Output(id="feeds", label="Most that can flow", kind=CURRENT, rounding=DOWN),
        Output(id="most_drop", label="Most for one connection", symbol="U_max", kind=VOLTAGE, unit="millivolt"),
        Output(id="warm_metal", label="Most that lugs and holders are made for", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="hot_metal", label="Most that good cable is made for", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="zero", label="Absolute zero", symbol="T_z", kind=TEMPERATURE, unit="degree_Celsius", digits=5),
        Output(id="per_kelvin", label="Voltage per degree in a contact", symbol="k", kind=VOLTAGE_PER_KELVIN, digits=4),
        Output(id="soft", label="Copper softens", symbol="T_c", kind=TEMPERATURE, unit="degree_Celsius"),
        Output(id="softening", label="Drop at which copper spots soften", symbol="U_c", kind=VOLTAGE, unit="millivolt", rounding=DOWN),
        Output(id="spot_rise", label="Contact spots above the metal", kind=RISE, rounding=UP),
        Output(id="rise_full", label="Warmer at full current, upper figure", symbol="ΔT_f", kind=RISE, rounding=UP),
        Output(id="rise_low", label="Warmer at full current, lower figure", kind=RISE),
        Output(id="worst_rise", label="Rise that is classed", kind=RISE, rounding=UP),
        Output(id="military", label="The same on the military scale"),
    ),
    steps=(
        Step(of="resistance", formula="drop / current", source="ohm", says="Ohm's law across the joint alone."),
        Step(of="heat", formula="drop * current", source="ohm", says="All of it comes out in this one place."),
        Step(of="feeds", formula="voltage / resistance", source="ohm", when=lambda v: not v.reaches,
             says="Through this joint alone, with nothing else in the circuit, no more can flow."),
        Step(of="full_drop", formula="resistance * full_current", source="ohm", when=lambda v: v.reaches, says="The drop goes with the current."),
        Step(of="full_heat", formula="resistance * full_current ** 2", source="ohm", when=lambda v: v.reaches,
             says="Heat goes with the square of the current: twice the current, four times the heat."),
        Step(of="drop_share", formula="full_drop / voltage", when=lambda v: v.reaches, says="Of the system voltage, in one joint."),
        Step(of="most_drop", source="sae-drop", says="For a connection that carries high current."),
        Step(of="growth_left", formula="most_drop / full_drop", when=lambda v: v.growth_left is not None,
             says="How often the resistance may grow before the joint loses that much."),
        Step(of="ratio", formula="drop / good_drop", source="neta-resistance", when=lambda v: v.ratio is not None,
             says="At the same current. Above 1.5, that is 50 % over the lower of the two, is to be looked into."),
        Step(of="hot_metal", source="33cfr-table", says="Insulation of good boat cable. The law's table has hotter columns, for kinds that are rarely sold for vans."),
        Step(of="per_kelvin", source="kohlrausch", says="2√L: the Lorenz number of metals is π²/3·(k_B/e)²."),
        Step(of="soft", source="kohlrausch", says="Contact spots of copper."),
        Step(of="softening", formula="per_kelvin * sqrt((soft - zero) ** 2 - (temperature - zero) ** 2)", source="kohlrausch",
             says="The drop alone sets how hot the spots get, whatever their size."),
        Step(of="spot_rise", formula="sqrt((temperature - zero) ** 2 + (full_drop / per_kelvin) ** 2) - (temperature - zero)", source="kohlrausch",
             when=lambda v: v.spot is not None, says="At full current, if the whole drop is in the contact: an upper figure."),
        Step(of="spot", source="kohlrausch", when=lambda v: v.spot is not None, says="{spot_rise} above the {temperature} of the metal."),
        Step(of="rise_full", formula="rise * (full_current / current) ** 2", source="ohm", when=lambda v: v.rise_full is not None,
             says="With the square, as the heat: the careful figure, for hot things shed heat better."),
        Step(of="rise_low", formula="rise * (full_current / current) ** (1 / 0.61)", source="iec-61439", when=lambda v: v.rise_low is not None,
             says="As a switchgear standard corrects small differences; here for comparison only."),
        Step(of="severity", source="neta-thermal", when=lambda v: v.rise is None, says="A thermometer would tell what the drop cannot: how well the heat gets away."),
        Step(of="severity", source="neta-thermal", when=lambda v: v.rise is not None,
             says="For {worst_rise} over {rise_over}. What falls between two printed classes takes the more severe."),
        Step(of="military", source="mil-thermal", when=lambda v: v.military is not None, says="A laxer scale, for comparison; it decides nothing here."),
        Step(of="growth", source="oxide", says="At {full_current}. Heat grows oxide and makes soft metal creep; both raise the resistance, and that the heat. How soon is not known: it depends on metal, shaking, damp and load."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not v.reaches,
             says="Switch off: this joint could never pass {full_current}. At {feeds} it alone would take the whole {voltage}."),
        Verdict(verdict=STOP, when=lambda v: not at_most(v.drop, v.most_drop),
             says="Switch off: {drop} lost in one joint already, and {heat} of heat. Remake it before anything else."),
        Verdict(verdict=STOP, when=lambda v: v.priority == 1,
             says="Do not load it: {worst_rise} over {rise_over} at full load is the worst thermographic class. Mend it at once."),
        Verdict(verdict=STOP, when=lambda v: _loses(v) or _softens(v),
             says="Not for {full_current}: it would lose {full_drop} and give off {full_heat}. Remake the joint first."),
        Verdict(verdict=STOP, when=_glows,
             says="Do not load it: up to {worst_heat} in one joint, as much as loose connections gave off when they glowed."),
        Verdict(verdict=STOP, when=_too_hot,
             says="Do not load it: metal at {temperature} is hotter than the {hot_metal} that good cable is made for. Find where the heat comes from."),
        Verdict(verdict=CAUTION, when=_beyond_like,
             says="{ratio} times its like: look into it. At {full_current} it gives off {full_heat}."),
        Verdict(verdict=CAUTION, when=lambda v: _ill_kept(v) and not at_most(v.worst_heat, contact.LITTLE_HEAT),
             says="{resistance} is more than any well-kept power contact. At {full_current} it gives off {full_heat}: open, clean and remake it first."),
        Verdict(verdict=CAUTION, when=lambda v: v.priority > 0,
             says="Warmer than it should be: {severity}."),
        Verdict(verdict=CAUTION, when=lambda v: v.small or v.light,
             says="Measured at too little load or drop to judge by: {resistance}, but far from sure. Measure again at more current."),
        Verdict(verdict=CAUTION, when=lambda v: _warm(v) and not _cool(v),
             says="Up to {worst_heat} in one joint: enough to scorch if it stays in a small place. Measure how much warmer than the air it gets."),
        Verdict(verdict=CAUTION, when=_near,
             says="It loses {full_drop} at {full_current}. Before its resistance has doubled that is more than {most_drop}: clean and remake it in good time."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.temperature, v.warm_metal),
             says="Metal at {temperature} is hotter than the {warm_metal} that lugs and fuse holders are commonly made for. Read the ratings off the parts, and find where the heat comes from."),
        Verdict(verdict=CAUTION, when=_like_worse, says="The like joint is the worse of the two: look into that one."),
        Verdict(verdict=CAUTION, when=lambda v: v.ratio is None and _ill_kept(v),
             says="{resistance} is usual for a small plug-in terminal, not for a bolted lug. Only {worst_heat} of heat; compare it with a like joint."),
        Verdict(verdict=CAUTION, when=lambda v: v.ratio is None and not at_most(v.resistance, contact.GOOD_BOLTED),
             says="{resistance}: no fault seen, but more than a good bolted joint. Compare it with a like joint at the same current."),
        Verdict(verdict=FINE, when=lambda v: v.ratio is None, says="{resistance}, as a good bolted joint; {full_heat} at {full_current}."),
        Verdict(verdict=FINE, says="{resistance}, in line with its like; {full_heat} at {full_current}."),
    ),
    remarks=(
        Remark(source="practice",
               says="No fuse sees a bad joint: the current is the usual one. It burns fingers and scorches insulation. Measure with insulated probes, touch nothing that may be hot, and take the load off if it smells or the plastic softens."),
        Remark(source="practice",
               says="To mend it: load off, the bank's disconnect open, negative off first, let it cool. Do not just tighten it again: open it, clean to bright metal, replace a browned lug or a softened holder, torque it (see joint torque), measure again and note the reading."),
        Remark(when=_stops, source="practice", says="Leave the circuit off until this joint has been remade and measured again."),
        Remark(when=_warm, source="nbs-glow",
               says="Loose connections that glowed in a laboratory gave off as little as 5 W at 0.8 A, and up to 35 W at 15 A. What counts is how small the place is."),
        Remark(when=_softens, source="kohlrausch",
               says="Above {softening} the contact spots of copper soften, the joint settles and slackens. Here {full_drop} is lost at full current."),
        Remark(when=lambda v: v.reaches and v.spot is None, source="kohlrausch",
               says="No temperature is given for the contact spots: {full_drop} would melt copper, and there the relation ends."),
        Remark(when=lambda v: v.rise is not None and v.rise_over == LIKE and _warm(v), source="practice",
               says="A joint as warm as its like may be as bad as its like. From 5 W on, only its warmth over the air can clear it."),
        Remark(when=lambda v: not at_most(v.temperature, v.warm_metal), source="33cfr-table",
               says="The law has columns for insulation of 60, 75, 80, 90 and {hot_metal}, and above that for rarer kinds. What is printed on the jacket and on the part decides; a battery bears far less."),
        Remark(when=lambda v: v.small, source="practice",
               says="Under 1 mV, or at less than a fifth of the full current, the meter's last digit and the probes decide the reading. Load the circuit more, and see that the reading goes back to nought with the load off."),
        Remark(when=lambda v: v.light, source="ir-load", says="A temperature taken at less than 40 % of full load says little: a faint warmth then can be a fault at full load."),
        Remark(when=_like_worse, source="neta-resistance", says="The like joint reads more than 50 % above this one, so it is no measure of a good joint."),
        Remark(when=lambda v: v.ratio is None, source="neta-resistance",
               says="No like joint to compare with. The usual test is against the lowest of several like joints at the same current: look into any that reads more than 50 % above it."),
        Remark(when=lambda v: v.rise is not None and v.rise_over == AIR, source="practice",
               says="A well loaded cable is warm by itself. The better question is how much warmer the joint is than its own cable a hand's breadth away, or than a like joint."),
        Remark(when=lambda v: v.military is not None, source="mil-thermal", says="The scales disagree by design. On a laxer military one: {military}. The stricter one is followed here."),
        Remark(when=lambda v: v.rise_full is not None, source="iec-61439",
               says="At {full_current} it would be {rise_full} warmer if the rise goes with the square of the current, and about {rise_low} by the power that IEC 61439-1 uses for small corrections."),
        Remark(level=NOTE, source="busbar-joint", says="Published for good bolted copper busbar joints: 5 to 15 µΩ. A lug on a stud has less area and may read more."),
        Remark(level=NOTE, source="power-contact", says="Published for well-kept power contacts: 10 to 300 µΩ. Plug-in terminals, fuse links and switches lie higher: for these the maker's figure or a like part must do."),
        Remark(level=NOTE, source="sae-drop", says="In the workshop manual that quotes it: 0.1 V for connections of high current, 0.2 V for the cables, 0.3 V for switches. For small wires: none."),
        Remark(level=NOTE, source="oxide", says="A loose copper connection that is shaken grows an oxide bridge; a thread of it was seen to glow at 1200 to 1300 °C."),
        Remark(level=NOTE, source="practice", says="Across a fuse, a holder or a switch the reading holds all its inner contacts and the link. Move the probes to find which part it is."),
    ),
    valid="Steady direct current through one joint of copper or plated copper parts. A load of constant power draws more as voltage is lost, so it heats the joint more than shown.",
    summary="{resistance}, {heat} now",
)

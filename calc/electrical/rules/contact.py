"""Judgements on a joint that was measured under current: its drop, its heat, its temperature."""

# fmt: off
from math import floor, sqrt
from typing import Annotated

from calc.electrical.contact import MeasuredJoint, RiseOver, measured_joint
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Number, Ohms, Tag, Watts

# Top of the range of good bolted busbar joints: an instrument maker
GOOD_BOLTED: Annotated[Ohms, Tag("most of a good bolted busbar joint")] = 15e-6
# Top of the range of well-kept power contacts: an article on substations
WELL_KEPT: Annotated[Ohms, Tag("most of a well-kept power contact")] = 300e-6
# Of loose connections that glowed, the least heat: NBSIR 76-1011, abstract
GLOWS_LEAST: Annotated[Watts, Tag("least heat of a glowing connection")] = 5.0
# The most of them: NBSIR 76-1011, abstract
GLOWS_MOST: Annotated[Watts, Tag("most heat of a glowing connection")] = 35.0
# What a small plug-in terminal gives off: common practice, no source
LITTLE_HEAT: Annotated[Watts, Tag("heat of a small plug-in terminal")] = 0.5
# Times the resistance may grow before the drop is too much: common practice, no source
GROWTH_LEAST: Annotated[Number, Tag("least growth left to a joint's resistance")] = 2.0
# Times the lowest of like connections: ANSI/NETA as restated, 50 % above it
LIKE_MOST: Annotated[Number, Tag("most of a joint's drop over its like")] = 1.5

NOT_FOR_FULL_CURRENT = "Not for {reading.full_current}: it would lose {full.drop} and give off {full.heat}. Remake the joint first."
TOO_LITTLE_LOAD = "Measured at too little load or drop to judge by: {resistance}, but far from sure. Measure again at more current."


def _loses_too_much(joint: MeasuredJoint) -> bool:
    return joint.full is not None and not at_most(joint.full.drop, joint.most_drop)


def _softens(joint: MeasuredJoint) -> bool:
    return joint.full is not None and not at_most(joint.full.drop, joint.softening)


def _warms(joint: MeasuredJoint) -> bool:
    return at_least(joint.worst_heat, GLOWS_LEAST)


def _stays_cool(joint: MeasuredJoint) -> bool:
    """Two bad joints are alike: only the air tells that a joint stays cool."""
    warmth = joint.warmth
    return warmth is not None and warmth.rise_over is RiseOver.AIR and warmth.priority == 0 and not warmth.light


def _ill_kept(joint: MeasuredJoint) -> bool:
    return not at_most(joint.resistance, WELL_KEPT)


def _remeasured(joint: MeasuredJoint, full_current: float) -> MeasuredJoint:
    read, warmth = joint.reading, joint.warmth
    return measured_joint(
        drop=read.drop, current=read.current, full_current=full_current, good_drop=read.good_drop,
        rise=warmth.rise if warmth else None, rise_over=warmth.rise_over if warmth else RiseOver.LIKE_JOINT,
        voltage=read.voltage, temperature=read.temperature,
    )


def less_current(joint: MeasuredJoint) -> Change | None:
    """Return the most, in whole amperes, that the joint may carry with nothing said of it, or None."""
    drop = min(joint.most_drop / GROWTH_LEAST, joint.softening)
    amperes = float(floor(min(drop / joint.resistance, sqrt(GLOWS_LEAST / joint.resistance), joint.reading.full_current)))
    if amperes < 1:
        return None
    less = _remeasured(joint, amperes)
    told = any(rule.when(less) for rule in OF_FULL_CURRENT)
    worse = any(rule.when(less) and not rule.when(joint) for rule in JUDGEMENTS)
    return None if told or worse else Change({"full_current": amperes})


NOT_REACHED = Rule[MeasuredJoint](
    id="contact.current-not-reached", level=Level.STOP, when=lambda j: j.full is None, source="ohm",
    headline="Switch off: this joint could never pass {reading.full_current}. At {max_current} it alone would take the whole {reading.voltage}.",
    mend=less_current,
)
LOSES_ALREADY = Rule[MeasuredJoint](
    id="contact.drop-over-limit", level=Level.STOP, when=lambda j: not at_most(j.reading.drop, j.most_drop), source="sae-drop",
    headline="Switch off: {reading.drop} lost in one joint already, and {heat} of heat. Remake it before anything else.",
)
WORST_CLASS = Rule[MeasuredJoint](
    id="contact.worst-thermal-class", level=Level.STOP, when=lambda j: j.warmth is not None and j.warmth.priority == 1, source="neta-thermal",
    headline="Do not load it: {warmth.worst} over {warmth.rise_over} at full load is the worst thermographic class. Mend it at once.",
)
LOSES_AT_FULL = Rule[MeasuredJoint](
    id="contact.drop-over-limit-at-full-current", level=Level.STOP, when=_loses_too_much, source="sae-drop",
    headline=NOT_FOR_FULL_CURRENT,
    mend=less_current,
)
SOFTENS = Rule[MeasuredJoint](
    id="contact.spots-soften", level=Level.STOP, when=_softens, source="kohlrausch",
    headline=NOT_FOR_FULL_CURRENT,
    text="Above {softening} the contact spots of copper soften, the joint settles and slackens. Here {full.drop} is lost at full current.",
    mend=less_current,
)
GLOWS = Rule[MeasuredJoint](
    id="contact.heat-of-the-worst-glow", level=Level.STOP, when=lambda j: at_least(j.worst_heat, GLOWS_MOST), source="nbs-glow",
    headline="Do not load it: up to {worst_heat} in one joint, as much as loose connections gave off when they glowed.",
    mend=less_current,
)
TOO_HOT = Rule[MeasuredJoint](
    id="contact.metal-over-cable-insulation", level=Level.STOP, when=lambda j: not at_most(j.reading.temperature, j.hot_metal), source="33cfr-table",
    headline="Do not load it: metal at {reading.temperature} is hotter than the {hot_metal} that good cable is made for. Find where the heat comes from.",
)
STOPS = (NOT_REACHED, LOSES_ALREADY, WORST_CLASS, LOSES_AT_FULL, SOFTENS, GLOWS, TOO_HOT)

BEYOND_LIKE = Rule[MeasuredJoint](
    id="contact.worse-than-its-like", level=Level.CAUTION, when=lambda j: j.ratio is not None and not at_most(j.ratio, LIKE_MOST), source="neta-resistance",
    headline="{ratio} times its like: look into it. At {reading.full_current} it gives off {full.heat}.",
)
ILL_KEPT = Rule[MeasuredJoint](
    id="contact.worse-than-well-kept", level=Level.CAUTION, when=lambda j: _ill_kept(j) and not at_most(j.worst_heat, LITTLE_HEAT), source="power-contact",
    headline="{resistance} is more than any well-kept power contact. At {reading.full_current} it gives off {full.heat}: open, clean and remake it first.",
)
WARMER_THAN_SHOULD_BE = Rule[MeasuredJoint](
    id="contact.thermal-class", level=Level.CAUTION, when=lambda j: j.warmth is not None and j.warmth.priority > 0, source="neta-thermal",
    headline="Warmer than it should be: {warmth.severity}.",
)
SMALL_READING = Rule[MeasuredJoint](
    id="contact.reading-too-small", level=Level.CAUTION, when=lambda j: j.reading.small, source="practice",
    headline=TOO_LITTLE_LOAD,
    text="Under 1 mV, or at less than a fifth of the full current, the meter's last digit and the probes decide the reading. Load the circuit more, and see that the reading goes back to nought with the load off.",
)
LIGHT_LOAD = Rule[MeasuredJoint](
    id="contact.temperature-at-light-load", level=Level.CAUTION, when=lambda j: j.warmth is not None and j.warmth.light, source="ir-load",
    headline=TOO_LITTLE_LOAD,
    text="A temperature taken at less than 40 % of full load says little: a faint warmth then can be a fault at full load.",
)
WARM = Rule[MeasuredJoint](
    id="contact.heat-of-a-glow", level=Level.CAUTION, when=lambda j: _warms(j) and not _stays_cool(j), source="nbs-glow",
    headline="Up to {worst_heat} in one joint: enough to scorch if it stays in a small place. Measure how much warmer than the air it gets.",
    mend=less_current,
)
NEAR_LIMIT = Rule[MeasuredJoint](
    id="contact.little-growth-left", level=Level.CAUTION, when=lambda j: j.growth_left is not None and not at_least(j.growth_left, GROWTH_LEAST), source="practice",
    headline="It loses {full.drop} at {reading.full_current}. Before its resistance has doubled that is more than {most_drop}: clean and remake it in good time.",
    mend=less_current,
)
HOT_METAL = Rule[MeasuredJoint](
    id="contact.metal-over-lugs", level=Level.CAUTION, when=lambda j: not at_most(j.reading.temperature, j.warm_metal), source="33cfr-table",
    headline="Metal at {reading.temperature} is hotter than the {warm_metal} that lugs and fuse holders are commonly made for. Read the ratings off the parts, and find where the heat comes from.",
    text="The law has columns for insulation of 60, 75, 80, 90 and {hot_metal}, and above that for rarer kinds. What is printed on the jacket and on the part decides; a battery bears far less.",
)
LIKE_IS_WORSE = Rule[MeasuredJoint](
    id="contact.like-joint-is-worse", level=Level.CAUTION, when=lambda j: j.ratio is not None and not at_least(j.ratio, 1 / LIKE_MOST), source="neta-resistance",
    headline="The like joint is the worse of the two: look into that one.",
    text="The like joint reads more than 50 % above this one, so it is no measure of a good joint.",
)
SMALL_TERMINAL = Rule[MeasuredJoint](
    id="contact.as-a-small-terminal", level=Level.CAUTION, when=lambda j: j.ratio is None and _ill_kept(j), source="power-contact",
    headline="{resistance} is usual for a small plug-in terminal, not for a bolted lug. Only {worst_heat} of heat; compare it with a like joint.",
)
WORSE_THAN_BOLTED = Rule[MeasuredJoint](
    id="contact.worse-than-bolted-busbar", level=Level.CAUTION, when=lambda j: j.ratio is None and not at_most(j.resistance, GOOD_BOLTED), source="busbar-joint",
    headline="{resistance}: no fault seen, but more than a good bolted joint. Compare it with a like joint at the same current.",
)
JUDGEMENTS = (
    *STOPS,
    BEYOND_LIKE, ILL_KEPT, WARMER_THAN_SHOULD_BE, SMALL_READING, LIGHT_LOAD, WARM, NEAR_LIMIT, HOT_METAL,
    LIKE_IS_WORSE, SMALL_TERMINAL, WORSE_THAN_BOLTED,
)  # what makes the verdict on a joint that was measured, the gravest first
OF_FULL_CURRENT = (NOT_REACHED, LOSES_AT_FULL, SOFTENS, GLOWS, WARM, NEAR_LIMIT)

NO_FUSE_SEES_IT = Rule[MeasuredJoint](
    id="contact.no-fuse-sees-it", level=Level.ADVICE, source="practice",
    text="No fuse sees a bad joint: the current is the usual one. It burns fingers and scorches insulation. Measure with insulated probes, touch nothing that may be hot, and take the load off if it smells or the plastic softens.",
)
HOW_TO_MEND = Rule[MeasuredJoint](
    id="contact.how-to-mend", level=Level.ADVICE, source="practice",
    text="To mend it: load off, the bank's disconnect open, negative off first, let it cool. Do not just tighten it again: open it, clean to bright metal, replace a browned lug or a softened holder, torque it (see joint torque), measure again and note the reading.",
)
LEAVE_OFF = Rule[MeasuredJoint](
    id="contact.leave-off", level=Level.ADVICE, when=lambda j: any(rule.when(j) for rule in STOPS), source="practice",
    text="Leave the circuit off until this joint has been remade and measured again.",
)
GLOWED_IN_TESTS = Rule[MeasuredJoint](
    id="contact.glowed-in-tests", level=Level.ADVICE, when=_warms, source="nbs-glow",
    text="Loose connections that glowed in a laboratory gave off as little as 5 W at 0.8 A, and up to 35 W at 15 A. What counts is how small the place is.",
)
SPOT_WOULD_MELT = Rule[MeasuredJoint](
    id="contact.spots-would-melt", level=Level.ADVICE, when=lambda j: j.full is not None and j.full.spot is None, source="kohlrausch",
    text="No temperature is given for the contact spots: {full.drop} would melt copper, and there the relation ends.",
)
WARM_AS_ITS_LIKE = Rule[MeasuredJoint](
    id="contact.warm-as-its-like", level=Level.ADVICE, source="practice",
    when=lambda j: j.warmth is not None and j.warmth.rise_over is RiseOver.LIKE_JOINT and _warms(j),
    text="A joint as warm as its like may be as bad as its like. From 5 W on, only its warmth over the air can clear it.",
)
NO_LIKE = Rule[MeasuredJoint](
    id="contact.no-like-joint", level=Level.ADVICE, when=lambda j: j.ratio is None, source="neta-resistance",
    text="No like joint to compare with. The usual test is against the lowest of several like joints at the same current: look into any that reads more than 50 % above it.",
)
CABLE_IS_WARM_TOO = Rule[MeasuredJoint](
    id="contact.cable-is-warm-too", level=Level.ADVICE, when=lambda j: j.warmth is not None and j.warmth.rise_over is RiseOver.AIR, source="practice",
    text="A well loaded cable is warm by itself. The better question is how much warmer the joint is than its own cable a hand's breadth away, or than a like joint.",
)
SCALES_DISAGREE = Rule[MeasuredJoint](
    id="contact.scales-disagree", level=Level.ADVICE, when=lambda j: j.warmth is not None, source="mil-thermal",
    text="The scales disagree by design. A military one is laxer; the stricter one is followed here.",
)
RISE_AT_FULL = Rule[MeasuredJoint](
    id="contact.rise-at-full-current", level=Level.ADVICE, when=lambda j: j.warmth is not None and j.warmth.at_full is not None, source="iec-61439",
    text="At {reading.full_current} it would be {warmth.at_full.upper} warmer if the rise goes with the square of the current, and about {warmth.at_full.lower} by the power that IEC 61439-1 uses for small corrections.",
)
BUSBAR_RANGE = Rule[MeasuredJoint](
    id="contact.busbar-range", level=Level.NOTE, source="busbar-joint",
    text="Published for good bolted copper busbar joints: 5 to 15 µΩ. A lug on a stud has less area and may read more.",
)
POWER_CONTACT_RANGE = Rule[MeasuredJoint](
    id="contact.power-contact-range", level=Level.NOTE, source="power-contact",
    text="Published for well-kept power contacts: 10 to 300 µΩ. Plug-in terminals, fuse links and switches lie higher: for these the maker's figure or a like part must do.",
)
DROP_LIMITS = Rule[MeasuredJoint](
    id="contact.drop-limits", level=Level.NOTE, source="sae-drop",
    text="In the workshop manual that quotes it: 0.1 V for connections of high current, 0.2 V for the cables, 0.3 V for switches. For small wires: none.",
)
OXIDE_GLOWS = Rule[MeasuredJoint](
    id="contact.oxide-glows", level=Level.NOTE, source="oxide",
    text="A loose copper connection that is shaken grows an oxide bridge; a thread of it was seen to glow at 1200 to 1300 °C.",
)
MOVE_THE_PROBES = Rule[MeasuredJoint](
    id="contact.move-the-probes", level=Level.NOTE, source="practice",
    text="Across a fuse, a holder or a switch the reading holds all its inner contacts and the link. Move the probes to find which part it is.",
)

"""Judgements on a joint or part that was measured under current: its drop, heat, temperature."""

# fmt: off
from math import floor, sqrt
from typing import Annotated

from calc.electrical.contact import (
    GLOWS_LEAST,
    GROWTH_LEAST,
    LIKE_MOST,
    SMALL_DROP,
    MeasuredJoint,
    RiseOver,
    measured_joint,
)
from calc.electrical.sound_parts import RATED, Part
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Tag, Watts

# The most of them: NBSIR 76-1011, abstract
GLOWS_MOST: Annotated[Watts, Tag("most heat of a glowing connection")] = 35.0

# In one joint that is bad for certain, more than this: common practice, no source
SCORCHES: Annotated[Watts, Tag("heat in one bad joint that scorches")] = 10.0

NOT_FOR_FULL_CURRENT = "Do not load it with {reading.full_current}: it would lose {full.drop} and give off {full.heat}. Remake it first."
TOO_LITTLE_LOAD = "Measure again at more current: this reading is too small to judge."


def _loses_too_much(joint: MeasuredJoint) -> bool:
    return joint.full is not None and not at_most(joint.full.drop, joint.most_drop)


def _softens(joint: MeasuredJoint) -> bool:
    return joint.contact and joint.full is not None and not at_most(joint.full.drop, joint.softening)


def _warms(joint: MeasuredJoint) -> bool:
    return not joint.sound.warm_by_nature and at_least(joint.worst_heat, GLOWS_LEAST)


def _glows(joint: MeasuredJoint) -> bool:
    return not joint.sound.warm_by_nature and at_least(joint.worst_heat, GLOWS_MOST)


def _scorches(joint: MeasuredJoint) -> bool:
    return _beyond_any_like(joint) and not joint.sound.warm_by_nature and not at_most(joint.worst_heat, SCORCHES)


def _stays_cool(joint: MeasuredJoint) -> bool:
    """Two bad joints are alike: only the air tells that a joint stays cool."""
    warmth = joint.warmth
    return warmth is not None and warmth.rise_over is RiseOver.AIR and warmth.priority == 0 and not warmth.light


def _not_named(joint: MeasuredJoint) -> bool:
    bad = joint.beyond_any_like or (joint.beyond_range and not joint.cleared)
    return joint.sound.part is Part.UNKNOWN and bad


def _beyond_any_like(joint: MeasuredJoint) -> bool:
    return joint.sound.part is not Part.UNKNOWN and joint.beyond_any_like


def _beyond_range(joint: MeasuredJoint) -> bool:
    return joint.sound.part is not Part.UNKNOWN and joint.beyond_range and not joint.cleared


def _small(joint: MeasuredJoint) -> bool:
    """Less than a meter's last digit still tells of a good part, if that digit would be good too."""
    read = joint.reading
    return read.small or (read.drop < SMALL_DROP and not at_most(read.highest, joint.sound.high))


def _less_than_any(joint: MeasuredJoint) -> bool:
    """The probes sit on one part, or no such current flows."""
    return _bolted(joint) and joint.sound.low is not None and not at_least(joint.resistance, joint.sound.low)


def _little_growth(joint: MeasuredJoint) -> bool:
    left = joint.growth_left
    return not joint.sound.warm_by_nature and left is not None and not at_least(left, GROWTH_LEAST)


def _bolted(joint: MeasuredJoint) -> bool:
    return joint.sound.part in (Part.BOLTED, Part.CRIMP, Part.UNKNOWN)


def _over_rating(joint: MeasuredJoint) -> bool:
    rating = joint.sound.rating
    return rating is not None and not at_most(joint.reading.full_current, rating)


def _remeasured(joint: MeasuredJoint, full_current: float) -> MeasuredJoint:
    read, warmth = joint.reading, joint.warmth
    return measured_joint(
        sound=joint.sound, drop=read.drop, current=read.current, full_current=full_current, good_drop=read.good_drop,
        rise=warmth.rise if warmth else None, rise_over=warmth.rise_over if warmth else RiseOver.LIKE_JOINT,
        voltage=read.voltage, temperature=read.temperature,
    )


def less_current(joint: MeasuredJoint) -> Change | None:
    """Return the most, in whole amperes, that the part may carry with nothing said of it, or None."""
    most = [joint.reading.full_current, joint.sound.rating or joint.reading.full_current]
    if joint.sound.warm_by_nature:
        most += [joint.most_drop / joint.resistance]
    else:
        drop = min(joint.most_drop / GROWTH_LEAST, joint.softening)
        most += [drop / joint.resistance, sqrt(GLOWS_LEAST / joint.resistance)]
    amperes = float(floor(min(most)))
    if amperes < 1:
        return None
    less = _remeasured(joint, amperes)
    told = any(rule.when(less) for rule in OF_FULL_CURRENT)
    worse = any(rule.when(less) and not rule.when(joint) for rule in JUDGEMENTS)
    return None if told or worse else Change({"full_current": amperes})


NOT_REACHED = Rule[MeasuredJoint](
    id="contact.current-not-reached", level=Level.STOP, when=lambda j: j.full is None, source="ohm",
    headline="Switch off: it cannot pass {reading.full_current}. At {max_current} it alone takes the whole {reading.voltage}.",
    mend=less_current,
)
LOSES_ALREADY = Rule[MeasuredJoint](
    id="contact.drop-over-limit", level=Level.STOP, when=lambda j: not at_most(j.reading.drop, j.most_drop), source="sae-drop",
    headline="Switch off and remake it: it already drops {reading.drop} and gives off {heat}.",
)
WORST_CLASS = Rule[MeasuredJoint](
    id="contact.worst-thermal-class", level=Level.STOP, when=lambda j: j.warmth is not None and j.warmth.priority == 1, source="neta-thermal",
    headline="Do not load it: {warmth.worst} over {warmth.rise_over} at full load is the worst class. Repair it.",
)
LOSES_AT_FULL = Rule[MeasuredJoint](
    id="contact.drop-over-limit-at-full-current", level=Level.STOP, when=_loses_too_much, source="sae-drop",
    headline=NOT_FOR_FULL_CURRENT,
    mend=less_current,
)
SOFTENS = Rule[MeasuredJoint](
    id="contact.spots-soften", level=Level.STOP, when=_softens, source="kohlrausch",
    headline=NOT_FOR_FULL_CURRENT,
    text="Above {softening} copper contact spots soften, the joint settles and loosens. This one drops {full.drop} at full current.",
    mend=less_current,
)
GLOWS = Rule[MeasuredJoint](
    id="contact.heat-of-the-worst-glow", level=Level.STOP, when=_glows, source="nbs-glow",
    headline="Do not load it: loose connections glowed at {worst_heat} and less.",
    mend=less_current,
)
TOO_HOT = Rule[MeasuredJoint](
    id="contact.metal-over-cable-insulation", level=Level.STOP, when=lambda j: not at_most(j.reading.temperature, j.hot_metal), source="33cfr-table",
    headline="Do not load it: {reading.temperature} is hotter than the {hot_metal} that good cable is rated for. Find the cause.",
)
SCORCHES_SOON = Rule[MeasuredJoint](
    id="contact.scorches", level=Level.STOP, when=_scorches, source="practice",
    headline="Do not load it: {worst_heat} in one bad joint scorches insulation. Remake or replace it first.",
    mend=less_current,
    covers=frozenset({"contact.beyond-any-like"}),
)
STOPS = (NOT_REACHED, LOSES_ALREADY, WORST_CLASS, LOSES_AT_FULL, SOFTENS, GLOWS, TOO_HOT, SCORCHES_SOON)

PART_NOT_NAMED = Rule[MeasuredJoint](
    id="contact.part-not-named", level=Level.CAUTION, when=_not_named, source="practice",
    headline="Enter what is between the probes. {resistance} is too much for a bolted joint or crimp, at most {sound.high}.",
    text="Name the part. A fuse with its holder, a breaker or a push-on terminal may have more than a bolted joint and still be good.",
)
BEYOND_ANY_LIKE = Rule[MeasuredJoint](
    id="contact.beyond-any-like", level=Level.CAUTION, when=_beyond_any_like, source="practice",
    headline="Remake or replace it: {resistance} is more than twice the {sound.high} of a good one.",
    text="Two like parts may both be bad. Above twice the usual range a like part proves nothing.",
    covers=frozenset({"contact.beyond-its-range"}),
)
BEYOND_RANGE = Rule[MeasuredJoint](
    id="contact.beyond-its-range", level=Level.CAUTION, when=_beyond_range, source="practice",
    headline="Compare it with a like one at the same current: {resistance} is more than the usual {sound.high}.",
)
BEYOND_LIKE = Rule[MeasuredJoint](
    id="contact.worse-than-its-like", level=Level.CAUTION, when=lambda j: j.ratio is not None and not at_most(j.ratio, LIKE_MOST), source="neta-resistance",
    headline="Inspect it: {ratio} times a like part. At {reading.full_current} it gives off {full.heat}.",
)
OVER_RATING = Rule[MeasuredJoint](
    id="contact.current-over-rating", level=Level.CAUTION, when=_over_rating, source="practice",
    headline="Check the full current: {reading.full_current} is more than the {sound.rating} printed on it.",
    mend=less_current,
)
WARMER_THAN_SHOULD_BE = Rule[MeasuredJoint](
    id="contact.thermal-class", level=Level.CAUTION, when=lambda j: j.warmth is not None and j.warmth.priority > 0, source="neta-thermal",
    headline="Warmer than it should be: {warmth.severity}.",
)
LESS_THAN_ANY = Rule[MeasuredJoint](
    id="contact.less-than-any-joint", level=Level.CAUTION, when=_less_than_any, source="busbar-joint",
    headline="Measure again: no joint has as little as {resistance}. Probe the lug's barrel and the stud.",
    text="Both probes may be on one part, or less current flows than you typed. The best bolted joints published have {sound.low}.",
    covers=frozenset({"contact.reading-too-small"}),
)
SMALL_READING = Rule[MeasuredJoint](
    id="contact.reading-too-small", level=Level.CAUTION, when=_small, source="practice",
    headline=TOO_LITTLE_LOAD,
    text="Load the circuit more. Below a fifth of the full current, or under 1 mV, the error of probes and meter is too large.",
)
LIGHT_LOAD = Rule[MeasuredJoint](
    id="contact.temperature-at-light-load", level=Level.CAUTION, when=lambda j: j.warmth is not None and j.warmth.light, source="ir-load",
    headline=TOO_LITTLE_LOAD,
    text="Measure the temperature at 40 % of full load or more. Slight warmth at less can be a fault at full load.",
)
WARM = Rule[MeasuredJoint](
    id="contact.heat-of-a-glow", level=Level.CAUTION, when=lambda j: _warms(j) and not _stays_cool(j), source="nbs-glow",
    headline="Measure how much warmer than the air it gets: {worst_heat} in one joint can scorch a small part.",
    mend=less_current,
)
NEAR_LIMIT = Rule[MeasuredJoint](
    id="contact.little-growth-left", level=Level.CAUTION, when=_little_growth, source="practice",
    headline="Clean and remake it soon: it drops {full.drop} at {reading.full_current}; the limit is {most_drop}.",
    mend=less_current,
)
HOT_METAL = Rule[MeasuredJoint](
    id="contact.metal-over-lugs", level=Level.CAUTION, when=lambda j: not at_most(j.reading.temperature, j.warm_metal), source="33cfr-table",
    headline="Find where the heat comes from: {reading.temperature} is more than the {warm_metal} usual for lugs and holders.",
    text="The rating printed on jacket and part decides. The law lists insulation from 60 °C to {hot_metal} and some hotter kinds; a battery tolerates far less.",
)
JUDGEMENTS = (
    *STOPS,
    BEYOND_ANY_LIKE, PART_NOT_NAMED, BEYOND_LIKE, WARMER_THAN_SHOULD_BE, LESS_THAN_ANY, SMALL_READING, LIGHT_LOAD, WARM, BEYOND_RANGE,
    NEAR_LIMIT, HOT_METAL, OVER_RATING,
)  # what makes the verdict on a part that was measured, the gravest first
OF_FULL_CURRENT = (NOT_REACHED, LOSES_AT_FULL, SOFTENS, GLOWS, SCORCHES_SOON, WARM, NEAR_LIMIT, OVER_RATING)

WHERE_THE_PROBES_GO = Rule[MeasuredJoint](
    id="contact.where-the-probes-go", level=Level.ADVICE, source="practice",
    when=_bolted,
    text="Put the probes right on the lug and on what it is bolted to. 10 cm of 50 mm² cable between them adds 3.9 mV at 100 A.",
)
LIKE_IS_WORSE = Rule[MeasuredJoint](
    id="contact.like-joint-is-worse", level=Level.ADVICE, when=lambda j: j.ratio is not None and not at_least(j.ratio, 1 / LIKE_MOST), source="neta-resistance",
    text="Inspect the like one too: it reads more than 50 % above this one.",
)
WARM_FUSE = Rule[MeasuredJoint](
    id="contact.warm-by-nature", level=Level.ADVICE, when=lambda j: j.sound.part in RATED, source="practice",
    text="A good fuse or breaker is warm under load. Plastic that softens or browns, or one side hotter than the other, means a bad contact.",
)
NO_FUSE_SEES_IT = Rule[MeasuredJoint](
    id="contact.no-fuse-sees-it", level=Level.ADVICE, source="practice",
    text="Burns and fire: no fuse reacts to a bad joint, because the current is normal. Use insulated probes, touch nothing hot, and switch off if it smells or plastic softens.",
)
HOW_TO_MEND = Rule[MeasuredJoint](
    id="contact.how-to-mend", level=Level.ADVICE, source="practice",
    text="To repair: load off, isolator open, negative off first, let it cool. Do not just retighten: open, clean to bright metal, replace browned lugs or softened holders, torque, measure again.",
)
LEAVE_OFF = Rule[MeasuredJoint](
    id="contact.leave-off", level=Level.ADVICE, when=lambda j: any(rule.when(j) for rule in STOPS), source="practice",
    text="Leave the circuit off until this joint has been remade and measured again.",
)
GLOWED_IN_TESTS = Rule[MeasuredJoint](
    id="contact.glowed-in-tests", level=Level.ADVICE, when=_warms, source="nbs-glow",
    text="Loose connections that glowed in a laboratory gave off 5 W at just 0.8 A, up to 35 W at 15 A. The smaller the spot, the hotter.",
)
SPOT_WOULD_MELT = Rule[MeasuredJoint](
    id="contact.spots-would-melt", level=Level.ADVICE, when=lambda j: j.contact and j.full is not None and j.full.spot is None, source="kohlrausch",
    text="No temperature is given for the contact spots: {full.drop} would melt copper, where the relation ends.",
)
WARM_AS_ITS_LIKE = Rule[MeasuredJoint](
    id="contact.warm-as-its-like", level=Level.ADVICE, source="practice",
    when=lambda j: j.warmth is not None and j.warmth.rise_over is RiseOver.LIKE_JOINT and _warms(j),
    text="A joint as warm as a like one may be as bad. From 5 W up, only its temperature above the air shows that it is good.",
)
NO_LIKE = Rule[MeasuredJoint](
    id="contact.no-like-joint", level=Level.ADVICE, when=lambda j: j.ratio is None, source="neta-resistance",
    text="No like joint to compare with. The usual test is against the lowest of several like joints at the same current: inspect any that reads more than 50 % above it.",
)
CABLE_IS_WARM_TOO = Rule[MeasuredJoint](
    id="contact.cable-is-warm-too", level=Level.ADVICE, when=lambda j: j.warmth is not None and j.warmth.rise_over is RiseOver.AIR, source="practice",
    text="A well loaded cable is warm. Compare the joint with its own cable 10 cm away, or with a like joint.",
)
SCALES_DISAGREE = Rule[MeasuredJoint](
    id="contact.scales-disagree", level=Level.ADVICE, when=lambda j: j.warmth is not None, source="mil-thermal",
    text="The scales differ. A military one is less strict; the stricter one is used here.",
)
RISE_AT_FULL = Rule[MeasuredJoint](
    id="contact.rise-at-full-current", level=Level.ADVICE, when=lambda j: j.warmth is not None and j.warmth.at_full is not None, source="iec-61439",
    text="At {reading.full_current} it would be {warmth.at_full.upper} warmer if the rise goes with the square of the current, and about {warmth.at_full.lower} by the power that IEC 61439-1 uses for small corrections.",
)
BUSBAR_RANGE = Rule[MeasuredJoint](
    id="contact.busbar-range", level=Level.NOTE, when=_bolted, source="busbar-joint",
    text="Published for good bolted copper busbar joints: 5 to 15 µΩ. A lug on a stud has less area: up to 100 µΩ is common practice.",
)
POWER_CONTACT_RANGE = Rule[MeasuredJoint](
    id="contact.power-contact-range", level=Level.NOTE, when=lambda j: j.sound.part is Part.SWITCH, source="power-contact",
    text="Published for well-kept power contacts, such as those of a main switch: 10 to 300 µΩ.",
)
DROP_LIMITS = Rule[MeasuredJoint](
    id="contact.drop-limits", level=Level.NOTE, source="sae-drop",
    text="In the workshop manual that quotes it: 0.1 V for connections of high current, 0.2 V for the cables, 0.3 V for switches. For small wires: none.",
)
OXIDE_GLOWS = Rule[MeasuredJoint](
    id="contact.oxide-glows", level=Level.NOTE, when=lambda j: j.contact, source="oxide",
    text="A loose copper connection that is shaken grows an oxide bridge; a thread of it was seen to glow at 1200 to 1300 °C.",
)
MOVE_THE_PROBES = Rule[MeasuredJoint](
    id="contact.move-the-probes", level=Level.NOTE, when=lambda j: j.sound.part in (*RATED, Part.SWITCH), source="practice",
    text="Across a fuse, a holder or a switch the reading includes all its internal contacts. Move the probes to find which part is bad.",
)

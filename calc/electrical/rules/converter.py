"""Judgements on a d.c. converter: its rating, its input's range, its idle draw, its system's voltage."""

# fmt: off
from typing import Annotated

from calc.electrical.converter import Converter, Isolation, RatedFor, System
from calc.electrical.fuses import COMMON
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Celsius, Share, Tag

# A label with one number often names a peak: common practice, no source
PEAK_LASTS: Annotated[Share, Tag("share of a peak rating that lasts for hours")] = 0.7
# Of what the load takes in a day; beyond, a switch is the better remedy: our choice
IDLE_COSTS: Annotated[Share, Tag("idle draw against the load's energy that is worth a switch")] = 0.25
# Cables and their joints get hard to make: common practice, no source
MUCH_AT_12: Annotated[Amperes, Tag("current at 12 V from which a higher voltage pays")] = 200.0
# Above it a box without a fan is short of air: common practice, no source
WARM_PLACE: Annotated[Celsius, Tag("air around a converter that is worth a word")] = 40.0


def _only_peak(c: Converter) -> bool:
    peak = c.label.rated_for is RatedFor.PEAK
    return peak and not c.overloaded and not at_most(c.load, PEAK_LASTS * c.available)


def _idles(c: Converter) -> bool:
    return not at_most(c.standby_energy, IDLE_COSTS * c.delivered)


def _much(c: Converter) -> bool:
    return c.feed.system is System.V12 and at_least(c.here.current, MUCH_AT_12)


def _never_opens(c: Converter) -> bool:
    on = c.output.protection
    return on is not None and on.fuse is not None and not at_most(on.fuse, c.label.rated)


def _passes_much(c: Converter) -> bool:
    joined = c.label.isolation is not Isolation.ISOLATED
    return joined and c.feed.highest > c.label.output and not at_most(c.feed.highest, COMMON)


def _saves(c: Converter) -> bool:
    return c.copper_saved is not None


def _kept_on(c: Converter) -> float:
    """Return how long [s] it may be on in a day for the idle draw to be worth no word."""
    idle = IDLE_COSTS * c.delivered / (c.label.standby * c.feed.system.volts)
    return c.load_time + idle


OVERLOADED = Rule[Converter](
    id="converter.overloaded", level=Level.STOP, source="practice", when=lambda c: c.overloaded,
    headline="Use a larger converter: the load takes {load}, and this one gives {available} in air of {air}.",
    text="It shuts down or overheats. Use one whose continuous rating, in the hottest air, is above the load.",
    mend=lambda c: Change({"rated": c.load / c.left}) if c.left > 0 else None,
)
INPUT_TOO_HIGH = Rule[Converter](
    id="converter.input-too-high", level=Level.STOP, source="practice", when=lambda c: c.too_high,
    headline="Use a converter for {feed.highest}: this one takes {label.input_high}, and the bank is charged above that.",
    text="Above its input limit it fails, and a failed step-down converter can put the bank's voltage on everything behind it.",
    mend=lambda c: Change({"input_high": c.feed.highest}),
)
INPUT_TOO_LOW = Rule[Converter](
    id="converter.input-too-low", level=Level.CAUTION, source="practice", when=lambda c: c.too_low,
    headline="Use a converter that works from {feed.lowest}: this one stops at {label.input_low}, before the bank is empty.",
    mend=lambda c: Change({"input_low": c.feed.lowest}),
)
ONLY_A_PEAK = Rule[Converter](
    id="converter.rating-may-be-a-peak", level=Level.CAUTION, source="practice", when=_only_peak,
    headline="Look for the continuous rating: {load} is a lot for a label of {label.rated}, which may be a peak.",
    mend=lambda c: Change({"rated": c.load / (PEAK_LASTS * c.left)}),
)
IDLE_DRAW = Rule[Converter](
    id="converter.idle-draw", level=Level.CAUTION, source="practice", when=_idles,
    headline="Switch the converter off with its load: its idle draw is {standby_charge} a day, a lot compared with the load.",
    mend=lambda c: Change({"on_hours": _kept_on(c)}),
)

HIGHER_VOLTAGE_PAYS = Rule[Converter](
    id="system.higher-voltage-pays", level=Level.ADVICE, source="practice", when=_much,
    text="At 12 V the largest load draws {here.current}. A 24 V bank halves that, for a quarter of the copper by drop; 12 V loads then need a converter.",
)
COMMON_NEGATIVE = Rule[Converter](
    id="converter.common-negative", level=Level.ADVICE, source="practice", when=lambda c: c.label.isolation is Isolation.COMMON,
    text="Both sides share the negative. Make its negative cable as large as its positive: if it is lost, the load's current returns through screens and signal wires.",
)
ISOLATED = Rule[Converter](
    id="converter.isolated", level=Level.ADVICE, source="practice", when=lambda c: c.label.isolation is Isolation.ISOLATED,
    text="Its output floats. Join its negative to the van's at one point; left floating, it needs a fuse in both poles.",
)
ISOLATION_NOT_KNOWN = Rule[Converter](
    id="converter.isolation-not-known", level=Level.ADVICE, source="practice", when=lambda c: c.label.isolation is Isolation.NOT_KNOWN,
    text="Read whether its negatives are joined inside. Where the chassis is the return, an isolated output must be joined to it, a common negative is already.",
)
FUSE_BOTH_SIDES = Rule[Converter](
    id="converter.fuse-both-sides", level=Level.ADVICE, source="33cfr-place",
    text="Fuse the input where its cable leaves the bank. The output needs its own: a failed step-down converter passes the bank straight through.",
)
CAN_PASS_THE_BANK = Rule[Converter](
    id="converter.can-pass-the-bank", level=Level.ADVICE, source="practice", when=_passes_much,
    text="Use an isolated converter, or a fuse at the output rated for {feed.highest}: if one that is not isolated fails, it puts that on loads and fuses made for less.",
)
OUTPUT_IS_LIMITED = Rule[Converter](
    id="converter.output-is-limited", level=Level.NOTE, source="practice", when=_never_opens,
    text="Into a short many converters give little more than their rating, here {label.rated}: a larger fuse may never open. Smaller wires further on need their own.",
)
IS_NO_CHARGER = Rule[Converter](
    id="converter.is-no-charger", level=Level.NOTE, source="practice",
    text="A converter is not a charger: into a battery it delivers full current until it overheats. Use a charger with stages.",
)
STEADY_POWER = Rule[Converter](
    id="converter.takes-steady-power", level=Level.NOTE, source="charger-balance",
    text="Its power is constant, so the current rises as the bank's voltage falls, to {input_current} at {feed.lowest}. Cable and fuse are sized for that.",
)
STARTS_HARD = Rule[Converter](
    id="converter.motors-start-hard", level=Level.NOTE, source="practice",
    text="Pumps and compressors take several times their current for a moment. A converter without room for it restarts again and again.",
)
COPPER_AGAINST_LOSS = Rule[Converter](
    id="system.copper-against-loss", level=Level.NOTE, source="copper-iacs", when=_saves,
    text="Against 12 V the largest load's cable saves {copper_saved} of copper, once. The converter costs {lost} a day, every day.",
)
WARM_PLACE_DERATES = Rule[Converter](
    id="converter.warm-place", level=Level.NOTE, source="practice", when=lambda c: at_least(c.air, WARM_PLACE),
    text="In air of {air} it gives {available}. It heats its own bay: see enclosure airflow.",
)

JUDGING = (OVERLOADED, INPUT_TOO_HIGH, INPUT_TOO_LOW, ONLY_A_PEAK, IDLE_DRAW)

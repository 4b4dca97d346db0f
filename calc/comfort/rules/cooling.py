"""Judgements on cooling: whether the unit and the bank can do it, and what a label is worth."""

from typing import Annotated

# fmt: off
from calc.comfort.cooling import Cooler, CoolingDay, RunningTime
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most
from calc.units.constants import HOUR
from calc.units.si import Celsius, EfficiencyRatio, Joules, Share, Tag

# Outside air for which labels are measured: common practice, no source
RATED_AT: Annotated[Celsius, Tag("air for which a cooler's label is measured")] = 35.0
# More than labels at 35 °C show: common practice, no source
SEASONAL: Annotated[EfficiencyRatio, Tag("highest efficiency ratio of a hot day")] = 4.5
# Of the time, beyond which a cooler has little in hand: common practice, no source
BUSY: Annotated[Share, Tag("running time of a cooler with little in hand")] = 0.8
# Of what is used of a bank, for cooling beside all else: common practice, no source
HALF_OF_BANK: Annotated[Share, Tag("share of the used charge that cooling may take")] = 0.5
# About 600 Ah at 12.8 V, more than most vans carry: common practice, no source
LARGE_BANK: Annotated[Joules, Tag("bank larger than most vans carry")] = 8000 * HOUR
# Air that cools nobody by much: common practice, no source
HOT_AIR: Annotated[Celsius, Tag("air that cools nobody")] = 32.0


def _beyond_bank(day: CoolingDay) -> bool:
    return not at_most(day.drawn.charge, day.drawn.bank.gives)


def _reckoned(day: CoolingDay) -> bool:
    return day.basis is RunningTime.HEAT_LOAD


def _guessed(day: CoolingDay) -> bool:
    return not _reckoned(day) and day.duty_used < 1


def _stronger_unit(day: CoolingDay) -> Change | None:
    if day.heat_load is None or not at_most(day.gain.outside, RATED_AT):
        return None
    return Change({"cooling": day.heat_load / BUSY})


TOO_SMALL = Rule[CoolingDay](
    id="cooler.too-small", level=Level.STOP, when=lambda d: not d.keeps_up,
    headline="Use a larger unit or more shade: {heat_load} comes in, it removes {cooler.cooling}, and {gain.inside} is not held.",
    mend=lambda d: None if d.heat_load is None else Change({"cooling": d.heat_load}),
)
BEYOND_ANY_BANK = Rule[CoolingDay](
    id="cooler.beyond-any-bank", level=Level.STOP,
    when=lambda d: _beyond_bank(d) and not at_most(d.energy / d.drawn.bank.usable, LARGE_BANK),
    headline="Use less: {drawn.charge} in {hours} needs a bank of {needed}, more than a van has.",
    mend=lambda d: Change({"hours": d.hours * LARGE_BANK * d.drawn.bank.usable / d.energy}),
)
LITTLE_IN_HAND = Rule[CoolingDay](
    id="cooler.little-in-hand", level=Level.CAUTION,
    when=lambda d: not at_most(d.duty_used, BUSY) or (_reckoned(d) and not at_most(d.gain.outside, RATED_AT)),
    headline="Use a stronger unit or more shade: it runs {duty_used} of the time, rated in air of 35 °C.",
    mend=_stronger_unit,
)
HALF_OF_BANK_TAKEN = Rule[CoolingDay](
    id="cooler.half-of-bank", level=Level.ADVICE, source="practice", when=lambda d: not at_most(d.drawn.share, HALF_OF_BANK),
    text="{drawn.charge} in {hours} is {drawn.share} of the usable bank: lights, fridge and fan need their part too.",
    mend=lambda d: Change({"capacity": d.drawn.charge / (HALF_OF_BANK * d.drawn.bank.usable)}),
)
GUESSED = Rule[CoolingDay](
    id="cooler.share-guessed", level=Level.CAUTION,
    when=lambda d: _guessed(d) and not at_most(d.all_the_time, d.drawn.bank.gives),
    headline="Check how long it runs: all the time it takes {all_the_time}, more than the usable bank.",
    mend=lambda d: Change({"capacity": d.all_the_time / d.drawn.bank.usable}),
)
SELDOM_RESTS = Rule[CoolingDay](
    id="cooler.seldom-rests", level=Level.ADVICE, source="practice", when=_guessed,
    text="The share of the time is your estimate. In full sun a cooler rarely stops; running all the time it takes {all_the_time}.",
)
SEASONAL_RATIO = Rule[Cooler](
    id="cooler.seasonal-ratio", level=Level.CAUTION, source="practice", when=lambda c: not at_most(c.efficiency_ratio, SEASONAL),
    headline="The ratio is too good for a hot day: look for the one measured at 35 °C.",
    text="A ratio this high is usually a seasonal value or one for mild weather. On the hottest day the ratio falls by a third or more.",
    mend=lambda _: Change({"efficiency_ratio": SEASONAL}),
)

NO_ENGINE_BESIDE_SLEEPERS = Rule[CoolingDay](
    id="cooler.no-engine-beside-sleepers", level=Level.ADVICE, source="practice", when=_beyond_bank,
    text="Never run an engine or generator beside people asleep: its exhaust kills. Use shade, outside covers on the glass and a fan first, then shore power or a drive.",
)
OPEN_UP = Rule[CoolingDay](
    id="air.open-up", level=Level.ADVICE, source="practice", when=lambda d: _reckoned(d) and d.gain.outside <= d.gain.inside,
    text="It is no warmer outside than the {gain.inside} you want: ventilate instead.",
)
AIR_TOO_HOT = Rule[CoolingDay](
    id="air.too-hot-to-cool", level=Level.ADVICE, source="practice", when=lambda d: _reckoned(d) and d.gain.outside > HOT_AIR,
    text="Moving air at {gain.outside} freshens the van but cools little. Shade first, and park higher up or by the water.",
)
CLOSED_VAN_KILLS = Rule[object](
    id="van.closed-in-sun-kills", level=Level.ADVICE, source="practice",
    text="A closed van in the sun can kill a child or animal within minutes, and a flat bank stops the cooler without warning. Never rely on a machine for either.",
)
LABELS = Rule[object](
    id="cooler.label-at-35", level=Level.NOTE, source="practice",
    text="Labels are measured at about 35 °C outside. Hotter air, a dirty coil or short ducts give less cooling for more power.",
)

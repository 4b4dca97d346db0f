"""Judgements on a week of a van; those on its bank's temperature are the bank's."""

# fmt: off
from typing import Annotated

from calc.energy.cloud import BRIGHT_SKY
from calc.energy.forecast import WeekAhead
from calc.energy.limits import FREEZING, MOST_OF_LEAD_ACID
from calc.energy.panels import TILT_FLATTERS
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import Share, Tag

# Of the capacity above the floor, less is a near thing: common practice, no source
SPARE: Annotated[Share, Tag("spare of a bank over its floor")] = 0.1
# A lead-acid bank wants to get there once a week: common practice, no source
NEARLY_FULL: Annotated[Share, Tag("state of a lead-acid bank that counts as nearly full")] = 0.95
# Below half by less than this is half: our choice
ROUNDING: Annotated[Share, Tag("room for rounding about half a bank")] = 1e-3


def _empties(week: WeekAhead) -> bool:
    return week.states.emptied is not None


def _never_full(week: WeekAhead) -> bool:
    return week.lead_acid and not at_least(week.states.fullest, NEARLY_FULL)


def _worn(week: WeekAhead) -> bool:
    return week.lead_acid and not at_least(week.states.lowest, MOST_OF_LEAD_ACID - ROUNDING)


def _bright(week: WeekAhead) -> bool:
    return not at_most(week.inputs.sky, BRIGHT_SKY) and week.inputs.array > 0


def _forced(week: WeekAhead) -> bool:
    return not at_most(week.strongest_charger, week.most_charge)


def _frost(week: WeekAhead) -> bool:
    return not week.lead_acid and not week.bank.charges and week.inputs.temperature < FREEZING


STARTS_EMPTY = Rule[WeekAhead](
    id="week.starts-empty", level=Level.STOP, when=lambda w: w.starts_empty,
    headline="The bank starts at {inputs.from_state}, where it counts as empty: charge it first.",
    mend=lambda w: Change({"from_state": 1.0}),
)
EMPTIES = Rule[WeekAhead](
    id="week.empties", level=Level.STOP, when=_empties,
    headline="Empty after {states.emptied}.",
)
STARTS_ALONE = Rule[WeekAhead](
    id="week.starts-on-an-inverter-that-is-off", level=Level.CAUTION, when=lambda w: w.starts_alone, source="practice",
    headline="Lasts the week by this sum, down to {states.lowest}, but with an inverter that is off when something on it wants to start.",
    text="A load at any hour, such as a fridge, starts by itself: the inverter has to stay on day and night, and its own draw counts for all of it. What a hand switches on, put down for day or night.",
    mend=lambda _: Change({"inverter_on": "day-and-night"}),
)
CHARGER_TOO_STRONG = Rule[WeekAhead](
    id="week.charger-too-strong", level=Level.CAUTION, when=_forced, source="bulk-most",
    headline="Lasts the week by this sum, down to {states.lowest}, but with a charger stronger than such a bank is usually given.",
    text="Lead-acid is usually given no more amps than a quarter of its A·h, LFP half (common practice): beyond that it heats. Counted is no more than that. Set the charger by the bank’s data sheet.",
)
FALLS = Rule[WeekAhead](
    id="week.falls", level=Level.CAUTION, when=lambda w: not w.holds and w.states.lasts is not None,
    headline="Lasts the week, down to {states.lowest}, but it falls: empty after {states.lasts} of such days.",
)
FALLS_SLOWLY = Rule[WeekAhead](
    id="week.falls-slowly", level=Level.CAUTION, when=lambda w: not w.holds and w.states.lasts is None,
    headline="Lasts the week, down to {states.lowest}, and slowly falls.",
)
WORN = Rule[WeekAhead](
    id="week.below-half", level=Level.CAUTION, when=_worn, source="practice",
    headline="Lasts, down to {states.lowest}; below half wears a lead-acid bank fast.",
    text="Below half wears a lead-acid bank fast; below a fifth it is damaged, and in frost its weak acid can freeze.",
)
NEVER_FULL = Rule[WeekAhead](
    id="week.never-full", level=Level.CAUTION, when=_never_full, source="incomplete-charge",
    headline="Lasts, down to {states.lowest}, but is never nearly full again: a lead-acid bank suffers from that.",
    text="Incomplete charging is the main cause of early loss in lead-acid banks. The fullest it gets after the first day is {states.fullest}: once a week, a whole night on a lead or a long drive.",
)
LOW_SUN_ONLY = Rule[WeekAhead](
    id="week.only-with-a-low-sun", level=Level.CAUTION, when=lambda w: w.leans_on_low_sun,
    headline="Lasts by this sum, down to {states.lowest}, but only with a sun that stands {sun.noon} high at noon: a hill or a tree takes it.",
)
LITTLE_TO_SPARE = Rule[WeekAhead](
    id="week.little-to-spare", level=Level.CAUTION, when=lambda w: not at_least(w.states.lowest, w.bank.floor + SPARE),
    headline="Lasts, but down to {states.lowest} with {bank.floor} counted as empty: little to spare for a darker week.",
)
BRIGHT = Rule[WeekAhead](
    id="week.nearly-clear-sky", level=Level.CAUTION, when=_bright, source="typical-sun",
    headline="Lasts, down to {states.lowest}, under a nearly clear sky. Try a grey one.",
    text="Typical months of three stations bring 43 to 87 % of clear days; a grey week far less.",
    mend=lambda _: Change({"sky": BRIGHT_SKY}),
)

NO_SOURCE_IN_FROST = Rule[WeekAhead](
    id="week.no-source-in-frost", level=Level.ADVICE, when=_frost, source="lfp-frost",
    text="No source is counted in this frost, not even for the loads.",
)
TILT_UNDER_CLOUD = Rule[WeekAhead](
    id="week.tilt-under-cloud", level=Level.ADVICE, source="liu-jordan",
    when=lambda w: w.inputs.array > 0 and not at_most(w.sun.on_plane, TILT_FLATTERS * w.sun.spread),
    text="Under cloud light comes from all over, and a tilt gains little: counted is {inputs.sky} of {sun.spread}, not of the {sun.on_plane} of a clear day on panels tilted so. A bright week brings more.",
)
ALARMS_FALL_SILENT = Rule[WeekAhead](
    id="week.alarms-fall-silent", level=Level.ADVICE, when=lambda w: _empties(w) or w.starts_empty, source="practice",
    text="When the bank cuts off, alarms for gas, smoke and carbon monoxide may fall silent with it, and a heater's fan stops hot. Keep alarms on batteries of their own, and leave a heater to run down before the bank is empty.",
)
LEAD_ACID_FILLS_SLOWLY = Rule[WeekAhead](
    id="week.lead-acid-fills-slowly", level=Level.NOTE, source="ampere-hour-law", when=lambda w: w.lead_acid,
    text="Near full a lead-acid bank takes a current in proportion to what is missing, so short drives fill it badly.",
)

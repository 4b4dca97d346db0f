"""Judgements on a week of a van; those on its bank's temperature are the bank's."""

# fmt: off
from typing import Annotated

from calc.energy.cloud import BRIGHT_SKY
from calc.energy.forecast import WeekAhead
from calc.energy.limits import FREEZING, MOST_OF_LEAD_ACID
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY
from calc.units.si import Number, Seconds, Share, Tag

# Of the capacity above the floor, less is a near thing: common practice, no source
SPARE: Annotated[Share, Tag("spare of a bank over its floor")] = 0.1
# A lead-acid bank wants to get there once a week: common practice, no source
NEARLY_FULL: Annotated[Share, Tag("state of a lead-acid bank that counts as nearly full")] = 0.95
# Left part charged for longer lead-acid sulphates: common practice, no source
LONGEST_RECOVERY: Annotated[Seconds, Tag("longest wait of lead-acid for a full charge")] = 7 * DAY
# By then the next trip begins: common practice, no source
LATE_RECOVERY: Annotated[Seconds, Tag("wait for a full charge that is late for any bank")] = 14 * DAY
# Full sun, square on and cold, is hardly ever there: common practice, no source
SUN_OVER_CHARGE: Annotated[Number, Tag("full-sun current over what a bank is given that is left so")] = 1.3
# Below half by less than this is half: our choice
ROUNDING: Annotated[Share, Tag("room for rounding about half a bank")] = 1e-3


def _empties(week: WeekAhead) -> bool:
    return week.states.emptied is not None


def _never_full(week: WeekAhead) -> bool:
    return not week.trip and week.lead_acid and not at_least(week.states.fullest, NEARLY_FULL)


def _worn(week: WeekAhead) -> bool:
    return week.lead_acid and not at_least(week.states.lowest, MOST_OF_LEAD_ACID - ROUNDING)


def _bright(week: WeekAhead) -> bool:
    skies = week.inputs.skies
    measured = skies is not None and skies.clearness is not None
    return not measured and not at_most(week.sky_used, BRIGHT_SKY) and week.inputs.array > 0


def _slow(week: WeekAhead) -> bool:
    found = week.recovered
    return found is not None and week.lead_acid and found.time is not None and not at_most(found.time, LONGEST_RECOVERY)


def _late(week: WeekAhead) -> bool:
    found = week.recovered
    return found is not None and not week.lead_acid and found.time is not None and not at_most(found.time, LATE_RECOVERY)


def _forced(week: WeekAhead) -> bool:
    return not at_most(week.strongest_charger, week.most_charge)


def _forced_by_sun(week: WeekAhead) -> bool:
    return not at_most(week.sun_peak, SUN_OVER_CHARGE * week.most_charge)


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
    headline="Keep the inverter on day and night: a load on it may start at any hour.",
    text="Keep the inverter on: a load at any hour, such as a fridge, starts automatically. Give loads that you switch by hand a time of day.",
    mend=lambda _: Change({"inverter_on": "day-and-night"}),
)
CHARGER_TOO_STRONG = Rule[WeekAhead](
    id="week.charger-too-strong", level=Level.CAUTION, when=_forced, source="bulk-most",
    headline="Set the {strongest_charger} charger lower: such a bank accepts {most_charge} at most.",
    text="Set the charger by the data sheet: usual is a quarter of its Ah in amps for lead-acid, half for LFP (common practice). More heats it, and is not included.",
)
PANELS_TOO_STRONG = Rule[WeekAhead](
    id="week.panels-too-strong", level=Level.CAUTION, when=_forced_by_sun, source="bulk-most",
    headline="Set the solar regulator to {most_charge} or less: in full sun these panels give the bank {sun_peak}.",
    text="Too much current heats a bank, and the management system of LFP may cut it off. A lower setting costs little over a day.",
)
FALLS = Rule[WeekAhead](
    id="week.falls", level=Level.CAUTION, when=lambda w: not w.trip and not w.holds and w.states.lasts is not None,
    headline="Lasts the week, down to {states.lowest}, but falls: empty after {states.lasts} like these.",
    text="Add solar, driving or shore power, or use less: such days use more than they charge.",
)
FALLS_SLOWLY = Rule[WeekAhead](
    id="week.falls-slowly", level=Level.CAUTION, when=lambda w: not w.trip and not w.holds and w.states.lasts is None,
    headline="Lasts the week, down to {states.lowest}, but falls slowly.",
    text="Add a little solar, driving or shore power, or use less: such days use more than they charge.",
)
WORN = Rule[WeekAhead](
    id="week.below-half", level=Level.CAUTION, when=_worn, source="practice",
    headline="Lasts, down to {states.lowest}, but discharging below half wears a lead-acid bank fast.",
    text="Add capacity or charge more: below half wears lead-acid fast; below a fifth it is damaged, and in frost its weak acid can freeze.",
)
NEVER_FULL = Rule[WeekAhead](
    id="week.never-full", level=Level.CAUTION, when=_never_full, source="incomplete-charge",
    headline="Lasts, down to {states.lowest}, but is never nearly full again: lead-acid needs that once a week.",
    text="Charge it full once a week, a night on shore power or a long drive: it gets no fuller than {states.fullest}, and incomplete charging ruins lead-acid early.",
)
LOW_SUN_ONLY = Rule[WeekAhead](
    id="week.only-with-a-low-sun", level=Level.CAUTION, when=lambda w: not w.trip and w.leans_on_low_sun,
    headline="Lasts, down to {states.lowest}, but the noon sun is only {sun.noon} high: a hill or tree blocks it.",
)
LITTLE_TO_SPARE = Rule[WeekAhead](
    id="week.little-to-spare", level=Level.CAUTION, when=lambda w: not w.trip and not at_least(w.states.lowest, w.bank.floor + SPARE),
    headline="Lasts, but down to {states.lowest} with {bank.floor} counted as empty: little reserve for a darker week.",
)
NOT_RECOVERED = Rule[WeekAhead](
    id="week.not-recovered", level=Level.CAUTION, when=lambda w: w.recovered is not None and w.recovered.time is None,
    headline="Lasts the trip, down to {states.lowest}, but is not full again in 60 days: charge it another way.",
)
LATE = Rule[WeekAhead](
    id="week.late-recovery", level=Level.CAUTION, when=_late, source="practice",
    headline="Charge it another way after the trip: it lasts, down to {states.lowest}, but is full again only after {recovered.time}.",
)
SLOW_RECOVERY = Rule[WeekAhead](
    id="week.slow-recovery", level=Level.CAUTION, when=_slow, source="incomplete-charge",
    headline="Lasts the trip, down to {states.lowest}, but full again only after {recovered.time}: charge it faster.",
    text="Charge lead-acid full within a week of a trip: left partly charged it sulphates and loses capacity permanently.",
)

BRIGHT = Rule[WeekAhead](
    id="week.nearly-clear-sky", level=Level.ADVICE, when=_bright, source="typical-sun",
    text="Try a grey sky too: most typical months of twelve places have less than {sky_used} of clear days, and a grey week far less.",
    mend=lambda w: None if w.inputs.skies else Change({"sky": BRIGHT_SKY}),
)
NO_SOURCE_IN_FROST = Rule[WeekAhead](
    id="week.no-source-in-frost", level=Level.ADVICE, when=_frost, source="lfp-frost",
    text="No charging source is used in this frost, not even for the loads.",
)
ALARMS_FALL_SILENT = Rule[WeekAhead](
    id="week.alarms-fall-silent", level=Level.ADVICE, when=lambda w: _empties(w) or w.starts_empty, source="practice",
    text="An empty bank may silence gas, smoke and carbon monoxide alarms, and stops a hot heater's fan. Use alarms with their own batteries; let the heater cool down before then.",
)
LEAD_ACID_FILLS_SLOWLY = Rule[WeekAhead](
    id="week.lead-acid-fills-slowly", level=Level.NOTE, source="ampere-hour-law", when=lambda w: w.lead_acid,
    text="Near full a lead-acid bank accepts a current in proportion to its missing charge, so short drives fill it poorly.",
)

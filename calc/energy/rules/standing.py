"""Judgements on a bank that stands; those on the bank itself are in `bank`."""

# fmt: off
from calc.energy.limits import LONGEST_STAND, LOW_LFP, MOST_OF_LEAD_ACID, STORED_FULL
from calc.energy.standing import Standing
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most


def _less_drain(stand: Standing) -> Change | None:
    return None if stand.largest_drain is None else Change({"drain": stand.largest_drain})


def _charged_in_between(stand: Standing) -> Change:
    return Change({"away": min(LONGEST_STAND, stand.shortest)})


IS_THERE = Rule[Standing](
    id="standing.is-there", level=Level.STOP, when=lambda s: s.is_there,
    headline="Charge it before you leave: it is already at your limit.", mend=lambda s: None if s.to_state == 1 else Change({"from_state": 1.0}),
)
TOO_LONG_BY_ITSELF = Rule[Standing](
    id="standing.too-long-by-itself", level=Level.STOP, when=lambda s: s.ruined and s.largest_drain is None and not s.drained,
    headline="Charge it in between: it lasts {days}, not {away}.",
    mend=lambda s: Change({"away": s.days}),
)
TOO_LONG_EITHER_WAY = Rule[Standing](
    id="standing.too-long-either-way", level=Level.STOP, when=lambda s: s.ruined and s.largest_drain is None and s.drained,
    headline="Switch the drain off and charge in between: it lasts {days}, and even without the drain not {away}.",
    mend=lambda s: Change({"away": s.days}),
)
TOO_LONG = Rule[Standing](
    id="standing.too-long", level=Level.STOP, when=lambda s: s.ruined and s.largest_drain is not None,
    headline="It lasts {days}, not {away}. Keep the drain below {largest_drain}, or switch the bank off at the battery.",
    mend=_less_drain,
)
BELOW_YOUR_LIMIT = Rule[Standing](
    id="standing.below-your-limit", level=Level.CAUTION, when=lambda s: s.too_long and not s.ruined,
    headline="After {away} about {back} is left, below the {to_state} you keep: charge it after {days}.",
    mend=lambda s: Change({"away": s.days}),
)
NEARLY_FLAT = Rule[Standing](
    id="standing.nearly-flat", level=Level.CAUTION, when=lambda s: not s.bank.lead_acid and not at_least(s.to_state, LOW_LFP),
    headline="Charge it sooner than after {days}: nearly flat, the cells are soon damaged permanently.",
    mend=lambda _: Change({"to_state": LOW_LFP}),
)
LEFT_BELOW_HALF = Rule[Standing](
    id="standing.left-below-half", level=Level.CAUTION, when=lambda s: s.bank.lead_acid and not at_least(s.to_state, 1 - MOST_OF_LEAD_ACID),
    headline="{days}, but left below half a lead-acid bank loses capacity permanently.",
    mend=lambda _: Change({"to_state": 1 - MOST_OF_LEAD_ACID}),
)
NOT_SURE = Rule[Standing](
    id="standing.not-sure", level=Level.CAUTION, when=lambda s: s.away is not None and not at_least(s.shortest, s.away),
    headline="Charge it in between: it usually lasts {days}, but {shortest} at the highest published self-discharge.",
    mend=lambda s: Change({"away": s.shortest}),
)
SULPHATES = Rule[Standing](
    id="standing.sulphates", level=Level.CAUTION, when=lambda s: s.bank.lead_acid and not at_most(s.stands_for, LONGEST_STAND),
    headline="Charge it every two to three months: lead-acid left longer sulphates, though its charge lasts {days}.",
    mend=_charged_in_between,
)

FREEZING_POINT = Rule[Standing](
    id="standing.freezing-point", level=Level.ADVICE, when=lambda s: s.bank.lead_acid, source="acid-freezing",
    text="At {to_state} the acid freezes near {left.freezes}. Keep 3 K clear of it; never charge a frozen battery: let it thaw and look for cracks first.",
)
COLDEST_NOT_KNOWN = Rule[Standing](
    id="standing.coldest-not-known", level=Level.ADVICE, source="lfp-frost",
    when=lambda s: not s.bank.lead_acid and s.coldest is None and at_least(s.left.temperature, s.left.charge_low),
    text="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. A solar regulator left on will charge it.",
)
MANAGEMENT_DRAWS = Rule[Standing](
    id="standing.management-draws", level=Level.ADVICE, when=lambda s: not s.bank.lead_acid, source="practice",
    text="Store an LFP bank about half full, switched off at the battery. Check it every few months: its management system's small draw shows on no outside meter; ask the maker.",
)
STORED_PART_EMPTY = Rule[Standing](
    id="standing.stored-part-empty", level=Level.ADVICE, when=lambda s: s.bank.lead_acid and not at_least(s.bank.state, STORED_FULL), source="practice",
    text="Store a lead-acid bank full. Left partly empty it sulphates, and does not recover.",
    mend=lambda _: Change({"from_state": 1.0}),
)
FUSE_AND_ALARMS_STAY = Rule[Standing](
    id="standing.fuse-and-alarms-stay", level=Level.ADVICE, when=lambda s: s.drain > 0, source="practice",
    text="Leave the fuse in the battery's cable while it is parked, and gas and carbon monoxide alarms on while anybody sleeps aboard.",
)
PAGES_DIFFER = Rule[Standing](
    id="standing.pages-differ", level=Level.NOTE, source="self-discharge",
    text="Published values are {loss_low} to {loss_high} for this chemistry at this temperature: {shortest} to {longest}.",
)
MEASURE_AFTER_AN_HOUR = Rule[Standing](
    id="standing.measure-after-an-hour", level=Level.NOTE, source="practice",
    text="Measure the drain with an ammeter or clamp in the battery's cable after an hour: many devices take long to go to sleep, and some wake again.",
)

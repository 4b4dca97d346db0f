"""Judgements on charging from an engine: relay and charger, the alternator's load, the drive.

Those on the bank, its temperature, the charging voltage and current are in
`calc.energy.rules.bank` and `calc.energy.rules.charging`; those on the run and its fuse in
`calc.electrical.rules`.
"""

# fmt: off
from collections.abc import Callable, Container, Iterable
from typing import Annotated, Any

from calc.electrical.conductors import HARDLY_SOLD, series_of
from calc.electrical.drop_limits import Duty, drop_limit
from calc.electrical.rules import protection as fuse_rules
from calc.electrical.rules.two_ends import FUSED_AT_ONE_END
from calc.energy.battery import Bank, Chemistry
from calc.energy.drive import AlternatorCharge, changed
from calc.energy.feeds import Fused, Method, StopsBy
from calc.energy.rules import bank as bank_rules
from calc.energy.rules import charging as charge_rules
from calc.energy.rules import rested as rested_rules
from calc.judge import JUDGING, Change, Level, Rule
from calc.judge.remedies import smallest_amount, smallest_change
from calc.units.compare import at_least, at_most
from calc.units.si import Number, Tag

# The hot share itself is known to a sixth: 50 to 70 % of the rating. Common practice, no source
HOT_ROOM: Annotated[Number, Tag("how far past its hot share an alternator is loaded without a word")] = 1.1
_MANY = 1e3  # a charger of a thousandth of its output is none

type When = Callable[[AlternatorCharge], bool]


def _lasting_within(found: AlternatorCharge, share: float) -> bool:
    return found.lasting_share is None or at_most(found.lasting_share, share)


def _hot_short(found: AlternatorCharge) -> bool:
    return not _lasting_within(found, HOT_ROOM * found.load.alternator.hot_share)


def _hot_short_by_charger(found: AlternatorCharge) -> bool:
    return found.charger is not None and _hot_short(found)


def _hot_short_by_relay(found: AlternatorCharge) -> bool:
    return found.relay is not None and found.bank.lead_acid and _hot_short(found)


def _idle_short(found: AlternatorCharge) -> bool:
    return not found.load.within(found.load.alternator.idle_share)


def _ends_unknown(found: AlternatorCharge) -> bool:
    return found.run.fused is Fused.UNKNOWN


def _stops_by(how: StopsBy) -> When:
    return lambda found: found.charger is not None and found.charger.stops_by is how


def _unfed(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.unfed


def _starved(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.starved


def _stays_off(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.stays_off


def _loses_much(found: AlternatorCharge) -> bool:
    return found.run_drop_share is not None and not at_most(found.run_drop_share, drop_limit(Duty.OTHER))


def _drains(found: AlternatorCharge) -> bool:
    return found.relay is not None and not found.relay.flows


def _level(found: AlternatorCharge) -> bool:
    return _drains(found) and not found.feed.asked and not found.feed.run_current


def _over_rating(found: AlternatorCharge) -> bool:
    return found.relay is not None and not _lasting_within(found, 1.0)


def _over_rating_by_charger(found: AlternatorCharge) -> bool:
    return found.charger is not None and not _lasting_within(found, 1.0)


def _lithium_over_hot(found: AlternatorCharge) -> bool:
    lithium = found.relay is not None and found.bank.chemistry is Chemistry.LFP
    return lithium and not found.load.within(found.load.alternator.hot_share)


def _joins(found: AlternatorCharge, *, lead_acid: bool) -> bool:
    return found.relay is not None and found.bank.lead_acid is lead_acid


def _hot_charger(found: AlternatorCharge) -> bool:
    return found.charger is not None and not at_least(found.charger.output_left, 1.0)


def _short(found: AlternatorCharge) -> bool:
    return found.drive is not None and found.drive.short


def _mended_by(
    level: Level, when: When, changes: Callable[[AlternatorCharge], Iterable[Change]]
) -> Callable[[AlternatorCharge], Change | None]:
    """Return what finds the first of `changes` that makes `when` false.

    No other judgement of the `level` or a graver one may become true by it.
    """
    levels = JUDGING[: JUDGING.index(level) + 1]

    def mend(before: AlternatorCharge) -> Change | None:
        spoke = judged(before, levels)

        def helps(change: Change) -> AlternatorCharge | None:
            after = changed(before, change)
            return after if not when(after) and judged(after, levels) <= spoke else None

        found = smallest_change(changes(before), helps)
        return found.change if found else None

    return mend


def _charger_instead(_: AlternatorCharge) -> Iterable[Change]:
    yield Change({"method": Method.CHARGER})


def _fuse_each_end(_: AlternatorCharge) -> Iterable[Change]:
    yield Change({"fused": Fused.BOTH})


def _better_run(found: AlternatorCharge) -> Iterable[Change]:
    """Yield every thicker size that shops keep, the thinnest first, unless the run's resistance is known."""
    laid = found.run.laid
    if found.run.known is None:
        for one in series_of(laid.run.conductor):
            if one.area > laid.copper.named_area and one.name not in HARDLY_SOLD:
                yield Change({"conductor": one.name})


def _smaller_charger(when: When) -> Callable[[AlternatorCharge], Iterable[Change]]:
    """Return what yields the largest output of the charger that makes `when` false."""

    def changes(found: AlternatorCharge) -> Iterable[Change]:
        if found.charger is None:
            yield from _charger_instead(found)
            return
        spared = smallest_amount(
            lambda less: not when(changed(found, Change({"charger_limit": less}))),
            present=found.charger.limit,
            most=found.charger.limit / _MANY,
        )
        if spared is not None:
            yield Change({"charger_limit": spared})

    return changes


def _larger_alternator(found: AlternatorCharge) -> Iterable[Change]:
    machine, total = found.load.alternator, found.load.total
    if total is not None and total > machine.vehicle_load:
        yield Change({"alternator": total / machine.hot_share})


def _longer_drive(found: AlternatorCharge) -> Iterable[Change]:
    if found.drive is not None and found.drive.drive_time is not None:
        yield Change({"hours": found.drive.drive_time})


# What joins engine and bank
OVER_VOLTAGE = Rule[AlternatorCharge](
    id="engine.over-voltage", level=Level.STOP, when=lambda a: not at_most(a.engine.held, a.engine.most),
    headline="Have the regulator checked: {engine.held} is too high for a vehicle's battery, {engine.most} at most.",
)
DRAINS_BANK = Rule[AlternatorCharge](
    id="relay.drains-bank", level=Level.STOP, when=lambda a: _drains(a) and not _level(a),
    headline="Nothing is charged: at {engine.held} the engine is below the bank's {shown.voltage}, and {relay.drain} flows into the vehicle.",
    mend=_mended_by(Level.STOP, _drains, _charger_instead),
)
NO_VOLTAGE_BETWEEN = Rule[AlternatorCharge](
    id="relay.no-voltage-between", level=Level.STOP, when=_level,
    headline="Use a charger: nothing is charged, because engine and bank are both at {engine.held}.",
    mend=_mended_by(Level.STOP, _level, _charger_instead),
)
STAYS_OFF = Rule[AlternatorCharge](
    id="charger.stays-off", level=Level.STOP, when=_stays_off, source="practice",
    headline="Use the run signal: at {engine.held} a charger switched by voltage stays off, up to about {charger.starts}.",
    mend=_mended_by(Level.STOP, _stays_off, lambda _: (Change({"stops_by": StopsBy.SIGNAL}),)),
)
UNFED = Rule[AlternatorCharge](
    id="charger.unfed", level=Level.STOP, when=_unfed,
    headline="Use larger or shorter cable: at {charger.power_last} the voltage at the charger's input collapses.",
    mend=_mended_by(Level.STOP, _unfed, _better_run),
)
STARVED = Rule[AlternatorCharge](
    id="charger.starved", level=Level.STOP, when=_starved,
    headline="Use larger cable: only {charger.last.voltage} reaches the charger's input, and it needs {charger.lowest_input}.",
    mend=_mended_by(Level.STOP, _starved, _better_run),
)
RUN_TOO_THIN = Rule[AlternatorCharge](
    id="charger.run-too-thin", level=Level.CAUTION, when=_loses_much, source="abyc-drop",
    headline="Use larger cable: the run to the charger drops {run_drop} ({run_drop_share}), over every limit we list.",
    mend=_mended_by(Level.CAUTION, _loses_much, _better_run),
)
RUN_LOSES_TOO_MUCH = Rule[AlternatorCharge](
    id="charger.run-loses-too-much", level=Level.ADVICE, when=lambda a: _unfed(a) or _starved(a), source="ohm",
    text="A charger draws more current at a lower input voltage, which drops more voltage. Use larger or shorter cable, clean its joints, or set the charger lower.",
)
NO_RISE = Rule[AlternatorCharge](
    id="relay.no-rise", level=Level.CAUTION, when=lambda a: a.rising is not None and a.drive is not None and not a.rising.current,
    headline="Count on no charge: the engine is at {engine.held}, and at {bank.state} such a bank soon reaches {rising.begins} itself.",
    mend=_mended_by(Level.CAUTION, lambda a: a.rising is not None and not a.rising.current, _charger_instead),
)
RELAY_BOUNDS_NOTHING = Rule[AlternatorCharge](
    id="relay.bounds-nothing", level=Level.CAUTION, when=lambda a: _joins(a, lead_acid=False),
    headline="The relay passes {initial_current} and limits neither current nor voltage. Measure both on a drive, or fit a charger.",
    mend=_mended_by(Level.CAUTION, lambda a: _joins(a, lead_acid=False), _charger_instead),
)
CHECK_RELAY_RATING = Rule[AlternatorCharge](
    id="relay.check-its-rating", level=Level.CAUTION, when=lambda a: _joins(a, lead_acid=True), source="practice",
    headline="Check the relay's rating: {initial_current} at first, falling to about {lasting} within minutes.",
    mend=_mended_by(Level.CAUTION, lambda a: _joins(a, lead_acid=True), _charger_instead),
)
# The three reasons that matter, for whoever thinks of a relay
CURRENT_NOT_LIMITED = Rule[AlternatorCharge](
    id="relay.current-not-limited", level=Level.ADVICE, when=lambda a: a.relay is not None, source="ohm",
    text="Current: a relay does not limit it, only resistance does. A larger or warmer bank or larger cable draws more. A charger never passes more than its setting.",
)
SMART_ALTERNATOR = Rule[AlternatorCharge](
    id="relay.smart-alternator", level=Level.ADVICE, when=lambda a: a.relay is not None, source="practice",
    text="Voltage: the bank gets the engine's voltage. A smart alternator may be below the bank, which then feeds the vehicle. A charger makes its own voltage.",
)
RELAY_THAT_STICKS = Rule[AlternatorCharge](
    id="relay.sticks", level=Level.ADVICE, when=lambda a: a.relay is not None, source="practice",
    text="Separation: if the relay sticks, or a resting LFP bank keeps it closed, loads empty the starter battery overnight. Engine off, a clamp meter on the run must read zero.",
)
LFP_CUTS_OFF = Rule[AlternatorCharge](
    id="relay.lfp-cuts-off", level=Level.ADVICE, when=lambda a: a.relay is not None and a.bank.chemistry is Chemistry.LFP, source="practice",
    text="Voltage spike: if an LFP bank's protection cuts off at full current, it can destroy the alternator's diodes and the vehicle's electronics.",
)
RESISTANCE_ESTIMATED = Rule[AlternatorCharge](
    id="relay.resistance-estimated", level=Level.ADVICE, source="bank-resistance",
    when=lambda a: a.most_first is not None and not a.inner.known,
    text="The bank's resistance is our estimate from chemistry and capacity. At the low end of published values, {inner.low}, the relay passes {most_first}.",
)
KNOWS_ENGINE_RUNS = Rule[AlternatorCharge](
    id="charger.knows-engine-runs", level=Level.ADVICE, when=_stops_by(StopsBy.VOLTAGE), source="practice",
    text="A voltage-switched charger may run on after the engine stops, and may stop while a smart alternator is at low voltage. A run signal is more reliable.",
)
STOPS_UNCHECKED = Rule[AlternatorCharge](
    id="charger.stops-unchecked", level=Level.CAUTION, when=_stops_by(StopsBy.UNKNOWN), source="practice",
    headline="Check that the charger stops with the engine: left on, it empties the starter battery overnight.",
    mend=_mended_by(Level.CAUTION, _stops_by(StopsBy.UNKNOWN), lambda _: (Change({"stops_by": StopsBy.SIGNAL}),)),
)
HEAT_TAKES_OUTPUT = Rule[AlternatorCharge](
    id="charger.heat-takes-output", level=Level.CAUTION, when=_hot_charger, source="practice",
    headline="Ventilate the bay: {drive.charge} in {drive.duration}, because the hot charger has {charger.output_left} of its output left.",
    text="Heat reduces the charger's output: ventilate its bay, and see enclosure airflow for the gain.",
    mend=_mended_by(Level.CAUTION, _hot_charger, lambda a: (Change({"output_left": 1.0}),)),
)
ENDS_UNKNOWN = Rule[AlternatorCharge](
    id="run.fuses-not-known", level=Level.CAUTION, when=_ends_unknown, source="33cfr-place",
    headline="Check that the run has a fuse at both batteries: each of them feeds a short.",
    mend=_mended_by(Level.CAUTION, _ends_unknown, _fuse_each_end),
)
FUSE_AT_BOTH_ENDS = Rule[AlternatorCharge](
    id="run.fuse-at-both-ends", level=Level.ADVICE, source="33cfr-place",
    text="Place each fuse within 7 in (18 cm) of its battery, or 40 in (1 m) where the cable up to it is in a sheath or enclosure.",
)
TWO_BATTERIES = Rule[AlternatorCharge](
    id="run.two-batteries", level=Level.ADVICE, source="practice",
    text="Two batteries feed this run: disconnect the minus of both before you work. Use one insulated tool and wear no rings. Follow the makers' instructions.",
)
ENGINE_EXHAUST_KILLS = Rule[AlternatorCharge](
    id="engine.exhaust-kills", level=Level.ADVICE, source="practice",
    text="Never run an engine in a closed space: its exhaust kills. A hot alternator burns, and its belt catches sleeves.",
)

# The alternator
NOTHING_LEFT = Rule[AlternatorCharge](
    id="alternator.nothing-left", level=Level.STOP, when=lambda a: a.load.hot_left <= 0,
    headline="Nothing is left for the bank: the vehicle alone uses the hot alternator's whole continuous output.",
    mend=_mended_by(Level.STOP, lambda a: a.load.hot_left <= 0, _larger_alternator),
)
OVER_RATING = Rule[AlternatorCharge](
    id="alternator.over-rating", level=Level.STOP, when=_over_rating,
    headline="Use a charger: the bank can draw {lasting}, with the vehicle {lasting_share} of the alternator's rating.",
    mend=_mended_by(Level.STOP, _over_rating, _charger_instead),
)
CHARGER_OVER_RATING = Rule[AlternatorCharge](
    id="alternator.charger-over-rating", level=Level.STOP, when=_over_rating_by_charger,
    headline="Use a smaller charger: with the vehicle it draws {load.share} of the alternator's rating for hours.",
    mend=_mended_by(Level.STOP, _over_rating_by_charger, _smaller_charger(_over_rating_by_charger)),
)
LFP_OVER_HOT = Rule[AlternatorCharge](
    id="alternator.lfp-over-hot", level=Level.STOP, when=_lithium_over_hot,
    headline="Use a charger: the LFP bank draws {initial_current} until nearly full; the hot alternator has {load.hot_left}.",
    mend=_mended_by(Level.STOP, _lithium_over_hot, _charger_instead),
)
HOT_TOO_SMALL = Rule[AlternatorCharge](
    id="alternator.hot-too-small", level=Level.CAUTION, when=_hot_short_by_charger, source="practice",
    headline="Use a smaller charger: charging draws {load.asked}, and the hot alternator has {load.hot_left} for it.",
    text="Overheating: at full output for an hour in a hot engine space, an alternator's diodes and windings fail.",
    mend=_mended_by(Level.CAUTION, _hot_short_by_charger, _smaller_charger(_hot_short_by_charger)),
)
RELAY_OVER_HOT = Rule[AlternatorCharge](
    id="alternator.relay-over-hot", level=Level.CAUTION, when=_hot_short_by_relay, source="practice",
    headline="Fit a charger: through the relay the bank draws {lasting} for hours; the hot alternator has {load.hot_left}.",
    text="Overheating: at full output for an hour in a hot engine space, an alternator's diodes and windings fail.",
    mend=_mended_by(Level.CAUTION, _hot_short_by_relay, _charger_instead),
)
IDLE_TOO_SMALL = Rule[AlternatorCharge](
    id="alternator.idle-too-small", level=Level.NOTE, when=_idle_short, source="alternator-manual",
    text="Long idling charges little: hot and at idle the alternator has {load.idle_left} for a bank that can draw {load.asked}. One published 50 A alternator gave 16 A hot at idle, and 48 A at speed.",
)
CHARGE_BY_WHAT_IS_LEFT = Rule[AlternatorCharge](
    id="alternator.charge-by-what-is-left", level=Level.ADVICE, source="practice",
    when=lambda a: a.charger is not None and a.drive is not None and a.load.fed is not None and not at_least(a.load.fed, 1.0),
    text="The charge is calculated with {drive.filling.current}, which the hot alternator has left, not with the charger's limit.",
)
RATED_COLD = Rule[AlternatorCharge](
    id="alternator.rated-cold", level=Level.NOTE, source="alternator-rating",
    text="The rating on the label is for a cold alternator at full speed. Hot or at idle it gives less.",
)
HALF_OF_SHAFT = Rule[AlternatorCharge](
    id="alternator.half-of-shaft", level=Level.NOTE, source="alternator-shaft",
    text="About half of the engine power an alternator uses comes out: charging by driving is not free.",
)

# The drive
BANK_FULL = Rule[Bank](
    id="drive.bank-full", level=Level.CAUTION, when=lambda b: at_least(b.state, 1.0),
    headline="The bank is full: there is nothing to charge.",
)
NEVER_ENOUGH = Rule[AlternatorCharge](
    id="drive.never-enough", level=Level.CAUTION, when=lambda a: _short(a) and a.drive is not None and a.drive.drive_time is None,
    headline="No drive can charge {drive.wanted} into this bank: {drive.charge} in {drive.duration}.",
)
TOO_SHORT = Rule[AlternatorCharge](
    id="drive.too-short", level=Level.CAUTION, when=lambda a: _short(a) and a.drive is not None and a.drive.drive_time is not None,
    headline="Drive {drive.drive_time} for the {drive.wanted} you want: {drive.duration} gives {drive.charge}.",
    mend=_mended_by(Level.CAUTION, _short, _longer_drive),
)
LOADS_MEANWHILE = Rule[AlternatorCharge](
    id="drive.loads-meanwhile", level=Level.ADVICE, when=lambda a: a.drive is not None, source="practice",
    text="Loads that run meanwhile, a fridge or a fan, use their part first: subtract that.",
)
LEAD_ACID_SELDOM_FULL = Rule[AlternatorCharge](
    id="drive.lead-acid-seldom-full", level=Level.NOTE, when=lambda a: a.drive is not None and a.bank.lead_acid, source="bulk-end",
    text="From about 75 % full lead-acid accepts less: a drive alone rarely fills it, and a bank that is never full ages early.",
)
FALL_IS_MODEL = Rule[AlternatorCharge](
    id="drive.fall-is-model", level=Level.NOTE, when=lambda a: a.drive is not None and a.drive.falls, source="practice",
    text="The falling current is a model. By it the bank is at {drive.end_state} afterwards; a battery monitor is more exact.",
)

JUDGED: tuple[tuple[str, tuple[Rule[Any], ...]], ...] = (
    ("bank", bank_rules.CHARGED),
    ("shown", (rested_rules.PAST_EMPTY,)),
    ("rested", (rested_rules.PAST_EMPTY, rested_rules.STATED_TOO_HIGH, rested_rules.STATED_TOO_LOW)),
    ("voltage", (charge_rules.VOLTAGE_TOO_HIGH,)),
    ("charger_voltage", (charge_rules.LEAD_ACID_ENDS_LOW,)),
    ("offer", (charge_rules.CURRENT_TOO_MUCH,)),
    ("protection", fuse_rules.RULES),
    ("", (
        OVER_VOLTAGE, DRAINS_BANK, NO_VOLTAGE_BETWEEN, STAYS_OFF, UNFED, STARVED, RUN_TOO_THIN, NO_RISE,
        RELAY_BOUNDS_NOTHING, CHECK_RELAY_RATING, HEAT_TAKES_OUTPUT, NOTHING_LEFT, OVER_RATING, CHARGER_OVER_RATING,
        LFP_OVER_HOT, HOT_TOO_SMALL, RELAY_OVER_HOT, NEVER_ENOUGH, TOO_SHORT, FUSED_AT_ONE_END, ENDS_UNKNOWN, STOPS_UNCHECKED,
    )),
)
"""What judges such a charge, by the part that it judges."""


def judged(found: AlternatorCharge, levels: Container[Level]) -> set[str]:
    """Return the ids of the rules of such `levels` that judge a charge from an engine."""
    held = ((getattr(found, at) if at else found, rules) for at, rules in JUDGED)
    return {
        rule.id
        for subject, rules in held
        if subject is not None
        for rule in rules
        if rule.level in levels and rule.when(subject)
    }

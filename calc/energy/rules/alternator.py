"""Judgements on charging from an engine: relay and charger, the alternator's load, the drive.

Those on the bank, its temperature, the charging voltage and current are in
`calc.energy.rules.bank` and `calc.energy.rules.charging`; those on the run and its fuse in
`calc.electrical.rules`.
"""

# fmt: off
from collections.abc import Callable, Container, Iterable
from typing import Any

from calc.electrical.conductors import series_of
from calc.electrical.rules import protection as fuse_rules
from calc.energy.battery import Bank, Chemistry
from calc.energy.drive import AlternatorCharge, changed
from calc.energy.feeds import Method
from calc.energy.rules import bank as bank_rules
from calc.energy.rules import charging as charge_rules
from calc.energy.rules import rested as rested_rules
from calc.judge import JUDGING, Change, Level, Rule
from calc.judge.remedies import smallest_amount, smallest_change
from calc.units.compare import at_least, at_most

_MANY = 1e3  # a charger of a thousandth of its output is none

type When = Callable[[AlternatorCharge], bool]


def _hot_short(found: AlternatorCharge) -> bool:
    return not found.load.within(found.load.alternator.hot_share)


def _idle_short(found: AlternatorCharge) -> bool:
    return not found.load.within(found.load.alternator.idle_share)


def _unfed(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.unfed


def _starved(found: AlternatorCharge) -> bool:
    return found.charger is not None and found.charger.starved


def _drains(found: AlternatorCharge) -> bool:
    return found.relay is not None and not found.relay.flows


def _over_rating(found: AlternatorCharge) -> bool:
    return found.relay is not None and not found.load.within(1.0)


def _lithium_over_hot(found: AlternatorCharge) -> bool:
    return found.relay is not None and found.bank.chemistry is Chemistry.LFP and _hot_short(found)


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


def _better_run(found: AlternatorCharge) -> Iterable[Change]:
    """Yield every thicker conductor, the thinnest first: where the run's resistance is not known."""
    laid = found.run.laid
    if found.run.known is None:
        thicker = (one for one in series_of(laid.run.conductor) if one.area > laid.copper.named_area)
        yield from (Change({"conductor": one.name}) for one in thicker)


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
    headline="{engine.held} is more than the battery of a vehicle is given, {engine.most} at most: have the regulator looked at.",
)
DRAINS_BANK = Rule[AlternatorCharge](
    id="relay.drains-bank", level=Level.STOP, when=_drains,
    headline="Nothing is charged: the engine holds {engine.held} and the bank has {shown.voltage}, so up to {relay.drain} flows out of the bank into the vehicle.",
    mend=_mended_by(Level.STOP, _drains, _charger_instead),
)
UNFED = Rule[AlternatorCharge](
    id="charger.unfed", level=Level.STOP, when=_unfed,
    headline="The run cannot feed this charger: at {charger.power_last} the voltage at its input breaks down. Thicker or shorter cable.",
    mend=_mended_by(Level.STOP, _unfed, _better_run),
)
STARVED = Rule[AlternatorCharge](
    id="charger.starved", level=Level.STOP, when=_starved,
    headline="Only {charger.last.voltage} reach the charger's input and it works down to {charger.lowest_input}: it eases off or stops.",
    mend=_mended_by(Level.STOP, _starved, _better_run),
)
RUN_LOSES_TOO_MUCH = Rule[AlternatorCharge](
    id="charger.run-loses-too-much", level=Level.ADVICE, when=lambda a: _unfed(a) or _starved(a), source="ohm",
    text="Less voltage at its input makes a charger take more current, which loses more voltage. Thicken or shorten the run, clean its joints, or set the charger lower.",
)
NO_RISE = Rule[AlternatorCharge](
    id="relay.no-rise", level=Level.CAUTION, when=lambda a: a.rising is not None and a.drive is not None and not a.rising.current,
    headline="Count on no charge: {engine.held} at the engine is no more than such a bank holds by itself at {bank.state} or soon after, {rising.begins}.",
    mend=_mended_by(Level.CAUTION, lambda a: a.rising is not None and not a.rising.current, _charger_instead),
)
RELAY_BOUNDS_NOTHING = Rule[AlternatorCharge](
    id="relay.bounds-nothing", level=Level.CAUTION, when=lambda a: a.relay is not None, source="ohm",
    headline="{initial_current} at first and less as the bank fills, some {drive.charge} in {drive.duration}; but nothing holds it to that.",
    text="A relay bounds neither current nor voltage. A better bank, a warmer one or a thicker cable raises the first; the second is whatever the engine holds, be it too little to fill the bank or too much for it.",
    mend=_mended_by(Level.CAUTION, lambda a: a.relay is not None, _charger_instead),
)
SMART_ALTERNATOR = Rule[AlternatorCharge](
    id="relay.smart-alternator", level=Level.ADVICE, when=lambda a: a.relay is not None, source="practice",
    text="A smart alternator lowers its voltage to save fuel and lifts it on the overrun. Work this sheet with the lowest that you measure: at or below the bank's own voltage nothing is charged, or the bank feeds the vehicle. LFP rests at 13.2 to 13.4 V, so this comes sooner with it.",
)
LFP_CUTS_OFF = Rule[AlternatorCharge](
    id="relay.lfp-cuts-off", level=Level.ADVICE, when=lambda a: a.relay is not None and a.bank.chemistry is Chemistry.LFP, source="practice",
    text="An LFP bank that is low takes nearly the same current until it is almost full, where lead-acid lets up. Should its own protection cut off at full current, the alternator's voltage jumps and can destroy its diodes and the vehicle's electronics.",
)
RELAY_THAT_STICKS = Rule[AlternatorCharge](
    id="relay.sticks", level=Level.ADVICE, when=lambda a: a.relay is not None, source="practice",
    text="With the engine off a relay that sticks, or one that goes by voltage and sees a bank resting above its cut-out (near 12.8 V on 12 V; LFP always is), keeps both joined: the loads of the night then empty the starter battery too. Engine off, put a clamp meter round the run: it must show nothing.",
)
KNOWS_ENGINE_RUNS = Rule[AlternatorCharge](
    id="charger.knows-engine-runs", level=Level.ADVICE, when=lambda a: a.charger is not None, source="practice",
    text="A charger must know that the engine runs, by a signal or by a voltage it is set for. Otherwise it goes on all night and empties the starter battery; with a smart alternator voltage alone will not do.",
)
HEAT_TAKES_OUTPUT = Rule[AlternatorCharge](
    id="charger.heat-takes-output", level=Level.CAUTION, when=_hot_charger, source="practice",
    headline="{drive.charge} in {drive.duration}: heat leaves the charger {charger.output_left} of its output.",
    text="Heat takes part of the charger's output: give its bay air, and see enclosure airflow for what that brings back.",
    mend=_mended_by(Level.CAUTION, _hot_charger, lambda a: (Change({"output_left": 1.0}),)),
)
FUSE_AT_BOTH_ENDS = Rule[AlternatorCharge](
    id="run.fuse-at-both-ends", level=Level.ADVICE, source="33cfr-place",
    text="This run hangs on a battery at both ends: a fuse at each, as near as the law says, within 7 in (18 cm), or 40 in (1 m) in a sheath. With one of them missing the cable is fed from the other battery with nothing to stop it.",
)
TWO_BATTERIES = Rule[AlternatorCharge](
    id="run.two-batteries", level=Level.ADVICE, source="practice",
    text="Two batteries feed this run: take the minus off both before you work, one insulated tool, no rings. A hot alternator burns and its belt catches sleeves. Keep to the makers' instructions, and never run an engine in a closed place: its exhaust kills.",
)

# The alternator
NOTHING_LEFT = Rule[AlternatorCharge](
    id="alternator.nothing-left", level=Level.STOP, when=lambda a: a.load.hot_left <= 0,
    headline="The vehicle alone takes all that the hot alternator gives for hours: nothing is left for the bank.",
    mend=_mended_by(Level.STOP, lambda a: a.load.hot_left <= 0, _larger_alternator),
)
OVER_RATING = Rule[AlternatorCharge](
    id="alternator.over-rating", level=Level.STOP, when=_over_rating,
    headline="By Ohm's law the bank asks {initial_current}, and with the vehicle that is {load.share} of the rating: the alternator works flat out until it is full or burnt.",
    mend=_mended_by(Level.STOP, _over_rating, _charger_instead),
)
LFP_OVER_HOT = Rule[AlternatorCharge](
    id="alternator.lfp-over-hot", level=Level.STOP, when=_lithium_over_hot,
    headline="An LFP bank asks {initial_current} through the relay and goes on asking; the hot alternator has {load.hot_left}. It needs a charger that limits the current.",
    mend=_mended_by(Level.STOP, _lithium_over_hot, _charger_instead),
)
HOT_TOO_SMALL = Rule[AlternatorCharge](
    id="alternator.hot-too-small", level=Level.CAUTION, when=_hot_short, source="practice",
    headline="{load.asked} is asked for the bank, and the hot alternator has {load.hot_left} for hours on end.",
    text="Nothing but heat limits an alternator. At full output for an hour in a hot engine bay its diodes and windings fail, and its cable burns if it was sized for less. Take a smaller charger, or one whose limit can be set.",
    mend=_mended_by(Level.CAUTION, _hot_short, _smaller_charger(_hot_short)),
)
IDLE_TOO_SMALL = Rule[AlternatorCharge](
    id="alternator.idle-too-small", level=Level.CAUTION, when=_idle_short, source="alternator-manual",
    headline="{drive.charge} in {drive.duration} on the road. Hot and at idle the alternator has {load.idle_left} for a bank that asks {load.asked}: do not count on idling.",
    text="Hot and turning slowly, one published machine of 50 A gave 16 A; at more than three times the speed 48 A. What is missing at idle comes out of the starter battery, and a charger then lets go.",
    mend=_mended_by(Level.CAUTION, _idle_short, _smaller_charger(_idle_short)),
)
CHARGE_BY_WHAT_IS_LEFT = Rule[AlternatorCharge](
    id="alternator.charge-by-what-is-left", level=Level.ADVICE, source="practice",
    when=lambda a: a.charger is not None and a.drive is not None and a.load.fed is not None and not at_least(a.load.fed, 1.0),
    text="Charge is reckoned with {drive.filling.current}, what the hot alternator has left, not with the charger's limit.",
)
RATED_COLD = Rule[AlternatorCharge](
    id="alternator.rated-cold", level=Level.NOTE, source="alternator-rating",
    text="The rating on the label is for a cold machine at full speed. Hot or at idle it is not there.",
)
HALF_OF_SHAFT = Rule[AlternatorCharge](
    id="alternator.half-of-shaft", level=Level.NOTE, source="alternator-shaft",
    text="About half of what an alternator takes from the engine comes out: charging by driving is not free.",
)

# The drive
BANK_FULL = Rule[Bank](
    id="drive.bank-full", level=Level.CAUTION, when=lambda b: at_least(b.state, 1.0),
    headline="The bank is full: there is nothing to put in.",
)
NEVER_ENOUGH = Rule[AlternatorCharge](
    id="drive.never-enough", level=Level.CAUTION, when=lambda a: _short(a) and a.drive is not None and a.drive.drive_time is None,
    headline="{drive.charge} in {drive.duration}; no drive puts {drive.wanted} into this bank.",
)
TOO_SHORT = Rule[AlternatorCharge](
    id="drive.too-short", level=Level.CAUTION, when=lambda a: _short(a) and a.drive is not None and a.drive.drive_time is not None,
    headline="{drive.charge} in {drive.duration}: for the {drive.wanted} you want, drive {drive.drive_time}.",
    mend=_mended_by(Level.CAUTION, _short, _longer_drive),
)
LOADS_MEANWHILE = Rule[AlternatorCharge](
    id="drive.loads-meanwhile", level=Level.ADVICE, when=lambda a: a.drive is not None, source="practice",
    text="What runs on the bank meanwhile, a fridge or a fan, takes its part first: count that off.",
)
LEAD_ACID_SELDOM_FULL = Rule[AlternatorCharge](
    id="drive.lead-acid-seldom-full", level=Level.NOTE, when=lambda a: a.drive is not None and a.bank.lead_acid, source="bulk-end",
    text="Near three quarters full lead-acid begins to take less at any current: a drive alone seldom fills it, and never being filled ages it.",
)
FALL_IS_MODEL = Rule[AlternatorCharge](
    id="drive.fall-is-model", level=Level.NOTE, when=lambda a: a.drive is not None and a.drive.falls, source="practice",
    text="The falling current is a model. By it the bank holds {drive.end_state} afterwards; a monitor that counts knows better.",
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
        OVER_VOLTAGE, DRAINS_BANK, UNFED, STARVED, NO_RISE, RELAY_BOUNDS_NOTHING, HEAT_TAKES_OUTPUT, NOTHING_LEFT,
        OVER_RATING, LFP_OVER_HOT, HOT_TOO_SMALL, IDLE_TOO_SMALL, NEVER_ENOUGH, TOO_SHORT,
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

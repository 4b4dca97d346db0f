"""Judgements on a conductor and its fuse: whether one fits, and what heat makes of both.

`HEAT` are those of it that heat brings, the gravest first.
"""

# fmt: off
from collections.abc import Callable, Iterable
from typing import Annotated

from calc.electrical import nec
from calc.electrical.ampacity import Surroundings
from calc.electrical.cable import UNMARKED_INSULATION
from calc.electrical.fuses import HIGHEST_OF_BANK, rated_for
from calc.electrical.protection import Protection, changed, remedies, thicker
from calc.electrical.rules.cable import ADVICE as CABLE_ADVICE
from calc.electrical.rules.cable import beyond_print
from calc.judge import JUDGING, Change, Level, Rule
from calc.judge.remedies import smallest_change
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Celsius, Tag, Volts

# The hottest air that the boats' rules have figures for: 33 CFR 183.425 table 5
HOT_AIR: Annotated[Celsius, Tag("hottest air of the boats' rules")] = 50.0
# From which makers of fuses give a lower rating: common practice, no source
WARM_AIR: Annotated[Celsius, Tag("air from which a fuse is derated")] = 40.0
# A short that burns and welds: common practice, no source
BURNING_FAULT: Annotated[Amperes, Tag("fault that burns and welds")] = 1000.0
# Below it a fuse may be larger than the ampacity: 33 CFR 183.455(c)
CEILING_BELOW: Annotated[Volts, Tag("voltage below which 33 CFR allows a larger fuse")] = 50.0


def _hot_copper(p: Protection) -> bool:
    return p.warmth is not None and not at_most(p.warmth.warm, p.terminal_limit)


def _above_cool_terminals(p: Protection) -> bool:
    return p.cable.by_nec and p.cable.insulation > nec.COOL_TERMINAL


def _may_have_cool_terminals(p: Protection) -> bool:
    return _above_cool_terminals(p) and p.fuse is not None and p.cable.cool_terminals is not None


def _weak_terminals(p: Protection) -> bool:
    cable, most = p.cable, p.cable.cool_terminals
    marked = p.terminals is not None and not at_most(p.terminals, nec.COOL_TERMINAL)
    if marked or p.fuse is None or not _above_cool_terminals(p) or not nec.in_cool_terminals(cable.table_row):
        return False
    return most is None or not at_most(p.fuse, most)


def _in_air_above(p: Protection, air: float) -> bool:
    return p.may_flow and not at_most(p.cable.air, air)


def _marking_decides(p: Protection) -> bool:
    return p.fuse is not None and not p.cable.by_nec and p.cable.insulation > UNMARKED_INSULATION


def _weak_unmarked(p: Protection) -> bool:
    most = p.cable.ampacity_at_60c_insulation
    return p.fuse is not None and most is not None and _marking_decides(p) and not at_most(p.fuse, most)


def _nothing_unmarked(p: Protection) -> bool:
    return _marking_decides(p) and p.cable.ampacity_at_60c_insulation is None


def _mended_by(
    when: Callable[[Protection], bool],
    changes: Callable[[Protection], Iterable[Change]],
    spoken: Callable[[Protection], set[str]] | None = None,
) -> Callable[[Protection], Change | None]:
    """Return what finds the smallest of `changes` that makes `when` false and nothing else true.

    `spoken` gives the ids of the rules that count as something else, those of the verdict if none.
    """

    def mend(before: Protection) -> Change | None:
        if before.allowed is not None or before.fitted is not None:
            return None  # the load's label or the fuse that is there decides: no wire mends that
        speak = spoken or _judged
        spoke = speak(before)

        def helps(change: Change) -> Protection | None:
            after = changed(before, change)
            return after if not when(after) and speak(after) <= spoke else None

        found = smallest_change(changes(before), helps)
        return found.change if found else None

    return mend


def _judged(p: Protection) -> set[str]:
    """Return the ids of the rules here that make the verdict on `p`."""
    return {rule.id for rule in RULES if rule.level in JUDGING and rule.when(p)}


def _advised(p: Protection) -> set[str]:
    """Return the ids of the rules on a cable and its fuse that judge or advise."""
    heard = {rule.id for rule in ADVICE if rule.when(p)}
    return _judged(p) | heard | {rule.id for rule in CABLE_ADVICE if rule.when(p.cable)}


def _cooler(p: Protection) -> Iterable[Change]:
    """Yield a way through air that is not warm for a fuse, outside an engine space if need be."""
    from_air = min(p.cable.ambient, WARM_AIR)
    yield Change({"ambient": from_air})
    if p.cable.surroundings is Surroundings.INSIDE:
        yield Change({"surroundings": Surroundings.OUTSIDE})
        yield Change({"ambient": from_air, "surroundings": Surroundings.OUTSIDE})


def _too_large_for_voltage(p: Protection) -> bool:
    """Whether no fuse for so much voltage, more than that of a bank, carries the load."""
    if p.chosen is not None or not p.ratings or at_most(p.max_voltage, HIGHEST_OF_BANK):
        return False
    return not at_least(max(p.ratings), p.lowest)


def _narrow(p: Protection) -> bool:
    return p.chosen is None and not p.wide_enough and not p.overloaded


def _no_rating_between(p: Protection) -> bool:
    return p.chosen is None and bool(p.ratings) and p.window_open


def _taken_by_fault(p: Protection) -> bool:
    """Whether a fuse would fit, if only it could break the fault."""
    if not _no_rating_between(p) or p.fault_current is None:
        return False
    made = {rating for one in rated_for(p.max_voltage) for rating in one.ratings}
    return any(at_least(one, p.lowest) and at_most(one, p.highest) for one in made)


def _let_a_fuse_fit(p: Protection) -> Change | None:
    """Return the first of the changes after which a fuse fits."""
    found = remedies(p)
    return found[0].change if found else None


NO_FAMILY = Rule[Protection](
    id="fuse.no-family", level=Level.STOP, when=lambda p: not p.ratings,
    headline="No fuse family in our table is rated for {max_voltage} and a fault of {fault_current}.",
)
WINDOW_CLOSED = Rule[Protection](
    id="fuse.window-closed", level=Level.STOP, when=lambda p: p.chosen is None and p.overloaded,
    headline="Use larger wire: this one can carry {ampacity}, and the load draws {current}.",
    mend=_let_a_fuse_fit,
)
WINDOW_NARROW = Rule[Protection](
    id="fuse.window-narrow", level=Level.CAUTION, when=_narrow,
    headline="Use larger wire: no standard fuse both carries {current} for hours and protects this wire ({highest}).",
    text="Nothing burns at this load. But a fuse that protects this wire would be loaded to its rating, where it ages and opens without a fault.",
    mend=_mended_by(_narrow, lambda p: (one.change for one in remedies(p, _judged))),
)
NO_SUCH_RATING_AT_THIS_VOLTAGE = Rule[Protection](
    id="fuse.no-family-so-large-at-this-voltage", level=Level.STOP, source="fuse-ratings", when=_too_large_for_voltage,
    headline="Use a d.c. breaker or fuse from a specialist: at {max_voltage} none in our table is rated {lowest}.",
    text="The families for a vehicle's voltage end below {max_voltage}. Mains needs its own breakers: ask a licensed person.",
    covers=frozenset({"fuse.no-rating-between", "fuse.no-rating-for-this-fault", "fuse.window-narrow"}),
)
NO_RATING_FOR_FAULT = Rule[Protection](
    id="fuse.no-rating-for-this-fault", level=Level.CAUTION, source="fuse-ratings", when=_taken_by_fault,
    headline="Use larger wire: no fuse that breaks {fault_current} is made from {lowest} to {highest}.",
    text="A fuse that cannot break the fault can burst and burn. On larger wire a larger one fits, of a family that can.",
    mend=_mended_by(_taken_by_fault, lambda p: (one.change for one in remedies(p, _judged))),
    covers=frozenset({"fuse.no-rating-between"}),
)
NO_RATING_BETWEEN = Rule[Protection](
    id="fuse.no-rating-between", level=Level.CAUTION, when=_no_rating_between,
    headline="Use larger wire, or ask the maker for another fuse: none is made from {lowest} to {highest}.",
    mend=_mended_by(_no_rating_between, lambda p: (one.change for one in remedies(p, _judged))),
)

HOT_COPPER_AT_LUGS = Rule[Protection](
    id="copper.hot-at-lugs", level=Level.CAUTION, when=_hot_copper, source="practice",
    headline="Copper may reach {warmth.warm} at this load: use larger wire, or terminals, lugs and fuse holder rated for it.",
    text="Hot joints: the copper may reach {warmth.warm} (our estimate), and the weakest terminal is good for {terminal_limit}. Use larger wire or terminals rated for more.",
    mend=_mended_by(_hot_copper, thicker),
)
WEAK_TERMINALS = Rule[Protection](
    id="terminals.taken-as-cool", level=Level.CAUTION, when=_weak_terminals, source="nec-terminals",
    headline="Check the terminals: a {fuse} fuse on {cable.conductor} needs them marked 75 °C at both ends.",
    mend=_mended_by(_weak_terminals, thicker),
)
HOT_AIR_NOT_PRINTED = Rule[Protection](
    id="fuse.hot-air-not-printed", level=Level.CAUTION, source="nec-ambient",
    when=lambda p: _in_air_above(p, HOT_AIR) and beyond_print(p.cable),
    headline="Check the cable maker's rating for air of {cable.air}: {cable.cited} prints no factor for it.",
    mend=_mended_by(lambda p: _in_air_above(p, HOT_AIR) and beyond_print(p.cable), _cooler),
)
HOT_AIR_DERATES = Rule[Protection](
    id="fuse.hot-air-derates", level=Level.CAUTION, when=lambda p: _in_air_above(p, HOT_AIR), source="practice",
    headline="Fit the fuse in a cooler place, or use its maker's derating: it opens early in air of {cable.air}.",
    mend=_mended_by(lambda p: _in_air_above(p, HOT_AIR), _cooler),
)

ONLY_AS_PRINTED = Rule[Protection](
    id="insulation.only-as-printed", level=Level.ADVICE, when=_weak_unmarked, source="33cfr-table",
    text="{cable.insulation} must be printed on the cable. With 60 °C insulation it could carry {cable.ampacity_at_60c_insulation} here, less than the fuse.",
    mend=_mended_by(_weak_unmarked, thicker, _advised),
)
NOTHING_UNLESS_PRINTED = Rule[Protection](
    id="insulation.nothing-unless-printed", level=Level.ADVICE, when=_nothing_unmarked, source="33cfr-table",
    text="{cable.insulation} must be printed on the cable. With 60 °C insulation it could carry nothing in air of {cable.air}.",
    mend=_mended_by(_nothing_unmarked, _cooler, _advised),
)
WARM_AIR_DERATES = Rule[Protection](
    id="fuse.warm-air-derates", level=Level.ADVICE, when=lambda p: _in_air_above(p, WARM_AIR), source="practice",
    text="In air above some 40 °C a fuse opens below its rating, which is for about 25 °C: use the maker's derating, or fit it in a cooler place.",
    mend=_mended_by(lambda p: _in_air_above(p, WARM_AIR), _cooler, _advised),
)
VOLTAGE_TOO_LOW = Rule[Protection](
    id="fuse.families-of-too-low-voltage", level=Level.ADVICE, when=lambda p: bool(p.too_low_in_voltage), source="fuse-ratings",
    text="Fire: above its d.c. rating a fuse can arc instead of opening. Ratings below {max_voltage} are refused: 58 V is not for a 48 V bank charged at 58.4 V.",
)
CANNOT_INTERRUPT = Rule[Protection](
    id="fuse.families-that-cannot-interrupt", level=Level.ADVICE, when=lambda p: bool(p.cannot_break), source="fuse-ratings",
    text="Fire: a fuse that cannot break the fault can burst and burn. Families that cannot break {fault_current} are refused.",
)
PLACE_ON_MAINS = Rule[Protection](
    id="fuse.place-on-mains", level=Level.ADVICE, when=lambda p: p.cable.by_nec, source="practice",
    text="Fit it where the wire takes its supply. How near is for local rules and a licensed person.",
)
PLACE_AT_SOURCE = Rule[Protection](
    id="fuse.place-at-source", level=Level.ADVICE, when=lambda p: not p.cable.by_nec, source="33cfr-place",
    text="Fit it at the source: within 7 in (18 cm) of where the wire takes current, 40 in (1 m) in a sheath or enclosure. Nothing protects an unfused length.",
)
FAULT_BURNS = Rule[Protection](
    id="fault.burns", level=Level.ADVICE, source="practice",
    when=lambda p: p.fault_current is not None and at_least(p.fault_current, BURNING_FAULT),
    text="A short on a bank burns and welds. Work with the battery disconnected, one insulated tool, no rings. Follow the maker's instructions and local rules.",
)
TERMINALS_HAVE_RATINGS = Rule[Protection](
    id="terminals.have-ratings", level=Level.ADVICE, source="nec-terminals", when=_may_have_cool_terminals,
    text="Look for 75 °C on both terminals. Without it NEC takes them as 60 °C, up to 100 A or if made for 14 to 1 AWG.",
)
TERMINALS_COOL_COLUMN = Rule[Protection](
    id="terminals.cool-column", level=Level.ADVICE, source="nec-terminals", when=_may_have_cool_terminals,
    text="Terminals taken as 60 °C carry {cable.cool_terminals} on this wire. NEC takes those above 100 A, or for sizes above 1 AWG, as 75 °C.",
)
TOO_LOW_IN_VOLTAGE = Rule[Protection](
    id="fuse.too-low-in-voltage", level=Level.NOTE, when=lambda p: bool(p.too_low_in_voltage), source="fuse-ratings",
    text="Refused because their d.c. voltage rating is below {max_voltage}: {too_low_in_voltage}.",
)
CANNOT_BREAK = Rule[Protection](
    id="fuse.cannot-break", level=Level.NOTE, when=lambda p: bool(p.cannot_break), source="fuse-ratings",
    text="Refused because they cannot break {fault_current}: {cannot_break}.",
)
CEILING_NOT_USED = Rule[Protection](
    id="fuse.ceiling-not-used", level=Level.NOTE, when=lambda p: p.max_voltage < CEILING_BELOW and not p.cable.by_nec, source="33cfr-place",
    text="Below 50 V the law would let a fuse go up to one and a half times the wire's ampacity, here {ceiling}. That is a maximum, not a target, and it is not used.",
)
SOME_FROM_MEMORY = Rule[Protection](
    id="fuse.some-families-from-memory", level=Level.NOTE, when=lambda p: p.fault_current is not None and p.some_from_memory, source="memory",
    text="Families marked “from memory” have ratings we could not check against a source.",
)

HEAT = (HOT_COPPER_AT_LUGS, WEAK_TERMINALS, HOT_AIR_NOT_PRINTED, HOT_AIR_DERATES)
ADVICE = (
    ONLY_AS_PRINTED, NOTHING_UNLESS_PRINTED, WARM_AIR_DERATES, VOLTAGE_TOO_LOW, CANNOT_INTERRUPT, PLACE_ON_MAINS, PLACE_AT_SOURCE, FAULT_BURNS,
    TERMINALS_HAVE_RATINGS, TERMINALS_COOL_COLUMN,
)
FITS = (WINDOW_CLOSED, NO_SUCH_RATING_AT_THIS_VOLTAGE, NO_RATING_FOR_FAULT, WINDOW_NARROW, NO_RATING_BETWEEN)  # whether a fuse does
RULES = (NO_FAMILY, *FITS, *HEAT)

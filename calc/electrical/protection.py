"""The fuse for a conductor: between what the load needs and what the conductor can carry.

One function chooses a fuse, whoever asks. The warmth of copper at a load is our estimate, from the
square of the current.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from calc.electrical import fuse_order, fuses, nec
from calc.electrical.ampacity import RuleSet, insulation_name, insulation_rating, ratings
from calc.electrical.cable import HOT_COPPER, ONE_CIRCUIT, USUAL_INSULATION, Cable, cable
from calc.electrical.clearing import Clears
from calc.electrical.conductors import HARDLY_SOLD, series_of
from calc.electrical.fuse_order import Candidate
from calc.electrical.fuses import Family
from calc.electrical.interrupting import InterruptingDuty, interrupting_duty
from calc.electrical.opening import Fuse
from calc.judge import Change
from calc.judge.remedies import Remedy, of_each_kind
from calc.units.compare import at_least, at_most
from calc.units.si import Amperes, Celsius, Kelvins, Share, Volts

MOST_CIRCUITS = 4  # into which a load is split: our choice


@dataclass(frozen=True, kw_only=True)
class Warmth:
    """How much warmer than the air copper is at a current (`rise`), and how `warm` it is so."""

    rise: Kelvins
    warm: Celsius


@dataclass(frozen=True, kw_only=True)
class FittedFuse:
    """A fuse that is there already, with the voltage rating `printed` on it, None if not read."""

    fuse: Fuse
    printed: Volts | None


@dataclass(frozen=True, kw_only=True)
class Protection:
    """The fuse on a `cable` that carries `current` for hours, None where none fits.

    `fault_current` is what a short can drive through it, None where that is left open; `allowed`
    the largest fuse that the load's own label allows, None where it says nothing. `suitable` are
    the families rated for the voltage and that fault, `ratings` the standard ratings that were to
    choose from, `weighed` those that would do, the best first. A `fitted` fuse, if there is one, is
    judged in place of the one that is chosen. `terminals` is what the weakest of lugs, fuse holder
    and switches is rated for, None where that is not known. `settled` is what a current falls to
    within minutes, None where it stays.
    """

    cable: Cable
    current: Amperes
    fault_current: Amperes | None
    allowed: Amperes | None
    lowest: Amperes
    suitable: tuple[Family, ...]
    ratings: tuple[float, ...]
    weighed: tuple[Candidate, ...]
    fitted: FittedFuse | None = None
    terminals: Celsius | None = None
    settled: Amperes | None = None

    @property
    def terminal_limit(self) -> Celsius:
        """The hottest copper that the terminals are made for, as usual where that is not known."""
        return HOT_COPPER if self.terminals is None else self.terminals

    @property
    def choice(self) -> Candidate | None:
        """The best of what was weighed."""
        return self.weighed[0] if self.weighed else None

    @property
    def chosen(self) -> Amperes | None:
        """The rating of the best of what was weighed."""
        return self.choice.rating if self.choice else None

    @property
    def fuse(self) -> Amperes | None:
        """The rating of the fuse that is judged: the fitted one, else the one chosen."""
        return self.fitted.fuse.rating if self.fitted else self.chosen

    @property
    def margin(self) -> Share:
        """What a fuse must be rated above a load that goes on for hours."""
        return fuses.CONTINUOUS

    @property
    def highest(self) -> Amperes:
        """The most that the fuse may be rated, for the cable and by the load's own label."""
        most = self.cable.largest_fuse
        return most if self.allowed is None else min(most, self.allowed)

    @property
    def wide_enough(self) -> bool:
        """Whether the cable allows what the load needs, whatever the label says."""
        return at_least(self.cable.largest_fuse, self.lowest)

    @property
    def label_too_small(self) -> bool:
        """Whether the label allows less than the load needs."""
        return self.allowed is not None and not at_least(self.allowed, self.lowest)

    @property
    def label_decides(self) -> bool:
        """Whether the load's own label allows less than the cable."""
        return self.allowed is not None and not at_most(self.cable.largest_fuse, self.allowed)

    @property
    def max_voltage(self) -> Volts:
        """The highest voltage that the fuse must break."""
        return self.cable.max_voltage

    @property
    def window_open(self) -> bool:
        """Whether anything lies between what the load needs and what the cable allows."""
        return at_least(self.highest, self.lowest)

    @property
    def families(self) -> tuple[Family, ...]:
        """The suitable families that make the chosen fuse, best first."""
        alike = (one.family for one in self.weighed if one.rating == self.chosen)
        return tuple(family for family in alike if family is not None)

    @property
    def marked_higher(self) -> tuple[str, ...]:
        """The families that make it, of which the common version is made for less voltage."""
        return tuple(one.name for one in self.families if one.marked_higher(self.max_voltage))

    @property
    def duty(self) -> InterruptingDuty | None:
        """What the judged fuse must interrupt, None where there is none or the fault is open."""
        if self.fault_current is None:
            return None
        printed: float | None = None
        if self.fitted is not None:
            fuse, printed = self.fitted.fuse, self.fitted.printed
        elif self.choice is not None and self.choice.family is not None:
            fuse = Fuse(self.choice.family.name, self.choice.rating)
        else:
            return None
        return interrupting_duty(
            fuse=fuse,
            voltage=self.max_voltage,
            fault_current=self.fault_current,
            printed=printed,
            least=self.least,
        )

    @property
    def least(self) -> Amperes:
        """The smallest rating that carries the load for hours."""
        return self.lowest

    @property
    def ampacity(self) -> Amperes:
        """The most that a fuse on the cable may be rated."""
        return self.cable.largest_fuse

    @property
    def run_ampacity(self) -> Amperes:
        """The same: the cable is one conductor."""
        return self.cable.largest_fuse

    @property
    def above_ampacity(self) -> bool:
        """Whether the fuse is rated above what the cable allows."""
        return self.fuse is not None and not at_most(self.fuse, self.ampacity)

    @property
    def above_ceiling(self) -> bool:
        """Whether it is rated above the most that it may be against what the cable can carry."""
        return self.fuse is not None and not at_most(self.fuse, fuses.CEILING * self.ampacity)

    @property
    def clears(self) -> Clears:
        """Whether it ends a short in time: that is left open here."""
        return Clears.NO_FUSE

    @property
    def overloaded(self) -> bool:
        """Whether the cable carries more than it can for hours."""
        return not at_most(self.current, self.ampacity)

    @property
    def may_flow(self) -> bool:
        """Whether the load may flow for hours: a fuse carries it, or at least the cable does."""
        return self.fuse is not None or not self.overloaded

    @property
    def above_label(self) -> bool:
        """Whether it is rated above what the load's own label allows."""
        allowed = self.allowed
        return self.fuse is not None and allowed is not None and not at_most(self.fuse, allowed)

    @property
    def below_load(self) -> bool:
        """Whether it is rated below the load."""
        return self.fuse is not None and not at_least(self.fuse, self.current)

    @property
    def loaded_hard(self) -> bool:
        """Whether it carries the load, but not with the margin for hours."""
        return (
            self.fuse is not None and not self.below_load and not at_least(self.fuse, self.lowest)
        )

    @property
    def lasting_load(self) -> Amperes | None:
        """The most that the fuse may carry for hours."""
        return None if self.fuse is None else self.fuse / fuses.CONTINUOUS

    @property
    def too_low_in_voltage(self) -> tuple[str, ...]:
        """The families whose d.c. voltage rating is too low."""
        return tuple(one.name for one in fuses.too_low_in_voltage(self.max_voltage))

    @property
    def cannot_break(self) -> tuple[str, ...]:
        """The families rated for the voltage that cannot break the fault."""
        rated = fuses.rated_for(self.max_voltage)
        return tuple(one.name for one in rated if one not in self.suitable)

    @property
    def next_larger(self) -> tuple[float, ...]:
        """The next two ratings that the cable would allow as well."""
        allowed = [one for one in self.ratings if at_least(self.highest, one)]
        return tuple(one for one in allowed if self.chosen is not None and one > self.chosen)[:2]

    @property
    def some_from_memory(self) -> bool:
        """Whether a family that makes the fuse, or the next two, is known from memory only."""
        near = {self.chosen, *self.next_larger}
        volts, fault = self.max_voltage, self.fault_current
        made = (one for one in self.suitable if near & set(one.ratings))
        return any(one.from_memory(volts, fault) for one in made)

    @property
    def ceiling(self) -> Amperes:
        """The most that 33 CFR 183.455(c) would let a fuse be rated below 50 V."""
        return fuses.CEILING * self.highest

    @property
    def warmth(self) -> Warmth | None:
        """The copper's warmth at this current; None where it must not flow."""
        return copper_warmth(self.cable, self.current) if self.may_flow else None


def copper_warmth(cable: Cable, current: float) -> Warmth:
    """Return how warm the copper of a `cable` is at `current` [A].

    Heat goes with the square of the current; at its ampacity the copper is as hot as its
    insulation may be. Common practice, no source.
    """
    rise = (cable.insulation - cable.air) * (current / cable.ampacity) ** 2
    return Warmth(rise=rise, warm=cable.air + rise)


@lru_cache(64)
def _choices(
    by_nec: bool, voltage: float, fault_current: float | None
) -> tuple[tuple[Family, ...], tuple[float, ...]]:
    """Return the families that suit, and the standard ratings to choose from."""
    if fault_current is not None:
        suitable = fuse_order.suitable(voltage, fault_current)
    elif by_nec and not at_most(voltage, fuses.HIGHEST_OF_BANK):
        return (), nec.standard_ratings()
    else:
        suitable = fuses.rated_for(voltage)
    return suitable, tuple(sorted({rating for one in suitable for rating in one.ratings}))


def standard_ratings(rule_set: RuleSet, max_voltage: float) -> tuple[float, ...]:
    """Return the standard ratings [A] to choose from while the fault is left open.

    Those of the families rated for `max_voltage` [V]; under NEC, above the voltage of a bank, those
    of 240.6(A).
    """
    return _choices(rule_set is RuleSet.NEC, max_voltage, None)[1]


def select_fuse(
    *,
    cable: Cable,
    current: float,
    fault_current: float | None,
    allowed: float | None = None,
    fitted: FittedFuse | None = None,
    terminals: float | None = None,
    settled: float | None = None,
) -> Protection:
    """Return the fuse that carries `current` [A] for hours and protects the `cable`.

    With a `fault_current` [A] it is of a family that can break it; without, of any family rated for
    the highest voltage, or under NEC, above the voltage of a bank, of any standard rating of
    240.6(A). `allowed` [A] is the most
    by the load's label. The order of what would do is that of `fuse_order`. A `fitted` fuse is
    judged in its place. `terminals` [°C] is the rating of the weakest, where it is known. NEC
    210.20(A) for the margin above the load; a current that is `settled` [A] within minutes needs it
    above that, and no less than the current itself.
    """
    suitable, ratings = _choices(cable.by_nec, cable.max_voltage, fault_current)
    lowest = fuses.CONTINUOUS * current
    if settled is not None:
        lowest = max(fuses.CONTINUOUS * min(settled, current), current)
    highest = cable.largest_fuse if allowed is None else min(cable.largest_fuse, allowed)
    if suitable:
        weighed = fuse_order.in_order(
            suitable,
            voltage=cable.max_voltage,
            fault_current=fault_current,
            lowest=lowest,
            highest=highest,
            in_vehicles=not cable.by_nec,
        )
    else:
        between = (one for one in ratings if at_least(one, lowest) and at_most(one, highest))
        weighed = tuple(
            Candidate(family=None, rating=one, needs=lowest, memory=False, tight=False)
            for one in between
        )
    return Protection(
        cable=cable,
        current=current,
        fault_current=fault_current,
        allowed=allowed,
        lowest=lowest,
        suitable=suitable,
        ratings=ratings,
        weighed=weighed,
        fitted=fitted,
        terminals=terminals,
        settled=settled,
    )


def changed(protection: Protection, change: Change) -> Protection:
    """Return the protection of what is laid, with a `change` of it worked anew.

    The change may name the parameters of `cable`, an insulation by its name, and `current` [A].
    Raises NotCovered where the rule set has no value for it.
    """
    laid = protection.cable
    inputs: dict[str, Any] = {
        "conductor": laid.conductor,
        "insulation": insulation_name(laid.insulation),
        "surroundings": laid.surroundings,
        "bundled": laid.bundled,
        "ambient": laid.ambient,
        "max_voltage": laid.max_voltage,
        "rule_set": laid.rule_set,
        "gauge_reading": laid.copper.gauge_reading,
        "current": protection.current,
        **change.values,
    }
    current = inputs.pop("current")
    insulation = insulation_rating(inputs.pop("insulation"))
    return select_fuse(
        cable=cable(**inputs, insulation=insulation),
        current=current,
        fault_current=protection.fault_current,
        terminals=protection.terminals,
        allowed=protection.allowed,
        fitted=protection.fitted,
        settled=protection.settled,
    )


def thicker(protection: Protection) -> Iterator[Change]:
    """Yield every thicker conductor of the same series that shops keep, the thinnest first."""
    there = protection.cable.copper.named_area
    odd = () if protection.cable.by_nec else HARDLY_SOLD
    for one in series_of(protection.cable.conductor):
        if one.area > there and one.name not in odd:
            yield Change({"conductor": one.name})


def remedies(
    protection: Protection, judged: Callable[[Protection], set[str]] = lambda _: set()
) -> tuple[Remedy[Change, Protection], ...]:
    """Return the changes after which a fuse fits, of each kind the smallest, worked anew.

    Thicker wire, hotter insulation that is on sale, no bundle, the load on several circuits; none
    after which anything is `judged` that was not.
    """
    spoke = judged(protection)
    laid = protection.cable
    hotter = (one for one in ratings(laid.rule_set) if laid.insulation < one <= USUAL_INSULATION)
    circuits = range(2, MOST_CIRCUITS + 1)
    kinds = (
        thicker(protection),
        (Change({"insulation": insulation_name(rating)}) for rating in hotter),
        (Change({"bundled": ONE_CIRCUIT}) for _ in range(laid.bundled > ONE_CIRCUIT)),
        (Change({"current": protection.current / n}) for n in circuits),
    )

    def fits(change: Change) -> Protection | None:
        after = changed(protection, change)
        return after if after.chosen is not None and judged(after) <= spoke else None

    return of_each_kind(kinds, fits)

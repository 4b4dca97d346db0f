"""What would carry a week or a trip that fails: each change found by working it again.

Two ends are told apart: that the bank is never empty in the days asked about, and that such days
could go on for good. How much more of a thing does for either is sought by halving; nights on shore
power and loads are tried one by one. A bank that takes no charge is warmed before anything else.
Where a better use of the inverter is not enough alone, it is tried together with each of the
others; where nothing is enough alone, so is the fullest roof. The changes are ranked by how little
they ask: what is new, as a share [0..1] of the most that is tried of it. Our own ranking: prices
and toil are not known.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from calc.energy import battery, charging
from calc.energy.daily_loads import Load, When
from calc.energy.limits import COOL
from calc.energy.outlook import Outlook
from calc.energy.week import Question, WeekInputs
from calc.judge.remedies import smallest_amount
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Celsius, Number, Seconds, Share, Tag, Watts

# Times what is there: our choice
MOST_BANK: Annotated[Number, Tag("largest growth of a bank that is tried")] = 3.0
MOST_DRIVE: Annotated[Seconds, Tag("longest drive in a day that is tried")] = 4 * HOUR  # our choice
# What an alternator may spare: common practice, no source
MOST_CHARGER: Annotated[Amperes, Tag("strongest charger tried while driving")] = 60.0
# Of a box inside a heated van: common practice, no source
WARM_BANK: Annotated[Celsius, Tag("temperature of a bank kept in a warm van")] = 20.0
# Appliances made for battery voltage hardly take more: common practice, no source
MOST_DIRECT: Annotated[Watts, Tag("largest appliance made for battery voltage")] = 300.0
BIGGEST = 3  # loads that are halved or left out: our choice
_HALVINGS = 10
_HALVINGS_FOR_GOOD = 7  # each is a look ahead of up to sixty days


class Kind(Enumeration):
    """What a remedy changes."""

    WARMTH = "warmth"
    ARRAY = "array"
    BANK = "bank"
    DRIVE = "drive"
    CHARGER = "charger"
    SHORE = "shore"
    SHORE_CHARGER = "shore-charger"
    OFF = "off"
    ROUTE = "route"
    HALF = "half"
    WITHOUT = "without"


type Goal = Callable[[WeekInputs], bool]


@dataclass(frozen=True, kw_only=True)
class Remedy:
    """One change: what `kind`, how much there would then be of it, and what that does.

    `amount` is watts, A·s, s a day, amps, nights or °C by `kind`, or None for a load; `load` its
    name; `besides` the change that goes with it, if any, with its own `besides_amount`. `share`
    [0..1] is how much it asks. `lowest` [0..1] is the lowest state with it, `works` whether it
    does what was missing: that the bank is never empty, or that it no longer falls. `for_good` is
    the amount with which such days could go on for good, or None; `lasts` whether any does.
    """

    kind: Kind
    amount: float | None
    load: str
    besides: Kind | None
    besides_amount: float | None
    share: Share
    lowest: Share
    works: bool
    outlook: Outlook
    for_good: float | None
    lasts: bool


def remedies(plan: WeekInputs) -> Iterator[Remedy]:
    """Yield each change to a `plan` that fails, one at a time.

    Nothing is yielded where the bank is at its floor at the start: only a charge helps then.
    """
    return (one for one in attempts(plan) if one is not None)


def attempts(plan: WeekInputs) -> Iterator[Remedy | None]:
    """Yield the same, each of which takes a while to find, and None in the middle of a long one."""
    if plan.from_state <= plan.bank.floor:
        return
    goal = _for_good if plan.holds else _these_days
    warmth = warmer(plan)
    if warmth is not None:
        warm = replace(plan, temperature=warmth)
        one = _remedy(goal, warm, Kind.WARMTH, _warmth_share(plan, warmth), amount=warmth)
        yield one
        if not plan.bank.charges:  # nothing else helps until it takes a charge
            if not one.works:
                yield from _together(one, _more(goal, warm))
            return
    used_better = list(_inverter(plan))
    for kind, share, changed in used_better:
        yield _remedy(goal, changed, kind, share)
    enough = False
    for found in _more(goal, plan):
        enough = enough or (found is not None and found.works)
        yield found
    for kind, share, changed in used_better[:1]:
        if not goal(changed):
            yield from _together(_remedy(goal, changed, kind, share), _more(goal, changed))
    full = plan.roof > plan.array and replace(plan, array=plan.roof)
    if not enough and full and not goal(full):
        first = _remedy(goal, full, Kind.ARRAY, _array_share(plan, plan.roof), amount=plan.roof)
        yield from _together(first, _more(goal, full))
    for load in sorted(plan.loads, key=lambda load: -load.energy)[:BIGGEST]:
        if load.energy:
            yield _eased(goal, plan, load)


def ranked(found: list[Remedy]) -> tuple[Remedy, ...]:
    """Return the changes that work, the one that asks least first, then those that do not.

    Two together are told where they work and ask less than the second of them alone. Warmth for a
    bank that takes no charge comes first whatever it asks: the others come with it.
    """
    alone = {one.kind: one.share for one in found if one.works and not one.besides}
    told = (
        one
        for one in found
        if not one.besides or (one.works and one.share < alone.get(one.kind, 3.0))
    )
    return tuple(sorted(told, key=lambda one: (not one.works, one.share)))


def warmer(plan: WeekInputs) -> float | None:
    """Return to what the bank would be warmed [°C], None where that gains nothing.

    A bank that takes no charge in the cold is warmed to where it is charged as usual, lead-acid
    that gives less in the cold to a warm van's temperature.
    """
    low = battery.charge_range(plan.chemistry)[0]
    if not at_least(plan.temperature, low):
        return max(low, COOL)
    if plan.cold > 1.0 and plan.temperature < WARM_BANK:
        return WARM_BANK
    return None


def _warmth_share(plan: WeekInputs, to: float) -> float:
    """Return how much it asks: by the kelvins, against a bank that stands in hard frost."""
    return min(1.0, (to - plan.temperature) / (WARM_BANK + COOL))


def _array_share(plan: WeekInputs, amount: float) -> float:
    return (amount - plan.array) / plan.roof


def _together(first: Remedy, others: Iterator[Remedy | None]) -> Iterator[Remedy | None]:
    for one in others:
        if one is None:
            yield one
        elif one.kind is not first.kind:
            yield replace(
                one,
                besides=first.kind,
                besides_amount=first.amount,
                share=one.share + first.share,
            )


def _inverter(plan: WeekInputs) -> Iterator[tuple[Kind, float, WeekInputs]]:
    """Yield the inverter off while nothing runs on it, and its small loads fed directly instead.

    The first asks nothing but a hand. An appliance that starts by itself at any hour leaves no time
    to switch it off; one of many watts is not made for battery voltage.
    """
    fed = [load for load in plan.loads if load.inverter and load.energy]
    if not fed:
        return
    if plan.always and plan.idle and all(load.when is not When.ALWAYS for load in fed):
        yield Kind.OFF, 0.0, replace(plan, always=False)
    small = [load for load in fed if load.watts <= MOST_DIRECT]
    if small:
        direct = tuple(
            replace(load, inverter=False) if load in small else load for load in plan.loads
        )
        share = sum(load.energy for load in small) / sum(load.energy for load in plan.loads)
        yield Kind.ROUTE, share, replace(plan, loads=direct)


def _more(goal: Goal, plan: WeekInputs) -> Iterator[Remedy | None]:
    """Yield more driving, nights on shore power, stronger chargers, more array and more bank."""

    def drive(amount: float) -> WeekInputs:
        return replace(plan, drive_hours=amount)

    def charger(amount: float) -> WeekInputs:
        return replace(plan, charger=amount)

    def shore_charger(amount: float) -> WeekInputs:
        return replace(plan, lead=amount)

    def array(amount: float) -> WeekInputs:
        return replace(plan, array=amount)

    def bank(amount: float) -> WeekInputs:
        return replace(plan, capacity=amount)

    strongest = min(
        MOST_CHARGER, charging.by_chemistry(plan.chemistry).most * plan.capacity / plan.cold
    )
    yield from _least(goal, drive, Kind.DRIVE, plan.drive_hours, MOST_DRIVE)
    if plan.drive_hours and plan.charger:
        yield from _least(goal, charger, Kind.CHARGER, plan.charger, strongest)
    yield from _nights(goal, plan)
    if plan.shore_every and plan.lead:
        yield from _least(goal, shore_charger, Kind.SHORE_CHARGER, plan.lead, strongest)
    yield from _least(goal, array, Kind.ARRAY, plan.array, plan.roof)
    yield from _least(goal, bank, Kind.BANK, plan.capacity, MOST_BANK * plan.capacity)


def _least(
    goal: Goal, made: Callable[[float], WeekInputs], kind: Kind, there: float, most: float
) -> Iterator[Remedy | None]:
    """Yield the least that does between what is `there`, which does not, and the `most`.

    If that does not either, it is yielded. Found by halving, and never short of what is needed.
    None is yielded between the steps of the search for what lasts for good.
    """
    if most <= there:
        return
    least = smallest_amount(
        lambda amount: goal(made(amount)), present=there, most=most, halvings=_HALVINGS
    )
    high = most if least is None else least
    one = _remedy(goal, made(high), kind, (high - there) / most, amount=high)
    if least is not None and not one.lasts and made(high).question is Question.WEEK:
        yield None
        if _for_good(made(most)):
            short, enough = high, most
            for _ in range(_HALVINGS_FOR_GOOD):
                yield None
                middle = (short + enough) / 2
                holds = _for_good(made(middle))
                short, enough = (short, middle) if holds else (middle, enough)
            one = replace(one, for_good=enough, lasts=True)
    yield one


def _these_days(plan: WeekInputs) -> bool:
    """Return whether the bank is never empty in the days asked about."""
    return plan.holds


def _for_good(plan: WeekInputs) -> bool:
    """Return whether days like these could go on without end."""
    return plan.outlook.holds


def _nights(goal: Goal, plan: WeekInputs) -> Iterator[Remedy]:
    """Yield the fewest nights on shore power that do; a last one comes too late."""
    now = plan.shore_every or plan.days
    tried = [replace(plan, shore_every=every) for every in range(min(now, plan.days) - 1, 0, -1)]
    if tried:
        one = next((other for other in tried if goal(other)), tried[-1])
        already = 1 / plan.shore_every if plan.shore_every else 0.0
        share = 1 / one.shore_every - already
        found = _remedy(goal, one, Kind.SHORE, share, amount=float(one.shore_every))
        if found.works and not found.lasts and plan.question is Question.WEEK:
            good = next((other for other in tried[tried.index(one) :] if other.outlook.holds), None)
            if good is not None:
                found = replace(found, for_good=float(good.shore_every), lasts=True)
        yield found


def _eased(goal: Goal, plan: WeekInputs, load: Load) -> Remedy:
    """Return `load` halved if that is enough, else left out."""
    half = _instead(plan, load, replace(load, hours=load.hours / 2))
    if goal(half):
        return _remedy(goal, half, Kind.HALF, 0.5, load=load.name)
    none = replace(load, watts=0.0, hours=0.0, inverter=False)
    return _remedy(goal, _instead(plan, load, none), Kind.WITHOUT, 1.0, load=load.name)


def _instead(plan: WeekInputs, load: Load, other: Load) -> WeekInputs:
    return replace(plan, loads=tuple(other if one is load else one for one in plan.loads))


def _remedy(
    goal: Goal,
    plan: WeekInputs,
    kind: Kind,
    share: float,
    *,
    amount: float | None = None,
    load: str = "",
) -> Remedy:
    lasts = plan.question is Question.WEEK and plan.holds and plan.outlook.holds
    return Remedy(
        kind=kind,
        amount=amount,
        load=load,
        besides=None,
        besides_amount=None,
        share=share,
        lowest=min(plan.week.states),
        works=goal(plan),
        outlook=plan.outlook,
        for_good=amount if lasts else None,
        lasts=lasts,
    )

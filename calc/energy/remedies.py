"""What would carry a week that fails: each change found by working the week again.

A change carries the week if the bank is never empty in it. How much more of a thing is sought by
halving; nights on a lead and loads are tried one by one. Where a better use of the inverter is not
enough alone, it is tried together with each of the others. The changes are ranked by how little
they ask: what is new, as a share [0..1] of the most that is tried of it. The most is a declared
figure for driving, array and bank, every night for a lead, all its hours for a load, and all that
the loads take for those that are fed otherwise. A switch that is only pressed asks nothing. Our own
ranking: prices and toil are not known.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Annotated

from calc.energy.outlook import Outlook
from calc.energy.week import DAYS, Load, WeekInputs, When
from calc.judge.remedies import smallest_amount
from calc.units.constants import HOUR
from calc.units.covered import Enumeration
from calc.units.si import Number, Seconds, Share, Tag, Watts

# More than a van's roof has room for: common practice, no source
MOST_ARRAY: Annotated[Watts, Tag("largest array tried on a van")] = 2000.0
# Times what is there: our choice
MOST_BANK: Annotated[Number, Tag("largest growth of a bank that is tried")] = 3.0
MOST_DRIVE: Annotated[Seconds, Tag("longest drive in a day that is tried")] = 4 * HOUR  # our choice
BIGGEST = 3  # loads that are halved or left out: our choice
_HALVINGS = 10


class Kind(Enumeration):
    """What a remedy changes."""

    ARRAY = "array"
    BANK = "bank"
    DRIVE = "drive"
    SHORE = "shore"
    OFF = "off"
    ROUTE = "route"
    HALF = "half"
    WITHOUT = "without"


@dataclass(frozen=True, kw_only=True)
class Remedy:
    """One change: what `kind`, how much there would then be of it, and what that does.

    `amount` is watts, A·s, s a day or nights by `kind`, or None for a load; `load` its name;
    `besides` the kind of change that goes with it, if any. `share` [0..1] is how much it asks.
    `lowest` [0..1] is the week's lowest state with it, `works` whether it carries the week.
    """

    kind: Kind
    amount: float | None
    load: str
    besides: Kind | None
    share: Share
    lowest: Share
    works: bool
    outlook: Outlook


def remedies(plan: WeekInputs) -> Iterator[Remedy]:
    """Yield each change to a `plan` that fails, one at a time: each takes a while to find.

    Nothing is yielded where the bank is at its floor at the start: only a charge helps then.
    """
    if plan.from_state <= plan.bank.floor:
        return
    used_better = list(_inverter(plan))
    for kind, share, changed in used_better:
        yield _remedy(changed, kind, share)
    yield from _more(plan)
    for kind, share, changed in used_better[:1]:
        if not changed.holds:
            for one in _more(changed):
                yield replace(one, besides=kind, share=one.share + share)
    for load in sorted(plan.loads, key=lambda load: -load.energy)[:BIGGEST]:
        if load.energy:
            yield _eased(plan, load)


def ranked(found: list[Remedy]) -> tuple[Remedy, ...]:
    """Return the changes that work, the one that asks least first, then those that do not.

    Two together are told where they work and ask less than the second of them alone.
    """
    alone = {one.kind: one.share for one in found if one.works and not one.besides}
    told = (
        one
        for one in found
        if not one.besides or (one.works and one.share < alone.get(one.kind, 2.0))
    )
    return tuple(sorted(told, key=lambda one: (not one.works, one.share)))


def _inverter(plan: WeekInputs) -> Iterator[tuple[Kind, float, WeekInputs]]:
    """Yield the inverter off while nothing runs on it, and its loads fed directly instead.

    The first asks nothing but a hand.

    An appliance that starts by itself at any hour leaves no time to switch it off.
    """
    fed = [load for load in plan.loads if load.inverter and load.energy]
    if not fed:
        return
    if plan.always and plan.idle and all(load.when is not When.ALWAYS for load in fed):
        yield Kind.OFF, 0.0, replace(plan, always=False)
    direct = tuple(replace(load, inverter=False) for load in plan.loads)
    share = sum(load.energy for load in fed) / sum(load.energy for load in plan.loads)
    yield Kind.ROUTE, share, replace(plan, loads=direct)


def _more(plan: WeekInputs) -> Iterator[Remedy]:
    """Yield more driving, nights on a lead, more array and more bank, each as little as does."""

    def drive(amount: float) -> WeekInputs:
        return replace(plan, drive_hours=amount)

    def array(amount: float) -> WeekInputs:
        return replace(plan, array=amount)

    def bank(amount: float) -> WeekInputs:
        return replace(plan, capacity=amount)

    yield from _least(drive, Kind.DRIVE, plan.drive_hours, MOST_DRIVE)
    yield from _nights(plan)
    yield from _least(array, Kind.ARRAY, plan.array, MOST_ARRAY)
    yield from _least(bank, Kind.BANK, plan.capacity, MOST_BANK * plan.capacity)


def _least(
    made: Callable[[float], WeekInputs], kind: Kind, there: float, most: float
) -> Iterator[Remedy]:
    """Yield the least that does between what is `there`, which does not, and the `most`.

    If that does not either, it is yielded. Found by halving, and never short of what is needed.
    """
    if most <= there:
        return
    least = smallest_amount(
        lambda amount: made(amount).holds, present=there, most=most, halvings=_HALVINGS
    )
    high = most if least is None else least
    yield _remedy(made(high), kind, (high - there) / most, amount=high)


def _nights(plan: WeekInputs) -> Iterator[Remedy]:
    """Yield the fewest nights on a lead that do; within the week a seventh comes too late."""
    now = plan.shore_every or DAYS
    tried = [replace(plan, shore_every=every) for every in range(min(now, DAYS) - 1, 0, -1)]
    if tried:
        one = next((other for other in tried if other.holds), tried[-1])
        already = 1 / plan.shore_every if plan.shore_every else 0.0
        share = 1 / one.shore_every - already
        yield _remedy(one, Kind.SHORE, share, amount=float(one.shore_every))


def _eased(plan: WeekInputs, load: Load) -> Remedy:
    """Return `load` halved if that is enough, else left out."""
    half = _instead(plan, load, replace(load, hours=load.hours / 2))
    if half.holds:
        return _remedy(half, Kind.HALF, 0.5, load=load.name)
    none = replace(load, watts=0.0, hours=0.0, inverter=False)
    return _remedy(_instead(plan, load, none), Kind.WITHOUT, 1.0, load=load.name)


def _instead(plan: WeekInputs, load: Load, other: Load) -> WeekInputs:
    return replace(plan, loads=tuple(other if one is load else one for one in plan.loads))


def _remedy(
    plan: WeekInputs, kind: Kind, share: float, *, amount: float | None = None, load: str = ""
) -> Remedy:
    return Remedy(
        kind=kind,
        amount=amount,
        load=load,
        besides=None,
        share=share,
        lowest=min(plan.week.states),
        works=plan.holds,
        outlook=plan.outlook,
    )

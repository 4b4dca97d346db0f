"""What comes of days all alike: how long a bank lasts, or that it holds for good."""

from typing import NamedTuple

from calc.energy.balance import HOURS, STILL, Bank, Day, Hours, hour
from calc.units.constants import HOUR
from calc.units.si import Seconds

HORIZON = 60  # days: beyond it no month is like its middle day any more


class Outlook(NamedTuple):
    """What comes of days all alike: when the bank is `empty` [s], or that it `holds` for good.

    Neither: it still falls, but is not empty within `HORIZON` days.
    """

    empty: Seconds | None
    holds: bool


def outlook(bank: Bank, day: Day, *, state: float, every: int) -> Outlook:
    """Return what comes of days all like `day` from `state` [0..1], a lead `every` nights.

    A cycle is the days from one lead to the next, or one day. Where a cycle ends no lower than it
    began, the next begins no lower, and since no hour turns a higher state into a lower one
    (`hour`) it ends no lower either: so it holds for good. Where a cycle took all that was offered,
    the next falls by just as much, as long as the floor is not reached: those are passed over.
    """
    hours, at = Hours(bank, day, every), 0
    cycle = max(every, 1)
    while at < HORIZON:
        began = lowest = state
        whole = at > 0  # the first cycle has no lead on its first morning
        for number in range(at, at + cycle):
            for place, parts in enumerate(hours.of(number)):
                one = hour(bank, state, parts)
                if one.emptied is not None:
                    empty = (number * HOURS + place) * HOUR + one.emptied
                    return Outlook(empty if empty <= HORIZON * HOURS * HOUR else None, False)
                state = one.state
                lowest = min(lowest, state)
                if whole:
                    offered = sum(part.offered for part in parts)
                    whole = one.used >= offered * (1 - STILL)
        at += cycle
        fall = began - state
        if fall <= STILL:
            return Outlook(None, True)
        alike = int((lowest - bank.floor) / fall) - 1 if whole else 0
        if alike > 0:
            state -= alike * fall
            at += alike * cycle
    return Outlook(None, False)

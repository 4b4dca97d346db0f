"""Facts of a fuse block: what a short there passes, and which of its fuses cannot break it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.electrical.fuse_order import suitable
from calc.electrical.interrupting import FAULT_MARGIN, InterruptingDuty
from calc.units.si import Amperes
from calc.van.came import Came
from calc.van.facts import target
from calc.van.judging import Fact, known
from calc.van.paths import way
from calc.van.record import Part, Van
from calc.van.row import Row
from calc.van.running import CHOICE, FAULT
from calc.van.schedule import schedule
from calc.van.supply import Supply, loop_of, supply, weight


@dataclass(frozen=True, kw_only=True)
class Block(Fact):
    """The fuses of a block that break less than a short there may pass, or hardly more.

    `over` are the ids of their circuits, `places` where they stand. `breaks` is what the weakest
    breaks. `family` is one that would do in all of their ratings, nothing without one; `feed_place`
    is where the length of the feed stands and `feed_text` how long it would have to be.
    """

    weak: bool
    fault_current: Amperes
    breaks: Amperes
    over: frozenset[str]
    places: tuple[str, ...]
    family: str
    feed: str
    feed_place: str
    feed_text: str


def blocks(van: Van) -> Iterator[Block]:
    """Yield each fuse block with fuses that cannot break a short there, or hardly."""
    for bar in van.all("bars"):
        if known(bar, "kind") != "fuse-block":
            continue
        own = [
            (row.part, duty)
            for row in schedule(van).rows
            if target(row.part, "from") == bar.id and (duty := _duty(row)) is not None
        ]
        weak = any(duty.cannot_interrupt for _, duty in own)
        some = [(one, duty) for one, duty in own if duty.cannot_interrupt or duty.tight]
        if some:
            yield _block(van, bar, some, weak=weak)


def _duty(row: Row) -> InterruptingDuty | None:
    """Return the work of a run's fuse, as its worksheets judge it."""
    for one in row.judged:
        protection = one.answer.result.protection if one.sheet in (CHOICE, FAULT) else None
        if protection is not None and protection.duty is not None:
            found: InterruptingDuty = protection.duty
            return found
    return None


def _block(van: Van, bar: Part, some: list[tuple[Part, InterruptingDuty]], *, weak: bool) -> Block:
    fault = max(duty.fault_current for _, duty in some)
    breaks = min(duty.interrupting_rating or 0.0 for _, duty in some)
    feed, length = _longer_feed(van, some[0][0], breaks / FAULT_MARGIN)
    return Block(
        at=bar.place,
        part=bar.name,
        weak=weak,
        fault_current=fault,
        breaks=breaks,
        over=frozenset(part.id for part, _ in some),
        places=tuple(part.place for part, _ in some),
        family=_family(fault * FAULT_MARGIN, [duty for _, duty in some]),
        feed=feed.name if feed else "",
        feed_place=f"{feed.place}.length" if feed else "",
        feed_text=length,
    )


def _family(fault: float, duties: list[InterruptingDuty]) -> str:
    """Return a family of fuses that breaks a fault [A] and is made in all of these ratings."""
    volts = max(duty.voltage for duty in duties)
    ratings = {duty.fuse.rating for duty in duties}
    fit = (one for one in suitable(volts, fault) if ratings <= {*one.ratings} and not one.resets)
    return next((one.name for one in fit), "")


def _longer_feed(van: Van, circuit: Part, most: float) -> tuple[Part | None, str]:
    """Return the run that feeds a circuit's block, and how long it lets no more than `most` [A]."""
    there, source = way(van, circuit), supply(van, circuit)
    if there is None or not there.runs or not isinstance(source, Supply):
        return None, ""
    feed = there.runs[0]
    own, length, share = loop_of(van, feed), feed.si("length"), weight(van, circuit, feed)
    if isinstance(own, Came) or not length or not share:
        return None, ""
    more = (source.bank.voltage / most - source.least) / (share * own.least / length)
    return feed, f"{length + more + 0.1:.1f} m"

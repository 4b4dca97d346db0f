"""What stands above the circuits of a sheet, and what stands below them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from calc.van.diagram.columns import columns
from calc.van.diagram.drawing import PITCH, Dot, Flag, Line, Mark, Symbol, Words
from calc.van.diagram.legend import STROKES, foot
from calc.van.diagram.mains import MainsBlock
from calc.van.diagram.rows import Row, row
from calc.van.diagram.scheme import Finding, Run, Scheme
from calc.van.diagram.sheet import BATTERY_SLOTS, BLOCKS, FEED_SLOTS, Composer

ROOM = BLOCKS[1][1]
MARGIN = 10.0
_FEW = 12  # circuits beside which there is room for headings
_BESIDE_BANK = 2  # main cables that always have room beside the batteries


def stack_top(composer: Composer, scheme: Scheme) -> None:
    """Stack sources and mains, the bank and its main cables, then bars by their depth."""
    headed = len(scheme.circuits) <= _FEW
    if scheme.sources or scheme.mains:
        if scheme.sources and headed:
            composer.heading("Sources")
        mains = MainsBlock(scheme.mains, ROOM) if scheme.mains else None
        composer.sources(scheme.sources, mains, PITCH + 4 if headed else 0.0)
    bank = scheme.bars[0].id if scheme.bars else ""
    depths = _depths(scheme, bank)
    feeds = list(scheme.feeds)
    if scheme.batteries:
        if headed:
            composer.heading("Bank and protection")
            composer.y += PITCH + 4
        beside = [one for one in feeds if one.start == bank]
        beside = beside[: max(_BESIDE_BANK, len(scheme.batteries))]
        feeds = [one for one in feeds if one not in beside]
        composer.stacks(fitted(scheme.batteries, BATTERY_SLOTS), fitted(beside, FEED_SLOTS))
    for depth in sorted(set(depths.values())):
        own = [one for one in feeds if depths.get(one.end, 1) == depth]
        if own:
            composer.stacks(fitted(own[::2], FEED_SLOTS), fitted(own[1::2], FEED_SLOTS))
        for bar in scheme.bars:
            if depths[bar.id] == depth and (bar.id != bank or _needs_level(scheme, bank)):
                composer.level(bar)


def stack_bottom(composer: Composer, scheme: Scheme) -> None:
    """Stack the negative bars and what joins them."""
    for place, bar in enumerate(scheme.returns):
        if place or _needs_level(scheme, bar.id):
            composer.level(bar, minus=True)
    if scheme.minus_feeds:
        first = scheme.returns[0].id if scheme.returns else ""
        left = [one for one in scheme.minus_feeds if one.start == first]
        right = [one for one in scheme.minus_feeds if one.start != first]
        composer.stacks(fitted(left, FEED_SLOTS), fitted(right, FEED_SLOTS))
    composer.y += MARGIN


def height_below(scheme: Scheme, rest: Sequence[Run]) -> float:
    """Return how much height a sheet keeps for what stands below its circuits."""
    composer = Composer(y=0.0)
    stack_bottom(composer, scheme)
    runs = (*rest, *scheme.feeds, *scheme.minus_feeds, *(one.run for one in scheme.sources))
    y, _ = foot(0.0, tuple(_hints(runs, scheme)), scheme.notes, title_of(scheme, 1, 2))
    return composer.y + y + MARGIN


def title_of(scheme: Scheme, number: int, count: int) -> tuple[str, ...]:
    sheet = (f"Sheet {number} of {count}",) if count > 1 else ()
    return (*scheme.title[:-1], *sheet, *scheme.title[-1:])


def _hints(runs: Iterable[Run], scheme: Scheme) -> Iterable[Mark]:
    """Yield marks that the legend explains, wherever they will stand."""
    mains, bars = scheme.mains, (*scheme.bars, *scheme.returns)
    words = [item for bar in bars for item in bar.words] + [i for one in scheme.notes for i in one]
    names = [bar.symbol for bar in bars] + [name for name, _ in (mains.words if mains else ())]
    for run in (*runs, *(mains.runs if mains else ()), *scheme.batteries):
        for cell in run.cells:
            names.append(cell.symbol)
            words += (*cell.above, *cell.below)
    yield from (Symbol(name, 0, 0) for name in dict.fromkeys(names) if name)
    shapes = dict.fromkeys(item.shape for item in words if isinstance(item, Finding))
    yield from (Flag(shape, 0, 0, 0, 0) for shape in shapes)
    for stroke, _ in STROKES:
        yield Line((), stroke)
    yield Dot(0, 0)
    yield Symbol("to", 0, 0)
    yield Symbol("from", 0, 0)
    yield Words(0, 0, "*", 0)


def _depths(scheme: Scheme, bank: str) -> dict[str, int]:
    """Return how many feeds lie between the bank and each bar; 1 where none lead to it."""
    found = {bank: 0}
    reached = [bank]
    while reached:
        ends = [
            one.end
            for start in reached
            for one in scheme.feeds
            if one.start == start and one.end and one.end not in found
        ]
        depth = found[reached[0]] + 1
        found |= {one: depth for one in ends}
        reached = list(dict.fromkeys(ends))
    return {bar.id: found.get(bar.id, 1) for bar in scheme.bars}


def _needs_level(scheme: Scheme, bank: str) -> bool:
    """Return whether more is joined to a terminal of the bank than cables beside it."""
    if not scheme.batteries:
        return True
    runs = (*scheme.circuits, *(one.run for one in scheme.sources))
    more = sum(bank in (run.start, run.end) for run in runs)
    feeds = sum(bank == run.start for run in scheme.feeds)
    ends = sum(bank == run.end for run in (*scheme.feeds, *scheme.minus_feeds))
    return bool(more or ends) or feeds > max(_BESIDE_BANK, len(scheme.batteries))


def fitted(runs: Sequence[Run], order: Sequence[str], *, signs: bool = False) -> list[Row]:
    if not runs:
        return []
    found = columns(runs, order, ROOM, "wire", signs=signs)
    return [row(run, found) for run in runs]

"""What goes on which sheet: the first has all sources and the bank, and circuits while they fit."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from calc.van.diagram.columns import columns
from calc.van.diagram.drawing import MOST_HEIGHT, Drawing, Sheet
from calc.van.diagram.legend import foot
from calc.van.diagram.rows import Row, row
from calc.van.diagram.said import said_of
from calc.van.diagram.scheme import Bar, Item, Run, Scheme, Source, Token
from calc.van.diagram.sheet import CIRCUIT_SLOTS, RAILS, Composer, detached, ladder
from calc.van.diagram.stacking import (
    MARGIN,
    ROOM,
    fitted,
    height_below,
    stack_bottom,
    stack_top,
    title_of,
)

MOST_CIRCUITS = 15  # on the first sheet
_USUAL_ROWS = 120.0  # of height, of a few rows
_LOOSE = 12.0  # more between circuits, where a sheet has room
_LEAST = 120.0  # of height that the first sheet keeps for circuits, or for the end of its foot


def planned(scheme: Scheme) -> Drawing:
    """Return the drawing of a scheme."""
    scheme, others, composer, below = _within_a_sheet(scheme)
    rest = [*scheme.circuits, *others]
    sheets: list[tuple[Composer, Sequence[Run]]] = []
    part = scheme
    while True:
        most = rest if sheets else rest[:MOST_CIRCUITS]
        own = _circuits(composer, most, MOST_HEIGHT - composer.y - below, bool(sheets))
        rest = rest[len(own) :]
        stack_bottom(composer, part)
        sheets.append((composer, own))
        if not rest:
            break
        part = _continued(scheme, rest)
        composer = Composer()
        stack_top(composer, part)
        below = height_below(part, rest)
    made = []
    for number, (composer, own) in enumerate(sheets, 1):
        marks = composer.finish()
        title = title_of(scheme, number, len(sheets))
        y, foot_marks = foot(composer.y, marks, scheme.notes if number == 1 else (), title)
        said = said_of(scheme, own, number == 1)
        made.append(Sheet(y + MARGIN, (*marks, *foot_marks), said))
    return Drawing(scheme.name, tuple(made))


def _circuits(
    composer: Composer, runs: Sequence[Run], spare: float, at_least_one: bool
) -> Sequence[Run]:
    """Stack as many circuits as have room in two columns `spare` high, and return them."""
    rows = _rows(runs)
    count = len(rows)
    while count and _high(rows[:count]) > spare:
        count -= 1
    count = max(count, int(at_least_one))  # or there would be sheets without end
    if not count:
        return ()
    if count < len(rows):
        rows = min(rows[:count], _rows(runs[:count]), key=_high)
    left, right = _columns(rows)
    gap = (spare - _high(rows)) / max(len(left), len(right))
    composer.stacks(left, right, max(0.0, min(gap, _LOOSE)))
    return runs[:count]


def _high(rows: Sequence[Row]) -> float:
    heights = [one.height for one in rows]
    cut = _cut(heights)
    return max(sum(heights[:cut]), sum(heights[cut:]))


def _rows(runs: Sequence[Run]) -> list[Row]:
    """Return circuits as rows, in columns of their own beside other runs."""
    circuits = [run for run in runs if run.circuit]
    others = [run for run in runs if not run.circuit]
    starts, ends = {run.start for run in circuits}, {run.end for run in circuits}
    signs = len(starts) > RAILS or len(ends) > 1
    made = {one.run.id: one for one in fitted(circuits, CIRCUIT_SLOTS, signs=signs)}
    for run in others:
        order = [cell.slot for cell in run.cells]
        made[run.id] = row(run, columns([run], order, ROOM, "wire"))
    return [made[run.id] for run in runs]


def _columns(rows: Sequence[Row]) -> tuple[list[Row], list[Row]]:
    """Return rows in two columns, as equally high as can be, each with few bars of its own."""
    cut = _cut([one.height for one in rows])
    halves = []
    for half in (rows[:cut], rows[cut:]):
        runs = ladder([one.run for one in half])
        halves.append([replace(one, run=run) for one, run in zip(half, runs, strict=True)])
    return halves[0], halves[1]


def _cut(heights: Sequence[float]) -> int:
    total, left, cut = sum(heights), 0.0, 0
    while cut < len(heights) and max(left + heights[cut], total - left - heights[cut]) <= max(
        left, total - left
    ):
        left += heights[cut]
        cut += 1
    return cut


def _within_a_sheet(scheme: Scheme) -> tuple[Scheme, list[Run], Composer, float]:
    """Return a scheme whose upper part fits on a sheet, and the runs that go among the circuits.

    With it the sheet so far, and the height that is kept for what stands below its circuits.
    """
    others: list[Run] = []
    while True:
        composer = Composer()
        stack_top(composer, scheme)
        below = height_below(scheme, (*scheme.circuits[:MOST_CIRCUITS], *others))
        least = _LEAST if scheme.circuits or others else 0.0
        over = composer.y + below + least - MOST_HEIGHT
        if over <= 0 or not _largest(scheme):
            return scheme, others, composer, below
        for _ in range(1 + int(over / _USUAL_ROWS)):
            scheme, taken = _without_last(scheme)
            others = [*(detached(one, start=True, end=True) for one in taken), *others]


def _without_last(scheme: Scheme) -> tuple[Scheme, tuple[Run, ...]]:
    """Return a scheme without the last of its largest group, and the runs that this was."""
    name = _largest(scheme)
    if not name:
        return scheme, ()
    if name == "outlets" and scheme.mains:
        outlets = scheme.mains.outlets
        mains = replace(scheme.mains, outlets=outlets[:-1])
        return replace(scheme, mains=mains), (replace(outlets[-1], circuit=False),)
    group = getattr(scheme, name)
    last = group[-1]
    taken = (last.run, *last.others) if isinstance(last, Source) else (last,)
    return replace(scheme, **{name: group[:-1]}), taken


def _largest(scheme: Scheme) -> str:
    """Return the name of the group of most runs in the upper part of the first sheet."""
    counts = {
        "sources": sum(1 + len(one.others) for one in scheme.sources),
        "batteries": len(scheme.batteries),
        "feeds": len(scheme.feeds),
        "minus_feeds": len(scheme.minus_feeds),
        "outlets": len(scheme.mains.outlets) if scheme.mains else 0,
    }
    name = max(counts, key=lambda one: counts[one])
    return name if counts[name] else ""


def _continued(scheme: Scheme, rest: Sequence[Run]) -> Scheme:
    """Return what a further sheet has above and below its circuits: bars, on from the first."""

    def on(bars: Iterable[Bar], used: set[str]) -> tuple[Bar, ...]:
        words: tuple[Item, ...] = (Token("on from sheet 1"),)
        return tuple(
            replace(bar, words=(*bar.words, *words), to_chassis=False)
            for bar in bars
            if bar.id in used
        )

    return Scheme(
        name=scheme.name,
        title=scheme.title,
        bars=on(scheme.bars, {run.start for run in rest}),
        returns=on(scheme.returns, {run.end for run in rest}),
    )

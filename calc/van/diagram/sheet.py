"""One sheet: blocks of rows, streets between them, and a level for each bar."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from calc.van.diagram.columns import ENDS, START, columns
from calc.van.diagram.drawing import ASCENT, PITCH, Dot, Line, Mark, Stroke, Symbol, Words
from calc.van.diagram.mains import MainsBlock, clear_of
from calc.van.diagram.rows import Row, place, row
from calc.van.diagram.scheme import Bar, Cell, Run, Source
from calc.van.diagram.streets import Streets
from calc.van.diagram.symbols import size
from calc.van.diagram.widths import width
from calc.van.diagram.wrapping import words_of, wrapped

ROOMS = {"1": (10.0, 58.0, -1), "2": (772.0, 832.0, -1), "3": (1546.0, 1584.0, 1)}
BLOCKS = ((62.0, 708.0), (836.0, 708.0))  # the left end and the width of each
SOURCES = (12.0, 758.0)  # above the first street's lines there is room for words
TOP = 10.0
SOURCE_SLOTS = ("source", "fuse1", "wire1", "switch1", "device", "wire", "switch", "fuse", "end")
BATTERY_SLOTS = ("start", "battery", "fuse", "end")
FEED_SLOTS = (
    "start",
    *(f"{slot}{more}" for more in ("", "2", "3") for slot in ("fuse", "switch", "wire", "device")),
    "end",
)
CIRCUIT_SLOTS = ("start", "fuse", "switch", "wire", "switch2", "load", "return")
_JOINT = 7.0  # left of a device: where further panels join
_ABOVE_LEVEL, _LEVEL = 8.0, 33.0  # a bar's words above its line, and from bar to bar
_LABEL = BLOCKS[1][1] - 60  # how wide a bar's words may be
RAILS = 4  # bars that have a line of their own in one column


@dataclass
class _Placed:
    row: Row
    x: float
    y: float
    left: tuple[str, str] | None = None  # street and net
    right: tuple[str, str] | float | None = None


@dataclass
class Composer:
    """A sheet in the making: everything is told its height first, and gets its place at the end."""

    y: float = TOP
    streets: Streets = field(default_factory=lambda: Streets(ROOMS))
    marks: list[Mark] = field(default_factory=list)
    _rows: list[_Placed] = field(default_factory=list)
    _levels: list[tuple[Bar, float, Stroke]] = field(default_factory=list)
    _blocks: list[tuple[MainsBlock, float, list[float]]] = field(default_factory=list)

    def heading(self, text: str) -> None:
        """Write a heading at the top of what comes next."""
        self.marks.append(Words(SOURCES[0], self.y + ASCENT, text, width(text, True), strong=True))

    def sources(self, sources: Sequence[Source], block: MainsBlock | None, heading: float) -> None:
        """Stack the sources, below a heading so high, on the left and the mains on the right."""
        top = self.y
        left, room = SOURCES
        runs = [run for one in sources for run in (one.run, *one.others)]
        found = columns(runs, SOURCE_SLOTS, room, "wire")
        y, taken = top + heading, []
        for source in sources:
            joint = 0.0
            for run in (source.run, *source.others):
                one = row(run, found)
                at = y + one.up
                y += one.height
                taken.append(at)
                if run is source.run:
                    joint = at
                    self._put(one, left, at, None, ("2", run.end))
                else:
                    x = left + found.slots["device"].symbol - _JOINT
                    self._rows.append(_Placed(one, left, at, None, x))
                    self.marks.append(Line(((x, joint), (x, at)), Stroke.PLUS, run.id))
                    self.marks.append(Dot(x, joint))
        self.y = y
        if block:
            lines = block.lines(top, taken)
            for one, at in zip(block.rows, lines, strict=True):
                if one.run.start:
                    self.streets.touch("2", one.run.start, at, Stroke.PLUS)
            self._blocks.append((block, top, lines))
            self.y = max(self.y, block.bottom(top, lines))

    def stacks(self, left: Sequence[Row], right: Sequence[Row], gap: float | None = None) -> None:
        """Stack rows in both blocks, between the bars that they join.

        With a `gap`, which is kept between them, they are circuits: those on the left end at a
        negative and those on the right start at a positive, whose lines in the street between do
        not meet. Others keep clear of one another's heights.
        """
        taken: list[tuple[float, str]] = []
        ends = [self.y, self.y]
        for block, rows in enumerate((left, right)):
            for one in rows:
                run, at = one.run, ends[block] + one.up
                if block and gap is None:
                    others = [y for y, net in taken if net != run.start]
                    at = clear_of(at, others)
                ends[block] = at + one.height - one.up + (gap or 0.0)
                taken.append((at, run.end))
                streets = ("2", "3") if block else ("1", "2")
                self._put(
                    one,
                    BLOCKS[block][0],
                    at,
                    (streets[0], run.start) if run.start else None,
                    (streets[1], run.end) if run.end else None,
                )
        self.y = max(ends)

    def _put(
        self,
        one: Row,
        x: float,
        y: float,
        left: tuple[str, str] | None,
        right: tuple[str, str] | None,
    ) -> None:
        right = right if right and right[1] else None
        run = one.run
        if left:
            self.streets.touch(*left, y, rail_stroke(run.before))
        if right:
            last = next((c.after for c in reversed(run.cells) if c.symbol), run.before)
            self.streets.touch(*right, y, rail_stroke(last))
        self._rows.append(_Placed(one, x, y, left, right))

    def level(self, bar: Bar, minus: bool = False) -> None:
        """Give a bar its level line, with its words above."""
        lines = wrapped(bar.words, _LABEL)[0]
        self.y += PITCH * max(0, len(lines) - 1) + _LEVEL
        stroke = (Stroke.MINUS_BAR if bar.thick else Stroke.MINUS) if minus else Stroke.BAR
        if not minus and not bar.thick:
            stroke = Stroke.PLUS
        self._levels.append((bar, self.y - 7.0, stroke))

    def finish(self) -> list[Mark]:
        """Return all that stands on the sheet."""
        for bar, y, stroke in self._levels:
            plain = rail_stroke(stroke)
            for street in self.streets.streets(bar.id):
                self.streets.touch(street, bar.id, y, plain)
                self.streets.touch(street, bar.id, y, plain)
        self.streets.settle()
        out = self.marks
        for one in self._rows:
            left = self.streets.x(*one.left) if one.left else one.x
            right = one.right
            end = self.streets.x(*right) if isinstance(right, tuple) else right or one.x
            out.extend(place(one.row, one.x, one.y, left, end))
        for block, top, lines in self._blocks:
            lefts = [
                self.streets.x("2", one.run.start) if one.run.start else BLOCKS[1][0]
                for one in block.rows
            ]
            out.extend(block.marks(BLOCKS[1][0], top, lines, lefts))
        for bar, y, stroke in self._levels:
            self._level_marks(bar, y, stroke)
        out.extend(self.streets.marks())
        return out

    def _level_marks(self, bar: Bar, y: float, stroke: Stroke) -> None:
        streets = self.streets.streets(bar.id)
        xs = [self.streets.x(street, bar.id) for street in streets]
        x = BLOCKS[0][0] if "1" in streets or not streets else BLOCKS[1][0]
        lines, wide = wrapped(bar.words, _LABEL)
        start = x + 6
        if bar.symbol:
            top = y - _ABOVE_LEVEL - 5 - PITCH * (len(lines) - 1)
            self.marks.append(Symbol(bar.symbol, start, top))
            start += size(bar.symbol).width + 6
        for above, line in enumerate(reversed(lines)):
            self.marks.extend(words_of(line, start, y - _ABOVE_LEVEL - PITCH * above))
        low, high = min((*xs, x)), max((*xs, start + wide))
        self.marks.append(Line(((low, y), (high, y)), stroke, bar.id))


def rail_stroke(stroke: Stroke) -> Stroke:
    """Return the stroke of an upright line that goes on from a line."""
    return Stroke.MINUS if stroke in (Stroke.MINUS, Stroke.MINUS_BAR) else Stroke.PLUS


def detached(run: Run, *, start: bool = False, end: bool = False) -> Run:
    """Return a run that says in words where it comes from or goes to, without a line to it."""
    cells = list(run.cells)
    if start and run.start:
        if cells[0].slot == START:
            cells[0] = cells[0]._replace(symbol="from")
        else:
            cells.insert(0, Cell(START, "from", above=run.start_words))
    if end and run.end:
        if cells[-1].slot in ENDS:
            cells[-1] = cells[-1]._replace(symbol="to")
        else:
            cells.append(Cell("end", "to", above=run.end_words))
    return replace(
        run,
        cells=tuple(cells),
        start="" if start else run.start,
        end="" if end else run.end,
    )


def ladder(runs: Sequence[Run]) -> list[Run]:
    """Return the runs of one column: bars beyond a few are named in words."""
    starts = Counter(run.start for run in runs if run.start)
    ends = Counter(run.end for run in runs if run.end)
    kept = {one for one, _ in starts.most_common(RAILS)}
    last = {one for one, _ in ends.most_common(1)}
    return [detached(run, start=run.start not in kept, end=run.end not in last) for run in runs]

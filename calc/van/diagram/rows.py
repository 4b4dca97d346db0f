"""Rows: a run in its columns, as lines, symbols and words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.van.diagram.columns import AFTER_SYMBOL, Columns
from calc.van.diagram.drawing import ASCENT, DESCENT, PITCH, Line, Mark, Symbol
from calc.van.diagram.scheme import Run
from calc.van.diagram.symbols import size
from calc.van.diagram.wrapping import words_of, wrapped

ABOVE, BELOW = 6.5, 17.0  # from a line to the base lines of the words next to it
_APART = 4.0  # between rows


@dataclass(frozen=True)
class Row:
    """A run in its columns, with how far it reaches above and below its line."""

    run: Run
    columns: Columns
    up: float
    down: float

    @property
    def height(self) -> float:
        """How much room it takes in a stack of rows."""
        return self.up + self.down + _APART


def row(run: Run, columns: Columns) -> Row:
    """Return a run as a row."""
    up = down = _APART
    for cell in run.cells:
        slot, half = columns.slots[cell.slot], size(cell.symbol).half + 1
        above, below = wrapped(cell.above, slot.limit)[0], wrapped(cell.below, slot.limit)[0]
        up = max(up, half, ABOVE + ASCENT + PITCH * (len(above) - 1) if above else 0.0)
        down = max(down, half, BELOW + DESCENT + PITCH * (len(below) - 1) if below else 0.0)
    return Row(run, columns, up, down)


def place(found: Row, x: float, y: float, left: float, right: float) -> Iterator[Mark]:
    """Yield what a row looks like whose block starts at `x` and whose line is at the height `y`.

    Its line goes from `left` to `right`, where bars are; without a bar, from its first symbol on,
    or up to its last.
    """
    run, at, stroke = found.run, left, found.run.before
    joined = bool(run.start)
    for cell in run.cells:
        slot = found.columns.slots[cell.slot]
        words = x + slot.words if cell.symbol else x + slot.symbol
        if cell.symbol:
            start = x + slot.symbol
            if joined and start > at:
                yield Line(((at, y), (start, y)), stroke, run.id)
            yield Symbol(cell.symbol, start, y)
            at, stroke, joined = start + size(cell.symbol).width, cell.after, True
            words = at + AFTER_SYMBOL
        above, below = wrapped(cell.above, slot.limit)[0], wrapped(cell.below, slot.limit)[0]
        for place, line in enumerate(reversed(above)):
            yield from words_of(line, words, y - ABOVE - PITCH * place)
        for place, line in enumerate(below):
            yield from words_of(line, words, y + BELOW + PITCH * place)
    if joined and run.end and right > at:
        yield Line(((at, y), (right, y)), stroke, run.id)

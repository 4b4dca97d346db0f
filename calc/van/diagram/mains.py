"""The mains, apart from all else behind a boundary: shore power in, the inverter's outlets out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.van.diagram.columns import Columns, columns
from calc.van.diagram.drawing import ASCENT, Dot, Line, Mark, Stroke
from calc.van.diagram.rows import Row, place, row
from calc.van.diagram.scheme import Cell, Mains, Run, Token
from calc.van.diagram.symbols import size
from calc.van.diagram.wrapping import words_of, wrapped

_SUPPLY = ("inlet", "breaker", "residual")
_ORDER = ("start", "fuse", "wire", "switch", "device", "ac")
_INSET, _HEAD = 8.0, 24.0
_SHARE = 0.75  # of the width for a charger alone
_RAIL = 12.0  # from the right edge to the rail of shore power


@dataclass(frozen=True)
class MainsBlock:
    """The block of the mains, `room` wide, with its rows from the top."""

    mains: Mains
    room: float

    @cached_property
    def _columns(self) -> Columns:
        runs = [run for run in (self.mains.shore, self.mains.inverter) if run]
        room = self.room - 2 * _RAIL - 2 * _INSET if self.mains.inverter else self.room * _SHARE
        return columns(runs, _ORDER, room, "wire")

    @cached_property
    def _edge(self) -> float:
        """Where the boundary stands beside the rows that come from bars."""
        slot = self._columns.slots.get("ac")
        if slot:
            return slot.symbol - _INSET
        return self._columns.width

    @cached_property
    def supply(self) -> Row | None:
        """The row of shore power."""
        run = self.mains.supply
        if run is None:
            return None
        return row(run, columns([run], _SUPPLY, self.room - 3 * _RAIL, "residual"))

    @cached_property
    def _words(self) -> Row | None:
        """What is to be said of the whole, beside one another."""
        said = [(symbol, words) for symbol, words in self.mains.words if words]
        if not said:
            return None
        cells = [Cell(f"note{n}", one, below=words) for n, (one, words) in enumerate(said)]
        run = Run("", tuple(cells))
        return row(run, columns([run], [cell.slot for cell in cells], self.room - 3 * _RAIL, ""))

    @property
    def _step(self) -> float:
        """How high the part is that goes over the whole width."""
        over = [self.supply] if self.supply else []
        return _HEAD + sum(one.height for one in (*over, *([self._words] if self._words else [])))

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """The rows that come from bars."""
        return tuple(row(run, self._columns) for run in self._from_bars)

    @property
    def _from_bars(self) -> tuple[Run, ...]:
        return tuple(run for run in (self.mains.shore, self.mains.inverter) if run)

    @cached_property
    def _sockets(self) -> Row | None:
        run = self.mains.sockets
        return row(run, columns([run], ("outlet",), self._inner, "")) if run else None

    @property
    def _inner(self) -> float:
        return self.room - self._edge - 2 * _RAIL - 2 * _INSET

    @cached_property
    def _hung(self) -> tuple[Row, ...]:
        """The outlets of the inverter."""
        room = self._hangs_at - 3 * _RAIL
        return tuple(row(run, columns([run], ("outlet",), room, "")) for run in self.mains.outlets)

    @property
    def _hangs_at(self) -> float:
        """Where the line stands from which outlets hang, from the left of the block."""
        cell = self.mains.inverter.cells[-1] if self.mains.inverter else Cell("ac")
        slot = self._columns.slots.get("ac")
        return slot.symbol + size(cell.symbol).width / 2 if slot else self.room

    def lines(self, top: float, taken: list[float]) -> list[float]:
        """Return the heights of the lines that come from bars, for a block whose top is at `top`.

        They keep clear of the heights that are `taken` in the street beside it.
        """
        y = top + self._step
        found = []
        for one in self.rows:
            if self._sockets and one.run is self.mains.inverter:
                y += self._sockets.height
            at = clear_of(y + one.up, taken)
            found.append(at)
            y = at + one.height - one.up
        return found

    def _below(self, top: float, lines: list[float]) -> float:
        """Return where the rows end that come from bars."""
        if self.rows and self.rows[-1].run is self.mains.inverter:
            return lines[-1] + self.rows[-1].height - self.rows[-1].up
        y = top + self._step
        if self.rows:
            y = lines[-1] + self.rows[-1].height - self.rows[-1].up
        return y + (self._sockets.height if self._sockets else 0.0)

    def bottom(self, top: float, lines: list[float]) -> float:
        """Return where the block ends whose top and whose lines are at these heights."""
        return self._below(top, lines) + sum(one.height for one in self._hung) + 2 * _INSET

    def marks(self, x: float, top: float, lines: list[float], lefts: list[float]) -> Iterator[Mark]:
        """Yield the block at `x`: its rows at the heights `lines`, from the bars at `lefts`."""
        rail = x + self.room - _RAIL
        yield from self._heading(x, top)
        ends = []
        if self.supply:
            ends.append(top + _HEAD + self.supply.up)
            yield from place(self.supply, x + _RAIL, ends[0], x, rail)
        if self._words:
            at = top + self._step - self._words.height + self._words.up
            yield from place(self._words, x + _RAIL, at, x + _RAIL, x + _RAIL)
        for one, at, left in zip(self.rows, lines, lefts, strict=True):
            yield from place(one, x, at, left, rail)
            if one.run.end:
                ends.append(at)
        if self._sockets:
            at = self._below(top, lines) - self._sockets.height + self._sockets.up
            if self.rows and self.rows[-1].run is self.mains.inverter:
                at = lines[-1] - self.rows[-1].up - self._sockets.height + self._sockets.up
            start = x + self._edge + _INSET
            yield from place(self._sockets, start, at, start, rail)
            ends.append(at)
        ends.sort()
        if len(ends) > 1:
            yield Line(((rail, ends[0]), (rail, ends[-1])), Stroke.MAINS, "shore power")
            yield from (Dot(rail, y) for y in ends[1:-1])
        yield from self._hanging(x, self._below(top, lines), lines)
        under = self._below(top, lines) if self._hung else None
        yield self._boundary(x, top, under, self.bottom(top, lines) - _INSET / 2)

    def _hanging(self, x: float, y: float, lines: list[float]) -> Iterator[Mark]:
        """Yield the outlets, which hang from the symbol at the inverter's end."""
        if not (self.mains.inverter and self.mains.outlets):
            return
        rail = x + self._hangs_at
        top = lines[-1] + size(self.mains.inverter.cells[-1].symbol).half
        last = top
        for one in self._hung:
            last = y + one.up
            yield from place(one, x + _RAIL, last, x, rail)
            if one.run is not self.mains.outlets[-1]:
                yield Dot(rail, last)
            y = last + one.height - one.up
        yield Line(((rail, top), (rail, last)), Stroke.MAINS, "outlets")

    def _heading(self, x: float, top: float) -> Iterator[Mark]:
        lines, _ = wrapped((Token(self.mains.title, True),), self.room - 2 * _INSET)
        yield from words_of(lines[0], x + _INSET, top + ASCENT + 2)

    def _boundary(self, x: float, top: float, under: float | None, bottom: float) -> Line:
        """Return the line around all that is at mains voltage.

        It goes over the whole width but beside the rows that come from bars; outlets stand below
        those, from the height `under` on.
        """
        edge, right, step = x + self._edge, x + self.room, top + self._step - 2
        corners = [(x, top), (right, top), (right, bottom)]
        if not self._edge:
            corners += [(x, bottom)]
        elif under is None:
            corners += [(edge, bottom), (edge, step), (x, step)]
        else:
            corners += [(x, bottom), (x, under), (edge, under), (edge, step), (x, step)]
        return Line((*corners, (x, top)), Stroke.BOUNDARY, "boundary")


def clear_of(y: float, taken: list[float]) -> float:
    """Return `y`, or a height a little lower at which no line of another block runs."""
    for other in sorted(taken):
        if abs(y - other) < 4:
            y = other + 7
    return y

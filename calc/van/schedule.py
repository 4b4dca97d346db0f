"""The schedule of a van: every run worked, with what is missing chosen, or the reason why not.

A value is None where it cannot be worked, and `why` tells what is not known. Nothing is assumed:
what a plan leaves open is chosen by the worksheets and marked so, and in an inspection nothing is.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from calc.van import scope
from calc.van.marks import Marks, marks
from calc.van.once import once_for_each_van
from calc.van.paths import runs
from calc.van.record import Part, Van
from calc.van.row import Judged as Judged
from calc.van.row import Row as Row
from calc.van.running import worked_row
from calc.van.scope import Memo


@dataclass(frozen=True, kw_only=True)
class Schedule:
    """Every run of a van, in the order of its file."""

    rows: tuple[Row, ...]

    @cached_property
    def _by_id(self) -> Mapping[str, Row]:
        return {row.part.id: row for row in self.rows}

    def of(self, part: Part) -> Row | None:
        """Return the row of a part, None where it is no run."""
        return self._by_id.get(part.id)

    @property
    def circuits(self) -> tuple[Row, ...]:
        """The rows of circuits."""
        return tuple(row for row in self.rows if row.part.kind.id == "circuits")


@once_for_each_van
def schedule(van: Van) -> Schedule:
    """Return every run of a van, worked."""
    known = marks(van)
    return Schedule(rows=tuple(_row(van, part, known) for part in runs(van)))


_kept: Memo[Row] = Memo()


def _row(van: Van, part: Part, known: Marks) -> Row:
    key = scope.of_run(van, part)
    row = _kept.get(key) or _kept.keep(key, worked_row(van, part))
    mark, wire = known.fuse(part), known.wire(part)
    if row.part is part and (row.mark, row.wire) == (mark, wire):
        return row
    return _kept.keep(key, replace(row, mark=mark, wire=wire, part=part))

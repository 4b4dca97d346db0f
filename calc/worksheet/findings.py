"""What a worksheet finds in a typed result: the rules that fire, and the verdict."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calc.judge import Level, verdict
from calc.worksheet.declare import Declaration, Placed
from calc.worksheet.outputs import parts_at


@dataclass(frozen=True)
class Finding:
    """A rule that fires, as its sheet `use`s it, and the `rows` of a list in which it does.

    Where its subject is no row of a list, there is one row, None.
    """

    use: Placed
    rows: tuple[Any, ...]

    @property
    def covers(self) -> frozenset[str]:
        """The ids of the rules that need not speak of the same rows."""
        return self.use.rule.covers | self.use.covers

    def without(self, covered: set[tuple[str, int]]) -> Finding:
        """Return this without the rows of `covered` pairs of a rule's id and the row's identity."""
        name = self.use.rule.id
        beside = {(name, id(None))} & covered  # what is said of the whole covers every row
        kept = () if beside else tuple(row for row in self.rows if (name, id(row)) not in covered)
        return Finding(self.use, kept)


type Judged = tuple[tuple[Finding, ...], Level, Finding]
"""What is found, the verdict, and the finding whose headline is its sentence."""


def judgements(sheet: Declaration, result: Any) -> Judged:
    """Return what `sheet` finds in a `result`."""
    found = []
    places: dict[str, tuple[tuple[Any, Any], ...]] = {}  # many rules judge one subject
    for use in sheet.uses:
        if use.at not in places:
            places[use.at] = parts_at(result, use.at)
        if rows := tuple([row for row, subject in places[use.at] if use.rule.when(subject)]):
            found.append(Finding(use, rows))
    covered = {(name, id(row)) for one in found for name in one.covers for row in one.rows}
    kept = tuple(left for one in found if (left := one.without(covered)).rows)
    level = verdict(one.use.rule for one in kept)
    first = next(one for one in kept if one.use.rule.level == level)
    return kept, level, first

r"""Fields that hold words: a short text, and a list with a column for each field of its rows.

A list is one text, in a link as in a terminal: `battery plus:M8:12N.m;busbar:M8:`. Should a cell
hold one of the signs that part the text, `\` stands before it, so that it is told and not lost.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from calc.units.typed import LONGEST, clean, isolated
from calc.worksheet.fields import Field, ParsedInput, Problem, Quantity

_CELL, _ROW = ":", ";"
_PART = re.compile(r"((?:[^\\:;]|\\.?)*)([:;]?)", re.DOTALL)
_GUARDED = re.compile(r"\\(.?)", re.DOTALL)
_NAMED = 3  # rows that a summary names
_ROOM = 50  # characters a cell in a link, with what parts it from the next
_REMEMBERED = 2000  # cells


def joined(rows: Iterable[Iterable[str]]) -> str:
    """Return the one text of a list whose cells hold the texts `rows`."""
    return _ROW.join(_CELL.join(re.sub(r"[\\:;]", r"\\\g<0>", c) for c in row) for row in rows)


def parted(text: str) -> list[list[str]]:
    """Return the cells of the list `text`, row by row."""
    rows: list[list[str]] = [[]]
    for match in _PART.finditer(text):
        rows[-1].append(_GUARDED.sub(r"\1", match[1]))
        if not match[2]:
            break
        if match[2] == _ROW:
            rows.append([])
    return rows


@dataclass(frozen=True, kw_only=True)
class Text(Field):
    """A field that takes a few words, such as a name."""

    example: str

    def read(self, text: str) -> ParsedInput:
        like = f"like {self.example}"
        if len(text) <= 10 * LONGEST:  # else not worth the work
            text = "".join(sign for sign in text if sign.isprintable() or sign.isspace())
            # Twice: what was kept apart by an invisible character may become one with the next.
            text = "".join(filter(str.isprintable, " ".join(clean(clean(text)).split())))
            text = " ".join(text.split())
        if not text:
            raise Problem(self.id, f"Enter the {self.label[0].lower()}{self.label[1:]}, {like}.")
        if len(text) > LONGEST:
            raise self.problem(f"must be at most {LONGEST} characters, {like}.")
        if _CELL in text or _ROW in text:
            raise self.problem(f"must do without “{_CELL}” and “{_ROW}”, {like}.")
        shown = isolated(text)
        return ParsedInput(shown, shown, text, text)


class ListProblem(Problem):
    """Every problem of one list at once."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(problems[0].field, problems[0].message, problems[0].cell)
        self._each = problems

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self._each,)

    @property
    def each(self) -> tuple[Problem, ...]:
        return self._each


@dataclass(frozen=True, kw_only=True)
class Rows(Field):
    """A field that takes a list of up to `most` rows, each with a cell for every one of `columns`.

    The first column names the row: a `Text` that may not be empty. `one` is the word for a row. An
    empty cell takes its column's default; a row with nothing of its own in it is passed over. The
    value is a tuple with a mapping for each row, from a column's id to its value. In a link the
    last cells of a row are left out where they are the usual ones, so a default may never change.
    """

    columns: tuple[Field, ...]
    most: int
    one: str
    # Of twenty rows one cell changes at a time, and the page waits for the other hundred.
    _seen: dict[tuple[int, str], ParsedInput] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    @property
    def longest(self) -> int:
        """The most characters that are read of a list, in a link as elsewhere."""
        return self.most * len(self.columns) * _ROOM

    @property
    def blank(self) -> tuple[ParsedInput, ...]:
        """The cells of a row with nothing of its own in it."""
        return tuple(
            self._cell(place, "")
            if column.default or column.optional
            else ParsedInput(None, "", given=False)
            for place, column in enumerate(self.columns)
        )

    def cells(self, text: str) -> list[list[str]]:
        """Return what stands in each cell of the list `text`, `most` rows of it at most."""
        return [self._padded(row) for row in parted(text[: self.longest])[: self.most]]

    def entry(self, column: int, text: str) -> str:
        """Return what stands in the box of a cell: `text` as read, or as typed if it cannot be."""
        try:
            return self._cell(column, text).entry
        except Problem:
            return text

    def read(self, text: str) -> ParsedInput:
        problems: list[Problem] = []
        kept: list[tuple[ParsedInput, ...]] = []
        rows = parted(text[: self.longest])
        if not all(map(self._is_blank, map(self._padded, rows[self.most :]))):
            problems.append(self.problem(f"must be {self.most} at most; the rest is left out."))
        for place, row in enumerate(rows[: self.most]):
            if len(row) > len(self.columns):
                parts = ", ".join(column.label for column in self.columns)
                says = f"must have {len(self.columns)} parts at most: {parts}."
                problems.append(Problem(self.id, f"{self._called(place)} {says}"))
            cells = self._padded(row)
            if self._is_blank(cells):
                continue
            found: list[ParsedInput] = []
            for column, cell in enumerate(cells):
                try:
                    found.append(self._cell(column, cell))
                except Problem as problem:
                    says = f"{self._called(place)}: {problem.message}"
                    problems.append(Problem(self.id, says, (place, column)))
            kept.append(tuple(found))
        if problems:
            raise ListProblem(tuple(problems))
        if not kept:
            like = parted(self.default)[0][0] or self.one
            raise Problem(self.id, f"Enter at least one {self.one}, like {like}.")
        return ParsedInput(
            tuple(self._value(row) for row in kept),
            listed([row[0].text for row in kept]),
            link=joined(map(self._linked, kept)),
            rows=tuple(kept),
        )

    def _cell(self, column: int, text: str) -> ParsedInput:
        if (column, text) not in self._seen:
            if len(self._seen) > _REMEMBERED:
                self._seen.clear()
            self._seen[column, text] = read_cell(self.columns[column], text)
        return self._seen[column, text]

    def _called(self, place: int) -> str:
        return f"{self.one[0].upper()}{self.one[1:]} {place + 1}"

    def _padded(self, row: list[str]) -> list[str]:
        return (row + [""] * len(self.columns))[: len(self.columns)]

    def _is_blank(self, cells: list[str]) -> bool:
        pairs = zip(cells, self.columns, strict=True)
        return all(cell.strip() in ("", column.default) for cell, column in pairs)

    def _linked(self, row: tuple[ParsedInput, ...]) -> list[str]:
        """Return what a row's cells are in a link, without the usual ones at its end."""
        links, usual = [cell.link for cell in row], [cell.link for cell in self.blank]
        while links[1:] and links[-1] == usual[len(links) - 1]:
            links.pop()
        return links

    def _value(self, row: tuple[ParsedInput, ...]) -> Mapping[str, Any]:
        pairs = zip(self.columns, row, strict=True)
        return {column.id: column.argument(cell) for column, cell in pairs}


def read_cell(column: Field, text: str) -> ParsedInput:
    """Return what a cell says; an empty one takes its column's default. Raises Problem."""
    if text.strip() or not (column.default or column.optional):
        return _in_full(column, column.read(text))
    return _default(column) if column.default else ParsedInput(None, "not given", given=False)


def _default(column: Field) -> ParsedInput:
    return replace(_in_full(column, column.read(column.default)), given=False)


def _in_full(column: Field, reading: ParsedInput) -> ParsedInput:
    """Return the reading with what a box without a picker holds: the unit too, if unusual."""
    if not isinstance(column, Quantity) or reading.unit in (None, column.bare[1]):
        return reading
    assert reading.unit is not None
    symbol = reading.unit.symbol
    pair = reading.entry.endswith(" in")  # feet and inches hold their units already
    return reading if pair or not symbol else replace(reading, entry=f"{reading.entry} {symbol}")


def listed(names: list[str]) -> str:
    """Return the first of some rows' names, which hold no semicolon, and the number of others."""
    first = "; ".join(names[:_NAMED])
    return f"{first}; and {len(names) - _NAMED} more" if len(names) > _NAMED else first

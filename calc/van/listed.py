"""A list that is handed over or written on: its columns and rows as data, and the same as CSV."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from calc.units.shown import NARROW_SPACE, NO_BREAK_SPACE

_STARTS_A_FORMULA = ("=", "+", "-", "@")
_NEEDS_QUOTES = (",", '"', "\r", "\n")
GUARD = "'"  # what a spreadsheet takes for “this is text”, and shows as nothing


@dataclass(frozen=True, kw_only=True)
class ListTable:
    """A list: `columns` are its headings, the first of which names a row.

    Each row has a text for every column. `blanks` are the columns that are written on by hand
    where a cell is empty, `numbers` those whose cells stand flush right. `note` goes under it on
    paper. `sums` are the places of rows that add up others.
    """

    id: str
    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""
    blanks: frozenset[str] = frozenset()
    numbers: frozenset[str] = frozenset()
    sums: frozenset[int] = frozenset()


def csv_of(table: ListTable) -> str:
    """Return a list as CSV (RFC 4180: a comma between cells, lines that end in CR LF).

    A cell that a spreadsheet would take for a formula is guarded by an apostrophe.
    """
    return csv_lines((table.columns, *table.rows))


def csv_lines(rows: Iterable[Sequence[str]]) -> str:
    """Return rows of cells as CSV, as `csv_of` writes it."""
    return "".join(",".join(map(_cell, row)) + "\r\n" for row in rows)


def is_formula(cell: str) -> bool:
    """Return whether a spreadsheet might take the text of a cell for a formula."""
    # Some programs pass over space in front, and take a full-width sign for the plain one.
    return unicodedata.normalize("NFKC", cell).lstrip().startswith(_STARTS_A_FORMULA)


def _cell(text: str) -> str:
    text = text.replace(NO_BREAK_SPACE, " ").replace(NARROW_SPACE, " ").replace("\0", "")
    if is_formula(text) or text[:1] in ("\t", "\r", "\n"):
        text = GUARD + text
    if any(sign in text for sign in _NEEDS_QUOTES):
        return '"' + text.replace('"', '""') + '"'
    return text

"""Tables as results, as data: rows of values to read, and columns to write in by hand."""

from dataclasses import dataclass

from calc.worksheet.outputs import Output


@dataclass(frozen=True, kw_only=True)
class Blank:
    """A column to fill in by hand on the printed sheet; `wide` has room for more than initials.

    Columns that follow one another under the same `group` share it as a heading.
    """

    label: str
    group: str = ""
    wide: bool = False


@dataclass(frozen=True, kw_only=True)
class Table:
    """A result that is a table.

    `of` names a result whose value is a tuple of rows; each of `columns` names a part of a row and
    says how it is shown. The first column names the row. A sheet whose table has `blanks` is
    printed to be written on, with `paper_note` under the table. `folded` hides it until it is asked
    for. On a narrow screen each row is a card.
    """

    of: str
    columns: tuple[Output, ...]
    blanks: tuple[Blank, ...] = ()
    paper_note: str = ""
    folded: bool = False

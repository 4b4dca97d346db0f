"""Circuits from a spreadsheet: the template that we write, and the reading of what comes back.

A file is CSV with a comma, a semicolon or a tab between cells, as spreadsheets of different
countries save it. A decimal comma is read as in any box. A line that begins with # is passed over.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from calc.units.typed import fold
from calc.van.keys import Key
from calc.van.listed import GUARD, csv_lines, is_formula
from calc.van.parts import CIRCUITS
from calc.van.reading import stated_text
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

if TYPE_CHECKING:
    from calc.van.record import Van

LONGEST_FILE = 10_000_000  # characters, as of a van's own file
_LONGEST_CELL = 400  # characters; every field refuses far shorter ones in its own words
_SEPARATORS = (",", ";", "\t")
_REMARK = "#"

# What the template asks for, in the order in which a circuit is planned.
TEMPLATE_KEYS = (
    "name", "load", "current", "power", "hours", "from", "return_to", "length", "conductor",
    "insulation", "bundled", "fuse", "fuse_family", "switch", "dimmer", "place",
)  # fmt: skip
_EXAMPLE = {
    "name": "fridge", "load": "fridge", "current": "4.5 A", "hours": "9 h", "from": "fuse-block",
    "return_to": "minus-bar", "length": "3.2 m", "conductor": "12 AWG", "fuse": "10 A",
    "fuse_family": "blade, regular (type C)", "place": "galley, right",
}  # fmt: skip


def template() -> str:
    """Return the template: what each column takes, then the headings, then room for circuits."""
    keys = [CIRCUITS.key(name) for name in TEMPLATE_KEYS]
    remarks = (
        f"{_REMARK} One circuit a row, under the headings. Leave empty what you do not know."
        f" A row that begins with {_REMARK} is passed over.",
        f"{_REMARK} Write units beside numbers: 4.5 A, 3.2 m or 10 ft, 12 AWG or 2.5 mm2."
        " A decimal comma is fine.",
    )
    example = [_EXAMPLE.get(key.id, "") for key in keys]
    example[0] = f"{_REMARK} {example[0]}"
    return csv_lines(([remarks[0]], [remarks[1]], [key.field.label for key in keys], example))


def read_circuits(text: str) -> tuple[Mapping[str, str], ...]:
    """Return the circuits of a spreadsheet's CSV: for each its texts by the id of a key.

    Raises InputError with every problem, each with its row and column (from 1, as a spreadsheet
    counts them) in its sentence and in `cell` (from 0).
    """
    if len(text) > LONGEST_FILE:
        _refuse("The file is larger than 10 MB. Save only the sheet with the circuits.")
    rows = _rows(text.removeprefix("\ufeff"))
    kept = [
        (number, cells) for number, cells in rows if any(cells) and not cells[0].startswith(_REMARK)
    ]
    if not kept:
        _refuse("The file has no row of headings. Take our template: its first row names columns.")
    (head, names), *lines = kept
    columns, problems = _columns(head, names)
    if len(lines) > CIRCUITS.most:
        says = f"The file has {len(lines)} circuits; a van takes {CIRCUITS.most}."
        problems.append(Problem("circuits", says))
    circuits = []
    for number, cells in lines[: CIRCUITS.most]:
        found, wrong = _circuit(number, cells, columns, len(names))
        circuits.append(found)
        problems += wrong
    if not lines:
        problems.append(Problem("circuits", "The file has headings but no circuit under them."))
    if problems:
        raise InputError(tuple(problems))
    return tuple(circuits)


def with_circuits(van: Van, text: str) -> Van:
    """Return the van with the circuits of a spreadsheet's CSV after its own. Raises InputError."""
    found = read_circuits(text)
    room = CIRCUITS.most - len(van.all("circuits"))
    if len(found) > room:
        _refuse(f"The file has {len(found)} circuits, and this van has room for {room} more.")
    for circuit in found:
        van = van.added("circuits", circuit)
    return van


def _refuse(says: str) -> None:
    raise InputError((Problem("circuits", says),))


def _rows(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield each row with its number, its cells without guards and space at their ends."""
    reader = csv.reader(text.splitlines(keepends=True), delimiter=_separator(text), strict=True)
    # A quoted cell may hold line ends: the number is that of the row, as a spreadsheet counts.
    number = 0
    try:
        for number, cells in enumerate(reader, 1):
            yield number, [_plain(cell) for cell in cells]
    except csv.Error:
        says = f"Row {number + 1} cannot be read as CSV: a quotation mark or a cell has no end."
        raise InputError((Problem("circuits", says, (number, 0)),)) from None


def _plain(cell: str) -> str:
    cell = cell.strip()
    return cell[1:] if cell.startswith(GUARD) and is_formula(cell[1:]) else cell


def _separator(text: str) -> str:
    """Return what parts the cells: the sign that parts most names in the row of headings."""
    lines = (line for line in text.splitlines() if line.strip())
    head = next((line for line in lines if not line.lstrip(' "').startswith(_REMARK)), "")
    outside = "".join(head.split('"')[::2])  # what stands in quotation marks parts nothing
    return max(_SEPARATORS, key=outside.count)


def _columns(row: int, names: list[str]) -> tuple[dict[int, Key], list[Problem]]:
    """Return the key of each column by its place, and what is wrong with the headings."""
    known = {fold(name): key for key in CIRCUITS.keys for name in (key.id, key.field.label)}
    found: dict[int, Key] = {}
    problems: list[Problem] = []
    for place, name in enumerate(names):
        if not name:
            continue
        key = known.get(fold(name))
        if key is None:
            says = f"{_at(row, place)}: no column is called “{name[:40]}”. Take our template."
        elif key in found.values():
            says = f"{_at(row, place)}: the column “{key.field.label}” appears twice."
        else:
            found[place] = key
            continue
        problems.append(Problem("circuits", says, (row - 1, place)))
    if not problems and "name" not in {key.id for key in found.values()}:
        problems.append(Problem("circuits", "The file has no column “Name”. Take our template."))
    return found, problems


def _circuit(
    row: int, cells: list[str], columns: Mapping[int, Key], width: int
) -> tuple[dict[str, str], list[Problem]]:
    found: dict[str, str] = {}
    problems: list[Problem] = []
    named = False  # by a name that cannot be
    for place, cell in enumerate(cells):
        key = columns.get(place)
        if not cell or key is None:
            if cell and place >= width:
                says = f"{_at(row, place)}: this cell has no heading."
                problems.append(Problem("circuits", says, (row - 1, place)))
            continue
        try:
            if stated_text(CIRCUITS, key, cell[:_LONGEST_CELL]):
                found[key.id] = cell
        except Problem as problem:
            named = named or key.id == "name"
            says = f"{_at(row, place)}: {problem.message}"
            problems.append(Problem("circuits", says, (row - 1, place)))
    if columns and not (named or "name" in found):
        problems.append(Problem("circuits", f"Row {row}: give the circuit a name.", (row - 1, 0)))
    return found, problems


def _at(row: int, place: int) -> str:
    """Return a cell's row and column as a spreadsheet names them."""
    letters, place = "", place + 1
    while place:
        place, rest = divmod(place - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return f"Row {row}, column {letters}"

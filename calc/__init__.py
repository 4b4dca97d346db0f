"""Lugwise: the arithmetic of camper-van power systems at 12, 24 and 48 V.

    import calc
    answer = calc.work("wire-drop", {"current": "30 A", "length": "12 ft", "conductor": "8 AWG"})
    answer["drop"].m_as("V")

`work` reads texts as a person types them, or quantities, and gives an `Answer` in words;
`calculate` takes values and gives the typed result. `worksheets` lists the ids. `read_van` reads a
whole van, which feeds every worksheet.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from calc.sheets import CHAPTERS, IDS, worksheet
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.data import as_data
from calc.worksheet.fields import Problem
from calc.worksheet.values import as_text, as_value
from calc.worksheet.work import Worksheet, parameter

if TYPE_CHECKING:
    from calc.van.record import Van

__all__ = [
    "Answer",
    "InputError",
    "Problem",
    "Worksheet",
    "as_data",
    "calculate",
    "chapters",
    "find",
    "read_van",
    "work",
    "worksheets",
]


def worksheets() -> tuple[str, ...]:
    """Return the ids of all worksheets in reading order."""
    return IDS


def chapters() -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return the chapters in reading order: a title and the ids of its worksheets."""
    return tuple((chapter.title, chapter.ids) for chapter in CHAPTERS)


def find(name: str) -> Worksheet:
    """Return the worksheet with the id `name`. Raises InputError."""
    if name in IDS:
        return worksheet(name)
    says = f"There is no worksheet {name!r}; there are {', '.join(worksheets())}."
    raise InputError((Problem("worksheet", says),))


def read_van(text: str) -> Van:
    """Return the van that a file's `text` holds. Raises InputError, which holds every problem.

    What a van is made of is imported when one is read: a single worksheet does without it.
    """
    from calc.van.files import read_van as read

    return read(text)


def work(name: str, inputs: Mapping[str, Any] | None = None) -> Answer:
    """Return the answer of worksheet `name` for `inputs`: field id to text as a person types it.

    Instead of a text an input may be a pint quantity, and a number where the field has no unit. A
    missing field takes its default, and `answer.inputs[field].given` is then False. Raises
    InputError, which holds every problem; so does a bare number that could be read in two units.
    """
    sheet = find(name)
    texts: dict[str, str] = {}
    problems: list[Problem] = []
    for key, value in (inputs or {}).items():
        try:
            texts[str(key)] = as_text(sheet, str(key), value)
        except Problem as problem:
            problems.append(problem)
    if problems:
        rest = {key: text for key, text in texts.items() if text.strip()}
        raise InputError((*problems, *sheet.problems(rest)))
    return sheet.work(texts)


def calculate(name: str, /, **values: Any) -> Any:
    """Return the typed result of worksheet `name` for `values` by the name of its parameter.

    A value is a float in the SI unit of its field (a temperature in °C), a pint quantity, a member
    of the field's enumeration or its id, or None where a field may be left out. No text is read or
    written on the way. A missing value takes the field's default. Raises InputError, which holds
    every problem: values outside a field's limits among them.
    """
    sheet = find(name)
    fields = {parameter(field.id): field for field in sheet.fields}
    problems = [
        Problem(key, f"{name} has no parameter {key!r}; it takes {', '.join(fields)}.")
        for key in values
        if key not in fields
    ]
    readings = sheet.read({})[0]
    given: dict[str, Any] = {}
    for key, field in fields.items():
        try:
            if key in values:
                given[key] = as_value(field, values[key])
        except Problem as problem:
            problems.append(problem)
    if problems:
        raise InputError(tuple(problems))
    for key, field in fields.items():
        if key not in given:
            given[key] = _default(sheet, field.id, given, readings)
    return sheet.run(given)


def _default(sheet: Worksheet, name: str, given: Mapping[str, Any], readings: Any) -> Any:
    """Return the value of a field that is not given: its default beside what is given."""
    field = sheet.field(name)
    if field.default_by and (choice := given.get(parameter(field.default_by[0]))) is not None:
        return field.argument(field.read(field.default_by[1][str(choice)]))
    return field.argument(readings[name])

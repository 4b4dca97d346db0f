"""Lugwise: the arithmetic of camper-van power systems at 12, 24 and 48 V.

    import calc
    answer = calc.work("wire-drop", {"current": "30 A", "length": "12 ft", "conductor": "8 AWG"})
    answer["drop"].m_as("V")

`work` reads texts as a person types them and gives an `Answer`; `worksheets` lists the ids.
"""

from collections.abc import Mapping

from calc.sheets import IDS, worksheet
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.fields import Problem
from calc.worksheet.work import Worksheet

__all__ = ["Answer", "InputError", "find", "work", "worksheets"]


def worksheets() -> tuple[str, ...]:
    """Return the ids of all worksheets in reading order."""
    return IDS


def find(name: str) -> Worksheet:
    """Return the worksheet with the id `name`. Raises InputError."""
    if name in IDS:
        return worksheet(name)
    says = f"There is no worksheet {name!r}; there are {', '.join(worksheets())}."
    raise InputError((Problem("worksheet", says),))


def work(name: str, inputs: Mapping[str, str | float] | None = None) -> Answer:
    """Return the answer of worksheet `name` for `inputs`: field id to text as a person types it.

    A bare number is taken in the unit of the field's default. A missing field takes its default,
    and `answer.inputs[field].given` is then False. Raises InputError, which holds every problem.
    """
    texts = {
        str(field): value if isinstance(value, str) else f"{value}"
        for field, value in (inputs or {}).items()
    }
    return find(name).work(texts)

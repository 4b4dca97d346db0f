"""A text that once chose an option still does, whatever a reader sees today."""

from pathlib import Path

import pytest

import calc
from calc.electrical.opening import family_names
from calc.worksheet.fields import Choice
from calc.worksheet.rows import Rows
from tests.contract.samples import sheets

FILE = Path(__file__).parents[1] / "text_ids.txt"
LINES = [
    tuple(part.strip() for part in line.split(" | "))
    for line in FILE.read_text("utf-8").splitlines()
    if line and not line.startswith("#")
]


def choice(sheet: str, key: str) -> Choice:
    """Return the choice of a sheet, or of a column of its list."""
    name, _, column = key.partition(".")
    field = calc.find(sheet).field(name)
    if column:
        assert isinstance(field, Rows)
        field = next(one for one in field.columns if one.id == column)
    assert isinstance(field, Choice)
    return field


@pytest.mark.parametrize("sheet", calc.worksheets())
def test_every_old_text_still_means_its_option(sheet):
    lost = []
    for name, key, text, option in LINES:
        if name == sheet:
            try:
                link = choice(sheet, key).read(text).link
            except Exception as error:
                link = str(error)
            if link != option:
                lost.append((key, text, option, link))
    assert lost == []


def test_every_option_has_an_id_fit_for_a_link():
    """No spaces but in names that are the same for everybody: sizes, studs, fuse families."""
    named = {"No. 10", *family_names()}
    for sheet in sheets():
        for field in sheet.fields:
            columns = field.columns if isinstance(field, Rows) else (field,)
            for one in columns:
                if isinstance(one, Choice):
                    spaced = [o.id for o in one.options if " " in o.id and not o.id[0].isdigit()]
                    assert set(spaced) <= named, f"{sheet.id} {one.id}"


def test_every_option_of_today_stands_in_the_file():
    kept = {(name, key, option) for name, key, _, option in LINES}
    for sheet in sheets():
        for field in sheet.fields:
            pairs = (
                [(f"{field.id}.{one.id}", one) for one in field.columns]
                if isinstance(field, Rows)
                else [(field.id, field)]
            )
            for key, one in pairs:
                if isinstance(one, Choice):
                    ids = {one.read(option.id).link for option in one.options}
                    sizes = {i for i in ids if i.endswith(("AWG", "mm2"))}
                    assert {(sheet.id, key, i) for i in ids - sizes} <= kept, f"{sheet.id} {key}"

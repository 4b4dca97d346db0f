"""Published tables: each says where it comes from, and every cell can be read."""

from math import isfinite
from pathlib import Path

import pytest

from calc import tables
from calc.tables import table

NAMES = sorted(path.stem for path in Path(tables.__file__).parent.glob("*.csv"))
SAID = ("what", "source", "edition", "place", "how_read", "confidence", "licence_note")
NUMBERS = ("_mm2", "_mm", "_cmil", "_nm", "_n", "_mpa", "_a", "_v", "_f", "_c", "_km", "_kft")


@pytest.mark.parametrize("name", NAMES)
def test_a_table_says_what_it_is_where_it_stands_and_how_it_was_read(name):
    about = table(name).about
    assert [key for key in SAID if not about.get(key)] == []


@pytest.mark.parametrize("name", NAMES)
def test_a_row_says_how_sure_it_is_where_the_table_does_not(name):
    data = table(name)
    if "each row" not in data.about["confidence"]:
        assert all(row["confidence"] for row in data.rows)


@pytest.mark.parametrize("name", NAMES)
def test_every_figure_is_a_number_or_left_blank_and_no_row_is_short(name):
    for row in table(name).rows:
        assert None not in row and None not in row.values()
        for column, cell in row.items():
            if column.endswith(NUMBERS) and cell:
                assert isfinite(float(cell)), f"{column}: {cell}"


@pytest.mark.parametrize("name", NAMES)
def test_no_row_stands_twice(name):
    rows = [tuple(row.values()) for row in table(name).rows]
    assert len(rows) == len(set(rows))


def test_a_table_that_does_not_exist_is_an_error():
    with pytest.raises(FileNotFoundError):
        table("nothing")


def test_memory_is_told_from_text_in_the_same_words_everywhere():
    words = {row["confidence"] for name in NAMES for row in table(name).rows if "confidence" in row}
    assert words <= {tables.SEEN, tables.FROM_MEMORY, "computed", "common practice, no source"}

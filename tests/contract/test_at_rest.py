"""With its default values a sheet shows a sane van: what is always grave is not believed."""

import pytest

import calc


@pytest.mark.parametrize("name", calc.worksheets())
def test_at_rest_a_sheet_is_fine_and_says_so_without_a_caution(name):
    answer = calc.work(name, {})
    assert answer.verdict == "fine", answer.sentence

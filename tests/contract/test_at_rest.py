"""With its default values a sheet shows a sane van: what is always grave is not believed."""

import pytest

import calc

NOT_FINE = {"find-fault": "search.nothing-found-so-far"}  # nothing has been looked at yet


@pytest.mark.parametrize("name", calc.worksheets())
def test_at_rest_a_sheet_is_fine_but_for_a_check_that_has_not_begun(name):
    answer = calc.work(name, {})
    if name in NOT_FINE:
        assert (answer.verdict, answer.rule) == ("caution", NOT_FINE[name])
    else:
        assert answer.verdict == "fine", answer.sentence

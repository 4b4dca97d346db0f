"""With its default values a sheet shows a sane van and few inputs: the rest is folded."""

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


@pytest.mark.parametrize("name", calc.worksheets())
def test_at_rest_a_form_shows_five_inputs_at_most(name):
    """A sheet that is walked has its whole form folded behind its circuit."""
    sheet = calc.find(name)
    readings, _ = sheet.read({})
    shown = [one for one in sheet.fields if not one.hidden and readings[one.id].applies]
    open_ = [one.id for one in shown if not one.advanced]
    assert sheet.walked or len(open_) <= 5, open_


@pytest.mark.parametrize("name", calc.worksheets())
def test_no_input_stands_open_whose_choice_is_folded(name):
    """It would come and go by a choice that is out of sight."""
    sheet = calc.find(name)
    for one in sheet.fields:
        by = [one.only_if[0]] if one.only_if else []
        for other in (*by, *([one.only_above] if one.only_above else [])):
            assert one.advanced or not sheet.field(other).advanced, (one.id, other)

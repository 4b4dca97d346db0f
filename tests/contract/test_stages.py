"""Sums that take longer than a keystroke: worked stage by stage in a page, at once elsewhere."""

import json
from itertools import pairwise

import pytest

import calc
from calc.render.bridge import ask
from tests.contract.samples import sheets
from tests.whole import live_html, shown_html, whole_reply

LONG = [sheet.id for sheet in sheets() if sheet.later_stages]
EACH = pytest.mark.parametrize("name", LONG)


def said(**request):
    return json.loads(ask(json.dumps(request)))


@EACH
def test_the_first_stage_is_an_answer_and_the_last_is_the_whole_one(name):
    first = said(sheet=name, values={})
    assert first["rest"] == 0
    assert "<progress" in first["answer"]
    whole = whole_reply({"sheet": name, "values": {}})
    assert shown_html(whole) == live_html(calc.work(name))
    assert "<progress" not in whole["answer"]


@EACH
def test_each_stage_goes_on_from_the_last_and_only_the_end_is_the_end(name):
    sheet = calc.find(name)
    shares = [share for share, _ in sheet.stages(sheet.read({})[0])]
    assert all(one < next_ for one, next_ in pairwise(shares))
    assert (shares[0], shares[-1]) == (0, 1)


@EACH
def test_a_newer_question_drops_what_was_going_on(name):
    sheet = calc.find(name)
    other = {field.id: field.default for field in sheet.fields if field.default}
    said(sheet=name, values=other)
    said(sheet=name, rest=True)
    refused = said(sheet=name, values={sheet.fields[0].id: "?"})
    assert refused["rest"] == 1 and not refused["answer"]
    assert not said(sheet=name, rest=True)["answer"]


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_where_nothing_is_to_come_there_is_no_next_stage(sheet):
    whole_reply({"sheet": sheet.id, "values": {}})
    after = said(sheet=sheet.id, rest=True)
    assert after["rest"] == 1 and not after["answer"]

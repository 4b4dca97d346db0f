"""An answer, and what fills the folds it left empty, are the answer that comes whole."""

import json
import re

import pytest

import calc
from calc.render.bridge import ask
from tests.contract.samples import sheets

EMPTY = re.compile(r'<details data-fold="([^"]+)"><summary>[^<]*</summary>(?=</details>)')


def reply(sheet: str, **more) -> dict:
    return json.loads(ask(json.dumps({"sheet": sheet, "values": {}, **more})))


def together(first: dict, filled: dict) -> str:
    """Return the HTML of an answer with its folds filled."""
    return EMPTY.sub(lambda found: found[0] + filled["folds"].pop(found[1]), first["answer"])


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_an_answer_and_its_folds_are_the_whole(sheet):
    whole = reply(sheet.id)
    assert not whole["shut"]
    first = reply(sheet.id, unfolded=[])
    filled = reply(sheet.id, shut=True)
    assert first["shut"] and {"working", "sources"} <= set(filled["folds"])
    assert len(first["answer"]) < len(whole["answer"])
    assert filled["rest"] == first["rest"] == whole["rest"]
    assert filled["link"] == first["link"] == whole["link"]
    assert together(first, filled) == whole["answer"]
    assert not filled["folds"], "nothing is sent that has no place"
    assert {**whole, "answer": "", "shut": 0} == {**first, "answer": "", "shut": 0}


def test_a_fold_that_is_open_is_never_empty():
    first = reply("wire-drop", unfolded=["working"])
    assert "lw-formula" in first["answer"]
    assert "working" not in reply("wire-drop", shut=True)["folds"]
    everything = ["working", "sources", "more-results"]
    assert reply("wire-drop", unfolded=everything)["shut"] is False


def test_what_is_asked_once_more_or_of_no_answer_fills_nothing():
    reply("wire-drop", unfolded=[])
    reply("runtime")
    assert reply("wire-drop", shut=True)["folds"]
    assert reply("wire-drop", shut=True) == {"folds": {}, "link": "", "rest": 1.0}


def test_what_cannot_be_read_leaves_the_answer_before_it_with_its_folds():
    reply("week-ahead", unfolded=[])
    refused = reply("week-ahead", values={"array": "abc"}, unfolded=[])
    assert refused["answer"] is None and refused["shut"]
    filled = reply("week-ahead", shut=True)
    assert "working" in filled["folds"] and filled["rest"] == 1, "its later stages are given up"


def test_each_stage_of_a_long_sum_fills_its_own_folds():
    first = reply("week-ahead", unfolded=[])
    assert first["rest"] < 1 and reply("week-ahead", shut=True)["rest"] == first["rest"]
    stage = first
    while stage["rest"] < 1:
        stage = reply("week-ahead", rest=True, unfolded=[])
    filled = reply("week-ahead", shut=True)
    assert filled["rest"] == 1
    whole = calc.work("week-ahead", {})
    assert together(stage, filled).count('class="lw-name"') == len(whole.working)

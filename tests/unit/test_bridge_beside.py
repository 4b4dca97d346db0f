"""What the page asks for beside an answer: one to compare with, its text, commas."""

import json
from typing import Any

import pytest

import calc
from calc.render.bridge import ask
from calc.render.compare import difference
from calc.units.shown import MINUS
from calc.worksheet.link import write
from tests.markup import text_of, tree, with_class

RUN = "wire-drop"
FRIDGE = {"current": "6 A", "length": "5 m", "conductor": "14 AWG"}


def reply(**asked: Any) -> dict[str, Any]:
    return json.loads(ask(json.dumps({"sheet": RUN, **asked})))


def cells(html: str) -> dict[str, list[str]]:
    rows = (row for table in with_class(tree(html), "lw-compare") for row in table.iter("tr"))
    texts = ([" ".join(text_of(cell).split()) for cell in row] for row in rows)
    return {first: others for first, *others in texts}


def test_a_kept_answer_stands_beside_the_new_one_with_what_changed():
    kept = write(calc.find(RUN), FRIDGE)
    html = reply(values={**FRIDGE, "conductor": "10 AWG"}, beside=kept)["key"]
    found = cells(html)
    old, new = (calc.work(RUN, {**FRIDGE, "conductor": c}) for c in ("14 AWG", "10 AWG"))
    assert found["Conductor"] == ["14 AWG", "10 AWG"]
    assert "Current" not in found, "what is the same is not told"
    was, now = (" ".join(one.shown["drop"].split()) for one in (old, new))
    assert found["Voltage drop"][0] == was
    assert found["Voltage drop"][1].startswith(f"{now} {MINUS}")
    # The figures as they stand there, subtracted by hand
    by = float(now.split()[0]) - float(was.split()[0])
    assert float(found["Voltage drop"][1].split()[2].replace(MINUS, "-")) == pytest.approx(by)


@pytest.mark.parametrize("kept", ("", "v=1&current=abc", "<img src=x>", "v=3&length=0ft"))
def test_what_cannot_be_compared_with_is_passed_over(kept):
    assert "lw-compared" not in reply(values=FRIDGE, beside=kept)["key"] or kept.startswith("<")
    assert reply(values=FRIDGE, beside=kept)["answer"]


@pytest.mark.parametrize(
    ("kept", "now", "by"),
    [
        ("0.53\u00a0V", "0.33\u00a0V", f"{MINUS}0.20\u00a0V"),
        (f"{MINUS}5\u00a0°C", "3\u00a0°C", "+8\u00a0°C"),
        ("12\u202f000\u00a0W", "9000\u00a0W", f"{MINUS}3000\u00a0W"),
        ("3 m (9.8 ft)", "4 m (13 ft)", "+1 m"),
        (
            "900\u00a0mA",
            "1.2\u00a0A",
            "",
        ),  # two units: nothing that a reader could check at a glance
        ("none", "3\u00a0A", ""),
        ("8 AWG", "8 AWG", ""),
    ],
)
def test_a_difference_is_that_of_the_figures_as_they_stand_there(kept, now, by):
    assert difference(kept, now) == by


def test_the_text_to_copy_has_question_verdict_results_inputs_and_the_link():
    link = write(calc.find(RUN), FRIDGE)
    address = f"https://example.invalid/checks/{RUN}/#{link}"
    lines = reply(fragment=link, address=address)["text"].split("\n")
    answer = calc.work(RUN, FRIDGE)
    assert lines[0] == answer.worksheet.question
    assert lines[1].endswith(answer.sentence)
    assert f"Voltage drop: {answer.shown['drop']}" in lines
    assert "- Length, one way: 5\u00a0m" in lines
    assert address in lines
    assert not [line for line in lines if "<" in line], "no markup"
    assert reply(fragment="current=abc", address=address)["text"] == ""


def test_a_reader_who_types_a_comma_is_answered_with_commas_and_the_next_one_with_points():
    point = reply(values={**FRIDGE, "current": "4.5"})
    comma = reply(values={**FRIDGE, "current": "4,5"}, comma=True)
    again = reply(values={**FRIDGE, "current": "4,5"})
    drop = calc.work(RUN, {**FRIDGE, "current": "4.5 A"}).shown["drop"]
    assert drop in point["key"] and drop.replace(".", ",") in comma["key"]
    assert drop in again["key"], "nothing is left over for the next ask"
    assert comma["fields"]["current"]["entry"] == "4,5"
    assert comma["link"] == point["link"], "a link is the same for every reader"
    # Three decimals behind a comma would be refused as a thousand when they are sent again.
    assert reply(values={"length": "1.234 m"}, comma=True)["fields"]["length"]["entry"] == "1.234"


def test_the_inputs_that_are_not_the_defaults_are_told_in_a_few_words():
    assert reply(values={})["changed"] == ""
    assert reply(values=FRIDGE)["changed"] == (
        "Current 6\u00a0A, Length, one way 5\u00a0m, Conductor 14 AWG"
    )
    many = {**FRIDGE, "voltage": "24 V", "limit": "5 %", "finish": "tinned"}
    assert reply(values=many)["changed"].endswith(" and 2 more")


def test_an_emptied_box_stays_in_the_link():
    assert "&current=&" in reply(values={**FRIDGE, "current": ""})["link"]

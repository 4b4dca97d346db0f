"""The door the page knocks on: JSON in, JSON out, and nothing a stranger sends comes back live."""

import json
import re
from html.parser import HTMLParser

import pytest

import calc
from calc.render.bridge import ask
from calc.worksheet.rows import Rows, Text
from tests.contract.samples import sheets
from tests.counts import SOAK, chance
from tests.whole import whole_reply

EVIL = (
    "<img src=x onerror=alert(1)>",
    '"><svg onload=alert(1)>',
    "' autofocus onfocus=alert(1) x='",
    "</script><script>alert(1)</script>",
    "javascript:alert(1)",
    "{0.__class__} {current}",
    "&lt;b&gt; &amp; \u0000",
)
TAGS = {"img", "script", "iframe", "object", "embed", "link", "style", "base", "meta", "form"}


def reply(**request):
    answer = ask(json.dumps(request))
    assert isinstance(answer, str)
    return json.loads(answer)


class Finder(HTMLParser):
    """Refuses any element or attribute that runs or fetches."""

    def handle_starttag(self, tag, attributes):
        assert tag not in TAGS, tag
        for name, value in attributes:
            assert not name.startswith("on") and name != "autofocus", name
            assert "javascript:" not in (value or "").lower()


def assert_dead(text: str) -> None:
    """No markup that came in through a value is markup in what goes out.

    A picture's words are those of its text alternative: there they stand between quotation marks,
    without a bracket.
    """
    Finder().feed(text)
    bare = re.sub(r'="[^"<>]*"', "", text)
    assert not re.search(r"<[^<>]*(?:autofocus|onload|onerror)[^<>]*>", bare)


def html_of(got) -> list[str]:
    """Return the parts of a reply that the page puts in as HTML; all others go in as text."""
    return [got[name] for name in ("answer", "gist", "key") if got[name]]


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_an_empty_ask_gives_the_default_answer_with_something_for_every_field(sheet):
    got = whole_reply({"sheet": sheet.id, "values": {}})
    answer = calc.work(sheet.id)
    assert set(got["fields"]) == {field.id for field in sheet.fields}
    assert not any(part["error"] for part in got["fields"].values())
    assert got["verdict"] == answer.verdict
    assert answer.sentence in got["status"]
    assert got["link"].startswith(f"v={sheet.default_set}")
    assert got["key"].count("lw-figure") >= 1


def test_the_answer_is_that_of_the_library():
    values = {"current": "6", "length": "4.5", "conductor": "12 AWG"}
    got = reply(sheet="wire-drop", values=values, units={"current": "A", "length": "m"})
    ours = calc.work("wire-drop", {"current": "6 A", "length": "4.5 m", "conductor": "12 AWG"})
    assert ours.sentence in got["status"]
    assert ours.shown["drop"] in got["key"]


def test_a_picked_unit_holds_for_a_bare_number_and_a_typed_one_moves_the_picker():
    bare = reply(sheet="wire-drop", values={"length": "3"}, units={"length": "m"})
    assert bare["fields"]["length"]["unit"] == "m"
    assert "length=3m" in bare["link"]
    typed = reply(sheet="wire-drop", values={"length": "3 ft"}, units={"length": "m"})
    assert typed["fields"]["length"]["unit"] == "ft"
    assert typed["fields"]["length"]["entry"] == "3"
    assert "length=3ft" in typed["link"]


def test_a_wrong_field_is_told_beside_it_and_there_is_no_answer():
    got = reply(sheet="wire-drop", values={"current": "abc", "length": "12 V"})
    assert all(got[part] is None for part in ("answer", "gist", "key", "verdict"))
    assert got["fields"]["current"]["error"] and got["fields"]["length"]["error"]
    assert not got["fields"]["voltage"]["error"]
    assert got["status"] == got["fields"]["current"]["error"]


def test_a_refusal_that_only_the_sum_knows_stands_beside_its_field():
    got = reply(sheet="standby-drain", values={"from_state": "50", "to_state": "60"})
    assert "State of charge at the end" in got["fields"]["to_state"]["error"]
    assert got["answer"] is None


def test_a_field_without_meaning_is_hidden_and_not_read():
    got = reply(sheet="watts-to-amps", values={"route": "direct", "efficiency": "abc"})
    assert got["fields"]["efficiency"]["shown"] is False
    assert not got["fields"]["efficiency"]["error"]
    assert got["answer"]


def test_an_empty_box_that_may_be_empty_says_what_is_used():
    got = reply(sheet="runtime", values={"usable": "", "chemistry": "AGM"})
    assert "50" in got["fields"]["usable"]["note"]
    assert got["fields"]["usable"]["entry"] == ""


def test_an_empty_box_that_may_not_be_empty_is_a_mistake():
    got = reply(sheet="wire-drop", values={"current": ""})
    assert "Enter" in got["fields"]["current"]["error"]


def test_a_link_fills_the_fields_and_says_what_it_did_not_hold():
    got = reply(sheet="wire-drop", fragment="#v=1&current=6A&length=4.5m&colour=red")
    assert got["fields"]["current"]["fill"] == "6"
    assert got["fields"]["length"]["fill"] == "4.5"
    assert got["fields"]["length"]["unit"] == "m"
    notes = " ".join(got["notes"])
    assert "colour" in notes
    # Voltage, conductor, its temperature, limit, finish, and what the ampacity goes by.
    assert re.search(r"\b[5-9] values are not given: their defaults are used\.", notes)


def test_a_link_with_a_wrong_value_puts_it_in_the_box_as_it_came():
    got = reply(sheet="wire-drop", fragment="v=1&current=12%20furlongs")
    assert got["fields"]["current"]["fill"] == "12 furlongs"
    assert got["fields"]["current"]["error"]


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_what_a_stranger_typed_is_dead_in_the_html(sheet):
    """Each field gets every text; each other way in gets one of them, another one in each run."""
    draw = chance("stranger", sheet.id)
    for field in sheet.fields:
        for evil in EVIL:
            expect_dead(sheet, field, evil, values={field.id: evil})
        for evil in EVIL if SOAK else draw.sample(EVIL, 1):
            expect_dead(sheet, field, evil, values={field.id: f"30 {evil}"[:40]})
            expect_dead(sheet, field, evil, values={field.id: "1"}, units={field.id: evil})
            expect_dead(sheet, field, evil, fragment=f"v=1&{field.id}={evil}")
    for evil in EVIL:
        expect_dead(sheet, sheet.fields[0], evil, fragment=f"v={evil}&{evil}={evil}")


def expect_dead(sheet, field, evil: str, **request) -> None:
    for text in html_of(reply(sheet=sheet.id, **request)):
        assert_dead(text)
        if not isinstance(field, (Text, Rows)):  # words come back, as text
            assert evil not in text, request


@pytest.mark.parametrize("evil", EVIL)
def test_an_unknown_key_or_sheet_cannot_bring_markup_in(evil):
    got = reply(sheet="wire-drop", values={evil: evil}, units={evil: evil})
    assert got["answer"] and evil not in got["answer"]
    with pytest.raises(calc.InputError):
        ask(json.dumps({"sheet": evil, "values": {}}))


@pytest.mark.parametrize("value", [None, 5, 2.5, True, [], {}, {"a": 1}])
def test_a_value_that_is_not_text_is_an_answer_or_a_message(value):
    got = reply(sheet="wire-drop", values={"current": value}, units={"current": value})
    assert bool(got["answer"]) is not bool(got["fields"]["current"]["error"])


def test_the_square_code_is_a_drawing_of_the_link():
    got = reply(code="https://a.invalid/checks/wire-drop/#v=1&current=30A")
    assert got["svg"].startswith("<svg") and got["svg"].endswith("</svg>")
    assert "a.invalid" not in got["svg"]


@pytest.mark.parametrize("text", ["", "x" * 1501])
def test_a_text_too_long_or_empty_has_no_square_code(text):
    assert reply(code=text) == {"svg": ""}


@pytest.mark.parametrize("evil", EVIL)
def test_the_square_code_of_any_text_is_dead(evil):
    Finder().feed(reply(code=evil)["svg"])

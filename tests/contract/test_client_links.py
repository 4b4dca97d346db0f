"""Links for clients: short, read again as they were made, and believed in nothing."""

import json
import re
from pathlib import Path

import pytest

import calc
from calc.render.bridge import ask
from calc.sheets import explanation_of
from calc.worksheet.client_link import LONGEST, decoded, encoded, read_client, write_client
from calc.worksheet.explain import explained
from calc.worksheet.link import open_fragment
from calc.worksheet.rows import Rows
from tests.contract.samples import answers, as_read, sheets

START = "https://example.org/lugwise/client/#"
SHORT = 300  # characters, whole, without name and note
LONGER = {"fault-current", "fuse-ladder", "heat-loss", "enclosure-airflow"}
ROOM = 50  # more for those, whose values have long names or stand in two systems of units
GUIDES = Path(__file__).parents[2] / "docs"
EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
LINK = "runtime&v=1&load=80W&.say=3.012.1&:runtime=25.6_h"


def examples(name: str) -> list[dict[str, str]]:
    """Return the values of every worked example of a sheet in the guides."""
    found = []
    for guide in sorted(GUIDES.rglob("*.md")):
        for block in re.findall(r"(?s)```example\n(.*?)```", guide.read_text("utf-8")):
            head, *lines = block.strip().splitlines()
            if head.removesuffix(", in full").partition("=")[2].strip() == name:
                found.append(dict(re.split(r":\s*", line, maxsplit=1) for line in lines))
    return found


def made(texts: dict[str, str], sheet) -> str:
    answer = calc.work(sheet.id, texts)
    return write_client(sheet, answer.inputs, explained(answer, explanation_of(sheet.id)))


def check(fragment: str) -> dict:
    return json.loads(ask(json.dumps({"client": {"do": "confirm", "fragment": fragment}})))


@EACH
def test_a_link_for_a_client_is_short(sheet):
    """The examples of the guides, which are the common cases; a list takes the room it takes."""
    for texts in ({}, *examples(sheet.id)):
        rows = [f.id for f in sheet.fields if isinstance(f, Rows) and f.id in texts]
        if not rows:
            most = SHORT + ROOM if texts and sheet.id in LONGER else SHORT
            assert len(START + made(texts, sheet)) < most, texts


@EACH
def test_a_link_for_a_client_opens_to_the_same_values(sheet):
    for texts, answer in answers(sheet.id)[::9]:
        how = explanation_of(sheet.id)
        claim = read_client("#" + write_client(sheet, answer.inputs, explained(answer, how)))
        opened = open_fragment(sheet, claim.inputs)
        assert not opened.notes
        readings = sheet.read(opened.texts)[0]
        assert as_read(readings) == as_read(answer.inputs), texts
        assert claim.values.items() <= explained(answer, how).values.items()


@EACH
def test_a_fresh_calculation_agrees_with_the_link_that_was_made(sheet):
    reply = check(made({}, sheet))
    assert reply["agrees"], reply["told"]
    assert "All values are usual ones." in reply["used"]
    typed = {"do": "make", "sheet": sheet.id, "values": {}}
    fragment = json.loads(ask(json.dumps({"client": typed})))["fragment"]
    assert check(fragment)["agrees"]


def test_a_number_that_differs_is_told():
    reply = check(made({"load": "80 W"}, calc.find("runtime")).replace("80W", "90W"))
    assert not reply["agrees"]
    assert "Run time: the link said" in reply["told"]
    assert "Load" in reply["used"]


@pytest.mark.parametrize(
    ("link", "told"),
    [
        (LINK.replace("25.6_h", "all+is+fine"), "Run time: the link said something else"),
        (LINK.replace("25.6_h", "<b>9</b>"), "Run time: the link said something else"),
        (LINK.replace(".say=3", ".say=9"), "The advice in the link was another one."),
        (LINK.replace(".say=3.012.1", ".say=" + "9" * 65_536), "another one"),
        (LINK + "&.rule=runtime.too-short&.found=1~2", "another one"),
    ],
)
def test_what_a_stranger_writes_into_a_link_is_not_believed(link, told):
    reply = check(link)
    assert told in reply["told"]
    assert "<b>9</b>" not in reply["told"]
    assert check(LINK)["html"] == reply["html"]


@pytest.mark.parametrize(
    "link",
    ["", "#", "nothing&v=1", "../runtime&v=1", "runtime&v=1&load=abc", "&&&", "x" * 100_000, "%"],
)
def test_a_link_that_holds_nothing_to_work_with_is_told(link):
    assert check(link)["problem"].startswith("This cannot be checked: ")
    assert len(check(link)["problem"]) < 2000


def test_of_a_long_link_a_part_is_read():
    claim = read_client("runtime&v=1&" + "&".join(f":k{n}=1" for n in range(10_000)))
    assert len(claim.values) <= LONGEST // 8
    assert len(claim.values) <= 40


@pytest.mark.parametrize("text", ["1.4 L (0.37 gal)", "52\u00a0Ah", "−4\u00a0°C", "a_b*c!d~e%&=+#"])
def test_a_shown_text_goes_through_a_link_unchanged(text):
    assert decoded(encoded(text)) == text
    assert not re.search(r"[^!-}]|[&=#~]", encoded(text))

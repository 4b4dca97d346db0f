"""Every worksheet has its guide, in our own words, whose figures are worked and never typed."""

import re
from pathlib import Path

import pytest

import calc
from calc.worksheet.fields import Quantity
from tests.contract.samples import sheets

GUIDES = Path(__file__).parents[2] / "docs" / "checks"
EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)

FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FIGURE = re.compile(r"\{([a-z][a-z0-9]*)\.([a-z_]+)\}")

# What a number may stand before without being a figure of the text: names, not values.
NAMES = re.compile(
    r"\b(?:12|24|48)(?: or (?:12|24|48))?[ \u00a0-]V\b"  # nominal systems
    r"|\b33 CFR \d+\.\d+(?:\([a-z0-9]\))*"
    r"|\b(?:ABYC|EN|IEC|ISO|NEC|IEEE|UL|SAE|FAA AC|ASTM|ASME)[ -][A-Z]?-?\d[\d.-]*"
    r"|\bM\d{1,2}\b|\bNo\. \d+|\b\d/\d+ in\b(?= (?:stud|bolt|thread|nut))"  # threads
    r"|\b\d{1,2}(?:/0)? AWG\b|\b\d+(?:\.\d+)? mm[2²]"  # conductors
    r"|\b(?:19|20)\d\d\b"  # years
)
WORDS = (
    r"amps?|amperes?|volts?|watts?|ohms?|hours?|minutes?|seconds?|days?|feet|foot|inch(?:es)?"
    r"|metres?|millimetres?|percent|degrees?|litres?|newtons?"
)


def guide(sheet) -> str:
    return (GUIDES / f"{sheet.id}.md").read_text("utf-8")


def prose(text: str) -> str:
    """Return a guide without its front matter, fences and link targets."""
    body = text.split("---\n", 2)[2]
    return re.sub(r"\]\([^)]*\)", "]", FENCE.sub("", body))


def symbols() -> set[str]:
    """Return every unit's symbol and link form that any field takes."""
    every = map(calc.find, calc.worksheets())  # a page names units of other sheets too
    fields = [field for sheet in every for field in sheet.fields if isinstance(field, Quantity)]
    units = [unit for field in fields for kind in field.kinds for unit in kind.units]
    spelt = {text for unit in units for text in (unit.symbol, unit.link, *unit.spellings)}
    return spelt - {""}


SYMBOLS = "|".join(map(re.escape, sorted(symbols(), key=len, reverse=True)))
BARE = re.compile(rf"\d[\d.,]*[ \u00a0\u202f-]?(?:{SYMBOLS}|{WORDS})(?![\w²])")


@EACH
def test_a_guide_has_one_live_sheet_right_under_its_title(sheet):
    text = guide(sheet)
    live = [body.split("\n")[0] for name, body in FENCE.findall(text) if name == "worksheet"]
    assert live == [sheet.id]
    assert re.search(rf"^# [^\n]+\?\n\n```worksheet\n{sheet.id}\n", text, re.MULTILINE)


@EACH
def test_a_guide_has_five_hundred_words_and_more_of_its_own(sheet):
    words = re.findall(r"[^\W\d_]+(?:['’-][^\W\d_]+)*", FIGURE.sub("", prose(guide(sheet))))
    assert len(words) >= 500


@EACH
def test_no_figure_with_a_unit_is_typed_into_the_text(sheet):
    text = NAMES.sub("(name)", prose(guide(sheet)))
    assert [found.group() for found in BARE.finditer(FIGURE.sub("(figure)", text))] == []


@EACH
def test_every_example_is_used_and_every_figure_has_its_example(sheet):
    text = guide(sheet)
    examples = {b.split("=")[0].strip() for name, b in FENCE.findall(text) if name == "example"}
    used = {name for name, _ in FIGURE.findall(prose(text))}
    assert examples and used == examples


@EACH
def test_a_guide_warns_and_leads_on(sheet):
    text = guide(sheet)
    assert "!!! warning" in text
    others = set(calc.worksheets()) - {sheet.id}
    assert {name for name in others if f"({name}.md" in text}


FIGURES = ("30 A", "3.6 m", "2,5 kW", "60 °C", "12 ft", "12.8 V", "3 %", "20 hours", "5A")
NOT_FIGURES = ("a 12 V bank", "33 CFR 183.425 says", "8 AWG", "10 mm2 in", "EN 1648-2 a", "M8 in")


@pytest.mark.parametrize("text", FIGURES)
def test_a_typed_figure_would_be_found(text):
    assert BARE.search(NAMES.sub("", f"It takes {text} or so."))


@pytest.mark.parametrize("text", NOT_FIGURES)
def test_a_name_would_not_be_taken_for_a_figure(text):
    assert not BARE.search(NAMES.sub("(name)", text))

"""Links from strangers: nothing they hold is run, raises, or grows without bound."""

import time

import pytest

import calc
from calc.worksheet.link import open_fragment, write

SHEET = calc.find("wire-drop")
NOW = f"v={SHEET.default_set}"
HUGE = "current=" + "9" * 1_000_000
HOSTILE = [
    "",
    "#",
    "&",
    "=",
    "&&&===",
    "v",
    "v=",
    "v=1",
    "v=99",
    "v=1&v=2",
    "javascript:alert(1)",
    "<script>alert(1)</script>",
    "v=1&current=<script>alert(1)</script>",
    "v=1&current=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E",
    "v=1&<img src=x onerror=alert(1)>=1",
    "v=1&current=%",
    "v=1&current=%zz%%%",
    "v=1&current=%FF%FE%00",
    "v=1&current=%00%00",
    "v=1&%FF=%FF",
    "v=1&current=10**10**8",
    "v=1&current=1e999",
    "v=1&current=" + "%F0%9F%94%8B" * 50,
    "v=1&__proto__=1&constructor=2&__class__=3",
    "v=1&current=30A;length=12ft",
    "v=1&current=\u202e30A",
    HUGE,
    "&".join(f"key{n}={n}" for n in range(10_000)),
    "&".join("current=30A" for _ in range(10_000)),
    "a" * 1_000_000,
    "=" * 100_000,
    "%" * 100_000,
]


@pytest.mark.parametrize("fragment", HOSTILE, ids=range(len(HOSTILE)))
def test_no_fragment_raises_takes_long_or_gives_much_back(fragment):
    SHEET.work({})  # reads the tables, which are then kept
    began = time.process_time()
    opened = open_fragment(SHEET, fragment)
    try:
        SHEET.work(opened.texts)
    except calc.InputError as error:
        assert len(str(error)) < 5000
    again = write(SHEET, opened.texts)
    assert time.process_time() - began < 0.2
    assert set(opened.texts) <= {field.id for field in SHEET.fields}
    assert all(len(text) <= 200 for text in opened.texts.values())
    assert len("".join(opened.notes)) < 1000
    assert len(again) < 10_000


def test_the_first_of_two_values_holds():
    opened = open_fragment(SHEET, f"{NOW}&current=30A&current=40A")
    assert opened.texts == {"current": "30A"}


def test_an_unknown_key_is_named_and_left_out():
    opened = open_fragment(SHEET, f"{NOW}&current=30A&colour=red")
    assert opened.texts == {"current": "30A"}
    assert len(opened.notes) == 1 and "“colour”" in opened.notes[0]


def test_a_link_of_another_version_is_opened_with_a_warning():
    opened = open_fragment(SHEET, "v=99&current=30A")
    assert opened.texts == {"current": "30A"}
    assert "another version" in opened.notes[0]


def test_a_leading_hash_and_escaped_spaces_are_taken_as_a_browser_sends_them():
    for fragment in ("#v=1&conductor=8%20AWG", "v=1&conductor=8+AWG", "v=1&conductor=8AWG"):
        opened = open_fragment(SHEET, fragment)
        assert SHEET.work(opened.texts).values["conductor"] == "8 AWG"


def test_a_link_is_written_in_one_readable_form():
    """The form promised on the page about links."""
    texts = {"current": " 30,0 amps", "length": "12'", "conductor": "#8", "voltage": "12 volts"}
    link = write(SHEET, texts)
    assert link.startswith(f"{NOW}&current=30.0A&length=12ft&conductor=8AWG&voltage=12V")


def test_feet_and_inches_stand_in_a_link_and_open_again():
    link = write(SHEET, {"length": "3' 6\""})
    assert "length=3ft6in" in link
    texts = open_fragment(SHEET, link).texts
    assert SHEET.work(texts).values["length"] == pytest.approx(42 * 0.0254)


def test_what_is_left_to_the_chemistry_stays_out_of_the_link():
    """So that a changed chemistry brings its own share and exponent when the link is opened."""
    sheet = calc.find("runtime")
    assert "usable" not in write(sheet, {"chemistry": "AGM"})
    assert "usable=60percent" in write(sheet, {"chemistry": "AGM", "usable": "60 %"})


def test_a_figure_that_has_no_meaning_stays_out_of_the_link():
    sheet = calc.find("watts-to-amps")
    assert "efficiency" not in write(sheet, {"route": "direct"})
    assert "efficiency=88percent" in write(sheet, {"route": "inverter"})


def test_an_emptied_box_with_a_usual_text_means_not_known_and_its_link_says_so():
    sheet = calc.find("battery-air")
    usual, emptied = sheet.work({}), sheet.work({"vents": ""})
    assert usual.inputs["vents"].link == "20cm2" and emptied.inputs["vents"].value is None
    link = write(sheet, {"vents": ""})
    assert "&vents=&" in f"{link}&"
    assert sheet.work(open_fragment(sheet, link).texts).sentence == emptied.sentence


def test_a_link_from_before_a_box_was_filled_means_that_it_was_empty():
    sheet = calc.find("battery-air")
    opened = open_fragment(sheet, "v=1&chemistry=AGM")
    assert opened.texts["vents"] == "" and opened.texts["stands"] == "not-said"
    assert sheet.work(opened.texts).inputs["vents"].value is None


def test_an_older_default_of_a_field_that_has_no_meaning_there_is_left_out():
    sheet = calc.find("alternator-charge")
    assert open_fragment(sheet, "v=1&method=relay").texts["bank_resistance"] == "10 mΩ"
    assert "bank_resistance" not in open_fragment(sheet, "v=1&method=charger").texts

"""What both ways to charge say of a cold, hot or frozen lead-acid bank."""

import pytest

import calc
from tests.unit.test_alternator_verdicts import SOUND, said
from tests.unit.test_shore_verdicts import TESTED


@pytest.mark.parametrize(
    ("name", "sound"),
    [("alternator-charge", SOUND), ("shore-charge", TESTED)],
    ids=["road", "shore"],
)
@pytest.mark.parametrize(
    ("temperature", "verdict", "words"),
    [
        ("-10 C", "stop", "may freeze"),
        ("-5 C", "caution", "room temperature"),
        ("9 C", "caution", "room temperature"),
        ("10 C", "fine", ""),
        ("40 C", "fine", ""),
        ("45 C", "caution", "room temperature"),
    ],
)
def test_lead_acid_is_not_charged_where_its_acid_may_freeze_nor_simply_fine_in_cold_and_heat(
    name, sound, temperature, verdict, words
):
    """At a tenth, gravity 1.134 between the table's rows: 9.5 °F, -12.5 °C, and 3 K clear of it."""
    bank = {"chemistry": "flooded", "from_state": "10 %", "temperature": temperature}
    answer = calc.work(name, {**sound, **bank})
    assert (answer.verdict, words in answer.sentence) == (verdict, True)
    assert ("it can burst" in said(answer)) == temperature.startswith("-")
    assert ("sensor on the bank" in said(answer)) == (verdict != "fine")

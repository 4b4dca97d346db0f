"""What both ways to charge say of a cold, hot or frozen lead-acid bank."""

import pytest

import calc
from tests.unit.test_alternator_verdicts import SOUND
from tests.unit.test_shore_verdicts import TESTED


@pytest.mark.parametrize(
    ("name", "sound"),
    [("alternator-charge", SOUND), ("shore-charge", TESTED)],
    ids=["road", "shore"],
)
@pytest.mark.parametrize(
    ("temperature", "verdict", "rule"),
    [
        ("-10 C", "stop", "bank.acid-may-freeze"),
        ("-5 C", "caution", "charge.off-room"),
        ("9 C", "caution", "charge.off-room"),
        ("10 C", "fine", None),
        ("40 C", "fine", None),
        ("45 C", "caution", "charge.off-room"),
    ],
)
def test_lead_acid_is_not_charged_where_its_acid_may_freeze_nor_simply_fine_in_cold_and_heat(
    name, sound, temperature, verdict, rule
):
    """At a tenth, gravity 1.134 between the table's rows: 9.5 °F, -12.5 °C, and 3 K clear of it."""
    bank = {"chemistry": "flooded", "from_state": "10 %", "temperature": temperature}
    answer = calc.work(name, {**sound, **bank})
    assert answer.verdict == verdict and rule in (answer.rule, None)
    assert ("bank.freezing-point" in answer.rules) == temperature.startswith("-")
    assert ("charge.off-room" in answer.rules) == (verdict != "fine")

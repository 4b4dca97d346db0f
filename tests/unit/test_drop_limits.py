"""The limits of voltage drop: read from their table, and the same wherever a reader meets them."""

import pytest

import calc
from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.rules.drop import ONLY_PLAIN_LIGHTING, TWO_LIMITS
from calc.tables import table
from calc.units.covered import NotCovered


def test_critical_circuits_lose_three_percent_at_most_and_others_ten():
    """ABYC E-11 11.14.2.6."""
    assert drop_limit(Duty.CRITICAL) == 0.03
    assert drop_limit(Duty.OTHER) == 0.10
    with pytest.raises(NotCovered, match="'critical' or 'other'"):
        drop_limit("lighting")


def test_no_row_that_judges_is_outvoted_by_another_row_of_its_duty():
    """Else one could be mistyped unseen: only the strictest of a duty counts."""
    for duty in Duty:
        rows = [row for row in table("drop_limits").rows if row["duty"] == duty]
        assert len(rows) > 1
        assert {float(row["limit_percent"]) / 100 for row in rows} == {drop_limit(duty)}


@pytest.mark.parametrize("name", ["wire-drop", "wire-size"])
def test_a_reader_meets_the_limits_of_the_table(name):
    field = calc.find(name).field("limit")
    assert field.default == limit_text(Duty.CRITICAL) == "3 %"
    for text in (field.hint, TWO_LIMITS.text):
        assert limit_text(Duty.CRITICAL) in text and limit_text(Duty.OTHER) in text
    assert limit_text(Duty.CRITICAL) in ONLY_PLAIN_LIGHTING.text

"""The limits of voltage drop: read from their table, and the same wherever a reader meets them."""

import pytest

import calc
from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.rules.drop import ONLY_PLAIN_LIGHTING, TWO_LIMITS
from calc.units.covered import NotCovered


def test_critical_circuits_lose_three_percent_at_most_and_others_ten():
    """ABYC E-11 11.14.2.6."""
    assert drop_limit(Duty.CRITICAL) == 0.03
    assert drop_limit(Duty.OTHER) == 0.10
    with pytest.raises(NotCovered, match="'critical' or 'other'"):
        drop_limit("lighting")


@pytest.mark.parametrize("name", ["wire-drop", "wire-size"])
def test_a_reader_meets_the_limits_of_the_table(name):
    field = calc.find(name).field("limit")
    assert field.default == limit_text(Duty.CRITICAL) == "3 %"
    for text in (field.hint, TWO_LIMITS.text):
        assert limit_text(Duty.CRITICAL) in text and limit_text(Duty.OTHER) in text
    assert limit_text(Duty.CRITICAL) in ONLY_PLAIN_LIGHTING.text

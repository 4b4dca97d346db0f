"""Numbers as a reader sees them: rounded for display only, choices to the side that works."""

from decimal import Decimal

import pytest

import calc
from calc.units.kinds import CURRENT, LENGTH, RESISTANCE, TIME, VOLTAGE
from calc.units.quantities import US
from calc.units.shown import (
    DOWN,
    MINUS,
    NARROW_SPACE,
    NO_BREAK_SPACE,
    UP,
    decimal_sign,
    grouped,
    quantity_text,
    rounded,
    with_sign,
)


@pytest.mark.parametrize(
    ("value", "near", "up", "down"),
    [
        # The float nearest to 2.675 lies below it; a reader sees 2.675, a tie, to the even digit.
        (2.675, "2.68", "2.68", "2.67"),
        (2.665, "2.66", "2.67", "2.66"),
        (99.95, "100", "100", "99.9"),
        (9.995, "10", "10", "9.99"),
        (99.94, "99.9", "100", "99.9"),
        (99.01, "99", "99.1", "99"),
        (0.9996, "1", "1", "0.999"),
        (999.6, "1000", "1000", "999"),
        (1000.4, "1000", "1001", "1000"),
        (9999.4, "9999", "10000", "9999"),
        (12344.0, "12340", "12350", "12340"),
        (123456.0, "123500", "123500", "123400"),
        (536689.0, "536700", "536700", "536600"),
        (37.5, "37.5", "37.5", "37.5"),
        (0.0012345, "0.00123", "0.00124", "0.00123"),
        (1 / 3, "0.333", "0.334", "0.333"),
        (2 / 3, "0.667", "0.667", "0.666"),
        (1e-7, "0.0000001", "0.0000001", "0.0000001"),
        (0.0, "0", "0", "0"),
        (-5.678, "-5.68", "-5.67", "-5.68"),
    ],
)
def test_a_value_is_rounded_to_three_digits_in_its_direction(value, near, up, down):
    """Rounded by hand in decimals."""
    assert rounded(value) == near
    assert rounded(value, rounding=UP) == up
    assert rounded(value, rounding=DOWN) == down


@pytest.mark.parametrize("way", [UP, DOWN])
def test_a_float_s_last_digits_do_not_push_a_value_to_the_next_figure(way):
    """0.1 + 0.2 is 0.30000000000000004, and 1.25 × 30 A is 37.5 A, not 37.6 A."""
    assert rounded(0.1 + 0.2, rounding=way) == "0.3"
    assert rounded(0.1 * 3, rounding=way) == "0.3"
    assert rounded(1.1 * 1.1, rounding=way) == "1.21"
    assert rounded(4.35 * 100, rounding=way) == "435"


def test_up_is_never_below_and_down_never_above():
    for k in range(1, 4000):
        value = k * 0.37037
        up, down = Decimal(rounded(value, rounding=UP)), Decimal(rounded(value, rounding=DOWN))
        exact = Decimal(value)
        assert down * (1 - Decimal("1e-9")) <= exact <= up * (1 + Decimal("1e-9"))
        near = Decimal(rounded(value))
        assert near in (up, down)


def test_four_figures_of_a_whole_part_are_always_shown_and_no_more_than_asked_for_of_a_longer():
    assert rounded(4823.7) == "4824"
    assert rounded(4823.7, digits=1) == "4824"
    assert rounded(48231.7) == "48230"
    assert rounded(48231.7, digits=1) == "48230"
    assert rounded(48231.7, digits=5) == "48232"
    assert rounded(48231.7, digits=6) == "48231.7"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("1234", "1234"),
        ("12345", f"12{NARROW_SPACE}345"),
        ("123456", f"123{NARROW_SPACE}456"),
        ("1234567.891", f"1{NARROW_SPACE}234{NARROW_SPACE}567.891"),
        ("-5", f"{MINUS}5"),
        ("-12345", f"{MINUS}12{NARROW_SPACE}345"),
        ("3 ft 6 in", "3 ft 6 in"),
        ("1e3", "1e3"),
    ],
)
def test_long_numbers_are_grouped_by_three_from_five_figures_on(text, shown):
    assert grouped(text) == shown


@pytest.mark.parametrize(
    ("value", "kind", "text"),
    [
        (0.042, RESISTANCE, "42 mΩ"),
        (0.00042, RESISTANCE, "420 µΩ"),
        (1.5, RESISTANCE, "1.5 Ω"),
        (5400.0, TIME, "1.5 h"),
        (1800.0, TIME, "30 min"),
        (0.25, VOLTAGE, "0.25 V"),
        (120.0, CURRENT, "120 A"),
        (3.6, LENGTH, "3.6 m"),
        (0.36, LENGTH, "360 mm"),
    ],
)
def test_a_value_is_shown_in_the_unit_that_reads_best(value, kind, text):
    assert quantity_text(value, kind) == text.replace(" ", NO_BREAK_SPACE)


def test_a_reader_who_works_in_feet_is_answered_in_feet():
    assert quantity_text(3.6576, LENGTH, system=US) == f"12{NO_BREAK_SPACE}ft"
    metric = calc.work("wire-drop", {"length": "3.6576 m"})
    feet = calc.work("wire-drop", {"length": "12 ft"})
    assert metric.shown["longest_run"].endswith("m")
    assert feet.shown["longest_run"].endswith("ft")
    assert metric.values["longest_run"] == pytest.approx(feet.values["longest_run"], rel=1e-12)


def test_rounding_never_hides_that_a_limit_is_missed():
    """3.04 % against 3 %: by hand, a loop of 20 m at 30 A and 0.608 Ω/km loses 0.3648 V of 12 V."""
    inputs = {
        "current": "30 A", "length": "10 m", "voltage": "12 V", "limit": "3 %",
        "temperature": "20 C", "maker_resistance": "0.608 ohm/km",
    }  # fmt: skip
    answer = calc.work("wire-drop", inputs)
    assert answer["drop_percent"].m_as("percent") == pytest.approx(3.04)
    assert answer.verdict == "caution"
    assert answer.shown["drop_percent"] == f"3.04{NO_BREAK_SPACE}%"


@pytest.mark.parametrize("resistance", ["0.6001", "0.60004", "0.600001"])
def test_a_hair_over_the_limit_is_shown_as_over(resistance):
    """Half a per mille and less over 3 %: the figure beside the limit must differ from it."""
    inputs = {
        "current": "30 A", "length": "10 m", "voltage": "12 V", "limit": "3 %",
        "temperature": "20 C", "maker_resistance": f"{resistance} ohm/km",
    }  # fmt: skip
    answer = calc.work("wire-drop", inputs)
    assert answer.verdict == "caution"
    assert float(answer.shown["drop_percent"].split(NO_BREAK_SPACE)[0]) > 3


def test_exactly_the_limit_is_within_it():
    """0.6 Ω/km over the same loop is 0.36 V: 3 % of 12 V to the last digit of a float."""
    inputs = {
        "current": "30 A", "length": "10 m", "voltage": "12 V", "limit": "3 %",
        "temperature": "20 C", "maker_resistance": "0.6 ohm/km", "ambient": "0 C",
    }  # fmt: skip
    answer = calc.work("wire-drop", inputs)
    assert answer.verdict == "fine"
    assert answer.shown["drop_percent"] == f"3{NO_BREAK_SPACE}%"


@pytest.mark.parametrize(
    ("written", "with_comma"),
    [
        ("is 16 AWG (1.3 mm²) or larger", "is 16 AWG (1,3 mm²) or larger"),
        ("0.5 to 0.8 (no source)", "0,5 to 0,8 (no source)"),
        ("to the power 3.4: it dims", "to the power 3,4: it dims"),
        ("NEC 310.16, Class 8.8 and 0.1 s.", "NEC 310.16, Class 8.8 and 0,1 s."),
        ("loses 0.23 to 0.40 % of it", "loses 0,23 to 0,40 % of it"),
        ("by 1.25 times", "by 1,25 times"),
        ("33 CFR 183.425 and NEC 690.8(B)", "33 CFR 183.425 and NEC 690.8(B)"),
        ("below −3.9 °C", "below −3,9 °C"),
    ],
)
def test_constants_of_sentences_have_the_readers_sign(written, with_comma):
    assert with_sign(written) == written
    token = decimal_sign.set(",")
    assert with_sign(written) == with_comma
    decimal_sign.reset(token)


def test_one_day_is_no_days():
    assert quantity_text(86_400, TIME, unit="day") == f"1{NO_BREAK_SPACE}day"
    assert quantity_text(2 * 86_400, TIME, unit="day") == f"2{NO_BREAK_SPACE}days"

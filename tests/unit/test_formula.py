"""Formulas as data: written as by hand, worked as meant, and nothing else let in."""

import pint
import pytest

from calc.units.kinds import CURRENT, TEMPERATURE, VOLTAGE
from calc.units.quantities import base_quantity
from calc.worksheet import formula


def written(text, **symbols):
    return formula.written(text, lambda name: symbols.get(name, name))


@pytest.mark.parametrize(
    ("text", "as_written"),
    [
        ("a * b", "a × b"),
        ("a / b", "a ÷ b"),
        ("a + b * c", "a + b × c"),
        ("(a + b) * c", "(a + b) × c"),
        ("a * (b + c)", "a × (b + c)"),
        ("a - (b - c)", "a − (b − c)"),
        ("(a - b) - c", "a − b − c"),
        ("a - (b + c)", "a − (b + c)"),
        ("a + (b - c)", "a + b − c"),
        ("a / (b * c)", "a ÷ (b × c)"),
        ("a / (b / c)", "a ÷ (b ÷ c)"),
        ("a / b / c", "a ÷ b ÷ c"),
        ("a / b * c", "a ÷ b × c"),
        ("a * (b / c)", "a × b ÷ c"),
        ("a ** b", "a^{b}"),
        ("(a * b) ** c", "(a × b)^{c}"),
        ("(a / b) ** (c + 1)", "(a ÷ b)^{c + 1}"),
        ("a * b ** c", "a × b^{c}"),
        ("(a ** b) ** c", "(a^{b})^{c}"),
        ("a ** b ** c", "a^{b^{c}}"),
        ("sqrt(a / b)", "√(a ÷ b)"),
        ("2 * sqrt(a)", "2 × √(a)"),
        ("min(1, a)", "the smaller of (1 and a)"),
        ("max(a, b)", "the larger of (a and b)"),
        ("2 * a", "2 × a"),
        ("0.5 * a", "0.5 × a"),
    ],
)
def test_a_formula_is_written_with_the_brackets_it_needs_and_no_others(text, as_written):
    assert written(text) == as_written


def test_a_name_is_replaced_by_its_symbol_or_by_its_number():
    assert written("current * length", current="I", length="L") == "I × L"
    assert written("base ** 2", base="12 V") == "(12 V)^{2}"


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a + b * c", 2 + 3 * 4),
        ("(a + b) * c", 20),
        ("a - b - c", -5),
        ("a - (b - c)", 3),
        ("c / b / a", 4 / 6),
        ("c / (b / a)", 8 / 3),
        ("a ** b ** a", 512),
        ("(a ** b) ** a", 64),
        ("sqrt(c)", 2),
        ("min(a, b)", 2),
        ("max(a, b)", 3),
        ("2.5 * a", 5),
    ],
)
def test_a_formula_is_worked_as_it_is_read(text, value):
    """Worked by hand for a = 2, b = 3, c = 4."""
    assert formula.work(text, {"a": 2.0, "b": 3.0, "c": 4.0}) == pytest.approx(value)


def test_the_names_of_a_formula_leave_out_its_functions():
    assert formula.names("min(1, sqrt((a - b) / (a - c)))") == {"a", "b", "c"}


@pytest.mark.parametrize(
    "text",
    [
        "a.b", "a[0]", "__import__('os')", "lambda: 1", "a if b else c", "f'{a}'", "a and b",
        "-a", "a < b", "[a]", "{a}", "(a, b)", "a := 1", "print(*a)", "open(file=a)",
    ],
)  # fmt: skip
def test_anything_but_arithmetic_is_refused(text):
    with pytest.raises((ValueError, SyntaxError, KeyError)):
        formula.work(text, {"a": 1.0, "b": 2.0, "c": 3.0})


def test_a_name_without_a_value_is_an_error():
    with pytest.raises(KeyError):
        formula.work("a + b", {"a": 1.0})


def test_a_formula_that_mixes_kinds_is_found_out_by_its_dimensions():
    """This is what gives the dimension check of every worksheet its teeth."""
    put = {"current": base_quantity(2.0, CURRENT), "drop": base_quantity(3.0, VOLTAGE)}
    with pytest.raises(pint.DimensionalityError):
        formula.work("current + drop", put)
    product = formula.work("current * drop", put)
    assert product.m_as("W") == pytest.approx(6)
    warm = {"a": base_quantity(60.0, TEMPERATURE), "b": base_quantity(20.0, TEMPERATURE)}
    assert formula.work("a - b", warm).m_as("delta_degC") == pytest.approx(40)
    with pytest.raises(pint.OffsetUnitCalculusError):
        formula.work("a + b", warm)


@pytest.mark.parametrize(("a", "b", "same"), [(1, 1 + 1e-12, True), (1, 1 + 1e-6, False)])
def test_closeness_allows_a_float_s_last_digits_and_no_more(a, b, same):
    assert formula.close(a, b) is same

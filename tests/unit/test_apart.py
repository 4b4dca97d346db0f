"""Digits enough that no rounding hides which of two values is the larger."""

import pytest

import calc
from calc.units.kinds import CURRENT, RATIO, VOLTAGE
from calc.worksheet.apart import MOST_DIGITS, Figure, keep_apart, limits_in

BESIDE = "\u00a0"


def digits_for(value: float, limit: float) -> int:
    """Return with how many digits a voltage is shown beside a limit that is given in full."""
    digits = {"it": 3}
    keep_apart([Figure(value, VOLTAGE, "volt", name="it"), Figure(limit, VOLTAGE)], digits)
    return digits["it"]


@pytest.mark.parametrize(
    ("value", "limit", "digits"),
    [
        (11.5, 12.0, 3),
        (12.1, 12.0, 3),
        (12.04, 12.0, 4),  # "12 V" would hide it
        (11.96, 12.0, 4),
        (50.0001, 50.0, 6),
        (49.99996, 50.0, 7),
        (50.0, 50.0, 3),  # what is equal needs no more
        (50.0 * (1 + 1e-12), 50.0, 3),  # nor do the last digits of a float
    ],
)
def test_a_value_gets_the_digits_that_show_on_which_side_of_its_limit_it_is(value, limit, digits):
    assert digits_for(value, limit) == digits


def test_two_values_get_the_same_digits_and_never_without_end():
    digits = {"one": 3, "other": 3}
    pair = [Figure(v, CURRENT, "ampere", name=n) for n, v in (("one", 37.51), ("other", 37.52))]
    keep_apart(pair, digits)
    assert digits == {"one": 4, "other": 4}
    keep_apart([Figure(1 + 5e-9, CURRENT, "ampere", name="one"), Figure(1.0, CURRENT)], digits)
    assert digits["one"] == MOST_DIGITS


def test_values_of_two_kinds_are_not_compared():
    digits = {"one": 3}
    keep_apart([Figure(12.04, VOLTAGE, "volt", name="one"), Figure(12.0, CURRENT)], digits)
    assert digits == {"one": 3}


def test_a_limit_written_in_a_sentence_is_read():
    said = f"It reaches {{cold_voc}}. Up to 60 V d.c. is harmless, 12{BESIDE}V too; 3 % of 5 A no."
    assert [one.value for one in limits_in(said, {VOLTAGE})] == [60.0, 12.0]
    assert [one.value for one in limits_in(said, {RATIO})] == [0.03]
    assert not [*limits_in("{v60} V and 4/0 AWG, 12.8 Vm", {VOLTAGE})]


def test_a_string_just_over_a_limit_is_seen_to_be_over_it():
    """By hand: two panels of 26.655 V at 1.126 are 60.027 V; the caution begins at 60 V."""
    ask = {"voc": "26.655 V"}
    answer = calc.work("panel-string", ask)
    assert answer["cold_voc"].m_as("V") == pytest.approx(60.027, abs=1e-3)
    (said,) = (one for one in answer.said if "60 V" in one.text)
    assert f"60.03{BESIDE}V" in said.text
    assert answer.shown["cold_voc"] == f"60.03{BESIDE}V"


def test_the_same_digits_stand_in_the_result_the_sentence_and_the_working():
    for sheet in map(calc.find, calc.worksheets()):
        answer = calc.work(sheet.id)
        for line, step in zip(
            answer.working, [s for s in sheet.steps if s.when(answer.result)], strict=True
        ):
            shown = answer.shown[step.of]
            assert line.value == (shown.partition(" (")[0] if named(sheet, step.of).both else shown)


def named(sheet, name):
    """Return the output of a sheet by its id."""
    return next(one for one in (*sheet.results, *sheet.intermediates) if one.id == name)


def test_a_length_to_keep_is_still_within_the_limit_as_read():
    answer = calc.work("wire-drop", {"current": "6 A", "conductor": "18 AWG"})
    kept = answer.shown["keep_under"]
    assert kept in answer.sentence and answer.shown["cure"] in answer.sentence
    for length in (kept, answer.shown["longest_run"]):
        ask = {"current": "6 A", "conductor": "18 AWG", "length": length}
        assert calc.work("wire-drop", ask).values["drop_percent"] <= 0.03
    cured = {"current": "6 A", "conductor": answer.shown["cure"]}
    assert calc.work("wire-drop", cured).verdict == "fine"

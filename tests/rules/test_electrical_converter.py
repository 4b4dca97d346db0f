"""Judgements on a d.c. converter: each fires on one side of its threshold and not on the other.

At rest 12 A at 13.2 V come from a 24 V bank through 90 %, rated 20 A for hours.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "converter"
PEAK = {"rated_for": "peak or not said"}
# 1 A at 13.2 V for 2 h are 26.4 Wh; a quarter of it at 24 V over 22 h is 12.5 mA
LAMP = {"load": "1 A", "load_hours": "2 h", "on_hours": "24 h"}

CASES = {
    "converter.overloaded": ({"load": "20.1 A"}, {"load": "20 A"}),
    "converter.input-too-high": ({"input_high": "29.1 V"}, {"input_high": "29.2 V"}),
    "converter.input-too-low": ({"input_low": "22.1 V"}, {"input_low": "22 V"}),
    "converter.rating-may-be-a-peak": ({**PEAK, "load": "14.1 A"}, {**PEAK, "load": "14 A"}),
    "converter.idle-draw": ({**LAMP, "standby": "12.6 mA"}, {**LAMP, "standby": "12.4 mA"}),
    # 11 V x 200 A
    "system.higher-voltage-pays": (
        {"system": "12 V", "power": "2210 W"},
        {"system": "12 V", "power": "2190 W"},
    ),
    "converter.common-negative": ({}, {"isolation": "isolated"}),
    "converter.isolated": ({"isolation": "isolated"}, {}),
    "converter.isolation-not-known": ({"isolation": "not known"}, {}),
    "system.copper-against-loss": (
        {},
        {"system": "12 V", "output_voltage": "24 V", "rated": "20 A"},
    ),
    "converter.can-pass-the-bank": ({"highest": "32.1 V"}, {"highest": "32 V"}),
    # a fuse of 15 A behind a converter of 15 A, and behind one of 14.9 A
    "converter.output-is-limited": ({"rated": "14.9 A"}, {"rated": "15 A"}),
    "converter.warm-place": ({"ambient": "40 C"}, {"ambient": "39.9 C"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


@pytest.mark.parametrize(
    "rule",
    [
        "converter.overloaded",
        "converter.input-too-high",
        "converter.input-too-low",
        "converter.rating-may-be-a-peak",
        "converter.idle-draw",
    ],
)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_no_rating_helps_where_the_air_leaves_nothing():
    """At 2.5 % for each degree nothing is left 40 K above 40 °C: a stop without a remedy."""
    found = calc.work(SHEET, {"ambient": "80 C", "insulation": "105 C"})
    assert (found.verdict, found.rule) == ("stop", "converter.overloaded")


def test_heat_takes_from_a_peak_rating_too():
    """14 A at 40 °C and no more than 10.5 A at 50 °C, where three quarters are left."""
    assert "converter.rating-may-be-a-peak" in fires(
        SHEET, {**PEAK, "load": "10.6 A", "ambient": "50 C"}
    )
    assert "converter.rating-may-be-a-peak" not in fires(
        SHEET, {**PEAK, "load": "10.4 A", "ambient": "50 C"}
    )


def test_the_fuses_are_those_that_fuse_choice_would_take():
    """One place chooses fuses: asked with the same cable, current and fault it says the same."""
    answer = calc.work(SHEET, {})
    for side in ("input", "output"):
        circuit = getattr(answer.result, side).sized.circuit
        asked = {
            "current": f"{circuit.current!r} A",
            "conductor": answer[f"{side}_cable"],
            "voltage": f"{circuit.max_voltage!r} V",
            "fuse_place": "at the battery",
            "fault_current": "1000 A",
        }
        assert calc.work("fuse-choice", asked)["fuse"] == answer[f"{side}_fuse"]


def test_the_cables_are_those_that_wire_size_would_take():
    """At the nominal voltage of the bank; wire size counts 14.6 V to each 12 V as highest."""
    answer = calc.work(SHEET, {})
    circuit = answer.result.input.sized.circuit
    asked = {
        "current": f"{circuit.current!r} A",
        "length": "3 m",
        "voltage": "24 V",
        "bundled": "2",
    }
    assert calc.work("wire-size", asked)["conductor"] == answer["input_cable"]

"""Judgements on panels in strings: each fires on one side of its threshold and not on the other.

The default string is two panels of 24.3 V: at −20 °C 2 × 24.3 V × (1 + 0.0028 × 45) = 54.72 V. With
a close mount the cells are 49.46 K above the air (King), so 59.46 K above 25 °C in air of 35 °C:
0.0035/K leave 79.19 % of 20.4 V, 16.15 V a panel.
"""

import pytest

import calc
from calc.sheets.charging.panel_string.calculate import onward
from tests.rules.judging import fires, mended, remedy

SHEET = "panel-string"
HOUSE = {"voc": "37.2 V", "vmp": "31.2 V", "isc": "13.9 A", "rated": "410 W", "series": "1"}
THREE = {**HOUSE, "parallel": "3", "series_fuse": "25 A", "regulator_limit": ""}
PWM = {"regulator": "PWM", "series": "1"}

CASES = {
    # 3 x 27.36 V = 82.09 V
    "string.over-input-limit": (
        {"series": "3", "volts_limit": "82 V"},
        {"series": "3", "volts_limit": "82.1 V"},
    ),
    "string.none-in-series": ({"volts_limit": "54.7 V"}, {"volts_limit": "54.8 V"}),
    # one panel alone: 27.36 V
    "string.one-panel-over-input-limit": ({"volts_limit": "27.3 V"}, {"volts_limit": "27.4 V"}),
    # two reach 54.72 V in frost; one has 20.25 V when hot, less than charging at 21 V needs
    "string.no-count-fits": (
        {"volts_limit": "54.7 V", "voltage": "21 V"},
        {"volts_limit": "54.7 V", "voltage": "12.5 V"},
    ),
    # 24.3 V x (1 - 0.0028 x 59.46) = 20.25 V
    "string.below-charge-when-hot": (
        {"series": "1", "voltage": "20.3 V"},
        {"series": "1", "voltage": "20.2 V"},
    ),
    "string.low-when-hot": (
        {"series": "1", "voltage": "15.2 V"},
        {"series": "1", "voltage": "15.1 V"},
    ),
    # one may, two may not: 54.72 V in frost
    "string.low-at-the-most": (
        {"series": "1", "voltage": "15.2 V", "volts_limit": "54.7 V"},
        {"series": "1", "voltage": "15.2 V", "volts_limit": "54.8 V"},
    ),
    # 2 x 1.25 x 13.9 A = 34.75 A
    "strings.fuses-missing": (THREE, {**THREE, "series_fuse": "34.8 A"}),
    "strings.fuses-not-needed": ({**THREE, "series_fuse": "34.8 A"}, THREE),
    # 1.25 x 1.25 x 13.9 A = 21.7 A; the next rating is 25 A
    "strings.no-fuse-fits": ({**THREE, "series_fuse": "24.9 A"}, THREE),
    "strings.fuse-above-label": (
        {**THREE, "string_fuse": "25.1 A"},
        {**THREE, "string_fuse": "25 A"},
    ),
    "strings.fuse-below-current": (
        {**THREE, "string_fuse": "13.8 A"},
        {**THREE, "string_fuse": "13.9 A"},
    ),
    "strings.fuse-loaded-hard": (
        {**THREE, "string_fuse": "21.7 A"},
        {**THREE, "string_fuse": "21.8 A"},
    ),
    "strings.limit-not-known": ({**THREE, "series_fuse": ""}, THREE),
    "strings.two-need-no-fuses": ({**THREE, "parallel": "2"}, THREE),
    "string.input-current-over-limit": (
        {**THREE, "input_limit": "41.6 A"},
        {**THREE, "input_limit": "41.8 A"},
    ),
    "string.unlike-panels": (
        {"alike": "mixed", "series": "1", "parallel": "2"},
        {"alike": "mixed", "series": "1", "parallel": "1"},
    ),
    "string.label-disagrees": ({"vmp": "24.3 V"}, {"vmp": "24.2 V"}),
    # of 24.3 V: 70 % is 17.01 V, 92 % is 22.36 V
    "string.label-unlikely": (
        {"vmp": "17.0 V", "rated": "150 W"},
        {"vmp": "17.02 V", "rated": "150 W"},
    ),
    "string.coefficient-unlikely": ({"coefficient": "-0.19 %/K"}, {"coefficient": "-0.2 %/K"}),
    "string.above-touch-limit": (
        {"series": "1", "coefficient": "0 %/K", "voc": "60.1 V"},
        {"series": "1", "coefficient": "0 %/K", "voc": "60 V"},
    ),
    "string.above-extra-low": (
        {"coefficient": "0 %/K", "voc": "60.1 V", "volts_limit": "250 V"},
        {"coefficient": "0 %/K", "voc": "60 V", "volts_limit": "250 V"},
    ),
    "string.parts-rated-for-its-volts": (
        {"series": "1", "coefficient": "0 %/K", "voc": "32.1 V"},
        {"series": "1", "coefficient": "0 %/K", "voc": "32 V"},
    ),
    # 54.72 V over 0.95 is 57.6 V
    "string.near-input-limit": ({"volts_limit": "57.5 V"}, {"volts_limit": "57.7 V"}),
    "string.cold-by-table": ({"coefficient": ""}, {}),
    "regulator.plain-switch": (PWM, {}),
    # 20.4 V is less than 1.2 x 17.1 V
    "panel.near-bank": ({**PWM, "voltage": "17.1 V"}, {**PWM, "voltage": "17 V"}),
    "panel.below-bank": ({**PWM, "voltage": "20.4 V"}, {**PWM, "voltage": "20.3 V"}),
    # 14.4 V of 22.2 V is less than 65 %
    "panel.plain-switch-wastes": ({**PWM, "vmp": "22.2 V"}, {**PWM, "vmp": "22.1 V"}),
    # 400 W over 14.4 V is 27.8 A
    "panel.regulator-too-small": ({"regulator_limit": "21.3 A"}, {"regulator_limit": "21.4 A"}),
    "panel.regulator-holds-back": ({"regulator_limit": "27.7 A"}, {"regulator_limit": "27.8 A"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_a_panel_whose_open_voltage_alone_was_typed_is_asked_for_the_rest_of_its_label():
    """43.5 V beside the 20.4 V of another panel is 46.9 %; beside its own 36.1 V it is 83 %."""
    assert "string.label-unlikely" in fires(SHEET, {"vmp": "22.4 V"})
    assert "string.label-unlikely" not in fires(SHEET, {"vmp": "22.3 V"})
    assert calc.work(SHEET, {"voc": "43.5 V"}).rule == "string.label-unlikely"
    assert "string.label-unlikely" not in fires(SHEET, {"voc": "43.5 V", "vmp": "36.1 V"})


def test_a_coefficient_beyond_what_silicon_loses_is_read_again():
    assert "string.coefficient-unlikely" in fires(SHEET, {"coefficient": "-0.51 %/K"})
    assert "string.coefficient-unlikely" not in fires(SHEET, {"coefficient": "-0.5 %/K"})


def test_a_current_at_best_power_as_large_as_in_short_circuit_is_no_label():
    assert "string.label-disagrees" in fires(SHEET, {"rated": "10.4 A"})
    assert "string.label-disagrees" not in fires(SHEET, {"rated": "10.3 A"})


@pytest.mark.parametrize(
    ("rule", "texts"),
    [
        ("string.over-input-limit", {"series": "4", "regulator_limit": ""}),
        ("string.none-in-series", {"volts_limit": "54.7 V"}),
        ("string.below-charge-when-hot", {"series": "1", "voltage": "28.8 V"}),
        ("string.low-when-hot", {"series": "1", "voltage": "15.2 V"}),
        *(
            (rule, CASES[rule][0])
            for rule in (
                "strings.fuses-missing",
                "strings.no-fuse-fits",
                "strings.fuse-above-label",
                "strings.fuse-below-current",
                "strings.fuse-loaded-hard",
                "string.unlike-panels",
                "panel.plain-switch-wastes",
                "panel.regulator-too-small",
            )
        ),
    ],
)
def test_the_remedy_of_a_rule_silences_it(rule, texts):
    mended(SHEET, rule, texts)


@pytest.mark.parametrize("series", ["1", "2"])
def test_panels_too_few_when_hot_and_too_many_in_frost_are_told_so_and_not_to_be_rewired(series):
    """48 V with panels of 40 V: one is too few when hot, two are too many for 100 V in frost."""
    texts = {"voc": "49.9 V", "vmp": "41.8 V", "voltage": "57.6 V", "regulator_limit": ""}
    answer = calc.work(SHEET, {**texts, "series": series})
    assert answer.rule == "string.no-count-fits"
    said = {"string.none-in-series", "string.below-charge-when-hot"}
    assert not said & set(answer.rules)
    assert remedy(SHEET, "string.no-count-fits", {**texts, "series": series}) is None


@pytest.mark.parametrize(("series", "parallel"), [("2", "1"), ("1", "2")])
def test_a_plain_switch_that_needs_more_than_its_limit_allows_is_told_so_both_ways(
    series, parallel
):
    """24 V by PWM needs two panels of 20.4 V in a row, which reach 54.72 V in frost."""
    pwm = {"regulator": "PWM", "voltage": "28.8 V", "volts_limit": "50 V"}
    answer = calc.work(SHEET, {**pwm, "series": series, "parallel": parallel})
    assert (answer.verdict, answer.rule) == ("stop", "string.no-count-fits")
    assert not {"string.none-in-series", "panel.below-bank"} & set(answer.rules)


def test_panels_that_charge_less_when_hot_are_still_to_be_wired_in_parallel():
    """One of 18 V: open 24.3 V in frost and 18 V when hot, of which 14.4 V are needed."""
    label = {"voc": "21.6 V", "vmp": "18 V", "isc": "6 A", "rated": "100 W", "volts_limit": "45 V"}
    in_series = calc.work(SHEET, {**label, "series": "2"})
    assert in_series.rule == "string.none-in-series"
    beside = calc.work(SHEET, {**label, "series": "1", "parallel": "2"})
    assert (beside.verdict, beside.rule) == ("caution", "string.low-at-the-most")


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        (
            "27.3 V",
            "This panel does not suit this regulator: at −20\u00a0°C one alone reaches 27.4",
        ),
        ("54.7 V", "Wire these panels in parallel only: 2 in series reach 54.7"),
    ],
)
def test_two_panels_too_many_are_told_apart_from_one(limit, said):
    assert calc.work(SHEET, {"volts_limit": limit}).sentence.startswith(said)


def test_a_blank_label_is_never_fine_where_it_decides():
    assert calc.work(SHEET, {**THREE, "series_fuse": ""}).verdict == "caution"
    fused = {**THREE, "series_fuse": "", "string_fuse": "25 A"}
    assert calc.work(SHEET, fused).verdict == "caution"


def test_the_yield_is_asked_for_by_the_string_s_own_regulator_and_not_where_it_stops():
    """Two panels of 18.5 V on a plain switch at 28.8 V keep 28.8 of 37 V."""
    pwm = {"regulator": "PWM", "vmp": "18.5 V", "voc": "22.5 V", "voltage": "28.8 V"}
    steps = {one.sheet: dict(one.texts) for one in onward(calc.work(SHEET, pwm).result)}
    asked = steps["sun-yield"]
    assert (asked["regulator"], asked["panel_voltage"]) == ("PWM", "37 V")
    keeps = (
        calc.work("sun-yield", asked)["charge"]
        / calc.work("sun-yield", {**asked, "panel_voltage": "28.81 V"})["charge"]
    )
    assert keeps == pytest.approx(28.81 / 37, rel=1e-2)
    stopped = onward(calc.work(SHEET, {"volts_limit": "27.3 V"}).result)
    assert "sun-yield" not in {one.sheet for one in stopped}

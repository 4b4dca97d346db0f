"""Judgements on a run that carries a current: each fires on one side of its line only."""

import pytest

from tests.rules.judging import fires, mended, remedy

SHEET = "wire-drop"
SHORT = {"length": "10 cm", "limit": "20 %"}
# 20 m of 1 Ω/km at 20 °C, out and back: at 30 A 0.6 V, which is 5 % of 12 V
BY_MAKER = {
    "current": "30 A", "voltage": "12 V", "length": "10 m", "temperature": "20 C",
    "conductor": "4 AWG", "maker_resistance": "1 ohm/km",
}  # fmt: skip


def by_maker(resistance, limit):
    return BY_MAKER | {"maker_resistance": f"{resistance} ohm/km", "limit": limit}


def at(current, conductor="8 AWG", **more):
    return SHORT | {"current": current, "conductor": conductor} | more


# 33 CFR 183.425 table 5: 8 AWG carries 80 A at 105 °C and 55 A at 60 °C, 18 AWG 20 A and 10 A; by
# area (our step) 22 AWG of 0.326 mm² 7.9 A and 3.9 A. ABYC E-11 11.14.2.6: 3 % and 10 %.
CASES = {
    # 20 Ω/km make 0.4 Ω, through which 12 V push 30 A
    "run.current-cannot-flow": (by_maker(20, "3 %"), by_maker(19.9, "3 %")),
    "run.over-ampacity": (at("80.1 A"), at("80 A")),
    "run.over-ampacity-below-table": (at("8 A", "22 AWG"), at("7.8 A", "22 AWG")),
    "run.drop-beyond-any-limit": (by_maker(2.01, "3 %"), by_maker(2, "3 %")),
    "run.drop-over-limit": (by_maker(1, "4.99 %"), by_maker(1, "5 %")),
    "run.drop-beyond-usual-limit": (by_maker(2.01, "11 %"), by_maker(2, "11 %")),
    "run.needs-hot-insulation": (at("55.1 A"), at("55 A")),
    "run.needs-hot-insulation-below-table": (at("4 A", "22 AWG"), at("3.9 A", "22 AWG")),
    "run.copper-too-hot": (at("1 A", temperature="105.1 C"), at("1 A", temperature="105 C")),
    "run.no-published-ampacity": (at("1 A", "20 AWG"), at("1 A", "18 AWG")),
    "run.one-alone-too-thin": (at("55.1 A", parallel="2"), at("55 A", parallel="2")),
    "run.current-decides": (at("20.1 A", "2 AWG"), at("20 A", "2 AWG")),
    "run.thicker-or-shorter": ({"limit": "1 %"}, {"limit": "10 %"}),
    "run.no-size-within-limit": ({"length": "200 m"}, {"length": "20 m"}),
    "run.only-plain-lighting": (by_maker(0.601, "9 %"), by_maker(0.6, "9 %")),
    "run.held-to-table-ampacity": (at("55 A"), at("55.1 A")),
    "run.parallel-must-be-alike": (at("1 A", parallel="2"), at("1 A")),
    # NEC 310.10(G): 1/0 AWG and thicker; SAE 1/0 holds less copper than that
    "run.too-thin-to-join": (at("1 A", "1 AWG", parallel="2"), at("1 A", "1/0 AWG", parallel="2")),
    "copper.strands-idle": (at("1 A", strands="class 2"), at("1 A", "10 mm2", strands="class 2")),
    "copper.read-as-sae": (at("1 A", gauge_reading="SAE"), at("1 A")),
    "copper.may-be-sae": (at("1 A"), BY_MAKER),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_line_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


MENDED = [
    "run.current-cannot-flow", "run.over-ampacity", "run.over-ampacity-below-table",
    "run.drop-beyond-any-limit", "run.drop-over-limit", "run.drop-beyond-usual-limit",
    "run.needs-hot-insulation", "run.needs-hot-insulation-below-table", "run.copper-too-hot",
    "run.no-published-ampacity", "run.thicker-or-shorter", "run.only-plain-lighting",
    "run.too-thin-to-join",
]  # fmt: skip


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_the_size_that_carries_the_current_with_any_insulation_is_offered():
    """By the 60 °C column of 33 CFR table 5: 6 AWG carries 80 A, 4 AWG 105 A."""
    assert mended(SHEET, "run.over-ampacity", at("100 A"))["conductor"] == "4 AWG"
    assert mended(SHEET, "run.needs-hot-insulation", at("79 A"))["conductor"] == "6 AWG"


def test_a_run_of_the_maker_s_resistance_is_shortened_for_no_other_size_has_it():
    """By hand: 5 % over 10 m; 3 % over 6 m."""
    after = mended(SHEET, "run.drop-over-limit", by_maker(1, "3 %"))
    assert after["conductor"] == "4 AWG" and after["length"].m_as("m") == pytest.approx(6)


def test_a_drop_that_no_size_mends_is_mended_by_a_shorter_run():
    after = mended(SHEET, "run.drop-over-limit", {"length": "200 m", "conductor": "4/0 AWG"})
    assert after["length"].m_as("m") < 200


def test_a_current_beyond_every_size_has_no_remedy():
    """4/0 AWG carries 300 A at 60 °C."""
    assert remedy(SHEET, "run.over-ampacity", at("900 A", "4/0 AWG")) is None

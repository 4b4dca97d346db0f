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
# area (our step) 22 AWG of 0.326 mm² 7.9 A. A fuse is rated 1.25 times the load. ABYC E-11
# 11.14.2.6: 3 % and 10 %.
CASES = {
    # 20 Ω/km make 0.4 Ω, through which 12 V push 30 A
    "run.current-cannot-flow": (by_maker(20, "3 %"), by_maker(19.9, "3 %")),
    "run.drop-beyond-any-limit": (by_maker(2.01, "3 %"), by_maker(2, "3 %")),
    "run.drop-over-limit": (by_maker(1, "4.99 %"), by_maker(1, "5 %")),
    "run.drop-beyond-usual-limit": (by_maker(2.01, "11 %"), by_maker(2, "11 %")),
    # 64 A × 1.25 = 80 A, which 8 AWG carries
    "fuse.window-narrow": (at("64.1 A"), at("64 A")),
    "fuse.window-closed": (at("80.1 A"), at("80 A")),
    # 4 AWG carries 160 A: 127 A ask for 158.75 A; 150 and 175 A are made
    "fuse.no-rating-between": (at("127 A", "4 AWG"), at("119 A", "4 AWG")),
    # 125 °C: all 95 K above 30 °C at 90 A, of which 60 K come at 71.5 A
    "copper.hot-at-lugs": (
        at("71.6 A", insulation="125 C"),
        at("71.4 A", insulation="125 C"),
    ),
    "fuse.hot-air-derates": (at("2 A", ambient="50.1 C"), at("2 A", ambient="50 C")),
    "insulation.only-as-printed": (at("40.1 A"), at("40 A")),
    "cable.bundle-by-prudence": (at("2 A", bundled="3"), at("2 A", bundled="2")),
    "cable.below-table": (at("1 A", "20 AWG"), at("1 A", "18 AWG")),
    "cable.only-in-sheath": (at("1 A", "18 AWG"), at("1 A", "16 AWG")),
    # 64 A are 0.8 of what 8 AWG carries: its copper gets to 30 + 75 × 0.64 = 78 °C, not 60 °C
    "circuit.warm-drop-over-limit": (
        {"current": "64 A", "length": "3.7 ft", "conductor": "8 AWG"},
        {"current": "64 A", "length": "3.5 ft", "conductor": "8 AWG"},
    ),
    # four together leave 48 A of 80 A
    "circuit.one-alone-too-thin": (
        at("48.1 A", parallel="2", bundled="4"),
        at("48 A", parallel="2", bundled="4"),
    ),
    "run.three-in-parallel": (at("30 A", parallel="3"), at("30 A", parallel="2")),
    # 0.6 of 80 A for 8 AWG is 48 A: 45 A in each of two take 56.25 A, 38 A take 47.5 A
    "run.parallel-better-apart": (
        at("90 A", parallel="2", bundled="2"),
        at("90 A", parallel="2"),
    ),
    "run.lay-parallel-apart": (
        at("96.1 A", parallel="2", bundled="2"),
        at("96 A", parallel="2", bundled="2"),
    ),
    # ABYC E-11 table IX has 8 AWG (SAE) for 15 A over a loop of 25 ft, 3 % of 12 V
    "run.within-when-cool": (
        {
            "current": "15 A",
            "length": "12.5 ft",
            "conductor": "8 AWG",
            "gauge_reading": "SAE",
            "temperature": "105 C",
            "limit": "2.5 %",
        },
        {
            "current": "15 A",
            "length": "12.5 ft",
            "conductor": "8 AWG",
            "gauge_reading": "SAE",
            "temperature": "20 C",
            "limit": "2 %",
        },
    ),
    "run.copper-too-hot": (at("1 A", temperature="105.1 C"), at("1 A", temperature="105 C")),
    "run.current-decides": (at("16.1 A", "2 AWG"), at("16 A", "2 AWG")),
    "run.thicker-or-shorter": ({"limit": "1 %"}, {"limit": "10 %"}),
    "run.no-size-within-limit": ({"length": "200 m"}, {"length": "20 m"}),
    # 6 AWG, 0.491 ohm/kft at 75 °C (NEC table 8), has 1.533 mΩ/m at 60 °C: 30 A lose 3 % of 12 V
    # over 3.91 m and back
    "run.only-plain-lighting": (
        {"length": "3.95 m", "limit": "9 %"},
        {"length": "3.85 m", "limit": "9 %"},
    ),
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
    "run.current-cannot-flow", "run.drop-beyond-any-limit", "run.drop-over-limit",
    "run.drop-beyond-usual-limit", "run.copper-too-hot", "run.thicker-or-shorter",
    "run.only-plain-lighting", "run.lay-parallel-apart", "fuse.window-closed", "fuse.window-narrow",
    "fuse.no-rating-between", "copper.hot-at-lugs", "insulation.only-as-printed",
]  # fmt: skip


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_the_first_thicker_size_that_carries_the_load_is_offered():
    """By 33 CFR table 5 at 105 °C: 100 A ask for 125 A; 6 AWG carries 120 A, 4 AWG 160 A."""
    assert mended(SHEET, "fuse.window-closed", at("100 A"))["conductor"] == "4 AWG"


def test_a_run_of_the_maker_s_resistance_is_shortened_for_no_other_size_has_it():
    """By hand: 5 % over 10 m; 3 % over 6 m."""
    after = mended(SHEET, "run.drop-over-limit", by_maker(1, "3 %"))
    assert after["conductor"] == "4 AWG" and after["length"].m_as("m") == pytest.approx(6)


def test_a_drop_that_no_size_mends_is_mended_by_a_shorter_run():
    after = mended(SHEET, "run.drop-over-limit", {"length": "200 m", "conductor": "4/0 AWG"})
    assert after["length"].m_as("m") < 200


def test_a_current_beyond_every_size_is_split():
    """4/0 AWG carries 445 A at 105 °C, with a fuse of 400 A a load of 320 A: 900 A on three."""
    assert remedy(SHEET, "fuse.window-closed", at("900 A", "4/0 AWG"))


def test_cables_that_touch_are_laid_apart_unless_one_alone_is_then_too_thin():
    """1/0 AWG carries 285 A, four together 171 A: 140 A in each of two take 175 A."""
    thick = at("280 A", "1/0 AWG", parallel="2", bundled="2")
    assert mended(SHEET, "run.parallel-better-apart", thick)["bundled"].m == 1
    assert remedy(SHEET, "run.parallel-better-apart", CASES["run.parallel-better-apart"][0]) is None

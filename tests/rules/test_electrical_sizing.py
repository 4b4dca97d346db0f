"""Judgements on the conductor that a circuit needs: each fires on one side of its line only."""

import pytest

from tests.rules.judging import fires, mended, remedy

SHEET = "wire-size"
SHORT = {"length": "1 ft"}
NEC = {"rule_set": "NEC", "insulation": "75 C", "current": "20 A", "length": "1 ft"}

# 33 CFR 183.425 table 5 at 105 °C: 12 AWG 45 A, 8 AWG 80 A, 4/0 AWG 445 A; a fuse is rated 1.25
# times the load. Bundles: 0.7 for three together, counted from 50 V on only.
CASES = {
    "circuit.no-size-for-heat-nor-drop": (
        {"current": "400 A", "length": "100 m"}, {"current": "300 A", "length": "100 m"},
    ),
    # 356 A × 1.25 = 445 A; the largest fuse up to that is of 400 A, for 320 A
    "circuit.no-size-for-heat": (
        SHORT | {"current": "356.1 A"}, SHORT | {"current": "356 A"},
    ),
    # 107.2 mm² of copper at 60 °C: 30 A over 200 m and back are about 2.3 V
    "circuit.no-size-for-drop": ({"length": "200 m"}, {"length": "10 m"}),
    "circuit.no-fuse-fits": (SHORT | {"current": "320.1 A"}, SHORT | {"current": "320 A"}),
    # small cylinders are rated 600 V; 493 V are charged at 599.8 V, 494 V at 601 V (14.6 / 12)
    "circuit.no-family-of-its-voltage": (
        {"voltage": "494 V"}, {"voltage": "493 V"},
    ),
    "cable.bundle-by-prudence": (SHORT | {"bundled": "3"}, SHORT | {"bundled": "2"}),
    # 64 A are 0.8 of what 8 AWG carries: its copper gets to 30 + 75 × 0.64 = 78 °C, not 60 °C
    "circuit.warm-drop-over-limit": (
        {"current": "64 A", "length": "3.7 ft"}, {"current": "64 A", "length": "3.5 ft"},
    ),
    "circuit.one-alone-too-thin": (
        {"current": "200 A", "length": "2 ft", "parallel": "2"},
        {"current": "20 A", "length": "30 m", "parallel": "2"},
    ),
    # 12 AWG, 1.98 ohm/kft at 75 °C (NEC chapter 9 table 8), has 6.18 mΩ/m at 60 °C: 30 A lose 10 %
    # of 12 V over 3.24 m and back
    "run.drop-beyond-usual-limit": (
        {"limit": "50 %", "length": "3.3 m"}, {"limit": "50 %", "length": "3.2 m"},
    ),
    "run.only-plain-lighting": ({"limit": "9 %"}, {"limit": "3 %"}),
    # 34 A over 6 m and back keep within 3 % of 12 V on 2 AWG, over 3 m on 6 AWG
    "circuit.size-hardly-sold": (
        {"current": "34 A", "length": "6 m"}, {"current": "34 A", "length": "3 m"},
    ),
    "circuit.nec-joins-thick-ones": (NEC | {"parallel": "2"}, NEC),
    "run.parallel-must-be-alike": ({"parallel": "2"}, {"parallel": "1"}),
    "cable.mains-side": (NEC, SHORT),
    "cable.rules-for-boats": (SHORT, NEC),
    "cable.editions-differ": (NEC | {"insulation": "60 C"}, NEC),
    "fuse.place-on-mains": (NEC, SHORT),
    "fuse.place-at-source": (SHORT, NEC),
    "copper.strands-idle": (
        {"strands": "class 2"}, {"strands": "class 2", "series": "mm2"},
    ),
    "copper.gauge-reading-idle": (
        {"gauge_reading": "SAE", "series": "mm2"}, {"gauge_reading": "SAE"},
    ),
}  # fmt: skip


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_line_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


MENDED = [
    "circuit.no-size-for-heat", "circuit.no-size-for-drop", "circuit.no-fuse-fits",
    "circuit.warm-drop-over-limit",
]  # fmt: skip


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_run_with_no_size_for_the_drop_is_shortened_first():
    after = mended(SHEET, "circuit.no-size-for-drop", {"length": "200 m"})
    assert after["length"].m_as("m") < 200 and "voltage" not in after


def test_the_conductor_is_no_input_here_so_thicker_wire_is_no_remedy():
    assert remedy(SHEET, "insulation.only-as-printed", SHORT) is None

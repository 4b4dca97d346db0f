"""What stands against a wire or a fuse beside its rule set: marking, hot air, hot copper, lugs."""

import pytest

import calc
from calc.electrical.ampacity import RuleSet, Surroundings, table_ampacity
from calc.electrical.cable import cable
from calc.electrical.conductors import GaugeReading, conductor
from calc.electrical.protection import copper_warmth
from calc.units.covered import NotCovered
from tests.contract.samples import fine, those

BOTH = pytest.mark.parametrize("name", ["wire-size", "fuse-choice"])
AWG = {"gauge_reading": GaugeReading.AWG}
NEC = RuleSet.NEC


def laid(conductor="8 AWG", **change):
    plain = {
        "insulation": 105.0, "surroundings": Surroundings.OUTSIDE, "bundled": 2, "ambient": 30.0,
        "max_voltage": 14.6, "rule_set": RuleSet.CFR33, "gauge_reading": GaugeReading.AWG,
    }  # fmt: skip
    return cable(conductor=conductor, **{**plain, **change})


def size(**inputs):
    return calc.work("wire-size", {"length": "1 ft", **inputs})


def fuse(**inputs):
    return calc.work("fuse-choice", {"fault_current": "900 A", **inputs})


def test_a_cable_without_marking_bears_its_60_degree_figure_the_bundle_counted():
    """33 CFR 183.425 table 5: 8 AWG bears 55 A at 60 °C. Note 2: 0.6 for four."""
    assert laid().ampacity_at_60c_insulation == 55
    assert laid(bundled=4).ampacity_at_60c_insulation == pytest.approx(33)
    assert laid(ambient=60.0).ampacity_at_60c_insulation is None
    mains = laid(rule_set=NEC, insulation=75.0)
    assert mains.ampacity_at_60c_insulation is None


@pytest.mark.parametrize(("current", "said"), [("40 A", False), ("40.1 A", True)])
def test_a_marking_that_is_typed_is_not_questioned_but_what_rests_on_it_is_said(current, said):
    """8 AWG of 60 °C can carry 55 A (33 CFR 183.425 table 5); no fuse is made from 50 to 60 A."""
    answer = fuse(current=current, conductor="8 AWG", insulation="105 C")
    assert answer.verdict == "fine"
    assert ("insulation.only-as-printed" in answer.rules) is said


def test_a_size_that_60_degree_insulation_would_not_do_for_says_what_must_be_printed():
    """120 A asks for 150 A: 4 AWG can carry 160 A at 105 °C and 105 A at 60 °C (table 5)."""
    answer = size(current="120 A")
    assert answer["conductor"] == "4 AWG" and answer.verdict == "fine"
    printed = "insulation.only-as-printed"
    assert "105\xa0A" in next(one.text for one in answer.cautions if one.rule == printed)
    assert printed not in size(current="120 A", insulation="60 C").rules


@BOTH
def test_what_is_fine_is_so_for_the_insulation_the_air_and_the_terminals_that_are_typed(name):
    for _, answer in fine(name, 21):
        v = answer.values
        hot = v["rule_set"] != NEC and v["rating"] > 60
        if hot and (v["at_60"] is None or v["fuse"] > v["at_60"] * (1 + 1e-9)):
            printed = "insulation.nothing-unless-printed", "insulation.only-as-printed"
            assert set(printed) & set(answer.rules), "what rests on the marking is said"
        if v["rule_set"] != NEC:
            assert v["air"] <= 50
        assert v["warm"] <= (v["terminals"] or 90) * (1 + 1e-9)


@pytest.mark.parametrize("ask", [size, fuse], ids=["wire-size", "fuse-choice"])
@pytest.mark.parametrize(
    ("ambient", "caution", "remark"),
    [("30 C", False, False), ("40 C", False, True), ("50 C", False, True), ("51 C", True, True)],
)
def test_air_that_the_boats_rules_print_nothing_for_is_said(ask, ambient, caution, remark):
    """They print 30 °C, and 50 °C in an engine space for 105 °C insulation (33 CFR note 1)."""
    answer = ask(current="2 A", ambient=ambient, insulation="90 C")
    assert (answer.rule == "fuse.hot-air-not-printed") is caution
    assert ("cable.factor-not-printed" in answer.rules) is remark
    inside = ask(current="2 A", surroundings="inside engine space", insulation="105 C")
    assert "cable.factor-not-printed" not in inside.rules


@pytest.mark.parametrize("ask", [size, fuse], ids=["wire-size", "fuse-choice"])
def test_a_fuse_in_hot_air_is_said_to_open_below_its_rating(ask):
    warm = "fuse.warm-air-derates"
    assert warm not in ask(current="2 A", ambient="40 C").rules
    assert warm in ask(current="2 A", ambient="41 C").rules
    hot = ask(current="2 A", ambient="95 C", insulation="125 C")
    assert hot.verdict == "caution" and warm in hot.rules
    mains = ask(current="10 A", ambient="60 C", insulation="90 C", rule_set=NEC)
    assert mains.rule == "fuse.hot-air-derates"


def test_copper_rises_with_the_square_of_the_current():
    """By hand: at half of what it bears a wire of 105 °C in 30 °C air rises a quarter of 75 K."""
    at_half, at_most = (copper_warmth(laid(), amps) for amps in (40, 80))  # it can carry 80 A
    assert at_half.rise == pytest.approx(18.75) and at_half.warm == pytest.approx(48.75)
    assert at_most.rise == pytest.approx(75) and at_most.warm == pytest.approx(105)


@pytest.mark.parametrize("ask", [size, fuse], ids=["wire-size", "fuse-choice"])
def test_copper_hotter_than_lugs_and_fuse_holders_is_a_caution(ask):
    """18 to 8 AWG of 200 °C at 0.8 of what they bear: 30 + 170 × 0.64 is about 139 °C."""
    wire = {"conductor": "8 AWG"} if ask is fuse else {}
    answer = ask(current="80 A", insulation="200 C", **wire)
    assert answer.values["warm"] > 90 and answer.verdict == "caution"
    assert answer.rule == "copper.hot-at-lugs"
    assert "copper.hot-at-lugs" not in ask(current="2 A", insulation="105 C").rules


@BOTH
def test_no_remedy_asks_for_insulation_that_is_not_on_sale_as_cable(name):
    def rated(answer):
        return [one for one in answer["remedies"] if "insulation rated" in one]

    for _, answer in those(name, rated):
        assert not [one for one in rated(answer) if "125 °C" in one or "200 °C" in one]


@pytest.mark.parametrize(
    ("wire", "alone"),
    [({"conductor": "18 AWG"}, True), ({"conductor": "1 mm2", "insulation": "60 C"}, True),
     ({"conductor": "16 AWG", "gauge_reading": "SAE"}, True), ({"conductor": "16 AWG"}, False)],
)  # fmt: skip
def test_a_wire_too_thin_to_run_alone_is_for_a_sheath(wire, alone):
    """33 CFR 183.425(e): one on its own is 16 AWG (1.31 mm2); SAE 16 holds 2336 cmil, 1.18 mm2."""
    answer = fuse(current="3 A", **wire)
    assert answer.verdict == "fine"
    said = [one.text for one in answer.cautions if one.rule == "cable.only-in-sheath"]
    assert len(said) == alone
    if "gauge_reading" in wire:
        assert "1.18" in said[0]


def test_an_sae_gauge_bears_what_its_own_copper_allows():
    """SAE 8 holds 14 810 cmil, less than AWG 8 (16 510): the row of 10 AWG, 60 A at 105 °C."""
    assert fuse(conductor="8 AWG", gauge_reading="SAE")["ampacity"].m_as("A") == 60
    assert fuse(conductor="8 AWG")["ampacity"].m_as("A") == 80


@pytest.mark.parametrize(("volts", "law"), [("41 V", False), ("42 V", True), ("48 V", True)])
def test_a_bundle_is_the_law_s_by_the_highest_voltage_in_both_worksheets(volts, law):
    """33 CFR 183.435(b): 50 V. A bank of 41 V charges at 49.9 V, of 42 V at 51.1 V (14.6 / 12)."""
    answer = size(current="20 A", voltage=volts, bundled="4")
    charging = f"{answer.values['charging']!r} V"
    other = fuse(current="20 A", voltage=charging, bundled="4")
    for one in (answer, other):
        assert one.values["bundle_factor"] == 0.6
        assert ("cable.bundle-by-prudence" in one.rules) is not law


@pytest.mark.parametrize(
    ("terminals", "conductor"), [("", "12 AWG"), ("90 C", "12 AWG"), ("60 C", "10 AWG")]
)
def test_the_weakest_terminal_sets_the_limit_of_what_is_chosen(terminals, conductor):
    """33 CFR table 5 at 105 °C: 12 AWG 45 A, 10 AWG 60 A. 30 A warm them to 30 + 75 × 0.667² =
    63.3 °C and to 30 + 75 × 0.5² = 48.8 °C (the square law, our estimate).
    """
    answer = size(**({"terminals": terminals} if terminals else {}))
    assert answer["conductor"] == conductor
    judged = fuse(
        current="30 A", conductor="12 AWG", **({"terminals": terminals} if terminals else {})
    )
    assert (judged.rule == "copper.hot-at-lugs") is (terminals == "60 C")


def test_a_rise_is_shown_in_kelvin_whatever_units_were_typed():
    line = next(one for one in size(length="12 ft").working if one.symbol == "ΔT")
    assert line.value.endswith("K") and "°F" not in line.value


@pytest.mark.parametrize("name", ["22 AWG", "20 AWG", "0.5 mm2", "0.75 mm2"])
def test_below_the_table_a_wire_bears_its_share_of_the_first_row(name):
    """33 CFR 183.425 table 5: 18 AWG bears 20 A at 105 °C, 10 A at 60 °C."""
    share = conductor(name).area / conductor("18 AWG").area
    assert table_ampacity(name, insulation=105.0, **AWG) is None
    assert laid(name).ampacity == pytest.approx(20 * share)
    assert laid(name, insulation=60.0).ampacity == pytest.approx(10 * share)
    assert laid(name).ampacity_at_60c_insulation == pytest.approx(10 * share)
    assert laid(name).below_table and not laid().below_table
    for rules, insulation in ((NEC, 90.0), (RuleSet.ABYC, 105.0)):
        with pytest.raises(NotCovered, match="larger"):
            laid(name, rule_set=rules, insulation=insulation)


def test_only_what_is_thicker_than_the_last_row_is_beyond_it():
    assert laid("150 mm2").beyond_rows and laid("120 mm2").beyond_rows
    assert not laid("4/0 AWG").beyond_rows and not laid("95 mm2").beyond_rows

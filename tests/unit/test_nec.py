"""NEC 310.16, the rule set of the mains side: its columns, bands, bundles and small conductors."""

import pytest

import calc
from calc.electrical import nec
from calc.electrical.ampacity import RuleSet, Surroundings
from calc.electrical.cable import cable
from calc.electrical.conductors import GaugeReading, Series, conductors
from calc.tables import table
from calc.units.covered import NotCovered

NEC = RuleSet.NEC
INSIDE, OUTSIDE = Surroundings.INSIDE, Surroundings.OUTSIDE
GAUGES = [one.name for one in conductors() if one.series is Series.AWG]


def corrected(name="8 AWG", **change):
    plain = {
        "insulation": 75.0, "surroundings": OUTSIDE, "bundled": 2, "ambient": 30.0,
        "max_voltage": 120.0, "rule_set": NEC, "gauge_reading": GaugeReading.AWG,
    }  # fmt: skip
    return cable(conductor=name, **{**plain, **change})


@pytest.mark.parametrize(
    ("name", "columns"),
    [
        # NEC table 310.16 of 2023, 60, 75 and 90 °C, copper, as transcribed on a reference page
        ("14 AWG", (15, 20, 25)),
        ("12 AWG", (20, 25, 30)),
        ("10 AWG", (30, 35, 40)),
        ("6 AWG", (55, 65, 75)),
        ("2 AWG", (95, 115, 130)),
        ("1/0 AWG", (125, 150, 170)),
        ("4/0 AWG", (195, 230, 260)),
    ],
)
def test_a_wire_bears_the_figure_of_its_column(name, columns):
    found = tuple(corrected(name, insulation=rating).ampacity for rating in (60.0, 75.0, 90.0))
    assert found == columns


def test_other_insulation_is_refused_with_the_columns_there_are():
    with pytest.raises(calc.InputError, match="60 C, 75 C or 90 C under NEC") as error:
        calc.work("fuse-choice", {"rule_set": NEC, "insulation": "105 C"})
    assert error.value.field == "insulation"


def test_a_column_begins_where_the_table_begins_it():
    """18 and 16 AWG stand in the 90 °C column only."""
    assert corrected("18 AWG", insulation=90.0).ampacity == 14
    for name in ("18 AWG", "16 AWG", "1.5 mm2"):
        with pytest.raises(NotCovered, match="14 AWG") as gap:
            corrected(name, insulation=60.0)
        assert gap.value.parameter == "conductor"


def test_every_printed_factor_is_the_law_behind_it_at_the_top_of_its_band():
    """sqrt((Tc - Ta)/(Tc - 30)) to the two printed digits."""
    for row in table("ambient_nec").rows:
        rating, top = float(row["insulation_c"]), float(row["to_c"])
        law = ((rating - top) / (rating - 30)) ** 0.5
        assert float(row["factor"]) == pytest.approx(law, abs=0.005001)


@pytest.mark.parametrize(
    ("insulation", "air", "factor"),
    [(60, 30, 1), (60, 31, 0.91), (60, 35, 0.91), (60, 35.1, 0.82), (75, 46, 0.75), (90, 85, 0.29)],
)
def test_air_within_a_band_takes_the_factor_of_the_whole_band(insulation, air, factor):
    assert nec.ambient_factor(float(insulation), float(air)) == factor


@pytest.mark.parametrize("insulation", nec.RATINGS)
def test_cool_air_is_not_credited_though_the_table_would(insulation):
    assert nec.ambient_factor(insulation, -20.0) == nec.ambient_factor(insulation, 20.0) == 1


@pytest.mark.parametrize(("insulation", "last"), [(60.0, 55.0), (75.0, 70.0), (90.0, 85.0)])
def test_air_beyond_the_last_band_has_no_figure(insulation, last):
    assert nec.ambient_factor(insulation, last) > 0
    with pytest.raises(NotCovered, match=f"{last:g} °C") as gap:
        nec.ambient_factor(insulation, last + 0.1)
    assert gap.value.parameter == "ambient"


def test_an_engine_space_is_fifty_degrees_at_least_here_too():
    assert corrected(surroundings=INSIDE).ambient_factor == 0.75
    assert corrected(surroundings=INSIDE, ambient=60.0).ambient_factor == 0.58


@pytest.mark.parametrize(
    ("bundled", "share"),
    [(1, 1), (3, 1), (4, 0.8), (6, 0.8), (7, 0.7), (9, 0.7), (10, 0.5), (20, 0.5), (21, 0.45),
     (30, 0.45), (31, 0.4), (40, 0.4), (41, 0.35), (100, 0.35)],
)  # fmt: skip
def test_more_than_three_together_bear_less_at_any_voltage(bundled, share):
    """NEC 310.15(C)(1)."""
    assert nec.bundle_factor(bundled) == share
    assert corrected(bundled=bundled, max_voltage=12.0).bundle_factor == share


@pytest.mark.parametrize(
    ("name", "most"), [("14 AWG", 15), ("12 AWG", 20), ("10 AWG", 30), ("8 AWG", 50)]
)
def test_a_small_conductor_takes_no_larger_fuse_whatever_its_column_says(name, most):
    """NEC 240.4(D): 15, 20 and 30 A for copper of 14, 12 and 10 AWG.

    8 AWG is held to the 50 A of the 75 °C column by its terminals: NEC 110.14(C)(1).
    """
    found = corrected(name, insulation=90.0)
    assert found.ampacity >= found.largest_fuse == most


@pytest.mark.parametrize("insulation", nec.RATINGS)
def test_a_thicker_gauge_bears_no_less(insulation):
    found = []
    for name in GAUGES:
        try:
            found.append(corrected(name, insulation=insulation).largest_fuse)
        except NotCovered:
            assert not found, "no gap between the thinnest row and the thickest"
    assert found == sorted(found)


def test_a_fuse_above_the_60_degree_column_rests_on_marked_terminals():
    """NEC 110.14(C): 10 AWG bears 30 A by the 60 °C column; 8 AWG 40 A, by the 75 °C one 50 A."""
    given = {"rule_set": NEC, "insulation": "90 C", "fault_current": "500 A"}
    within = calc.work("fuse-choice", {**given, "conductor": "10 AWG", "current": "20 A"})
    beyond = calc.work("fuse-choice", {**given, "conductor": "8 AWG", "current": "39 A"})
    assert within["fuse"].m_as("A") <= 30 and within.verdict == "fine"
    assert 40 < beyond["fuse"].m_as("A") <= 50 and beyond.verdict == "caution"
    assert beyond.rule == "terminals.taken-as-cool"
    (told,) = (one.text for one in beyond.cautions if one.rule == "terminals.cool-column")
    assert "40\xa0A" in told


@pytest.mark.parametrize(
    ("name", "fuse"), [("6 AWG", 65), ("4 AWG", 85), ("1 AWG", 130), ("4/0 AWG", 230)]
)
def test_the_90_degree_column_is_for_corrections_and_the_75_degree_one_is_the_limit(name, fuse):
    """NEC 110.14(C)(1)(b): no more than the 75 °C ampacity of the size, whatever the insulation."""
    plain = corrected(name, insulation=90.0)
    assert plain.ampacity > plain.largest_fuse == fuse
    bundled = corrected(name, insulation=90.0, bundled=9)  # 70 % of the 90 °C column
    assert bundled.largest_fuse == pytest.approx(0.7 * plain.table_ampacity)


def test_a_fuse_beyond_the_75_degree_column_is_never_chosen():
    given = {"rule_set": NEC, "insulation": "90 C", "fault_current": "900 A"}
    thin = calc.work("fuse-choice", {**given, "conductor": "6 AWG", "current": "52.1 A"})
    assert thin["fuse"] is None and thin.verdict == "caution"
    thin = calc.work("fuse-choice", {**given, "conductor": "6 AWG", "current": "65.1 A"})
    assert thin["fuse"] is None and thin.verdict == "stop"
    main = {**given, "conductor": "4/0 AWG", "current": "190 A"}
    assert calc.work("fuse-choice", main).values["highest"] == 230


def test_a_thick_wire_and_a_bundle_say_nothing_of_cool_terminals():
    """1/0 AWG is beyond the terminals that (a) speaks of; a bundle does not warm a terminal."""
    given = {"rule_set": NEC, "insulation": "75 C", "voltage": "120 V", "length": "1 m"}
    thick = calc.work("wire-size", {**given, "current": "110 A"})
    assert thick["conductor"] == "1/0 AWG" and thick.verdict == "fine"
    bundle = calc.work("wire-size", {**given, "current": "60 A", "bundled": "45"})
    assert bundle["conductor"] == "4/0 AWG" and bundle.verdict == "fine"


def test_where_editions_differ_the_lower_figure_is_taken():
    """At 90 °C older editions print 110 A for 3 AWG and 150 A for 1 AWG, newer ones 115 and 145."""
    assert corrected("3 AWG", insulation=90.0).table_ampacity == 110
    assert corrected("1 AWG", insulation=90.0).table_ampacity == 145


def test_the_answer_for_a_small_wire_names_its_largest_fuse_and_no_law_for_boats():
    """NEC 240.4(D): 20 A on 12 AWG, though the 90 °C column has 30 A."""
    answer = calc.work("wire-size", {
        "current": "16 A", "length": "1 m", "voltage": "120 V", "rule_set": NEC,
        "insulation": "90 C",
    })  # fmt: skip
    assert answer["conductor"] == "12 AWG"
    assert "20\xa0A at most" in answer.sentence and "30" not in answer.sentence
    for name in ("wire-size", "fuse-choice"):
        mains = calc.work(name, {"rule_set": NEC, "insulation": "75 C"})
        assert "fuse.place-at-source" not in mains.rules

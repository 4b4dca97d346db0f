"""The conductor for a run suits drop, heat and a fuse; where none does, the answer helps."""

import re

import pytest

import calc
from calc.electrical.conductors import GaugeReading, Series, conductors
from calc.electrical.sizing import offered
from calc.render.size_chart import ladder_html
from calc.tables import table
from tests.contract.samples import those, until

AWG, SAE = GaugeReading.AWG, GaugeReading.SAE
NAMES = [one.name for one in conductors()]
SIZE = r"(?P<conductor>[\d./]+ (?:AWG|mm2))(?: with a fuse of (?P<fuse>[\d.]+) A)?"
REMEDIES = [
    rf"at most (?P<metres>[\d.]+) m \([\d.]+ ft\) one way: {SIZE}",
    rf"(?P<volts>\d+) V instead: the same power is [\d.e+]+ A, {SIZE}",
    rf"(?P<parallel>\d) conductors in parallel for plus and \d for minus, each {SIZE}",
    rf"insulation rated (?P<insulation>\d+) °C: {SIZE}",
    rf"the parallel cables spaced apart: (?P<apart>){SIZE}",
    rf"no more than (?P<bundled>2) loaded conductors together: {SIZE}",
    rf"a run (?P<surroundings>outside engine space|outside the engine space): {SIZE}",
    rf"(?P<runs>\d) separate runs, each for a load of [\d.e+-]+ A: {SIZE}",
]
NO_SINGLE_CHANGE = "no single change does:"


def ask(**inputs):
    return calc.work("wire-size", inputs)


def amps(answer, name):
    return answer[name].m_as("A")


def test_the_drop_decides_a_long_run_and_the_heat_a_short_one():
    """33 CFR 183.425 table 5 at 105 °C: 12 AWG bears 45 A, 14 AWG 35 A; 30 A asks for 37.5 A."""
    long, short = ask(length="12 ft"), ask(length="1 ft")
    assert long["decides"] == "the drop" and long["conductor"] == long["for_drop"]
    assert short["decides"] == "the heat" and short["conductor"] == "12 AWG"
    assert long["for_heat"] == short["for_heat"] == "12 AWG"
    assert long.verdict == "fine"
    assert short.verdict == "fine"
    # at 60 °C 12 AWG can carry 25 A, less than its fuse of 40 A
    assert "insulation.only-as-printed" in short.rules


def test_a_wire_must_bear_the_fuse_and_not_just_the_load():
    """80 A asks for 100 A. 8 AWG bears 80 A (table 5, 105 °C): enough for the load, for no fuse."""
    answer = ask(current="80 A", length="1 ft")
    assert answer["for_heat"] == "6 AWG"
    assert amps(answer, "fuse") == 100


def test_where_no_standard_fuse_fits_the_next_size_is_taken_and_the_reason_given():
    """In an engine space 18 AWG of 75 °C bears 10 A × √(25/45), 7.45 A, and 16 AWG 11.2 A.

    5.5 A asks for 6.9 A: fuses are made for 6 A and 7.5 A.
    """
    place = {"insulation": "75 C", "surroundings": "inside engine space"}
    answer = ask(current="5.5 A", length="1 ft", **place)
    made = {float(rating["rating_a"]) for rating in table("fuse_ratings").rows}
    assert not [rating for rating in made if 6.875 <= rating <= 7.45]
    assert answer["for_drop"] == answer["for_heat"] == "18 AWG"
    assert answer["decides"] == "a fuse that fits"
    assert amps(answer, "fuse") == 7.5
    assert "18 AWG suits drop and heat, but no fuse is made from" in answer.sentence


def test_a_size_without_a_row_in_the_rule_set_is_passed_over():
    """NEC 310.16 has no 18 AWG for 75 °C insulation: 1 A over a foot needs no more for the drop."""
    given = {"current": "1 A", "length": "1 ft", "insulation": "75 C"}
    answer = ask(**given, rule_set="NEC 310.16")
    assert ask(**given)["conductor"] == "18 AWG"
    assert answer["for_drop"] == "18 AWG" and answer["conductor"] == "14 AWG"


def test_a_size_that_shops_hardly_keep_is_passed_over_in_a_vehicle():
    """110 A over 6.5 ft would do with 3 AWG, which is sold as building wire and hardly else."""
    given = {"current": "110 A", "length": "6.5 ft"}
    for rules in ("33 CFR 183.425", "ABYC E-11"):
        answer = ask(**given, rule_set=rules)
        assert answer["for_drop"] == answer["conductor"] == "2 AWG"
    answer = ask(**given, rule_set="NEC 310.16", insulation="75 C")
    assert answer["for_drop"] == "3 AWG"


def test_an_sae_size_is_chosen_by_its_own_copper():
    """ABYC's pump: 6271 cmil needed; AWG 12 has 6530, SAE 12 5833 and SAE 10 9343."""
    given = {"current": "10 A", "length": "10.5 ft", "temperature": "23.5 C"}
    assert ask(**given)["for_drop"] == "12 AWG"
    assert ask(**given, gauge_reading="SAE")["for_drop"] == "10 AWG"
    assert "10 AWG (SAE)" in ask(**given, gauge_reading="SAE").sentence


def test_sizes_without_an_sae_area_are_not_offered_as_sae():
    every = {one.name for one in offered(Series.AWG, AWG, in_vehicles=False)}
    as_sae = {one.name for one in offered(Series.AWG, SAE, in_vehicles=False)}
    assert "3 AWG" in every and "3 AWG" not in as_sae
    assert "3 AWG" not in {one.name for one in offered(Series.AWG, AWG)}
    assert "3 AWG" in {one.name for one in offered(Series.AWG, AWG, "3 AWG")}
    assert offered(Series.AWG, AWG)[0].name == "18 AWG"
    assert offered(Series.METRIC, AWG)[0].name == "0.75 mm2"
    assert offered(Series.AWG, AWG, "22 AWG")[0].name == "22 AWG"


def test_class_2_cable_may_be_thinner_than_flex():
    """IEC 60228 at 20 °C: 4 mm2 has 4.95 ohm/km in class 5 and 4.61 in class 2.

    30 A over 1.25 m and back within 0.36 V allows 4.8 ohm/km, which lies between.
    """
    flex, stiff = (
        ask(series="mm2", length="1.25 m", temperature="20 C", strands=strands)
        for strands in ("class 5", "class 2")
    )
    assert (stiff["for_drop"], flex["for_drop"]) == ("4 mm2", "6 mm2")


def test_conductors_in_parallel_share_the_current_and_are_counted_as_a_bundle():
    """Two for plus and two for minus are four: ABYC E-11 leaves 0.6 of each."""
    answer = ask(current="200 A", length="2 ft", parallel="2", bundled="2", rule_set="ABYC E-11")
    assert answer.values["each"] == 100
    assert answer.values["need"] == 125
    assert answer.values["together"] == 4 and answer.values["bundle_factor"] == 0.6
    assert 125 <= amps(answer, "fuse") <= amps(answer, "ampacity")
    assert answer.verdict == "caution" and answer.rule == "circuit.one-alone-too-thin"
    assert "run.parallel-must-be-alike" in answer.rules


def test_nec_joins_only_thick_conductors_in_parallel():
    """NEC 310.10(H)(1): 1/0 AWG and larger; in mm² the next size is 70."""
    given = {"current": "40 A", "length": "1 ft", "rule_set": "NEC", "insulation": "75 C"}
    assert ask(**given, parallel="2")["conductor"] == "1/0 AWG"
    assert ask(**given, parallel="2", series="mm2")["conductor"] == "70 mm2"
    assert ask(**given)["conductor"] == "8 AWG"


def test_a_size_is_chosen_with_the_bundle_counted_below_50_volts_too():
    """30 A ask for 37.5 A. 0.6 of 60 A for 10 AWG is 36 A, of 80 A for 8 AWG 48 A (table 5)."""
    answer = ask(length="1 ft", bundled="6")
    assert answer["conductor"] == "8 AWG" and answer.verdict == "fine"
    assert amps(answer, "ampacity") == pytest.approx(48)
    assert "cable.bundle-by-prudence" in answer.rules


def test_twenty_amps_in_each_of_four_circuits_are_not_left_to_burn():
    """60 °C insulation, eight together: half of 25 A for 12 AWG, of 40 A for 10 AWG and of 55 A for
    8 AWG. The square law has 12 AWG at 30 + 30 × (20/12.5)² = 107 °C, 8 AWG at 45.9 °C.
    """
    answer = ask(current="20 A", length="1 ft", bundled="8", insulation="60 C")
    assert answer["conductor"] == "8 AWG" and amps(answer, "fuse") == 25
    assert answer.values["warm"] == pytest.approx(45.87, abs=0.01)


def test_conductors_in_parallel_that_each_lie_apart_are_no_bundle():
    given = {"current": "100 A", "length": "1 ft", "parallel": "2"}
    assert ask(**given, bundled="2").values["together"] == 4
    apart = ask(**given)
    assert apart.values["together"] == apart.values["bundle_factor"] == 1
    assert ask(**given, bundled="6").values["together"] == 6


def test_hot_copper_that_would_lose_too_much_is_a_caution():
    """At 0.8 of its ampacity copper of 105 °C stands near 30 + 75 × 0.64 = 78 °C, not at 60."""
    answer = ask(current="64 A", length="3.7 ft")
    assert answer["conductor"] == "8 AWG"
    assert answer.values["warm"] == pytest.approx(78)
    assert answer.values["drop"] < answer.values["allowed"] < answer.values["warm_drop"]
    assert answer.verdict == "caution" and "circuit.warm-drop-over-limit" in answer.rules


def test_18_awg_is_for_a_sheath():
    """33 CFR 183.425(e): a conductor installed separately is at least 16 AWG."""
    answer = ask(current="1 A", length="3 ft")
    assert answer["conductor"] == "18 AWG" and "cable.only-in-sheath" in answer.rules
    thicker = ask(current="1 A", length="9 m")
    assert thicker["conductor"] == "16 AWG" and "cable.only-in-sheath" not in thicker.rules
    assert ask(current="1 A", length="9 m").verdict == "fine"


def test_a_voltage_beyond_every_fuse_is_no_fine():
    answer = ask(voltage="500 V", current="10 A")
    assert answer["conductor"] and answer["fuse"] is None
    assert answer.verdict == "caution" and answer.rule == "circuit.no-family-of-its-voltage"


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"rule_set": "NEC"}, "insulation"),
        ({"rule_set": "ABYC", "insulation": "90 C"}, "insulation"),
        ({"rule_set": "ABYC", "bundled": "25"}, "bundled"),
        ({"ambient": "105 C"}, "ambient"),
        ({"rule_set": "NEC", "insulation": "60 C", "ambient": "56 C"}, "ambient"),
    ],
)
def test_what_a_rule_set_has_no_figure_for_is_refused_by_name(given, field):
    with pytest.raises(calc.InputError) as refusal:
        ask(**given)
    assert refusal.value.field == field


def test_every_fuse_is_a_standard_one_between_the_load_and_the_wire():
    ratings = {float(row["rating_a"]) for row in table("fuse_ratings").rows}
    ratings |= {float(row["rating_a"]) for row in table("standard_ratings_nec").rows}
    for texts, answer in those("wire-size", lambda answer: answer["fuse"] is not None, 200):
        v = answer.values
        assert v["fuse"] in ratings
        assert v["need"] * (1 - 1e-9) <= v["fuse"] <= v["ampacity"] * (1 + 1e-9), texts


def test_remedies_are_named_only_where_no_size_will_do_and_each_one_does_it():
    done = set()
    for texts, answer in until("wire-size", lambda: done == set(REMEDIES)):
        assert bool(answer["remedies"]) is (answer["conductor"] is None)
        for remedy in answer["remedies"]:
            if remedy.startswith(NO_SINGLE_CHANGE):
                assert len(answer["remedies"]) == 1
                continue
            found = next(filter(None, (re.fullmatch(p, remedy) for p in REMEDIES)), None)
            assert found, remedy
            done.add(found.re.pattern)
            again = ask(**{**texts, **_change(found.groupdict(), answer.values)})
            assert again["conductor"] == found["conductor"], f"{remedy} for {texts}"
            fuse = again["fuse"]
            assert (fuse is None) is (found["fuse"] is None)
            assert fuse is None or fuse.m_as("A") == float(found["fuse"])
    assert done == set(REMEDIES), "some remedy never came up"


def _change(parts, values):
    """Return the inputs that a remedy speaks of."""
    if parts.get("metres"):
        return {"length": f"{parts['metres']} m"}
    if volts := parts.get("volts"):
        current = values["current"] * values["voltage"] / float(volts)
        return {"voltage": f"{volts} V", "current": f"{current!r} A"}
    if parts.get("runs"):
        return {"current": f"{values['current'] / int(parts['runs'])!r} A"}
    if parts.get("apart") is not None:
        return {"bundled": "1"}
    if parts.get("surroundings"):
        return {"surroundings": "outside engine space"}
    if parts.get("insulation"):
        return {"insulation": f"{parts['insulation']} C"}
    return {name: parts[name] for name in ("parallel", "bundled") if parts.get(name)}


def test_the_picture_shows_the_chosen_size_between_thinner_and_thicker_ones_and_says_so():
    answer = ask()
    drawn = str(ladder_html(answer, answer.worksheet.picture))
    for name in ("10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG"):
        assert f">{name}</text>" in drawn
    said = re.search(r'aria-label="([^"]+)"', drawn)[1]
    assert "6 AWG is the size for it" in said and "by drop" in said and "by heat" in said
    for rung in answer.values["rungs"]:
        enough = rung.by_drop >= 30 and rung.by_heat >= 30
        assert enough is (NAMES.index(rung) >= NAMES.index("6 AWG"))


def test_the_picture_says_where_no_size_will_do():
    answer = ask(current="300 A", length="30 ft")
    assert "no size will do" in str(ladder_html(answer, answer.worksheet.picture))

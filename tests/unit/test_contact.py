"""A joint under current: resistance, heat, contact spots, and classes of temperature."""

import pytest

import calc
from calc.electrical import contact
from calc.tables import table
from calc.units.covered import NotCovered
from tests.contract.samples import answers


def ask(**inputs):
    return calc.work("joint-heat", inputs)


def said(answer) -> str:
    return " ".join(remark.text for remark in answer.cautions)


def test_half_the_voltage_per_kelvin_squared_is_the_published_lorenz_number_of_metals():
    """Sommerfeld's value, 2.44e-8 V²/K², as printed in handbooks."""
    lorenz = (contact.VOLTS_PER_KELVIN / 2) ** 2
    assert lorenz == pytest.approx(2.44e-8, abs=0.005e-8)


@pytest.mark.parametrize(
    ("drop", "metal", "spot"),
    [
        # T² = T0² + U²/(4 × 2.44e-8), by hand: from 300 K and 0.1 V, 438.7 K.
        (0.1, 26.85, 165.55),
        (0.0875, 60.0, 162.09),
    ],
)
def test_a_contact_spot_is_as_hot_as_the_relation_says(drop, metal, spot):
    assert contact.spot_temperature(drop=drop, metal=metal) == pytest.approx(spot, abs=0.15)


def test_the_softening_drop_brings_the_spot_to_the_softening_temperature():
    for metal in (0.0, 20.0, 60.0, 150.0):
        drop = contact.softening_drop(metal)
        spot = contact.spot_temperature(drop=drop, metal=metal)
        assert spot == pytest.approx(contact.SOFTENS, abs=1e-6)
    assert contact.softening_drop(20.0) == pytest.approx(0.112, abs=0.0005)  # by hand


def test_no_temperature_is_given_beyond_the_melting_point_of_copper():
    assert contact.spot_temperature(drop=0.40, metal=20.0) == pytest.approx(1040, abs=5)
    assert contact.spot_temperature(drop=0.42, metal=20.0) is None
    answer = ask(drop="300 mV", current="100 A", full_current="200 A")
    assert answer["spot"] is None and answer.verdict == "stop"


def test_a_rise_is_taken_to_full_current_as_iec_61439_prints_it_and_by_the_square():
    """Worked on a question-and-answer page: 102 K at 973 A is 105 K at 990 A, by power 0.61."""
    found = contact.rise_at_full(rise=102, current=973, full_current=990)
    assert found.lower == pytest.approx(105, abs=0.1)
    assert found.upper == pytest.approx(102 * (990 / 973) ** 2)
    assert found.upper > found.lower


def test_a_rise_at_less_than_forty_percent_of_full_load_is_not_taken_further():
    """A thermographer's check list: 40 % of load is the least."""
    assert contact.rise_at_full(rise=5, current=40, full_current=100) is not None
    assert contact.rise_at_full(rise=5, current=39.9, full_current=100) is None
    light = ask(drop="2 mV", current="39 A", full_current="100 A", good_drop="2 mV", rise="0.5 K")
    assert light.verdict == "caution"
    assert light.rule == "contact.temperature-at-light-load"


@pytest.mark.parametrize("row", table("thermal_severity").rows, ids=lambda r: " ".join(r.values()))
def test_a_printed_class_holds_at_both_its_printed_ends(row):
    numbers = [float(word) for word in row["printed"].split() if word.isdigit()]
    if row["printed"].startswith("over"):
        numbers = [numbers[0] + 1]
    if row["scale"] == "military" and len(numbers) == 2:
        numbers[1] -= 0.1  # this scale prints the end of a class again as the next one's start
    for number in numbers:
        over = "air" if row["over"] == "either" else row["over"].replace(" ", "-")
        found = contact.severity(row["scale"], over, number)
        assert (found.priority, found.printed) == (int(row["priority"]), row["printed"])


@pytest.mark.parametrize(
    ("over", "rise", "priority"),
    [
        ("like-joint", 3.1, 3), ("like-joint", 15.01, 1),
        ("air", 10.5, 3), ("air", 20.4, 2), ("air", 40.1, 1),
    ],
)  # fmt: skip
def test_what_falls_between_two_printed_classes_takes_the_more_severe(over, rise, priority):
    assert contact.severity("NETA", over, rise).priority == priority


def test_a_worse_rise_is_never_in_a_milder_class():
    for scale, over in (("NETA", "like-joint"), ("NETA", "air"), ("military", "air")):
        found = [contact.severity(scale, over, tenths / 10) for tenths in range(1, 1000)]
        order = [one.priority if one else 5 for one in found]
        assert order == sorted(order, reverse=True)


def test_the_scales_disagree_and_the_stricter_one_decides():
    """NETA: over 15 K between like parts is priority 1; the military scale puts 20 K last."""
    answer = ask(current="100 A", full_current="100 A", rise="20 K")
    assert answer.verdict == "stop"
    assert answer.values["severity"].startswith("priority 1")
    assert answer.values["military"].startswith("priority 4")
    assert "contact.scales-disagree" in answer.rules


def test_a_small_rise_at_small_load_is_a_large_one_at_full_load():
    """By hand: 3 K at 40 A is 18.75 K at 100 A by the square: priority 1."""
    answer = ask(drop="1 mV", current="40 A", full_current="100 A", rise="3 K")
    assert answer.values["rise_full"] == pytest.approx(18.75)
    assert answer.verdict == "stop"
    assert ask(drop="1 mV", current="40 A", full_current="40 A", rise="3 K").verdict == "caution"


def test_a_rise_measured_above_full_current_counts_as_measured():
    answer = ask(drop="1 mV", current="100 A", full_current="40 A", rise="16 K")
    assert answer.values["rise_full"] < 16
    assert answer.verdict == "stop"


@pytest.mark.parametrize(
    ("inputs", "verdict"),
    [
        # 10 mV at 100 A: 100 µΩ. As good as its like, it is judged by its heat at full current.
        ({"full_current": "100 A"}, "fine"),  # 1 W
        ({"full_current": "223 A"}, "fine"),  # 4.97 W
        ({"full_current": "224 A"}, "caution"),  # 5.02 W: NBSIR 76-1011, least heat of a glow
        ({"full_current": "500 A"}, "caution"),  # 25 W
        ({"full_current": "592 A"}, "stop"),  # 35.05 W: the most of a glow
        ({"full_current": "1001 A"}, "stop"),  # 100.1 mV
        ({"full_current": "500 A", "rise": "0.9 K", "current": "100 A"}, "caution"),
    ],
)
def test_a_joint_as_good_as_its_like_is_judged_by_heat_and_drop_at_full_current(inputs, verdict):
    texts = {"drop": "10 mV", "good_drop": "10 mV", "current": "100 A", **inputs}
    assert ask(**texts).verdict == verdict


@pytest.mark.parametrize(
    ("drop", "current", "good", "verdict"),
    [
        ("1 mV", "100 A", "", "fine"),  # 10 µΩ
        ("0.9 mV", "100 A", "", "fine"),  # the meter's last digit would be 10 µΩ
        ("2 mV", "150 A", "", "fine"),  # 13.3 µΩ
        ("13 mV", "130 A", "", "fine"),  # 100 µΩ
        ("13.1 mV", "130 A", "", "caution"),
        ("13.1 mV", "130 A", "13 mV", "fine"),
        ("13.1 mV", "130 A", "30 mV", "caution"),  # the other one is the worse, and too bad
        ("1 mV", "39 A", "1 mV", "caution"),  # less than a fifth of 200 A
        ("1 mV", "40 A", "1 mV", "fine"),
    ],
)
def test_a_joint_without_a_like_one_is_fine_within_its_range(drop, current, good, verdict):
    texts = {"drop": drop, "current": current, "full_current": "200 A"}
    assert ask(**texts, **({"good_drop": good} if good else {})).verdict == verdict


def test_a_small_terminal_is_not_scolded_for_the_resistance_that_its_kind_has():
    """Article on vehicle connectors: 4 mΩ for a small one; at 10 A that is 0.4 W."""
    texts = {"drop": "40 mV", "current": "10 A", "full_current": "10 A"}
    assert ask(**texts, probed="plug-in").verdict == "fine"
    assert ask(**texts).rule == "contact.beyond-any-like"
    assert ask(**texts, probed="unknown").rule == "contact.part-not-named"


@pytest.mark.parametrize(
    ("full_current", "reaches"), [("239 A", True), ("240 A", False), ("2000 A", False)]
)
def test_a_current_that_cannot_flow_through_the_joint_has_no_heat(full_current, reaches):
    """By hand: 5 V at 100 A is 50 mΩ, through which 12 V push 240 A."""
    answer = ask(drop="5 V", current="100 A", full_current=full_current)
    assert answer.verdict == "stop"
    assert (answer["full_heat"] is not None) is reaches
    assert (answer["full_drop"] is not None) is reaches
    assert answer.values["feeds"] == pytest.approx(240)


def test_hotter_metal_makes_spots_soften_sooner():
    """By hand with L = 2.44e-8: from 105 °C copper spots soften at 84 mV, from 60 °C at 101 mV."""
    texts = {"drop": "90 mV", "good_drop": "90 mV", "current": "200 A", "full_current": "200 A"}
    cool, hot = ask(**texts, temperature="60 C"), ask(**texts, temperature="105 C")
    assert cool.rule == "contact.scorches"  # 18 W
    assert hot.verdict == "stop"
    assert hot.rule == "contact.spots-soften"  # not: too hot by itself
    assert hot.values["softening"] == pytest.approx(0.0835, abs=0.0005)
    assert "contact.spots-soften" not in cool.rules


def test_a_loose_joint_s_next_steps_are_its_doublings():
    """By hand from 437.5 µΩ at 200 A: 87.5 mV and 17.5 W, then twice as much each time."""
    growth = contact.growth(resistance=437.5e-6, full_current=200, voltage=12)
    assert [one.factor for one in growth] == [1, 2, 4, 8]
    assert [one.heat for one in growth] == pytest.approx([17.5, 35, 70, 140])
    assert [one.drop for one in growth] == pytest.approx([0.0875, 0.175, 0.35, 0.7])
    lines = [str(line) for line in ask(drop="35 mV", current="80 A")["growth"]]
    assert "35" in lines[1] and "175" in lines[1] and "1.46" in lines[1]
    stuck = contact.growth(resistance=0.01, full_current=500, voltage=12)
    assert [one.heat is None for one in stuck] == [False, False, True, True]
    assert "too much for that current to flow" in str(
        ask(drop="1 V", current="100 A", full_current="500 A")["growth"][2]
    )


@pytest.mark.parametrize(
    ("function", "inputs", "listed"),
    [
        (contact.severity, ("NETA", "like joint", 5.0), "'like-joint' or 'air'"),
        (contact.severity, ("navy", "air", 5.0), "'NETA' or 'military'"),
    ],
)
def test_a_name_that_is_not_there_is_refused_with_those_that_are(function, inputs, listed):
    with pytest.raises(NotCovered, match=listed):
        function(*inputs)


def test_nothing_about_the_next_steps_pretends_to_know_when():
    line = next(line for line in ask().working if "as it loosens" in line.label)
    assert "How fast is not known" in line.text


def test_a_bad_reading_is_a_stop_with_the_figures_of_the_example():
    """By hand: 35 mV over 80 A is 437.5 µΩ; 2.8 W now, and at 200 A 6.25 times that."""
    answer = ask(drop="35 mV", current="80 A")
    assert answer["resistance"].m_as("microohm") == pytest.approx(437.5)
    assert answer["heat"].m_as("W") == pytest.approx(2.8)
    assert answer["full_heat"].m_as("W") == pytest.approx(17.5)
    assert answer.values["growth_left"] == pytest.approx(100 / 87.5)
    assert (answer.verdict, answer.rule) == ("stop", "contact.scorches")


def test_every_answer_warns_of_burns_and_of_a_live_bank():
    for _, answer in answers("joint-heat"):
        assert {"contact.no-fuse-sees-it", "contact.how-to-mend"} <= set(answer.rules)
        assert ("contact.leave-off" in answer.rules) is (answer.verdict == "stop")
    text = said(ask())
    assert "Burns and fire" in text and "isolator open" in text


def test_no_growth_is_told_of_a_part_that_cannot_pass_its_full_current():
    """By hand: 500 mV at 1 A are 0.5 Ω, through which 12 V push 24 A and never 50 A."""
    cable = {"probed": "cable", "conductor": "22 AWG", "length": "10 m"}
    reading = {"drop": "500 mV", "current": "1 A", "voltage": "12 V"}
    answer = ask(**cable, **reading, full_current="50 A")
    assert answer.rule == "contact.current-not-reached" and answer.values["growth_left"] is None
    assert ask(**cable, **reading, full_current="20 A").values["growth_left"] is not None

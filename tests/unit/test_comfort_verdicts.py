"""Where the verdicts of heat, air and water turn, and that what can hurt somebody is said."""

import pytest

import calc
from calc.comfort.battery_air import Place
from calc.comfort.flame import Alarm, Exhaust
from tests.contract.samples import answers, fine, until

FLAME = {"exhaust": "both outside", "alarm": "fitted and tested"}


def cautioned(answer) -> set[str]:
    """Return the rules that speak among an answer's cautions, which are never folded away."""
    return {said.rule for said in answer.cautions}


@pytest.mark.parametrize("name", ["heat-loss", "heater-night", "water-heater"])
def test_nothing_is_fine_beside_a_flame_that_was_not_looked_at(name):
    seen = set()
    for texts, answer in until(name, lambda: len(seen) == 9):
        if answer.values["flame"]:
            assert "flame.carbon-monoxide" in cautioned(answer), texts
            state = answer.values["exhaust"], answer.values["alarm"]
            seen.add(state)
            if state != (Exhaust.OUTSIDE, Alarm.FITTED):
                assert answer.verdict != "fine", texts
            if state[0] is Exhaust.INSIDE or state[1] is Alarm.MISSING:
                assert answer.verdict == "stop", texts
            if state[0] is Exhaust.INSIDE:
                assert "flame.exhaust-inside" in cautioned(answer)
    assert len(seen) == 9


def test_a_flame_shows_the_alarm_points_and_electric_heat_does_not():
    lit = calc.work("heater-night", FLAME)
    assert any("300 ppm: alarm within 3 min" in str(one) for one in lit["co_points"])
    assert calc.work("heater-night", {"fuel": "electric"})["co_points"] is None


def test_electric_heat_is_never_simply_fine():
    for texts, answer in answers("heater-night"):
        if answer.values["fuel"] == "electric":
            assert answer.verdict != "fine", texts
            assert answer["fuel_used"] is None


def test_a_bank_that_cannot_do_it_is_a_stop():
    """900 W for 9 h at 12.8 V are 633 Ah; half of 200 Ah is 100."""
    assert calc.work("heater-night", {"fuel": "electric"}).verdict == "stop"
    enough = calc.work("heater-night", {"fuel": "electric", "capacity": "1300 Ah"})
    assert enough.verdict == "caution"


@pytest.mark.parametrize(("altitude", "verdict"), [("1500 m", "fine"), ("1501 m", "caution")])
def test_thin_air_is_not_fine(altitude, verdict):
    assert calc.work("heater-night", {**FLAME, "altitude": altitude}).verdict == verdict


@pytest.mark.parametrize(
    ("heater", "verdict"), [("1350 W", "stop"), ("1600 W", "caution"), ("2500 W", "fine")]
)
def test_a_heater_must_hold_the_loss_its_margin_and_bare_ribs(heater, verdict):
    """The default van loses about 1.4 kW with one air change an hour; with margin 1.8 kW."""
    ask = {**FLAME, "air_changes": "1 per hour", "people": "0", "heater_output": heater}
    assert calc.work("heat-loss", ask).verdict == verdict


def test_a_heater_that_only_just_holds_is_not_fine():
    loss = calc.work("heat-loss")["loss"].m_as("W")
    just = calc.work("heat-loss", {**FLAME, "heater_output": f"{loss:.9f} W"})
    assert just.verdict == "caution"
    assert just["warm_up"] is None or just["warm_up"].m_as("hour") > 10


def test_fine_means_that_even_bare_ribs_are_held():
    for texts, answer in fine("heat-loss", 1):
        v = answer.values
        assert v["to_buy"] >= max(v["heater"], v["high"]) * (1 - 1e-9), texts
        assert v["flame"] and v["exhaust"] is Exhaust.OUTSIDE
        assert v["alarm"] is Alarm.FITTED and v["charge"] <= v["gives"]
        assert v["power"] >= 1.1 * v["loss"] * (1 - 1e-9)
        assert v["inside"] >= 16 and v["air_changes"] * 3600 >= 0.5 - 1e-9
        if v["heater_output"] is not None:
            assert v["heater_output"] >= v["to_buy"] * (1 - 1e-9)
            assert v["warm_up"] <= 4 * 3600


@pytest.mark.parametrize(
    ("inside", "rule"),
    [
        ("15.9 °C", "room.cold"),
        ("60 °F", "room.cold"),
        ("12 °C", "room.cold"),
        ("11.9 °C", "room.strains-heart"),
        ("16 °C", None),
    ],
)
def test_a_room_too_cold_for_sleep_is_not_fine(inside, rule):
    """Housing advice after WHO: 16 °C for the lungs, 12 °C for the heart; one of the two speaks."""
    answer = calc.work("heat-loss", {"inside": inside})
    assert answer.verdict == ("caution" if rule else "fine")
    assert cautioned(answer) & {"room.cold", "room.strains-heart"} == ({rule} - {None})


def test_frost_is_spoken_of():
    assert "water.freezes" in cautioned(calc.work("heat-loss", {"outside": "-0.1 C"}))
    assert "water.freezes" not in cautioned(calc.work("heat-loss", {"outside": "0 C"}))


def test_outside_must_be_colder_and_glass_no_more_than_the_walls():
    with pytest.raises(calc.InputError) as refusal:
        calc.work("heat-loss", {"outside": "18 C"})
    assert refusal.value.field == "outside"
    with pytest.raises(calc.InputError) as refusal:
        calc.work("heat-loss", {"glazing": "25 m2"})
    assert refusal.value.field == "glazing"


def test_the_same_van_in_feet_and_fahrenheit_loses_the_same():
    metric = calc.work(
        "heat-loss", {"length": "3.6576 m", "insulation": "25.4 mm", "outside": "-10 C"}
    )
    us = calc.work("heat-loss", {"length": "12 ft", "insulation": "1 in", "outside": "14 F"})
    for name in ("loss", "heater", "infiltration", "high"):
        assert us[name].m_as("W") == pytest.approx(metric[name].m_as("W"), rel=1e-9)
    assert "BTU/h" in us.shown["conduction"] and "BTU/h" not in metric.shown["conduction"]


def test_a_difference_in_fahrenheit_is_not_shifted_by_thirty_two():
    """64.4 °F to 14 °F is 50.4 °F of difference, 28 K; as a temperature 28 °C would be 82.4 °F."""
    answer = calc.work("heat-loss", {"inside": "64.4 F", "outside": "14 F"})
    assert answer.values["rise"] == pytest.approx(28, rel=1e-12)
    assert answer.shown["rise"].startswith("50.4")


def test_vents_of_just_the_size_asked_for_are_enough_and_smaller_ones_are_not():
    ask = {"rated_to": "60 C", "given_heat": "80 W"}
    area = calc.work("enclosure-airflow", ask)["vent_area"].m_as("cm**2")
    assert (
        calc.work("enclosure-airflow", {**ask, "vents": f"{area * 1.0001:.6f} cm2"}).verdict
        == "fine"
    )
    assert (
        calc.work("enclosure-airflow", {**ask, "vents": f"{area * 0.999:.6f} cm2"}).verdict
        == "caution"
    )


def test_a_bay_is_fine_only_with_air_that_is_there_and_output_that_is_whole():
    for texts, answer in fine("enclosure-airflow"):
        v = answer.values
        little = v["heat"] <= 15 * (1 + 1e-9)  # which goes through the walls, 1 K for each 3 W
        assert little or v["vents"] is not None or v["fan"] is not None, texts
        assert v["reached"] <= v["inside_limit"] * (1 + 1e-9) and v["output_left"] == 1
        assert v["reached"] <= 50 * (1 + 1e-9)
        blown = v["vents"] is not None and (v["fan"] or 0) <= 2 * v["vents"] * (1 + 1e-9)
        assert blown or (little and v["reached"] >= v["outside"] + v["heat"] / 3 * (1 - 1e-9))
    for _, answer in answers("enclosure-airflow"):
        if answer.values["outside"] >= answer.values["inside_limit"]:
            assert answer.verdict == "stop" and answer["airflow"] is None


def test_air_as_warm_as_the_limit_cannot_cool():
    answer = calc.work("enclosure-airflow", {"outside": "45 C"})
    assert answer.verdict == "stop"
    assert answer["airflow"] is None and answer["vent_area"] is None


@pytest.mark.parametrize("charging", ["boost", "float"])
@pytest.mark.parametrize("vents", ["", "1000 cm2"])
def test_vented_cells_in_the_living_space_are_a_stop_whatever_the_vents(charging, vents):
    answer = calc.work(
        "battery-air",
        {
            "chemistry": "flooded",
            "stands": "open in the living space",
            "charging": charging,
            "vents": vents,
        },
    )
    assert answer.verdict == "stop"


def test_a_battery_is_fine_only_boxed_vented_and_sized_for_boost():
    for texts, answer in fine("battery-air"):
        v = answer.values
        if v["chemistry"] == "LFP":
            assert v["management"] == "fitted", texts
            continue
        assert v["charging"] == "boost", texts
        assert v["stands"] is Place.BOXED and v["temperature"] <= 40
        assert v["vents"] >= v["opening"] * (1 - 1e-9) and v["gas"] >= v["table_current"]


def test_lithium_has_no_opening_and_its_fault_is_spoken_of():
    answer = calc.work("battery-air", {"chemistry": "LFP", "vents": "100 cm2"})
    assert answer["airflow"] is None and answer["opening"] is None
    assert answer.verdict == "fine" and "battery.lithium-kept-safe" in cautioned(answer)
    assert "battery.lithium-fault-vents-gas" in {note.rule for note in answer.notes}
    nobody = calc.work("battery-air", {"chemistry": "LFP", "management": "not known"})
    assert nobody.verdict == "caution"


def test_a_cooler_that_cannot_keep_up_is_a_stop_however_large_the_bank():
    answer = calc.work("cooling-day", {"basis": "heat load", "capacity": "5000 Ah"})
    assert answer.verdict == "stop"
    assert answer["duty_used"].m_as("percent") == 100


def test_cooling_is_fine_only_with_a_tenth_left_of_what_the_bank_gives():
    for texts, answer in fine("cooling-day"):
        v = answer.values
        assert v["charge"] <= 0.9 * v["gives"] * (1 + 1e-9), texts
        half = v["charge"] <= 0.5 * v["gives"] * (1 + 1e-9)
        assert half or "cooler.half-of-bank" in cautioned(answer)
        # no heavy load for any bank: half of its Ah in an hour at most
        assert v["current"] <= 0.5 * v["capacity"] / 3600 * (1 + 1e-9)
        assert answer.result.keeps_up
        assert v["heat_load"] is None or v["outside"] <= 35
        assert v["heat_load"] is not None or v["current"] * v["hours"] <= v["gives"] * (1 + 1e-9)
        assert v["duty_used"] <= 0.8 * (1 + 1e-9)
    for _, answer in answers("cooling-day"):
        assert "van.closed-in-sun-kills" in cautioned(answer)


def test_a_ratio_by_cop_and_by_eer_is_one_figure():
    cop = calc.work("cooling-day", {"efficiency_ratio": "3 COP"})["power"].m_as("W")
    eer = calc.work("cooling-day", {"efficiency_ratio": f"{3 * 3600 / 1055.056:.12f} EER"})
    assert eer["power"].m_as("W") == pytest.approx(cop, rel=1e-9)


@pytest.mark.parametrize(
    ("inputs", "verdict", "rule"),
    [
        ({"way": "shore", "power": "1801 W"}, "stop", "heater.beyond-shore-supply"),
        ({"way": "shore", "power": "1800 W"}, "caution", "heater.half-of-shore-supply"),
        ({"way": "shore", "power": "901 W"}, "caution", "heater.half-of-shore-supply"),
        ({"way": "shore", "power": "900 W"}, "fine", "water-heater.fine-without-bank"),
        ({"way": "engine", "to": "60 C"}, "caution", "water.scalds"),
        ({"way": "engine", "hours": "48 h"}, "caution", "water.stale"),
        ({"volume": "100 L"}, "stop", "draw.beyond-bank"),
        ({"power": "10 W"}, "stop", "water.never-hot"),
    ],
)
def test_hot_water_is_judged_by_supply_scalds_and_standing(inputs, verdict, rule):
    """By hand: 15 A at 120 V are 1800 W, and half of that 900."""
    answer = calc.work("water-heater", inputs)
    assert (answer.verdict, answer.rule) == (verdict, rule)


def test_cold_water_must_be_colder_than_hot():
    with pytest.raises(calc.InputError) as refusal:
        calc.work("water-heater", {"from": "45 C"})
    assert refusal.value.field == "to"


def test_a_loss_as_large_as_the_power_never_gets_hot():
    answer = calc.work("water-heater", {"power": "15 W", "loss": "15 W"})
    assert answer["time"] is None and answer["energy"] is None and answer["charge"] is None

"""A cold night: what the sheets must not promise of heater, fuel, bank and flame."""

import pytest

import calc
from calc.comfort import airflow, envelope
from tests.contract.samples import answers, fine

FLAME = {"exhaust": "both outside", "alarm": "fitted and tested"}
NIGHT = {**FLAME, "outside": "-10 C"}


def cautioned(answer) -> set[str]:
    """Return the rules that speak among an answer's cautions, which are never folded away."""
    return {said.rule for said in answer.cautions}


def test_a_heater_without_margin_is_not_fine():
    """Default van: about 1.4 kW lost."""
    bare = {**FLAME, "ribs": "0 %", "margin": "0 %"}
    loss = calc.work("heat-loss", bare)["loss"].m_as("W")
    for factor, verdict in ((1.0001, "caution"), (1.09, "caution"), (1.2, "fine")):
        ask = {**bare, "heater_output": f"{factor * loss:.6f} W"}
        assert calc.work("heat-loss", ask).verdict == verdict
    assert calc.work("heat-loss", bare).verdict == "caution"


def test_a_heater_that_takes_all_evening_is_not_fine():
    answer = calc.work("heat-loss", {**FLAME, "contents": "600 kg", "heater_output": "2.5 kW"})
    quick = calc.work("heat-loss", {**FLAME, "contents": "600 kg", "heater_output": "4 kW"})
    slow = calc.work("heat-loss", {**FLAME, "contents": "3000 kg", "heater_output": "2.5 kW"})
    assert (answer.verdict, quick.verdict, slow.verdict) == ("fine", "fine", "caution")
    assert slow.rule == "heater.slow-to-warm" and slow["warm_up"].m_as("hour") > 4


def test_the_bounds_lie_on_either_side_of_the_loss():
    for texts, answer in answers("heat-loss"):
        v = answer.values
        assert v["low"] <= v["loss"] * (1 + 1e-9) and v["loss"] <= v["high"] * (1 + 1e-9), texts


def test_cold_air_carries_more_than_the_round_figure():
    """CoolProp 8.0.0, dry air at 0 °C: 1.2931 kg/m³ and 1005.68 J/(kg·K)."""
    box = {"length": "2.5 m", "width": "2 m", "height": "2 m", "inside": "20 C", "outside": "0 C"}
    box |= {"air_changes": "1 per hour"}
    v = calc.work("heat-loss", box).values
    assert v["infiltration"] + v["denser"] == pytest.approx(
        1.2931 * 1005.68 * 10 / 3600 * 20, rel=1e-3
    )
    assert airflow.density(-10) * airflow.AIR_HEAT_BY_MASS > 1.1 * envelope.AIR_HEAT_BY_VOLUME
    assert v["loss"] == pytest.approx(v["conduction"] + v["infiltration"] + v["denser"])


def test_the_figures_of_insulation_are_the_highest_in_the_tables_we_saw():
    """EN 12524: foam rubber 0.06, polyethylene foam and foam from a can 0.05 W/(m·K)."""
    used = {row["material"]: float(row["used_w_mk"]) for row in envelope.materials().values()}
    assert used["closed-cell rubber foam"] == 0.06
    assert used["polyethylene foam"] == used["polyurethane foam"] == 0.05
    listed = calc.work("heat-loss")["materials"]
    assert {one.name for one in listed} == set(used)
    for one in listed:
        assert one.source and ("no source" in one.source or any(map(str.isupper, one.source)))


def test_a_night_at_ten_below_is_answered_in_one_page():
    """How big, how much diesel, how much charge, and is it safe: by heater-night's own sum."""
    answer = calc.work("heat-loss", NIGHT)
    loss = f"{answer.values['loss']!r} W"
    night = calc.work("heater-night", {**FLAME, "loss": loss})
    for name in ("fuel_used", "charge", "electric_charge", "bank_share"):
        assert answer.values[name] == pytest.approx(night.values[name], rel=1e-9)
    assert answer["co_points"] == night["co_points"] != []
    for figure in ("to_buy", "fuel_used", "charge"):  # the loss is the first number below it
        assert answer.shown[figure] in calc.work("heat-loss", {"outside": "-10 C"}).sentence
    assert {"flame.carbon-monoxide", "fuel.diesel-waxes"} <= cautioned(answer)
    alone = {"draw.heat-beyond-bank"}  # shown there as a share, here as a figure
    assert cautioned(night) - alone <= cautioned(answer)


def test_a_bank_that_cannot_run_the_heater_is_a_stop():
    assert calc.work("heat-loss", {**NIGHT, "capacity": "20 Ah"}).verdict == "stop"
    assert calc.work("heat-loss", {**NIGHT, "fuel": "electric"}).verdict == "stop"


def test_frozen_fuel_is_spoken_of():
    gas = {**FLAME, "fuel": "propane"}
    for outside, liquid in (("-30 C", True), ("-29.9 C", False)):
        cautions = cautioned(calc.work("heat-loss", {**gas, "outside": outside}))
        assert ("fuel.propane-stays-liquid" in cautions) is liquid
    for outside, waxy in (("-10 C", True), ("-9.9 C", False)):
        cautions = cautioned(calc.work("heat-loss", {**FLAME, "outside": outside}))
        assert ("fuel.diesel-waxes" in cautions) is waxy


@pytest.mark.parametrize(
    ("loss", "verdict"),
    [
        ("10 W", "fine"),
        ("800 W", "fine"),
        ("4 kW", "fine"),
        ("4001 W", "caution"),
        ("20 kW", "caution"),
    ],
)
def test_heat_that_no_van_s_heater_gives_is_not_fine(loss, verdict):
    assert calc.work("heater-night", {**FLAME, "loss": loss}).verdict == verdict


def test_one_start_is_counted_unless_told_otherwise():
    """By hand: 10 Wh at 12.8 V are 0.78 Ah."""
    one, none = (calc.work("heater-night", ask)["charge"] for ask in ({}, {"starts": "0"}))
    assert (one - none).m_as("A*h") == pytest.approx(10 / 12.8, rel=1e-9)


def test_warming_up_takes_the_heater_s_power_for_its_time_in_fuel_or_charge():
    """By hand: power over time is heat; 9.9478 kWh/L of diesel; a resistor turns all into heat."""
    oil = calc.work("heat-loss", NIGHT)
    heat = (oil["heater"] * oil["warm_up"]).m_as("kW*h")
    assert oil["warm_fuel"].m_as("L") == pytest.approx(heat / 9.9478 / 0.75, rel=1e-4)
    assert oil["warm_charge"].m_as("A*h") == pytest.approx(
        30 * oil["warm_up"].m_as("hour") / 12.8, rel=1e-9
    )
    bank = calc.work("heat-loss", {**NIGHT, "fuel": "electric", "efficiency": "80 %"})
    assert bank["warm_fuel"] is None
    assert bank["warm_charge"].m_as("A*h") == pytest.approx(heat * 1000 / 12.8 / 0.8, rel=1e-9)


def test_no_warming_up_is_claimed_of_a_heater_that_never_gets_there():
    weak = calc.work("heat-loss", {**NIGHT, "heater_output": "1000 W"})
    assert weak["warm_up"] is None and weak["warm_fuel"] is None and weak["warm_charge"] is None


def test_a_bank_that_is_empty_before_the_van_is_warm_is_a_stop():
    """A night of six minutes and hours of warming up before it."""
    short = {**NIGHT, "hours": "0.1 h", "contents": "350 kg", "capacity": "15 Ah"}
    short |= {"usable": "50 %", "air_changes": "1 per hour", "people": "0"}
    short |= {"heater_output": "2 kW"}
    answer = calc.work("heat-loss", short)
    assert answer["charge"].m_as("A*h") < 7.5 < answer["warm_charge"].m_as("A*h")
    assert answer.verdict == "stop" and answer.rule == "heater.warm-up-beyond-bank"
    for texts, other in fine("heat-loss", 1):
        v = other.values
        if v["heater_output"] is not None:
            assert v["charge"] + v["warm_charge"] <= v["gives"] * (1 + 1e-9), texts


SMALL = {**FLAME, "insulation": "80 mm", "floor_insulation": "80 mm", "ribs": "0 %"}


@pytest.mark.parametrize(
    ("fuel", "outside", "verdict"),
    [
        ("diesel", "-14.9 C", "fine"),
        ("diesel", "-15 C", "caution"),
        ("propane", "-29.9 C", "fine"),
        ("propane", "-30 C", "caution"),
        ("petrol", "-30 C", "fine"),
    ],
)
def test_a_night_in_which_the_fuel_itself_may_fail_is_not_fine(fuel, outside, verdict):
    answer = calc.work("heat-loss", {**SMALL, "fuel": fuel, "outside": outside})
    assert answer.verdict == verdict
    assert (answer.rule == "fuel.fails-in-cold") == (verdict == "caution")


@pytest.mark.parametrize(("outside", "there"), [("10 C", True), ("4 C", False)])
def test_heat_below_a_burner_s_lowest_step_is_spoken_of_on_both_sheets(outside, there):
    """A milder night is no worse for it: that is advice, and no caution."""
    answer = calc.work("heat-loss", {**FLAME, "outside": outside})
    loss = f"{answer.values['loss']!r} W"
    other = calc.work("heater-night", {**FLAME, "loss": loss})
    for one in (answer, other):
        assert ("heater.below-lowest-step" in one.rules) is there
        assert one.verdict == "fine"


def test_fresh_air_is_spoken_of_while_nobody_has_said_how_many_sleep():
    assert "room.fresh-air" in cautioned(calc.work("heat-loss", {**FLAME, "people": "0"}))
    aired = {**FLAME, "people": "1", "air_changes": "2 per hour"}
    assert "room.fresh-air" not in cautioned(calc.work("heat-loss", aired))


def test_a_reader_in_inches_sees_conductivity_in_inches():
    """0.04 W/(m·K) are 0.2773 BTU·in/(h·ft²·°F), by definition of the units."""
    from calc.__main__ import as_text

    text = as_text(calc.work("heat-loss", {"insulation": "1 in"})).partition("Working")[2]
    line = next(line for line in text.splitlines() if line.strip().startswith("U_w ="))
    assert "1\u00a0in ÷ 0.277" in line and "W/(m·K)" not in line

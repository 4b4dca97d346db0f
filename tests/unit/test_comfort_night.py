"""A cold night: what the sheets must not promise of heater, fuel, bank and flame."""

import pytest

import calc
from calc.comfort import airflow, envelope
from tests.contract.samples import answers

FLAME = {"exhaust": "both outside", "alarm": "fitted and tested"}
NIGHT = {**FLAME, "outside": "-10 C"}


def said(answer) -> str:
    """Return every caution of an answer as one text."""
    return " ".join(remark.text for remark in answer.cautions)


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
    assert "from cold" in slow.sentence and slow["warm_up"].m_as("hour") > 4


def test_the_bounds_lie_on_either_side_of_the_loss():
    for texts, answer in answers("heat-loss"):
        v = answer.values
        assert v["low"] <= v["loss"] * (1 + 1e-9) and v["loss"] <= v["high"] * (1 + 1e-9), texts


def test_cold_air_carries_more_than_the_round_figure():
    """CoolProp 8.0.0, dry air at 0 °C: 1.2931 kg/m³ and 1005.68 J/(kg·K)."""
    box = {"length": "2.5 m", "width": "2 m", "height": "2 m", "inside": "20 C", "outside": "0 C"}
    v = calc.work("heat-loss", box).values
    assert v["infiltration"] + v["denser"] == pytest.approx(
        1.2931 * 1005.68 * 10 / 3600 * 20, rel=1e-3
    )
    assert airflow.density(-10) * airflow.AIR_HEAT > 1.1 * envelope.AIR_HEAT
    assert v["loss"] == pytest.approx(v["conduction"] + v["infiltration"] + v["denser"])


def test_the_figures_of_insulation_are_the_highest_in_the_tables_we_saw():
    """EN 12524: foam rubber 0.06, polyethylene foam and foam from a can 0.05 W/(m·K)."""
    used = {name: float(row["used_w_mk"]) for name, row in envelope.materials().items()}
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
    for figure in ("loss", "heater", "fuel_used", "charge"):
        assert answer.shown[figure] in calc.work("heat-loss", {"outside": "-10 C"}).sentence
    assert "no smell" in said(answer) and "winter grade" in said(answer)
    alone = {"Electric heat would take"}  # shown there as a share, here as a figure
    shared = {r.text for r in night.cautions if r.text[:24] not in alone}
    assert shared <= {r.text for r in answer.cautions}


def test_a_bank_that_cannot_run_the_heater_is_a_stop():
    assert calc.work("heat-loss", {**NIGHT, "capacity": "20 Ah"}).verdict == "stop"
    assert calc.work("heat-loss", {**NIGHT, "fuel": "electric"}).verdict == "stop"


def test_frozen_fuel_is_spoken_of():
    gas = {**FLAME, "fuel": "propane"}
    assert "hardly turns to gas" in said(calc.work("heat-loss", {**gas, "outside": "-30 C"}))
    assert "hardly turns to gas" not in said(calc.work("heat-loss", {**gas, "outside": "-20 C"}))
    assert "winter grade" not in said(calc.work("heat-loss", {**FLAME, "outside": "-9 C"}))


@pytest.mark.parametrize(
    ("loss", "verdict"),
    [
        ("10 W", "caution"),
        ("799 W", "caution"),
        ("800 W", "fine"),
        ("4 kW", "fine"),
        ("4001 W", "caution"),
        ("20 kW", "caution"),
    ],
)
def test_heat_that_no_van_s_heater_gives_is_not_fine(loss, verdict):
    assert calc.work("heater-night", {**FLAME, "loss": loss}).verdict == verdict


def test_one_start_is_counted_unless_told_otherwise():
    """By hand: 10 W·h at 12.8 V are 0.78 A·h."""
    one, none = (calc.work("heater-night", ask)["charge"] for ask in ({}, {"starts": "0"}))
    assert (one - none).m_as("A*h") == pytest.approx(10 / 12.8, rel=1e-9)

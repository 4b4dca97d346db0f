"""Colder, hotter, thinner, longer, weaker: whatever gets worse never gets a better verdict."""

from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.worksheet.work import Worksheet
from tests.properties.inputs import SEEDS, text_for, tried, valid, worked

ORDER = ("fine", "caution", "stop")
LESS_IS_WORSE = {
    "heat-loss": (
        "outside",
        "insulation",
        "floor_insulation",
        "lining",
        "heater_output",
        "capacity",
    ),
    "heater-night": ("capacity", "usable"),
    "cooling-day": ("capacity", "usable"),
    "battery-air": ("vents",),
    "enclosure-airflow": ("vents", "height", "rated_to"),
    "shore-charge": ("supply_limit", "night"),
    "alternator-charge": ("alternator", "hot_share"),
    "water-heater": ("capacity", "usable"),
    "panel-string": ("cold",),
    "converter": ("rated", "input_high", "efficiency"),
}
MORE_IS_WORSE = {
    "heat-loss": ("glazing_u", "thermal_bridge", "hours", "altitude", "people"),
    "heater-night": ("loss", "hours", "draw", "altitude", "starts"),
    "cooling-day": ("hours", "sun", "outside", "people", "devices", "duty"),
    "battery-air": ("capacity", "cells", "temperature"),
    "enclosure-airflow": ("outside", "throughput", "throughput_2", "derating"),
    "shore-charge": ("other_load",),
    "alternator-charge": ("vehicle_load", "joint_resistance", "ambient"),
    "water-heater": ("loss", "hours"),
    "panel-string": ("hot_air", "parallel"),
    "converter": ("fault_current", "highest"),
}
CASES = [
    (sheet, field, worse)
    for worse, table in (("less", LESS_IS_WORSE), ("more", MORE_IS_WORSE))
    for sheet, fields in table.items()
    for field in fields
]
# What has to be known for the one to be worse than the other
FIXED = {
    ("heat-loss", "heater_output"): {},
    ("battery-air", "vents"): {},
    ("cooling-day", "duty"): {"basis": "duty"},
    ("alternator-charge", "vehicle_load"): {"wanted": ""},
    ("alternator-charge", "joint_resistance"): {"method": "charger", "wanted": ""},
    ("alternator-charge", "ambient"): {"wanted": ""},
}


@st.composite
def near_sane(draw: st.DrawFn, sheet: Worksheet, **fixed: str) -> dict[str, str]:
    """Draw a van that is as usual but for a few fields: where all is drawn, all is a stop."""
    chance = Random(draw(SEEDS))
    fields = chance.sample(sheet.fields, chance.randint(0, min(4, len(sheet.fields))))
    return {field.id: text_for(field, chance) for field in fields} | fixed


@pytest.mark.parametrize(("name", "field", "worse"), CASES)
@given(data=st.data())
@tried(20)
def test_what_gets_worse_never_gets_a_better_verdict(name, field, worse, data):
    sheet = calc.find(name)
    one = sheet.field(field)
    texts = data.draw(near_sane(sheet, **FIXED.get((name, field), {})))
    drawn = [data.draw(valid(one)) for _ in range(2)]
    low, high = sorted(drawn, key=lambda text: one.read(text).value)
    found = [worked(name, {**texts, field: text}) for text in (low, high)]
    assume(None not in found)
    if worse == "less":
        found.reverse()
    better, bad = found
    assert ORDER.index(bad.verdict) >= ORDER.index(better.verdict), (
        f"{better.verdict} by {better.rule}, then {bad.verdict} by {bad.rule}"
    )


@pytest.mark.parametrize("name", ["shore-charge", "alternator-charge"])
@pytest.mark.parametrize("chemistry", ["LFP", "AGM", "gel", "flooded"])
@given(data=st.data())
@tried(15)
def test_a_colder_bank_is_never_charged_with_a_better_verdict(name, chemistry, data):
    sheet = calc.find(name)
    texts = data.draw(near_sane(sheet, chemistry=chemistry))
    cold, mild = sorted(data.draw(st.floats(-30, 21)) for _ in range(2))
    found = [worked(name, {**texts, "temperature": f"{t:.6f} °C"}) for t in (mild, cold)]
    assume(None not in found)
    better, bad = found
    assert ORDER.index(bad.verdict) >= ORDER.index(better.verdict)


@given(data=st.data(), smaller=st.floats(0.1, 1))
@tried(60)
def test_a_bank_of_less_resistance_on_a_relay_is_never_judged_better(data, smaller):
    """By Ohm's law it takes more, of the same alternator and through the same cable."""
    sheet = calc.find("alternator-charge")
    fixed = {"method": "relay", "wanted": ""}
    texts = data.draw(near_sane(sheet, **fixed))
    ohms = data.draw(st.floats(1e-3, 1))
    found = [
        worked("alternator-charge", {**texts, "bank_resistance": f"{r:.9f} ohm"})
        for r in (ohms, max(ohms * smaller, 1e-4))
    ]
    assume(None not in found)
    better, bad = found
    assert ORDER.index(bad.verdict) >= ORDER.index(better.verdict)
    if better["initial_current"] is not None:
        assert bad["initial_current"] >= better["initial_current"] * (1 - 1e-9)


@pytest.mark.parametrize("chemistry", ["LFP", "AGM", "gel", "flooded"])
@given(data=st.data(), larger=st.floats(1, 20))
@tried(20)
def test_a_larger_bank_has_less_resistance_and_lithium_less_than_lead_acid(data, larger, chemistry):
    ask = {"method": "relay", "chemistry": chemistry, "bank_voltage": "12.9 V"}
    capacity = data.draw(st.floats(20, 900))
    small, large = (
        calc.work("alternator-charge", {**ask, "capacity": f"{c:.6f} Ah"})
        for c in (capacity, capacity * larger)
    )
    assert large["inside"] <= small["inside"] * (1 + 1e-9)
    lithium = calc.work(
        "alternator-charge", {**ask, "chemistry": "LFP", "capacity": f"{capacity:.6f} Ah"}
    )
    assert lithium["inside"] <= small["inside"] * (1 + 1e-9)


@pytest.mark.parametrize("method", ["relay", "charger"])
@pytest.mark.parametrize("fused", ["starter-battery-only", "house-bank-only", "no-fuse"])
@given(data=st.data())
@tried(10)
def test_a_run_between_two_batteries_that_lacks_a_fuse_is_a_stop_whatever_else(method, fused, data):
    sheet = calc.find("alternator-charge")
    answer = worked(sheet.id, data.draw(near_sane(sheet, method=method, fused=fused)))
    assume(answer is not None)
    assert answer.verdict == "stop" and "run.fused-at-one-end" in answer.rules

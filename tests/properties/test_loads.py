"""What must hold of every appliance, lamp and inverter, whichever figures are typed."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

ROUTE = calc.find("appliance-route")
DIM = calc.find("light-dimming")
SIZE = calc.find("inverter-size")
ORDER = {
    "hours_on": "ac_charge",
    "idle": "ac_charge",
    "ac_duty": "ac_charge",
    "dc_duty": "dc_charge",
}


def two(data, sheet, field):
    """Return two answers that differ in one field alone, the smaller figure first."""
    texts = data.draw(inputs_of(sheet))
    drawn = [data.draw(valid(sheet.field(field))) for _ in range(2)]
    drawn.sort(key=lambda text: sheet.field(field).read(text).value)
    answers = [worked(sheet.id, {**texts, field: text}) for text in drawn]
    assume(None not in answers)
    return answers


@given(st.data(), st.sampled_from(sorted(ORDER)))
@tried(150)
def test_more_hours_more_idling_and_more_running_never_take_less(data, field):
    low, high = two(data, ROUTE, field)
    assert low.values[ORDER[field]] <= high.values[ORDER[field]] * SLACK


@given(st.data())
@tried(150)
def test_what_each_route_takes_and_their_difference_agree(data):
    answer = worked("appliance-route", data.draw(inputs_of(ROUTE)))
    assume(answer is not None)
    v = answer.values
    difference = (v["extra_charge"] or 0) - (v["spared_charge"] or 0)
    size = max(v["ac_charge"], v["dc_charge"])
    assert v["ac_charge"] - v["dc_charge"] == pytest.approx(difference, abs=1e-9 * size)
    assert v["idle_charge"] <= v["ac_charge"] * SLACK


@given(st.data())
@tried(150)
def test_brighter_never_takes_less_and_never_seems_darker(data):
    low, high = two(data, DIM, "level")
    if low.values["seen"] is not None:
        assert low.values["dimmed_charge"] <= high.values["dimmed_charge"] * SLACK
        assert low.values["seen"] <= high.values["seen"] * SLACK
        parts = high.values["dimmed_charge"] + high.values["saved_charge"]
        assert parts == pytest.approx(high.values["full_charge"], rel=1e-9)
    assert low.values["dimmer_rating"] == high.values["dimmer_rating"]


@given(st.data())
@tried(150)
def test_a_lower_voltage_never_asks_less_current(data):
    low, high = two(data, SIZE, "lowest_voltage")
    for name in ("dc_current", "surge_current"):
        assert low.values[name] >= high.values[name] / SLACK


@given(st.data())
@tried(150)
def test_the_surge_is_never_less_than_what_runs_and_a_load_that_waits_never_asks_more(data):
    answer = worked("inverter-size", data.draw(inputs_of(SIZE)))
    assume(answer is not None)
    v = answer.values
    assert v["surge_rating"] >= v["continuous"] / SLACK >= v["running"] / SLACK**2
    if v["staggered"] is not None:
        assert v["staggered"] <= v["continuous"] * SLACK
        assert v["staggered_current"] <= v["dc_current"] * SLACK

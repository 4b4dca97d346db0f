"""What must hold of every bank's size, gauge and long stand, whichever figures are typed."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

SIZE, STAND, GAUGE = (calc.find(name) for name in ("bank-size", "standby-drain", "bank-gauge"))


def pair(data, sheet, field, texts):
    """Return the answers for a lower and a higher value of one field, or reject the draw."""
    one = sheet.field(field)
    drawn = sorted((data.draw(valid(one)) for _ in range(2)), key=lambda text: one.read(text).value)
    found = [worked(sheet.id, {**texts, field: text}) for text in drawn]
    assume(None not in found)
    return found


@pytest.mark.parametrize("field", ["daily_energy", "days", "ageing"])
@given(data=st.data())
@tried(60)
def test_more_use_more_days_and_more_ageing_never_make_a_smaller_bank(field, data):
    texts = data.draw(inputs_of(SIZE))
    less, more = pair(data, SIZE, field, texts)
    for name in ("capacity", "units"):
        assert more.values[name] >= less.values[name] / SLACK


@pytest.mark.parametrize("field", ["usable", "temperature"])
@given(data=st.data())
@tried(60)
def test_using_more_of_it_and_warmth_never_make_a_larger_bank(field, data):
    texts = data.draw(inputs_of(SIZE))
    less, more = pair(data, SIZE, field, texts)
    assert more.values["capacity"] <= less.values["capacity"] * SLACK


@pytest.mark.parametrize("field", ["drain", "self_discharge", "temperature", "to_state"])
@given(data=st.data())
@tried(60)
def test_more_drain_loss_warmth_or_reserve_never_let_it_stand_longer(field, data):
    texts = data.draw(inputs_of(STAND))
    less, more = pair(data, STAND, field, texts)
    assert more.values["days"] <= less.values["days"] * SLACK


@given(data=st.data())
@tried(75)
def test_a_stand_is_fine_only_where_it_lasts_and_nothing_speaks_against_it(data):
    answer = worked("standby-drain", data.draw(inputs_of(STAND)))
    assume(answer is not None and answer.verdict == "fine")
    values = answer.values
    assert values["away"] is None or values["shortest"] >= values["away"] / SLACK
    assert values["from_state"] > values["to_state"]
    assert values["to_state"] >= (0.5 if answer.result.bank.lead_acid else 0.1) / SLACK
    if answer.result.bank.lead_acid and values["coldest"] is not None:
        assert values["coldest"] > values["freezes"]


@pytest.mark.parametrize("field", ["state", "temperature"])
@given(data=st.data())
@tried(60)
def test_fuller_and_warmer_never_last_shorter(field, data):
    texts = {**data.draw(inputs_of(GAUGE)), "current": f"{-data.draw(st.floats(0.01, 900))!r} A"}
    less, more = pair(data, GAUGE, field, texts)
    for name in ("time", "to_floor"):
        if None not in (less.values[name], more.values[name]):
            assert more.values[name] >= less.values[name] / SLACK


@given(data=st.data(), factor=st.floats(1, 50))
@tried(60)
def test_a_larger_load_never_lasts_longer_and_never_gives_more(data, factor):
    texts = data.draw(inputs_of(GAUGE))
    draw = data.draw(st.floats(0.01, 40))
    less, more = (
        worked("bank-gauge", {**texts, "current": f"{-i!r} A"}) for i in (draw, draw * factor)
    )
    assume(less is not None and less.values["time"] is not None)
    assert more.values["time"] <= less.values["time"] * SLACK
    assert more.values["time"] * draw * factor <= less.values["time"] * draw * SLACK


@given(data=st.data())
@tried(75)
def test_a_gauge_is_fine_only_where_the_voltage_is_silent_by_choice_or_agrees(data):
    answer = worked("bank-gauge", data.draw(inputs_of(GAUGE)))
    assume(answer is not None and answer.verdict == "fine")
    values = answer.values
    if values["monitor"] != "counts":
        assert values["taken_state"] == values["says_low"]
    elif values["reading"] is not None:
        assert values["why"] is None
        assert values["says_low"] / SLACK <= values["state"] <= values["says_high"] * SLACK
    assert not (
        values["current"] > 0 and values["chemistry"] == "LFP" and values["temperature"] < 0
    )
    assert values["to_floor"] is None or values["to_floor"] > 0

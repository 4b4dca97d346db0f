"""What must hold of every run and every fuse, whichever figures are typed."""

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.conductors import conductor, conductors, series_of
from calc.fields import Quantity
from calc.tables import table
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

DROP = calc.find("wire-drop")
FUSE = calc.find("fuse-choice")
SIZES = st.sampled_from([one.name for one in conductors()])


def two_of(sheet, field, draw):
    """Draw two texts of one field and return them with the smaller value first."""
    assert isinstance(sheet.field(field), Quantity)
    texts = [draw(valid(sheet.field(field))) for _ in range(2)]
    return sorted(texts, key=lambda text: sheet.field(field).read(text).value)


@given(st.data(), SIZES)
@tried(250)
def test_thicker_wire_never_drops_more(data, size):
    texts = data.draw(inputs_of(DROP, conductor=size))
    assume("maker_resistance" not in texts)
    series = series_of(size)
    thicker = data.draw(st.sampled_from([o for o in series if o.area >= conductor(size).area]))
    thin, thick = DROP.work(texts), DROP.work({**texts, "conductor": thicker.name})
    assert thick.values["drop"] <= thin.values["drop"]
    assert thick.values["longest_run"] >= thin.values["longest_run"]
    assert thick.values["loss"] <= thin.values["loss"]


@given(st.data(), st.sampled_from(["length", "current", "temperature"]))
@tried(300)
def test_a_longer_run_a_larger_current_and_hotter_copper_never_drop_less(data, field):
    texts = data.draw(inputs_of(DROP))
    less, more = two_of(DROP, field, data.draw)
    first, second = (DROP.work({**texts, field: text}) for text in (less, more))
    assert second.values["drop"] >= first.values["drop"] / SLACK
    assert second.values["resistance"] >= first.values["resistance"] / SLACK


@given(st.data())
@tried(250)
def test_what_the_supply_gives_reaches_the_load_or_warms_the_wire(data):
    """Energy is kept: supply = load + heat."""
    answer = DROP.work(data.draw(inputs_of(DROP)))
    v = answer.values
    assume(v["load_voltage"] is not None)
    supplied = v["voltage"] * v["current"]
    assert abs(supplied - v["load_voltage"] * v["current"] - v["loss"]) <= 1e-9 * supplied


@given(st.data())
@tried(250)
def test_the_size_that_is_named_keeps_within_the_limit_and_the_next_thinner_does_not(data):
    texts = data.draw(inputs_of(DROP))
    texts.pop("maker_resistance", None)
    answer = DROP.work(texts)
    named = answer["smallest_conductor"]
    series = [one.name for one in series_of(answer.values["conductor"])]

    def within(size):
        values = DROP.work({**texts, "conductor": size}).values
        return values["drop"] <= values["allowed"] * SLACK

    if named is None:
        assert not within(series[-1])
    else:
        assert within(named)
        place = series.index(named)
        assert place == 0 or not within(series[place - 1])


@given(st.data())
@tried(250)
def test_a_run_as_long_as_the_longest_meets_the_limit(data):
    texts = data.draw(inputs_of(DROP))
    longest = DROP.work(texts).values["longest_run"]
    assume(0.01 <= longest <= 100)
    values = DROP.work({**texts, "length": f"{longest!r} m"}).values
    assert abs(values["drop"] - values["allowed"]) <= 1e-9 * values["allowed"]


@given(st.data())
@tried(400)
def test_a_fuse_lies_between_the_load_and_the_wire_and_every_family_suits_and_offers_it(data):
    answer = worked("fuse-choice", data.draw(inputs_of(FUSE)))
    assume(answer is not None)
    v = answer.values
    assert v["lowest"] >= v["current"]
    assert v["highest"] <= v["table_ampacity"] * SLACK
    assert (answer["fuse"] is None) is (answer["families"] == [])
    if v["fuse"] is None:
        assert answer.verdict == "stop"
        return
    assert v["lowest"] / SLACK <= v["fuse"] <= v["highest"] * SLACK
    for family in answer["families"]:
        name = family.removesuffix(" (from memory)")
        ratings = {float(r["rating_a"]) for r in table("fuse_ratings").rows if r["family"] == name}
        assert v["fuse"] in ratings
        assert any(
            float(row["dc_voltage_v"]) >= v["voltage"] / SLACK
            and float(row["interrupting_a"]) >= v["fault_current"] / SLACK
            for row in table("fuse_families").rows
            if row["family"] == name
        )


@given(st.data(), st.sampled_from(["ambient", "bundled", "voltage"]))
@tried(300)
def test_hotter_air_more_wires_together_or_more_volts_never_let_a_wire_bear_more(data, field):
    texts = data.draw(inputs_of(FUSE))
    less, more = two_of(FUSE, field, data.draw)
    first, second = (worked("fuse-choice", {**texts, field: text}) for text in (less, more))
    assume(first is not None and second is not None)
    assert second.values["ampacity"] <= first.values["ampacity"] * SLACK


@given(st.data())
@tried(200)
def test_an_engine_space_never_lets_a_wire_bear_more(data):
    texts = data.draw(inputs_of(FUSE))
    outside, inside = (
        worked("fuse-choice", {**texts, "surroundings": f"{place} engine space"})
        for place in ("outside", "inside")
    )
    assume(None not in (outside, inside))
    assert inside.values["ampacity"] <= outside.values["ampacity"] * SLACK


@given(st.data(), SIZES)
@tried(250)
def test_thicker_wire_never_bears_less(data, size):
    texts = data.draw(inputs_of(FUSE, conductor=size))
    thicker = data.draw(
        st.sampled_from([o for o in series_of(size) if o.area >= conductor(size).area])
    )
    both = [worked("fuse-choice", {**texts, "conductor": name}) for name in (size, thicker.name)]
    assume(None not in both)
    assert both[1].values["ampacity"] >= both[0].values["ampacity"]


@given(st.data(), st.sampled_from(["voltage", "fault_current"]))
@tried(250)
def test_more_volts_or_a_larger_fault_never_bring_a_family_back(data, field):
    texts = data.draw(inputs_of(FUSE))
    less, more = two_of(FUSE, field, data.draw)
    both = [worked("fuse-choice", {**texts, field: text}) for text in (less, more)]
    assume(None not in both)
    assert set(both[1].values["breaks_enough"]) <= set(both[0].values["breaks_enough"])

"""What must hold of every run and every fuse, whichever figures are typed."""

from math import sqrt

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.conductors import conductor, conductors, copper_area, series_of
from calc.tables import table
from calc.worksheet.fields import Quantity
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked
from tests.unit.fuse_names import offered, owed

DROP = calc.find("wire-drop")
FUSE = calc.find("fuse-choice")
SIGNAL = {"AWG": 0.8e-6, "mm2": 0.7e-6}  # m²: sizes below 18 AWG and 0.75 mm² are for signals
SIZES = st.sampled_from([one.name for one in conductors()])


def two_of(sheet, field, draw):
    """Draw two texts of one field and return them with the smaller value first."""
    assert isinstance(sheet.field(field), Quantity)
    texts = [draw(valid(sheet.field(field))) for _ in range(2)]
    return sorted(texts, key=lambda text: sheet.field(field).read(text).value)


def run_of(draw, **fixed):
    """Draw inputs of wire-drop that have an answer: not every gauge has an SAE area."""
    texts = draw(inputs_of(DROP, **fixed))
    assume(worked("wire-drop", texts) is not None)
    return texts


def flows(answer):
    """Return whether the current can flow: its drop and all that hangs on it are there."""
    parts = [answer.values[name] for name in ("drop", "drop_percent", "loss", "load_voltage")]
    assert None not in parts or parts == [None] * 4
    return None not in parts


@given(st.data(), SIZES)
@tried(125)
def test_thicker_wire_never_drops_more(data, size):
    texts = data.draw(inputs_of(DROP, conductor=size))
    assume("maker_resistance" not in texts)
    series = series_of(size)
    thicker = data.draw(st.sampled_from([o for o in series if o.area >= conductor(size).area]))
    both = (texts, {**texts, "conductor": thicker.name})
    thin, thick = (worked("wire-drop", each) for each in both)
    assume(None not in (thin, thick))  # not every gauge has an SAE area
    assert thick.values["longest_run"] >= thin.values["longest_run"]
    assert thick.values["resistance"] <= thin.values["resistance"]
    if flows(thin):
        assert flows(thick), "a thicker wire flows wherever a thinner one does"
        assert thick.values["drop"] <= thin.values["drop"]
        assert thick.values["loss"] <= thin.values["loss"]


@given(st.data(), st.sampled_from(["length", "current", "temperature"]))
@tried(150)
def test_a_longer_run_a_larger_current_and_hotter_copper_never_drop_less(data, field):
    texts = run_of(data.draw)
    less, more = two_of(DROP, field, data.draw)
    first, second = (DROP.work({**texts, field: text}) for text in (less, more))
    assert second.values["resistance"] >= first.values["resistance"] / SLACK
    if flows(second):
        assert flows(first), "less never asks more of the wire"
        assert second.values["drop"] >= first.values["drop"] / SLACK


@given(st.data())
@tried(150)
def test_a_current_flows_where_the_supply_can_push_it_and_else_there_is_no_figure(data):
    answer = DROP.work(run_of(data.draw))
    v = answer.values
    asked = v["current"] * v["resistance"]
    if asked >= v["voltage"]:
        assert not flows(answer)
        assert answer.verdict == "stop"
    else:
        assert flows(answer)
        assert v["drop"] == asked


@given(st.data())
@tried(150)
def test_a_fine_run_is_within_every_limit_and_a_stop_beyond_its_ampacity(data):
    """33 CFR 183.425 table 5 read row by row and its notes, at any voltage; and 10 %.

    A wire below the table has its share of the first row's copper. 70 °C lies below 75 °C.
    """
    answer = DROP.work(run_of(data.draw, length="1 ft"))
    v = answer.values
    copper = copper_area(v["conductor"], v["gauge_reading"])
    areas = {o.name.removesuffix(" AWG"): o.area for o in conductors() if o.series == "AWG"}
    insulation = v["insulation"].removesuffix(" C").replace("70", "75")
    column = {
        row["awg"]: float(row["ampacity_a"])
        for row in table("ampacity_33cfr183_425").rows
        if row["insulation_c"] == insulation
    }
    within = [amps for awg, amps in column.items() if areas[awg] <= copper * SLACK]
    most = max(within, default=column["18"] * copper / areas["18"])
    air = max(v["ambient"], 50.0 if v["surroundings"] == "inside-engine-space" else 30.0)
    rating = float(insulation)
    most *= sqrt(max(0.0, rating - air) / (rating - 30))
    together = max(v["bundled"], 2 * v["parallel"] if v["bundled"] > 1 < v["parallel"] else 1)
    factors = {1: 1, 2: 1, 3: 0.7, 4: 0.6, 5: 0.6, 6: 0.6}
    most *= factors.get(together, 0.5 if together < 25 else 0.4)
    need = 1.25 * v["current"] / v["parallel"]
    if answer.verdict == "fine":
        assert v["drop_percent"] <= min(v["limit"], 0.10) * SLACK
        assert need <= most * SLACK
    if need > most * SLACK:
        assert answer.verdict != "fine"
    if need / 1.25 > most * SLACK:
        assert answer.verdict == "stop"


@given(st.data())
@tried(125)
def test_what_the_supply_gives_reaches_the_load_or_warms_the_wire(data):
    """Energy is kept: supply = load + heat."""
    answer = DROP.work(run_of(data.draw))
    v = answer.values
    assume(v["load_voltage"] is not None)
    supplied = v["voltage"] * v["current"]
    assert abs(supplied - v["load_voltage"] * v["current"] - v["loss"]) <= 1e-9 * supplied


@given(st.data())
@tried(125)
def test_the_size_that_is_named_keeps_within_the_limit_and_the_next_thinner_does_not(data):
    texts = run_of(data.draw)
    texts.pop("maker_resistance", None)
    answer = DROP.work(texts)
    named = answer["smallest_conductor"]
    own = conductor(answer.values["conductor"])
    series = [
        one.name
        for one in series_of(own.name)
        if one.area >= min(own.area, SIGNAL[own.series])
        and (answer.values["gauge_reading"] == "AWG" or own.series == "mm2" or one.sae_area)
        and (one.name != "3 AWG" or own.name == "3 AWG")  # hardly sold as flexible cable
    ]

    def within(size):
        answer = DROP.work({**texts, "conductor": size})
        return flows(answer) and answer.values["drop"] <= answer.values["allowed"] * SLACK

    if named is None:
        assert not within(series[-1])
    else:
        assert within(named)
        place = series.index(named)
        assert place == 0 or not within(series[place - 1])


@given(st.data())
@tried(125)
def test_a_run_as_long_as_the_longest_meets_the_limit(data):
    texts = run_of(data.draw)
    longest = DROP.work(texts).values["longest_run"]
    assume(0.01 <= longest <= 100)
    values = DROP.work({**texts, "length": f"{longest!r} m"}).values
    assert abs(values["drop"] - values["allowed"]) <= 1e-9 * values["allowed"]


@given(st.data())
@tried(200)
def test_a_fuse_lies_between_the_load_and_the_wire_and_every_family_suits_and_offers_it(data):
    answer = worked("fuse-choice", data.draw(inputs_of(FUSE)))
    assume(answer is not None)
    v = answer.values
    assert v["lowest"] >= v["current"]
    assert v["highest"] <= v["table_ampacity"] * SLACK
    assert (answer["fuse"] is None) is (answer["families"] == [])
    if v["fuse"] is None:
        carried = v["current"] <= v["ampacity"] * SLACK
        assert answer.verdict == "stop" or (carried and answer.verdict == "caution")
        return
    assert v["lowest"] / SLACK <= v["fuse"] <= v["highest"] * SLACK
    for family in answer["families"]:
        name = offered(family).name
        assert offered(family) == owed(name, v["voltage"], v["fault_here"])
        ratings = {float(r["rating_a"]) for r in table("fuse_ratings").rows if r["family"] == name}
        assert v["fuse"] in ratings
        assert any(
            float(row["dc_voltage_v"]) >= v["voltage"] / SLACK
            and float(row["interrupting_a"]) >= v["fault_here"] / SLACK
            for row in table("fuse_families").rows
            if row["family"] == name
        )


@given(st.data(), st.sampled_from(["ambient", "bundled", "voltage"]))
@tried(150)
def test_hotter_air_more_wires_together_or_more_volts_never_let_a_wire_bear_more(data, field):
    texts = data.draw(inputs_of(FUSE))
    less, more = two_of(FUSE, field, data.draw)
    first, second = (worked("fuse-choice", {**texts, field: text}) for text in (less, more))
    assume(first is not None and second is not None)
    assert second.values["ampacity"] <= first.values["ampacity"] * SLACK


@given(st.data())
@tried(100)
def test_an_engine_space_never_lets_a_wire_bear_more(data):
    texts = data.draw(inputs_of(FUSE))
    outside, inside = (
        worked("fuse-choice", {**texts, "surroundings": f"{place} engine space"})
        for place in ("outside", "inside")
    )
    assume(None not in (outside, inside))
    assert inside.values["ampacity"] <= outside.values["ampacity"] * SLACK


@given(st.data(), SIZES)
@tried(125)
def test_thicker_wire_never_bears_less(data, size):
    texts = data.draw(inputs_of(FUSE, conductor=size))
    thicker = data.draw(
        st.sampled_from([o for o in series_of(size) if o.area >= conductor(size).area])
    )
    both = [worked("fuse-choice", {**texts, "conductor": name}) for name in (size, thicker.name)]
    assume(None not in both)
    assert both[1].values["ampacity"] >= both[0].values["ampacity"]


@given(st.data(), st.sampled_from(["voltage", "fault_current"]))
@tried(125)
def test_more_volts_or_a_larger_fault_never_bring_a_family_back(data, field):
    texts = data.draw(inputs_of(FUSE))
    less, more = two_of(FUSE, field, data.draw)
    both = [worked("fuse-choice", {**texts, field: text}) for text in (less, more)]
    assume(None not in both)
    refused = [
        {*answer.values["too_low_in_voltage"], *answer.values["cannot_break"]} for answer in both
    ]
    assert refused[0] <= refused[1]


@given(st.data())
@tried(150)
def test_a_fine_fuse_bears_the_bundle_and_is_the_common_one(data):
    """33 CFR 183.425 table 5 note 2, counted at any voltage; common fuses are made for 32 V.

    NEC has factors of its own on a table that is much lower. Copper may be as warm as its terminals
    are rated for, or 90 °C where nobody has read them.
    """
    rule_set = data.draw(st.sampled_from(["33 CFR 183.425", "ABYC E-11"]))
    answer = worked("fuse-choice", data.draw(inputs_of(FUSE, rule_set=rule_set)))
    assume(answer is not None and answer.verdict == "fine")
    v = answer.values
    factors = {3: 0.7, 4: 0.6, 5: 0.6, 6: 0.6}
    together = v["bundled"]
    share = 1.0 if together < 3 else factors.get(together, 0.5 if together < 25 else 0.4)
    assert v["fuse"] <= v["table_ampacity"] * v["ambient_factor"] * share * SLACK
    if v["voltage"] > 32 * SLACK and v["fitted"] is None:
        assert not offered(answer["families"][0]).version
    bears = 90 if v["terminals"] is None else v["terminals"]
    assert v["air"] <= 50 and v["warm"] <= bears * SLACK

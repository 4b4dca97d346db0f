"""What must hold of a joint under current, whichever figures are typed."""

import math

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical import contact
from tests.properties.inputs import SLACK, inputs_of, tried

SHEET = calc.find("joint-heat")
ORDER = {"fine": 0, "caution": 1, "stop": 2}
FACTORS = st.floats(1, 20)


def worked(texts, **changes):
    return SHEET.work({**texts, **{name: text for name, text in changes.items() if text}})


@given(st.data(), st.floats(0.5, 100), FACTORS)
@tried(100)
def test_heat_goes_with_the_square_of_the_full_current_and_drop_with_the_current(
    data, current, factor
):
    texts = data.draw(inputs_of(SHEET))
    first = worked(texts, full_current=f"{current!r} A").values
    second = worked(texts, full_current=f"{current * factor!r} A").values
    assume(second["full_heat"] is not None)
    assert math.isclose(second["full_heat"], first["full_heat"] * factor**2, rel_tol=1e-9)
    assert math.isclose(second["full_drop"], first["full_drop"] * factor, rel_tol=1e-9)
    assert second["resistance"] == first["resistance"]


@given(st.data())
@tried(100)
def test_at_the_current_of_the_reading_the_heat_is_the_heat_now(data):
    texts = data.draw(inputs_of(SHEET, current="75 A", full_current="75 A"))
    v = worked(texts).values
    assume(v["full_heat"] is not None)
    assert math.isclose(v["full_heat"], v["heat"], rel_tol=1e-9)
    assert math.isclose(v["full_drop"], v["drop"], rel_tol=1e-9)


@given(st.data(), st.floats(1, 200), FACTORS, st.booleans())
@tried(100)
def test_a_larger_drop_is_never_judged_better_than_a_smaller_one(data, millivolt, factor, twin):
    """With a like part or without, wherever the reading itself is not in doubt.

    It is below 1 mV, and where no joint has as little: then the probes are asked about.
    """
    texts = data.draw(inputs_of(SHEET))
    texts.pop("good_drop", None)
    if twin:
        texts["good_drop"] = f"{data.draw(st.floats(1, 200))!r} mV"
    smaller = worked(texts, drop=f"{millivolt!r} mV")
    assume("contact.less-than-any-joint" not in smaller.rules)
    larger = worked(texts, drop=f"{millivolt * factor!r} mV")
    assert ORDER[larger.verdict] >= ORDER[smaller.verdict]


@given(st.data(), st.floats(0.1, 60), FACTORS)
@tried(100)
def test_a_hotter_joint_is_never_judged_better_than_a_cooler_one(data, rise, factor):
    """From the lowest class on: below it a thermometer can clear a joint that warms."""
    texts = data.draw(inputs_of(SHEET))
    cooler = worked(texts, rise=f"{max(rise, 1)!r} K")
    hotter = worked(texts, rise=f"{min(max(rise, 1) * factor, 300)!r} K")
    assert ORDER[hotter.verdict] >= ORDER[cooler.verdict]


@given(st.data(), st.floats(0.5, 2000), FACTORS)
@tried(100)
def test_more_full_current_is_never_judged_better(data, current, factor):
    texts = data.draw(inputs_of(SHEET))
    less = worked(texts, full_current=f"{current!r} A")
    more = worked(texts, full_current=f"{min(current * factor, 2000)!r} A")
    warmth = more.result.warmth
    assume(not (warmth and warmth.light))  # a temperature that is no longer taken to full current
    assert ORDER[more.verdict] >= ORDER[less.verdict]


@st.composite
def near_fine(draw):
    """Draw a reading of a joint that may well be a good one."""
    texts = draw(inputs_of(SHEET, rise_over=draw(st.sampled_from(["like-joint", "air"]))))
    texts["drop"] = f"{draw(st.floats(0.8, 12))!r} mV"
    texts["probed"] = draw(
        st.sampled_from(["bolted", "crimp", "unknown", "switch", "fuse", "cable"])
    )
    texts["current"] = f"{draw(st.floats(20, 400))!r} A"
    texts["full_current"] = f"{draw(st.floats(20, 600))!r} A"
    for name, values, unit in (("good_drop", (1, 12), "mV"), ("rise", (0.1, 2), "K")):
        texts.pop(name, None)
        if draw(st.booleans()):
            texts[name] = f"{draw(st.floats(*values))!r} {unit}"
    return texts


@given(near_fine())
@tried(200)
def test_a_joint_is_fine_only_where_nothing_that_is_known_speaks_against_it(texts):
    answer = SHEET.work(texts)
    v = answer.values
    if answer.verdict != "fine":
        return
    heat = max(v["heat"], v["full_heat"])
    drop = max(v["drop"], v["full_drop"])
    warm = v["probed"] in ("fuse", "breaker", "cable")
    assert drop <= v["most_drop"] * SLACK
    assert warm or v["probed"] == "switch" or v["full_drop"] <= v["softening"] * SLACK
    assert heat < 35 or warm
    cool = v["severity"] == "below the scale" and v["rise_over"] == "air"
    assert heat < 5 or warm or cool
    assert v["growth_left"] >= (1 if warm else 2) / SLACK and v["temperature"] <= 90 * SLACK
    assert v["current"] >= 0.2 * v["full_current"] / SLACK
    assert v["severity"] == ("no temperature given" if v["rise"] is None else "below the scale")
    assert v["resistance"] <= 2 * v["sound_high"] * SLACK
    if v["good_drop"] is None:
        assert v["resistance"] <= v["sound_high"] * SLACK
    else:
        assert v["ratio"] <= 1.5 * SLACK


@given(st.floats(1e-6, 0.4), st.floats(0, 150), st.floats(0, 150))
@tried(100)
def test_spots_are_never_cooler_than_the_metal_and_hotter_with_more_drop(drop, metal, other):
    spot = contact.spot_temperature(drop=drop, metal=metal)
    assume(spot is not None)
    assert spot >= metal - 1e-9
    less = contact.spot_temperature(drop=drop / 2, metal=metal)
    assert less <= spot
    cold, warm = sorted((metal, other))
    assert contact.softening_drop(warm) <= contact.softening_drop(cold)

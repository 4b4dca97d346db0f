"""More load, hotter, longer, a weaker bank: a converter is never better for it."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import tried

GRAVE = ("fine", "caution", "stop")
SHEET = "converter"
SOME = tried(25)

vans = st.fixed_dictionaries(
    {
        "system": st.sampled_from(("12 V", "24 V", "48 V")),
        "output_voltage": st.sampled_from(("5 V", "13.2 V", "19 V", "26 V")),
        "load": st.integers(1, 40).map("{} A".format),
        "rated": st.integers(5, 60).map("{} A".format),
        "rated_for": st.sampled_from(("hours", "peak-or-not-said")),
        "efficiency": st.sampled_from(("80 %", "93 %")),
        "standby": st.sampled_from(("10 mA", "80 mA", "300 mA")),
        "load_hours": st.integers(1, 24).map("{} h".format),
        "on_hours": st.integers(0, 24).map("{} h".format),
        "input_length": st.integers(1, 12).map("{} m".format),
        "output_length": st.integers(1, 12).map("{} m".format),
        "insulation": st.sampled_from(("60 C", "105 C")),
        "fault_current": st.sampled_from(("500 A", "2000 A", "12000 A")),
        "ambient": st.integers(10, 50).map("{} C".format),
    }
)


def grave(texts):
    return GRAVE.index(calc.work(SHEET, texts).verdict)


def times(text, by):
    number, unit = text.split()
    return f"{float(number) * by:.9g} {unit}"


@pytest.mark.parametrize("field", ["standby", "fault_current"])
@SOME
@given(van=vans, by=st.floats(1.05, 4))
def test_more_idle_draw_and_a_stronger_fault_never_get_a_better_verdict(field, van, by):
    assert grave({**van, field: times(van[field], by)}) >= grave(van)


@pytest.mark.parametrize("field", ["rated"])
@SOME
@given(van=vans, by=st.floats(1.05, 4))
def test_a_smaller_rating_never_gets_a_better_verdict(field, van, by):
    assert grave({**van, field: times(van[field], 1 / by)}) >= grave(van)


@SOME
@given(van=vans, by=st.floats(1.05, 3))
def test_a_worse_efficiency_takes_more_and_loses_more(van, by):
    worse = {**van, "efficiency": times(van["efficiency"], 1 / by)}
    if float(worse["efficiency"].split()[0]) >= 50:
        one, other = (calc.work(SHEET, texts) for texts in (van, worse))
        assert other["input_current"] > one["input_current"]
        assert other["loss"] > one["loss"]


@SOME
@given(van=vans)
def test_a_higher_system_never_draws_more_nor_needs_more_copper(van):
    rows = calc.work(SHEET, van).result.systems
    assert [row.system.volts for row in rows] == [12, 24, 48]
    for low, high in pairwise(rows):
        assert high.current == pytest.approx(low.current / 2)
        if low.copper is not None and high.copper is not None:
            assert high.copper <= low.copper * (1 + 1e-9)

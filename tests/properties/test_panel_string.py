"""Colder, hotter, one more in series or in parallel: a string of panels is never better for it."""

from hypothesis import given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import tried
from tests.rules.judging import fires

GRAVE = ("fine", "caution", "stop")
SHEET = "panel-string"
SOME = tried(40)

roofs = st.fixed_dictionaries(
    {
        "voc": st.integers(20, 52).map("{} V".format),
        "vmp": st.integers(15, 45).map("{} V".format),
        "isc": st.integers(4, 15).map("{} A".format),
        "rated": st.integers(80, 500).map("{} W".format),
        "coefficient": st.sampled_from(("-0.25 %/K", "-0.3 %/K", "0.09 V/K", "")),
        "series": st.integers(1, 4).map(str),
        "parallel": st.integers(1, 4).map(str),
        "cold": st.integers(-20, 25).map("{} C".format),
        "hot_air": st.integers(0, 40).map("{} C".format),
        "regulator": st.sampled_from(("MPPT", "PWM")),
        "volts_limit": st.sampled_from(("50 V", "100 V", "150 V")),
        "regulator_limit": st.sampled_from(("20 A", "50 A", "")),
        "voltage": st.sampled_from(("14.4 V", "28.8 V")),
        "series_fuse": st.sampled_from(("15 A", "25 A", "")),
        "string_fuse": st.sampled_from(("15 A", "25 A", "")),
        "mount": st.sampled_from(("open-rack", "glued")),
        "alike": st.sampled_from(("alike", "mixed")),
    }
)


def grave(texts):
    return GRAVE.index(calc.work(SHEET, texts).verdict)


def number(text):
    return float(text.split()[0])


@SOME
@given(roofs, st.integers(1, 20))
def test_a_colder_morning_never_gets_a_better_verdict(roof, by):
    assert grave({**roof, "cold": f"{number(roof['cold']) - by:g} C"}) >= grave(roof)


@SOME
@given(roofs, st.integers(1, 20))
def test_a_hotter_day_never_gets_a_better_verdict(roof, by):
    assert grave({**roof, "hot_air": f"{number(roof['hot_air']) + by:g} C"}) >= grave(roof)


@SOME
@given(roofs, st.integers(1, 3))
def test_more_strings_in_parallel_never_get_a_better_verdict(roof, more):
    assert grave({**roof, "parallel": str(int(roof["parallel"]) + more)}) >= grave(roof)


@SOME
@given(roofs, st.integers(1, 3))
def test_more_in_series_are_never_nearer_to_a_regulators_limit(roof, more):
    over = {
        "string.over-input-limit",
        "string.none-in-series",
        "string.one-panel-over-input-limit",
        "string.no-count-fits",
    }
    longer = {**roof, "series": str(int(roof["series"]) + more)}
    assert not fires(SHEET, roof) & over or fires(SHEET, longer) & over
    one, other = (calc.work(SHEET, texts) for texts in (roof, longer))
    assert other["cold_voc"] > one["cold_voc"]


@SOME
@given(roofs)
def test_what_is_not_known_never_gets_a_better_verdict_than_the_worst_that_it_may_be(roof):
    """An unread label is no better than one that is read and bears all that comes."""
    told = {**roof, "series_fuse": "100 A", "string_fuse": ""}
    assert grave({**told, "series_fuse": ""}) >= grave(told)

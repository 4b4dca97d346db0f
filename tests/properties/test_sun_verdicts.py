"""Less sun, more load and colder never earn a better verdict, in a week, on a trip or of a roof."""

from hypothesis import given
from hypothesis import strategies as st

import calc
from calc.energy.sun import Month
from tests.properties.inputs import tried

GRAVE = ("fine", "caution", "stop")
WEEK = calc.find("week-ahead")
SOME = tried(30)

WHENS = ("all", "day", "night", "morning", "midday", "evening", "morning-and-evening")
load = st.builds(
    "load:{} W:{} h:{}:{}".format,
    st.integers(5, 1500),
    st.sampled_from((0.2, 1, 3, 8)),
    st.sampled_from(WHENS),
    st.sampled_from(("direct", "inverter")),
)
vans = st.fixed_dictionaries(
    {
        "question": st.sampled_from(("week", "trip")),
        "nights": st.integers(1, 5).map(str),
        "chemistry": st.sampled_from(("LFP", "AGM", "flooded")),
        "capacity": st.integers(60, 500).map("{} A.h".format),
        "loads": st.lists(load, min_size=1, max_size=3).map(";".join),
        "array": st.integers(50, 800).map("{} W".format),
        "latitude": st.sampled_from(("-34", "28", "45", "57")),
        "month": st.sampled_from(Month).map(str),
        "sky": st.integers(10, 100).map("{} %".format),
        "drive_hours": st.sampled_from(("0 h", "1 h")),
        "temperature": st.integers(-8, 25).map("{} C".format),
        "inverter_on": st.sampled_from(("day-and-night", "while-used")),
    }
)


def verdict(texts):
    """Return how grave the verdict of a week is: it does not wait for the later stages."""
    if texts["question"] == "week":
        texts = {name: text for name, text in texts.items() if name != "nights"}
    return GRAVE.index(next(answer for _, answer in WEEK.stages(WEEK.read(texts)[0])).verdict)


@SOME
@given(vans, st.floats(0.1, 0.95))
def test_less_sky_never_gets_a_better_verdict(van, share):
    darker = {**van, "sky": f"{float(van['sky'].split()[0]) * share:.6g} %"}
    if float(darker["sky"].split()[0]) >= 1:
        assert verdict(darker) >= verdict(van)


@SOME
@given(vans, st.floats(0.1, 0.95))
def test_fewer_panels_never_get_a_better_verdict(van, share):
    fewer = {**van, "array": f"{float(van['array'].split()[0]) * share:.6g} W"}
    assert verdict(fewer) >= verdict(van)


@SOME
@given(vans, load)
def test_one_more_load_never_gets_a_better_verdict(van, more):
    assert verdict({**van, "loads": f"{van['loads']};{more}"}) >= verdict(van)


@SOME
@given(vans, st.integers(1, 20))
def test_colder_never_gets_a_better_verdict(van, by):
    colder = f"{int(van['temperature'].split()[0]) - by} C"
    assert verdict({**van, "temperature": colder}) >= verdict(van)


roofs = st.fixed_dictionaries(
    {
        "latitude": st.sampled_from(("-34", "28", "45", "57", "66")),
        "month": st.sampled_from(Month).map(str),
        "array": st.integers(50, 800).map("{} W".format),
        "sky": st.integers(10, 100).map("{} %".format),
        "tilt": st.sampled_from(("0", "20", "60")),
        "chemistry": st.sampled_from(("LFP", "AGM")),
        "stored": st.integers(0, 100).map("{} %".format),
        "daily_use": st.integers(200, 3000).map("{} W.h".format),
        "temperature": st.integers(-8, 25).map("{} C".format),
    }
)


def roof_verdict(texts):
    return GRAVE.index(calc.work("sun-yield", texts).verdict)


@SOME
@given(roofs, st.floats(0.1, 0.95))
def test_a_roof_with_less_sky_or_a_colder_bank_never_gets_a_better_verdict(roof, share):
    sky = float(roof["sky"].split()[0]) * share
    if sky >= 1:
        assert roof_verdict({**roof, "sky": f"{sky:.6g} %"}) >= roof_verdict(roof)
    colder = f"{int(roof['temperature'].split()[0]) - 7} C"
    assert roof_verdict({**roof, "temperature": colder}) >= roof_verdict(roof)


@SOME
@given(roofs, st.floats(1.05, 4))
def test_more_use_and_more_by_night_never_get_a_better_verdict(roof, times):
    use = float(roof["daily_use"].split()[0]) * times
    assert roof_verdict({**roof, "daily_use": f"{use:.6g} W.h"}) >= roof_verdict(roof)
    stored = min(100.0, float(roof["stored"].split()[0]) * times)
    assert roof_verdict({**roof, "stored": f"{stored:.6g} %"}) >= roof_verdict(roof)

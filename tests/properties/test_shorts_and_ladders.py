"""What must hold of every short and every pair of fuses, whichever figures are typed."""

from itertools import pairwise

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.conductors import conductor, conductors, series_of
from calc.electrical.opening import Fuse, Trust, family_names, opening
from calc.electrical.selectivity import Order, first_to_open
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

SHORT = calc.find("fault-current")
LADDER = calc.find("fuse-ladder")
SIZES = st.sampled_from([one.name for one in conductors()])
FUSES = st.builds(
    Fuse, st.sampled_from(family_names()), st.floats(1, 100).map(lambda x: round(x, 2))
)
CURRENTS = st.floats(1, 5000)
BLADES = {
    "blade, regular (type C)": (5, 10, 20, 30, 40),
    "blade, miniature (type F)": (5, 10, 20, 30),
    "blade, large (type E)": (20, 40, 60, 80),
}
KNOWN = st.one_of(
    *(st.builds(Fuse, st.just(name), st.sampled_from(made)) for name, made in BLADES.items())
)


def two_of(field, draw, sheet=SHORT):
    """Draw two texts of one field and return them with the smaller value first."""
    texts = [draw(valid(sheet.field(field))) for _ in range(2)]
    return sorted(texts, key=lambda text: sheet.field(field).read(text).value)


def both(texts, field, values):
    """Return what the sheet works for two texts of one field, or skip what it refuses."""
    answers = [worked("fault-current", {**texts, field: text}) for text in values]
    assume(None not in answers)
    return [answer.values for answer in answers]


@given(st.data(), SIZES)
@tried(100)
def test_thicker_wire_never_passes_less_and_never_bears_a_short_less_well(data, size):
    texts = data.draw(inputs_of(SHORT, gauge_reading="AWG"))
    thicker = [one.name for one in series_of(size) if one.area >= conductor(size).area]
    thin, thick = both(texts, "conductor", (size, data.draw(st.sampled_from(thicker))))
    assert thick["fault_current"] >= thin["fault_current"] / SLACK
    assert thick["fault_low"] >= thin["fault_low"] / SLACK
    assert thick["energy_limit"] >= thin["energy_limit"]
    assert thick["near_fault"] == thin["near_fault"]


@given(st.data(), st.sampled_from(["length", "joints", "joint_resistance", "temperature"]))
@tried(125)
def test_a_longer_run_more_joints_and_warmer_copper_never_pass_more(data, field):
    texts = data.draw(inputs_of(SHORT))
    less, more = both(texts, field, two_of(field, data.draw))
    assert more["fault_current"] <= less["fault_current"] * SLACK
    assert more["fault_low"] <= less["fault_low"] * SLACK
    assert more["near_fault"] == less["near_fault"]


@given(st.data())
@tried(100)
def test_more_strings_never_pass_less_and_ageing_changes_the_lowest_only(data):
    texts = data.draw(inputs_of(SHORT))
    few, many = both(texts, "batteries", two_of("batteries", data.draw))
    assert many["near_fault"] >= few["near_fault"] / SLACK
    assert many["fault_current"] >= few["fault_current"] / SLACK
    young, old = both(texts, "ageing", two_of("ageing", data.draw))
    assert old["fault_current"] == young["fault_current"]
    assert old["fault_low"] <= young["fault_low"] * SLACK


@given(st.data())
@tried(100)
def test_the_class_that_is_named_breaks_the_fault(data):
    answer = worked("fault-current", data.draw(inputs_of(SHORT)))
    assume(answer is not None)
    v = answer.values
    for fault, named in (("fault_current", "interrupt_needed"), ("near_fault", "interrupt_near")):
        assert v[named] is None or v[named] >= v[fault] / SLACK
    if v["interrupt_near"] is None:
        assert answer.verdict == "stop"


@given(st.data(), KNOWN)
@tried(125)
def test_a_run_is_fine_only_with_a_fuse_that_breaks_opens_and_suits_the_wire(data, fuse):
    """Drawn where a van's figures lie, and judged again from 33 CFR's and ISO 8820-3's figures."""
    draw = data.draw
    texts = {
        "source_resistance": f"{draw(st.floats(8, 80))!r} mohm",
        "conductor": draw(st.sampled_from(("16 AWG", "12 AWG", "8 AWG", "6 mm2"))),
        "length": f"{draw(st.floats(0.2, 8))!r} m",
        "insulation": draw(st.sampled_from(("70 C PVC", "90 C XLPE"))),
        "fuse": f"{fuse.rating} A",
        "fuse_family": fuse.family,
        "opening_time": f"{draw(st.floats(0.05, 20))!r} s",
        "let_through": f"{draw(st.floats(100, 2_000_000))!r} A2.s",
    }
    answer = SHORT.work(texts)
    v = answer.values
    if answer.verdict == "fine":
        assert v["near_fault"] <= 1000 * SLACK
        assert fuse.rating <= {"16 AWG": 25, "12 AWG": 40, "8 AWG": 70, "6 mm2": 55}[v["conductor"]]
        # one fuse does for overload and short: within the ampacity, and well over its rating
        one_device = v["fuse_percent"] >= 3 / SLACK
        in_time = (v["k"] * v["area"] / v["low_start"]) ** 2 * SLACK
        assert one_device or v["fuse_time"] <= in_time
        assert v["let_through"] <= v["energy_limit"] and fuse.rating < v["fault_low"]
    if v["near_fault"] > 1000 or v["let_through"] > v["energy_limit"]:
        assert answer.verdict == "stop"


@given(FUSES, st.lists(CURRENTS, min_size=2, max_size=6))
@tried(150)
def test_more_current_never_opens_a_fuse_later(fuse, currents):
    for trust in Trust:
        bands = [opening(fuse, current, trust) for current in sorted(currents)]
        for less, more in pairwise(bands):
            assert more.earliest <= less.earliest
            assert less.latest is None or more.latest <= less.latest
        for band in bands:
            assert band.latest is None or band.earliest <= band.latest


@given(KNOWN, KNOWN, st.floats(20, 300), st.floats(1, 1.5), st.floats(0, 10))
@tried(150)
def test_what_is_certain_of_a_range_is_certain_of_every_part_of_it(down, up, low, wide, besides):
    def order(low, high):
        return first_to_open(
            downstream=down, upstream=up, low=low, high=high, other_load=besides
        ).order

    high = low * wide
    assume(order(low, high) is Order.CERTAIN)
    for share in (0.0, 0.3, 0.77, 1.0):
        at = low + share * (high - low)
        assert order(at, at) is Order.CERTAIN
        assert order(low, at) is Order.CERTAIN
    swapped = first_to_open(downstream=up, upstream=down, low=low, high=low, other_load=0.0)
    one, other = opening(down, low), opening(up, low)
    same = (one.earliest, one.latest) == (other.earliest, other.latest)
    assert besides or swapped.order is not Order.CERTAIN or same


@given(st.data())
@tried(100)
def test_more_load_upstream_or_a_wider_range_never_makes_an_order_certain(data):
    texts = data.draw(inputs_of(LADDER))
    texts = {k: v for k, v in texts.items() if not k.endswith(("clearing", "melting"))}
    less, more = two_of("other_load", data.draw, LADDER)
    first, second = (worked("fuse-ladder", {**texts, "other_load": x}) for x in (less, more))
    assume(None not in (first, second))
    assert second.result.order is not Order.CERTAIN or first.result.order is Order.CERTAIN
    single = worked("fuse-ladder", {k: v for k, v in texts.items() if k != "fault_low"})
    ranged = worked("fuse-ladder", texts)
    assert ranged.result.order is not Order.CERTAIN or single.result.order is Order.CERTAIN

"""What is worse for a fuse never gets a better verdict, whichever figures are drawn."""

from hypothesis import assume, given
from hypothesis import strategies as st

from calc.judge import Level
from calc.tables import table
from tests.properties.inputs import tried, worked

RANK = {Level.FINE: 0, Level.CAUTION: 1, Level.STOP: 2}
WIRES = ("1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2", "25 mm2", "35 mm2")
# What a text says that each breaks, weakest first: ISO 8820-3, ISO 8820-5, a textbook
FAMILIES = (
    "blade, large (type E)",
    "bolt-in strip, 51 mm (SF51)",
    "cartridge, class T",
)
BLADES = {
    "blade, regular (type C)": (3, 5, 10, 15, 20, 30),
    "blade, miniature (type F)": (3, 5, 10, 15, 20, 30),
    "blade, large (type E)": (20, 30, 40, 60, 80),
}
AMPS = st.floats(1, 150).map(lambda x: round(x, 1))
FAULTS = st.floats(100, 25_000).map(lambda x: round(x))


def grave(sheet, texts):
    """Return how grave the verdict is, or skip what the sheet refuses."""
    answer = worked(sheet, texts)
    assume(answer is not None)
    return RANK[answer.verdict]


def never_better(sheet, texts, field, better, worse):
    """See that the worse text of a field never has the better verdict."""
    first, second = (grave(sheet, {**texts, field: text}) for text in (better, worse))
    assert second >= first, (texts, field, better, worse)


@st.composite
def circuits(draw):
    """Draw a circuit as fuse-choice takes it, at the battery or behind a main fuse."""
    return {
        "current": f"{draw(AMPS)} A",
        "conductor": draw(st.sampled_from(WIRES)),
        "insulation": draw(st.sampled_from(("60 C", "75 C", "105 C"))),
        "voltage": draw(st.sampled_from(("14.6 V", "29.2 V", "57.6 V", "58.4 V"))),
        "bundled": f"{draw(st.sampled_from((2, 4, 8)))}",
        "fuse_place": draw(st.sampled_from(("at the battery", "behind a main fuse"))),
        "fault_current": f"{draw(FAULTS)} A",
        "feed_conductor": draw(st.sampled_from(WIRES[4:])),
        "feed_length": f"{draw(st.floats(0.2, 10)):.2f} m",
    }


@st.composite
def fitted(draw):
    """Draw a circuit whose fuse is there already."""
    family = draw(st.sampled_from(sorted(BLADES)))
    rating = draw(st.sampled_from(BLADES[family]))
    printed = draw(st.sampled_from(("", "32 V", "58 V")))
    there = {"fitted": f"{rating} A", "fitted_family": family, "fitted_voltage": printed}
    return draw(circuits()) | {name: text for name, text in there.items() if text}


EITHER = st.one_of(circuits(), fitted())


def pair(draw, numbers, unit):
    """Draw two texts of a quantity, the smaller first."""
    return [f"{number} {unit}" for number in sorted(draw(numbers) for _ in range(2))]


@given(st.data(), EITHER)
@tried(60)
def test_more_fault_current_is_never_better_for_a_fuse(data, texts):
    less, more = pair(data.draw, FAULTS, "A")
    never_better("fuse-choice", texts, "fault_current", less, more)


@given(st.data(), EITHER)
@tried(60)
def test_a_shorter_or_thicker_feed_is_never_better_for_a_fuse(data, texts):
    behind = texts | {"fuse_place": "behind a main fuse"}
    near, far = pair(data.draw, st.floats(0.2, 10).map(lambda x: round(x, 2)), "m")
    never_better("fuse-choice", behind, "feed_length", far, near)
    thin, thick = sorted(data.draw(st.sampled_from(range(4, 9))) for _ in range(2))
    # A feed that can't carry the load is stopped for that, and a thicker one is not.
    carried = worked("fuse-choice", behind | {"feed_conductor": WIRES[thin]})
    assume(carried is not None and "feed.below-load" not in carried.rules)
    never_better("fuse-choice", behind, "feed_conductor", WIRES[thin], WIRES[thick])


@given(st.data(), EITHER)
@tried(60)
def test_more_current_or_thinner_wire_is_never_better_for_a_fuse(data, texts):
    less, more = pair(data.draw, AMPS, "A")
    never_better("fuse-choice", texts, "current", less, more)
    thin, thick = sorted(data.draw(st.sampled_from(range(len(WIRES)))) for _ in range(2))
    never_better("fuse-choice", texts, "conductor", WIRES[thick], WIRES[thin])


@given(st.data(), circuits(), st.sampled_from((40, 60, 80)))
@tried(60)
def test_a_family_that_breaks_less_is_never_better(data, texts, rating):
    there = texts | {"fitted": f"{rating} A", "voltage": "14.6 V"}
    weak, strong = sorted(data.draw(st.sampled_from(range(3))) for _ in range(2))
    never_better("fuse-choice", there, "fitted_family", FAMILIES[strong], FAMILIES[weak])


@given(fitted(), st.sampled_from(("14.6 V", "29.2 V", "57.6 V")))
@tried(40)
def test_a_lower_voltage_printed_on_a_fuse_is_never_better(texts, voltage):
    never_better("fuse-choice", texts | {"voltage": voltage}, "fitted_voltage", "58 V", "32 V")


@given(st.data(), st.sampled_from(sorted(BLADES)), st.sampled_from(WIRES[2:]))
@tried(60)
def test_a_longer_run_is_never_better_for_the_fuse_that_guards_it(data, family, conductor):
    """Of fuses that the wire can carry for hours, 33 CFR 183.425 table 5 at 60 °C."""
    gauges = ("14", "12", "10", "8", "6", "4", "2")  # the rows of 2.5 to 35 mm²
    gauge = gauges[WIRES[2:].index(conductor)]
    most = next(
        float(row["ampacity_a"])
        for row in table("ampacity_33cfr183_425").rows
        if (row["awg"], row["insulation_c"]) == (gauge, "60")
    )
    made = [rating for rating in BLADES[family] if rating <= most]
    assume(made)
    texts = {
        "source_resistance": f"{data.draw(st.floats(14, 60)):.1f} mohm",
        "conductor": conductor,
        "fuse": f"{data.draw(st.sampled_from(made))} A",
        "fuse_family": family,
    }
    short, long = pair(data.draw, st.floats(0.3, 40).map(lambda x: round(x, 2)), "m")
    never_better("fault-current", texts, "length", short, long)


@given(st.data())
@tried(40)
def test_more_batteries_and_a_missing_fuse_are_never_better_in_a_short(data):
    texts = {"source_resistance": f"{data.draw(st.floats(0.5, 20)):.2f} mohm"}
    few, many = sorted(data.draw(st.sampled_from(range(1, 9))) for _ in range(2))
    never_better("fault-current", texts, "batteries", f"{few}", f"{many}")
    texts |= {"batteries": f"{many}"}
    never_better("fault-current", texts, "each_fused", "yes", "no")
    never_better("fault-current", texts, "far_end", "both-ends", "this-end-only")


@given(st.data())
@tried(40)
def test_more_fault_current_never_lets_a_pair_of_fuses_break_what_less_did_not(data):
    pair_of = {"downstream": "10 A", "upstream": "80 A"}
    less, more = pair(data.draw, st.floats(50, 30_000).map(lambda x: round(x)), "A")
    first, second = (worked("fuse-ladder", pair_of | {"fault_current": x}) for x in (less, more))
    stopped = [{r for r in a.rules if r == "fuse.cannot-interrupt"} for a in (first, second)]
    assert stopped[0] <= stopped[1]


@given(st.data(), st.sampled_from(("inverter-size", "watts-to-amps")))
@tried(40)
def test_more_power_is_never_better_for_the_cables(data, sheet):
    less, more = pair(data.draw, st.floats(100, 12_000).map(lambda x: round(x)), "W")
    cables = []
    for watts in (less, more):
        field = {"running": watts, "surge": watts} if sheet == "inverter-size" else {"power": watts}
        answer = worked(sheet, field)
        assume(answer is not None)
        cables.append(answer.result.single_cable.cables or 99)
    assert cables[0] <= cables[1]

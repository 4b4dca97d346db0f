"""When fuses open by their gates, and which of two is first, tried with fuses made up to fit."""

from math import exp, inf, log
from random import Random

import pytest

import calc
from calc.electrical.clearing import Clears, opens_in_time
from calc.electrical.opening import Fuse, Trust, gates, only_from_memory, opening
from calc.electrical.selectivity import (
    LetThrough,
    Order,
    by_let_through,
    certain_between,
    first_to_open,
)
from calc.tables import SEEN, table
from calc.units.covered import NotCovered
from tests.contract.samples import fine

C, F = "blade, regular (type C)", "blade, miniature (type F)"
E, SF51 = "blade, large (type E)", "bolt-in strip, 51 mm (SF51)"
ROWS = table("fuse_families").rows
SEEN_FAMILIES = {row["family"] for row in ROWS if row["confidence"] == SEEN}
DIN = [(100, 360_000, None), (135, 60, 1800), (200, 2, 60), (350, 0.2, 7)]
"""DIN 72581-3 type E as its extract prints it: percent of rating, least and most seconds."""


def order(down, up, low, high=None, other_load=0.0):
    return first_to_open(
        downstream=down, upstream=up, low=low, high=high or low, other_load=other_load
    ).order


def times(fuse, current, trust=Trust.DATA_SHEET):
    found = opening(fuse, current, trust)
    return found.earliest, found.latest


@pytest.mark.parametrize(("percent", "least", "most"), DIN)
@pytest.mark.parametrize("rating", [20, 40, 80])
def test_at_a_gate_a_large_blade_opens_as_the_standard_says(percent, least, most, rating):
    assert times(Fuse(E, rating), rating * percent / 100, Trust.STANDARD) == (least or 0, most)


@pytest.mark.parametrize(
    ("percent", "least", "most"),
    [(99, 360_000, None), (101, 60, None), (134, 60, None), (136, 2, 1800), (349, 0.2, 60)],
)
def test_between_gates_the_safe_one_of_each_side_holds(percent, least, most):
    """Never interpolated: the latest of the gate below, the earliest of the gate above."""
    assert times(Fuse(E, 50), 0.5 * percent, Trust.STANDARD) == (least, most)


def test_beyond_the_last_gate_the_earliest_is_not_known():
    assert times(Fuse(E, 50), 1000.0, Trust.STANDARD) == (0, 7)
    assert opening(Fuse(E, 50), 1000.0, Trust.STANDARD).least is None


def test_gates_from_memory_are_left_out_unless_asked_for():
    fuse = Fuse(SF51, 200)
    assert times(fuse, 700.0) == (0, None)
    assert times(fuse, 700.0, Trust.MEMORY) == (0.3, 5)
    assert only_from_memory(fuse)


def test_a_family_has_gates_only_for_the_ratings_that_they_were_printed_for():
    """DIN 72581-3 type E: 20 A to 80 A."""
    assert not gates(Fuse(E, 100))
    assert not gates(Fuse("terminal-mount block", 100))
    assert not gates(Fuse(None, 100))


def test_a_family_that_is_in_no_table_is_refused_by_a_list_of_those_that_are():
    with pytest.raises(NotCovered, match="blade, large"):
        Fuse("blade, very large", 100)


def made_up(fuse, draw):
    """Return opening times [s] of a fuse that keeps every gate: never later at a larger current."""
    known = [gate for gate in gates(fuse) if gate.trust <= Trust.DATA_SHEET]
    shares = sorted({*(g.multiple for g in known), *(draw.uniform(0.8, 9) for _ in range(40))})
    times, last = {}, inf
    for share in shares:
        # what the gates allow here, seen from all of them: no sooner than any gate above asks
        least = max((g.least for g in known if g.least and g.multiple >= share), default=1e-3)
        most = min((g.most for g in known if g.most and g.multiple <= share), default=1e7)
        most = min(most, last)
        last = exp(draw.uniform(log(min(least, most)), log(most)))
        times[share] = last
    return times


def at(times, multiple):
    """Return the span of times [s] that a made-up fuse can take at a `multiple` of its rating."""
    later = [time for share, time in times.items() if share <= multiple]
    sooner = [time for share, time in times.items() if share >= multiple]
    return max(sooner, default=0.0), min(later, default=inf)


def test_what_is_certain_holds_for_every_fuse_that_keeps_its_gates():
    """Thousands of made-up pairs: where certain, none has the upstream fuse open first."""
    draw = Random("ladder")
    seen = {Order.CERTAIN: 0, Order.WILL_NOT: 0}
    for _ in range(4000):
        down = Fuse(draw.choice([C, F, E]), draw.choice([20, 25, 30, 40]))
        up = Fuse(draw.choice([C, E, E]), draw.choice([20, 30, 40, 60, 80]))
        besides = draw.choice([0.0, 5.0, 15.0])
        low = exp(draw.uniform(log(15), log(400)))
        high = low * draw.choice([1.0, 1.0, 1.3, 2.0])
        said = order(down, up, low, high, besides)
        if said not in seen:
            continue
        seen[said] += 1
        pair = made_up(down, draw), made_up(up, draw)
        tried = [draw.uniform(low, high) for _ in range(10)]
        spans = [
            (at(pair[0], i / down.rating), at(pair[1], (i + besides) / up.rating)) for i in tried
        ]
        if said is Order.CERTAIN:
            assert all(d[1] <= u[0] for d, u in spans)
        elif low == high:
            assert all(u[1] <= d[0] for d, u in spans)
    assert min(seen.values()) > 100


@pytest.mark.parametrize(
    ("down", "up", "low", "high", "words"),
    [
        ((E, 20), (E, 80), 108, 108, Order.CERTAIN),  # 540 %: 7 s at most; 135 %: 60 s at least
        ((E, 20), (E, 80), 108.1, 108.1, Order.NOT_CERTAIN),
        ((E, 20), (E, 80), 27, 108, Order.CERTAIN),  # 135 %: 1800 s at most; below rating: 100 h
        ((E, 20), (E, 80), 27, 109, Order.NOT_CERTAIN),
        ((E, 20), (E, 80), 26.9, 100, Order.NOT_CERTAIN),  # below 135 % nothing says that it opens
        ((E, 80), (E, 20), 108, 108, Order.WILL_NOT),
        ((E, 80), (E, 20), 108, 2000, Order.WILL_NOT),  # over a part of the range is enough
        ((E, 20), (SF51, 200), 200, 200, Order.FROM_MEMORY),
        ((SF51, 50), (SF51, 300), 300, 300, Order.FROM_MEMORY),
        ((E, 20), ("terminal-mount block", 100), 100, 100, Order.NO_CURVE),
        ((F, 10), (E, 80), 250, 250, Order.CERTAIN),  # 2500 %: 0.1 s at most; 313 %: 0.2 s at least
    ],
)
def test_the_order_is_said_in_the_words_that_its_gates_bear(down, up, low, high, words):
    assert order(Fuse(*down), Fuse(*up), low, high) is words


def test_other_load_upstream_makes_the_order_less_certain_and_never_more():
    fuses = Fuse(E, 20), Fuse(E, 80)
    assert order(*fuses, 108, other_load=0) is Order.CERTAIN
    assert order(*fuses, 108, other_load=0.1) is Order.NOT_CERTAIN


@pytest.mark.parametrize("besides", [0.0, 10.0])
@pytest.mark.parametrize(
    ("down", "up"), [((E, 20), (E, 80)), ((C, 10), (E, 60)), ((F, 5), (C, 20))]
)
def test_the_span_that_is_certain_is_certain_throughout_and_no_further(down, up, besides):
    down, up = Fuse(*down), Fuse(*up)
    span = certain_between(downstream=down, upstream=up, other_load=besides)
    low, high = span.low, span.high
    assert order(down, up, low, high, besides) is Order.CERTAIN
    assert order(down, up, low * 0.999, high, besides) is not Order.CERTAIN
    assert order(down, up, low, high * 1.001, besides) is not Order.CERTAIN


@pytest.mark.parametrize(
    ("clearing", "melting", "current", "said"),
    [
        (900, 901, 400, LetThrough.PROVES),
        (900, 900, 400, LetThrough.DOES_NOT_PROVE),
        (900, 5000, 199, LetThrough.OF_LARGER_FAULT),  # below ten times 20 A
        (4001, 9000, 200, LetThrough.OF_LARGER_FAULT),  # 200² A² · 0.1 s is 4000 A²·s
        (4000, 9000, 200, LetThrough.PROVES),
    ],
)
def test_let_through_proves_an_order_only_at_the_fault_it_belongs_to(
    clearing, melting, current, said
):
    fuse = Fuse(C, 20)
    given = {"clearing": clearing, "melting": melting, "current": float(current)}
    assert by_let_through(downstream=fuse, other_load=0.0, **given) is said


def cleared(fuse, low, high, energy=1e6, opening_time=None, let_through=None, ampacity=30.0):
    return opens_in_time(
        fuse=fuse, low=low, high=high, withstand_low=energy / low**2, let_through_limit=energy,
        ampacity=ampacity, opening_time=opening_time, let_through=let_through,
    ).clears  # fmt: skip


@pytest.mark.parametrize(
    ("low", "high", "more", "words"),
    [
        # 40 A large blade: 135 % is 54 A, 200 % 80 A, 350 % 140 A, 600 % 240 A. 1e6 A²·s is borne.
        (240, 300, {}, Clears.IN_TIME),  # 1 s at most against 17 s; 300 A for 11 s
        (239, 300, {}, Clears.NOT_CERTAIN),  # 7 s at most: beyond the 5 s that the law is meant for
        (239, 300, {"opening_time": 5}, Clears.IN_TIME),
        (239, 300, {"opening_time": 5.1}, Clears.NOT_CERTAIN),
        (139, 300, {"opening_time": 4}, Clears.IN_TIME),
        (
            139,
            300,
            {"opening_time": 0.1},
            Clears.NOT_CERTAIN,
        ),  # sooner than any such fuse: left aside
        (40, 300, {}, Clears.NEVER),
        (40.5, 300, {"energy": 5 * 41**2}, Clears.TOO_LATE),  # 60 s at least, and 5 s are borne
        (
            44,
            300,
            {"energy": 5.9 * 44**2},
            Clears.TOO_LATE,
        ),  # 60 s is ten times 5.9 s, and it bears 30 A
        (44, 300, {"energy": 6.1 * 44**2}, Clears.NOT_CERTAIN),
        (
            44,
            300,
            {"energy": 5.9 * 44**2, "ampacity": 44},
            Clears.NOT_CERTAIN,
        ),  # what it bears for hours
        (240, 5000, {}, Clears.NOT_CERTAIN),  # 0.04 s at the source: only let-through tells
        (240, 5000, {"let_through": 30_000}, Clears.IN_TIME),
        (240, 5000, {"let_through": 1_000_001}, Clears.TOO_MUCH),
        (139, 5000, {"let_through": 30_000}, Clears.NOT_CERTAIN),
        (500, 600, {"opening_time": 5}, Clears.TOO_LATE),  # by the maker 5 s, and 4 s are borne
        (54, 54, {"energy": 2 * 54**2}, Clears.TOO_LATE),  # 60 s at least, and 2 s are borne
    ],
)
def test_a_fuse_is_in_time_only_where_its_slowest_beats_the_wire(low, high, more, words):
    assert cleared(Fuse(E, 40), low, high, **more) is words


def test_no_fine_answer_without_every_proof():
    """Each fine answer of both sheets, tried again by hand from its own figures."""
    for _, answer in fine("fault-current"):
        v = answer.values
        if v["fuse"] is None:  # then nothing is said of a fuse, but that one is needed
            assert answer.rule == "short.no-fuse-named" and "fuse" not in answer.sentence
            assert "short.name-the-fuse" in answer.rules
            continue
        one_device = v["fuse_percent"] >= 3 and v["fuse"] <= v["ampacity"]
        assert answer["opens"] == "in time for certain" or one_device
        assert v["breaks"] >= 1.1 * v["near_fault"] and v["fuse"] <= v["ampacity"]
        assert v["version"] is None and (one_device or not v["protection"].clearing.arc_left_out)
        assert v["time_constant"] is None or v["time_constant"] <= v["tested_at"]
        assert one_device or v["fuse_time"] <= v["withstand_low"]
        assert v["fuse"] < v["fault_low"]
        assert v["known"] != "estimate" and v["fuse_family"] in SEEN_FAMILIES
        assert v["known"] != "two-readings" or v["off"] <= v["sag"] / 4
    for _, answer in fine("fuse-ladder"):
        v = answer.values
        # certain, or five to one apart with what upstream carries besides taken off
        apart = v["upstream"] - v["other_load"] >= 5 * v["downstream"]
        assert v["order"] == "opens-first-for-certain" or (apart and v["order"] != "will-not")
        assert v["downstream_breaks"] >= v["fault_current"]
        assert v["lowest"] > v["downstream"]
        assert {v["downstream_family"], v["upstream_family"]} <= SEEN_FAMILIES
        assert (v["other_load"] == 0 or apart) and (v["voltage"] <= 32 or v["version"] is None)
        proved = v["let_through"] == "proves-it" or answer.rule == "selectivity.far-apart"
        assert proved or v["downstream_latest"] <= v["upstream_earliest"]


@pytest.mark.parametrize("side", ["downstream", "upstream"])
def test_a_58_volt_family_is_refused_on_a_bank_that_charges_at_58_4_volts(side):
    family = {f"{side}_family": C}
    others = {"downstream_family": "cartridge, class T", "upstream_family": "cartridge, class T"}
    asked = {**others, **family, "fault_current": "500 A"}
    at_58 = calc.work("fuse-ladder", {**asked, "voltage": "58 V"})
    beyond = calc.work("fuse-ladder", {**asked, "voltage": "58.4 V"})
    assert "fuse.voltage-rating-too-low" not in at_58.rules
    assert beyond.verdict == "stop" and beyond.rule == "fuse.voltage-rating-too-low"
    assert "below 58.4" in beyond.sentence


@pytest.mark.parametrize(("highest", "stop"), [("58.4 V", True), ("", True), ("58 V", False)])
def test_a_48_volt_bank_asks_a_fuse_for_its_charging_voltage_not_that_at_rest(highest, stop):
    """At rest 53.2 V, while charging 58.4 V: a blade ends at 58 V (ISO 8820-3)."""
    asked = {"voltage": "53.2 V", "source_resistance": "60 mohm", "fuse": "20 A", "fuse_family": C}
    answer = calc.work("fault-current", {**asked, "highest_voltage": highest})
    assert ("fuse.voltage-rating-too-low" in answer.rules) is stop
    assert (answer.verdict == "stop") is stop

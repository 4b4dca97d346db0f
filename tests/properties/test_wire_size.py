"""What must hold of every conductor that is chosen for a run, whichever figures are typed."""

from hypothesis import assume, given
from hypothesis import strategies as st

import calc
from calc.electrical.ampacity import RuleSet
from calc.electrical.conductors import conductor
from calc.electrical.sizing import offered
from calc.tables import table
from calc.worksheet.fields import Quantity
from tests.properties.inputs import SLACK, inputs_of, tried, valid, worked

SIZE = calc.find("wire-size")
SMALL = {"current": "7 A", "length": "2 m"}  # where most sizes do, so that a draw is of use


def asked(draw, **fixed):
    """Draw inputs that have an answer, with it."""
    texts = draw(inputs_of(SIZE, **fixed))
    answer = worked("wire-size", texts)
    assume(answer is not None)
    return texts, answer


def sizes(answer):
    """Return the names of the sizes that were tried, thinnest first."""
    v = answer.values
    mains = v["rule_set"] == RuleSet.NEC
    return [one.name for one in offered(v["series"], v["gauge_reading"], in_vehicles=not mains)]


def place(answer, name):
    """Return where a size stands in the series that was asked for."""
    return sizes(answer).index(answer.values[name])


def drop_of(answer, size):
    """Return what wire-drop says that `size` loses [V], by its own way, or None."""
    v = answer.values
    shared = ("current", "length", "voltage", "limit", "temperature", "finish", "strands")
    texts = {name: answer.inputs[name].link for name in (*shared, "gauge_reading", "parallel")}
    other = worked("wire-drop", {**texts, "conductor": size})
    assert other is not None, v
    return other.values["drop"]


@given(st.data())
@tried(75)
def test_the_chosen_size_keeps_within_the_drop_and_bears_the_load_and_a_fuse(data):
    _, answer = asked(data.draw)
    v = answer.values
    if v["conductor"] is None:
        assert answer.verdict == "stop"
        return
    assert v["drop"] <= v["allowed"] * SLACK
    assert abs(drop_of(answer, v["conductor"]) - v["drop"]) <= 1e-9 * v["drop"]
    assert v["ampacity"] >= 1.25 * v["current"] / v["parallel"] / SLACK
    if v["fuse"] is not None:
        assert 1.25 * v["current"] / v["parallel"] / SLACK <= v["fuse"] <= v["ampacity"] * SLACK
    else:
        assert answer.verdict != "fine"


@given(st.data())
@tried(60)
def test_one_size_thinner_fails_the_drop_the_heat_or_the_fuse(data):
    """Asked of fuse-choice and wire-drop, which know nothing of the choice."""
    current = data.draw(st.sampled_from(["2 A", "7 A", "20 A", "60 A"]))
    length = data.draw(st.sampled_from(["0.5 m", "2 m", "6 m"]))
    fixed = {"parallel": "1", "gauge_reading": "AWG", "current": current, "length": length}
    _, answer = asked(data.draw, **fixed, voltage=data.draw(st.sampled_from(["12 V", "24 V"])))
    v = answer.values
    assume(v["conductor"] is not None and place(answer, "conductor") > 0)
    thinner = sizes(answer)[place(answer, "conductor") - 1]
    lost = drop_of(answer, thinner)
    shared = ("current", "insulation", "surroundings", "bundled", "ambient", "rule_set")
    texts = {name: answer.inputs[name].link for name in shared}
    if v["terminals"] is not None:
        texts["terminals"] = answer.inputs["terminals"].link
    volts = v["voltage"] * 14.6 / 12
    bears = worked(
        "fuse-choice",
        {**texts, "conductor": thinner, "voltage": f"{volts!r} V", "fault_current": "1 A"},
    )
    too_long = lost is None or lost > v["allowed"] / SLACK
    beyond = {"cable.below-table"}  # for which nothing is published
    if v["terminals"] is not None:
        beyond.add("copper.hot-at-lugs")
    too_hot = bears is not None and bool(beyond & set(bears.rules))
    too_hot = too_hot or bears is None or bears.values["highest"] < v["need"] * SLACK
    no_fuse = bears is None or bears.values["fuse"] is None
    if v["rule_set"] == RuleSet.NEC and volts > 60:  # on the mains side: 240.6(A)
        ratings = [float(row["rating_a"]) for row in table("standard_ratings_nec").rows]
        most = bears.values["highest"] if bears else 0.0
        no_fuse = not any(v["need"] / SLACK <= r <= most * SLACK for r in ratings)
    assert too_long or too_hot or no_fuse


@given(st.data(), st.sampled_from(["length", "current", "temperature", "ambient", "bundled"]))
@tried(100)
def test_more_of_anything_hard_never_lets_a_thinner_size_do(data, field):
    assert isinstance(SIZE.field(field), Quantity)
    texts = data.draw(inputs_of(SIZE, **{k: t for k, t in SMALL.items() if k != field}))
    pair = [data.draw(valid(SIZE.field(field))) for _ in range(2)]
    less, more = sorted(pair, key=lambda text: SIZE.field(field).read(text).value)
    first, second = (worked("wire-size", {**texts, field: text}) for text in (less, more))
    assume(first is not None and second is not None)
    for name in ("for_drop", "for_heat"):
        if second.values[name] is not None:
            assert first.values[name] is not None, "less never asks more of the wire"
            assert place(first, name) <= place(second, name)


@given(st.data())
@tried(60)
def test_a_laxer_limit_and_a_hotter_insulation_never_ask_for_thicker_wire(data):
    texts = data.draw(inputs_of(SIZE, **SMALL))
    strict, lax = (worked("wire-size", {**texts, "limit": limit}) for limit in ("3 %", "10 %"))
    assume(None not in (strict, lax))
    if strict.values["for_drop"]:
        assert place(lax, "for_drop") <= place(strict, "for_drop")
    texts["rule_set"] = "33 CFR 183.425"
    warm, hot = (worked("wire-size", {**texts, "insulation": c}) for c in ("60 C", "105 C"))
    if warm is not None and warm.values["for_heat"]:
        assert place(hot, "for_heat") <= place(warm, "for_heat")


@given(st.data())
@tried(75)
def test_tinned_or_sae_copper_never_lets_a_thinner_size_do(data):
    texts = data.draw(inputs_of(SIZE, **SMALL, series="AWG"))
    plain = worked("wire-size", {**texts, "finish": "plain", "gauge_reading": "AWG"})
    tinned = worked("wire-size", {**texts, "finish": "tinned", "gauge_reading": "AWG"})
    sae = worked("wire-size", {**texts, "finish": "plain", "gauge_reading": "SAE"})
    assume(None not in (plain, tinned, sae))
    for other in (tinned, sae):
        for name in ("for_drop", "for_heat"):
            if other.values[name] is not None:
                ours, theirs = plain.values[name], other.values[name]
                assert conductor(ours).area <= conductor(theirs).area


@given(st.data())
@tried(75)
def test_a_fine_size_bears_the_bundle_alone_and_warm(data):
    """Fine means that nothing the sheet knows of stands against it."""
    _, answer = asked(data.draw, **SMALL)
    v = answer.values
    assume(answer.verdict == "fine")
    assert v["drop_percent"] <= 0.10 * SLACK
    assert v["parallel"] == 1 or v["current"] <= v["ampacity"] * SLACK
    if v["rule_set"] != RuleSet.NEC:
        factors = {3: 0.7, 4: 0.6, 5: 0.6, 6: 0.6}
        together = v["together"]
        share = 1 if together < 3 else factors.get(together, 0.5 if together < 25 else 0.4)
        assert v["fuse"] <= v["table_ampacity"] * v["ambient_factor"] * share * SLACK
    assert v["warm"] <= v["temperature"] * SLACK or v["warm_drop"] <= v["allowed"] * SLACK

"""Shorts and ladders that must not be found fine, each for one reason, and what is said of it."""

import pytest

import calc
from calc.electrical import fuses
from calc.electrical import short_circuit as faults
from calc.electrical.clearing import Clears
from calc.electrical.opening import Fuse
from calc.electrical.selectivity import LetThrough, by_let_through

RUN = {
    "source_resistance": "16 mΩ", "conductor": "6 mm2", "length": "5 m",
    "insulation": "105 C XLPE", "fuse": "30 A", "fuse_family": "type C",
}  # fmt: skip


def short(**inputs):
    return calc.work("fault-current", {**RUN, **inputs})


def rungs(**inputs):
    return calc.work("fuse-ladder", inputs)


def said(answer):
    return " ".join(str(remark) for remark in answer.cautions)


def test_the_run_that_these_tests_change_is_fine():
    assert short().verdict == "fine"


def test_other_load_counts_in_what_melts_the_upstream_fuse():
    """At 100 A and 35 A more it gets (135/100)² times the I²t: 600 becomes 1093.5."""
    fuse = Fuse("blade, regular (type C)", 10)
    given = {"downstream": fuse, "clearing": 600.0, "current": 100.0, "other_load": 35.0}
    assert by_let_through(melting=1093.4, **given) is LetThrough.DOES_NOT_PROVE
    assert by_let_through(melting=1093.6, **given) is LetThrough.PROVES


@pytest.mark.parametrize(("load", "verdict"), [("30 A", "fine"), ("30.5 A", "caution")])
def test_a_loaded_upstream_fuse_is_fine_far_apart_only_and_an_overloaded_one_is_refused(
    load, verdict
):
    """80 A less 30 A is five times 10 A."""
    assert rungs(fault_current="100 A").verdict == "fine"
    loaded = rungs(fault_current="100 A", other_load=load)
    assert loaded.verdict == verdict
    if verdict == "caution":
        assert loaded.rule == "selectivity.upstream-loaded"
        assert loaded["order"] == "opens first for certain"
    assert rungs(fault_current="150 A", other_load="80 A").verdict == "caution"
    assert rungs(fault_current="150 A", other_load="80.1 A").verdict == "stop"


@pytest.mark.parametrize(("voltage", "verdict"), [("32 V", "fine"), ("32.1 V", "caution")])
def test_above_32_volts_only_the_fuse_marked_higher_will_do(voltage, verdict):
    """GB/T 31465.3-2015 (ISO 8820-3:2010), scope: 32 V or 58 V."""
    ladder_ = rungs(voltage=voltage)
    bank = short(voltage="30 V", highest_voltage=voltage, source_resistance="40 mΩ")
    for answer in (ladder_, bank):
        assert answer.verdict == verdict
        assert ("fuse.marked-higher" in answer.rules) is (verdict == "caution")
        assert answer.values["version"] == (58 if verdict == "caution" else None)


def test_a_family_of_one_rating_has_no_version_to_look_for():
    one = fuses.Family("made up", (fuses.Breaks(125, 20000),), (30.0,))
    two = fuses.Family("made up", (fuses.Breaks(32, 1000), fuses.Breaks(58, 1000)), (30.0,))
    assert [one.marked_higher(volts) for volts in (14, 58)] == [None, None]
    assert [two.marked_higher(volts) for volts in (32, 33, 58, 59)] == [None, 58, 58, None]


def test_a_bank_is_not_charged_below_its_voltage_at_rest():
    with pytest.raises(calc.InputError, match="no less than the bank at rest, 52"):
        short(voltage="52 V", highest_voltage="51.9 V")
    assert short(voltage="20 V", highest_voltage="20 V").values["charged"] == 20


@pytest.mark.parametrize(
    ("inputs", "opens"),
    [
        ({"conductor": "1 mm2", "length": "6 m", "source_resistance": "14 mΩ"}, Clears.NEVER),
        ({"conductor": "1 mm2", "length": "4.5 m", "fuse_family": "type E"}, Clears.TOO_LATE),
    ],
)
def test_a_fuse_that_holds_a_weak_short_for_minutes_is_refused(inputs, opens):
    """Type C: 110 % for 100 h (data sheets); type E below 135 %: 60 s (DIN 72581-3)."""
    answer = short(insulation="70 C PVC", **inputs)
    assert answer.values["opens"] == opens
    assert answer.verdict == "stop"


@pytest.mark.parametrize(
    ("fuse", "verdict"), [("10 A", "fine"), ("15 A", "caution"), ("20 A", "stop")]
)
def test_a_fuse_beyond_one_and_a_half_times_what_the_wire_bears_is_refused(fuse, verdict):
    """33 CFR 183.455(c) and table 5: 18 AWG with 60 °C insulation bears 10 A."""
    wire = {"conductor": "18 AWG", "insulation": "70 C PVC", "length": "3 m"}
    answer = short(**wire, fuse=fuse, let_through="300 A2.s", opening_time="0.3 s")
    assert answer.values["all_bear"] == 10
    assert answer.values["opens"] == Clears.IN_TIME
    assert answer.verdict == verdict
    assert (answer.rule == "fuse.above-ampacity-in-time") is (verdict == "caution")


def test_against_a_short_it_may_do_is_said_only_of_a_fuse_that_is_in_time():
    wire = {"conductor": "18 AWG", "insulation": "70 C PVC", "length": "0.5 m"}
    unknown = short(**wire, fuse="15 A")
    assert unknown.values["opens"] != Clears.IN_TIME and unknown.verdict == "caution"
    assert unknown.rule == "fuse.above-ampacity"
    known = rungs(fault_low="10.5 A")
    assert known.rule == "selectivity.fault-carried", "a blade holds 105 % for 100 h"


def test_the_most_of_an_estimate_is_the_most_that_a_text_names():
    """Article on breaking capacity: 100 Ah passes 1000 to 2000 A, up to 4000 A."""
    asked = {"known": "estimate", "capacity": "200 Ah", "voltage": "12.8 V"}
    run = {"conductor": "240 mm2", "length": "1 cm", "joints": "0"}
    answer = calc.work("fault-current", {**asked, **run})
    v = answer.values
    assert v["near_fault"] == pytest.approx(8000) and v["interrupt_near"] == 10000
    assert (v["usual_low"], v["usual_high"]) == (pytest.approx(2000), pytest.approx(4000))
    assert v["fault_current"] > 7500
    fused = calc.work("fault-current", {**asked, "fuse": "100 A", "fuse_family": "limiter strip"})
    assert fused.rule == "fuse.cannot-interrupt" and fused.verdict == "stop", "6000 A, not 8000 A"


@pytest.mark.parametrize("size", ["1 mm2", "6 mm2", "70 mm2", "12 AWG", "2/0 AWG"])
def test_the_highest_short_rests_on_solid_copper_and_the_lowest_on_the_table(size):
    """58 m/(Ω·mm²) at 20 °C, IEC 60028; no table has less, at the same temperature."""
    v = calc.work("fault-current", {"conductor": size, "length": "10 m"}).values
    mm2 = v["named_area"] * 1e6
    assert v["cable_least"] == pytest.approx(20 / (58 * mm2))
    assert v["cable_least"] <= v["cable"] * 1.001
    assert v["fault_current"] == pytest.approx(13.3 / (0.004 + 0.0004 + 20 / (58 * mm2)))
    assert v["cable_hot"] == pytest.approx(v["cable"] * 394.5 / 254.5)


def test_tinned_or_stiffer_copper_moves_the_lowest_short_only():
    plain, tinned, stiff = (
        short(**change).values
        for change in ({}, {"finish": "tinned"}, {"strands": "stranded (class 2)"})
    )
    assert tinned["fault_low"] < plain["fault_low"] < stiff["fault_low"]
    assert tinned["fault_current"] == plain["fault_current"] == stiff["fault_current"]


def test_of_conductors_in_parallel_one_alone_is_held_to_every_short():
    one, two = short().values, short(parallel="2").values
    assert two["fault_current"] > one["fault_current"]
    for same in ("fault_low", "withstand_low", "energy_limit", "ampacity"):
        assert two[same] == one[same]
    assert two["all_bear"] == 2 * one["all_bear"]
    assert "short.in-one-of-several" in short(parallel="2").rules


def test_a_fault_close_to_what_must_break_it_is_said_at_either_end():
    """13.3 V over 2.7 mΩ is 4926 A, and 5000 A the class."""
    near = calc.work("fault-current", {"source_resistance": "2.7 mΩ"})
    assert "short.class-tight" in near.rules
    blade = short(source_resistance="13.9 mΩ")
    assert blade.values["near_fault"] < 1000
    assert blade.verdict == "caution" and blade.rule == "fuse.interrupting-rating-tight"


@pytest.mark.parametrize(
    ("current", "constant"),
    [(99, 0.002), (100, 0.006), (999, 0.006), (1000, 0.008), (9999, 0.008), (10000, 0.016)],
)
def test_the_time_constant_of_the_test_goes_with_the_current(current, constant):
    """30 CFR 28.41(b)."""
    assert faults.tested_time_constant(current) == constant


@pytest.mark.parametrize(("inductance", "verdict"), [("0.1 mH", "fine"), ("100 mH", "caution")])
def test_a_circuit_slower_than_fuses_are_tested_in_is_never_fine(inductance, verdict):
    answer = short(inductance=inductance)
    assert answer.verdict == verdict
    assert ("short.slower-than-tested" in answer.rules) is (verdict == "caution")


def test_a_proof_that_rests_on_typed_figures_says_so():
    thin = {"conductor": "18 AWG", "insulation": "70 C PVC", "length": "3 m", "fuse": "10 A"}
    typed = short(**thin, let_through="300 A2.s")
    assert typed.verdict == "fine" and typed.rule == "fault-current.fine-as-typed"
    assert "fuse.in-time-as-typed" in typed.rules
    slow = short(fuse="20 A", opening_time="200 ms")
    assert slow.rule == "fault-current.fine-as-typed"
    assert short().rule == "fault-current.fine"
    assert "fuse.in-time-as-typed" not in short().rules
    figures = {"downstream_clearing": "900 A2s", "upstream_melting": "901 A2s"}
    proved = rungs(fault_current="800 A", upstream="60 A", **figures)
    assert proved.verdict == "fine" and proved.rule == "fuse-ladder.fine-by-i2t"


def test_a_proof_that_rests_on_memory_is_fine_only_where_one_fuse_does_for_both():
    """4 mm² withstands 831 A for 0.42 s, and a type C blade opens in 0.5 s at most from 350 %.

    A fuse no larger than the ampacity, with a short of three times its rating or more, does for
    overload and short; over 10 m the lowest short is less than three times 20 A.
    """
    near = short(conductor="4 mm2", length="3 m")
    assert near.verdict == "fine" and "fuse.arc-from-memory" not in near.rules
    far = {"conductor": "4 mm2", "length": "10 m", "fuse": "20 A"}
    answer = short(**far)
    assert answer.values["opens"] == Clears.IN_TIME
    assert answer.verdict == "caution" and answer.rule == "fuse.arc-from-memory"
    proved = short(**far, let_through="1500 A2.s")
    assert proved.verdict == "fine" and "fuse.arc-from-memory" not in proved.rules


def test_heat_figures_stand_in_one_unit():
    """So that a let-through can be set against what the wire bears."""
    for size in ("0.5 mm2", "6 mm2", "240 mm2"):
        assert short(conductor=size).shown["energy_limit"].endswith("\u00a0A²·s")


@pytest.mark.parametrize(
    ("family", "rule", "verdict"),
    [
        ("class C", "fuse.ratings-unknown", "caution"),
        ("UL 248-14", "fuse.not-made-for-such-a-fault", "stop"),
        ("IEC 60127", "fuse.not-made-for-such-a-fault", "stop"),
    ],
)
def test_a_family_whose_breaking_is_not_known_can_be_named_and_is_never_fine(family, rule, verdict):
    answer = short(fuse="10 A", fuse_family=family, let_through="100 A2.s", opening_time="0.2 s")
    assert rule in answer.rules and answer.verdict == verdict
    with pytest.raises(calc.InputError, match="one from the list"):
        short(fuse_family="class Q")


def test_a_lithium_bank_is_told_where_its_figure_stands():
    with pytest.raises(calc.InputError, match=r"data sheet .*BMS is neither.*two readings"):
        calc.work("fault-current", {"known": "estimate", "chemistry": "LFP"})


def test_a_refusal_is_not_buried_under_cautions():
    for answer in (short(source_resistance="4 mΩ"), rungs(voltage="100 V"), rungs(fault_low="5 A")):
        assert answer.verdict == "stop"
        assert len(answer.cautions) <= 4, said(answer)

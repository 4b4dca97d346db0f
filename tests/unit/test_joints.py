"""Joints: threads, strengths and torques."""

import math

import pytest

import calc
from calc.electrical import joints, threads
from calc.tables import table

METRIC = table("proof_load").rows
INCH = {row["stud"]: float(row["stress_area_in2"]) for row in table("inch_studs").rows}
"""Tensile stress areas of coarse unified threads [in²], as printed in two thread tables."""
PROOF = {"4.8": 310, "8.8": 580, "10.9": 830}
"""Proof stress of steel classes up to M16 [MPa]: ISO 898-1."""


def ask(**inputs):
    return calc.work("joint-torque", {"maker_torque": ""} | inputs)


def torque(answer, name="torque"):
    return answer[name].m_as("N*m")


@pytest.mark.parametrize("row", METRIC, ids=lambda row: row["stud"])
def test_a_metric_stress_area_is_that_of_its_thread(row):
    """ISO 898-1: A = π/4 (d - 0.9382 p)², printed to three digits."""
    worked = math.pi / 4 * (float(row["diameter_mm"]) - 0.9382 * float(row["pitch_mm"])) ** 2
    assert threads.stud_named(row["stud"]).stress_area * 1e6 == pytest.approx(worked, rel=0.003)


@pytest.mark.parametrize("grade", PROOF)
@pytest.mark.parametrize("row", METRIC, ids=lambda row: row["stud"])
def test_the_printed_proof_load_is_area_times_the_proof_stress_of_its_class(row, grade):
    """ISO 898-1; loads are printed to three digits."""
    printed = threads.proof_load(threads.stud_named(row["stud"]), grade)
    assert printed == pytest.approx(float(row["stress_area_mm2"]) * PROOF[grade], rel=0.005)
    assert threads.strength(grade) == (PROOF[grade] * 1e6, False)


@pytest.mark.parametrize(
    ("grade", "psi", "least"), [("8.8", 85_000, 1.0), ("10.9", 120_000, 0.995), ("4.8", 55_000, 1)]
)
def test_inch_bolts_of_sae_grades_5_8_and_2_are_proof_to_about_the_class_they_are_likened_to(
    grade, psi, least
):
    """SAE J429: 85, 120 and 55 ksi; an inch bolt of grade 8 is 0.3 % below class 10.9."""
    assert psi * 6894.757 >= least * threads.strength(grade)[0]


@pytest.mark.parametrize(("stud", "area"), INCH.items())
def test_an_inch_stress_area_is_the_published_one(stud, area):
    assert threads.stud_named(stud).stress_area / 0.0254**2 == pytest.approx(area, rel=0.005)


@pytest.mark.parametrize("one", threads.studs(), ids=lambda one: one.name)
def test_every_stud_has_a_published_torque_and_a_strength_in_every_material(one):
    assert joints.published_torques(one.name)
    assert one.stress_area < math.pi / 4 * one.diameter**2
    for row in table("material_strength").rows:
        assert threads.proof_load(one, row["grade"]) > 0
    unknown = threads.proof_load(one, "unknown")
    grades = {row["grade"] for row in table("material_strength").rows} - {"copper"}
    assert unknown == min(threads.proof_load(one, grade) for grade in grades)


def test_copper_is_weaker_than_what_is_taken_for_an_unknown_stud_and_the_answer_says_so():
    """ISO 8839: 160 MPa for a copper screw, two thirds of the 240 MPa taken for brass."""
    unknown, copper = ask(stud="M8"), ask(stud="M8", grade="copper")
    assert torque(copper, "ceiling") == pytest.approx(torque(unknown, "ceiling") * 160 / 240)
    assert "joint.material-unknown" in unknown.rules
    assert "joint.material-unknown" not in copper.rules
    assert copper.verdict == "caution"


def test_a_thicker_stud_bears_more():
    for family in ([f"M{n}" for n in (4, 5, 6, 8, 10, 12)], list(INCH)):
        ceilings = [torque(ask(stud=stud, grade="8.8"), "ceiling") for stud in family]
        assert ceilings == sorted(ceilings)


def test_torque_gives_back_its_preload():
    assert threads.tightening_torque(0.2, 0.008, 15900) == pytest.approx(25.44)  # by hand
    answer = ask(stud="M8", grade="8.8", maker_torque="25.44 N.m")
    assert answer["preload"].m_as("N") == pytest.approx(15900)  # 75 % of 21 200 N


@pytest.mark.parametrize(("condition", "verdict"), [("dry", "fine"), ("lubricated", "caution")])
def test_the_maker_s_figure_governs_but_on_a_lubricated_thread_it_is_asked_about(
    condition, verdict
):
    answer = ask(stud="M8", grade="8.8", maker_torque="12 N.m", condition=condition)
    assert torque(answer) == pytest.approx(12)
    assert answer.verdict == verdict
    asked = answer.rule == "joint.maker-torque-lubricated"
    assert asked is (condition == "lubricated")


def test_a_thread_stretched_by_the_lowest_friction_is_a_caution():
    """By hand, 1/4 in, brass or mild steel: 0.0318 in² × 240 MPa is proof to 4.92 kN.

    4.5 N·m × 0.15/0.20 is 3.375 N·m, under the ceiling of 0.15 × 6.35 mm × 3.69 kN = 3.52 N·m, but
    with the lowest factor for oil, 0.10, it clamps with 5.31 kN.
    """
    oiled = ask(stud="1/4 in", condition="lubricated")
    assert torque(oiled) < torque(oiled, "ceiling")
    assert oiled.values["preload_high"] == pytest.approx(3.375 / (0.10 * 0.00635), rel=1e-3)
    assert oiled.values["proof"] == pytest.approx(0.0318 * 25.4e-3**2 * 240e6, rel=0.005)
    assert oiled.verdict == "caution"
    assert oiled.rule == "joint.may-stretch"
    assert "joint.may-stretch" not in ask(stud="1/4 in").rules


def test_dry_stainless_clamps_by_its_own_nut_factors_and_its_ceiling_by_those_of_steel():
    """Nut factor chart: 302 stainless on stainless 0.30 to 0.50, dry steel 0.18 to 0.27.

    No usual value is published for stainless: the middle, 0.40. The smaller factor of dry steel,
    0.20, gives the lower ceiling.
    """
    stainless = ask(stud="M8", grade="A2-70", maker_torque="12 N.m")
    assert stainless["preload"].m_as("N") == pytest.approx(12 / (0.40 * 0.008))
    assert stainless.values["preload_low"] == pytest.approx(12 / (0.50 * 0.008))
    assert stainless.values["preload_high"] == pytest.approx(12 / (0.30 * 0.008))
    assert torque(stainless, "ceiling") == pytest.approx(
        0.20 * 0.008 * 0.75 * 36.6e-6 * 450e6, rel=1e-6
    )
    assert "joint.dry-stainless" in stainless.rules
    grips = {
        (grade, condition): [
            ask(stud="M8", grade=grade, condition=condition).values[name]
            for name in ("grip_low", "grip", "grip_high")
        ]
        for grade in ("8.8", "A2-70")
        for condition in ("dry", "lubricated")
    }
    assert grips == {
        ("8.8", "dry"): [0.18, 0.20, 0.27],
        ("8.8", "lubricated"): [0.10, 0.15, 0.26],
        ("A2-70", "dry"): [0.30, 0.40, 0.50],
        ("A2-70", "lubricated"): [0.10, 0.15, 0.26],
    }


@pytest.mark.parametrize("one", threads.studs(), ids=lambda one: one.name)
def test_a_stud_with_a_single_source_says_so_and_names_no_spread(one):
    rows = [row for row in table("terminal_torque").rows if row["stud"] == one.name]
    figures = {row[end] for row in rows for end in ("torque_low_nm", "torque_high_nm")}
    said = ask(stud=one.name, grade="8.8").rule
    assert said == ("joint.one-source" if len(figures) == 1 else "joint.torque-borrowed")


def test_oil_brings_a_published_torque_down_and_leaves_the_preload():
    """Nut factors 0.20 dry and 0.15 lubricated: three quarters of the torque."""
    dry, oiled = ask(condition="dry"), ask(condition="lubricated")
    assert torque(oiled) == pytest.approx(0.75 * torque(dry))
    assert torque(oiled, "ceiling") == pytest.approx(0.75 * torque(dry, "ceiling"))
    assert oiled["preload"].m_as("N") == pytest.approx(dry["preload"].m_as("N"))


@pytest.mark.parametrize(("lugs", "stops"), [("4", False), ("5", True), ("12", True)])
def test_more_than_four_lugs_stop(lugs, stops):
    """ABYC E-11 and FAA AC 43.13-1B 11-174: four terminals on a stud at most."""
    assert (ask(lugs=lugs).verdict == "stop") is stops


@pytest.mark.parametrize("lugs", range(1, 13))
def test_no_washer_lies_in_the_current_s_path(lugs):
    stack = ask(lugs=str(lugs))["stack"]
    shapes = ["seat", *["lug"] * lugs, "washer", "locking", "nut"]
    assert [part.shape for part in stack] == shapes
    assert all(isinstance(part, str) for part in stack)
    kinds = ["washer" in part or part == "nut" for part in stack]
    assert kinds == sorted(kinds), "a washer stands below a lug"
    assert stack[0].startswith("seat") and stack[-1] == "nut"
    assert len([part for part in stack if part.startswith("lug")]) == lugs
    if lugs > 1:
        assert "largest current" in stack[1]


def test_a_spread_holds_the_figure_in_use():
    for stud in [one.name for one in threads.studs()]:
        answer = ask(stud=stud)
        assert torque(answer, "torque_low") <= torque(answer) <= torque(answer, "torque_high")


@pytest.mark.parametrize("name", ["M7", "M8x1", "8", ""])
def test_a_stud_that_is_not_in_the_table_is_refused_by_name(name):
    with pytest.raises(calc.InputError, match="like M8"):
        ask(stud=name)


@pytest.mark.parametrize("name", ["m8", "M 8", "5/16", '5/16"', "5/16 in", "#10", "no. 10", "NO10"])
def test_a_stud_is_known_by_its_usual_names(name):
    assert torque(ask(stud=name)) > 0

"""Joints: threads, strengths and torques."""

import math

import pytest

import calc
from calc.electrical import joints
from calc.tables import table

METRIC = table("proof_load").rows
INCH = {"No. 10": 0.0175, "1/4 in": 0.0318, "5/16 in": 0.0524, "3/8 in": 0.0775, "1/2 in": 0.1419}
"""Tensile stress areas of coarse unified threads [in²]: ASME B1.1 as remembered."""


def ask(**inputs):
    return calc.work("joint-torque", inputs)


def torque(answer, name="torque"):
    return answer[name].m_as("N*m")


@pytest.mark.parametrize("row", METRIC, ids=lambda row: row["stud"])
def test_a_metric_stress_area_is_that_of_its_thread(row):
    """ISO 898-1: A = π/4 (d - 0.9382 p)², printed to three digits."""
    worked = math.pi / 4 * (float(row["diameter_mm"]) - 0.9382 * float(row["pitch_mm"])) ** 2
    assert joints.stud(row["stud"]).stress_area * 1e6 == pytest.approx(worked, rel=0.003)


@pytest.mark.parametrize("row", METRIC, ids=lambda row: row["stud"])
def test_the_printed_proof_load_is_area_times_580_megapascal(row):
    """ISO 898-1: 580 MPa for class 8.8 up to M16; loads are printed to three digits."""
    printed = joints.proof_load(joints.stud(row["stud"]), "8.8")
    assert printed == pytest.approx(float(row["stress_area_mm2"]) * 580, rel=0.005)


@pytest.mark.parametrize(("stud", "area"), INCH.items())
def test_an_inch_stress_area_is_the_published_one(stud, area):
    assert joints.stud(stud).stress_area / 0.0254**2 == pytest.approx(area, rel=0.005)


@pytest.mark.parametrize("one", joints.studs(), ids=lambda one: one.name)
def test_every_stud_has_a_published_torque_and_a_strength_in_every_material(one):
    assert joints.published_torques(one.name)
    assert one.stress_area < math.pi / 4 * one.diameter**2
    for row in table("material_strength").rows:
        assert joints.proof_load(one, row["grade"]) > 0
    unknown = joints.proof_load(one, "unknown")
    grades = [row["grade"] for row in table("material_strength").rows]
    assert unknown == min(joints.proof_load(one, grade) for grade in grades)


def test_a_thicker_stud_bears_more():
    for family in ([f"M{n}" for n in (4, 5, 6, 8, 10, 12)], list(INCH)):
        ceilings = [torque(ask(stud=stud, grade="8.8"), "ceiling") for stud in family]
        assert ceilings == sorted(ceilings)


def test_torque_gives_back_its_preload():
    assert joints.tightening_torque(0.2, 0.008, 15900) == pytest.approx(25.44)  # by hand
    answer = ask(stud="M8", grade="8.8", maker_torque="25.44 N.m")
    assert answer["preload"].m_as("N") == pytest.approx(15900)  # 75 % of 21 200 N


def test_the_maker_s_figure_governs_whatever_the_table_says():
    answer = ask(stud="M8", grade="8.8", maker_torque="12 N.m", condition="lubricated")
    assert torque(answer) == pytest.approx(12)
    assert answer.verdict == "fine"
    assert any("dry thread" in said.text for said in answer.cautions)


def test_without_the_maker_s_figure_the_answer_is_never_fine():
    for stud in [one.name for one in joints.studs()]:
        for grade in ("8.8", "A2-70", "brass", "unknown"):
            assert ask(stud=stud, grade=grade).verdict == "caution"


def test_a_maker_s_torque_beyond_the_thread_stops():
    """The ceiling of M8 in 8.8, dry: 0.2 × 8 mm × 15.9 kN = 25.44 N·m."""
    assert ask(stud="M8", grade="8.8", maker_torque="25.4 N.m").verdict == "fine"
    assert ask(stud="M8", grade="8.8", maker_torque="25.5 N.m").verdict == "stop"


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
    kinds = ["washer" in part or part == "nut" for part in stack]
    assert kinds == sorted(kinds), "a washer stands below a lug"
    assert stack[0].startswith("seat") and stack[-1] == "nut"
    assert len([part for part in stack if part.startswith("lug")]) == lugs
    if lugs > 1:
        assert "largest current" in stack[1]


def test_a_spread_holds_the_figure_in_use():
    for stud in [one.name for one in joints.studs()]:
        answer = ask(stud=stud)
        assert torque(answer, "torque_low") <= torque(answer) <= torque(answer, "torque_high")


@pytest.mark.parametrize("name", ["M7", "M8x1", "8", ""])
def test_a_stud_that_is_not_in_the_table_is_refused_by_name(name):
    with pytest.raises(calc.InputError, match="like M8"):
        ask(stud=name)


@pytest.mark.parametrize("name", ["m8", "M 8", "5/16", '5/16"', "5/16 in", "#10", "no. 10", "NO10"])
def test_a_stud_is_known_by_its_usual_names(name):
    assert torque(ask(stud=name)) > 0

"""The sum of one joint, which several worksheets use."""

import pytest

import calc
from calc.electrical import joints
from calc.units.covered import NotCovered


def ask(**inputs):
    return calc.work("joint-torque", {"maker_torque": ""} | inputs)


def joint(**changes):
    usual = {
        "stud": "M8", "grade": "unknown", "condition": "dry", "maker_torque": None,
        "kind": "busbar-or-stud", "lugs": 1.0, "opened": "seldom",
    }  # fmt: skip
    return joints.bolted_joint(**usual | changes)


def test_what_the_domain_finds_of_a_joint_is_what_the_worksheet_shows():
    """Two worksheets use the one function; here the first of them."""
    asked = {"stud": "3/8 in", "grade": "brass", "condition": "lubricated"}
    answer = ask(**asked, maker_torque="20 N.m")
    assert answer.result == joint(**asked, maker_torque=20.0)
    assert answer.result.clamping.preload == answer.values["preload"]


@pytest.mark.parametrize(
    ("inputs", "flags"),
    [
        # M8: 6 N·m is the lowest published, ceilings 25.44 N·m in 8.8 and 10.54 N·m in brass.
        ({"grade": "8.8", "maker_torque": 12.0}, set()),
        ({"grade": "8.8", "maker_torque": 2.9}, {"far_below_published", "below_published"}),
        ({"grade": "8.8", "maker_torque": 5.9}, {"below_published"}),
        ({"grade": "8.8", "maker_torque": 17.1}, {"above_published"}),
        ({"grade": "brass", "maker_torque": 12.0}, {"too_tight"}),
        # 13 N·m over 0.18 × 8 mm is 9.03 kN, and the thread is proof to 36.6 mm² × 240 MPa.
        ({"grade": "brass", "maker_torque": 13.0}, {"too_tight", "may_stretch"}),
        ({"grade": "8.8", "maker_torque": None}, set()),
    ],
)
def test_a_joint_is_marked_where_its_torque_is_too_much_or_too_little(inputs, flags):
    found = joint(**inputs)
    marks = (
        "far_below_published", "below_published", "above_published", "too_tight", "may_stretch",
    )  # fmt: skip
    assert {name for name in marks if getattr(found, name)} == flags


def test_a_published_torque_is_withheld_from_a_known_stud_that_cannot_bear_it():
    """M4 of copper bears 0.84 N·m and 1.2 N·m is published; an unmarked one may bear it."""
    copper = joint(stud="M4", grade="copper")
    assert (copper.withheld, copper.torque) == (1.2, None)
    known, unknown = joint(stud="M4", grade="copper", maker_torque=1.2), joint(stud="M4")
    assert [(one.withheld, one.torque) for one in (known, unknown)] == [(None, 1.2)] * 2


@pytest.mark.parametrize(
    ("wrong", "parameter", "listed"),
    [
        ({"grade": "Brass"}, "grade", "'brass'"),
        ({"condition": "wet"}, "condition", "'lubricated'"),
        ({"stud": "M9"}, "stud", "M10"),
        ({"kind": "battery"}, "joint_kind", "'battery-terminal'"),
        ({"opened": "never"}, "opened", "'seldom'"),
    ],
)
def test_a_name_that_is_not_there_is_refused_with_those_that_are(wrong, parameter, listed):
    with pytest.raises(NotCovered) as refused:
        joint(**wrong)
    assert refused.value.parameter == parameter
    assert listed in refused.value.accepted


@pytest.mark.parametrize(("torque_", "share"), [("12 N.m", 7500), ("17 N.m", 10625)])
def test_the_share_of_the_thread_that_a_torque_uses_is_of_its_proof_load(torque_, share):
    """By hand, M8: T/(0.20 × 8 mm) over the 21 200 N of class 8.8."""
    answer = ask(stud="M8", grade="8.8", maker_torque=torque_)
    assert answer["clamp_share"].m_as("") == pytest.approx(share / 21200)
    assert answer.values["power_share"] == pytest.approx(10625 / 21200)  # switchgear: 17 N·m

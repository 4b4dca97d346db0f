"""What a torque is called: the maker's against the published ones, and against what is borne."""

import pytest

import calc
from calc.electrical import threads
from calc.render.answer import summary_text
from calc.tables import table


def ask(**inputs):
    return calc.work("joint-torque", {"maker_torque": ""} | inputs)


def torque(answer, name="torque"):
    return answer[name].m_as("N*m")


@pytest.mark.parametrize(
    ("grade", "maker_torque", "verdict"),
    [
        # Ceilings of M8, dry, 0.2 × 8 mm × 75 % of 36.6 mm² × 240 MPa or 450 MPa: 10.54, 19.76 N·m.
        ("unknown", "10.5 N.m", "fine"),
        ("unknown", "10.6 N.m", "caution"),
        ("unknown", "19.8 N.m", "caution"),
        ("brass", "10.5 N.m", "fine"),
        ("brass", "10.6 N.m", "stop"),
        ("A2-70", "19.7 N.m", "fine"),  # a known metal takes it, on a busbar
        ("A2-70", "19.8 N.m", "stop"),
    ],
)
def test_over_the_ceiling_a_known_material_stops_and_an_unknown_one_warns(
    grade, maker_torque, verdict
):
    answer = ask(stud="M8", grade=grade, maker_torque=maker_torque)
    assert answer.verdict == verdict
    weak = grade == "unknown" and verdict == "caution"
    assert (answer.rule == "joint.torque-over-weak-thread") is weak


@pytest.mark.parametrize(
    ("stud", "maker_torque", "side"),
    [
        # Published: 6 to 17 N·m for M8, 14 to 68 N·m for M12, 9 N·m alone for 5/16 in.
        ("M8", "2.9 N.m", "far-below"),
        ("M8", "3.1 N.m", "below"),
        ("M8", "5.9 N.m", "below"),
        ("M8", "6 N.m", ""),
        ("M8", "17 N.m", ""),
        ("M8", "17.1 N.m", ""),  # class 8.8 is known to take 25.4 N·m
        ("M12", "6.9 N.m", "far-below"),
        ("M12", "13.9 N.m", "below"),
        ("M12", "80 N.m", ""),
        ("5/16 in", "4.4 N.m", "far-below"),
        ("5/16 in", "4.6 N.m", ""),
        ("5/16 in", "17.9 N.m", ""),
        ("5/16 in", "18.1 N.m", ""),
    ],
)
def test_a_maker_s_torque_outside_every_published_one_is_asked_about(stud, maker_torque, side):
    """It governs, but a figure in lbf·ft read as N·m, or the other way, lies outside."""
    answer = ask(stud=stud, grade="8.8", maker_torque=maker_torque)
    assert answer.verdict == ("caution" if side else "fine")
    assert answer.rule == (f"joint.torque-{side}-published" if side else "joint-torque.fine")
    assert "unit" in answer.sentence or "N·m against lbf·ft" in answer.sentence or not side
    assert torque(answer) == pytest.approx(float(maker_torque.split()[0]))


def test_a_torque_for_a_lead_post_is_not_fine_because_the_steel_would_bear_it():
    """36 N·m on M8 of 10.9, whose ceiling is 36.48 N·m; the highest published is 17 N·m."""
    slip = ask(stud="M8", grade="10.9", maker_torque="36 N.m", joint="battery terminal")
    assert slip.verdict == "caution"
    assert slip.rule == "joint.torque-above-published"


@pytest.mark.parametrize(
    ("joint", "fine", "beside"),
    [
        ("battery terminal", "joint-torque.fine-battery", "joint.battery-terminal"),
        ("fuse holder or breaker", "joint-torque.fine-fuse", "joint.plastic-body"),
    ],
)
def test_what_the_stud_bears_is_said_to_tell_nothing_of_a_soft_post_or_body(joint, fine, beside):
    answer = ask(stud="M8", grade="8.8", maker_torque="9 N.m", joint=joint)
    assert (answer.verdict, answer.rule) == ("fine", fine)
    assert "never more" in answer.sentence
    said = next(said.text for said in answer.cautions if said.rule == beside)
    assert "limit does not apply" in said


@pytest.mark.parametrize(
    ("stud", "grade", "bears"),
    [
        # By hand: 0.2 × 4 mm × 75 % of 8.78 mm² × 160 MPa, and 12.7 mm, 91.5 mm², 240 MPa.
        ("M4", "copper", 0.8429),
        ("1/2 in", "brass", 41.8),
    ],
)
def test_a_published_torque_that_a_known_stud_cannot_bear_is_not_given(stud, grade, bears):
    answer = ask(stud=stud, grade=grade)
    assert torque(answer, "ceiling") == pytest.approx(bears, rel=0.002)
    assert answer["torque"] is None and answer["preload"] is None
    assert answer.verdict == "stop"
    assert answer.rule == "joint.no-torque-to-trust"
    maker = f"{0.9 * bears:.3f} N.m"
    assert torque(ask(stud=stud, grade=grade, maker_torque=maker)) == pytest.approx(
        0.9 * bears, rel=0.001
    )


def test_no_torque_above_the_ceiling_is_shown_without_a_word_beside_it():
    for one in threads.studs():
        for grade in (row["grade"] for row in table("material_strength").rows):
            for condition in ("dry", "lubricated"):
                answer = ask(stud=one.name, grade=grade, condition=condition)
                if answer["torque"] is None:
                    assert answer.verdict == "stop" and grade != "unknown"
                    continue
                over = torque(answer) > torque(answer, "ceiling") * (1 + 1e-9)
                assert not over or (grade == "unknown" and answer.verdict == "stop")
                assert ("more than" in summary_text(answer)) is over
    assert "more than brass or mild steel takes" in summary_text(ask(stud="1/2 in"))


def test_a_figure_brought_to_an_oiled_thread_is_not_called_published():
    """The published ones for M8 are 6 to 17 N·m, dry; three quarters of them are nobody's."""
    oiled = ask(stud="M8", grade="8.8", condition="lubricated")
    assert "on an oiled thread, 6 N·m" in oiled.sentence.replace("\u00a0", " ")
    assert "on an oiled thread" in oiled.sentence
    assert "joint.published-are-dry" in [said.rule for said in oiled.notes]
    alone = ask(stud="5/16 in", grade="8.8", condition="lubricated")
    assert "9 N·m dry" in alone.sentence.replace("\u00a0", " ")


def test_without_the_maker_s_figure_the_answer_is_never_fine():
    for stud in [one.name for one in threads.studs()]:
        for grade in ("8.8", "A2-70", "brass", "unknown"):
            # Published 54.3 and 2.0 N·m; in brass they bear 41.8 and 1.96 N·m.
            over = grade in ("brass", "unknown") and stud in ("1/2 in", "No. 10")
            assert ask(stud=stud, grade=grade).verdict == ("stop" if over else "caution")


def test_a_maker_s_torque_beyond_the_thread_stops():
    """The ceiling of M8 in 8.8, dry: 0.2 × 8 mm × 15.9 kN = 25.44 N·m; published up to 17 N·m."""
    assert ask(stud="M8", grade="8.8", maker_torque="25.4 N.m").verdict == "fine"
    assert ask(stud="M8", grade="8.8", maker_torque="25.5 N.m").verdict == "stop"


@pytest.mark.parametrize(
    ("maker_torque", "verdict"),
    [("3.1 N.m", "caution"), ("12 N.m", "fine"), ("36 N.m", "caution")],
)
def test_the_sheet_of_joints_questions_a_torque_that_nobody_publishes(maker_torque, verdict):
    """Published for M8: 6 to 17 N·m; a stud of 10.9 would bear all three."""
    joints_ = f"battery plus:M8:{maker_torque}:10.9:dry:1:battery terminal"
    assert calc.work("joint-sheet", {"joints": joints_}).verdict == verdict

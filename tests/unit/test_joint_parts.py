"""What lies on a stud, what locks it and how it is looked after, by kind of joint."""

import pytest

import calc


def ask(**inputs):
    return calc.work("joint-torque", {"maker_torque": ""} | inputs)


KINDS = ("busbar or stud", "battery terminal", "fuse holder or breaker", "chassis ground")


def fits(**inputs):
    """Return whether each way of locking fits, by its first words."""
    answer = ask(**inputs)
    assert all(way.fits for way in answer["locking"])
    assert not any(way.fits for way in answer["unfit"])
    return {way.method: way.fits for way in (*answer["locking"], *answer["unfit"])}


def fit(word, **inputs):
    return next(ok for method, ok in fits(**inputs).items() if word in method)


def test_what_locks_a_plain_stud_is_what_it_was():
    assert fits() == {
        "prevailing-torque nut (nylon ring)": True,
        "serrated (knurled) flange nut": True,
        "conical spring washer, or a wedge-locking pair": True,
        "split lock washer": False,
        "thread locker": False,
        "wing nut": False,
        "paint mark across nut and stud": True,
    }


@pytest.mark.parametrize("joint", KINDS)
def test_what_never_holds_a_cable_joint_is_never_recommended(joint):
    """Reported NASA RP-1228 of split washers; common practice for the others."""
    for word in ("split", "thread locker", "wing"):
        assert not fit(word, joint=joint)
    assert fit("conical", joint=joint) and fit("paint", joint=joint)


@pytest.mark.parametrize(
    ("word", "joint", "ok"),
    [
        ("nylon", "fuse holder or breaker", False),  # it runs hot
        ("all metal", "fuse holder or breaker", True),
        ("nylon", "chassis ground", True),
        ("serrated", "battery terminal", False),  # soft lead
        ("serrated", "fuse holder or breaker", False),  # plastic body
        ("serrated", "chassis ground", True),
        ("came with", "battery terminal", True),
        ("came with", "fuse holder or breaker", True),
        ("toothed", "chassis ground", False),  # aircraft text: no washer in the current path
        ("self-tapping", "chassis ground", False),
    ],
)
def test_what_locks_a_nut_depends_on_the_joint(word, joint, ok):
    """Common practice, no source, unless the row says so."""
    assert fit(word, joint=joint) is ok


def test_a_joint_that_is_opened_often_takes_no_nut_that_is_used_once():
    for joint in KINDS:
        assert not fit("nylon", joint=joint, opened="often")
        assert fit("conical", joint=joint, opened="often")


def test_each_way_of_locking_has_its_reason():
    for joint in KINDS:
        for lugs in ("1", "4"):
            answer = ask(joint=joint, lugs=lugs)
            ways = [*answer["locking"], *answer["unfit"]]
            assert all(len(way.why) > 15 for way in ways)
            assert ("several lugs settle" in "".join(map(str, ways))) is (lugs == "4")
            assert len(answer["locking"]) <= 4, "what a phone shows unfolded"


@pytest.mark.parametrize("joint", KINDS)
def test_every_kind_of_joint_has_its_routine_and_its_seat(joint):
    answer = ask(joint=joint)
    routine = answer["routine"]
    assert routine[0].startswith("when made") and "first drives" in routine[1]
    assert any("drop under load" in line for line in routine)
    assert any("does not show" in line for line in routine)  # NEC Informative Annex I
    cautions = " ".join(said.text for said in answer.cautions)
    assert "first drives" not in cautions and "does not show" not in cautions, "said twice"
    others = {ask(joint=other)["routine"][2] for other in KINDS if other != joint}
    assert routine[2] not in others
    assert answer["stack"][0] != ask(joint=KINDS[KINDS.index(joint) - 1])["stack"][0]


def test_split_washers_are_said_to_be_disputed_with_both_sides_and_their_sources():
    notes = [(said.text, said.source.title) for said in ask().notes]
    assert any("flat and useless" in text and "NASA" in title for text, title in notes)
    assert any("no significant difference" in text for text, title in notes)
    assert any("sellers say the opposite" in text for text, title in notes)


def test_no_published_torque_is_offered_for_a_battery_terminal_without_saying_so():
    assert ask(joint="battery terminal").rule == "joint.no-torque-for-battery"
    known = ask(joint="battery terminal", maker_torque="9 N.m", grade="8.8")
    assert known.verdict == "fine"

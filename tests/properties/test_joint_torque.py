"""What must hold of every bolted joint: more on a stud, or opened more often, is never better."""

from hypothesis import given
from hypothesis import strategies as st

import calc
from tests.properties.inputs import inputs_of, tried

SHEET = calc.find("joint-torque")
ORDER = {"fine": 0, "caution": 1, "stop": 2}


@given(st.data(), st.integers(1, 12), st.integers(0, 11))
@tried(40)
def test_more_lugs_on_a_stud_are_never_judged_better(data, lugs, more):
    texts = data.draw(inputs_of(SHEET))
    few = SHEET.work(texts | {"lugs": str(lugs)})
    many = SHEET.work(texts | {"lugs": str(min(lugs + more, 12))})
    assert ORDER[many.verdict] >= ORDER[few.verdict]


@given(st.data())
@tried(40)
def test_a_joint_that_is_opened_often_is_never_judged_better_and_has_no_more_that_locks_it(data):
    texts = data.draw(inputs_of(SHEET))
    seldom, often = (SHEET.work(texts | {"opened": one}) for one in ("seldom", "often"))
    assert ORDER[often.verdict] >= ORDER[seldom.verdict]
    assert {way.label for way in often["locking"]} <= {way.label for way in seldom["locking"]}


@given(st.data(), st.floats(0.2, 100), st.floats(1, 5))
@tried(40)
def test_more_torque_on_a_thread_is_never_judged_better_above_the_published_range(
    data, torque, factor
):
    texts = data.draw(inputs_of(SHEET))
    less = SHEET.work(texts | {"maker_torque": f"{torque!r} N.m"})
    more = SHEET.work(texts | {"maker_torque": f"{min(torque * factor, 300)!r} N.m"})
    if not less.result.below_published:
        assert ORDER[more.verdict] >= ORDER[less.verdict]


@given(st.data())
@tried(40)
def test_a_joint_without_the_maker_s_torque_is_never_judged_better_than_with_a_good_one(data):
    texts = data.draw(inputs_of(SHEET))
    without = SHEET.work(texts | {"maker_torque": ""})
    assert ORDER[without.verdict] >= ORDER["caution"]

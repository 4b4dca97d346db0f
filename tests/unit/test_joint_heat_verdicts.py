"""What a reading across a joint is called: verdicts that must not be kinder than what is known."""

import pytest

import calc


def ask(**inputs):
    return calc.work("joint-heat", inputs)


def test_a_warm_joint_is_fine_only_where_a_thermometer_says_so():
    """By hand: 10 mV at 250 A give 2.5 W, 14 mV at 350 A 4.9 W, 16 mV at 400 A 6.4 W."""
    texts = {"drop": "16 mV", "good_drop": "16 mV", "current": "400 A", "full_current": "400 A"}
    assert ask(**texts).verdict == "caution"
    assert ask(**texts, rise="0.5 K", rise_over="air").verdict == "fine"
    assert ask(**texts, rise="1 K", rise_over="air").verdict == "caution"


def test_a_joint_that_warms_is_not_cleared_by_a_like_joint_that_may_warm_as_much():
    """NBSIR 76-1011: from 5 W on a loose connection was seen to glow; two may be loose."""
    for drop in ("16 mV", "90 mV"):  # 4.8 W and 27 W at 300 A, 6.4 W at 400 A
        texts = {"drop": drop, "good_drop": drop, "current": "400 A", "full_current": "400 A"}
        assert ask(**texts, rise="0.5 K", rise_over="like joint").verdict != "fine"
    alike = ask(**texts | {"drop": "16 mV", "good_drop": "16 mV"}, rise="0.5 K")
    assert alike.rule == "contact.heat-of-a-glow"
    assert "contact.warm-as-its-like" in alike.rules


@pytest.mark.parametrize(
    ("drop", "verdict"), [("50 mV", "fine"), ("50.1 mV", "caution"), ("98 mV", "caution")]
)
def test_a_terminal_whose_resistance_may_not_even_double_is_not_fine(drop, verdict):
    """By hand: twice 50 mV is the 0.1 V of the SAE limit. At 13 A that is 0.65 W, and no heat."""
    answer = ask(probed="plug-in", drop=drop, good_drop=drop, current="13 A", full_current="13 A")
    assert answer.verdict == verdict
    assert (answer.rule == "contact.little-growth-left") is (verdict == "caution")


def test_what_is_not_known_has_no_line_and_one_joint_is_not_one_times_another():
    alone = ask(drop="300 mV", current="100 A", full_current="200 A")
    none = {one.id for one in alone.worksheet.results if alone.values[one.id] is None}
    assert none == {"ratio", "spot", "growth_left"}
    assert all(alone.worksheet.result(name).hide_if_none for name in none)
    assert "contact.spots-would-melt" in alone.rules
    pair = ask(drop="10 mV", good_drop="10 mV", current="100 A", full_current="100 A")
    assert pair.rule == "joint-heat.fine" and "1 times" not in pair.sentence


def test_of_a_fuse_no_contact_spot_and_no_growth_is_told():
    """Most of its drop lies in the link, and not in a few spots."""
    fuse = ask(probed="fuse", drop="110 mV", current="30 A", full_current="20 A")
    none = {one.id for one in fuse.worksheet.results if fuse.values[one.id] is None}
    assert none == {"ratio", "spot", "growth"}

"""What the page of plans says of the van that has all ten usual mistakes."""

import pytest

from calc.judge import Level
from calc.van.demos import demo
from calc.van.review import review
from tests.unit.test_van_review import MISTAKES, TEN, by_rule

WORSE = ({"batteries[1].chemistry": "LFP"}, {"alternator.alternator": "150 A"})


def test_each_mistake_has_the_level_that_the_page_tells():
    levels = [by_rule(TEN, rule).level for rule in MISTAKES.values()]
    told = {one: [n for n, level in enumerate(levels, 1) if level is one] for one in set(levels)}
    assert told == {
        Level.STOP: [3, 6],
        Level.CAUTION: [1, 2, 4, 5, 7],
        Level.NOTE: [8, 9, 10],
    }
    assert [one.rule for one in TEN.findings][-3:] == list(MISTAKES.values())[7:]


@pytest.mark.parametrize("worse", WORSE)
def test_its_relay_is_a_stop_where_the_page_says_so(worse):
    found = review(demo("ten-mistakes").changed(worse)).findings
    assert [one.rule for one in found if one.level is Level.STOP and one.place == "alternator"]

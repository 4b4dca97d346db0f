"""Remedies of the wire sheets on drawn inputs: a rule falls silent, none as grave speaks up."""

from collections import Counter

import pytest

import calc
from tests.contract.samples import answers
from tests.rules.judging import mended, remedy

EACH = 8  # inputs for a rule


@pytest.mark.parametrize("name", ["fuse-choice", "wire-drop", "wire-size"])
def test_every_remedy_mends_its_rule_on_what_is_drawn(name):
    tried: Counter[str] = Counter()
    with_remedy = {use.rule.id for use in calc.find(name).uses if use.rule.mend}
    for texts, answer in answers(name):
        for rule in with_remedy & set(answer.rules):
            if tried[rule] < EACH and remedy(name, rule, texts):
                mended(name, rule, texts)
                tried[rule] += 1
    assert sum(tried.values()) > 30 and len(tried) > 4

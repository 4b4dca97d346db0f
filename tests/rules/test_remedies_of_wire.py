"""Remedies of the wire sheets on drawn inputs: a rule falls silent, none as grave speaks up."""

from collections import Counter
from random import Random

import pytest

import calc
from tests.contract.samples import drawn, single, worked
from tests.rules.judging import mended, remedy

EACH = 8  # inputs for a rule


@pytest.mark.parametrize("name", ["fuse-choice", "wire-drop", "wire-size"])
def test_every_remedy_mends_its_rule_on_what_is_drawn(name):
    """On inputs that are the same in every run."""
    sheet, tried = calc.find(name), Counter[str]()
    with_remedy = {use.rule.id for use in sheet.uses if use.rule.mend}
    for texts, answer in worked(sheet, (*single(sheet), *drawn(sheet, Random(name), 800))):
        for rule in with_remedy & set(answer.rules):
            if tried[rule] < EACH and remedy(name, rule, texts):
                mended(name, rule, texts)
                tried[rule] += 1
    assert sum(tried.values()) > 30 and len(tried) > 4

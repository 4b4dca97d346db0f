"""The rules that a sheet uses: each can be asked alone and speaks of what is there."""

import pytest

from calc.judge import JUDGING
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Placed
from calc.worksheet.outputs import kind_at, part_of, parts_at
from tests.contract.audit import placeholders
from tests.contract.samples import answers, sheets

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def texts_of(use: Placed) -> list[str]:
    """Return the sentences of a rule as a sheet uses it."""
    return [text for text in (use.headline or use.rule.headline, use.text or use.rule.text) if text]


def names_of(use: Placed, *texts: str) -> set[tuple[str, bool]]:
    """Return the names in a rule's texts, and whether they stand in the sheet's own words."""
    own = (use.headline, use.text)
    found = {(name, text in own) for text in texts for name in placeholders(text)}
    return found - {("those", True)}  # the rows of a list that it fires in


@EACH
def test_every_rule_can_be_asked_alone(sheet):
    """Whatever else fires: no rule leans on another having been asked first."""
    for texts, answer in answers(sheet.id):
        for use in sheet.uses:
            for _, subject in parts_at(answer.result, use.at):
                assert use.rule.when(subject) in (True, False), f"{use.rule.id} for {texts}"
                if use.rule.when(subject) and use.rule.mend:
                    change = use.rule.mend(subject)
                    assert change is None or change.values


@EACH
def test_what_judges_has_a_headline_and_what_does_not_has_none(sheet):
    for use in sheet.uses:
        headline, text = use.headline or use.rule.headline, use.text or use.rule.text
        assert bool(headline) is (use.rule.level in JUDGING), use.rule.id
        assert headline or text, use.rule.id


@EACH
def test_no_sentence_speaks_of_a_figure_that_is_not_there(sheet):
    for texts, answer in answers(sheet.id):
        for use in sheet.uses:
            here = any(use.rule.when(part) for _, part in parts_at(answer.result, use.at))
            if use.rule.id in answer.rules and here:
                assert not missing(use, answer), f"{use.rule.id} for {texts}"
        for part in (step for step in sheet.steps if step.when(answer.result)):
            empty = {n for n in placeholders(part.text) if answer.values[n] in (None, ())}
            assert not empty, f"{part.text!r} without {empty} for {texts}"
        assert "{" not in "".join((answer.sentence, *(x.text for x in answer.working)))


def missing(use: Placed, answer: Answer) -> set[str]:
    """Return the names that a rule's headline or text, where it is given, speaks of in vain."""
    texts = [use.text or use.rule.text]
    texts += [use.headline or use.rule.headline] if use.rule.id == answer.rule else []
    return {
        name
        for name, own in names_of(use, *texts)
        if _spoken_of(use, answer, name, own=own) in (None, ())
    }


def _spoken_of(use: Placed, answer: Answer, name: str, *, own: bool) -> object:
    """Return what a name stands for: a sheet's own words may name what stands elsewhere."""
    if name in answer.shown and (own or not use.at):
        return answer.values[name]
    return part_of(answer.result, _path(use, answer, name, own=own))


def _path(use: Placed, answer: Answer, name: str, *, own: bool) -> str:
    """Return where a name of a rule's words stands in the result."""
    path = f"{use.at}.{name}" if use.at else name
    try:
        kind_at(type(answer.result), path)
    except AttributeError:
        return name if own else path
    return path


@EACH
def test_a_rule_names_what_is_there(sheet):
    _, answer = answers(sheet.id)[0]
    for use in sheet.uses:
        for name, own in names_of(use, *texts_of(use)):
            if name not in answer.shown or (use.at and not own):
                kind_at(type(answer.result), _path(use, answer, name, own=own))

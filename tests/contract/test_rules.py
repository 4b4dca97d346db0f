"""A judgement stands once, under one id, beside the domain that it judges, and is used."""

import re
from collections import defaultdict
from importlib import import_module
from pathlib import Path

import pytest

import calc
from calc.judge import JUDGING, Level, Rule
from calc.van.review import ASKED
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Placed
from calc.worksheet.outputs import parts_at
from tests.contract.samples import answers, sheets
from tests.counts import often

PROJECT = Path(__file__).parents[2]


def homes() -> dict[int, str]:
    """Return the module of each rule of the book, by the rule's identity."""
    found: dict[int, str] = {}
    for path in sorted((PROJECT / "calc").glob("*/rules/*.py")):
        name = path.relative_to(PROJECT).with_suffix("").as_posix().replace("/", ".")
        module = import_module(name.removesuffix(".__init__"))
        for value in vars(module).values():
            if isinstance(value, Rule):
                found.setdefault(id(value), name)
    return found


def used() -> dict[str, list[Rule]]:
    """Return the rules that sheets use, by id."""
    found: dict[str, list[Rule]] = defaultdict(list)
    for sheet in sheets():
        for use in sheet.uses:
            if use.rule not in found[use.rule.id]:
                found[use.rule.id].append(use.rule)
    return found


def test_an_id_stands_for_one_rule():
    assert {name: rules for name, rules in used().items() if len(rules) > 1} == {}


def test_an_id_names_a_subject_and_a_finding():
    assert [name for name in used() if not re.fullmatch(r"[a-z0-9-]+\.[a-z0-9-]+", name)] == []


def test_a_judgement_lives_in_the_book_and_what_a_sheet_says_by_itself_bears_its_name():
    book = homes()
    for sheet in sheets():
        for use in sheet.uses:
            if id(use.rule) not in book:
                assert use.rule.id.startswith(f"{sheet.id}."), use.rule.id
                assert use.rule.level not in (Level.STOP, Level.CAUTION), f"{use.rule.id} judges"


def test_no_rule_of_the_book_is_idle():
    own = {id(rule) for rules in used().values() for rule in rules}
    own |= {id(rule) for asked in ASKED for rule in asked.rules}  # those of a whole van
    assert {home for rule, home in homes().items() if rule not in own} == set()


def test_no_sentence_is_written_twice():
    """Two rules of different level may say the same: by one constant, not by two copies."""
    texts: dict[str, dict[int, set[str]]] = defaultdict(lambda: defaultdict(set))
    for rules in used().values():
        for rule in rules:
            if rule.text:
                texts[rule.text][id(rule.text)].add(rule.id)
    twice = [list(copies.values()) for copies in texts.values() if len(copies) > 1]
    assert twice == []


@pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
def test_a_verdict_is_the_worst_level_that_fires_and_its_sentence_the_first_of_that_level(sheet):
    """A rule may be asked of two parts of a circuit: only where it fires does its place count.

    One that another covers in the same place is passed over.
    """
    for texts, answer in answers(sheet.id)[:: often(7, 1)]:
        fired = [use for use in sheet.uses if use.rule.id in answer.rules and fires(use, answer)]
        assert {use.rule.id for use in fired} == {*answer.rules}, texts
        levels = {use.rule.level for use in fired}
        worst = next(level for level in JUDGING if level in levels)
        assert answer.verdict == worst, texts
        for use in (one for one in fired if one.rule.level == worst):
            if use.rule.id == answer.rule:
                break
            covers = frozenset().union(*(one.rule.covers | one.covers for one in fired))
            assert use.rule.id in covers, texts
        else:
            pytest.fail(f"{answer.rule} decides and does not fire: {texts}")


def fires(use: Placed, answer: Answer) -> bool:
    """Whether a rule fires in a part that its sheet asks it of."""
    return any(use.rule.when(subject) for _, subject in parts_at(answer.result, use.at))


def test_each_sheet_can_be_fine():
    """By a sentence of its own, or it is one that never says so, with the reason."""
    never = {
        "alternator-charge": "a relay is never fine, a charger is",
        "find-fault": "a search ends in a cause",
    }
    for sheet in sheets():
        fine = [use for use in sheet.uses if use.rule.level is Level.FINE]
        assert fine or sheet.id in never, sheet.id


def test_ids_stand_in_the_data_form_and_in_the_page():
    from tests.whole import live_html

    for name in calc.worksheets():
        answer = calc.work(name)
        data, page = calc.as_data(answer), live_html(answer)
        assert data["rule"] == answer.rule and data["rules"] == list(answer.rules)
        assert f'data-rule="{answer.rule}"' in page
        for said in (*answer.cautions, *answer.notes):
            assert f'data-rule="{said.rule}"' in page

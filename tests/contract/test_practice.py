"""Every worksheet asks questions of its own, answers them, and knows the usual slips."""

import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain, combinations
from pathlib import Path
from string import Formatter

import pytest

import calc
from calc.practice import Question, mark, question
from calc.practice.hints import GENERAL
from calc.sheets import practice_of
from calc.units.quantities import from_base
from calc.worksheet.link import open_fragment
from tests.contract.samples import Once, as_read, sheets
from tests.counts import chance, often

GUIDES = Path(__file__).parents[2] / "docs" / "checks"
SOME = often(40, 1000)  # questions a worksheet, others in each run
FURTHER = range(1, 201)  # where each text and each slip must come up
EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def has_tasks(name: str) -> bool:
    try:
        return bool(practice_of(name).tasks)
    except ModuleNotFoundError:
        return False  # the first test says so


ASKING = [sheet for sheet in sheets() if has_tasks(sheet.id)]
EACH_ASKING = pytest.mark.parametrize("sheet", ASKING, ids=lambda sheet: sheet.id)


@cache
def asked(name: str) -> tuple[Question, ...]:
    numbers = chance("practice", name).sample(range(1, 10_000), SOME)
    return tuple(question(name, number) for number in numbers)


@cache
def _further(name: str) -> Once[Question]:
    return Once(question(name, number) for number in FURTHER)


def search(name: str) -> Iterator[Question]:
    """Return questions to look for what must come up: whoever looks stops when it is found."""
    return chain(asked(name), _further(name))


def missing(wanted: Iterable, found: Iterable) -> list:
    """Return what is wanted and not found; the search ends when all is."""
    left = list(wanted)
    for one in found:
        if one in left:
            left.remove(one)
        if not left:
            break
    return left


def replies(one: Question, value: float) -> list[str]:
    """Return a number [base unit of the answer's kind] as replies in each unit."""
    kind = one.asked.kind
    return [f"{from_base(value, kind, unit.name):.12g} {unit.symbol}" for unit in kind.units]


def reply(one: Question, value) -> str:
    """Return any answer as a reply."""
    if value is None:
        return "none"
    return value if one.asked.kind is None else replies(one, value)[0]


@EACH
def test_a_worksheet_has_tasks_or_says_in_a_sentence_why_not(sheet):
    practice = practice_of(sheet.id)
    assert bool(practice.tasks) != bool(practice.reason)
    if practice.reason:
        assert practice.reason.endswith(".")
        with pytest.raises(calc.InputError) as refusal:
            question(sheet.id, 1)
        assert refusal.value.message == practice.reason


@EACH_ASKING
def test_a_task_speaks_of_what_it_draws_and_does_not_give_its_result_away(sheet):
    fields = {field.id for field in sheet.fields}
    known = fields | {named.id for named in (*sheet.results, *sheet.intermediates)}
    for task in practice_of(sheet.id).tasks:
        named = {name for _, name, _, _ in Formatter().parse(task.text) if name}
        drawn = {name for name, texts in task.draw.items() if len(texts) > 1}
        assert named <= known - {task.asks}
        assert drawn <= named, "a figure that varies must be told"
        assert set(task.draw) <= fields
        assert "?" in task.text
        kind = sheet.result(task.asks).kind
        assert (kind is None) == bool(task.choices or task.sizes)
        assert bool(task.sizes) == bool(task.other_sizes)
        assert task.other_sizes.keys() <= fields


@EACH_ASKING
def test_every_drawn_text_can_be_read_and_means_what_it_says(sheet):
    for task in practice_of(sheet.id).tasks:
        for name, texts in task.draw.items():
            values = [sheet.field(name).read(text).value for text in texts]
            assert all(one != other for one, other in combinations(values, 2))


@EACH_ASKING
def test_every_question_can_be_answered_and_reads_as_a_sentence(sheet):
    found = asked(sheet.id)
    for one in found:
        assert not re.search(r"[{}]|\bnone\b", one.text.replace("or none", ""))
        assert one.answer.inputs == sheet.read(one.inputs)[0]
        assert one.answer.values[one.task.asks] is not None or one.task.or_none
    tasks = practice_of(sheet.id).tasks
    for one in found[:5]:  # what is read alike is worked alike
        assert one.answer.values == calc.work(sheet.id, one.inputs).values
    assert missing(tasks, (one.task for one in search(sheet.id))) == []
    texts: set[str] = set()
    for one in search(sheet.id):
        texts.add(one.text)
        if len(texts) >= 5 * len(tasks):
            return
    pytest.fail("a set that repeats itself")


@EACH_ASKING
def test_every_drawn_text_comes_up(sheet):
    for task in practice_of(sheet.id).tasks:
        for name, texts in task.draw.items():
            used = (one.inputs[name] for one in search(sheet.id) if one.task is task)
            assert missing(texts, used) == [], name


@EACH_ASKING
def test_the_right_answer_is_marked_right_in_every_unit(sheet):
    for one in asked(sheet.id):
        value = one.answer.values[one.task.asks]
        texts = replies(one, value) if one.asked.kind and value is not None else [reply(one, value)]
        for text in texts:
            marked = mark(one, text)
            assert marked.right, (one.text, text, marked.text)
            assert one.shown in marked.text


@EACH_ASKING
def test_the_answer_as_shown_is_near_enough_to_be_right(sheet):
    """As the sheet shows it, in whichever way it is rounded."""
    for one in asked(sheet.id):
        shown = re.sub(r" \(.*", "", one.shown)
        assert mark(one, shown).right, (one.text, shown)


@EACH_ASKING
def test_what_lies_beyond_the_tolerance_is_wrong(sheet):
    for one in asked(sheet.id):
        value = one.answer.values[one.task.asks]
        if isinstance(value, float):
            inside, outside = 1 + 0.99 * one.task.tolerance, 1.01 + 1.01 * one.task.tolerance
            assert mark(one, replies(one, value * inside)[0]).right
            if not one.task.oversize:
                assert not mark(one, replies(one, value * outside)[0]).right
            assert not mark(one, replies(one, value * outside * (1 + one.task.oversize))[0]).right
            assert not mark(one, replies(one, value / outside)[0]).right
        if one.task.or_none:
            assert mark(one, "none").right == (value is None)
            assert mark(one, "No").right == (value is None)
            assert value is not None or not mark(one, "10").right


@EACH_ASKING
def test_a_slip_is_wrong_or_safe_and_told_by_its_own_sentence(sheet):
    for one in asked(sheet.id):
        for wrong in one.slips:
            marked = mark(one, reply(one, wrong.value))
            assert marked.slip is wrong.slip, (one.text, wrong.shown)
            if marked.right:
                assert one.task.oversize or one.task.sizes_up
                assert marked.text.startswith("Accepted: more than needed, which is safe.")
                assert marked.text.endswith(wrong.slip.text)
            else:
                assert marked.text == f"Not right. {wrong.slip.text}"


@EACH_ASKING
def test_a_hint_tells_how_and_never_the_answer(sheet):
    for one in asked(sheet.id)[:12]:
        assert one.hint != GENERAL, "a task needs a step of its sheet for what it asks, or a hint"
        answer = re.sub(r" \(.*", "", one.shown)
        assert not re.search(rf"(?<![\w.]){re.escape(answer)}(?!\w)", one.hint), one.hint
        assert one.steps or one.asked.kind is None


@EACH_ASKING
def test_every_declared_slip_comes_up(sheet):
    for task in practice_of(sheet.id).tasks:
        met = (w.slip for one in search(sheet.id) if one.task is task for w in one.slips)
        assert missing(task.slips, met) == []
        assert task.slips, "a question without a usual slip"
        for slip in task.slips:
            assert sum(map(bool, (slip.formula, slip.reply, slip.inputs or slip.times))) == 1
            assert re.fullmatch(r"[A-Zk].*\.", slip.text)


@EACH_ASKING
def test_the_link_of_a_question_opens_its_worked_sheet(sheet):
    for one in asked(sheet.id):
        opened = open_fragment(sheet, one.link)
        assert opened.notes == ()
        assert as_read(sheet.read(opened.texts)[0]) == as_read(one.answer.inputs)


@EACH_ASKING
def test_a_bare_number_is_taken_in_the_unit_in_which_the_answer_is_shown(sheet):
    for one in asked(sheet.id):
        value = one.answer.values[one.task.asks]
        if isinstance(value, float):
            assert one.unit.symbol in one.shown
            assert mark(one, f"{from_base(value, one.asked.kind, one.unit.name):.9g}").right


@EACH_ASKING
def test_a_guide_offers_three_questions_of_its_own_above_its_warning(sheet):
    text = (GUIDES / f"{sheet.id}.md").read_text("utf-8")
    found = re.findall(r"^## Questions to try\n.*?^```practice\n([a-z-]+)\n", text, re.M | re.S)
    assert found == [sheet.id]
    assert text.index("## Questions to try") < text.index("!!! warning")

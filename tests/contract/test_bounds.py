"""Every limit refuses just outside, accepts just inside, and says what it is."""

import json

import pytest

import calc
from calc.__main__ import main
from calc.render.bridge import ask
from calc.units.quantities import from_base
from calc.units.shown import NARROW_SPACE, NO_BREAK_SPACE
from calc.worksheet.fields import Choice, Problem, Quantity
from calc.worksheet.rows import Rows
from tests.contract.samples import needed_by, row_with, sheets, wrong_for

HAIR = 1e-6  # far more than the 1e-9 that a float's last digits are allowed

LIMITS = [
    pytest.param(sheet, field, kind, place, id=f"{sheet.id}-{field.id}-{kind.id}-{name}")
    for sheet in sheets()
    for field in sheet.fields
    if isinstance(field, Quantity)
    for kind in field.kinds
    for place, name in enumerate(("low", "high"))
]
COLUMNS = [
    pytest.param(sheet, field, column, kind, place, id=f"{sheet.id}-{column.id}-{kind.id}-{place}")
    for sheet in sheets()
    for field in sheet.fields
    if isinstance(field, Rows)
    for column in field.columns
    if isinstance(column, Quantity)
    for kind in column.kinds
    for place in (0, 1)
]
EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def plain(text: str) -> str:
    """Return a sentence as one would type it."""
    return text.replace(NARROW_SPACE, "").replace(NO_BREAK_SPACE, " ").replace("−", "-")


def texts_of(kind, value: float) -> list[str]:
    """Return a value [base unit of `kind`] as text in each unit of its kind."""
    return [f"{from_base(value, kind, unit.name)!r} {unit.symbol}" for unit in kind.units]


@pytest.mark.parametrize(("sheet", "field", "kind", "place"), LIMITS)
def test_a_limit_is_inside_in_every_unit(sheet, field, kind, place):
    limit = field.bounds(kind)[place]
    for text in texts_of(kind, limit):
        if field.exclusive_low and place == 0:
            with pytest.raises(Problem):
                field.read(text)
        else:
            assert field.read(text).value == pytest.approx(limit, rel=1e-12)


@pytest.mark.parametrize(("sheet", "field", "kind", "place"), LIMITS)
def test_just_beyond_a_limit_is_refused_with_label_limit_and_unit(sheet, field, kind, place):
    limit = field.bounds(kind)[place]
    step = 1 if kind.whole else HAIR * (abs(limit) or 1)
    beyond = limit + (step if place else -step)
    declared = (field.high if place else field.low).split("|")[field.kinds.index(kind)].strip()
    for text in texts_of(kind, beyond):
        with pytest.raises(calc.InputError) as refusal:
            sheet.work({**needed_by(sheet, field), field.id: text})
        assert [problem.field for problem in refusal.value.problems] == [field.id]
        message = plain(refusal.value.message)
        assert message.startswith(field.label)
        number, _, unit = declared.partition(" ")
        assert f" {number}{f' {unit}' if unit else ''}" in message, text


@pytest.mark.parametrize(("sheet", "field", "column", "kind", "place"), COLUMNS)
def test_a_limit_of_a_column_is_inside_and_just_beyond_it_the_row_is_named(
    sheet, field, column, kind, place
):
    limit = column.bounds(kind)[place]
    step = 1 if kind.whole else HAIR * (abs(limit) or 1)
    if not (column.exclusive_low and place == 0):
        for text in texts_of(kind, limit):
            assert len(field.read(row_with(field, column, text)).rows) == 1
    usual = row_with(field, field.columns[0], "here")
    for text in texts_of(kind, limit + (step if place else -step)):
        with pytest.raises(calc.InputError) as refusal:
            sheet.work({field.id: f"{usual};{row_with(field, column, text)}"})
        (problem,) = refusal.value.problems
        assert problem.cell == (1, field.columns.index(column))
        assert problem.message.lower().startswith(f"{field.one} 2: {column.label.lower()}")


@EACH
def test_every_field_that_is_wrong_is_named_at_once(sheet):
    wrong = {field.id: wrong_for(field) for field in sheet.fields if not field.hidden}
    with pytest.raises(calc.InputError) as refusal:
        sheet.work(wrong)
    problems = {problem.field: problem.message for problem in refusal.value.problems}
    assert set(problems) == set(wrong)
    for field in (field for field in sheet.fields if field.id in wrong):
        named = f"{field.one} 1: ".capitalize() if isinstance(field, Rows) else field.label
        assert problems[field.id].startswith(named)
        assert problems[field.id].endswith(".")
    assert refusal.value.field == refusal.value.problems[0].field
    assert all(message in str(refusal.value) for message in problems.values())


@EACH
def test_an_unknown_field_and_a_wrong_one_are_named_together(sheet):
    first = sheet.fields[0]
    with pytest.raises(calc.InputError) as refusal:
        sheet.work({"nothing": "1", first.id: wrong_for(first)})
    assert {problem.field for problem in refusal.value.problems} == {"nothing", first.id}


@EACH
def test_a_refusal_says_what_would_do(sheet):
    """Each kind of mistake ends in an example, the accepted names, or the way to write it."""
    columns = [one for f in sheet.fields if isinstance(f, Rows) for one in f.columns]
    for field in (*sheet.fields, *columns):
        for text in ("abc", "1,234", "x" * 41, "12 furlongs", "a:b", ""):
            try:
                field.read(text)
            except Problem as problem:
                says = plain(problem.message)
            else:
                continue
            if isinstance(field, Choice):
                accepted = {option.typed for option in field.options}
                assert "like" in says or all(name in says for name in accepted)
            else:
                assert "like" in says or "Write 1234 or 1.234." in says
            assert not {"please", "sorry", "oops", "invalid"} & set(says.lower().split())


def aside(sheet, field) -> dict[str, str]:
    """Return inputs that leave `field` aside: none, where the defaults do so already."""
    if field.only_above:
        other = sheet.field(field.only_above)
        return {} if other.optional and not other.default else {other.id: "0"}
    other, choice = field.only_if
    asked = sheet.field(other)
    beside = (choice, *field.or_if)
    if asked.default not in beside:
        return {}
    return {other: next(option.id for option in asked.options if option.id not in beside)}


ASIDE = [
    pytest.param(sheet, field, text, id=f"{sheet.id}-{field.id}-{text}")
    for sheet in sheets()
    for field in sheet.fields
    if field.conditional
    for text in ("abc", "10**10**8", "12 furlongs", "1e400", "x" * 41)
]


@pytest.mark.parametrize(("sheet", "field", "text"), ASIDE)
def test_what_is_left_aside_is_checked_by_the_library_and_the_terminal_but_not_by_the_page(
    sheet, field, text, capsys
):
    """A program that sends nonsense hears of it; a reader sees no box to mend."""
    away = aside(sheet, field)
    plainly = calc.work(sheet.id, away)
    assert not plainly.inputs[field.id].applies, "the other choice leaves it aside"
    with pytest.raises(calc.InputError) as refusal:
        calc.work(sheet.id, {**away, field.id: text})
    assert {problem.field for problem in refusal.value.problems} == {field.id}
    assert main([sheet.id, *(f"{k}={v}" for k, v in away.items()), f"{field.id}={text}"]) == 2
    assert refusal.value.message in capsys.readouterr().err
    reply = json.loads(ask(json.dumps({"sheet": sheet.id, "values": {**away, field.id: text}})))
    assert reply["fields"][field.id]["error"] == ""
    assert plainly.sentence in reply["status"]


@EACH
def test_what_is_left_aside_changes_nothing_and_may_be_empty(sheet):
    for field in sheet.fields:
        if field.conditional:
            away = aside(sheet, field)
            plainly = calc.work(sheet.id, away)
            low = getattr(field, "low", "").split("|")[0].strip()
            for text in (field.default, low, "", " "):
                answer = calc.work(sheet.id, {**away, field.id: text})
                assert (answer.values, answer.sentence) == (plainly.values, plainly.sentence)
                assert not answer.inputs[field.id].given


def test_a_number_is_bounded_in_either_kind_that_its_field_takes():
    """Twenty thousand watts are allowed as a load, twenty thousand amps are not."""
    assert calc.work("runtime", {"load": "20000 W"})["current"].m_as("A") == pytest.approx(1562.5)
    with pytest.raises(calc.InputError, match="2000"):
        calc.work("runtime", {"load": "20000 A"})

"""What every worksheet declares hangs together: fields, sum, steps, verdicts and sentences."""

import inspect
import math
from dataclasses import is_dataclass
from string import Formatter

import pytest

import calc
from calc.render.answer import summary_text
from calc.units.quantities import from_base
from calc.worksheet import formula
from calc.worksheet.fields import Choice, Field, Quantity
from calc.worksheet.outputs import kind_at
from calc.worksheet.rows import Rows, Text
from calc.worksheet.work import Worksheet, parameter
from tests.contract.samples import answers, search, sheets

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def placeholders(text: str) -> set[str]:
    """Return the names in braces of a sentence."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def sentences(sheet: Worksheet) -> list[str]:
    """Return every sentence of a sheet with places for values, but those of its rules."""
    return [*(step.text for step in sheet.steps), sheet.summary, sheet.summary_none]


@EACH
def test_no_brace_is_left_in_the_answer_in_a_few_words(sheet):
    for texts, answer in answers(sheet.id):
        assert summary_text(answer) and not set("{}") & set(summary_text(answer)), texts


@pytest.mark.parametrize("name", calc.worksheets())
def test_a_worksheet_is_registered_under_its_own_id(name):
    assert calc.find(name).id == name


@EACH
def test_the_fields_are_the_parameters_of_the_sum(sheet):
    parameters = inspect.signature(sheet.calculate).parameters.values()
    assert {p.name for p in parameters} == {parameter(field.id) for field in sheet.fields}
    assert {p.kind for p in parameters} == {inspect.Parameter.KEYWORD_ONLY}
    assert {p.default for p in parameters} == {inspect.Parameter.empty}


@EACH
def test_every_name_stands_for_one_thing(sheet):
    _, answer = answers(sheet.id)[0]
    outcome = set(answer.values) - {field.id for field in sheet.fields}
    declared = [named.id for named in (*sheet.results, *sheet.intermediates)]
    names = [field.id for field in sheet.fields] + declared
    assert len(names) == len(set(names))
    assert set(declared) <= outcome

    returned = inspect.get_annotations(sheet.calculate, eval_str=True)["return"]
    assert is_dataclass(returned)


@EACH
def test_every_default_can_be_read(sheet):
    for field in sheet.fields:
        if isinstance(field, Choice):
            assert field.default in {option.id for option in field.options}
        assert field.default or field.default_by or field.optional, field.id
        if field.default:
            assert not field.default_by
            assert field.read(field.default).value is not None
        if field.default_by:
            other, texts = field.default_by
            choices = sheet.field(other)
            assert isinstance(choices, Choice)
            assert set(texts) == {option.id for option in choices.options}
            assert all(field.read(text).value is not None for text in texts.values())
        if field.only_if:
            other, choice = field.only_if
            options = [option.id for option in sheet.field(other).options]
            assert {choice, *field.or_if} < {*options}, "or it would always have a meaning"


@EACH
def test_an_empty_ask_takes_every_default_and_says_so(sheet):
    answer = calc.work(sheet.id)
    assert not any(reading.given for reading in answer.inputs.values())
    given = {field.id: field.default for field in sheet.fields if field.default}
    given = {name: text for name, text in given.items() if answer.inputs[name].applies}
    asked = calc.work(sheet.id, given)
    assert all(asked.inputs[name].given for name in given)
    assert (asked.values, asked.sentence) == (answer.values, answer.sentence)


def with_columns(sheet: Worksheet) -> list[Field]:
    """Return every field of a worksheet, and every column of its lists."""
    lists = [field for field in sheet.fields if isinstance(field, Rows)]
    return [*sheet.fields, *(column for field in lists for column in field.columns)]


@EACH
def test_every_field_has_a_label_and_a_hint(sheet):
    for field in with_columns(sheet):
        assert field.label, field.id
    assert [field.id for field in with_columns(sheet) if not field.hint] == []


@EACH
def test_a_list_has_a_name_in_every_row_and_columns_that_stand_alone(sheet):
    for field in sheet.fields:
        if isinstance(field, Rows):
            first, *others = field.columns
            assert isinstance(first, Text)
            assert not first.optional and not first.default
            assert not any(isinstance(column, (Text, Rows)) and column.default for column in others)
            assert not [one for one in field.columns if one.rests_on or one.advanced]
            assert len({column.id for column in field.columns}) == len(field.columns)
            assert 1 < len(field.read(field.default).rows) < field.most
            for column in others:
                if column.default:
                    assert column.read(column.default).value is not None


@EACH
def test_a_table_shows_what_is_there_with_a_name_in_front(sheet):
    for table in sheet.tables:
        assert sheet.result(table.of).kind is None
        first = table.columns[0]
        assert len({column.id for column in table.columns}) == len(table.columns)
        for _, answer in answers(sheet.id)[:200]:
            rows = answer.values[table.of] or ()
            shown = answer.tables[table.of]
            assert len(shown) == len(rows)
            for row, cells in zip(rows, shown, strict=True):
                assert len(cells) == len(table.columns) and all(cells)
                name = getattr(row, first.id)
                assert cells[0] == (first.words[name] if first.words else str(name))


@EACH
def test_every_way_to_name_a_choice_names_one_choice(sheet):
    for field in with_columns(sheet):
        if isinstance(field, Choice):
            for option in field.options:
                for name in filter(None, (option.id, option.label, *option.aliases)):
                    assert field.read(name).value == option.id, name
                assert field.read(field.read(option.id).link).value == option.id
        elif isinstance(field, Quantity):
            for kind, unit in field.units:
                taken = {
                    (reading.kind, reading.unit)
                    for spelling in filter(None, (unit.symbol, unit.link, *unit.spellings))
                    for reading in [_within(field, kind, unit, spelling)]
                }
                assert taken <= {(kind, unit)}


def _within(field, kind, unit, spelling):
    """Return the reading of the upper limit in another unit and spelling."""
    high = field.bounds(kind)[1]
    return field.read(f"{from_base(high, kind, unit.name):.12g} {spelling}")


@EACH
def test_every_result_has_a_step_and_no_value_has_two(sheet):
    assert not [r.id for r in sheet.results if not r.needs_step and r.kind], "a figure is worked"
    results = {result.id for result in sheet.results if result.needs_step}
    assert results <= {step.of for step in sheet.steps}
    for texts, answer in answers(sheet.id):
        worked = [step.of for step in sheet.steps if step.when(answer.result)]
        assert len(worked) == len(set(worked)), texts
        for name in results - set(worked):
            assert answer.values[name] in (None, ()), f"{name} has no step for {texts}"


@EACH
def test_steps_speak_of_declared_values_and_use_what_was_worked_before(sheet):
    declared = {named.id for named in (*sheet.results, *sheet.intermediates)}
    worked = {step.of for step in sheet.steps}
    assert worked <= declared
    for _, answer in answers(sheet.id)[:200]:
        known = set(answer.inputs) | declared - worked
        here = [step for step in sheet.steps if step.when(answer.result)]
        for step in here:
            used = formula.names(step.formula) if step.formula else set()
            later = (used - known) & {other.of for other in here}
            assert not later, f"{step.of} uses {later} before its own step"
            known.add(step.of)


@EACH
def test_sentences_only_name_what_is_there(sheet):
    _, answer = answers(sheet.id)[0]
    for text in sentences(sheet):
        assert placeholders(text) <= set(answer.shown), text


@EACH
def test_every_value_has_the_kind_that_the_result_says(sheet):
    _, answer = answers(sheet.id)[0]
    for named in (*sheet.results, *sheet.intermediates):
        if not named.find:
            kind = kind_at(type(answer.result), named.path)
            base = kind.base if kind else None
            assert base == (named.kind.base if named.kind else None), named.id


@EACH
def test_every_step_and_every_rule_comes_up(sheet):
    for step in sheet.steps:
        assert any(step.when(a.result) for _, a in search(sheet.id)), f"never said: {step.text}"
    for use in sheet.uses:
        fired = any(use.rule.id in answer.rules for _, answer in search(sheet.id))
        assert fired, f"{use.rule.id} never fires"


@EACH
def test_what_is_kept_apart_is_of_one_kind_and_seen_to_be_apart(sheet):
    named = {one.id: one for one in (*sheet.results, *sheet.intermediates)}
    for one, other in sheet.keep_distinct:
        assert named[one].kind is named[other].kind is not None
        for texts, answer in answers(sheet.id):
            values = answer.values[one], answer.values[other]
            if None in values:
                continue
            low, high = sorted(values)
            if high > low * (1 + 1e-6):
                assert answer.shown[one] != answer.shown[other], texts


@EACH
def test_every_figure_is_a_real_one(sheet):
    for texts, answer in answers(sheet.id):
        for result in sheet.results:
            value = answer.values[result.id]
            if isinstance(value, float):
                assert math.isfinite(value) and value >= 0, f"{result.id} = {value} for {texts}"
            assert (result.kind is None) or value is None or isinstance(value, float)


@EACH
def test_a_field_that_goes_by_another_comes_after_it(sheet):
    """Fields are read in their order: what comes later is not known yet."""
    ids = [field.id for field in sheet.fields]
    for at, field in enumerate(sheet.fields):
        assert {*field.rests_on} <= {*ids[:at]}, field.id
        if field.only_above:
            assert isinstance(sheet.field(field.only_above), Quantity)


def test_a_worksheet_or_field_that_does_not_exist_is_an_error_that_lists_what_does():
    with pytest.raises(calc.InputError, match="wire-drop") as error:
        calc.work("wire-drops")
    assert error.value.field == "worksheet"
    with pytest.raises(calc.InputError, match=r"no field 'amps'; it takes current, length"):
        calc.work("wire-drop", {"amps": "30"})

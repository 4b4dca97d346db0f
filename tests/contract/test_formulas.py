"""The working that is shown is the sum that was done: each printed formula, put to work."""

import pytest

from calc.units.quantities import base_quantity, registry
from calc.worksheet import formula
from tests.contract.samples import answers, search, sheets

STEPS = [
    pytest.param(sheet, step, id=f"{sheet.id}-{step.of}-{place}")
    for sheet in sheets()
    for place, step in enumerate(sheet.steps)
    if step.formula
]


@pytest.mark.parametrize(("sheet", "step"), STEPS)
def test_a_printed_formula_equals_the_value_that_the_code_found(sheet, step):
    tried = 0
    for place, (texts, answer) in enumerate(search(sheet.id)):
        if place >= len(answers(sheet.id)) and tried >= 20:
            break
        if not step.when(answer.result):
            continue
        value = formula.work(step.formula, answer.values)
        assert formula.close(value, answer.values[step.of]), f"{step.of}: {value} for {texts}"
        tried += 1
    assert tried >= 20


@pytest.mark.parametrize(("sheet", "step"), STEPS)
def test_a_printed_formula_has_the_dimension_of_its_value(sheet, step):
    kinds = {named.id: named.kind for named in (*sheet.results, *sheet.intermediates)}
    answer = next(a for _, a in search(sheet.id) if step.when(a.result))
    put = {}
    for name in formula.names(step.formula):
        kind = kinds[name] if name in kinds else answer.inputs[name].kind
        assert kind is not None, f"{name} has no kind"
        put[name] = base_quantity(answer.values[name], kind)

    worked = registry().Quantity(1) * formula.work(step.formula, put)
    wanted = base_quantity(answer.values[step.of], kinds[step.of])
    assert worked.dimensionality == wanted.dimensionality
    assert formula.close(worked.m_as(wanted.units), wanted.magnitude)


@pytest.mark.parametrize(("sheet", "step"), STEPS)
def test_a_printed_formula_shows_symbols_and_then_numbers(sheet, step):
    answer = next(a for _, a in search(sheet.id) if step.when(a.result))
    shown = [part for part in sheet.steps if part.when(answer.result)]
    line = answer.working[shown.index(step)]
    long_names = {name for name in formula.names(step.formula) if len(name) > 2}
    assert not {name for name in long_names if name in line.formula.split()}
    assert any(character.isdigit() for character in line.numbers)
    assert any(character.isdigit() for character in line.value)

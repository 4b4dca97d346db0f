"""The working that is shown is the sum that was done: each printed formula, put to work."""

import pytest

from calc import formula
from calc.quantities import base_quantity, registry
from tests.contract.samples import answers, sheets
from tests.contract.test_declarations import held

STEPS = [
    pytest.param(sheet, step, id=f"{sheet.id}-{step.of}-{place}")
    for sheet in sheets()
    for place, step in enumerate(sheet.steps)
    if step.formula
]


@pytest.mark.parametrize(("sheet", "step"), STEPS)
def test_a_printed_formula_equals_the_value_that_the_code_found(sheet, step):
    tried = 0
    for texts, answer in answers(sheet.id):
        if not step.when(held(answer)):
            continue
        value = formula.work(step.formula, answer.values)
        assert formula.close(value, answer.values[step.of]), f"{step.of}: {value} for {texts}"
        tried += 1
    assert tried >= 20


@pytest.mark.parametrize(("sheet", "step"), STEPS)
def test_a_printed_formula_has_the_dimension_of_its_value(sheet, step):
    kinds = {named.id: named.kind for named in (*sheet.results, *sheet.between)}
    answer = next(a for _, a in answers(sheet.id) if step.when(held(a)))
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
def test_a_printed_formula_shows_each_of_its_numbers(sheet, step):
    """No raw name is left in what a reader sees, and as many signs stand in both lines."""
    answer = next(a for _, a in answers(sheet.id) if step.when(held(a)))
    line = next(
        line
        for line, at in zip(
            answer.working, (s for s in sheet.steps if s.when(held(answer))), strict=True
        )
        if at is step
    )
    for sign in "+−×÷√":
        assert line.formula.count(sign) == line.numbers.replace("−", "−").count(sign) - sum(
            line.numbers.count(f"{sign}{digit}") for digit in "0123456789" if sign == "−"
        )
    assert not {name for name in formula.names(step.formula) if "_" in name and name in line.formula}

"""A hint before the working: the sheet's own step for what is asked, without the numbers."""

import re
from typing import Any

from calc.practice.declared import Task
from calc.worksheet import formula
from calc.worksheet.answer import Answer, Line
from calc.worksheet.declare import Step

GENERAL = "Calculate it step by step, from what is given to what is asked."


def hint(answer: Answer, task: Task) -> str:
    """Return the hint to a task: how its result follows from what, without the result itself."""
    if task.hint:
        return task.hint
    sheet = answer.worksheet
    steps = [step for step in sheet.steps if step.when(answer.result)]
    for step, line in zip(steps, answer.working, strict=True):
        if step.of != task.asks:
            continue
        gives_away = answer.shown[task.asks].partition(" (")[0] in line.text
        text = "" if gives_away else line.text
        if step.formula:
            text = f"{text} {line.symbol} = {line.formula}. {_meaning(answer, step)}"
        return text.strip() or GENERAL
    return GENERAL


def leading(answer: Answer, task: Task) -> tuple[Line, ...]:
    """Return the steps of the working that lead to what is asked, and no others."""
    steps = [step for step in answer.worksheet.steps if step.when(answer.result)]
    needed = {task.asks}
    found = []
    for step, line in reversed(tuple(zip(steps, answer.working, strict=True))):
        if step.of in needed:
            needed |= formula.names(step.formula) if step.formula else set()
            found.append(line)
    return tuple(reversed(found))


def _meaning(answer: Answer, step: Step[Any]) -> str:
    """Return what each sign of a step's formula stands for."""
    sheet = answer.worksheet
    named = {field.id: (field.symbol, field.label) for field in sheet.fields}
    outputs = (*sheet.results, *sheet.intermediates)
    named |= {output.id: (output.symbol, output.label) for output in outputs}
    known = formula.names(step.formula)
    used = dict.fromkeys(name for name in re.findall(r"\w+", step.formula) if name in known)
    said = (
        f"{sign}: {label}" for sign, label in (named[name] for name in (step.of, *used)) if sign
    )
    return "; ".join(said) + "."

"""What a declaration names and what is not there: found without working a single answer."""

import inspect
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from string import Formatter

from calc import comfort, electrical, energy
from calc.judge import Rule
from calc.sources import SOURCES
from calc.worksheet import formula
from calc.worksheet.declare import Placed
from calc.worksheet.outputs import kind_at
from calc.worksheet.work import Worksheet


def placeholders(text: str) -> set[str]:
    """Return the names in braces of a sentence."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def result_type(sheet: Worksheet) -> type:
    """Return the type that the sheet's calculation returns."""
    found: type = inspect.get_annotations(sheet.calculate, eval_str=True)["return"]
    return found


def faults_of(sheet: Worksheet) -> list[str]:
    """Return a line for everything that the declaration names and that does not exist."""
    return [*_outputs(sheet), *_steps(sheet), *_rules(sheet), *_fields(sheet)]


def _known(sheet: Worksheet) -> set[str]:
    outputs = (*sheet.results, *sheet.intermediates)
    return {field.id for field in sheet.fields} | {one.id for one in outputs}


def _lost(sheet: Worksheet, name: str, at: str = "") -> bool:
    """Return whether a name of a sentence stands for nothing."""
    if not at and name in _known(sheet):
        return False
    try:
        kind_at(result_type(sheet), f"{at}.{name}" if at else name)
    except AttributeError:
        return True
    return False


def _outputs(sheet: Worksheet) -> Iterator[str]:
    for one in (*sheet.results, *sheet.intermediates):
        if not one.find and _nowhere(sheet, one.path):
            yield f"{one.id} stands at {one.path}, which is nowhere"


def _steps(sheet: Worksheet) -> Iterator[str]:
    outputs = {one.id for one in (*sheet.results, *sheet.intermediates)}
    for step in sheet.steps:
        if step.of not in outputs:
            yield f"a step is of {step.of!r}"
        if step.source and step.source not in SOURCES:
            yield f"the step of {step.of} has the source {step.source!r}"
        used = formula.names(step.formula) if step.formula else set()
        yield from (f"the formula of {step.of} has {n!r}" for n in used - _known(sheet))
        names = placeholders(step.text)
        yield from (f"the step of {step.of} says {{{n}}}" for n in names if _lost(sheet, n))


def _rules(sheet: Worksheet) -> Iterator[str]:
    for use in sheet.uses:
        rule = use.rule
        if rule.source and rule.source not in SOURCES:
            yield f"{rule.id} has the source {rule.source!r}"
        for own, text in _texts(use):
            for name in placeholders(text) - ({"those"} if own and use.at else set()):
                if _lost(sheet, name, use.at) and not (own and not _lost(sheet, name)):
                    yield f"{rule.id} says {{{name}}}"
        here = {other.rule.id for other in sheet.uses}
        yield from (f"{rule.id} covers {n!r}" for n in use.covers - here)
        yield from (f"{rule.id} covers {n!r}" for n in rule.covers - here - _of_the_book())
        fields = {field.id for field in sheet.fields}
        yield from (f"{rule.id} mends {to!r}" for _, to in use.fields if to not in {"", *fields})


@cache
def _of_the_book() -> frozenset[str]:
    """Return the ids of the rules of the book: a sheet may use one without those that it covers."""
    names = (
        found.name
        for package in (electrical, energy, comfort)
        for found in walk_packages(package.__path__, f"{package.__name__}.")
        if ".rules" in found.name
    )
    held = (one for name in names for one in vars(import_module(name)).values())
    return frozenset(one.id for one in held if isinstance(one, Rule))


def _texts(use: Placed) -> Iterator[tuple[bool, str]]:
    """Yield each sentence, and whether it is the sheet's own."""
    yield bool(use.headline), use.headline or use.rule.headline
    yield bool(use.text), use.text or use.rule.text


def _fields(sheet: Worksheet) -> Iterator[str]:
    fields = {field.id for field in sheet.fields}
    for field in sheet.fields:
        yield from (f"{field.id} goes by {n!r}" for n in field.rests_on if n not in fields)
    for pair in sheet.keep_distinct:
        yield from (f"{n!r} is kept distinct" for n in pair if n not in _known(sheet))
    for text in (sheet.summary, sheet.summary_none):
        yield from (f"the summary says {{{n}}}" for n in placeholders(text) if _lost(sheet, n))


def _nowhere(sheet: Worksheet, path: str) -> bool:
    try:
        kind_at(result_type(sheet), path)
    except AttributeError:
        return True
    return False

"""What a worksheet is declared from: fields, results, steps, rules and remarks, all data.

From one declaration come the form, the answer, the working, the link, the terminal command and
the tests.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from calc.judge import Change, Rule, always
from calc.units.shown import decimal_sign
from calc.units.typed import LONGEST
from calc.worksheet.fields import Field, ParsedInput, Problem
from calc.worksheet.next_steps import Lead
from calc.worksheet.outputs import Output as Output
from calc.worksheet.outputs import part_of as part_of
from calc.worksheet.pictures import Picture
from calc.worksheet.result_table import Table
from calc.worksheet.walked import Walked

_REMEMBERED = 5000  # texts
_seen: dict[tuple[int, str, bool, str], tuple[Field, ParsedInput]] = {}


@dataclass(frozen=True, kw_only=True)
class Step[R]:
    """One line of the working: the value `of` which id, by which formula, said in a sentence.

    Without a formula the value is looked up or chosen, and `text` tells how. `when` is asked of the
    result.
    """

    of: str
    text: str
    formula: str = ""
    source: str = ""
    when: Callable[[R], bool] = always


@dataclass(frozen=True, kw_only=True)
class Placed:
    """A rule as one worksheet uses it.

    `at` is where its subject stands in the result: nothing for the result itself. Where there is no
    such part (None), the rule is silent. Where the path leads through a tuple, the rule is asked in
    each of its rows, and `{those}` in the sheet's own words lists the rows that it fires in.
    `headline` and `text` are the sheet's own words for it, which may name what the sheet shows, and
    else the subject's attributes. `covers` names further rules that need not speak on this sheet
    where this one does. `fields` gives the sheet's own ids for inputs that the rule's remedy names,
    as pairs (name, id); an id of nothing tells that the sheet has no such input, and so no such
    remedy.
    """

    rule: Rule[Any]
    at: str = ""
    headline: str = ""
    text: str = ""
    covers: frozenset[str] = frozenset()
    fields: tuple[tuple[str, str], ...] = ()

    def mend(self, subject: Any) -> Change | None:
        """Return the rule's remedy for `subject` by the sheet's own fields, or None."""
        change = self.rule.mend(subject) if self.rule.mend else None
        if change is None:
            return None
        own = dict(self.fields)
        values = {own.get(name, name): to for name, to in change.values.items()}
        return Change(values) if "" not in values else None


def placed(at: str, *rules: Rule[Any]) -> tuple[Placed, ...]:
    """Return `rules` as asked of the part `at` of a result."""
    return tuple(Placed(rule=rule, at=at) for rule in rules)


def placed_outputs(at: str, *outputs: Output) -> tuple[Output, ...]:
    """Return `outputs` that are declared for a part as they stand in a result, the part `at` it."""
    return tuple(replace(one, at=f"{at}.{one.path}") for one in outputs)


def placed_steps[P](at: str, *steps: Step[P]) -> tuple[Step[Any], ...]:
    """Return `steps` as asked of the part `at` of a result, and silent where there is none."""

    def asked(when: Callable[[P], bool]) -> Callable[[Any], bool]:
        return lambda result: (part := part_of(result, at)) is not None and when(part)

    return tuple(replace(step, when=asked(step.when)) for step in steps)


@dataclass(frozen=True, kw_only=True)
class Declaration:
    """One sum or choice, declared once.

    `question` names its page for whoever comes with it, `about` is one line on what is answered.
    `calculate` takes one keyword for each field (SI floats, choices, or None) and returns
    a frozen dataclass that holds the `results` and the `intermediates`. `summary` is the answer in
    a few words, `valid` says where the formula holds, `picture` how `calc.render` draws it,
    `tables` which results are tables. `keep_distinct` names pairs of results that a verdict
    compares: they get the digits it takes to tell them apart. A calculation that takes longer than
    a keystroke is parted: `later_stages` is given what `calculate` returned and yields, stage by
    stage, the share that is done and the same with more of it filled in, at last with all of it.
    Only a page asks for it stage by stage. `older_defaults` keeps, for each earlier set of
    defaults, those that have changed with the next: a text by field, or for a field whose default
    goes by a choice, texts by choice. `leads` are the ways on that carry figures to another sheet.
    `walked` tells how a sheet is shown that leads step by step.
    """

    id: str
    title: str
    question: str
    about: str
    fields: tuple[Field, ...]
    calculate: Callable[..., Any]
    results: tuple[Output, ...]
    intermediates: tuple[Output, ...] = ()
    steps: tuple[Step[Any], ...]
    rules: tuple[Rule[Any] | Placed, ...]
    valid: str
    summary: str
    summary_none: str = ""
    keep_distinct: tuple[tuple[str, str], ...] = ()
    picture: Picture | None = None
    tables: tuple[Table, ...] = ()
    later_stages: Callable[[Any], Iterator[tuple[float, Any]]] | None = None
    older_defaults: tuple[Mapping[str, str | Mapping[str, str]], ...] = ()
    leads: tuple[Lead, ...] = ()
    walked: Walked | None = None

    @property
    def default_set(self) -> int:
        """The number of today's set of defaults, which stands in links as `v=`."""
        return len(self.older_defaults) + 1

    def default_in(self, number: int, name: str, texts: Mapping[str, str]) -> str | None:
        """Return the text that field `name` had in the default set `number`, where it is not in
        `texts`, or None where today's default means the same. An empty text is an empty box.
        """
        field = self.field(name)
        if number < field.since:
            return field.before or None
        # A default that has changed once or more stands in the set before the first change.
        later = (older[name] for older in self.older_defaults[number - 1 :] if name in older)
        found = next(later, None)
        if found is None or isinstance(found, str):
            return found
        if not field.default_by:
            return None
        other = field.default_by[0]
        base = texts.get(other) or self.default_in(number, other, texts)
        try:
            choice = self.field(other).read(base or self.field(other).default).value
        except Problem:
            return None  # what is wrong there is said beside it
        return found.get(str(choice))

    def field(self, name: str) -> Field:
        """Return the field with the id `name`. Raises KeyError."""
        for field in self.fields:
            if field.id == name:
                return field
        raise KeyError(name)

    def result(self, name: str) -> Output:
        """Return the declared result with the id `name`. Raises KeyError."""
        for result in self.results:
            if result.id == name:
                return result
        raise KeyError(f"{self.id} has no result {name!r}")

    @cached_property
    def uses(self) -> tuple[Placed, ...]:
        """The rules that the sheet uses, in its order, each with its place."""
        return tuple(rule if isinstance(rule, Placed) else Placed(rule=rule) for rule in self.rules)

    def read(self, texts: Mapping[str, str]) -> tuple[dict[str, ParsedInput], tuple[Problem, ...]]:
        """Return a reading for each field that can be read, and the problems of the others."""
        readings: dict[str, ParsedInput] = {}
        problems: list[Problem] = []
        for field in self.fields:
            try:
                readings[field.id] = _read_field(field, texts.get(field.id), readings)
            except Problem as problem:
                problems += problem.each
        return readings, tuple(problems)


def _as_read(field: Field, text: str, *, given: bool = True) -> ParsedInput:
    """Return what a text says by a field. Raises Problem.

    Of a sheet's twenty fields one changes at a time: what the others say is remembered.
    """
    key = id(field), text, given, decimal_sign.get()
    kept = _seen.get(key)
    if kept is not None and kept[0] is field:
        return kept[1]
    reading = field.read(text)
    reading = reading if given else replace(reading, given=False)
    if len(text) <= LONGEST:
        if len(_seen) >= _REMEMBERED:
            _seen.clear()
        _seen[key] = field, reading
    return reading


def _read_field(field: Field, text: str | None, readings: Mapping[str, ParsedInput]) -> ParsedInput:
    given = text is not None and bool(text.strip())
    applies = field.applies(readings)
    if not applies:
        given = False
    if given:
        assert text is not None
        return _as_read(field, text)
    if text is not None and applies and not (field.optional or field.default_by):
        field.read(text)  # an emptied box is a mistake, not a default
    if text is not None and applies and field.optional and field.default:
        return ParsedInput(None, "not given")  # the usual text was taken out: not known
    default = field.default
    if field.default_by:
        other, by_choice = field.default_by
        default = (
            by_choice[str(readings[other].value)]
            if other in readings
            else next(iter(by_choice.values()))
        )
    if not default:
        return ParsedInput(None, "not given", given=False, applies=applies)
    reading = _as_read(field, default, given=False)
    return reading if applies else replace(reading, applies=False)

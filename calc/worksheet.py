"""How a worksheet is declared: fields, the sum, its steps, its verdict and its cautions, all data.

From one declaration come the form, the answer, the working, the link, the terminal command and
the tests. `Worksheet.work` reads texts, runs the sum and gives an `Answer`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from types import SimpleNamespace
from typing import Any

from calc.fields import Field, Measured, Problem, Quantity, Reading
from calc.formula import written
from calc.quantities import METRIC, US, Kind, quantity
from calc.shown import NEAR, NO_BREAK_SPACE, quantity_text
from calc.sources import SOURCES, Source

Test = Callable[[SimpleNamespace], bool]

FINE, CAUTION, STOP = "fine", "caution", "stop"
NOTE = "note"


def always(_: SimpleNamespace) -> bool:
    """The test of a rule or remark that holds in every case."""
    return True


@dataclass(frozen=True, kw_only=True)
class Named:
    """A value of the sum that a reader sees: a result or a step between.

    `kind` is None for text and for lists of text. `way` is the direction of rounding for display.
    `both` shows the value in metric and in US units.
    """

    id: str
    label: str
    symbol: str = ""
    kind: Kind | None = None
    way: str = NEAR
    digits: int = 3
    unit: str = ""
    both: bool = False


@dataclass(frozen=True, kw_only=True)
class Step:
    """One line of the working: the value `of` which name, by which formula, said in a sentence.

    Without a formula the value is looked up or chosen, and `says` tells how.
    """

    of: str
    says: str
    formula: str = ""
    source: str = ""
    when: Test = always


@dataclass(frozen=True, kw_only=True)
class Remark:
    """A caution or note with the test that brings it up. `says` may hold `{names}` of values."""

    says: str
    when: Test = always
    source: str = ""
    level: str = CAUTION


@dataclass(frozen=True, kw_only=True)
class Rule:
    """A verdict with the test that brings it and its one sentence; the first that holds is given."""

    verdict: str
    says: str
    when: Test = always


@dataclass(frozen=True)
class Line:
    """A step as worked: what it is, the formula in symbols, with numbers put in, and its value."""

    label: str
    symbol: str
    formula: str
    numbers: str
    value: str
    says: str
    source: Source | None


@dataclass(frozen=True)
class Said:
    """A remark that came up, with its values put in."""

    text: str
    level: str
    source: Source | None


class InputError(ValueError):
    """Inputs that cannot be used.

    `problems` holds every one of them; `field` and `message` are those of the first.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(" ".join(problem.message for problem in problems))
        self.problems = problems
        self.field = problems[0].field
        self.message = problems[0].message


@dataclass(frozen=True)
class Answer:
    """What working a worksheet gives.

    `answer[id]` is a result: a pint quantity, a text, a list of texts, or None where there is none.
    `values` holds every value in SI floats, `shown` every value as a reader sees it.
    """

    worksheet: "Worksheet"
    inputs: Mapping[str, Reading]
    values: Mapping[str, Any]
    shown: Mapping[str, str]
    verdict: str
    sentence: str
    working: tuple[Line, ...]
    cautions: tuple[Said, ...]
    notes: tuple[Said, ...]
    sources: tuple[Source, ...]

    def __getitem__(self, name: str) -> Any:
        result = self.worksheet.result(name)
        value = self.values[name]
        if value is None or result.kind is None:
            return list(value) if isinstance(value, tuple) else value
        return quantity(value, result.kind)


@dataclass(frozen=True, kw_only=True)
class Worksheet:
    """One sum or choice, declared once.

    `run` takes one keyword for each field (SI floats, texts, or None) and returns a frozen
    dataclass whose fields are the `results` and the values `between`. `gist` is the answer in a few
    words. `valid` says where the formula holds. `picture` names how `calc.render` draws it.
    """

    id: str
    title: str
    question: str
    fields: tuple[Field, ...]
    run: Callable[..., Any]
    results: tuple[Named, ...]
    between: tuple[Named, ...] = ()
    steps: tuple[Step, ...]
    rules: tuple[Rule, ...]
    remarks: tuple[Remark, ...]
    valid: str
    gist: str
    gist_none: str = ""
    picture: Any = None

    def field(self, name: str) -> Field:
        """Return the field with the id `name`. Raises KeyError."""
        for field in self.fields:
            if field.id == name:
                return field
        raise KeyError(name)

    def result(self, name: str) -> Named:
        """Return the declared result with the id `name`. Raises KeyError."""
        for result in self.results:
            if result.id == name:
                return result
        raise KeyError(f"{self.id} has no result {name!r}")

    def read(self, texts: Mapping[str, str]) -> tuple[dict[str, Reading], tuple[Problem, ...]]:
        """Return a reading for each field that can be read, and every problem of those that cannot."""
        readings: dict[str, Reading] = {}
        problems: list[Problem] = []
        for field in self.fields:
            try:
                readings[field.id] = _read_field(field, texts.get(field.id), readings)
            except Problem as problem:
                problems.append(problem)
        return readings, tuple(problems)

    def work(self, texts: Mapping[str, str]) -> Answer:
        """Return the answer for `texts` by field id; a missing field takes its default.

        Raises InputError with every problem at once.
        """
        readings, problems = self.read(texts)
        unknown = tuple(
            Problem(str(name), f"{self.id} has no field {name!r}; it takes {', '.join(f.id for f in self.fields)}.")
            for name in texts
            if name not in {field.id for field in self.fields}
        )
        if unknown or problems:
            raise InputError((*unknown, *problems))
        return self.answer(readings)

    def answer(self, readings: Mapping[str, Reading]) -> Answer:
        """Return the answer for readings of every field. Raises InputError."""
        try:
            outcome = self.run(**{field.id: _argument(field, readings[field.id]) for field in self.fields})
        except Problem as problem:
            raise InputError((problem,)) from None
        values: dict[str, Any] = {name: reading.value for name, reading in readings.items()}
        values |= {part.name: getattr(outcome, part.name) for part in fields(outcome)}
        return _Writer(self, readings, values).answer()


def _argument(field: Field, reading: Reading) -> float | str | Measured | None:
    if isinstance(field, Quantity) and len(field.kinds) > 1 and isinstance(reading.value, float):
        assert reading.kind is not None
        return Measured(reading.value, reading.kind)
    return reading.value


def _read_field(field: Field, text: str | None, readings: Mapping[str, Reading]) -> Reading:
    given = text is not None and bool(text.strip())
    applies = True
    if field.only_if:
        other, choice = field.only_if
        applies = other not in readings or readings[other].value == choice
    if not applies:
        given = False
    if given:
        assert text is not None
        return _with(field.read(text), given=True, applies=True)
    if text is not None and applies and not (field.optional or field.usual):
        field.read(text)  # an emptied box is a mistake, not a default
    default = field.default
    if field.usual:
        other, by_choice = field.usual
        default = by_choice[str(readings[other].value)] if other in readings else next(iter(by_choice.values()))
    if not default:
        return Reading(None, "not given", given=False, applies=applies)
    return _with(field.read(default), given=False, applies=applies)


def _with(reading: Reading, *, given: bool, applies: bool) -> Reading:
    return Reading(
        reading.value, reading.text, reading.entry, reading.link, reading.kind, reading.unit, given, applies
    )


class _Writer:
    """Puts one answer's values into words, in the units that the reader uses."""

    def __init__(self, sheet: Worksheet, readings: Mapping[str, Reading], values: dict[str, Any]) -> None:
        self.sheet = sheet
        self.readings = readings
        self.values = values
        systems = {r.unit.system for r in readings.values() if r.unit and r.applies}
        self.system = US if US in systems else METRIC
        self.named = {named.id: named for named in (*sheet.results, *sheet.between)}
        self.shown = {name: reading.text for name, reading in readings.items()}
        self.shown |= {name: self.text(named) for name, named in self.named.items()}

    def text(self, named: Named, digits: int = 0, way: str = "") -> str:
        value = self.values[named.id]
        if value is None:
            return "none"
        if named.kind is None:
            text = "; ".join(map(str, value)) if isinstance(value, tuple) else str(value)
            return text.replace(" mm2", f"{NO_BREAK_SPACE}mm²")
        said = quantity_text(
            value, named.kind, digits=digits or named.digits, way=way or named.way, system=self.system, unit=named.unit
        )
        if named.both and not digits:
            other = US if self.system == METRIC else METRIC
            said += f" ({quantity_text(value, named.kind, way=named.way, system=other)})"
        return said

    def number(self, name: str) -> str:
        """Return a value as put into a formula: more digits than the answer, nearest."""
        if name in self.named:
            return self.text(self.named[name], digits=4, way=NEAR)
        reading = self.readings[name]
        if reading.kind is None or not isinstance(reading.value, float):
            return reading.text
        return quantity_text(reading.value, reading.kind, digits=6, system=self.system)

    def symbol(self, name: str) -> str:
        if name in self.named:
            return self.named[name].symbol or self.named[name].label
        field = self.sheet.field(name)
        return field.symbol or field.label

    def line(self, step: Step) -> Line:
        named = self.named[step.of]
        value = self.text(named, digits=4 if named.kind else 0, way=NEAR) if named.kind else self.shown[step.of]
        return Line(
            named.label,
            named.symbol,
            written(step.formula, self.symbol) if step.formula else "",
            written(step.formula, self.number) if step.formula else "",
            value,
            step.says.format_map(self.shown),
            SOURCES[step.source] if step.source else None,
        )

    def answer(self) -> Answer:
        held = SimpleNamespace(**self.values, given={n for n, r in self.readings.items() if r.given})
        rule = next(rule for rule in self.sheet.rules if rule.when(held))
        working = tuple(self.line(step) for step in self.sheet.steps if step.when(held))
        said = tuple(
            Said(remark.says.format_map(self.shown), remark.level, SOURCES[remark.source] if remark.source else None)
            for remark in self.sheet.remarks
            if remark.when(held)
        )
        found = (*(line.source for line in working), *(remark.source for remark in said))
        return Answer(
            self.sheet,
            self.readings,
            self.values,
            self.shown,
            rule.verdict,
            rule.says.format_map(self.shown),
            working,
            tuple(remark for remark in said if remark.level != NOTE),
            tuple(remark for remark in said if remark.level == NOTE),
            tuple(dict.fromkeys(source for source in found if source)),
        )


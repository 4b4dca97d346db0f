"""How a worksheet is declared and worked.

From one declaration come the form, the answer, the working, the link, the terminal command and
the tests. `Worksheet.work` reads texts, runs the sum and gives an `Answer`.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields, replace
from keyword import iskeyword
from typing import Any

from calc.answer import Answer, InputError, Writer
from calc.declare import Named, Remark, Rule, Step
from calc.fields import Field, Problem, Reading
from calc.pictures import Picture
from calc.tabled import Table


def parameter(field: str) -> str:
    """Return the name under which a sum takes the field: `from` is a word of Python's own."""
    return f"{field}_" if iskeyword(field) else field


@dataclass(frozen=True, kw_only=True)
class Worksheet:
    """One sum or choice, declared once.

    `asks` is the reader's own question that leads here, `about` one line on what is answered.
    `run` takes one keyword for each field (SI floats, texts, or None) and returns a frozen
    dataclass whose fields are the `results` and the values `between`. `gist` is the answer in a few
    words, `valid` says where the formula holds, `picture` how `calc.render` draws it, `tables`
    which results are tables. `apart` names pairs of results that a verdict compares: they get the
    digits it takes to tell them apart. A sum that takes longer than a keystroke is parted: `rest`
    is given what `run` returned and yields, stage by stage, the share that is done and the same
    with more of it filled in, at last with all of it. Only a page asks for it stage by stage.
    """

    id: str
    title: str
    question: str
    asks: str
    about: str
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
    apart: tuple[tuple[str, str], ...] = ()
    picture: Picture | None = None
    tables: tuple[Table, ...] = ()
    rest: Callable[[Any], Iterator[tuple[float, Any]]] | None = None

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
        """Return a reading for each field that can be read, and the problems of the others."""
        readings: dict[str, Reading] = {}
        problems: list[Problem] = []
        for field in self.fields:
            try:
                readings[field.id] = _read_field(field, texts.get(field.id), readings)
            except Problem as problem:
                problems += problem.each
        return readings, tuple(problems)

    def work(self, texts: Mapping[str, str]) -> Answer:
        """Return the answer for `texts` by field id; a missing field takes its default.

        A field that has no meaning beside the others is checked too, though it is left aside.
        Raises InputError with every problem at once.
        """
        readings, problems = self.read(texts)
        ids = [field.id for field in self.fields]
        unknown = tuple(
            Problem(
                str(name),
                f"{self.id} has no field {name!r}; it takes {', '.join(ids)}.",
            )
            for name in texts
            if name not in ids
        )
        aside = (field for field in self.fields if field.id in readings)
        problems += tuple(
            problem
            for field in aside
            if not readings[field.id].applies
            for problem in _problems(field, texts.get(field.id))
        )
        if unknown or problems:
            raise InputError((*unknown, *problems))
        return self.answer(readings)

    def answer(self, readings: Mapping[str, Reading]) -> Answer:
        """Return the whole answer for readings of every field. Raises InputError."""
        outcome = self._run(readings)
        for _, later in self._rest(outcome):
            outcome = later
        return self._put(readings, outcome)

    def stages(self, readings: Mapping[str, Reading]) -> Iterator[tuple[float, Answer | None]]:
        """Yield the share done, with an answer at the first stage and the last.

        Raises InputError at the first.
        """
        outcome = self._run(readings)
        yield (0.0 if self.rest else 1.0), self._put(readings, outcome)
        for done, later in self._rest(outcome):
            yield done, self._put(readings, later) if done == 1 else None

    def _run(self, readings: Mapping[str, Reading]) -> Any:
        try:
            return self.run(**{parameter(f.id): f.argument(readings[f.id]) for f in self.fields})
        except Problem as problem:
            raise InputError((problem,)) from None

    def _rest(self, outcome: Any) -> Iterator[tuple[float, Any]]:
        return self.rest(outcome) if self.rest else iter(())

    def _put(self, readings: Mapping[str, Reading], outcome: Any) -> Answer:
        values: dict[str, Any] = {name: reading.value for name, reading in readings.items()}
        values |= {part.name: getattr(outcome, part.name) for part in fields(outcome)}
        return Writer(self, readings, values).answer()


def _problems(field: Field, text: str | None) -> tuple[Problem, ...]:
    try:
        if text and text.strip():
            field.read(text)
    except Problem as problem:
        return problem.each
    return ()


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
        return field.read(text)
    if text is not None and applies and not (field.optional or field.usual):
        field.read(text)  # an emptied box is a mistake, not a default
    default = field.default
    if field.usual:
        other, by_choice = field.usual
        default = (
            by_choice[str(readings[other].value)]
            if other in readings
            else next(iter(by_choice.values()))
        )
    if not default:
        return Reading(None, "not given", given=False, applies=applies)
    return replace(field.read(default), given=False, applies=applies)

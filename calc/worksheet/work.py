"""How a worksheet is worked: texts are read, the calculation is run, the answer is written."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from keyword import iskeyword
from typing import Any

from calc.units.covered import NotCovered
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Field, ParsedInput, Problem
from calc.worksheet.writer import Writer


def parameter(field: str) -> str:
    """Return the name under which a sum takes the field: `from` is a word of Python's own."""
    return f"{field}_" if iskeyword(field) else field


@dataclass(frozen=True, kw_only=True)
class Worksheet(Declaration):
    """A declaration that can be read and worked."""

    def work(self, texts: Mapping[str, str]) -> Answer:
        """Return the answer for `texts` by field id; a missing field takes its default.

        A field that has no meaning beside the others is checked too, though it is left aside.
        Raises InputError with every problem at once.
        """
        readings, problems = self.read(texts)
        if problems := self._every_problem(texts, readings, problems):
            raise InputError(problems)
        return self.answer(readings)

    def problems(self, texts: Mapping[str, str]) -> tuple[Problem, ...]:
        """Return everything that is wrong with `texts` by field id."""
        return self._every_problem(texts, *self.read(texts))

    def _every_problem(
        self,
        texts: Mapping[str, str],
        readings: Mapping[str, ParsedInput],
        problems: tuple[Problem, ...],
    ) -> tuple[Problem, ...]:
        ids = [field.id for field in self.fields]
        unknown = tuple(
            Problem(str(name), f"{self.id} has no field {name!r}; it takes {', '.join(ids)}.")
            for name in texts
            if name not in ids
        )
        aside = (one for one in self.fields if one.id in readings and not readings[one.id].applies)
        hidden = (problem for one in aside for problem in _problems(one, texts.get(one.id)))
        return (*unknown, *problems, *hidden)

    def answer(self, readings: Mapping[str, ParsedInput]) -> Answer:
        """Return the whole answer for readings of every field. Raises InputError."""
        outcome = self._run(readings)
        for _, later in self._rest(outcome):
            outcome = later
        return self._put(readings, outcome)

    def stages(self, readings: Mapping[str, ParsedInput]) -> Iterator[tuple[float, Answer | None]]:
        """Yield the share done, with an answer at the first stage and the last.

        Raises InputError at the first.
        """
        outcome = self._run(readings)
        yield (0.0 if self.later_stages else 1.0), self._put(readings, outcome)
        for done, later in self._rest(outcome):
            yield done, self._put(readings, later) if done == 1 else None

    def first(self, readings: Mapping[str, ParsedInput]) -> Any:
        """Return the typed result for readings of every field, of the first stage alone.

        All judgements are asked of it. Raises InputError for what lies outside a table.
        """
        return self._run(readings)

    def run(self, values: Mapping[str, Any]) -> Any:
        """Return the typed result for `values` by the name of a parameter, all stages done.

        Raises InputError for what lies outside a table.
        """
        outcome = self._calculate(values)
        for _, later in self._rest(outcome):
            outcome = later
        return outcome

    def _run(self, readings: Mapping[str, ParsedInput]) -> Any:
        fields = self.fields
        return self._calculate(
            {parameter(field.id): field.argument(readings[field.id]) for field in fields}
        )

    def _calculate(self, values: Mapping[str, Any]) -> Any:
        try:
            return self.calculate(**values)
        except Problem as problem:
            raise InputError((problem,)) from None
        except NotCovered as gap:
            raise InputError((self.problem(gap),)) from None

    def problem(self, gap: NotCovered) -> Problem:
        """Return what lies outside a table as the problem of the field that it is about.

        Raises NotCovered again where the sheet has no such field.
        """
        for field in self.fields:
            if parameter(field.id) == gap.parameter:
                return field.problem(gap.accepted)
        raise gap

    def _rest(self, outcome: Any) -> Iterator[tuple[float, Any]]:
        return self.later_stages(outcome) if self.later_stages else iter(())

    def _put(self, readings: Mapping[str, ParsedInput], outcome: Any) -> Answer:
        return Writer(self, readings, outcome).answer()


def _problems(field: Field, text: str | None) -> tuple[Problem, ...]:
    try:
        if text and text.strip():
            field.read(text)
    except Problem as problem:
        return problem.each
    return ()

"""What working a worksheet gives."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Protocol

from calc.judge import Level
from calc.sources import Source
from calc.units.quantities import from_base, quantity
from calc.units.shown import rounded
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import ParsedInput, Problem
from calc.worksheet.next_steps import Lead, NextStep
from calc.worksheet.outputs import part_of

_FEW = 8  # results that fit a screen
_CARRIED_DIGITS = 4  # of a result that goes on to another worksheet: one more than is shown


@dataclass(frozen=True)
class Line:
    """A step as worked: what it is, the formula in symbols, with numbers put in, and its value."""

    label: str
    symbol: str
    formula: str
    numbers: str
    value: str
    text: str
    source: Source | None

    def __str__(self) -> str:
        sums = f" = {self.formula} = {self.numbers} = " if self.formula else ": "
        return f"{self.symbol or self.label}{sums}{self.value}"


@dataclass(frozen=True)
class Said:
    """The text of a rule that fires, with its values put in."""

    text: str
    level: Level
    source: Source | None
    rule: str

    def __str__(self) -> str:
        return f"{self.text} [{self.source}]" if self.source else self.text


class InputError(ValueError):
    """Inputs that cannot be used.

    `problems` holds every one of them; `field` and `message` are those of the first.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(" ".join(problem.message for problem in problems))
        self.problems = problems
        self.field = problems[0].field
        self.message = problems[0].message

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.problems,)


class Words(Protocol):
    """What puts an answer into words, once somebody reads them."""

    def sentence(self) -> str: ...
    def working(self) -> tuple[Line, ...]: ...
    def said(self) -> tuple[Said, ...]: ...
    def cautions(self) -> tuple[Said, ...]: ...
    def notes(self) -> tuple[Said, ...]: ...
    def tables(self) -> dict[str, tuple[tuple[str, ...], ...]]: ...


_WORDS = ("sentence", "working", "said", "cautions", "notes", "tables")


@dataclass(frozen=True, repr=False)
class Answer:
    """What working a worksheet gives.

    `answer[id]` is a result: a pint quantity, a text, a list of texts, or None where there is none.
    `values` holds every value in SI floats, `shown` every value as a reader sees it, `tables` the
    cells of each result that is a table, row by row. `rules` are the ids of the rules that fired,
    `rule` that of the one whose sentence is given; `result` is what the calculation returned.
    Sentences, working and tables are written when they are first read: a review of a whole van
    works hundreds of sheets, and reads a few.
    """

    worksheet: Declaration
    inputs: Mapping[str, ParsedInput]
    values: Mapping[str, Any]
    shown: Mapping[str, str]
    verdict: str
    rules: tuple[str, ...]
    rule: str
    result: Any
    words: Words = field(compare=False)

    @cached_property
    def sentence(self) -> str:
        """The verdict's sentence."""
        return self.words.sentence()

    @cached_property
    def working(self) -> tuple[Line, ...]:
        """Each step as worked."""
        return self.words.working()

    @cached_property
    def said(self) -> tuple[Said, ...]:
        """What every rule that fired says beside the verdict, in the sheet's order."""
        return self.words.said()

    @cached_property
    def tables(self) -> Mapping[str, tuple[tuple[str, ...], ...]]:
        """The cells of each result that is a table, as shown, row by row."""
        return self.words.tables()

    @cached_property
    def cautions(self) -> tuple[Said, ...]:
        """What stands beside the numbers."""
        return self.words.cautions()

    @cached_property
    def notes(self) -> tuple[Said, ...]:
        """What stands folded away."""
        return self.words.notes()

    @property
    def sources(self) -> tuple[Source, ...]:
        """Every source that the working and what is said rest on, once."""
        named = (*(line.source for line in self.working), *(one.source for one in self.said))
        return tuple(dict.fromkeys(source for source in named if source))

    def __getstate__(self) -> dict[str, Any]:
        written = {name: getattr(self, name) for name in _WORDS}
        return {**self.__dict__, **written, "shown": dict(self.shown), "words": None}

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)

    def __getitem__(self, name: str) -> Any:
        """Return the result `name`. Raises KeyError if the worksheet has none of that name."""
        result = self.worksheet.result(name)
        value = self.values[name]
        if value is None or result.kind is None:
            if result.words:
                return self.shown[name] if value is not None else None
            return list(value) if isinstance(value, tuple) else value
        return quantity(value, result.kind)

    @property
    def leads(self) -> tuple[NextStep, ...]:
        """The ways on to other worksheets, each with the figures that it takes along."""
        found = ((lead, self._carried(lead)) for lead in self.worksheet.leads)
        return tuple(
            NextStep(lead.label, texts, lead.sheet) for lead, texts in found if texts is not None
        )

    def _carried(self, lead: Lead) -> tuple[tuple[str, str], ...] | None:
        """Return the texts that a way on takes along, None where there is nothing to go on with."""
        known = {name for name, one in self.inputs.items() if one.applies and one.value is not None}
        if not known.issuperset(lead.needs) or not known.isdisjoint(lead.without):
            return None
        texts = []
        for name, source in lead.carry:
            if source.startswith("="):
                texts.append((name, source[1:]))
            elif source in self.inputs:
                if source in known:
                    texts.append((name, self.inputs[source].link))
            elif (text := self._typed(source)) is None:
                return None
            else:
                texts.append((name, text))
        return tuple(texts)

    def _typed(self, name: str) -> str | None:
        """Return a result as it would be typed, None where it is none."""
        if "." in name:
            part = part_of(self.result, name)
            return None if part is None else str(part)
        value = self.values[name]
        outputs = (*self.worksheet.results, *self.worksheet.intermediates)
        kind = next(one for one in outputs if one.id == name).kind
        if value is None or kind is None:
            return None if value is None else str(value)
        unit = kind.units[0]
        return f"{rounded(from_base(value, kind, unit.name), _CARRIED_DIGITS)} {unit.link}".strip()

    def __repr__(self) -> str:
        """Return the sheet, the verdict and the first results, on a few lines."""
        figures = (
            f"{result.id} = {self.shown[result.id]}"
            for result in self.worksheet.results[:_FEW]
            if self.values[result.id] is not None and result.kind
        )
        lines = (f"<{self.worksheet.id}: {self.verdict}. {self.sentence}", *figures)
        return "\n  ".join(lines) + ">"

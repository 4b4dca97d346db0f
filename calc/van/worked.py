"""Worksheets worked for a van, and remembered: after an edit only what changed is worked anew.

A van asks hundreds of times what a worksheet finds, and shows a working only where somebody opens
the sheet. So an outcome here is the typed result with its judgements; the words come when asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

import calc
from calc.judge import Level
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.declare import Declaration, Placed
from calc.worksheet.fields import ParsedInput
from calc.worksheet.findings import Finding, judgements
from calc.worksheet.outputs import Output
from calc.worksheet.writer import Writer

MOST_KEPT = 2000  # outcomes: some vans of forty circuits
ANSWERS_KEPT = 100


class Values(Mapping[str, Any]):
    """The values of an outcome in SI floats, by the id of a field or result, found when asked."""

    def __init__(self, of: Outcome) -> None:
        self._of = of

    def __getitem__(self, name: str) -> Any:
        if (output := _outputs(self._of.worksheet.id).get(name)) is not None:
            return output.of(self._of.result)
        return self._of.inputs[name].value

    def __iter__(self) -> Iterator[str]:
        return iter((*self._of.inputs, *_outputs(self._of.worksheet.id)))

    def __len__(self) -> int:
        return len(list(iter(self)))


@dataclass(frozen=True)
class Outcome:
    """A worksheet as worked for a van: its typed `result`, and what it found.

    Of a sheet that is worked in stages it is the first, which has all judgements.
    """

    worksheet: Declaration
    inputs: Mapping[str, ParsedInput]
    result: Any

    @property
    def values(self) -> Mapping[str, Any]:
        """Every value in SI floats by the id of a field or result."""
        return Values(self)

    @cached_property
    def _judged(self) -> tuple[tuple[Finding, ...], Level, Finding]:
        return judgements(self.worksheet, self.result)

    @property
    def found(self) -> tuple[Finding, ...]:
        """The rules that fired, as the sheet uses them."""
        return self._judged[0]

    @property
    def level(self) -> Level:
        """The worst level that was found."""
        return self._judged[1]

    @property
    def verdict(self) -> str:
        """The same as a word."""
        return self.level.value

    @property
    def rules(self) -> tuple[str, ...]:
        """The ids of the rules that fired."""
        return tuple(dict.fromkeys(one.use.rule.id for one in self.found))

    @cached_property
    def writer(self) -> Writer:
        """What puts its values and judgements into words."""
        return Writer(self.worksheet, self.inputs, self.result, self._judged)

    @property
    def sentence(self) -> str:
        """The sentence of its verdict."""
        first = self._judged[2]
        return self.writer.puts(first, headline_of(first.use), first.use.rule.headline)


_WAY_OUT = "{way_out}"  # what a later stage of a week works out


def headline_of(use: Placed) -> str:
    """Return a sheet's own headline for a rule, nothing where it holds what is not worked yet."""
    return "" if _WAY_OUT in use.headline else use.headline


@lru_cache(64)
def _outputs(sheet: str) -> Mapping[str, Output]:
    declared = calc.find(sheet)
    return {one.id: one for one in (*declared.results, *declared.intermediates)}


def attempted(sheet: str, texts: Mapping[str, str]) -> Outcome | None:
    """Return what worksheet `sheet` finds for `texts`, or None where it takes them not."""
    found = _outcome(sheet, _key(texts))
    return None if isinstance(found, InputError) else found


def refusal(sheet: str, texts: Mapping[str, str]) -> str:
    """Return why worksheet `sheet` does not take `texts`, in a sentence; nothing where it does."""
    found = _outcome(sheet, _key(texts))
    return found.message if isinstance(found, InputError) else ""


def worked(sheet: str, texts: Mapping[str, str]) -> Answer:
    """Return the whole answer of worksheet `sheet` for `texts` by field id. Raises InputError."""
    return _answer(sheet, _key(texts))


def _key(texts: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(texts.items()))


@lru_cache(MOST_KEPT)
def _outcome(sheet: str, texts: tuple[tuple[str, str], ...]) -> Outcome | InputError:
    declared = calc.find(sheet)
    given = dict(texts)
    readings, problems = declared.read(given)
    unknown = given.keys() - {field.id for field in declared.fields}
    if problems := problems or (declared.problems(given) if unknown else ()):
        return InputError(problems)
    try:
        return Outcome(declared, readings, declared.first(readings))
    except InputError as error:
        return error


@lru_cache(ANSWERS_KEPT)
def _answer(sheet: str, texts: tuple[tuple[str, str], ...]) -> Answer:
    return calc.find(sheet).work(dict(texts))

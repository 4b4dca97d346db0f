"""How a typed result becomes an answer: values as shown, working, judgements, in words."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cached_property
from typing import Any

from calc.judge import Level
from calc.sources import SOURCES
from calc.units.shown import decimal_sign, with_sign
from calc.worksheet.answer import Answer, Line, Said
from calc.worksheet.declare import Step
from calc.worksheet.findings import Finding
from calc.worksheet.formula import written
from calc.worksheet.result_table import Table
from calc.worksheet.rows import listed
from calc.worksheet.shown_values import NAME, ShownValues

_SYMBOLS: dict[tuple[str, str, str], str] = {}  # formulas in symbols: the same for every answer


class Writer(ShownValues):
    """Puts one answer into words."""

    @cached_property
    def _told(self) -> dict[int, Said]:
        return {}  # by the place of its finding

    def symbol(self, name: str) -> str:
        """Return what stands for a value in a formula."""
        if name in self.named:
            return self.named[name].symbol or self.named[name].label
        field = self.sheet.field(name)
        return field.symbol or field.label

    def line(self, step: Step[Any]) -> Line:
        """Return a step as worked."""
        named = self.named[step.of]
        key = self.sheet.id, step.formula, decimal_sign.get()
        if step.formula and key not in _SYMBOLS:
            _SYMBOLS[key] = written(step.formula, self.symbol)
        return Line(
            named.label,
            named.symbol,
            _SYMBOLS[key] if step.formula else "",
            written(step.formula, self.number) if step.formula else "",
            self.text(named) if named.kind else self.shown[step.of],
            self.put_in(step.text, ""),
            SOURCES[step.source] if step.source else None,
        )

    def put_in(self, text: str, at: str, *, own: bool = False, those: str = "") -> str:
        """Return a rule's `text` with its names put in; its subject stands `at` in the result.

        The sheet's `own` words for a rule may also name what the sheet shows or holds elsewhere,
        and `those` rows of a list of which it speaks.
        """

        def put(found: re.Match[str]) -> str:
            if own and found[1] == "those":
                return those
            return self.name(found[1], self.place(found[1], at, own))

        return NAME.sub(put, with_sign(text))

    def answer(self) -> Answer:
        """Return the whole answer."""
        kept, level, first = self.judged
        return Answer(
            worksheet=self.sheet,
            inputs=self.readings,
            values=self.values,
            shown=self.shown,
            verdict=level.value,
            rules=tuple(dict.fromkeys(one.use.rule.id for one in kept)),
            rule=first.use.rule.id,
            result=self.result,
            words=self,
        )

    def sentence(self) -> str:
        """Return the verdict's sentence."""
        first = self.judged[2]
        return self.puts(first, first.use.headline, first.use.rule.headline)

    def said(self) -> tuple[Said, ...]:
        """Return what the rules that fire say beside the verdict."""
        return self._said(lambda level: True)

    def cautions(self) -> tuple[Said, ...]:
        """Return what of that stands beside the numbers."""
        return self._said(lambda level: level is not Level.NOTE)

    def notes(self) -> tuple[Said, ...]:
        """Return what of that stands folded away."""
        return self._said(lambda level: level is Level.NOTE)

    def _said(self, shown: Callable[[Level], bool]) -> tuple[Said, ...]:
        """Return what is said at the levels that are `shown`, each sentence written once."""
        told: dict[Said, None] = {}  # a rule may say the same of two parts
        for place, one in enumerate(self.judged[0]):
            rule = one.use.rule
            if not shown(rule.level) or not (one.use.text or rule.text):
                continue
            if place not in self._told:
                source = SOURCES[rule.source] if rule.source else None
                text = self.puts(one, one.use.text, rule.text)
                self._told[place] = Said(text, rule.level, source, rule.id)
            told[self._told[place]] = None
        return tuple(told)

    def working(self) -> tuple[Line, ...]:
        """Return each step as worked."""
        return tuple(self.line(step) for step in self.sheet.steps if step.when(self.result))

    def tables(self) -> dict[str, tuple[tuple[str, ...], ...]]:
        """Return the cells of each result that is a table, as shown."""
        return {table.of: self.rows(table) for table in self.sheet.tables}

    def puts(self, found: Finding, own: str, usual: str) -> str:
        """Return the sheet's `own` words for what is found, or the rule's `usual` ones."""
        those = listed([str(row) for row in found.rows])
        return self.put_in(own or usual, found.use.at, own=bool(own), those=those)

    def rows(self, table: Table) -> tuple[tuple[str, ...], ...]:
        """Return the cells of a table as shown."""
        return tuple(
            tuple(
                self.put(c, getattr(row, c.id), digits=c.digits, both=c.both) for c in table.columns
            )
            for row in self.values[table.of] or ()
        )

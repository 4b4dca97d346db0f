"""How a typed result becomes an answer: values as shown, working, judgements, in words."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import fields
from functools import cached_property
from typing import Any

from calc.judge import Level
from calc.sources import SOURCES
from calc.units.compare import at_least, at_most
from calc.units.kinds import TEMPERATURE
from calc.units.quantities import METRIC, US, Kind, from_base, to_base
from calc.units.shown import MINUS, NEAR, quantity_text, rounded, with_mm2
from calc.worksheet.answer import Answer, Line, Said
from calc.worksheet.declare import (
    Declaration,
    Step,
)
from calc.worksheet.fields import ParsedInput
from calc.worksheet.findings import Finding, judgements
from calc.worksheet.formula import written
from calc.worksheet.outputs import Output, kind_at, part_of
from calc.worksheet.pictures import names_in
from calc.worksheet.result_table import Table
from calc.worksheet.rows import listed

_MOST_DIGITS = 9
NAME = re.compile(r"\{([a-z_][\w.]*)\}")  # a name in a sentence
_SYMBOLS: dict[tuple[str, str], str] = {}  # formulas in symbols: the same for every answer


class Shown(Mapping[str, str]):
    """Every value of an answer as a reader sees it, written when it is first read."""

    def __init__(self, writer: Writer) -> None:
        self._writer = writer
        self._tables = {table.of for table in writer.sheet.tables}
        self._names = dict.fromkeys((*writer.readings, *writer.named, *self._tables))
        self._written: dict[str, str] = {}

    def __getitem__(self, name: str) -> str:
        if name not in self._written:
            self._written[name] = self._write(name)
        return self._written[name]

    def _write(self, name: str) -> str:
        writer = self._writer
        if name in self._tables:
            return _counted(writer.values[name])
        if name in writer.named:
            return writer.text(writer.named[name])
        return writer.readings[name].text

    def __contains__(self, name: object) -> bool:
        return name in self._names

    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    def __len__(self) -> int:
        return len(self._names)


class Writer:
    """Puts one answer's values into words, in the units that the reader uses."""

    def __init__(
        self, sheet: Declaration, readings: Mapping[str, ParsedInput], result: Any
    ) -> None:
        self.sheet = sheet
        self.readings = readings
        self.result = result
        self.values = {part.name: getattr(result, part.name) for part in fields(result)}
        self.values |= {name: one.value for name, one in readings.items()}
        outputs = (*sheet.results, *sheet.intermediates)
        self.values |= {one.id: one.of(result) for one in outputs}
        for name in names_in(sheet.picture):
            if "." in name and " " not in name:
                self.values[name] = part_of(result, name)
        self.numbers: dict[str, str] = {}
        systems = {r.unit.system for r in readings.values() if r.unit and r.applies}
        cells = (cell for r in readings.values() for row in r.rows for cell in row)
        listed = {cell.unit.system for cell in cells if cell.unit and cell.unit.system}
        self.system = US if US in systems or listed == {US} else METRIC
        warm = {
            r.unit.system
            for r in readings.values()
            if r.unit and r.applies and r.kind is TEMPERATURE
        }
        self.degrees = warm.pop() if len(warm) == 1 else self.system
        self.named = {named.id: named for named in (*sheet.results, *sheet.intermediates)}
        self.digits = {name: named.digits for name, named in self.named.items()}
        for pair in sheet.keep_distinct:
            self.keep_apart(*pair)
        self.shown = Shown(self)

    def system_of(self, kind: Kind) -> str:
        """Return the units for a `kind`: for temperatures those that all of them are typed in.

        So one in °C is never answered in °F because a length stands in feet.
        """
        return self.degrees if kind is TEMPERATURE else self.system

    def keep_apart(self, one: str, other: str) -> None:
        """Give two values as many digits as it takes for rounding not to hide which is larger."""
        values = self.values[one], self.values[other]
        if None in values or at_most(*values) == at_least(*values):
            return
        while self.digits[one] < _MOST_DIGITS:
            seen = self.as_shown(one), self.as_shown(other)
            if seen[0] != seen[1] and (seen[0] < seen[1]) == (values[0] < values[1]):
                return
            self.digits[one] += 1
            self.digits[other] = self.digits[one]

    def as_shown(self, name: str) -> float:
        """Return a value [base unit of its kind] as rounded for display."""
        named, value = self.named[name], self.values[name]
        assert named.kind is not None
        unit = named.unit or named.kind.best_unit(value, self.system_of(named.kind)).name
        number = from_base(value, named.kind, unit)
        return to_base(float(rounded(number, self.digits[name], named.rounding)), named.kind, unit)

    def text(self, named: Output, digits: int = 0, rounding: str = "") -> str:
        """Return a value as shown, or with `digits` and `rounding` of the working."""
        return self.put(
            named,
            self.values[named.id],
            digits=digits or self.digits[named.id],
            rounding=rounding or named.rounding,
            both=named.both and not digits,
        )

    def put(self, named: Output, value: Any, *, digits: int, rounding: str, both: bool) -> str:
        """Return `value` as a value called `named` is shown."""
        if value is None:
            return "none"
        if named.words:
            return named.words[value]
        if named.kind is None:
            text = "; ".join(map(str, value)) if isinstance(value, tuple) else str(value)
            return with_mm2(text)
        system = self.system_of(named.kind)
        said = quantity_text(
            value, named.kind, digits=digits, way=rounding, system=system, unit=named.unit
        )
        if both:
            other = US if system == METRIC else METRIC
            said += f" ({quantity_text(value, named.kind, way=named.rounding, system=other)})"
        return said

    def number(self, name: str) -> str:
        """Return a value as put into a formula: more digits than the answer, nearest.

        Temperatures are in °C, as the formulas are, and a negative one stands in brackets.
        """
        if name not in self.numbers:
            text = self._number(name)
            self.numbers[name] = f"({text})" if text.startswith(MINUS) else text
        return self.numbers[name]

    def _number(self, name: str) -> str:
        if name in self.named:
            return self.text(self.named[name], digits=4, rounding=NEAR)
        reading = self.readings[name]
        if reading.kind is None or not isinstance(reading.value, float):
            return reading.text
        if reading.kind is TEMPERATURE:
            return quantity_text(reading.value, TEMPERATURE, digits=6)
        system = self.system_of(reading.kind)
        return quantity_text(reading.value, reading.kind, digits=6, system=system)

    def symbol(self, name: str) -> str:
        """Return what stands for a value in a formula."""
        if name in self.named:
            return self.named[name].symbol or self.named[name].label
        field = self.sheet.field(name)
        return field.symbol or field.label

    def line(self, step: Step[Any]) -> Line:
        """Return a step as worked."""
        named = self.named[step.of]
        key = self.sheet.id, step.formula
        if step.formula and key not in _SYMBOLS:
            _SYMBOLS[key] = written(step.formula, self.symbol)
        value = (
            self.text(named, digits=4 if named.kind else 0, rounding=NEAR)
            if named.kind
            else self.shown[step.of]
        )
        return Line(
            named.label,
            named.symbol,
            _SYMBOLS[key] if step.formula else "",
            written(step.formula, self.number) if step.formula else "",
            value,
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
            elsewhere = own and (found[1] in self.shown or not self.has(f"{at}.{found[1]}"))
            return self.name(found[1], "" if elsewhere else at)

        return NAME.sub(put, text)

    def has(self, path: str) -> bool:
        """Return whether the result has an attribute at `path`."""
        try:
            kind_at(type(self.result), path)
        except AttributeError:
            return False
        return True

    def name(self, name: str, at: str) -> str:
        """Return the attribute `name` of the subject `at` as shown.

        As the sheet shows the same value elsewhere; a value of an input as it was typed.
        """
        if not at and name in self.shown:
            return self.shown[name]
        path = f"{at}.{name}" if at else name
        if there := next((one.id for one in self.named.values() if one.path == path), ""):
            return self.shown[there]
        value, leaf = part_of(self.result, path), path.rpartition(".")[2]
        if leaf in self.readings and self.readings[leaf].value == value:
            return self.readings[leaf].text
        ids = (one.id for one in self.named.values() if leaf in (one.id, one.path.split(".")[-1]))
        if same := next((name for name in ids if self.values[name] == value), ""):
            return self.shown[same]
        kind = kind_at(type(self.result), path)
        for reading in self.readings.values():
            if kind and reading.kind is kind and reading.value == value:
                return reading.text
        return self.put(
            Output(id=path, label="", kind=kind), value, digits=3, rounding=NEAR, both=False
        )

    @cached_property
    def judged(self) -> tuple[tuple[Finding, ...], Level, Finding]:
        """What is found, the verdict, and the finding whose headline is its sentence."""
        return judgements(self.sheet, self.result)

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
        said = dict.fromkeys(  # a rule may say the same of two parts
            Said(
                self.puts(one, one.use.text, one.use.rule.text),
                one.use.rule.level,
                SOURCES[one.use.rule.source] if one.use.rule.source else None,
                one.use.rule.id,
            )
            for one in self.judged[0]
            if one.use.text or one.use.rule.text
        )
        return tuple(said)

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
                self.put(c, getattr(row, c.id), digits=c.digits, rounding=c.rounding, both=c.both)
                for c in table.columns
            )
            for row in self.values[table.of] or ()
        )


def _counted(rows: tuple[Any, ...] | None) -> str:
    return f"{len(rows)} row{'' if len(rows) == 1 else 's'}" if rows else "none"

"""The values of one answer as a reader sees them: in which units, with how many digits."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields
from functools import cache, cached_property
from typing import Any

from calc.units.kinds import TEMPERATURE
from calc.units.quantities import METRIC, US, Kind
from calc.units.shown import MINUS, quantity_text, with_mm2
from calc.worksheet.apart import Figure, has_limit, keep_apart, limits_in
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import ParsedInput
from calc.worksheet.findings import Judged, judgements
from calc.worksheet.outputs import Output, kind_at, part_of
from calc.worksheet.pictures import Picture, names_in

_WORKING_DIGITS = 4  # of a value put into a formula: one more than of a result
NAME = re.compile(r"\{([a-z_][\w.]*)\}")  # a name in a sentence


class Shown(Mapping[str, str]):
    """Every value of an answer as a reader sees it, written when it is first read."""

    def __init__(self, values: ShownValues) -> None:
        self._from = values
        self._tables = {table.of for table in values.sheet.tables}
        self._names = dict.fromkeys((*values.readings, *values.named, *self._tables))
        self._written: dict[str, str] = {}

    def __getitem__(self, name: str) -> str:
        if name not in self._written:
            self._written[name] = self._write(name)
        return self._written[name]

    def _write(self, name: str) -> str:
        values = self._from
        if name in self._tables:
            return _counted(values.values[name])
        if name in values.named:
            named = values.named[name]
            return values.text(named, both=named.both)
        return values.readings[name].text

    def __contains__(self, name: object) -> bool:
        return name in self._names

    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    def __len__(self) -> int:
        return len(self._names)


class ShownValues:
    """One answer's values by name, and each as shown, in the units that the reader uses."""

    def __init__(
        self,
        sheet: Declaration,
        readings: Mapping[str, ParsedInput],
        result: Any,
        judged: Judged | None = None,
    ) -> None:
        self.sheet = sheet
        self.readings = readings
        self.result = result
        self.judged = judged or judgements(sheet, result)
        self.values = {part.name: getattr(result, part.name) for part in fields(result)}
        self.values |= {name: one.value for name, one in readings.items()}
        outputs = (*sheet.results, *sheet.intermediates)
        self.values |= {one.id: one.of(result) for one in outputs}
        self.values |= {name: part_of(result, name) for name in _paths_in(sheet.picture)}
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
        self.shown = Shown(self)
        self._found: dict[tuple[str, str], tuple[Output | ParsedInput | None, Any]] = {}

    def system_of(self, kind: Kind) -> str:
        """Return the units for a `kind`: for temperatures those that all of them are typed in.

        So one in °C is never answered in °F because a length stands in feet.
        """
        return self.degrees if kind is TEMPERATURE else self.system

    @cached_property
    def digits(self) -> dict[str, int]:
        """How many digits each value is shown with, all over the answer: see `apart`."""
        digits = {name: named.digits for name, named in self.named.items()}
        for pair in self.sheet.keep_distinct:
            keep_apart([*self._figures([(name, "") for name in pair], digits)], digits)
        for found in self.judged[0]:
            use, rule = found.use, found.use.rule
            for own, usual in ((use.headline, rule.headline), (use.text, rule.text)):
                said = own or usual
                names = [(name, self.place(name, use.at, bool(own))) for name in _beside(said)]
                if not names:
                    continue
                figures = [*self._figures(names, digits)]
                kinds = {figure.kind for figure in figures if figure.name}
                keep_apart([*figures, *limits_in(said, kinds)], digits)
        return digits

    def _figures(
        self, names: Iterable[tuple[str, str]], digits: dict[str, int]
    ) -> Iterator[Figure]:
        """Yield those of `names`, each with the place of its subject, that are numbers."""
        for name, at in names:
            one, value = self.found(name, at) if name != "those" else (None, None)
            if one is None or one.kind is None or not isinstance(value, float):
                continue
            if isinstance(one, ParsedInput):
                yield Figure(value, one.kind)
                continue
            digits.setdefault(one.id, one.digits)
            best = one.kind.best_unit(value, self.system_of(one.kind))
            unit = one.unit_for(value) or best.name
            yield Figure(value, one.kind, unit, one.rounding, one.id)

    def text(self, named: Output, *, digits: int = 0, both: bool = False) -> str:
        """Return a value as shown, with at least `digits`; `both`: in the other units as well."""
        return self.put(
            named, self.values[named.id], digits=max(digits, self.digits[named.id]), both=both
        )

    def put(self, named: Output, value: Any, *, digits: int, both: bool = False) -> str:
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
            value,
            named.kind,
            digits=digits,
            rounding=named.rounding,
            system=system,
            unit=named.unit_for(value),
        )
        if both:
            other = US if system == METRIC else METRIC
            also = quantity_text(
                value, named.kind, digits=digits, rounding=named.rounding, system=other
            )
            said += f" ({also})"
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
            return self.text(self.named[name], digits=_WORKING_DIGITS)
        reading = self.readings[name]
        if reading.kind is None or not isinstance(reading.value, float):
            return reading.text
        if reading.kind is TEMPERATURE:
            return quantity_text(reading.value, TEMPERATURE, digits=6)
        system = self.system_of(reading.kind)
        return quantity_text(reading.value, reading.kind, digits=6, system=system)

    def place(self, name: str, at: str, own: bool) -> str:
        """Return where in the result a `name` of a sentence stands, whose subject stands `at`.

        The sheet's `own` words may name what is found elsewhere.
        """
        elsewhere = own and (name in self.shown or not self.has(f"{at}.{name}"))
        return "" if elsewhere else at

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
        one, value = self.found(name, at)
        if isinstance(one, ParsedInput):
            return one.text
        if one is None or one.id in self.named:
            return self.shown[name if one is None else one.id]
        return self.put(one, value, digits=self.digits.get(one.id, one.digits))

    def found(self, name: str, at: str) -> tuple[Output | ParsedInput | None, Any]:
        """Return what the attribute `name` of the subject `at` is shown as, and its value.

        None for a table.
        """
        if (name, at) not in self._found:
            self._found[name, at] = self._find(name, at)
        return self._found[name, at]

    def _find(self, name: str, at: str) -> tuple[Output | ParsedInput | None, Any]:
        if not at and name in self.shown:
            return self.named.get(name) or self.readings.get(name), self.values[name]
        path = f"{at}.{name}" if at else name
        if there := next((one for one in self.named.values() if one.path == path), None):
            return there, self.values[there.id]
        value, leaf = part_of(self.result, path), path.rpartition(".")[2]
        if leaf in self.readings and self.readings[leaf].value == value:
            return self.readings[leaf], value
        alike = (one for one in self.named.values() if leaf in (one.id, one.path.split(".")[-1]))
        if same := next((one for one in alike if self.values[one.id] == value), None):
            return same, value
        kind = kind_at(type(self.result), path)
        for reading in self.readings.values():
            if kind and reading.kind is kind and reading.value == value:
                return reading, value
        return Output(id=path, label="", kind=kind), value


@cache
def _paths_in(picture: Picture | None) -> tuple[str, ...]:
    """Return what a picture names that is no value of the sheet's own."""
    return tuple(name for name in names_in(picture) if "." in name and " " not in name)


@cache
def _beside(said: str) -> tuple[str, ...]:
    """Return the names in a sentence, none where it sets no value beside another or a limit."""
    names = tuple(NAME.findall(said))
    return names if len(names) > 1 or has_limit(said) else ()


def _counted(rows: tuple[Any, ...] | None) -> str:
    return f"{len(rows)} row{'' if len(rows) == 1 else 's'}" if rows else "none"

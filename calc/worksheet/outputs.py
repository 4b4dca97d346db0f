"""What a worksheet gives: where a value stands in a result, and how a reader sees it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from calc.units.quantities import Kind, from_base
from calc.units.shown import NEAR


def part_of(result: Any, at: str) -> Any:
    """Return the part of `result` that stands at a path such as `protection.run`, or None.

    Raises AttributeError for a path that leads nowhere.
    """
    for name in at.split(".") if at else ():
        if result is None:
            return None
        result = getattr(result, name)
    return result


def parts_at(result: Any, at: str) -> tuple[tuple[Any, Any], ...]:
    """Return each part of `result` at a path, with the row that it belongs to, without None.

    A path that leads through a tuple has a part in each of its rows; else the row is None.
    """
    if not at:
        return ((None, result),)
    found: list[tuple[Any, Any]] = [(None, result)]
    for name in at.split("."):
        held = [(row, getattr(part, name)) for row, part in found if part is not None]
        found = []
        for row, part in held:
            if isinstance(part, tuple):
                found += [(one if row is None else row, one) for one in part]
            else:
                found.append((row, part))
    return tuple((row, part) for row, part in found if part is not None)


@dataclass(frozen=True, kw_only=True)
class Output:
    """A value of the sum that a reader sees: a result or a step between.

    `kind` is None for text and for lists of text. `rounding` is UP or DOWN only for what one sets,
    cuts or buys by the value, so that it still works as read. `unit` is the unit to show it in
    where that is not the one that reads best, `long_unit` that for two of it and more. `both` shows
    the value in metric and in US units. `hide_if_none` leaves it out where there is none.
    `needs_step` is False for words that only lead the reader on. `at` is where the value stands in
    the result (`protection.fuse`), its id where nothing is said; `find` works it out of the result
    instead, for what only leads the reader on. `words` gives the reader's words for a value that is
    an id.
    """

    id: str
    label: str
    symbol: str = ""
    kind: Kind | None = None
    rounding: str = NEAR
    digits: int = 3
    unit: str = ""
    long_unit: str = ""
    both: bool = False
    hide_if_none: bool = False
    needs_step: bool = True
    at: str = ""
    find: Callable[[Any], Any] | None = None
    words: Mapping[str, str] | None = None

    @property
    def path(self) -> str:
        """Where the value stands in the result."""
        return self.at or self.id

    def unit_for(self, value: float) -> str:
        """Return the unit to show a value [base unit] in, nothing for the one that reads best."""
        if self.kind and self.long_unit and from_base(value, self.kind, self.long_unit) >= 2:
            return self.long_unit
        return self.unit

    def of(self, result: Any) -> Any:
        """Return the value out of a `result`. Raises AttributeError where there is no such part."""
        return self.find(result) if self.find else part_of(result, self.path)


def kind_at(result: type, path: str) -> Kind | None:
    """Return the kind of the value at `path` in a `result`, None for a text.

    Raises AttributeError where no such attribute is declared.
    """
    return _kind_at(result, path)


@cache
def _kind_at(held: Any, path: str) -> Kind | None:
    kind: Kind | None = None
    for name in path.split("."):
        hint = _hints(held).get(name)
        if hint is None:
            raise AttributeError(f"{held.__name__} has no {name!r}")
        kind, held = _kind_and_type(hint)
    return kind


@cache
def _hints(held: type) -> dict[str, Any]:
    found = {
        name: get_type_hints(part.fget, include_extras=True)["return"]
        for base in reversed(held.__mro__)
        for name, part in vars(base).items()
        if isinstance(part, property) and part.fget and "return" in part.fget.__annotations__
    }
    return found | get_type_hints(held, include_extras=True)


def _kind_and_type(hint: Any) -> tuple[Kind | None, Any]:
    """Return the kind that an annotation carries, and its type, without the None of an option."""
    if get_origin(hint) is Annotated:
        base, *marks = get_args(hint)
        return next((mark for mark in marks if isinstance(mark, Kind)), None), base
    options = [one for one in get_args(hint) if one is not type(None)]
    if options and get_origin(hint) in (Union, UnionType):
        return _kind_and_type(options[0])
    if options and get_origin(hint) is tuple:
        return None, _kind_and_type(options[0])[1]  # a path goes on in each of its rows
    return None, hint

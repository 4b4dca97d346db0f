"""Fields: what a worksheet asks for, and how one answer is read and checked."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

from calc.units.covered import Enumeration
from calc.units.quantities import Kind, Unit, to_base
from calc.units.shown import NO_BREAK_SPACE, decimal_sign, grouped, with_unit
from calc.units.typed import (
    AMBIGUOUS,
    EMPTY,
    LONGEST,
    TOO_LONG,
    WRONG_UNIT,
    Unreadable,
    clean,
    fold,
    read,
)


class Problem(ValueError):
    """One field's text cannot be used; `message` says in a sentence what would be accepted.

    `cell` is the place in a list, row and column from 0, where the message belongs.
    """

    def __init__(self, field: str, message: str, cell: tuple[int, int] | None = None) -> None:
        super().__init__(message)
        self.field = field
        self.message = message
        self.cell = cell

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.field, self.message, self.cell)

    @property
    def each(self) -> tuple["Problem", ...]:
        """Every problem that this one gathers: itself, unless the field is a list."""
        return (self,)


@dataclass(frozen=True)
class ParsedInput:
    """What one field says.

    `value` is a float in the base unit of `kind`, or a choice's text, or None where a field may be
    left empty, or a list's rows, each by column. `text` is shown to a reader, `entry` stands in
    the box beside the unit `unit`, `link` goes into a link. `given` tells a typed value from a
    default; `applies` is False where the field has no meaning beside the others.
    """

    value: float | str | tuple[Mapping[str, Any], ...] | None
    text: str
    entry: str = ""
    link: str = ""
    kind: Kind | None = None
    unit: Unit | None = None
    given: bool = True
    applies: bool = True
    rows: tuple[tuple["ParsedInput", ...], ...] = ()  # of a list, cell by cell


@dataclass(frozen=True)
class Measured:
    """The value of a field that takes more than one kind: `value` in the base unit of `kind`."""

    value: float
    kind: Kind


@dataclass(frozen=True, kw_only=True)
class Field:
    """What every field has.

    `default` is text as a reader would type it. `default_by` names another field and gives, for
    each of its choices, the text used when this one is left empty. `only_if` names a field and the
    choice beside which this one has a meaning, `or_if` further choices of it; `only_above` names a
    quantity that must be given, and more than nothing. `optional` allows an empty box that means
    "not known"; with a `default` the box is filled, and may be emptied.
    `advanced` marks a figure that is seldom changed: the form folds these away. `hidden` marks what
    only links set: the form carries it without showing it. `since` is the number of the sheet's
    default set with which the field came, and `before` the text that a link from an earlier set
    means without it (nothing: the default).
    """

    id: str
    label: str
    symbol: str = ""
    default: str = ""
    hint: str = ""
    default_by: tuple[str, Mapping[str, str]] | None = None
    only_if: tuple[str, str] | None = None
    or_if: tuple[str, ...] = ()
    only_above: str = ""
    optional: bool = False
    advanced: bool = False
    hidden: bool = False
    since: int = 1
    before: str = ""

    @property
    def rests_on(self) -> tuple[str, ...]:
        """The fields that decide what this one means, which are read before it."""
        named = (pair[0] for pair in (self.default_by, self.only_if) if pair)
        return (*named, self.only_above) if self.only_above else tuple(named)

    @property
    def conditional(self) -> bool:
        """Whether it may have no meaning beside the others."""
        return self.only_if is not None or bool(self.only_above)

    def applies(self, readings: Mapping[str, ParsedInput]) -> bool:
        """Return whether it has a meaning beside what was read before it."""
        if self.only_above in readings and not readings[self.only_above].value:
            return False
        if self.only_if is None or self.only_if[0] not in readings:
            return True
        other, choice = self.only_if
        return readings[other].value in (choice, *self.or_if)

    def read(self, text: str) -> ParsedInput:
        """Return what `text` says. Raises Problem."""
        raise NotImplementedError

    def argument(self, reading: ParsedInput) -> Any:
        """Return what the sum is given for `reading`."""
        return reading.value

    def problem(self, says: str) -> Problem:
        """Return the problem that this field's text `says` ("must be …")."""
        return Problem(self.id, f"{self.label} {says}")


@dataclass(frozen=True, kw_only=True)
class Quantity(Field):
    """A field that takes a number of one or more kinds, between `low` and `high` (as typed)."""

    kinds: tuple[Kind, ...]
    low: str
    high: str
    exclusive_low: bool = False  # True: `low` itself is not allowed
    example: str = ""

    @property
    def kind(self) -> Kind:
        return self.kinds[0]

    @property
    def units(self) -> tuple[tuple[Kind, Unit], ...]:
        """Every unit that may be picked, the usual one first."""
        first = self.bare
        rest = ((kind, unit) for kind in self.kinds for unit in kind.units)
        return (first, *(pair for pair in rest if pair != first))

    @property
    def bare(self) -> tuple[Kind, Unit]:
        """The kind and unit that a number without a unit is taken in."""
        return _unit_of(self.default or self.sample, self.kinds)

    @property
    def sample(self) -> str:
        """A text as a reader would type it."""
        return self.example or (
            next(iter(self.default_by[1].values())) if self.default_by else self.low
        )

    def read(self, text: str) -> ParsedInput:
        try:
            typed = read(text, self.kinds, self.bare)
        except Unreadable as unreadable:
            raise self._unreadable(unreadable) from None
        value = to_base(typed.number, typed.kind, typed.unit.name)
        if typed.kind.whole and value != int(value if abs(value) < 1e9 else 0):
            raise self.problem(f"must be a whole number, like {self.default or self.sample}.")
        self.check(value, typed.kind)
        pair = typed.is_pair
        shown = typed.digits if pair else with_unit(grouped(typed.digits), typed.unit.symbol)
        link = typed.digits.replace(" ", "") + ("" if pair else typed.unit.link)
        return ParsedInput(value, shown, typed.digits, link, typed.kind, typed.unit)

    def argument(self, reading: ParsedInput) -> Any:
        if len(self.kinds) > 1 and isinstance(reading.value, float):
            assert reading.kind is not None
            return Measured(reading.value, reading.kind)
        return reading.value

    def bounds(self, kind: Kind) -> tuple[float, float, str, str] | None:
        """Return low and high [base unit of `kind`] and their texts, if they are of that kind."""
        return _bounds(self.low, self.high, kind, self.kinds, decimal_sign.get())

    def check(self, value: float, kind: Kind) -> None:
        """Raise Problem if `value` [base unit of `kind`] lies outside the limits."""
        bounds = self.bounds(kind)
        if bounds is None:
            return
        low, high, low_text, high_text = bounds
        if value < low - 1e-9 * abs(low) or value > high + 1e-9 * abs(high):
            raise self.problem(f"must be between {low_text} and {high_text}.")
        if self.exclusive_low and value <= low:
            raise self.problem(f"must be more than {low_text} and at most {high_text}.")

    def _unreadable(self, unreadable: Unreadable) -> Problem:
        why = unreadable.why
        sample = (self.default or self.sample).replace(" ", NO_BREAK_SPACE)
        if why == EMPTY:
            return Problem(
                self.id, f"Enter the {self.label[0].lower()}{self.label[1:]}, like {sample}."
            )
        if why == TOO_LONG:
            return self.problem(f"must be at most {LONGEST} characters, like {sample}.")
        if why == AMBIGUOUS:
            return self.problem(
                f"has a comma or point that can be read two ways. Write {unreadable.instead}."
            )
        if why == WRONG_UNIT:
            symbols = [unit.symbol for _, unit in self.units if unit.symbol]
            if not symbols:
                return self.problem(f"must be a plain number without a unit, like {sample}.")
            listed = ", ".join(symbols[:-1]) + (" or " if symbols[1:] else "") + symbols[-1]
            return self.problem(f"must be in {listed}, like {sample}.")
        return self.problem(f"must be a number, like {sample}.")


@cache
def _unit_of(text: str, kinds: tuple[Kind, ...]) -> tuple[Kind, Unit]:
    first = (kinds[0], kinds[0].units[0])
    typed = read(text, kinds, first)
    return typed.kind, typed.unit


@cache
def _bounds(
    low: str, high: str, kind: Kind, kinds: tuple[Kind, ...], sign: str
) -> tuple[float, float, str, str] | None:
    """Return the bounds that hold for `kind`; a field of two kinds lists them as `a | b`.

    Their texts have the decimal `sign`.
    """
    for one_low, one_high in zip(low.split("|"), high.split("|"), strict=True):
        first = (kinds[0], kinds[0].units[0])
        ends = [read(end.strip(), kinds, first) for end in (one_low, one_high)]
        if ends[0].kind == kind:
            values = [to_base(end.number, kind, end.unit.name) for end in ends]
            texts = [with_unit(grouped(end.digits), end.unit.symbol) for end in ends]
            return values[0], values[1], texts[0], texts[1]
    return None


@dataclass(frozen=True)
class Option:
    """One choice: `id` is its value and stands in links, `label` is what a reader sees.

    `aliases` are further texts that mean it, old labels among them; `group` is its heading if any;
    `system` says that it is at home in metric or US practice only.
    """

    id: str
    label: str = ""
    group: str = ""
    aliases: tuple[str, ...] = ()
    system: str = ""

    @property
    def typed(self) -> str:
        """What a reader would type: the id, or the label where hyphens stand for its spaces."""
        return self.label if self.label.replace(" ", "-") == self.id else self.id


@dataclass(frozen=True, kw_only=True)
class Choice(Field):
    """A field that takes one of a few names or named sizes.

    `of` is the enumeration of its options, by id; without one the calculation is given the id.
    """

    options: tuple[Option, ...]
    example: str = ""
    of: type[Enumeration] | None = None

    def read(self, text: str) -> ParsedInput:
        if len(text) > LONGEST:
            raise self.problem(f"must be {self._accepted}.")
        folded = fold(clean(text).replace(",", "."))
        if not folded:
            raise Problem(
                self.id, f"Choose the {self.label[0].lower()}{self.label[1:]}: {self._accepted}."
            )
        option = self._by_name.get(folded)
        if option is None:
            raise self.problem(f"must be {self._accepted}.")
        link = option.id.replace(" ", "" if option.id[0].isdigit() else "-")
        value = self.of(option.id) if self.of else option.id
        return ParsedInput(value, option.label or option.id, option.id, link)

    @cached_property
    def _by_name(self) -> dict[str, Option]:
        found: dict[str, Option] = {}
        for option in self.options:
            for name in (option.id, option.label, *option.aliases):
                if name:
                    found.setdefault(fold(name.replace(",", ".")), option)
        return found

    @property
    def _accepted(self) -> str:
        if len(self.options) > 8:
            return f"one from the list, {self.example}"
        names = [option.typed for option in self.options]
        return ", ".join(names[:-1]) + " or " + names[-1]

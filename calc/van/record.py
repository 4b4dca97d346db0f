"""A van as it was read: its parts, each with a value and its state at every key.

Everything here is immutable; a change gives another van. A place is written as in a file:
`bank.coldest`, `circuits[3].length`, counted from 1.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from calc.van.keys import PartKind
from calc.van.parts import PARTS
from calc.van.values import State, Value
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

if TYPE_CHECKING:
    from calc.van.diagram import Drawing
    from calc.van.listed import ListTable
    from calc.van.net import Net
    from calc.van.review import Review
    from calc.van.schedule import Schedule

KINDS: Mapping[str, PartKind] = MappingProxyType({kind.id: kind for kind in PARTS})
"""Every kind of part by its id, in the order of the file."""

CHASSIS = "chassis"  # an end of conductors that is no part with keys of its own

_PLACE = re.compile(r"([a-z_]+)(?:\[([0-9]{1,4})\])?(?:\.([a-z_]+))?")


@dataclass(frozen=True, repr=False)
class Part:
    """One part of a van: `index` counts from 1 among those of its kind.

    `values` holds one value for every key of the kind.
    """

    kind: PartKind
    id: str
    index: int
    values: Mapping[str, Value]

    def __getitem__(self, name: str) -> Value:
        """Return what stands at the key `name`. Raises KeyError."""
        return self.values[name]

    def __repr__(self) -> str:
        """Return the place, the id and what was stated, on one line."""
        texts = (f"{name}={v.text!r}" for name, v in self.values.items() if v.statements)
        return f"Part({self.place} {self.id}: {', '.join(texts)})"

    def si(self, name: str) -> float | None:
        """Return the number at a key in the base unit of its kind (°C for a temperature).

        None unless it is known and a number. A field of two kinds tells by `reading.kind` which.
        """
        value = self.values[name]
        found = value.reading.value if value.known and value.reading else None
        return found if isinstance(found, float) else None

    def choice(self, name: str) -> str | None:
        """Return the id chosen at a key, or the words that stand there; None unless known."""
        value = self.values[name]
        found = value.reading.value if value.known and value.reading else None
        return found if isinstance(found, str) else None

    def text(self, name: str) -> str:
        """Return the text at a key as it would be typed into a worksheet, nothing unless known."""
        value = self.values[name]
        return value.text if value.known else ""

    @property
    def name(self) -> str:
        """What a reader calls it: its name, or the word for its kind with its number."""
        own = self.choice("name") if "name" in self.values else None
        return own or (f"{self.kind.one} {self.index}" if self.kind.many else self.kind.one)

    @property
    def place(self) -> str:
        """Where it stands in a file: `circuits[3]`, or `bank` where there is but one."""
        return f"{self.kind.id}[{self.index}]" if self.kind.many else self.kind.id


@dataclass(frozen=True, repr=False)
class Van:
    """A van: `parts` by the id of their kind, `none` and `not_seen` the kinds stated as a whole."""

    parts: Mapping[str, tuple[Part, ...]]
    none: frozenset[str] = frozenset()
    not_seen: frozenset[str] = frozenset()

    def __repr__(self) -> str:
        """Return the name and how many parts of each kind there are."""
        counts = (f"{len(parts)} {kind}" for kind, parts in self.parts.items())
        return f"Van({self.name}: {', '.join(counts)})"

    def all(self, kind: str) -> tuple[Part, ...]:
        """Return the parts of a kind in their order. Raises KeyError for a kind there is not."""
        return self.parts.get(KINDS[kind].id, ())

    def one(self, kind: str) -> Part | None:
        """Return the first part of a kind, if there is any; a van always has the part `van`."""
        return next(iter(self.all(kind)), None)

    def stated(self, kind: str) -> State:
        """Return whether a van has parts of a kind: GIVEN, NONE, NOT_SEEN or BLANK."""
        if self.all(kind):
            return State.GIVEN
        if kind in self.none:
            return State.NONE
        return State.NOT_SEEN if self.inspection or kind in self.not_seen else State.BLANK

    def by_id(self, id: str) -> Part | None:
        """Return the part with an id, as `fridge` or `bank`."""
        return self._ids.get(id)

    def at(self, place: str) -> Value:
        """Return what stands at a place such as `circuits[3].length`.

        Where a van has no such part, the state of its kind. Raises InputError for a place that no
        van has.
        """
        kind, index, key = place_of(place)
        found = self.all(kind.id)
        if 1 <= index <= len(found) and key in found[index - 1].values:
            return found[index - 1][key]
        if not key or kind.many or key not in {one.id for one in kind.keys}:
            raise no_such_place(place)
        return Value(state=self.stated(kind.id))

    @property
    def inspection(self) -> bool:
        """Whether it is an inspection: nothing is taken as usual there."""
        own = self.parts["van"][0]
        return own.choice("kind") == "inspection"

    @property
    def name(self) -> str:
        """The van's name, or the word for it."""
        return self.parts["van"][0].name

    def everything(self) -> Iterator[Part]:
        """Yield every part, in the order of the file."""
        for kind in KINDS:
            yield from self.parts.get(kind, ())

    @cached_property
    def _ids(self) -> Mapping[str, Part]:
        ids = {part.id: part for part in self.everything()}
        return {id.replace("_", "-"): part for id, part in ids.items()} | ids

    @cached_property
    def net(self) -> Net:
        """What is joined to what, conductor by conductor."""
        from calc.van.net import Net

        return Net(self)

    def schedule(self) -> Schedule:
        """Return every run worked, with what is missing chosen, or the reason why not."""
        from calc.van.schedule import schedule

        return schedule(self)

    def review(self) -> Review:
        """Return what the worksheets and the rules of the whole find, the gravest first."""
        from calc.van.review import review

        return review(self)

    def lists(self) -> tuple[ListTable, ...]:
        """Return schedule, loads, fuses, cables, joints, parts and what to test, each as a list."""
        from calc.van.lists import tables

        return tables(self)

    def diagram(self) -> Drawing:
        """Return the diagram: strokes, symbols and words in their places, on one sheet or more."""
        from calc.van.diagram import layout

        return layout(self, self.schedule(), self.review())

    def changed(self, texts: Mapping[str, Any]) -> Van:
        """Return the van with other values at some places. Raises InputError with every problem.

        A text is read as it was typed, "not seen" and "none" too, and from then on it judges; an
        empty one strikes what was stated. In place of a text there may be a table or a list of
        tables, as in a file. A part of which a van has one at most is there once a value of it is.
        """
        from calc.van.edit import changed

        return changed(self, texts)

    def added(self, kind: str, texts: Mapping[str, Any]) -> Van:
        """Return the van with one more part of a kind, the last of its list. Raises InputError."""
        from calc.van.edit import added

        return added(self, kind, texts)

    def without(self, place: str) -> Van:
        """Return the van without the part at a place. Raises InputError."""
        from calc.van.edit import without

        return without(self, place)

    def moved(self, place: str, to: int) -> Van:
        """Return the van with the part at a place as the `to`-th of its list. Raises InputError."""
        from calc.van.edit import moved

        return moved(self, place, to)

    def stating(self, kind: str, state: State) -> Van:
        """Return the van stated to have none of a kind, or not seen, or nothing said (BLANK).

        Parts of that kind go. Raises InputError where "none" is no answer.
        """
        from calc.van.edit import stating

        return stating(self, kind, state)


def place_of(place: str) -> tuple[PartKind, int, str]:
    """Return the kind, the number from 1 and the key that a place names. Raises InputError."""
    match = _PLACE.fullmatch(place)
    kind = KINDS.get(match[1]) if match else None
    if not match or not kind or kind.many != bool(match[2]):
        raise no_such_place(place)
    return kind, int(match[2] or 1), match[3] or ""


def no_such_place(place: str) -> InputError:
    """Return the error that says that a van has no such place."""
    return InputError((Problem(place, f"The van has no place “{place[:60]}”."),))

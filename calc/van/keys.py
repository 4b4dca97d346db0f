"""How a part of a van is declared: its keys, each with the field that reads its value."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import calc
from calc.units.covered import Enumeration
from calc.worksheet.fields import Choice, Field, Option, Quantity
from calc.worksheet.rows import Rows, Text


class Walk(Enumeration):
    """When an inspector looks at a value, in an order in which nobody is hurt."""

    SMELL = "smell-and-alarms"
    UNPLUG = "shore-unplugged"
    ISOLATE = "isolate-and-prove-dead"
    LOOK = "look"
    TUG = "tug"
    TORQUE = "torque"
    MAINS_DEAD = "mains-dead-tests"
    ENERGISE = "energise-fuse-by-fuse"
    MILLIVOLTS = "millivolts-under-load"
    MAINS_LIVE = "mains-live-tests"
    DESK = "at-the-desk"  # what papers, the owner or a calculation tell


@dataclass(frozen=True, kw_only=True)
class Key:
    """One value of a part.

    `of` is the field of a worksheet that reads it, as `wire-drop.length` or, for the column of a
    list, `joint-sheet.joints.stud`; `own` is a field that no worksheet has. `label` and `hint` are
    the van's own words where the worksheet's do not fit. `usual` is the text that a plan takes
    where nothing is typed; without one it stays blank. `none` tells that "none" is an answer.
    `safety` marks what must be proven before the van may be energised: unseen it ranks as a stop of
    its own kind. `refers` names the kinds of parts whose ids the value may be. `few` marks what the
    editor shows first; the rest folds.
    """

    id: str
    of: str = ""
    own: Field | None = None
    label: str = ""
    hint: str = ""
    usual: str = ""
    none: bool = False
    safety: bool = False
    few: bool = False
    refers: tuple[str, ...] = ()
    walk: Walk = Walk.LOOK

    @cached_property
    def field(self) -> Field:
        """The field that reads the value, under this key's id and words."""
        if self.own is not None:
            found = self.own
        else:
            sheet, name, *column = self.of.split(".")
            found = calc.find(sheet).field(name)
            if column:
                assert isinstance(found, Rows)
                found = next(one for one in found.columns if one.id == column[0])
        if isinstance(found, Quantity) and not found.example:
            sample = found.default or found.sample.split("|")[0].strip()
            found = replace(found, example=sample)  # for its default may go
        return replace(
            found, id=self.id, label=self.label or found.label, hint=self.hint or found.hint,
            default=self.usual, default_by=None, only_if=None, only_above="",
            optional=True, advanced=not self.few, hidden=False, since=1, before="",
        )  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class PartKind:
    """A kind of part: `id` is its table in the file, `one` the word for one of them.

    `many` tells that there is a list of them. `mark` is the letter of its marks on the diagram and
    in the lists. `none` tells that a van may state that it has none of it. `plainly` is the word
    for one of them to a client, empty where that is `one`.
    """

    id: str
    title: str
    one: str
    keys: tuple[Key, ...]
    many: bool = False
    most: int = 1
    mark: str = ""
    none: bool = False
    walk: Walk = Walk.LOOK
    plainly: str = ""

    @property
    def to_client(self) -> str:
        """The word for one of them that somebody understands who has not made the van."""
        return self.plainly or self.one

    def key(self, name: str) -> Key:
        """Return the key with the id `name`. Raises KeyError."""
        for key in self.keys:
            if key.id == name:
                return key
        raise KeyError(f"{self.id} has no {name!r}")


def one_of(name: str, label: str, *options: str | tuple[str, str], hint: str = "") -> Choice:
    """Return a field with a few names, each an id or a pair of id and label."""
    pairs = ((one, "") if isinstance(one, str) else one for one in options)
    made = tuple(Option(id, label or id.replace("-", " ")) for id, label in pairs)
    return Choice(id=name, label=label, hint=hint, options=made)


def words(name: str, label: str, example: str, hint: str = "") -> Text:
    """Return a field for a few words."""
    return Text(id=name, label=label, example=example, hint=hint, optional=True)

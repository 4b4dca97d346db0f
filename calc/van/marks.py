"""The marks of a van's parts, the same on the diagram, in the schedule, in the lists and on labels.

A letter tells what it is: G a source of energy, B panels, U what converts, X terminals and bars, Q
what isolates or breaks, F a fuse, W a cable, S a switch, R the shunt, J a joint. Fuse, cable,
switch and built-in isolator of one run have one number, so that F3, W3 and S3 belong together:
circuits count from 1, every other kind of run from a hundred of its own, so that a circuit that
comes later renumbers no main cable.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from calc.van.keys import PartKind
from calc.van.parts import PARTS

# The numbers of runs, by the kind of part that is fed: a circuit's fuse is F1, a cable's F101.
_FIRST = {
    "circuits": 1, "cables": 101, "batteries": 201, "panels": 301, "regulators": 401,
    "alternator": 501, "shore": 601, "inverter": 701, "converters": 801,
}  # fmt: skip
# What the mains installation consists of, after the van's own parts of the same letter.
_OF_MAINS = (("inlet", "X"), ("breaker", "Q"), ("residual", "Q"), ("changeover", "Q"))
_OF_RUNS = frozenset("FW")  # letters that stand with a run's number
PLUS, MINUS = "+", "−"
_POLES = {"plus": PLUS, "minus": MINUS}


class MarkedPart(Protocol):
    """What is asked of a part."""

    @property
    def kind(self) -> PartKind: ...
    @property
    def id(self) -> str: ...


class HasParts(Protocol):
    """What is asked of a van: its parts by the id of their kind."""

    @property
    def parts(self) -> Mapping[str, Sequence[MarkedPart]]: ...


@dataclass(frozen=True)
class Marks:
    """The marks of one van: `of_parts` and `numbers` of runs by a part's id, `of_mains` by name."""

    of_parts: Mapping[str, str]
    numbers: Mapping[str, int]
    of_mains: Mapping[str, str]

    def part(self, part: MarkedPart) -> str:
        """Return a part's own mark, as G1 or X2; nothing for a part that has none."""
        return self.of_parts.get(part.id, "")

    def fuse(self, part: MarkedPart) -> str:
        """Return the mark of the fuse of a part's run, as F3."""
        return self._of_run("F", part)

    def far_fuse(self, part: MarkedPart) -> str:
        """Return the mark of a second fuse at the far end of a run, as F3.2."""
        first = self.fuse(part)
        return f"{first}.2" if first else ""

    def wire(self, part: MarkedPart, pole: str = "") -> str:
        """Return the mark of a part's conductors, as W3; of one of them, W3+ or W3−."""
        mark = self._of_run("W", part)
        return f"{mark}{_POLES.get(pole, pole)}" if mark else ""

    def switch(self, part: MarkedPart) -> str:
        """Return the mark of the switch of a part's run, as S3."""
        return self._of_run("S", part)

    def built_in_isolator(self, part: MarkedPart) -> str:
        """Return the mark of an isolator that the record names only with its run, as Q301."""
        return self._of_run("Q", part)

    def terminal(self, text: str) -> str:
        """Return the mark of a terminal as a record names it: "fuse-block.3" is X1:3.

        The text itself comes back where it names no part with a mark.
        """
        name, _, way = text.partition(".")
        mark = self.of_parts.get(name, "")
        if not mark:
            return text
        return f"{mark}:{_POLES.get(way, way)}" if way else mark

    def _of_run(self, letter: str, part: MarkedPart) -> str:
        number = self.numbers.get(part.id)
        return f"{letter}{number}" if number else ""


def marks(van: HasParts) -> Marks:
    """Return the marks of all parts of `van`. They depend on nothing but order and kinds."""
    numbers = {
        part.id: first + place
        for kind, first in _FIRST.items()
        for place, part in enumerate(van.parts.get(kind, ()))
    }
    counts: dict[str, int] = {}
    of_parts: dict[str, str] = {}
    # Lists before single parts: there are always batteries, and not always an alternator.
    for part in _in_order(van):
        letter = part.kind.mark
        if letter in _OF_RUNS and part.id in numbers:
            of_parts[part.id] = f"{letter}{numbers[part.id]}"
        elif letter:
            counts[letter] = counts.get(letter, 0) + 1
            of_parts[part.id] = f"{letter}{counts[letter]}"
    of_mains = {}
    if van.parts.get("mains"):
        counts["X"] -= 1  # the mark of the mains itself is that of its inlet
        for name, letter in _OF_MAINS:
            counts[letter] = counts.get(letter, 0) + 1
            of_mains[name] = f"{letter}{counts[letter]}"
    return Marks(of_parts, numbers, of_mains)


def _in_order(van: HasParts) -> Iterable[MarkedPart]:
    # The inlet comes last, so that the bars keep their marks when a van gets mains.
    kinds = sorted(PARTS, key=lambda kind: (not kind.many, kind.id == "mains"))
    return (part for kind in kinds if kind.mark for part in van.parts.get(kind.id, ()))

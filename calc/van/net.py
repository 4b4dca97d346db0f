"""What is joined to what: each run of a van as its conductors, plus and minus, between terminals.

A run is whatever is fed by a pair of conductors, and every main cable. `start` is the end nearer
the bank. A terminal is named `part.terminal`, as `fuse-block.3`, `bank.plus` or `fridge.minus`; a
bar, an isolator or a shunt of which no terminal is named stands for itself. `chassis` is the metal.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from calc.van.problems import nearest
from calc.van.record import CHASSIS, KINDS, Part, Van
from calc.van.values import State

BANK = "bank"
PLUS, MINUS = "plus", "minus"
RUNS = tuple(id for id, kind in KINDS.items() if any(k.id == "return_by" for k in kind.keys))
"""The kinds of parts that are runs, or have one."""

_ONE_POLE = ("bars", "isolators", "shunt")
_MAKES = ("inverter", "converters")  # what comes out is another supply


@dataclass(frozen=True, kw_only=True)
class Conductor:
    """One conductor of a run, from the terminal nearer the bank to that of what it feeds.

    `start` or `end` is empty where nobody has said it; `assumed` holds those of the two that a plan
    leaves open and that can hardly be elsewhere: the only bar of that pole, or the bank. `pole` is
    empty for a cable of which nobody has said it. A return
    `by_chassis` starts at `chassis`; `bond` is where the load's own negative joins the metal, in
    the words of the file. `length` [m] is one way, `fuse` the text of the fuse in a plus.
    """

    part: Part
    pole: str
    start: str
    end: str
    by_chassis: bool = False
    bond: str = ""
    assumed: frozenset[str] = frozenset()

    @property
    def length(self) -> float | None:
        return self.part.si("length")

    @property
    def size(self) -> str | None:
        return self.part.choice("conductor")

    @property
    def parallel(self) -> int:
        return int(self.part.si("parallel") or 1)

    @property
    def fuse(self) -> str:
        return self.part.text("fuse") if self.pole == PLUS else ""

    @property
    def ends(self) -> tuple[str, str]:
        """The ids of the two parts that it joins, as far as they are said."""
        return owner(self.start), owner(self.end)


@dataclass(frozen=True, kw_only=True)
class Dangling:
    """A name at a place of the record that is no part of the van, or one of the wrong kind."""

    place: str
    part: Part
    text: str
    near: str  # the id that may have been meant

    @property
    def sentence(self) -> str:
        """What is wrong, in a sentence."""
        meant = f" Is “{self.near}” meant?" if self.near else ""
        label = self.part.kind.key(self.place.rpartition(".")[2]).field.label.lower()
        return f"{self.part.name}: “{self.text}” under “{label}” is no part that fits.{meant}"


def owner(terminal: str) -> str:
    """Return the id of the part that a terminal is of."""
    return terminal.partition(".")[0]


class Net:
    """What is joined to what in one van; ask for it as `van.net`."""

    def __init__(self, van: Van) -> None:
        self.van = van

    @cached_property
    def conductors(self) -> tuple[Conductor, ...]:
        """Every conductor of every run, in the order of the file."""
        runs = (part for kind in RUNS for part in self.van.all(kind))
        return tuple(one for part in runs for one in self._of(part))

    def of(self, part: Part) -> tuple[Conductor, ...]:
        """Return the conductors of one run."""
        return self._by_id.get(part.id, ())

    @cached_property
    def _by_id(self) -> dict[str, tuple[Conductor, ...]]:
        found: dict[str, tuple[Conductor, ...]] = {}
        for one in self.conductors:
            found[one.part.id] = (*found.get(one.part.id, ()), one)
        return found

    @cached_property
    def chassis_bond(self) -> str:
        """Where the bank's negative joins the chassis, as said; nothing if none does."""
        return self.van.parts["van"][0].text("chassis_bond")

    @cached_property
    def problems(self) -> tuple[Dangling, ...]:
        """Every name that is no part of the van, or of a part that cannot stand there."""
        return tuple(self._dangling())

    def _of(self, part: Part) -> Iterator[Conductor]:
        pole = part.choice("pole") or "" if "pole" in part.values else "both"
        if pole != "both":
            start, end = self._end(part, "from", pole), self._end(part, "to", pole)
            yield Conductor(part=part, pole=pole, start=start, end=end)
            return
        feeds = part.text("to")
        itself = "" if part.kind.id == "cables" else part.id
        start = self._end(part, "from", PLUS)
        guess = "" if start or part["from"].state is State.NOT_SEEN else self._near(part, PLUS)
        end = self._terminal(feeds, PLUS) or (f"{itself}.{PLUS}" if itself else "")
        yield Conductor(
            part=part, pole=PLUS, start=start or guess, end=end,
            assumed=frozenset(["start"] if guess else []),
        )  # fmt: skip
        end = self._terminal(owner(feeds), MINUS) or (f"{itself}.{MINUS}" if itself else "")
        if part.choice("return_by") == CHASSIS:
            bond = part.text("bond_point")
            yield Conductor(
                part=part, pole=MINUS, start=CHASSIS, end=end, by_chassis=True, bond=bond
            )
            return
        start = self._end(part, "return_to", MINUS)
        said = start or part["return_to"].state is State.NOT_SEEN
        guess = "" if said else self._near(part, MINUS)
        yield Conductor(
            part=part, pole=MINUS, start=start or guess, end=end,
            assumed=frozenset(["start"] if guess else []),
        )  # fmt: skip

    def _end(self, part: Part, key: str, pole: str) -> str:
        return self._terminal(part.text(key), pole, key != "to")

    def _terminal(self, text: str, pole: str, feeding: bool = False) -> str:
        """Return the terminal that a text of the file names; the pole's own where none is named.

        `feeding` tells that a run starts there: at the outlet, where a part has one.
        """
        id, _, terminal = text.strip().partition(".")
        if not id or id == CHASSIS:
            return id
        part = self.van.by_id(id)
        if terminal or (part and part.kind.id in _ONE_POLE):
            return text.strip()
        if not pole:
            return id
        out = "out-" if feeding and part and part.kind.id in _MAKES else ""
        return f"{id}.{out}{pole}"

    def _near(self, part: Part, pole: str) -> str:
        """Return the terminal that a run can hardly but start at, where its plan leaves it open."""
        if part.kind.id == "panels":
            regulator = owner(part.text("regulator"))
            return f"{regulator}.panel-{pole}" if regulator else ""
        if part.kind.id == "cables":
            return ""
        bars = [bar for bar in self.van.all("bars") if bar.choice("pole") == pole]
        if pole == PLUS and part.kind.id == "circuits":
            blocks = [bar for bar in bars if bar.choice("kind") == "fuse-block"]
            bars = blocks or bars
        if len(bars) > 1:
            return ""
        return bars[0].id if bars else f"{BANK}.{pole}"

    def _dangling(self) -> Iterator[Dangling]:
        for part in self.van.everything():
            for key in part.kind.keys if any(k.refers for k in part.kind.keys) else ():
                id = owner(part.text(key.id).strip()) if key.refers else ""
                if not id or (id == CHASSIS and CHASSIS in key.refers):
                    continue
                if id == BANK and "batteries" in key.refers:
                    continue
                named = self.van.by_id(id)
                if named is None or named.kind.id not in key.refers:
                    fit = tuple(
                        p.id for kind in key.refers if kind in KINDS for p in self.van.all(kind)
                    )
                    near = nearest(id, fit) if fit else ""
                    place = f"{part.place}.{key.id}"
                    yield Dangling(place=place, part=part, text=part.text(key.id), near=near)

"""The way from the bank to a run as a network: every battery between its posts, every cable.

Batteries may have cables of their own, stand in a chain, or feed a bar by several cables; what a
short meets is then no sum along one way. Circuits are left out but for those on the way, and so is
what leads nowhere else: no current of a short flows there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from calc.electrical.network import CurrentLoad, Resistor, solve
from calc.units.si import Ohms
from calc.van.from_bank import house
from calc.van.net import BANK, MINUS, PLUS, owner
from calc.van.paths import CONVERTS, edges, is_run, way
from calc.van.record import CHASSIS, Part, Van

CIRCUITS = "circuits"
ONE_POLE = 0.5  # of a loop out and back


@dataclass(frozen=True)
class Link:
    """What joins two nodes: the conductor of a `run`, or the battery with this id if None."""

    id: str
    a: str
    b: str
    run: Part | None = None


@dataclass(frozen=True)
class Feeding:
    """What feeds a short between two nodes; `share` is what part of a loop each cable counts as."""

    links: tuple[Link, ...]
    plus: str
    minus: str
    share: float

    @property
    def cables(self) -> tuple[Part, ...]:
        """The runs that are part of it."""
        return tuple({one.id: one.run for one in self.links if one.run is not None}.values())

    @property
    def key(self) -> tuple[object, ...]:
        """What tells it from another of the same van."""
        return (*((one.id, one.a, one.b) for one in self.links), self.plus, self.minus, self.share)

    def resistance(self, battery: Mapping[str, Ohms], loop: Callable[[Part], Ohms]) -> Ohms:
        """Return what it has between its nodes, by the resistance of each battery and each run."""
        ohms = [
            battery[one.id] if one.run is None else self.share * loop(one.run) for one in self.links
        ]
        parts = [
            Resistor(str(number), one.a, one.b, each)
            for number, (one, each) in enumerate(zip(self.links, ohms, strict=True))
        ]
        short = CurrentLoad("short", plus=self.minus, minus=self.plus, current=1.0)
        return solve([*parts, short], self.minus).between(self.plus, self.minus)


def feeding(van: Van, part: Part, plus: str, minus: str | None) -> Feeding | None:
    """Return what feeds a short of `part` between two parts, by their ids; None if nothing does.

    Where `minus` is None the way back is taken to lie beside the plus. The run itself is taken to
    be open.
    """
    ways = (way(van, part, pole) for pole in (PLUS, MINUS))
    on_way = {run.id for found in ways if found is not None for run in found.runs}
    poles = (PLUS,) if minus is None else (PLUS, MINUS)
    links, names = list[Link](), dict[str, Mapping[str, str]]()
    for pole in poles:
        own = [
            edge
            for edge in edges(van)[pole]
            if is_run(edge.run)
            if edge.run.kind.id != CIRCUITS or edge.run.id in on_way
            if not any(_converts(van, end) for end in (edge.near, edge.far))
        ]
        start = plus if pole == PLUS else minus or BANK
        names[pole] = _names(van, pole, {start, *(e.near for e in own), *(e.far for e in own)})
        named = names[pole]
        links += [
            Link(edge.run.id, named.get(edge.near, f"{pole} {edge.near}"),
                 named.get(edge.far, f"{pole} {edge.far}"), edge.run)
            for edge in own
            if edge.run is not part
        ]  # fmt: skip
    high = names[PLUS].get(plus, f"{PLUS} {plus}")
    low = MINUS if minus is None else names[MINUS].get(minus, f"{MINUS} {minus}")
    links += [
        Link(one.id, names[PLUS].get(one.id, f"{PLUS} {one.id}"),
             names[MINUS].get(one.id, f"{MINUS} {one.id}") if MINUS in names else MINUS)
        for one in house(van)
    ]  # fmt: skip
    share = 1.0 if minus is None else ONE_POLE
    left = _between(links, high, low)
    return Feeding(tuple(left), high, low, share) if left else None


def _converts(van: Van, id: str) -> bool:
    part = van.by_id(id)
    return part is not None and part.kind.id in CONVERTS


def _names(van: Van, pole: str, touched: set[str]) -> dict[str, str]:
    """Return the node of each part of a pole that is one with another's.

    The posts of all batteries are one where the bank itself is named. A battery of which no cable
    is recorded stands on the posts of the first. The chassis is where the negative is bonded.
    """
    batteries = [one.id for one in house(van)]
    apart = [id for id in batteries if id in touched] if BANK not in touched else []
    first = f"{pole} {apart[0] if apart else BANK}"
    found = {id: first for id in (BANK, *batteries) if id not in apart[1:]}
    if pole == MINUS and (bond := owner(van.net.chassis_bond)):
        found[CHASSIS] = found.get(bond, f"{pole} {bond}")
    return found


def _between(links: list[Link], plus: str, minus: str) -> list[Link]:
    """Return the links that lie on a way from one node to the other."""
    left = [one for one in links if one.a != one.b]
    while True:
        ends = Counter(end for one in left for end in (one.a, one.b))
        dead = {end for end, count in ends.items() if count == 1 and end not in (plus, minus)}
        kept = [one for one in left if one.a not in dead and one.b not in dead]
        if len(kept) == len(left):
            break
        left = kept
    reached, waiting = {minus}, [minus]
    while waiting:
        node = waiting.pop()
        for one in left:
            other = one.b if one.a == node else one.a if one.b == node else None
            if other is not None and other not in reached:
                reached.add(other)
                waiting.append(other)
    return [one for one in left if one.a in reached] if plus in reached else []

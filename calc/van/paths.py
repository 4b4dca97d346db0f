"""The way of each run to the bank: the runs before it and the parts that it passes, pole by pole.

What converts parts a way in two: behind an inverter, a converter or a regulator flows another
current, and a short is fed by that device.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from calc.van.from_bank import house
from calc.van.net import MINUS, PLUS, owner
from calc.van.once import once_for_each_van
from calc.van.record import CHASSIS, Part, Van

CONVERTS = ("inverter", "converters", "regulators")


@dataclass(frozen=True)
class Way:
    """The way of a run to the bank on one pole: the `runs` before it, the nearest first.

    `nodes` are the ids of the parts that it passes, from the one that the run itself starts at.
    """

    runs: tuple[Part, ...]
    nodes: tuple[str, ...]

    @cached_property
    def ids(self) -> frozenset[str]:
        """The ids of its runs."""
        return frozenset(one.id for one in self.runs)


@dataclass(frozen=True)
class Edge:
    """A conductor of one pole as two ends, the ids of parts, and the run that it belongs to."""

    run: Part
    near: str
    far: str


def is_run(part: Part) -> bool:
    """Return whether a part is fed by a run of conductors, or is one."""
    return "from" in part.values and "conductor" in part.values


@once_for_each_van
def runs(van: Van) -> tuple[Part, ...]:
    """Return every run of a van, in the order of its file."""
    return tuple(part for part in van.everything() if is_run(part))


@once_for_each_van
def edges(van: Van) -> Mapping[str, tuple[Edge, ...]]:
    """Return the conductors of each pole of which both ends are known."""
    found: dict[str, list[Edge]] = {PLUS: [], MINUS: []}
    for one in van.net.conductors:
        near, far = one.ends
        if near and far and one.pole:
            found[one.pole].append(Edge(one.part, near, far))
    return {pole: tuple(own) for pole, own in found.items()}


def roots(van: Van) -> frozenset[str]:
    """Return the ids that stand for the house bank."""
    return frozenset(("bank", *(one.id for one in house(van))))


@once_for_each_van
def ways(van: Van) -> Mapping[tuple[str, str], Way]:
    """Return the way of every run that reaches the bank, by its id and its pole."""
    found: dict[tuple[str, str], Way] = {}
    for pole in (PLUS, MINUS):
        reached = _reached(van, pole)
        for edge in edges(van)[pole]:
            starts = [one for one in (edge.near, edge.far) if one in reached]
            if starts:
                start = min(starts, key=lambda one: len(reached[one].nodes))
                found.setdefault((edge.run.id, pole), reached[start])
    return found


def _reached(van: Van, pole: str) -> Mapping[str, Way]:
    """Return the way to the bank from every part that conductors of a pole reach."""
    reached = {root: Way((), (root,)) for root in sorted(roots(van))}
    waiting = deque(reached)
    joined: dict[str, list[tuple[str, Part]]] = {}
    for edge in edges(van)[pole]:
        joined.setdefault(edge.near, []).append((edge.far, edge.run))
        joined.setdefault(edge.far, []).append((edge.near, edge.run))
    if pole == MINUS and (bond := owner(van.net.chassis_bond)):
        own = van.parts["van"][0]
        joined.setdefault(bond, []).append((CHASSIS, own))
        joined.setdefault(CHASSIS, []).append((bond, own))
    while waiting:
        node = waiting.popleft()
        before = reached[node]
        for other, run in joined.get(node, ()):
            if other not in reached:
                on_way = (run, *before.runs) if is_run(run) else before.runs
                reached[other] = Way(on_way, (other, *before.nodes))
                waiting.append(other)
    return reached


def way(van: Van, part: Part, pole: str = PLUS) -> Way | None:
    """Return the way of a run to the bank, None where it is not known."""
    return ways(van).get((part.id, pole))


def device_before(van: Van, part: Part) -> Part | None:
    """Return the inverter, converter or regulator that a run is fed by; None where there is none.

    The device that the run itself leads to does not count.
    """
    found = way(van, part)
    for node in found.nodes if found else ():
        own = van.by_id(node)
        if own is not None and own.kind.id in CONVERTS:
            return own
    return None

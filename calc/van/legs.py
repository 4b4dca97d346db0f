"""Batteries side by side of which each has cables of its own, up to where those meet.

Each then feeds a short through its own cables alone, so that the resistances of a battery and its
cables stand in series, and those of the batteries in parallel.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from calc.van.from_bank import house
from calc.van.once import once_for_each_van
from calc.van.paths import Edge, edges, is_run, way
from calc.van.record import Part, Van


@dataclass(frozen=True)
class Leg:
    """The `runs` from one battery on one pole to the part with the id `meets`, where more join."""

    meets: str
    runs: tuple[Part, ...]


@once_for_each_van
def _kept(van: Van) -> dict[str, Mapping[str, Leg]]:
    return {}


def legs(van: Van, pole: str) -> Mapping[str, Leg]:
    """Return the leg of each battery of the house bank that one cable of a pole leaves, by id."""
    kept = _kept(van)
    if pole not in kept:
        joined: dict[str, list[Edge]] = {}
        for edge in edges(van)[pole]:
            for end in {edge.near, edge.far}:
                joined.setdefault(end, []).append(edge)
        kept[pole] = {
            one.id: _leg(one.id, joined) for one in house(van) if len(joined.get(one.id, ())) == 1
        }
    return kept[pole]


def _leg(battery: str, joined: Mapping[str, list[Edge]]) -> Leg:
    node, edge, found = battery, joined[battery][0], [joined[battery][0].run]
    while True:
        node = edge.far if edge.near == node else edge.near
        onward = [one for one in joined[node] if one is not edge]
        if len(onward) != 1 or onward[0].run in found:
            return Leg(node, tuple(found))
        edge = onward[0]
        found.append(edge.run)


def own_cables(van: Van, part: Part, pole: str) -> Mapping[str, tuple[Part, ...]]:
    """Return the cables of each battery that a run is fed through, where several meet on its way.

    Empty where a run lies behind one battery's cables only, or no battery has any of its own.
    """
    found = way(van, part, pole)
    for node in found.nodes if found else ():
        meeting = {id: leg.runs for id, leg in legs(van, pole).items() if leg.meets == node}
        if len(meeting) > 1:
            runs = {id: tuple(filter(is_run, own)) for id, own in meeting.items()}
            return runs if found and found.nodes[-1] in runs else {}
    return {}

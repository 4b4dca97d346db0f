"""What the fuses ahead of a run let through: those of batteries side by side together."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isinf

from calc.units.si import Amperes
from calc.van.feeding import Link, feeding
from calc.van.from_bank import house
from calc.van.judging import there
from calc.van.net import MINUS
from calc.van.paths import way
from calc.van.record import Part, Van

_NONE, _UNKNOWN = (inf, True), (inf, False)

Limit = tuple[Amperes, bool]
"""The most that fuses let through, without end where there are none, and whether it is known."""


def guard(van: Van, part: Part) -> Amperes | None:
    """Return what the fuses ahead of a run let through [A], 0 where there are surely none.

    Behind a converter it is what that gives: a fuse before it carries another current. Of several
    ways from batteries to the run each lets its own through. None where a fuse that decides, or the
    way itself, is not known.
    """
    found = way(van, part)
    if found is None:
        return None
    for run in found.runs:
        if run.kind.id == "converters":
            return run.si("rated_current")
    battery = van.by_id(found.nodes[-1])
    if battery is not None and battery.kind.id == "batteries" and battery not in house(van):
        limit = _one_after_another([*map(_fuse, found.runs), _fuse(battery)])
    elif network := feeding(van, part, found.nodes[0], None):
        limit = _ahead(van, network.links, network.plus, frozenset({network.plus}))
    else:
        return None
    most, known = limit
    return most if not isinf(most) else 0.0 if known else None


def _ahead(van: Van, links: Sequence[Link], node: str, seen: frozenset[str]) -> Limit:
    """Return what reaches a node over all that leads there."""
    beside: dict[str, list[Link]] = {}
    for one in links:
        if node in (one.a, one.b):
            beside.setdefault(one.b if one.a == node else one.a, []).append(one)
    limits = list[Limit]()
    for other, between in beside.items():
        if other in seen:
            continue
        own = _together([_fuse(one.run or van.by_id(one.id)) for one in between])
        beyond = _NONE if other == MINUS else _ahead(van, links, other, seen | {other})
        limits.append(_one_after_another([own, beyond]))
    return _together(limits)


def _fuse(one: Part | None) -> Limit:
    """Return what the fuse of a run, or those of like batteries, let through."""
    is_there = there(one, "fuse") if one is not None else None
    if one is None or is_there is None:
        return _UNKNOWN
    rating = one.si("fuse") if is_there else None
    if rating is None:
        return _UNKNOWN if is_there else _NONE
    count = (one.si("units") or 1.0) if one.kind.id == "batteries" else 1.0
    return rating * count, True


def _one_after_another(limits: Sequence[Limit]) -> Limit:
    """Return the least, the nearest first: what is not known may be less than all behind it."""
    least, known = inf, True
    for amps, is_known in limits:
        if isinf(least) and not is_known:
            return _UNKNOWN
        least = min(least, amps)
        known = known and is_known
    return least, known or not isinf(least)


def _together(limits: Sequence[Limit]) -> Limit:
    return sum(amps for amps, _ in limits), all(known for _, known in limits)

"""What a part of a van depends on, as a key: what was worked holds while the key is the same.

A circuit depends on itself, on everything that is no circuit, on the currents of the runs before
it, and on a circuit only where that one feeds it. So an edit of one circuit leaves the others.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from itertools import count

from calc.van.currents import load_current
from calc.van.from_runs import sizes_in_use
from calc.van.net import MINUS, PLUS
from calc.van.once import once_for_each_van
from calc.van.paths import runs, way
from calc.van.record import Part, Van

CIRCUITS = "circuits"
_MOST_KEPT = 4000

Print = tuple[Hashable, ...]

_prints: dict[int, tuple[Mapping[str, object], Print]] = {}
_scopes: dict[Hashable, int] = {}
_numbers = count()


class Memo[T]:
    """What was worked, by a key of this module; it forgets all before it grows too large."""

    def __init__(self, most: int = _MOST_KEPT) -> None:
        self._kept: dict[Hashable, T] = {}
        self._most = most

    def get(self, key: Hashable) -> T | None:
        """Return what was worked for a key, None if nothing was."""
        return self._kept.get(key)

    def keep(self, key: Hashable, found: T) -> T:
        """Keep what was worked for a key, and return it."""
        if len(self._kept) >= self._most:
            self._kept.clear()
        self._kept[key] = found
        return found


def print_of(part: Part) -> Print:
    """Return what a part says, as a key: its place, and state and text at each of its keys."""
    kept = _prints.get(id(part.values))
    if kept is None or kept[0] is not part.values:
        if len(_prints) > _MOST_KEPT:
            _prints.clear()
        said = tuple((value.state, value.text) for value in part.values.values())
        kept = _prints[id(part.values)] = (part.values, said)
    return (part.kind.id, part.index, part.id, kept[1])


def _scope(key: Hashable) -> int:
    """Return a number that stands for a key, and for no other."""
    if key not in _scopes:
        if len(_scopes) > _MOST_KEPT:
            _scopes.clear()
        _scopes[key] = next(_numbers)
    return _scopes[key]


@once_for_each_van
def whole(van: Van) -> int:
    """Return a key of the whole van."""
    parts = tuple(print_of(part) for part in van.everything())
    return _scope((parts, van.none, van.not_seen))


@once_for_each_van
def around_circuits(van: Van) -> int:
    """Return a key of all that is no circuit, and of the sizes of conductors that are in use."""
    parts = tuple(print_of(part) for part in van.everything() if part.kind.id != CIRCUITS)
    sizes = sizes_in_use(van, None)
    return _scope((parts, van.none, van.not_seen, sizes.text if sizes else ""))


@once_for_each_van
def _loaded(van: Van) -> int:
    """Return a key of the same with the current of every run that is no circuit."""
    others = (part for part in runs(van) if part.kind.id != CIRCUITS)
    currents = tuple((part.id, load_current(van, part)) for part in others)
    return _scope((around_circuits(van), currents))


def of_circuit(van: Van, part: Part) -> Hashable:
    """Return a key of a circuit for what does not depend on the runs before it."""
    return print_of(part), around_circuits(van)


def of_run(van: Van, part: Part) -> Hashable:
    """Return a key of a run with its way to the bank."""
    found = (way(van, part, pole) for pole in (PLUS, MINUS))
    before = (run for on_way in found if on_way for run in on_way.runs)
    feeding = tuple(print_of(run) for run in before if run.kind.id == CIRCUITS)
    return print_of(part), _loaded(van), feeding

"""What the rules of the whole van are made of: facts, rules on them, and mends that carry parts."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field

from calc.judge import Rule
from calc.van.record import Part, Van, place_of
from calc.van.values import State

NO_TEXTS: Mapping[str, str] = {}


@dataclass(frozen=True, kw_only=True)
class Mend:
    """One way to mend a finding, as data: nothing is mended until somebody applies it.

    `text` says what to do, the action first. `changes` are new texts by place, `adds` new parts, a
    kind and its texts each, `removes` the places of parts that go, `states` what is stated of a
    whole kind. All are applied together, removals last, so that no place moves before it is used.
    """

    text: str
    changes: Mapping[str, str] = field(default_factory=dict)
    adds: tuple[tuple[str, Mapping[str, str]], ...] = ()
    removes: tuple[str, ...] = ()
    states: tuple[tuple[str, State], ...] = ()

    @property
    def touches(self) -> frozenset[str]:
        """The places and kinds of parts that it changes."""
        kinds = (kind for kind, _ in (*self.adds, *self.states))
        return frozenset((*self.changes, *kinds, *self.removes))


def mended(van: Van, mend: Mend) -> Van:
    """Return `van` with a mend applied. Raises InputError for what the record refuses."""
    for kind, state in mend.states:
        van = van.stating(kind, state)
    if mend.changes:
        van = van.changed(dict(mend.changes))
    for kind, texts in mend.adds:
        van = van.added(kind, dict(texts))
    for place in sorted(mend.removes, key=lambda one: place_of(one)[1], reverse=True):
        van = van.without(place)
    return van


@dataclass(frozen=True, kw_only=True)
class Fact:
    """What a rule of the whole is asked of: a part, or the van itself, as far as it is known.

    `at` is the place of the part in the record, `part` its name as a reader knows it. In every fact
    None means that it is not known, and "none" that there is no such thing. No rule fires on what
    is not known, for that is said once, by itself.
    """

    at: str
    part: str


def no_mends(_: object) -> Iterable[Mend]:
    """The mends of a rule that has none."""
    return ()


@dataclass(frozen=True, kw_only=True)
class VanRule[S: Fact](Rule[S]):
    """A judgement on the whole van.

    `key` names the value of the part that the finding is about; without one it is about the part.
    `mends` yields ways to mend it, the best first: each is tried on the whole van before it is
    offered.
    """

    key: str = ""
    mends: Callable[[S], Iterable[Mend]] = no_mends


@dataclass(frozen=True)
class Asked[S: Fact]:
    """Rules, and the facts of a van that they are asked of."""

    facts: Callable[[Van], Iterable[S]]
    rules: tuple[VanRule[S], ...]


def known(part: Part | None, key: str) -> str | None:
    """Return what a choice says, "none" where it is stated so, or None where it is not known."""
    if part is None:
        return None
    if part[key].state is State.NONE:
        return "none"
    return part.choice(key)


def there(part: Part | None, key: str) -> bool | None:
    """Return whether there is such a thing, or None where it is not known."""
    if part is None:
        return None
    value = part[key]
    return False if value.state is State.NONE else True if value.known else None


def told(part: Part | None, key: str) -> str:
    """Return a value as it was typed, nothing where it is not known."""
    return part.text(key) if part else ""


def absent(van: Van, kind: str) -> bool:
    """Return whether a van has none of a kind: stated so, or a plan that lists none."""
    state = van.stated(kind)
    return state is State.NONE or (state is State.BLANK and not van.inspection)

"""Changes of a van: each gives another van, and leaves the one it was asked of as it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from calc.van.data import may_be_none, read_part, van_as_data, van_from_data
from calc.van.ids import RESERVED, own_id, with_ids
from calc.van.keys import PartKind
from calc.van.problems import Problems
from calc.van.reading import (
    PLAIN,
    USUAL_EVIDENCE,
    in_order,
    read_statement,
    read_value,
    stated_text,
    value_of,
)
from calc.van.record import KINDS, Part, Van, no_such_place, place_of
from calc.van.values import Stage, State, Statement, Value
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

_LATER = tuple(Stage)


def changed(van: Van, texts: Mapping[str, Any]) -> Van:
    """Return the van with other values; see `Van.changed`."""
    problems = Problems()
    made: dict[str, list[Part]] = {}
    new_ids: dict[str, str] = {}
    for place, raw in texts.items():
        try:
            kind, index, name = place_of(place)
            parts = made.setdefault(kind.id, list(van.all(kind.id)))
            if not parts and not kind.many:
                parts.append(_empty(van, kind))
            known = index <= len(parts) and index > 0
            if not known or not (name in parts[index - 1].values or (name == "id" and kind.many)):
                raise no_such_place(place)
        except InputError as error:
            problems.add(place, error.message)
            continue
        part = parts[index - 1]
        if name == "id":
            new_ids[part.id] = id = own_id(part.place, raw, problems)
            other = van.by_id(id)
            if id in RESERVED or (other is not None and other.id != part.id):
                problems.add(place, f"{_called(part)}: another part has the id “{id}”.")
            parts[index - 1] = replace(part, id=id)
            continue
        try:
            value = _replaced(van, part, name, raw)
        except Problem as problem:
            for each in problem.each:
                problems.add(place, f"{_called(part)}: {each.message}")
            continue
        parts[index - 1] = replace(part, values={**part.values, name: value})
    problems.stop()
    found = _rebuilt(van, {id: tuple(parts) for id, parts in made.items()})
    return _renamed(found, new_ids) if new_ids else found


def _called(part: Part) -> str:
    named = part.choice("name") if "name" in part.values else None
    number = f"{part.kind.one[0].upper()}{part.kind.one[1:]} {part.index}"
    return (f"{number} “{named}”" if named else number) if part.kind.many else part.kind.title


def _renamed(van: Van, ids: Mapping[str, str]) -> Van:
    """Return the van in which whatever named a part by its old id names it by the new one."""
    parts = {
        kind: tuple(
            replace(part, values={**part.values, **dict(_named_anew(part, ids, van.inspection))})
            for part in own
        )
        for kind, own in van.parts.items()
    }
    return replace(van, parts=parts)


def _named_anew(
    part: Part, ids: Mapping[str, str], inspection: bool
) -> Iterator[tuple[str, Value]]:
    for key in part.kind.keys:
        said = part[key.id].statements
        if not key.refers or not any(one.text.partition(".")[0] in ids for one in said):
            continue
        heads = [one.text.partition(".") for one in said]
        texts = ["".join((ids.get(id, id), point, rest)) for id, point, rest in heads]
        new = tuple(replace(one, text=text) for one, text in zip(said, texts, strict=True))
        yield key.id, value_of(part.kind, key, new, inspection)


def _empty(van: Van, kind: PartKind) -> Part:
    _, values = read_part(kind, 1, {}, van.inspection, Problems())
    return Part(kind, kind.id, 1, values)


def _replaced(van: Van, part: Part, name: str, raw: Any) -> Value:
    """Return the value at a key after `raw` was stated there.

    A text takes the place of what was stated at the same stage, or at a later one: what is typed
    judges. A table takes the place of its stage alone, a list of all.
    """
    kind, key, before = part.kind, part.kind.key(name), part[name].statements
    if isinstance(raw, list | tuple):
        return read_value(kind, key, raw, van.inspection)
    if isinstance(raw, Mapping):
        said = read_statement(kind, key, raw)
        kept = [one for one in before if one.stage is not said.stage]
        return value_of(kind, key, in_order((*kept, said)), van.inspection)
    text = stated_text(kind, key, raw)
    if not text:
        return value_of(kind, key, (), van.inspection)
    stage, _ = PLAIN[van.inspection]
    if before:
        stage = max(stage, before[-1].stage, key=_LATER.index)
    said = Statement(stage=stage, text=text, evidence=USUAL_EVIDENCE[stage])
    kept = [one for one in before if one.stage is not stage]
    return value_of(kind, key, in_order((*kept, said)), van.inspection)


def _rebuilt(van: Van, parts: Mapping[str, tuple[Part, ...]]) -> Van:
    """Return the van with other parts of some kinds; what it stated of those kinds goes."""
    there = {id for id, own in parts.items() if own}
    every = {
        id: tuple(replace(one, index=i) if one.index != i else one for i, one in enumerate(own, 1))
        for id in KINDS
        if (own := parts.get(id, van.all(id)))
    }
    made = Van(every, van.none - there, van.not_seen - there)
    ids = [part.id for part in made.everything()]
    if made.inspection == van.inspection and len(set(ids)) == len(ids):
        return made
    # Other defaults hold now, or an id must be told to be taken already.
    data = van_as_data(made)
    return van_from_data(data)


def added(van: Van, kind: str, texts: Mapping[str, Any]) -> Van:
    """Return the van with one more part; see `Van.added`."""
    of = KINDS[kind]
    own = list(van.all(kind))
    if len(own) >= of.most:
        raise InputError((Problem(kind, f"{of.title}: {of.most} at most."),))
    problems = Problems()
    read = {id: [(one.id, one.values) for one in van.all(id)] for id in KINDS}
    read[kind] = [*read[kind], read_part(of, len(own) + 1, texts, van.inspection, problems)]
    parts = with_ids(read, problems)
    problems.stop()
    return Van(parts, van.none - {kind}, van.not_seen - {kind})


def without(van: Van, place: str) -> Van:
    """Return the van without a part; see `Van.without`."""
    kind, index = _part_at(van, place)
    own = van.all(kind)
    if kind == "van":
        raise no_such_place(place)
    return _rebuilt(van, {kind: (*own[: index - 1], *own[index:])})


def moved(van: Van, place: str, to: int) -> Van:
    """Return the van with a part at another number of its list; see `Van.moved`."""
    kind, index = _part_at(van, place)
    own = list(van.all(kind))
    if not 1 <= to <= len(own):
        raise no_such_place(f"{kind}[{to}]")
    own.insert(to - 1, own.pop(index - 1))
    return _rebuilt(van, {kind: tuple(own)})


def _part_at(van: Van, place: str) -> tuple[str, int]:
    kind, index, key = place_of(place)
    if key or not 1 <= index <= len(van.all(kind.id)):
        raise no_such_place(place)
    return kind.id, index


def stating(van: Van, kind: str, state: State) -> Van:
    """Return the van with a kind stated as a whole; see `Van.stating`."""
    of = KINDS[kind]
    sayable = state in (State.BLANK, State.NOT_SEEN) or (state is State.NONE and may_be_none(of))
    if not sayable or kind == "van":
        raise InputError((Problem(kind, f"{of.title} cannot be “{state}” as a whole."),))
    parts = {id: own for id, own in van.parts.items() if id != kind}
    none, not_seen = van.none - {kind}, van.not_seen - {kind}
    if state is State.NONE:
        none |= {kind}
    if state is State.NOT_SEEN:
        not_seen |= {kind}
    return Van(parts, none, not_seen)

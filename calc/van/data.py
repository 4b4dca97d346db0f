"""A van as plain data, the form that a page stores: nothing but tables, lists and texts."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from typing import Any

from calc.van.ids import id_for, own_id, with_ids
from calc.van.keys import PartKind
from calc.van.problems import LONGEST_NAME, Problems, called, unknown
from calc.van.reading import PLAIN, USUAL_EVIDENCE, missing, printable, read_value
from calc.van.record import KINDS, Part, Van
from calc.van.values import Statement, Value
from calc.worksheet.fields import Problem

FORMAT = 1
WHOLE = ("none", "not_seen")  # how a file states a kind of part as a whole


def van_from_data(data: object) -> Van:
    """Return the van that plain data hold. Raises InputError, which holds every problem."""
    problems = Problems()
    if not isinstance(data, Mapping):
        problems.add("", "A van is a table with its parts.")
        problems.stop()
    assert isinstance(data, Mapping)
    number = data.get("format")
    if number != FORMAT or isinstance(number, bool):
        problems.add("format", f"The file must say format = {FORMAT}, the one that is read here.")
    known = ("format", *WHOLE, *KINDS)
    for name in data:
        if name not in known:
            says = partial(unknown, "The file", str(name), known)
            problems.add(printable(str(name))[:LONGEST_NAME], says)
    inspection = _is_inspection(data.get("van"))
    stated = {name: _whole(name, data.get(name, ()), problems) for name in WHOLE}
    read = {}
    for kind in KINDS.values():
        state, raw = _raw_parts(kind, data.get(kind.id), problems)
        if state:
            stated[state].add(kind.id)
        read[kind.id] = [
            read_part(kind, index, one, inspection, problems)
            for index, one in enumerate(raw, start=1)
        ]
    for name, kinds in stated.items():
        for id in sorted(kinds):
            if read.get(id) or (name == "none" and id in stated["not_seen"]):
                problems.add(name, f"“{id}” is stated as {name} and as something else.")
    read["van"] = read["van"] or [("", missing(KINDS["van"], inspection))]
    parts = with_ids(read, problems)
    problems.stop()
    return Van(parts, frozenset(stated["none"]), frozenset(stated["not_seen"]))


def _is_inspection(raw: object) -> bool:
    """Return whether a van's raw data say that it is an inspection."""
    kind = KINDS["van"]
    try:
        value = read_value(kind, kind.key("kind"), raw.get("kind", ""), False)  # type: ignore[attr-defined]
    except (Problem, AttributeError):
        return False  # it is told where the part is read
    return value.reading is not None and value.reading.value == "inspection"


def _whole(name: str, raw: object, problems: Problems) -> set[str]:
    """Return the kinds of parts that a list of the file states as a whole."""
    if not isinstance(raw, list | tuple) or not all(isinstance(one, str) for one in raw):
        problems.add(name, f'“{name}” must be a list of kinds of parts, like ["alarms", "panels"].')
        return set()
    if len(raw) > len(set(raw)):
        problems.add(name, f"“{name}” names a kind of parts twice.")
    for one in sorted(set(raw)):
        if one not in KINDS:
            problems.add(name, partial(unknown, f"“{name}”", one, tuple(KINDS)))
        elif name == "none" and not may_be_none(KINDS[one]):
            problems.add(name, _never_none(KINDS[one]))
    return {one for one in raw if one in KINDS}


def may_be_none(kind: PartKind) -> bool:
    """Return whether a van may state that it has no part of a kind."""
    return kind.none or kind.many


def _never_none(kind: PartKind) -> str:
    return f"A van cannot be without its {kind.one}. Write “{kind.id}” under not_seen instead."


def _raw_parts(
    kind: PartKind, raw: object, problems: Problems
) -> tuple[str, list[Mapping[str, Any]]]:
    """Return how a kind is stated as a whole, if it is, and the raw data of its parts."""
    if raw is None:
        return "", []
    if isinstance(raw, Mapping):
        for name in WHOLE:
            if raw.get(name) is True and len(raw) == 1:
                if name == "none" and not may_be_none(kind):
                    problems.add(kind.id, _never_none(kind))
                return name, []
        if not kind.many:
            return "", [raw]
    heading = f"[[{kind.id}]]" if kind.many else f"[{kind.id}]"
    if not kind.many or not isinstance(raw, list | tuple):
        problems.add(kind.id, f"“{kind.id}” must be a table, written as {heading}.")
        return "", []
    if len(raw) > kind.most:
        problems.add(kind.id, f"{kind.title}: {kind.most} at most; there are {len(raw)}.")
        return "", []
    for index, one in enumerate(raw, start=1):
        if not isinstance(one, Mapping):
            place = f"{kind.id}[{index}]"
            problems.add(place, f"“{place}” must be a table, written as {heading}.")
    return "", [one if isinstance(one, Mapping) else {} for one in raw]


def read_part(
    kind: PartKind, index: int, raw: Mapping[str, Any], inspection: bool, problems: Problems
) -> tuple[str, Mapping[str, Value]]:
    """Return the id that one part's raw data state, if any, and its values."""
    base = f"{kind.id}[{index}]" if kind.many else kind.id
    values = dict(missing(kind, inspection))
    own = ""
    for name, one in raw.items():
        if name == "id" and kind.many:
            own = own_id(base, one, problems)
        elif name in values:
            try:
                values[name] = read_value(kind, kind.key(name), one, inspection)
            except Problem as problem:
                place = f"{base}.{name}"
                told = [each.message for each in problem.each]
                for message in told:
                    problems.add(place, f"{called(kind, index, raw)}: {message}")
        else:
            accepted = (*(("id",) if kind.many else ()), *values)
            place = f"{base}.{printable(str(name))[:LONGEST_NAME]}"
            says = partial(unknown, called(kind, index, raw), str(name), accepted)
            problems.add(place, says)
    return own, values


def van_as_data(van: Van) -> dict[str, Any]:
    """Return a van as plain data, from which `van_from_data` makes the same van."""
    data: dict[str, Any] = {"format": FORMAT}
    for name, kinds in zip(WHOLE, (van.none, van.not_seen), strict=True):
        if kinds:
            data[name] = [id for id in KINDS if id in kinds]
    for kind in KINDS.values():
        made = [part_as_data(part, van.inspection) for part in van.all(kind.id)]
        if made and (made[0] or kind.id != "van"):
            data[kind.id] = made if kind.many else made[0]
    return data


def part_as_data(part: Part, inspection: bool) -> dict[str, Any]:
    """Return a part as plain data: what was stated, and its id unless it would get that anyway."""
    data: dict[str, Any] = {}
    if part.kind.many and part.id != id_for(part.kind, part.index, part.values):
        data["id"] = part.id
    for name, value in part.values.items():
        if value.statements:
            data[name] = value_as_data(value, inspection)
    return data


def value_as_data(value: Value, inspection: bool) -> Any:
    """Return the statements at one place as plain data: a text where it says it all."""
    stage, evidence = PLAIN[inspection]
    if len(value.statements) == 1:
        only = value.statements[0]
        if only == Statement(stage=stage, text=only.text, evidence=evidence):
            return only.text
        return _statement_as_data(only)
    return [_statement_as_data(one) for one in value.statements]


def _statement_as_data(said: Statement) -> dict[str, str]:
    data = {str(said.stage): said.text}
    if said.evidence is not USUAL_EVIDENCE[said.stage]:
        data["evidence"] = str(said.evidence)
    about = {"who": said.who, "when": said.when, "instrument": said.instrument}
    return data | {name: text for name, text in about.items() if text}

"""A van as plain data, the form that a page stores: nothing but tables, lists and texts."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from calc.van.keys import PartKind
from calc.van.reading import PLAIN, USUAL_EVIDENCE, missing, printable, read_value
from calc.van.record import CHASSIS, KINDS, Part, Van
from calc.van.values import Statement, Value
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

FORMAT = 1
WHOLE = ("none", "not_seen")  # how a file states a kind of part as a whole

_MOST_PROBLEMS = 200  # that are told at once
_NEAR = 2  # letters between a name and the one that was meant
_LONGEST_ID = 40
_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_SINGLE = {CHASSIS, *(kind.id for kind in KINDS.values() if not kind.many)}
_SINGLE |= {id.replace("_", "-") for id in _SINGLE}


@dataclass
class Problems:
    """What is wrong in one reading, in the order of the file; far too many are only counted."""

    told: list[Problem] = field(default_factory=list)
    more: int = 0

    def add(self, place: str, message: str) -> None:
        if len(self.told) < _MOST_PROBLEMS:
            self.told.append(Problem(place, message))
        else:
            self.more += 1

    def stop(self) -> None:
        """Raise InputError if there is a problem."""
        if self.more:
            self.told.append(Problem("", f"There are {self.more} problems more."))
        if self.told:
            raise InputError(tuple(self.told))


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
            problems.add(str(name)[:_LONGEST_ID], _unknown("The file", str(name), known))
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
    for one in raw:
        if one not in KINDS:
            problems.add(name, _unknown(f"“{name}”", one, tuple(KINDS)))
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
            own = _own_id(base, one, problems)
        elif name in values:
            try:
                values[name] = read_value(kind, kind.key(name), one, inspection)
            except Problem as problem:
                place = f"{base}.{name}"
                told = [each.message for each in problem.each]
                for message in told:
                    problems.add(place, f"{_called(kind, index, raw)}: {message}")
        else:
            accepted = (*(("id",) if kind.many else ()), *values)
            place = f"{base}.{printable(str(name))[:_LONGEST_ID]}"
            problems.add(place, _unknown(_called(kind, index, raw), str(name), accepted))
    return own, values


def _called(kind: PartKind, index: int, raw: Mapping[str, Any]) -> str:
    """Return what a message calls a part: the word for it, its number and its name."""
    if not kind.many:
        return kind.title
    number = f"{kind.one[0].upper()}{kind.one[1:]} {index}"
    name = raw.get("name")
    if not name or not isinstance(name, str):
        return number
    return f"{number} “{printable(name)[:_LONGEST_ID]}”"


def _own_id(base: str, raw: object, problems: Problems) -> str:
    if isinstance(raw, str) and len(raw) <= _LONGEST_ID and _ID.fullmatch(raw):
        return raw
    says = f"An id must be small letters, digits and hyphens, {_LONGEST_ID} at most, like fridge-2."
    problems.add(f"{base}.id", says)
    return ""


def _unknown(where: str, name: str, accepted: tuple[str, ...]) -> str:
    shown = printable(name)[:_LONGEST_ID]
    near = nearest(shown, accepted)
    meant = f"Is “{near}” meant?" if near else f"It takes {', '.join(accepted)}."
    return f"{where} has no “{shown}”. {meant}"


def nearest(name: str, names: tuple[str, ...]) -> str:
    """Return the one of some names that a slip of the pen made `name`, if any."""
    folded = name.casefold().replace("-", "_")
    found = min(names, key=lambda one: _steps(folded, one.replace("-", "_")))
    steps = _steps(folded, found.replace("-", "_"))
    return found if steps <= min(_NEAR, len(found) // 2) else ""


def _steps(one: str, other: str) -> int:
    """Return how many letters must be put in, taken out or changed to make one of the other."""
    if abs(len(one) - len(other)) > _NEAR:
        return _NEAR + 1
    row = list(range(len(other) + 1))
    for place, sign in enumerate(one, start=1):
        above, row[0] = row[0], place
        for at, letter in enumerate(other, start=1):
            above, row[at] = row[at], min(row[at] + 1, row[at - 1] + 1, above + (sign != letter))
    return row[-1]


def slug(text: str) -> str:
    """Return a text as an id: small letters, digits and hyphens; nothing if it has none."""
    plain = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", plain))[:_LONGEST_ID].strip("-")


def id_for(kind: PartKind, index: int, values: Mapping[str, Value]) -> str:
    """Return the id that a part takes where none is written, unless it is taken."""
    name = values["name"].reading if "name" in values else None
    own = slug(str(name.value)) if name else ""
    return own or f"{slug(kind.one)}-{index}"


def free(wanted: str, taken: set[str]) -> str:
    """Return an id like the one `wanted` that is not taken."""
    number, found = 1, wanted
    while found in taken:
        number += 1
        found = f"{wanted[: _LONGEST_ID - 4].rstrip('-')}-{number}"
    return found


Read = Mapping[str, list[tuple[str, Mapping[str, Value]]]]


def with_ids(read: Read, problems: Problems) -> Mapping[str, tuple[Part, ...]]:
    """Return the parts, each with its id: the stated ones first, for the others make room."""
    taken = set(_SINGLE)
    for name, index, own in _stated_ids(read):
        if own in taken:
            called = _called(KINDS[name], index, {})
            problems.add(f"{name}[{index}].id", f"{called}: another part has the id “{own}”.")
        taken.add(own)
    parts: dict[str, tuple[Part, ...]] = {}
    for name, found in read.items():
        kind, made = KINDS[name], []
        for index, (own, values) in enumerate(found, start=1):
            id = (own or free(id_for(kind, index, values), taken)) if kind.many else kind.id
            taken.add(id)
            made.append(Part(kind, id, index, values))
        if made:
            parts[name] = tuple(made)
    return parts


def _stated_ids(read: Read) -> Iterator[tuple[str, int, str]]:
    for name, found in read.items():
        yield from ((name, i, own) for i, (own, _) in enumerate(found, start=1) if own)


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

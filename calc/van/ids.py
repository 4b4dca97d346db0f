"""The ids by which the parts of a van name one another: stated, or made of the names."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping

from calc.van.keys import PartKind
from calc.van.problems import LONGEST_NAME, Problems, called
from calc.van.record import CHASSIS, KINDS, Part
from calc.van.values import Value

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
RESERVED = {CHASSIS, *(kind.id for kind in KINDS.values() if not kind.many)}
RESERVED |= {id.replace("_", "-") for id in RESERVED}


def own_id(base: str, raw: object, problems: Problems) -> str:
    """Return the id that a file states for a part, if it can be one."""
    if isinstance(raw, str) and len(raw) <= LONGEST_NAME and _ID.fullmatch(raw):
        return raw
    says = (
        f"An id must be small letters, digits and hyphens, {LONGEST_NAME} at most, like fridge-2."
    )
    problems.add(f"{base}.id", says)
    return ""


def slug(text: str) -> str:
    """Return a text as an id: small letters, digits and hyphens; nothing if it has none."""
    plain = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", plain))[:LONGEST_NAME].strip("-")


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
        found = f"{wanted[: LONGEST_NAME - 4].rstrip('-')}-{number}"
    return found


Read = Mapping[str, list[tuple[str, Mapping[str, Value]]]]


def with_ids(read: Read, problems: Problems) -> Mapping[str, tuple[Part, ...]]:
    """Return the parts, each with its id: the stated ones first, for the others make room."""
    taken = set(RESERVED)
    for name, index, own in _stated_ids(read):
        if own in taken:
            which = called(KINDS[name], index, {})
            problems.add(f"{name}[{index}].id", f"{which}: another part has the id “{own}”.")
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
        if KINDS[name].many:
            yield from ((name, i, own) for i, (own, _) in enumerate(found, 1) if own)

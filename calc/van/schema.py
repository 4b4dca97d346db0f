"""The JSON schema of a van's file, made from the parts: for editors and programs of others.

It says which names there are and what may stand at each. Whether a text is a length that a van has,
only reading it tells.
"""

from __future__ import annotations

from typing import Any

from calc.units.typed import LONGEST
from calc.van.data import FORMAT, may_be_none
from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS
from calc.van.reading import MOST_STATEMENTS, is_plain_number
from calc.van.values import NONE, NOT_SEEN, Evidence, Stage
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows

DIALECT = "http://json-schema.org/draft-07/schema#"


def schema() -> dict[str, Any]:
    """Return the JSON schema of a van as data, and so of its TOML."""
    kinds = [kind.id for kind in PARTS]
    lists = {
        "none": (
            "Kinds of parts that the van does not have.",
            [k.id for k in PARTS if may_be_none(k)],
        ),
        "not_seen": ("Kinds of parts that could not be looked at.", kinds),
    }
    properties: dict[str, Any] = {"format": {"const": FORMAT}}
    for name, (about, names) in lists.items():
        items = {"enum": names}
        properties[name] = {"description": about, "type": "array", "items": items}
    for kind in PARTS:
        properties[kind.id] = _kind(kind)
    return {
        "$schema": DIALECT,
        "title": "A van",
        "type": "object",
        "properties": properties,
        "required": ["format"],
        "additionalProperties": False,
        "definitions": {"about": _about()},
    }


def _about() -> dict[str, Any]:
    """Return what a statement may tell of itself."""
    words = {"type": "string", "maxLength": LONGEST}
    return {
        "evidence": {"enum": [str(one) for one in Evidence]},
        "who": words,
        "when": {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"},
        "instrument": words,
    }


def _kind(kind: PartKind) -> dict[str, Any]:
    properties: dict[str, Any] = {key.id: _key(key) for key in kind.keys}
    if kind.many:
        properties = {
            "id": {"type": "string", "pattern": r"^[a-z0-9]+(-[a-z0-9]+)*$", "maxLength": LONGEST}
        } | properties
    part = {"type": "object", "properties": properties, "additionalProperties": False}
    whole = [_whole("not_seen"), *([_whole("none")] if may_be_none(kind) else [])]
    if kind.many:
        some: dict[str, Any] = {"type": "array", "items": part, "maxItems": kind.most}
    else:
        some = part
    return {"title": kind.title, "anyOf": [some, *whole]}


def _whole(name: str) -> dict[str, Any]:
    """Return a kind of part stated as a whole, in a table of its own."""
    return {
        "type": "object", "properties": {name: {"const": True}}, "required": [name],
        "additionalProperties": False,
    }  # fmt: skip


def _key(key: Key) -> dict[str, Any]:
    says: dict[str, Any] = {"type": "string", "maxLength": _longest(key)}
    plain = [says, {"type": "number"}] if is_plain_number(key.field) else [says]
    stages = [_stage(stage, plain) for stage in Stage]
    several = {"type": "array", "items": {"anyOf": stages}, "maxItems": MOST_STATEMENTS}
    found: dict[str, Any] = {"title": key.field.label}
    if about := _described(key):
        found["description"] = about
    if key.usual:
        found["default"] = key.usual
    return found | {"examples": _examples(key), "anyOf": [*plain, *stages, several]}


def _stage(stage: Stage, plain: list[dict[str, Any]]) -> dict[str, Any]:
    about = {name: {"$ref": f"#/definitions/about/{name}"} for name in _about()}
    return {
        "type": "object",
        "properties": {str(stage): {"anyOf": plain}, **about},
        "required": [str(stage)],
        "additionalProperties": False,
    }


def _longest(key: Key) -> int:
    return key.field.longest if isinstance(key.field, Rows) else LONGEST


def _examples(key: Key) -> list[str]:
    """Return texts that may stand at a key: each choice, or one as a reader would type it."""
    field = key.field
    own = [NOT_SEEN, *([NONE] if key.none else [])]
    match field:
        case Choice():
            return [option.typed for option in field.options] + own
        case Quantity():
            return [field.sample, *own]
        case Rows():
            return own
    return [str(getattr(field, "example", "")), *own]


def _described(key: Key) -> str:
    """Return the hint, what it takes and its limits, and which parts it may name."""
    field, said = key.field, [key.field.hint.rstrip(".")]
    if isinstance(field, Quantity):
        units = ", ".join(unit.symbol for _, unit in field.units if unit.symbol)
        said += [f"{field.low} to {field.high}", *([f"in {units}"] if units else [])]
    if key.refers:
        said.append(f"the id of one of: {', '.join(key.refers)}")
    return ". ".join(one[0].upper() + one[1:] for one in said if one)

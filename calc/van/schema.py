"""The JSON schema of a van's file, made from the parts: for editors and programs of others.

It says which names there are and what may stand at each. Whether a text is a length that a van has,
only reading it tells.
"""

from __future__ import annotations

from typing import Any

from calc.units.typed import LONGEST
from calc.van.data import FORMAT, may_be_none
from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS, RUN
from calc.van.reading import MOST_STATEMENTS, is_plain_number
from calc.van.values import NONE, NOT_SEEN, Evidence, Stage
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows

LONGEST_LIST = 20_000  # characters of the text of a list
DIALECT = "http://json-schema.org/draft-07/schema#"


def schema() -> dict[str, Any]:
    """Return the JSON schema of a van as data, and so of its TOML."""
    nameable = [kind.id for kind in PARTS if may_be_none(kind)]
    lists = {
        "none": ("Kinds of parts that the van does not have.", nameable),
        "not_seen": ("Kinds of parts that could not be looked at.", [kind.id for kind in PARTS]),
    }
    properties: dict[str, Any] = {"format": {"const": FORMAT}}
    for name, (about, names) in lists.items():
        items = {"enum": names}
        properties[name] = {"description": about, "type": "array", "items": items}
    for kind in PARTS:
        properties[kind.id] = _kind(kind)
    words = {"type": "string", "maxLength": LONGEST}
    return {
        "$schema": DIALECT,
        "title": "A van",
        "type": "object",
        "properties": properties,
        "required": ["format"],
        "additionalProperties": False,
        "definitions": {
            "about": _about(),
            "text": _value(words),
            "text-or-number": _value({"anyOf": [words, {"type": "number"}]}),
            "list": _value({"type": "string", "maxLength": LONGEST_LIST}),
            "keys": {f"{key.id}-of-a-run": _key(key) for key in RUN},
        },
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


def _value(plain: dict[str, Any]) -> dict[str, Any]:
    """Return what may stand at a key whose plain value is so: it, or statements of it."""
    stages = [_stage(stage, plain) for stage in Stage]
    several = {"type": "array", "items": {"anyOf": stages}, "maxItems": MOST_STATEMENTS}
    return {"anyOf": [plain, *stages, several]}


def _stage(stage: Stage, plain: dict[str, Any]) -> dict[str, Any]:
    about = {name: {"$ref": f"#/definitions/about/{name}"} for name in _about()}
    return {
        "type": "object",
        "properties": {str(stage): plain, **about},
        "required": [str(stage)],
        "additionalProperties": False,
    }


def _kind(kind: PartKind) -> dict[str, Any]:
    properties: dict[str, Any] = {key.id: _named_key(key) for key in kind.keys}
    if kind.many:
        slug = {"type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$", "maxLength": LONGEST}
        properties = {"id": slug} | properties
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


def _named_key(key: Key) -> dict[str, Any]:
    """Return the schema of a key; one of a run stands once, for all kinds that have a run."""
    return {"$ref": f"#/definitions/keys/{key.id}-of-a-run"} if key in RUN else _key(key)


def _key(key: Key) -> dict[str, Any]:
    found: dict[str, Any] = {"title": key.field.label}
    if about := _described(key):
        found["description"] = about
    if key.usual:
        found["default"] = key.usual
    takes = "list" if isinstance(key.field, Rows) else "text"
    if takes == "text" and is_plain_number(key.field):
        takes = "text-or-number"
    return found | {"examples": _examples(key), "allOf": [{"$ref": f"#/definitions/{takes}"}]}


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

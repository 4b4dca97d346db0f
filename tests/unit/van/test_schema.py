"""The published schema: it takes what we write, and refuses what no van has."""

import re
from random import Random
from typing import Any

import pytest

from calc.van.demos import DEMOS, demo
from calc.van.files import schema, van_as_data
from tests.counts import chance, often
from tests.van_samples import drawn_van

SCHEMA = schema()


def fits(data: Any, rule: dict[str, Any]) -> bool:
    """Return whether data fit a schema: all of JSON Schema's words that ours has, and no other."""
    if "$ref" in rule:
        return fits(data, referred(rule["$ref"]))
    return all(WORDS[word](data, rule) for word in rule if word not in SAID)


def referred(to: str) -> dict[str, Any]:
    """Return the rule that a reference names."""
    found = SCHEMA
    for name in to.removeprefix("#/").split("/"):
        found = found[name]
    return found


SAID = {"title", "description", "default", "examples", "$schema", "definitions"}
TYPES = {"object": dict, "array": list, "string": str, "number": int | float}
WORDS = {
    "type": lambda data, rule: isinstance(data, TYPES[rule["type"]]),
    "const": lambda data, rule: data == rule["const"] and type(data) is type(rule["const"]),
    "enum": lambda data, rule: data in rule["enum"],
    "anyOf": lambda data, rule: any(fits(data, one) for one in rule["anyOf"]),
    "allOf": lambda data, rule: all(fits(data, one) for one in rule["allOf"]),
    "required": lambda data, rule: set(rule["required"]) <= set(data),
    "properties": lambda data, rule: all(
        fits(data[name], one) for name, one in rule["properties"].items() if name in data
    ),
    "additionalProperties": lambda data, rule: set(data) <= set(rule["properties"]),
    "items": lambda data, rule: all(fits(one, rule["items"]) for one in data),
    "maxItems": lambda data, rule: len(data) <= rule["maxItems"],
    "maxLength": lambda data, rule: len(data) <= rule["maxLength"],
    "pattern": lambda data, rule: bool(re.search(rule["pattern"], data)),
}


@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_fits_the_schema(name):
    assert fits(van_as_data(demo(name)), SCHEMA)


def test_whatever_we_write_fits_the_schema():
    rng = chance("schema")
    for _ in range(often(50, 2000)):
        assert fits(van_as_data(drawn_van(rng)), SCHEMA)


@pytest.mark.parametrize(
    "data",
    [{}, {"format": 2}, {"format": True}, {"format": 1, "circuit": []},
     {"format": 1, "none": ["bank"]}, {"format": 1, "van": {"name": "x" * 41}},
     {"format": 1, "circuits": [{"lenght": "3 m"}]}, {"format": 1, "circuits": [{"length": 3}]},
     {"format": 1, "circuits": [{"length": {"found": "3 m", "seen": "x"}}]},
     {"format": 1, "circuits": [{"length": {"who": "x"}}]},
     {"format": 1, "circuits": [{"id": "A b"}]}, {"format": 1, "bank": {"none": True}},
     {"format": 1, "circuits": [{}] * 61},
     {"format": 1, "van": {"name": {"found": "x", "when": "today"}}}],
)  # fmt: skip
def test_what_no_van_has_does_not_fit(data):
    assert not fits(data, SCHEMA)


def test_each_part_and_key_is_in_the_schema_with_its_words():
    van = drawn_van(Random(1))
    for part in van.everything():
        rule = SCHEMA["properties"][part.kind.id]["anyOf"][0]
        rule = rule.get("items", rule)
        for key in part.kind.keys:
            own = rule["properties"][key.id]
            own = referred(own["$ref"]) if "$ref" in own else own
            assert own["title"] == key.field.label
            assert own.get("default", "") == key.usual

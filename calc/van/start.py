"""A file to start a van with: a small van that reads as it stands, and every key as a remark."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS
from calc.worksheet.fields import Choice, Field, Quantity
from calc.worksheet.rows import Rows, Text, joined

_WIDE = 34  # characters, after which a remark stands
_MOST_NAMED = 8  # options of a choice that a remark lists

# The small van: what is written without a remark sign in front.
_PLAN: Mapping[str, Mapping[str, str]] = {
    "van": {"name": "my van", "kind": "plan", "system": "12 V"},
    "bank": {"stands": "box or bay vented outside", "coldest": "2 °C"},
    "batteries": {"name": "bank-a", "chemistry": "LFP", "capacity": "100 Ah", "fuse": "100 A"},
    "bars": {"name": "fuse-block", "pole": "plus", "kind": "fuse-block", "rating": "100 A"},
    "circuits": {
        "name": "fridge", "load": "fridge", "current": "4.5 A", "hours": "9 h",
        "from": "fuse-block.1", "length": "3.2 m",
    },
    "patterns": {"name": "winter weekend", "nights": "2", "month": "February"},
}  # fmt: skip
_HEAD = """\
# A van, to fill in. A line that begins with # is a comment: remove the sign to use it.
# Every value is a text as you would type it into a worksheet: "3.2 m", "10 ft", "14 AWG".
# "not seen" means that nobody could tell, "none" that there is no such thing.
# A kind of part that the van does not have at all goes into this list, by its name in brackets:
# none = ["gas", "water_heater"]
# and a kind that nobody could look at into this one:
# not_seen = ["joints"]
format = 1
"""
_INSPECTION = """\
# This is an inspection: no default values are used, and anything left out is not seen.
# Who says so, and by what evidence, is beside a value:
# fuse = { found = "15 A", evidence = "label", who = "A. Brandt", when = "2026-11-20" }
# evidence is one of: measured, seen, label, told. What was only told passes no safety item.
"""


def start_file(*, inspection: bool = False) -> str:
    """Return the file, as a plan or as an inspection."""
    lines = [_HEAD + (_INSPECTION if inspection else "")]
    for kind in PARTS:
        lines += ["", *_part(kind, inspection)]
    return "\n".join(lines) + "\n"


def example(key: Key) -> str:
    """Return a text that the key takes."""
    return key.usual or _example(key.field)


def _example(field: Field) -> str:
    match field:
        case Choice():
            return field.options[0].typed
        case Quantity():
            return field.sample
        case Text():
            return field.example
        case Rows():
            return joined([[column.default or _example(column) for column in field.columns]])
        case _:
            return ""


def _part(kind: PartKind, inspection: bool) -> Iterator[str]:
    values = dict(_PLAN.get(kind.id, {}))
    if inspection:
        values = {name: text for name, text in values.items() if name in ("name", "system")}
        if kind.id == "van":
            values |= {"kind": "inspection"}
    sign = "" if values else "# "
    several = f" (one such table for each {kind.one}; {kind.most} at most)" if kind.many else ""
    yield f"# {kind.title}{several}"
    yield f"{sign}[[{kind.id}]]" if kind.many else f"{sign}[{kind.id}]"
    for key in kind.keys:
        if key.id in values:
            yield _line("", key, values[key.id])
        elif text := example(key):
            yield _line("# ", key, text)


def _line(sign: str, key: Key, text: str) -> str:
    quoted = text.replace("\\", "\\\\").replace('"', '\\"')
    said = f'{sign}{key.id} = "{quoted}"'
    return f"{said:{_WIDE}}  # {_remark(key)}"


def _remark(key: Key) -> str:
    """Return a key's label, and what it takes where that is one of a few names."""
    field = key.field
    also = ["or “none”"] if key.none else []
    if key.safety:
        also.append("must be proven")
    words = field.label
    if isinstance(field, Choice) and len(field.options) <= _MOST_NAMED:
        words += f": {', '.join(option.typed for option in field.options)}"
    return "; ".join([words, *also])

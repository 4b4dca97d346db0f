"""A van's file: TOML that a person can read and write, or the same as JSON.

    format = 1
    none = ["gas"]                # kinds of parts that the van does not have
    [van]
    name = "Marram"
    kind = "plan"                 # or "inspection"
    system = "12 V"
    [[circuits]]
    name = "fridge"               # its id is then fridge
    from = "fuse-block.3"         # the id of a part, and after a point a terminal of it
    length = "3.2 m"
    fuse = "none"                 # there is none; "not seen": the inspector could not tell
    conductor = { found = "14 AWG", evidence = "told", who = "A. Brandt", when = "2026-11-20" }

A value is a text as it would be typed into a worksheet, or one table or a list of tables, each
with one of `planned`, `found` and `measured`. A file may come from a stranger: its size and what
it may hold are bounded before it is read.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

from calc.van.data import van_as_data, van_from_data
from calc.van.problems import LONGEST_NAME
from calc.van.reading import printable
from calc.van.record import Van
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

__all__ = ["read_van", "schema", "van_as_data", "van_from_data", "write_van"]

LARGEST = 10_000_000  # characters
DEEPEST = 6  # tables and lists in one another

_MOST_SIGNS = 200_000  # that part one value from another; a van full to the brim has fewer
_LONGEST_TEXT = 20_000
_LONGEST_PATH = 8  # names joined by points
# A text that is never closed goes on to its end, so that no sign is looked at twice.
_SIGNS = re.compile(
    r'''"""(?:[^\\]|\\.?)*?(?:"""|\Z)|"(?:[^"\\\n]|\\.)*+"?|#[^\n]*|[][{}=,.\n]|'''
    r"""'''.*?(?:'''|\Z)|'[^'\n]*+'?""",
    re.DOTALL,
)
_AT = re.compile(r"(.*) \(at (?:line (\d+), column (\d+)|end of document)\)", re.DOTALL)


def read_van(text: str) -> Van:
    """Return the van that a file holds. Raises InputError, which holds every problem."""
    if len(text) > LARGEST:
        raise _refused(f"The file is too large: {LARGEST // 1_000_000} MB at most.")
    text = text.removeprefix("\ufeff")
    _bound(text)
    try:
        if text.lstrip().startswith("{"):
            return van_from_data(json.loads(text, object_pairs_hook=_table))
        return van_from_data(tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise _refused(_not_toml(str(error))) from None
    except json.JSONDecodeError as error:
        raise _refused(f"Line {error.lineno}, column {error.colno} is not JSON.") from None
    except RecursionError:
        raise _refused(_TOO_DEEP) from None
    except ValueError as error:
        if isinstance(error, InputError):
            raise
        raise _refused("The file holds a number that is too long to be read.") from None


_TOO_DEEP = f"Tables and lists are nested more than {DEEPEST} deep in one another."


def _bound(text: str) -> None:
    """Raise InputError for a file that would take long to read, whatever is in it."""
    depth = path = signs = 0
    for match in _SIGNS.finditer(text):
        sign = match[0]
        if len(sign) > _LONGEST_TEXT and sign[0] != "#":
            raise _refused(f"A text is too long: {_LONGEST_TEXT} characters at most.")
        signs += len(sign) == 1
        depth += (sign in "[{") - (sign in "]}") if len(sign) == 1 else 0
        path = path + 1 if sign == "." else path if sign[0] in "\"'" else 0
        if depth > DEEPEST or path > _LONGEST_PATH:
            raise _refused(_TOO_DEEP)
        if signs > _MOST_SIGNS:
            raise _refused("The file holds far more than a van has.")


def _table(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Return a table of a JSON file. Raises InputError if a name stands in it twice."""
    table: dict[str, Any] = {}
    for name, value in pairs:
        if name in table:
            raise _refused(f"“{printable(name)[:LONGEST_NAME]}” appears twice in one table.")
        table[name] = value
    return table


def _not_toml(error: str) -> str:
    match = _AT.fullmatch(error)
    says, line, column = match.groups() if match else (error, None, None)
    where = f"Line {line}, column {column}" if line else "The end of the file"
    return f'{where} is not TOML: {says[:80].rstrip(".")}. Write a value as length = "3.2 m".'


def _refused(says: str) -> InputError:
    return InputError((Problem("", says),))


def write_van(van: Van) -> str:
    """Return a van as the text of a file, from which `read_van` makes the same van."""
    return "\n".join(_lines(van_as_data(van))) + "\n"


def _lines(data: Mapping[str, Any]) -> Iterator[str]:
    tables = {name: one for name, one in data.items() if not _is_plain(one)}
    for name, one in data.items():
        if name not in tables:
            yield f"{name} = {_value(one)}"
    for name, one in tables.items():
        for table in one if isinstance(one, list) else [one]:
            yield ""
            yield f"[[{name}]]" if isinstance(one, list) else f"[{name}]"
            yield from (f"{key} = {_value(value)}" for key, value in table.items())


def _is_plain(value: Any) -> bool:
    """Return whether a value of the file's top stands on one line."""
    if isinstance(value, list):
        return all(isinstance(one, str) for one in value)
    return not isinstance(value, dict)


def _value(value: Any) -> str:
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return "[\n" + "".join(f"  {_value(one)},\n" for one in value) + "]"
    if isinstance(value, list):
        return f"[{', '.join(map(_value, value))}]"
    if isinstance(value, dict):
        return f"{{ {', '.join(f'{key} = {_value(one)}' for key, one in value.items())} }}"
    return json.dumps(value, ensure_ascii=False)


def schema() -> dict[str, Any]:
    """Return the JSON schema of a van's file."""
    from calc.van.schema import schema as made  # which no page has a use for

    return made()

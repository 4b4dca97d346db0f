"""A fuse family's name as an answer gives it, taken apart, and what the table's own rows ask of it.

blade, large (type E), rated 58 V or more
terminal-mount block, rated 32 V or more (from memory)
"""

import re
from typing import NamedTuple

from calc.tables import table

_OFFERED = re.compile(
    r"(?P<name>.+?)(?:, rated (?P<version>[\d.]+) V or more)?(?P<memory> \(from memory\))?"
)


class Offered(NamedTuple):
    """A family's plain name, the voltage rating [V] to ask for or None, and its mark."""

    name: str
    version: float | None
    from_memory: bool


def offered(text: str) -> Offered:
    """Return the parts of a family's name as offered."""
    found = _OFFERED.fullmatch(text)
    assert found
    version = found["version"]
    return Offered(found["name"], float(version) if version else None, bool(found["memory"]))


def owed(name: str, voltage: float) -> Offered:
    """Return how the rows of the family `name` say it must be offered for `voltage` [V]."""
    rows = [row for row in table("fuse_families").rows if row["family"] == name]
    rated = sorted(float(row["dc_voltage_v"]) for row in rows)
    enough = [one for one in rated if one >= voltage * (1 - 1e-9)]
    version = enough[0] if enough and enough[0] > rated[0] else None
    made = [row for row in table("fuse_ratings").rows if row["family"] == name]
    return Offered(name, version, "from memory" in {r["confidence"] for r in (*rows, *made)})

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


def owed(name: str, voltage: float, fault: float) -> Offered:
    """Return how the rows of `name` say it must be offered at `voltage` [V] for a `fault` [A].

    It is from memory where no row that was seen in a text is for the voltage and breaks the fault.
    """
    rows = [row for row in table("fuse_families").rows if row["family"] == name]
    rated = sorted(float(row["dc_voltage_v"]) for row in rows)
    enough = [one for one in rated if one >= voltage * (1 - 1e-9)]
    version = enough[0] if enough and enough[0] > rated[0] else None
    seen = [
        row
        for row in rows
        if row["confidence"] != "from memory"
        and float(row["dc_voltage_v"]) >= voltage * (1 - 1e-9)
        and float(row["interrupting_a"]) >= fault * (1 - 1e-9)
    ]
    return Offered(name, version, not seen)

"""Published tables: CSV files with a provenance header, and the one loader that reads our files."""

import csv
from dataclasses import dataclass
from functools import cache
from pkgutil import get_data

SEEN, FROM_MEMORY = "seen in text", "from memory"


@dataclass(frozen=True)
class Table:
    """A table as compiled: `about` is its header, `rows` hold every cell as printed."""

    name: str
    about: dict[str, str]
    rows: tuple[dict[str, str], ...]


@cache
def table(name: str) -> Table:
    """Return the table `name` (the file without its ending). Raises FileNotFoundError."""
    content = get_data("calc.tables", f"{name}.csv")
    assert content is not None  # only a loader without data gives none
    lines = content.decode("utf-8").splitlines()
    head = [line[1:].strip() for line in lines if line.startswith("#")]
    about = {key.strip(): text.strip() for key, _, text in (line.partition(":") for line in head)}
    rows = csv.DictReader(line for line in lines if line and not line.startswith("#"))
    return Table(name, about, tuple(dict(row) for row in rows))


def text(package: str, name: str) -> str:
    """Return a data file of `package` that is not a table. Raises FileNotFoundError."""
    content = get_data(package, name)
    assert content is not None  # only a loader without data gives none
    return content.decode("utf-8")

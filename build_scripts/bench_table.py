"""What the bench says: a table in the terminal, and the same as a file."""

import json
import os
import platform
import statistics
from dataclasses import asdict, dataclass
from datetime import UTC, date, datetime
from pathlib import Path


@dataclass(frozen=True)
class Row:
    """One thing that was measured, what it was compared with, and whether a promise is kept."""

    what: str
    ours: str
    other: str = ""
    ratio: str = ""
    goal: str = ""
    kept: bool | None = None

    def __str__(self) -> str:
        said = {True: "kept", False: "NOT KEPT", None: ""}[self.kept]
        line = f"{self.what:<46} {self.ours:>22} {self.other:>22} {self.ratio:>6}  {said}"
        return line.rstrip()


@dataclass(frozen=True)
class Measured:
    """A whole measurement."""

    when: date
    machine: str
    rows: tuple[Row, ...]

    @property
    def kept(self) -> bool:
        """Whether no promise is broken."""
        return all(row.kept is not False for row in self.rows)

    def write(self, file: Path) -> None:
        """Write it as JSON."""
        data = asdict(self) | {"when": self.when.isoformat()}
        file.write_text(json.dumps(data, indent=1, ensure_ascii=False) + "\n", "utf-8")


def measured(rows: list[Row], browser: str) -> Measured:
    """Return the rows with today's date and what this machine is."""
    return Measured(datetime.now(UTC).date(), f"{_machine()}, Chromium {browser}", tuple(rows))


def _machine() -> str:
    memory = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 1e9
    cores = os.cpu_count()
    return f"{platform.system()} with {cores} cores ({platform.machine()}) and {memory:.0f} GB"


def ms(times: list[float]) -> str:
    """The median, and the least and most beside it."""
    return f"{statistics.median(times):.0f} ms ({min(times):.0f}-{max(times):.0f})"


def mb(size: int) -> str:
    """Bytes in megabytes."""
    return f"{size / 1e6:.2f} MB"

"""What the bench says: a table in the terminal, and the same as a file."""

import json
import os
import platform
import statistics
from dataclasses import asdict, dataclass
from datetime import UTC, date, datetime
from pathlib import Path

KEPT = Path(__file__).with_name("how_fast.json")
"""The measurement that the site's page shows: `build_scripts/bench --keep` writes it."""


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
        line = f"{self.what:<62} {self.ours:>22} {self.other:>22} {self.ratio:>6}  {said}"
        return line.rstrip()


@dataclass(frozen=True)
class Stage:
    """A stage of a start, and when it is reached: from the saved memory, and from the files."""

    what: str
    memory: str
    files: str

    def __str__(self) -> str:
        return f"  until {self.what:<54} {self.memory:>22} {self.files:>22}"


@dataclass(frozen=True)
class Measured:
    """A whole measurement."""

    when: date
    machine: str
    rows: tuple[Row, ...]
    stages: tuple[Stage, ...]

    @property
    def kept(self) -> bool:
        """Whether no promise is broken."""
        return all(row.kept is not False for row in self.rows)

    def write(self, file: Path) -> None:
        """Write it as JSON."""
        data = asdict(self) | {"when": self.when.isoformat()}
        file.write_text(json.dumps(data, indent=1, ensure_ascii=False) + "\n", "utf-8")


def read(file: Path = KEPT) -> Measured:
    """Return the measurement in a file that `write` has written."""
    data = json.loads(file.read_text("utf-8"))
    rows = tuple(Row(**row) for row in data["rows"])
    stages = tuple(Stage(**stage) for stage in data["stages"])
    return Measured(date.fromisoformat(data["when"]), data["machine"], rows, stages)


def measured(rows: list[Row], stages: list[Stage], browser: str, remark: str) -> Measured:
    """Return what was measured, with today's date, what this machine is, and a remark on it."""
    machine = ", ".join(filter(None, (_machine(), remark, f"Chromium {browser}")))
    return Measured(datetime.now(UTC).date(), machine, tuple(rows), tuple(stages))


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

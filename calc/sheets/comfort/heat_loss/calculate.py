"""heat-loss from its fields: the book's function, and the table of insulations it speaks of."""

from dataclasses import dataclass
from functools import cache

from calc.comfort.cold_night import cold_night
from calc.comfort.envelope import materials
from calc.tables import SEEN

calculate = cold_night


@dataclass(frozen=True)
class Material:
    """An insulation: the conductivity that is used, the span that was found, and by whom."""

    name: str
    used: str
    span: str
    source: str

    def __str__(self) -> str:
        return f"{self.name}: {self.used}, found {self.span} ({self.source})"


@cache
def listed() -> tuple[Material, ...]:
    """Return every insulation of the table with its source."""
    return tuple(
        Material(
            row["material"],
            f"{row['used_w_mk']}\u00a0W/(m·K)",
            f"{row['low_w_mk']} to {row['high_w_mk']}",
            row["source"] if row["confidence"] == SEEN else f"{row['source']}; {row['confidence']}",
        )
        for row in materials().values()
    )

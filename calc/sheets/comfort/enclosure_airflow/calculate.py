"""enclosure-airflow from its fields: the book's function as it stands, and the way on from it."""

from typing import Annotated

from calc.comfort.enclosure import Enclosure, enclosure
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.shown import rounded
from calc.units.si import Share, Tag
from calc.worksheet.next_steps import NextStep

# What the sheet of a drive takes
LEAST_OUTPUT: Annotated[Share, Tag("least output of a charger that a drive is reckoned with")] = (
    0.01
)

calculate = enclosure


def onward(found: Enclosure) -> tuple[NextStep, ...] | None:
    """Return the way on to the sum of the drive, with what the heat leaves."""
    derated = found.derated
    if derated is None or not at_least(derated.output_left, LEAST_OUTPUT):
        return None
    texts = (
        ("output_left", f"{rounded(100 * derated.output_left, 4)} %"),
        ("charger_limit", f"{derated.rated:.6g} A"),
        ("hours", f"{derated.hours / HOUR:.6g} h"),
    )
    return (NextStep("Charge while driving, at this reduced output", texts, "alternator-charge"),)

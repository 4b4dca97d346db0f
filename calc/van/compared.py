"""What of a van is compared as bars for a client: by what decides, else what a day uses and brings.

A link brings the lengths and the values; the labels are ours.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import chain

from calc.judge import Level
from calc.units.shown import quantity_text
from calc.van.patterns import SHEET, worked_patterns
from calc.van.record import Van
from calc.van.review import Finding
from calc.van.worked import Outcome, attempted

_WHOLE = 100  # the longest bar
LASTS = "lasts"  # a pattern of use that the bank carries
GROUPS: dict[str, tuple[tuple[str, str], ...]] = {
    "heat-loss": (("The van loses in the cold", "loss"), ("Its heater gives", "heater_output")),
    "wire-drop": (("Lost on the way", "drop"), ("May be lost", "allowed")),
    "fault-current": (("A short there may pass", "near_fault"), ("Its fuse can break", "breaks")),
    "panel-string": (("In frost the panels reach", "cold_voc"), ("Allowed there", "volts_limit")),
    "joint-heat": (("This joint has", "resistance"), ("A good one has at most", "sound_high")),
    "enclosure-airflow": (("Each vent needs", "vent_area"), ("Each vent has", "vents")),
    "battery-air": (("Each opening needs", "opening"), ("Each has", "vents")),
    "shore-charge": (("Charging on shore power takes", "hours"), ("A night plugged in", "night")),
    LASTS: (("The battery falls to", "lowest_state"), ("It may fall to", "floor")),
    SHEET: (
        ("The van uses in a day", "daily_use"),
        ("Its panels give", "sun_day"),
        ("Driving gives", "drive_day"),
    ),
}
"""By worksheet: labels, each with the name of a value; all of a group are of one kind."""

LABELS = tuple(label for rows in GROUPS.values() for label, _ in rows)
"""Every label, in the order in which a link has the lengths of the bars."""


@dataclass(frozen=True)
class Compared:
    """One bar: the `row` of its label, its value as shown, its length in percent of the longest."""

    row: int
    text: str
    share: int


def compared(van: Van, first: Iterable[Finding]) -> tuple[Compared, ...]:
    """Return the bars of the deciding finding, else those of the van's tightest pattern of use."""
    for one in list(first)[:1]:
        outcome = attempted(one.sheet, one.texts) if one.sheet in GROUPS else None
        if outcome and (bars := _bars(one.sheet, outcome)):
            return bars
    known = [own for own in worked_patterns(van) if own.quick and own.lowest is not None]
    tightest = min(known, key=lambda own: own.lowest or 0.0, default=None)
    if tightest is None or tightest.quick is None:
        return ()
    return _bars(LASTS if tightest.verdict == Level.FINE else SHEET, tightest.quick)


def _bars(group: str, outcome: Outcome) -> tuple[Compared, ...]:
    start = list(chain.from_iterable([name] * len(rows) for name, rows in GROUPS.items()))
    first, values = start.index(group), outcome.values
    found = [
        (first + n, _shown(outcome, name), values[name])
        for n, (_, name) in enumerate(GROUPS[group])
        if values[name] is not None
    ]
    most = max((value for _, _, value in found), default=0.0)
    if len(found) < 2 or most <= 0:
        return ()
    return tuple(Compared(row, text, round(_WHOLE * value / most)) for row, text, value in found)


def _shown(outcome: Outcome, name: str) -> str:
    """Return a value in one system of units, and in the unit in which results are shown."""
    kind = outcome.inputs[name].kind if name in outcome.inputs else None
    if kind is not None:
        return quantity_text(outcome.values[name], kind)
    return outcome.writer.shown[name].partition(" (")[0]

"""The commissioning and service log: what is measured, last time's value beside this time's.

A row for each thing that is worth measuring again. Its values are those of the record's own log,
and what stands as measured at the part itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.units.typed import fold
from calc.van.listed import ListTable
from calc.van.marks import Marks, marks
from calc.van.net import PLUS
from calc.van.values import Evidence, Stage, State

if TYPE_CHECKING:
    from calc.van.record import Part, Van

COLUMNS = (
    "Part", "Check", "Expected", "Earlier", "This time", "Date", "Instrument", "By",
    "Next time", "Next date", "Next instrument", "Next by",
)  # fmt: skip
DROP, TORQUE, MILLIVOLTS, EARTH, INSULATION, TRIP, LOOK = (
    "drop", "torque", "millivolts", "earth", "insulation", "trip", "look",
)  # fmt: skip
_CHECKS = {
    DROP: "Voltage drop under load",
    TORQUE: "Torque",
    MILLIVOLTS: "Millivolts under load",
    EARTH: "Earth, inlet to chassis, ohms",
    INSULATION: "Insulation, megohms",
    TRIP: "Residual-current trip, milliseconds",
    LOOK: "Test button and date",
}
_OTHER = {LOOK: "Looked at", "replaced": "Replaced"}


@dataclass(frozen=True, kw_only=True)
class Reading:
    """One reading: its text as stated, when, with what and by whom."""

    text: str
    when: str = ""
    instrument: str = ""
    who: str = ""


@dataclass(frozen=True, kw_only=True)
class Check:
    """What is measured at a part: `what` as the log calls it, and the key that holds it, if any."""

    part: Part
    what: str
    key: str = ""


def service_log(van: Van, expected: Mapping[tuple[str, str], str]) -> ListTable:
    """Return the log, by what is measured.

    `expected` has the text of what a check should show, by the id of its part and what it is.
    """
    own = marks(van)
    entries = van.all("log")
    rows = []
    used: set[str] = set()
    for check in checks(van):
        of_log = [one for one in entries if _is_of(one, check)]
        used |= {one.id for one in of_log}
        readings = sorted((*_stated(check), *map(_logged, of_log)), key=lambda one: one.when)
        should = expected.get((check.part.id, check.what), "")
        rows.append(_row(_name(own, check), _CHECKS[check.what], should, readings))
    for one in entries:
        if one.id not in used:
            what = one["what"].reading
            words = _OTHER.get(one.choice("what") or "", what.text if what else "")
            rows.append(_row(one.text("part"), words, "", [_logged(one)]))
    return ListTable(
        id="service-log",
        title="Commissioning and service log",
        columns=COLUMNS,
        rows=tuple(rows),
        blanks=frozenset(COLUMNS[4:]),
        note="Measure with the same load and between the same points as last time. Mains tests"
        " only by somebody licensed for them.",
    )


def checks(van: Van) -> Iterator[Check]:
    """Yield what is worth measuring, in the order in which an inspector walks."""
    for part in van.all("alarms"):
        yield Check(part=part, what=LOOK)
    for part in van.all("joints"):
        yield Check(part=part, what=TORQUE, key="torque")
    mains = van.one("mains")
    if mains:
        yield Check(part=mains, what=EARTH, key="earth_resistance")
        yield Check(part=mains, what=INSULATION, key="insulation_resistance")
    for part in {one.part.id: one.part for one in van.net.conductors if one.pole == PLUS}.values():
        yield Check(part=part, what=DROP, key="measured_drop")
    for part in van.all("joints"):
        yield Check(part=part, what=MILLIVOLTS, key="drop")
    if mains and mains["residual"].state is not State.NONE:
        yield Check(part=mains, what=TRIP)


def _is_of(entry: Part, check: Check) -> bool:
    named = fold(entry.text("part"))
    own = (check.part.id, check.part.name, check.part.kind.one)
    return entry.choice("what") == check.what and named in map(fold, own)


def _stated(check: Check) -> Iterator[Reading]:
    for one in check.part[check.key].statements if check.key else ():
        measured = one.stage is Stage.MEASURED or one.evidence is Evidence.MEASURED
        if measured and one.text not in ("not seen", "none"):
            yield Reading(text=one.text, when=one.when, instrument=one.instrument, who=one.who)


def _logged(entry: Part) -> Reading:
    return Reading(
        text=entry.text("value"),
        when=entry.text("date"),
        instrument=entry.text("instrument"),
        who=entry.text("who"),
    )


def _name(own: Marks, check: Check) -> str:
    part = check.part
    if part.kind.id == "alarms":
        kind, place = part["kind"].reading, part.text("place")
        words = f"{kind.text} alarm" if kind else part.name
        return f"{words}, {place}" if place else words
    mark = own.wire(part) if check.what == DROP else own.part(part)
    return " ".join(filter(None, (mark, part.name)))


def _row(name: str, what: str, should: str, readings: list[Reading]) -> tuple[str, ...]:
    *before, last = readings or [Reading(text="")]
    earlier = before[-1] if before else Reading(text="")
    said = f"{earlier.text} ({earlier.when})" if earlier.when else earlier.text
    now = (last.text, last.when, last.instrument, last.who)
    return (name, what, should, said, *now, "", "", "", "")

"""The circuit schedule and the load table: what the schedule and the patterns of use found."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

import calc
from calc.judge import Level
from calc.units.kinds import ENERGY, POWER, RATIO, TIME, VOLTAGE
from calc.units.shown import quantity_text, with_mm2
from calc.van.bind import filled
from calc.van.fuse_list import NONE_FITTED, amps
from calc.van.listed import ListTable
from calc.van.values import State
from calc.van.why import why_not
from calc.worksheet.fields import Problem

if TYPE_CHECKING:
    from calc.van.record import Part, Van
    from calc.van.schedule import Row, Schedule

WEEK, LOADS = "week-ahead", "loads"
NOT_WORKED = "not worked"
_SAID = {
    Level.FINE: "fine",
    Level.CAUTION: "caution",
    Level.STOP: "STOP",
    None: NOT_WORKED,
}
_COLUMNS = (
    "Mark", "Circuit", "Place", "Current", "Wire", "Conductor", "Length one way", "Fuse", "Family",
    "Voltage drop", "Share", "At the load", "Ampacity", "Short circuit, highest",
    "Short circuit, lowest", "Result", "Note",
)  # fmt: skip
_NUMBERS = (
    "Current", "Length one way", "Fuse", "Voltage drop", "Share", "At the load", "Ampacity",
    "Short circuit, highest", "Short circuit, lowest",
)  # fmt: skip


def circuit_schedule(found: Schedule) -> ListTable:
    """Return the schedule as a list, circuits first."""
    rows = sorted(found.rows, key=lambda row: row.part.kind.id != "circuits")
    return ListTable(
        id="circuit-schedule",
        title="Circuit schedule",
        columns=_COLUMNS,
        rows=tuple(map(_schedule_row, rows)),
        numbers=frozenset(_NUMBERS),
        note="“Highest” is what the fuse must interrupt, “lowest” what it must clear at the far"
        " end. Chosen by the schedule where marked so: check it before you buy.",
    )


def _schedule_row(row: Row) -> tuple[str, ...]:
    part = row.part
    length = part["length"].reading
    return (
        row.mark,
        part.name,
        part.text("place") if "place" in part.values else "",
        "" if row.current is None else amps(row.current),
        row.wire,
        _conductor(row),
        length.text if length else "",
        _fuse(row),
        row.family or "",
        _shown(row.drop, VOLTAGE, digits=2),
        _shown(row.drop_share, RATIO, digits=2),
        _shown(row.load_voltage, VOLTAGE, digits=4),
        "" if row.ampacity is None else amps(row.ampacity),
        "" if row.fault_high is None else amps(row.fault_high),
        "" if row.fault_low is None else amps(row.fault_low),
        _SAID.get(row.level, NOT_WORKED),
        _note(row),
    )


def _shown(value: float | None, kind: Any, *, digits: int) -> str:
    return "" if value is None else quantity_text(value, kind, digits=digits)


def _conductor(row: Row) -> str:
    if row.conductor is None:
        return ""
    many = int(row.parallel or 1)
    return (f"{many} × " if many > 1 else "") + with_mm2(row.conductor)


def _fuse(row: Row) -> str:
    if row.fuse is not None:
        return amps(row.fuse)
    return NONE_FITTED if row.part["fuse"].state is State.NONE else row.part.text("fuse")


def _note(row: Row) -> str:
    """Return what was chosen, and why the rest is not worked, each reason once."""
    said = [f"chosen: {', '.join(sorted(row.chosen))}"] if row.chosen else []
    return "; ".join([*said, *dict.fromkeys(row.why.values())])


def load_table(van: Van, found: Schedule) -> ListTable:
    """Return the loads of each pattern of use, as its week is worked with them."""
    rows: list[tuple[str, ...]] = []
    sums: set[int] = set()
    currents = {row.part.name: row.current for row in found.circuits}
    marks = {row.part.name: row.mark for row in found.circuits}
    for pattern in van.all("patterns"):
        loads = _loads(van, pattern)
        if loads is None:
            rows.append((pattern.name, *[""] * 6, _lacking(van, pattern)))
            continue
        for load in loads:
            current = currents.get(load["name"])
            rows.append(
                (
                    load["name"],
                    marks.get(load["name"], ""),
                    pattern.name,
                    quantity_text(load["watts"], POWER),
                    quantity_text(load["hours"], TIME),
                    "" if current is None else amps(current),
                    quantity_text(load["watts"] * load["hours"], ENERGY),
                    "by the inverter" if load["route"] == "inverter" else "",
                )
            )
        sums.add(len(rows))
        total = sum(load["watts"] * load["hours"] for load in loads)
        rows.append(("Total", "", pattern.name, "", "", "", quantity_text(total, ENERGY), ""))
    return ListTable(
        id="load-table",
        title="Load table",
        columns=("Load", "Mark", "Pattern", "Power", "Hours a day", "Current", "In a day", "Note"),
        rows=tuple(rows),
        numbers=frozenset(("Power", "Hours a day", "Current", "In a day")),
        sums=frozenset(sums),
        note="In a day at the load; inverter losses are in the pattern’s own sheet.",
    )


def _loads(van: Van, pattern: Part) -> tuple[Mapping[str, Any], ...] | None:
    """Return the rows of a pattern's loads, None where they are not known."""
    text = filled(van, WEEK, pattern).texts.get(LOADS, "")
    if not text:
        return None
    try:
        value = calc.find(WEEK).field(LOADS).read(text).value
    except Problem:
        return None
    return value if isinstance(value, tuple) else None


def _lacking(van: Van, pattern: Part) -> str:
    place = filled(van, WEEK, pattern).missing.get(LOADS, "")
    return why_not(van, place) if place else "The loads are not known."

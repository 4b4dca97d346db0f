"""The lists of a van, each made of what the schedule, the review and the worksheets found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import calc
from calc.units.kinds import VOLTAGE
from calc.units.shown import quantity_text
from calc.van.bind import filled
from calc.van.circuit_lists import circuit_schedule, load_table
from calc.van.fuse_list import Fuse, fuse_list, fuses
from calc.van.handover import HandOver, papers
from calc.van.inspection import inspection_list
from calc.van.listed import ListTable
from calc.van.marks import marks
from calc.van.materials import bill
from calc.van.schedule import Schedule, schedule
from calc.van.service_log import DROP, TORQUE, service_log
from calc.van.stock import Piece, cut_list, pieces
from calc.van.worked import worked
from calc.worksheet.answer import Answer, InputError
from calc.worksheet.result_table import Table

if TYPE_CHECKING:
    from calc.van.record import Van

JOINTS, JOINT_TABLE = "joint-sheet", "schedule"


@dataclass(frozen=True)
class Lists:
    """All lists and papers of one van, each worked when it is asked for and once."""

    van: Van

    @cached_property
    def schedule(self) -> Schedule:
        """The van's schedule."""
        return schedule(self.van)

    @cached_property
    def fuses(self) -> tuple[Fuse, ...]:
        """Every fuse."""
        return fuses(self.van, self.schedule)

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """Every conductor as pieces to cut."""
        chosen = {
            row.part.id: row.conductor
            for row in self.schedule.rows
            if row.conductor and "conductor" in row.chosen
        }
        return pieces(self.van, chosen)

    @cached_property
    def joints(self) -> Answer | None:
        """The worksheet of joints, None where the van lists no joint that can be worked."""
        if not self.van.all("joints"):
            return None
        own = filled(self.van, JOINTS, None)
        try:
            return None if own.lacking else worked(JOINTS, own.texts)
        except InputError:
            return None

    @property
    def tables(self) -> tuple[ListTable, ...]:
        """The lists in the order in which they are handed over."""
        return (
            circuit_schedule(self.schedule),
            load_table(self.van, self.schedule),
            fuse_list(self.fuses),
            cut_list(self.van, self.pieces),
            joint_sheet(self.van, self.joints),
            bill(self.van, self.pieces, self.fuses),
            to_inspect(self.van),
            service_log(self.van, self._expected()),
        )

    @property
    def papers(self) -> HandOver:
        """Markers, labels, settings and cards."""
        return papers(self.van, self.pieces, self.fuses)

    def _expected(self) -> Mapping[tuple[str, str], str]:
        """Return what a measurement should show: the drop as worked, the torque of the sheet."""
        found = {
            (row.part.id, DROP): quantity_text(row.drop, VOLTAGE, digits=2)
            for row in self.schedule.rows
            if row.drop is not None
        }
        if self.joints is not None:
            at = [column.id for column in _declared().columns].index("torque")
            for id, row in _worked_joints(self.van, self.joints).items():
                found[id, TORQUE] = row[at]
        return found


def tables(van: Van) -> tuple[ListTable, ...]:
    """Return the lists of a van in the order in which they are handed over."""
    return Lists(van).tables


def hand_over(van: Van) -> HandOver:
    """Return the markers, labels, settings and cards of a van."""
    return Lists(van).papers


def _declared() -> Table:
    return next(one for one in calc.find(JOINTS).tables if one.of == JOINT_TABLE)


def _worked_joints(van: Van, answer: Answer | None) -> Mapping[str, tuple[str, ...]]:
    """Return the worksheet's row of each joint by its id; of two with one name each has its own."""
    rows = list(answer.tables[JOINT_TABLE]) if answer is not None else []
    found = {}
    for joint in van.all("joints"):
        own = next((row for row in rows if row[0] == joint.name), None)
        if own is not None:
            rows.remove(own)
            found[joint.id] = own
    return found


def joint_sheet(van: Van, answer: Answer | None) -> ListTable:
    """Return the joints as the worksheet of joints lists them, to be initialled.

    A joint of which too little is known to be worked stands there by its name.
    """
    declared = _declared()
    blanks = tuple(f"{one.group}: {one.label}" for one in declared.blanks)
    columns = tuple(one.label for one in declared.columns)
    found = _worked_joints(van, answer)
    known = marks(van)
    rows = []
    for joint in van.all("joints"):
        unknown = (joint.name, joint.text("stud"), *[""] * (len(columns) - 2))
        cells = found.get(joint.id, unknown)
        rows.append((known.part(joint), *cells, *[""] * len(blanks)))
    return ListTable(
        id="joint-sheet",
        title="Joint sheet",
        columns=("Mark", *columns, *blanks),
        rows=tuple(rows),
        blanks=frozenset(blanks),
        numbers=frozenset(("Torque", "Lugs")),
        note=declared.paper_note,
    )


def to_inspect(van: Van) -> ListTable:
    """Return what nobody has seen yet, in an order in which nobody is hurt."""
    rows: list[tuple[str, ...]] = []
    sums: set[int] = set()
    for number, stop in enumerate(inspection_list(van), 1):
        sums.add(len(rows))
        rows.append((str(number), stop.title, f"{stop.do} {stop.caution}", "", "", ""))
        for look in stop.looks:
            rows.append(("", look.part_name, look.do, "must be proven" * look.safety, "", ""))
    return ListTable(
        id="inspection-list",
        title="Inspection list",
        columns=("Station", "At", "Do", "Why", "Found", "By what"),
        rows=tuple(rows),
        blanks=frozenset(("Found", "By what")),
        sums=frozenset(sums),
        note="By what: measured, seen, read on a label, or told. What was only told proves nothing"
        " that safety depends on.",
    )

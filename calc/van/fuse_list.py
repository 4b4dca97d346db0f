"""The fuses of a van: each with what it must interrupt and what it protects, by the schedule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.units.kinds import CURRENT
from calc.units.shown import quantity_text, with_mm2
from calc.van.listed import ListTable
from calc.van.marks import marks
from calc.van.values import State

if TYPE_CHECKING:
    from calc.van.record import Part, Van
    from calc.van.schedule import Row, Schedule

NOT_KNOWN, NONE_FITTED = "not known", "none fitted"
_BOTH_ENDS = "both-ends"
_ONE_POLE = "minus"


@dataclass(frozen=True, kw_only=True)
class Fuse:
    """A fuse of a run, or of each of `count` batteries.

    `rating` is empty where nobody knows it, and where there is none: `note` says which. `chosen`
    tells that the schedule chose it.
    """

    mark: str
    part: Part
    rating: str
    family: str
    interrupts: str
    protects: str
    note: str = ""
    count: int = 1


def fuses(van: Van, found: Schedule) -> tuple[Fuse, ...]:
    """Return every fuse that a van has or lacks, in the order of their marks."""
    # A fuse at a battery may have to break all that the bank gives, and never more.
    most = max((row.fault_high for row in found.rows if row.fault_high is not None), default=None)
    own = [*_of_runs(van, found), *_of_batteries(van, most)]
    return tuple(sorted(own, key=lambda fuse: _number(fuse.mark)))


def _number(mark: str) -> tuple[float, ...]:
    return tuple(float(part) for part in mark.lstrip("F").split(".") if part.isdigit())


def _of_runs(van: Van, found: Schedule) -> Iterator[Fuse]:
    known = marks(van)
    for row in found.rows:
        part = row.part
        if "pole" in part.values and part.choice("pole") == _ONE_POLE:
            continue
        if part.kind.id == "panels" and not part["fuse"].known and row.fuse is None:
            continue  # one string alone needs none; the panels' own worksheet says when
        one = _of_row(row)
        yield one
        if "fused" in part.values and part.choice("fused") == _BOTH_ENDS and one.rating:
            yield Fuse(
                mark=known.far_fuse(part), part=part, rating=one.rating, family=one.family,
                interrupts="", protects=one.protects, note="at the other end",
            )  # fmt: skip


def _of_row(row: Row) -> Fuse:
    part, notes = row.part, []
    if {"fuse", "family"} & row.chosen:
        notes.append("chosen by the schedule")
    rating = part.text("fuse") if row.fuse is None else amps(row.fuse)
    if not rating:
        notes.append(row.why.get("fuse", NOT_KNOWN))
    return Fuse(
        mark=row.mark,
        part=part,
        rating=rating,
        family=row.family or part.text("fuse_family"),
        interrupts="" if row.fault_high is None else amps(row.fault_high),
        protects=_conductor(row),
        note="; ".join(notes),
    )


def _conductor(row: Row) -> str:
    if row.conductor is None:
        return row.wire
    many = int(row.parallel or 1)
    size = with_mm2(row.conductor)
    return f"{row.wire}: {f'{many} × ' if many > 1 else ''}{size}"


def _of_batteries(van: Van, most: float | None) -> Iterator[Fuse]:
    known = marks(van)
    for part in van.all("batteries"):
        state = part["fuse"].state
        if part.choice("role") == "starter" and state is not State.GIVEN:
            continue
        yield Fuse(
            mark=known.fuse(part),
            part=part,
            rating=part.text("fuse"),
            family=part.text("fuse_family"),
            interrupts="" if most is None or part.choice("role") == "starter" else amps(most),
            protects=part.name,
            note=_of_each(part) if part["fuse"].known else _lacking(state),
            count=int(part.si("units") or 1),
        )


def _of_each(part: Part) -> str:
    return "one for each" if (part.si("units") or 1) > 1 else ""


def _lacking(state: State) -> str:
    return NONE_FITTED if state is State.NONE else NOT_KNOWN


def amps(value: float) -> str:
    """Return a current [A] as shown."""
    return quantity_text(value, CURRENT)


def fuse_list(own: tuple[Fuse, ...]) -> ListTable:
    """Return the fuses as a list."""
    return ListTable(
        id="fuse-list",
        title="Fuse list",
        columns=("Mark", "Circuit", "Rating", "Family", "Must interrupt", "Protects", "Note"),
        rows=tuple(
            (
                one.mark,
                one.part.name,
                f"{one.count} × {one.rating}" if one.rating and one.count > 1 else one.rating,
                one.family,
                one.interrupts,
                one.protects,
                one.note,
            )
            for one in own
        ),
        numbers=frozenset(("Rating", "Must interrupt")),
        note="Replace a fuse only by one of the same family and rating. A fuse that blows twice"
        " protects something that is broken.",
    )

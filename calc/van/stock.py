"""What is cut and what is bought: every conductor as a piece to cut, and the parts of a van.

Generic words only: no brand, no price. The allowance, the spare fuses and the two ends of each
conductor are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING, Annotated

from calc.electrical.conductors import conductor
from calc.units.covered import NotCovered
from calc.units.shown import NO_BREAK_SPACE, with_mm2
from calc.units.si import Metres, Share, Tag
from calc.van.listed import ListTable
from calc.van.marks import Marks, marks
from calc.van.net import Conductor

if TYPE_CHECKING:
    from calc.van.record import Van

# For a route that the plan does not know, and two stripped ends: common practice, no source
ALLOWANCE: Annotated[Share, Tag("extra length of a cable that is cut")] = 0.10
# The same: common practice, no source
LEAST_ALLOWANCE: Annotated[Metres, Tag("least extra length of a cable that is cut")] = 0.15
# What a tape and a pair of shears keep to: common practice, no source
CUT_STEP: Annotated[Metres, Tag("step to which a cut length is rounded up")] = 0.05
_INCH, _INCHES_IN_FOOT = 0.0254, 12
_SAME = 1e-9

UNKNOWN = "not known"
# Terminals as `calc.van.net` names them, in words that fit a marker.
_POLES = {
    "plus": "+", "minus": "−", "out-plus": "out +", "out-minus": "out −",
    "panel-plus": "panel +", "panel-minus": "panel −",
}  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Size:
    """What a reel holds: the `conductor`, nothing where it is not known, and its `insulation`."""

    conductor: str
    insulation: str

    @property
    def area(self) -> float:
        """The copper [m²], nothing where it is not known."""
        try:
            return float(conductor(self.conductor).area) if self.conductor else 0.0
        except NotCovered:
            return 0.0

    @property
    def text(self) -> str:
        """The size as a reader sees it."""
        return with_mm2(self.conductor) or UNKNOWN


@dataclass(frozen=True, kw_only=True)
class Piece:
    """A conductor to cut: `count` pieces of `length` [m], or None where it must be measured.

    `chosen` tells that the schedule chose its size.
    """

    mark: str
    conductor: Conductor
    size: Size
    length: float | None
    count: int
    chosen: bool

    @property
    def total(self) -> float:
        """The length of all of them [m]."""
        return (self.length or 0.0) * self.count


def cut_length(run: float) -> float:
    """Return the length [m] to cut for a conductor that runs over `run` [m]."""
    needed = run + max(run * ALLOWANCE, LEAST_ALLOWANCE)
    return ceil(needed / CUT_STEP) * CUT_STEP


def pieces(van: Van, chosen: Mapping[str, str]) -> tuple[Piece, ...]:
    """Return every conductor of a van as pieces to cut, the thickest first.

    `chosen` has the conductors that the schedule chose, by the id of the run's part.
    """
    own = marks(van)
    found = [_piece(one, own, chosen) for one in van.net.conductors]
    return tuple(sorted(found, key=_thickest_first))


def _thickest_first(piece: Piece) -> tuple[float, str, str]:
    return -piece.size.area, piece.size.conductor, piece.size.insulation


def _piece(one: Conductor, own: Marks, chosen: Mapping[str, str]) -> Piece:
    part, length = one.part, one.length
    reading = part["insulation"].reading
    by_schedule = chosen.get(part.id, "") if one.size is None else ""
    if one.by_chassis:
        length = None  # from the load to the metal: as long as it is there
    return Piece(
        mark=own.wire(part, one.pole),
        conductor=one,
        size=Size(
            conductor=one.size or by_schedule,
            insulation=reading.text if reading else "",
        ),
        length=None if length is None else cut_length(length),
        count=one.parallel,
        chosen=bool(by_schedule),
    )


def cut_list(van: Van, cut: tuple[Piece, ...]) -> ListTable:
    """Return the pieces by size, each size with its sum."""
    rows: list[tuple[str, ...]] = []
    sums: set[int] = set()
    for size in dict.fromkeys(piece.size for piece in cut):
        own = [piece for piece in cut if piece.size == size]
        rows += [_cut_row(van, piece) for piece in own]
        sums.add(len(rows))
        count = sum(piece.count for piece in own)
        rows.append(("Total", size.text, size.insulation, "", "", sum_text(own), str(count), ""))
    return ListTable(
        id="cable-cut-list",
        title="Cable cut list",
        columns=("Mark", "Size", "Insulation", "From", "To", "Cut to", "Pieces", "Note"),
        rows=tuple(rows),
        numbers=frozenset(("Cut to", "Pieces")),
        sums=frozenset(sums),
        note=f"Each piece is the length of its run and {ALLOWANCE * 100:g} % more, at least"
        f" {LEAST_ALLOWANCE * 100:g} cm. Mark both ends before you pull it in.",
    )


def _cut_row(van: Van, piece: Piece) -> tuple[str, ...]:
    one = piece.conductor
    notes = []
    if piece.chosen:
        notes.append("size chosen by the schedule")
    if one.by_chassis:
        notes.append(f"to the metal at {one.bond}" if one.bond else "to the metal, place not said")
    elif one.assumed:
        notes.append("end assumed")
    return (
        piece.mark,
        piece.size.text,
        piece.size.insulation,
        end_text(van, one.start),
        end_text(van, one.end),
        "measure it" if piece.length is None else length_text(piece.length),
        str(piece.count),
        "; ".join(notes),
    )


def end_text(van: Van, terminal: str) -> str:
    """Return a terminal in words: the part's name and which of its terminals."""
    id, _, way = terminal.partition(".")
    part = van.by_id(id)
    name = part.name if part else id
    return " ".join(filter(None, (name, _POLES.get(way, way)))) or "not said"


def sum_text(cut: Iterable[Piece]) -> str:
    """Return the length of pieces of one size together, and how many are still to be measured."""
    cut = tuple(cut)
    total = sum(piece.total for piece in cut)
    unknown = sum(piece.count for piece in cut if piece.length is None)
    said = [length_text(total)] if total else []
    said += [f"{unknown} to be measured"] if unknown else []
    return " and ".join(said)


def length_text(metres: float) -> str:
    """Return a length [m] to cut, in metres and in feet and inches, rounded up."""
    inches = ceil(metres / _INCH - _SAME)
    feet, rest = divmod(inches, _INCHES_IN_FOOT)
    words = [f"{feet}{NO_BREAK_SPACE}ft"] if feet else []
    words += [f"{rest}{NO_BREAK_SPACE}in"] if rest or not feet else []
    return f"{metres:.2f}{NO_BREAK_SPACE}m ({NO_BREAK_SPACE.join(words)})"

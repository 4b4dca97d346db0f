"""When a fuse opens, as far as published time-current gates tell.

A gate is a share of the rated current with the least and the most time to opening. More current
never opens a fuse later. So at any current the fuse opens no later than at the last gate below it,
and no sooner than at the next gate above; beyond the last gate nothing is known but that. Gates
are not interpolated.
"""

from dataclasses import dataclass
from enum import IntEnum
from functools import cache
from typing import Annotated

from calc.electrical.fuses import families
from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.units.covered import NotCovered
from calc.units.si import Amperes, AmpereSquaredSeconds, Number, Seconds, Share, ShortSeconds, Tag

# Below it a fuse's I²t is a constant, above it the gates tell: from memory
CONSTANT_I2T_TIME: Annotated[ShortSeconds, Tag("longest opening with a constant I²t")] = 0.1
# At which makers state I²t: common practice, no source
I2T_MULTIPLE: Annotated[Number, Tag("times the rated current at which I²t is stated")] = 10.0
# A fuse that holds a current for so long does not clear it: the shortest time for which any family
# is asked to hold 110 % (UL 248-14)
HOLDING_TIME: Annotated[Seconds, Tag("opening that is too late to clear a fault")] = 4 * HOUR


class Trust(IntEnum):
    """What a gate rests on: a standard's own text, makers' data sheets as quoted, or memory.

    Gates trusted as far as one of these are its own and those of the ones before.
    """

    STANDARD = 0
    DATA_SHEET = 1
    MEMORY = 2


@dataclass(frozen=True, kw_only=True)
class Gate:
    """Opening time at a `multiple` of the rated current: at `least`, and at `most`, or None."""

    multiple: Share
    least: Seconds | None
    most: Seconds | None
    trust: Trust


@dataclass(frozen=True)
class Fuse:
    """A fuse by its family's name, None where that is not known, and its rated current.

    Raises NotCovered for a family that has neither ratings nor gates.
    """

    family: str | None
    rating: Amperes

    def __post_init__(self) -> None:
        if self.family is not None and self.family not in family_names():
            listed = "; ".join(family_names())
            raise NotCovered("fuse_family", f"must be one of: {listed}; not {self.family!r}.")


@dataclass(frozen=True, kw_only=True)
class Opening:
    """When a `fuse` opens at a `current`, by gates trusted as far as `trust`.

    `earliest` is zero where no gate tells it, `latest` is None.
    """

    fuse: Fuse
    current: Amperes
    trust: Trust
    earliest: ShortSeconds
    latest: ShortSeconds | None

    @property
    def multiple(self) -> Share:
        """The current as a share of the rated one."""
        return self.current / self.fuse.rating

    @property
    def least(self) -> ShortSeconds | None:
        """The earliest, None where no gate tells it."""
        return self.earliest or None

    def before(self, other: "Opening") -> bool:
        """Return whether this fuse opens no later than the `other` for certain."""
        return self.latest is not None and self.latest <= other.earliest


@cache
def _rows() -> dict[str, tuple[tuple[float, float, Gate], ...]]:
    found: dict[str, list[tuple[float, float, Gate]]] = {}
    for row in table("fuse_gates").rows:
        gate = Gate(
            multiple=float(row["percent"]) / 100,
            least=float(row["least_s"]) if row["least_s"] else None,
            most=float(row["most_s"]) if row["most_s"] else None,
            trust=Trust.MEMORY
            if row["confidence"] == FROM_MEMORY
            else Trust.STANDARD
            if row["basis"] == "standard"
            else Trust.DATA_SHEET,
        )
        found.setdefault(row["family"], []).append((float(row["from_a"]), float(row["to_a"]), gate))
    return {name: tuple(rows) for name, rows in found.items()}


@cache
def family_names() -> tuple[str, ...]:
    """Return every family that has ratings or gates, those with ratings first."""
    return tuple(dict.fromkeys((*(family.name for family in families()), *_rows())))


def gates(fuse: Fuse) -> tuple[Gate, ...]:
    """Return the gates published for `fuse`: for its family, and for its rated current."""
    rows = _rows().get(fuse.family or "", ())
    return tuple(
        gate for low, high, gate in rows if at_most(low, fuse.rating) and at_most(fuse.rating, high)
    )


def only_from_memory(fuse: Fuse) -> bool:
    """Return whether gates are known for `fuse`, and all of them from memory."""
    known = gates(fuse)
    return bool(known) and all(gate.trust is Trust.MEMORY for gate in known)


def opening(fuse: Fuse, current: float, trust: Trust = Trust.DATA_SHEET) -> Opening:
    """Return when `fuse` opens at `current` [A], by gates trusted as far as `trust`."""
    multiple = current / fuse.rating
    known = [gate for gate in gates(fuse) if gate.trust <= trust]
    most = [g.most for g in known if g.most is not None and at_most(g.multiple, multiple)]
    least = [g.least for g in known if g.least is not None and at_least(g.multiple, multiple)]
    return Opening(
        fuse=fuse,
        current=current,
        trust=trust,
        earliest=max(least, default=0.0),
        latest=min(most, default=None),
    )


def carries(fuse: Fuse, current: float) -> bool:
    """Return whether `fuse` does not clear `current` [A]: no more than its rating, or it holds it
    for hours by its gates."""
    return at_most(current, fuse.rating) or at_least(opening(fuse, current).earliest, HOLDING_TIME)


def i2t_tells(*, fuse: Fuse, let_through: AmpereSquaredSeconds, current: Amperes) -> bool:
    """Return whether `let_through` [A²·s] can be what `fuse` lets through at `current` [A].

    Not where the current is below ten times the rating, or would take more than a tenth of a
    second for it: heat leaves the fuse meanwhile, and its I²t is larger than published.
    """
    return at_least(current, I2T_MULTIPLE * fuse.rating) and at_most(
        let_through, CONSTANT_I2T_TIME * current**2
    )

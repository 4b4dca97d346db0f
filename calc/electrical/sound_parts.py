"""What a sound part of a circuit may have for resistance: a joint, a fuse, a switch, a cable.

The range of a good joint stands here once, for every sheet that takes, expects or judges one.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.electrical.run import plain_run
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Number, Ohms, Tag, Volts

# Low end of good bolted busbar joints: an instrument maker
GOOD_JOINT_LEAST: Annotated[Ohms, Tag("least resistance of a good joint")] = 5e-6
# What a lug on a stud, clean and tight, adds to a circuit at most: common practice, no source
GOOD_JOINT: Annotated[Ohms, Tag("resistance of a good joint")] = 0.1e-3
# Low end of well-kept power contacts: an article on substations
CONTACT_LEAST: Annotated[Ohms, Tag("least resistance of a well-kept power contact")] = 10e-6
# Top of the range of well-kept power contacts: an article on substations
WELL_KEPT: Annotated[Ohms, Tag("most of a well-kept power contact")] = 300e-6
# A small connector that may drop 4 mV an ampere: an article on vehicle connectors
SMALL_PLUG: Annotated[Ohms, Tag("most of a small plug-in terminal")] = 4e-3
# Both contacts of a holder in which a fuse is plugged: common practice, no source
PLUG_HOLDER: Annotated[Ohms, Tag("contacts of a plug-in fuse holder")] = 1e-3
# The largest fuse that is commonly plugged in and not bolted: common practice, no source
PLUG_FUSE: Annotated[Amperes, Tag("largest fuse with a plug-in holder")] = 40.0
# Times the table's resistance, for meter, tape and warmth: common practice, no source
CABLE_MORE: Annotated[Number, Tag("most of a cable's resistance over its table")] = 1.1
# Times the sound range: above it a like part shows only that both are bad. Common practice
TWIN_CLEARS: Annotated[Number, Tag("most over the sound range that a like part clears")] = 2.0


class Part(Enumeration):
    """What lies between the probes."""

    BOLTED = "bolted"
    CRIMP = "crimp"
    PLUG = "plug-in"
    FUSE = "fuse"
    SWITCH = "switch"
    BREAKER = "breaker"
    CABLE = "cable"
    UNKNOWN = "unknown"


WARM_BY_NATURE = (Part.FUSE, Part.BREAKER, Part.CABLE)  # they give off heat when they are sound
RATED = (Part.FUSE, Part.BREAKER)


@dataclass(frozen=True, kw_only=True)
class SoundPart:
    """A part and the resistance that it has when it is sound: from `low` to `high` [ohm].

    `low` is None where none is known. `rating` [A] is printed on a fuse or breaker, and `drop` [V]
    the most that such a one loses at it, without its contacts; None for other parts.
    """

    part: Part
    low: Ohms | None
    high: Ohms
    rating: Amperes | None = None
    drop: Volts | None = None

    @property
    def most(self) -> Ohms:
        """Above this no like part clears it."""
        return TWIN_CLEARS * self.high

    @property
    def warm_by_nature(self) -> bool:
        """Whether it gives off heat all along when it is sound."""
        return self.part in WARM_BY_NATURE

    @property
    def contacts(self) -> Ohms | None:
        """What the contacts of a fuse's holder may add; None for other parts."""
        return _holder(self.rating) if self.rating and self.part is Part.FUSE else None


_RANGES: dict[Part, tuple[float, float]] = {
    Part.BOLTED: (GOOD_JOINT_LEAST, GOOD_JOINT),
    Part.CRIMP: (GOOD_JOINT_LEAST, GOOD_JOINT),
    Part.UNKNOWN: (GOOD_JOINT_LEAST, GOOD_JOINT),  # the strictest
    Part.PLUG: (GOOD_JOINT, SMALL_PLUG),
    Part.SWITCH: (CONTACT_LEAST, WELL_KEPT),
}


def sound_joint(part: Part) -> SoundPart:
    """Return a sound joint, terminal or switch. Raises KeyError for a fuse, breaker or cable."""
    low, high = _RANGES[Part(part)]
    return SoundPart(part=Part(part), low=low, high=high)


def sound_fuse(part: Part, rating: float) -> SoundPart:
    """Return a sound fuse in its holder, or a sound breaker, of that `rating` [A].

    What it may drop at its rating, and for a fuse the two contacts of the holder.
    """
    part = Part(part)
    rows = [row for row in table("part_drops").rows if row["part"] == part]
    drop = [float(row["drop_v"]) for row in rows if at_least(rating, float(row["from_a"]))][-1]
    contacts = _holder(rating) if part is Part.FUSE else 0.0
    return SoundPart(part=part, low=None, high=drop / rating + contacts, rating=rating, drop=drop)


def _holder(rating: float) -> float:
    """Two contacts of a plug-in holder, or two bolted joints."""
    return PLUG_HOLDER if at_most(rating, PLUG_FUSE) else 2 * GOOD_JOINT


def sound_cable(*, conductor: str, length: float, temperature: float) -> SoundPart:
    """Return a sound `length` [m] of one copper conductor at `temperature` [°C].

    Raises NotCovered for a conductor that is not in the tables.
    """
    laid = plain_run(conductor=conductor, length=length, temperature=temperature)
    by_table = length * laid.per_length
    return SoundPart(part=Part.CABLE, low=None, high=CABLE_MORE * by_table)

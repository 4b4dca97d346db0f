"""What a drive that charges a bank is made of: the engine, the room in the bank, the charge."""

from dataclasses import dataclass
from math import isfinite

from calc.energy.battery import Bank
from calc.energy.filling import Filling
from calc.units.compare import at_least
from calc.units.si import Amperes, Coulombs, Seconds, Share, Volts


@dataclass(frozen=True, kw_only=True)
class Engine:
    """The voltage that is `held` by an engine, and the `most` that a vehicle's battery is given."""

    held: Volts
    most: Volts


@dataclass(frozen=True, kw_only=True)
class Room:
    """What a bank still takes: `charge` until it is full, `takes` at its state, `most` at all.

    `coulombic` is the share of the charge put in that it keeps.
    """

    charge: Coulombs
    coulombic: Share
    takes: Amperes
    most: Amperes


@dataclass(frozen=True, kw_only=True)
class RisingVoltage:
    """A bank's own voltage in the model of a relay: from `begins` to `full`, evenly as it fills.

    `current` would flow at its beginning, and the engine's voltage reaches a share `reach` of the
    room.
    """

    begins: Volts
    full: Volts
    current: Amperes
    reach: Share


@dataclass(frozen=True, kw_only=True)
class Drive:
    """The charge of a drive of some `duration` into a bank, as its `filling` has it.

    `wanted` is the charge that is asked for, `most` an upper bound by the first current, through a
    relay.
    """

    bank: Bank
    room: Room
    filling: Filling
    duration: Seconds
    wanted: Coulombs | None
    most: Coulombs | None

    @property
    def charge(self) -> Coulombs:
        """What is put in."""
        return self.filling.after(self.duration)

    @property
    def kept(self) -> Coulombs:
        """What the bank keeps of it."""
        return self.charge * self.room.coulombic

    @property
    def end_state(self) -> Share:
        """The state of charge afterwards."""
        return self.bank.state + self.kept / self.bank.capacity

    @property
    def drive_time(self) -> Seconds | None:
        """The drive that puts in what is wanted, None where none does or nothing is."""
        return None if self.wanted is None else self.filling.time_for(self.wanted)

    @property
    def short(self) -> bool:
        """Whether less is put in than is wanted."""
        return self.wanted is not None and not at_least(self.charge, self.wanted)

    @property
    def falls(self) -> bool:
        """Whether the current falls before the drive ends."""
        return self.duration > self.filling.steady_time and self.filling.current > 0

    @property
    def wanted_while_falling(self) -> bool:
        """Whether what is wanted is in only after the current has begun to fall."""
        return self.drive_time is not None and self.drive_time > self.filling.steady_time

    @property
    def still_open(self) -> Share:
        """The share of what goes in with falling current that is still open afterwards."""
        return self.filling.still_open(self.duration)

    @property
    def steady_time(self) -> Seconds | None:
        """How long the current is steady, None where it never falls."""
        return self.filling.steady_time if isfinite(self.filling.steady_time) else None

    @property
    def falls_in(self) -> Seconds | None:
        """The time constant of the fall, None where it never falls."""
        return self.filling.falls_in if isfinite(self.filling.falls_in) else None

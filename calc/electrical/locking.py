"""What keeps the nut of a bolted joint where it is, by kind of joint. Common practice, no source.

Only split washers have one: they are disputed (NASA RP-1228 as reported, and a fastener engineer).
"""

from dataclasses import dataclass

from calc.units.covered import Enumeration


class JointKind(Enumeration):
    """What the lugs are bolted to."""

    BUSBAR = "busbar-or-stud"
    BATTERY = "battery-terminal"
    FUSE = "fuse-holder-or-breaker"
    CHASSIS = "chassis-ground"


class Opened(Enumeration):
    """How often a joint is opened."""

    SELDOM = "seldom"
    OFTEN = "often"


class Lock(Enumeration):
    """A way to keep a nut where it is."""

    SUPPLIED = "supplied-parts"
    METAL_NUT = "all-metal-locknut"
    STAR_WASHER = "toothed-washer"
    TAPPING_SCREW = "self-tapping-screw"
    NYLON_NUT = "nylon-locknut"
    FLANGE_NUT = "serrated-flange-nut"
    CONICAL_WASHER = "conical-washer"
    SPLIT_WASHER = "split-washer"
    THREAD_LOCKER = "thread-locker"
    WING_NUT = "wing-nut"
    PAINT_MARK = "paint-mark"


@dataclass(frozen=True)
class LockingMethod:
    """A `lock` on a joint: whether it `fits`, and whether only frequent opening wears it out."""

    lock: Lock
    fits: bool
    worn: bool


_USUAL = {
    Lock.NYLON_NUT: True,
    Lock.FLANGE_NUT: True,
    Lock.CONICAL_WASHER: True,
    Lock.SPLIT_WASHER: False,
    Lock.THREAD_LOCKER: False,
    Lock.WING_NUT: False,
    Lock.PAINT_MARK: True,
}
_BY_KIND: dict[JointKind, dict[Lock, bool]] = {
    JointKind.BUSBAR: {},
    JointKind.BATTERY: {Lock.SUPPLIED: True, Lock.FLANGE_NUT: False},
    JointKind.FUSE: {
        Lock.SUPPLIED: True,
        Lock.METAL_NUT: True,
        Lock.NYLON_NUT: False,
        Lock.FLANGE_NUT: False,
    },
    JointKind.CHASSIS: {Lock.STAR_WASHER: False, Lock.TAPPING_SCREW: False},
}
_USED_ONCE = {Lock.NYLON_NUT}  # its ring wears each time it is turned


def locking_methods(*, kind: JointKind, opened: Opened) -> tuple[LockingMethod, ...]:
    """Return the ways to lock the nut of a joint, those of this `kind` alone first.

    What is used once does not fit a joint that is `opened` often. Raises NotCovered for a name that
    is not in an enumeration.
    """
    own = _BY_KIND[JointKind(kind)]
    often = Opened(opened) is Opened.OFTEN
    fits = {lock: own[lock] for lock in own if lock not in _USUAL} | _USUAL | own
    worn = {lock: often and lock in _USED_ONCE and fit for lock, fit in fits.items()}
    return tuple(
        LockingMethod(lock, fit and not worn[lock], worn[lock]) for lock, fit in fits.items()
    )

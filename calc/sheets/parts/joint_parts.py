"""What lies on a stud, what keeps it tight and how it is looked after, in a reader's words."""

# fmt: off
from dataclasses import dataclass

from calc.electrical.joints import Joint
from calc.electrical.locking import JointKind, Lock, LockingMethod
from calc.worksheet.pictures import Part


@dataclass(frozen=True)
class Locking:
    """One way to keep a nut where it is: whether it fits this joint, and why."""

    method: str
    fits: bool
    why: str

    def __str__(self) -> str:
        return f"{self.method}: {self.why}"

    @property
    def label(self) -> str:
        """Its name, where the reason stands elsewhere."""
        return self.method


LOCKS = {
    Lock.NYLON_NUT: "prevailing-torque nut (nylon ring)",
    Lock.METAL_NUT: "prevailing-torque nut, all metal",
    Lock.FLANGE_NUT: "serrated (knurled) flange nut",
    Lock.CONICAL_WASHER: "conical spring washer, or a wedge-locking pair",
    Lock.SPLIT_WASHER: "split lock washer",
    Lock.THREAD_LOCKER: "thread locker",
    Lock.WING_NUT: "wing nut",
    Lock.PAINT_MARK: "paint mark across nut and stud",
    Lock.SUPPLIED: "the nut and washers that came with the part",
    Lock.STAR_WASHER: "toothed washer between lug and body",
    Lock.TAPPING_SCREW: "self-tapping screw into sheet",
}
_WHY = {
    Lock.NYLON_NUT: "it cannot spin off when clamping force is lost; use it once, and not on a hot joint",
    Lock.FLANGE_NUT: "its teeth bite a steel or brass washer face; not straight onto soft lug or lead",
    Lock.CONICAL_WASHER: "it keeps clamping force while soft metal settles; on the nut's side, over a flat washer",
    Lock.SPLIT_WASHER: "sources disagree; it lies flat at full torque: never rely on it alone",
    Lock.THREAD_LOCKER: "keep it off every face that carries current; on the thread only where the maker asks for it",
    Lock.WING_NUT: "fingers cannot reach the torque",
    Lock.PAINT_MARK: "it locks nothing, but shows at a glance whether the nut has moved",
}
_WHY_OF_KIND: dict[JointKind, dict[Lock, str]] = {
    JointKind.BUSBAR: {},
    JointKind.BATTERY: {
        Lock.SUPPLIED: "in their order: the post may be a stud, or an insert that takes a bolt of one length only",
        Lock.NYLON_NUT: "on a stud post; a bolt into a threaded insert has no nut",
        Lock.FLANGE_NUT: "its teeth cut lead and plated inserts, and the next lug sits on ridges",
        Lock.CONICAL_WASHER: "lead and plated inserts creep, and it follows; over a wide flat washer, never past the maker's torque",
        Lock.THREAD_LOCKER: "a post will be opened again, and what creeps onto the face insulates it",
        Lock.WING_NUT: "not for battery posts: fingers cannot reach the torque, and a marine trade text forbids it",
    },
    JointKind.FUSE: {
        Lock.SUPPLIED: "in their order: the body is plastic, and the maker tried it with these",
        Lock.NYLON_NUT: "a fuse is warm by design and nylon softens; take an all-metal one",
        Lock.METAL_NUT: "it withstands the heat beside a fuse, and cannot spin off",
        Lock.FLANGE_NUT: "its teeth turn the copper tab with the nut and strain the plastic; only if the maker supplies it",
        Lock.CONICAL_WASHER: "it follows as plastic and copper settle with the heat; never past the maker's torque",
    },
    JointKind.CHASSIS: {
        Lock.FLANGE_NUT: "on the nut's side: it stays where the body shakes; coat the joint against rust afterwards",
        Lock.STAR_WASHER: "it puts steel in the current path; scrape the body bright and put the lug directly on it",
        Lock.TAPPING_SCREW: "two threads in thin sheet hold no useful torque; use a bolt with a nut, or a welded stud",
    },
}
_WORN = "its ring wears each time it is turned; this joint is opened often"
_SEVERAL_LUGS = "several lugs settle more, so it is best here"


def _why(joint: Joint, method: LockingMethod) -> str:
    lock = method.lock
    if method.worn:
        return _WORN
    why = (_WHY | _WHY_OF_KIND[joint.kind])[lock]
    return f"{why}; {_SEVERAL_LUGS}" if lock is Lock.CONICAL_WASHER and joint.lugs > 1 else why


def locking(joint: Joint) -> tuple[Locking, ...]:
    """Return the ways to lock the nut of a joint, those of its kind alone first."""
    return tuple(Locking(LOCKS[one.lock], one.fits, _why(joint, one)) for one in joint.locking)


_SEATS = {
    JointKind.BUSBAR: "seat of the stud, or busbar, clean and bright",
    JointKind.BATTERY: "battery terminal, its face clean and bright",
    JointKind.FUSE: "fuse terminal, its face clean and bright",
    JointKind.CHASSIS: "body metal, scraped bright",
}


def stack(joint: Joint) -> tuple[Part, ...]:
    """Return the parts on the stud in order, first at the seat: no washer in the current's path."""
    lugs = int(joint.lugs)
    first = Part("lug", "lug" if lugs == 1 else "lug, largest current")
    return (
        Part("seat", _SEATS[joint.kind]),
        first,
        *(Part("lug", f"lug {number}") for number in range(2, lugs + 1)),
        Part("washer", "flat washer"),
        Part("locking", "locking washer, if used"),
        Part("nut", "nut"),
    )


_LOOK = {
    JointKind.BUSBAR: "also check for a lug that has turned and for discoloured metal",
    JointKind.BATTERY: "also check for white or green growth; lead creeps, so check again after a month",
    JointKind.FUSE: "also check for browned or softened plastic: replace such a holder, do not tighten it",
    JointKind.CHASSIS: "also check for rust under the lug: scrape, refit and coat it again",
}


def routine(joint: Joint) -> tuple[str, ...]:
    """Return what is done with the joint, from the day it is made."""
    return (
        "when made: torque it once from loose, paint a line across nut, washer and seat, note torque, date and initials",
        "after the first drives and after a week, because soft copper settles: is the line unbroken? Measure the drop under load (joint heat) and note it",
        f"at each service, after any smell or flicker: line and drop again; {_LOOK[joint.kind]}",
        "line broken, or the drop up by half: load off, open it, clean to bright metal, new nut and washer, torque from loose",
        "do not check it with the wrench: a later torque reading does not show what torque was used",
    )

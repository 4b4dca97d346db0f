"""What lies on a stud, what keeps it tight and how it is looked after, by kind of joint."""

from dataclasses import dataclass

from calc.worksheet.pictures import Part

BUSBAR, BATTERY, FUSE, CHASSIS = "busbar or stud", "battery terminal", "fuse holder or breaker", "chassis ground"
SELDOM, OFTEN = "seldom", "often"


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


NYLON = "prevailing-torque nut (nylon ring)"
METAL = "prevailing-torque nut, all metal"
SERRATED = "serrated (knurled) flange nut"
CONICAL = "conical spring washer, or a wedge-locking pair"
SPLIT = "split lock washer"
LOCKER = "thread locker"
WING = "wing nut"
PAINT = "paint mark across nut and stud"
SUPPLIED = "the nut and washers that came with the part"
STAR = "toothed washer between lug and body"
TAPPING = "self-tapping screw into sheet"

_COMMON = {
    NYLON: (True, "it cannot spin off when preload is lost; use it once, and not where the joint runs hot"),
    SERRATED: (True, "its teeth bite a steel or brass washer face; not straight onto soft lug or lead"),
    CONICAL: (True, "it keeps preload while soft metal settles; on the nut's side, over a flat washer"),
    SPLIT: (False, "sources disagree; it lies flat at full torque: never rely on it alone"),
    LOCKER: (False, "keep it off every face that carries current; on the thread only where the maker asks for it"),
    WING: (False, "fingers do not reach the torque"),
    PAINT: (True, "it holds nothing, but shows at a glance whether the nut has moved"),
}
_OF_KIND = {
    BUSBAR: {},
    BATTERY: {
        SUPPLIED: (True, "in their order: the post may be a stud, or an insert that takes a bolt of one length only"),
        NYLON: (True, "on a stud post; a bolt into a threaded insert has no nut"),
        SERRATED: (False, "its teeth cut lead and plated inserts, and the next lug lies on ridges"),
        CONICAL: (True, "lead and plated inserts creep, and it follows; over a wide flat washer, never past the maker's torque"),
        LOCKER: (False, "a post is opened again, and what creeps onto the face insulates it"),
        WING: (False, "not for battery posts: fingers do not reach the torque, and a marine trade text bars it there"),
    },
    FUSE: {
        SUPPLIED: (True, "in their order: the body is plastic, and the maker tried it with these"),
        NYLON: (False, "a fuse is warm by design and nylon softens; take an all-metal one"),
        METAL: (True, "it bears the heat beside a fuse, and cannot spin off"),
        SERRATED: (False, "its teeth turn the copper tab with the nut and strain the plastic; only if the maker supplies it"),
        CONICAL: (True, "it follows as plastic and copper settle with the heat; never past the maker's torque"),
    },
    CHASSIS: {
        SERRATED: (True, "on the nut's side: it stays where the body shakes; coat the joint against rust afterwards"),
        STAR: (False, "it puts steel in the current's path; scrape the body bright and lay the lug straight on it"),
        TAPPING: (False, "two threads in thin sheet bear no torque worth the name; use a bolt with a nut, or a welded stud"),
    },
}  # fmt: skip


def locking(joint: str, opened: str, lugs: int) -> tuple[Locking, ...]:
    """Return the ways to lock a nut on this kind of joint, those of this kind alone first."""
    own = _OF_KIND[joint]
    ways = {**{method: own[method] for method in own if method not in _COMMON}, **_COMMON, **own}
    if opened == OFTEN and ways[NYLON][0]:
        ways[NYLON] = (False, "its ring wears each time it is turned; this joint is opened often")
    if lugs > 1:
        ways[CONICAL] = (True, f"{ways[CONICAL][1]}; several lugs settle more, so here it serves best")
    return tuple(Locking(method, *way) for method, way in ways.items())


_SEATS = {
    BUSBAR: "seat of the stud, or busbar, clean and bright",
    BATTERY: "battery terminal, its face clean and bright",
    FUSE: "fuse terminal, its face clean and bright",
    CHASSIS: "body metal, scraped bright",
}


def stack(joint: str, lugs: int) -> tuple[Part, ...]:
    """Return the parts on the stud in order, first at the seat: no washer in the current's path."""
    first = Part("lug", "lug" if lugs == 1 else "lug, largest current")
    return (
        Part("seat", _SEATS[joint]),
        first,
        *(Part("lug", f"lug {number}") for number in range(2, lugs + 1)),
        Part("washer", "flat washer"),
        Part("locking", "locking washer, if used"),
        Part("nut", "nut"),
    )


_LOOK = {
    BUSBAR: "look too for a lug that has turned and for discoloured metal",
    BATTERY: "look too for white or green growth; lead creeps, so look once more after a month",
    FUSE: "look too for browned or softened plastic: such a holder is replaced, not tightened",
    CHASSIS: "look too for rust creeping under the lug: scrape, set and coat it anew",
}


def routine(joint: str) -> tuple[str, ...]:
    """Return what is done with the joint, from the day it is made."""
    return (
        "when made: torque it once from loose, paint a line across nut, washer and seat, note torque, date and initials",
        "after the first drives and after a week, for soft copper settles: is the line whole? Measure the drop under load (joint heat) and note it",
        f"at each service, after any smell or flicker: line and drop again; {_LOOK[joint]}",
        "line broken, or the drop up by half: load off, open it, clean to bright metal, new nut and washer, torque from loose",
        "do not judge it by the wrench: a later torque reading does not tell what torque was used",
    )

"""Judgements on joints and bus bars: locking, a tug, covers, ratings, and lugs on one stud."""

from __future__ import annotations

# fmt: off
from calc.electrical.joints import MOST_LUGS
from calc.judge import Level
from calc.units.compare import at_least, at_most
from calc.van.facts import Bar, Joint, bars, joints
from calc.van.judging import Asked, Mend, VanRule

NOT_LOCKED = VanRule[Joint](
    id="van.joint-not-locked", level=Level.CAUTION, when=lambda j: j.lock == "none", source="practice", key="lock",
    headline="Lock the joint {part}: on the road an unlocked nut works loose and the joint heats.",
    text="Fire: a loose joint heats without blowing a fuse. Use a locking nut or a lock washer, and set the torque again.",
    mends=lambda j: iter((Mend(text="Fit a locking nut, and set its torque.", changes={f"{j.at}.lock": "locking nut"}),)),
)
MOVED = VanRule[Joint](
    id="van.joint-moved", level=Level.STOP, when=lambda j: j.tug == "moved", source="practice", key="tug",
    headline="Do not energise: the joint {part} moved when tugged. Remake it and set its torque.",
    mends=lambda j: iter((Mend(text="Remake the joint, set its torque, and tug again.", changes={f"{j.at}.tug": "held firm"}),)),
)
BARE = VanRule[Bar](
    id="van.bar-without-cover", level=Level.CAUTION, when=lambda b: b.pole == "plus" and b.cover == "no", source="practice", key="cover",
    headline="Cover {part}: a tool across a bare plus bar welds and burns.",
    mends=lambda b: iter((Mend(text="Fit an insulating cover.", changes={f"{b.at}.cover": "yes"}),)),
)
BELOW_FUSE = VanRule[Bar](
    id="van.bar-below-its-fuse", level=Level.CAUTION, source="practice", key="rating",
    when=lambda b: b.rating is not None and b.fed is not None and not at_least(b.rating, b.fed),
    headline="Use a larger bar or a smaller fuse: {part} is rated {rating}, its fuse {fed}.",
)
CROWDED = VanRule[Bar](
    id="van.bar-too-many-lugs", level=Level.STOP, when=lambda b: b.lugs is not None and not at_most(b.lugs, MOST_LUGS), source="practice", key="lugs_on_stud",
    headline="Spread the lugs on {part} over more studs: no more than four belong on one.",
    mends=lambda b: iter((Mend(text="Spread the lugs over more studs, four at most on each.", changes={f"{b.at}.lugs_on_stud": f"{MOST_LUGS:.0f}"}),)),
)
ASKED = (Asked(joints, (NOT_LOCKED, MOVED)), Asked(bars, (BARE, BELOW_FUSE, CROWDED)))

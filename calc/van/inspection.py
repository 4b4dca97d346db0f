"""An inspection: what is still to be looked at, in a safe order, and how it ends."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.judge import Level
from calc.units.covered import Enumeration
from calc.van.judging import told
from calc.van.keys import Walk
from calc.van.proven import Gap, kinds_not_seen, unproven
from calc.van.record import KINDS, Van
from calc.van.told import name_of

if TYPE_CHECKING:
    from calc.van.review import Finding, Review


@dataclass(frozen=True, kw_only=True)
class Look:
    """One thing to look at: what to do in one sentence, and the `place` that it fills in.

    `safety` marks what must be proven before the van may be energised.
    """

    place: str
    part_id: str
    part_name: str
    do: str
    safety: bool
    only_told: bool


@dataclass(frozen=True, kw_only=True)
class Stop:
    """One station of the walk: its `title`, what is done there, and its caution."""

    walk: Walk
    title: str
    do: str
    caution: str
    looks: tuple[Look, ...]


STATIONS: Mapping[Walk, tuple[str, str, str]] = {
    Walk.SMELL: (
        "Smell and alarms",
        "Smell for gas and fuel, then press the test button of each alarm.",
        "Smell gas: light nothing, touch no switch, close the cylinder, open the doors, go out.",
    ),
    Walk.UNPLUG: (
        "Shore power unplugged",
        "Unplug at the post first, then at the van, and keep the plug in sight.",
        "Shock: if somebody plugs it back in, the van is live again. Keep the cable with you.",
    ),
    Walk.ISOLATE: (
        "Isolate and prove dead",
        "Open main isolator, panels and alternator line; then prove dead with a tested meter.",
        "Fire: panels, alternator and capacitors may still be live. Take rings and watch off.",
    ),
    Walk.LOOK: (
        "Look",
        "Read labels and prints, look for colour, soft insulation and rubbed cables.",
        "Fire: keep metal tools away from bare bars; cover one pole while you look at the other.",
    ),
    Walk.TUG: (
        "Tug",
        "Tug at each conductor, one by one, with the bank isolated.",
        "Fire: tug only what is proven dead. What moves is remade before it is energised.",
    ),
    Walk.TORQUE: (
        "Torque",
        "Set each nut to the maker's torque with a torque wrench, and mark it.",
        "Short circuit: use an insulated wrench, minus first off and last on.",
    ),
    Walk.MAINS_DEAD: (
        "Mains, dead tests",
        "Have earth and insulation measured with everything unplugged.",
        "Damage: take electronics off before the insulation test. Mains is for somebody licensed.",
    ),
    Walk.ENERGISE: (
        "Energise fuse by fuse",
        "Put the fuses in one by one and watch the current of each before the next.",
        "Fire: keep a hand at the isolator. Smell, heat or a current that nobody expects: open it.",
    ),
    Walk.MILLIVOLTS: (
        "Millivolts under load",
        "Switch the load on, then measure across each joint and along each run.",
        "Burns: a bad joint may already be hot. Probe with one hand, by the tips.",
    ),
    Walk.MAINS_LIVE: (
        "Mains, live tests",
        "Have polarity and the residual-current device tested on shore power.",
        "Shock: live mains tests are for somebody licensed, with instruments made for them.",
    ),
    Walk.DESK: (
        "At the desk",
        "Ask the owner, and read papers and data sheets.",
        "What was only told proves nothing that safety depends on: see it for yourself.",
    ),
}
_DO: Mapping[Walk, str] = {
    Walk.SMELL: "Check",
    Walk.UNPLUG: "Check",
    Walk.ISOLATE: "Prove at",
    Walk.LOOK: "Look at",
    Walk.TUG: "Tug at",
    Walk.TORQUE: "Set and mark at",
    Walk.MAINS_DEAD: "Have tested dead, at",
    Walk.ENERGISE: "Watch",
    Walk.MILLIVOLTS: "Measure at",
    Walk.MAINS_LIVE: "Have tested live, at",
    Walk.DESK: "Ask about",
}


def inspection_list(van: Van) -> tuple[Stop, ...]:
    """Return what nobody has seen, or what was only told, station by station in a safe order.

    Every station stands in it, also one at which nothing is left to look at, for each has its part
    in walking safely.
    """
    looks: dict[Walk, list[Look]] = {walk: [] for walk in Walk}
    for kind in kinds_not_seen(van):
        of = KINDS[kind]
        title = f"{of.title[0].lower()}{of.title[1:]}"
        looks[of.walk].append(Look(
            place=kind, part_id=kind, part_name=of.title, safety=True, only_told=False,
            do=f"{_DO[of.walk]} {title}: whether there are any.",
        ))  # fmt: skip
    for part in van.everything():
        for one in unproven(van, part):
            walk = one.key.walk
            only_told = one.gap is Gap.TOLD
            first = "See for yourself, at" if only_told else _DO[walk]
            what = "" if walk is Walk.TUG else f": {one.label}"
            looks[walk].append(Look(
                place=one.place, part_id=part.id, part_name=part.name, safety=one.key.safety,
                only_told=only_told, do=f"{first} {name_of(part)}{what}.",
            ))  # fmt: skip
    return tuple(
        Stop(
            walk=walk, title=STATIONS[walk][0], do=STATIONS[walk][1], caution=STATIONS[walk][2],
            looks=tuple(sorted(looks[walk], key=lambda one: not one.safety)),
        )
        for walk in Walk
    )  # fmt: skip


class Decision(Enumeration):
    """What may be done with a van."""

    MAY = "may-be-energised"
    WITH_LIST = "may-be-energised-with-a-list"
    NOT = "not-to-be-energised"


@dataclass(frozen=True, kw_only=True)
class Disposition:
    """The end of a review: what may be done, who signs it, and the list that goes with it.

    `signed_by` and `date` are empty where the record names none: then it is not signed.
    """

    decision: Decision
    sentence: str
    signed_by: str
    date: str
    list: tuple[Finding, ...]

    @property
    def signed(self) -> bool:
        """Whether somebody stands for it, by name and date."""
        return bool(self.signed_by and self.date)


def disposition(review: Review) -> Disposition:
    """Return what may be done with a van after its review."""
    van = review.van
    own = van.parts["van"][0]
    grave = [one for one in review.findings if one.level in (Level.STOP, Level.CAUTION)]
    stops = [one for one in grave if one.level is Level.STOP]
    verb = "energised" if van.inspection else "built"
    unseen = sum(one.not_proven for one in stops)
    if stops:
        count = f"{len(stops)} stop{'s' if len(stops) > 1 else ''}"
        if unseen:
            count += f", {unseen} of them not proven"
        decision, sentence = Decision.NOT, f"Not to be {verb}: {count}."
    elif grave:
        things = f"{len(grave)} thing{'s' if len(grave) > 1 else ''}"
        decision, sentence = (
            Decision.WITH_LIST,
            f"May be {verb} with a list: {things} to check or change.",
        )
    else:
        decision, sentence = Decision.MAY, f"May be {verb}: no stop and no caution."
    return Disposition(
        decision=decision,
        sentence=sentence,
        signed_by=told(own, "inspector"),
        date=told(own, "date"),
        list=tuple(grave),
    )

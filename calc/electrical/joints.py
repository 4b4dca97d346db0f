"""Bolted cable joints: torque, what the thread can take, and what the torque buys.

Torque figures for the same thread differ several-fold between makers. The maker's figure governs;
what stands here shows the spread and the strength of the stud.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.electrical.locking import JointKind, LockingMethod, Opened, locking_methods
from calc.electrical.threads import Condition, Grade, Thread, nut_factor, thread
from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most
from calc.units.si import NewtonMetres, Newtons, Number, Share, Tag

# Of the lowest published torque; where there is only one, of it or over it: our choice, no source
FAR_BELOW: Annotated[Share, Tag("share of the lowest published torque, far below it")] = 0.5
# ABYC E-11; FAA AC 43.13-1B, paragraph 11-174
MOST_LUGS: Annotated[Number, Tag("most lugs on one stud")] = 4.0
SWITCHGEAR = "switchgear, bolted busbar joint"  # a kind of joint in the table of torques


@dataclass(frozen=True, kw_only=True)
class Published:
    """A published tightening torque, `low` to `high` [N·m], and what `kind` of joint it is for."""

    low: NewtonMetres
    high: NewtonMetres
    kind: str
    source: str
    from_memory: bool


@cache
def published_torques(stud: str) -> tuple[Published, ...]:
    """Return every published torque for the `stud` of that name, in the table's order."""
    return tuple(
        Published(
            low=float(row["torque_low_nm"]),
            high=float(row["torque_high_nm"]),
            kind=row["kind"],
            source=row["source"],
            from_memory=row["confidence"] == FROM_MEMORY,
        )
        for row in table("terminal_torque").rows
        if row["stud"] == stud
    )


@dataclass(frozen=True, kw_only=True)
class PublishedTorques:
    """The published torques of a stud, and the share of them that a thread is tightened to.

    They are for dry threads: on an oiled one they come down with the nut factor, so that the
    clamping force stays.
    """

    figures: tuple[Published, ...]
    share: Share

    @property
    def first(self) -> Published:
        """The one that stands in for a maker's."""
        return self.figures[0]

    @property
    def dry_low(self) -> NewtonMetres:
        """The lowest of them, for a dry thread."""
        return min(one.low for one in self.figures)

    @property
    def dry_high(self) -> NewtonMetres:
        """The highest of them, for a dry thread."""
        return max(one.high for one in self.figures)

    @property
    def low(self) -> NewtonMetres:
        """The lowest of them, for this thread."""
        return self.dry_low * self.share

    @property
    def high(self) -> NewtonMetres:
        """The highest of them, for this thread."""
        return self.dry_high * self.share

    @property
    def one_source(self) -> bool:
        """Whether there is no more than one figure."""
        return self.dry_low == self.dry_high


@dataclass(frozen=True, kw_only=True)
class Clamping:
    """The `preload` [N] that a torque buys, over the published nut factors, and of proof load."""

    preload: Newtons
    preload_low: Newtons
    preload_high: Newtons
    share: Share


@dataclass(frozen=True, kw_only=True)
class Switchgear:
    """A busbar joint of switchgear on the same stud: `torque` [N·m], `share` of the proof load."""

    torque: NewtonMetres
    share: Share


@dataclass(frozen=True, kw_only=True)
class Joint:
    """A bolted joint: its parts, its torque [N·m], what that buys, and what keeps it tight.

    `chosen_torque` is the maker's or, for want of it, a published one. `clamping` is None where
    that can't be trusted, `switchgear` where nothing is published.
    """

    kind: JointKind
    lugs: Number
    opened: Opened
    maker_torque: NewtonMetres | None
    thread: Thread
    published: PublishedTorques
    chosen_torque: NewtonMetres
    clamping: Clamping | None
    switchgear: Switchgear | None
    locking: tuple[LockingMethod, ...]

    @property
    def withheld(self) -> NewtonMetres | None:
        """A published torque that the stud, of a known material, can't take."""
        return self.chosen_torque if self.clamping is None else None

    @property
    def torque(self) -> NewtonMetres | None:
        """The torque to tighten to; None where there is none to be trusted."""
        return None if self.clamping is None else self.chosen_torque

    @property
    def settable(self) -> NewtonMetres | None:
        """The torque to put on a list; None where it is not to be trusted.

        Without a maker's figure a published one that a stud of unknown metal may not take is none.
        """
        return None if self.too_tight and not self.from_maker else self.torque

    @property
    def share_of_limit(self) -> Share:
        """The torque as a share of what the thread can take."""
        return self.chosen_torque / self.thread.max_torque

    @property
    def from_maker(self) -> bool:
        """Whether the torque is the maker's."""
        return self.maker_torque is not None

    @property
    def too_tight(self) -> bool:
        """Whether the torque is more than the thread can take."""
        return not at_most(self.chosen_torque, self.thread.max_torque)

    @property
    def above_published(self) -> bool:
        """Whether a maker's torque is over every published one."""
        most = self.published.high / (FAR_BELOW if self.published.one_source else 1)
        return self.maker_torque is not None and not at_most(self.maker_torque, most)

    @property
    def below_published(self) -> bool:
        """Whether a maker's torque is under every published one."""
        least = self.published.low * (FAR_BELOW if self.published.one_source else 1)
        return self.maker_torque is not None and not at_least(self.maker_torque, least)

    @property
    def far_below_published(self) -> bool:
        """Whether a maker's torque is far under every published one."""
        least = self.published.low * FAR_BELOW
        return self.maker_torque is not None and not at_least(self.maker_torque, least)

    @property
    def may_stretch(self) -> bool:
        """Whether with the least friction the thread passes its proof load."""
        clamping = self.clamping
        return clamping is not None and not at_most(clamping.preload_high, self.thread.proof_load)


def bolted_joint(
    *,
    stud: str,
    grade: Grade,
    condition: Condition,
    maker_torque: float | None,
    kind: JointKind,
    lugs: float,
    opened: Opened,
) -> Joint:
    """Return the torque of a joint on the `stud` of that name, and what the thread can take.

    `maker_torque` [N·m] governs; without one the first published torque is taken, for want of
    better, unless the stud's material is known and can't take it. Raises NotCovered for a stud
    that is not in the tables or a name that is not in an enumeration.
    """
    found = thread(stud=stud, grade=grade, condition=condition)
    share = found.factor / nut_factor(Condition.DRY).usual
    published = PublishedTorques(figures=published_torques(stud), share=share)
    torque = published.first.low * share if maker_torque is None else maker_torque
    weak = found.grade is not Grade.UNKNOWN and not at_most(torque, found.max_torque)
    withheld = weak and maker_torque is None
    gear = next((one for one in published.figures if one.kind == SWITCHGEAR), None)
    return Joint(
        kind=JointKind(kind),
        lugs=lugs,
        opened=Opened(opened),
        maker_torque=maker_torque,
        thread=found,
        published=published,
        chosen_torque=torque,
        clamping=None if withheld else _clamping(found, torque),
        switchgear=None if gear is None else _switchgear(found, gear.low * share),
        locking=locking_methods(kind=kind, opened=opened),
    )


def _clamping(found: Thread, torque: float) -> Clamping:
    diameter, grip = found.stud.diameter, found.grip
    preload = torque / (grip.usual * diameter)
    return Clamping(
        preload=preload,
        preload_low=torque / (grip.high * diameter),
        preload_high=torque / (grip.low * diameter),
        share=preload / found.proof_load,
    )


def _switchgear(found: Thread, torque: float) -> Switchgear:
    needs = found.grip.usual * found.stud.diameter * found.proof_load
    return Switchgear(torque=torque, share=torque / needs)

"""Bolted cable joints: torque, what the thread can take, and what the torque buys.

Torque figures for the same thread differ several-fold between makers. The maker's figure governs;
what stands here shows the spread and the strength of the stud.
"""

from dataclasses import dataclass
from functools import cache
from math import pi
from typing import Annotated

from calc.electrical.locking import JointKind, LockingMethod, Opened, locking_methods
from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Metres,
    NewtonMetres,
    Newtons,
    Number,
    Share,
    SquareMetres,
    StressPascals,
    Tag,
)

# Of the proof load, for a joint that is opened again: Shigley, as quoted in an article
PRELOAD_SHARE: Annotated[Share, Tag("share of a bolt's proof load used")] = 0.75
# Of the lowest published torque; where there is only one, of it or over it: our choice, no source
FAR_BELOW: Annotated[Share, Tag("share of the lowest published torque, far below it")] = 0.5
# ABYC E-11; FAA AC 43.13-1B, paragraph 11-174
MOST_LUGS: Annotated[Number, Tag("most lugs on one stud")] = 4.0
SWITCHGEAR = "switchgear, bolted busbar joint"  # a kind of joint in the table of torques


class Series(Enumeration):
    """The system a thread is of."""

    METRIC = "metric"
    INCH = "inch"


class Grade(Enumeration):
    """What a stud is made of: a class of steel or stainless steel, or a metal."""

    STEEL_8_8 = "8.8"
    A2_70 = "A2-70"
    BRASS = "brass"
    UNKNOWN = "unknown"
    STEEL_4_8 = "4.8"
    STEEL_10_9 = "10.9"
    A4_80 = "A4-80"
    COPPER = "copper"


STAINLESS_GRADES = (Grade.A2_70, Grade.A4_80)


class Condition(Enumeration):
    """How a thread is tightened."""

    DRY = "dry"
    LUBRICATED = "lubricated"


@dataclass(frozen=True, kw_only=True)
class Stud:
    """A thread: major `diameter` and `pitch` [m], `stress_area` [m²], printed proof loads [N].

    The area of a metric thread is the printed one (ISO 898-1), which is pi/4 (d - 0.9382 p)^2 to
    three digits.
    """

    name: str
    diameter: Metres
    pitch: Metres
    stress_area: SquareMetres
    proof_loads: tuple[tuple[Grade, float], ...]
    series: Series


def unified_stress_area(diameter: float, pitch: float) -> float:
    """Return the tensile stress area [m²] of a unified thread of major `diameter` and `pitch` [m].

    A = pi/4 (d - 0.9743 p)^2, halfway between pitch and minor diameter, as ASME B1.1 has it.
    """
    return pi / 4 * (diameter - 0.9743 * pitch) ** 2


@cache
def studs() -> tuple[Stud, ...]:
    """Return the studs of the tables, metric ones first."""
    return (*map(_metric, table("proof_load").rows), *map(_inch, table("inch_studs").rows))


def _metric(row: dict[str, str]) -> Stud:
    grades = (Grade.STEEL_4_8, Grade.STEEL_8_8, Grade.STEEL_10_9)
    columns = {grade: f"proof_load_{grade.replace('.', '_')}_n" for grade in grades}
    return Stud(
        name=row["stud"],
        diameter=float(row["diameter_mm"]) / 1000,
        pitch=float(row["pitch_mm"]) / 1000,
        stress_area=float(row["stress_area_mm2"]) * 1e-6,
        proof_loads=tuple((grade, float(row[column])) for grade, column in columns.items()),
        series=Series.METRIC,
    )


def _inch(row: dict[str, str]) -> Stud:
    diameter, pitch = float(row["diameter_mm"]) / 1000, 0.0254 / float(row["threads_per_in"])
    return Stud(
        name=row["stud"],
        diameter=diameter,
        pitch=pitch,
        stress_area=unified_stress_area(diameter, pitch),
        proof_loads=(),
        series=Series.INCH,
    )


def stud_named(name: str) -> Stud:
    """Return the stud called `name`. Raises NotCovered, which lists those of the tables."""
    for one in studs():
        if one.name == name:
            return one
    names = ", ".join(one.name for one in studs())
    raise NotCovered("stud", f"must be one of {names}, not {name!r}.")


@cache
def strength(grade: Grade) -> tuple[float, bool]:
    """Return proof stress [Pa] of a stud material and whether it is from memory only."""
    rows = {row["grade"]: row for row in table("material_strength").rows}
    row = rows[Grade(grade)]
    return float(row["proof_mpa"]) * 1e6, row["confidence"] == FROM_MEMORY


def proof_load(stud: Stud, grade: Grade) -> float:
    """Return the proof load [N]: as printed for a metric steel class, else area x proof stress."""
    printed = dict(stud.proof_loads).get(grade)
    return stud.stress_area * strength(grade)[0] if printed is None else printed


@dataclass(frozen=True, kw_only=True)
class NutFactor:
    """Published nut factors K of a kind of thread: lowest, usual and highest."""

    low: Number
    usual: Number
    high: Number


@cache
def nut_factor(condition: Condition, *, stainless: bool = False) -> NutFactor:
    """Return the nut factors of a steel thread, or of dry stainless on `stainless`.

    No usual value is published for dry stainless on stainless: there it is the middle of the range.
    """
    dry_stainless = stainless and Condition(condition) is Condition.DRY
    name = "stainless" if dry_stainless else str(condition)
    rows = {row["condition"]: row for row in table("nut_factor").rows}
    low, high = float(rows[name]["low"]), float(rows[name]["high"])
    usual = float(rows[name]["usual"] or (low + high) / 2)
    return NutFactor(low=low, usual=usual, high=high)


def tightening_torque(factor: float, diameter: float, preload: float) -> float:
    """Return T = K d F [N·m] for nut factor K, `diameter` [m] and `preload` [N].

    K gathers all friction, so the preload for one torque is known to about ±30 %.
    """
    return factor * diameter * preload


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
class Thread:
    """A stud of a `grade`, tightened in a `condition`, and what it can take.

    `max_torque` uses `preload_share` of the `proof_load`, by the usual nut factor of steel, which
    is `factor`. `grip` holds the nut factors for the clamping force of a torque.
    """

    stud: Stud
    grade: Grade
    condition: Condition
    proof_stress: StressPascals
    proof_load: Newtons
    preload_share: Share
    preload_limit: Newtons
    factor: Number
    max_torque: NewtonMetres
    grip: NutFactor

    @property
    def dry_stainless(self) -> bool:
        """Whether stainless rubs on stainless with nothing between."""
        return self.grade in STAINLESS_GRADES and self.condition is Condition.DRY

    @property
    def proof_printed(self) -> bool:
        """Whether the proof load is a printed one."""
        return self.grade in dict(self.stud.proof_loads)

    @property
    def inch(self) -> bool:
        """Whether it is an inch thread."""
        return self.stud.series is Series.INCH


def thread(*, stud: str, grade: Grade, condition: Condition) -> Thread:
    """Return what the `stud` of that name can take. Raises NotCovered."""
    one, grade, condition = stud_named(stud), Grade(grade), Condition(condition)
    factor = nut_factor(condition).usual
    limit = PRELOAD_SHARE * proof_load(one, grade)
    return Thread(
        stud=one,
        grade=grade,
        condition=condition,
        proof_stress=strength(grade)[0],
        proof_load=proof_load(one, grade),
        preload_share=PRELOAD_SHARE,
        preload_limit=limit,
        factor=factor,
        max_torque=tightening_torque(factor, one.diameter, limit),
        grip=nut_factor(condition, stainless=grade in STAINLESS_GRADES),
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

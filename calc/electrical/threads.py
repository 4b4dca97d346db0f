"""Threads of studs: their size, what their material can take, and how they rub.

In scope: coarse threads, metric and inch. The area of a thread and the strength of its material
give its proof load; the nut factor turns a clamping force into a torque.
"""

from dataclasses import dataclass
from functools import cache
from math import pi
from typing import Annotated

from calc.tables import FROM_MEMORY, table
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

"""Bolted cable joints: torque, what the thread bears, and what keeps the nut where it is.

Torque figures for the same thread differ several-fold between makers. The maker's figure governs;
what stands here shows the spread and the strength of the stud.
"""

from dataclasses import dataclass
from functools import cache
from math import pi

from calc.tables import table

METRIC, INCH = "metric", "inch"
PRELOAD_SHARE = 0.75  # of proof load, for a joint that is opened again (Shigley, as quoted)
MOST_LUGS = 4  # ABYC E-11; FAA AC 43.13-1B 11-174


@dataclass(frozen=True)
class Stud:
    """A thread: major `diameter` [m], `stress_area` [m²], class 8.8 proof load [N] if printed."""

    name: str
    diameter: float
    stress_area: float
    proof_load_8_8: float | None
    series: str


def unified_stress_area(diameter: float, threads_per_inch: float) -> float:
    """Return the tensile stress area [m²] of a unified thread of major `diameter` [m].

    A = pi/4 (d - 0.9743/n)^2 with n threads per inch, ASME B1.1 (from memory).
    """
    pitch = 0.0254 / threads_per_inch
    return pi / 4 * (diameter - 0.9743 * pitch) ** 2


@cache
def studs() -> tuple[Stud, ...]:
    """Return the studs of the tables, metric ones first."""
    metric = [
        Stud(
            row["stud"],
            float(row["diameter_mm"]) / 1000,
            float(row["stress_area_mm2"]) * 1e-6,
            float(row["proof_load_8_8_n"]),
            METRIC,
        )
        for row in table("proof_load").rows
    ]
    inch = [
        Stud(
            row["stud"],
            float(row["diameter_mm"]) / 1000,
            unified_stress_area(float(row["diameter_mm"]) / 1000, float(row["threads_per_in"])),
            None,
            INCH,
        )
        for row in table("inch_studs").rows
    ]
    return (*metric, *inch)


def stud(name: str) -> Stud:
    """Return the stud called `name`. Raises KeyError."""
    for one in studs():
        if one.name == name:
            return one
    raise KeyError(name)


@cache
def strength(grade: str) -> tuple[float, bool]:
    """Return proof stress [Pa] of a stud material and whether it is from memory only."""
    for row in table("material_strength").rows:
        if row["grade"] == grade:
            return float(row["proof_mpa"]) * 1e6, row["confidence"] == "from memory"
    raise KeyError(grade)


def proof_load(one: Stud, grade: str) -> float:
    """Return the proof load [N]: as printed for metric 8.8, else stress area x proof stress."""
    if grade == "8.8" and one.proof_load_8_8 is not None:
        return one.proof_load_8_8
    return one.stress_area * strength(grade)[0]


@cache
def nut_factor(condition: str) -> tuple[float, float, float]:
    """Return low, usual and high nut factor K for a 'dry', 'lubricated' or 'stainless' thread.

    No usual value is published for dry stainless on stainless: there it is the middle of the range.
    """
    for row in table("nut_factor").rows:
        if row["condition"] == condition:
            low, high = float(row["low"]), float(row["high"])
            return low, float(row["usual"] or (low + high) / 2), high
    raise KeyError(condition)


def tightening_torque(factor: float, diameter: float, preload: float) -> float:
    """Return T = K d F [N·m] for nut factor K, `diameter` [m] and `preload` [N].

    K gathers all friction, so the preload for one torque is known to about ±30 %.
    """
    return factor * diameter * preload


@dataclass(frozen=True)
class Published:
    """A published tightening torque, `low` to `high` [N·m], and what kind of joint it is for."""

    low: float
    high: float
    kind: str
    source: str
    from_memory: bool


@cache
def published_torques(name: str) -> tuple[Published, ...]:
    """Return every published torque for the stud `name`, in the table's order."""
    return tuple(
        Published(
            float(row["torque_low_nm"]),
            float(row["torque_high_nm"]),
            row["kind"],
            row["source"],
            row["confidence"] == "from memory",
        )
        for row in table("terminal_torque").rows
        if row["stud"] == name
    )

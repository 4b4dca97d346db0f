"""Bolted cable joints: torque, what the thread bears, and what the torque buys.

Torque figures for the same thread differ several-fold between makers. The maker's figure governs;
what stands here shows the spread and the strength of the stud.
"""

from dataclasses import dataclass
from functools import cache
from math import pi

from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most

METRIC, INCH = "metric", "inch"
DRY, LUBRICATED, STAINLESS = "dry", "lubricated", "stainless"
UNKNOWN = "unknown"
STAINLESS_GRADES = ("A2-70", "A4-80")
PRELOAD_SHARE = 0.75  # of proof load, for a joint that is opened again (Shigley, as quoted)
FAR = 0.5  # of the lowest published torque; where it is the only one, of it or over it: no source
MOST_LUGS = 4  # ABYC E-11; FAA AC 43.13-1B 11-174


@dataclass(frozen=True)
class Stud:
    """A thread: major `diameter` and `pitch` [m], `stress_area` [m²], printed proof loads [N].

    The area of a metric thread is the printed one (ISO 898-1), which is pi/4 (d - 0.9382 p)^2 to
    three digits.
    """

    name: str
    diameter: float
    pitch: float
    stress_area: float
    proof_loads: tuple[tuple[str, float], ...]
    series: str


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
    columns = {grade: f"proof_load_{grade.replace('.', '_')}_n" for grade in ("4.8", "8.8", "10.9")}
    return Stud(
        row["stud"],
        float(row["diameter_mm"]) / 1000,
        float(row["pitch_mm"]) / 1000,
        float(row["stress_area_mm2"]) * 1e-6,
        tuple((grade, float(row[column])) for grade, column in columns.items()),
        METRIC,
    )


def _inch(row: dict[str, str]) -> Stud:
    diameter, pitch = float(row["diameter_mm"]) / 1000, 0.0254 / float(row["threads_per_in"])
    return Stud(row["stud"], diameter, pitch, unified_stress_area(diameter, pitch), (), INCH)


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
            return float(row["proof_mpa"]) * 1e6, row["confidence"] == FROM_MEMORY
    raise KeyError(grade)


def proof_load(one: Stud, grade: str) -> float:
    """Return the proof load [N]: as printed for a metric steel class, else area x proof stress."""
    printed = dict(one.proof_loads).get(grade)
    return one.stress_area * strength(grade)[0] if printed is None else printed


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
            row["confidence"] == FROM_MEMORY,
        )
        for row in table("terminal_torque").rows
        if row["stud"] == name
    )


@dataclass(frozen=True, kw_only=True)
class Thread:
    """What is known of a joint besides its torque: the spread of the sources, what it bears.

    Torques in [N·m], `proof_stress` in [Pa], `stress_area` in [m²], `diameter`, `pitch` in [m].
    `factor` is the nut factor of the `ceiling`, the torque that uses `preload_share` of `proof`.
    `withheld` is a published torque that a stud of known material can't bear: none is given then.
    `too_tight`: over the ceiling. `beyond`, `below`: a maker's torque over or under all published;
    `too_loose`: far under. `may_stretch`: with the least friction the thread passes its proof load.
    """

    table_torque: float
    table_low: float
    table_high: float
    factor_share: float
    torque_low: float
    torque_high: float
    diameter: float
    pitch: float
    stress_area: float
    proof_stress: float
    proof: float
    preload_share: float
    preload_limit: float
    factor: float
    ceiling: float
    grip: float
    grip_low: float
    grip_high: float
    withheld: float | None
    from_maker: bool
    one_source: bool
    dry_stainless: bool
    torque_from_memory: bool
    proof_printed: bool
    inch: bool
    too_tight: bool
    too_loose: bool
    beyond: bool
    below: bool
    may_stretch: bool


@dataclass(frozen=True, kw_only=True)
class Joint(Thread):
    """A thread with its `torque` [N·m].

    `preload` [N] is what that buys by the nut factor `grip`, from `preload_low` to `preload_high`
    over the published factors; `clamp_share` is its part of the `proof` load.
    """

    torque: float
    preload: float
    preload_low: float
    preload_high: float
    clamp_share: float


def joint(*, stud: str, grade: str, condition: str, maker_torque: float | None) -> Joint:
    """Return the torque of a joint on `stud`, and what the thread bears.

    `grade` is its material, `condition` 'dry' or 'lubricated'. `maker_torque` [N·m] governs; else
    the first published torque is taken. Published torques are for dry threads: on an oiled one
    they come down with the nut factor, so that the clamping force stays. Raises KeyError.
    """
    thread = _stud(stud)
    published = published_torques(stud)
    factor = nut_factor(condition)[1]
    share = factor / nut_factor(DRY)[1]
    dry_stainless = grade in STAINLESS_GRADES and condition == DRY
    grip_low, grip, grip_high = nut_factor(STAINLESS if dry_stainless else condition)
    low, high = min(p.low for p in published), max(p.high for p in published)
    torque = published[0].low * share if maker_torque is None else maker_torque
    proof = proof_load(thread, grade)
    limit = PRELOAD_SHARE * proof
    ceiling = tightening_torque(factor, thread.diameter, limit)
    too_tight = not at_most(torque, ceiling)
    span = FAR if low == high else 1.0
    preload = torque / (grip * thread.diameter)
    preload_high = torque / (grip_low * thread.diameter)
    return Joint(
        table_torque=published[0].low,
        table_low=low,
        table_high=high,
        factor_share=share,
        torque=torque,
        torque_low=low * share,
        torque_high=high * share,
        diameter=thread.diameter,
        pitch=thread.pitch,
        stress_area=thread.stress_area,
        proof_stress=strength(grade)[0],
        proof=proof,
        preload_share=PRELOAD_SHARE,
        preload_limit=limit,
        factor=factor,
        ceiling=ceiling,
        grip=grip,
        grip_low=grip_low,
        grip_high=grip_high,
        preload=preload,
        preload_low=torque / (grip_high * thread.diameter),
        preload_high=preload_high,
        clamp_share=preload / proof,
        from_maker=maker_torque is not None,
        one_source=low == high,
        dry_stainless=dry_stainless,
        torque_from_memory=published[0].from_memory,
        proof_printed=grade in dict(thread.proof_loads),
        inch=thread.series == INCH,
        too_tight=too_tight,
        withheld=torque if too_tight and maker_torque is None and grade != UNKNOWN else None,
        beyond=maker_torque is not None and not at_most(torque, high * share / span),
        below=maker_torque is not None and not at_least(torque, low * share * span),
        too_loose=maker_torque is not None and torque < FAR * low * share,
        may_stretch=not at_most(preload_high, proof),
    )


_stud = stud  # `joint` takes a stud's name under the name of this function

"""The sum of joint-sheet: each of a list of joints, and which of them need a second look."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from calc.electrical import joints as sums
from calc.sheets.parts import joint_parts as parts
from calc.units.shown import NO_BREAK_SPACE
from calc.worksheet.rows import listed

UNKNOWN = sums.UNKNOWN

SHORT = {
    parts.SUPPLIED: "the parts that came with it",
    parts.CONICAL: f"conical{NO_BREAK_SPACE}washer",
    parts.METAL: f"metal{NO_BREAK_SPACE}locknut",
    parts.NYLON: f"nylon{NO_BREAK_SPACE}nut",
    parts.SERRATED: f"flange{NO_BREAK_SPACE}nut",
}
"""What may keep a joint tight, the best first, in words that fill two lines of a narrow column."""


@dataclass(frozen=True, kw_only=True)
class Row:
    """One joint of the sheet; `torque` [N·m] is None where there is none to be trusted."""

    name: str
    stud: str
    torque: float | None
    figure: str
    ceiling: float
    locking: str
    lugs: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class JointSheet:
    """The joints row by row, how many of them there are, and which need a second look.

    Torques in [N·m]. The `tightest` joint is the one whose torque comes nearest to what its thread
    bears, or goes furthest beyond; `preload_limit` [N] to `tightest_ceiling` are of that one.
    """

    schedule: tuple[Row, ...]
    joint_count: float
    with_maker: float
    without_maker: float
    torque_least: float | None
    torque_most: float | None
    tightest: str
    tightest_stud: str
    tightest_grade: str
    tightest_condition: str
    tightest_torque: float
    tightest_ceiling: float
    tightest_share: float
    diameter: float
    proof: float
    preload_share: float
    preload_limit: float
    factor: float
    crowded: str | None
    over: str | None
    no_figure: str | None
    perhaps_over: str | None
    slack: str | None
    excess: str | None
    stretching: str | None
    oiled: str | None
    borrowed: str | None
    unmarked: bool
    batteries: str | None
    fuses: str | None
    grounds: str | None
    dry_stainless: bool
    graded_inch: bool
    from_memory: bool


def run(*, vehicle: str | None, joints: tuple[Mapping[str, Any], ...]) -> JointSheet:
    """Return the torque of each of the `joints`, and which of them need a second look."""
    rows = [(one, _worked(one)) for one in joints]
    schedule = tuple(_row(one, worked) for one, worked in rows)
    torques = [row.torque for row in schedule if row.torque is not None]
    hardest, its = max(rows, key=lambda row: row[1].torque / row[1].ceiling)

    def those(test: Callable[[Mapping[str, Any], sums.Joint], bool]) -> str | None:
        return listed([one["name"] for one, worked in rows if test(one, worked)]) or None

    return JointSheet(
        schedule=schedule,
        joint_count=float(len(rows)),
        with_maker=float(sum(worked.from_maker for _, worked in rows)),
        without_maker=float(sum(not worked.from_maker for _, worked in rows)),
        torque_least=min(torques, default=None),
        torque_most=max(torques, default=None),
        tightest=hardest["name"],
        tightest_stud=hardest["stud"],
        tightest_grade=hardest["grade"],
        tightest_condition=hardest["condition"],
        tightest_torque=its.torque,
        tightest_ceiling=its.ceiling,
        tightest_share=its.torque / its.ceiling,
        diameter=its.diameter,
        proof=its.proof,
        preload_share=its.preload_share,
        preload_limit=its.preload_limit,
        factor=its.factor,
        crowded=those(lambda one, _: one["lugs"] > sums.MOST_LUGS),
        over=those(lambda one, w: w.too_tight and w.from_maker and one["grade"] != UNKNOWN),
        no_figure=those(lambda _, w: w.too_tight and not w.from_maker),
        perhaps_over=those(lambda one, w: w.too_tight and w.from_maker and one["grade"] == UNKNOWN),
        slack=those(lambda _, w: w.too_loose or w.below),
        excess=those(lambda _, w: w.beyond and not w.too_tight),
        stretching=those(lambda _, w: w.may_stretch and not w.too_tight),
        oiled=those(lambda one, w: w.from_maker and one["condition"] != sums.DRY),
        borrowed=those(lambda _, w: not w.from_maker),
        unmarked=any(one["grade"] == UNKNOWN for one in joints),
        dry_stainless=any(worked.dry_stainless for _, worked in rows),
        graded_inch=any(worked.inch and one["grade"] != UNKNOWN for one, worked in rows),
        batteries=those(lambda one, _: one["joint"] == parts.BATTERY),
        fuses=those(lambda one, _: one["joint"] == parts.FUSE),
        grounds=those(lambda one, _: one["joint"] == parts.CHASSIS),
        from_memory=any(w.torque_from_memory and not w.from_maker for _, w in rows),
    )


def _worked(one: Mapping[str, Any]) -> sums.Joint:
    names = ("stud", "grade", "condition", "maker_torque")
    return sums.joint(**{name: one[name] for name in names})


def _row(one: Mapping[str, Any], worked: sums.Joint) -> Row:
    return Row(
        name=one["name"],
        stud=one["stud"],
        torque=None if worked.too_tight and not worked.from_maker else worked.torque,
        figure="; ".join(_figure(one, worked)),
        ceiling=worked.ceiling,
        locking=_locking(one["joint"], int(one["lugs"])),
        lugs=one["lugs"],
    )


def _locking(joint: str, lugs: int) -> str:
    fits = {way.method for way in parts.locking(joint, parts.SELDOM, lugs) if way.fits}
    if parts.SUPPLIED in fits:
        return SHORT[parts.SUPPLIED]
    return " or ".join([short for method, short in SHORT.items() if method in fits][:2])


def _figure(one: Mapping[str, Any], worked: sums.Joint) -> Iterator[str]:
    """Yield where a row's torque comes from, and what is wrong with the row."""
    if worked.from_maker:
        yield "the maker"
    elif worked.too_tight:
        yield "ask the maker: the published one is too much for this thread"
    else:
        yield f"another part: {sums.published_torques(one['stud'])[0].kind.partition(',')[0]}"
    if not worked.from_maker and one["joint"] == parts.BATTERY:
        yield "none is meant for a battery"
    if worked.from_maker and worked.too_tight:
        yield "MORE THAN THE THREAD BEARS" if one["grade"] != UNKNOWN else "too much if the stud is of brass or mild steel"
    if worked.too_loose:
        yield "far below every published one"
    if worked.may_stretch and not worked.too_tight:
        yield "may stretch the thread"
    if one["lugs"] > sums.MOST_LUGS:
        yield "TOO MANY LUGS"

"""The printed list of joint-sheet: a row a joint, in words that fit narrow columns."""

from collections.abc import Iterator
from dataclasses import dataclass

from calc.electrical.joints import Joint
from calc.electrical.locking import Lock
from calc.electrical.rules import joints as judged
from calc.sheets.joints.joint_sheet.calculate import JointSheet, ListedJoint
from calc.units.shown import NO_BREAK_SPACE
from calc.units.si import NewtonMetres, Number

# What may keep a joint tight, the best first: in words that fill two lines of a narrow column.
_SHORT = {
    Lock.SUPPLIED: "the parts that came with it",
    Lock.CONICAL_WASHER: f"conical{NO_BREAK_SPACE}washer",
    Lock.METAL_NUT: f"metal{NO_BREAK_SPACE}locknut",
    Lock.NYLON_NUT: f"nylon{NO_BREAK_SPACE}nut",
    Lock.FLANGE_NUT: f"flange{NO_BREAK_SPACE}nut",
}


@dataclass(frozen=True, kw_only=True)
class Row:
    """One joint of the sheet; `torque` [N·m] is None where there is none to be trusted."""

    name: str
    stud: str
    torque: NewtonMetres | None
    figure: str
    locking: str
    lugs: Number

    def __str__(self) -> str:
        return self.name


def schedule(sheet: JointSheet) -> tuple[Row, ...]:
    """Return the printed rows."""
    return tuple(map(_row, sheet.rows))


def _row(one: ListedJoint) -> Row:
    return Row(
        name=one.name,
        stud=one.joint.thread.stud.name,
        torque=one.joint.settable,
        figure="; ".join(_figure(one.joint)),
        locking=_locking(one.joint),
        lugs=one.joint.lugs,
    )


def _locking(joint: Joint) -> str:
    fits = {way.lock for way in joint.locking if way.fits}
    if Lock.SUPPLIED in fits:
        return _SHORT[Lock.SUPPLIED]
    return " or ".join([short for lock, short in _SHORT.items() if lock in fits][:2])


def _figure(joint: Joint) -> Iterator[str]:
    """Yield where a row's torque comes from, and what is wrong with the row."""
    if joint.from_maker:
        yield "the maker"
    elif judged.NO_TORQUE.when(joint):
        yield "ask the maker: the published one is too much for this thread"
    elif judged.PUBLISHED_TOO_TIGHT_IF_WEAK.when(joint):
        yield "ask the maker: the published one is too much for brass or mild steel"
    else:
        yield f"another part: {joint.published.first.kind.partition(',')[0]}"
    if judged.NONE_FOR_BATTERY.when(joint):
        yield "none is meant for a battery"
    if judged.TOO_TIGHT.when(joint):
        yield "OVER THE THREAD'S LIMIT"
    if judged.OVER_ANY.when(joint):
        yield "OVER THE LIMIT OF ANY SUCH STUD"
    elif judged.TOO_TIGHT_IF_WEAK.when(joint):
        yield "too much for a stud of brass or mild steel"
    if judged.FAR_BELOW_PUBLISHED.when(joint):
        yield "far below every published one"
    if judged.MAY_STRETCH.when(joint) and not joint.too_tight:
        yield "may stretch the thread"
    if judged.TOO_MANY_LUGS.when(joint):
        yield "TOO MANY LUGS"

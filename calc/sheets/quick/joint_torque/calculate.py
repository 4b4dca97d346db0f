"""joint-torque from its fields: the joint of the book, and its parts in a reader's words."""

from calc.electrical.joints import Joint, Published, bolted_joint
from calc.electrical.locking import JointKind, Opened
from calc.electrical.threads import Condition, Grade
from calc.sheets.parts import joint_parts
from calc.sheets.parts.joint_parts import Locking


def calculate(
    *,
    stud: str,
    grade: Grade,
    maker_torque: float | None,
    condition: Condition,
    lugs: float,
    joint: JointKind,
    opened: Opened,
) -> Joint:
    """Return the torque of a `joint`, what its thread can take and what keeps it tight."""
    return bolted_joint(
        stud=stud,
        grade=grade,
        condition=condition,
        maker_torque=maker_torque,
        kind=joint,
        lugs=lugs,
        opened=opened,
    )


def suitable(joint: Joint) -> tuple[Locking, ...]:
    """Return what keeps the nut of this joint tight."""
    return tuple(way for way in joint_parts.locking(joint) if way.fits)


def unsuitable(joint: Joint) -> tuple[Locking, ...]:
    """Return what does not suit this joint, and why."""
    return tuple(way for way in joint_parts.locking(joint) if not way.fits)


def doubt(joint: Joint) -> str:
    """Return what speaks against the torque, in a few words that go on after it."""
    weakest = "brass or mild steel" if joint.thread.grade is Grade.UNKNOWN else "the thread"
    return f", more than {weakest} takes" if joint.too_tight else ""


def spread(joint: Joint) -> str:
    """Return every published torque of this stud, each with the part it is for."""
    return "; ".join(map(_figure, joint.published.figures))


def _figure(one: Published) -> str:
    span = f"{one.low:g}" if one.low == one.high else f"{one.low:g} to {one.high:g}"
    return f"{span} N·m {one.kind}"

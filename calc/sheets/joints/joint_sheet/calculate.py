"""What joint-sheet works out: each joint of a list, and the one whose thread is nearest its limit."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.electrical.joints import Joint, bolted_joint
from calc.electrical.locking import Opened
from calc.units.si import NewtonMetres, Number


@dataclass(frozen=True, kw_only=True)
class ListedJoint:
    """A joint of the list by its `name`."""

    name: str
    joint: Joint

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class JointSheet:
    """The joints of a list; the `tightest` uses most of what its thread can take, or goes over."""

    vehicle: str | None
    rows: tuple[ListedJoint, ...]
    tightest: ListedJoint

    @property
    def torques(self) -> tuple[float, ...]:
        """The torques [N·m] to set, where there is one to be trusted."""
        return tuple(t for row in self.rows if (t := row.joint.settable) is not None)

    @property
    def torque_least(self) -> NewtonMetres | None:
        """The smallest of them."""
        return min(self.torques, default=None)

    @property
    def torque_most(self) -> NewtonMetres | None:
        """The largest of them."""
        return max(self.torques, default=None)

    @property
    def joint_count(self) -> Number:
        """How many joints there are."""
        return float(len(self.rows))

    @property
    def with_maker(self) -> Number:
        """How many have a maker's torque."""
        return float(sum(row.joint.from_maker for row in self.rows))

    @property
    def without_maker(self) -> Number:
        """How many have none."""
        return self.joint_count - self.with_maker


def calculate(*, vehicle: str | None, joints: tuple[Mapping[str, Any], ...]) -> JointSheet:
    """Return each of the `joints`, given by the fields of joint-torque and a name."""
    rows = tuple(ListedJoint(name=one["name"], joint=_joint(one)) for one in joints)
    tightest = max(rows, key=lambda row: row.joint.share_of_limit)
    return JointSheet(vehicle=vehicle, rows=rows, tightest=tightest)


def _joint(one: Mapping[str, Any]) -> Joint:
    return bolted_joint(
        stud=one["stud"],
        grade=one["grade"],
        condition=one["condition"],
        maker_torque=one["maker_torque"],
        kind=one["joint"],
        lugs=one["lugs"],
        opened=Opened.SELDOM,
    )

"""What is asked of a bolted joint, alone or as a row of a list."""

# fmt: off
from calc.electrical.locking import JointKind
from calc.electrical.threads import Condition, Grade, studs
from calc.units.kinds import COUNT, TORQUE
from calc.worksheet.fields import Choice, Option, Quantity


def _stud_option(name: str, series: str) -> Option:
    bare = name.removesuffix(" in")
    return Option(name, name, series, aliases=(bare, f'{bare}"', name.replace("No. ", "#")))


STUD = Choice(
    id="stud", label="Stud", default="M8", example="like M8 or 5/16 in",
    options=tuple(_stud_option(one.name, one.series) for one in studs()),
    hint="Measured or read from the part. An M8 nut jams on 5/16 in.",
)
MAKER_TORQUE = Quantity(
    id="maker_torque", label="Maker's torque", symbol="T_m", kinds=(TORQUE,), optional=True, low="0.1 N·m", high="300 N·m",
    example="12 N·m", hint="From the part's data sheet. It has priority. Empty: none.",
)
GRADE = Choice(
    id="grade", label="Stud material", of=Grade, default=Grade.UNKNOWN,
    options=(
        Option(Grade.STEEL_8_8, "steel 8.8"), Option(Grade.A2_70, "stainless A2-70"), Option(Grade.BRASS), Option(Grade.UNKNOWN, "not known"),
        Option(Grade.STEEL_4_8, "steel 4.8"), Option(Grade.STEEL_10_9, "steel 10.9"), Option(Grade.A4_80, "stainless A4-80"), Option(Grade.COPPER),
    ),
    hint="Marked on the head of a bolt; a plain stud seldom says.",
)
CONDITION = Choice(
    id="condition", label="Thread", of=Condition, default=Condition.DRY,
    options=(Option(Condition.DRY), Option(Condition.LUBRICATED, aliases=("oiled", "greased"))),
    hint="Oil, grease or anti-seize means lubricated.",
)
LUGS = Quantity(
    id="lugs", label="Lugs on the stud", symbol="n", kinds=(COUNT,), default="1", low="1", high="12",
    hint="Ring terminals that share the stud.",
)
KIND = Choice(
    id="joint", label="Kind of joint", of=JointKind, default=JointKind.BUSBAR,
    options=(
        Option(JointKind.BUSBAR, "busbar or stud", aliases=("busbar", "stud")),
        Option(JointKind.BATTERY, "battery terminal", aliases=("battery", "battery post")),
        Option(JointKind.FUSE, "fuse or breaker", aliases=("fuse holder or breaker", "fuse holder", "breaker", "fuse")),
        Option(JointKind.CHASSIS, "chassis ground", aliases=("chassis", "ground", "earth")),
    ),
    hint="It decides what may lock the nut, and what to check.",
)
JOINT_FIELDS = (STUD, MAKER_TORQUE, GRADE, CONDITION, LUGS, KIND)

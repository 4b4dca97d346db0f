"""The worksheets in reading order. Registration is this tuple and nothing else."""

from calc.sheets import fuse_choice, joint_torque, runtime, watts_to_amps, wire_drop
from calc.worksheet import Worksheet

WORKSHEETS: tuple[Worksheet, ...] = (
    watts_to_amps.WORKSHEET,
    runtime.WORKSHEET,
    wire_drop.WORKSHEET,
    fuse_choice.WORKSHEET,
    joint_torque.WORKSHEET,
)

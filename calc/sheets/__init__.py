"""The worksheets in reading order, by chapter. Registration is this tuple and nothing else."""

from dataclasses import dataclass

from calc.sheets import fuse_choice, joint_torque, runtime, watts_to_amps, wire_drop
from calc.worksheet import Worksheet


@dataclass(frozen=True)
class Chapter:
    """Worksheets that belong together, under the title by which pages group them."""

    title: str
    sheets: tuple[Worksheet, ...]


CHAPTERS: tuple[Chapter, ...] = (
    Chapter(
        "Quick checks",
        (
            watts_to_amps.WORKSHEET,
            runtime.WORKSHEET,
            wire_drop.WORKSHEET,
            fuse_choice.WORKSHEET,
            joint_torque.WORKSHEET,
        ),
    ),
)

WORKSHEETS: tuple[Worksheet, ...] = tuple(sheet for part in CHAPTERS for sheet in part.sheets)

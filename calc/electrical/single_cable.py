"""Whether one cable can carry a current at all: the limit of what is laid in a van.

In scope: the thickest cable of the boats' table, 33 CFR 183.425, with its hottest insulation.
"""

from dataclasses import dataclass

from calc.electrical.fuses import CONTINUOUS, rated_for, standard_rating
from calc.electrical.sizing import thickest_ampacity
from calc.units.compare import at_most
from calc.units.si import Amperes, Volts


@dataclass(frozen=True, kw_only=True)
class SingleCable:
    """A `current` that goes on for hours, and what the `thickest` cable can carry.

    `max_voltage` is the highest on the circuit, that of the bank while it charges. `fits` tells
    whether the thickest cable carries the current behind a standard fuse.
    """

    current: Amperes
    max_voltage: Volts
    thickest: Amperes
    fits: bool


def single_cable(*, current: float, max_voltage: float) -> SingleCable:
    """Return whether one cable can carry `current` [A] for hours behind a standard fuse.

    NEC 210.20(A) for the margin above the load. Where no fuse family is rated for `max_voltage`
    [V], only the cable is asked.
    """
    thickest = thickest_ampacity()
    need, families = CONTINUOUS * current, rated_for(max_voltage)
    fits = at_most(need, thickest)
    if families:
        fits = standard_rating(need, thickest, families) is not None
    return SingleCable(current=current, max_voltage=max_voltage, thickest=thickest, fits=fits)

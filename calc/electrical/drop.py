"""Voltage lost along a two-conductor direct-current run.

In scope: steady direct current, both conductors alike and at one temperature.
Out of scope: joints, fuses and switches on the way, and whether the conductor bears the current
(`calc.electrical.ampacity`).
"""

from calc.units.compare import at_most


def loop_resistance(length: float, per_length: float) -> float:
    """Return the resistance [ohm] of a run of one-way `length` [m], out and back.

    `per_length` [ohm/m] is that of one conductor at its working temperature.
    """
    return 2 * length * per_length


def longest_run(current: float, per_length: float, allowed: float) -> float:
    """Return the longest one-way run [m] that loses no more than `allowed` [V] at `current` [A]."""
    return allowed / (2 * current * per_length)


def largest_current(*, allowed: float, length: float, per_length: float) -> float:
    """Return the largest current [A] that loses no more than `allowed` [V] on a run.

    `length` [m] is one way and `per_length` [ohm/m] that of one conductor at its working
    temperature, both above nought: I = U / (2 L r), Ohm's law over the loop. The drop's limit
    only: what the conductor bears is another figure (`calc.electrical.ampacity`).
    """
    return allowed / loop_resistance(length, per_length)


def thinnest_within[Size](
    sizes: tuple[tuple[Size, float], ...], length: float, current: float, allowed: float
) -> Size | None:
    """Return the first of `sizes` (size, ohm/m) that loses at most `allowed` [V], or None.

    `sizes` come thinnest first; `length` [m] is one way.
    """
    for size, per_length in sizes:
        if at_most(current * loop_resistance(length, per_length), allowed):
            return size
    return None

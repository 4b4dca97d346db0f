"""What a contact must be rated for, and what a relay's coil must be left with.

In scope: one contact that makes and breaks a steady load, and a coil fed over a run from a bank.
Out of scope: breaking a short circuit (a fuse does that), and d.c. above the published table.
"""

from functools import cache

from calc.tables import table
from calc.units.compare import at_most

AC, DC = "AC", "DC"
PULL_IN_MARGIN = 1.1  # of the least pull-in voltage: a state department's rule for its vehicles
CONTINUOUS = 1.25  # NEC 210.20(A): rated 125 % of what stays on for hours


@cache
def _rows() -> tuple[tuple[str, float, str, float], ...]:
    return tuple(
        (row["kind"], float(row["up_to_v"]), row["load"], float(row["factor"]))
        for row in table("switch_derating").rows
    )


@cache
def loads() -> tuple[str, ...]:
    """Return the kinds of load of the table."""
    return tuple(dict.fromkeys(load for _, _, load, _ in _rows()))


def highest_dc() -> float:
    """Return the highest d.c. voltage [V] that the table covers."""
    return max(volts for kind, volts, _, _ in _rows() if kind == DC)


def derating(*, kind: str, voltage: float, load: str) -> float | None:
    """Return the factor of table 11-4 of AC 43.13-1B for a `load`, or None where none is printed.

    `kind` is AC or DC, `voltage` [V] the highest on the circuit. None above 32 V d.c.: an arc there
    does not go out by itself, and only the maker's d.c. rating at that voltage tells.
    """
    for row_kind, up_to, row_load, factor in _rows():
        if (row_kind, row_load) == (kind, load) and at_most(voltage, up_to):
            return factor
    return None


def contact_rating(*, current: float, factor: float) -> float:
    """Return the least rating [A] of a contact for a steady `current` [A].

    The larger of the load's `factor` and the margin of 125 % for hours: both speak of the same
    heat, so they are not multiplied.
    """
    return current * max(factor, CONTINUOUS)


def coil_allowance(*, voltage: float, lowest: float, pull_in: float) -> float:
    """Return the drop [V] that a coil's run may have: U (lowest - 1.1 pull_in); below 0 none.

    `voltage` [V] is the coil's nominal; `lowest` the share of it that the bank sags to and
    `pull_in` the share at which the relay surely closes, both [0..1].
    """
    return voltage * (lowest - PULL_IN_MARGIN * pull_in)

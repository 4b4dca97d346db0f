"""How much voltage a circuit may lose, by boat practice: there is no rule for vans.

The table `drop_limits` is the one home of these limits. Its other rows, those of other codes, are
for comparison.
"""

from functools import cache

from calc.tables import table
from calc.units.covered import Enumeration


class Duty(Enumeration):
    """What a circuit is for, as ABYC E-11 11.14.2.6 parts them by the drop that they may have."""

    CRITICAL = "critical"  # panel feeders, electronics, and whatever safety hangs on
    OTHER = "other"  # other lighting, and circuits that are not critical


@cache
def drop_limit(duty: Duty) -> float:
    """Return the most that a circuit may lose, as a share of the system voltage.

    Source: ABYC E-11 11.14.2.6, by the table `drop_limits`.
    """
    rows = [row for row in table("drop_limits").rows if row["duty"] == Duty(duty)]
    return min(float(row["limit_percent"]) for row in rows) / 100


def limit_text(duty: Duty) -> str:
    """Return a limit as it is written: `3 %`."""
    return f"{drop_limit(duty) * 100:g} %"

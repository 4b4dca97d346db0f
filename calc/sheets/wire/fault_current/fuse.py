"""What fault-current finds out about the fuse that guards the run."""

from typing import Any

from calc.electrical import clearing, fuses
from calc.electrical import short_circuit as faults
from calc.electrical.opening import Fuse, Trust, i2t_tells
from calc.sheets.parts.fuse_families import NOT_NAMED
from calc.units.compare import at_least, at_most

CLOSE = 1.1  # no source is known better than to a tenth; common practice, no source
NO_FUSE = "no fuse named"


def what_the_fuse_does(
    rating: float | None, family_name: str, high: float, low: float, bears_low: float, ampacity: float, energy: float,
    voltage: float, opening_time: float | None, let_through: float | None,
) -> dict[str, Any]:
    """Return what hangs on the fuse, by name: it stands at the source and guards the whole run."""
    fuse = Fuse(None if family_name == NOT_NAMED else family_name, rating) if rating is not None else None
    family = fuses.named(family_name)
    breaks = family.interrupting(voltage) if family else None
    cleared = (
        clearing.opens_in_time(
            fuse=fuse, low=low, high=high, bears_low=bears_low, ampacity=ampacity, energy=energy,
            opening_time=opening_time, let_through=let_through,
        )
        if fuse is not None
        else None
    )
    asked = rating is not None
    breaking = breaks if asked and breaks is not None else faults.interrupting_class(high)
    return {
        "breaks": breaks if asked else None,
        "opens": cleared.words if cleared else NO_FUSE,
        "fuse_time": cleared.latest if cleared else None,
        "by_standard": cleared is not None and cleared.trust == Trust.STANDARD,
        "from_memory": cleared is not None and cleared.trust == Trust.MEMORY,
        "typed": cleared is not None and cleared.typed,
        "arc_left_out": cleared is not None and cleared.arc_left_out,
        "other_fault": fuse is not None and let_through is not None and not i2t_tells(
            fuse=fuse, let_through=let_through, current=high
        ),
        "version": family.marked_higher(voltage) if asked and family is not None else None,
        "close": breaking is not None and at_least(breaking, high) and not at_most(CLOSE * high, breaking),
        "voltage_too_low": asked and family is not None and breaks is None,
        "cannot_break": asked and breaks is not None and not at_least(breaks, high),
        "unrated": asked and family is None,
        "not_made": asked and family is not None and rating not in family.ratings,
        "breaks_from_memory": asked and family is not None and family.from_memory,
    }

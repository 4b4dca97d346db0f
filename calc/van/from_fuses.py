"""What the fuses of a van say for worksheets: the ends of a run, the fuse ahead, the shorts."""

from __future__ import annotations

from calc.units.si import Amperes
from calc.van.bank_source import other_battery
from calc.van.came import Came, amps, key_of, unknown
from calc.van.feeding import feeding
from calc.van.from_bank import house
from calc.van.paths import CONVERTS, way
from calc.van.record import Part, Van
from calc.van.supply import loop_of, supply
from calc.van.values import State

FAR_END = {
    "both-ends": "both-ends",
    "starter-battery-only": "this-end-only",
    "house-bank-only": "this-end-only",
    "no-fuse": "this-end-only",
}
NOT_NAMED = "not-named"
TWO_BATTERIES = ("alternator",)  # kinds of runs with a battery at each end


def far_end(van: Van, part: Part | None) -> Came | None:
    """What stands at the far end of a run: another battery, fused there or not, or a load."""
    if part is None or part.kind.id not in TWO_BATTERIES:
        return None
    found = key_of(part, "fused")
    return Came(FAR_END.get(part.choice("fused") or "", ""), found.place) if found else None


def upstream(van: Van, part: Part | None) -> Part | None:
    """Return the nearest run before a run that has a fuse, else the only battery; None if neither.

    Of several batteries side by side no fuse carries all of the current, whether it stands at a
    post or in a cable of one's own, and one ahead of a converter carries another current.
    """
    there = way(van, part) if part is not None else None
    if part is None or there is None or other_battery(van, part) is not None:
        return None
    for run in there.runs:
        if run.kind.id in CONVERTS:
            return None
        if run["fuse"].state is not State.NONE:
            # Where another way is left without it, each carries a part.
            return None if feeding(van, run, there.nodes[0], None) else run
    found = house(van)
    alone = len(found) == 1 and found[0].si("units") == 1
    return found[0] if alone and found[0]["fuse"].state is not State.NONE else None


def upstream_fuse(van: Van, part: Part | None) -> Came | None:
    """The fuse before that of a run."""
    found = upstream(van, part)
    return key_of(found, "fuse") if found is not None else None


def _family(part: Part) -> Came | None:
    """Return the family of a fuse, not known where it is not named."""
    found = key_of(part, "fuse_family")
    named = part.choice("fuse_family") != NOT_NAMED
    return found if found is None or named else unknown(found.place)


def own_family(van: Van, part: Part | None) -> Came | None:
    """The family of the fuse of a run."""
    return _family(part) if part is not None else None


def upstream_family(van: Van, part: Part | None) -> Came | None:
    """The family of the fuse before that of a run."""
    found = upstream(van, part)
    return _family(found) if found is not None else None


def upstream_fuse_voltage(van: Van, part: Part | None) -> Came | None:
    """The voltage printed on the fuse before that of a run."""
    found = upstream(van, part)
    return key_of(found, "fuse_voltage") if found is not None else None


def highest_fault(van: Van, part: Part) -> Amperes | Came:
    """Return the highest short [A] that the fuse of a run must break: at the fuse itself."""
    found = supply(van, part)
    return found if isinstance(found, Came) else found.bank.voltage / found.least


def lowest_fault(van: Van, part: Part) -> Amperes | Came:
    """Return the lowest short [A] at the far end of a run, which its fuse must clear."""
    found = supply(van, part)
    if isinstance(found, Came):
        return found
    own = loop_of(van, part)
    if isinstance(own, Came):
        return own
    bank = found.bank
    return bank.empty / (found.worn + own.hot + own.joints * (1 + bank.ageing))


def fault_high(van: Van, part: Part | None) -> Came | None:
    """The highest short at the fuse of a run."""
    if part is None:
        return None
    found = highest_fault(van, part)
    return found if isinstance(found, Came) else amps(found, part.place)


def fault_low(van: Van, part: Part | None) -> Came | None:
    """The lowest short at the far end of a run."""
    if part is None:
        return None
    found = lowest_fault(van, part)
    return found if isinstance(found, Came) else amps(found, part.place)

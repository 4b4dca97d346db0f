"""What stands against a wire or its fuse though its rule set has no word on it.

A cable may bear no marking, a bundle heats itself at any voltage, copper may be hotter than what it
is joined to. The warmth of copper at a load is our estimate, from the square of the current.
"""

from calc.electrical.ampacity import LAW, NEC, Ampacity, NotCovered, ampacity, crowding
from calc.electrical.conductors import AWG, conductor, copper_area

THICKEST = "4/0 AWG"  # the last row of every rule set
UNMARKED = 60.0  # °C, what a cable is taken for that bears no marking
USUAL_INSULATION = 105.0  # °C, the hottest that is on sale as cable for vehicles and boats
HOT_COPPER = 90.0  # °C, what lugs and fuse holders are made for: common practice, no source
HOT_AIR = 50.0  # °C, the hottest air that the boats' rules have figures for
WARM_AIR = 40.0  # °C, from which makers of fuses give a lower rating: common practice, no source


def beyond_rows(name: str, gauge_reading: str = AWG) -> bool:
    """Return whether the conductor `name` is thicker than the last row of every rule set."""
    return copper_area(name, gauge_reading) > conductor(THICKEST).area * 1.01


def uncounted_bundle(rule_set: str, bears: Ampacity, together: int) -> bool:
    """Return whether `together` loaded conductors are a bundle that `rule_set` leaves out."""
    return rule_set == LAW and bears.bundle_factor == 1 and together > 2


def unmarked(
    *,
    name: str,
    surroundings: str,
    bundled: int,
    ambient: float,
    rule_set: str,
    gauge_reading: str,
) -> float | None:
    """Return what `name` would bear [A] if its insulation were good for 60 °C only.

    By 33 CFR, whose table has that column, the bundle counted at any voltage. None under NEC, which
    has its own say on it, and where the air (`ambient` [°C]) leaves nothing to bear.
    """
    if rule_set == NEC:
        return None
    try:
        found = ampacity(
            name=name,
            insulation=UNMARKED,
            surroundings=surroundings,
            bundled=2,
            ambient=ambient,
            voltage=1.0,
            rule_set=LAW,
            gauge_reading=gauge_reading,
        )
    except NotCovered:
        return None
    return found.ampacity * crowding(bundled)


def copper_rise(*, insulation: float, air: float, current: float, bears: float) -> float:
    """Return how much warmer [K] than the `air` [°C] copper is at `current` [A].

    Heat goes with the square of the current; at what it `bears` [A] the copper is as hot as its
    `insulation` [°C] may be. Common practice, no source.
    """
    return (insulation - air) * (current / bears) ** 2

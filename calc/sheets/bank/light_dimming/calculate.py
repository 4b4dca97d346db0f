"""light-dimming from its fields: the domain's function as it stands, and the way on from it."""

from calc.energy.dimming import Dimming, dimming
from calc.units.compare import at_least
from calc.worksheet.next_steps import Move

MOST_FOR_A_WIRE = 2000.0  # A, what the sheet of a wire takes

calculate = dimming


def onward(found: Dimming) -> tuple[Move, ...]:
    """Return the way on to the wire of the dimmer."""
    current, voltage = found.charging_current, found.lights.voltage
    if not at_least(MOST_FOR_A_WIRE, current):
        return ()
    texts = ("current", f"{current:.6g} A"), ("voltage", f"{voltage:.6g} V")
    return (Move("What the wire to it loses", texts, "wire-drop"),)

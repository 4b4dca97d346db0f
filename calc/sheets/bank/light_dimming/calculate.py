"""light-dimming from its fields: the domain's function as it stands, and the way on from it."""

from calc.energy.dimming import Dimming, dimming
from calc.units.compare import at_least
from calc.worksheet.next_steps import NextStep

MOST_FOR_A_WIRE = 2000.0  # A, what the sheet of a wire takes

calculate = dimming


def onward(found: Dimming) -> tuple[NextStep, ...]:
    """Return the way on to the wire of the dimmer."""
    current, voltage = found.charging_current, found.lights.voltage
    if not at_least(MOST_FOR_A_WIRE, current):
        return ()
    texts = ("current", f"{current:.6g} A"), ("voltage", f"{voltage:.6g} V")
    return (NextStep("Voltage drop in its wire", texts, "wire-drop"),)

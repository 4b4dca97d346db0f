"""water-heater from its fields: the book's function as it stands, and the way on from it."""

from calc.comfort.water import HotWater, WaterHeat, hot_water
from calc.units.compare import at_least
from calc.worksheet.next_steps import NextStep

calculate = hot_water


def onward(found: HotWater) -> tuple[NextStep, ...] | None:
    """Return the way on to an element's switch; behind an inverter its voltage is not known."""
    if not found.electric:
        return None
    straight = at_least(found.tank.efficiency, 1.0)
    on_bank = found.way is WaterHeat.BANK
    texts = [("power", f"{found.power:.6g} W"), ("kind", "DC" if on_bank and straight else "AC")]
    if straight or not on_bank:
        texts.append(("voltage", f"{found.voltage:.6g} V"))
    return (NextStep("A switch within reach for it", tuple(texts), "remote-switch"),)

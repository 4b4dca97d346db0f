"""shore-charge from its fields: the book's function as it stands, and the way on from it."""

from typing import Annotated

from calc.energy.shore import ShoreCharge, shore_charge
from calc.energy.voltages import cells
from calc.units.constants import HOUR
from calc.units.si import Tag, Volts
from calc.worksheet.next_steps import NextStep

# Common practice, no source
_CHARGED: Annotated[Volts, Tag("voltage of a lead-acid cell under charge")] = 2.3

calculate = shore_charge


def onward(found: ShoreCharge) -> tuple[NextStep, ...] | None:
    """Return where a lead-acid bank's gas is worked out; LFP makes none in normal charging."""
    bank = found.bank
    if not bank.lead_acid:
        return None
    block = cells(bank.chemistry)
    in_series = block * max(1, round(found.voltage.voltage / (block * _CHARGED)))
    texts = (
        ("chemistry", str(bank.chemistry)),
        ("capacity", f"{bank.capacity / HOUR:.6g} A·h"),
        ("cells", f"{in_series}"),
    )
    return (NextStep("Air for the gas it makes", texts, "battery-air"),)

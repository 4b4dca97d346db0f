"""shore-charge from its fields: the book's function as it stands, and the way on from it."""

from typing import Annotated

from calc.energy.shore import ShoreCharge, shore_charge
from calc.energy.voltages import cells
from calc.units.constants import DAY, HOUR
from calc.units.si import Tag, Volts
from calc.worksheet.next_steps import NextStep

# Common practice, no source
_CHARGED: Annotated[Volts, Tag("voltage of a lead-acid cell under charge")] = 2.3

calculate = shore_charge


def onward(found: ShoreCharge) -> tuple[NextStep, ...]:
    """Return the week with this charger, and where a lead-acid bank's gas is worked out.

    LFP makes none in normal charging.
    """
    ways = [_week(found)]
    bank = found.bank
    if bank.lead_acid:
        block = cells(bank.chemistry)
        in_series = block * max(1, round(found.voltage.voltage / (block * _CHARGED)))
        texts = (
            ("chemistry", str(bank.chemistry)),
            ("capacity", f"{bank.capacity / HOUR:.6g} Ah"),
            ("cells", f"{in_series}"),
        )
        ways.insert(0, NextStep("Ventilation for its gas", texts, "battery-air"))
    return tuple(ways)


def _week(found: ShoreCharge) -> NextStep:
    """Return the way on to a week with this charger, its hours on shore power at most a day's."""
    bank, night = found.bank, found.night
    texts = [
        ("shore_charger", f"{found.load.charger.current:.6g} A"),
        ("chemistry", str(bank.chemistry)),
        ("capacity", f"{bank.capacity / HOUR:.6g} Ah"),
        ("temperature", f"{bank.temperature:.6g} °C"),
    ]
    if night is not None:
        texts.append(("shore_hours", f"{min(night.duration, DAY) / HOUR:.6g} h"))
    return NextStep("A week with this charger", tuple(texts), "week-ahead")

"""appliance-route from its fields: the domain's function as it stands, and the ways on from it."""

from typing import Annotated

from calc.energy.appliances import Routes, routes
from calc.sheets.parts.fields import DIRECT, INVERTER
from calc.units.constants import HOUR
from calc.units.si import Share, Tag
from calc.worksheet.next_steps import NextStep

# Of the bank's voltage, taken as its lowest on the way on: common practice, no source
SAGS: Annotated[Share, Tag("sag of a bank under an inverter")] = 0.9

calculate = routes


def onward(found: Routes) -> tuple[NextStep, ...]:
    """Return the ways on: a week with either appliance alone, and the inverter it would need."""
    household, voltage = found.household, found.voltage
    whole, taken = f"{max(household.power, 1):.6g} W", household.power * household.running
    inverter = (
        ("running", whole),
        *((("motor", whole),) if found.keeps_cold else ()),
        ("surge", whole),
        ("efficiency", f"{found.efficiency * 100:.6g} %"),
        ("idle", f"{found.idle:.6g} W"),
        ("lowest_voltage", f"{SAGS * voltage:.6g} V"),
        ("voltage", f"{voltage:.6g} V"),
        ("hours_on", f"{found.from_bank / HOUR:.6g} h"),
        ("taken", f"{max(1, taken * household.banked / HOUR):.6g} Wh"),
    )
    return (
        _week("battery-voltage", DIRECT, found, found.direct.power, found.direct.running),
        _week("household", INVERTER, found, household.power, household.running),
        NextStep("The inverter it needs", inverter, "inverter-size"),
    )


def _week(name: str, route: str, found: Routes, power: float, running: float) -> NextStep:
    """Return the way on to a week with this appliance alone; the reader adds what else is aboard."""
    texts = (
        ("loads", f"appliance:{power:.6g} W:{running / HOUR:.6g} h:all:{route}"),
        ("chemistry", str(found.chemistry)),
        ("voltage", f"{found.voltage:.6g} V"),
        ("idle", f"{found.idle:.6g} W"),
        ("efficiency", f"{found.efficiency * 100:.6g} %"),
        ("inverter_on", "day-and-night"),  # an appliance at any hour starts by itself
    )
    return NextStep(f"A week with the {name} one", texts, "week-ahead")

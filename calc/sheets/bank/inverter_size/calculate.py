"""inverter-size from its fields: the domain's function as it stands, and the ways on from it."""

from calc.energy.inverter import InverterNeed, Letter, Weight, code_letters, inverter_need, weights
from calc.sheets.parts.fields import INVERTER
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.worksheet.next_steps import NextStep

LEAST_CURRENT = 0.01  # A, what the sheets of wires take
LEAST_HEAT, MOST_HEAT = 1.0, 5000.0  # W, what the sheet of a bay takes

calculate = inverter_need


def letters(_: InverterNeed) -> tuple[Letter, ...]:
    """Return the table of code letters."""
    return code_letters()


def weightings(_: InverterNeed) -> tuple[Weight, ...]:
    """Return the table of weightings."""
    return weights()


def onward(found: InverterNeed) -> tuple[NextStep, ...]:
    """Return what follows from a current that cables carry: wire, bank, heat."""
    load, current, cables = found.load, found.current, found.single_cable.cables
    if cables is None or not at_least(current, LEAST_CURRENT):
        return ()
    wire: tuple[tuple[str, str], ...] = (
        ("current", f"{current:.6g} A"),
        ("voltage", f"{load.voltage:.6g} V"),  # fuses are rated for what charges the bank
    )
    if cables > 1:
        wire += (("parallel", f"{cables:.0f}"),)
    bank: tuple[tuple[str, str], ...] = (
        ("load", f"{load.running:.6g} W"),
        ("voltage", f"{load.voltage:.6g} V"),
        ("route", INVERTER),
        ("efficiency", f"{load.efficiency * 100:.6g} %"),
    )
    if load.capacity is not None:
        bank += (("capacity", f"{load.capacity / HOUR:.6g} Ah"), ("chemistry", load.chemistry))
    moves = [
        NextStep("Its cable", wire, "wire-size"),
        NextStep("How long the bank runs it", bank, "runtime"),
    ]
    if at_least(found.heat, LEAST_HEAT) and at_most(found.heat, MOST_HEAT):
        heat = (("given_heat", f"{found.heat:.6g} W"),)
        moves.append(NextStep("Airflow for its heat", heat, "enclosure-airflow"))
    return tuple(moves)

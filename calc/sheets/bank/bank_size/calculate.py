"""bank-size from its fields: the need, and the bank that gives it."""

from calc.energy.bank_size import BankNeed, BankSize, bank_size
from calc.energy.battery import Chemistry


def calculate(
    *,
    daily_energy: float,
    days: float,
    chemistry: Chemistry,
    usable: float,
    voltage: float,
    temperature: float,
    ageing: float,
    unit_capacity: float,
    heaviest: float | None,
    unit_current: float | None,
    efficiency: float,
) -> BankSize:
    """Return the bank that gives `daily_energy` [J] a day for `days` [s] without a charge."""
    need = BankNeed(
        daily_energy=daily_energy,
        days=days,
        voltage=voltage,
        ageing=ageing,
        unit_capacity=unit_capacity,
        heaviest=heaviest,
        unit_current=unit_current,
        efficiency=efficiency,
    )
    return bank_size(need, chemistry=chemistry, usable=usable, temperature=temperature)

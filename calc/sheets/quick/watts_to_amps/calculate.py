"""watts-to-amps from its fields: what the load takes from the bank."""

from calc.energy.loads import Consumption, LoadType, Route, consumption


def calculate(
    *,
    power: float,
    voltage: float,
    route: Route,
    efficiency: float,
    hours: float,
    load_type: LoadType,
) -> Consumption:
    """Return what `power` [W] for `hours` [s] takes from a bank at `voltage` [V]."""
    return consumption(
        power=power,
        voltage=voltage,
        route=route,
        efficiency=efficiency,
        time=hours,
        load_type=load_type,
    )

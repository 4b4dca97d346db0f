"""watts-to-amps from its fields: what the load takes from the bank."""

from calc.energy.battery import Chemistry
from calc.energy.draw import Job, job
from calc.energy.loads import LoadType, Route


def calculate(
    *,
    power: float,
    voltage: float,
    route: Route,
    efficiency: float,
    hours: float,
    load_type: LoadType,
    capacity: float | None,
    chemistry: Chemistry,
    usable: float,
) -> Job:
    """Return what `power` [W] for `hours` [s] takes from a bank at `voltage` [V]."""
    return job(
        power=power,
        voltage=voltage,
        route=route,
        efficiency=efficiency,
        time=hours,
        load_type=load_type,
        capacity=capacity,
        chemistry=chemistry,
        usable=usable,
    )

"""runtime from its fields: the load as a current, a full bank, and how long it lasts."""

from calc.energy import battery, loads
from calc.energy.battery import Chemistry
from calc.energy.loads import Route
from calc.energy.run_time import RunTime, run_time
from calc.units.kinds import POWER
from calc.worksheet.fields import Measured


def calculate(
    *,
    capacity: float,
    chemistry: Chemistry,
    load: Measured,
    voltage: float,
    usable: float,
    exponent: float,
    rated_hours: float,
    temperature: float,
    route: Route,
    efficiency: float,
    needed: float | None,
) -> RunTime:
    """Return how long `capacity` [A·s], rated over `rated_hours` [s], carries `load` [W or A].

    It has to last `needed` [s], where that is given.
    """
    fed = (
        loads.of_power(power=load.value, voltage=voltage, route=route, efficiency=efficiency)
        if load.kind is POWER
        else loads.of_current(
            current=load.value, voltage=voltage, route=route, efficiency=efficiency
        )
    )
    full = battery.bank(chemistry=chemistry, capacity=capacity, temperature=temperature, state=1.0)
    return run_time(
        full,
        load=fed,
        usable=usable,
        rated_time=rated_hours,
        exponent=exponent,
        needed=needed,
    )

"""cooling-day from its fields: the heat that comes in, then the day of the cooler."""

from calc.comfort.cooling import CoolingDay, RunningTime, cooling_day, heat_gain
from calc.energy.battery import Chemistry
from calc.energy.loads import Route


def calculate(
    *,
    cooling: float,
    efficiency_ratio: float,
    basis: RunningTime,
    duty: float,
    hours: float,
    voltage: float,
    route: Route,
    efficiency: float,
    chemistry: Chemistry,
    capacity: float,
    usable: float,
    glazing: float,
    sun: float,
    passed: float,
    cover_passes: float,
    roof: float,
    roof_u: float,
    absorbed: float,
    shell: float,
    outside: float,
    inside: float,
    people: float,
    devices: float,
) -> CoolingDay:
    """Return what `cooling` [W] takes over `hours` [s] on a day of that `sun` [W/m²]."""
    return cooling_day(
        cooling=cooling,
        efficiency_ratio=efficiency_ratio,
        basis=basis,
        share=duty,
        hours=hours,
        voltage=voltage,
        route=route,
        efficiency=efficiency,
        chemistry=chemistry,
        capacity=capacity,
        usable=usable,
        gain=heat_gain(
            glazing=glazing,
            sun=sun,
            roof=roof,
            roof_u=roof_u,
            passed=passed,
            absorbed=absorbed,
            shell=shell,
            outside=outside,
            inside=inside,
            people=people,
            devices=devices,
        ),
        cover_passes=cover_passes,
    )

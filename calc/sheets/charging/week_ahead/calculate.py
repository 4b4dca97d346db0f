"""week-ahead from its fields: the inputs of a week, worked by the domain in stages."""

from collections.abc import Mapping
from typing import Any

from calc.energy.battery import Chemistry, ColdCutOff
from calc.energy.daily_loads import Load
from calc.energy.forecast import WeekAhead, later_stages, week_ahead
from calc.energy.panels import Mount, Regulator
from calc.energy.sun import Month
from calc.energy.week import InverterOn, Question, Recovery, WeekInputs
from calc.sheets.parts.fields import INVERTER
from calc.sheets.parts.sun import monthly_sky

__all__ = ["calculate", "later_stages"]


def calculate(
    *,
    question: Question,
    nights: float,
    recovery: Recovery,
    capacity: float,
    chemistry: Chemistry,
    from_state: float,
    loads: tuple[Mapping[str, Any], ...],
    array: float,
    latitude: float,
    month: Month,
    sky: float,
    climate: str,
    own_skies: tuple[Mapping[str, Any], ...],
    drive_hours: float,
    charger: float,
    shore_every: float,
    usable: float,
    voltage: float,
    temperature: float,
    efficiency: float,
    idle: float,
    inverter_on: InverterOn,
    tilt: float,
    facing: float,
    losses: float,
    turbidity: float,
    altitude: float,
    regulator: Regulator,
    panel_voltage: float,
    air: float | None,
    mount: Mount,
    heat_coefficient: float,
    roof: float,
    shore_charger: float,
    shore_hours: float,
    cold_cut_off: ColdCutOff,
) -> WeekAhead:
    """Return the first stage of a week, from `from_state` [0..1], with these loads and sources.

    Each of `loads` has a name, watts [W], hours [s], when and route.
    """
    return week_ahead(
        WeekInputs(
            capacity=capacity,
            chemistry=Chemistry(chemistry),
            from_state=from_state,
            usable=usable,
            voltage=voltage,
            temperature=temperature,
            loads=tuple(_load(one) for one in loads),
            efficiency=efficiency,
            idle=idle,
            always=InverterOn(inverter_on) is InverterOn.ALWAYS,
            array=array,
            latitude=latitude,
            month=Month(month),
            sky=sky,
            losses=losses,
            tilt=tilt,
            facing=facing,
            turbidity=turbidity,
            altitude=altitude,
            drive_hours=drive_hours,
            charger=charger,
            shore_every=int(shore_every),
            lead=shore_charger,
            lead_hours=shore_hours,
            cold_cut_off=ColdCutOff(cold_cut_off),
            skies=monthly_sky(climate, own_skies, sky),
            regulator=Regulator(regulator),
            panel_voltage=panel_voltage,
            air=air,
            mount=Mount(mount),
            heat_coefficient=heat_coefficient,
            question=Question(question),
            nights=int(nights),
            recovery=Recovery(recovery),
            roof=roof,
        )
    )


def _load(row: Mapping[str, Any]) -> Load:
    return Load(row["name"], row["watts"], row["hours"], row["when"], row["route"] == INVERTER)

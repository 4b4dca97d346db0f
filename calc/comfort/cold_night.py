"""A cold night in a van: the heater that holds it, warming it up, and what the night takes.

In scope: heat at a steady loss (`calc.comfort.heat_loss`), a fit-out that warms as one lump. Out of
scope: a heater that starts and stops, a van that is warm already.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.comfort import envelope
from calc.comfort.envelope import Insulation
from calc.comfort.flame import Alarm, Exhaust, Flame, HeatSource, flame
from calc.comfort.fuel import FuelInCold, fuel_volume
from calc.comfort.heat_loss import HeatLoss, box, heat_loss, shell
from calc.comfort.heaters import START_ENERGY, HeatedTime, air_pressure_share, heated_time
from calc.comfort.sleepers import Sleepers, sleepers
from calc.energy.battery import Chemistry
from calc.energy.draw import usable_bank
from calc.energy.loads import bank_current
from calc.units.compare import at_least, at_most
from calc.units.constants import HOUR
from calc.units.si import (
    Coulombs,
    CubicMetres,
    HeatWatts,
    JoulesPerKelvin,
    Kilograms,
    Metres,
    Number,
    Seconds,
    Share,
    Tag,
    WattsPerKelvin,
)

# Beyond which a night begins cold: common practice, no source
SLOW_WARM_UP: Annotated[Seconds, Tag("longest time to warm up")] = 4 * HOUR


@dataclass(frozen=True, kw_only=True)
class HeaterSize:
    """A heater against a `loss` and its upper bound `high`: with `margin` it must give `heater`.

    `output` is that of a heater that is there, None if it is still to be chosen; `power` is what
    is at work, and `headroom` how far that is above the loss.
    """

    loss: HeatWatts
    high: HeatWatts
    margin: Share
    output: HeatWatts | None
    heater: HeatWatts
    power: HeatWatts
    headroom: Share

    @property
    def to_buy(self) -> HeatWatts:
        """The least output to buy: with the margin, and enough for bare ribs."""
        return max(self.heater, self.high)


@dataclass(frozen=True, kw_only=True)
class WarmUp:
    """A cold van and its fit-out, warmed by `power` against its loss; None if it never gets there.

    `fuel` is None for electric heat too.
    """

    contents: Kilograms
    power: HeatWatts
    rate: WattsPerKelvin
    store: JoulesPerKelvin
    warm_share: Number
    time_constant: Seconds
    time: Seconds | None
    fuel: CubicMetres | None
    charge: Coulombs | None

    @property
    def slow(self) -> bool:
        """Whether a night would begin cold."""
        return self.time is None or not at_most(self.time, SLOW_WARM_UP)


@dataclass(frozen=True, kw_only=True)
class ColdNight:
    """A cold night: heat lost, sleepers, heater, warming up, and what the night takes.

    `air_share` is the air's pressure at the `altitude`, as a share of that at sea level.
    """

    altitude: Metres
    air_share: Share
    heat: HeatLoss
    sleepers: Sleepers
    size: HeaterSize
    warming: WarmUp
    heating: HeatedTime
    flame: Flame | None
    fuel_in_cold: FuelInCold | None

    @property
    def own_warming(self) -> WarmUp | None:
        """Warming up by a heater that is there, None where one is still to be bought."""
        return None if self.size.output is None else self.warming

    @property
    def warm_up_beyond_bank(self) -> bool:
        """Whether the bank is empty before the night is over that began with warming up."""
        draw, charge = self.heating.draw, self.warming.charge
        return (
            self.size.output is not None
            and charge is not None
            and not at_most(draw.charge + charge, draw.bank.gives)
        )


def heater_size(heat: HeatLoss, *, margin: float, output: float | None) -> HeaterSize:
    """Return the heater for `heat` with a share `margin` to spare, against an `output` [W]."""
    heater = heat.loss * (1 + margin)
    power = heater if output is None else output
    return HeaterSize(
        loss=heat.loss,
        high=heat.high,
        margin=margin,
        output=output,
        heater=heater,
        power=power,
        headroom=max(power / heat.loss - 1, 0.0),
    )


def warm_up(heat: HeatLoss, night: HeatedTime, *, contents: float, power: float) -> WarmUp:
    """Return the warming of a cold van with `contents` [kg] by `power` [W], as the `night` heats.

    The fit-out is taken as timber and as one lump. The heater works at full power meanwhile.
    """
    store = contents * envelope.TIMBER_HEAT
    time = None
    if not at_least(heat.loss, power):
        time = envelope.warm_up(store, heat.loss / heat.rise, power, heat.rise)
    fuel = charge = None
    if time is not None and night.fuel is not None:
        fuel = fuel_volume(power * time, night.fuel.heating, night.efficiency)
        charge = night.draw_power / night.voltage * time
    elif time is not None:
        charge = bank_current(power, night.voltage, night.efficiency) * time
    return WarmUp(
        contents=contents,
        power=power,
        rate=heat.loss / heat.rise,
        store=store,
        warm_share=heat.loss / power,
        time_constant=store * heat.rise / heat.loss,
        time=time,
        fuel=fuel,
        charge=charge,
    )


def cold_night(
    *,
    length: float,
    width: float,
    height: float,
    insulation: float,
    floor_insulation: float,
    material: Insulation,
    conductivity: float,
    glazing: float,
    glazing_u: float,
    cover: float,
    thermal_bridge: float,
    ribs: float,
    air_changes: float,
    inside: float,
    outside: float,
    altitude: float,
    people: float,
    person: float,
    lining: float,
    margin: float,
    contents: float,
    heater_output: float | None,
    hours: float,
    fuel: HeatSource,
    exhaust: Exhaust,
    alarm: Alarm,
    efficiency: float,
    draw: float,
    voltage: float,
    chemistry: Chemistry,
    capacity: float,
    usable: float,
) -> ColdNight:
    """Return what a van loses from `inside` to `outside` [°C], and what `hours` [s] of that take.

    It stands at an `altitude` [m]; the air it loses is taken as dense as at sea level.
    The parts are those of `box`, `shell`, `heat_loss`, `sleepers`, `heater_size`, `warm_up` and
    `calc.comfort.heaters.heated_time`, where the units stand. Raises NotCovered.
    """
    space = box(length=length, width=width, height=height, glazing=glazing)
    layers = shell(
        insulation=insulation,
        floor_insulation=floor_insulation,
        material=material,
        conductivity=conductivity,
        lining=lining,
        glazing_u=glazing_u,
        cover=cover,
    )
    heat = heat_loss(
        space,
        layers,
        inside=inside,
        outside=outside,
        thermal_bridge=thermal_bridge,
        ribs=ribs,
        air_changes=air_changes,
    )
    size = heater_size(heat, margin=margin, output=heater_output)
    heating = heated_time(
        loss=heat.loss,
        hours=hours,
        source=fuel,
        efficiency=efficiency,
        draw_power=draw,
        starting=START_ENERGY,
        voltage=voltage,
        bank=usable_bank(chemistry=chemistry, capacity=capacity, usable=usable),
    )
    burnt = flame(fuel=fuel, exhaust=exhaust, alarm=alarm)
    return ColdNight(
        altitude=altitude,
        air_share=air_pressure_share(altitude),
        heat=heat,
        sleepers=sleepers(heat, people=people, person=person),
        size=size,
        warming=warm_up(heat, heating, contents=contents, power=size.power),
        heating=heating,
        flame=burnt,
        fuel_in_cold=FuelInCold(fuel=burnt.fuel, outside=outside) if burnt else None,
    )

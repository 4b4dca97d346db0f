"""What a night's heat costs in fuel or in charge.

In scope: steady heat for some hours. Out of scope: starts and stops, a heater at its lowest step.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.comfort.flame import Alarm, Exhaust, Flame, HeatSource, flame
from calc.comfort.fuel import LITRE, Fuel, fuel_volume, fuels
from calc.energy.battery import Chemistry
from calc.energy.draw import BankDraw, UsableBank, bank_draw, element, steady_heat, usable_bank
from calc.energy.loads import HeatFromBank
from calc.units.compare import at_least
from calc.units.covered import NotCovered
from calc.units.si import (
    Coulombs,
    CubicMetres,
    HeatWatts,
    Joules,
    Kelvins,
    Kilograms,
    Metres,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

# Glow plug and running down of one start: common practice, no source
START_ENERGY: Annotated[Joules, Tag("energy of a heater's start")] = 36e3
# Share of the heat that stays aboard, by what it comes from: common practice, no source
USUAL_EFFICIENCY: dict[HeatSource, float] = {
    HeatSource.DIESEL: 0.75,
    HeatSource.PETROL: 0.75,
    HeatSource.PROPANE: 0.75,
    HeatSource.ELECTRIC: 1.0,
    HeatSource.INVERTER: 0.88,
}
# Standard atmosphere, ISO 2533, up to 11 km: at sea level, per metre, and as pressure goes with it
SEA_LEVEL: Annotated[Kelvins, Tag("temperature of the standard atmosphere")] = 288.15  # ISO 2533
LAPSE: Annotated[float, Tag("lapse of the standard atmosphere")] = 0.0065  # K/m, ISO 2533
# g/(R L), ISO 2533
EXPONENT: Annotated[Number, Tag("pressure exponent of the standard atmosphere")] = 5.2559

# What small fuel heaters still give throttled: common practice, no source
LOWEST_STEP: Annotated[HeatWatts, Tag("lowest step of a small fuel heater")] = 800.0
# What larger van heaters give: common practice, no source
LARGEST_USUAL: Annotated[HeatWatts, Tag("output of a large van heater")] = 4000.0
# From which makers ask for an adjustment: common practice, no source
THIN_AIR: Annotated[Metres, Tag("altitude of thin air for a flame")] = 1500.0


@dataclass(frozen=True, kw_only=True)
class HeatedTime:
    """Heat that holds a `loss` for some `hours`, and what that takes of fuel and bank.

    A heater that burns takes `draw_power` all the time and `starting` in all from the bank;
    `running` is both together. `fuel` and `fuel_used` are None for electric heat. `direct` and
    `by_inverter` are the same heat made from the bank alone, whatever `source` it is made from
    here: straight on the bank, and through an inverter.
    """

    loss: HeatWatts
    hours: Seconds
    source: HeatSource
    efficiency: Share
    draw_power: Watts
    starting: Joules
    voltage: Volts
    night_heat: Joules
    fuel: Fuel | None
    fuel_used: CubicMetres | None
    running: Joules
    draw: BankDraw
    direct: HeatFromBank
    by_inverter: HeatFromBank

    @property
    def burns(self) -> bool:
        """Whether something burns for it."""
        return self.fuel is not None

    @property
    def burner_draw(self) -> BankDraw | None:
        """What the bank gives to run a burner, None for electric heat."""
        return self.draw if self.burns else None

    @property
    def from_bank(self) -> HeatFromBank | None:
        """The electric heat, None where something burns."""
        if self.burns:
            return None
        return self.by_inverter if self.source is HeatSource.INVERTER else self.direct

    @property
    def litre_in_banks(self) -> Number:
        """The heat in a litre of diesel, as a multiple of what the full bank holds."""
        held = self.draw.bank.capacity * self.voltage
        return LITRE * fuels()[HeatSource.DIESEL].heating / held

    @property
    def fuel_mass(self) -> Kilograms | None:
        """The fuel used by its mass."""
        if self.fuel is None or self.fuel_used is None:
            return None
        return self.fuel_used * self.fuel.density


def heated_time(
    *,
    loss: float,
    hours: float,
    source: HeatSource,
    efficiency: float,
    draw_power: float,
    starting: float,
    voltage: float,
    bank: UsableBank,
) -> HeatedTime:
    """Return what holding `loss` [W] for `hours` [s] takes by `source`.

    A heater that burns takes `draw_power` [W] all the time and `starting` [J] in all from a `bank`
    of `voltage` [V]. `efficiency` is that of the heater; of electric heat that of the way to the
    element, and below 1 an inverter feeds it. Raises NotCovered for a name that is no source of
    heat.
    """
    source = HeatSource(source)
    if source.electric and not at_least(efficiency, 1.0):
        source = HeatSource.INVERTER
    fuel = fuels().get(source)
    heat = loss * hours
    through = source is HeatSource.INVERTER
    inverter = efficiency if through else USUAL_EFFICIENCY[HeatSource.INVERTER]
    direct, by_inverter = (
        steady_heat(
            element(power=loss, voltage=voltage, efficiency=way),
            time=hours,
            holds_warmth=True,
            bank=bank,
        )
        for way in (1.0, inverter)
    )
    electric = by_inverter if through else direct
    running = draw_power * hours + starting
    return HeatedTime(
        loss=loss,
        hours=hours,
        source=source,
        efficiency=efficiency,
        draw_power=draw_power,
        starting=starting,
        voltage=voltage,
        night_heat=heat,
        fuel=fuel,
        fuel_used=fuel_volume(heat, fuel.heating, efficiency) if fuel else None,
        running=running,
        draw=bank_draw(bank, running / voltage if fuel else electric.charge),
        direct=direct,
        by_inverter=by_inverter,
    )


def air_pressure_share(altitude: float) -> float:
    """Return the air's pressure at `altitude` [m] as a share of that at sea level.

    Standard atmosphere: (1 − L h/T₀)^5.2559. Oxygen goes with it. Raises NotCovered above 11 km.
    """
    if not at_least(11000.0, altitude):
        raise NotCovered("altitude", "must be at most 11 000 m.")
    share: float = (1 - LAPSE * altitude / SEA_LEVEL) ** EXPONENT
    return share


@dataclass(frozen=True, kw_only=True)
class Route:
    """One way to the same heat: its fuel, if any, and what it draws from the bank."""

    way: HeatSource
    fuel: CubicMetres | None
    mass: Kilograms | None
    charge: Coulombs
    share: Share


@dataclass(frozen=True, kw_only=True)
class HeaterNight:
    """A night of heat by one source at an `altitude`, and the same by each of the `routes`.

    `air_share` is the air's pressure there, as a share of that at sea level.
    """

    heating: HeatedTime
    flame: Flame | None
    altitude: Metres
    air_share: Share
    routes: tuple[Route, ...]


def heater_night(
    *,
    loss: float,
    hours: float,
    fuel: HeatSource,
    efficiency: float,
    draw: float,
    voltage: float,
    starts: float,
    start_energy: float,
    chemistry: Chemistry,
    capacity: float,
    usable: float,
    exhaust: Exhaust,
    alarm: Alarm,
    altitude: float,
) -> HeaterNight:
    """Return what holding `loss` [W] for `hours` [s] costs by `fuel`, and by each other source.

    The heater takes `draw` [W] all the time, and `start_energy` [J] for each of `starts`, from a
    bank of a `chemistry`, `capacity` [A·s] and `voltage` [V] of which a share `usable` is used. The
    other sources have their usual efficiency. Raises NotCovered.
    """
    fuel = HeatSource(fuel)
    if fuel.electric and not at_least(efficiency, 1.0):
        fuel = HeatSource.INVERTER
    bank = usable_bank(chemistry=chemistry, capacity=capacity, usable=usable)
    nights = [
        heated_time(
            loss=loss,
            hours=hours,
            source=source,
            efficiency=efficiency if source is fuel else usual,
            draw_power=draw,
            starting=starts * start_energy,
            voltage=voltage,
            bank=bank,
        )
        for source, usual in USUAL_EFFICIENCY.items()
    ]
    return HeaterNight(
        heating=next(night for night in nights if night.source is fuel),
        flame=flame(fuel=fuel, exhaust=exhaust, alarm=alarm),
        altitude=altitude,
        air_share=air_pressure_share(altitude),
        routes=tuple(
            Route(
                way=one.source,
                fuel=one.fuel_used,
                mass=one.fuel_mass,
                charge=one.draw.charge,
                share=one.draw.share,
            )
            for one in nights
        ),
    )

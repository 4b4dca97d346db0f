"""What hot water costs.

Steady power into a well mixed tank. Out of scope: boiling, hoses that cool, cold water that mixes
in while some is drawn.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.comfort.flame import Alarm, Exhaust, Flame, HeatSource, flame
from calc.comfort.fuel import Fuel, fuel_volume, fuels
from calc.electrical.switching import LEAST_MAINS
from calc.energy import bank_load
from calc.energy.bank_load import Draw
from calc.energy.battery import Chemistry
from calc.energy.draw import BankDraw, UsableBank, bank_draw, element, usable_bank
from calc.energy.loads import BankLoad, HeatFromBank
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Amperes,
    Celsius,
    CubicMetres,
    HeatWatts,
    Joules,
    JoulesPerKilogramKelvin,
    Kelvins,
    KilogramsPerCubicMetre,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

DENSITY: Annotated[KilogramsPerCubicMetre, Tag("density of water")] = 1000.0  # EN ISO 10456
# EN ISO 10456
SPECIFIC_HEAT: Annotated[JoulesPerKilogramKelvin, Tag("specific heat of water")] = 4190.0
# A bank called 48 V under its load, with something over: common practice, no source
MOST_UNDER_LOAD: Annotated[Volts, Tag("highest voltage of a bank under load")] = 60.0


class WaterHeat(Enumeration):
    """What makes the heat: an element on bank or shore power, fuel, or the engine's coolant."""

    BANK = "bank"
    SHORE = "shore"
    FUEL = "fuel"
    ENGINE = "engine"


class MixingValve(Enumeration):
    """Whether a valve mixes the tank's water down to what hands bear."""

    FITTED = "fitted"
    MISSING = "not-fitted"
    UNKNOWN = "not-known"


def stored(volume: float, rise: float) -> float:
    """Return the heat [J] that `volume` [m³] of water takes for a `rise` [K]: ρ V c ΔT."""
    return DENSITY * volume * SPECIFIC_HEAT * rise


def time_to_heat(heat: float, power: float, loss: float) -> float | None:
    """Return the time [s] for `heat` [J] with `power` [W] into the water, or None if never.

    The loss [W] of the hot tank counts in full from the start: a little long, on the safe side.
    """
    return heat / (power - loss) if power > loss else None


@dataclass(frozen=True, kw_only=True)
class Tank:
    """Water made hot and kept so for `hours`: the heat in it, and the time it takes.

    Of the power `taken` from the supply, `into` reaches the water. `energy` is all that is taken,
    `keeping` that part that keeps it hot. `time` and `energy` are None where it never gets hot.
    """

    volume: CubicMetres
    cold: Celsius
    hot: Celsius
    loss: HeatWatts
    hours: Seconds
    efficiency: Share
    rise: Kelvins
    heat: Joules
    taken: HeatWatts
    into: HeatWatts
    time: Seconds | None
    keeping: Joules
    energy: Joules | None

    @property
    def warm_for(self) -> Seconds | None:
        """The time from the start until it is no longer kept hot."""
        return None if self.time is None else self.time + self.hours


@dataclass(frozen=True, kw_only=True)
class ShoreLoad:
    """An element of `power` on shore power: its `current`, and what the supply carries."""

    power: Watts
    current: Amperes
    supply_limit: Amperes


@dataclass(frozen=True, kw_only=True)
class HotWater:
    """Hot water by one way of heating: what it takes of bank, fuel or shore supply.

    `current` is that of the element, or of pump and burner. `drawn` is what the bank gives, None if
    the water never gets hot; `element` and `heat_from_bank` are of an element on the bank, `shore`
    is of one on shore power, `flame` and `burnt` of a burner, and None without it.
    """

    way: WaterHeat
    valve: MixingValve
    power: Watts
    voltage: Volts
    pump: Watts
    tank: Tank
    bank: UsableBank
    current: Amperes
    drawn: BankDraw | None
    element: BankLoad | None
    heat_from_bank: HeatFromBank | None
    shore: ShoreLoad | None
    flame: Flame | None
    burnt: Fuel | None
    fuel_used: CubicMetres | None

    @property
    def electric(self) -> bool:
        """Whether an element makes the heat."""
        return self.way in (WaterHeat.BANK, WaterHeat.SHORE)

    @property
    def element_draw(self) -> Draw | None:
        """The current of an element on the bank, None without one."""
        if self.element is None:
            return None
        return bank_load.draw(
            chemistry=self.bank.chemistry, capacity=self.bank.capacity, current=self.current
        )

    @property
    def burner_draw(self) -> BankDraw | None:
        """What runs a burner, drawn from the bank with no engine to fill it up meanwhile."""
        return self.drawn if self.flame else None


def tank(
    *,
    volume: float,
    cold: float,
    hot: float,
    loss: float,
    hours: float,
    power: float,
    rated_in: bool,
    efficiency: float,
) -> Tank:
    """Return the heating of `volume` [m³] from `cold` to `hot` [°C], kept so for `hours` [s].

    `power` [W] is what is taken, of which a share `efficiency` reaches the water; `rated_in` tells
    that it is what reaches the water, of an element behind an inverter. `loss` [W] is that of the
    hot tank. Raises NotCovered where it gets no warmer.
    """
    if not hot > cold:
        raise NotCovered("to", "must be warmer than the cold water it starts from.")
    needed = stored(volume, hot - cold)
    taken = power / efficiency if rated_in else power
    into = power if rated_in else power * efficiency
    time = time_to_heat(needed, into, loss)
    keeping = loss * hours / efficiency
    return Tank(
        volume=volume,
        cold=cold,
        hot=hot,
        loss=loss,
        hours=hours,
        efficiency=efficiency,
        rise=hot - cold,
        heat=needed,
        taken=taken,
        into=into,
        time=time,
        keeping=keeping,
        energy=None if time is None else taken * time + keeping,
    )


def hot_water(
    *,
    volume: float,
    from_: float,
    to: float,
    power: float,
    way: WaterHeat,
    efficiency: float,
    loss: float,
    hours: float,
    voltage: float,
    chemistry: Chemistry,
    capacity: float,
    usable: float,
    supply_limit: float,
    fuel: HeatSource,
    exhaust: Exhaust,
    alarm: Alarm,
    mixing_valve: MixingValve,
    draw: float,
) -> HotWater:
    """Return what it takes to heat `volume` [m³] from `from_` to `to` [°C] and keep it `hours` [s].

    `power` [W] is what an element is rated at, a burner burns, or the coolant gives; a share
    `efficiency` of it reaches the water, which loses `loss` [W] while hot. `voltage` [V] is the
    supply's: a bank of a `chemistry` and `capacity` [A·s] of which a share `usable` is used, or a
    shore supply that carries `supply_limit` [A]. `mixing_valve` stands between tank and tap, or
    does not. `draw` [W] is that of pump or burner. Raises NotCovered: for water that gets no
    warmer, a bank at mains voltage, mains below it, a name that is in no list.
    """
    way = WaterHeat(way)
    water = tank(
        volume=volume,
        cold=from_,
        hot=to,
        loss=loss,
        hours=hours,
        power=power,
        rated_in=way is WaterHeat.BANK,
        efficiency=efficiency,
    )
    if way is WaterHeat.SHORE and not at_least(voltage, LEAST_MAINS):
        raise NotCovered("voltage", "must be that of the shore supply, 100 V or more, like 120 V.")
    if way is not WaterHeat.SHORE and not at_most(voltage, MOST_UNDER_LOAD):
        raise NotCovered("voltage", "must be the bank's own voltage, up to 60 V, like 12.8 V.")
    bank = usable_bank(chemistry=chemistry, capacity=capacity, usable=usable)
    heater = heat = drawn = None
    if way is WaterHeat.BANK:
        heater = element(power=power, voltage=voltage, efficiency=efficiency)
    if way is not WaterHeat.SHORE and water.warm_for is not None and water.energy is not None:
        energy = water.energy if heater else draw * water.warm_for
        drawn = bank_draw(bank, energy / voltage)
        if heater:
            heat = HeatFromBank(
                load=heater,
                time=water.warm_for,
                holds_warmth=False,
                charge=drawn.charge,
                share=drawn.share,
            )
    electric = way in (WaterHeat.BANK, WaterHeat.SHORE)
    current = (water.taken if electric else draw) / voltage
    shore = None
    if way is WaterHeat.SHORE:
        shore = ShoreLoad(power=power, current=current, supply_limit=supply_limit)
    lit = flame(fuel=fuel, exhaust=exhaust, alarm=alarm) if way is WaterHeat.FUEL else None
    row = fuels()[lit.fuel] if lit else None
    return HotWater(
        way=way,
        valve=MixingValve(mixing_valve),
        power=power,
        voltage=voltage,
        pump=draw,
        tank=water,
        bank=bank,
        current=current,
        drawn=drawn,
        element=heater,
        heat_from_bank=heat,
        shore=shore,
        flame=lit,
        burnt=row,
        fuel_used=(
            fuel_volume(water.energy, row.heating, 1.0)
            if row and water.energy is not None
            else None
        ),
    )

"""What solar panels make of the light: everyday losses, the heat of their cells, a usual day.

In scope: silicon panels at the power of their label in standard light. Out of scope: shade on a
part of a panel, which takes more than its share of the area, and snow.
"""

from dataclasses import dataclass
from functools import cache
from math import exp, prod
from typing import Annotated

from calc.energy import voltages
from calc.energy.battery import Chemistry, charge_efficiency, energy_efficiency
from calc.energy.cloud import Sky
from calc.energy.sun import Month, SunDay
from calc.energy.usual_day import UsualDay, usual_day
from calc.tables import table
from calc.units.compare import at_least
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    Joules,
    Kelvins,
    MetresPerSecond,
    Number,
    Seconds,
    Share,
    SharePerKelvin,
    SquareMetreKelvinsPerWatt,
    Tag,
    Volts,
    Watts,
    WattsPerSquareMetre,
)

RATED_CELL: Annotated[Celsius, Tag("cell temperature at which panels are rated")] = 25.0
"""Standard test conditions, as in the documentation of pvlib 0.16.1."""
FULL_SUN: Annotated[WattsPerSquareMetre, Tag("light in which panels are rated")] = 1000.0
"""Standard test conditions, as in the documentation of pvlib 0.16.1."""
LIGHT_WIND: Annotated[MetresPerSecond, Tag("wind taken past a panel")] = 1.0
"""Common practice, no source."""

# By how much a tilt may gain on cloud's even light before it is said: our choice
TILT_FLATTERS: Annotated[Number, Tag("gain of a tilt that is worth a word")] = 1.1


class Regulator(Enumeration):
    """What stands between panels and bank."""

    MPPT = "MPPT"  # finds the voltage of the most power
    PWM = "PWM"  # a plain switch: the panel works at the bank's voltage


class Mount(Enumeration):
    """How much air there is behind a panel."""

    OPEN_RACK = "open-rack"
    CLOSE_MOUNT = "close-mount"
    GLUED = "glued"


@dataclass(frozen=True, kw_only=True)
class Loss:
    """One usual loss, its share of what is left, and what that rests on."""

    loss: str
    share: Share
    basis: str


@dataclass(frozen=True, kw_only=True)
class Array:
    """Panels of `power` on their labels, which charge a bank at `voltage` through a `regulator`.

    `panel_voltage` is the panels' own at their best power, `air` the temperature by day or None
    where heat is left out, `heat_coefficient` the share of the power lost for each kelvin. `limit`
    is the regulator's rated current, None where it is not known.
    """

    power: Watts
    losses: Share
    voltage: Volts
    regulator: Regulator
    panel_voltage: Volts
    air: Celsius | None
    mount: Mount
    heat_coefficient: SharePerKelvin
    limit: Amperes | None = None

    @property
    def reached(self) -> bool:
        """Whether the panels' voltage is above the bank's, so that a plain switch passes any."""
        return self.regulator is not Regulator.PWM or not at_least(self.voltage, self.panel_voltage)

    @property
    def regulator_keeps(self) -> Share:
        """The share of the power that the regulator leaves."""
        if self.regulator is not Regulator.PWM:
            return 1.0
        return self.voltage / self.panel_voltage if self.reached else 0.0

    @property
    def peak_current(self) -> Amperes:
        """The current into the bank in full sun."""
        pwm = self.regulator is Regulator.PWM
        return self.power / (self.panel_voltage if pwm else self.voltage)


@dataclass(frozen=True, kw_only=True)
class CellHeat:
    """How hot cells get in `air` by the light of a day, and the share of the power it leaves.

    `bright` is the light averaged with itself as the weight, `warming` the rise for each W/m² of
    it; `over` is counted from the temperature at which panels are rated.
    """

    air: Celsius
    bright: WattsPerSquareMetre
    warming: SquareMetreKelvinsPerWatt
    rise: Kelvins
    cell: Celsius
    over: Kelvins
    keeps: Share


@dataclass(frozen=True, kw_only=True)
class ThroughBank:
    """What a bank gives back of what is put into it, and how much must be made for a use of 1.

    `by_voltage` is charge given back at the voltage under load, put in at that of the charge;
    `gives_back` the lower of it and the published energy efficiency. A share `stored` of the use
    goes through the bank, the rest straight from the panels.
    """

    chemistry: Chemistry
    by_voltage: Share
    published: Share
    stored: Share

    @property
    def gives_back(self) -> Share:
        """The share of the energy put in that comes out again."""
        return min(self.by_voltage, self.published)

    @property
    def needed(self) -> Number:
        """What must be made for a use of 1: what goes through the bank costs more."""
        return 1 - self.stored + self.stored / self.gives_back


@dataclass(frozen=True, kw_only=True)
class SolarYield:
    """What an array brings on a usual day of a month, from the clear day and the sky's share of it.

    `light` is what comes on the plane, `sun_hours` the time in full sun that would bring as much,
    `covered` the share of `daily_use`, of which `bank` says how much must be made.
    `grey_energy` and `grey_charge` come if cloud spreads all the light over the sky.
    """

    month: Month
    array: Array
    clear: SunDay
    sky: Sky
    light: UsualDay
    heat: CellHeat | None
    sun_hours: Seconds
    energy: Joules
    charge: Coulombs
    grey_energy: Joules
    grey_charge: Coulombs
    daily_use: Joules | None
    covered: Share | None
    bank: ThroughBank

    @property
    def heat_keeps(self) -> Share:
        """The share of the power that hot cells leave; 1 where heat is left out."""
        return 1.0 if self.heat is None else self.heat.keeps

    @property
    def needed(self) -> Share:
        """What must be made, as a share of the use, to make up what the bank keeps."""
        return self.bank.needed


@cache
def usual_losses() -> tuple[Loss, ...]:
    """Return each usual loss of a van: `calc/tables/panel_losses.csv`.

    The parts are common practice; the last is what they leave of the published total.
    """
    total, *parts, rest = table("panel_losses").rows
    found = [
        Loss(loss=row["part"], share=float(row["share"]), basis=row["confidence"]) for row in parts
    ]
    left = 1 - (1 - float(total["share"])) / (1 - combined_loss(tuple(p.share for p in found)))
    return (
        *found,
        Loss(loss=rest["part"], share=left, basis="what is left of the published total"),
    )


def combined_loss(shares: tuple[float, ...]) -> float:
    """Return the share lost when losses of these `shares` act one after another: 1 − Π(1 − L)."""
    return 1 - prod(1 - share for share in shares)


@cache
def warming(mount: Mount) -> float:
    """Return by how much [K per W/m²] light warms the cells above the air.

    exp(a + b v) + ΔT/1000 after King, Boyson and Kratochvil, in a light wind. Raises NotCovered for
    a name that is no `Mount`.
    """
    mount = Mount(mount)
    (row,) = (row for row in table("panel_heat").rows if row["mount"] == mount)
    by_wind = exp(float(row["a"]) + float(row["b"]) * LIGHT_WIND)
    return by_wind + float(row["delta_k"]) / FULL_SUN


def cell_heat(*, array: Array, bright: float) -> CellHeat | None:
    """Return how hot the cells of `array` get in light of `bright` [W/m²], None without an air.

    Cells colder than rated give a little more than their label, which is not counted.
    """
    if array.air is None:
        return None
    rise = bright * warming(array.mount)
    over = array.air + rise - RATED_CELL
    return CellHeat(
        air=array.air,
        bright=bright,
        warming=warming(array.mount),
        rise=rise,
        cell=array.air + rise,
        over=over,
        keeps=max(0.0, 1 - array.heat_coefficient * max(over, 0.0)),
    )


def through_bank(*, chemistry: Chemistry, charge_voltage: float, stored: float) -> ThroughBank:
    """Return what a bank gives back that is charged at `charge_voltage` [V].

    A share `stored` [0..1] of the use goes through it. Raises NotCovered for an unknown chemistry.
    """
    chemistry = Chemistry(chemistry)
    working = voltages.blocks(charge_voltage) * voltages.under_load(chemistry)
    return ThroughBank(
        chemistry=chemistry,
        by_voltage=min(1.0, charge_efficiency(chemistry) * working / charge_voltage),
        published=energy_efficiency(chemistry),
        stored=stored,
    )


def solar_yield(
    *,
    array: Array,
    month: Month,
    clear: SunDay,
    sky: Sky,
    daily_use: float | None,
    bank: ThroughBank,
) -> SolarYield:
    """Return what `array` brings on a usual day of `month`, whose 15th is `clear` without a cloud.

    E = P H_T/G₁ (1 − L) η_T η_r. `sky` is the share of the clear day that comes on level ground,
    `daily_use` [J] what the yield is set against, if anything, drawn from `bank`.
    """
    light = usual_day(clear, sky.used)
    heat = cell_heat(array=array, bright=clear.bright)
    kept = (1 - array.losses) * (1.0 if heat is None else heat.keeps) * array.regulator_keeps
    energy, grey = (
        array.power * sum_of_day / FULL_SUN * kept for sum_of_day in (light.on_plane, light.spread)
    )
    return SolarYield(
        month=Month(month),
        array=array,
        clear=clear,
        sky=sky,
        light=light,
        heat=heat,
        sun_hours=light.on_plane / FULL_SUN,
        energy=energy,
        charge=energy / array.voltage,
        grey_energy=grey,
        grey_charge=grey / array.voltage,
        daily_use=daily_use,
        covered=None if daily_use is None else energy / daily_use,
        bank=bank,
    )

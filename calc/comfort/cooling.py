"""What cooling takes from the bank, and what would save it.

In scope: a cooler of known ratio of cold to electric power, running part of the time, against the
heat of steady sun, shell and people. Out of scope: moisture taken out of the air, and how the ratio
falls when it is hotter outside than on the label.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.comfort.airflow import carrying_flow, density
from calc.comfort.envelope import sun_on_sheet, sun_through_glass
from calc.energy import bank_load
from calc.energy.bank_load import Draw
from calc.energy.battery import Chemistry
from calc.energy.draw import BankDraw, bank_draw, usable_bank
from calc.energy.loads import BankLoad, Route, of_power
from calc.units.compare import at_most
from calc.units.covered import Enumeration
from calc.units.si import (
    Celsius,
    Coulombs,
    CubicMetresPerSecond,
    EfficiencyRatio,
    HeatWatts,
    Joules,
    Kelvins,
    KilogramsPerCubicMetre,
    Number,
    Seconds,
    Share,
    SquareMetreKelvinsPerWatt,
    SurfaceSquareMetres,
    Tag,
    WattsPerKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)

# A roof in still air: CIBSE Guide A, table A3.6, sheltered
OUTER: Annotated[SquareMetreKelvinsPerWatt, Tag("outer surface of a roof in still air")] = 0.07
# Of the sun's heat, that the sky sends into full shade: common practice, no source
DIFFUSE: Annotated[Share, Tag("share of the sun's heat in full shade")] = 0.2
# Seated at rest, dry and damp heat: Air Conditioning Engineering, table 7.16
PERSON: Annotated[HeatWatts, Tag("heat of a person at rest")] = 115.0
# Above outside, that moving air leaves: common practice, no source
STUFFY: Annotated[Kelvins, Tag("warmth that moving air leaves inside")] = 3.0


class RunningTime(Enumeration):
    """How long a cooler runs: a share of the time as guessed, or by the van's heat load."""

    DUTY = "duty"
    HEAT_LOAD = "heat-load"


def electric_power(cooling: float, ratio: float) -> float:
    """Return the electric power [W] for `cooling` [W] at `ratio` (COP, watts of cold per watt).

    A label's EER in BTU/h per watt is 3.412 times the COP, by definition of the BTU.
    """
    return cooling / ratio


def duty(load: float, cooling: float) -> float:
    """Return the share of the time a cooler of `cooling` [W] must run against `load` [W].

    More than one where it cannot keep up.
    """
    return load / cooling


@dataclass(frozen=True, kw_only=True)
class Cooler:
    """A cooler that makes `cooling` at an `efficiency_ratio`, as a load on the bank."""

    cooling: HeatWatts
    efficiency_ratio: EfficiencyRatio
    load: BankLoad


@dataclass(frozen=True, kw_only=True)
class HeatGain:
    """Heat that comes into a van or is made in it, part by part.

    `shell` is what passes shell and air for each degree, `passed` the share of the sun that glass
    lets in. `shell_heat` is below zero where it is cooler outside. `total` is never below none.
    """

    sun: WattsPerSquareMetre
    glazing: SurfaceSquareMetres
    passed: Share
    roof: SurfaceSquareMetres
    roof_u: WattsPerSquareMetreKelvin
    absorbed: Share
    shell: WattsPerKelvin
    outside: Celsius
    inside: Celsius
    people: Number
    devices: HeatWatts
    glass_heat: HeatWatts
    roof_heat: HeatWatts
    warmer: Kelvins
    shell_heat: HeatWatts
    people_heat: HeatWatts
    total: HeatWatts


@dataclass(frozen=True, kw_only=True)
class Savings:
    """What covers on the glass, full shade, or air through the van would save of a heat load.

    `vent_flow` holds the van a little warmer than the air outside, of `density`, with no cooler.
    """

    covers_save: HeatWatts
    covers_charge: Coulombs
    shade_saves: HeatWatts
    shade_charge: Coulombs
    vent_flow: CubicMetresPerSecond


@dataclass(frozen=True, kw_only=True)
class CoolingDay:
    """Some hours of cooling: how long it runs, what it takes of the bank, what would save it.

    `heat_load` and `savings` are None where the share of the time is guessed. `carries` is how
    long the bank lasts, `needed` the bank it would take.
    """

    cooler: Cooler
    gain: HeatGain
    basis: RunningTime
    hours: Seconds
    heat_load: HeatWatts | None
    duty_used: Share
    drawn: BankDraw
    energy: Joules
    carries: Seconds
    needed: Coulombs
    density: KilogramsPerCubicMetre
    savings: Savings | None

    @property
    def compressor(self) -> Draw:
        """The current of the cooler at work, out of the bank."""
        bank = self.drawn.bank
        return bank_load.draw(
            chemistry=bank.chemistry, capacity=bank.capacity, current=self.cooler.load.current
        )

    @property
    def all_the_time(self) -> Coulombs:
        """What it would take if it never rested."""
        return self.cooler.load.current * self.hours

    @property
    def keeps_up(self) -> bool:
        """Whether the cooler pumps out all that comes in, as far as that is known."""
        return self.heat_load is None or at_most(self.heat_load, self.cooler.cooling)


def heat_gain(
    *,
    sun: float,
    glazing: float,
    passed: float,
    roof: float,
    roof_u: float,
    absorbed: float,
    shell: float,
    outside: float,
    inside: float,
    people: float,
    devices: float,
) -> HeatGain:
    """Return the heat that a van at `inside` takes in from `outside` [°C], and makes.

    `sun` [W/m²] falls on `glazing` [m²] that lets a share `passed` in, and on a `roof` [m²] of
    `roof_u` [W/(m²·K)] whose paint takes up a share `absorbed`. `shell` [W/K] is what passes the
    rest for each degree. `people` are seated at rest, `devices` [W] heat from within.
    """
    glass = sun_through_glass(sun, glazing, passed)
    top = sun_on_sheet(sun, roof, absorbed, roof_u, OUTER)
    warmer, seated = outside - inside, people * PERSON
    return HeatGain(
        sun=sun,
        glazing=glazing,
        passed=passed,
        roof=roof,
        roof_u=roof_u,
        absorbed=absorbed,
        shell=shell,
        outside=outside,
        inside=inside,
        people=people,
        devices=devices,
        glass_heat=glass,
        roof_heat=top,
        warmer=warmer,
        shell_heat=shell * warmer,
        people_heat=seated,
        total=max(glass + top + shell * warmer + (seated + devices), 0.0),
    )


def savings(cooler: Cooler, gain: HeatGain, *, hours: float, cover_passes: float) -> Savings:
    """Return what would be saved of `hours` [s] of cooling against `gain`.

    Covers leave a share `cover_passes` of the sun through the glass. A unit that never stops saves
    no charge until less comes in than it pumps.
    """

    def charge(load: float) -> float:
        return cooler.load.current * min(duty(load, cooler.cooling), 1.0) * hours

    def saved(heat: float) -> float:
        return max(charge(gain.total) - charge(max(gain.total - heat, 0.0)), 0.0)

    covers = gain.glass_heat * (1 - cover_passes)
    shade = (gain.glass_heat + gain.roof_heat) * (1 - DIFFUSE)
    without_shell = gain.glass_heat + gain.roof_heat + (gain.people_heat + gain.devices)
    return Savings(
        covers_save=covers,
        covers_charge=saved(covers),
        shade_saves=shade,
        shade_charge=saved(shade),
        vent_flow=carrying_flow(without_shell, STUFFY, gain.outside),
    )


def cooling_day(
    *,
    cooling: float,
    efficiency_ratio: float,
    basis: RunningTime,
    share: float,
    hours: float,
    voltage: float,
    route: Route,
    efficiency: float,
    chemistry: Chemistry,
    capacity: float,
    usable: float,
    gain: HeatGain,
    cover_passes: float,
) -> CoolingDay:
    """Return what `cooling` [W] at `efficiency_ratio` takes over `hours` [s], part of the time.

    That part is the `share` or what the heat `gain` asks for, by `basis`. The cooler is fed at
    `voltage` [V] by `route`, through an inverter with `efficiency`, from a bank of a
    `chemistry` and `capacity` [A·s] of which a share `usable` is used. Raises NotCovered.
    """
    basis = RunningTime(basis)
    cooler = Cooler(
        cooling=cooling,
        efficiency_ratio=efficiency_ratio,
        load=of_power(
            power=electric_power(cooling, efficiency_ratio),
            voltage=voltage,
            route=route,
            efficiency=efficiency,
        ),
    )
    reckoned = basis is RunningTime.HEAT_LOAD
    runs = min(duty(gain.total, cooling), 1.0) if reckoned else share
    current = cooler.load.current
    drawn = bank_draw(
        usable_bank(chemistry=chemistry, capacity=capacity, usable=usable), current * runs * hours
    )
    return CoolingDay(
        cooler=cooler,
        gain=gain,
        basis=basis,
        hours=hours,
        heat_load=gain.total if reckoned else None,
        duty_used=runs,
        drawn=drawn,
        energy=drawn.charge * voltage,
        carries=drawn.bank.gives / (current * runs) if runs else hours,
        needed=drawn.charge / usable,
        density=density(gain.outside),
        savings=savings(cooler, gain, hours=hours, cover_passes=cover_passes) if reckoned else None,
    )

"""An electrical bay: the heat made in it, the air that carries it off, and what a hot device keeps.

Energy balance and stack effect of `calc.comfort.airflow`. In scope: one well mixed space with still
air outside. Its walls count only for little heat, which no air need carry; beyond, they are taken
to pass none. Out of scope: hot spots, wind, sun on the wall.
"""

from dataclasses import dataclass
from math import inf, sqrt
from typing import Annotated

from calc.comfort import airflow
from calc.energy.feeds import charger_current
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Celsius,
    Coulombs,
    CubicMetresPerSecond,
    HeatWatts,
    Kelvins,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Number,
    OpeningSquareMetres,
    Seconds,
    Share,
    SharePerKelvin,
    Tag,
    Watts,
    WattsPerKelvin,
)

# Before the limit, where a thermostat starts the fan: common practice, no source
EARLIER: Annotated[Kelvins, Tag("start of a fan before the limit")] = 5.0
# Which nothing in a bay survives: common practice, no source
RUIN: Annotated[Celsius, Tag("air that nothing in a bay survives")] = 150.0
# A square metre of plywood of 12 mm, with its films of air: common practice, no source
WALLS: Annotated[WattsPerKelvin, Tag("heat that the walls of a small bay pass")] = 3.0
# Of heat in a shut bay, which its walls pass by themselves: common practice, no source
LITTLE_HEAT: Annotated[HeatWatts, Tag("heat that a shut bay gets rid of")] = 15.0
# Of heat, which cooks a shut locker however it is built: common practice, no source
MUCH_HEAT: Annotated[HeatWatts, Tag("heat that a shut bay does not get rid of")] = 40.0


class Ventilation(Enumeration):
    """What moves the air of a bay: a fan, draught through two vents, or nothing that is known."""

    FAN = "fan"
    VENTS = "vents"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class Device:
    """A device in a bay: what it delivers, how well, and the heat that stays.

    `throughput` and `efficiency` are None where its heat is known without them.
    """

    throughput: Watts | None
    efficiency: Share | None
    heat: HeatWatts


@dataclass(frozen=True, kw_only=True)
class Bay:
    """A bay with its devices, between the air drawn in and the warmest that is allowed inside.

    `height` is between the middles of a low and a high vent, `vents` the free area of each, with
    their `discharge` coefficient, and `fan` the flow of one. None is not known to be there.
    """

    first: Device
    others: tuple[Device, ...]
    inside_limit: Celsius
    outside: Celsius
    height: Metres
    discharge: Number
    vents: OpeningSquareMetres | None
    fan: CubicMetresPerSecond | None
    other_heat: HeatWatts
    heat: HeatWatts
    density: KilogramsPerCubicMetre

    @property
    def shut(self) -> bool:
        """Whether it is known that no air gets in or out, so that a fan moves none either."""
        return self.vents == 0

    @property
    def wall_rise(self) -> Kelvins | None:
        """How much warmer it gets by its walls alone, None where its heat is too much for them."""
        return None if at_least(self.heat, MUCH_HEAT) else self.heat / WALLS

    @property
    def ventilation(self) -> Ventilation:
        """What moves its air: the fan, if there is one, and draught is not added."""
        if self.fan is not None:
            return Ventilation.FAN
        return Ventilation.UNKNOWN if self.vents is None else Ventilation.VENTS


@dataclass(frozen=True, kw_only=True)
class NeededAir:
    """The air that holds a bay at its limit, by a fan or by the draught of two alike vents.

    `speed` is that of the draught for each open area, `effective` the area as of one opening.
    """

    rise: Kelvins
    airflow: CubicMetresPerSecond
    speed: MetresPerSecond
    effective: OpeningSquareMetres
    vent_area: OpeningSquareMetres


@dataclass(frozen=True, kw_only=True)
class BayAir:
    """What a bay gets to with the air it has, or through its walls (`walled`) where that is less.

    `wall_rise` is how much warmer than the air outside it is then, None where they do not count.
    `reached` is None where nothing tells, and where it is `ruined`: hotter than anything in it
    survives. `fan_rise` is that of a fan's air, `vent_speed` what it would blow at through the
    vents, `draught` what flows through them without one.
    """

    reached: Celsius | None
    wall_rise: Kelvins | None
    ruined: bool
    fan_rise: Kelvins | None
    vent_speed: MetresPerSecond | None
    draught: CubicMetresPerSecond | None

    @property
    def walled(self) -> bool:
        """Whether it is through its walls."""
        return self.wall_rise is not None


@dataclass(frozen=True, kw_only=True)
class Derated:
    """What a charger of a `rated` current keeps at a temperature `at`, over some `hours`.

    Full output up to `rated_to`, then less by `derating` for each degree.
    """

    at: Celsius
    rated_to: Celsius
    derating: SharePerKelvin
    rated: Amperes
    hours: Seconds
    output_left: Share
    charge_lost: Coulombs


@dataclass(frozen=True, kw_only=True)
class Enclosure:
    """A bay, the air it needs and has, and what its heat costs.

    `needed` is None where no air of that temperature can hold the limit, `derated` where nothing
    tells what is reached; it is at the limit where no vent or fan is known. `thermostat` is None
    where one would never rest.
    """

    bay: Bay
    needed: NeededAir | None
    air: BayAir
    derated: Derated | None
    thermostat: Celsius | None

    @property
    def within_limit(self) -> bool:
        """Whether the bay is known to stay within its limit, or taken as held at it."""
        return self.derated is not None and at_most(self.derated.at, self.bay.inside_limit)


def device(throughput: float, efficiency: float) -> Device:
    """Return a device that delivers `throughput` [W] with `efficiency` [0..1]."""
    heat = airflow.dissipated(throughput, efficiency)
    return Device(throughput=throughput, efficiency=efficiency, heat=heat)


def known_heat(heat: float) -> Device:
    """Return a device of which only its `heat` [W] is known."""
    return Device(throughput=None, efficiency=None, heat=heat)


def bay(
    first: Device,
    others: tuple[Device, ...],
    *,
    inside_limit: float,
    outside: float,
    height: float,
    discharge: float,
    vents: float | None,
    fan: float | None,
) -> Bay:
    """Return a bay between `outside` and `inside_limit` [°C] with `vents` [m²] and `fan` [m³/s]."""
    others_heat = sum(one.heat for one in others)
    return Bay(
        first=first,
        others=others,
        inside_limit=inside_limit,
        outside=outside,
        height=height,
        discharge=discharge,
        vents=vents,
        fan=fan,
        other_heat=others_heat,
        heat=first.heat + others_heat,
        density=airflow.density(outside),
    )


def needed_air(of: Bay) -> NeededAir | None:
    """Return the air that holds the bay `of` at its limit, or None where none of it can."""
    if not of.outside < of.inside_limit:
        return None
    rise = of.inside_limit - of.outside
    flow = airflow.carrying_flow(of.heat, rise, of.outside)
    column = (of.discharge, of.height, of.outside, of.inside_limit)
    area = airflow.vent_area(flow, *column)
    return NeededAir(
        rise=rise,
        airflow=flow,
        speed=airflow.stack_flow(1.0, *column),
        effective=area / sqrt(2),
        vent_area=area,
    )


def bay_air(of: Bay) -> BayAir:
    """Return what the bay `of` gets to by its fan, or else by the draught through its vents.

    Where little heat is made its walls may do better, or are all that it needs.
    """
    rise = reached = draught = None
    if of.shut:
        reached = inf
    elif of.fan is not None:
        rise = of.heat / (of.density * airflow.AIR_HEAT_BY_MASS * of.fan)
        reached = of.outside + rise
    elif of.vents is not None:
        reached = airflow.reached_by_draught(of.heat, of.vents, of.discharge, of.height, of.outside)
    elif at_most(of.heat, LITTLE_HEAT):
        reached = inf
    wall_rise = of.wall_rise if reached is not None else None
    if wall_rise is not None and reached is not None and of.outside + wall_rise < reached:
        rise, reached = None, of.outside + wall_rise
    else:
        wall_rise = None
    ruined = reached is not None and not at_most(reached, RUIN)
    if ruined:
        rise = reached = None
    if of.fan is None and of.vents and reached is not None and wall_rise is None:
        effective = airflow.series_area(of.vents, of.vents)
        draught = airflow.stack_flow(effective, of.discharge, of.height, of.outside, reached)
    both = of.fan is not None and of.vents is not None
    return BayAir(
        reached=reached,
        wall_rise=wall_rise,
        ruined=ruined,
        fan_rise=rise,
        vent_speed=of.fan / of.vents if both and of.fan and of.vents else None,
        draught=draught,
    )


def derated(*, at: float, rated_to: float, derating: float, rated: float, hours: float) -> Derated:
    """Return what a charger of `rated` current [A] keeps at a temperature `at` [°C].

    By `calc.comfort.airflow.output_left`, full up to `rated_to` [°C], then `derating` [1/K] less;
    and the charge that is lost in `hours` [s], as `calc.energy.feeds` reckons it.
    """
    left = airflow.output_left(at, rated_to, derating)
    return Derated(
        at=at,
        rated_to=rated_to,
        derating=derating,
        rated=rated,
        hours=hours,
        output_left=left,
        charge_lost=charger_current(limit=rated, output_left=1 - left) * hours,
    )


def enclosure(
    *,
    throughput: float,
    efficiency: float,
    given_heat: float | None,
    inside_limit: float,
    outside: float,
    height: float,
    vents: float | None,
    fan: float | None,
    rated_to: float,
    derating: float,
    rated: float,
    hours: float,
    discharge: float,
    throughput_2: float,
    efficiency_2: float,
    throughput_3: float,
    efficiency_3: float,
) -> Enclosure:
    """Return the air that a bay needs between `outside` and `inside_limit` [°C], and what it has.

    The device has `given_heat` [W], or else delivers `throughput` [W] with `efficiency`; two others
    work beside it. Units are those of `bay` and `derated`.
    """
    of = bay(
        device(throughput, efficiency) if given_heat is None else known_heat(given_heat),
        (device(throughput_2, efficiency_2), device(throughput_3, efficiency_3)),
        inside_limit=inside_limit,
        outside=outside,
        height=height,
        discharge=discharge,
        vents=vents,
        fan=fan,
    )
    needed, air = needed_air(of), bay_air(of)
    unknown = of.ventilation is Ventilation.UNKNOWN and air.reached is None
    at = inside_limit if unknown and needed else air.reached
    starts = min(rated_to, inside_limit) - EARLIER
    return Enclosure(
        bay=of,
        needed=needed,
        air=air,
        derated=None
        if at is None
        else derated(at=at, rated_to=rated_to, derating=derating, rated=rated, hours=hours),
        thermostat=starts if starts > outside else None,
    )

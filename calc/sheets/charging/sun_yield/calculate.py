"""The sum of sun-yield: a clear day on the plane, the share of it that comes, what the bank gets."""

from dataclasses import dataclass
from functools import cache
from math import cos, pi, radians, sin

from calc.energy import panels, sun
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
MPPT, PWM = "MPPT", "PWM"
TURBIDITY = 3.0  # Linke, under which the measured places are set against a clear day


@dataclass(frozen=True, kw_only=True)
class Month:
    """The 15th of one month: sums of a clear day [J/m²], and what a usual day gives [J, A·s]."""

    month: str
    extraterrestrial: float
    on_plane: float
    energy: float
    charge: float


@dataclass(frozen=True, kw_only=True)
class Place:
    """A place with published sums: its latitude [deg] and the share of a clear day it gets."""

    place: str
    at: float
    share: float


@dataclass(frozen=True, kw_only=True)
class Loss:
    """One usual loss and its share of what is left."""

    loss: str
    share: float


@dataclass(frozen=True, kw_only=True)
class SunYield:
    """A day's yield and what leads to it: sums of a clear day [J/m²], energies [J], charge [A·s].

    `grey_energy` is the energy if cloud spread all the light over the sky; `reached` tells that
    the panels' voltage is above the bank's.
    """

    declination: float
    noon: float
    daylight: float
    solar_constant: float
    nearness: float
    beyond: float
    day: float
    both_sines: float
    both_cosines: float
    extraterrestrial: float
    clear_sky: float
    diffuse: float
    direct: float
    sky_seen: float
    ground_seen: float
    on_plane: float
    from_sunshine: bool
    sky_used: float
    full_sun: float
    sun_hours: float
    bright: float | None
    warming: float | None
    rise: float | None
    cell: float | None
    standard: float
    over: float | None
    heat_keeps: float
    reached: bool
    regulator_keeps: float
    energy: float
    charge: float
    covered: float | None
    grey_energy: float
    grey_charge: float
    peak_current: float
    months: tuple[Month, ...]
    best_month: str
    worst_month: str
    worst_energy: float
    usual_loss: float
    loss_parts: tuple[Loss, ...]
    skies: tuple[Place, ...]


@cache
def _places(month: str) -> tuple[Place, ...]:
    """Return the share of a clear day, on level ground, that each measured place has in `month`."""
    number = MONTHS.index(month)

    def clear(row: dict[str, str]) -> float:
        return sun.day_on_plane(
            latitude=float(row["latitude_deg"]), day_of_year=sun.MID_DAYS[number], tilt=0.0,
            facing=180.0, turbidity=TURBIDITY, altitude=float(row["altitude_m"]),
        ).horizontal  # fmt: skip

    return tuple(
        Place(
            place=row["place"],
            at=float(row["latitude_deg"]),
            share=float(row[f"m{number + 1}"]) * 3.6e6 / clear(row),
        )
        for row in table("typical_sun").rows
    )


def _sky(sky: float, sunshine: float | None, daylight: float) -> tuple[bool, float]:
    """Return whether the share of a clear day comes from hours of sunshine, and that share."""
    if sunshine is not None and not at_most(sunshine, daylight):
        raise Problem(
            "sunshine",
            f"Hours of bright sun, if you know them, must be at most the {daylight / 3600:.2f} h between sunrise and sunset.",
        )
    if sunshine is None or not daylight:
        return False, sky
    return True, sun.cloud_share(sunshine=sunshine, daylight=daylight)


def run(
    *, latitude: float, month: str, array: float, tilt: float, facing: float, sky: float,
    losses: float, voltage: float, daily_use: float | None, sunshine: float | None,
    regulator: str, panel_voltage: float, air: float | None, mount: str, heat_coefficient: float,
    turbidity: float, altitude: float, albedo: float,
) -> SunYield:
    """Return what `array` [W] at `latitude` [deg] brings on the 15th of `month`."""
    days = [
        sun.day_on_plane(
            latitude=latitude, day_of_year=number, tilt=tilt, facing=facing, turbidity=turbidity,
            altitude=altitude, albedo=albedo,
        )
        for number in sun.MID_DAYS
    ]  # fmt: skip
    chosen = MONTHS.index(month)
    day, number = days[chosen], sun.MID_DAYS[chosen]
    by_sun, share = _sky(sky, sunshine, day.daylight)
    reached = regulator != PWM or not at_least(voltage, panel_voltage)
    passed = 1.0 if regulator != PWM else voltage / panel_voltage if reached else 0.0
    warming = panels.warming(mount)

    def cool(one: sun.SunDay) -> float:
        if air is None:
            return 1.0
        over = air + one.bright * warming - panels.STANDARD
        return max(0.0, 1 - heat_coefficient * max(over, 0.0))

    def gives(one: sun.SunDay, light: float) -> float:
        left = (1 - losses) * cool(one) * passed
        return array * light * share / panels.FULL_SUN * left

    months = tuple(
        Month(
            month=name,
            extraterrestrial=one.extraterrestrial,
            on_plane=one.on_plane,
            energy=gives(one, one.on_plane),
            charge=gives(one, one.on_plane) / voltage,
        )
        for name, one in zip(MONTHS, days, strict=True)
    )
    energy = months[chosen].energy
    worst = min(months, key=lambda one: one.energy)
    sky_seen, ground_seen = (1 + cos(radians(tilt))) / 2, (1 - cos(radians(tilt))) / 2
    grey = gives(day, day.horizontal * (sky_seen + albedo * ground_seen))
    north, lean = radians(latitude), sun.declination(number)
    bright = None if air is None else day.bright
    rise = None if air is None else day.bright * warming
    cell = None if air is None or rise is None else air + rise
    return SunYield(
        declination=lean * 180 / pi,
        noon=day.noon,
        daylight=day.daylight,
        solar_constant=sun.SOLAR_CONSTANT,
        nearness=sun.nearness(number),
        beyond=sun.SOLAR_CONSTANT * sun.nearness(number),
        day=sun.DAY,
        both_sines=sin(north) * sin(lean),
        both_cosines=cos(north) * cos(lean) * sin(sun.sunset_angle(north, lean)),
        extraterrestrial=day.extraterrestrial,
        clear_sky=day.horizontal,
        diffuse=day.diffuse,
        direct=day.direct,
        sky_seen=sky_seen,
        ground_seen=ground_seen,
        on_plane=day.on_plane,
        from_sunshine=by_sun,
        sky_used=share,
        full_sun=panels.FULL_SUN,
        sun_hours=day.on_plane * share / panels.FULL_SUN,
        bright=bright,
        warming=None if air is None else warming,
        rise=rise,
        cell=cell,
        standard=panels.STANDARD,
        over=None if cell is None else cell - panels.STANDARD,
        heat_keeps=cool(day),
        reached=reached,
        regulator_keeps=passed,
        energy=energy,
        charge=energy / voltage,
        covered=None if daily_use is None else energy / daily_use,
        grey_energy=grey,
        grey_charge=grey / voltage,
        peak_current=array / (panel_voltage if regulator == PWM else voltage),
        months=months,
        best_month=max(months, key=lambda one: one.energy).month,
        worst_month=worst.month,
        worst_energy=worst.energy,
        usual_loss=panels.together(tuple(share for _, share in panels.usual_losses())),
        loss_parts=tuple(Loss(loss=name, share=one) for name, one in panels.usual_losses()),
        skies=_places(month),
    )

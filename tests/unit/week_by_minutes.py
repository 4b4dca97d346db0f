"""A bank's week by another way: minute by minute, in amps instead of energies, step by step.

It shares with the code under test only published constants and the sun's sums by the hour.
"""

from math import acos, asin, degrees, radians, sin, tan

FULL_MINUTES = 24 * 60


def declination(day_of_year):
    """Return the sun's declination [deg], Cooper's line, good to about half a degree."""
    return degrees(asin(sin(radians(23.45)) * sin(radians(360 / 365 * (day_of_year - 81)))))


def is_light(minute, latitude, day_of_year):
    """Return whether the sun is up at this minute of the day."""
    cosine = -tan(radians(latitude)) * tan(radians(declination(day_of_year)))
    half = degrees(acos(max(-1, min(1, cosine)))) / 15
    return 12 - half <= (minute + 0.5) / 60 <= 12 + half


def week_by_minutes(
    *,
    amp_hours,
    volts,
    charge_volts,
    start,
    floor,
    coulombic,
    taper_hours,
    most_per_hour,
    exponent,
    monthly_loss,
    sun_watts,
    drive_amps,
    drive_minutes,
    lead_amps,
    lead_every,
    direct_loads,
    latitude,
    day_of_year,
    days=7,
):
    """Return the state at the end of each minute and when the bank was first empty [h], or None.

    `sun_watts` by the hour; `drive_minutes` from 10 o'clock; a lead from 20 to 6 o'clock;
    `direct_loads` as (watts, hours, "day" or "night").
    """
    light = [is_light(m, latitude, day_of_year) for m in range(FULL_MINUTES)]
    part_minutes = {"day": sum(light), "night": FULL_MINUTES - sum(light)}
    state, states, empty = start, [], None
    for minute in range(days * FULL_MINUTES):
        day, of_day = divmod(minute, FULL_MINUTES)
        now = "day" if light[of_day] else "night"
        watts = sum(
            power * hours * 60 / part_minutes[part]
            for power, hours, part in direct_loads
            if part == now
        )
        given = sun_watts[of_day // 60]
        if 600 <= of_day < 600 + drive_minutes:
            given += drive_amps * charge_volts
        evening = of_day >= 1200 and (day + 1) % lead_every == 0
        morning = of_day < 360 and day > 0 and day % lead_every == 0
        if evening or morning:
            given += lead_amps * charge_volts
        if given >= watts:
            amps = (given - watts) / charge_volts
            amps = min(amps, most_per_hour * amp_hours, (1 - state) * amp_hours / taper_hours)
            state += amps * coulombic / 60 / amp_hours
        else:
            amps = (watts - given) / volts
            amps *= max(1.0, watts / volts / (amp_hours / 20)) ** (exponent - 1)
            if state - amps / 60 / amp_hours <= floor:
                empty = minute / 60 if empty is None else empty
                state = min(state, floor)
            else:
                state -= amps / 60 / amp_hours
        state = max(0.0, state - monthly_loss / (365.25 / 12 * FULL_MINUTES))
        states.append(state)
    return states, empty

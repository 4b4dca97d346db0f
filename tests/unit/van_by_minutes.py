"""A van's fortnight by another way: minute by minute, in amps, each load on or off as a clock says.

It knows nothing of hours, levels and parts; with the code under test it shares only published
constants and the sun's sums by the hour.
"""

DAY = 24 * 60


def clock(*, starts, minutes):
    """Return for each minute of a day whether a load is on that runs so many from each start."""
    on = [False] * DAY
    for start in starts:
        for minute in range(start, start + minutes):
            on[minute % DAY] = True
    return on


def thermostat(*, share, every):
    """Return for each minute of a day whether a load is on that cuts in so often for a share."""
    return [minute % every < share * every for minute in range(DAY)]


def fortnight(
    *,
    amp_hours,
    volts,
    charge_volts,
    coulombic,
    taper_hours,
    most_per_hour,
    exponent,
    monthly_loss,
    floor,
    sun_watts,
    loads,
    idle,
    efficiency,
    days=14,
):
    """Return the state [0..1] at the end of each minute.

    `loads` are (watts, through the inverter, minutes of the day on); `sun_watts` by the hour. The
    inverter idles while it feeds something.
    """
    state, states = 1.0, []
    for minute in range(days * DAY):
        of_day = minute % DAY
        watts, inverter = 0.0, False
        for power, fed, on in loads:
            if on[of_day]:
                watts += power / efficiency if fed else power
                inverter = inverter or fed
        watts += idle if inverter else 0.0
        given = sun_watts[of_day // 60]
        if given >= watts:
            amps = (given - watts) / charge_volts
            amps = min(amps, most_per_hour * amp_hours, (1 - state) * amp_hours / taper_hours)
            state += amps * coulombic / 60 / amp_hours
        else:
            amps = (watts - given) / volts
            amps *= max(1.0, watts / volts / (amp_hours / 20)) ** (exponent - 1)
            state = max(min(state, floor), state - amps / 60 / amp_hours)
        state = max(0.0, state - monthly_loss / (365.25 / 12 * DAY))
        states.append(state)
    return states

"""The sum of light-dimming."""

from dataclasses import dataclass

from calc.energy import loads
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem
from calc.worksheet.next_steps import Move

STRIP, FILAMENT, REGULATED = "LED strip", "filament", "own regulator"
MINUS, PLUS, UNKNOWN = "minus", "plus", "not known"
OWN_WIRE, BODY = "own wire", "the body"
DAY = 86400.0  # s
MARGIN = 1.25  # of the highest current, that a dimmer should be rated for: common practice, no source
CALM = 1250.0  # Hz, from which pulses that go fully dark count as low risk: from memory, IEEE 1789


@dataclass(frozen=True, kw_only=True)
class LightDimming:
    """Charge [A·s] of an evening, full and dimmed, and what the dimmer must bear [A].

    None where a lamp with a regulator of its own does not tell what it takes when dimmed.
    """

    zone: float
    full_charge: float
    exponent: float | None
    power_share: float | None
    dimmed_charge: float | None
    saved_charge: float | None
    light_exponent: float | None
    light: float | None
    dark: bool
    seen: float | None
    lasts: float | None
    dimmer_current: float
    charging_voltage: float
    growth: float
    charging_current: float
    margin: float
    dimmer_rating: float
    day: float
    own_charge: float
    regulated: bool
    too_small: bool
    tight: bool
    flickers: bool
    shorted: bool
    may_short: bool
    onward: tuple[Move, ...]


def run(
    *, power: float, level: float, hours: float, voltage: float, lamp: str, zone_power: float | None, rated: float | None,
    switches: str, returns: str, rise: float, held: float, frequency: float | None, own: float,
) -> LightDimming:
    """Return what lamps of `power` [W] take for `hours` [s] at a share `level` of the time."""
    zone = power if zone_power is None else zone_power
    if not at_most(zone, power):
        raise Problem("zone_power", "Largest zone on one dimmer must be no more than the power of all lamps.")
    full = power / voltage * hours
    exponents = {STRIP: (1.0, 1.0), FILAMENT: (loads.FILAMENT_POWER / 2, loads.FILAMENT_LIGHT / 2)}.get(lamp)
    share = dimmed = light = seen = None
    if exponents:
        share = loads.pulsed_share(level=level, exponent=exponents[0])
        light = loads.pulsed_share(level=level, exponent=exponents[1])
        dimmed, seen = full * share, loads.lightness(light)
    growth = 1.0
    if lamp == STRIP:
        growth = loads.strip_growth(rise=rise, held=held)
    elif lamp == FILAMENT:
        growth = float(rise**loads.FILAMENT_CURRENT)
    current = zone / voltage
    highest = current * growth
    return LightDimming(
        zone=zone,
        full_charge=full,
        exponent=exponents[0] if exponents else None,
        power_share=share,
        dimmed_charge=dimmed,
        saved_charge=None if dimmed is None else full - dimmed,
        light_exponent=exponents[1] if exponents else None,
        light=light,
        dark=light is not None and light <= loads.DARK,
        seen=seen,
        lasts=hours / share if share else None,
        dimmer_current=current,
        charging_voltage=voltage * rise,
        growth=growth,
        charging_current=highest,
        margin=MARGIN,
        dimmer_rating=MARGIN * highest,
        day=DAY,
        own_charge=own * DAY,
        regulated=not exponents,
        too_small=rated is not None and not at_least(rated, highest),
        tight=rated is not None and not at_least(rated, MARGIN * highest),
        flickers=frequency is not None and level < 1 and not at_least(frequency, CALM),
        shorted=switches == MINUS and returns == BODY,
        may_short=(switches == MINUS and returns == UNKNOWN) or (switches == UNKNOWN and returns == BODY),
        onward=(Move("What the wire to it loses", (("current", f"{highest:.6g} A"), ("voltage", f"{voltage:.6g} V")), "wire-drop"),) if at_least(2000.0, highest) else (),
    )

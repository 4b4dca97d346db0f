"""Lamps fed in pulses: what they take, how bright they seem, what the dimmer carries.

In scope: strips with resistors, and filaments. Out of scope: lamps with a regulator of their own,
which do not follow the pulses: for them there is no figure.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.energy import loads
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Amperes, Coulombs, Hertz, Number, Seconds, Share, Tag, Volts, Watts

# The most that flows through a dimmer, with this margin, is its rating: common practice, no source
DIMMER_MARGIN: Annotated[Number, Tag("margin of a dimmer")] = 1.25
# From here on pulses that go fully dark count as low risk: IEEE 1789, from memory
CALM_PULSES: Annotated[Hertz, Tag("lowest calm pulse frequency")] = 1250.0


class Lamp(Enumeration):
    """What follows the pulses, and how."""

    STRIP = "LED-strip"
    FILAMENT = "filament"
    REGULATED = "own-regulator"


class Switched(Enumeration):
    """The conductor that a dimmer interrupts."""

    UNKNOWN = "not-known"
    PLUS = "plus"
    MINUS = "minus"


class Return(Enumeration):
    """How a lamp's minus goes back."""

    UNKNOWN = "not-known"
    OWN_WIRE = "own-wire"
    BODY = "the-body"


_EXPONENTS = {
    Lamp.STRIP: (1.0, 1.0),
    Lamp.FILAMENT: (loads.FILAMENT_POWER / 2, loads.FILAMENT_LIGHT / 2),
}


@dataclass(frozen=True, kw_only=True)
class Lights:
    """Lamps of `power` on a bank of `voltage`, dimmed to a share `level` of the time.

    The charger lifts the voltage by the factor `rise`; the diodes of a strip hold a share `held`.
    """

    power: Watts
    level: Share
    hours: Seconds
    voltage: Volts
    lamp: Lamp
    rise: Share
    held: Share


@dataclass(frozen=True, kw_only=True)
class Dimmer:
    """A dimmer: its rating, what it interrupts, how the lamps' minus returns, pulses, own draw."""

    rated: Amperes | None
    switches: Switched
    returns: Return
    frequency: Hertz | None
    own: Amperes


@dataclass(frozen=True, kw_only=True)
class Dimming:
    """Charge of an evening, full and dimmed, and what the dimmer must carry.

    `power_share` and `light` are shares of full power and light, `seen` how bright it seems. They,
    and what follows from them, are None for a lamp that does not follow the pulses.
    """

    lights: Lights
    dimmer: Dimmer
    zone: Watts
    full_charge: Coulombs
    exponent: Number | None
    power_share: Share | None
    dimmed_charge: Coulombs | None
    saved_charge: Coulombs | None
    light_exponent: Number | None
    light: Share | None
    seen: Share | None
    lasts: Seconds | None
    dimmer_current: Amperes
    charging_voltage: Volts
    growth: Number
    charging_current: Amperes
    margin: Number
    dimmer_rating: Amperes
    day: Seconds
    own_charge: Coulombs

    @property
    def follows(self) -> bool:
        """Whether the lamps follow the pulses."""
        return self.exponent is not None

    @property
    def dark(self) -> bool:
        """Whether the light is so little that lightness is a straight line."""
        return self.light is not None and self.light <= loads.DARK

    @property
    def bridged(self) -> bool:
        """Whether the body carries the lamps' minus past a dimmer that interrupts it."""
        return self.dimmer.switches is Switched.MINUS and self.dimmer.returns is Return.BODY

    @property
    def perhaps_bridged(self) -> bool:
        """Whether it might, as far as is known."""
        switches, returns = self.dimmer.switches, self.dimmer.returns
        return (switches is Switched.MINUS and returns is Return.UNKNOWN) or (
            switches is Switched.UNKNOWN and returns is Return.BODY
        )

    @property
    def slow(self) -> bool:
        """Whether the pulses are slow enough to tire eyes."""
        frequency = self.dimmer.frequency
        return (
            frequency is not None and self.lights.level < 1 and not at_least(frequency, CALM_PULSES)
        )


def dimming(
    *,
    power: float,
    level: float,
    hours: float,
    voltage: float,
    lamp: Lamp,
    zone_power: float | None,
    rated: float | None,
    switches: Switched,
    returns: Return,
    rise: float,
    held: float,
    frequency: float | None,
    own: float,
) -> Dimming:
    """Return what lamps of `power` [W] take for `hours` [s] at a share `level` of the time.

    `voltage` [V] is the bank's under this load and `rise` what a charger makes of it, as a factor;
    `held` is the share of it across a strip's diodes. `zone_power` [W] is the largest zone on one
    dimmer, `rated` [A] the dimmer's rating, `frequency` [Hz] that of its pulses, `own` [A] its own
    draw. Ohm's law, pulse averages, lamp rerating and CIE 1976 lightness (`calc.energy.loads`).
    Raises NotCovered for a zone larger than all lamps, or a name that is not in an enumeration.
    """
    lamp = Lamp(lamp)
    zone = power if zone_power is None else zone_power
    if not at_most(zone, power):
        raise NotCovered("zone_power", "must be no more than the power of all lamps.")
    full = power / voltage * hours
    exponents = _EXPONENTS.get(lamp)
    share = dimmed = light = seen = None
    if exponents:
        share = loads.pulsed_share(level=level, exponent=exponents[0])
        light = loads.pulsed_share(level=level, exponent=exponents[1])
        dimmed, seen = full * share, loads.lightness(light)
    growth = 1.0
    if lamp is Lamp.STRIP:
        growth = loads.strip_growth(rise=rise, held=held)
    elif lamp is Lamp.FILAMENT:
        growth = float(rise**loads.FILAMENT_CURRENT)
    current = zone / voltage
    return Dimming(
        lights=Lights(
            power=power,
            level=level,
            hours=hours,
            voltage=voltage,
            lamp=lamp,
            rise=rise,
            held=held,
        ),
        dimmer=Dimmer(
            rated=rated,
            switches=Switched(switches),
            returns=Return(returns),
            frequency=frequency,
            own=own,
        ),
        zone=zone,
        full_charge=full,
        exponent=exponents[0] if exponents else None,
        power_share=share,
        dimmed_charge=dimmed,
        saved_charge=None if dimmed is None else full - dimmed,
        light_exponent=exponents[1] if exponents else None,
        light=light,
        seen=seen,
        lasts=hours / share if share else None,
        dimmer_current=current,
        charging_voltage=voltage * rise,
        growth=growth,
        charging_current=current * growth,
        margin=DIMMER_MARGIN,
        dimmer_rating=DIMMER_MARGIN * current * growth,
        day=DAY,
        own_charge=own * DAY,
    )

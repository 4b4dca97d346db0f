"""What a load takes from the bank, and what is left of it when lamps are dimmed.

In scope: steady loads, and lamps fed in pulses. Out of scope: lamps with a regulator of their own,
which do not follow the pulses.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.electrical.fuses import CONTINUOUS
from calc.electrical.single_cable import SingleCable, single_cable
from calc.electrical.sizing import CHARGED, usual_ampacity
from calc.units.compare import at_most
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Coulombs,
    Joules,
    Number,
    Seconds,
    Share,
    Tag,
    Volts,
    Watts,
)

# Of full light, below which lightness is a straight line: CIE 1976
DARK: Annotated[Share, Tag("light below which lightness is a straight line")] = 0.008856
# Of a filament's voltage: lamp rerating
FILAMENT_POWER: Annotated[Number, Tag("exponent of a filament's power")] = 1.6
# The same: lamp rerating
FILAMENT_CURRENT: Annotated[Number, Tag("exponent of a filament's current")] = 0.55
# The same: lamp rerating
FILAMENT_LIGHT: Annotated[Number, Tag("exponent of a filament's light")] = 3.4

HEAVY_CABLE = "2/0 AWG"  # the thickest that is handled with ease: common practice, no source


class Route(Enumeration):
    """How a load is fed from the bank."""

    DIRECT = "direct"
    INVERTER = "inverter"


@dataclass(frozen=True, kw_only=True)
class BankLoad:
    """A steady load on a bank of `voltage` under it: the current that it draws there.

    `power` is None where the current was measured at the bank. `efficiency` is that of an inverter,
    `factor` what of it applies: 1 for what is fed directly or was measured.
    """

    power: Watts | None
    voltage: Volts
    route: Route
    efficiency: Share
    factor: Share
    current: Amperes

    @property
    def through_inverter(self) -> bool:
        """Whether an inverter feeds it."""
        return self.route is Route.INVERTER


@dataclass(frozen=True, kw_only=True)
class HeatFromBank:
    """The `charge` that a resistance takes over a `time`, and its share of what is used.

    `holds_warmth` tells that it keeps a space warm for as long as it is cold, and not a job that
    comes to its end. `share` is None where the bank is not known.
    """

    load: BankLoad
    time: Seconds
    holds_warmth: bool
    charge: Coulombs
    share: Share | None

    @property
    def current(self) -> Amperes:
        """The current from the bank while it heats."""
        return self.load.current


class LoadType(Enumeration):
    """What a load does with its power."""

    ANY = "any-load"
    HEAT = "resistive-heat"


@dataclass(frozen=True, kw_only=True)
class Consumption:
    """What a load takes from the bank over a `time`: `charge` and `energy`, losses included.

    `heavy_cable` is what 2/0 AWG carries with 105 °C insulation, 33 CFR 183.425 table 5, and
    `single_cable` tells whether one cable carries the current at all.
    """

    load: BankLoad
    load_type: LoadType
    time: Seconds
    charge: Coulombs
    energy: Joules
    heavy_cable: Amperes
    single_cable: SingleCable

    @property
    def beyond_heavy_cable(self) -> bool:
        """Whether the heaviest cable that is handled with ease cannot carry it and a quarter."""
        return not at_most(CONTINUOUS * self.load.current, self.heavy_cable)

    @property
    def heat(self) -> HeatFromBank | None:
        """What is made into heat by a resistance, None for any other load."""
        if self.load_type is not LoadType.HEAT:
            return None
        return HeatFromBank(
            load=self.load, time=self.time, holds_warmth=False, charge=self.charge, share=None
        )


def consumption(
    *,
    power: float,
    voltage: float,
    route: Route,
    efficiency: float,
    time: float,
    load_type: LoadType,
) -> Consumption:
    """Return what `power` [W] takes in a `time` [s] from a bank at `voltage` [V].

    See `of_power`. Raises NotCovered for a name that is not in an enumeration.
    """
    load = of_power(power=power, voltage=voltage, route=route, efficiency=efficiency)
    return Consumption(
        load=load,
        load_type=LoadType(load_type),
        time=time,
        charge=load.current * time,
        energy=power * time / load.factor,
        heavy_cable=usual_ampacity(HEAVY_CABLE),
        single_cable=single_cable(current=load.current, max_voltage=CHARGED * voltage),
    )


def of_power(*, power: float, voltage: float, route: Route, efficiency: float) -> BankLoad:
    """Return what `power` [W] draws from a bank at `voltage` [V]; see `bank_current`.

    `efficiency` [0..1] applies where an inverter feeds it. Raises NotCovered for a route that is
    none.
    """
    factor = efficiency if Route(route) is Route.INVERTER else 1.0
    return BankLoad(
        power=power,
        voltage=voltage,
        route=Route(route),
        efficiency=efficiency,
        factor=factor,
        current=bank_current(power, voltage, factor),
    )


def of_current(*, current: float, voltage: float, route: Route, efficiency: float) -> BankLoad:
    """Return a load whose `current` [A] was measured at the bank, losses included. NotCovered."""
    return BankLoad(
        power=None,
        voltage=voltage,
        route=Route(route),
        efficiency=efficiency,
        factor=1.0,
        current=current,
    )


def bank_current(power: float, voltage: float, efficiency: float) -> float:
    """Return the current [A] drawn from the bank by `power` [W] at bank `voltage` [V].

    I = P/(V eta). `efficiency` is that of whatever stands between (1 for a direct connection).
    """
    return power / (voltage * efficiency)


def pulsed_share(*, level: float, exponent: float) -> float:
    """Return the share of power that a lamp takes when fed a share `level` [0..1] of the time.

    A light-emitting diode works at its full current or not at all: `exponent` 1. A filament is
    cooler, and so of less resistance: it sees the root of `level` of its voltage, and its power
    goes with voltage to the power 1.6, which makes 0.8 (lamp rerating; near the design point).
    """
    return float(level**exponent)


def lightness(light: float) -> float:
    """Return how bright a share `light` [0..1] of full light seems to the eye, as a share.

    CIE 1976 lightness, 116 Y^(1/3) - 16 in percent, a straight line near the dark. For surfaces
    side by side: an eye that has got used to the dark sees dim light as brighter still.
    """
    if light <= DARK:
        return 9.033 * light
    return float((116 * light ** (1 / 3) - 16) / 100)


def strip_growth(*, rise: float, held: float) -> float:
    """Return how much more current a strip takes at `rise` times its voltage, as a factor.

    The diodes of a string hold a share `held` [0..1) of the voltage whatever flows; only the rest
    stands across the resistor. High side: real diodes hold a little more as the current grows.
    """
    return (rise - held) / (1 - held)

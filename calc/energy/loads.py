"""What a load asks of the bank, and what is left of it when lamps are dimmed.

In scope: steady loads, and lamps fed in pulses. Out of scope: lamps with a regulator of their own,
which do not follow the pulses.
"""

DARK = 0.008856  # share of full light, below which lightness is a straight line: CIE 1976
FILAMENT_POWER, FILAMENT_CURRENT, FILAMENT_LIGHT = 1.6, 0.55, 3.4  # exponents of voltage: rerating


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

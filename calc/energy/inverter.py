"""What an inverter must bear, and what it asks of bank and cable.

In scope: steady loads, and the start of one motor while the others run. Out of scope: how long an
inverter holds a surge, and its efficiency at part load but for a fixed figure and an idle draw.
"""

from dataclasses import dataclass
from functools import cache

from calc.tables import FROM_MEMORY, table

_SAID = f" ({FROM_MEMORY})"


def apparent_power(power: float, power_factor: float) -> float:
    """Return the apparent power [V·A] of `power` [W] at `power_factor` [0..1]. S = P/λ."""
    return power / power_factor


def starting_power(*, running: float, motor: float, factor: float) -> float:
    """Return the power [W] as `motor` [W] starts while the rest of `running` [W] goes on.

    `running` holds the motor. A start takes `factor` times its running current for a moment; its
    power factor is lower then, which this leaves out.
    """
    return running - motor + factor * motor


def apart(*, running: float, waits: float) -> float:
    """Return the larger power [W] when a load `waits` [W], part of `running`, is used by itself."""
    return max(running - waits, waits)


def day_energy(*, taken: float, efficiency: float, idle: float, on: float) -> float:
    """Return the energy [J] from the bank in a day in which the loads have `taken` [J].

    The `idle` draw [W] counts for all of the time that the inverter is `on` [s].
    """
    return taken / efficiency + idle * on


@dataclass(frozen=True)
class Letter:
    """A motor's code letter with its locked-rotor apparent power, as text, and how it is known."""

    letter: str
    power: str
    known: str


@cache
def code_letters() -> tuple[Letter, ...]:
    """Return the code letters of the table, NEC 430.7(B). Row H is from memory."""
    return tuple(
        Letter(
            row["letter"],
            f"{row['low_kva_hp']} to {row['high_kva_hp']} kV·A"
            + (_SAID if row["confidence"] == FROM_MEMORY else ""),
            row["confidence"],
        )
        for row in table("code_letters").rows
    )


@dataclass(frozen=True)
class Weight:
    """A load as a share of the rating, and what its efficiency counts in each average, as text."""

    load: str
    cec: str
    european: str


@cache
def weights() -> tuple[Weight, ...]:
    """Return by what shares efficiency at part load is averaged, by two ways of weighting."""
    return tuple(
        Weight(_percent(row["load"]), _percent(row["cec"]), _percent(row["european"]))
        for row in table("inverter_weights").rows
    )


def _percent(share: str) -> str:
    return f"{float(share) * 100:g} %" if share else "none"

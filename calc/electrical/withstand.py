"""How long a copper conductor withstands a short, by the heat that its insulation takes.

Adiabatic: all heat stays in the copper. Source: IEC 60949, BS 7671 434.5.2 and 543.1.3.
"""

from dataclasses import dataclass
from functools import cache
from math import log, sqrt
from typing import Annotated

from calc.electrical.conductors import COPPER_ZERO_RESISTANCE
from calc.tables import table
from calc.units.covered import NotCovered
from calc.units.si import (
    AmpereSquaredSeconds,
    Celsius,
    ShortCircuitCoefficient,
    ShortSeconds,
    SquareMetres,
    Tag,
)

# IEC 60949 and the annex of IEC 60364-5-54
K_COPPER: Annotated[ShortCircuitCoefficient, Tag("constant of k of copper")] = 226e6
# Beyond it heat leaves the conductor meanwhile: BS 7671 434.5.2
ADIABATIC_LIMIT: Annotated[ShortSeconds, Tag("longest short that keeps its heat")] = 5.0


@dataclass(frozen=True)
class Insulation:
    """A conductor's insulation: its copper's temperatures at work and after a short.

    `printed` is the k that a list prints, in A·√s/mm², or None; `listed` tells that the end
    temperature stands in a text for this very insulation.
    """

    name: str
    label: str
    initial: Celsius
    final: Celsius
    printed: float | None
    listed: bool


@dataclass(frozen=True, kw_only=True)
class Withstand:
    """What a short may heat a conductor with: `area` of copper in its `insulation`.

    `k` is the coefficient of both; `let_through` the I²t that brings it to its end temperature.
    """

    insulation: Insulation
    area: SquareMetres
    k: ShortCircuitCoefficient
    let_through: AmpereSquaredSeconds

    @property
    def constant(self) -> ShortCircuitCoefficient:
        """The constant of copper that k is worked from."""
        return K_COPPER


@cache
def insulations() -> tuple[Insulation, ...]:
    """Return the insulations with published end temperatures."""
    return tuple(
        Insulation(
            row["insulation"],
            row["label"],
            float(row["initial_c"]),
            float(row["final_c"]),
            float(row["printed_k"]) if row["printed_k"] else None,
            row["confidence"] != "computed",
        )
        for row in table("k_values").rows
    )


def insulation(name: str) -> Insulation:
    """Return the insulation `name`. Raises NotCovered."""
    for one in insulations():
        if one.name == name:
            return one
    names = ", ".join(one.name for one in insulations())
    raise NotCovered("insulation", f"must be one of: {names}; not {name!r}.")


def heat_coefficient(*, initial: float, final: float) -> float:
    """Return k [A·√s/m²] of copper that a short heats from `initial` to `final` [°C].

    k = 226 √(ln((234.5 + Tf)/(234.5 + Ti))) A·√s/mm², IEC 60949 and the annex of IEC 60364-5-54.
    Adiabatic: all heat stays in the copper. `final` is above `initial`.
    """
    return K_COPPER * sqrt(
        log((final - COPPER_ZERO_RESISTANCE) / (initial - COPPER_ZERO_RESISTANCE))
    )


def joule_integral(*, k: float, area: float) -> float:
    """Return the I²t [A²·s] that brings a conductor of `area` [m²] to its end temperature."""
    return (k * area) ** 2


def withstand_time(*, let_through: float, current: float) -> float:
    """Return the time [s] in which `current` [A] brings a conductor to its end temperature.

    `let_through` [A²·s] does so. t = k²S²/I², BS 7671 543.1.3 and 434.5.2, for t up to 5 s; beyond,
    it errs to the safe side.
    """
    return let_through / current**2


def withstand_of(*, insulation_name: str, area: float) -> Withstand:
    """Return what a conductor of `area` [m²] of copper takes in its insulation. NotCovered."""
    around = insulation(insulation_name)
    k = heat_coefficient(initial=around.initial, final=around.final)
    return Withstand(insulation=around, area=area, k=k, let_through=joule_integral(k=k, area=area))

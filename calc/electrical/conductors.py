"""Copper conductors by name: resistance, area, and the next size up.

In scope: stranded copper, plain or tinned; AWG 18 to 4/0 by NEC chapter 9 table 8 (at 75 °C) and
metric sizes by IEC 60228 class 5 (at 20 °C, the largest resistance the standard permits).
Out of scope: aluminium, copper-clad aluminium, and skin effect (direct current only).
"""

from dataclasses import dataclass
from functools import cache

from calc.tables import table

ZERO_RESISTANCE = 234.5  # °C, inferred for copper: FAA AC 43.13-1B 11-66
_METRES_PER_KFT = 304.8


@dataclass(frozen=True)
class Conductor:
    """A named size: resistance [ohm/m] at `reference` [°C], plain and tinned, and area [m²]."""

    name: str
    series: str
    area: float
    plain: float
    tinned: float
    reference: float


@cache
def conductors() -> tuple[Conductor, ...]:
    """Return every named size, thinnest first within its series."""
    areas = {row["awg"]: float(row["area_mm2"]) * 1e-6 for row in table("awg_area").rows}
    gauge = tuple(
        Conductor(
            f"{row['awg']} AWG",
            "AWG",
            areas[row["awg"]],
            float(row["plain_ohm_per_kft"]) / _METRES_PER_KFT,
            float(row["tinned_ohm_per_kft"]) / _METRES_PER_KFT,
            75.0,
        )
        for row in table("awg_resistance").rows
    )
    metric = tuple(
        Conductor(
            f"{row['size_mm2']} mm2",
            "mm2",
            float(row["size_mm2"]) * 1e-6,
            float(row["plain_ohm_per_km"]) / 1000,
            float(row["tinned_ohm_per_km"]) / 1000,
            20.0,
        )
        for row in table("iec60228_class5").rows
        if 0.75 <= float(row["size_mm2"]) <= 120
    )
    return gauge + metric


@cache
def conductor(name: str) -> Conductor:
    """Return the conductor with the canonical `name`, such as `8 AWG`. Raises KeyError."""
    for one in conductors():
        if one.name == name:
            return one
    raise KeyError(name)


def series_of(name: str) -> tuple[Conductor, ...]:
    """Return every size of the series that `name` belongs to, thinnest first."""
    series = conductor(name).series
    return tuple(one for one in conductors() if one.series == series)


def at_temperature(resistance: float, reference: float, temperature: float) -> float:
    """Return copper's `resistance` [any unit, known at `reference` °C] at `temperature` [°C].

    R2 = R1 (234.5 + T2) / (234.5 + T1), FAA AC 43.13-1B paragraph 11-66. Holds for annealed copper
    from about -50 °C to 200 °C.
    """
    return resistance * (ZERO_RESISTANCE + temperature) / (ZERO_RESISTANCE + reference)


def gauge_for_area(area: float) -> Conductor | None:
    """Return the thickest AWG size whose area does not exceed `area` [m²], or None."""
    fitting = [one for one in conductors() if one.series == "AWG" and one.area <= area * (1 + 1e-9)]
    return fitting[-1] if fitting else None

"""What a night's heat costs in fuel or in charge.

Fuel by its lower heating value, since a heater's exhaust leaves as steam. Out of scope: starts and
stops, a heater at its lowest step, fuel that is wet or old.
"""

from dataclasses import dataclass
from functools import cache

from calc.tables import table

BTU = 1055.056  # J, ISO
GALLON = 3.785411784e-3  # m³, US, by definition
SEA_LEVEL, LAPSE, POWER = 288.15, 0.0065, 5.2559  # K, K/m: standard atmosphere


@dataclass(frozen=True)
class Fuel:
    """A fuel with its lower heating value [J/m³] and density [kg/m³] as a liquid."""

    name: str
    heating: float
    density: float


@cache
def fuels() -> dict[str, Fuel]:
    """Return every fuel of the table by name."""
    return {
        row["fuel"]: Fuel(
            row["fuel"],
            float(row["lower_heating_btu_gal"]) * BTU / GALLON,
            float(row["density_kg_m3"]),
        )
        for row in table("fuels").rows
    }


def fuel_volume(heat: float, heating: float, efficiency: float) -> float:
    """Return the liquid fuel [m³] for `heat` [J] at `heating` [J/m³] and `efficiency` of a share.

    V = E/(η H). The efficiency is that of the heat that stays aboard.
    """
    return heat / (heating * efficiency)


def air_pressure_share(altitude: float) -> float:
    """Return the air's pressure at `altitude` [m] as a share of that at sea level.

    Standard atmosphere up to 11 km: (1 − L h/T₀)^5.2559. Oxygen goes with it.
    """
    share: float = (1 - LAPSE * altitude / SEA_LEVEL) ** POWER
    return share


@dataclass(frozen=True)
class Point:
    """A published point of carbon monoxide: `ppm` by volume and what it means."""

    kind: str
    ppm: str
    means: str
    source: str

    def __str__(self) -> str:
        return f"{self.ppm} ppm: {self.means} ({self.source})"


@cache
def carbon_monoxide() -> tuple[Point, ...]:
    """Return the published alarm points and limits of exposure."""
    rows = table("carbon_monoxide").rows
    return tuple(Point(row["kind"], row["ppm"], row["means"], row["source"]) for row in rows)

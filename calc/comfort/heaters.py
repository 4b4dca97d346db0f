"""What a night's heat costs in fuel or in charge.

Fuel by its lower heating value, since a heater's exhaust leaves as steam. Out of scope: starts and
stops, a heater at its lowest step, fuel that is wet or old.
"""

from dataclasses import dataclass
from functools import cache

from calc.energy.loads import bank_current
from calc.tables import table

BTU = 1055.056  # J, ISO
GALLON = 3.785411784e-3  # m³, US, by definition
USUAL = {"diesel": 0.75, "petrol": 0.75, "propane": 0.75, "electric": 1.0}
"""Share of the heat that stays aboard, by what it comes from: common practice, no source."""
START = 36e3  # J, glow plug and running down of one start: common practice, no source
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


@dataclass(frozen=True, kw_only=True)
class Night:
    """What a night's heat takes: fuel [m³] if any, energy [J], charge [A·s], current [A]."""

    night_heat: float
    heating: float | None
    fuel_used: float | None
    running: float
    charge: float
    electric_factor: float
    electric_current: float
    electric_charge: float


def night(
    *,
    loss: float,
    hours: float,
    fuel: str,
    efficiency: float,
    draw: float,
    starting: float,
    voltage: float,
) -> Night:
    """Return what holding `loss` [W] for `hours` [s] takes by `fuel`, and from a bank alone.

    A heater that burns takes `draw` [W] all the time and `starting` [J] in all from a bank of
    `voltage` [V]; a name that is no fuel stands for heat from the bank, whose `efficiency` is then
    that of the way to the element.
    """
    burnt = fuels().get(fuel)
    heat = loss * hours
    factor = 1.0 if burnt else efficiency
    current = bank_current(loss, voltage, factor)
    running = draw * hours + starting
    return Night(
        night_heat=heat,
        heating=burnt.heating if burnt else None,
        fuel_used=fuel_volume(heat, burnt.heating, efficiency) if burnt else None,
        running=running,
        charge=running / voltage if burnt else current * hours,
        electric_factor=factor,
        electric_current=current,
        electric_charge=current * hours,
    )


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

    @property
    def level(self) -> str:
        """The concentration with its unit."""
        return f"{self.ppm}\u00a0ppm"

    def __str__(self) -> str:
        return f"{self.ppm} ppm: {self.means} ({self.source})"


@cache
def carbon_monoxide() -> tuple[Point, ...]:
    """Return the published alarm points and limits of exposure."""
    rows = table("carbon_monoxide").rows
    return tuple(Point(row["kind"], row["ppm"], row["means"], row["source"]) for row in rows)

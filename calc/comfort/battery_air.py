"""Air for a battery that gives off hydrogen while it is charged.

EN 50272-2 (now IEC 62485-2), clause 8.2: Q = v q s n I_gas C, and an opening A = 28 Q [cm², m³/h]
for natural air. In scope: lead-acid cells at up to about 40 °C. Out of scope: lithium cells, which
give off no gas in normal charging and for which the formula was not made.
"""

from dataclasses import dataclass
from functools import cache
from math import pi
from typing import Annotated

from calc.energy.battery import Chemistry
from calc.tables import table
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import (
    Celsius,
    Coulombs,
    CubicMetresPerCoulomb,
    CubicMetresPerSecond,
    GasAmperesPerCoulomb,
    Metres,
    MetresPerSecond,
    Number,
    OpeningSquareMetres,
    Tag,
)

# v q s = 24 × 0.42e-3 × 5, rounded to 0.05 m³/Ah
AIR_PER_CHARGE: Annotated[CubicMetresPerCoulomb, Tag("air for each charge that makes gas")] = (
    0.05 / HOUR
)
# A = 28 Q stands for air at about 0.1 m/s
VENT_SPEED: Annotated[MetresPerSecond, Tag("natural air in a battery's vent")] = 100 / 28 / 36


class CellKind(Enumeration):
    """What a cell does with its gas: let it out, keep it in behind a valve, or make none."""

    VENTED = "vented-lead-acid"
    SEALED = "valve-regulated-lead-acid"
    LITHIUM = "lithium"


class Charging(Enumeration):
    """How a battery is charged, at the most."""

    FLOAT = "float"
    BOOST = "boost"
    EQUALISING = "equalising"


class Place(Enumeration):
    """Where a battery stands."""

    UNKNOWN = "not-said"
    BOXED = "box-or-bay-vented-outside"
    LIVING_SPACE = "open-in-the-living-space"


class Management(Enumeration):
    """Whether a management system guards the cells of a lithium battery."""

    FITTED = "fitted"
    MISSING = "not-fitted"
    UNKNOWN = "not-known"


_KINDS = {
    Chemistry.FLOODED: CellKind.VENTED,
    Chemistry.AGM: CellKind.SEALED,
    Chemistry.GEL: CellKind.SEALED,
    Chemistry.LFP: CellKind.LITHIUM,
}


@cache
def gas_currents() -> dict[tuple[CellKind, Charging], float]:
    """Return I_gas [A per A·s of capacity] by kind of cell and charging, as the table has it."""
    return {
        (CellKind(row["cells"].replace(" ", "-")), Charging(row["charging"])): float(
            row["gas_ma_ah"]
        )
        * 1e-3
        / HOUR
        for row in table("battery_gas").rows
    }


def gas_current(cells: CellKind, charging: Charging) -> float:
    """Return I_gas [A per A·s of capacity] of the table. Raises NotCovered where it has none."""
    found = gas_currents().get((CellKind(cells), Charging(charging)))
    if found is None:
        raise NotCovered("charging", "must be float or boost of lead-acid cells.")
    return found


def airflow(cells: float, gas: float, capacity: float) -> float:
    """Return the air [m³/s] that keeps hydrogen below a fifth of its lower explosive limit.

    Q = 0.05 n I_gas C: `cells` in series, `gas` [A per A·s], `capacity` [A·s] of one string;
    batteries in parallel add their capacity.
    """
    return AIR_PER_CHARGE * cells * gas * capacity


def opening(flow: float) -> float:
    """Return the free area [m²] of each opening, inlet and outlet, for natural air: A = 28 Q."""
    return flow / VENT_SPEED


@dataclass(frozen=True, kw_only=True)
class Gassing:
    """Cells on charge, the current that makes gas in them, and the air that thins it.

    `given_current` is the maker's, `table_current` the standard's, which has none for equalising.
    `current` is the one that counts. It and the air are None where neither is known, and for
    lithium cells.
    """

    chemistry: Chemistry
    kind: CellKind
    charging: Charging
    cells: Number
    capacity: Coulombs
    temperature: Celsius
    given_current: GasAmperesPerCoulomb | None
    table_current: GasAmperesPerCoulomb | None
    current: GasAmperesPerCoulomb | None
    airflow: CubicMetresPerSecond | None

    @property
    def lead_acid(self) -> bool:
        """Whether the cells split water at the end of a charge."""
        return self.chemistry.lead_acid

    @property
    def below_table(self) -> bool:
        """Whether the maker's current is below the table's."""
        given, tabled = self.given_current, self.table_current
        return given is not None and tabled is not None and not at_least(given, tabled)


@dataclass(frozen=True, kw_only=True)
class BatteryAir:
    """Cells that make gas in a place with `vents`, and the openings that it takes.

    `management` is that of lithium cells, None of lead-acid.
    `opening` is the area of each of two, `hole` that as the diameter of a round one; both are None
    where no air is known to be needed.
    """

    gassing: Gassing
    management: Management | None
    place: Place
    vents: OpeningSquareMetres | None
    opening: OpeningSquareMetres | None
    hole: Metres | None


def gassing(
    *,
    chemistry: Chemistry,
    charging: Charging,
    cells: float,
    capacity: float,
    temperature: float,
    given_current: float | None,
) -> Gassing:
    """Return the gas and air of `cells` in series of `capacity` [A·s] while they are charged.

    `given_current` [A per A·s] is the maker's, None to take the table's. Raises NotCovered.
    """
    chemistry, charging = Chemistry(chemistry), Charging(charging)
    kind = _KINDS[chemistry]
    tabled = gas_currents().get((kind, charging))
    current = tabled if given_current is None else given_current
    if kind is CellKind.LITHIUM:
        current = None
    return Gassing(
        chemistry=chemistry,
        kind=kind,
        charging=charging,
        cells=cells,
        capacity=capacity,
        temperature=temperature,
        given_current=given_current,
        table_current=tabled,
        current=current,
        airflow=None if current is None else airflow(cells, current, capacity),
    )


def battery_air(
    of: Gassing, *, management: Management, place: Place, vents: float | None
) -> BatteryAir:
    """Return the openings that cells `of` that gas need, in a place with `vents` [m²] each.

    `management` is left aside beside lead-acid. Raises NotCovered.
    """
    management = Management(management)
    area = None if of.airflow is None else opening(of.airflow)
    return BatteryAir(
        gassing=of,
        management=None if of.lead_acid else management,
        place=Place(place),
        vents=vents,
        opening=area,
        hole=None if area is None else 2 * (area / pi) ** 0.5,
    )

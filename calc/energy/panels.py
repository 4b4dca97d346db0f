"""What a solar panel makes of the light: everyday losses, and the heat of its cells.

In scope: silicon panels at the power of their label in standard light. Out of scope: shade on a
part of a panel, which takes more than its share of the area, and snow.
"""

from functools import cache
from math import exp, prod

from calc.tables import table

STANDARD = 25.0  # °C, cell temperature at which panels are rated
FULL_SUN = 1000.0  # W/m², light in which panels are rated
WIND = 1.0  # m/s, taken past the panel


@cache
def usual_losses() -> tuple[tuple[str, float], ...]:
    """Return each usual loss and its share."""
    return tuple((row["loss"], float(row["share"])) for row in table("panel_losses").rows)


def together(shares: tuple[float, ...]) -> float:
    """Return the share lost when losses of these `shares` act one after another: 1 − Π(1 − L)."""
    return 1 - prod(1 - share for share in shares)


@cache
def warming(mount: str) -> float:
    """Return by how much [K per W/m²] light warms the cells above the air. Raises KeyError.

    exp(a + b v) + ΔT/1000 after King, Boyson and Kratochvil, in a light wind.
    """
    for row in table("panel_heat").rows:
        if row["mount"] == mount:
            return exp(float(row["a"]) + float(row["b"]) * WIND) + float(row["delta_k"]) / FULL_SUN
    raise KeyError(mount)

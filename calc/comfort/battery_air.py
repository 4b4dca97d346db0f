"""Air for a battery that gives off hydrogen while it is charged.

EN 50272-2 (now IEC 62485-2), clause 8.2: Q = v q s n I_gas C, and an opening A = 28 Q [cm², m³/h]
for natural air. In scope: lead-acid cells at up to about 40 °C. Out of scope: lithium cells, which
give off no gas in normal charging and for which the formula was not made.
"""

from functools import cache

from calc.tables import table

AIR_PER_CHARGE = 0.05 / 3600  # m³/(A·s): v q s = 24 × 0.42e-3 × 5, rounded to 0.05 m³/(A·h)
VENT_SPEED = 100 / 28 / 36  # m/s: A = 28 Q stands for air at about 0.1 m/s


@cache
def gas_current(cells: str, charging: str) -> float:
    """Return I_gas [A per A·s of capacity] of the table. Raises KeyError."""
    for row in table("battery_gas").rows:
        if (row["cells"], row["charging"]) == (cells, charging):
            return float(row["gas_ma_ah"]) * 1e-3 / 3600
    raise KeyError((cells, charging))


def airflow(cells: float, gas: float, capacity: float) -> float:
    """Return the air [m³/s] that keeps hydrogen below a fifth of its lower explosive limit.

    Q = 0.05 n I_gas C: `cells` in series, `gas` [A per A·s], `capacity` [A·s] of one string;
    batteries in parallel add their capacity.
    """
    return AIR_PER_CHARGE * cells * gas * capacity


def opening(flow: float) -> float:
    """Return the free area [m²] of each opening, inlet and outlet, for natural air: A = 28 Q."""
    return flow / VENT_SPEED

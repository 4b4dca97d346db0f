"""What hot water costs.

Steady power into a well mixed tank. Out of scope: boiling, hoses that cool, cold water that mixes
in while some is drawn.
"""

DENSITY, HEAT = 1000.0, 4190.0  # kg/m³ and J/(kg·K), water by EN ISO 10456


def stored(volume: float, rise: float) -> float:
    """Return the heat [J] that `volume` [m³] of water takes for a `rise` [K]: ρ V c ΔT."""
    return DENSITY * volume * HEAT * rise


def time_to_heat(heat: float, power: float, loss: float) -> float | None:
    """Return the time [s] for `heat` [J] with `power` [W] into the water, or None if never.

    The loss [W] of the hot tank counts in full from the start: a little long, on the safe side.
    """
    return heat / (power - loss) if power > loss else None

"""Comparisons made before rounding, with room for the last digits of a float."""

_SLACK = 1e-9


def at_most(value: float, limit: float) -> bool:
    """Return whether `value` is no more than `limit`, to one part in 1e9."""
    return value <= limit + _SLACK * abs(limit)


def at_least(value: float, limit: float) -> bool:
    """Return whether `value` is no less than `limit`, to one part in 1e9."""
    return value >= limit - _SLACK * abs(limit)

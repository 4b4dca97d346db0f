"""What is worked out of a whole van, once for each van."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from functools import wraps

from calc.van.record import Van

_VANS_KEPT = 4


def once_for_each_van[T](work: Callable[[Van], T]) -> Callable[[Van], T]:
    """Return `work` so that it is done but once for the same van, of the last few."""
    kept: deque[tuple[Van, T]] = deque(maxlen=_VANS_KEPT)

    @wraps(work)
    def found(van: Van) -> T:
        for one, result in kept:
            if one is van:
                return result
        result = work(van)
        kept.append((van, result))
        return result

    return found

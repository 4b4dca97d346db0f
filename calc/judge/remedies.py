"""One search for what would help: changes are tried, the smallest first, each by working anew.

What a change is, and what it is to help, the caller says: this module knows no domain.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from calc.units.covered import NotCovered

_HALVINGS = 40  # to the twelfth digit


@dataclass(frozen=True)
class Remedy[C, R]:
    """A `change` that helps, and what `comes` of it."""

    change: C
    comes: R


def smallest_change[C, R](
    changes: Iterable[C], work: Callable[[C], R | None]
) -> Remedy[C, R] | None:
    """Return the first of `changes` that helps, or None where none does.

    `changes` come in order of preference, the smallest first. `work` works the thing anew with one
    of them: it returns what comes of it, or None where that does not help. A change that leads
    where there is no figure (NotCovered) does not help either.
    """
    for change in changes:
        try:
            comes = work(change)
        except NotCovered:
            continue
        if comes is not None:
            return Remedy(change, comes)
    return None


def of_each_kind[C, R](
    kinds: Iterable[Iterable[C]], work: Callable[[C], R | None]
) -> tuple[Remedy[C, R], ...]:
    """Return the smallest change that helps of each of `kinds`, in their order.

    A kind of which nothing helps is left out. `work` as in `smallest_change`.
    """
    found = (smallest_change(changes, work) for changes in kinds)
    return tuple(remedy for remedy in found if remedy is not None)


def smallest_amount(
    helps: Callable[[float], bool], *, present: float, most: float, halvings: int = _HALVINGS
) -> float | None:
    """Return the least amount between what is `present` and `most` that helps, or None.

    `present` must not help; what helps must go on to help as the amount nears `most`, which may be
    the smaller of the two. Found by halving, and never short of what is needed.
    """
    if not helps(most):
        return None
    short, enough = present, most
    for _ in range(halvings):
        middle = (short + enough) / 2
        short, enough = (short, middle) if helps(middle) else (middle, enough)
    return enough

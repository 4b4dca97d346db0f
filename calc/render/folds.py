"""What can be unfolded below an answer. What is shut may be written later than what is seen.

A key changes the answer, and half of its HTML stands in folds that nobody looks at: where the page
says which folds are open, the others are written once the answer is shown.
"""

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass

from calc.render.html import Markup, el, join


@dataclass(frozen=True)
class Fold:
    """One fold: its `name` among those of an answer, its `summary`, what stands in it."""

    name: str
    summary: str
    parts: Callable[[], Iterable[Markup | None]]
    is_open: bool = False


def fold_html(fold: Fold, opened: Collection[str] | None = None) -> Markup:
    """Return a fold, left empty where it is shut; `opened` are the open ones, None writes all."""
    parts = () if is_left(fold, opened) else fold.parts()
    summary = el("summary", fold.summary)
    return el("details", summary, *parts, data_fold=fold.name, open=fold.is_open)


def is_left(fold: Fold, opened: Collection[str] | None) -> bool:
    """Return whether a fold is left empty at first."""
    return opened is not None and not fold.is_open and fold.name not in opened


def left_html(folds: Iterable[Fold], opened: Collection[str] | None) -> dict[str, Markup]:
    """Return what belongs into each fold that was left empty, by its name."""
    return {fold.name: join(*fold.parts()) for fold in folds if is_left(fold, opened)}

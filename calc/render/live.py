"""The parts of a live sheet that a reply replaces, by the kind of its page."""

from collections.abc import Collection, Iterator

from calc.render import answer as whole
from calc.render import search
from calc.render.folds import Fold
from calc.render.html import Markup
from calc.worksheet.answer import Answer


def key_html(answer: Answer) -> Markup:
    """Return what stands between question and fields."""
    if answer.worksheet.walked:
        return search.key_html(answer, answer.worksheet.walked)
    return whole.key_html(answer)


def details_html(
    answer: Answer, *, done: float = 1.0, opened: Collection[str] | None = None
) -> Markup:
    """Return what a live sheet shows below its fields; `done` is the share that is worked.

    Of the folds only those that are `opened` are filled, all of them where it is None.
    """
    if answer.worksheet.walked:
        return search.details_html(answer, answer.worksheet.walked, opened)
    return whole.details_html(answer, done=done, opened=opened)


def folds(answer: Answer) -> Iterator[Fold]:
    """Yield what a live sheet shows folded."""
    if answer.worksheet.walked:
        return search.folds(answer, answer.worksheet.walked)
    return whole.folds(answer)


def fold_text(answer: Answer) -> str:
    """Return what stands on the fold around the form, nothing where the form is not folded."""
    return search.fold_text(answer, answer.worksheet.walked) if answer.worksheet.walked else ""

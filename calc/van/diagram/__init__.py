"""A van's diagram: from the record to strokes, symbols and words, each in its place.

Pure geometry, and the same for the same van. Bars and their cables stand above, circuits below in
two columns that read as tables; mains stand apart behind a boundary. Upright lines run only in
streets, words stand only in blocks beside them, so that no line passes through a word.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from calc.van.diagram.drawing import Drawing
from calc.van.diagram.plan import MOST_CIRCUITS, planned
from calc.van.diagram.read import scheme_of
from calc.van.record import Van

if TYPE_CHECKING:
    from calc.van.review import Review
    from calc.van.schedule import Schedule

__all__ = ["Drawing", "layout"]


def layout(van: Van, schedule: Schedule | None = None, review: Review | None = None) -> Drawing:
    """Return a van's diagram, with what its schedule and its review have found where there are any.

    A run's values come from the schedule's row for it, findings stand by shape and by their number
    in the review, counted from 1. Where loads are is left out if only so a van of few circuits fits
    on one sheet.
    """
    drawing = planned(scheme_of(van, schedule, review))
    if len(drawing.sheets) > 1 and len(van.all("circuits")) <= MOST_CIRCUITS:
        brief = planned(scheme_of(van, schedule, review, brief=True))
        return min(brief, drawing, key=lambda one: len(one.sheets))
    return drawing

"""The pictures of an answer, drawn as SVG from the answer's own values.

Colours come from the style sheet by class. Each figure has a text alternative with the same facts.
"""

from collections.abc import Callable
from typing import Any

from calc.render.bars import bar_html, bars_html, window_html
from calc.render.chart import chart_html
from calc.render.circuits import probes_html, remote_html
from calc.render.draw_breaking import breaking_html
from calc.render.draw_loop import shares, spans
from calc.render.draw_run import run_html
from calc.render.html import Markup, el, join
from calc.render.months import months_html
from calc.render.parts import parts_html
from calc.render.section import section
from calc.render.size_chart import ladder_html
from calc.render.svg import RIGHT, clipped, figure, rect, text
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import (
    Bar,
    Bars,
    Breaking,
    Chart,
    Either,
    Ladder,
    Months,
    Parts,
    Picture,
    Probes,
    Remote,
    Run,
    Section,
    Several,
    Shares,
    Spans,
    Stack,
    Window,
)


def picture_html(answer: Answer) -> Markup:
    """Return the figure of the answer's worksheet, or nothing where it declares none."""
    picture = answer.worksheet.picture
    return _drawn(answer, picture) if picture else Markup("")


def _drawn(answer: Answer, picture: Picture) -> Markup:
    if isinstance(picture, Either):
        drawn = (_drawn(answer, one) for one in picture.pictures)
        return next((one for one in drawn if one), Markup(""))
    if isinstance(picture, Several):
        folded = [one for one in (_drawn(answer, more) for more in picture.folded) if one]
        first = _drawn(answer, picture.first)
        fold = el("details", el("summary", picture.words), *folded, data_fold="pictures")
        return join(first, fold) if folded else first
    return _DRAWN[type(picture)](answer, picture)


_APART = 19.0  # from one name on a stud to the next, at least
_SHAPES = {
    # shape: half width, height, class
    "seat": (62, 20, "lw-part lw-seat"),
    "lug": (40, 12, "lw-part lw-copper"),
    "washer": (36, 6, "lw-part"),
    "locking": (32, 8, "lw-part lw-locking"),
    "nut": (28, 22, "lw-part lw-nut"),
}


def _stack(answer: Answer, stack: Stack) -> Markup:
    parts = answer.values[stack.parts]
    centre, rooms = 66.0, [max(_SHAPES[part.shape][1] + 4.0, _APART) for part in parts]
    height = sum(rooms) + 16
    y = height - 8
    drawn: list[object] = [rect(centre - 10, 4, 20, height - 12, "lw-stud", 2)]
    for part, room in zip(parts, rooms, strict=True):
        half, tall, class_ = _SHAPES[part.shape]
        y -= room
        top = y + room - tall
        drawn.append(rect(centre - half, top, 2 * half, tall, class_, 2))
        if part.shape == "lug":
            drawn.append(rect(4, top + 1, centre - half - 2, tall - 2, class_, 5))
        middle = top + tall / 2
        lead = {"x1": centre + half + 2, "x2": centre + 72, "y1": middle, "y2": middle}
        drawn.append(el("line", **{key: f"{at:.1f}" for key, at in lead.items()}, class_="lw-lead"))
        words = clipped(part.partition(",")[0], RIGHT - centre - 76)
        drawn.append(text(centre + 76, middle + 5, words, anchor="start"))
    said = "On the stud, from the seat out: " + ", then ".join(parts) + "."
    return figure(height, said, stack.caption, *drawn)


_DRAWN: dict[type, Callable[[Answer, Any], Markup]] = {
    Bar: bar_html,
    Bars: bars_html,
    Breaking: breaking_html,
    Chart: chart_html,
    Ladder: ladder_html,
    Months: months_html,
    Parts: parts_html,
    Probes: probes_html,
    Remote: remote_html,
    Run: run_html,
    Section: section,
    Shares: shares,
    Spans: spans,
    Stack: _stack,
    Window: window_html,
}

"""The pictures of an answer, drawn as SVG from the answer's own values.

Colours come from the style sheet by class. Each figure has a text alternative with the same facts.
"""

from calc.render.chart import chart_html
from calc.render.draw_loop import shares, spans
from calc.render.html import Markup, el
from calc.render.months import months_html
from calc.render.section import section
from calc.render.size_chart import ladder_html
from calc.render.svg import LEFT, RIGHT, figure, line, rect, scale, text
from calc.units.compare import at_most
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import (
    Bar,
    Chart,
    Ladder,
    Months,
    Section,
    Shares,
    Spans,
    Stack,
    Window,
)


def picture_html(answer: Answer) -> Markup:
    """Return the figure of the answer's worksheet, or nothing where it declares none."""
    match answer.worksheet.picture:
        case Bar() as bar:
            return _bar(answer, bar)
        case Window() as window:
            return _window(answer, window)
        case Stack() as stack:
            return _stack(answer, stack)
        case Ladder() as ladder:
            return ladder_html(answer, ladder)
        case Shares() as loop:
            return shares(answer, loop)
        case Spans() as times:
            return spans(answer, times)
        case Section() as bay:
            return section(answer, bay)
        case Chart() as chart:
            return chart_html(answer, chart)
        case Months() as year:
            return months_html(answer, year)
    return Markup("")


def _bar(answer: Answer, bar: Bar) -> Markup:
    value, limit = answer.values[bar.value], answer.values[bar.limit]
    if value is None:
        return Markup("")
    within = at_most(value, limit)
    shown, limit_shown = answer.shown[bar.value], answer.shown[bar.limit]
    place = scale(max(1.25 * value, 1.4 * limit))
    ticks: list[object] = []
    last = place(limit)
    for at, words in bar.marks:
        if place(at) < RIGHT - 24 and abs(place(at) - last) > 36:
            ticks.append(line(place(at), 40, 62, "lw-tick"))
            ticks.append(text(place(at), 76, words, class_="lw-words lw-quiet"))
            last = place(at)
    return figure(
        84,
        f"{shown} lost against {limit_shown} allowed: {'within' if within else 'over'} the limit.",
        bar.caption,
        rect(LEFT, 40, RIGHT - LEFT, 22, "lw-track"),
        rect(LEFT, 40, place(value) - LEFT, 22, "lw-bar" if within else "lw-bar lw-over"),
        ticks,
        line(place(limit), 32, 68, "lw-limit"),
        text(place(value), 12, f"{shown} lost", class_="lw-words lw-strong"),
        text(place(limit), 28, f"{limit_shown} allowed"),
    )


def _window(answer: Answer, window: Window) -> Markup:
    low, high = answer.values[window.low], answer.values[window.high]
    value = answer.values[window.value]
    place = scale(1.25 * max(low, high, value or 0))
    low_x, high_x = place(low), place(high)
    open_ = at_most(low, high)
    span = (
        rect(low_x, 44, high_x - low_x, 18, "lw-open")
        if open_
        else rect(high_x, 44, low_x - high_x, 18, "lw-closed")
    )
    low_words = f"load needs {answer.shown[window.low]}"
    high_words = f"wire can carry {answer.shown[window.high]}"
    # The low end's words keep clear of the high end's line.
    half = 3.8 * len(low_words) + 4
    low_centre = min(low_x, high_x - half) if open_ else max(low_x, high_x + half)
    if value is None:
        mark: object = text(
            (low_x + high_x) / 2, 82, "no standard fuse here", class_="lw-words lw-strong"
        )
        said = "no standard fuse lies between"
    else:
        x = place(value)
        mark = (
            el("path", d=f"M{x:.1f} 58 l-8 12 h16 z", class_="lw-pointer"),
            text(x, 84, f"{answer.shown[window.value]} fuse", class_="lw-words lw-strong"),
        )
        said = f"the {answer.shown[window.value]} fuse stands between"
    return figure(
        92,
        f"Number line in amps: {low_words}, {high_words}; {said}.",
        window.caption,
        rect(LEFT, 51, RIGHT - LEFT, 4, "lw-track", 2),
        span,
        line(low_x, 36, 66, "lw-limit"),
        line(high_x, 20, 66, "lw-limit"),
        text(low_centre, 32, low_words),
        text(high_x, 14, high_words),
        mark,
    )


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
    centre, gap = 66.0, 13.0
    height = sum(_SHAPES[part.shape][1] + gap for part in parts) + 24
    y = height - 8
    drawn: list[object] = [rect(centre - 10, 4, 20, height - 12, "lw-stud", 2)]
    for part in parts:
        half, tall, class_ = _SHAPES[part.shape]
        y -= tall
        drawn.append(rect(centre - half, y, 2 * half, tall, class_, 2))
        if part.shape == "lug":
            drawn.append(rect(4, y + 1, centre - half - 2, tall - 2, class_, 5))
        middle = y + tall / 2
        lead = {"x1": centre + half + 2, "x2": centre + 72, "y1": middle, "y2": middle}
        drawn.append(el("line", **{key: f"{at:.1f}" for key, at in lead.items()}, class_="lw-lead"))
        drawn.append(text(centre + 76, middle + 4, part.partition(",")[0], anchor="start"))
        y -= gap
    said = "On the stud, from the seat out: " + ", then ".join(parts) + "."
    return figure(height, said, stack.caption, *drawn)

"""The pictures of an answer, drawn as SVG from the answer's own values.

Colours come from the style sheet by class. Each figure has a text alternative with the same facts.
"""

from collections.abc import Callable

from calc.answer import Answer
from calc.compare import at_most
from calc.pictures import Bar, Stack, Window
from calc.render.html import Markup, el

_WIDTH, _LEFT, _RIGHT = 300.0, 8.0, 292.0


def picture_html(answer: Answer) -> Markup:
    """Return the figure of the answer's worksheet, or nothing where it declares none."""
    match answer.worksheet.picture:
        case Bar() as bar:
            return _bar(answer, bar)
        case Window() as window:
            return _window(answer, window)
        case Stack() as stack:
            return _stack(answer, stack)
    return Markup("")


def _figure(height: float, alternative: str, caption: str, *parts: object) -> Markup:
    drawing = el(
        "svg",
        *parts,
        viewBox=f"0 0 {_WIDTH:g} {height:g}",
        role="img",
        aria_label=alternative,
        class_="lw-drawing",
    )
    return el("figure", drawing, el("figcaption", caption), class_="lw-figure-box")


def _text(
    x: float, y: float, words: str, *, anchor: str = "middle", class_: str = "lw-words"
) -> Markup:
    """Return words kept inside the drawing: near an edge they hang inwards."""
    half = 3.8 * len(words)
    if anchor == "middle":
        x = min(max(x, _LEFT + half), _RIGHT - half)
    return el("text", words, x=f"{x:.1f}", y=f"{y:.1f}", text_anchor=anchor, class_=class_)


def _line(x: float, top: float, bottom: float, class_: str) -> Markup:
    return el("line", x1=f"{x:.1f}", x2=f"{x:.1f}", y1=f"{top:g}", y2=f"{bottom:g}", class_=class_)


def _rect(
    x: float, y: float, width: float, height: float, class_: str, round_: float = 3
) -> Markup:
    return el(
        "rect",
        x=f"{x:.1f}",
        y=f"{y:.1f}",
        width=f"{max(width, 0):.1f}",
        height=f"{height:.1f}",
        rx=f"{round_:g}",
        class_=class_,
    )


def _scale(most: float) -> Callable[[float], float]:
    return lambda value: _LEFT + (_RIGHT - _LEFT) * min(value / most, 1.0)


def _bar(answer: Answer, bar: Bar) -> Markup:
    value, limit = answer.values[bar.value], answer.values[bar.limit]
    if value is None:
        return Markup("")
    within = at_most(value, limit)
    shown, limit_shown = answer.shown[bar.value], answer.shown[bar.limit]
    place = _scale(max(1.25 * value, 1.4 * limit))
    ticks: list[object] = []
    last = place(limit)
    for at, words in bar.marks:
        if place(at) < _RIGHT - 24 and abs(place(at) - last) > 36:
            ticks.append(_line(place(at), 40, 62, "lw-tick"))
            ticks.append(_text(place(at), 76, words, class_="lw-words lw-quiet"))
            last = place(at)
    return _figure(
        84,
        f"{shown} lost against {limit_shown} allowed: {'within' if within else 'over'} the limit.",
        bar.caption,
        _rect(_LEFT, 40, _RIGHT - _LEFT, 22, "lw-track"),
        _rect(_LEFT, 40, place(value) - _LEFT, 22, "lw-bar" if within else "lw-bar lw-over"),
        ticks,
        _line(place(limit), 32, 68, "lw-limit"),
        _text(place(value), 12, f"{shown} lost", class_="lw-words lw-strong"),
        _text(place(limit), 28, f"{limit_shown} allowed"),
    )


def _window(answer: Answer, window: Window) -> Markup:
    low, high = answer.values[window.low], answer.values[window.high]
    value = answer.values[window.value]
    place = _scale(1.25 * max(low, high, value or 0))
    low_x, high_x = place(low), place(high)
    open_ = at_most(low, high)
    span = (
        _rect(low_x, 44, high_x - low_x, 18, "lw-open")
        if open_
        else _rect(high_x, 44, low_x - high_x, 18, "lw-closed")
    )
    low_words = f"load needs {answer.shown[window.low]}"
    high_words = f"wire bears {answer.shown[window.high]}"
    # The low end's words keep clear of the high end's line.
    half = 3.8 * len(low_words) + 4
    low_centre = min(low_x, high_x - half) if open_ else max(low_x, high_x + half)
    if value is None:
        mark: object = _text(
            (low_x + high_x) / 2, 82, "no standard fuse here", class_="lw-words lw-strong"
        )
        said = "no standard fuse lies between"
    else:
        x = place(value)
        mark = (
            el("path", d=f"M{x:.1f} 58 l-8 12 h16 z", class_="lw-pointer"),
            _text(x, 84, f"{answer.shown[window.value]} fuse", class_="lw-words lw-strong"),
        )
        said = f"the {answer.shown[window.value]} fuse stands between"
    return _figure(
        92,
        f"Number line in amps: {low_words}, {high_words}; {said}.",
        window.caption,
        _rect(_LEFT, 51, _RIGHT - _LEFT, 4, "lw-track", 2),
        span,
        _line(low_x, 36, 66, "lw-limit"),
        _line(high_x, 20, 66, "lw-limit"),
        _text(low_centre, 32, low_words),
        _text(high_x, 14, high_words),
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
    drawn: list[object] = [_rect(centre - 10, 4, 20, height - 12, "lw-stud", 2)]
    for part in parts:
        half, tall, class_ = _SHAPES[part.shape]
        y -= tall
        drawn.append(_rect(centre - half, y, 2 * half, tall, class_, 2))
        if part.shape == "lug":
            drawn.append(_rect(4, y + 1, centre - half - 2, tall - 2, class_, 5))
        middle = y + tall / 2
        lead = {"x1": centre + half + 2, "x2": centre + 72, "y1": middle, "y2": middle}
        drawn.append(el("line", **{key: f"{at:.1f}" for key, at in lead.items()}, class_="lw-lead"))
        drawn.append(_text(centre + 76, middle + 4, part.partition(",")[0], anchor="start"))
        y -= gap
    said = "On the stud, from the seat out: " + ", then ".join(parts) + "."
    return _figure(height, said, stack.caption, *drawn)

"""The strokes that every picture is made of. Colours come from the style sheet by class."""

from collections.abc import Callable
from math import floor, log10

from calc.render.html import Markup, el
from calc.units.compare import at_least

_ENDS = (1.0, 1.2, 1.6, 2.0, 2.4, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)  # of scales; halves are round
_APART = 15.0  # from one line of words to the next
WIDE, _STRONG = 8.2, 9.4  # the room for a character in the broadest of the usual faces
WIDTH, LEFT, RIGHT = 300.0, 8.0, 292.0


def figure(height: float, alternative: str, caption: str, *parts: object) -> Markup:
    """Return a drawing `height` tall with its text alternative and its caption."""
    drawing = el(
        "svg",
        *parts,
        viewBox=f"0 0 {WIDTH:g} {height:g}",
        role="img",
        aria_label=alternative,
        class_="lw-drawing",
    )
    return el("figure", drawing, el("figcaption", caption), class_="lw-figure-box")


def text(
    x: float, y: float, words: str, *, anchor: str = "middle", class_: str = "lw-words"
) -> Markup:
    """Return words kept inside the drawing: near an edge they hang inwards."""
    half = 3.8 * len(words)
    if anchor == "middle":
        x = min(max(x, LEFT + half), RIGHT - half)
    return el("text", words, x=f"{x:.1f}", y=f"{y:.1f}", text_anchor=anchor, class_=class_)


def line(x: float, top: float, bottom: float, class_: str) -> Markup:
    """Return an upright line."""
    return el("line", x1=f"{x:.1f}", x2=f"{x:.1f}", y1=f"{top:g}", y2=f"{bottom:g}", class_=class_)


def rect(x: float, y: float, width: float, height: float, class_: str, round_: float = 3) -> Markup:
    """Return a rectangle with rounded corners."""
    return el(
        "rect",
        x=f"{x:.1f}",
        y=f"{y:.1f}",
        width=f"{max(width, 0):.1f}",
        height=f"{height:.1f}",
        rx=f"{round_:g}",
        class_=class_,
    )


def scale(most: float) -> Callable[[float], float]:
    """Return where a value from nought to `most` stands across the drawing."""
    return lambda value: LEFT + (RIGHT - LEFT) * min(value / most, 1.0)


def across(start: float, y: float, class_: str) -> Markup:
    """Return a level line from `start` to the right edge."""
    at = f"{y:.1f}"
    return el("line", x1=f"{start:g}", x2=f"{RIGHT:g}", y1=at, y2=at, class_=class_)


def side_figures(start: float, *marks: tuple[float, str]) -> list[Markup]:
    """Return (height, words) left of `start`; one that would touch the one before is left out."""
    kept: list[Markup] = []
    last = 0.0
    for y, words in marks:
        if not kept or y - last >= _APART:
            kept.append(text(start - 5, y + 4.5, words, anchor="end", class_="lw-words lw-quiet"))
            last = y
    return kept


def inside(x: float, words: str, start: float) -> float:
    """Return the middle nearest to `x` that keeps strong words between `start` and the edge."""
    half = _STRONG * len(words) / 2
    return min(max(x, start + half), RIGHT - half)


def scale_end(most: float) -> float:
    """Return the round figure, with a round half, that a scale up to `most` ends at."""
    if most <= 0:
        return 1.0
    ten: float = 10.0 ** floor(log10(most))
    return next(ten * step for step in _ENDS if at_least(ten * step, most))

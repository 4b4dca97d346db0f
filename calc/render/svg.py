"""The strokes that every picture is made of. Colours come from the style sheet by class.

A unit of a drawing is a pixel where the page is 360 px wide, and words are as high as the page's.
Nothing lies on words, because each line of words has a height of its own.
"""

from collections.abc import Callable
from math import floor, log10

from calc.render.html import Markup, el, join
from calc.units.compare import at_least
from calc.units.text_width import width

_ENDS = (1.0, 1.2, 1.6, 2.0, 2.4, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)  # of scales; halves are round
TEXT, ASCENT, PITCH = 15.0, 14.0, 19.0  # the size of words, what is above their line, a line's room
WIDTH, LEFT, RIGHT = 312.0, 2.0, 310.0
_GAP = 12.0  # between words on a line
_KEY = 20.0  # what a sample before words takes
FILLS = ("lw-bar", "lw-part lw-copper", "lw-part lw-seat", "lw-part lw-hollow")


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


def wide(words: str, strong: bool = False) -> float:
    """Return how wide words are at most."""
    return width(words, TEXT, strong)


def text(
    x: float, y: float, words: str, *, anchor: str = "middle", class_: str = "lw-words"
) -> Markup:
    """Return words kept inside the drawing: near an edge they hang inwards."""
    if anchor == "middle":
        x = inside(x, words, LEFT, "lw-strong" in class_)
    return el("text", words, x=f"{x:.1f}", y=f"{y:.1f}", text_anchor=anchor, class_=class_)


def told(
    y: float, words: str, value: str = "", *, key: Markup | None = None
) -> tuple[Markup, float]:
    """Return `words` at the left with a `value` at the right, from the height `y` down, and where
    they end. They take two lines where one is too short. `key` is a sample that stands before.
    """
    start = LEFT + (_KEY if key else 0)
    room = RIGHT - start
    parts: list[object] = [key, text(start, y + ASCENT, clipped(words, room), anchor="start")]
    if value:
        together = wide(words) + wide(value, True) + _GAP
        y += PITCH if together > room else 0
        fits = clipped(value, room, True)
        parts.append(text(RIGHT, y + ASCENT, fits, anchor="end", class_="lw-words lw-strong"))
    return join(*parts), y + PITCH


def clipped(words: str, room: float, strong: bool = False) -> str:
    """Return words cut off where they are wider than `room`."""
    if wide(words, strong) <= room:
        return words
    while words and wide(f"{words}…", strong) > room:
        words = words[:-1]
    return f"{words.rstrip()}…"


def swatch(y: float, class_: str) -> Markup:
    """Return a sample of a filled part, for words that begin at the height `y`."""
    return rect(LEFT, y + 2, 14, 14, class_, 2)


def stroke_sample(y: float, class_: str) -> Markup:
    """Return a sample of an upright line, for words that begin at the height `y`."""
    return line(LEFT + 7, y + 1, y + 17, class_)


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


def path(drawn: str, class_: str) -> Markup:
    """Return a path."""
    return el("path", d=drawn, class_=class_)


def scale(most: float) -> Callable[[float], float]:
    """Return where a value from zero to `most` stands across the drawing."""
    return lambda value: LEFT + (RIGHT - LEFT) * min(max(value / most, 0.0), 1.0)


def across(start: float, y: float, class_: str) -> Markup:
    """Return a level line from `start` to the right edge."""
    at = f"{y:.1f}"
    return el("line", x1=f"{start:g}", x2=f"{RIGHT:g}", y1=at, y2=at, class_=class_)


def side_figures(start: float, *marks: tuple[float, str]) -> list[Markup]:
    """Return (height, words) left of `start`; one that would touch the one before is left out."""
    kept: list[Markup] = []
    last = 0.0
    for y, words in marks:
        if not kept or y - last >= PITCH:
            kept.append(text(start - 5, y + 5, words, anchor="end", class_="lw-words lw-quiet"))
            last = y
    return kept


def spread(y: float, marks: list[tuple[float, str]], last: float = -WIDTH) -> list[Markup]:
    """Return (place, words) under one another's line; what would touch the one before is left out.

    `last` is where words on that line end already.
    """
    kept: list[Markup] = []
    for x, words in sorted(marks):
        half = wide(words) / 2
        middle = inside(x, words, LEFT)
        if middle - half > last:
            kept.append(text(x, y, words, class_="lw-words lw-quiet"))
            last = middle + half + 8
    return kept


def inside(x: float, words: str, start: float, strong: bool = True) -> float:
    """Return the middle nearest to `x` that keeps words between `start` and the edge."""
    half = wide(words, strong) / 2
    return max(min(x, RIGHT - half), start + half)


def scale_end(most: float) -> float:
    """Return the round figure, with a round half, that a scale up to `most` ends at."""
    if most <= 0:
        return 1.0
    ten: float = 10.0 ** floor(log10(most))
    return next(ten * step for step in _ENDS if at_least(ten * step, most))

"""The strokes that every picture is made of. Colours come from the style sheet by class."""

from collections.abc import Callable

from calc.render.html import Markup, el

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


def rect(
    x: float, y: float, width: float, height: float, class_: str, round_: float = 3
) -> Markup:
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

"""The parts of a whole, as shares of one bar."""

from math import isfinite

from calc.render.bars import kind_of
from calc.render.html import Markup, el, join
from calc.render.svg import (
    FILLS,
    LEFT,
    RIGHT,
    figure,
    line,
    rect,
    stroke_sample,
    swatch,
    told,
)
from calc.units.compare import at_least
from calc.units.shown import quantity_text
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Parts

_TALL, _GAP, _OVER = 22.0, 8.0, 3.0  # the bar, the room under it, how far a limit sticks out


def parts_html(answer: Answer, picture: Parts) -> Markup:
    """Return the figure of a whole and its parts, or nothing where there is none."""
    if picture.needs and answer.values[picture.needs] is None:
        return Markup("")
    return parts_of(answer, picture.parts, picture.caption, picture.whole, picture.rest)


def parts_of(
    answer: Answer,
    named: tuple[tuple[str, str], ...],
    caption: str,
    whole: tuple[str, str] = ("", ""),
    rest: str = "",
    head: tuple[object, float, str] = ("", 0.0, ""),
) -> Markup:
    """Return parts as shares of one bar with their words under it, a `head` drawn above.

    The head is a drawing, its height and what it says.
    """
    values, shown = answer.values, answer.shown
    parts = [
        (values[name], words, shown[name]) for name, words in named if (values[name] or 0.0) > 0
    ]
    total = sum(value for value, _, _ in parts)
    against = values[whole[0]] if whole[0] else None
    if not total or not isfinite(total):
        return Markup("")
    most = max(total, against or 0.0)
    y = head[1] + _OVER
    x, drawn, said, keys = LEFT, [head[0]], [head[2]] if head[2] else [], list[object]()
    drawn.append(rect(LEFT, y, RIGHT - LEFT, _TALL, "lw-track"))
    below = y + _TALL + _GAP
    for place, (value, words, said_as) in enumerate(parts):
        wide = (RIGHT - LEFT) * value / most
        drawn.append(_piece(place, x, y, wide))
        x += wide
        key, below = told(below, words, said_as, key=_piece_key(place, below))
        keys.append(key)
        said.append(f"{words} {said_as}")
    if rest and against is not None and not at_least(total, against):
        kind = kind_of(answer, named[0][0])
        left = quantity_text(against - total, kind) if kind else ""
        key, below = told(below, rest, left, key=swatch(below, "lw-track"))
        keys.append(key)
        said.append(f"{rest} {left}")
    if against is not None:
        at = LEFT + (RIGHT - LEFT) * against / most
        drawn.append(line(at, y - _OVER, y + _TALL + _OVER, "lw-limit"))
        key, below = told(below, whole[1], shown[whole[0]], key=stroke_sample(below, "lw-limit"))
        keys.append(key)
        said.append(f"{whole[1]} {shown[whole[0]]}")
    return figure(below, f"{'; '.join(said)}.", caption, *drawn, *keys)


def _piece(place: int, x: float, y: float, wide: float) -> Markup:
    """Return a part of a bar. Past the plain fills come stripes, as dashes of a broad stroke."""
    tall = _TALL
    box = rect(x, y, wide, tall, FILLS[place % len(FILLS)], 1)
    return box if place < len(FILLS) else join(box, _stripes(x, y, wide, tall))


def _piece_key(place: int, y: float) -> Markup:
    box = swatch(y, FILLS[place % len(FILLS)])
    return box if place < len(FILLS) else join(box, _stripes(LEFT, y + 2, 14, 14))


def _stripes(x: float, y: float, wide: float, tall: float) -> Markup:
    middle = f"M{x:.1f} {y + tall / 2:.1f}h{wide:.1f}"
    return el("path", d=middle, stroke_width=f"{tall:g}", class_="lw-stripes")

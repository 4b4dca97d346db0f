"""A section through a ventilated bay: where air comes in, what it takes up, where it leaves."""

from calc.render.html import Markup, el
from calc.render.svg import ASCENT, PITCH, clipped, figure, line, rect, text, told
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Section

_LEFT, _RIGHT, _TOP, _BOTTOM = 96.0, 216.0, 4.0, 136.0
_LOW, _HIGH, _GAP = 110.0, 32.0, 22.0
_ROOM = 82.0  # for words on either side


def section(answer: Answer, picture: Section) -> Markup:
    """Return the figure, or nothing where no air can do it."""
    shown, values = answer.shown, answer.values
    if values[picture.inside] is None or values[picture.need_flow] is None:
        return Markup("")
    if values[picture.fan] is not None:
        flow, vent, how = shown[picture.fan], "fan", "by fan"
    elif values[picture.vent] is not None:
        flow, vent, how = shown[picture.draught], shown[picture.vent], "by draught"
    else:
        flow, vent, how = (
            _first(shown[picture.need_flow]),
            _first(shown[picture.need_vent]),
            "needed",
        )
    heat, inside = _first(shown[picture.heat]), shown[picture.inside]
    outside, height = shown[picture.outside], shown[picture.height]
    middle = (_LEFT + _RIGHT) / 2
    keys, listed, y = list[object](), list[str](), _BOTTOM + 10
    for words, value in (("Air " + how, flow), ("Each vent", vent), ("Between the vents", height)):
        if value != "fan":
            key, y = told(y, words, value)
            keys.append(key)
            listed.append(f"{words.lower()} {value}")
    said = (
        f"Section through the bay: air at {outside} comes in low, takes up {heat}, and leaves high"
        f" at {inside}; {', '.join(listed)}."
    )
    return figure(
        y,
        said,
        picture.caption,
        rect(_LEFT, _TOP, _RIGHT - _LEFT, _BOTTOM - _TOP, "lw-part", 2),
        rect(_LEFT - 3, _LOW - _GAP / 2, 6, _GAP, "lw-track", 0),
        rect(_RIGHT - 3, _HIGH - _GAP / 2, 6, _GAP, "lw-track", 0),
        rect(middle - 46, 72, 92, 34, "lw-part lw-seat", 3),
        text(middle, 94, clipped(heat, 88, True), class_="lw-words lw-strong"),
        text(middle, 42, clipped(inside, 100, True), class_="lw-words lw-strong"),
        _arrow(20, _LEFT + 22, _LOW),
        _arrow(_RIGHT - 22, 292, _HIGH),
        _rising(middle, 68, 50),
        text(44, _LOW - ASCENT, clipped(outside, _ROOM)),
        text(268, _HIGH + PITCH + 8, clipped(inside, _ROOM)),
        keys,
    )


def _first(both: str) -> str:
    """Return the first of a value's two units."""
    return both.partition(" (")[0]


def _arrow(start: float, end: float, y: float) -> Markup:
    shaft = el(
        "line", x1=f"{start:g}", x2=f"{end - 10:g}", y1=f"{y:g}", y2=f"{y:g}", class_="lw-limit"
    )
    return Markup(shaft + el("path", d=f"M{end:g} {y:g} l-13 -7 v14 z", class_="lw-pointer"))


def _rising(x: float, start: float, end: float) -> Markup:
    shaft = line(x, end + 6, start, "lw-limit")
    return Markup(shaft + el("path", d=f"M{x:g} {end:g} l-6 10 h12 z", class_="lw-pointer"))

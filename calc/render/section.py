"""A section through a ventilated bay: where air comes in, what it takes up, where it leaves."""

from calc.render.html import Markup, el
from calc.render.svg import figure, line, rect, text
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Section

_HEIGHT = 196.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 84.0, 206.0, 26.0, 168.0
_LOW, _HIGH, _GAP = 146.0, 48.0, 22.0


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
    said = (
        f"Section through the bay: air at {outside} comes in low, takes up {heat}, and leaves high"
        f" at {inside}; {flow} {how}; {height} between the vents."
    )
    middle = (_LEFT + _RIGHT) / 2
    return figure(
        _HEIGHT,
        said,
        picture.caption,
        rect(_LEFT, _TOP, _RIGHT - _LEFT, _BOTTOM - _TOP, "lw-part", 2),
        rect(_LEFT - 3, _LOW - _GAP / 2, 6, _GAP, "lw-track", 0),
        rect(_RIGHT - 3, _HIGH - _GAP / 2, 6, _GAP, "lw-track", 0),
        rect(middle - 46, 104, 92, 34, "lw-part lw-seat", 3),
        text(middle, 126, heat, class_="lw-words lw-strong"),
        text(middle, 74, inside, class_="lw-words lw-strong"),
        _arrow(20, _LEFT + 22, _LOW),
        _arrow(_RIGHT - 22, 282, _HIGH),
        _rising(middle, 98, 82),
        text(42, _LOW - 14, outside),
        text(42, _LOW + 22, vent),
        text(248, _HIGH - 14, inside),
        text(248, _HIGH + 22, vent),
        line(232, _HIGH + 32, _LOW, "lw-tick"),
        text(264, (_HIGH + _LOW) / 2 + 18, height),
        text(middle, 188, f"{flow} {how}", class_="lw-words lw-strong"),
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

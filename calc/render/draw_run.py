"""A run out and back: supply, fuse, both conductors and the load, with the volts at each end."""

from calc.render.bars import bar_html
from calc.render.html import Markup, el
from calc.render.svg import LEFT, RIGHT, clipped, path, rect, text
from calc.units.shown import with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Run

_BOX, _TALL = 76.0, 46.0  # the box of a supply or a load
_OUT, _BACK = 34.0, 116.0  # the heights of the two conductors
_FUSE, _FUSED = 54.0, 64.0  # where the fuse begins, and how wide it is
_HEIGHT = 144.0
_STRONG = "lw-words lw-strong"


def run_html(answer: Answer, run: Run) -> Markup:
    """Return the figure of a run, or nothing where its current cannot flow."""
    shown = answer.shown
    fuse = f"{shown[run.fuse]} fuse" if answer.values[run.fuse] is not None else "fuse"
    length, conductor = shown[run.length], with_mm2(shown[run.conductor])
    said = (
        f"Supply {shown[run.supply]}, {fuse}, out {length} and back {length} of {conductor},"
        f" {shown[run.current]}; at the load {shown[run.at_load]}"
    )
    return bar_html(answer, run.bar, head=(_circuit(answer, run), _HEIGHT, said))


def _circuit(answer: Answer, run: Run) -> Markup:
    shown = answer.shown
    left, right, middle = LEFT + 36, RIGHT - 36, (LEFT + RIGHT) / 2
    top, foot = _OUT + 18, _OUT + 18 + _TALL
    fuse = shown[run.fuse] if answer.values[run.fuse] is not None else "Fuse"
    between = RIGHT - LEFT - 2 * _BOX - 12
    after = (_FUSE + _FUSED + RIGHT) / 2 - 12
    return el(
        "g",
        path(f"M{left:g} {top:g}V{_OUT:g}H{right:g}V{top:g}", "lw-wire"),
        path(f"M{left:g} {foot:g}V{_BACK:g}H{right:g}V{foot:g}", "lw-wire"),
        path(f"M{after:g} {_OUT - 6:g}l10 6l-10 6z", "lw-pointer"),
        path(f"M{after:g} {_BACK - 6:g}l-10 6l10 6z", "lw-pointer"),
        _box(LEFT, top, "Supply", shown[run.supply]),
        _box(RIGHT - _BOX, top, "Load", shown[run.at_load]),
        rect(_FUSE, _OUT - 13, _FUSED, 26, "lw-part", 3),
        text(_FUSE + _FUSED / 2, _OUT + 5, clipped(fuse, _FUSED - 4)),
        text(after, _OUT - 14, clipped(f"out {shown[run.length]}", between)),
        text(middle, top + 20, clipped(with_mm2(shown[run.conductor]), between)),
        text(middle, top + 40, clipped(shown[run.current], between, True), class_=_STRONG),
        text(after, _BACK + 21, clipped(f"back {shown[run.length]}", between)),
    )


def _box(x: float, y: float, name: str, value: str) -> Markup:
    middle = x + _BOX / 2
    return el(
        "g",
        rect(x, y, _BOX, _TALL, "lw-part", 3),
        text(middle, y + 19, name),
        text(middle, y + 38, clipped(value, _BOX - 4, True), class_=_STRONG),
    )

"""The picture of sizes one below the other, each with the load it allows by drop and by heat."""

from calc.render.html import Markup, el
from calc.render.svg import LEFT, RIGHT, figure, line, rect, text
from calc.units.compare import at_least
from calc.units.kinds import CURRENT
from calc.units.shown import quantity_text, with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Ladder, Rung

_START, _TOP, _STEP = 108.0, 26.0, 32.0  # where the bars begin, and how far apart the rungs are
_BEYOND = 2.0  # times the load: where the scale ends and a bar is cut off


def ladder_html(answer: Answer, ladder: Ladder) -> Markup:
    """Return the figure of a ladder of sizes."""
    rungs: tuple[Rung, ...] = answer.values[ladder.rungs]
    load: float = answer.values[ladder.load]
    load_shown = answer.shown[ladder.load]

    def place(amps: float) -> float:
        return _START + (RIGHT - _START) * min(amps / (_BEYOND * load), 1.0)

    drawn: list[object] = []
    for number, rung in enumerate(rungs):
        y = _TOP + _STEP * number
        weight = "lw-words lw-strong" if rung.chosen else "lw-words"
        drawn.append(text(_START - 6, y + 17, with_mm2(rung), anchor="end", class_=weight))
        drawn.append(_bar(y + 2, place(rung.by_drop), at_least(rung.by_drop, load)))
        drawn.append(rect(_START, y + 14, place(rung.by_heat) - _START, 9, "lw-part", 2))
        if rung.chosen:
            drawn.append(el("path", d=f"M2 {y + 6:g} l9 6.5 l-9 6.5 z", class_="lw-pointer"))
    foot = _TOP + _STEP * len(rungs)
    middle = place(load)
    return figure(
        foot + 30,
        _alternative(rungs, load_shown),
        ladder.caption,
        drawn,
        line(middle, _TOP - 6, foot, "lw-limit"),
        text(middle, 14, f"the load, {load_shown}", class_="lw-words lw-strong"),
        rect(LEFT, foot + 12, 16, 9, "lw-bar", 2),
        text(LEFT + 22, foot + 22, "by voltage drop", anchor="start"),
        rect(LEFT + 172, foot + 12, 16, 9, "lw-part", 2),
        text(LEFT + 194, foot + 22, "by heat", anchor="start"),
    )


def _bar(y: float, end: float, enough: bool) -> Markup:
    return rect(_START, y, end - _START, 9, "lw-bar" if enough else "lw-bar lw-over", 2)


def _alternative(rungs: tuple[Rung, ...], load: str) -> str:
    each = "; ".join(
        f"{with_mm2(rung)} {quantity_text(rung.by_drop, CURRENT)} by drop and "
        + (quantity_text(rung.by_heat, CURRENT) if rung.by_heat else "no value")
        + " by heat"
        for rung in rungs
    )
    chosen = next((with_mm2(rung) for rung in rungs if rung.chosen), None)
    said = f"{chosen} is the size for it" if chosen else "no size will do"
    return f"Sizes against the load, {load}. The most that each allows: {each}. So {said}."

"""The picture of a year: a bar for each month, the chosen one marked."""

from calc.render.html import Markup, el
from calc.render.svg import (
    LEFT,
    RIGHT,
    across,
    figure,
    inside,
    rect,
    scale_end,
    side_figures,
    text,
)
from calc.units.kinds import ENERGY
from calc.units.quantities import from_base, to_base
from calc.units.shown import grouped, quantity_text, rounded
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Months

_START, _HIGH, _FOOT = 54.0, 50.0, 150.0
_GAP = 3.0  # on either side of a bar
_LEAST, _MANY = 1.0, 10_000.0  # Wh: a smaller scale is of no use, a larger one is in kWh


def months_html(answer: Answer, picture: Months) -> Markup:
    """Return the figure of a year's months, or nothing where none brings anything."""
    rows = answer.values[picture.rows]
    most = max((row.energy for row in rows), default=0.0)
    if not most:
        return Markup("")
    chosen = answer.values[picture.chosen]
    small, large = ENERGY.units[:2]
    end = scale_end(max(_LEAST, from_base(most, ENERGY, small.name)))
    unit = large if end >= _MANY else small
    end = from_base(to_base(end, ENERGY, small.name), ENERGY, unit.name)
    step = (RIGHT - _START) / len(rows)

    def height(energy: float) -> float:
        return _FOOT - (_FOOT - _HIGH) * from_base(energy, ENERGY, unit.name) / end

    halves = ((_HIGH, end), ((_HIGH + _FOOT) / 2, end / 2), (_FOOT, 0.0))
    drawn: list[object] = [
        text(LEFT, 14, f"A day’s energy, {unit.symbol}", anchor="start"),
        side_figures(_START, *((y, grouped(rounded(number))) for y, number in halves)),
        [across(_START, y, "lw-grid") for y, number in halves if number],
    ]
    said = []
    for place, row in enumerate(rows):
        x, own = _START + step * place, row.month == chosen
        middle, top = x + step / 2, height(row.energy)
        words = f"{row.month} {quantity_text(row.energy, ENERGY)}"
        said.append(words)
        style, weight = ("lw-bar", "lw-strong") if own else ("lw-part", "lw-quiet")
        drawn.append(rect(x + _GAP, top, step - 2 * _GAP, _FOOT - top, style, 1))
        drawn.append(text(middle, _FOOT + 20, row.month[0], class_=f"lw-words {weight}"))
        if own:
            up = f"M{middle:.1f} {_FOOT + 25:g}l-6 9h12z"
            drawn.append(el("path", d=up, class_="lw-pointer"))
            at = inside(middle, words, _START)
            drawn.append(text(at, 36, words, class_="lw-words lw-strong"))
    return figure(
        _FOOT + 37,
        f"What a day gives, month by month: {', '.join(said)}. The month you chose is {chosen}.",
        picture.caption,
        *drawn,
        across(_START, _FOOT, "lw-tick"),
    )

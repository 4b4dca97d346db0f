"""The picture of some days of a bank: its state hour by hour, and what came in and went out."""

from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from math import ceil

from calc.render.days import BLOCK, DAY, Days, Flow, alternative, days_table
from calc.render.html import Markup, el, join
from calc.render.svg import (
    LEFT,
    RIGHT,
    across,
    figure,
    inside,
    line,
    rect,
    scale_end,
    side_figures,
    text,
    wide,
)
from calc.units.constants import HOUR
from calc.units.kinds import POWER, RATIO
from calc.units.quantities import from_base
from calc.units.shown import NO_BREAK_SPACE, grouped, quantity_text, rounded, with_unit
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Chart

_START, _TOP, _BASE = 54.0, 26.0, 104.0  # where days begin, a full bank, an empty bank
_HIGH, _FOOT = 152.0, 204.0  # the most power, and none
_LEAST, _MANY = 1.0, 10_000.0  # W: a smaller scale is of no use, a larger one is in kW
_KEY, _ROW = 238.0, 21.0
_LABEL = 26.0  # the room that the number of a day takes
_BARS = ("lw-in-full", "lw-in-striped", "lw-in-hollow")


def chart_html(answer: Answer, chart: Chart) -> Markup:
    """Return the figure of a bank's days with its table, or nothing where there are none."""
    values, shown = answer.values, answer.shown
    if not values[chart.states]:
        return Markup("")

    def flow(words: str, name: str, total: str) -> Flow:
        return Flow(words, tuple(values[name]), shown[total])

    return days_html(
        Days(
            tuple(values[chart.states]),
            shown[chart.lowest],
            values[chart.floor],
            quantity_text(values[chart.floor], RATIO),
            tuple((start, end) for start, end in values[chart.nights]),
            tuple(flow(*source) for source in chart.sources),
            flow("loads took", *chart.load),
            chart.caption,
        )
    )


@lru_cache(maxsize=4)  # an answer that is worked out in stages shows the same days at each
def days_html(days: Days) -> Markup:
    """Return the figure with its table."""
    keys, height = _keys(days)
    drawing = figure(
        height,
        alternative(days),
        days.caption,
        [
            _night(_place(days, start / HOUR), _place(days, end / HOUR))
            for start, end in days.nights
        ],
        _state(days),
        _power(days),
        _axis(days),
        keys,
    )
    return join(drawing, days_table(days))


def _place(days: Days, hour: float) -> float:
    return _START + (RIGHT - _START) * hour / days.hours


def _height(share: float) -> float:
    return _BASE - (_BASE - _TOP) * share


def _path(points: Sequence[tuple[float, float]]) -> str:
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points)


def _state(days: Days) -> Markup:
    """Return the upper half: the line, what lies under the floor, and the lowest point."""
    points = [(_place(days, at), _height(share)) for at, share in enumerate(days.states)]
    level = _height(days.floor)
    under = [(x, max(y, level)) for x, y in points]
    drawn: list[object] = [text(LEFT, 14, "In the bank", anchor="start")]
    drawn += side_figures(
        _START,
        (_TOP, with_unit("100", "%")),
        (level, quantity_text(days.floor, RATIO, digits=2)),
        (_BASE, "0"),
    )
    drawn.append(across(_START, _TOP, "lw-grid"))
    drawn.append(across(_START, _BASE, "lw-tick"))
    if max(y for _, y in under) > level + 0.5:
        ends = [(RIGHT, level), (_START, level)]
        drawn.append(el("path", d=_path([*under, *ends]) + "z", class_="lw-under"))
    drawn.append(across(_START, level, "lw-floor"))
    for start, end in days.dry:
        dry = f"M{_place(days, start):.1f} {level:.1f}H{_place(days, end):.1f}"
        drawn.append(el("path", d=dry, class_="lw-dry"))
    drawn.append(el("path", d=_path(points), class_="lw-course"))
    x, y = points[days.low_hour]
    words = f"lowest {days.lowest}"
    # Nothing is drawn lower than the lowest point, so its words stand clear of the line there.
    drawn.append(el("circle", cx=f"{x:.1f}", cy=f"{y:.1f}", r="4.5", class_="lw-pointer"))
    middle = inside(x, words, _START)
    drawn.append(text(middle, y + 20, words, class_="lw-words lw-strong lw-halo"))
    return join(*drawn)


def _power(days: Days) -> Markup:
    """Return the lower half: the sources one on the other, and the loads as a line."""
    seconds = BLOCK * HOUR
    load = [energy / seconds for energy in days.load.blocks]
    stacks = [[energy / seconds for energy in flow.blocks] for flow in days.sources]
    end = scale_end(max(_LEAST, *load, *map(sum, zip(*stacks, strict=True))))
    unit = POWER.units[1 if end >= _MANY else 0]

    def height(watts: float) -> float:
        return _FOOT - (_FOOT - _HIGH) * watts / end

    def at(watts: float) -> str:
        return grouped(rounded(from_base(watts, POWER, unit.name)))

    title = f"Coming in, {unit.symbol}, mean of {BLOCK}{NO_BREAK_SPACE}h"
    drawn: list[object] = [
        text(LEFT, 141, title, anchor="start"),
        *side_figures(_START, (_HIGH, at(end)), (height(end / 2), at(end / 2)), (_FOOT, "0")),
        across(_START, _HIGH, "lw-grid"),
        across(_START, height(end / 2), "lw-grid"),
    ]
    below = [0.0] * len(load)
    for number, stack in enumerate(stacks):
        above = [low + own for low, own in zip(below, stack, strict=True)]
        ends = [
            (_place(days, BLOCK * block), height(low), height(high))
            for block, (low, high) in enumerate(zip(below, above, strict=True))
            if high > low
        ]
        if ends:
            drawn.append(_bars(ends, number, _place(days, BLOCK) - _START))
        below = above
    steps = "".join(
        f"V{height(watts):.1f}H{_place(days, BLOCK * (block + 1)):.1f}"
        for block, watts in enumerate(load)
    )
    course = f"M{_START:g} {height(load[0]):.1f}{steps}"
    drawn.append(el("path", d=course, class_="lw-load-edge"))
    drawn.append(el("path", d=course, class_="lw-load"))
    drawn.append(across(_START, _FOOT, "lw-tick"))
    return join(*drawn)


def _bars(ends: Sequence[tuple[float, float, float]], number: int, width: float) -> Markup:
    """Return one source's bars.

    The stripes are dashes of a broad stroke: a pattern would need an id, and one that stands in a
    hidden part of the page draws nothing.
    """
    style = _BARS[number % len(_BARS)]
    if style == "lw-in-hollow":
        boxes = "".join(f"M{x:.1f} {y:.1f}V{top:.1f}h{width:.1f}V{y:.1f}z" for x, y, top in ends)
        return el("path", d=boxes, class_=style)
    strokes = "".join(f"M{x + width / 2:.1f} {y:.1f}V{top:.1f}" for x, y, top in ends)
    parts = ["lw-in-ground", style] if style == "lw-in-striped" else [style]
    return join(
        *(el("path", d=strokes, stroke_width=f"{width:.2f}", class_=part) for part in parts)
    )


def _night(start: float, end: float) -> Markup:
    return rect(start, _TOP, end - start, _FOOT - _TOP, "lw-night", 0)


def _axis(days: Days) -> Markup:
    """Return midnights and the numbers of the days, as many as have room."""
    count = days.hours // DAY
    every = ceil(_LABEL * count / (RIGHT - _START))
    drawn: list[object] = [text(LEFT, _FOOT + 20, "day", anchor="start")]
    for day in range(count + 1):
        drawn.append(line(_place(days, DAY * day), _FOOT, _FOOT + 5, "lw-tick"))
    for day in range(0, count, every):
        middle = _place(days, DAY * (day + 0.5))
        drawn.append(text(middle, _FOOT + 20, f"{day + 1}", class_="lw-words lw-quiet"))
    return join(*drawn)


def _keys(days: Days) -> tuple[Markup, float]:
    """Return what each pattern means, with its sum, and the height of the drawing with it."""
    entries: list[tuple[str, Callable[[float, float], Markup]]] = [
        (flow.said, partial(_swatch, number))
        for number, flow in enumerate(days.sources)
        if flow.any
    ]
    entries.append((days.load.said, partial(_sample, "lw-load")))
    entries.append((f"empty at {days.floor_shown}", partial(_sample, "lw-floor")))
    if days.dry:
        entries.append((f"empty for {days.dry_time} h", partial(_sample, "lw-dry")))
    if days.nights:
        entries.append(("night", lambda x, y: rect(x, y - 6, 14, 12, "lw-night", 0)))
    drawn, ends = list[object](), [LEFT]  # where each row ends; an entry takes the first with room
    for words, sample in entries:
        width = 20 + wide(words)
        if all(end > LEFT and end + width > RIGHT for end in ends):
            ends.append(LEFT)
        row = next(at for at, end in enumerate(ends) if end == LEFT or end + width <= RIGHT)
        x, y = ends[row], _KEY + _ROW * row
        drawn.append(sample(x, y))
        drawn.append(text(x + 20, y + 5, words, anchor="start"))
        ends[row] = x + width + 12
    return join(*drawn), _KEY + _ROW * (len(ends) - 1) + 12


def _swatch(number: int, x: float, y: float) -> Markup:
    return _bars([(x, y + 6, y - 6)], number, 14.0)


def _sample(class_: str, x: float, y: float) -> Markup:
    at = f"{y - 1:.1f}"
    return el("line", x1=f"{x:.1f}", x2=f"{x + 14:.1f}", y1=at, y2=at, class_=class_)

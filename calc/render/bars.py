"""Bars: values side by side on one scale, against their limits."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import ceil, floor, isfinite, log10

from calc.render.html import Markup, join
from calc.render.svg import (
    ASCENT,
    FILLS,
    LEFT,
    PITCH,
    RIGHT,
    figure,
    line,
    path,
    rect,
    scale,
    spread,
    stroke_sample,
    swatch,
    told,
)
from calc.units.compare import at_least, at_most
from calc.units.kinds import RATIO
from calc.units.quantities import Kind
from calc.units.shown import quantity_text, with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.outputs import part_of
from calc.worksheet.pictures import Bar, Bars, Limit, Row, RowsOf, Window

_TALL, _GAP, _OVER = 14.0, 8.0, 3.0  # a bar, the room under it, how far a limit sticks out
_MOST_ROWS = 6
_FURTHEST = 8  # tens that a scale by tens spans at most
_SMALLEST = 2.0  # what is left of a bar that is too short to be seen


@dataclass(frozen=True)
class Told:
    """One row as worked: its words, what is shown, from where to where, and a part of it."""

    words: str
    shown: str
    low: float
    high: float
    part: tuple[float, str] = (0.0, "")


@dataclass(frozen=True)
class Edge:
    """A limit as worked; `stands` is what it says."""

    limit: Limit
    at: float
    stands: str

    def broken_by(self, row: Told) -> bool:
        """Whether a row goes over it, or under it."""
        if self.limit.least:
            return not at_least(row.low or row.high, self.at)
        return not at_most(row.high, self.at)


def bars_html(answer: Answer, picture: Bars) -> Markup:
    """Return the figure of some values against their limits, or nothing where there are none."""
    if picture.needs and answer.values[picture.needs] is None:
        return Markup("")
    rows = _rows(answer, picture.rows)[:_MOST_ROWS]
    edges = [edge for one in picture.limits if (edge := _edge(answer, one))]
    numbers = [row.high for row in rows] + [edge.at for edge in edges]
    if not rows or not all(map(isfinite, numbers)) or max(numbers) <= 0:
        return Markup("")
    place, marks = None, list[tuple[float, str]]()
    if picture.by_tens:
        assert isinstance(picture.rows, tuple)
        place, marks = by_tens(
            [*numbers, *(row.low for row in rows)], kind_of(answer, picture.rows[0].value)
        )
    return figure_of(rows, edges, picture.caption, place or scale(max(numbers)), marks)


def _edge(answer: Answer, limit: Limit) -> Edge | None:
    if isinstance(limit.value, float):
        return Edge(limit, limit.value, quantity_text(limit.value, RATIO))
    at = answer.values[limit.value]
    return None if at is None else Edge(limit, at, answer.shown[limit.value])


def figure_of(
    rows: list[Told],
    edges: list[Edge],
    caption: str,
    place: Callable[[float], float],
    marks: list[tuple[float, str]],
    head: tuple[object, float, str] = ("", 0.0, ""),
) -> Markup:
    """Return rows of words with a bar under each, the limits across them, marks below.

    Above stands a `head`: a drawing, its height and what it says.
    """
    y, drawn, said = head[1], [head[0]], [head[2]] if head[2] else []
    top = y + PITCH
    for row in rows:
        words, y = told(y, row.words, row.shown)
        over = any(edge.broken_by(row) for edge in edges)
        drawn += [
            words,
            rect(LEFT, y + 2, RIGHT - LEFT, _TALL, "lw-track"),
            _bar(row, y, place, over),
        ]
        for edge in edges:
            x = place(edge.at)
            drawn.append(line(x, y + 2 - _OVER, y + 2 + _TALL + _OVER, _line_of(edge)))
        drawn += [line(x, y + 2, y + 2 + _TALL, "lw-tick") for x, _ in marks]
        y += _TALL + _GAP
        said.append(f"{row.words} {row.shown}")
        if row.part[1]:
            words, y = told(y - 4, row.part[1], key=swatch(y - 4, FILLS[1]))
            drawn.append(words)
            said[-1] += f" ({row.part[1]})"
            y += 4
    if marks:
        drawn += spread(y + ASCENT - 2, marks)
        y += PITCH
    for edge in edges:
        words, y = told(y, edge.limit.words, edge.stands, key=stroke_sample(y, _line_of(edge)))
        drawn.append(words)
        said.append(f"{edge.limit.words} {edge.stands}".rstrip())
    return figure(max(y, top), f"{'; '.join(said)}.", caption, *drawn)


def _line_of(edge: Edge) -> str:
    return "lw-limit lw-dashed" if edge.limit.least else "lw-limit"


def _bar(row: Told, y: float, place: Callable[[float], float], over: bool) -> Markup:
    start, end = place(row.low) if row.low else LEFT, place(row.high)
    wide = max(end - start, _SMALLEST)
    start = min(start, RIGHT - wide)
    whole = rect(start, y + 2, wide, _TALL, "lw-bar lw-over" if over else "lw-bar")
    share = row.part[0] / row.high if row.high else 0.0
    apart = rect(end - share * wide, y + 2, share * wide, _TALL, FILLS[1]) if share else None
    return join(whole, apart)


def _rows(answer: Answer, rows: tuple[Row, ...] | RowsOf) -> list[Told]:
    if isinstance(rows, RowsOf):
        return _table_rows(answer, rows)
    found: list[Told] = []
    values, shown = answer.values, answer.shown
    for row in rows:
        value, high = values[row.value], values[row.high] if row.high else None
        if value is None or (row.high and high is None):
            continue
        name, words = row.part
        part = (
            (values[name] or 0.0, f"{words} {shown[name]}") if name and values[name] else (0.0, "")
        )
        if high is None:
            found.append(Told(row.words, with_mm2(shown[row.value]), 0.0, value, part))
        else:
            ends = sorted(((value, shown[row.value]), (high, shown[row.high])))
            between = f"{ends[0][1]} to {ends[1][1]}"
            found.append(Told(row.words, between, ends[0][0], ends[1][0], part))
    return found


def _table_rows(answer: Answer, rows: RowsOf) -> list[Told]:
    lines = answer.values[rows.of] or ()
    table = next((one for one in answer.worksheet.tables if one.of == rows.of), None)
    if table is None:
        shares = sorted(((part_of(one, rows.value), str(one)) for one in lines), reverse=True)
        return [
            Told(said, quantity_text(share, RATIO), 0.0, share) for share, said in shares if share
        ]
    ids = [column.id for column in table.columns]
    name, at = ids.index(rows.name), ids.index(rows.value)
    values = [table.columns[at].of(one) for one in lines]
    cells = zip(answer.tables[rows.of] if lines else (), values, strict=True)
    return [
        Told(first_up(cell[name]), cell[at], 0.0, value)
        for cell, value in cells
        if value is not None
    ]


def first_up(words: str) -> str:
    """Return words that begin with a capital."""
    return f"{words[:1].upper()}{words[1:]}"


def by_tens(
    numbers: Iterable[float], kind: Kind | None, below: int = 1
) -> tuple[Callable[[float], float], list[tuple[float, str]]]:
    """Return a scale that grows by tens, from `below` tens under the least, and its marks."""
    above = [number for number in numbers if number > 0]
    high = max(ceil(log10(max(above)) - 1e-9), -8)
    low = min(max(floor(log10(min(above)) + 1e-9) - below, high - _FURTHEST), high - 1)

    def place(value: float) -> float:
        at = (log10(value) - low) / (high - low) if value > 0 else 0.0
        return LEFT + (RIGHT - LEFT) * min(max(at, 0.0), 1.0)

    marks = [
        (place(10.0**power), quantity_text(10.0**power, kind) if kind else f"{10.0**power:g}")
        for power in range(low + 1, high)
    ]
    return place, marks


def kind_of(answer: Answer, name: str) -> Kind | None:
    """Return the kind of a result or of a step between, None for a text."""
    sheet = answer.worksheet
    return next(
        (one.kind for one in (*sheet.results, *sheet.intermediates) if one.id == name), None
    )


def bar_html(answer: Answer, bar: Bar, head: tuple[object, float, str] = ("", 0.0, "")) -> Markup:
    """Return the figure of one value against its limit, with what is usual as marks."""
    value, limit = answer.values[bar.value], answer.values[bar.limit]
    if value is None:
        return Markup("")
    shown, most = answer.shown[bar.value], max(1.25 * value, 1.4 * limit)
    place = scale(most)
    row = Told("Lost", shown, 0.0, value)
    edge = Edge(Limit("Allowed", bar.limit), limit, answer.shown[bar.limit])
    marks = [
        (place(at), words)
        for at, words in bar.marks
        if at < most and not (at_most(at, limit) and at_least(at, limit))
    ]
    return figure_of([row], [edge], bar.caption, place, marks, head)


def window_html(answer: Answer, window: Window) -> Markup:
    """Return the figure of what lies between two ends, and the choice in it."""
    low, high = answer.values[window.low], answer.values[window.high]
    value = answer.values[window.value]
    place = scale(1.15 * max(low, high, value or 0))
    low_x, high_x = place(low), place(high)
    open_ = at_most(low, high)
    ends = [("Load needs", window.low), ("Wire can carry", window.high)]
    y, drawn, said = 0.0, list[object](), list[str]()
    for class_, (words, name) in zip(("lw-limit", "lw-limit lw-dashed"), ends, strict=True):
        key, y = told(y, words, answer.shown[name], key=stroke_sample(y, class_))
        drawn.append(key)
        said.append(f"{words} {answer.shown[name]}")
    y += 6
    wide, style = abs(high_x - low_x), "lw-open" if open_ else "lw-closed"
    drawn += [
        rect(LEFT, y + 7, RIGHT - LEFT, 4, "lw-track", 2),
        rect(min(low_x, high_x), y, wide, 18, style),
        line(low_x, y - 5, y + 23, "lw-limit"),
        line(high_x, y - 5, y + 23, "lw-limit lw-dashed"),
    ]
    y += 28
    if value is None:
        words = "no standard fuse lies between"
        key, y = told(y, f"{words[0].upper()}{words[1:]}")
    else:
        tip = min(max(place(value), LEFT + 8), RIGHT - 8)
        drawn.append(path(f"M{tip:.1f} {y - 14:g}l-8 12h16z", "lw-pointer"))
        words = f"the {answer.shown[window.value]} fuse lies between"
        sample = path(f"M{LEFT + 8:g} {y + 3:g}l-7 11h14z", "lw-pointer")
        key, y = told(y, "Fuse", answer.shown[window.value], key=sample)
    drawn.append(key)
    return figure(y, f"Number line: {'; '.join(said)}; {words}.", window.caption, *drawn)

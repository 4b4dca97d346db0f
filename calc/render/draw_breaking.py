"""A short on a scale by tens: how large it may be, and which kinds of fuse can break it."""

from collections.abc import Sequence

from calc.render.bars import by_tens, first_up
from calc.render.html import Markup
from calc.render.svg import (
    ASCENT,
    LEFT,
    PITCH,
    RIGHT,
    figure,
    line,
    rect,
    spread,
    stroke_sample,
    told,
)
from calc.units.compare import at_least
from calc.units.kinds import CURRENT
from calc.units.shown import quantity_text
from calc.worksheet.answer import Answer
from calc.worksheet.pictures import Breaking

_TALL, _ROOM = 14.0, 20.0  # a bar, and what it takes with the space under it
_MOST = 3  # kinds of fuse

Kind = tuple[str, float, bool]
"""A kind of fuse, what it breaks [A], and whether only memory says so."""


def breaking_html(answer: Answer, picture: Breaking) -> Markup:
    """Return the figure of a short against what can break it."""
    values, shown = answer.values, answer.shown
    low, high, wire = (values[name] for name in (picture.low, picture.high, picture.wire))
    kinds = _nearest(values[picture.kinds], high)
    numbers = [one for one in (low, high, wire, *(amps for _, amps, _ in kinds)) if one]
    if not low or not high:
        return Markup("")
    place, tens = by_tens(numbers, CURRENT, below=0)
    rows = [
        (
            "This short",
            f"{shown[picture.low]} to {shown[picture.high]}",
            low,
            high,
            "lw-part lw-copper",
        )
    ]
    if wire:
        rows.append(("Wire ampacity", shown[picture.wire], 0.0, wire, "lw-part lw-seat"))
    for name, amps, recalled in kinds:
        mark = " (from memory)" if recalled else ""
        class_ = "lw-bar" if at_least(amps, high) else "lw-bar lw-over"
        rows.append((first_up(name), quantity_text(amps, CURRENT) + mark, 0.0, amps, class_))
    y, drawn, said = 0.0, list[object](), list[str]()
    most = place(high)
    for words, value, start, end, class_ in rows:
        name, y = told(y, words, value)
        begin = place(start) if start else LEFT
        drawn += [
            name,
            rect(LEFT, y + 2, RIGHT - LEFT, _TALL, "lw-track"),
            rect(begin, y + 2, max(place(end) - begin, 2.0), _TALL, class_),
            *(line(x, y + 2, y + 2 + _TALL, "lw-tick") for x, _ in tens),
            line(most, y - 1, y + 5 + _TALL, "lw-limit"),
        ]
        y += _ROOM
        said.append(f"{words} {value}")
    drawn += spread(y + ASCENT, tens)
    y += PITCH
    key, y = told(y, "A fuse must break", shown[picture.high], key=stroke_sample(y, "lw-limit"))
    said.append(f"a fuse must break {shown[picture.high]}")
    return figure(y, f"{'; '.join(said)}.", picture.caption, *drawn, key)


def _nearest(kinds: Sequence[Kind], high: float) -> list[Kind]:
    """Return the kinds around the one that is just enough, and the one that breaks most."""
    if len(kinds) <= _MOST:
        return [*kinds]
    enough = next((n for n, (_, amps, _) in enumerate(kinds) if at_least(amps, high)), len(kinds))
    start = max(min(enough - _MOST // 2, len(kinds) - _MOST), 0)
    return [*kinds[start : start + _MOST - 1], *kinds[-1:]]

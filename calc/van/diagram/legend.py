"""The foot of a sheet: what signs mean, and the block with the van's name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from calc.van.diagram.drawing import (
    ASCENT,
    DESCENT,
    FLAG,
    PITCH,
    Dot,
    Flag,
    Frame,
    Line,
    Mark,
    Shape,
    Stroke,
    Symbol,
    Words,
)
from calc.van.diagram.scheme import Item, Token
from calc.van.diagram.symbols import SYMBOLS
from calc.van.diagram.widths import width
from calc.van.diagram.wrapping import words_of, wrapped

LEFT, RIGHT = 12.0, 1584.0
TITLE = 430.0  # the width of the title block
_HIGH, _SAMPLE, _GAP = 29.0, 40.0, 16.0
_INSET = 8.0
STROKES = (
    (Stroke.PLUS, "positive conductor"),
    (Stroke.MINUS, "negative conductor"),
    (Stroke.MAINS, "mains: live, neutral and earth"),
)
SHAPES = (
    (Shape.STOP, "stop"),
    (Shape.CAUTION, "caution"),
    (Shape.NOTE, "note"),
    (Shape.NOT_PROVEN, "not proven"),
)
# The other symbols have their words beside them.
_EXPLAINED = frozenset(
    (
        "fuse", "no-fuse", "unseen-fuse", "fuse-block", "breaker", "breaker-2", "isolator",
        "switch", "relay", "chassis", "earth", "negative", "to", "from",
    )
)  # fmt: skip
_RULES = (
    "Dot: joined. Lines that cross without a dot are not joined.",
    "F, W, S and Q of one number belong to one run.",
)
CHOSEN = "* chosen by the calculation, not in the record"


def foot(
    y: float, used: Sequence[Mark], notes: Iterable[tuple[Item, ...]], title: Sequence[str]
) -> tuple[float, list[Mark]]:
    """Return where the foot of a sheet ends that starts at `y`, and what stands in it.

    It explains what is `used` on the sheet.
    """
    out: list[Mark] = []
    bottom = _title(y, title, out)
    y = _notes(y, notes, out)
    y = _legend(y, (*used, *out), out)
    return max(y, bottom), out


def _notes(y: float, notes: Iterable[tuple[Item, ...]], out: list[Mark]) -> float:
    """Write the notes, several in a line where they are short, and return where they end."""
    right = RIGHT - TITLE - 2 * _GAP
    x = LEFT
    for note in notes:
        lines, wide = wrapped(note, right - LEFT)
        if x > LEFT and (x + wide > right or len(lines) > 1):
            x, y = LEFT, y + PITCH + 1
        for line in lines[:-1]:
            out.extend(words_of(line, x, y + ASCENT))
            y += PITCH
        out.extend(words_of(lines[-1], x, y + ASCENT))
        x += wide + 2 * _GAP
    return y + PITCH + 2 if x > LEFT else y


def _legend(y: float, used: Sequence[Mark], out: list[Mark]) -> float:
    x, right = LEFT, RIGHT - TITLE - 2 * _GAP
    for lead, words, marks in _entries(used):
        wide = lead + width(words) + _GAP
        if x > LEFT and x + wide > right:
            x, y = LEFT, y + _HIGH
        middle = y + _HIGH / 2
        out.extend(moved(mark, x, middle) for mark in marks)
        out.append(Words(x + lead, middle + 5, words, width(words)))
        x += wide
    return y + _HIGH


def _entries(used: Sequence[Mark]) -> Iterator[tuple[float, str, tuple[Mark, ...]]]:
    """Yield the room that a sample takes, its words, and the sample itself at the origin."""
    strokes = {mark.stroke for mark in used if isinstance(mark, Line)}
    for stroke, words in STROKES:
        if stroke in strokes:
            yield _SAMPLE, words, (Line(((0, 0), (_SAMPLE - 8, 0)), stroke, "legend"),)
    if any(isinstance(mark, Dot) for mark in used):
        yield 0, _RULES[0], ()
    names = {mark.name for mark in used if isinstance(mark, Symbol)}
    for name, found in SYMBOLS.items():
        if name in names and name in _EXPLAINED:
            yield found.width + 6, found.word, (Symbol(name, 0, 0),)
    shapes = {mark.shape for mark in used if isinstance(mark, Flag)}
    if shapes:
        yield 0, "Findings, numbered as in the review:", ()
    for shape, words in SHAPES:
        if shape in shapes:
            yield FLAG + 6, words, (Flag(shape, 0, 0, 5, FLAG),)
    if any(isinstance(mark, Words) and "*" in mark.text for mark in used):
        yield 0, CHOSEN, ()
    yield 0, _RULES[1], ()


def moved(mark: Mark, x: float, y: float) -> Mark:
    """Return a sample that stands at the origin, moved to a place."""
    match mark:
        case Line(points, stroke, net):
            return Line(tuple((x + px, y + py) for px, py in points), stroke, f"{net} {x} {y}")
        case Symbol(name, px, py):
            return Symbol(name, x + px, y + py)
        case Flag(shape, number, px, py, wide):
            return Flag(shape, number, x + px, y + py, wide)
    return mark


def _title(y: float, title: Sequence[str], out: list[Mark]) -> float:
    left = RIGHT - TITLE
    at = y + 4
    for number, text in enumerate(title):
        lines, _ = wrapped((Token(text, strong=number == 0),), TITLE - 2 * _INSET)
        for line in lines:
            out.extend(words_of(line, left + _INSET, at + ASCENT))
            at += PITCH
    bottom = at + DESCENT + 2
    out.append(Frame(left, y, TITLE, bottom - y, Stroke.FRAME))
    return bottom

"""What a diagram is made of once everything has its place: strokes, symbols, words, flags.

Lengths are in the drawing's own unit: words are 15 units high, and one unit is one pixel where
nothing is scaled. On the smallest of A4 and Letter paper those words are 7 points high.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

TEXT = 15.0  # the size of all words
ASCENT, DESCENT = 14.0, 4.0  # of a line of words above and below its base line
PITCH = ASCENT + DESCENT
WIDTH = 1596.0  # of every sheet: landscape paper, 263 mm wide at 7 points
MOST_HEIGHT = 1166.0  # 193 mm: what A4 has beside margins of 8 mm
FLAG, FLAG_GAP = 18.0, 3.0  # the shape of a finding, and the room before its number


class Stroke(StrEnum):
    """What a line stands for. Each has a pattern of its own, for paper has no colours."""

    PLUS = "plus"
    MINUS = "minus"
    MAINS = "mains"
    BAR = "bar"
    MINUS_BAR = "minus-bar"
    BOUNDARY = "boundary"
    FRAME = "frame"


class Shape(StrEnum):
    """The shape of a finding."""

    STOP = "stop"
    CAUTION = "caution"
    NOTE = "note"
    NOT_PROVEN = "not-proven"


class Words(NamedTuple):
    """A line of words that starts at `x` on the base line `y` and is at most `width` wide."""

    x: float
    y: float
    text: str
    width: float
    strong: bool = False


class Line(NamedTuple):
    """Straight strokes from point to point, level or upright. `net` names what is joined."""

    points: tuple[tuple[float, float], ...]
    stroke: Stroke
    net: str = ""


class Symbol(NamedTuple):
    """A symbol in a line: `x` is its left end, `y` the height of the line."""

    name: str
    x: float
    y: float


class Dot(NamedTuple):
    """Where lines are joined: without one they only cross."""

    x: float
    y: float


class Flag(NamedTuple):
    """A finding beside the part that it is about: `x` is its left end, `y` the base line."""

    shape: Shape
    number: int
    x: float
    y: float
    width: float


class Frame(NamedTuple):
    """A rectangle around other things."""

    x: float
    y: float
    width: float
    height: float
    stroke: Stroke


type Mark = Words | Line | Symbol | Dot | Flag | Frame


@dataclass(frozen=True)
class Sheet:
    """One sheet of paper: its height and all that stands on it. `said` reads as a list."""

    height: float
    marks: tuple[Mark, ...]
    said: tuple[tuple[str, tuple[str, ...]], ...] = ()  # headings, each with its entries


@dataclass(frozen=True)
class Drawing:
    """A van's diagram on one sheet, or on more where there are many circuits."""

    title: str
    sheets: tuple[Sheet, ...]

    @property
    def said(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """The same in words: headings, each with its entries."""
        found: dict[str, list[str]] = {}
        for sheet in self.sheets:
            for heading, entries in sheet.said:
                found.setdefault(heading, []).extend(entries)
        return tuple((heading, tuple(entries)) for heading, entries in found.items())

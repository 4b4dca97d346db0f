"""Words and findings in lines no wider than there is room for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from calc.van.diagram.drawing import FLAG, FLAG_GAP, Flag, Mark, Words
from calc.van.diagram.scheme import Finding, Item, Token
from calc.van.diagram.widths import width

_BETWEEN = " · "
_AFTER_MARK, _BEFORE_MARK = 6.0, 12.0


class Piece(NamedTuple):
    """Words or a finding in a line of words, from its start at `x`."""

    x: float
    width: float
    item: Item


type Lines = tuple[tuple[Piece, ...], ...]


@lru_cache(maxsize=8192)
def wrapped(items: tuple[Item, ...], limit: float) -> tuple[Lines, float]:
    """Return the items in lines at most `limit` wide, with the width of the broadest."""
    lines: list[tuple[Piece, ...]] = []
    line: list[Piece] = []
    for item in items:
        for piece in _pieces(item, limit):
            wide = item_width(piece)
            start = _start(line, piece)
            if line and (start + wide > limit or piece is not item):
                lines.append(tuple(line))
                line, start = [], 0.0
            _append(line, piece, start, wide)
    if line:
        lines.append(tuple(line))
    return tuple(lines), max((one[-1].x + one[-1].width for one in lines), default=0.0)


def item_width(item: Item) -> float:
    """Return how wide a token or a finding is."""
    if isinstance(item, Finding):
        return FLAG + FLAG_GAP + width(str(item.number), True)
    return width(item.text, item.strong)


def _start(line: list[Piece], item: Item) -> float:
    if not line:
        return 0.0
    last = line[-1]
    end = last.x + last.width
    if not isinstance(item, Token) or item.strong:
        return end + _BEFORE_MARK
    if isinstance(last.item, Token) and not last.item.strong:
        return end + width(_BETWEEN)
    return end + _AFTER_MARK


def _append(line: list[Piece], item: Item, start: float, wide: float) -> None:
    last = line[-1] if line else None
    plain = isinstance(item, Token) and not item.strong
    if plain and last and isinstance(last.item, Token) and not last.item.strong:
        assert isinstance(item, Token)
        joined = Token(f"{last.item.text}{_BETWEEN}{item.text}")
        line[-1] = Piece(last.x, start + wide - last.x, joined)
    else:
        line.append(Piece(start, wide, item))


def _pieces(item: Item, limit: float) -> Iterator[Item]:
    """Yield an item, or what it is broken into where it is wider than a line."""
    if isinstance(item, Finding) or item_width(item) <= limit:
        yield item
        return
    line = ""
    for space, word in _breaks(item.text):
        longer = f"{line}{space}{word}" if line else word
        if width(longer, item.strong) <= limit:
            line = longer
            continue
        if line:
            yield Token(line, item.strong)
        line = ""
        for character in word:
            if line and width(line + character, item.strong) > limit:
                yield Token(line, item.strong)
                line = ""
            line += character
    if line:
        yield Token(line, item.strong)


@lru_cache(maxsize=8192)
def longest_word(items: tuple[Item, ...]) -> float:
    """Return how wide the longest part is that is broken only where nothing else helps."""
    tokens = (item for item in items if isinstance(item, Token))
    return max(
        (width(word, one.strong) for one in tokens for _, word in _breaks(one.text)), default=0.0
    )


def _breaks(text: str) -> Iterator[tuple[str, str]]:
    """Yield the parts between which a line may end, each with what stands before it."""
    for word in text.split(" "):
        first, *rest = word.split("-")
        parts = [f"{one}-" for one in (first, *rest)[:-1]] + [(first, *rest)[-1]]
        for place, part in enumerate(parts):
            if part or not place:
                yield ("" if place else " "), part


def words_of(line: Iterable[Piece], x: float, y: float) -> Iterator[Mark]:
    """Yield a line of words that starts at `x` on the base line `y`."""
    for piece in line:
        if isinstance(piece.item, Finding):
            finding = piece.item
            yield Flag(finding.shape, finding.number, x + piece.x, y, piece.width)
        else:
            yield Words(x + piece.x, y, piece.item.text, piece.width, piece.item.strong)

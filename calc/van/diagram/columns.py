"""Columns: cells of a slot stand under one another, with words in as few lines as may be."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from calc.van.diagram.scheme import Cell, Run
from calc.van.diagram.symbols import size
from calc.van.diagram.wrapping import longest_word, wrapped

AFTER_SYMBOL, _AFTER_CELL = 4.0, 9.0
_NARROWEST, _LONGEST_WORD, _ENDLESS = 34.0, 130.0, 1e9  # of the words of a cell
_MOST_LINES, _HALVINGS, _WORTH, _ONE_LETTER = 8, 5, 4.0, 16.0
START, ENDS = "start", ("end", "return")
"""The slots of a run's ends: there is room in them for the sign that it goes on elsewhere."""


class Slot(NamedTuple):
    """A column of cells: where its symbols and its words start, and how wide words may be."""

    symbol: float
    words: float
    limit: float


@dataclass(frozen=True)
class Columns:
    """The columns that rows share: from the left end of their block."""

    slots: dict[str, Slot]
    width: float


def columns(
    runs: Sequence[Run], order: Iterable[str], room: float, grows: str, *, signs: bool = False
) -> Columns:
    """Return columns for the slots in `order` that `runs` use, in `room` if that can be.

    Words take as few lines as there is room for. What is left over goes to the slot `grows`.
    `signs` keeps room at the ends for the sign that a run goes on elsewhere.
    """
    cells: dict[str, list[Cell]] = {}
    for run in runs:
        for cell in run.cells:
            cells.setdefault(cell.slot, []).append(cell)
    used = [slot for slot in order if slot in cells]
    leads = {
        slot: max(
            size("to").width if signs and slot in (START, *ENDS) else 0.0,
            *(size(cell.symbol).width for cell in cells[slot]),
        )
        for slot in used
    }
    needs = {slot: _Need(cells[slot]) for slot in used}
    spare = room - sum(leads.values()) - len(used) * (AFTER_SYMBOL + _AFTER_CELL)
    words = _narrowed(needs, spare)
    over = sum(words.values())
    if over > spare:
        words = {slot: max(_ONE_LETTER, wide * spare / over) for slot, wide in words.items()}
    left_over = max(0.0, spare - sum(words.values()))
    x, slots = 0.0, {}
    for slot in used:
        start = x + leads[slot] + (AFTER_SYMBOL if leads[slot] else 0.0)
        slots[slot] = Slot(x, start, words[slot] + 0.01)
        x = start + words[slot] + _AFTER_CELL + (left_over if slot == grows else 0.0)
    return Columns(slots, x)


def _narrowed(needs: Mapping[str, _Need], spare: float) -> dict[str, float]:
    """Return a width for the words of each slot: the fewest lines that fit into `spare`."""
    counts = dict.fromkeys(needs, 1)
    words = {slot: need.natural for slot, need in needs.items()}
    while sum(words.values()) > spare:
        saved = {
            slot: words[slot] - need.limit(counts[slot] + 1)
            for slot, need in needs.items()
            if counts[slot] < _MOST_LINES
        }
        if not any(wide > _WORTH for wide in saved.values()):
            break
        fewest = min(counts[slot] for slot, wide in saved.items() if wide > _WORTH)
        best = max(
            (slot for slot, wide in saved.items() if wide > _WORTH and counts[slot] == fewest),
            key=lambda slot: saved[slot],
        )
        counts[best] += 1
        words[best] -= saved[best]
    for slot in sorted(counts, key=lambda one: -counts[one]):
        for count in range(1, counts[slot]):
            wider = needs[slot].limit(count) if count > 1 else needs[slot].natural
            if sum(words.values()) - words[slot] + wider <= spare:
                words[slot], counts[slot] = wider, count
                break
    for slot in sorted(counts, key=lambda one: -counts[one]):
        left = spare - sum(words.values())
        words[slot] = min(needs[slot].natural, words[slot] + max(0.0, left))
    return words


class _Need:
    """How wide the words of a slot are, and in how many lines they go into less."""

    def __init__(self, cells: Iterable[Cell]) -> None:
        own = {items for cell in cells for items in (cell.above, cell.below) if items}
        self._widths = {items: wrapped(items, _ENDLESS)[1] for items in own}
        self.natural = max(self._widths.values(), default=0.0)
        self._limits: dict[int, float] = {}

    def lines(self, limit: float) -> int:
        """Return the most lines of any words within a width."""
        return max(
            (len(wrapped(items, limit)[0]) for items, wide in self._widths.items() if wide > limit),
            default=1,
        )

    def limit(self, count: int) -> float:
        """Return the least width in which all words have `count` lines at most."""
        if count not in self._limits:
            self._limits[count] = self._found(count)
        return self._limits[count]

    def _found(self, count: int) -> float:
        low, high = self._least, self.natural
        if low >= high or self.lines(low) <= count:
            return min(low, high)
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            if self.lines(middle) <= count:
                high = middle
            else:
                low = middle
        return high

    @cached_property
    def _least(self) -> float:
        """The width of the longest word, which is broken only where nothing else helps."""
        longest = max((longest_word(items) for items in self._widths), default=0.0)
        return max(_NARROWEST, min(longest, _LONGEST_WORD))

"""A sheet in words, as a list."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from calc.van.diagram.scheme import Cell, Finding, Item, Run, Scheme
from calc.van.diagram.symbols import SYMBOLS

# How a cell begins in a list.
_LEADS = {"start": "from", "wire": "cable", "end": "to"}
_NAMED = ("fuse", "no-fuse", "unseen-fuse", "breaker", "isolator", "switch")


def sentence(heading: str, cells: Sequence[Cell], *more: str) -> str:
    """Return a run as an entry of a list: what a reader would say who follows its line."""
    return f"{heading}: {', '.join((*filter(None, map(_phrase, cells)), *more))}."


def _phrase(cell: Cell) -> str:
    lead = _LEADS.get(cell.slot.rstrip("123"), "")
    if cell.symbol in _NAMED:
        lead = SYMBOLS[cell.symbol].word
    if cell.slot == "return":
        lead = "back by the chassis," if cell.symbol == "chassis" else "back to"
    if not lead and not (cell.above or cell.below):
        return ""
    above = " ".join(_spoken(item) for item in cell.above)
    below = (_spoken(item) for item in cell.below)
    return ", ".join((f"{lead} {above}".strip(), *(one for one in below if one not in lead)))


def _spoken(item: Item) -> str:
    if isinstance(item, Finding):
        return f"{item.shape.replace('-', ' ')} {item.number}"
    return item.text.replace("− ", "negative to ", 1) if item.text.startswith("− ") else item.text


def said_of(
    scheme: Scheme, own: Sequence[Run], first: bool
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return what stands on a sheet as a list."""
    parts: list[tuple[str, Iterable[str]]] = []
    if first:
        mains = scheme.mains
        rows = mains.runs if mains else ()
        parts = [
            ("Sources", (run.said for one in scheme.sources for run in (one.run, *one.others))),
            ("Mains", (*(one.said for one in rows), *(mains.said if mains else ()))),
            ("Bank", (one.said for one in scheme.batteries)),
            ("Bars", (one.said for one in (*scheme.bars, *scheme.returns))),
            ("Main cables", (one.said for one in (*scheme.feeds, *scheme.minus_feeds))),
        ]
    parts.append(("Circuits", (one.said for one in own if one.circuit)))
    parts.append(("Further cables and parts", (one.said for one in own if not one.circuit)))
    if first:
        parts.append(("Notes", (_plain(one) for one in scheme.notes)))
    made = ((heading, tuple(one for one in entries if one)) for heading, entries in parts)
    return tuple((heading, entries) for heading, entries in made if entries)


def _plain(items: Iterable[Item]) -> str:
    return " ".join(
        f"{one.shape.replace('-', ' ')} {one.number}" if isinstance(one, Finding) else one.text
        for one in items
    )

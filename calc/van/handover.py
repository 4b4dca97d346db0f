"""What is handed over with a van: markers, labels, charger settings, cards and the van's link."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.van.cards import LIVE_TITLE, Card, cards, charger_settings, still_live
from calc.van.link import pack
from calc.van.listed import ListTable
from calc.van.marks import marks
from calc.van.stock import Piece, end_text

if TYPE_CHECKING:
    from calc.van.fuse_list import Fuse
    from calc.van.record import Part, Van


@dataclass(frozen=True, kw_only=True)
class Label:
    """A label to cut out: its large `title`, the lines under it, and whether it warns."""

    title: str
    lines: tuple[str, ...]
    warns: bool = False


@dataclass(frozen=True, kw_only=True)
class HandOver:
    """The papers of a van. `fragment` is what its link holds after the #, as long as it is."""

    markers: tuple[Label, ...]
    labels: tuple[Label, ...]
    settings: ListTable
    cards: tuple[Card, ...]
    fragment: str


def papers(van: Van, cut: Iterable[Piece], fuses: Iterable[Fuse]) -> HandOver:
    """Return the papers: `cut` the pieces of the cut list, `fuses` those of the fuse list."""
    return HandOver(
        markers=tuple(_markers(van, cut)),
        labels=(*_fuse_labels(fuses), *_live_labels(van)),
        settings=charger_settings(van),
        cards=cards(van),
        fragment=pack(van),
    )


def _markers(van: Van, cut: Iterable[Piece]) -> Iterator[Label]:
    """Yield two markers for each conductor, one for each end, in the order of their marks' runs."""
    order = {part.id: place for place, part in enumerate(_runs_in_order(van))}
    for piece in sorted(cut, key=lambda one: order[one.conductor.part.id]):
        start, end = piece.conductor.start, piece.conductor.end
        for number in range(1, piece.count + 1):
            mark = piece.mark + (f".{number}" if piece.count > 1 else "")
            for here, there in ((start, end), (end, start)):
                lines = (f"here: {end_text(van, here)}", f"to: {end_text(van, there)}")
                yield Label(title=mark, lines=lines)


def _runs_in_order(van: Van) -> list[Part]:
    numbers = marks(van).numbers
    runs = {one.part.id: one.part for one in van.net.conductors}
    return sorted(runs.values(), key=lambda part: numbers.get(part.id, 0))


def _fuse_labels(fuses: Iterable[Fuse]) -> Iterator[Label]:
    for fuse in fuses:
        if fuse.rating:
            lines = (fuse.part.name, fuse.rating, fuse.family, f"protects {fuse.protects}")
            yield Label(title=fuse.mark, lines=tuple(filter(None, lines)))


def _live_labels(van: Van) -> Iterator[Label]:
    """Yield a label for each isolator, or one for the bank where none is listed."""
    own = marks(van)
    named = [f"{own.part(one)} {one.name}" for one in van.all("isolators")] or ["Battery bank"]
    for name in named:
        yield Label(title=name, lines=(f"{LIVE_TITLE}:", *still_live(van)), warns=True)

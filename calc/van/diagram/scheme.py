"""What is to be drawn, before anything has a place: runs of cells between bars.

A run is a row of cells as current passes them: a terminal, a fuse, a cable, a load. Each cell has
a symbol, or none where there is only a conductor, and words above and below the line.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from calc.van.diagram.drawing import Shape, Stroke


class Token(NamedTuple):
    """A few words that stay together, strong for a mark such as F3."""

    text: str
    strong: bool = False


class Finding(NamedTuple):
    """A finding of the review by its shape and number."""

    shape: Shape
    number: int


type Item = Token | Finding


class Cell(NamedTuple):
    """A part in a run. `slot` says in which column it stands, so that rows read as a table.

    `after` is what the line is from the symbol on.
    """

    slot: str
    symbol: str = ""
    above: tuple[Item, ...] = ()
    below: tuple[Item, ...] = ()
    after: Stroke = Stroke.PLUS


@dataclass(frozen=True)
class Run:
    """A row of cells. `start` and `end` are ids of bars, nothing where it joins none that is drawn.

    Where it joins none, a cell with a symbol says in words where it comes from or goes to; what it
    would say are the words of its first cell or `start_words`, of its last or `end_words`. `before`
    is what its line is up to the first symbol; `said` is the run as an entry of a list.
    """

    id: str
    cells: tuple[Cell, ...]
    start: str = ""
    end: str = ""
    before: Stroke = Stroke.PLUS
    start_words: tuple[Item, ...] = ()
    end_words: tuple[Item, ...] = ()
    circuit: bool = False
    said: str = ""


@dataclass(frozen=True)
class Bar:
    """A bar, a fuse block or a battery terminal, to which runs are joined."""

    id: str
    words: tuple[Item, ...]
    thick: bool = True
    symbol: str = ""
    to_chassis: bool = False
    said: str = ""


@dataclass(frozen=True)
class Mains:
    """What stands behind the boundary.

    `supply` is shore power up to the rail that feeds the charger, and the changeover or the shore
    sockets. `inverter` ends with a symbol from which its `outlets` hang; with `changeover` that is
    one, which the rail comes to too.
    """

    title: str
    supply: Run | None = None
    shore: Run | None = None
    sockets: Run | None = None
    inverter: Run | None = None
    changeover: bool = False
    outlets: tuple[Run, ...] = ()
    words: tuple[tuple[str, tuple[Item, ...]], ...] = ()  # symbols with words, under the rows
    said: tuple[str, ...] = ()

    @property
    def runs(self) -> tuple[Run, ...]:
        """All its runs."""
        rows = (self.supply, self.shore, self.sockets, self.inverter)
        return (*(one for one in rows if one), *self.outlets)


@dataclass(frozen=True)
class Source:
    """A source with what stands between it and the bar; `others` are joined before its device."""

    run: Run
    others: tuple[Run, ...] = ()


@dataclass(frozen=True)
class Scheme:
    """A van to be drawn."""

    name: str
    title: tuple[str, ...]  # lines of the title block
    sources: tuple[Source, ...] = ()
    batteries: tuple[Run, ...] = ()  # from the negative to the positive terminal
    bars: tuple[Bar, ...] = ()  # positive ones, the bank's own first
    feeds: tuple[Run, ...] = ()  # from bar to bar
    circuits: tuple[Run, ...] = ()
    returns: tuple[Bar, ...] = ()  # negative bars, the bank's own first
    minus_feeds: tuple[Run, ...] = ()
    mains: Mains | None = None
    notes: tuple[tuple[Item, ...], ...] = ()

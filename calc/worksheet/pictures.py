"""What a worksheet's picture shows, as data; `calc.render.drawings` draws it.

A name is the id of an output, or the path of a value in the result (`hourly.states`).
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from typing import Any


@dataclass(frozen=True)
class Bar:
    """A value against its limit, with further usual `marks` (value, text)."""

    value: str
    limit: str
    caption: str
    marks: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True)
class Run:
    """A run out and back, from the supply over a fuse to the load, above a bar of what it loses.

    `fuse` may have no value. `at_load` is the voltage that arrives; `length` is one way.
    """

    bar: Bar
    supply: str
    at_load: str
    fuse: str
    conductor: str
    length: str
    current: str


@dataclass(frozen=True)
class Row:
    """One row of `Bars`: a `value` in the reader's `words`, or what lies from it to `high`.

    `part` (value, words) is a share of the value that is drawn apart.
    """

    words: str
    value: str
    high: str = ""
    part: tuple[str, str] = ("", "")


@dataclass(frozen=True)
class RowsOf:
    """A row of `Bars` for each line of the table `of`: `name` and `value` are columns of it.

    Else `value` is the path of a share in each line, and the largest come first.
    """

    of: str
    name: str
    value: str


@dataclass(frozen=True)
class Limit:
    """What no row of `Bars` may go over, or under if `least`: a value by name, or a share."""

    words: str
    value: str | float
    least: bool = False


@dataclass(frozen=True)
class Bars:
    """Values side by side on one scale, against their limits. A row without a value is left out.

    `by_tens` has a scale that grows by tens, for values that differ by more than a screen shows.
    Without the value that `needs` names nothing is drawn.
    """

    rows: tuple[Row, ...] | RowsOf
    caption: str
    limits: tuple[Limit, ...] = ()
    by_tens: bool = False
    needs: str = ""


@dataclass(frozen=True)
class Parts:
    """What a whole is made of, as shares of one bar: `parts` (value, words), in their order.

    `whole` (value, words) is a length to set the parts against; what is left of it has the words
    `rest`. Without the value that `needs` names nothing is drawn.
    """

    parts: tuple[tuple[str, str], ...]
    caption: str
    whole: tuple[str, str] = ("", "")
    rest: str = ""
    needs: str = ""


@dataclass(frozen=True)
class Either:
    """The first of some pictures that there are values for."""

    pictures: tuple["Picture", ...]


@dataclass(frozen=True)
class Probes:
    """A run from the bank to a device and back, with where a meter goes.

    `red`, `black` and `clamp` name places of the search for a fault, `charging` whether the device
    is a charger, `told` where the probes go in words.
    """

    red: str
    black: str
    clamp: str
    charging: str
    told: str
    caption: str


@dataclass(frozen=True)
class Remote:
    """A switch within reach: in the line itself, or in the wire to the coil of a relay.

    `relay` is a name with the value that tells of the latter. `contact`, `wire` and `fuse` are the
    rating of what breaks the line, the wire to the coil and its fuse; `line` is the wire of the
    line itself.
    """

    relay: tuple[str, str]
    contact: str
    wire: str
    fuse: str
    line: str
    caption: str


@dataclass(frozen=True)
class Window:
    """A number line from `low` to `high` with the chosen `value` between."""

    low: str
    high: str
    value: str
    caption: str


class Part(str):
    """The name of a part on a stud, with its `shape`: seat, lug, washer, locking or nut."""

    shape: str

    def __new__(cls, shape: str, name: str) -> "Part":
        part = super().__new__(cls, name)
        part.shape = shape
        return part

    def __reduce__(self) -> tuple[type["Part"], tuple[str, str]]:
        return Part, (self.shape, str(self))


@dataclass(frozen=True)
class Stack:
    """Parts threaded on a stud, first at the seat; `parts` names the list of `Part`."""

    parts: str
    caption: str


class Rung(str):
    """The name of a size, with the load [A] it allows by drop and by heat; `chosen` marks one."""

    by_drop: float
    by_heat: float
    chosen: bool

    def __new__(cls, name: str, *, by_drop: float, by_heat: float, chosen: bool) -> "Rung":
        rung = super().__new__(cls, name)
        rung.by_drop, rung.by_heat, rung.chosen = by_drop, by_heat, chosen
        return rung

    def __getnewargs_ex__(self) -> tuple[tuple[str], dict[str, float | bool]]:
        return (str(self),), vars(self)


@dataclass(frozen=True)
class Ladder:
    """Sizes one below the other, each against the `load`; `rungs` names the list of `Rung`."""

    rungs: str
    load: str
    caption: str


@dataclass(frozen=True)
class Shares:
    """A loop of `parts` (value, name) that make up `total` between them, and what it passes."""

    parts: tuple[tuple[str, str], ...]
    total: str
    result: str
    caption: str


@dataclass(frozen=True)
class Breaking:
    """A short on a scale by tens, from `low` to `high`, against what may have to break it.

    `kinds` names pairs of a kind of fuse and the current [A] that it breaks; `wire` is what the
    wire can carry for hours.
    """

    low: str
    high: str
    wire: str
    kinds: str
    caption: str


@dataclass(frozen=True)
class Several:
    """A picture in sight, and others folded below it."""

    first: "Picture"
    folded: tuple["Picture", ...]
    words: str


@dataclass(frozen=True)
class Spans:
    """Times on one logarithmic scale: each of `spans` has a name, its earliest and its latest."""

    spans: tuple[tuple[str, str, str], ...]
    caption: str


@dataclass(frozen=True)
class Section:
    """A bay with a low and a high vent: which values stand where in the drawing.

    Without a fan or vents, what is needed is drawn.
    """

    heat: str
    outside: str
    inside: str
    height: str
    need_flow: str
    need_vent: str
    vent: str
    fan: str
    draught: str
    caption: str


@dataclass(frozen=True)
class Chart:
    """A bank's state over some whole days, and under it what came in and what went out.

    All begin at midnight. `states` names the shares [0..1] at the start of every hour and at the
    end of the last; `lowest` the least of them; `floor` the share at which the bank counts as
    empty. `nights` names pairs of a start and an end [s]. Each of `sources` has its word, the name
    of its energies [J] hour by hour and the name of their sum; `load` has the last two.
    """

    states: str
    lowest: str
    floor: str
    nights: str
    sources: tuple[tuple[str, str, str], ...]
    load: tuple[str, str]
    caption: str


@dataclass(frozen=True)
class Months:
    """A bar for each month of the year, the month that `chosen` names marked.

    `rows` names the rows, each with the name of its `month` and its `energy` [J].
    """

    rows: str
    chosen: str
    caption: str


def names_in(picture: Any) -> Iterator[str]:
    """Yield every text in a picture: the names of values, and its words."""
    if isinstance(picture, str):
        yield picture
    elif isinstance(picture, RowsOf):
        yield picture.of  # what else it names stands in the rows
    elif isinstance(picture, tuple):
        for part in picture:
            yield from names_in(part)
    elif is_dataclass(picture):
        for part in fields(picture):
            yield from names_in(getattr(picture, part.name))


Picture = (
    Bar
    | Bars
    | Breaking
    | Chart
    | Either
    | Ladder
    | Months
    | Parts
    | Probes
    | Remote
    | Run
    | Section
    | Several
    | Shares
    | Spans
    | Stack
    | Window
)

"""What a worksheet's picture shows, as data; `calc.render.drawings` draws it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Bar:
    """A value against its limit, with further usual `marks` (value, text)."""

    value: str
    limit: str
    caption: str
    marks: tuple[tuple[float, str], ...] = ()


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


@dataclass(frozen=True)
class Stack:
    """Parts threaded on a stud, first at the seat; `parts` names the list of `Part`."""

    parts: str
    caption: str

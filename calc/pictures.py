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


@dataclass(frozen=True)
class Stack:
    """Parts threaded on a stud, first at the seat; `parts` names the list."""

    parts: str
    caption: str

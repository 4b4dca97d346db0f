"""Streets: strips without words in which upright lines run, each net in a track of its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from calc.van.diagram.drawing import Dot, Line, Mark, Stroke

_SAME = 0.5


@dataclass
class _Upright:
    stroke: Stroke
    ends: list[float] = field(default_factory=list)


@dataclass
class Streets:
    """Upright lines by street and net. Heights are told first; then each gets its place.

    `rooms` are the strips from left to right; `order` says for each whether lines that reach
    further down stand further left (-1) or right (1).
    """

    rooms: dict[str, tuple[float, float, int]]
    _lines: dict[tuple[str, str], _Upright] = field(default_factory=dict)
    _places: dict[tuple[str, str], float] = field(default_factory=dict)

    def touch(self, street: str, net: str, y: float, stroke: Stroke) -> None:
        """Let the line of `net` in a street reach the height `y`."""
        self._lines.setdefault((street, net), _Upright(stroke)).ends.append(y)

    def nets(self, street: str) -> list[str]:
        """Return the nets that run in a street."""
        return [net for one, net in self._lines if one == street]

    def streets(self, net: str) -> list[str]:
        """Return the streets that a net runs in."""
        return [street for street, one in self._lines if one == net]

    def settle(self) -> None:
        """Give each line its track: negatives first, then by how far down it reaches."""
        for street, (left, right, way) in self.rooms.items():
            nets = sorted(
                self.nets(street),
                key=lambda net: (
                    self._lines[street, net].stroke is not Stroke.MINUS,
                    way * max(self._lines[street, net].ends),
                ),
            )
            step = (right - left) / (len(nets) + 1)
            for place, net in enumerate(nets, 1):
                self._places[street, net] = left + step * place

    def x(self, street: str, net: str) -> float:
        """Return where a net's line stands. Raises KeyError."""
        return self._places[street, net]

    def marks(self) -> Iterator[Mark]:
        """Yield the lines, with a dot wherever a level line joins one of them."""
        for (street, net), upright in self._lines.items():
            x = self._places[street, net]
            low, high = min(upright.ends), max(upright.ends)
            if high - low > _SAME:
                yield Line(((x, low), (x, high)), upright.stroke, net)
            for y in sorted(set(upright.ends)):
                # At an end that only one line meets there is a corner, no junction.
                if low < y < high or upright.ends.count(y) > 1:
                    yield Dot(x, y)

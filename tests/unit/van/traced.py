"""A drawing read back as an electrician reads it: which lines are joined, by ends and dots."""

from calc.van.diagram.drawing import Dot, Line, Sheet, Stroke
from tests.unit.van.overlaps import TOUCH, Box

LIVE = (Stroke.PLUS, Stroke.MINUS, Stroke.MAINS, Stroke.BAR, Stroke.MINUS_BAR)


def joined(sheet: Sheet) -> list[set[str]]:
    """Return the nets whose lines are joined, a set for each piece that hangs together.

    Lines are joined where their ends meet or a dot stands on both; a symbol parts them.
    """
    pieces: list[tuple[Box, str]] = []
    for mark in sheet.marks:
        if isinstance(mark, Line) and mark.stroke in LIVE and "legend" not in mark.net:
            for (ax, ay), (bx, by) in zip(mark.points, mark.points[1:], strict=False):
                pieces.append(((ax, ay, bx, by), mark.net))
    dots = [(mark.x, mark.y) for mark in sheet.marks if isinstance(mark, Dot)]
    parents = list(range(len(pieces)))

    def root(place: int) -> int:
        while parents[place] != place:
            place = parents[place]
        return place

    for place, (one, _) in enumerate(pieces):
        for later, (other, _) in enumerate(pieces[place + 1 :], place + 1):
            if _meet(one, other) or any(_on(one, dot) and _on(other, dot) for dot in dots):
                parents[root(later)] = root(place)
    found: dict[int, set[str]] = {}
    for place, (_, net) in enumerate(pieces):
        found.setdefault(root(place), set()).add(net)
    return list(found.values())


def _meet(one: Box, other: Box) -> bool:
    ends = [(one[0], one[1]), (one[2], one[3])]
    others = [(other[0], other[1]), (other[2], other[3])]
    return any(
        abs(ax - bx) < TOUCH and abs(ay - by) < TOUCH for ax, ay in ends for bx, by in others
    )


def _on(line: Box, dot: tuple[float, float]) -> bool:
    x, y = dot
    return (
        min(line[0], line[2]) - TOUCH < x < max(line[0], line[2]) + TOUCH
        and min(line[1], line[3]) - TOUCH < y < max(line[1], line[3]) + TOUCH
    )

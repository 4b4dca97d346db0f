"""What must not be in a drawing: things on one another, lines through words, lines in lines."""

from collections.abc import Iterator

from calc.van.diagram.drawing import (
    ASCENT,
    DESCENT,
    MOST_HEIGHT,
    WIDTH,
    Drawing,
    Flag,
    Line,
    Sheet,
    Symbol,
    Words,
)
from calc.van.diagram.symbols import SYMBOLS
from calc.van.diagram.widths import width

Box = tuple[float, float, float, float]
TOUCH = 0.3  # less is no overlap


def boxes(sheet: Sheet) -> list[tuple[Box, str]]:
    """Return the room of everything that is no line, with a word for it."""
    found: list[tuple[Box, str]] = []
    for mark in sheet.marks:
        match mark:
            case Words(x, y, text, _, strong):
                box = (x, y - ASCENT, x + width(text, strong), y + DESCENT)
                found.append((box, f"“{text}”"))
            case Flag(shape, number, x, y):
                wide = 21 + width(str(number), True) if number else 18
                found.append(((x, y - ASCENT, x + wide, y + DESCENT), f"{shape} {number}"))
            case Symbol(name, x, y):
                size = SYMBOLS[name]
                found.append(((x, y - size.half, x + size.width, y + size.half), name))
    return found


def segments(sheet: Sheet) -> list[tuple[Box, str, str]]:
    """Return each straight piece of a line as a box without width, its net and its stroke."""
    found = []
    for mark in sheet.marks:
        if isinstance(mark, Line):
            for (ax, ay), (bx, by) in zip(mark.points, mark.points[1:], strict=False):
                box = (min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))
                found.append((box, mark.net, str(mark.stroke)))
    return found


def overlap(one: Box, other: Box) -> bool:
    return (
        min(one[2], other[2]) - max(one[0], other[0]) > TOUCH
        and min(one[3], other[3]) - max(one[1], other[1]) > TOUCH
    )


def crosses(line: Box, box: Box) -> bool:
    """Return whether a line runs through the inside of a box."""
    return (
        line[0] < box[2] - TOUCH
        and line[2] > box[0] + TOUCH
        and line[1] < box[3] - TOUCH
        and line[3] > box[1] + TOUCH
    )


def faults(drawing: Drawing) -> Iterator[str]:
    """Yield what is wrong with a drawing, in words."""
    for number, sheet in enumerate(drawing.sheets, 1):
        for fault in _faults(sheet):
            yield f"{drawing.title}, sheet {number}: {fault}"


def _faults(sheet: Sheet) -> Iterator[str]:
    if sheet.height > MOST_HEIGHT + 0.5:
        yield f"{sheet.height:.0f} high"
    things, lines = boxes(sheet), segments(sheet)
    for box, name in things:
        if box[0] < 0 or box[1] < 0 or box[2] > WIDTH or box[3] > sheet.height:
            yield f"{name} stands out at {box}"
    things.sort()
    for place, (box, name) in enumerate(things):
        for other, next_name in things[place + 1 :]:
            if other[0] >= box[2]:
                break
            if overlap(box, other):
                yield f"{name} and {next_name} at {box[0]:.0f} {box[1]:.0f}"
    for line, net, stroke in lines:
        for box, name in things:
            if box[0] > line[2]:
                break
            if crosses(line, box):
                yield f"a {stroke} line of {net} through {name} at {box[0]:.0f} {box[1]:.0f}"
    yield from _lines_in_lines(lines)


def _lines_in_lines(lines: list[tuple[Box, str, str]]) -> Iterator[str]:
    for low in (0, 1):  # upright lines by their place, level ones by their height
        flat = sorted(
            (one for one in lines if abs(one[0][low] - one[0][low + 2]) < TOUCH),
            key=lambda one: one[0][low],
        )
        for place, (one, *net) in enumerate(flat):
            for other, *next_net in flat[place + 1 :]:
                if other[low] - one[low] >= 2:
                    break
                along = min(one[3 - low], other[3 - low]) - max(one[1 - low], other[1 - low])
                if net != next_net and along > 1:
                    yield f"{net} runs in {next_net} at {one}"

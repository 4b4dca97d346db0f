"""A van's diagram as SVG: for a page, whose style sheet colours it, or as a file of its own."""

from functools import cache

from calc import tables
from calc.render.html import Markup, el, join
from calc.render.van_symbols import PATHS
from calc.van.diagram.drawing import (
    FLAG,
    FLAG_GAP,
    WIDTH,
    Dot,
    Drawing,
    Flag,
    Frame,
    Line,
    Mark,
    Shape,
    Sheet,
    Symbol,
    Words,
)

# In a square of 24, as beside a verdict; the mark within each is stroked in the colour of paper.
_SHAPES = {
    Shape.STOP: ("M7.4 1h9.2L23 7.4v9.2L16.6 23H7.4L1 16.6V7.4z", "M7.5 7.5l9 9M16.5 7.5l-9 9"),
    Shape.CAUTION: ("M12 1.5 23.2 21.5H.8z", "M12 8v7M12 17.6v1.6"),
    Shape.NOTE: ("M1 12a11 11 0 1 0 22 0a11 11 0 1 0 -22 0z", "M12 10.5v7M12 6v1.6"),
    Shape.NOT_PROVEN: (
        "M12 .5 23.5 12 12 23.5.5 12z", "M9 9q0-3 3-3t3 3q0 2-3 3.2v1.3M12 16.4v1.2",
    ),
}  # fmt: skip
_INKS = (
    ("ink", "#14211f", "#f3f1e9"),
    ("quiet", "#3f4d4b", "#c6cfcc"),
    ("paper", "#fcfbf7", "#101817"),
    ("edge", "#6f7b78", "#9aa7a4"),
    ("stop", "#8c1616", "#ffb0a8"),
    ("caution", "#6a3d00", "#ffcf7d"),
    ("link", "#0b4a66", "#8fd3ee"),
)
_STEPS = (("Smaller", "further"), ("Larger", "closer"), ("Whole sheet", "fit"))


def sheet_svg(sheet: Sheet, title: str) -> Markup:
    """Return one sheet as an element of a page. The list beside it is its text alternative."""
    return _svg(sheet, title)


def drawing_html(drawing: Drawing) -> Markup:
    """Return all sheets, each in a box to move it about in, and the same as a list."""
    count = len(drawing.sheets)
    figures = [
        _figure(sheet, _titled(drawing, number, count))
        for number, sheet in enumerate(drawing.sheets, 1)
    ]
    summary = el("summary", "The diagram as a list")
    return join(*figures, el("details", summary, list_html(drawing), class_="lw-plan-list"))


def _figure(sheet: Sheet, title: str) -> Markup:
    """Return a sheet at its own size, in which its words are as high as those of a page."""
    box = el(
        "div", sheet_svg(sheet, title), class_="lw-plan-box", data_zoom="100", tabindex="0",
        role="group", aria_label=f"{title}. Arrow keys move it, plus and minus change its size.",
    )  # fmt: skip
    buttons = [
        el("button", words, type="button", class_="lw-button lw-plain", data_plan=step)
        for words, step in _STEPS
    ]
    return el("figure", box, el("div", *buttons, class_="lw-plan-zoom"), class_="lw-plan-sheet")


def list_html(drawing: Drawing) -> Markup:
    """Return what a diagram shows as lists under headings."""
    return join(
        *(
            el(
                "section",
                el("h3", heading),
                el("ul", *(el("li", entry) for entry in entries)),
            )
            for heading, entries in drawing.said
        )
    )


def diagram_files(drawing: Drawing) -> tuple[str, ...]:
    """Return each sheet as a file that needs nothing else, light or dark as its reader asks."""
    count = len(drawing.sheets)
    return tuple(
        _file(sheet, _titled(drawing, number, count))
        for number, sheet in enumerate(drawing.sheets, 1)
    )


def _file(sheet: Sheet, name: str) -> str:
    light = "".join(f"--lw-{ink}: {colour}; " for ink, colour, _ in _INKS)
    dark = "".join(f"--lw-{ink}: {colour}; " for ink, _, colour in _INKS)
    inks = (
        f".lw-plan {{ {light}}}\n"
        f"@media screen and (prefers-color-scheme: dark) {{ .lw-plan {{ {dark}}} }}\n"
        "@media print { .lw-plan { --lw-paper: #fff; } }\n"
        "@page { size: landscape; margin: 8mm; }\n"
    )
    style = Markup(inks + tables.text("calc.render", "van_diagram.css"))
    said = "\n".join(
        f"{heading}\n" + "\n".join(f"- {entry}" for entry in entries)
        for heading, entries in sheet.said
    )
    inside = (el("title", name), el("desc", said), el("style", style))
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{_svg(sheet, name, *inside)}\n'


def _titled(drawing: Drawing, number: int, count: int) -> str:
    which = f", sheet {number} of {count}" if count > 1 else ""
    return f"Electrical diagram of {drawing.title}{which}"


def _svg(sheet: Sheet, title: str, *inside: Markup) -> Markup:
    own = {"xmlns": "http://www.w3.org/2000/svg"} if inside else {"aria_label": title}
    ground = el(
        "path", d=f"M0 0H{WIDTH:g}V{sheet.height:.0f}H0Z", class_="lw-plan-ground", stroke="none"
    )
    return el(
        "svg", *inside, ground if inside else None, Markup("".join(map(_mark, sheet.marks))),
        viewBox=f"0 0 {WIDTH:g} {sheet.height:.0f}", width=f"{WIDTH:g}",
        height=f"{sheet.height:.0f}", role="img", class_="lw-plan", **own,
    )  # fmt: skip


def _mark(mark: Mark) -> str:
    """Return a mark as the text of its elements: there are many, and these are quick to make."""
    match mark:
        case Words(x, y, text, _, strong):
            style = ' class="lw-plan-strong"' if strong else ""
            return f'<text x="{x:.1f}" y="{y:.1f}"{style}>{join(text)}</text>'
        case Line(points, stroke):
            (x, y), *rest = points
            way = "".join([f"L{x:.1f} {y:.1f}" for x, y in rest])
            return f'<path d="M{x:.1f} {y:.1f}{way}" class="lw-plan-{stroke}"/>'
        case Symbol(name, x, y):
            return f'<g transform="translate({x:.1f} {y:.1f})">{_paths(name)}</g>'
        case Dot(x, y):
            d = f"M{x - 3.6:.1f} {y:.1f}a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0 -7.2 0z"
            return f'<path d="{d}" class="lw-plan-solid"/>'
        case Flag(shape, number, x, y):
            return _flag(shape, number, x, y)
        case Frame(x, y, width, height, stroke):
            d = f"M{x:.1f} {y:.1f}h{width:.1f}v{height:.1f}h{-width:.1f}z"
            return f'<path d="{d}" class="lw-plan-{stroke}"/>'


@cache
def _paths(name: str) -> str:
    ground, stroke, solid = PATHS[name]
    paths = f'<path d="{ground}" class="lw-plan-ground"/>' if ground else ""
    paths += f'<path d="{stroke}"/>' if stroke else ""
    return paths + (f'<path d="{solid}" class="lw-plan-solid"/>' if solid else "")


def _flag(shape: Shape, number: int, x: float, y: float) -> str:
    outline, mark = _SHAPES[shape]
    drawn = (
        f'<g transform="translate({x:.1f} {y - 14:.1f}) scale({FLAG / 24:g})">'
        f'<path d="{outline}" class="lw-plan-{shape}"/><path d="{mark}" class="lw-plan-mark"/></g>'
    )
    if not number:
        return drawn
    at = x + FLAG + FLAG_GAP
    return f'{drawn}<text x="{at:.1f}" y="{y:.1f}" class="lw-plan-strong">{number}</text>'

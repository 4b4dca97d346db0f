"""Ways on from an answer as links, each with the whole state in its fragment."""

from calc.render.html import Markup, el
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Output
from calc.worksheet.link import write_changed, write_plain
from calc.worksheet.next_steps import NextStep

GO_ON = "Go on with"


def are_next_steps(value: object) -> bool:
    """Return whether a result is a list of ways on."""
    return isinstance(value, tuple) and bool(value) and isinstance(value[0], NextStep)


def next_steps_html(answer: Answer, result: Output) -> Markup:
    """Return a result's ways on as links large enough for a thumb.

    Another worksheet is not loaded for it: most readers go on to none.
    """
    sheet = answer.worksheet
    links = []
    for move in answer.values[result.id]:
        href = (
            f"../{move.sheet}/#{write_plain(move.texts)}"
            if move.sheet
            else f"#{write_changed(sheet, answer.inputs, dict(move.texts))}"
        )
        links.append((move.label, href))
    return _listed(result.label, links)


def leads_html(answer: Answer) -> Markup | None:
    """Return the ways on that carry figures to other worksheets, and load none of those either."""
    links = [(move.label, f"../{move.sheet}/#{write_plain(move.texts)}") for move in answer.leads]
    return _listed(GO_ON, links) if links else None


def _listed(label: str, links: list[tuple[str, str]]) -> Markup:
    ways = (el("li", el("a", text, href=href, class_="lw-move")) for text, href in links)
    return el(
        "div",
        el("p", label, class_="lw-figure-label"),
        el("ul", *ways, class_="lw-moves", data_ways=True),
    )

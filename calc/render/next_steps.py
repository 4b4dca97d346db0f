"""Ways on from an answer as links, each with the whole state in its fragment."""

from calc import find
from calc.render.html import Markup, el
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Output
from calc.worksheet.link import write, write_changed
from calc.worksheet.next_steps import NextStep


def are_next_steps(value: object) -> bool:
    """Return whether a result is a list of ways on."""
    return isinstance(value, tuple) and bool(value) and isinstance(value[0], NextStep)


def next_steps_html(answer: Answer, result: Output) -> Markup:
    """Return a result's ways on as links large enough for a thumb."""
    sheet = answer.worksheet
    links = []
    for move in answer.values[result.id]:
        texts = dict(move.texts)
        href = (
            f"../{move.sheet}/#{write(find(move.sheet), texts)}"
            if move.sheet
            else f"#{write_changed(sheet, answer.inputs, texts)}"
        )
        links.append(el("li", el("a", move.label, href=href, class_="lw-move")))
    return el(
        "div",
        el("p", result.label, class_="lw-figure-label"),
        el("ul", *links, class_="lw-moves", data_ways=True),
    )

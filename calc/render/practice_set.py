"""A set of questions for a class as HTML: to answer on the screen, and to print with its key."""

from calc.practice import Question
from calc.practice.checking import within
from calc.practice.sets import PracticeSet
from calc.render.answer import powers_html
from calc.render.html import Markup, el
from calc.render.practice import question_html


def set_html(chosen: PracticeSet, target: str) -> Markup:
    """Return the questions of a set, and the key that only a printer shows.

    `target` is the address of the worksheets, from the page where the set stands.
    """
    questions = chosen.questions()
    count = f"{chosen.count} question{'s' if chosen.count > 1 else ''}"
    head = f"{count}, seed {chosen.seed}"
    items = (question_html(one, f"{target}{one.worksheet}/") for one in questions)
    return el(
        "div",
        el(
            "section",
            el("h2", head),
            el("p", "Name and date", class_="lw-print-only lw-rule"),
            el("ol", *items, class_="lw-practice lw-set"),
            data_paper="questions",
            aria_label="Questions",
        ),
        el(
            "section",
            el("h2", f"Key to {head}"),
            el("ol", *(_key(one) for one in questions)),
            data_paper="key",
            class_="lw-print-only",
            aria_label="Key",
        ),
    )


def _key(one: Question) -> Markup:
    steps = (el("li", powers_html(str(line), symbols=True)) for line in one.steps)
    return el(
        "li",
        el("strong", f"{one.asked.label}: {one.shown}"),
        f" (within {within(one.task)})" if one.asked.kind and one.task.tolerance else None,
        el("ul", *steps),
        el("p", f"{one.worksheet} {one.number}", class_="lw-from"),
    )

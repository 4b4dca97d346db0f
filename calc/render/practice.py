"""Questions of a practice set as HTML, each with its answer folded."""

from calc.practice import Question
from calc.render.answer import answer_html
from calc.render.html import Markup, el


def practice_html(questions: tuple[Question, ...], target: str) -> Markup:
    """Return a list of questions; each answer has a link that opens it in the sheet at `target`."""
    asked_html = (
        el("li", el("p", asked.text), _choices(asked), _answer(asked, target))
        for asked in questions
    )
    return el(
        "section",
        el(
            "details",
            el("summary", f"Show the questions ({len(questions)})"),
            el("p", "Work each by hand, then unfold its answer."),
            el("ol", *asked_html, class_="lw-practice"),
        ),
        data_search_exclude=True,
    )


def _choices(asked: Question) -> Markup | None:
    return el("ul", *(el("li", choice) for choice in asked.choices)) if asked.choices else None


def _answer(asked: Question, target: str) -> Markup:
    slips = [
        el("li", el("strong", f"{wrong.shown}: "), wrong.slip.text)
        for wrong in asked.slips
        if wrong.shown != asked.shown
    ]
    return el(
        "details",
        el("summary", "Answer"),
        el("p", f"{asked.asked.label}: ", el("strong", asked.shown)),
        (el("p", "If you got"), el("ul", *slips)) if slips else None,
        el(
            "details",
            el("summary", "All results and the working"),
            el("div", answer_html(asked.answer, heading="h3", open_=True), class_="lw-answer"),
        ),
        el(
            "p",
            el(
                "a",
                "Open these values in the sheet",
                href=f"{target}#{asked.link}",
                class_="lw-button lw-plain",
            ),
        ),
    )

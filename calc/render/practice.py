"""Questions of a practice set as HTML: a box for a reply, a hint, and the answer, folded.

Without scripts the hint and the answer are folds to open. With them (`practice.js`) a reply is
checked, and the answer stays closed until there was a try, or the hint was read.
"""

from calc.practice import Mark, Question
from calc.render.answer import answer_html, powers_html
from calc.render.html import Markup, el, join

TRIES = 2  # wrong ones, until the working is offered


def practice_html(questions: tuple[Question, ...], target: str) -> Markup:
    """Return a list of questions; each answer has a link that opens it in the sheet at `target`."""
    return el(
        "section",
        el(
            "details",
            el("summary", f"Try the questions ({len(questions)})"),
            el("ol", *(question_html(asked, target) for asked in questions), class_="lw-practice"),
            another_html(),
            data_practice_fold=True,
        ),
        data_practice=questions[0].worksheet,
        data_target=target,
        data_search_exclude=True,
    )


def another_html() -> Markup:
    """Return the button to the next question, and what this device remembers of the right ones."""
    return el(
        "div",
        el("button", "Another question", type="button", class_="lw-button", data_another=True),
        progress_html(),
        hidden=True,
        data_another_row=True,
        class_="lw-onward",
    )


def progress_html() -> Markup:
    """Return the line that says how many were right on this device, with a way to erase it."""
    erase = el("button", "Erase", type="button", class_="lw-button lw-plain", data_forget=True)
    return el("p", el("span", "", data_score=True), " ", erase, data_progress=True, hidden=True)


def question_html(asked: Question, target: str) -> Markup:
    """Return one question, its form and its folds."""
    return el(
        "li",
        el("p", asked.text),
        _choices(asked),
        _form(asked),
        el(
            "details",
            el("summary", "Hint"),
            el("p", powers_html(asked.hint, symbols=True)),
            data_hint=True,
        ),
        _answer(asked, target),
        data_of=asked.worksheet,
        data_nr=asked.number,
    )


def mark_html(mark: Mark, *, tries: int) -> Markup:
    """Return what is said to a reply, after `tries` wrong ones with this one."""
    more = None
    if not mark.right and mark.counts:
        again, below = "Try again; there is a hint.", "Unfold the answer below for the working."
        more = f" {again if tries < TRIES else below}"
    head, sign, rest = mark.text.partition(":" if mark.right else ".")
    tone = "fine" if mark.right else "caution"
    return join(el("strong", head, sign, class_=f"lw-{tone}"), rest, more)


def _choices(asked: Question) -> Markup | None:
    if not asked.choices:
        return None
    return el("ul", *(el("li", choice) for choice in asked.choices), data_choices=True)


def _form(asked: Question) -> Markup:
    """Return the form for a reply, which waits for the script that can check one."""
    place = f"reply-{asked.worksheet}-{asked.number}"
    hint = asked.counts_as_right
    return el(
        "form",
        el("label", "Your answer", for_=place),
        el(
            "div",
            _box(asked, place, f"{place}-how" if hint else None),
            el("button", "Check", type="submit", class_="lw-button"),
            class_="lw-entry",
        ),
        el("p", hint, id=f"{place}-how", class_="lw-how") if hint else None,
        el("p", "", role="status", data_mark=True, class_="lw-mark-said"),
        hidden=True,
        data_reply=True,
        novalidate=True,
        class_="lw-reply",
    )


def _box(asked: Question, place: str, described: str | None) -> Markup:
    if asked.choices:
        options = (el("option", choice, value=choice) for choice in asked.choices)
        return el("select", el("option", "Choose one", value=""), *options, id=place)
    return el(
        "input",
        type="text",
        id=place,
        maxlength=60,
        autocomplete="off",
        autocapitalize="off",
        spellcheck="false",
        aria_describedby=described,
    )


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
        data_solved=True,
    )

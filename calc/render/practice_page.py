"""The page on which a set is picked, as it is built: the form, and the place for the questions."""

from calc.practice.sets import LARGEST_SEED, MOST, asking
from calc.render.html import Markup, el
from calc.render.practice import progress_html
from calc.sheets import CHAPTERS, worksheet

WITHOUT_SCRIPTS = (
    "Making a set takes JavaScript, which is off here. Each worksheet's page has three questions"
    " with folded answers, which can be read without it."
)
_AT_FIRST = "quick"  # the chapter that is picked when nothing else is said


def page_html() -> Markup:
    """Return the form and an empty place for the set that it makes."""
    return el(
        "section",
        el("link", rel="stylesheet", href="../assets/practice.css"),
        el("noscript", el("p", WITHOUT_SCRIPTS, class_="lw-state")),
        el("form", *_chapters(), _numbers(), data_pick=True, hidden=True, novalidate=True),
        el("p", "", role="status", data_said=True, class_="lw-state", hidden=True),
        _share(),
        el("div", "", data_questions=True),
        progress_html(),
        data_practice_set=True,
        data_target="../checks/",
        data_search_exclude=True,
    )


def _chapters() -> list[Markup]:
    named = set(asking())
    groups = []
    for chapter in CHAPTERS:
        boxes = [
            el(
                "label",
                el(
                    "input",
                    type="checkbox",
                    name="sheets",
                    value=name,
                    checked=chapter.folder == _AT_FIRST,
                ),
                " ",
                worksheet(name).title,
            )
            for name in chapter.ids
            if name in named
        ]
        groups.append(el("fieldset", el("legend", chapter.title), *boxes, class_="lw-picks"))
    return groups


def _numbers() -> Markup:
    return el(
        "div",
        _number("count", "Questions", "10", f"From 1 to {MOST}."),
        _number("seed", "Seed", "1", f"From 0 to {LARGEST_SEED}. The same seed: the same set."),
        el("button", "Make the set", type="submit", class_="lw-button"),
        el("button", "New seed", type="button", class_="lw-button lw-plain", data_new_seed=True),
        class_="lw-set-numbers",
    )


def _number(name: str, label: str, value: str, hint: str) -> Markup:
    box = el(
        "input",
        type="text",
        inputmode="numeric",
        id=f"set-{name}",
        name=name,
        value=value,
        maxlength=9,
        autocomplete="off",
        aria_describedby=f"set-{name}-how",
    )
    return el(
        "div",
        el("label", label, for_=f"set-{name}"),
        el("div", box, class_="lw-entry"),
        el("p", hint, id=f"set-{name}-how", class_="lw-how"),
    )


def _share() -> Markup:
    buttons = (
        ("Copy link", {"data_copy": True}),
        ("Print questions and key", {"data_print": "both"}),
        ("Print questions", {"data_print": "questions"}),
        ("Print key", {"data_print": "key"}),
    )
    plain = "lw-button lw-plain"
    return el(
        "div",
        *(el("button", words, type="button", class_=plain, **more) for words, more in buttons),
        el("span", "", role="status", data_copied=True),
        hidden=True,
        data_share=True,
        class_="lw-onward",
    )

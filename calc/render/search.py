"""A sheet that is walked step by step: where to begin, then one step a screen, then the end."""

from collections.abc import Collection, Iterator

from calc.render.answer import cautions_html, last_folds, list_fold, shape_html
from calc.render.drawings import picture_html
from calc.render.folds import Fold, fold_html
from calc.render.html import Markup, el, join
from calc.render.next_steps import next_steps_html
from calc.render.symptoms import symptom_svg
from calc.units.shown import with_mm2
from calc.worksheet.answer import Answer
from calc.worksheet.fields import Choice
from calc.worksheet.link import write_changed
from calc.worksheet.next_steps import NextStep
from calc.worksheet.walked import Walked


def key_html(answer: Answer, page: Walked) -> Markup:
    """Return the step, or the list to begin with while nothing has been chosen."""
    if _at_start(answer, page):
        return _starts(answer, page)
    return join(
        _dots(len(answer.values[page.trail])),
        _now(answer),
        _told(answer, page.why, "lw-why"),
        picture_html(answer),
        *(_told(answer, name) for name in page.meter),
        *(_expected(answer, name) for name in page.expected),
        _assumed(answer, page),
        *(_told(answer, name) for name in page.repair),
        *(
            next_steps_html(answer, answer.worksheet.result(name))
            for name in page.ways
            if answer.values[name]
        ),
        _cannot(answer, page),
        _back(answer, page),
    )


def details_html(answer: Answer, page: Walked, opened: Collection[str] | None = None) -> Markup:
    """Return what stands below the step: cautions, the steps so far, limits, working, sources."""
    return join(
        el("h2", "Details", class_="lw-answer-title"),
        cautions_html(answer),
        *(fold_html(fold, opened) for fold in folds(answer, page)),
    )


def folds(answer: Answer, page: Walked) -> Iterator[Fold]:
    """Yield what is folded below the step: the steps so far, the working, the limits."""
    if not _at_start(answer, page):
        lists = (name for name in page.folded if answer.values[name])
        yield from (list_fold(answer, answer.worksheet.result(name)) for name in lists)
    yield from last_folds(answer)


def fold_text(answer: Answer, page: Walked) -> str:
    """Return the circuit in one line, as it stands on the fold of its fields."""
    return f"{page.circuit_label}: {_circuit(answer, page)}"


def _circuit(answer: Answer, page: Walked) -> str:
    return ", ".join(answer.inputs[name].text for name in page.circuit)


def _at_start(answer: Answer, page: Walked) -> bool:
    """Whether nobody has said yet what is wrong."""
    start = answer.worksheet.field(page.start)
    begun = answer.inputs[page.path].given and answer.inputs[page.path].value
    return (
        not begun and isinstance(start, Choice) and answer.inputs[page.start].value == start.default
    )


def _starts(answer: Answer, page: Walked) -> Markup:
    def way(name: str, words: str, about: str) -> Markup:
        fragment = write_changed(
            answer.worksheet, answer.inputs, {page.start: name, page.path: name}
        )
        told = el("span", el("strong", words), el("span", about) if about else None)
        return el("li", el("a", symptom_svg(name), told, href=f"#{fragment}", class_="lw-move"))

    return join(
        el("p", shape_html("stop"), el("strong", page.danger), class_="lw-danger lw-stop"),
        el("p", page.begin, class_="lw-figure-label"),
        el(
            "ul", *(way(*one) for one in page.starts), class_="lw-moves lw-symptoms", data_ways=True
        ),
    )


def _dots(done: int) -> Markup:
    """Return the trail: a full dot for each step that is done, a ring for this one."""
    dots = [el("i") for _ in range(done)] + [el("i", class_="is-now")]
    return el("p", *dots, el("span", f"Step {done + 1}"), class_="lw-dots")


def _now(answer: Answer) -> Markup:
    first = answer.worksheet.results[0]
    shown = with_mm2(answer.shown[first.id])
    return el("p", el("strong", shown, class_="lw-figure"), class_="lw-headline")


def _told(answer: Answer, name: str, class_: str = "lw-told") -> Markup | None:
    if answer.values[name] is None:
        return None
    label = el("span", f"{answer.worksheet.result(name).label}: ", class_="lw-figure-label")
    return el(
        "p", None if class_ == "lw-why" else label, with_mm2(answer.shown[name]), class_=class_
    )


def _expected(answer: Answer, name: str) -> Markup | None:
    """Return what a sound circuit shows, large."""
    if answer.values[name] is None:
        return None
    label = answer.worksheet.result(name).label
    return el(
        "p",
        el("span", label, class_="lw-figure-label"),
        el("strong", answer.shown[name], class_="lw-figure"),
        class_="lw-headline lw-expected",
    )


def _assumed(answer: Answer, page: Walked) -> Markup | None:
    """Return what circuit the figure above is of, while none but the usual one is known."""
    given = all(answer.inputs[name].given for name in page.circuit)
    if given or all(answer.values[name] is None for name in page.expected):
        return None
    other = f"Is yours different? Enter it under “{page.circuit_label}” below."
    return el("p", with_mm2(f"For {_circuit(answer, page)}. {other}"), class_="lw-told")


def _cannot(answer: Answer, page: Walked) -> Markup | None:
    """Return what to do where the meter cannot be put."""
    helps = next((text for name, text in page.cannot if answer.values[name] is not None), "")
    if not helps:
        return None
    return el("details", el("summary", "I can’t measure this"), el("p", helps), class_="lw-cannot")


def _back(answer: Answer, page: Walked) -> Markup:
    """Return the ways back; starting again leads to where one says what is wrong."""
    start = answer.worksheet.field(page.start).default
    links = []
    for move in answer.values[page.back] or (NextStep("Start again", ((page.path, ""),)),):
        texts = dict(move.texts)
        if not texts[page.path]:
            texts[page.start] = start or ""
        fragment = write_changed(answer.worksheet, answer.inputs, texts)
        links.append(el("a", move.label, href=f"#{fragment}", class_="lw-button lw-plain"))
    return el("p", *links, class_="lw-back-ways")

"""A worksheet as HTML: the form with its fields, and the answer to what stands in them."""

from collections.abc import Iterable

from calc.render import answer as whole
from calc.render.answer import answer_html, summary_html, verdict_line
from calc.render.boxes import control_html, has_buttons, label_html, note_text
from calc.render.copied import NOT_A_SUBSTITUTE
from calc.render.html import Markup, el
from calc.render.live import details_html, fold_text, key_html
from calc.render.rows import rows_html
from calc.units.quantities import METRIC
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Choice, Field, ParsedInput, Quantity
from calc.worksheet.link import write
from calc.worksheet.measures import defaults_in
from calc.worksheet.rows import Rows, Text

_BESIDE_LABEL = 16  # characters of a choice that stands beside its label at 360 px
_BESIDE_NUMBER = 6  # characters of a unit that stands there too, behind its number


def sheet_html(answer: Answer, jumps: Iterable[tuple[str, str]] = ()) -> Markup:
    """Return the live sheet with the answer's own inputs in its fields.

    `jumps` are ids of places further down the page, each with its name.
    """
    sheet = answer.worksheet
    return el(
        "section",
        el("ul", data_notes=True, class_="lw-notes", hidden=True),
        el("p", "", data_standing=True, class_="lw-state", hidden=True),
        el("div", summary_html(answer), class_="lw-gist", data_gist=True),
        el("div", key_html(answer), class_="lw-key", data_key=True),
        _form(answer, jumps),
        el(
            "noscript",
            el(
                "p",
                "These are default values. Turn JavaScript on to change them.",
                class_="lw-state",
            ),
        ),
        el("div", details_html(answer), data_answer=True, data_seq="0", class_="lw-answer"),
        el("p", "", role="status", data_status=True, class_="lw-unseen"),
        _share(sheet),
        data_sheet=sheet.id,
        class_=_kind(sheet),
        aria_label=sheet.question,
        data_search_exclude=True,
    )


def _jumps(jumps: Iterable[tuple[str, str]]) -> Markup | None:
    links = [el("a", name, href=f"#{place}", data_jump=True) for place, name in jumps]
    if not links:
        return None
    return el("p", el("span", "Jump to"), *links, class_="lw-jumps")


def _last() -> Markup:
    """Return the line that offers what this device remembers, or says that it stands here."""
    return el(
        "p",
        el("span", "", data_last_words=True),
        " ",
        el("button", "Use these", type="button", data_last_use=True, class_="lw-button lw-plain"),
        el("button", "Default values", type="reset", data_last_end=True, hidden=True,
           class_="lw-button lw-plain"),
        data_last=True,
        class_="lw-last",
        hidden=True,
    )  # fmt: skip


def _metric(sheet: Declaration) -> Markup | None:
    """Return the line that offers metric units: shown outside the US, until they are chosen."""
    if not defaults_in(sheet, METRIC):
        return None
    words = el("span", "The default values are in US units.")
    use = el("button", "Use metric units", type="reset", class_="lw-button lw-plain")
    return el("p", words, " ", use, data_metric=True, class_="lw-last", hidden=True)


def example_html(
    answer: Answer, name: str, target: str, *, full: bool = False, place: str = ""
) -> Markup:
    """Return a worked example and a link that opens it in the live sheet at `target`.

    What was given stands in sight with the verdict, `full` with the results too; all else is
    folded. `place` is its id, where something leads to it.
    """
    given = {key: reading for key, reading in answer.inputs.items() if reading.given}
    fragment = write(answer.worksheet, {key: reading.link for key, reading in given.items()})
    told = "; ".join(
        f"{answer.worksheet.field(key).label}: {reading.text}"
        for key, reading in given.items()
        if reading.applies and reading.value is not None
    )
    usual = "; ".join(
        f"{field.label}: {answer.inputs[field.id].text}"
        for field in answer.worksheet.fields
        if field.id not in given
        and answer.inputs[field.id].applies
        and answer.inputs[field.id].value is not None
    )
    return el(
        "section",
        el(
            "p",
            el("strong", "Worked example. "),
            f"{told or 'Default values'}. ",
            el("a", "Open these values in the sheet", href=f"{target}#{fragment}"),
            class_="lw-given",
        ),
        verdict_line(answer),
        whole.key_html(answer) if full else None,
        el(
            "details",
            el("summary", "All results and the working"),
            el("p", f"Defaults used: {usual}.", class_="lw-given") if usual else None,
            el("div", answer_html(answer, heading="h3", open_=True), class_="lw-answer"),
        ),
        id=place or None,
        class_="lw-sheet lw-example",
        aria_label=f"Worked example {name}",
        data_search_exclude=True,
    )


def _kind(sheet: Declaration) -> str:
    """Return the classes of a sheet: one that is printed to write on, one that is walked."""
    paper = any(table.blanks for table in sheet.tables)
    return f"lw-sheet{' lw-paper' if paper else ''}{' lw-walked' if sheet.walked else ''}"


def _form(answer: Answer, jumps: Iterable[tuple[str, str]]) -> Markup:
    """Return the form, folded away where one walks step by step and seldom needs it."""
    sheet = answer.worksheet
    form = el(
        "form",
        _last(),
        *(
            _field(sheet, field, answer.inputs[field.id])
            for field in sheet.fields
            if not field.advanced
        ),
        _folded(answer),
        el(
            "p",
            el("button", "Compare", type="button", data_keep=True, class_="lw-button lw-plain"),
            " ",
            el(
                "button",
                "Reset",
                type="reset",
                aria_label="Reset to default values",
                class_="lw-button lw-plain",
            ),
            class_="lw-reset",
        ),
        _metric(sheet),
        _jumps(jumps),
        data_form=True,
        novalidate=True,
        autocomplete="off",
        aria_label=f"Inputs for: {sheet.question}",
        class_="lw-form",
    )
    if not sheet.walked:
        return form
    summary = el("summary", fold_text(answer), data_fold_words=True)
    return el("details", summary, form, class_="lw-circuit")


def _field(sheet: Declaration, field: Field, reading: ParsedInput) -> Markup:
    name = f"{sheet.id}-{field.id}"
    about = " ".join(
        f"{name}-{what}" for what in (("hint",) if field.hint else ()) + ("error", "note")
    )
    if isinstance(field, Rows):
        return rows_html(field, reading, name)
    return el(
        "div",
        label_html(field, name),
        el("p", field.hint, id=f"{name}-hint", class_="lw-hint") if field.hint else None,
        el("p", "", id=f"{name}-error", data_error=True, class_="lw-error", hidden=True),
        control_html(field, reading, name, about, sent=True),
        el(
            "p",
            note_text(field, reading),
            id=f"{name}-note",
            data_note=True,
            class_="lw-note",
            hidden=not note_text(field, reading),
        ),
        class_="lw-field lw-wide" if _is_wide(field) else "lw-field",
        data_field=field.id,
        hidden=not reading.applies or field.hidden,
    )


def _is_wide(field: Field) -> bool:
    """Whether choices, or units, are too long to stand beside the label on a phone."""
    if isinstance(field, Quantity):
        return len(field.units) > 1 and any(len(u.symbol) > _BESIDE_NUMBER for _, u in field.units)
    options = field.options if isinstance(field, Choice) and not has_buttons(field) else ()
    return isinstance(field, Text) or any(len(o.label or o.id) > _BESIDE_LABEL for o in options)


def _folded(answer: Answer) -> Markup | None:
    """Return the fold of options that are seldom changed."""
    sheet = answer.worksheet
    folded = [field for field in sheet.fields if field.advanced]
    if not folded:
        return None
    return el(
        "details",
        el("summary", f"More options ({len(folded)})"),
        el(
            "div",
            *(_field(sheet, field, answer.inputs[field.id]) for field in folded),
            class_="lw-form",
        ),
        data_more=True,
        class_="lw-more",
    )


def _share(sheet: Declaration) -> Markup:
    return el(
        "div",
        el("button", "Copy link", type="button", data_copy=True, class_="lw-button"),
        el("button", "Send", type="button", data_send=True, class_="lw-button", hidden=True),
        el("button", "Copy as text", type="button", data_words=True, class_="lw-button lw-plain"),
        el("button", "Print", type="button", data_print="summary", class_="lw-button lw-plain"),
        el(
            "button", "Print in full", type="button", data_print="full", class_="lw-button lw-plain"
        ),
        el(
            "button",
            "Print the guide",
            type="button",
            data_print="guide",
            class_="lw-button lw-plain",
        ),
        el(
            "button",
            "Explain to a client",
            type="button",
            data_explain=True,
            class_="lw-button lw-plain",
        ),
        el("button", "For a van", type="button", data_for_van=True, class_="lw-button lw-plain"),
        el(
            "div",
            el("label", "Link to these values", for_=f"{sheet.id}-link", class_="lw-link-label"),
            el(
                "input",
                id=f"{sheet.id}-link",
                type="text",
                readonly=True,
                data_link=True,
                class_="lw-link",
                autocomplete="off",
            ),
            data_copy_box=True,  # for browsers that do not let a page copy
            class_="lw-by-hand",
            hidden=True,
        ),
        el("p", "", role="status", data_copied=True, class_="lw-hint"),
        el("div", "", data_qr=True, class_="lw-qr"),
        el(
            "p",
            *("Printed on ", el("span", "", data_printed=True), ". These values again: "),
            el("span", "", data_address=True),
            class_="lw-print-only",
        ),
        el(
            "p",
            NOT_A_SUBSTITUTE,
            class_="lw-print-only",
        ),
        class_="lw-share",
    )

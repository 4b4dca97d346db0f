"""A worksheet as HTML: the form with its fields, and the answer to what stands in them."""

from calc.render.answer import answer_html, summary_html, verdict_line
from calc.render.boxes import control_html, note_text
from calc.render.html import Markup, el, join
from calc.render.rows import rows_html
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Field, ParsedInput
from calc.worksheet.link import write
from calc.worksheet.rows import Rows


def sheet_html(answer: Answer) -> Markup:
    """Return the live sheet with the answer's own inputs in its fields."""
    sheet = answer.worksheet
    return el(
        "section",
        el("div", summary_html(answer), class_="lw-gist", data_gist=True, aria_hidden="true"),
        el("ul", data_notes=True, class_="lw-notes", hidden=True),
        el(
            "form",
            *(
                _field(sheet, field, answer.inputs[field.id])
                for field in sheet.fields
                if not field.advanced
            ),
            _folded(answer),
            el(
                "p",
                el(
                    "button",
                    "Back to the sheet’s own figures",
                    type="reset",
                    class_="lw-button lw-plain",
                ),
                class_="lw-reset",
            ),
            data_form=True,
            novalidate=True,
            autocomplete="off",
            aria_label=f"Figures for: {sheet.question}",
            class_="lw-form",
        ),
        el(
            "noscript",
            el(
                "p",
                "These are example figures. With JavaScript on they can be changed.",
                class_="lw-state",
            ),
        ),
        el("p", "", data_standing=True, class_="lw-state", hidden=True),
        el("div", answer_html(answer), data_answer=True, data_seq="0", class_="lw-answer"),
        el("p", "", role="status", data_status=True, class_="lw-unseen"),
        _share(sheet),
        data_sheet=sheet.id,
        class_="lw-sheet lw-paper" if any(t.blanks for t in sheet.tables) else "lw-sheet",
        aria_label=sheet.question,
        data_search_exclude=True,
    )


def example_html(answer: Answer, name: str, target: str, *, full: bool = False) -> Markup:
    """Return a worked example and a link that opens it in the live sheet at `target`.

    `full` shows the whole answer with its working; otherwise all but the verdict and the figure is
    folded.
    """
    given = "; ".join(
        f"{field.label}: {answer.inputs[field.id].text}"
        for field in answer.worksheet.fields
        if answer.inputs[field.id].applies and answer.inputs[field.id].value is not None
    )
    texts = {key: reading.link for key, reading in answer.inputs.items() if reading.given}
    whole = el("div", answer_html(answer, heading="h3", open_=True), class_="lw-answer")
    short = join(
        verdict_line(answer),
        el("details", el("summary", "All figures and the working"), whole),
    )
    return el(
        "section",
        el("p", el("strong", "Worked example. "), f"{given}.", class_="lw-given"),
        whole if full else short,
        el(
            "p",
            el(
                "a",
                "Open these figures in the sheet",
                href=f"{target}#{write(answer.worksheet, texts)}",
                class_="lw-button lw-plain",
            ),
        ),
        class_="lw-sheet lw-example",
        aria_label=f"Worked example {name}",
        data_search_exclude=True,
    )


def _field(sheet: Declaration, field: Field, reading: ParsedInput) -> Markup:
    name = f"{sheet.id}-{field.id}"
    about = " ".join(
        f"{name}-{what}" for what in (("hint",) if field.hint else ()) + ("error", "note")
    )
    if isinstance(field, Rows):
        return rows_html(field, reading, name)
    return el(
        "div",
        el("label", field.label, for_=name),
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
        class_="lw-field",
        data_field=field.id,
        hidden=not reading.applies or field.hidden,
    )


def _folded(answer: Answer) -> Markup | None:
    """Return the fold of seldom changed figures; its summary says what they are set to."""
    sheet = answer.worksheet
    folded = [field for field in sheet.fields if field.advanced]
    if not folded:
        return None
    return el(
        "details",
        el("summary", "More figures: ", ", ".join(field.label for field in folded)),
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
        el("button", "Print", type="button", data_print=True, class_="lw-button lw-plain"),
        el("label", "Link to these figures", for_=f"{sheet.id}-link", class_="lw-link-label"),
        el(
            "input",
            id=f"{sheet.id}-link",
            type="text",
            readonly=True,
            data_link=True,
            class_="lw-link",
            autocomplete="off",
        ),
        el("p", "", role="status", data_copied=True, class_="lw-hint"),
        el("div", "", data_qr=True, class_="lw-qr"),
        el(
            "p",
            *("Printed on ", el("span", "", data_printed=True), ". These figures again: "),
            el("span", "", data_address=True),
            class_="lw-print-only",
        ),
        el(
            "p",
            "Not a substitute for the maker’s instructions, local rules or a qualified person.",
            class_="lw-print-only",
        ),
        class_="lw-share",
    )

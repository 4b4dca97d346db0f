"""A list in a form: a card for each row on a telephone, a line of a table where there is room.

The script of the page copies the empty row that stands ready here; it knows none of the words.
"""

from calc.render.boxes import control_html
from calc.render.html import Markup, el, join
from calc.worksheet.fields import Choice, Field, ParsedInput, Quantity
from calc.worksheet.rows import Rows, Text

_BESIDE_CELL = 13  # characters of a choice that stands beside another at 360 px


def rows_html(field: Rows, reading: ParsedInput, base: str) -> Markup:
    """Return the list with the rows of `reading`; `base` begins every id in it."""
    one = field.one
    called = f"{one[0].upper()}{one[1:]}"
    article = "an" if one[0] in "aeiou" else "a"
    return el(
        "fieldset",
        el("legend", field.label),
        el("p", field.hint, class_="lw-hint"),
        el("p", "", data_error=True, class_="lw-error", hidden=True),
        _columns(field, base),
        el(
            "div",
            *(el("span", head(column), class_=_width(column) or None) for column in field.columns),
            el("span", "", class_="lw-room"),
            class_="lw-heads",
            aria_hidden="true",
        ),
        el(
            "div",
            *(_row(field, row, base, place) for place, row in enumerate(reading.rows, 1)),
            data_list=True,
        ),
        el("template", _row(field, field.blank, base, 0), data_spare=True),
        el(
            "div",
            el("span", "", data_gone_words=True),
            el("button", "Put it back", type="button", data_undo=True, class_="lw-button lw-plain"),
            data_gone=True,
            class_="lw-gone",
            hidden=True,
        ),
        el("button", f"Add {article} {one}", type="button", data_add=True, class_="lw-button"),
        el("p", "", role="status", data_said=True, class_="lw-unseen"),
        el("p", "", data_note=True, class_="lw-note", hidden=True),
        id=base,
        class_="lw-field lw-rows",
        data_field=field.id,
        data_rows=field.id,
        data_most=field.most,
        data_added=f"{called} # added.",
        data_removed=f"{called} # removed.",
        data_full=f"{called} # is the last one possible.",
        hidden=not reading.applies,
    )


def head(column: Field) -> str:
    """Return what stands above a column: its label, and the unit that a bare number is taken in."""
    symbol = column.bare[1].symbol if isinstance(column, Quantity) else ""
    return f"{column.label} ({symbol})" if symbol else column.label


def _columns(field: Rows, base: str) -> Markup:
    """Return what goes into each column, folded: said once, and not again in every row."""
    return el(
        "details",
        el("summary", f"What goes in for each {field.one}"),
        el(
            "dl",
            *(
                join(
                    el("dt", head(column)),
                    el("dd", column.hint, id=f"{base}-hint-{column.id}"),
                )
                for column in field.columns
            ),
        ),
        class_="lw-columns",
    )


def _row(field: Rows, cells: tuple[ParsedInput, ...], base: str, place: int) -> Markup:
    one = field.one
    number = el("span", place, data_number=True)
    return el(
        "fieldset",
        el("legend", f"{one[0].upper()}{one[1:]} ", number),
        *(
            _cell(column, cell, f"{base}-{place}-{column.id}", f"{base}-hint-{column.id}")
            for column, cell in zip(field.columns, cells, strict=True)
        ),
        el(
            "button",
            el("span", "×", class_="lw-cross", aria_hidden="true"),
            el("span", f"Remove {one} ", number, class_="lw-rest"),
            type="button",
            data_remove=True,
            class_="lw-button lw-plain",
        ),
        class_="lw-row",
        data_row=place,
        tabindex="-1",
    )


def _cell(column: Field, reading: ParsedInput, name: str, hint: str) -> Markup:
    return el(
        "div",
        el("label", head(column), for_=name),
        el("p", "", id=f"{name}-error", data_error=True, class_="lw-error", hidden=True),
        control_html(column, reading, name, f"{hint} {name}-error", sent=False),
        class_=f"lw-cell {_width(column)}".strip(),
        data_cell=True,
    )


def _width(column: Field) -> str:
    """Return how much room a column asks for."""
    if isinstance(column, Text):
        return "lw-wide"
    if isinstance(column, Quantity):
        return "lw-narrow" if column.bare[1].symbol else "lw-narrowest"
    options = column.options if isinstance(column, Choice) else ()
    return "lw-own-line" if any(len(one.label or one.id) > _BESIDE_CELL for one in options) else ""

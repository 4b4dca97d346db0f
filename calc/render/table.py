"""A result that is a table: to read on a screen, and to write on where it is printed."""

from functools import lru_cache
from itertools import groupby

from calc.render.html import Markup, el, join
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Output
from calc.worksheet.result_table import Blank, Table


def table_html(answer: Answer, table: Table) -> Markup | None:
    """Return the table, or nothing where it has no row.

    Its roles are written out, because a style that stacks the cells takes them from the browser.
    """
    rows = answer.tables[table.of]
    if not rows:
        return None
    label = answer.worksheet.result(table.of).label
    styles = "lw-table lw-cards lw-write" if table.blanks else "lw-table lw-cards"
    whole = el(
        "div",
        el(
            "table",
            el("caption", label),
            el("thead", *_heads(table), role="rowgroup"),
            el("tbody", *(_row(table, row) for row in rows), role="rowgroup"),
            role="table",
            class_=styles,
        ),
        class_="lw-table-box",
    )
    if table.paper_note:
        whole = join(whole, el("p", table.paper_note, class_="lw-print-only lw-paper-note"))
    return whole


def _heads(table: Table) -> list[Markup]:
    """Return the line of headings; two where columns to write in share a heading."""
    grouped = any(blank.group for blank in table.blanks)
    deep = 2 if grouped else None
    first = [
        el("th", column.label, scope="col", role="columnheader", rowspan=deep, class_=_side(column))
        for column in table.columns
    ]
    second: list[Markup] = []
    for group, members in groupby(table.blanks, key=lambda blank: blank.group):
        blanks = list(members)
        own = [_blank("th", one, one.label, scope="col", role="columnheader") for one in blanks]
        if not group:
            first += own
            continue
        first.append(
            el(
                "th",
                group,
                scope="colgroup",
                role="columnheader",
                colspan=len(blanks),
                class_="lw-blank",
            )
        )
        second += own
    lines = [el("tr", *first, role="row")]
    return [*lines, el("tr", *second, role="row", class_="lw-blank")] if second else lines


def _row(table: Table, cells: tuple[str, ...]) -> Markup:
    heads = tuple((column.label, _side(column)) for column in table.columns)
    return el(
        "tr",
        _read(heads, cells),
        *(_blank("td", blank, "", role="cell") for blank in table.blanks),
        role="row",
    )


@lru_cache(maxsize=128)  # a table that never changes is half of a long answer's elements
def _read(heads: tuple[tuple[str, str | None], ...], cells: tuple[str, ...]) -> Markup:
    (_, name), *others = zip(heads, cells, strict=True)
    return join(
        el("th", name, scope="row", role="rowheader"),
        *(
            el("td", cell, role="cell", data_label=label, class_=side)
            for (label, side), cell in others
        ),
    )


def _side(column: Output) -> str | None:
    return "lw-number" if column.kind else None


def _blank(tag: str, blank: Blank, words: str, **attributes: str) -> Markup:
    return el(tag, words, class_="lw-blank lw-wide" if blank.wide else "lw-blank", **attributes)

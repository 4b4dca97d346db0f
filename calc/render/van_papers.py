"""The diagram, the lists and the papers of a van in its page, and what is saved of them."""

from __future__ import annotations

from collections.abc import Callable

from calc.render.html import Markup, el, join
from calc.render.van_diagram import diagram_files, drawing_html
from calc.render.van_held import Asked, Reply, about, refusal, van_of
from calc.render.van_lists import hand_over_html, list_html
from calc.render.van_views import review_of
from calc.van.circuits_csv import template, with_circuits
from calc.van.diagram import Drawing, layout
from calc.van.listed import ListTable, csv_of
from calc.van.lists import hand_over, tables
from calc.van.record import Van
from calc.van.seasons import season_tables


def _drawing(van: Van) -> Drawing:
    return layout(van, van.schedule(), review_of(van))


def _diagram(asked: Asked) -> Reply:
    """Return the diagram, to be moved about in a box, with the same as a list."""
    drawing = _drawing(van_of(asked))
    buttons = (
        el(
            "button",
            f"Save sheet {number} as a file",
            type="button",
            class_="lv-small",
            data_writes_sheet=number,
        )
        for number, _ in enumerate(drawing.sheets, 1)
    )
    prints = el("button", "Print", type="button", class_="lw-button lw-plain", data_prints=True)
    return {"html": join(drawing_html(drawing), el("p", prints, *buttons, class_="lv-tools"))}


def _sheet(asked: Asked) -> Reply:
    """Return one sheet of the diagram as a file that needs nothing else."""
    files = diagram_files(_drawing(van_of(asked)))
    number = str(asked.get("sheet"))
    if not number.isdecimal() or not 1 <= int(number) <= len(files):
        raise refusal("The diagram has no such sheet.")
    name = f"diagram-{number}.svg"
    return {"file": name, "type": "image/svg+xml", "content": files[int(number) - 1]}


def _lists(asked: Asked) -> Reply:
    """Return every list folded, with the papers that are handed over."""
    van = van_of(asked)
    start = str(asked.get("start", ""))[:1000]
    return {
        "html": join(
            *map(_fold, tables(van)),
            el(
                "details",
                el("summary", "Hand-over: markers, labels, settings, cards"),
                hand_over_html(hand_over(van), start),
                data_fold="hand-over",
            ),
            el(
                "p",
                el(
                    "button",
                    "Print what is open",
                    type="button",
                    data_prints=True,
                    class_="lw-button",
                ),
                class_="lv-tools",
            ),
        )
    }


def _fold(table: ListTable) -> Markup:
    count = f" ({len(table.rows)})" if table.rows else ": nothing to list"
    return el(
        "details",
        el("summary", f"{table.title}{count}"),
        el(
            "p",
            el(
                "button",
                "Save as CSV",
                el("span", f": {table.title}", class_="lw-unseen"),
                type="button",
                class_="lv-small",
                data_writes_csv=table.id,
            ),
            class_="lv-tools",
        )
        if table.rows
        else None,
        list_html(table),
        data_fold=table.id,
    )


def _seasons(asked: Asked) -> Reply:
    """Return the year by months, the recovery after each trip, and what would carry it, in full."""
    found = season_tables(van_of(asked))
    return {"html": el("div", *map(_fold, found), class_="lv-seasons")}


def _csv(asked: Asked) -> Reply:
    """Return one list as a file."""
    name = str(asked.get("list"))
    van = van_of(asked)
    every = (table for lists in (tables, season_tables) for table in lists(van))
    for table in every:  # the seasons take time, and come only where no list has the name
        if table.id == name:
            return {"file": f"{name}.csv", "type": "text/csv", "content": csv_of(table)}
    raise refusal("There is no such list.")


def _template(_: Asked) -> Reply:
    return {"file": "circuits.csv", "type": "text/csv", "content": template()}


def _add_circuits(asked: Asked) -> Reply:
    """Add the circuits of a spreadsheet."""
    van = van_of(asked)
    made = with_circuits(van, str(asked.get("source", "")))
    added = len(made.all("circuits")) - len(van.all("circuits"))
    return {**about(made), "said": f"{added} circuits added."}


ACTS: dict[str, Callable[[Asked], Reply]] = {
    "diagram": _diagram,
    "sheet": _sheet,
    "lists": _lists,
    "seasons": _seasons,
    "csv": _csv,
    "template": _template,
    "add-circuits": _add_circuits,
}

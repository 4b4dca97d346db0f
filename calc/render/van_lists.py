"""The lists, labels and cards of a van as HTML, within the site or as a document of its own."""

from collections.abc import Iterable

from calc.render.code import LONGEST, code_svg
from calc.render.html import Markup, el, join
from calc.tables import text
from calc.van.cards import Card
from calc.van.handover import HandOver, Label
from calc.van.listed import ListTable


def lists_html(tables: Iterable[ListTable]) -> Markup:
    """Return lists one under another; those without a row say so."""
    return join(*map(list_html, tables))


def list_html(table: ListTable, of: str = "list") -> Markup:
    """Return one list. Its roles are written out, for stacked cells lose them in a browser.

    Its id begins with whose it is, for a page that has those of two vans.
    """
    if not table.rows:
        inside = join(el("h3", table.title), el("p", "Nothing to list."))
    else:
        heads = (
            el("th", name, scope="col", role="columnheader", class_=_class(table, name))
            for name in table.columns
        )
        whole = el(
            "table",
            el("caption", table.title),
            el("thead", el("tr", *heads, role="row"), role="rowgroup"),
            el(
                "tbody",
                *(_row(table, place, row) for place, row in enumerate(table.rows)),
                role="rowgroup",
            ),
            role="table",
            class_="vl-table",
        )
        inside = el(
            "div", whole, class_="vl-scroll", tabindex="0", role="region", aria_label=table.title
        )
    note = el("p", table.note, class_="vl-note") if table.note else None
    return el("section", inside, note, class_="vl-list", id=f"{of}-{table.id}")


def _row(table: ListTable, place: int, cells: tuple[str, ...]) -> Markup:
    first, *others = zip(table.columns, cells, strict=True)
    return el(
        "tr",
        el("th", first[1], scope="row", role="rowheader"),
        *(
            el("td", cell, role="cell", data_label=name, class_=_class(table, name))
            for name, cell in others
        ),
        role="row",
        class_="vl-sum" if place in table.sums else None,
    )


def _class(table: ListTable, column: str) -> str | None:
    if column in table.blanks:
        return "vl-blank"
    return "vl-number" if column in table.numbers else None


def hand_over_html(papers: HandOver, address: str = "") -> Markup:
    """Return markers, labels, settings and cards.

    `address` is that of the page that opens a van from its link; with it the square code is made,
    where the link fits one.
    """
    return join(
        _strips("markers", "Wire markers", "vl-markers", papers.markers),
        _strips("labels", "Labels", "vl-labels", papers.labels),
        list_html(papers.settings),
        *map(card_html, papers.cards),
        _code(papers, address),
    )


def _strips(name: str, title: str, style: str, labels: tuple[Label, ...]) -> Markup:
    strips = (
        el(
            "li",
            el("strong", label.title),
            *(el("span", line, el("br")) for line in label.lines),
            class_="vl-warns" if label.warns else None,
        )
        for label in labels
    )
    return el(
        "section",
        el("h3", title),
        el("ul", *strips, class_=style) if labels else el("p", "Nothing to mark."),
        class_="vl-list",
        id=f"list-{name}",
    )


def card_html(card: Card) -> Markup:
    """Return a card."""
    return el(
        "section",
        el("h3", card.title),
        el("ol", *(el("li", step) for step in card.steps)),
        el("p", card.note) if card.note else None,
        class_="vl-card",
        id=f"card-{card.id}",
    )


def _code(papers: HandOver, address: str) -> Markup | None:
    if not address or not papers.fragment:
        return None
    link = f"{address}#{papers.fragment}"
    if drawn := code_svg(link):
        inside = join(Markup(drawn), el("p", "Opens the record of this van."))
    else:
        inside = el(
            "p",
            f"The link of this van has {len(link)} characters, and a square code that a phone can"
            f" read holds {LONGEST}. The file goes with the van instead.",
        )
    return el("section", el("h3", "This van on a phone"), inside, class_="vl-list", id="list-code")


def document_html(title: str, *parts: Markup) -> str:
    """Return a whole document to print or to read without the site: its styles are in it."""
    style = Markup(text("calc.render", "van_lists.css"))
    body = "body { margin: 1rem; font-family: system-ui, sans-serif; }"
    head = join(
        Markup('<meta charset="utf-8">'),
        Markup('<meta name="viewport" content="width=device-width, initial-scale=1">'),
        el("title", title),
        el("style", style, Markup(body)),
    )
    return "<!doctype html>\n" + el(
        "html", el("head", head), el("body", el("h1", title), *parts), lang="en"
    )

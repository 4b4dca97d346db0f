"""The demos of the van as parts of pages: reviewed, drawn and listed, read without scripts."""

from calc.judge import Level
from calc.render.html import Markup, el
from calc.render.van_diagram import list_html as drawing_list
from calc.render.van_diagram import sheet_svg
from calc.render.van_lists import list_html
from calc.render.van_review import finding_html, verdict_of
from calc.van.demos import DEMOS, demo
from calc.van.diagram import layout
from calc.van.diagram.drawing import Sheet
from calc.van.lists import tables
from calc.van.mends import tried
from calc.van.review import Finding, Review, review

GRAVE = (Level.STOP, Level.CAUTION)


def example_html(name: str, root: str, *, lists: bool = True) -> Markup:
    """Return a demo as read: its verdict, and folded its findings, its diagram and its lists.

    `root` is the way from the page to the root of the site.
    """
    van = demo(name)
    found = review(van)
    drawing = layout(van, van.schedule(), found)
    about = f"{DEMOS[name][0].lower()}{DEMOS[name][1:]}"
    return el(
        "section",
        el("link", rel="stylesheet", href=f"{root}assets/van.css"),
        el("p", el("strong", van.name), f", {about}, invented for these pages."),
        verdict_of(found),
        el("p", found.disposition.sentence),
        *_findings(found, root),
        _fold("Its diagram", *(_sheet(one, van.name) for one in drawing.sheets)),
        _fold("Its diagram as a list", drawing_list(drawing)),
        *(
            _fold(f"{one.title} ({len(one.rows)})", list_html(one, of="example"))
            for one in (tables(van) if lists else ())
            if one.rows
        ),
        class_="lv-example",
        data_search_exclude=True,
    )


def _fold(summary: str, *inside: Markup) -> Markup:
    return el("details", el("summary", summary), *inside)


def _findings(found: Review, root: str) -> list[Markup]:
    """Return what the review finds, what is grave and what is but a note each in a fold."""
    folds = []
    for title, grave in (("What the review finds", True), ("Advice and notes", False)):
        own = [one for one in found.findings if (one.level in GRAVE) is grave]
        if own:
            each = (_finding(found, one, root) for one in own)
            folds.append(_fold(f"{title} ({len(own)})", el("ul", *each, class_="lv-findings")))
    return folds


def _finding(found: Review, one: Finding, root: str) -> Markup:
    """Return one finding, with the first change that mends it."""
    mends = tried(found.van, found, one, offers=1) if one.level in GRAVE else ()
    says = [el("p", "Fix: ", mend.text, class_="lv-why") for mend, _ in mends]
    return finding_html(one, *says, root=root)


def _sheet(sheet: Sheet, name: str) -> Markup:
    title = f"Electrical diagram of {name}"
    return el(
        "div",
        sheet_svg(sheet, title),
        class_="lw-plan-box",
        data_zoom="100",
        tabindex="0",
        role="region",
        aria_label=title,
    )

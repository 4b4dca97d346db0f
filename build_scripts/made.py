"""Parts of pages that are made from the code and the published cases, never typed."""

from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import calc
from build_scripts import bench_table, device, glossary, trees, van_keys, wall
from build_scripts.shipped import parts
from build_scripts.van_examples import example_html
from calc.render.client_page import client_page
from calc.render.html import Markup, el, join
from calc.render.practice_page import page_html as practice_page
from calc.render.van_page import page_html as van_page
from calc.tables import table
from calc.units.typed import LONGEST
from calc.worksheet.fields import Choice, Field, Quantity
from calc.worksheet.rows import Rows
from evidence import COPY, EVIDENCE, Case, lines, load_cases

PROJECT = Path(__file__).resolve().parent.parent


def _table(head: tuple[str, ...], rows: list[tuple[Any, ...]]) -> Markup:
    return el(
        "div",
        el(
            "table",
            el("thead", el("tr", *(el("th", name, scope="col") for name in head))),
            el("tbody", *(_row(row, len(head)) for row in rows)),
            class_="lw-table",  # the theme wraps any other in a box that no keyboard can scroll
        ),
        class_="lw-scroll",
        tabindex="0",
        role="group",  # no landmark: a page may have many
        aria_label=f"Table: {', '.join(head)}",
    )


def _row(cells: tuple[Any, ...], width: int) -> Markup:
    """Return a row; a single cell is a remark across the whole table."""
    if len(cells) == 1 < width:
        return el("tr", el("td", el("em", *cells), colspan=width))
    return el("tr", *(el("td", cell) for cell in cells))


def counts() -> Markup:
    """Return how many published cases there are of each kind of evidence."""
    found = Counter(case.evidence for case in load_cases())
    rows = [
        (kind.replace("-", " "), what, found[kind])
        for kind, what in EVIDENCE.items()
        if found[kind]
    ]
    checked = found.total() - found[COPY]
    total = ("all but copies", "a check of the answer, not of our copying", checked)
    return _table(("Evidence", "What it means", "Cases"), [*rows, total])


def checks() -> Markup:
    """Return every case with our figure beside the published one, by worksheet, folded.

    Raises ValueError if a case does not agree.
    """
    cases = load_cases()
    head = ("Expected", "Ours", "Difference", "Asked", "Source", "Evidence")
    parts = []
    for sheet in map(calc.find, calc.worksheets()):
        own = [case for case in cases if case.worksheet == sheet.id]
        rows: list[tuple[Any, ...]] = []
        note = ""
        for case in own:
            if case.note and case.note != note:
                rows.append((case.note,))
            note = case.note
            rows += _case_rows(case)
        summary = el("summary", f"{sheet.title}: {len(own)} cases")
        parts.append(el("details", summary, _table(head, rows), data_search_exclude=True))
    return join(*parts)


def _case_rows(case: Case) -> list[tuple[Any, ...]]:
    sheet = calc.find(case.worksheet)
    asked = "; ".join(f"{sheet.field(name).label}: {text}" for name, text in case.inputs.items())
    about = (asked, case.source, case.evidence.replace("-", " "))
    if "refused" in case.expect:
        return [(f"refused: {case.expect['refused']}", "refused", "same", *about)]
    found = list(lines(case, calc.work(case.worksheet, case.inputs)))
    if wrong := [line for line in found if not line.ok]:
        raise ValueError(f"{case.id} does not agree with its source: {wrong}")
    return [
        (f"{line.name.replace('_', ' ')} {line.expected}", line.ours, line.difference, *about)
        for line in found
    ]


TASKS = (
    ("Which wire?", "checks/wire-size/"),
    ("Which fuse?", "checks/fuse-choice/"),
    ("Something is wrong", "checks/find-fault/"),
    ("Will it last?", "checks/week-ahead/"),
    ("How much solar?", "checks/sun-yield/"),
    ("A whole van", "van/"),
    ("The usual mistakes", "checks/usual-mistakes/"),
)
"""What most people come for, with the page that begins it."""


def tasks() -> Markup:
    """Return the search, what most people come for, and a place for the pages opened last."""
    return el(
        "div",
        el(
            "button",
            "Search: “how thick a cable?”",
            type="button",
            data_open_search=True,
            class_="lw-search-box",
            hidden=True,
        ),
        el(
            "nav",
            *(el("a", words, href=href) for words, href in TASKS),
            class_="lw-tasks",
            aria_label="What most people come for",
        ),
        el("nav", data_recent=True, class_="lw-recent", aria_label="Opened last", hidden=True),
        data_search_exclude=True,
    )


def questions() -> Markup:
    """Return a way into each worksheet, by the question a reader comes with."""
    return join(
        *(
            el(
                "nav",
                el("h2", title, class_="lw-chapter", id=_anchor(title)),
                *(
                    el(
                        "a",
                        el("strong", sheet.question),
                        " ",
                        el("span", sheet.title),
                        href=f"checks/{sheet.id}/",
                    )
                    for sheet in map(calc.find, ids)
                ),
                class_="lw-questions",
                aria_label=title,
            )
            for title, ids in calc.chapters()
        )
    )


def _anchor(chapter: str) -> str:
    """Return the anchor of a chapter, to which the header of each of its pages leads back."""
    return chapter.lower().replace(",", "").replace(" ", "-")


def tables() -> Markup:
    """Return each published table with where it comes from, folded."""
    parts = []
    for file in sorted((PROJECT / "calc" / "tables").glob("*.csv")):
        data = table(file.stem)
        about = [
            el("div", el("dt", key.replace("_", " ")), el("dd", text))
            for key, text in data.about.items()
        ]
        columns = tuple(data.rows[0])
        rows = [tuple(row[column] for column in columns) for row in data.rows]
        parts.append(
            el(
                "details",
                el("summary", data.about["what"][:1].upper() + data.about["what"][1:]),
                el("dl", *about, class_="lw-results"),
                _table(tuple(column.replace("_", " ") for column in columns), rows),
                data_search_exclude=True,
            )
        )
    return join(*parts)


def units() -> Markup:
    """Return every worksheet's fields: the units each takes, its limits, its name in links."""
    parts = []
    for sheet in map(calc.find, calc.worksheets()):
        rows = []
        for field in sheet.fields:
            rows.append(_takes(field, field.id))
            if isinstance(field, Rows):
                rows += [_takes(column, f"{field.id}: {column.id}") for column in field.columns]
        parts.append(
            el(
                "details",
                el("summary", sheet.title),
                _table(("Field", "Takes", "From, to", "In a link"), rows),
                data_search_exclude=True,
            )
        )
    return join(*parts)


def _takes(field: Field, name: str) -> tuple[Any, ...]:
    """Return a field's label, what it takes, its limits, and its `name` in links."""
    limits = ""
    match field:
        case Quantity():
            symbols = ", ".join(unit.symbol for _, unit in field.units if unit.symbol)
            takes, limits = symbols or "a plain number", f"{field.low} to {field.high}"
        case Choice():
            names = [option.typed for option in field.options]
            takes = ", ".join(names) if len(names) <= 8 else f"{names[0]} … {names[-1]}"
        case Rows():
            takes = f"a list; parts joined by “:”, each {field.one} by “;”"
            limits = f"up to {field.most}"
        case _:
            takes, limits = "a few words", f"up to {LONGEST} characters"
    return field.label, takes, limits, el("code", name)


def shipped() -> Markup:
    """Return every part that the site ships and others made, with its version and its licence."""
    head = ("Part", "Version", "Licence", "Used for", "How it is shipped", "Source")
    rows: list[tuple[Any, ...]] = [
        (part.name, part.version, part.licence, part.does, part.state, part.source)
        for part in parts()
    ]
    return _table(head, rows)


def licences() -> Markup:
    """Return the licence texts of what the site ships, folded."""
    own = el("summary", "Lugwise and others under it: Apache-2.0")
    folds = [(own, [PROJECT / "LICENSE"])]
    folds += [(el("summary", f"{part.name}: {part.licence}"), part.texts) for part in parts()]
    return join(
        *(
            el(
                "details",
                summary,
                *(el("pre", file.read_text(encoding="utf-8")) for file in files),
                data_search_exclude=True,
            )
            for summary, files in folds
        )
    )


def speed() -> Markup:
    """Return the last measurement of the site's speed, with its date and its machine."""
    found = bench_table.read()
    said = {True: "kept", False: "not kept", None: ""}
    rows: list[tuple[Any, ...]] = [
        (row.what, said[row.kept], row.ours, row.other, row.ratio, row.goal) for row in found.rows
    ]
    head = ("Measured", "Goal kept", "Lugwise", "Compared with", "Ratio", "Goal")
    when = f"{found.when.day} {found.when:%B %Y}"
    return join(el("p", f"Measured on {when}: {found.machine}."), _table(head, rows))


def stages() -> Markup:
    """Return when each stage of a start was reached."""
    rows = [(one.what, one.memory, one.files) for one in bench_table.read().stages]
    return _table(("Until", "From the saved copy", "Without it"), rows)


PARTS: dict[str, Callable[[], Markup]] = {
    "questions": questions,
    "tasks": tasks,
    "counts": counts,
    "checks": checks,
    "tables": tables,
    "units": units,
    "shipped": shipped,
    "speed": speed,
    "stages": stages,
    "licences": licences,
    "wall-awg": partial(wall.sheet_html, "awg"),
    "wall-mm2": partial(wall.sheet_html, "mm2"),
    "fault-trees": trees.trees_html,
    "practice": practice_page,
    "glossary": glossary.page_html,
    "device": device.device_html,
    "client": client_page,
    "van": van_page,
    "van-keys": van_keys.keys_html,
    "van-sound": partial(example_html, "marram", "../../"),
    "van-mistaken": partial(example_html, "ten-mistakes", "../../", lists=False),
    "van-half-seen": partial(example_html, "half-seen", "../../"),
}

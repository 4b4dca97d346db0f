"""What is worked of a whole van for its page: review, diagram, lists, and ways to worksheets."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from urllib.parse import quote

from calc import find
from calc.render.html import Markup, el
from calc.render.van_review import sheet_link
from calc.units.typed import is_bare
from calc.van.bind import filled, put_back, targets
from calc.van.bindings import TARGETS
from calc.van.record import Part, Van
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem, Quantity
from calc.worksheet.link import write
from calc.worksheet.rows import Rows, joined

Reply = dict[str, Any]
_LISTED = 6  # places that are named after their sheet has been put back


def sheet_links(van: Van, part: Part, id: str) -> Markup | None:
    """Return the ways from a part into the worksheets that can be opened for it."""
    found = [
        (sheet, filled(van, sheet, part))
        for sheet, kinds in TARGETS.items()
        if part.kind.id in kinds and part in targets(van, sheet)
    ]
    if not found:
        return None
    links = (
        el(
            "a",
            find(sheet).title,
            href=sheet_link(sheet, own.texts, id, part.place),
            class_="lv-small",
        )
        for sheet, own in found
    )
    return el("p", el("span", "Open in a sheet:"), *links, class_="lv-tools lv-links")


def targets_reply(van: Van, sheet: str, id: str) -> Reply:
    """Return for what of a van a worksheet can be opened, each with the link that fills it."""
    if sheet not in TARGETS:
        return {"targets": []}
    found = []
    for part in targets(van, sheet):
        own = filled(van, sheet, part)
        at = part.place if part else ""
        link = f"{write(find(sheet), own.texts)}&van={quote(f'{id}:{at}', safe=':[]')}"
        filled_in = [find(sheet).field(name).label for name in own.places if name in own.texts]
        said = f"Filled in from the van: {', '.join(filled_in)}." if filled_in else ""
        label = part.name if part else "the whole van"
        found.append({"label": label, "where": at, "link": link, "said": said})
    return {"targets": found}


def put_back_from(van: Van, asked: Mapping[str, Any]) -> tuple[Van, str]:
    """Return the van with what stands in a worksheet's fields, and a sentence that says so.

    Raises InputError.
    """
    name, place = str(asked.get("sheet")), str(asked.get("place", ""))
    sheet = find(name)
    part = next((one for one in targets(van, name) if (one.place if one else "") == place), None)
    if place and part is None:
        raise InputError((Problem("", "This part is no longer in the van."),))
    values, units = asked.get("values", {}), asked.get("units", {})
    texts: dict[str, str] = {}
    for field in sheet.fields:
        if field.id not in values:
            continue
        value = values[field.id]
        if isinstance(field, Rows) and isinstance(value, list):
            texts[field.id] = joined([str(cell) for cell in row] for row in value)
            continue
        text, unit = str(value), str(units.get(field.id, ""))
        bare = isinstance(field, Quantity) and unit and is_bare(text)
        texts[field.id] = f"{text} {unit}" if bare else text
    made = put_back(van, name, part, texts)
    if made == van:
        return van, "The van says so already: nothing is changed."
    return made, f"Put into the van: {part.name if part else 'the whole van'}."

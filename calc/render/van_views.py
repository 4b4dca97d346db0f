"""What is worked of a whole van for its page: the review and its mends, and ways to worksheets."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from urllib.parse import quote

from calc import find
from calc.render.html import el
from calc.render.van import line_html
from calc.render.van_held import Asked, Reply, about, refusal, van_of
from calc.render.van_review import (
    best_html,
    key_of,
    marks_of,
    mends_html,
    review_html,
    sheet_link,
    verdict_of,
)
from calc.units.typed import is_bare
from calc.van.bind import filled, put_back, targets
from calc.van.bindings import TARGETS
from calc.van.judging import mended
from calc.van.mends import mends_of
from calc.van.record import Part, Van
from calc.van.review import Finding, Review
from calc.worksheet.fields import Quantity
from calc.worksheet.link import write
from calc.worksheet.rows import Rows, joined

_reviewed: list[tuple[Van, Review]] = []  # the last one: a review is asked for piece by piece


def review_of(van: Van) -> Review:
    """Return the review of a van, the last one remembered."""
    if not _reviewed or _reviewed[0][0] is not van:
        _reviewed[:] = [(van, van.review())]
    return _reviewed[0][1]


def _review(asked: Asked) -> Reply:
    van = van_of(asked)
    found = review_of(van)
    rows = van.schedule()
    return {
        "html": review_html(found, str(asked.get("id", ""))),
        "verdict": verdict_of(found),
        "marks": marks_of(found),
        "lines": {one.place: line_html(van, one, rows.of(one)) for one in van.all("circuits")},
    }


def _ways(asked: Asked) -> Reply:
    """Return what mends one finding: each change is tried on the whole van first."""
    van = van_of(asked)
    found = review_of(van)
    one = _finding(found, str(asked.get("finding", "")))
    return {"html": mends_html(one, mends_of(van, found, one))}


def _best(asked: Asked) -> Reply:
    van = van_of(asked)
    found = review_of(van)
    best = [(one, mends_of(van, found, one).index(mend), mend) for one, mend in found.best]
    return {"html": best_html(best)}


def _mend(asked: Asked) -> Reply:
    van = van_of(asked)
    found = review_of(van)
    name, _, number = str(asked.get("mend", "")).rpartition("|")
    one = _finding(found, name)
    mends = mends_of(van, found, one)
    if not number.isdecimal() or int(number) >= len(mends):
        raise refusal("This change is no longer offered.")
    mend = mends[int(number)]
    return {**about(mended(van, mend)), "said": f"Mended: {mend.text}"}


def _finding(found: Review, key: str) -> Finding:
    for one in found.findings:
        if key_of(one) == key:
            return one
    raise refusal("This finding is no longer there.")


def _sheet_links(asked: Asked) -> Reply:
    """Return the ways from a part into the worksheets that can be opened for it."""
    van, place, id = van_of(asked), str(asked.get("place", "")), str(asked.get("id", ""))
    links = []
    for sheet, kinds in TARGETS.items():
        if place.partition("[")[0] not in kinds:
            continue
        for part in targets(van, sheet):
            if part and part.place == place:
                href = sheet_link(sheet, filled(van, sheet, part).texts, id, place)
                links.append(el("a", find(sheet).title, href=href, class_="lv-small"))
    words = el("span", "Open in a sheet:") if links else None
    return {"html": el("p", words, *links, class_="lv-tools lv-links")}


def _targets(asked: Asked) -> Reply:
    """Return for what of a van a worksheet can be opened, each with the link that fills it."""
    van, sheet, id = van_of(asked), str(asked.get("sheet")), str(asked.get("id", ""))
    if sheet not in TARGETS:
        return {"targets": []}
    return {"targets": [_target(van, sheet, part, id) for part in targets(van, sheet)]}


def _target(van: Van, sheet: str, part: Part | None, id: str) -> Reply:
    own = filled(van, sheet, part)
    where = part.place if part else ""
    labels = [find(sheet).field(name).label for name in own.places if name in own.texts]
    return {
        "label": part.name if part else "the whole van",
        "where": where,
        "link": f"{write(find(sheet), own.texts)}&van={quote(f'{id}:{where}', safe=':[]')}",
        "said": f"Filled in from the van: {', '.join(labels)}." if labels else "",
    }


def _put(asked: Asked) -> Reply:
    """Put what stands in a worksheet's fields back into the van."""
    van, name, place = van_of(asked), str(asked.get("sheet")), str(asked.get("place", ""))
    if name not in TARGETS:
        raise refusal("This sheet has no place in a van.")
    found = [one for one in targets(van, name) if (one.place if one else "") == place]
    if not found:
        raise refusal("This part is no longer in the van.")
    values, units = asked.get("values"), asked.get("units")
    if not isinstance(values, Mapping) or not isinstance(units, Mapping):
        raise refusal("There is nothing to put into the van.")
    texts: dict[str, str] = {}
    for field in find(name).fields:
        if field.id not in values:
            continue
        value, unit = values[field.id], str(units.get(field.id, ""))
        if isinstance(field, Rows) and isinstance(value, list):
            texts[field.id] = joined([str(cell) for cell in row] for row in value)
        elif isinstance(field, Quantity) and unit and is_bare(str(value)):
            texts[field.id] = f"{value} {unit}"
        else:
            texts[field.id] = str(value)
    made = put_back(van, name, found[0], texts)
    reply = about(made)
    if reply["text"] == asked.get("text"):
        return {**reply, "said": "The van says so already: nothing is changed."}
    return {**reply, "said": f"Put into the van: {found[0].name if found[0] else made.name}."}


ACTS: dict[str, Callable[[Asked], Reply]] = {
    "review": _review,
    "ways": _ways,
    "best": _best,
    "mend": _mend,
    "sheet-links": _sheet_links,
    "sheets": _targets,
    "put": _put,
}

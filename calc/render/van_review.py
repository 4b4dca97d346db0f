"""The review of a van as HTML: findings worst first, what mends each, and the marks of parts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from urllib.parse import quote

from calc import find
from calc.judge import Level
from calc.render.answer import shape_html, verdict_html
from calc.render.html import Markup, el, join
from calc.van.inspection import inspection_list
from calc.van.judging import Mend
from calc.van.patterns import SHEET, Worked, worked_patterns
from calc.van.review import Finding, Review
from calc.worksheet.link import write

GRAVE = (Level.STOP, Level.CAUTION)
_NAMED = {Level.STOP: ("stop", "stops"), Level.CAUTION: ("caution", "cautions")}
_PARTING = "|"


def sheet_link(
    sheet: str, texts: Mapping[str, str], van: str, place: str, root: str = "../"
) -> str:
    """Return the address of a worksheet with its values filled in, and of what van and part.

    `root` is the way from the page to the root of the site.
    """
    whose = f"&van={quote(f'{van}:{place}', safe=':[]')}" if van else ""
    return f"{root}checks/{sheet}/#{write(find(sheet), texts)}{whose}"


def verdict_of(found: Review) -> Markup:
    """Return the worst level, and how many findings of it there are."""
    counts = _counts(found.findings)
    if not any(counts.values()):
        return el("p", verdict_html("fine"), " No finding that stops or cautions.")
    worst = next(level for level in GRAVE if counts[level])
    return el("p", verdict_html(worst), " ", _listed(found.findings))


def _counts(findings: Iterable[Finding]) -> dict[Level, int]:
    every = [one.level for one in findings]
    return {level: every.count(level) for level in GRAVE}


def _listed(findings: Iterable[Finding]) -> str:
    own = tuple(findings)
    parts = [
        f"{number} {_NAMED[level][number != 1]}" for level, number in _counts(own).items() if number
    ]
    unproven = sum(one.not_proven and one.level is Level.STOP for one in own)
    if unproven:
        parts[0] += f" ({unproven} not proven)"
    return ", ".join(parts)


def marks_of(found: Review) -> dict[str, Markup]:
    """Return the mark of each part and kind that has findings, by its place."""
    by_place: dict[str, list[Finding]] = {}
    for one in found.findings:
        part = one.place.split(".")[0]
        for place in dict.fromkeys((part, part.partition("[")[0])):
            by_place.setdefault(place, []).append(one)
    marks = {place: _mark(own) for place, own in by_place.items() if place}
    return {place: mark for place, mark in marks.items() if mark}


def _mark(findings: list[Finding]) -> Markup:
    counts = {level: number for level, number in _counts(findings).items() if number}
    if not counts:
        return Markup("")
    level, number = next(iter(counts.items()))
    return join(
        el("span", shape_html(level), str(number), class_=f"lw-{level}", aria_hidden="true"),
        el("span", f" {_listed(findings)}", class_="lw-unseen"),
    )


def review_html(found: Review, van: str) -> Markup:
    """Return the whole review. `van` is the id under which the page keeps the van."""
    grave = [one for one in found.findings if one.level in GRAVE]
    others = [one for one in found.findings if one.level not in GRAVE]
    return join(
        _disposition(found),
        el("div", "", data_best=True),
        _list(grave, van),
        el(
            "details",
            el("summary", f"Advice and notes ({len(others)})"),
            _list(others, van),
            data_fold="notes",
        )
        if others
        else None,
        _patterns(found, van),
        _walk(found) if found.van.inspection else None,
        _photos(found),
        el(
            "p",
            el("button", "Print", type="button", class_="lw-button lw-plain", data_prints=True),
            el(
                "button",
                "Explain to a client",
                type="button",
                class_="lw-button lw-plain",
                data_explains=True,
            ),
            class_="lv-tools",
        ),
    )


def _disposition(found: Review) -> Markup:
    said = found.disposition
    by = ", ".join(filter(None, (said.signed_by, said.date)))
    signed = f" {by}." if by else ""
    unsigned = " Not signed: name and date are set under “The van”." if found.van.inspection else ""
    return el(
        "p",
        el("strong", said.sentence),
        el("bdi", signed if said.signed else unsigned),
        class_="lv-disposition",
    )


def _list(findings: Iterable[Finding], van: str) -> Markup:
    return el("ul", *(_finding(one, van) for one in findings), class_="lv-findings")


def _finding(one: Finding, van: str) -> Markup:
    return _said(one, el("p", *_ways(one, van), class_="lv-tools"))


def finding_html(one: Finding, *after: Markup, root: str) -> Markup:
    """Return one finding to be read, with what stands `after` it and the way to its values."""
    shown = el("p", _show(one, "", root), class_="lv-tools") if one.sheet else None
    return _said(one, *after, shown)


def _said(one: Finding, *after: Markup | None) -> Markup:
    level = one.level if one.level in GRAVE else None
    return el(
        "li",
        el(
            "p",
            verdict_html(level) if level else None,
            el("em", " Not proven. ") if one.not_proven else " ",
            el("bdi", el("strong", one.part_name), ": ") if one.part_name else None,
            el("bdi", one.sentence),
        ),
        el("p", el("bdi", one.text), class_="lv-why") if one.text else None,
        *after,
        class_=f"lv-finding lv-{level}" if level else "lv-finding",
        data_rule=one.rule,
    )


def _ways(one: Finding, van: str) -> list[Markup]:
    """Return the ways on from a finding: to its part, to the values behind it, to what mends it."""
    ways = []
    if one.place:
        ways.append(_small("Go to it", data_goto=one.place))
    if one.sheet:
        ways.append(_show(one, van))
    if not one.not_proven:
        ways.append(_small("How to fix it", data_way_out=key_of(one)))
    return ways


def _show(one: Finding, van: str, root: str = "../") -> Markup:
    href = sheet_link(one.sheet, one.texts, van, one.place.split(".")[0], root)
    title = el("span", f": {find(one.sheet).title}", class_="lw-unseen")
    return el("a", "Show me", title, href=href, class_="lv-small")


def _small(words: str, **attributes: object) -> Markup:
    return el("button", words, type="button", class_="lv-small", **attributes)


def key_of(one: Finding) -> str:
    """Return the name by which a page asks about a finding."""
    return _PARTING.join(one.key)


def mends_html(one: Finding, mends: Iterable[Mend]) -> Markup:
    """Return what mends a finding, each a button; or that nothing does by itself."""
    buttons = [_mend(one, number, mend) for number, mend in enumerate(mends)]
    return join(*buttons) if buttons else el("span", "No single change fixes it.")


def best_html(best: Iterable[tuple[Finding, int, Mend]]) -> Markup:
    """Return the mends that help most, each with the finding that it is for."""
    items = [
        el("li", el("bdi", one.part_name), ": ", one.sentence, _mend(one, number, mend))
        for one, number, mend in best
    ]
    if not items:
        return Markup("")
    return join(el("h3", "Fix these first"), el("ol", *items, class_="lv-best"))


def _mend(one: Finding, number: int, mend: Mend) -> Markup:
    return el(
        "button",
        el("span", "Mend: ", el("bdi", mend.text)),
        type="button",
        class_="lv-small lv-mend",
        data_mend=f"{key_of(one)}{_PARTING}{number}",
    )


def _patterns(found: Review, van: str) -> Markup | None:
    own = worked_patterns(found.van)
    if not own:
        return None
    more = _small("Work out the year, the recovery and what would help", data_seasons=True)
    return join(
        el("h3", "Patterns of use"),
        el("ul", *(_pattern(one, van) for one in own)),
        el("p", more, class_="lv-tools"),
    )


def _pattern(one: Worked, van: str) -> Markup:
    href = sheet_link(SHEET, one.texts, van, one.part.place)
    return el(
        "li",
        verdict_html(one.verdict) if one.verdict else None,
        " ",
        el("bdi", el("strong", one.part.name), ": ", one.sentence),
        " ",
        el("a", "Show me", href=href, class_="lv-small"),
    )


def _walk(found: Review) -> Markup:
    """Return what is still to be looked at, station by station in a safe order."""
    stations = inspection_list(found.van)
    left = sum(len(stop.looks) for stop in stations)
    return el(
        "details",
        el("summary", f"Still to look at ({left})"),
        el(
            "ol",
            *(
                el(
                    "li",
                    el("strong", stop.title),
                    el("p", stop.caution, class_="lv-warning") if stop.caution else None,
                    el("p", stop.do) if stop.do else None,
                    el(
                        "ul",
                        *(el("li", _small(one.do, data_goto=one.place)) for one in stop.looks),
                    ),
                )
                for stop in stations
            ),
            class_="lv-walk",
        ),
        data_fold="walk",
    )


def _photos(found: Review) -> Markup:
    """Return places for the photos of every part; the page hides them where there is none."""
    return el(
        "section",
        el("h3", "Photos"),
        *(
            el("div", "", data_photos=part.id, data_words=part.name, class_="lv-photos")
            for part in found.van.everything()
        ),
        data_photos_fold=True,
        hidden=True,
    )

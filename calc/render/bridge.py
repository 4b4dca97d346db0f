"""The one door the page knocks on: JSON text in, JSON text out.

Ask with `{"sheet": id, "values": {field: text}, "units": {field: picked unit}}`, where a list is
asked by the texts of its cells, row by row, or with `{"sheet": id, "fragment": text}` for what a
link holds. The reply has the answer's HTML, what to say beside each field and each cell, and the
link. Nothing here raises on what a person typed or a stranger sent.
Of a sum that takes longer than a keystroke the reply holds the first stage, and in `rest` the share
that is done; ask with `{"sheet": id, "rest": true}` for the next stage, until that share is 1 and
the whole answer is there. Asking anything else of the sheet drops what was going on.
Name in `"unfolded"` the folds that are open, and the others are left empty at first: where the
reply has `"shut": true`, ask with `{"sheet": id, "shut": true}` for what belongs into them, and for
the link of their answer.
Ask with `{"sheet": id, "measures": "metric" or "us"}` for the defaults in those units.
`"comma": true` marks decimals with a comma, as the reader types them. `"beside": text` is a link
that holds an answer to compare with.
Ask with `{"sheet": id, "fragment": text, "address": text}` for the answer as plain text.
Ask with `{"code": text}` for the square code that holds a link, as SVG, for the printed sheet.
Ask with `{"van": {"do": what, ...}}` about a van, with `{"quiz": {"do": what, ...}}` for a question
and the check of a reply, and with `{"client": {"do": what, ...}}` about a link for a client; the
code of each is fetched when it is first needed.
"""

import json
from collections.abc import Collection, Iterator, Mapping
from functools import cache
from typing import Any

from calc import InputError, find
from calc.render.answer import summary_html, summary_text
from calc.render.boxes import note_text
from calc.render.code import code_svg
from calc.render.compare import compare_html
from calc.render.copied import copied_text
from calc.render.folds import is_left, left_html
from calc.render.live import details_html, fold_text, folds, key_html
from calc.units.shown import decimal_sign, in_box
from calc.units.typed import is_bare
from calc.worksheet.answer import Answer
from calc.worksheet.fields import Field, ParsedInput, Problem, Quantity
from calc.worksheet.link import open_fragment, write_readings
from calc.worksheet.measures import defaults_in, units_in
from calc.worksheet.rows import Rows, joined
from calc.worksheet.work import Worksheet

_TOLD = 4  # inputs that a line names
_going: dict[str, Iterator[tuple[float, Answer | None]]] = {}  # by worksheet, its stages to come
_latest: dict[str, tuple[Answer, float, Collection[str]]] = {}  # with folds to fill, by worksheet
_kept: dict[tuple[str, str, str], Answer | None] = {}  # the one answer to compare with, by its link


def ask(request: str) -> str:
    """Return the reply to one request. Raises InputError for a sheet that does not exist."""
    asked = json.loads(request)
    decimal_sign.set("," if asked.get("comma") else ".")
    if "code" in asked:
        return json.dumps({"svg": code_svg(str(asked["code"]))})
    if "van" in asked:
        from calc.render import van_bridge  # not in the archive that every page has

        return json.dumps(van_bridge.reply(asked["van"]), ensure_ascii=False)
    if "quiz" in asked:
        from calc.render import practice_bridge  # nor is this

        return json.dumps(practice_bridge.reply(asked["quiz"]), ensure_ascii=False)
    if "client" in asked:
        from calc.render import client_bridge  # nor this

        typed = asked["client"]
        texts = _typed(find(str(typed["sheet"])), typed) if "values" in typed else {}
        return json.dumps(client_bridge.reply(typed, texts), ensure_ascii=False)
    sheet = find(str(asked["sheet"]))
    kept = _answer_kept(sheet, str(asked.get("beside", "")))
    opened = frozenset(map(str, asked["unfolded"])) if "unfolded" in asked else None
    if "shut" in asked:
        return json.dumps(_filled(sheet), ensure_ascii=False)
    if "rest" in asked:
        return json.dumps(_stage(sheet, kept, opened), ensure_ascii=False)
    if "address" in asked:
        found = _answer(sheet, str(asked["fragment"]))
        return json.dumps({"text": copied_text(found, str(asked["address"])) if found else ""})
    if "measures" in asked:
        return json.dumps(
            _in_measures(sheet, str(asked["measures"]), kept, opened), ensure_ascii=False
        )
    if "fragment" in asked:
        link = open_fragment(sheet, str(asked["fragment"]))
        reply, readings = _reply(sheet, dict(link.texts), kept, opened)
        usual = _defaults(sheet, readings)
        missing = [name for name, reading in usual.items() if reading.applies]
        notes = list(link.notes)
        if len(missing) == 1:
            notes.append("1 value is not given: its default is used.")
        elif missing:
            notes.append(f"{len(missing)} values are not given: their defaults are used.")
        reply["notes"] = notes
        for name, part in reply["fields"].items():
            part["fill"] = link.texts.get(name, part["entry"]) if part["error"] else part["entry"]
        return json.dumps(reply, ensure_ascii=False)
    return json.dumps(_reply(sheet, _typed(sheet, asked), kept, opened)[0], ensure_ascii=False)


def _status(answer: Answer) -> str:
    """Return what is spoken of a new answer: it in a few words, then the verdict's sentence."""
    words = summary_text(answer)
    return f"{words}{'' if words.endswith(('.', '?', '!')) else '.'} {answer.sentence}"


def _typed(sheet: Worksheet, asked: Mapping[str, Any]) -> dict[str, str]:
    """Return what a form holds, a bare number with the unit that is picked beside it."""
    picked = {str(name): str(unit) for name, unit in asked.get("units", {}).items()}
    texts = {}
    for field in sheet.fields:
        if field.id in asked["values"]:
            text = _text(field, asked["values"][field.id])
            bare = isinstance(field, Quantity) and picked.get(field.id) and is_bare(text)
            texts[field.id] = f"{text} {picked[field.id]}" if bare else text
    return texts


def _in_measures(
    sheet: Worksheet, system: str, kept: Answer | None, opened: Collection[str] | None
) -> dict[str, Any]:
    """Return the reply to a form whose defaults are in the units of `system`, as it is filled."""
    reply, _ = _reply(sheet, defaults_in(sheet, system), kept, opened)
    units = units_in(sheet, system)
    for name, part in reply["fields"].items():
        part["fill"] = part["entry"]
        part["unit"] = units.get(name, part["unit"])
    return reply


def _answer_kept(sheet: Worksheet, fragment: str) -> Answer | None:
    if not fragment:
        return None
    key = sheet.id, fragment, decimal_sign.get()
    if key not in _kept:
        _kept.clear()
        _kept[key] = _answer(sheet, fragment)
    return _kept[key]


def _answer(sheet: Worksheet, fragment: str) -> Answer | None:
    """Return the whole answer that a link opens, None where it holds what cannot be used."""
    readings, problems = sheet.read(open_fragment(sheet, fragment).texts)
    if problems:
        return None
    try:
        return sheet.answer(readings)
    except InputError:
        return None


def _text(field: Field, value: Any) -> str:
    if isinstance(field, Rows) and isinstance(value, list):
        return joined([str(cell) for cell in row] for row in value if isinstance(row, list))
    return str(value)


def _defaults(sheet: Worksheet, readings: dict[str, ParsedInput]) -> dict[str, ParsedInput]:
    return {
        name: reading
        for name, reading in readings.items()
        if not reading.given and reading.value is not None and not sheet.field(name).default_by
    }


def _reply(
    sheet: Worksheet, texts: dict[str, str], kept: Answer | None, opened: Collection[str] | None
) -> tuple[dict[str, Any], dict[str, ParsedInput]]:
    """Return the reply, and the readings it rests on."""
    readings, problems = sheet.read(texts)
    answer: Answer | None = None
    done = 1.0
    _going.pop(sheet.id, None)
    if not problems:
        stages = sheet.stages(readings)
        try:
            done, answer = next(stages)
            _going[sheet.id] = stages
        except InputError as error:
            problems = error.problems
    reply: dict[str, Any] = {
        "fields": {
            field.id: _beside(field, readings, problems)
            | (_cells(field, texts.get(field.id), problems) if isinstance(field, Rows) else {})
            for field in sheet.fields
        },
        "link": write_readings(sheet, readings, texts),
        "notes": [],
        "changed": _changed(sheet, readings),
        **_said(sheet, answer, done, kept, opened),
    }
    if not answer:
        reply["status"] = problems[0].message
    return reply, readings


def _changed(sheet: Worksheet, readings: dict[str, ParsedInput]) -> str:
    """Return the inputs that are not the defaults, in a few words."""
    usual = _default_links(sheet.id)
    told = [
        f"{field.label} {readings[field.id].text}"
        for field in sheet.fields
        if field.id in readings
        and readings[field.id].given
        and not field.hidden
        and readings[field.id].link != usual.get(field.id)
    ]
    more = len(told) - _TOLD
    return ", ".join(told[:_TOLD]) + (f" and {more} more" if more > 0 else "")


@cache
def _default_links(sheet: str) -> dict[str, str]:
    return {name: reading.link for name, reading in find(sheet).read({})[0].items()}


def _stage(sheet: Worksheet, kept: Answer | None, opened: Collection[str] | None) -> dict[str, Any]:
    """Return the next stage of a sum that is going on, or nothing at all of one that is not."""
    done, answer = next(_going.get(sheet.id, iter(())), (1.0, None))
    return _said(sheet, answer, done, kept, opened)


def _filled(sheet: Worksheet) -> dict[str, Any]:
    """Return what belongs into the folds of the latest answer that were left empty.

    `link` tells which answer that is: a page may never have shown it.
    """
    if sheet.id not in _latest:
        return {"folds": {}, "link": "", "rest": 1.0}
    answer, done, opened = _latest.pop(sheet.id)
    going = sheet.id in _going  # or it was given up for what could not be read
    return {
        "folds": left_html(folds(answer), opened),
        "link": write_readings(sheet, answer.inputs, {}),
        "rest": done if going else 1.0,
    }


def _said(
    sheet: Worksheet,
    answer: Answer | None,
    done: float,
    kept: Answer | None,
    opened: Collection[str] | None,
) -> dict[str, Any]:
    """Return an answer in parts; what it leaves empty, by the folds that are `opened`, is kept.

    Where there is none, the one before goes on standing in the page, and what it lacks is kept.
    """
    if answer:
        _latest.pop(sheet.id, None)
    if answer and opened is not None and any(is_left(fold, opened) for fold in folds(answer)):
        _latest[sheet.id] = answer, done, opened
    beside = compare_html(kept, answer) if answer and kept else ""
    return {
        "answer": details_html(answer, done=done, opened=opened) if answer else None,
        "key": f"{key_html(answer)}{beside}" if answer else None,
        "gist": summary_html(answer) if answer else None,
        "fold": fold_text(answer) if answer else "",
        "status": _status(answer) if answer else "",
        "verdict": answer.verdict if answer else None,
        "shut": sheet.id in _latest,
        "rest": done,
    }


def _beside(
    field: Field, readings: dict[str, ParsedInput], problems: tuple[Problem, ...]
) -> dict[str, Any]:
    reading = readings.get(field.id)
    said = [p.message for p in problems if p.field == field.id and not p.cell]
    quantity = isinstance(field, Quantity)
    return {
        "error": " ".join(said),
        "note": note_text(field, reading) if reading else "",
        "shown": (reading.applies if reading else True) and not field.hidden,
        "unit": reading.unit.link
        if quantity and reading and reading.unit and reading.unit.link
        else None,
        "entry": _entry(field, reading.entry)
        if reading and (reading.given or not field.default_by)
        else "",
    }


def _entry(field: Field, digits: str) -> str:
    return in_box(digits) if isinstance(field, Quantity) else digits


def _cells(field: Rows, text: str | None, problems: tuple[Problem, ...]) -> dict[str, Any]:
    """Return what stands in each cell of a list, as read or else as typed, and what is wrong."""
    wrong = {p.cell: p.message for p in problems if p.field == field.id and p.cell}

    def cell(row: int, column: int, typed: str) -> dict[str, Any]:
        entry = _entry(field.columns[column], field.entry(column, typed))
        error = wrong.get((row, column), "")
        return {"error": error, "shown": True, "entry": entry, "fill": entry}

    rows = enumerate(field.cells(field.default if text is None else text))
    return {"rows": [[cell(row, *one) for one in enumerate(cells)] for row, cells in rows]}

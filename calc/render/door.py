"""The one door the page knocks on: JSON text in, JSON text out.

Ask with `{"sheet": id, "values": {field: text}, "units": {field: picked unit}}`, or with
`{"sheet": id, "fragment": text}` for what a link holds. The reply has the answer's HTML, what to
say beside each field, and the link. Nothing here raises on what a person typed or a stranger sent.
Ask with `{"code": text}` for the square code that holds a link, as SVG, for the printed sheet.
"""

import json
from typing import Any

from calc import InputError, find
from calc.answer import Answer
from calc.fields import Problem, Quantity, Reading
from calc.link import open_fragment, write
from calc.render.answer import answer_html, gist_html, gist_text
from calc.render.code import code_svg
from calc.render.sheet import note_text
from calc.typed import is_bare
from calc.worksheet import Worksheet


def ask(request: str) -> str:
    """Return the reply to one request. Raises InputError for a sheet that does not exist."""
    asked = json.loads(request)
    if "code" in asked:
        return json.dumps({"svg": code_svg(str(asked["code"]))})
    sheet = find(str(asked["sheet"]))
    if "fragment" in asked:
        opened = open_fragment(sheet, str(asked["fragment"]))
        reply = _reply(sheet, dict(opened.texts), picked={})
        missing = [
            name for name, reading in _defaults(sheet, opened.texts).items() if reading.applies
        ]
        notes = list(opened.notes)
        if missing:
            listed = "; ".join(
                f"{sheet.field(name).label}: {_defaults(sheet, opened.texts)[name].text}"
                for name in missing
            )
            notes.append(f"Not in the link, so taken as usual: {listed}.")
        reply["notes"] = notes
        for name, part in reply["fields"].items():
            part["fill"] = opened.texts.get(name, part["entry"]) if part["error"] else part["entry"]
        return json.dumps(reply, ensure_ascii=False)
    picked = {str(name): str(unit) for name, unit in asked.get("units", {}).items()}
    values = {
        field.id: str(asked["values"][field.id])
        for field in sheet.fields
        if field.id in asked["values"]
    }
    return json.dumps(_reply(sheet, values, picked), ensure_ascii=False)


def _defaults(sheet: Worksheet, texts: Any) -> dict[str, Reading]:
    readings, _ = sheet.read(texts)
    return {
        name: reading
        for name, reading in readings.items()
        if not reading.given and reading.value is not None and not sheet.field(name).usual
    }


def _reply(sheet: Worksheet, values: dict[str, str], picked: dict[str, str]) -> dict[str, Any]:
    texts = {
        name: f"{text} {picked[name]}" if picked.get(name) and is_bare(text) else text
        for name, text in values.items()
    }
    readings, problems = sheet.read(texts)
    answer: Answer | None = None
    if not problems:
        try:
            answer = sheet.answer(readings)
        except InputError as error:
            problems = error.problems
    reply: dict[str, Any] = {
        "fields": {
            field.id: _beside(sheet, field.id, readings, problems) for field in sheet.fields
        },
        "link": write(sheet, texts),
        "notes": [],
        "answer": answer_html(answer) if answer else None,
        "gist": gist_html(answer) if answer else None,
        "status": f"{gist_text(answer)}. {answer.sentence}" if answer else problems[0].message,
        "verdict": answer.verdict if answer else None,
    }
    return reply


def _beside(
    sheet: Worksheet, name: str, readings: dict[str, Reading], problems: tuple[Problem, ...]
) -> dict[str, Any]:
    field = sheet.field(name)
    reading = readings.get(name)
    said = [problem.message for problem in problems if problem.field == name]
    quantity = isinstance(field, Quantity)
    return {
        "error": " ".join(said),
        "note": note_text(field, reading) if reading else "",
        "shown": reading.applies if reading else True,
        "unit": reading.unit.link
        if quantity and reading and reading.unit and reading.unit.link
        else None,
        "entry": reading.entry if reading and (reading.given or not field.usual) else "",
    }

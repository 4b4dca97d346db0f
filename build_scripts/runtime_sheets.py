"""Questions about sheets that the page's Python must answer alike before and after the trimming."""

import json
from itertools import zip_longest

import calc
from calc.worksheet.fields import Field, Quantity

FIRST = "wire-drop"
SAMPLE = {"sheet": FIRST, "fragment": "", "address": ""}
"""What a restored Python is asked where the page's own question has no known reply. It leaves
nothing behind that the page asks for later.
"""

CODE = {"code": "wire-drop/#v=1"}

UNUSABLE = ("", "abc", "-1", "1e400", "10**10**8", "1,234", "9" * 50, "3' 6\"", "1 furlong")


def requests() -> list[str]:
    """Questions to every worksheet: its defaults, each choice, limits and unusable texts."""
    asked: list[dict] = [CODE, SAMPLE]
    for sheet in map(calc.find, calc.worksheets()):
        links = "", "v=1", "#v=0&nothing=1", "&".join(f"{field.id}=1%FF" for field in sheet.fields)
        asked += [{"sheet": sheet.id, "fragment": link} for link in links]
        asked.append({"sheet": sheet.id, "values": {}})
        later = [{"sheet": sheet.id, "rest": True}]  # one too many is answered with nothing
        asked += later * len(list(sheet.stages(sheet.read({})[0])))
        asked += [_opening(sheet.id), *[{"sheet": sheet.id, "shut": True}] * 2]
        asked += [
            {"sheet": sheet.id, "values": {field.id: option.id}}
            for field in sheet.fields
            for option in getattr(field, "options", ())
        ]
        # Every text of every field is read; the fields take theirs together, for each by itself
        # would take minutes.
        own = ([(f.id, text) for text in (*field_texts(f), *UNUSABLE)] for f in sheet.fields)
        asked += [
            {"sheet": sheet.id, "values": dict(filter(None, together))}
            for together in zip_longest(*own)
        ]
    return [json.dumps(question) for question in asked]


def field_texts(field: Field) -> list[str]:
    """Every choice of a field, or its ends and 1 in each unit, or words."""
    if isinstance(field, Quantity):
        ends = [end.strip() for end in (*field.low.split("|"), *field.high.split("|"))]
        return ends + [f"1 {unit.link or unit.symbol}" for _, unit in field.units]
    return [o.id for o in getattr(field, "options", ())] or [field.default, "a", "a:;:a"]


def known() -> list[str]:
    """Questions whose replies a restored Python must know: every sheet as it opens, the sample."""
    return [*map(as_it_opens, calc.worksheets()), json.dumps(SAMPLE)]


def as_it_opens(sheet: str) -> str:
    """What the page of a sheet asks first."""
    return json.dumps(_opening(sheet))


def _opening(sheet: str) -> dict:
    return {"sheet": sheet, "values": {}, "unfolded": []}


def opened() -> list[str]:
    """What a page asks as it opens, of each sheet, and for the square code of a print."""
    sheets = [json.dumps({"sheet": sheet, "fragment": ""}) for sheet in calc.worksheets()]
    return [*sheets, as_it_opens(FIRST), json.dumps(SAMPLE), json.dumps(CODE)]

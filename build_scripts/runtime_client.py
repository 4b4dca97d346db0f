"""Questions about links for clients that the page's Python must answer alike when trimmed."""

import json

import calc
from calc.render.bridge import ask


def requests() -> list[str]:
    """Every sheet's link made and checked, with its defaults and at the ends of its fields."""
    asked = [
        {"do": "confirm", "fragment": odd} for odd in ("", "none", "runtime&v=1&load=abc", "#&&")
    ]
    for sheet in map(calc.find, calc.worksheets()):
        made = [{"do": "make", "sheet": sheet.id, "values": values} for values in _values(sheet)]
        links = [json.loads(ask(json.dumps({"client": one}))) for one in made]
        found = [link["fragment"] for link in links if "fragment" in link]
        asked += made + [{"do": "confirm", "fragment": fragment} for fragment in found]
    return [json.dumps({"client": one}) for one in asked]


def _values(sheet: calc.Worksheet) -> list[dict[str, str]]:
    choices = [{f.id: o.id} for f in sheet.fields for o in getattr(f, "options", ())[:2]]
    ends = [{f.id: f.high.split("|")[0]} for f in sheet.fields if hasattr(f, "high")]
    return [{}, *choices, *ends]

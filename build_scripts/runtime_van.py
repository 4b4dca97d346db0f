"""Questions about vans that the page's Python must answer alike before and after the trimming."""

import json
from itertools import zip_longest
from typing import Any

from calc.render.bridge import ask
from calc.van.demos import DEMOS
from calc.van.keys import PartKind
from calc.van.parts import PARTS
from calc.worksheet.fields import Quantity

UNUSABLE = ("", "abc", "not seen", "none", "1,234", "<b>")

VIEWS: tuple[dict[str, Any], ...] = (
    {"do": "parts"},
    {"do": "write", "as": "toml"},
    {"do": "write", "as": "json"},
    {"do": "link", "start": "van/#"},
    {"do": "review"},
    {"do": "best"},
    {"do": "client-make", "start": "client/#"},
    {"do": "lists", "start": "van/"},
    {"do": "diagram"},
    {"do": "sheet", "sheet": 1},
    {"do": "csv", "list": "circuits"},
    {"do": "add-circuits", "source": "name;length\nlamp;2 m\n"},
    {"do": "sheet-links", "place": "circuits[1]"},
    {"do": "sheets", "sheet": "wire-drop"},
    {"do": "put", "sheet": "wire-drop", "place": "circuits[1]", "values": {}, "units": {}},
)
"""What is asked of every sample van as it stands."""


ACTED_ON = ("half-seen",)
"""The sample vans of which every part is changed."""


def requests() -> list[str]:
    """Questions to every act of the page about vans: samples, files, links, changes of each key."""
    asked: list[dict[str, Any]] = [{"do": "new", "name": "Fern"}, {"do": "new", "inspection": "x"}]
    asked += [{"do": "unpack", "link": "#v=1&van=AAAA"}, {"do": "nothing"}]
    for name in DEMOS:
        asked.append({"do": "demo", "name": name})
        text = _reply(asked[-1])["text"]
        asked += [{**view, "text": text} for view in VIEWS]
        if name in ACTED_ON:
            asked += [{**act, "text": text} for kind in PARTS for act in _acts(kind)]
        toml = _reply({"do": "write", "as": "toml", "text": text})["content"]
        asked += [{"do": "open", "source": source} for source in (toml, text, toml[:-9], "[" * 99)]
        link = _reply({"do": "link", "start": "", "text": text}).get("link", "")
        asked.append({"do": "unpack", "link": link})
        fragment = _reply({"do": "client-make", "text": text})["fragment"]
        asked += [{"do": "client-check", "fragment": fragment, "more": more} for more in (0, 1)]
    return [json.dumps({"van": question}) for question in asked]


def _acts(kind: PartKind) -> list[dict[str, Any]]:
    """What is asked of the first part of a kind; where there is none it is told so."""
    place = f"{kind.id}[1]" if kind.many else kind.id
    acts: list[dict[str, Any]] = [
        {"do": "add", "of": kind.id, "ready": "fridge"},
        {"do": "copy", "place": place},
        {"do": "move", "place": place, "by": 1},
        {"do": "remove", "place": place},
        {"do": "whole", "of": kind.id, "says": "none"},
        {"do": "part", "place": place},
    ]
    columns = [[(f"{place}.{key.id}", text) for text in _texts(key.field)] for key in kind.keys]
    for together in zip_longest(*columns):
        changes = {at: {"typed": text} for at, text in filter(None, together)}
        acts.append({"do": "change", "changes": changes, "drafts": {f"{place}.name": "a:b"}})
    return acts


def _texts(field: Any) -> list[str]:
    """Texts for a field: its ends, or its choices, and what cannot be used."""
    if isinstance(field, Quantity):
        ends = [end.strip() for end in (*field.low.split("|"), *field.high.split("|"))]
        return [*ends, *UNUSABLE]
    return [*(o.id for o in getattr(field, "options", ())[:4]), *UNUSABLE]


def _reply(question: dict[str, Any]) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(ask(json.dumps({"van": question})))
    return reply

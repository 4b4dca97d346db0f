"""The format of a van's file on the site: its JSON schema as a file, every key as a page's part.

MkDocs runs `on_files` as a hook, so that a guide can link to the schema as to any other file.
"""

import json
from collections.abc import Iterator
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from calc.render.html import Markup, el, join
from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS
from calc.van.schema import schema
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows

SCHEMA = "van/van.schema.json"
"""Where it stands on the site."""

_FEW_NAMES = 8


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the schema to the site's files."""
    content = json.dumps(schema(), ensure_ascii=False, indent=1)
    files.append(File.generated(config, SCHEMA, content=content))
    return files


def keys() -> Markup:
    """Return every kind of part with its keys: what each takes, and what a plan takes as usual."""
    return join(
        *(
            el(
                "details",
                el("summary", f"{kind.title}: ", el("code", _heading(kind))),
                el("p", el("em", _about(kind))),
                _table(kind),
                data_search_exclude=True,
            )
            for kind in PARTS
        )
    )


def _heading(kind: PartKind) -> str:
    return f"[[{kind.id}]]" if kind.many else f"[{kind.id}]"


def _about(kind: PartKind) -> str:
    count = f"Up to {kind.most}, each with an id." if kind.many else "One."
    return f"{count} May be stated as none." if kind.none or kind.many else count


def _table(kind: PartKind) -> Markup:
    head = ("Key", "What it is", "Takes", "Default in a plan", "Safety")
    rows = [
        (el("code", key.id), key.field.label, "; ".join(_takes(key)), key.usual, "yes" * key.safety)
        for key in kind.keys
    ]
    table = el(
        "table",
        el("thead", el("tr", *(el("th", name, scope="col") for name in head))),
        el("tbody", *(el("tr", *(el("td", cell) for cell in row)) for row in rows)),
        class_="lw-table",
    )
    about: dict[str, Any] = {"tabindex": "0", "role": "region", "aria_label": kind.title}
    return el("div", table, class_="lw-scroll", **about)


def _takes(key: Key) -> Iterator[str]:
    """Yield what may stand at a key."""
    match field := key.field:
        case Quantity():
            units = ", ".join(unit.symbol for _, unit in field.units if unit.symbol)
            yield f"{units or 'a number'}, {field.low} to {field.high}"
        case Choice():
            names = [option.typed for option in field.options]
            few = len(names) <= _FEW_NAMES
            yield ", ".join(names) if few else f"{names[0]} … {names[-1]}"
        case Rows():
            yield f"a list; parts joined by “:”, each {field.one} by “;”"
        case _:
            yield f"words, like {getattr(field, 'example', '')}"
    if key.refers:
        yield f"names one of {', '.join(key.refers)}"
    if key.none:
        yield "or none"

"""Every key of a van’s file as a part of a page: what it takes, and what a plan takes as usual."""

from collections.abc import Iterator
from typing import Any

from calc.render.html import Markup, el, join
from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows

_FEW_NAMES = 8
_FEW_KINDS = 8
_HEADS = ("Key", "What it is", "Takes", "Default in a plan", "Also")


def keys_html() -> Markup:
    """Return every kind of part with its keys, folded."""
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
    rows = (
        el("tr", el("th", el("code", key.id), scope="row"), *(el("td", one) for one in _cells(key)))
        for key in kind.keys
    )
    table = el(
        "table",
        el("thead", el("tr", *(el("th", name, scope="col") for name in _HEADS))),
        el("tbody", *rows),
        class_="lw-table",
    )
    about: dict[str, Any] = {"tabindex": "0", "role": "region", "aria_label": kind.title}
    return el("div", table, class_="lw-scroll", **about)


def _cells(key: Key) -> tuple[str, ...]:
    return key.field.label, "; ".join(_takes(key)), key.usual, "; ".join(_also(key))


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
        few = len(key.refers) <= _FEW_KINDS
        yield f"names one of {', '.join(key.refers)}" if few else "names a part"
    if key.none:
        yield "or none"


def _also(key: Key) -> Iterator[str]:
    if key.safety:
        yield "must be proven"

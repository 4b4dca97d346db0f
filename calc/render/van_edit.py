"""Changes of a van's parts as a page asks for them, each with what the page shows of it then."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from calc.render.van import (
    count_text,
    line_html,
    list_html,
    load_texts,
    part_at,
    part_html,
    parts_html,
)
from calc.render.van_fields import beside
from calc.render.van_held import (
    Asked,
    Drafts,
    Reply,
    about,
    draft,
    drafts_in,
    kind_in,
    refusal,
    van_of,
)
from calc.units.typed import LONGEST, is_bare
from calc.van.data import van_as_data
from calc.van.keys import Key
from calc.van.record import KINDS, Part, Van, place_of
from calc.van.values import NONE, NOT_SEEN, Evidence, Stage, State
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Quantity
from calc.worksheet.rows import Rows, joined


def _parts(asked: Asked) -> Reply:
    van = van_of(asked)
    return {**about(van), "html": parts_html(van)}


def _part(asked: Asked) -> Reply:
    van = van_of(asked)
    part = part_at(van, str(asked.get("place", "")))
    if part is None:
        raise refusal("This part is no longer there.")
    return {"html": part_html(van, part, drafts_in(asked))}


def _change(asked: Asked) -> Reply:
    """Change values, each by itself: what cannot be read stays as a draft in its box."""
    van, drafts = van_of(asked), drafts_in(asked)
    changes = asked.get("changes")
    changes = changes if isinstance(changes, Mapping) else {}
    places = list(changes)
    kept: dict[str, Any] = {}
    errors: dict[str, str] = {}
    for place in places:
        drafts.pop(place, None)
        try:
            kept[place] = _stated(van, place, changes[place])
            van = van.changed({place: kept[place]})
        except InputError as error:
            errors[place] = _plain(error.problems[0].message, van, place)
            if _value_at(van, place)[1]:
                drafts[place] = _typed(changes[place])
    return {
        **about(van),
        "drafts": drafts,
        "fields": {place: _field(van, drafts, place, errors.get(place, "")) for place in places},
        "lines": _lines(van, places),
        "counts": {k.id: count_text(van, k) for k in KINDS.values() if k.many},
        "whole": any(place in ("van.kind", "van.system") for place in kept),
    }


def _plain(message: str, van: Van, place: str) -> str:
    """Return a message without the part's name, for it stands beside the part's own box."""
    part, key = _value_at(van, place)
    at = message.find(key.field.label) if part and key else -1
    return message[at:] if at > 0 else message


def _value_at(van: Van, place: str) -> tuple[Part | None, Key | None]:
    """Return the part and the key that a place names, as far as there are such."""
    at, _, name = place.rpartition(".")
    part = part_at(van, at)
    keys = part.kind.keys if part else ()
    return part, next((one for one in keys if one.id == name), None)


def _typed(change: Any) -> str:
    """Return what somebody typed, as it goes back into the box."""
    return draft(change.get("typed", "")) if isinstance(change, Mapping) else ""


def _stated(van: Van, place: str, change: Any) -> Any:
    """Return what a change states at a place: a text, or the statements that stand there then."""
    kind, _, name = place_of(place)
    key = next((one for one in kind.keys if one.id == name), None)
    if key is None or not isinstance(change, Mapping):
        raise refusal("The van has no such place.", place)
    if change.get("says") in (NOT_SEEN, NONE):
        return str(change["says"])
    if "rows" in change and isinstance(key.field, Rows):
        rows = [[str(cell) for cell in row] for row in change["rows"] if isinstance(row, list)]
        return joined(rows) if any(map(any, rows)) else ""
    text, unit = str(change.get("typed", "")), str(change.get("unit", ""))
    if isinstance(key.field, Quantity) and unit and is_bare(text):
        text = f"{text} {unit}"
    by = change.get("by")
    if not text.strip() or not van.inspection or by not in tuple(map(str, Evidence)):
        return text
    return _found(van, text, Evidence(str(by)))


def _found(van: Van, text: str, by: Evidence) -> dict[str, str]:
    """Return the statement of an inspection: who and when are those of the van."""
    stage = Stage.MEASURED if by is Evidence.MEASURED else Stage.FOUND
    own = van.parts["van"][0]
    said = {"who": own.text("inspector"), "when": own.text("date")}
    return {str(stage): text, "evidence": str(by), **{k: one for k, one in said.items() if one}}


def _field(van: Van, drafts: Drafts, place: str, error: str) -> Reply:
    part, key = _value_at(van, place)
    if part is None or key is None:
        return {"error": error, "note": "", "shown": True, "entry": "", "fill": "", "is": ""}
    return beside(van, part, key, drafts.get(place), error)


def _lines(van: Van, places: list[str]) -> dict[str, str]:
    parts = dict.fromkeys(place.rpartition(".")[0] for place in places)
    found = (part_at(van, place) for place in parts)
    return {part.place: line_html(van, part) for part in found if part}


# Whole parts


def _after(van: Van, kind: str, drafts: Drafts, at: str, said: str, box: str = "") -> Reply:
    """Return the reply after a list has changed: its lines anew, and which of them to unfold.

    `box` is the place of the value that is typed next.
    """
    of = KINDS[kind]
    shown = list_html(van, of) if of.many else line_html(van, _only(van, kind))
    return {
        **about(van),
        "drafts": drafts,
        "of": kind,
        "many": of.many,
        "html": shown,
        "counts": {kind: count_text(van, of)},
        "where": at,
        "box": box,
        "said": said,
    }


def _only(van: Van, kind: str) -> Part:
    found = part_at(van, kind)
    assert found is not None  # there is one of every single kind, if only to be filled in
    return found


def _add(asked: Asked) -> Reply:
    van, kind = van_of(asked), kind_in(asked)
    texts = load_texts(str(asked.get("ready", ""))) if kind == "circuits" else {}
    if van.inspection:
        # Of a load that is typical nothing has been seen in this van but what it is.
        texts = {name: text for name, text in texts.items() if name in ("name", "load")}
    if kind == "circuits":
        texts |= _fed_like(van)
    made = van.added(kind, texts)
    new = made.all(kind)[-1]
    box = next((k.id for k in new.kind.keys if k.few and not new[k.id].known), "")
    if kind == "circuits" and texts.get("name"):
        box = "length"  # the load is known: what is measured in the van comes next
    said = f"{new.name} added."
    return _after(made, kind, drafts_in(asked), new.place, said, f"{new.place}.{box}")


def _fed_like(van: Van) -> dict[str, str]:
    """Return where a new circuit starts and ends: where the last one does, or at the fuse block."""
    last = van.all("circuits")[-1:]
    if last:
        ends = {"from": last[0].text("from").partition(".")[0]}
        ends["return_to"] = last[0].text("return_to").partition(".")[0]
        return {name: text for name, text in ends.items() if text}
    block = [b for b in van.all("bars") if b.choice("kind") == "fuse-block"]
    return {"from": block[0].id} if block else {}


def _copy(asked: Asked) -> Reply:
    van = van_of(asked)
    part = _listed(van, asked)
    kind, data = part.kind.id, van_as_data(van)
    own = dict(data[kind][part.index - 1])
    own.pop("id", None)
    if isinstance(own.get("name"), str):
        own["name"] = _numbered(own["name"], {one.name for one in van.all(kind)})
    made = van.added(kind, own)
    new = made.all(kind)[-1]
    if new.index != part.index + 1:
        made = made.moved(new.place, part.index + 1)
    at = f"{kind}[{part.index + 1}]"
    shifted = _shifted(drafts_in(asked), kind, lambda index: index + (index > part.index))
    return _after(made, kind, shifted, at, f"{part.name} copied.")


def _numbered(name: str, taken: set[str]) -> str:
    """Return a name for one more of the same: `fridge 2`."""
    stem, _, number = name.rpartition(" ")
    first, stem = (int(number), stem) if stem and number.isdecimal() else (1, name)
    return next(
        new
        for count in range(first + 1, len(taken) + first + 2)
        if (new := f"{stem} {count}"[-LONGEST:]) not in taken
    )


def _remove(asked: Asked) -> Reply:
    van = van_of(asked)
    part = _there(van, asked)
    gone = part.index
    kept = _shifted(
        drafts_in(asked), part.kind.id, lambda index: 0 if index == gone else index - (index > gone)
    )
    return _after(van.without(part.place), part.kind.id, kept, "", f"{part.name} removed.")


def _move(asked: Asked) -> Reply:
    van = van_of(asked)
    part = _listed(van, asked)
    to = part.index + (1 if asked.get("by") == 1 else -1)
    made = van.moved(part.place, to)

    def place(index: int) -> int:
        if index == part.index:
            return to
        return index - (part.index < index <= to) + (to <= index < part.index)

    shifted = _shifted(drafts_in(asked), part.kind.id, place)
    return _after(made, part.kind.id, shifted, f"{part.kind.id}[{to}]", f"{part.name} moved.")


def _whole(asked: Asked) -> Reply:
    van, kind = van_of(asked), kind_in(asked)
    state = State(str(asked.get("says")))
    if van.stated(kind) is state and not van.all(kind):
        state = State.BLANK  # pressed again, it is taken back
    made = van.stating(kind, state)
    return _after(made, kind, drafts_in(asked), "" if KINDS[kind].many else kind, "")


def _shifted(drafts: Drafts, kind: str, to: Callable[[int], int]) -> Drafts:
    """Return what was typed in vain after the parts of a list have moved; 0 stands for gone."""
    found: Drafts = {}
    for place, text in drafts.items():
        if not place.startswith(f"{kind}["):
            found[place] = text
            continue
        _, index, name = place_of(place)
        if new := to(index):
            found[f"{kind}[{new}].{name}"] = text
    return found


def _listed(van: Van, asked: Asked) -> Part:
    """Return the part that is asked about, of a list. Raises InputError."""
    part = _there(van, asked)
    if not part.kind.many:
        raise refusal(f"There is one {part.kind.one} only.")
    return part


def _there(van: Van, asked: Asked) -> Part:
    part = part_at(van, str(asked.get("place", "")))
    if part is None:
        raise refusal("This part is no longer there.")
    return part


ACTS: dict[str, Callable[[Asked], Reply]] = {
    "parts": _parts,
    "part": _part,
    "change": _change,
    "add": _add,
    "copy": _copy,
    "remove": _remove,
    "move": _move,
    "whole": _whole,
}

"""One value of a van in its form: label, box, what it is known by, and what stands beside it."""

from collections.abc import Iterable, Mapping
from functools import cache
from typing import Any

from calc.render.boxes import control_html
from calc.render.html import Markup, el, join
from calc.render.rows import rows_html
from calc.units.quantities import Unit
from calc.van.keys import Key, PartKind, Walk
from calc.van.reading import stated_text
from calc.van.record import Part, Van
from calc.van.values import NONE, NOT_SEEN, Evidence, Stage, State, Statement, Value
from calc.worksheet.fields import Choice, ParsedInput, Problem, Quantity
from calc.worksheet.rows import Rows

_SELF_EVIDENT = ("name", "note")  # keys of which nobody asks by what they are known
_SAYABLE = ((NOT_SEEN, State.NOT_SEEN, "Not seen"), (NONE, State.NONE, "None"))
KNOWN_BY = {
    Evidence.SEEN: "seen",
    Evidence.LABEL: "read on a label",
    Evidence.MEASURED: "measured",
    Evidence.TOLD: "told",
}


def box_id(place: str) -> str:
    """Return the id of the box at a place: `lv-circuits-3-length` for `circuits[3].length`."""
    return "lv-" + place.replace("[", "-").replace("].", "-").replace(".", "-")


def row_html(van: Van, part: Part, key: Key, draft: str | None) -> Markup:
    """Return one value of a part as a row of its form; `draft` is what was typed in vain."""
    place = f"{part.place}.{key.id}"
    name, value, field = box_id(place), part[key.id], key.field
    said = beside(van, part, key, draft)
    if isinstance(field, Rows):
        shown = value.reading if value.known and value.reading else None
        blank = ParsedInput(None, "", rows=(field.blank,), given=False)
        box = rows_html(field, shown if shown and shown.rows else blank, name)
        return el(
            "div", box, _known_by(van, part, key, value), class_="lv-row lv-list", data_place=place
        )
    about = " ".join(f"{name}-{what}" for what in ("error", "note", "hint"))
    return el(
        "div",
        el("label", field.label, for_=name),
        el(
            "div",
            control_html(
                field,
                _in_box(van, part, key, draft),
                name,
                about,
                sent=True,
                blank=_blank(van, part, key),
                listed=f"lv-ends-{_list_of(key)}" if key.refers else None,
            ),
            class_="lv-box",
        ),
        _known_by(van, part, key, value),
        _words(name, "error", said["error"], "lw-error"),
        _words(name, "note", said["note"], "lw-note"),
        _words(name, "hint", field.hint, "lw-hint"),
        class_="lv-row",
        data_place=place,
        data_is=str(value.state),
    )


def _words(name: str, what: str, words: str, style: str) -> Markup:
    marks = {f"data_{what}": True}
    return el("p", words, id=f"{name}-{what}", class_=style, hidden=not words, **marks)


def beside(van: Van, part: Part, key: Key, draft: str | None, error: str = "") -> dict[str, Any]:
    """Return what the page puts into a row after a change: its text and what is said of it."""
    value, field = part[key.id], key.field
    if draft is not None and not error:
        error = _refusal(part.kind, key, draft)
    reading = _in_box(van, part, key, draft)
    unit = reading.unit.link if isinstance(field, Quantity) and reading.unit else None
    if error and draft is not None and value.known:
        kept = value.reading.text if value.reading else ""
        error = f"{error} Until then {kept} counts."
    return {
        "error": error,
        "note": note(value),
        "shown": True,
        "entry": reading.entry,
        "fill": reading.entry,
        "unit": unit,
        "is": str(value.state),
        "by": str(value.statements[-1].evidence) if value.state is State.GIVEN else "",
    }


def note(value: Value) -> str:
    """Return what stands below a box: what is taken as usual, and what was stated before."""
    if value.state is State.DEFAULT and value.reading:
        return f"Left empty: {value.reading.text}."
    told = value.statements if len(value.statements) > 1 or value.only_planned else ()
    parts = [f"{_STAGES[one.stage]} {one.text}{_by(one)}." for one in told]
    if value.only_planned:
        parts.append("Not seen yet.")
    return " ".join(parts)


_STAGES = {Stage.PLANNED: "Planned:", Stage.FOUND: "Found:", Stage.MEASURED: "Measured:"}


def _by(one: Statement) -> str:
    by = KNOWN_BY.get(one.evidence, "") if one.stage is Stage.FOUND else ""
    parts = [part for part in (by, one.who, one.when, one.instrument) if part]
    return f" ({', '.join(parts)})" if parts else ""


def _refusal(kind: PartKind, key: Key, draft: str) -> str:
    try:
        stated_text(kind, key, draft)
    except Problem as problem:
        return problem.message
    return ""


def _in_box(van: Van, part: Part, key: Key, draft: str | None) -> ParsedInput:
    value = part[key.id]
    if draft is None and value.state is State.GIVEN and value.reading:
        return value.reading
    return ParsedInput(None, draft or "", draft or "", unit=_unit(van, part, key), given=False)


def _unit(van: Van, part: Part, key: Key) -> Unit | None:
    """Return the unit that is picked beside an empty box: the last that was used at its key."""
    for one in (part, *reversed(van.all(part.kind.id))):
        reading = one[key.id].reading
        if one[key.id].state is State.GIVEN and reading and reading.unit:
            return reading.unit
    return None


def _blank(van: Van, part: Part, key: Key) -> str:
    """Return what a list of choices shows where nothing is chosen."""
    value = part[key.id]
    if van.inspection:
        return "not seen" if not key.none else "not seen, or none"
    if not key.usual or not isinstance(key.field, Choice):
        return "not given"
    shown = value.reading if value.state is State.DEFAULT else key.field.read(key.usual)
    return f"usual: {shown.text}" if shown else "not given"


def _known_by(van: Van, part: Part, key: Key, value: Value) -> Markup | None:
    """Return the buttons beside a box, and in an inspection by what its value is known."""
    looked_at = van.inspection and key.walk is not Walk.DESK and key.id not in _SELF_EVIDENT
    offered = [one for one in _SAYABLE if (key.none if one[1] is State.NONE else looked_at)]
    if not offered:
        return None
    by = str(value.statements[-1].evidence) if value.statements else str(Evidence.SEEN)
    label = key.field.label
    return el(
        "div",
        *(
            el(
                "button",
                words,
                type="button",
                class_="lv-small",
                data_says=name,
                data_is=str(state),
                aria_pressed=str(value.state is state).lower(),
                aria_label=f"{words}: {label}",
            )
            for name, state, words in offered
        ),
        el(
            "select",
            *(
                el("option", words, value=str(one), selected=str(one) == by)
                for one, words in KNOWN_BY.items()
            ),
            class_="lv-small",
            data_by=True,
            aria_label=f"Known by: {label}",
            hidden=value.state is not State.GIVEN,
        )
        if looked_at
        else None,
        class_="lv-known",
    )


def _list_of(key: Key) -> str:
    return "-".join(key.refers) if len(key.refers) < 4 else f"{len(key.refers)}"


def ends_html(van: Van, keys: Iterable[Key]) -> Markup:
    """Return the lists of words that the boxes of `keys` offer: the ids of the parts there are."""
    lists = {_list_of(key): key.refers for key in keys if key.refers}
    return join(*(_ends(van, name, kinds) for name, kinds in lists.items()))


def _ends(van: Van, name: str, kinds: tuple[str, ...]) -> Markup:
    found = ["chassis"] if "chassis" in kinds else []
    found += [part.id for part in van.everything() if part.kind.id in kinds]
    return el("datalist", *(el("option", value=one) for one in found), id=f"lv-ends-{name}")


_TYPED_FIRST = {"circuits": ("name", "length", "conductor", "fuse", "current", "power")}
"""Keys that come first in a form, where that is not their order in the file."""


@cache
def first_keys(kind: PartKind, inspection: bool) -> tuple[tuple[Key, ...], tuple[Key, ...]]:
    """Return the keys that a form shows at once and those that it folds."""

    def first(key: Key) -> bool:
        return key.few or (inspection and key.safety)

    order = _TYPED_FIRST.get(kind.id, ())
    shown = sorted(
        filter(first, kind.keys), key=lambda k: order.index(k.id) if k.id in order else 99
    )
    return tuple(shown), tuple(key for key in kind.keys if not first(key))


def drafts_of(drafts: Mapping[str, str], part: Part) -> dict[str, str]:
    """Return what was typed in vain into a part, by key."""
    start = f"{part.place}."
    own = [place for place in drafts if place.startswith(start)]
    return {place.removeprefix(start): drafts[place] for place in own}

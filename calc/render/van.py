"""The parts of a van as a page shows them: folded groups, a line for each part, a form in it."""

from collections.abc import Mapping
from functools import cache

from calc.render.html import Markup, el, join
from calc.render.van_fields import drafts_of, ends_html, first_keys, row_html
from calc.tables import Table, table
from calc.units.kinds import CURRENT
from calc.units.shown import quantity_text, with_mm2
from calc.van.data import may_be_none
from calc.van.keys import Key, PartKind
from calc.van.reading import missing
from calc.van.record import KINDS, Part, Van
from calc.van.row import Row
from calc.van.values import State, Value

SECTIONS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("The van and its use", ("van", "patterns", "shell")),
    ("Circuits", ("circuits",)),
    ("Battery", ("batteries", "bank", "management", "shunt", "monitor", "bay")),
    ("Charging", ("panels", "regulators", "alternator", "shore")),
    ("Mains", ("mains", "inverter")),
    ("Distribution", ("bars", "isolators", "cables", "converters", "joints")),
    ("Comfort and safety", ("heater", "cooler", "water_heater", "gas", "alarms")),
    ("Service", ("log",)),
)
"""The kinds of parts under the headings of the page."""

_SHOWN = 4  # values in the line of a part
_NOTHING = {State.NOT_SEEN: "not seen", State.NONE: "none", State.BLANK: "–"}
Drafts = Mapping[str, str]


def parts_html(van: Van) -> Markup:
    """Return every kind of part under its heading, folded."""
    return join(
        *(
            el(
                "section",
                el("h2", title, class_="lv-heading") if names[1:] else None,
                *(kind_html(van, KINDS[name]) for name in names),
                class_="lv-section",
            )
            for title, names in SECTIONS
        )
    )


def kind_html(van: Van, kind: PartKind) -> Markup:
    """Return a kind of part: a fold with its list, or the one part there is of it."""
    if not kind.many:
        return _fold(van, van.one(kind.id) or _absent(van, kind))
    return el(
        "details",
        el(
            "summary",
            el("span", kind.title, class_="lv-name"),
            el("span", count_text(van, kind), data_count=kind.id, class_="lv-count"),
            el("span", "", data_mark=kind.id, class_="lv-mark"),
        ),
        el("div", list_html(van, kind), data_list_of=kind.id),
        data_group=kind.id,
        class_="lv-group",
    )


def count_text(van: Van, kind: PartKind) -> str:
    """Return how many there are, or how it stands where there are none."""
    found = van.all(kind.id)
    return str(len(found)) if found else _NOTHING[van.stated(kind.id)]


def list_html(van: Van, kind: PartKind) -> Markup:
    """Return the parts of a kind, each a line to unfold, and what adds one."""
    parts = van.all(kind.id)
    article = "an" if kind.one[0] in "aeiou" else "a"
    full = len(parts) >= kind.most
    return join(
        *(_fold(van, part) for part in parts),
        el(
            "div",
            el(
                "button",
                f"Add {article} {kind.one}",
                type="button",
                class_="lw-button",
                data_add=kind.id,
                disabled=full,
            ),
            *_whole_kind(van, kind),
            class_="lv-tools",
        ),
        _loads() if kind.id == "circuits" else None,
    )


def _whole_kind(van: Van, kind: PartKind) -> list[Markup]:
    """Return the buttons that state of a whole kind that there is none, or that it was not seen."""
    if van.all(kind.id):
        return []
    stated = van.stated(kind.id)
    offered = [(State.NONE, "The van has none")] if may_be_none(kind) else []
    if van.inspection:
        offered.append((State.NOT_SEEN, "Not seen"))
    return [
        el(
            "button",
            words,
            type="button",
            class_="lv-small",
            data_whole=str(state),
            data_of=kind.id,
            aria_pressed=str(stated is state).lower(),
        )
        for state, words in offered
    ]


def _absent(van: Van, kind: PartKind) -> Part:
    """Return a part that a van does not have yet, to be filled in."""
    return Part(kind, kind.id, 1, missing(kind, van.inspection))


def part_at(van: Van, place: str) -> Part | None:
    """Return the part at `circuits[3]` or `bank`; of a single kind one to be filled in."""
    name, _, rest = place.partition("[")
    kind = KINDS.get(name)
    if kind is None:
        return None
    if not kind.many:
        return van.one(name) or _absent(van, kind)
    number = rest.removesuffix("]")
    found = van.all(name)
    if not number.isdecimal() or not 1 <= int(number) <= len(found):
        return None
    return found[int(number) - 1]


def _fold(van: Van, part: Part) -> Markup:
    return el(
        "details",
        el("summary", line_html(van, part), data_line=part.place),
        el("div", "", data_body=True),
        data_part=part.place,
        data_id=part.id,
        class_="lv-part",
    )


def line_html(van: Van, part: Part, row: Row | None = None) -> Markup:
    """Return a part in one line: its name, and the few values by which it is known.

    `row` is what the schedule found of it: what is not given is chosen there.
    """
    name = part.name if part.kind.many else part.kind.title
    return join(
        el("span", el("bdi", name), class_="lv-name"),
        el("span", *_facts(van, part, row), class_="lv-facts"),
        el("span", "", data_mark=part.place, class_="lv-mark"),
    )


def _facts(van: Van, part: Part, row: Row | None) -> list[Markup]:
    kind = part.kind
    if not kind.many and van.one(kind.id) is None:
        return [el("span", _NOTHING[van.stated(kind.id)])]
    if kind.id == "circuits":
        use = "current" if part["current"].known or not part["power"].known else "power"
        drawn = el("bdi", quantity_text(row.current, CURRENT)) if row and row.current else None
        return [
            drawn or _fact(part[use]),
            _fact(part["length"]),
            _chosen(row, "conductor") or _fact(part["conductor"]),
            _chosen(row, "fuse") or _fact(part["fuse"]),
        ]
    first = [key for key in kind.keys if key.few and key.id != "name"]
    known = [part[key.id] for key in first if part[key.id].known]
    return [_fact(value) for value in known[:_SHOWN]]


def _chosen(row: Row | None, name: str) -> Markup | None:
    """Return what the schedule has chosen where nothing is given, marked so."""
    if row is None or name not in row.chosen:
        return None
    if name == "conductor":
        return el("bdi", f"{with_mm2(row.conductor or '')} chosen", class_="lv-chosen")
    return el("bdi", f"{quantity_text(row.fuse or 0.0, CURRENT)} chosen", class_="lv-chosen")


def _fact(value: Value) -> Markup:
    shown = value.reading.text if value.known and value.reading else _NOTHING.get(value.state, "–")
    return el("bdi", shown)


def part_html(van: Van, part: Part, drafts: Drafts) -> Markup:
    """Return the form of a part, with what was typed into it in vain."""
    there = part.kind.many or van.one(part.kind.id) is not None
    first, others = first_keys(part.kind, van.inspection)
    typed = drafts_of(drafts, part)
    wrong = any(key.id in typed for key in others)

    def rows(keys: tuple[Key, ...]) -> list[Markup]:
        return [row_html(van, part, key, typed.get(key.id)) for key in keys]

    return el(
        "form",
        *([] if there else _whole_kind(van, part.kind)),
        *rows(first),
        el(
            "details",
            el("summary", f"More values ({len(others)})"),
            el("div", *rows(others)),
            class_="lv-more",
            data_more=True,
            open=wrong,
        )
        if others
        else None,
        el("div", "", data_links=part.place) if there else None,
        _tools(van, part) if there else None,
        el("div", "", data_photos=part.id, class_="lv-photos"),
        ends_html(van, part.kind.keys),
        class_="lv-form",
        novalidate=True,
        autocomplete="off",
        aria_label=part.name,
    )


def _tools(van: Van, part: Part) -> Markup:
    """Return what can be done with a whole part."""
    kind = part.kind
    last = len(van.all(kind.id))
    moves = [("Up", -1), ("Down", 1)] if kind.many else []
    removes = kind.id != "van"
    return el(
        "div",
        _tool("Copy", part, data_copies=part.place, disabled=last >= kind.most)
        if kind.many
        else None,
        *(
            _tool(
                words,
                part,
                data_shift_part=part.place,
                data_shift_by=by,
                disabled=not 1 <= part.index + by <= last,
            )
            for words, by in moves
        ),
        _tool("Remove", part, data_removes=part.place) if removes else None,
        el(
            "label",
            "Add a photo",
            el("input", type="file", accept="image/*", data_photo=part.id, class_="lw-unseen"),
            class_="lv-small",
        ),
        class_="lv-tools",
    )  # fmt: skip


def _tool(words: str, part: Part, **attributes: object) -> Markup:
    return el(
        "button",
        words,
        el("span", f" {part.name}", class_="lw-unseen"),
        type="button",
        class_="lv-small",
        **attributes,
    )


@cache
def ready_loads() -> Table:
    """Return the loads that a circuit can be made from, by the groups in which they are offered."""
    return table("van_loads")


@cache
def _loads() -> Markup:
    """Return the loads to choose from, and a circuit with nothing in it yet."""
    groups = dict.fromkeys(row["group"] for row in ready_loads().rows)
    return el(
        "div",
        el("p", "Typical values: the appliance’s own label is better.", class_="lw-note"),
        *(el("div", el("h3", group), *_ready(group), class_="lv-loads-group") for group in groups),
        el("button", "Something else", type="button", class_="lv-small", data_ready_load=""),
        class_="lv-loads",
        data_ready=True,
        hidden=True,
    )


def _ready(group: str) -> list[Markup]:
    return [
        el("button", row["name"], type="button", class_="lv-small", data_ready_load=row["id"])
        for row in ready_loads().rows
        if row["group"] == group
    ]


def load_texts(name: str) -> dict[str, str]:
    """Return what a circuit from the ready load `name` begins with; nothing for any other."""
    row = next((one for one in ready_loads().rows if one["id"] == name), None)
    if row is None:
        return {}
    texts = {"name": row["name"], "load": row["load"], "power": f"{row['power_w']} W"}
    texts |= {"hours": f"{row['hours_h']} h", "when": row["when"], "route": row["route"]}
    texts |= {"switch": row["switch"], "dimmer": row["dimmer"]}
    return {key: text for key, text in texts.items() if text}

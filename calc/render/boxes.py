"""The controls of a form: a box for a number or for words, a list of choices or a few buttons."""

from calc.render.html import Markup, el, join
from calc.units.quantities import Unit
from calc.units.shown import MINUS
from calc.worksheet.fields import Choice, Field, ParsedInput, Quantity

_FEW = 4  # choices that stand side by side as buttons
_ROW = 38  # characters of one row of them at 360 px; a button's edges are worth three


def control_html(
    field: Field,
    reading: ParsedInput,
    name: str,
    about: str,
    sent: bool,
    *,
    blank: str | None = None,
    listed: str | None = None,
) -> Markup:
    """Return the control of a field or of a cell, with the id `name`.

    `about` lists the ids that describe it. `sent` goes for a field: its control has a name of its
    own in what the form sends, and a picker of units where there is a choice of them. `blank` is
    what a list of choices shows first, for no choice at all. `listed` is the id of a list of words
    that a box offers.
    """
    if isinstance(field, Choice):
        if sent and blank is None and has_buttons(field):
            return _buttons(field, reading, name, about)
        return _select(field, reading, name, about, sent, blank)
    number = isinstance(field, Quantity)
    units = [unit for _, unit in field.units if unit.symbol] if isinstance(field, Quantity) else []
    empty = bool(field.default_by) and not reading.given
    box = el(
        "input",
        id=name,
        name=field.id if sent else None,
        type="text",
        value="" if empty else reading.entry,
        inputmode="decimal" if number else None,
        data_keys=_keys(field, [] if sent else units) if isinstance(field, Quantity) else None,
        enterkeyhint="next",
        autocomplete="off",
        autocapitalize="off" if number else "sentences",
        spellcheck="false",
        list=listed,
        placeholder=" ",  # so that paper can tell an empty box
        aria_describedby=about,
    )
    if not (sent and units and isinstance(field, Quantity)):
        return el("div", box, class_="lw-entry")
    if len(units) == 1:
        return el("div", box, el("span", units[0].symbol, class_="lw-unit"), class_="lw-entry")
    picked = reading.unit or field.bare[1]
    picker = el(
        "select",
        *(el("option", unit.symbol, value=unit.link, selected=unit is picked) for unit in units),
        name=f"{field.id}.unit",
        aria_label=f"Unit of: {field.label}",
        data_unit=True,
    )
    return el("div", box, picker, class_="lw-entry")


def _keys(field: Quantity, units: list[Unit]) -> str | None:
    """Return what a telephone's keys for numbers lack and no picker beside the box offers."""
    minus = [MINUS] if "-" in field.low else []
    return "|".join((*minus, *(unit.symbol for unit in units if units[1:]))) or None


def has_buttons(field: Field) -> bool:
    """Whether a form shows a field as buttons, of which one is pressed: a few short choices."""
    if not isinstance(field, Choice) or field.hidden or not 2 <= len(field.options) <= _FEW:
        return False
    return sum(len(one.label or one.id) + 3 for one in field.options) <= _ROW


def label_html(field: Field, name: str) -> Markup:
    """Return the label of the control with the id `name`."""
    if has_buttons(field):
        return el("span", field.label, id=f"{name}-label", class_="lw-label")
    return el("label", field.label, for_=name, class_="lw-label")


def _buttons(field: Choice, reading: ParsedInput, name: str, about: str) -> Markup:
    return el(
        "div",
        *(
            el(
                "label",
                el(
                    "input",
                    type="radio",
                    name=field.id,
                    value=option.id,
                    checked=option.id == reading.value,
                    autocomplete="off",
                ),
                el("span", option.label or option.id),
            )
            for option in field.options
        ),
        id=name,
        role="radiogroup",
        aria_labelledby=f"{name}-label",
        aria_describedby=about,
        class_="lw-entry lw-picks",
    )


def _select(
    field: Choice, reading: ParsedInput, name: str, about: str, sent: bool, blank: str | None
) -> Markup:
    groups = dict.fromkeys(option.group for option in field.options)

    def options(group: str) -> list[Markup]:
        return [
            el(
                "option",
                option.label or option.id,
                value=option.id,
                selected=option.id == reading.value,
            )
            for option in field.options
            if option.group == group
        ]

    inside = [
        el("optgroup", *options(group), label=group) if group else join(*options(group))
        for group in groups
    ]
    if blank is not None:
        inside.insert(0, el("option", blank, value="", selected=reading.value is None))
    sends = field.id if sent else None
    return el(
        "div",
        el("select", *inside, id=name, name=sends, aria_describedby=about),
        class_="lw-entry lw-choice",
    )


def note_text(field: Field, reading: ParsedInput) -> str:
    """Return the remark under a field that may be left empty: what is used then."""
    if field.default_by and not reading.given:
        return f"Left empty: {reading.text}."
    return ""

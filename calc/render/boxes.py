"""The controls of a form: a box for a number or for words, a list of choices."""

from calc.render.html import Markup, el, join
from calc.units.kinds import TEMPERATURE
from calc.worksheet.fields import Choice, Field, ParsedInput, Quantity


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
        return _select(field, reading, name, about, sent, blank)
    number = isinstance(field, Quantity)
    units = [unit for _, unit in field.units if unit.symbol] if isinstance(field, Quantity) else []
    empty = bool(field.default_by) and not reading.given
    # A telephone's keys for numbers have no letters, and in a cell a unit may have to be typed.
    digits = isinstance(field, Quantity) and TEMPERATURE not in field.kinds
    box = el(
        "input",
        id=name,
        name=field.id if sent else None,
        type="text",
        value="" if empty else reading.entry,
        inputmode="decimal" if digits and (sent or len(units) <= 1) else None,
        enterkeyhint="next",
        autocomplete="off",
        autocapitalize="off" if number else "sentences",
        spellcheck="false",
        list=listed,
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

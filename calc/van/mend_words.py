"""A change of a van's record as somebody would say it who hands out the work."""

from __future__ import annotations

from collections.abc import Mapping

from calc.units.shown import with_mm2
from calc.van.record import KINDS, Part, Van, place_of
from calc.van.told import label_of
from calc.worksheet.fields import Choice

_BY_CHOICE = {
    ("alternator.method", "charger"): "fit a battery-to-battery charger instead of the relay",
    ("alternator.stops_by", "run-signal"): (
        "connect the charger's run signal and check that it stops with the engine"
    ),
    ("bank.stands", "box-or-bay-vented-outside"): (
        "put the batteries in a box or bay that is vented outside"
    ),
    ("heater.exhaust", "both-outside"): "duct the heater's combustion air and exhaust outside",
    ("inverter.inverter_on", "day-and-night"): "keep the inverter on day and night",
    ("inverter.inverter_on", "while-used"): "switch the inverter off when nothing uses it",
    ("joints.condition", "dry"): "clean the thread and tighten it dry",
    ("mains.polarity", "correct"): (
        "use a polarity adapter; if every hook-up is reversed, "
        "have the inlet rewired by an electrician"
    ),
    (
        "management.cold_cut_off",
        "proven",
    ): "test that the battery management stops charging in frost",
    ("management.fitted", "fitted"): "fit a battery management system",
    ("regulators.kind", "MPPT"): "fit an MPPT regulator",
    ("water_heater.mixing_valve", "fitted"): "fit a mixing valve",
}
_BY_KEY = {
    "alternator.charger_limit": "use a charger of {text} between engine and bank",
    "bank.vents": "give the battery box two vents, one low and one high, of {text} each",
    "bank.warmest": "keep the bank at {text} at most",
    "batteries.capacity": "use batteries of {text} each",
    "batteries.units": "use {text} batteries in parallel",
    "bay.fan": "fit a fan of {text} on a thermostat",
    "bay.vents": "cut a vent low and one high, each of {text}",
    "heater.output": "fit a heater of {text}",
    "inverter.rating": "fit an inverter of {text}",
    "joints.grade": "use a stud of {text}",
    "panels.strings": "use {text} strings of panels in parallel",
    "patterns.drive_hours": "drive {text} a day",
    "patterns.temperature": "keep the bank at {text} or warmer",
    "shore.charger": "use a charger of {text} on shore power",
    "water_heater.to": "heat the water to {text} only",
}
_OF_RUNS = {
    "bundled": "keep no more than {text} loaded conductors together",
    "conductor": "use {text}",
    "fuse": "use a fuse of {text}",
    "fuse_family": "use a fuse of this kind: {text}",
    "insulation": "use wire with {text} insulation",
    "length": "keep the run within {text}",
}


def change_text(van: Van, changes: Mapping[str, str], near: str) -> str:
    """Return what is changed, the new texts by place, as one sentence.

    `near` is the id of the part that it is for; another one of several is named.
    """
    own = van.by_id(near)
    clauses = [_clause(van, place, text, own) for place, text in changes.items() if text]
    said = " and ".join(filter(None, (", ".join(clauses[:-1]), *clauses[-1:])))
    return f"{said[:1].upper()}{said[1:]}."


def _clause(van: Van, place: str, text: str, own: Part | None) -> str:
    kind, index, key = place_of(place)
    name = f"{kind.id}.{key}"
    says = _BY_CHOICE.get((name, text)) or _BY_KEY.get(name) or _OF_RUNS.get(key)
    if name == "patterns.shore_every":
        says = (
            "use shore power every night" if text == "1" else "use shore power every {text} nights"
        )
    if says is None:
        return f"set {label_of(van, place, own)} to {_shown(name, text)}"
    parts = van.all(kind.id)
    other = parts[1:] and index <= len(parts) and parts[index - 1] is not own
    return says.format(text=_shown(name, text)) + (f" ({parts[index - 1].name})" if other else "")


def _shown(name: str, text: str) -> str:
    """Return a new text as a reader knows it: a choice by its label, a size with its sign."""
    kind, _, key = name.partition(".")
    field = KINDS[kind].key(key).field
    options = field.options if isinstance(field, Choice) else ()
    label = next((one.label for one in options if one.id == text), "")
    return with_mm2(label or text)

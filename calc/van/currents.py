"""The current of each run, and what of it flows on towards the bank.

A load's is stated, or its power at the bank's voltage. What converts draws its own rating. A main
cable carries what is stated; else whatever its branches may draw together, or charge together,
whichever is more: what flows in flows out.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from calc.units.si import Amperes
from calc.van.came import Came, amps, key_of, unknown
from calc.van.net import MINUS, PLUS
from calc.van.once import once_for_each_van
from calc.van.paths import Way, device_before, runs, way
from calc.van.record import Part, Van
from calc.van.worked import attempted

CHARGES = ("regulators", "alternator", "shore")
CABLES, PANELS = "cables", "panels"


@dataclass(frozen=True, kw_only=True)
class Flow:
    """What may flow through one place: what is `drawn` and what is `charged`, all at once.

    `parts` are its branches; `missing` are the places of what is not known of them: where there is
    one, more may flow.
    """

    drawn: Amperes
    charged: Amperes
    parts: tuple[Part, ...]
    missing: tuple[str, ...]

    @property
    def most(self) -> Amperes:
        """The most that flows: what is drawn comes from the bank or from what charges."""
        return max(self.drawn, self.charged)


# What each worksheet needs for a current: the rest of it is about something else
_NEEDS = {
    "watts-to-amps": ("power", "voltage", "route", "efficiency"),
    "converter": ("system", "output_voltage", "rated", "efficiency"),
    "inverter-size": ("running", "efficiency", "lowest_voltage", "voltage"),
    "alternator-charge": (
        "method", "alternator", "vehicle_load", "engine_voltage", "bank_voltage", "charger_limit",
        "charger_efficiency", "length", "chemistry", "capacity",
    ),
}  # fmt: skip


def _by_sheet(van: Van, sheet: str, part: Part, value: str, **typed: str) -> Came:
    """Return a current that a worksheet works out for a part, with some texts of its own.

    A conductor that is still to be chosen is taken as the worksheet's own usual one.
    """
    from calc.van.bind import partly_filled

    found = partly_filled(van, sheet, part, (*_NEEDS[sheet], "conductor"))
    lacking = [one for one in found.lacking if one != "conductor"]
    if lacking:
        return unknown(found.missing[lacking[0]])
    answer = attempted(sheet, {**found.texts, **typed})
    current = answer.values[value] if answer else None
    return amps(current, part.place) if current else unknown(part.place)


def _circuit(van: Van, part: Part) -> Came | None:
    if part["current"].known:
        return key_of(part, "current")
    if not part["power"].known:
        return unknown(f"{part.place}.current")
    return _by_sheet(van, "watts-to-amps", part, "current")


def _panels(van: Van, part: Part) -> Came:
    current, strings = part.si("short_current"), part.si("strings")
    if current is None or strings is None:
        return unknown(f"{part.place}.{'short_current' if current is None else 'strings'}")
    return amps(current * strings, f"{part.place}.short_current")


def _converter(van: Van, part: Part) -> Came:
    """Return what a converter takes at its full output, with the bank at its lowest."""
    full = key_of(part, "rated_current")
    if full is None or not full.text:
        return unknown(f"{part.place}.rated_current")
    return _by_sheet(van, "converter", part, "input_current", load=full.text)


_OWN: Mapping[str, Callable[[Van, Part], Came | None]] = {
    "circuits": _circuit,
    "panels": _panels,
    "regulators": lambda van, part: key_of(part, "current_limit"),
    "alternator": lambda van, part: _by_sheet(van, "alternator-charge", part, "cable_current"),
    "shore": lambda van, part: key_of(part, "charger"),
    "inverter": lambda van, part: _by_sheet(van, "inverter-size", part, "dc_current"),
    "converters": _converter,
}


@once_for_each_van
def _own(van: Van) -> Mapping[str, Came]:
    """Return the current of every run but main cables, by the id of its part."""
    return {
        part.id: _OWN[part.kind.id](van, part) or unknown(part.place)
        for part in runs(van)
        if part.kind.id in _OWN
    }


def flow(van: Van, passes: Callable[[Way], bool], pole: str = PLUS) -> Flow:
    """Return what may flow where the ways of some branches pass.

    What an inverter, a converter or a regulator feeds is part of that device's own current.
    """
    drawn = charged = 0.0
    parts: list[Part] = []
    missing: list[str] = []
    for part in runs(van):
        on_way = way(van, part, pole)
        if part.kind.id in (CABLES, PANELS) or on_way is None or not passes(on_way):
            continue
        if device_before(van, part) is not None:
            continue
        parts.append(part)
        own = _own(van)[part.id]
        if own.si is None:
            missing.append(own.place)
        elif part.kind.id in CHARGES:
            charged += own.si
        else:
            drawn += own.si
    return Flow(drawn=drawn, charged=charged, parts=tuple(parts), missing=tuple(missing))


def flow_over(van: Van, run: Part) -> Flow:
    """Return what may flow over a main cable: all whose way leads over it."""
    pole = MINUS if run.kind.id == CABLES and run.choice("pole") == MINUS else PLUS
    return flow(van, lambda on_way: run.id in on_way.ids, pole)


def flow_at(van: Van, part: Part, pole: str = "") -> Flow:
    """Return what may flow at a bar or a shunt: all whose way passes it, on its own pole."""
    pole = pole or (part.choice("pole") if "pole" in part.values else None) or PLUS
    return flow(van, lambda on_way: part.id in on_way.nodes, pole)


def load_current(van: Van, part: Part | None) -> Came | None:
    """The largest continuous current of a run."""
    if part is None:
        return None
    if part.kind.id != CABLES:
        return _own(van).get(part.id)
    if part["current"].known:
        return key_of(part, "current")
    found = flow_over(van, part)
    known = bool(found.parts) and not found.missing
    if known and found.most:
        return amps(found.most, f"{part.place}.current")
    return unknown(next(iter(found.missing), f"{part.place}.current"))

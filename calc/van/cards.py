"""Cards that stay in the van: how to shut it down, what to do in a fire, how its chargers are set.

The steps are common practice in our own words. A step is left out only where the van is said to
have no such part.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from calc.energy.battery import Chemistry, charge_range
from calc.energy.voltages import NOMINAL, charge_end, max_charge_voltage
from calc.units.kinds import TEMPERATURE, VOLTAGE
from calc.units.shown import quantity_text
from calc.van.listed import ListTable
from calc.van.marks import marks
from calc.van.values import State

if TYPE_CHECKING:
    from calc.van.record import Part, Van

LIVE_TITLE = "Still live when the main isolator is off"


@dataclass(frozen=True, kw_only=True)
class Card:
    """A card with numbered `steps`, and a `note` under them."""

    id: str
    title: str
    steps: tuple[str, ...]
    note: str = ""


def cards(van: Van) -> tuple[Card, ...]:
    """Return the cards of a van."""
    return shutdown_card(van), fire_card(van)


def may_have(van: Van, kind: str) -> bool:
    """Return whether the van may have a part of that kind: unless somebody says that it has none.

    A card may not lead past a live conductor because a line of the record is empty.
    """
    return van.stated(kind) is not State.NONE


def system_voltage(van: Van) -> float | None:
    """Return the nominal voltage [V] of a van, None where it is not known."""
    said = van.parts["van"][0].choice("system")
    return float(said.split()[0]) if said else None


def still_live(van: Van) -> tuple[str, ...]:
    """Return what stays live with every isolator of the bank open, in words for a label."""
    said = [one["stays_live"].text for one in van.all("isolators") if one["stays_live"].known]
    ahead = any(one.choice("supply") == "ahead-of-isolator" for one in van.all("alarms"))
    parts = (
        ("the batteries and their terminals", True),
        ("the solar panels in any daylight", may_have(van, "panels")),
        ("the alternator while the engine runs", may_have(van, "alternator")),
        ("mains from the shore inlet while plugged in", may_have(van, "mains")),
        ("alarms fed ahead of the isolator", ahead),
    )  # fmt: skip
    told = [words for words, there in parts if there]
    known = _words(" ".join(told))
    return (*told, *(words for words in dict.fromkeys(said) if not _words(words) <= known))


def _words(text: str) -> set[str]:
    """Return the words of a text that carry its meaning."""
    return {word for word in re.findall(r"\w+", text.casefold()) if word not in ("and", "the")}


def shutdown_card(van: Van) -> Card:
    """Return how the van is shut down."""
    return Card(
        id="shutdown",
        title="Shut down",
        steps=tuple(_shutdown(van)),
        note="Back on in reverse: batteries first, then panels, then shore power."
        " If anything smells, smokes or buzzes, leave it off and have it checked.",
    )


def _shutdown(van: Van) -> Iterator[str]:
    if may_have(van, "alternator"):
        yield "Stop the engine."
    if may_have(van, "gas") or may_have(van, "heater"):
        yield "Let the heater cool down, then close the gas or fuel at its source."
    if may_have(van, "inverter"):
        yield "Switch off the inverter and everything it feeds."
    if may_have(van, "mains"):
        yield "Unplug shore power: at the supply post first, then at the van."
    # Panels before the bank: a regulator that loses its battery in sunlight may be damaged.
    isolators = [one for one in van.all("isolators") if not _of_panels(van, one)]
    yield from _panels_off(van)
    for one in isolators:
        yield f"Open {_named(one)}."
    if not isolators:
        yield "Disconnect the bank: negative first, and cover the post."
    yield f"{LIVE_TITLE}: {'; '.join(still_live(van))}."
    yield "Measure before you touch metal: a meter, both poles, then again at the load."


def _named(part: Part) -> str:
    place = part.text("place")
    return f"the {part.name}" + (f" ({place})" if place else "")


def _panels_off(van: Van) -> Iterator[str]:
    """Yield how each string of panels is taken off, or that all are covered."""
    own = marks(van)
    listed = [one for one in van.all("isolators") if _of_panels(van, one)]
    for one in listed:
        yield f"Open {_named(one)}."
    lines = {_line_of(one) for one in listed}
    for string in van.all("panels"):
        if string.id in lines or string.text("regulator").partition(".")[0] in lines:
            continue
        if string.choice("isolator") == "yes":
            yield f"Open the isolator of the {string.name} ({own.built_in_isolator(string)})."
        else:
            yield f"Cover the {string.name}, or disconnect it at the panels."
    if not van.all("panels") and may_have(van, "panels"):
        yield "Cover solar panels, if there are any."


def _line_of(isolator: Part) -> str:
    return isolator.text("in_line").partition(".")[0]


def _of_panels(van: Van, isolator: Part) -> bool:
    named = van.by_id(_line_of(isolator))
    return named is not None and named.kind.id in ("panels", "regulators")


def fire_card(van: Van) -> Card:
    """Return what to do in a fire."""
    return Card(
        id="fire",
        title="Fire, smoke or a hot smell",
        steps=tuple(_fire(van)),
        note="People before the van. Fix this card where it is seen on the way out.",
    )


def _fire(van: Van) -> Iterator[str]:
    yield "Get everybody out and far away, upwind."
    yield "Call the emergency services. Say that it is a camper van, and who may still be inside."
    yield f"Tell them what is in it: {', '.join(_dangers(van))}."
    yield "Only with your back to a clear way out: unplug shore power, open the main isolator."
    yield (
        "Only a small fire, and only from outside: a dry powder or carbon dioxide extinguisher."
        " If it does not go out at once, leave."
    )
    yield "No water on anything connected to mains, or on burning fat or fuel."
    if van.all("batteries") or may_have(van, "batteries"):
        yield (
            "A battery that hisses, swells or smokes: do not open its box, do not breathe the"
            " smoke. It can burn again hours later."
        )
    if may_have(van, "gas"):
        yield "Close the gas cylinder only if you reach it without passing the fire."
    yield "Do not go back in. Let the fire service say when it is safe."


def _dangers(van: Van) -> Iterator[str]:
    for one in van.all("batteries"):
        place = one.text("place")
        chemistry = one.text("chemistry")
        words = f"{chemistry} battery" if chemistry else "battery"
        yield f"{words} ({place})" if place else words
    if not van.all("batteries"):
        yield "batteries"
    for kind, words in (("gas", "gas cylinders"), ("panels", "solar panels live in daylight")):
        if may_have(van, kind):
            yield words if van.stated(kind) is State.GIVEN else f"perhaps {words}"
    heater = van.one("heater")
    if fuel := heater.text("fuel") if heater else "":
        yield f"{fuel} for the heater"


def charger_settings(van: Van) -> ListTable:
    """Return the voltages to set each charger to, by the chemistry of the house bank.

    From the book's tables of charging voltages and temperatures, for the system's blocks of 12 V.
    """
    rows = []
    volts = system_voltage(van)
    for chemistry in dict.fromkeys(one.choice("chemistry") for one in _house(van)):
        if chemistry is None or volts is None:
            continue
        kind = Chemistry(chemistry)
        blocks = round(volts / NOMINAL)
        low, high = charge_range(kind)
        rows.append(
            (
                str(kind),
                quantity_text(charge_end(kind) * blocks, VOLTAGE),
                quantity_text(max_charge_voltage(kind) * blocks, VOLTAGE),
                quantity_text(low, TEMPERATURE),
                quantity_text(high, TEMPERATURE),
                _HABITS[kind],
            )
        )
    return ListTable(
        id="charger-settings",
        title="Charger settings",
        columns=("Bank", "Absorption", "Never above", "Not below", "Not above", "Also"),
        rows=tuple(rows),
        note="The battery maker's instructions govern. Set every charger alike: alternator, sun and"
        " shore. Float, time of absorption and temperature compensation: by the maker.",
    )


_HABITS = {
    Chemistry.LFP: "No equalising. No desulphating. No charge in frost.",
    Chemistry.AGM: "No equalising unless the maker says so.",
    Chemistry.GEL: "No equalising. Never above the gel setting.",
    Chemistry.FLOODED: "Equalise by the maker's instructions only, with the vents open.",
}


def _house(van: Van) -> tuple[Part, ...]:
    return tuple(one for one in van.all("batteries") if one.choice("role") != "starter")

"""Vans to try things with: a sound one as a file, and drawn ones with whatever a van may hold."""

from functools import cache
from random import Random
from typing import Any

from calc.van.files import read_van, van_from_data
from calc.van.keys import Key, PartKind
from calc.van.parts import PARTS
from calc.van.record import KINDS, Van
from calc.van.values import Evidence, Stage
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows, Text
from tests.contract.samples import NAMES, _text

SOUND = """
format = 1
none = ["shunt", "gas", "cooler", "water_heater", "converters"]

[van]
name = "Marram"
system = "12 V"
chassis_bond = "minus-bar"

[bank]
stands = "box or bay vented outside"
coldest = "2 °C"

[[batteries]]
name = "bank A"
chemistry = "LFP"
capacity = "100 Ah"
units = "2"
fuse = "200 A"
fuse_family = "cartridge, class T"

[[bars]]
name = "fuse block"
pole = "plus"
kind = "fuse-block"
rating = "100 A"

[[bars]]
name = "minus bar"
pole = "minus"
kind = "bus-bar"
rating = "250 A"

[[cables]]
name = "main plus"
from = "bank-a.plus"
to = "fuse-block"
current = "60 A"
length = "1.2 m"
conductor = "2 AWG"
fuse = "100 A"

[[cables]]
name = "main minus"
pole = "minus"
from = "bank-a.minus"
to = "minus-bar"
current = "60 A"
length = "1 m"
conductor = "2 AWG"

[[circuits]]
name = "fridge"
load = "fridge"
current = "5 A"
from = "fuse-block.1"
return_to = "minus-bar"
length = "3.2 m"
conductor = "10 AWG"
fuse = "15 A"

[[circuits]]
name = "lights"
load = "light"
current = "2 A"
from = "fuse-block.2"
return_to = "minus-bar"
length = "5 m"
conductor = "14 AWG"
fuse = "5 A"
dimmer = "yes"
"""
"""A small van that a careful electrician would leave as it is."""


@cache
def sound() -> Van:
    """Return the small sound van."""
    return read_van(SOUND)


def drawn_van(rng: Random, circuits: int | None = None, inspection: bool | None = None) -> Van:
    """Return a van drawn by chance, with so many circuits, or any number.

    Any part and any value may be missing, not seen or none, or be stated at several stages. Its
    conductors start and end at parts that it has, mostly.
    """
    return van_from_data(drawn_data(rng, circuits, inspection))


def drawn_data(
    rng: Random, circuits: int | None = None, inspection: bool | None = None
) -> dict[str, Any]:
    """Return the plain data of a drawn van."""
    inspection = rng.random() < 0.4 if inspection is None else inspection
    full = rng.choice((0.2, 0.5, 0.8, 0.95))
    data: dict[str, Any] = {"format": 1, "none": [], "not_seen": []}
    ids: list[str] = ["bank", "chassis"]
    for kind in PARTS:
        count = _count(kind, rng, circuits, full)
        own = [_part(kind, index, rng, full, inspection) for index in range(1, count + 1)]
        if kind.many:
            data[kind.id] = own
            ids += [one["id"] for one in own]
        elif own:
            data[kind.id] = own[0]
            ids.append(kind.id)
        elif (kind.none or kind.many) and rng.random() < 0.4:
            data["none"].append(kind.id)
        elif rng.random() < 0.2:
            data["not_seen"].append(kind.id)
    data["van"] |= {"kind": "inspection" if inspection else "plan"}
    for kind in PARTS:
        for part in data.get(kind.id, []) if kind.many else [data.get(kind.id, {})]:
            _join(kind, part, ids, rng, full)
    return data


def _count(kind: PartKind, rng: Random, circuits: int | None, full: float) -> int:
    if kind.id == "van":
        return 1
    if kind.id == "circuits":
        return circuits if circuits is not None else rng.choice((0, 1, 3, 8, 15, 25))
    if not kind.many:
        return int(rng.random() < full)
    return rng.randint(0, min(kind.most, 5)) if rng.random() < full else 0


def _part(kind: PartKind, index: int, rng: Random, full: float, inspection: bool) -> dict[str, Any]:
    part: dict[str, Any] = {"id": f"{kind.one.replace(' ', '-')}-{index}"} if kind.many else {}
    for key in kind.keys:
        if not key.refers and rng.random() < full:
            part[key.id] = _value(key, rng, inspection)
    return part


def _value(key: Key, rng: Random, inspection: bool) -> Any:
    if rng.random() < 0.8:
        return _said(key, rng)
    stages = sorted(rng.sample(list(Stage), rng.randint(1, 3)), key=list(Stage).index)
    made = [_statement(key, stage, rng) for stage in stages]
    return made[0] if len(made) == 1 and rng.random() < 0.5 else made


def _statement(key: Key, stage: Stage, rng: Random) -> dict[str, str]:
    said = {str(stage): _said(key, rng)}
    if stage is not Stage.PLANNED and rng.random() < 0.5:
        said["evidence"] = str(rng.choice([one for one in Evidence if one is not Evidence.PLAN]))
    if rng.random() < 0.5:
        said |= {"who": "A. Brandt", "when": f"2026-{rng.randint(1, 12):02}-20"}
    if rng.random() < 0.3:
        said["instrument"] = "meter 2"
    return said


def _said(key: Key, rng: Random) -> str:
    """Return a text for a key: mostly one that is usual, else from its whole range."""
    if rng.random() < 0.1:
        return "not seen"
    if key.none and rng.random() < 0.15:
        return "none"
    field = key.field
    if isinstance(field, Quantity) and rng.random() < 0.7:
        return key.usual or field.sample
    if isinstance(field, Text) and rng.random() < 0.8:
        return field.example
    if isinstance(field, Choice | Quantity | Rows):
        return _text(field, rng)
    return rng.choice(NAMES)


def _join(kind: PartKind, part: dict[str, Any], ids: list[str], rng: Random, full: float) -> None:
    """Let a part's references name parts that there are; a few name none."""
    for key in kind.keys:
        if key.refers and rng.random() < full:
            end = rng.choice(ids) if rng.random() < 0.95 else "nowhere"
            terminal = rng.choice((".plus", ".minus", ".3", "", "", "", "", "", ""))
            part[key.id] = f"{end}{terminal}"


__all__ = ["KINDS", "SOUND", "drawn_data", "drawn_van", "sound"]

"""The bill of materials of a van, in generic words: what it takes, how many, and for what.

A spare for each kind of fuse, a lug or ferrule for each end of a conductor and a marker beside it
are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from calc.van.listed import ListTable
from calc.van.marks import marks
from calc.van.stock import UNKNOWN, Piece, sum_text
from calc.van.values import State

if TYPE_CHECKING:
    from calc.van.fuse_list import Fuse
    from calc.van.record import Part, Van

Item = tuple[str, str, str, str]  # what, rating or size, how many, for what
_ALARMS = {"smoke": "Smoke alarm", "co": "Carbon monoxide alarm", "gas": "Gas alarm"}
_COUNTED = {"studs": ("stud or way", "studs or ways"), "poles": ("pole", "poles")}
# What a kind of part is bought as, with the keys whose texts say which.
_BOUGHT = (
    ("batteries", "Battery", ("chemistry", "capacity")),
    ("panels", "Solar panel", ("power",)),
    ("regulators", "Solar regulator", ("kind", "max_voltage", "current_limit")),
    ("alternator", "Charging from the alternator", ("method", "charger_limit")),
    ("shore", "Battery charger for shore power", ("charger",)),
    ("inverter", "Inverter", ("rating",)),
    ("converters", "Converter", ("output_voltage", "rated_current")),
    ("bars", "", ("rating", "studs")),
    ("isolators", "", ("poles", "rating", "rated_voltage")),
    ("shunt", "Shunt", ("rating",)),
    ("monitor", "Battery monitor", ("monitor",)),
)


def bill(van: Van, cut: Iterable[Piece], fuses: Iterable[Fuse]) -> ListTable:
    """Return the bill of materials: `cut` are the pieces of the cut list, `fuses` of its list."""
    cut = tuple(cut)
    rows = (*_parts(van), *_mains(van), *_fuses(fuses), *_cable(cut), *_small(van, cut))
    return ListTable(
        id="bill-of-materials",
        title="Bill of materials",
        columns=("Item", "Rating or size", "How many", "For"),
        rows=rows,
        numbers=frozenset(("How many",)),
        note="Generic words: any part with these ratings and its marks of conformity will do."
        " Spare fuses, lugs and markers are counted by common practice.",
    )


def _parts(van: Van) -> Iterator[Item]:
    own = marks(van)
    for kind, item, keys in _BOUGHT:
        for part in van.all(kind):
            words = item or _kind_of(part)
            said = ", ".join(filter(None, (_said(part, key) for key in keys)))
            yield words, said or UNKNOWN, str(_count(part)), _for(own.part(part), part)
    alarms = van.all("alarms")
    for sense in dict.fromkeys(one.choice("kind") for one in alarms):
        alike = [one for one in alarms if one.choice("kind") == sense]
        places = "; ".join(filter(None, (one.text("place") for one in alike)))
        yield _ALARMS.get(sense or "", "Alarm"), "", str(len(alike)), places


def _kind_of(part: Part) -> str:
    """Return what a bar or an isolator is called, with its pole."""
    reading = part["kind"].reading
    words = reading.text if reading else part.kind.one
    pole = part.choice("pole") if "pole" in part.values else None
    return f"{words[0].upper()}{words[1:]}" + (f", {pole}" if pole else "")


def _said(part: Part, key: str) -> str:
    reading = part[key].reading
    if reading is None or not part[key].known:
        return ""
    if key in _COUNTED:
        return f"{reading.text} {_COUNTED[key][reading.value != 1]}"
    return reading.text


def _count(part: Part) -> int:
    """Return how many are bought: of batteries and panels those in parallel and in series."""
    names = {"batteries": ("units", "series"), "panels": ("strings", "series")}
    count = 1
    for key in names.get(part.kind.id, ()):
        count *= int(part.si(key) or 1)
    return count


def _for(mark: str, part: Part) -> str:
    place = part.text("place") if "place" in part.values else ""
    return " ".join(filter(None, (mark, part.name, f"({place})" if place else "")))


def _mains(van: Van) -> Iterator[Item]:
    part = van.one("mains")
    if part is None:
        return
    own = marks(van).of_mains
    if part.choice("inlet") == "yes":
        supply = ", ".join(filter(None, (part.text("supply_voltage"), part.text("supply_limit"))))
        yield "Shore power inlet", supply or UNKNOWN, "1", own["inlet"]
    if part["breaker"].state is State.GIVEN:
        yield "Mains breaker, double-pole", part.text("breaker"), "1", own["breaker"]
    if part["residual_type"].state is not State.NONE and part.choice("inlet") == "yes":
        kind = part["residual_type"].reading
        yield "Residual-current device", kind.text if kind else UNKNOWN, "1", own["residual"]
    if part.choice("changeover") == "changeover-switch":
        yield "Changeover switch, break before make", "double-pole", "1", own["changeover"]


def _fuses(fuses: Iterable[Fuse]) -> Iterator[Item]:
    alike: dict[tuple[str, str], list[Fuse]] = {}
    for fuse in fuses:
        if fuse.rating:
            alike.setdefault((fuse.family, fuse.rating), []).append(fuse)
    for (family, rating), own in alike.items():
        what = ", ".join(filter(None, (family, rating)))
        count = sum(fuse.count for fuse in own)
        yield "Fuse", what, f"{count} + 1 spare", " ".join(fuse.mark for fuse in own)


def _cable(cut: tuple[Piece, ...]) -> Iterator[Item]:
    for size in dict.fromkeys(piece.size for piece in cut):
        own = [piece for piece in cut if piece.size == size]
        what = ", ".join(filter(None, (size.text, size.insulation)))
        yield "Cable, stranded copper", what, sum_text(own), ""


def _small(van: Van, cut: tuple[Piece, ...]) -> Iterator[Item]:
    for name in dict.fromkeys(piece.size.text for piece in cut):
        ends = sum(2 * piece.count for piece in cut if piece.size.text == name)
        size = f"for {name}" if name != UNKNOWN else "size not known"
        yield "Lugs or ferrules, crimped", size, str(ends), "both ends of each conductor"
    studs: dict[str, int] = {}
    for joint in van.all("joints"):
        stud = joint.text("stud")
        studs[stud] = studs.get(stud, 0) + int(joint.si("lugs") or 1)
    for stud, lugs in studs.items():
        size = f"for a stud {stud}" if stud else "stud not known"
        yield "Ring lugs, among them", size, str(lugs), "the joints that are listed"
    ends = sum(2 * piece.count for piece in cut)
    if ends:
        yield "Wire markers", "", str(ends), "both ends of each conductor"

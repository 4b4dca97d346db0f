"""Batteries as the source of a short: their voltage and resistance, from what the van records."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from calc.energy.battery import Chemistry
from calc.units.si import Ohms, Share, Volts
from calc.van.came import Came, unknown, volts
from calc.van.from_bank import house, rest_voltage
from calc.van.net import owner
from calc.van.once import once_for_each_van
from calc.van.record import Part, Van
from calc.van.worked import Outcome, attempted

SHEET = "fault-current"
MAKER, ESTIMATE = "maker", "estimate"


@dataclass(frozen=True, kw_only=True)
class BankSource:
    """A bank as the source of a short, at rest and full: its resistance from `least` to `most`.

    `empty` is the voltage that is left when it is nearly empty, `ageing` by how much it and its
    joints have grown worse. `place` is where its resistance is from. `each` has the least and the
    most of every battery by its id.
    """

    voltage: Volts
    least: Ohms
    most: Ohms
    empty: Volts
    ageing: Share
    place: str
    each: tuple[tuple[str, Ohms, Ohms], ...]

    @property
    def worn(self) -> Ohms:
        """Its resistance when it has grown worse."""
        return self.most * (1 + self.ageing)


def _battery_texts(one: Part, voltage: str) -> dict[str, str] | Came:
    """Return what tells the resistance of some like batteries in parallel."""
    units = one.si("units")
    if units is None:
        return unknown(f"{one.place}.units")
    texts = {"voltage": voltage, "batteries": one.text("units")}
    if one["resistance"].known:
        if not one["series"].known:
            return unknown(f"{one.place}.series")
        own = {"source_resistance": one.text("resistance"), "series": one.text("series")}
        return {**texts, "known": MAKER, **own}
    for name in ("chemistry", "capacity"):
        if not one[name].known:
            return unknown(f"{one.place}.{name}")
    if one.choice("chemistry") == "LFP":
        return unknown(f"{one.place}.resistance")
    own = {"chemistry": one.text("chemistry"), "capacity": one.text("capacity")}
    return {**texts, "known": ESTIMATE, **own}


@once_for_each_van
def bank_source(van: Van) -> BankSource | Came:
    """Return the bank as the source of a short, or the place of what is not known of it."""
    voltage = rest_voltage(van, None)
    return source_of(house(van), voltage.text) if voltage.text else voltage


def source_of(batteries: tuple[Part, ...], voltage: str) -> BankSource | Came:
    """Return batteries side by side as the source of a short, or what is not known of them."""
    found: list[Outcome] = []
    for one in batteries:
        texts = _battery_texts(one, voltage)
        if isinstance(texts, Came):
            return texts
        answer = attempted(SHEET, texts)
        if answer is None:
            return unknown(f"{one.place}.resistance")
        found.append(answer)
    if not found:
        return unknown("batteries")
    ageing = found[0].inputs["ageing"].value
    assert isinstance(ageing, float)
    each = tuple(
        (one.id, answer.values["source_low"], answer.values["source_high"])
        for one, answer in zip(batteries, found, strict=True)
    )
    return BankSource(
        voltage=float(found[0].result.short.source.voltage),
        least=1 / sum(1 / least for _, least, _ in each),
        most=1 / sum(1 / most for _, _, most in each),
        empty=found[0].values["lowest_voltage"],
        ageing=ageing,
        place=f"{batteries[0].place}.resistance",
        each=each,
    )


def other_battery(van: Van, part: Part | None) -> Part | None:
    """Return the battery, not of the house bank, that a run leaves, as the starter's; else None."""
    if part is None or "from" not in part.values:
        return None
    near = van.by_id(owner(part.text("from")))
    return near if near and near.kind.id == "batteries" and near not in house(van) else None


def block_voltage(battery: Part, of_block: Callable[[Chemistry], float]) -> Came:
    """Return a voltage [V] of a battery that is not of the house bank, by its chemistry.

    It is one of 12 V, or as many of them in series as is said.
    """
    name, series = battery.choice("chemistry"), battery.si("series")
    if name is None or series is None:
        return unknown(f"{battery.place}.{'series' if name else 'chemistry'}")
    return volts(series * of_block(Chemistry(name)), f"{battery.place}.chemistry")

"""What feeds a short at the near end of a run: the bank, and the runs between.

At its least for the highest short: a fresh full cold bank, solid cold copper, clean joints. At its
worst for the lowest: an empty, worn, warm bank, hot copper, worn joints. Each figure is one of the
worksheet of shorts, asked for each battery and each run alone; here they are only joined, end to
end or, where batteries have cables of their own, side by side.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from calc.energy.battery import Chemistry
from calc.energy.voltages import full_at_rest
from calc.units.si import Ohms, Share, Volts
from calc.van.came import Came, unknown, volts
from calc.van.chosen import conductor_of
from calc.van.from_bank import house, rest_voltage
from calc.van.legs import own_cables
from calc.van.net import MINUS, PLUS, owner
from calc.van.once import once_for_each_van
from calc.van.paths import device_before, way
from calc.van.record import Part, Van
from calc.van.worked import Outcome, attempted

SHEET = "fault-current"
MAKER, ESTIMATE = "maker", "estimate"
ONE_POLE = 0.5  # of a loop out and back


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


@dataclass(frozen=True, kw_only=True)
class Supply:
    """What feeds the near end of a run: the `bank`, and `least` and `worn` up to there.

    `runs` are those between, the nearest first. `battery` is the one that gives more than the bank
    where a run leaves another battery, such as that of the starter; else it is None.
    """

    bank: BankSource
    runs: tuple[Part, ...]
    least: Ohms
    worn: Ohms
    battery: Part | None = None


@dataclass(frozen=True, kw_only=True)
class Loop:
    """A run's own part of a loop: at its least and hot, with its joints clean and worn."""

    least: Ohms
    hot: Ohms
    joints: Ohms


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
    return _source_of(house(van), voltage.text) if voltage.text else voltage


def _source_of(batteries: tuple[Part, ...], voltage: str) -> BankSource | Came:
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


@once_for_each_van
def _loops(van: Van) -> dict[str, Loop | Came]:
    return {}


@once_for_each_van
def _supplies(van: Van) -> dict[str, Supply | Came]:
    return {}


def loop_of(van: Van, run: Part) -> Loop | Came:
    """Return what a run adds to the loop of a short behind it, or what of it is not known."""
    kept = _loops(van)
    if run.id not in kept:
        kept[run.id] = _loop_of(van, run)
    return kept[run.id]


def _loop_of(van: Van, run: Part) -> Loop | Came:
    conductor = conductor_of(van, run)
    if isinstance(conductor, Came):
        return conductor
    for name in ("length", "parallel"):
        if not run[name].known:
            return unknown(f"{run.place}.{name}")
    texts = {"conductor": conductor.name, "length": run.text("length")}
    answer = attempted(SHEET, {**texts, "parallel": run.text("parallel")})
    if answer is None:
        return unknown(f"{run.place}.length")
    values = answer.values
    return Loop(least=values["cable_least"], hot=values["cable_hot"], joints=values["joints_total"])


def own_share(run: Part) -> float:
    """Return what share of a loop, out and back, a run itself is: half where it is one pole."""
    pole = run.choice("pole") if "pole" in run.values else None
    return ONE_POLE if pole in (PLUS, MINUS) else 1.0


def weight(van: Van, part: Part, run: Part) -> float:
    """Return what share of a run's loop, out and back, lies on the way of `part`.

    Half of it for each pole that leads over it. Where no run of the minus is recorded the way back
    is taken to lie beside the plus.
    """
    there, back = way(van, part), way(van, part, MINUS)
    if back is None or not back.runs:
        return 1.0
    poles = (one for one in (there, back) if one is not None and run.id in one.ids)
    return ONE_POLE * len(tuple(poles))


def runs_before(van: Van, part: Part) -> tuple[Part, ...] | Came:
    """Return the runs between the bank and a run, the nearest first, those of the minus last."""
    there = way(van, part)
    if there is None:
        return unknown(f"{part.place}.from")
    back = way(van, part, MINUS)
    return (*there.runs, *(one for one in (back.runs if back else ()) if one.id not in there.ids))


def supply(van: Van, part: Part) -> Supply | Came:
    """Return what feeds the near end of a run, or the place of what is not known on the way."""
    kept = _supplies(van)
    if part.id not in kept:
        kept[part.id] = _supply(van, part)
    return kept[part.id]


def _supply(van: Van, part: Part) -> Supply | Came:
    """Return the stronger source of a run: the bank, or another battery that it leaves."""
    by_bank, other = _supply_by_bank(van, part), other_battery(van, part)
    if other is None:
        return by_bank
    voltage = block_voltage(other, full_at_rest)
    own = _source_of((other,), voltage.text) if voltage.text else voltage
    if isinstance(own, Came):
        return own
    alone = Supply(bank=own, runs=(), least=own.least, worn=own.worn, battery=other)
    if isinstance(by_bank, Came):
        return alone
    of_bank = by_bank.bank.voltage / by_bank.least
    return alone if own.voltage / own.least >= of_bank else by_bank


def _supply_by_bank(van: Van, part: Part) -> Supply | Came:
    bank = bank_source(van)
    if isinstance(bank, Came):
        return bank
    if (device := device_before(van, part)) is not None:
        return unknown(device.place)
    before = runs_before(van, part)
    if isinstance(before, Came):
        return before
    own = tuple(own_cables(van, part, pole) for pole in (PLUS, MINUS))
    apart = tuple(run for of_pole in own for runs in of_pole.values() for run in runs)
    cables: dict[str, Loop] = {}
    for run in {one.id: one for one in (*before, *apart)}.values():
        loop = loop_of(van, run)
        if isinstance(loop, Came):
            return loop
        cables[run.id] = loop
    back = way(van, part, MINUS)
    share = ONE_POLE if back is not None and back.runs else 1.0

    def along(source: tuple[Ohms, Ohms], runs: Iterable[Part]) -> tuple[Ohms, Ohms]:
        found = [cables[run.id] for run in runs]
        return (
            source[0] + share * sum(one.least + one.joints for one in found),
            source[1] + share * sum(one.hot + one.joints * (1 + bank.ageing) for one in found),
        )

    fed = [
        along(
            (least, most * (1 + bank.ageing)),
            (run for of_pole in own for run in of_pole.get(battery, ())),
        )
        for battery, least, most in bank.each
    ]
    together = (1 / sum(1 / least for least, _ in fed), 1 / sum(1 / worn for _, worn in fed))
    common = (
        run
        for pole, of_pole in zip((PLUS, MINUS), own, strict=True)
        if (found := way(van, part, pole)) is not None
        for run in found.runs
        if not any(run in runs for runs in of_pole.values())
    )
    least, worn = along(together, common)
    return Supply(bank=bank, runs=before, least=least, worn=worn)

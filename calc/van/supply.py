"""What feeds a short at the near end of a run: the bank, and the runs between.

At its least for the highest short: a fresh full cold bank, solid cold copper, clean joints. At its
worst for the lowest: an empty, worn, warm bank, hot copper, worn joints. Each figure is one of the
worksheet of shorts, asked for each battery and each run alone; here they are only joined, as the
van joins them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import isclose

from calc.energy.voltages import full_at_rest
from calc.units.si import Ohms, Share
from calc.van.bank_source import (
    SHEET,
    BankSource,
    bank_source,
    block_voltage,
    other_battery,
    source_of,
)
from calc.van.came import Came, unknown
from calc.van.chosen import conductor_of
from calc.van.feeding import CIRCUITS, ONE_POLE, Feeding, feeding
from calc.van.net import MINUS, PLUS
from calc.van.once import once_for_each_van
from calc.van.paths import device_before, edges, roots, way
from calc.van.record import Part, Van
from calc.van.worked import attempted


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

    @property
    def alone(self) -> bool:
        """Whether it is the whole bank, with no cable between."""
        return self.battery is None and not self.runs and isclose(self.least, self.bank.least)


@dataclass(frozen=True, kw_only=True)
class Loop:
    """A run's own part of a loop: at its least and hot, with its joints clean and worn."""

    least: Ohms
    hot: Ohms
    joints: Ohms

    def clean(self) -> Ohms:
        """At its least."""
        return self.least + self.joints

    def worn(self, ageing: Share) -> Ohms:
        """Hot, with its joints grown worse."""
        return self.hot + self.joints * (1 + ageing)


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
    own = source_of((other,), voltage.text) if voltage.text else voltage
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
    there, back = way(van, part), way(van, part, MINUS)
    assert there is not None  # or the runs before would not be known
    start, returned = there.nodes[0], back.nodes[0] if back else None
    most_direct = returned
    if back is None or not (back.runs or _return_is_said(van, part)):
        most_direct = start if start in roots(van) else None
    own_side = feeding(van, part, start, most_direct)
    beside = feeding(van, part, start, returned if back and back.runs else None)
    beyond = _beyond(van, part, start, most_direct or start)
    if own_side is None or beside is None:
        return unknown(f"{part.place}.from")
    loops: dict[str, Loop] = {}
    for run in (*own_side.cables, *beside.cables, *(beyond.cables if beyond else ())):
        loop = loop_of(van, run)
        if isinstance(loop, Came):
            return loop
        loops[run.id] = loop
    least = _resistance(van, own_side, {id: low for id, low, _ in bank.each}, Loop.clean, loops)
    worn = _resistance(
        van, beside, {id: most * (1 + bank.ageing) for id, _, most in bank.each},
        lambda loop: loop.worn(bank.ageing), loops,
    )  # fmt: skip
    if beyond is not None:
        own = loop_of(van, part)
        through = 0.0 if isinstance(own, Came) else ONE_POLE * own.clean()
        other = _resistance(van, beyond, {id: low for id, low, _ in bank.each}, Loop.clean, loops)
        least = min(least, other + through)
    return Supply(bank=bank, runs=before, least=least, worn=worn)


def _return_is_said(van: Van, part: Part) -> bool:
    """Return whether the record says where the minus of a run ends, and no plan leaves it open."""
    return any(one.pole == MINUS and "start" not in one.assumed for one in van.net.of(part))


def _beyond(van: Van, part: Part, start: str, minus: str) -> Feeding | None:
    """Return what feeds a short before a cable's fuse from behind, through the cable itself."""
    if part.kind.id == CIRCUITS:
        return None
    ends = (one for one in edges(van)[PLUS] if one.run is part)
    far = next((one.far if one.near == start else one.near for one in ends), None)
    return None if far is None else feeding(van, part, far, minus)


@once_for_each_van
def _resistances(van: Van) -> dict[object, Ohms]:
    return {}


def _resistance(
    van: Van,
    network: Feeding,
    of_battery: Mapping[str, Ohms],
    of_loop: Callable[[Loop], Ohms],
    loops: Mapping[str, Loop],
) -> Ohms:
    """Return what a network has, worked once for all runs that start at the same place."""
    kept = _resistances(van)
    ohms = {run.id: of_loop(loops[run.id]) for run in network.cables}
    key = (network.key, *of_battery.values(), *ohms.values())
    if key not in kept:
        kept[key] = network.resistance(of_battery, lambda run: ohms[run.id])
    return kept[key]

"""Facts of a schedule as a whole: what flows where, which ends are fused, and fuses in order.

None means that something is not known: then no rule of the whole fires on it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.electrical.interrupting import InterruptingDuty, interrupting_duty
from calc.electrical.opening import Fuse
from calc.units.si import Amperes, Count
from calc.van.bank_source import bank_source
from calc.van.came import Came
from calc.van.currents import Flow, flow_at, flow_over, load_current
from calc.van.from_bank import highest_voltage, house
from calc.van.from_fuses import highest_fault, upstream
from calc.van.fusing import fused
from calc.van.judging import Fact
from calc.van.net import MINUS, PLUS
from calc.van.record import Part, Van
from calc.van.row import Row
from calc.van.running import LADDER
from calc.van.schedule import schedule
from calc.van.values import State

CHARGED_BY = ("regulators", "shore")  # whose current has a limit of its own


@dataclass(frozen=True, kw_only=True)
class Carrying(Fact):
    """A bar, or the shunt: its `rating` and the `most` that may flow through it.

    `drawn` and `charged` are all its loads and all its chargers together, of which the larger
    flows. Where something of them is not known, `most` counts what is.
    """

    rating: Amperes | None
    drawn: Amperes
    charged: Amperes
    most: Amperes


@dataclass(frozen=True, kw_only=True)
class Breaking(Fact):
    """A breaker: what it can `interrupt`, and the highest short at its place."""

    interrupts: Amperes | None
    fault: Amperes | None


@dataclass(frozen=True, kw_only=True)
class BatteryFuse(Fact):
    """The fuse at the post of each battery: `none` tells that there is none, `duty` its work.

    It breaks what its own battery gives, or what the `others` side by side give into a short in it.
    """

    units: Count | None
    none: bool
    duty: InterruptingDuty | None


@dataclass(frozen=True, kw_only=True)
class Ends(Fact):
    """A run with a source at its far end as well: whether it is fused there.

    `battery` tells that the source is a battery, else it is a charger, whose current is limited.
    """

    battery: bool
    fused: bool | None
    limit: Amperes | None
    ampacity: Amperes | None


@dataclass(frozen=True, kw_only=True)
class InOrder(Fact):
    """Two fuses one behind the other of which one's family is not known: their ratings."""

    fuse: Amperes
    ahead: Amperes
    ahead_part: str


def _carrying(part: Part, flow: Flow) -> Carrying:
    return Carrying(
        at=part.place,
        part=part.name,
        rating=part.si("rating"),
        drawn=flow.drawn,
        charged=flow.charged,
        most=flow.most,
    )


def carrying(van: Van) -> Iterator[Carrying]:
    """Yield every bar of which the pole is known, and the shunt, with what flows through it."""
    for bar in van.all("bars"):
        if bar["pole"].known:
            yield _carrying(bar, flow_at(van, bar))
    shunt = van.one("shunt")
    if shunt is not None:
        line = van.by_id(shunt.text("in_line"))
        flow = flow_over(van, line) if line is not None else flow_at(van, shunt, MINUS)
        yield _carrying(shunt, flow)


def breaking(van: Van) -> Iterator[Breaking]:
    """Yield every breaker in the line of a run that the bank feeds."""
    for one in van.all("isolators"):
        line = van.by_id(one.text("in_line"))
        if one.choice("kind") != "breaker" or line is None or "conductor" not in line.values:
            continue
        fault = highest_fault(van, line)
        yield Breaking(
            at=one.place,
            part=one.name,
            interrupts=one.si("interrupting"),
            fault=fault if isinstance(fault, float) else None,
        )


def _duty(van: Van, one: Part, units: float) -> InterruptingDuty | None:
    """Return the work of the fuse at each of some like batteries, None where it is not known.

    A short on its one side is fed by its own battery, one on the other by all the others.
    """
    bank, voltage, rating = bank_source(van), highest_voltage(van, None), one.si("fuse")
    if isinstance(bank, Came) or voltage.si is None or rating is None:
        return None
    least = next(least for id, least, _ in bank.each if id == one.id)
    own = bank.voltage / least / units
    return interrupting_duty(
        fuse=Fuse(fused(van, one).family, rating),
        voltage=voltage.si,
        fault_current=max(own, bank.voltage / bank.least - own),
    )


def battery_fuses(van: Van) -> Iterator[BatteryFuse]:
    """Yield the fuses of the house bank's batteries."""
    for one in house(van):
        units = one.si("units")
        yield BatteryFuse(
            at=one.place,
            part=one.name,
            units=None if units is None else units + len(house(van)) - 1,
            none=one["fuse"].state is State.NONE,
            duty=_duty(van, one, units) if units else None,
        )


def _far_fused(van: Van, part: Part, at: set[str]) -> bool | None:
    """Return whether a run is fused at both ends: by itself, or by the fuses of `at` its ends."""
    batteries = [one for one in van.all("batteries") if one.id in at]
    if len(batteries) > 1 and all(one["fuse"].known for one in batteries):
        return True
    if part["fuse"].state is State.NONE:
        return False
    said = part.choice("fused")
    return None if said is None else said == "both-ends"


def ends(van: Van) -> Iterator[Ends]:
    """Yield the runs with a source at their far end; its worksheet judges the alternator's."""
    batteries = {one.id for one in van.all("batteries")}
    for one in van.net.conductors:
        between = one.pole == PLUS and {*one.ends} <= batteries and one.part.kind.id == "cables"
        charger = one.pole == PLUS and one.part.kind.id in CHARGED_BY
        if not between and not charger:
            continue
        row = schedule(van).of(one.part)
        limit = load_current(van, one.part)
        yield Ends(
            at=one.part.place,
            part=one.part.name,
            battery=between,
            fused=_far_fused(van, one.part, set(one.ends)),
            limit=limit.si if limit else None,
            ampacity=row.ampacity if row else None,
        )


def in_order(van: Van) -> Iterator[InOrder]:
    """Yield fuses one behind the other that the worksheet of two fuses could not judge."""
    for row in schedule(van).rows:
        ahead = upstream(van, row.part)
        rating = fused(van, ahead).rating if ahead is not None else None
        if row.fuse is None or rating is None or ahead is None or _laddered(row):
            continue
        yield InOrder(
            at=row.part.place,
            part=row.part.name,
            fuse=row.fuse,
            ahead=rating,
            ahead_part=ahead.name,
        )


def _laddered(row: Row) -> bool:
    return any(one.sheet == LADDER for one in row.judged)

"""Selectivity: which of two fuses in series opens first.

In scope: direct current, a fault behind both, from cold, by published gates (`opening`) or by the
makers' I²t. Out of scope: breakers, electronic switches, arcs, fuses that are warm.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated

from calc.electrical.interrupting import InterruptingDuty, interrupting_duty
from calc.electrical.opening import (
    Fuse,
    Opening,
    Trust,
    carries,
    gates,
    i2t_tells,
    only_from_memory,
    opening,
)
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Number, Tag, Volts

# Upstream to downstream; a fuse's I²t grows with about the square of it. Common practice, no source
FAR_APART: Annotated[Number, Tag("ratio of two fuses' ratings whose order is not doubted")] = 5.0


class Order(Enumeration):
    """Whether the downstream fuse opens first."""

    CERTAIN = "opens-first-for-certain"
    NOT_CERTAIN = "not-certain"
    FROM_MEMORY = "not-certain-from-memory"
    NO_CURVE = "no-published-curve"
    WILL_NOT = "will-not"


class LetThrough(Enumeration):
    """What the makers' I²t tells of the order."""

    PROVES = "proves-it"
    DOES_NOT_PROVE = "does-not-prove-it"
    OF_LARGER_FAULT = "belongs-to-a-larger-fault"
    NOT_GIVEN = "not-given"


@dataclass(frozen=True, kw_only=True)
class Ordered:
    """An order, the `trust` that it rests on, and the current that decides.

    That is the highest at which the order is not certain, else the highest of all.
    """

    order: Order
    trust: Trust
    current: Amperes


@dataclass(frozen=True, kw_only=True)
class Span:
    """Fault currents from `low` to `high`."""

    low: Amperes
    high: Amperes


@dataclass(frozen=True, kw_only=True)
class Selectivity:
    """Two fuses in series in a fault behind both: which opens first, and what that rests on.

    `lowest_fault` is None where only the highest is known, and `lowest` the lowest that is judged.
    The openings tell when each opens at the current that `decides`; upstream carries
    `other_load` besides. `certain` is the widest span over which gates make the order certain.
    `by_let_through` tells that it is certain by the makers' I²t alone.
    """

    downstream_duty: InterruptingDuty
    upstream_duty: InterruptingDuty
    voltage: Volts
    fault_current: Amperes
    lowest_fault: Amperes | None
    lowest: Amperes
    other_load: Amperes
    order: Order
    trust: Trust
    decides: Amperes
    downstream_opening: Opening
    upstream_opening: Opening
    certain: Span | None
    let_through: LetThrough
    by_let_through: bool

    @property
    def downstream_first(self) -> bool:
        """Whether the downstream fuse opens first for certain."""
        return self.order is Order.CERTAIN

    @property
    def carried(self) -> bool:
        """Whether the downstream fuse carries the lowest fault for hours."""
        return carries(self.downstream_duty.fuse, self.lowest)

    @property
    def overloaded(self) -> bool:
        """Whether the upstream fuse carries more than its rating before there is a fault."""
        return not at_most(self.other_load, self.upstream_duty.fuse.rating)

    @property
    def reversed_sizes(self) -> bool:
        """Whether the downstream fuse is the larger of the two."""
        return not at_most(self.downstream_duty.fuse.rating, self.upstream_duty.fuse.rating)

    @property
    def far_apart(self) -> bool:
        """Whether the upstream rating, less what it carries besides, is so much the larger."""
        spare = self.upstream_duty.fuse.rating - self.other_load
        return at_least(spare, FAR_APART * self.downstream_duty.fuse.rating)

    @property
    def in_doubt(self) -> bool:
        """Whether nothing shows which opens first."""
        return self.order in (Order.NOT_CERTAIN, Order.FROM_MEMORY, Order.NO_CURVE)

    @property
    def by_data_sheet(self) -> bool:
        """Whether the order is certain by makers' data sheets, not by a standard itself."""
        return (
            self.downstream_first and not self.by_let_through and self.trust is not Trust.STANDARD
        )

    @property
    def highest_marked(self) -> InterruptingDuty | None:
        """Of the fuses that must be marked for a higher voltage, the one marked highest."""
        marked = [
            duty
            for duty in (self.downstream_duty, self.upstream_duty)
            if duty.marked_voltage is not None
        ]
        return max(marked, key=lambda duty: duty.marked_voltage or 0.0, default=None)


def selectivity(
    *,
    downstream: Fuse,
    upstream: Fuse,
    fault_current: float,
    lowest_fault: float | None,
    voltage: float,
    other_load: float,
    downstream_clearing: float | None,
    upstream_melting: float | None,
    downstream_printed: float | None = None,
    upstream_printed: float | None = None,
) -> Selectivity:
    """Return which of two fuses in series opens first in a fault behind both.

    `fault_current` and `lowest_fault` [A] are the ends of what a fault may pass, `voltage` [V] the
    circuit's highest, `other_load` [A] what upstream carries besides. `downstream_clearing` is the
    most I²t [A²·s] that downstream lets through in all at the highest fault, `upstream_melting` the
    least that melts upstream, where they are known; `downstream_printed` and `upstream_printed` [V]
    the voltage ratings on the fuses, where they were read. Source: gates (`opening`), row by row.
    """
    lowest = min(lowest_fault, fault_current) if lowest_fault is not None else fault_current
    found = first_to_open(
        downstream=downstream,
        upstream=upstream,
        low=lowest,
        high=fault_current,
        other_load=other_load,
    )
    let_through = LetThrough.NOT_GIVEN
    if downstream_clearing is not None and upstream_melting is not None:
        let_through = by_let_through(
            downstream=downstream,
            clearing=downstream_clearing,
            melting=upstream_melting,
            current=fault_current,
            other_load=other_load,
        )
    proved = (
        let_through is LetThrough.PROVES
        and at_least(lowest, fault_current)
        and found.order not in (Order.CERTAIN, Order.WILL_NOT)
    )
    order = Order.CERTAIN if proved else found.order
    decides = fault_current if proved else found.current
    trust = Trust.MEMORY if order is Order.FROM_MEMORY else Trust.DATA_SHEET
    return Selectivity(
        downstream_duty=interrupting_duty(
            fuse=downstream,
            voltage=voltage,
            fault_current=fault_current,
            printed=downstream_printed,
        ),
        upstream_duty=interrupting_duty(
            fuse=upstream,
            voltage=voltage,
            fault_current=fault_current,
            printed=upstream_printed,
        ),
        voltage=voltage,
        fault_current=fault_current,
        lowest_fault=lowest_fault,
        lowest=lowest,
        other_load=other_load,
        order=order,
        trust=found.trust,
        decides=decides,
        downstream_opening=opening(downstream, decides, trust),
        upstream_opening=opening(upstream, decides + other_load, trust),
        certain=certain_between(downstream=downstream, upstream=upstream, other_load=other_load),
        let_through=let_through,
        by_let_through=proved,
    )


def currents_to_try(
    *, low: float, high: float, fuses: tuple[tuple[Fuse, float], ...]
) -> tuple[float, ...]:
    """Return currents [A] from `low` to `high` that between them show every change of opening time.

    Each of `fuses` comes with the current [A] that it carries besides. A time changes only at a
    gate, so the gates and one current between each two of them will do.
    """
    steps = {low, high}
    for fuse, besides in fuses:
        at = (gate.multiple * fuse.rating - besides for gate in gates(fuse))
        steps |= {current for current in at if low < current < high}
    ordered = sorted(steps)
    between = [(one + other) / 2 for one, other in pairwise(ordered)]
    return tuple(sorted((*ordered, *between)))


def first_to_open(
    *, downstream: Fuse, upstream: Fuse, low: float, high: float, other_load: float
) -> Ordered:
    """Return whether `downstream` opens before `upstream` at each current, `low` to `high` [A].

    Both carry the fault, upstream also `other_load` [A]. CERTAIN: downstream's latest is no later
    than upstream's earliest. WILL_NOT: at some current upstream's latest is sooner than
    downstream's earliest. Gates known from memory can bring no more than FROM_MEMORY.
    """
    if not gates(downstream) or not gates(upstream):
        return Ordered(order=Order.NO_CURVE, trust=Trust.DATA_SHEET, current=high)
    tried = currents_to_try(low=low, high=high, fuses=((downstream, 0.0), (upstream, other_load)))
    unsure = high
    for trust in Trust:
        remembered = trust is Trust.MEMORY
        downs = [opening(downstream, current, trust) for current in tried]
        ups = [opening(upstream, current + other_load, trust) for current in tried]
        pairs = list(zip(tried, downs, ups, strict=True))
        wrong = [current for current, down, up in pairs if up.before(down)]
        if wrong:
            order = Order.FROM_MEMORY if remembered else Order.WILL_NOT
            return Ordered(order=order, trust=trust, current=max(wrong))
        if all(down.before(up) for _, down, up in pairs):
            order = Order.FROM_MEMORY if remembered else Order.CERTAIN
            return Ordered(order=order, trust=trust, current=high)
        if trust is Trust.DATA_SHEET:
            unsure = max(current for current, down, up in pairs if not down.before(up))
    if only_from_memory(downstream) or only_from_memory(upstream):
        return Ordered(order=Order.FROM_MEMORY, trust=Trust.MEMORY, current=unsure)
    return Ordered(order=Order.NOT_CERTAIN, trust=Trust.DATA_SHEET, current=unsure)


def certain_between(*, downstream: Fuse, upstream: Fuse, other_load: float) -> Span | None:
    """Return the widest span of fault currents over which gates seen in a text make certain
    that `downstream` opens first, or None where there is none."""
    gated = [gate.multiple * downstream.rating for gate in gates(downstream)]
    gated += [gate.multiple * upstream.rating - other_load for gate in gates(upstream)]
    steps = [current for current in gated if current > 0]
    if not steps:
        return None
    best: Span | None = None
    start: float | None = None
    for current in currents_to_try(
        low=min(steps), high=max(steps), fuses=((downstream, 0.0), (upstream, other_load))
    ):
        if opening(downstream, current).before(opening(upstream, current + other_load)):
            start = current if start is None else start
            if best is None or current / start >= best.high / best.low:
                best = Span(low=start, high=current)
        else:
            start = None
    return best


def by_let_through(
    *, downstream: Fuse, clearing: float, melting: float, current: float, other_load: float
) -> LetThrough:
    """Return whether one fuse clears before another melts, by their I²t [A²·s] at `current` [A].

    `clearing` is the most that the `downstream` fuse lets through in all, `melting` the least that
    melts the upstream one, which carries `other_load` [A] more and gets that much more I²t in the
    same time.
    """
    if not i2t_tells(fuse=downstream, let_through=clearing, current=current):
        return LetThrough.OF_LARGER_FAULT
    upstream_gets = clearing * ((current + other_load) / current) ** 2
    return LetThrough.PROVES if upstream_gets < melting else LetThrough.DOES_NOT_PROVE

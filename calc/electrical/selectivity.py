"""When a fuse opens, as far as published gates tell, and which of two fuses opens first.

A gate is a share of the rated current with the least and the most time to opening. More current
never opens a fuse later. So at any current the fuse opens no later than at the last gate below it,
and no sooner than at the next gate above; beyond the last gate nothing is known but that. Gates
are not interpolated.
"""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from calc.electrical.fuses import families
from calc.tables import FROM_MEMORY, table
from calc.units.compare import at_least, at_most

ENERGY_HOLDS = 0.1  # s: below it a fuse's I²t is a constant, above it the gates tell; from memory
ENERGY_MULTIPLE = 10  # times the rated current, at which I²t is stated; common practice, no source
HOLDS = 4 * 3600.0  # s: a fuse that holds a current for that long does not guard against it;
# the shortest time for which any family is asked to hold 110 % (UL 248-14)

CERTAIN, WILL_NOT, NO_CURVE = "opens first for certain", "will not", "no published curve"
NOT_CERTAIN, MEMORY = "not certain", "not certain (from memory)"

STANDARD, SEEN, REMEMBERED = range(3)
"""How far gates are trusted: a standard's own, those of makers' data sheets too, all."""


@dataclass(frozen=True)
class Gate:
    """Opening time [s] at `percent` of the rated current: at least, and at most, or None.

    `trust` says what it rests on.
    """

    percent: float
    least: float | None
    most: float | None
    trust: int


@dataclass(frozen=True)
class Band:
    """Opening time [s] of a fuse at one current: `earliest`, nought where it is not known, and
    `latest`, None where it is not."""

    earliest: float
    latest: float | None


@dataclass(frozen=True)
class Fuse:
    """A fuse by its family's name and its rated current [A]."""

    family: str
    rating: float

    def percent(self, current: float) -> float:
        """Return `current` [A] as a percentage of the rated current."""
        return 100 * current / self.rating

    def band(self, current: float, trust: int = SEEN) -> Band:
        """Return when this fuse opens at `current` [A], by gates trusted as far as `trust`."""
        percent = self.percent(current)
        known = [gate for gate in gates(self) if gate.trust <= trust]
        most = [g.most for g in known if g.most is not None and at_most(g.percent, percent)]
        least = [g.least for g in known if g.least is not None and at_least(g.percent, percent)]
        return Band(max(least, default=0.0), min(most, default=None))


@cache
def _rows() -> dict[str, tuple[tuple[float, float, Gate], ...]]:
    found: dict[str, list[tuple[float, float, Gate]]] = {}
    for row in table("fuse_gates").rows:
        gate = Gate(
            float(row["percent"]),
            float(row["least_s"]) if row["least_s"] else None,
            float(row["most_s"]) if row["most_s"] else None,
            REMEMBERED
            if row["confidence"] == FROM_MEMORY
            else STANDARD
            if row["basis"] == "standard"
            else SEEN,
        )
        found.setdefault(row["family"], []).append((float(row["from_a"]), float(row["to_a"]), gate))
    return {name: tuple(rows) for name, rows in found.items()}


def gates(fuse: Fuse) -> tuple[Gate, ...]:
    """Return the gates published for `fuse`: for its family, and for its rated current."""
    rows = _rows().get(fuse.family, ())
    return tuple(
        gate for low, high, gate in rows if at_most(low, fuse.rating) and at_most(fuse.rating, high)
    )


def only_from_memory(fuse: Fuse) -> bool:
    """Return whether gates are known for `fuse`, and all of them from memory."""
    known = gates(fuse)
    return bool(known) and all(gate.trust == REMEMBERED for gate in known)


@cache
def family_names() -> tuple[str, ...]:
    """Return every family that has ratings or gates, those with ratings first."""
    return tuple(dict.fromkeys((*(family.name for family in families()), *_rows())))


def currents_to_try(
    *, low: float, high: float, fuses: tuple[tuple[Fuse, float], ...]
) -> tuple[float, ...]:
    """Return currents [A] from `low` to `high` that between them show every step of the bands.

    Each of `fuses` comes with the current [A] that it carries besides. A band changes only at a
    gate, so the gates and one current between each two of them will do.
    """
    steps = {low, high}
    for fuse, besides in fuses:
        at = (gate.percent / 100 * fuse.rating - besides for gate in gates(fuse))
        steps |= {current for current in at if low < current < high}
    ordered = sorted(steps)
    between = [(one + other) / 2 for one, other in pairwise(ordered)]
    return tuple(sorted((*ordered, *between)))


def carries(fuse: Fuse, current: float) -> bool:
    """Return whether `fuse` does not clear `current` [A]: no more than its rating, or it holds it
    for hours by its gates."""
    return at_most(current, fuse.rating) or at_least(fuse.band(current).earliest, HOLDS)


@dataclass(frozen=True)
class Order:
    """Whether the downstream fuse opens first, in words, with the `trust` that it rests on and the
    `current` [A] that decides: the highest at which it is not certain, else the highest of all."""

    words: str
    trust: int
    current: float


def first_to_open(
    *, downstream: Fuse, upstream: Fuse, low: float, high: float, besides: float
) -> Order:
    """Return whether `downstream` opens before `upstream` at each current, `low` to `high` [A].

    Both carry the fault, upstream also `besides` [A]. CERTAIN: downstream's latest is no later than
    upstream's earliest. WILL_NOT: at some current upstream's latest is sooner than downstream's
    earliest. Gates known from memory can bring no more than MEMORY.
    """
    if not gates(downstream) or not gates(upstream):
        return Order(NO_CURVE, SEEN, high)
    tried = currents_to_try(low=low, high=high, fuses=((downstream, 0.0), (upstream, besides)))
    unsure = high
    for trust in (STANDARD, SEEN, REMEMBERED):
        bands = [(i, downstream.band(i, trust), upstream.band(i + besides, trust)) for i in tried]
        reversed_ = [i for i, down, up in bands if _before(up, down)]
        if reversed_:
            return Order(MEMORY if trust == REMEMBERED else WILL_NOT, trust, max(reversed_))
        if all(_before(down, up) for _, down, up in bands):
            return Order(MEMORY if trust == REMEMBERED else CERTAIN, trust, high)
        if trust == SEEN:
            unsure = max(i for i, down, up in bands if not _before(down, up))
    remembered = only_from_memory(downstream) or only_from_memory(upstream)
    return Order(MEMORY if remembered else NOT_CERTAIN, REMEMBERED if remembered else SEEN, unsure)


def _before(first: Band, second: Band) -> bool:
    return first.latest is not None and first.latest <= second.earliest


def certain_between(
    *, downstream: Fuse, upstream: Fuse, besides: float
) -> tuple[float, float] | None:
    """Return the widest span of fault currents [A] over which gates seen in a text make certain
    that `downstream` opens first, or None where there is none."""
    gated = [gate.percent / 100 * downstream.rating for gate in gates(downstream)]
    gated += [gate.percent / 100 * upstream.rating - besides for gate in gates(upstream)]
    steps = [current for current in gated if current > 0]
    if not steps:
        return None
    best: tuple[float, float] | None = None
    start: float | None = None
    for current in currents_to_try(
        low=min(steps), high=max(steps), fuses=((downstream, 0.0), (upstream, besides))
    ):
        if _before(downstream.band(current), upstream.band(current + besides)):
            start = current if start is None else start
            if best is None or current / start >= best[1] / best[0]:
                best = start, current
        else:
            start = None
    return best


def energy_tells(*, fuse: Fuse, energy: float, current: float) -> bool:
    """Return whether `energy` [A²·s] can be what `fuse` lets through at `current` [A].

    Not where the current is below ten times the rating, or would take more than a tenth of a
    second for it: heat leaves the fuse meanwhile, and its I²t is larger than published.
    """
    return at_least(current, ENERGY_MULTIPLE * fuse.rating) and at_most(
        energy, ENERGY_HOLDS * current**2
    )


def by_energy(
    *, downstream: Fuse, clearing: float, melting: float, current: float, besides: float
) -> bool | None:
    """Return whether one fuse clears before another melts, by their I²t [A²·s] at `current` [A].

    `clearing` is the most that the `downstream` fuse lets through in all, `melting` the least that
    melts the upstream one, which carries `besides` [A] more and gets that much more I²t in the same
    time. None where the figure belongs to a larger fault.
    """
    if not energy_tells(fuse=downstream, energy=clearing, current=current):
        return None
    return clearing * ((current + besides) / current) ** 2 < melting

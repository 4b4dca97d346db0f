"""Where a network with loads of constant power comes to rest.

Newton's method; beside its current, each such load is put in with its slope, the negative
conductance -P/u². With these slopes the network is positive definite at the operating point that
stands, and at no other: the co-content of the network is convex wherever it is, so there is only
one such point, by whichever way it is found.

The way begins without these loads. Where none of them lifts the voltage of another, each step comes
down on the operating point from above, with no damping; a step that finds the network no longer
positive definite proves that there is none. Where one does lift another (loads in series across a
divided bank), the powers are also tried in steps.
"""

from dataclasses import dataclass, field
from math import inf

from calc.electrical.linear import Rows, elimination_order, node_voltages

_STEPS = 90  # at the very edge each step only halves the distance
_FLOOR, _CLOSE = 1e-15, 1e-13  # share of a node's currents: balanced; as good as digits allow
_ROUGH = 1e-6  # and this is good enough to begin from
_FINEST = 2.0**-10  # share of the power by which it is raised, at the least
_EDGE = 1e-9  # share to which the most power is searched


@dataclass(frozen=True)
class State:
    """Voltages [V] of the nodes, ground last; currents [A] of the branches; `across` [V] the ports.

    Currents and ports are carried on from step to step, not taken from node voltages at the end:
    what a joint of a microohm drops is lost in the digits of 12 V.
    """

    voltages: list[float]
    currents: list[float]
    across: list[float]


@dataclass(frozen=True)
class Unfed:
    """The loads left without, by number, and the `most` power [W] for it if it is only one."""

    loads: list[int]
    most: float | None


@dataclass
class Circuit:
    """A network by numbers: nodes from 0, ground being number `size`.

    Branches are (start, end, conductance [S], e.m.f. [V] towards the end); steady loads are (plus,
    minus, current [A]); ports, where loads of constant power are connected, are (plus, minus).
    """

    size: int
    branches: list[tuple[int, int, float, float]]
    steady: list[tuple[int, int, float]]
    ports: list[tuple[int, int]]
    rows: Rows = field(init=False)
    order: list[int] = field(init=False)

    def __post_init__(self) -> None:
        self.rows = [{} for _ in range(self.size + 1)]
        for start, end, conductance, _ in self.branches:
            _connect(self.rows, start, end, conductance)
        met = [set(row) for row in self.rows]
        for plus, minus in self.ports:
            met[plus].add(minus)
            met[minus].add(plus)
        self.order = elimination_order([others - {self.size} for others in met[:-1]])

    def unloaded(self, floor: float = _FLOOR) -> State:
        """Return the state with the loads of constant power switched off.

        Raises ArithmeticError where the figures are so far apart that currents do not balance.
        """
        currents = [conductance * emf for _, _, conductance, emf in self.branches]
        nothing = [0.0] * len(self.ports)
        found = self.newton(State([0.0] * (self.size + 1), currents, nothing), nothing, floor)
        if found is None:
            raise ArithmeticError
        return found

    def newton(self, state: State, powers: list[float], floor: float = _FLOOR) -> State | None:
        """Return the state that Newton's method finds from `state`, or None.

        `powers` [W] are those of the ports; a port of 0 W may stand at any voltage. At each node
        currents balance to the share `floor` of themselves, or as closely as digits allow.
        """
        last = inf
        for _ in range(_STEPS):
            over, gross = [0.0] * (self.size + 1), [0.0] * (self.size + 1)
            rows = [row.copy() for row in self.rows]
            for (start, end, _, _), current in zip(self.branches, state.currents, strict=True):
                _pass(over, gross, start, end, current)
            for plus, minus, current in self.steady:
                _pass(over, gross, plus, minus, current)
            for (plus, minus), across, power in zip(self.ports, state.across, powers, strict=True):
                if power:
                    if not across > 0:
                        return None
                    _pass(over, gross, plus, minus, power / across)
                    _connect(rows, plus, minus, -power / across / across)
            del over[self.size]
            small = 1e-6 * max(gross) + 1e-30  # a dead end has only the dust of rounding
            worst = max(abs(o) / (g + small) for o, g in zip(over, gross, strict=False))
            if worst <= floor or last <= worst <= _CLOSE:
                return state
            last = worst
            moved = self._solved(rows, over)
            if moved is None:
                return None
            state = self._moved(state, moved)
        return None

    def _solved(self, rows: Rows, pushed: list[float]) -> list[float] | None:
        """Return the voltages [V], ground last, that currents pushed into the nodes make."""
        grounded = [row.pop(self.size, 0.0) for row in rows[: self.size]]
        found = node_voltages(self.order, rows, grounded, pushed)
        return None if found is None else [*found, 0.0]

    def _moved(self, state: State, by: list[float]) -> State:
        currents, across = state.currents, state.across
        return State(
            [voltage + more for voltage, more in zip(state.voltages, by, strict=True)],
            [
                current + conductance * (by[start] - by[end])
                for current, (start, end, conductance, _) in zip(
                    currents, self.branches, strict=True
                )
            ],
            [u + (by[p] - by[m]) for u, (p, m) in zip(across, self.ports, strict=True)],
        )

    def transfer_resistance(self, port: int) -> list[float]:
        """Return the transfer resistance [ohm] from one port to each: its volts for 1 A pushed in.

        The sources are at rest. At that port itself it is the network's own resistance.
        """
        plus, minus = self.ports[port]
        pushed = [0.0] * (self.size + 1)
        pushed[plus], pushed[minus] = 1.0, -1.0
        found = self._solved([row.copy() for row in self.rows], pushed[: self.size])
        assert found is not None  # without negative slopes every sum is positive
        return [found[p] - found[m] for p, m in self.ports]

    def never_lift(self) -> bool:
        """Return whether no load of constant power raises the voltage of another."""
        for port in range(len(self.ports)):
            found = self.transfer_resistance(port)
            if min(found) < -_CLOSE * found[port]:
                return False
        return True

    def raised(
        self, state: State, held: list[float], wanted: list[float], finest: float
    ) -> State | None:
        """Return the state when the powers `held` [W] at `state` are raised to those `wanted`.

        It is tried at once, then in steps no smaller than the share `finest`.
        """
        reached, step = 0.0, 1.0
        while reached < 1 and step >= finest:
            share = min(1.0, reached + step)
            powers = [h + share * (w - h) for h, w in zip(held, wanted, strict=True)]
            found = self.newton(state, powers)
            if found is None:
                step /= 2
            else:
                state, reached, step = found, share, step * 2
        return state if reached >= 1 else None


def _connect(rows: Rows, one: int, other: int, conductance: float) -> None:
    rows[one][other] = rows[one].get(other, 0.0) + conductance
    rows[other][one] = rows[other].get(one, 0.0) + conductance


def _pass(over: list[float], gross: list[float], start: int, end: int, current: float) -> None:
    over[start] -= current
    over[end] += current
    gross[start] += abs(current)
    gross[end] += abs(current)


def solve(circuit: Circuit, powers: list[float]) -> State | Unfed:
    """Return the operating point, or which loads of constant power cannot be fed.

    `powers` [W] are those of the ports. The smallest is fed first; those for which too little is
    left are named. Raises ArithmeticError where digits run out.
    """
    found = circuit.newton(circuit.unloaded(_ROUGH), powers)
    if found is not None:
        return found
    state, fed, left = circuit.unloaded(), [0.0] * len(powers), []
    finest = 1.0
    if not circuit.never_lift():
        finest = _FINEST
        found = circuit.raised(state, fed, powers, finest)
        if found is not None:
            return found
    for port in sorted(range(len(powers)), key=powers.__getitem__):
        wanted = fed[:]
        wanted[port] = powers[port]
        found = circuit.raised(state, fed, wanted, finest)
        if found is None:
            left.append(port)
        else:
            state, fed = found, wanted
    if not left:
        return state
    most = _most(circuit, state, fed, powers, left[0]) if len(left) == 1 else None
    return Unfed(sorted(left), most)


def _most(
    circuit: Circuit, state: State, fed: list[float], powers: list[float], port: int
) -> float:
    """Return the most power [W] that a load at `port` can take beside those that are `fed`.

    Alone it is u²/4R, with u the voltage before it takes any and R the resistance of the network
    there (maximum power transfer). Beside other loads of constant power it is less, and searched.
    """
    across = state.across[port]
    if across <= 0:
        return 0.0
    alone = across * across / 4 / circuit.transfer_resistance(port)[port]
    if not any(fed):
        return alone
    reached, failed = 0.0, min(alone, powers[port])
    near = _EDGE * failed
    while failed - reached > near:
        tried = fed[:]
        tried[port] = (reached + failed) / 2
        found = circuit.newton(state, tried)
        if found is None:
            failed = tried[port]
        else:
            state, reached = found, tried[port]
    return reached

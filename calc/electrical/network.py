"""A direct-current network in its steady state: node voltages, currents, power and heat.

In scope: sources of an e.m.f. behind a resistance, resistors (cables, joints, fuses, resistive
loads), loads that take a constant current or a constant power.
Out of scope: what changes with time (inductance, a source that runs down), resistances that change
with their own heat, and whether a part bears its current.

A load of constant power takes more current the less voltage it gets, so there may be no operating
point at all, or two. The one that stands has the higher voltage: there a little less current gives
a little more voltage. `calc.electrical.operating` finds it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isfinite

from calc.electrical import operating
from calc.electrical.operating import Circuit, State, Unfed
from calc.units.si import Amperes, Ohms, Volts, Watts

LEAST, MOST = 1e-12, 1e12
"""The smallest resistance or power, and the largest figure of any kind."""

_TOO_FAR = "The values are too far apart to calculate with."
_BALANCE = 1e-9  # share of all power to which taken and delivered must agree


@dataclass(frozen=True)
class Source:
    """An e.m.f. of `voltage` [V] from `minus` to `plus`, behind its `resistance` [ohm]."""

    name: str
    plus: str
    minus: str
    voltage: Volts
    resistance: Ohms


@dataclass(frozen=True)
class Resistor:
    """A cable, joint, fuse or resistive load of `resistance` [ohm] from `a` to `b`."""

    name: str
    a: str
    b: str
    resistance: Ohms


@dataclass(frozen=True)
class CurrentLoad:
    """A constant `current` [A] through it from `plus` to `minus`; a charger's is negative."""

    name: str
    plus: str
    minus: str
    current: Amperes


@dataclass(frozen=True)
class PowerLoad:
    """A load that takes the same `power` [W] at any voltage from `plus` to `minus` above zero."""

    name: str
    plus: str
    minus: str
    power: Watts


Part = Source | Resistor | CurrentLoad | PowerLoad


class BadNetwork(ValueError):
    """What was given is not a network that can be worked; the text says why."""


class NoOperatingPoint(ValueError):
    """The loads of constant power cannot all be fed: an outcome, not a mistake.

    `loads` names those that are left without when the smallest is fed first. `most` is the power
    [W] that the one could take beside those that are fed, never more, where only one is named; else
    None. It is the edge, where the least more lets the voltage collapse: no place to work at.
    """

    def __init__(self, loads: tuple[str, ...], most: float | None) -> None:
        self.loads = loads
        self.most = most
        names = " and ".join(f"'{name}'" for name in loads)
        super().__init__(f"No operating point: {names} cannot be fed with the power required.")


@dataclass(frozen=True)
class OperatingPoint:
    """The steady state of a network; every part is known by its name.

    `voltages` [V] of each node against ground. `currents` [A] from a to b, through a load from plus
    to minus, and out of a source's plus. `powers` [W] taken at the terminals, negative where a part
    delivers; all together they are zero. `heats` [W] in resistors and inside sources.
    """

    voltages: dict[str, float]
    currents: dict[str, float]
    powers: dict[str, float]
    heats: dict[str, float]
    drops: dict[str, float]

    def between(self, a: str, b: str) -> float:
        """Return the voltage [V] of node `a` against node `b`. Raises KeyError."""
        return self.voltages[a] - self.voltages[b]

    def drop(self, name: str) -> float:
        """Return the voltage [V] across a part: a to b, or plus to minus. Raises KeyError.

        For a resistor this is current times resistance, which for a joint of a few microohm has
        more digits than the difference of two node voltages.
        """
        return self.drops[name]


def solve(parts: Iterable[Part], ground: str) -> OperatingPoint:
    """Return the operating point of a network whose node `ground` is at 0 V.

    Raises BadNetwork (a name used twice, a node that no source or resistor ties to ground, a
    resistance or power that is not above zero, a figure that is not a number, or figures so far
    apart that power does not balance) and NoOperatingPoint.
    Where two points satisfy the constant-power loads, it is the one with the higher voltage.

    Source: Kirchhoff's and Ohm's laws.
    """
    parts = tuple(parts)
    _check(parts, ground)
    nodes = list(dict.fromkeys(node for part in parts for node in _ends(part) if node != ground))
    index = {node: number for number, node in enumerate([*nodes, ground])}
    circuit = Circuit(
        len(nodes),
        [_branch(part, index) for part in parts if isinstance(part, Source | Resistor)],
        [(*_pins(p, index), p.current) for p in parts if isinstance(p, CurrentLoad)],
        [_pins(part, index) for part in parts if isinstance(part, PowerLoad)],
    )
    try:
        state = operating.solve(
            circuit, [part.power for part in parts if isinstance(part, PowerLoad)]
        )
    except ArithmeticError:
        raise BadNetwork(_TOO_FAR) from None
    if isinstance(state, Unfed):
        names = [part.name for part in parts if isinstance(part, PowerLoad)]
        raise NoOperatingPoint(tuple(names[number] for number in state.loads), state.most)
    point = _point(parts, index, state)
    passed = sum(map(abs, point.powers.values()))
    if not abs(sum(point.powers.values())) <= _BALANCE * passed + LEAST:
        raise BadNetwork(_TOO_FAR)
    return point


def _ends(part: Part) -> tuple[str, str]:
    return (part.a, part.b) if isinstance(part, Resistor) else (part.plus, part.minus)


def _pins(part: Part, index: dict[str, int]) -> tuple[int, int]:
    first, second = _ends(part)
    return index[first], index[second]


def _branch(part: Source | Resistor, index: dict[str, int]) -> tuple[int, int, float, float]:
    """Return start, end, conductance [S] and e.m.f. [V]; a source's runs from minus to plus."""
    first, second = _pins(part, index)
    if isinstance(part, Source):
        return second, first, 1 / part.resistance, part.voltage
    return first, second, 1 / part.resistance, 0.0


def _point(parts: Sequence[Part], index: dict[str, int], state: State) -> OperatingPoint:
    currents, powers, heats, drops = {}, {}, {}, {}
    branches, ports = iter(state.currents), iter(state.across)
    for part in parts:
        first, second = _pins(part, index)
        drop = state.voltages[first] - state.voltages[second]
        taken = 1.0
        if isinstance(part, CurrentLoad):
            current = part.current
        elif isinstance(part, PowerLoad):
            drop = next(ports)
            current = part.power / drop
        else:
            current = next(branches)
            heats[part.name] = current * current * part.resistance
            if isinstance(part, Source):
                taken = -1.0
            else:
                drop = current * part.resistance
        currents[part.name], drops[part.name] = current, drop
        powers[part.name] = taken * drop * current
    voltages = {node: state.voltages[number] for node, number in index.items()}
    return OperatingPoint(voltages, currents, powers, heats, drops)


def _check(parts: Sequence[Part], ground: str) -> None:
    names: set[str] = set()
    ties: dict[str, list[str]] = {}
    for part in parts:
        if part.name in names:
            raise BadNetwork(f"Two parts are called '{part.name}': give each its own name.")
        names.add(part.name)
        _check_figures(part)
        first, second = _ends(part)
        if first == second:
            raise BadNetwork(f"'{part.name}' begins and ends at the same node, '{first}'.")
        for one, other in (first, second), (second, first):
            tied = ties.setdefault(one, [])
            if isinstance(part, Source | Resistor):
                tied.append(other)
    if ground not in ties:
        raise BadNetwork(f"No part is connected to the ground node '{ground}'.")
    reached, waiting = {ground}, [ground]
    while waiting:
        new = set(ties[waiting.pop()]) - reached
        reached |= new
        waiting += new
    if loose := [node for node in ties if node not in reached]:
        raise BadNetwork(
            f"No source or resistor ties the node '{loose[0]}' to the ground node '{ground}', "
            "so its voltage is not known."
        )


def _check_figures(part: Part) -> None:
    if isinstance(part, Source):
        _check_figure(part.name, "voltage", part.voltage, -MOST)
    if isinstance(part, Source | Resistor):
        _check_figure(part.name, "resistance", part.resistance, LEAST)
    elif isinstance(part, CurrentLoad):
        _check_figure(part.name, "current", part.current, -MOST)
    else:
        _check_figure(part.name, "power", part.power, LEAST)


def _check_figure(name: str, what: str, figure: float, least: float) -> None:
    if least <= figure <= MOST:
        return
    if not isfinite(figure):
        raise BadNetwork(f"The {what} of '{name}' is not a number.")
    if figure <= 0 < least:
        raise BadNetwork(f"The {what} of '{name}' must be above zero.")
    raise BadNetwork(f"The {what} of '{name}' is beyond what can be worked with.")

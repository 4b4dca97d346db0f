"""A van with a fault in it, and somebody who follows the search with a meter.

The van is its own network with its own figures; nothing here knows what the search expects. Its
device is a plain resistor, its charger holds a current up to a voltage, its parts are up to a tenth
off the book. The follower goes by what the search itself offers and by the data's own comparison.
"""

from dataclasses import dataclass, replace

import calc
from calc.electrical.network import CurrentLoad, Resistor, Source, solve
from calc.faults import graph
from calc.faults.graph import Reads
from calc.faults.search import NIGHT
from calc.faults.walk import turn_for, walk
from calc.units.constants import HOUR

OPEN = 1e9  # ohm
BOOK = {"0.75 mm2": 26.0, "18 AWG": 21.0, "12 AWG": 5.21, "6 AWG": 1.30, "2/0 AWG": 0.256}
"""Copper at 20 °C [ohm/km], plain, by its area."""

CHARGER_ON = ("charging", "warm", "ending")
LOAD_ON = ("flow", "shaken", "starting")


@dataclass(frozen=True)
class Van:
    """One circuit of a van as it really is, in SI; `off` is how far its parts are off the book.

    `extra` holds what a fault adds to a part [ohm]; `gone` is what a cell has lost [V].
    """

    texts: dict[str, str]
    volts: float
    cells: int
    cell: float
    amps: float
    metres: float
    rating: float
    extra: dict[str, float]
    off: float = 1.0
    good_joint: float = 0.1e-3
    shunt: float = 0.1e-3
    blocks: int = 1
    gone: float = 0.0
    ampere_hours: float = 200.0
    charge_to: float = 14.4
    charger: float = 30.0
    warm_share: float = 1.0
    standby: float = 0.1
    inverter_idle: float = 1.2
    inverter_left_on: bool = False
    gauge_factor: float = 1.0
    gauge_sign: int = 1
    cable_factor: float = 1.0

    def part(self, name: str, sound: float) -> float:
        return sound * self.off + self.extra.get(name, 0.0)

    def network(self, state: str, charging: bool):
        """Return the operating point in a state of the search."""
        copper = BOOK[self.texts["conductor"]] * 1e-3 * self.metres * self.cable_factor
        joint = self.good_joint
        empty = 0.06 if state in CHARGER_ON or charging else 0.0  # a bank to be charged is down
        emf = self.cells * self.cell * (1 - empty) - self.gone
        inside = self.part("bank", emf / (10 * self.ampere_hours))
        parts = [
            Source("bank", "bank_plus", "bank_minus", emf, inside),
            Resistor("1", "bank_plus", "lug_plus", self.part("plus post", joint)),
            Resistor("2", "lug_plus", "fuse_out", self.part("fuse", 0.09 / self.rating + joint)),
            Resistor("3", "fuse_out", "run_lug", self.part("between", joint)),
            Resistor("4", "run_lug", "far_lug", self.part("cable", copper)),
            Resistor("5", "far_lug", "far_plus", self.part("terminal", joint)),
            Resistor("6", "far_minus", "return_lug", self.part("minus terminal", joint)),
            Resistor("7", "return_lug", "ground_lug", self.part("minus cable", copper)),
            Resistor("8", "ground_lug", "ground", self.part("ground", joint)),
            Resistor("9", "ground", "lug_minus", self.part("shunt", self.shunt)),
            Resistor("10", "lug_minus", "bank_minus", self.part("minus post", joint)),
            Resistor("meter", "far_plus", "far_minus", 1e7),
        ]
        if state in CHARGER_ON or (charging and state in LOAD_ON):
            return self._charged(parts, state)
        if state in LOAD_ON:
            parts.append(Resistor("device", "far_plus", "far_minus", self.volts / self.amps))
        return solve(parts, "bank_minus")

    def _charged(self, parts, state: str):
        """The charger's current, or as much of it as its own voltage pushes through."""
        ends = "far_plus", "far_minus"
        amps = self.charger * (self.warm_share if state in ("warm", "ending") else 1.0)
        point = solve([*parts, CurrentLoad("charger", *ends, -amps)], "bank_minus")
        if point.between(*ends) <= self.charge_to:
            return point
        return solve([*parts, Source("charger", *ends, self.charge_to, 1e-4)], "bank_minus")

    def reading(self, step: graph.Step, charging: bool) -> float:
        """Return what a meter shows at a step of the search [SI]."""
        if step.reads == Reads.VOLTS:
            return self._volts(step, charging)
        if step.reads == Reads.OHMS:
            return self.extra.get("short", 1e6)
        if step.reads == Reads.CHARGE:
            return self.ampere_hours * HOUR
        return self._amps(step, charging)

    def _volts(self, step: graph.Step, charging: bool) -> float:
        if step.red == "block_plus":
            return self.cells * self.cell / self.blocks - self.gone
        if step.red in ("link_in", "like_in", "starter_plus"):
            flow = self.charger if charging and step.red == "starter_plus" else self.amps
            return flow * self.part("link" if step.red != "like_in" else "", self.good_joint)
        if step.state == "engine":
            feed = self.extra.get("feed" if step.red == "input_plus" else "signal", 0.0)
            return 1.15 * float(self.texts.get("system", "12 V").split()[0]) - feed
        if step.state == "ending":
            return self.charge_to if self.warm_share == 1.0 else self.cells * self.cell * 1.01
        red = "lug_plus" if step.red == "fuse_in" else step.red
        return abs(self.network(step.state, charging).between(red, step.black))

    def _amps(self, step: graph.Step, charging: bool) -> float:
        if step.state in ("standby", "pulled"):
            awake = self.inverter_left_on and step.state == "standby"
            drawn = self.standby * self.off + (self.inverter_idle if awake else 0.0)
            return drawn * (self.gauge_factor if step.clamp == "gauge" else 1.0)
        if step.state == "ending":
            return 0.02 * self.ampere_hours
        if step.state == "night":
            return 0.3 * self.ampere_hours * HOUR / NIGHT
        flowing = abs(self.network(step.state, charging).currents["10"])
        return flowing * (self.gauge_factor if step.clamp == "gauge" else 1.0)

    def gauge_shows(self) -> str:
        """Return whether the gauge shows current going out or coming in, with the load on."""
        through_shunt = self.network("flow", False).currents["9"]
        return "out" if through_shunt * self.gauge_sign > 0 else "in"


def follow(van: Van, symptom: str, told: dict[str, str]) -> tuple[str, str]:
    """Follow the search to its end, and return the end's name and the path.

    `told` answers the questions, by step; a question that it does not answer fails the test.
    """
    path = ""
    charging = graph.way_in(symptom).charging
    for _ in range(30):
        answer = calc.work("find-fault", van.texts | {"symptom": symptom, "path": path})
        at = walk(symptom, path)
        assert not at.odd
        if at.end:
            assert answer["cause"] == at.end.cause
            return at.taken[-1][1].found, path
        step = at.step
        if step.reads:
            turn = turn_for(step, van.reading(step, charging), answer.result.values)
        else:
            seen = {"gauge.sign": van.gauge_shows()} | told
            turn = step.turn(seen[step.id])
        offered = [dict(move.texts)["path"] for move in answer["moves"]]
        path = f"{at.path}.{turn.id}"
        assert path in offered
    raise AssertionError(f"no end after {path}")


LEAD, LITHIUM = 12.8 / 6, 3.3481  # V, one cell, full and at rest

FRIDGE = Van(
    texts={
        "load": "6 A",
        "heaviest": "6 A",
        "length": "4.5 m",
        "conductor": "12 AWG",
        "fuse": "10 A",
    },
    volts=12.4,
    cells=6,
    cell=LEAD,
    amps=6.0,
    metres=4.5,
    rating=10.0,
    extra={},
)
INVERTER = Van(
    texts={
        "load": "149 A",
        "heaviest": "149 A",
        "length": "2 m",
        "conductor": "2/0 AWG",
        "fuse": "250 A",
        "joint": "0.05 mohm",
    },
    volts=11.6,
    cells=6,
    cell=LEAD,
    amps=149.0,
    metres=2.0,
    rating=250.0,
    extra={},
    good_joint=0.05e-3,
)
CHARGER = Van(
    texts={
        "load": "6 A",
        "heaviest": "30 A",
        "length": "3.6 m",
        "conductor": "6 AWG",
        "fuse": "50 A",
        "charger": "30 A",
    },
    volts=12.4,
    cells=6,
    cell=LEAD,
    amps=6.0,
    metres=3.6,
    rating=50.0,
    extra={},
)
LARGE = Van(
    texts={
        "system": "48 V",
        "chemistry": "LFP",
        "load": "60 A",
        "heaviest": "60 A",
        "length": "3 m",
        "conductor": "6 AWG",
        "fuse": "100 A",
        "capacity": "100 Ah",
        "joint": "0.1 mohm",
    },
    volts=52.0,
    cells=16,
    cell=LITHIUM,
    amps=60.0,
    metres=3.0,
    rating=100.0,
    extra={},
    good_joint=0.1e-3,
    blocks=4,
    ampere_hours=100.0,
    charge_to=56.8,
)


def with_fault(van: Van, **changes) -> Van:
    """Return the van with one thing wrong."""
    return replace(van, **changes)

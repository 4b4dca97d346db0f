"""The reader's own circuit when it is sound: what a meter should show.

One run from the bank through its fuse to a device and back: post, fuse, what lies between, cable,
terminal; and back over terminal, cable, ground point, shunt and post. A charger on the same run
drives its current the other way. In scope: steady state, joints all alike, both conductors alike.
Out of scope: what starts and stops, and a bank that runs down meanwhile.
"""

from dataclasses import dataclass
from functools import cache

from calc.electrical.conductors import at_temperature, conductor
from calc.electrical.network import (
    CurrentLoad,
    OperatingPoint,
    Part,
    PowerLoad,
    Resistor,
    Source,
    solve,
)
from calc.energy.battery import Chemistry, usable_share
from calc.tables import table

HOUR = 3600.0
NIGHT = 14 * HOUR  # a winter night, from dusk till the sun is up; common practice, no source
FUSE_DROP = 0.1  # V at its own rating: DIN 72581-3 type E, 30 to 80 A
SHORT_AMPS = 10.0  # a short passes ten times the A·h: guide to d.c. distribution, lead-acid
TAIL = 0.03  # of the capacity, in amps, at the end of a charge; common practice, no source


class Unfed(ValueError):
    """The load cannot be fed over this run; `most` [A], or [W] if `power`, is all it could get."""

    def __init__(self, most: float, power: bool) -> None:
        super().__init__("the load cannot be fed")
        self.most = most
        self.power = power


@dataclass(frozen=True, kw_only=True)
class Given:
    """The reader's figures in SI; None where one is not known. `load` is in watts or in amps.

    `charging` tells that the current on the run is the charger's.
    """

    charging: bool
    system: float
    chemistry: str
    load: float
    load_is_power: bool
    length: float
    conductor: str
    temperature: float
    fuse: float
    joint: float
    joints: float
    shunt: float
    charger: float
    capacity: float
    source_resistance: float | None
    blocks: float
    charge_voltage: float | None


@dataclass(frozen=True, kw_only=True)
class Healthy:
    """Readings on the sound circuit [V], [A], [ohm], [A·s], and what leads to them.

    `bank_flow` is the bank's voltage with the run's current `flow` on it, `far` that at the far
    end. A drop is that of one joint, of all `middle` ones, of the fuse, of one conductor, or of a
    whole side.
    """

    cells: float
    reference: float
    stated: float
    per_length: float
    run: float
    fuse_resistance: float
    source: float
    estimated: bool
    rest_full: float
    rest_low: float
    cell: float
    block: float
    block_empty: float
    current: float
    flow: float
    bank_flow: float
    far: float
    joint_drop: float
    middle_drop: float
    fuse_drop: float
    run_drop: float
    shunt_drop: float
    plus_drop: float
    minus_drop: float
    charging_to: float
    tail: float
    usable: float


def cells_of(system: float, chemistry: str) -> int:
    """Return how many cells in series a bank of nominal `system` [V] has."""
    lead, lithium = 6, 4
    return (lithium if chemistry == "LFP" else lead) * round(system / 12)


def _cell_volts(name: str, chemistry: str, column: str) -> float:
    """Return a voltage of one cell [V] from a table by block. Raises KeyError."""
    row = {row["chemistry"]: row for row in table(name).rows}[chemistry]
    return float(row[column]) / float(row["cells"])


@cache
def volts_of(chemistry: str) -> tuple[float, float, float, float]:
    """Return full, part full, empty and charging voltage of one cell [V]."""
    rested = (_cell_volts("rested_voltage", chemistry, f"{n}_v") for n in ("full", "part", "empty"))
    full, part, empty = rested
    return full, part, empty, _cell_volts("charge_voltage", chemistry, "charge_v")


@dataclass(frozen=True)
class Parts:
    """What the circuit is made of [ohm], and the bank's voltage at rest [V]."""

    run: float
    fuse: float
    source: float
    full: float


def parts_of(given: Given) -> Parts:
    """Return the resistances of a sound circuit's parts."""
    size = conductor(given.conductor)
    full = cells_of(given.system, given.chemistry) * volts_of(given.chemistry)[0]
    known = given.source_resistance
    return Parts(
        run=given.length * at_temperature(size.plain, size.reference, given.temperature),
        fuse=FUSE_DROP / given.fuse + given.joint,
        source=full / (SHORT_AMPS * given.capacity / HOUR) if known is None else known,
        full=full,
    )


def circuit(given: Given) -> tuple[float, OperatingPoint]:
    """Return the load's current [A], and the operating point of the sound circuit.

    For a charger the point is that with its current on the run. Raises Unfed.
    """
    parts = parts_of(given)
    network: list[Part] = [Source("bank", "bank_plus", "bank_minus", parts.full, parts.source)]
    network += _run(given, parts)
    way = parts.source + sum(part.resistance for part in network if isinstance(part, Resistor))
    most = parts.full**2 / (4 * way) if given.load_is_power else parts.full / way
    if given.load >= most * (1 - 1e-9):
        raise Unfed(most, given.load_is_power)
    point = solve([*network, _load(given)], "bank_minus")
    current = point.currents["device"]
    if given.charging:
        charger = CurrentLoad("device", "far_plus", "far_minus", -given.charger)
        point = solve([*network, charger], "bank_minus")
    return current, point


def healthy(given: Given) -> Healthy:
    """Return what a sound circuit shows. Raises Unfed where the load cannot be fed at all.

    Steady state by `calc.electrical.network`. Source: Kirchhoff's and Ohm's laws.
    """
    cells = cells_of(given.system, given.chemistry)
    _, low, empty, charge = (cells * volts for volts in volts_of(given.chemistry))
    size, parts = conductor(given.conductor), parts_of(given)
    full = parts.full
    current, point = circuit(given)
    return Healthy(
        cells=cells,
        reference=size.reference,
        stated=size.plain,
        per_length=parts.run / given.length,
        run=parts.run,
        fuse_resistance=parts.fuse,
        source=parts.source,
        estimated=given.source_resistance is None,
        rest_full=full,
        rest_low=low,
        cell=full / cells,
        block=full / given.blocks,
        block_empty=empty / given.blocks,
        current=current,
        flow=given.charger if given.charging else current,
        bank_flow=point.between("bank_plus", "bank_minus"),
        far=point.between("far_plus", "far_minus"),
        joint_drop=abs(point.drop("plus post")),
        middle_drop=abs(point.drop("between")),
        fuse_drop=abs(point.drop("fuse")),
        run_drop=abs(point.drop("plus cable")),
        shunt_drop=abs(point.drop("shunt")),
        plus_drop=abs(point.between("bank_plus", "far_plus")),
        minus_drop=abs(point.between("far_minus", "bank_minus")),
        charging_to=charge if given.charge_voltage is None else given.charge_voltage,
        tail=TAIL * given.capacity / HOUR,
        usable=usable_share(Chemistry(given.chemistry)),
    )


def _run(given: Given, parts: Parts) -> list[Part]:
    """Return the resistors of the run; `given.joints` counts those of one side."""
    between = (given.joints - 2) * given.joint
    return [
        Resistor("plus post", "bank_plus", "lug_plus", given.joint),
        Resistor("fuse", "lug_plus", "fuse_out", parts.fuse),
        Resistor("between", "fuse_out", "run_lug", between),
        Resistor("plus cable", "run_lug", "far_lug", parts.run),
        Resistor("plus terminal", "far_lug", "far_plus", given.joint),
        Resistor("minus terminal", "far_minus", "return_lug", given.joint),
        Resistor("minus cable", "return_lug", "ground_lug", parts.run),
        Resistor("ground point", "ground_lug", "ground", between),
        Resistor("shunt", "ground", "lug_minus", given.shunt),
        Resistor("minus post", "lug_minus", "bank_minus", given.joint),
    ]


def _load(given: Given) -> Part:
    if given.load_is_power:
        return PowerLoad("device", "far_plus", "far_minus", given.load)
    return CurrentLoad("device", "far_plus", "far_minus", given.load)

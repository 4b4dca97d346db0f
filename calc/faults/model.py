"""The reader's own circuit when it is sound: what a meter should show.

One run from the bank through its fuse to a device and back: post, fuse, what lies between, cable,
terminal; and back over terminal, cable, ground point, shunt and post. A charger on the same run
drives its current the other way. In scope: steady state, joints all alike, both conductors alike.
Out of scope: what starts and stops, and a bank that runs down meanwhile.
"""

from dataclasses import dataclass
from functools import cache
from typing import Annotated

from calc.electrical import sound_parts
from calc.electrical.contact import LIKE_MOST, most_passing
from calc.electrical.fault_source import short_circuit_current_per_ah
from calc.electrical.network import (
    CurrentLoad,
    OperatingPoint,
    Part,
    PowerLoad,
    Resistor,
    Source,
    solve,
)
from calc.electrical.run import RunResult, plain_run
from calc.energy.battery import Chemistry, usable_share
from calc.energy.voltages import NOMINAL, cells, charge_end
from calc.tables import table
from calc.units.compare import at_most
from calc.units.constants import HOUR
from calc.units.covered import NotCovered
from calc.units.si import Amperes, Coulombs, Count, Ohms, PerSecond, Share, Tag, Volts, Watts

# At its own rating: DIN 72581-3 type E, 30 to 80 A
FUSE_DROP: Annotated[Volts, Tag("drop of a fuse at its rated current")] = 0.1
# Current for each coulomb of capacity at the end of a charge: common practice, no source
TAIL: Annotated[PerSecond, Tag("current at the end of a charge, against capacity")] = 0.03 / HOUR


class Unfed(ValueError):
    """The load cannot be fed over this run; `most` [A], or [W] if `power`, is all it could get."""

    def __init__(self, most: float, power: bool) -> None:
        super().__init__(most, power)
        self.most = most
        self.power = power


@dataclass(frozen=True, kw_only=True)
class SearchedBank:
    """A sound bank of `cells` in series, in `blocks` that a meter can be put on one by one.

    `full`, `low` (far from full) and `empty` are its voltages at rest. `estimated` tells that its
    `resistance` is guessed from the capacity. A charge ends at `charging_to`.
    """

    system: Volts
    chemistry: Chemistry
    capacity: Coulombs
    cells: Count
    blocks: Count
    resistance: Ohms
    estimated: bool
    full: Volts
    low: Volts
    empty: Volts
    charging_to: Volts
    voltage_given: bool

    @property
    def cell(self) -> Volts:
        """One cell, full and at rest."""
        return self.full / self.cells

    @property
    def block(self) -> Volts:
        """One block, full and at rest."""
        return self.full / self.blocks

    @property
    def empty_block(self) -> Volts:
        """One block, empty and at rest."""
        return self.empty / self.blocks

    @property
    def tail(self) -> Amperes:
        """What it still takes at the end of a charge."""
        return TAIL * self.capacity

    @property
    def usable(self) -> Share:
        """The share of its capacity that is used."""
        return usable_share(self.chemistry)


@dataclass(frozen=True, kw_only=True)
class SearchedRun:
    """A sound run between the bank and a device: copper, fuse, joints and shunt.

    `laid` is the copper, out and back, and `conductor` the resistance of one; `fuse` is that of
    the fuse in its holder, whose contacts count as one joint. `joint` is that of a sound joint as
    taken, `given` as told. `joints` counts those of one side.
    """

    laid: RunResult
    conductor: Ohms
    rated: Amperes
    fuse: Ohms
    joint: Ohms
    given: Ohms
    joints: Count
    shunt: Ohms

    @property
    def rated_drop(self) -> Volts:
        """What its fuse may lose at its own rating."""
        return FUSE_DROP

    @property
    def joint_lowered(self) -> bool:
        """Whether the joint that was told is itself too bad to be taken for a sound one."""
        return self.joint < self.given

    @property
    def fuse_most(self) -> Ohms:
        """The most that a sound fuse of its rating has in its holder."""
        return sound_parts.sound_fuse(sound_parts.Part.FUSE, self.rated).high

    @property
    def metric(self) -> bool:
        """Whether the conductor is named by its area."""
        return self.laid.run.metric


@dataclass(frozen=True, kw_only=True)
class Load:
    """What a device takes: a `current`, or a `power`; the other is None."""

    current: Amperes | None
    power: Watts | None


@dataclass(frozen=True, kw_only=True)
class SoundReadings:
    """What a meter shows on the sound circuit.

    `current` is the load's; `flow` is on the run: a charger's where it `charges`. `at_bank` and
    `far` are the voltages of the bank's posts and at the far end. A drop is that of one joint, of
    all joints between (`middle`), of fuse and holder, of one conductor, of the shunt, of a side.
    """

    charges: bool
    current: Amperes
    flow: Amperes
    at_bank: Volts
    far: Volts
    joint_drop: Volts
    middle_drop: Volts
    fuse_drop: Volts
    conductor_drop: Volts
    shunt_drop: Volts
    plus_drop: Volts
    minus_drop: Volts


@dataclass(frozen=True, kw_only=True)
class SoundCircuit:
    """A bank, the run in question and what hangs on it, all sound, with what a meter shows."""

    bank: SearchedBank
    run: SearchedRun
    load: Load
    charger: Amperes
    readings: SoundReadings

    @property
    def over_fuse(self) -> bool:
        """Whether more flows than the fuse is rated for."""
        return not at_most(self.readings.flow, self.run.rated)


@cache
def cell_voltages(chemistry: Chemistry) -> tuple[float, float, float]:
    """Return the rested voltage [V] of one cell: full, part full, empty. Raises NotCovered.

    Table `rested_voltage`, row by row.
    """
    chemistry = Chemistry(chemistry)
    row = next(row for row in table("rested_voltage").rows if row["chemistry"] == chemistry)
    full, part, empty = (float(row[f"{state}_v"]) for state in ("full", "part", "empty"))
    count = float(row["cells"])
    return full / count, part / count, empty / count


def searched_bank(
    *,
    system: float,
    chemistry: Chemistry,
    capacity: float,
    blocks: float,
    resistance: float | None,
    charge_voltage: float | None,
) -> SearchedBank:
    """Return a sound bank of nominal `system` [V] and `capacity` [A·s], in so many `blocks`.

    Where its `resistance` [ohm] is not known, a short is guessed to pass ten times the ampere-hours
    (for lead-acid a guide to d.c. distribution, for LFP no source). Where the `charge_voltage` [V]
    is not, it is the usual one. Raises NotCovered for more blocks than cells, or an unknown
    chemistry.
    """
    chemistry = Chemistry(chemistry)
    in_series = cells(chemistry) * round(system / NOMINAL)
    if blocks > in_series:
        raise NotCovered("blocks", f"must be {in_series} or fewer: the bank has no more cells.")
    full, low, empty = (in_series * volts for volts in cell_voltages(chemistry))
    guessed = short_circuit_current_per_ah(Chemistry.AGM).low * capacity
    usual = charge_end(chemistry) * round(system / NOMINAL)
    return SearchedBank(
        system=system,
        chemistry=chemistry,
        capacity=capacity,
        cells=in_series,
        blocks=blocks,
        resistance=full / guessed if resistance is None else resistance,
        estimated=resistance is None,
        full=full,
        low=low,
        empty=empty,
        charging_to=usual if charge_voltage is None else charge_voltage,
        voltage_given=charge_voltage is not None,
    )


def searched_run(
    *,
    conductor: str,
    length: float,
    temperature: float,
    rated: float,
    joint: float,
    joints: float,
    shunt: float,
    heaviest: float,
) -> SearchedRun:
    """Return a sound run of plain copper, `length` [m] one way, at `temperature` [°C].

    `rated` [A] is its fuse's rating, `joint` and `shunt` [ohm] the resistances of one joint and of
    the shunt, `heaviest` [A] the most that the joints at the bank carry. A joint that joint heat
    would look into at that current is no sound one: as much is taken as leaves room for half as
    much again. The fuse is taken to lose `FUSE_DROP` at its rating. Raises NotCovered for an
    unknown conductor.
    """
    passes = most_passing(
        sound=sound_parts.sound_joint(sound_parts.Part.BOLTED), full_current=heaviest, like=joint
    )
    taken = min(joint, passes / LIKE_MOST)
    laid = plain_run(conductor=conductor, length=length, temperature=temperature)
    return SearchedRun(
        laid=laid,
        conductor=length * laid.per_length,
        rated=rated,
        fuse=FUSE_DROP / rated + taken,
        joint=taken,
        given=joint,
        joints=joints,
        shunt=shunt,
    )


def operating_point(
    *, bank: SearchedBank, run: SearchedRun, load: Load, charger: float | None
) -> tuple[float, OperatingPoint]:
    """Return the load's current [A], and the operating point of the sound circuit.

    With a `charger` [A] the point is that with its current on the run. Raises Unfed.
    """
    network: list[Part] = [Source("bank", "bank_plus", "bank_minus", bank.full, bank.resistance)]
    network += _resistors(run)
    way = bank.resistance + sum(p.resistance for p in network if isinstance(p, Resistor))
    part: Part
    if load.power is not None:
        asked, most = load.power, bank.full**2 / (4 * way)
        part = PowerLoad("device", "far_plus", "far_minus", load.power)
    else:
        asked, most = load.current or 0.0, bank.full / way
        part = CurrentLoad("device", "far_plus", "far_minus", asked)
    if asked >= most * (1 - 1e-9):
        raise Unfed(most, load.power is not None)
    point = solve([*network, part], "bank_minus")
    current = point.currents["device"]
    if charger is not None:
        source = CurrentLoad("device", "far_plus", "far_minus", -charger)
        point = solve([*network, source], "bank_minus")
    return current, point


def sound_circuit(
    *, bank: SearchedBank, run: SearchedRun, load: Load, charger: float, charges: bool
) -> SoundCircuit:
    """Return what a sound circuit shows. Raises Unfed where the load cannot be fed at all.

    `charges` tells that the current on the run is that of the `charger` [A]. Steady state by
    `calc.electrical.network`. Source: Kirchhoff's and Ohm's laws.
    """
    current, point = operating_point(
        bank=bank, run=run, load=load, charger=charger if charges else None
    )
    readings = SoundReadings(
        charges=charges,
        current=current,
        flow=charger if charges else current,
        at_bank=point.between("bank_plus", "bank_minus"),
        far=point.between("far_plus", "far_minus"),
        joint_drop=abs(point.drop("plus post")),
        middle_drop=abs(point.drop("between")),
        fuse_drop=abs(point.drop("fuse")),
        conductor_drop=abs(point.drop("plus cable")),
        shunt_drop=abs(point.drop("shunt")),
        plus_drop=abs(point.between("bank_plus", "far_plus")),
        minus_drop=abs(point.between("far_minus", "bank_minus")),
    )
    return SoundCircuit(bank=bank, run=run, load=load, charger=charger, readings=readings)


def _resistors(run: SearchedRun) -> list[Resistor]:
    between = (run.joints - 2) * run.joint
    return [
        Resistor("plus post", "bank_plus", "lug_plus", run.joint),
        Resistor("fuse", "lug_plus", "fuse_out", run.fuse),
        Resistor("between", "fuse_out", "run_lug", between),
        Resistor("plus cable", "run_lug", "far_lug", run.conductor),
        Resistor("plus terminal", "far_lug", "far_plus", run.joint),
        Resistor("minus terminal", "far_minus", "return_lug", run.joint),
        Resistor("minus cable", "return_lug", "ground_lug", run.conductor),
        Resistor("ground point", "ground_lug", "ground", between),
        Resistor("shunt", "ground", "lug_minus", run.shunt),
        Resistor("minus post", "lug_minus", "bank_minus", run.joint),
    ]

"""Where a search for a fault stands, beside the sound circuit to hold every reading against."""

from dataclasses import dataclass
from functools import cached_property
from math import inf
from typing import Annotated

from calc.electrical.ampacity import table_ampacity
from calc.electrical.cable import UNMARKED_INSULATION
from calc.electrical.conductors import GaugeReading
from calc.electrical.contact import GLOWS_LEAST, SMALL_DROP, SMALL_LOAD, most_passing
from calc.electrical.sound_parts import PLUG_FUSE, Part, sound_joint
from calc.faults import graph
from calc.faults.graph import Reads, Symptom, WayIn
from calc.faults.model import SoundCircuit
from calc.faults.walk import Values, Walk, limits, walk
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY, HOUR
from calc.units.si import Amperes, Coulombs, Ohms, Seconds, Share, Tag, Volts
from calc.worksheet.formula import work

# What a meter tells apart on its millivolt range: common practice, no source
READABLE: Annotated[Volts, Tag("least drop that tells a good joint")] = 0.5e-3
# A winter night, from dusk till the sun is up: common practice, no source
NIGHT: Annotated[Seconds, Tag("long winter night")] = 14 * HOUR

LOADED = ("flow", "shaken")
AT_THE_BANK = ("all", "every", "start", "min", "plu", "gnd")  # turns that lead to what all shares
DROPS = (
    *("joint_drop", "middle_drop", "fuse_drop", "run_drop"),
    *("shunt_drop", "plus_drop", "minus_drop"),
)
JUDGED_AS_JOINT = frozenset({"joint_limit", "middle_limit", "shunt_limit"})


class TooLittle(ValueError):
    """The current at this step tells nothing; from `least` [A] on it does."""

    def __init__(self, least: float) -> None:
        super().__init__(least)
        self.least = least


@dataclass(frozen=True, kw_only=True)
class FaultSearch:
    """A search for what is behind a `symptom`, as far as it has come (`at`).

    `standby` and `idle` are what may flow with everything off, and with the inverter on; `limit`
    is the share that the cable may drop, `cutoff` the voltage at which the inverter gives up.
    `heaviest` is the most that the joints at the bank carry. `ampacity` is the conductor's with
    unmarked insulation, None where no table has it.
    """

    symptom: Symptom
    circuit: SoundCircuit
    standby: Amperes
    idle: Amperes
    limit: Share
    cutoff: Volts
    heaviest: Amperes
    ampacity: Amperes | None
    at: Walk

    @property
    def way_in(self) -> WayIn:
        """How the search for this symptom begins."""
        return graph.way_in(self.symptom)

    @property
    def safety(self) -> str:
        """What comes before all measuring."""
        return self.way_in.safety

    @property
    def number(self) -> str:
        """The number of the step, from 1."""
        return str(len(self.at.taken) + 1)

    @property
    def cause(self) -> str | None:
        """What was found, None on the way."""
        return self.at.end.cause if self.at.end else None

    @property
    def found(self) -> bool:
        """Whether an end is reached."""
        return self.at.end is not None

    @property
    def clear(self) -> bool:
        """Whether an end is reached and no fault found."""
        return self.at.end is not None and self.at.end.clear

    @property
    def as_it_should_be(self) -> bool:
        """Whether what was seen is no fault at all, so that there is nothing to change."""
        return self.at.end is not None and self.at.end.usual

    @property
    def danger(self) -> bool:
        """Whether it must be made safe first; so must whatever made something too hot."""
        end, step = self.at.end, self.at.step
        if end is not None and not end.clear and any(turn.burns for _, turn in self.at.taken):
            return True
        return bool((end and end.danger) or (step and step.danger))

    @property
    def reads(self) -> Reads | None:
        """What the meter reads at this step, None where there is nothing to measure."""
        return self.at.step.reads if self.at.step else None

    @property
    def cited(self) -> frozenset[str]:
        """The sources of the limits that this step's readings are held against."""
        names = limits(self.at.step) if self.at.step else ()
        return frozenset(graph.criteria()[name].source for name in names)

    @property
    def on_main(self) -> bool:
        """Whether what is searched carries all that the bank gives."""
        common = self.symptom in (Symptom.CHECK, Symptom.INVERTER)
        return common or any(turn.id in AT_THE_BANK for _, turn in self.at.taken)

    @property
    def full_current(self) -> Amperes:
        """The most that the joints in question carry."""
        flow = self.circuit.readings.flow
        return max(flow, self.heaviest) if self.on_main else flow

    @property
    def most_of_joint(self) -> Ohms:
        """The most that a sound joint may have here."""
        run = self.circuit.run
        return most_passing(
            sound=sound_joint(Part.BOLTED), full_current=self.full_current, like=run.joint
        )

    @property
    def most_of_terminal(self) -> Ohms:
        """The most that a sound terminal at the device may have: pushed on, or bolted if large."""
        if not at_most(self.circuit.run.rated, PLUG_FUSE):
            return self.most_of_joint
        full = self.circuit.readings.flow
        return most_passing(sound=sound_joint(Part.PLUG), full_current=full)

    @property
    def least_current(self) -> Amperes | None:
        """The least current that tells anything at this step; None where it does not matter.

        A fifth of what the joints carry, and enough for a bad joint to show on a meter.
        """
        step = self.at.step
        if step is None or step.reads is not Reads.VOLTS or step.state not in LOADED:
            return None
        least = SMALL_LOAD * self.full_current if self.on_main else 0.0
        if JUDGED_AS_JOINT & set(limits(step)):
            least = max(least, READABLE / self.most_of_joint)
        return least

    @property
    def cable_by_figures(self) -> bool:
        """Whether by the figures alone the cable loses more than is allowed."""
        lost = self.circuit.readings.conductor_drop
        return not at_most(lost, self.limit / 2 * self.circuit.bank.system)

    @property
    def not_enough_by_figures(self) -> bool:
        """Whether by the figures alone the inverter sees less than its cut-out."""
        return self.symptom is Symptom.INVERTER and self.circuit.readings.far < self.cutoff

    @property
    def remade_too(self) -> tuple[str, ...]:
        """What was found worse than a good joint on the way, though it was not the fault."""
        return tuple(step.text for step, turn in self.at.taken if turn.id == "some")

    @property
    def remade_names(self) -> str | None:
        """The same in one text."""
        return "; ".join(self.remade_too) or None

    @cached_property
    def values(self) -> Values:
        """What a formula of the search may name, with every limit."""
        bank, run, readings = self.circuit.bank, self.circuit.run, self.circuit.readings
        return Values(
            {
                "system": bank.system,
                "capacity": bank.capacity,
                "source": bank.resistance,
                "rest_full": bank.full,
                "rest_low": bank.low,
                "cell": bank.cell,
                "block": bank.block,
                "block_empty": bank.empty_block,
                "charging_to": bank.charging_to,
                "tail": bank.tail,
                "usable": bank.usable,
                "fuse": run.rated,
                "joint": run.joint,
                "joints": run.joints,
                "charger": self.circuit.charger,
                "current": readings.current,
                "flow": readings.flow,
                "bank_flow": readings.at_bank,
                "far": readings.far,
                "joint_drop": readings.joint_drop,
                "middle_drop": readings.middle_drop,
                "fuse_drop": readings.fuse_drop,
                "run_drop": readings.conductor_drop,
                "shunt_drop": readings.shunt_drop,
                "plus_drop": readings.plus_drop,
                "minus_drop": readings.minus_drop,
                "standby": self.standby,
                "idle": self.idle,
                "limit": self.limit,
                "cutoff": self.cutoff,
                "ampacity": inf if self.ampacity is None else self.ampacity,
                "hour": HOUR,
                "day": DAY,
                "night": NIGHT,
                "last_digit": SMALL_DROP,
                "joint_most": readings.flow * self.most_of_joint,
                "terminal_most": readings.flow * self.most_of_terminal,
                "fuse_most": readings.flow * run.fuse_most,
                "glow": GLOWS_LEAST / readings.flow,
            }
        )

    @property
    def still(self) -> bool:
        """Whether no current flows, by what was found on the way: no sound part loses anything."""
        return any(turn.still for _, turn in self.at.taken)

    def _expected(self, reads: Reads) -> float | None:
        step = self.at.step
        if step is None or step.reads is not reads:
            return None
        none_lost = dict.fromkeys(DROPS, 0.0) if self.still else {}
        return float(work(step.expects, Values({**self.values, **none_lost})))

    @property
    def volts(self) -> Volts | None:
        """What a sound circuit shows at this step, where it is volts that are read."""
        return self._expected(Reads.VOLTS)

    @property
    def amps(self) -> Amperes | None:
        """What a sound circuit shows at this step, where it is amps."""
        return self._expected(Reads.AMPS)

    @property
    def ohms(self) -> Ohms | None:
        """What a sound circuit shows more than at this step, where it is ohms."""
        return self._expected(Reads.OHMS)

    @property
    def ampere_hours(self) -> Coulombs | None:
        """What a sound bank shows at this step, where it is charge."""
        return self._expected(Reads.CHARGE)


def fault_search(
    *,
    symptom: Symptom,
    path: str,
    circuit: SoundCircuit,
    standby: float,
    idle: float,
    limit: float,
    cutoff: float,
    heaviest: float,
) -> FaultSearch:
    """Return where the search for a `symptom` stands after the turns of `path`.

    A path that makes no sense from some point on is followed so far. `standby` and `idle` [A],
    `limit` [0..1], `cutoff` [V]; `heaviest` [A] is the most that the bank gives. Raises NotCovered
    for an unknown symptom, and TooLittle where the current that flows tells nothing at this step.
    """
    name = circuit.run.laid.run.conductor
    found = FaultSearch(
        symptom=Symptom(symptom),
        circuit=circuit,
        standby=standby,
        idle=idle,
        limit=limit,
        cutoff=cutoff,
        heaviest=heaviest,
        ampacity=table_ampacity(
            name, insulation=UNMARKED_INSULATION, gauge_reading=GaugeReading.AWG
        ),
        at=walk(symptom, path),
    )
    least = found.least_current
    if least is not None and not at_least(circuit.readings.flow, least):
        raise TooLittle(least)
    return found

"""Where a search for a fault stands, beside the sound circuit to hold every reading against."""

from dataclasses import dataclass
from functools import cached_property
from math import inf
from typing import Annotated

from calc.electrical.ampacity import table_ampacity
from calc.electrical.cable import UNMARKED_INSULATION
from calc.electrical.conductors import GaugeReading
from calc.electrical.contact import SMALL_DROP
from calc.faults import graph
from calc.faults.graph import Reads, Symptom, WayIn
from calc.faults.model import SoundCircuit
from calc.faults.walk import Values, Walk, limits, walk
from calc.units.constants import DAY, HOUR
from calc.units.si import Amperes, Coulombs, Ohms, Seconds, Share, Tag, Volts
from calc.worksheet.formula import work

# A winter night, from dusk till the sun is up: common practice, no source
NIGHT: Annotated[Seconds, Tag("long winter night")] = 14 * HOUR


@dataclass(frozen=True, kw_only=True)
class FaultSearch:
    """A search for what is behind a `symptom`, as far as it has come (`at`).

    `standby` and `idle` are what may flow with everything off, and with the inverter on; `limit`
    is the share that the cable may drop, `cutoff` the voltage at which the inverter gives up.
    `ampacity` is the conductor's with unmarked insulation, None where no table has it.
    """

    symptom: Symptom
    circuit: SoundCircuit
    standby: Amperes
    idle: Amperes
    limit: Share
    cutoff: Volts
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
    def danger(self) -> bool:
        """Whether what stands here must be made safe first."""
        return bool((self.at.end and self.at.end.danger) or (self.at.step and self.at.step.danger))

    @property
    def reads(self) -> Reads | None:
        """What the meter reads at this step, None where there is nothing to measure."""
        return self.at.step.reads if self.at.step else None

    @property
    def cited(self) -> frozenset[str]:
        """The sources of the limits that this step's readings are held against."""
        names = limits(self.at.step) if self.at.step else ()
        return frozenset(graph.criteria()[name].source for name in names)

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
            }
        )

    def _expected(self, reads: Reads) -> float | None:
        step = self.at.step
        if step is None or step.reads is not reads:
            return None
        return float(work(step.expects, self.values))

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
) -> FaultSearch:
    """Return where the search for a `symptom` stands after the turns of `path`.

    A path that makes no sense from some point on is followed so far. `standby` and `idle` [A],
    `limit` [0..1], `cutoff` [V]. Raises NotCovered for an unknown symptom.
    """
    name = circuit.run.laid.run.conductor
    return FaultSearch(
        symptom=Symptom(symptom),
        circuit=circuit,
        standby=standby,
        idle=idle,
        limit=limit,
        cutoff=cutoff,
        ampacity=table_ampacity(
            name, insulation=UNMARKED_INSULATION, gauge_reading=GaugeReading.AWG
        ),
        at=walk(symptom, path),
    )

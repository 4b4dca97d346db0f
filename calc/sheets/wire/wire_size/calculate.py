"""wire-size from its fields: the circuit, the conductor it needs, and the picture of its series."""

from dataclasses import dataclass

from calc.electrical import fuses
from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.conductors import Finish, GaugeReading, Series, Strands
from calc.electrical.drop import largest_current
from calc.electrical.easier_circuit import remedies
from calc.electrical.sizing import CHARGED, Circuit, SizedCircuit, size_circuit
from calc.judge import Change
from calc.judge.remedies import Remedy
from calc.worksheet.pictures import Rung

SHOWN = 5  # rungs


@dataclass(frozen=True, kw_only=True)
class WireSize:
    """The conductor of a circuit; `remedies` are for where no size does, `rungs` for the picture."""

    sized: SizedCircuit
    remedies: tuple[Remedy[Change, SizedCircuit], ...]
    rungs: tuple[Rung, ...]


def calculate(
    *,
    current: float,
    length: float,
    voltage: float,
    limit: float,
    insulation: str,
    series: Series,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    rule_set: RuleSet,
    temperature: float,
    finish: Finish,
    strands: Strands,
    gauge_reading: GaugeReading,
    parallel: float,
    terminals: float | None,
) -> WireSize:
    """Return the conductor for a run of one-way `length` [m] at `current` [A], or why none does.

    `voltage` [V] is nominal and `limit` the share of it that may be lost; `insulation` by its name,
    `ambient`, the copper's `temperature` and the rating of its
    `terminals` [°C]. Raises NotCovered where the rule set has no
    figure for any size.
    """
    circuit = Circuit(
        current=current,
        length=length,
        voltage=voltage,
        limit=limit,
        max_voltage=CHARGED * voltage,
        series=series,
        parallel=parallel,
        temperature=temperature,
        finish=finish,
        strands=strands,
        gauge_reading=gauge_reading,
        insulation=insulation_rating(insulation),
        surroundings=surroundings,
        bundled=bundled,
        ambient=ambient,
        rule_set=rule_set,
        terminals=terminals,
    )
    sized = size_circuit(circuit)
    return WireSize(
        sized=sized, remedies=() if sized.chosen else remedies(sized), rungs=_rungs(sized)
    )


def _rungs(sized: SizedCircuit) -> tuple[Rung, ...]:
    """Return the sizes around the chosen one, or the thickest, each with the load it allows [A]."""
    circuit, sizes = sized.circuit, sized.sizes
    place = sizes.index(sized.chosen) if sized.chosen else len(sizes)
    first = max(0, min(place - SHOWN // 2, len(sizes) - SHOWN))
    return tuple(
        Rung(
            size.name,
            by_drop=circuit.parallel
            * largest_current(
                allowed=circuit.allowed, length=circuit.length, per_length=size.per_length
            ),
            by_heat=circuit.parallel * size.largest_fuse / fuses.CONTINUOUS,
            chosen=size is sized.chosen,
        )
        for size in sizes[first : first + SHOWN]
    )

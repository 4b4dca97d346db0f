"""What lets a conductor do for a circuit for which none does: changes, worked anew.

In scope: one change at a time. What several together would do is left to the reader.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Annotated, Any

from calc.electrical.ampacity import Surroundings, insulation_name, insulation_rating, ratings
from calc.electrical.cable import ONE_CIRCUIT, USUAL_INSULATION
from calc.electrical.drop import longest_run
from calc.electrical.sizing import ALONE, Circuit, SizedCircuit, protected, size_circuit
from calc.judge import Change
from calc.judge.remedies import Remedy, of_each_kind
from calc.units.si import Metres, Tag

NOMINAL = (12.0, 24.0, 48.0)  # V
MOST_PARTS = 4  # conductors side by side, or runs, that are tried: our choice
# Shorter ones are no remedy: our choice
SHORTEST: Annotated[Metres, Tag("shortest run worth naming")] = 0.1


def changed(circuit: Circuit, change: Change) -> Circuit:
    """Return a `circuit` with a `change` of it. An insulation goes by its name.

    The highest voltage stays in proportion to the nominal one.
    """
    values: dict[str, Any] = dict(change.values)
    if "insulation" in values:
        values["insulation"] = insulation_rating(values["insulation"])
    if "voltage" in values:
        values["max_voltage"] = circuit.charge_ratio * values["voltage"]
    return replace(circuit, **values)


def remedies(sized: SizedCircuit) -> tuple[Remedy[Change, SizedCircuit], ...]:
    """Return the changes that let a size of the series do, of each kind the smallest, worked anew.

    Conductors in parallel laid apart, a shorter run, a higher nominal voltage, conductors in
    parallel, hotter insulation that is on sale, no bundle, a way outside the engine space, and the
    load on separate runs.
    """
    circuit = sized.circuit

    def does(change: Change) -> SizedCircuit | None:
        after = size_circuit(changed(circuit, change))
        return after if after.chosen else None

    return of_each_kind(_kinds_of_change(sized), does)


def _kinds_of_change(sized: SizedCircuit) -> Iterator[Iterator[Change]]:
    """Yield each kind of change, its smallest first."""
    circuit = sized.circuit
    if circuit.parallel > 1 and circuit.bundled > ALONE:
        yield iter((Change({"bundled": ALONE}),))
    yield _shorter(sized)
    yield (
        Change({"voltage": volts, "current": circuit.current * circuit.voltage / volts})
        for volts in NOMINAL
        if volts > circuit.voltage
    )
    first = int(circuit.parallel) + 1
    yield (Change({"parallel": float(n)}) for n in range(first, MOST_PARTS + 1))
    yield (
        Change({"insulation": insulation_name(rating)})
        for rating in ratings(circuit.rule_set)
        if circuit.insulation < rating <= USUAL_INSULATION
    )
    if circuit.together > ONE_CIRCUIT and circuit.parallel == 1:
        yield iter((Change({"bundled": ONE_CIRCUIT}),))
    if circuit.surroundings is Surroundings.INSIDE:
        yield iter((Change({"surroundings": Surroundings.OUTSIDE}),))
    yield (Change({"current": circuit.current / n}) for n in range(2, MOST_PARTS + 1))


def _shorter(sized: SizedCircuit) -> Iterator[Change]:
    """Yield the longest run of the thickest size that carries the load and has a fuse."""
    circuit = sized.circuit
    for size in reversed(sized.sizes):
        if protected(size, circuit) is not None:
            length = longest_run(circuit.each, size.per_length, circuit.allowed)
            if SHORTEST < length < circuit.length:
                yield Change({"length": length})
            return

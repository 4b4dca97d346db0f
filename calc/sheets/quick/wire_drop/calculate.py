"""What wire-drop works out: the run's resistance, its drop, and the size that would do."""

from dataclasses import dataclass

from calc.electrical import conductors
from calc.electrical.ampacity import ampacity_by_copper, bears
from calc.electrical.conductors import (
    SAE,
    STRANDED,
    ZERO_RESISTANCE,
    Finish,
    GaugeReading,
    Strands,
    at_temperature,
    copper_area,
    resistance_per_length,
    tabulated,
)
from calc.electrical.drop import longest_run, loop_resistance, thinnest_within
from calc.electrical.sizing import THINNEST_PARALLEL, offered
from calc.sheets.parts.fields import wires

REFERENCE = 20.0  # °C, at which a maker states resistance


@dataclass(frozen=True, kw_only=True)
class WireDrop:
    """Drop [V] of a run and what leads to it; None where there is no real figure.

    `carries` is what the wires bear together [A] with 105 °C insulation, `carries_60` with 60 °C,
    `alone` what one of them bears so; where `below_table`, by its share of the copper of the thinnest
    size in the table. `sae_share` is how much less copper the SAE size has.
    """

    gauge_resistance: float
    gauge_area: float
    sae_area: float
    sae_share: float | None
    reference: float
    zero: float
    stated: float
    per_length: float
    resistance: float
    feeds: float
    flows: bool
    drop: float | None
    drop_percent: float | None
    loss: float | None
    load_voltage: float | None
    allowed: float
    longest_run: float
    smallest_conductor: str | None
    thinnest_bears: float | None
    from_maker: bool
    metric: bool
    as_sae: bool
    class_2: bool
    computed: bool
    wires: str
    too_thin_to_join: bool
    below_table: bool
    carries: float
    carries_60: float
    alone: float


def run(
    *, current: float, length: float, conductor: str, voltage: float, limit: float, temperature: float,
    finish: Finish, maker_resistance: float | None, strands: Strands, gauge_reading: GaugeReading, parallel: float,
) -> WireDrop:
    """Return what a two-conductor run of one-way `length` [m] loses at `current` [A]."""
    size = conductors.conductor(conductor)
    copper = copper_area(conductor, gauge_reading)
    from_maker = maker_resistance is not None
    printed = tabulated(conductor, finish=finish, strands=strands)
    stated = maker_resistance if maker_resistance is not None else printed * size.area / copper
    reference = REFERENCE if from_maker else size.reference
    per_length = at_temperature(stated, reference, temperature)
    resistance = loop_resistance(length, per_length) / parallel
    drop = current * resistance
    flows = drop < voltage
    sizes = tuple(
        (one.name, resistance_per_length(one.name, temperature, finish=finish, strands=strands, gauge_reading=gauge_reading) / parallel)
        for one in offered(size.series, gauge_reading, conductor)
    )
    thinnest = thinnest_within(sizes, length, current, limit * voltage)
    metric = size.series == "mm2"
    return WireDrop(
        gauge_resistance=printed,
        gauge_area=size.area,
        sae_area=copper,
        sae_share=1 - size.sae_area / size.area if size.sae_area else None,
        reference=reference,
        zero=-ZERO_RESISTANCE,
        stated=stated,
        per_length=per_length,
        resistance=resistance,
        feeds=voltage / resistance,
        flows=flows,
        drop=drop if flows else None,
        drop_percent=drop / voltage if flows else None,
        loss=current * drop if flows else None,
        load_voltage=voltage - drop if flows else None,
        allowed=limit * voltage,
        longest_run=longest_run(current, per_length / parallel, limit * voltage),
        smallest_conductor=thinnest,
        thinnest_bears=parallel * ampacity_by_copper(thinnest, insulation=105, gauge_reading=gauge_reading) if thinnest else None,
        from_maker=from_maker,
        metric=metric,
        as_sae=gauge_reading == SAE and not metric,
        class_2=metric and strands == STRANDED,
        computed=size.computed,
        wires=wires(conductor, int(parallel), gauge_reading),
        too_thin_to_join=parallel > 1 and copper < conductors.conductor(THINNEST_PARALLEL).area,
        below_table=bears(conductor, gauge_reading=gauge_reading) is None,
        carries=parallel * ampacity_by_copper(conductor, insulation=105, gauge_reading=gauge_reading),
        carries_60=parallel * ampacity_by_copper(conductor, insulation=60, gauge_reading=gauge_reading),
        alone=ampacity_by_copper(conductor, insulation=60, gauge_reading=gauge_reading),
    )

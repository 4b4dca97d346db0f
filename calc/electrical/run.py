"""A run of copper, out and back: its resistance, and what it does to a current.

In scope: steady direct current through like conductors at one temperature. Out of scope: joints,
fuses and switches on the way, and whether the conductor can carry the current
(`calc.electrical.cable`).
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Annotated, Any

from calc.electrical.conductors import (
    COPPER_ZERO_RESISTANCE,
    Copper,
    Finish,
    GaugeReading,
    Series,
    Strands,
    at_temperature,
    conductor,
    copper_of,
    tabulated,
)
from calc.electrical.drop import loop_resistance
from calc.units.compare import at_most
from calc.units.si import (
    Amperes,
    Celsius,
    Count,
    Metres,
    Ohms,
    OhmsPerMetre,
    Share,
    Tag,
    Volts,
    Watts,
)

# At which makers state resistance, as IEC 60228 does
STATED_AT: Annotated[Celsius, Tag("temperature of a maker's resistance")] = 20.0
THINNEST_PARALLEL = "1/0 AWG"  # NEC 310.10(G): sizes that may be joined in parallel


@dataclass(frozen=True, kw_only=True)
class Run:
    """What is laid: `parallel` like conductors each way over a one-way `length`.

    `temperature` is the copper's at work. `maker_resistance` is that of one conductor at 20 °C,
    where it is known better than from the published table.
    """

    conductor: str
    length: Metres
    parallel: Count
    temperature: Celsius
    finish: Finish
    strands: Strands
    gauge_reading: GaugeReading
    maker_resistance: OhmsPerMetre | None

    @property
    def metric(self) -> bool:
        """Whether the size is named by its area."""
        return conductor(self.conductor).series is Series.METRIC

    @property
    def class_2(self) -> bool:
        """Whether a metric size has the strands of stiffer cable."""
        return self.strands is Strands.STRANDED and self.metric

    @property
    def from_maker(self) -> bool:
        """Whether the resistance is the maker's and not a table's."""
        return self.maker_resistance is not None

    @property
    def designation(self) -> str:
        """What is laid for one pole, as it is written: `2 × 4 AWG (SAE)`."""
        return designation(self.conductor, self.parallel, self.gauge_reading)


@dataclass(frozen=True, kw_only=True)
class RunResult:
    """The resistance of a run and what leads to it.

    `gauge_resistance` is one conductor's as printed for the area in its name, `copper` what it
    holds as read; `stated` is the resistance per length at the `reference`, `per_length` at work,
    `resistance` that of the whole run, out and back.
    """

    run: Run
    copper: Copper
    gauge_resistance: OhmsPerMetre
    reference: Celsius
    stated: OhmsPerMetre
    per_length: OhmsPerMetre
    resistance: Ohms

    @property
    def zero(self) -> Celsius:
        """Where copper's resistance would be none, by its slope near room temperature."""
        return COPPER_ZERO_RESISTANCE

    @property
    def computed(self) -> bool:
        """Whether the table has no row for so thin a gauge, and IACS copper stands in."""
        return conductor(self.run.conductor).computed

    @property
    def read_copper(self) -> Copper | None:
        """The copper as it is read from a table, None where the maker's resistance stands in."""
        return None if self.run.from_maker else self.copper

    @property
    def too_thin_to_join(self) -> bool:
        """Whether NEC joins no conductors so thin in parallel, and some are."""
        return self.run.parallel > 1 and self.copper.area < conductor(THINNEST_PARALLEL).area


@dataclass(frozen=True, kw_only=True)
class LoadedRun:
    """A run that carries `current` from a supply of `voltage`: what is lost on the way.

    `limit` is the share of the supply that may be lost. `short_circuit` is what the run would pass
    with its far end shorted. No more can flow: from there on `drop`, `drop_share`, `loss` and
    `load_voltage` are None.
    """

    laid: RunResult
    current: Amperes
    voltage: Volts
    limit: Share
    short_circuit: Amperes
    drop: Volts | None
    drop_share: Share | None
    loss: Watts | None
    load_voltage: Volts | None

    @property
    def flows(self) -> bool:
        """Whether the current can flow at all."""
        return self.drop is not None

    @property
    def allowed(self) -> Volts:
        """The drop that is allowed."""
        return self.limit * self.voltage

    def within(self, share: float) -> bool:
        """Return whether the current flows and no more than `share` of the supply is lost."""
        return self.drop_share is not None and at_most(self.drop_share, share)


def plain_run(*, conductor: str, length: float, temperature: float) -> RunResult:
    """Return one plain, flexible conductor each way over `length` [m] at `temperature` [°C].

    Raises NotCovered for a conductor that is not in the tables.
    """
    return run_of(
        Run(
            conductor=conductor,
            length=length,
            parallel=1.0,
            temperature=temperature,
            finish=Finish.PLAIN,
            strands=Strands.FLEXIBLE,
            gauge_reading=GaugeReading.AWG,
            maker_resistance=None,
        )
    )


def run_of(run: Run) -> RunResult:
    """Return the resistance of a `run`, out and back.

    R = 2 L r / n, with r by the published table of its series (`calc.electrical.conductors`), or by
    the maker, at the temperature of the copper. Raises NotCovered where no SAE area is published.
    """
    copper, printed, stated, reference = _published(
        run.conductor, run.finish, run.strands, run.gauge_reading
    )
    if run.maker_resistance is not None:
        stated, reference = run.maker_resistance, STATED_AT
    per_length = at_temperature(stated, reference, run.temperature)
    return RunResult(
        run=run,
        copper=copper,
        gauge_resistance=printed,
        reference=reference,
        stated=stated,
        per_length=per_length,
        resistance=loop_resistance(run.length, per_length) / run.parallel,
    )


@lru_cache(256, typed=True)
def _published(
    name: str, finish: Finish, strands: Strands, gauge_reading: GaugeReading
) -> tuple[Copper, OhmsPerMetre, OhmsPerMetre, Celsius]:
    """Return a conductor's copper, its printed resistance, that by its own area, and at which."""
    one, copper = conductor(name), copper_of(name, gauge_reading)
    printed = tabulated(name, finish=finish, strands=strands)
    return copper, printed, printed * one.area / copper.area, one.reference


def loaded(laid: RunResult, *, current: float, voltage: float, limit: float) -> LoadedRun:
    """Return what a run loses at `current` [A] from a supply of `voltage` [V]. Ohm's law.

    `limit` is the share of the supply that may be lost.
    """
    drop = current * laid.resistance
    flows = drop < voltage
    return LoadedRun(
        laid=laid,
        current=current,
        voltage=voltage,
        limit=limit,
        short_circuit=voltage / laid.resistance,
        drop=drop if flows else None,
        drop_share=drop / voltage if flows else None,
        loss=current * drop if flows else None,
        load_voltage=voltage - drop if flows else None,
    )


def again(run: LoadedRun, **change: Any) -> LoadedRun:
    """Return a loaded run with a `change` of what is laid, worked anew. Raises NotCovered."""
    laid = run_of(replace(run.laid.run, **change))
    return loaded(laid, current=run.current, voltage=run.voltage, limit=run.limit)


def designation(name: str, parallel: float, gauge_reading: GaugeReading) -> str:
    """Return what is laid for one pole, as it is written: `2 × 4 AWG (SAE)`."""
    read_as_sae = gauge_reading is GaugeReading.SAE and name.endswith("AWG")
    return f"{f'{parallel:g} × ' if parallel > 1 else ''}{name}{' (SAE)' if read_as_sae else ''}"

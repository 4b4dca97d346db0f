"""converter from its fields: what is laid for both sides, and the ways on."""

from typing import Annotated

from calc.electrical import converter as book
from calc.electrical.ampacity import RuleSet, Surroundings, insulation_name, insulation_rating
from calc.electrical.conductors import Finish, GaugeReading, Series, Strands
from calc.electrical.converter import (
    Converter,
    ConverterLabel,
    Feed,
    Isolation,
    RatedFor,
    System,
)
from calc.electrical.sizing import Circuit
from calc.units.kinds import CURRENT
from calc.units.si import Celsius, Tag
from calc.worksheet.fields import Measured
from calc.worksheet.next_steps import NextStep

# A warm, well loaded wire, as wire size takes it: common practice, no source
_WARM: Annotated[Celsius, Tag("copper at work in a converter's cables")] = 60.0


def calculate(
    *,
    system: System,
    lowest: float,
    highest: float,
    output_voltage: float,
    load: Measured,
    rated: float,
    rated_for: RatedFor,
    efficiency: float,
    standby: Measured,
    load_hours: float,
    on_hours: float,
    input_length: float,
    output_length: float,
    limit: float,
    insulation: str,
    series: Series,
    power: float,
    power_length: float,
    fault_current: float,
    isolation: Isolation,
    input_low: float,
    input_high: float,
    ambient: float,
    rated_to: float,
    derating: float,
    bundled: float,
) -> Converter:
    """Return what a converter does, its cables and fuses, and what other voltages would save.

    Voltages [V]; `load` is a current or a power at the output, `standby` one at the input; `rated`
    [A] at the output; times [s] of a day; lengths [m] one way; `power` [W] is the largest load of the bank itself; temperatures [°C].
    Raises NotCovered.
    """
    current = load.value if load.kind is CURRENT else load.value / output_voltage
    laid = Circuit(
        current=current,
        length=input_length,
        voltage=system.volts,
        limit=limit,
        max_voltage=highest,
        series=series,
        parallel=1.0,
        temperature=_WARM,
        finish=Finish.PLAIN,
        strands=Strands.FLEXIBLE,
        gauge_reading=GaugeReading.AWG,
        insulation=insulation_rating(insulation),
        surroundings=Surroundings.OUTSIDE,
        bundled=bundled,
        ambient=ambient,
        rule_set=RuleSet.CFR33,
    )
    label = ConverterLabel(
        input_low=input_low,
        input_high=input_high,
        output=output_voltage,
        rated=rated,
        rated_for=rated_for,
        rated_to=rated_to,
        derating=derating,
        efficiency=efficiency,
        standby=standby.value if standby.kind is CURRENT else standby.value / system.volts,
        isolation=isolation,
    )
    return book.converter(
        label=label,
        feed=Feed(system=system, lowest=lowest, highest=highest, fault_current=fault_current),
        load=current,
        load_time=load_hours,
        on_time=on_hours,
        air=ambient,
        laid=laid,
        output_length=output_length,
        power=power,
        power_length=power_length,
    )


def onward(found: Converter) -> tuple[NextStep, ...]:
    """Return where its input cable, that cable's fuse and the heat it makes are worked out."""
    taken = f"{found.input_current:.4g} A"
    circuit = found.input.sized.circuit
    cable = (
        ("current", taken),
        ("length", f"{circuit.length:.6g} m"),
        ("voltage", f"{circuit.voltage:g} V"),
    )
    fuse = (
        ("current", taken),
        ("insulation", insulation_name(circuit.insulation)),
        ("voltage", f"{found.feed.highest:.4g} V"),
        ("fuse_place", "at-the-battery"),
        ("fault_current", f"{found.feed.fault_current:.6g} A"),
    )
    chosen = found.input.sized.chosen
    ways = [NextStep("Cable to the converter", cable, "wire-size")]
    if chosen is not None and found.input_current <= 600:
        ways.append(
            NextStep("Fuse on that cable", (*fuse, ("conductor", chosen.name)), "fuse-choice")
        )
    heat = (
        ("throughput", f"{found.output_power:.6g} W"),
        ("efficiency", f"{found.label.efficiency * 100:g} %"),
    )
    return (*ways, NextStep("Airflow for its heat", heat, "enclosure-airflow"))

"""fault-current from its fields: the bank, the run, its shorts, and the fuse if one is named."""

from calc.electrical.clearing import FarEnd, FaultStudy, fault_study
from calc.electrical.conductors import Finish, GaugeReading, Strands
from calc.electrical.fault_source import SourceKnown, TwoReadings, short_source
from calc.electrical.opening import Fuse
from calc.electrical.run import Run
from calc.electrical.short_circuit import short_circuit
from calc.energy.battery import Chemistry
from calc.sheets.parts.fuse_families import NOT_NAMED
from calc.units.compare import at_least
from calc.units.covered import NotCovered
from calc.units.kinds import CURRENT, VOLTAGE
from calc.units.shown import quantity_text
from calc.worksheet.fields import Measured


def calculate(
    *,
    voltage: float,
    known: SourceKnown,
    source_resistance: Measured,
    open_voltage: float,
    loaded_voltage: float,
    loaded_current: float,
    meter_error: float,
    chemistry: Chemistry,
    capacity: float,
    batteries: float,
    series: float,
    each_fused: str,
    conductor: str,
    length: float,
    insulation: str,
    joints: float,
    fuse: float | None,
    fuse_family: str,
    fuse_voltage: float | None,
    far_end: FarEnd,
    let_through: float | None,
    opening_time: float | None,
    joint_resistance: float,
    temperature: float,
    ageing: float,
    empty: float,
    highest_voltage: float | None,
    gauge_reading: GaugeReading,
    strands: Strands,
    finish: Finish,
    parallel: float,
    inductance: float | None,
) -> FaultStudy:
    """Return the currents of a dead short on a run, and whether wire and fuse are up to them.

    Raises NotCovered for a highest voltage below that at rest, readings that tell nothing, or
    lithium that is to be estimated.
    """
    if highest_voltage is not None and not at_least(highest_voltage, voltage):
        rest = quantity_text(voltage, VOLTAGE)
        raise NotCovered("highest_voltage", f"must be no less than the bank at rest, {rest}.")
    as_current = source_resistance.kind is CURRENT
    source = short_source(
        voltage=voltage,
        known=known,
        strings=batteries,
        series=series,
        maker_resistance=None if as_current else source_resistance.value,
        maker_current=source_resistance.value if as_current else None,
        readings=TwoReadings(
            open_voltage=open_voltage,
            loaded_voltage=loaded_voltage,
            current=loaded_current,
            error=meter_error,
        ),
        chemistry=chemistry,
        capacity=capacity,
        each_fused=each_fused == "yes",
    )
    run = Run(
        conductor=conductor,
        length=length,
        parallel=parallel,
        temperature=temperature,
        finish=finish,
        strands=strands,
        gauge_reading=gauge_reading,
        maker_resistance=None,
    )
    short = short_circuit(
        source=source,
        run=run,
        insulation_name=insulation,
        joints=joints,
        joint=joint_resistance,
        ageing=ageing,
        empty=empty,
        max_voltage=highest_voltage,
        inductance=inductance,
    )
    family = None if fuse_family == NOT_NAMED else fuse_family
    return fault_study(
        short,
        fuse=Fuse(family, fuse) if fuse is not None else None,
        opening_time=opening_time,
        let_through=let_through,
        printed=fuse_voltage,
        far_end=far_end,
    )

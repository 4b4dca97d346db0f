"""The sum behind fault-current: the bank, the loop at its two ends, the wire and its fuse."""

from dataclasses import dataclass

from calc.electrical import fuses
from calc.electrical import short_circuit as faults
from calc.electrical.ampacity import bears
from calc.electrical.conductors import (
    SAE,
    STRANDED,
    Conductor,
    Finish,
    GaugeReading,
    Strands,
    at_temperature,
    conductor,
    copper_area,
    tabulated,
)
from calc.electrical.drop import loop_resistance
from calc.sheets.wire.fault_current.fields import ESTIMATE, MAKER, READINGS, problem
from calc.sheets.wire.fault_current.fuse import what_the_fuse_does
from calc.units.compare import at_least, at_most
from calc.units.covered import NotCovered
from calc.units.kinds import CURRENT, VOLTAGE
from calc.units.shown import quantity_text
from calc.worksheet.fields import Measured

ZERO = -234.5  # °C
ROUGH = 0.25  # share of the sag that the meter may be off before the band is called wide
APART = 0.1  # share by which a reading may differ from the bank's voltage before it is doubted
EARLY = 0.001  # s
THINNEST = "18 AWG"  # the first row of the table of what a wire bears for hours


@dataclass(frozen=True, kw_only=True)
class FaultCurrent:
    """Highest and lowest short [A], what the wire bears [s, A²·s] and what its fuse does.

    `near` is a short right behind the fuse, at the source. Whatever hangs on a fuse is None where
    none is named, and whatever a text does not tell is None too.
    """

    per_amp_hour_low: float | None
    per_amp_hour_high: float | None
    per_amp_hour_most: float | None
    usual_low: float | None
    usual_high: float | None
    sag: float | None
    off: float | None
    one_low: float
    one_high: float
    source_low: float
    source_high: float
    reference: float
    zero: float
    gauge_resistance: float
    named_area: float
    stated: float
    per_length: float
    cable: float
    least_stated: float
    annealed_at: float
    per_length_least: float
    cable_least: float
    joints_total: float
    resistance: float
    resistance_low: float
    fault_current: float
    interrupt_needed: float | None
    near_fault: float
    interrupt_near: float | None
    hot: float
    per_length_hot: float
    cable_hot: float
    lowest_voltage: float
    resistance_high: float
    fault_low: float
    per_length_warm: float
    cable_warm: float
    low_start: float
    copper: float
    initial: float
    k: float
    area: float
    energy_limit: float
    withstand: float
    withstand_low: float
    withstand_near: float
    charging: float
    ceiling: float
    charged: float
    breaks: float | None
    opens: str
    fuse_time: float | None
    ampacity: float | None
    all_bear: float
    version: float | None
    tested_at: float | None
    fuse_percent: float | None
    overheated: bool
    time_constant: float | None
    settled: float | None
    early: float | None
    computed: bool
    metric: bool
    class_2: bool
    sae: bool
    listed: bool
    as_current: bool
    rough: bool
    other_bank: bool
    voltage_too_low: bool
    cannot_break: bool
    too_big: bool
    far_too_big: bool
    slow_arc: bool
    close: bool
    typed: bool
    arc_left_out: bool
    other_fault: bool
    unrated: bool
    not_made: bool
    breaks_from_memory: bool
    by_standard: bool
    from_memory: bool


def run(
    *, voltage: float, known: str, source_resistance: Measured, open_voltage: float, loaded_voltage: float,
    loaded_current: float, meter_error: float, chemistry: str, capacity: float, batteries: float, series: float,
    conductor: str, length: float, temperature: float, joints: float, joint_resistance: float, insulation: str,
    fuse: float | None, fuse_family: str, let_through: float | None, opening_time: float | None,
    highest_voltage: float | None, empty: float, ageing: float, gauge_reading: GaugeReading,
    strands: Strands, finish: Finish, parallel: float, inductance: float | None,
) -> FaultCurrent:
    """Return the currents of a dead short on a run, and whether wire and fuse are up to them."""
    around = faults.insulation(insulation)
    if highest_voltage is not None and not at_least(highest_voltage, voltage):
        raise problem("highest_voltage", f"must be no less than the bank at rest, {quantity_text(voltage, VOLTAGE)}.")
    per_amp_hour: tuple[float, float, float] | None = None
    try:
        if known == ESTIMATE:
            rates = faults.short_circuit_current_per_ah(chemistry)
            per_amp_hour = rates.low, rates.usual, rates.most
            least, _, most = (rate * capacity for rate in per_amp_hour)
            one = faults.Range(voltage / most, voltage / least)
        elif known == READINGS:
            one = faults.from_two_readings(
                open_voltage=open_voltage, loaded_voltage=loaded_voltage, current=loaded_current, error=meter_error
            )
        else:
            ohms = _stated(source_resistance, voltage / series)
            one = faults.Range(ohms, ohms)
        area = copper_area(conductor, gauge_reading)
    except NotCovered as gap:
        raise problem(gap.parameter, gap.accepted) from None
    in_series = series if known == MAKER else 1.0
    source_low, source_high = (
        faults.parallel_strings(resistance=ohms, series=in_series, strings=batteries) for ohms in (one.low, one.high)
    )
    size = _named(conductor)
    gauge_resistance = tabulated(conductor, finish=finish, strands=strands)
    stated = gauge_resistance * size.area / area
    per_length = at_temperature(stated, size.reference, temperature)
    per_length_warm = at_temperature(stated, size.reference, around.initial)
    per_length_hot = at_temperature(stated, size.reference, around.final)
    least_stated = faults.least_resistance(area=size.area)
    per_length_least = at_temperature(least_stated, faults.ANNEALED_AT, temperature)
    cable, cable_least = (loop_resistance(length, ohms) / parallel for ohms in (per_length, per_length_least))
    # one of several may lie alone, come off its stud: the lowest short is through one each way
    cable_warm, cable_hot = (loop_resistance(length, ohms) for ohms in (per_length_warm, per_length_hot))
    joints_total = joints * joint_resistance
    lowest_voltage = empty * voltage
    resistance = source_low + cable + joints_total
    resistance_low = source_low + cable_least + joints_total
    worn = (source_high + joints_total) * (1 + ageing)
    resistance_high = worn + cable_hot
    low_start = lowest_voltage / (worn + cable_warm)
    fault_current, near_fault, fault_low = voltage / resistance_low, voltage / source_low, lowest_voltage / resistance_high
    k = faults.heat_coefficient(initial=around.initial, final=around.final)
    energy = faults.joule_integral(k=k, area=area)
    usual = tuple(rate * capacity * batteries for rate in per_amp_hour) if per_amp_hour else (None, None)
    charged = highest_voltage if highest_voltage is not None else faults.CHARGE_TO_REST_RATIO * voltage
    time_constant = inductance / resistance_low if inductance is not None else None
    tested_at = faults.tested_time_constant(fault_current) if inductance is not None else None
    withstand_low = faults.withstand(energy=energy, current=low_start)
    column = _column(around.initial)
    carries = bears(conductor, column, gauge_reading)
    one_bears = carries if carries is not None else bears(THINNEST, column) or 0.0
    guarded = what_the_fuse_does(
        fuse, fuse_family, near_fault, fault_low, withstand_low, one_bears, energy, charged, opening_time, let_through
    )
    return FaultCurrent(
        per_amp_hour_low=per_amp_hour[0] if per_amp_hour else None,
        per_amp_hour_high=per_amp_hour[1] if per_amp_hour else None,
        per_amp_hour_most=per_amp_hour[2] if per_amp_hour else None,
        usual_low=usual[0],
        usual_high=usual[1],
        sag=open_voltage - loaded_voltage if known == READINGS else None,
        off=2 * meter_error if known == READINGS else None,
        one_low=one.low,
        one_high=one.high,
        source_low=source_low,
        source_high=source_high,
        reference=size.reference,
        zero=ZERO,
        gauge_resistance=gauge_resistance,
        named_area=size.area,
        stated=stated,
        per_length=per_length,
        cable=cable,
        least_stated=least_stated,
        annealed_at=faults.ANNEALED_AT,
        per_length_least=per_length_least,
        cable_least=cable_least,
        joints_total=joints_total,
        resistance=resistance,
        resistance_low=resistance_low,
        fault_current=fault_current,
        interrupt_needed=faults.interrupting_class(fault_current),
        near_fault=near_fault,
        interrupt_near=faults.interrupting_class(near_fault),
        hot=around.final,
        per_length_hot=per_length_hot,
        cable_hot=cable_hot,
        lowest_voltage=lowest_voltage,
        resistance_high=resistance_high,
        fault_low=fault_low,
        per_length_warm=per_length_warm,
        cable_warm=cable_warm,
        low_start=low_start,
        copper=faults.K_COPPER,
        initial=around.initial,
        k=k,
        area=area,
        energy_limit=energy,
        withstand=faults.withstand(energy=energy, current=fault_current),
        withstand_low=withstand_low,
        withstand_near=faults.withstand(energy=energy, current=near_fault),
        charging=faults.CHARGE_TO_REST_RATIO,
        ceiling=fuses.CEILING,
        charged=charged,
        ampacity=carries,
        all_bear=parallel * one_bears,
        tested_at=tested_at,
        fuse_percent=fault_low / fuse if fuse else None,
        overheated=not at_most(temperature, around.initial),
        time_constant=time_constant,
        settled=3 * time_constant if time_constant is not None else None,
        early=faults.current_after(current=fault_current, time=EARLY, time_constant=time_constant)
        if time_constant is not None
        else None,
        computed=size.computed,
        metric=size.series != "AWG",
        class_2=size.series != "AWG" and strands == STRANDED,
        sae=size.series == "AWG" and gauge_reading == SAE,
        listed=around.listed,
        as_current=source_resistance.kind is CURRENT,
        rough=known == READINGS and 2 * meter_error > ROUGH * (open_voltage - loaded_voltage),
        other_bank=known == READINGS and abs(open_voltage - voltage) > APART * voltage,
        too_big=fuse is not None and (carries is None or not at_most(fuse, carries)),
        far_too_big=fuse is not None and not at_most(fuse, fuses.CEILING * parallel * one_bears),
        slow_arc=time_constant is not None and tested_at is not None and not at_most(time_constant, tested_at),
        **guarded,
    )


def _stated(given: Measured, voltage: float) -> float:
    """Return the resistance [ohm] of one battery of `voltage` [V], from either way to state it."""
    if given.kind is CURRENT:
        return faults.from_short_circuit_current(voltage=voltage, current=given.value)
    return given.value


def _column(initial: float) -> float:
    """Return the column [°C] of 33 CFR's table that an insulation may be read in."""
    return max(rating for rating in (60.0, 90.0, 105.0) if rating <= initial)


def _named(name: str) -> Conductor:  # the field is called `conductor` too
    return conductor(name)

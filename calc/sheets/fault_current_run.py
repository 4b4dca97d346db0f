"""The sum behind fault-current: the bank, the loop at its two ends, the wire and its fuse."""

from dataclasses import dataclass
from typing import Any

from calc.compare import at_least, at_most
from calc.electrical import clearing, faults, fuses, ladder
from calc.electrical.ampacity import bears
from calc.electrical.conductors import (
    FLEXIBLE,
    PLAIN,
    SAE,
    Conductor,
    NotCovered,
    at_temperature,
    conductor,
    copper_area,
    tabulated,
)
from calc.electrical.drop import loop_resistance
from calc.fields import Measured
from calc.kinds import CURRENT
from calc.sheets.fault_current_fields import ESTIMATE, MAKER, READINGS, problem

ZERO = -234.5  # °C
ROUGH = 0.25  # share of the sag that the meter may be off before the band is called wide
APART = 0.1  # share by which a reading may differ from the bank's voltage before it is doubted
EARLY = 0.001  # s
NO_FUSE = "no fuse named"


@dataclass(frozen=True, kw_only=True)
class FaultCurrent:
    """Highest and lowest short [A], what the wire bears [s, A²·s] and what its fuse does.

    `near` is a short right behind the fuse, at the source. Whatever hangs on a fuse is None where
    none is named, and whatever a text does not tell is None too.
    """

    per_amp_hour_low: float | None
    per_amp_hour_high: float | None
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
    joints_total: float
    resistance: float
    fault_current: float
    interrupt_needed: float | None
    near_fault: float
    interrupt_near: float | None
    text_most: float | None
    interrupt_most: float | None
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
    charged: float
    breaks: float | None
    opens: str
    fuse_time: float | None
    ampacity: float | None
    fuse_percent: float | None
    overheated: bool
    time_constant: float | None
    settled: float | None
    early: float | None
    computed: bool
    metric: bool
    sae: bool
    listed: bool
    as_current: bool
    rough: bool
    other_bank: bool
    voltage_too_low: bool
    cannot_break: bool
    too_big: bool
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
    highest_voltage: float | None, empty: float, ageing: float, gauge_reading: str,
    inductance: float | None,
) -> FaultCurrent:
    """Return the currents of a dead short on a run, and whether wire and fuse are up to them."""
    around = faults.insulation(insulation)
    per_amp_hour = None
    try:
        if known == ESTIMATE:
            per_amp_hour = faults.amps_for_each_amp_hour(chemistry)
            low, high, most = (rate * capacity / 3600 for rate in per_amp_hour)
            one = faults.Range(voltage / high, voltage / low)
        elif known == READINGS:
            one = faults.from_two_readings(
                open_voltage=open_voltage, loaded_voltage=loaded_voltage, current=loaded_current, error=meter_error
            )
        else:
            ohms = _stated(source_resistance, voltage / series)
            one = faults.Range(ohms, ohms)
        area = copper_area(conductor, gauge_reading)
    except (faults.NotKnown, NotCovered) as gap:
        raise problem(gap.field, str(gap)) from None
    in_series = series if known == MAKER else 1.0
    source_low, source_high = (
        faults.parallel_strings(resistance=ohms, series=in_series, strings=batteries) for ohms in (one.low, one.high)
    )
    size = _named(conductor)
    gauge_resistance = tabulated(conductor, finish=PLAIN, strands=FLEXIBLE)
    stated = gauge_resistance * size.area / area
    per_length = at_temperature(stated, size.reference, temperature)
    per_length_warm = at_temperature(stated, size.reference, around.initial)
    per_length_hot = at_temperature(stated, size.reference, around.final)
    cable, cable_warm, cable_hot = (
        loop_resistance(length, ohms) for ohms in (per_length, per_length_warm, per_length_hot)
    )
    joints_total = joints * joint_resistance
    lowest_voltage = empty * voltage
    resistance = source_low + cable + joints_total
    worn = (source_high + joints_total) * (1 + ageing)
    resistance_high = worn + cable_hot
    low_start = lowest_voltage / (worn + cable_warm)
    fault_current, near_fault, fault_low = voltage / resistance, voltage / source_low, lowest_voltage / resistance_high
    k = faults.heat_coefficient(initial=around.initial, final=around.final)
    energy = faults.joule_integral(k=k, area=area)
    most_current = batteries * most if per_amp_hour else None
    charged = max(highest_voltage, voltage) if highest_voltage is not None else faults.CHARGING * voltage
    time_constant = inductance / resistance if inductance is not None else None
    withstand_low = faults.withstand(energy=energy, current=low_start)
    guarded = _guarded(
        fuse, fuse_family, near_fault, fault_low, withstand_low, energy, charged, opening_time, let_through
    )
    carries = bears(conductor, _column(around.initial), gauge_reading)
    return FaultCurrent(
        per_amp_hour_low=per_amp_hour[0] / 3600 if per_amp_hour else None,
        per_amp_hour_high=per_amp_hour[1] / 3600 if per_amp_hour else None,
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
        joints_total=joints_total,
        resistance=resistance,
        fault_current=fault_current,
        interrupt_needed=faults.interrupting_class(fault_current),
        near_fault=near_fault,
        interrupt_near=faults.interrupting_class(near_fault),
        text_most=most_current,
        interrupt_most=faults.interrupting_class(most_current) if most_current else None,
        hot=around.final,
        per_length_hot=per_length_hot,
        cable_hot=cable_hot,
        lowest_voltage=lowest_voltage,
        resistance_high=resistance_high,
        fault_low=fault_low,
        per_length_warm=per_length_warm,
        cable_warm=cable_warm,
        low_start=low_start,
        copper=faults.COPPER,
        initial=around.initial,
        k=k,
        area=area,
        energy_limit=energy,
        withstand=faults.withstand(energy=energy, current=fault_current),
        withstand_low=withstand_low,
        withstand_near=faults.withstand(energy=energy, current=near_fault),
        charging=faults.CHARGING,
        charged=charged,
        ampacity=carries,
        fuse_percent=fault_low / fuse if fuse else None,
        overheated=not at_most(temperature, around.initial),
        time_constant=time_constant,
        settled=3 * time_constant if time_constant is not None else None,
        early=faults.current_after(current=fault_current, time=EARLY, time_constant=time_constant)
        if time_constant is not None
        else None,
        computed=size.computed,
        metric=size.series != "AWG",
        sae=size.series == "AWG" and gauge_reading == SAE,
        listed=around.listed,
        as_current=source_resistance.kind is CURRENT,
        rough=known == READINGS and 2 * meter_error > ROUGH * (open_voltage - loaded_voltage),
        other_bank=known == READINGS and abs(open_voltage - voltage) > APART * voltage,
        too_big=fuse is not None and (carries is None or not at_most(fuse, carries)),
        **guarded,
    )


def _guarded(
    rating: float | None, family_name: str, high: float, low: float, bears_low: float, energy: float,
    voltage: float, opening_time: float | None, let_through: float | None,
) -> dict[str, Any]:
    """Return what hangs on the fuse, by name: it stands at the source and guards the whole run."""
    family = fuses.named(family_name)
    breaks = family.interrupting(voltage) if family else None
    cleared = (
        clearing.opens_in_time(
            fuse=ladder.Fuse(family_name, rating), low=low, high=high, bears_low=bears_low, energy=energy,
            opening_time=opening_time, let_through=let_through,
        )
        if rating is not None
        else None
    )
    asked = rating is not None
    return {
        "breaks": breaks if asked else None,
        "opens": cleared.words if cleared else NO_FUSE,
        "fuse_time": cleared.latest if cleared else None,
        "by_standard": cleared is not None and cleared.trust == ladder.STANDARD,
        "from_memory": cleared is not None and cleared.trust == ladder.REMEMBERED,
        "voltage_too_low": asked and family is not None and breaks is None,
        "cannot_break": asked and breaks is not None and not at_least(breaks, high),
        "unrated": asked and family is None,
        "not_made": asked and family is not None and rating not in family.ratings,
        "breaks_from_memory": asked and family is not None and family.from_memory,
    }


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

"""The sum of inverter-size."""

from dataclasses import dataclass

from calc.electrical.ampacity import bears
from calc.electrical.sizing import one_cable, thickest_bears
from calc.energy import inverter
from calc.energy.battery import Chemistry
from calc.energy.loads import bank_current
from calc.sheets.parts.fields import INVERTER
from calc.sheets.wire.wire_size.ask import CHARGED
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem
from calc.worksheet.next_steps import Move

HOUR = 3600.0  # s
ONE_BATTERY = 100.0  # A, what one battery is usually allowed: common practice, no source
USUAL_RATE = {True: 0.25 / HOUR, False: 1.0 / HOUR}  # 1/s, lead-acid and not: common practice, no source
BRIEF_RATE = {True: 1.0 / HOUR, False: 2.0 / HOUR}  # 1/s, the same for a moment: common practice, no source
TWICE = 2.0  # of the steady figure, that inverters and batteries give for a moment: common practice, no source
MUCH = 0.25  # of a day's energy that idling may take unremarked: common practice, no source
NO_SAG = 0.98  # of the voltage, from which the lowest is none: common practice, no source
LOW = 0.75  # of the voltage, below which the lowest is not that of the same bank: common practice, no source


@dataclass(frozen=True, kw_only=True)
class InverterSize:
    """Ratings [V·A] that an inverter must have, and what it asks of bank and cables [A, A·s].

    None where a motor, a load that can wait, or a capacity is not given.
    """

    motor_start: float | None
    surge_power: float
    continuous: float
    surge_rating: float
    dc_current: float
    surge_current: float
    idle_energy: float
    idle_charge: float
    day_energy: float
    idle_share: float
    day_efficiency: float
    heat: float
    staggered_power: float | None
    staggered: float | None
    staggered_current: float | None
    c_rate: float | None
    usual_rate: float
    heavy_cable: float
    thickest_cable: float
    code_letters: tuple[inverter.Letter, ...]
    weights: tuple[inverter.Weight, ...]
    lead_acid: bool
    no_cable: bool
    beyond_bank: bool
    surge_beyond_bank: bool
    surge_asks: bool
    hard_on_bank: bool
    beyond_one: bool
    steep: bool
    idles: bool
    low: bool
    no_sag: bool
    onward: tuple[Move, ...]


def run(
    *, running: float, surge: float, power_factor: float, efficiency: float, idle: float, lowest_voltage: float,
    hours_on: float, voltage: float, motor: float | None, start_factor: float, can_wait: float | None, taken: float,
    capacity: float | None, chemistry: Chemistry, max_current: float | None,
) -> InverterSize:
    """Return what inverter carries `running` [W] and starts `surge` [W], and what it asks for."""
    if not at_most(lowest_voltage, voltage):
        raise Problem("lowest_voltage", "Lowest bank voltage must be no more than the bank voltage.")
    for name, label, part in (("motor", "Largest motor that starts", motor), ("can_wait", "A load that can wait", can_wait)):
        if part is not None and not at_most(part, running):
            raise Problem(name, f"{label} must be no more than the running power, which it is a part of.")
    start = None if motor is None else inverter.starting_power(running=running, motor=motor, factor=start_factor)
    surge_power = max(running, surge, start or 0.0)
    current = bank_current(running, lowest_voltage, efficiency)
    surge_current = bank_current(surge_power, lowest_voltage, efficiency)
    idle_energy = idle * hours_on
    day = inverter.day_energy(taken=taken, efficiency=efficiency, idle=idle, on=hours_on)
    waits = None if can_wait is None else inverter.apart(running=running, waits=can_wait)
    lead_acid = chemistry.lead_acid
    rate, usual = (None if capacity is None else current / capacity), USUAL_RATE[lead_acid]
    thickest = thickest_bears()
    brief = TWICE * ONE_BATTERY if capacity is None else min(TWICE * ONE_BATTERY, BRIEF_RATE[lead_acid] * capacity)
    continuous = inverter.apparent_power(running, power_factor)
    surge_rating = inverter.apparent_power(surge_power, power_factor)
    return InverterSize(
        motor_start=start,
        surge_power=surge_power,
        continuous=continuous,
        surge_rating=surge_rating,
        dc_current=current,
        surge_current=surge_current,
        idle_energy=idle_energy,
        idle_charge=idle_energy / voltage,
        day_energy=day,
        idle_share=idle_energy / day,
        day_efficiency=taken / day,
        heat=running / efficiency - running,
        staggered_power=waits,
        staggered=None if waits is None else inverter.apparent_power(waits, power_factor),
        staggered_current=None if waits is None else bank_current(waits, lowest_voltage, efficiency),
        c_rate=rate,
        usual_rate=usual,
        heavy_cable=bears("2/0 AWG") or 0.0,
        thickest_cable=thickest,
        code_letters=inverter.code_letters(),
        weights=inverter.weights(),
        lead_acid=lead_acid,
        no_cable=not one_cable(current=current, highest=CHARGED * voltage),
        beyond_bank=max_current is not None and not at_most(current, max_current),
        surge_beyond_bank=max_current is not None and not at_most(surge_current, max_current),
        surge_asks=max_current is None and not at_most(surge_current, brief),
        hard_on_bank=rate is not None and not at_most(rate, usual),
        beyond_one=max_current is None and not at_most(current, ONE_BATTERY),
        steep=not at_most(surge_rating, TWICE * continuous),
        idles=not at_most(idle_energy, MUCH * day),
        no_sag=at_least(lowest_voltage, NO_SAG * voltage),
        low=not at_least(lowest_voltage, LOW * voltage),
        onward=() if not at_most(current, thickest) else _ways(current, lowest_voltage, voltage, running, efficiency, capacity, chemistry),
    )


def _ways(current: float, lowest: float, voltage: float, running: float, efficiency: float, capacity: float | None, chemistry: Chemistry) -> tuple[Move, ...]:
    """Return what follows from a current [A] that one cable bears: wire, bank, heat."""
    heat = running / efficiency - running
    wire = (("current", f"{current:.6g} A"), ("voltage", f"{max(lowest, 1):.6g} V"))
    load: tuple[tuple[str, str], ...] = (("load", f"{running:.6g} W"), ("voltage", f"{voltage:.6g} V"), ("route", INVERTER), ("efficiency", f"{efficiency * 100:.6g} %"))
    if capacity is not None:
        load += (("capacity", f"{capacity / HOUR:.6g} A·h"), ("chemistry", chemistry))
    moves = [Move("Its cable", wire, "wire-size"), Move("How long the bank carries it", load, "runtime")]
    if at_least(heat, 1.0) and at_most(heat, 5000.0):
        moves.append(Move("Air for its heat", (("given_heat", f"{heat:.6g} W"),), "enclosure-airflow"))
    return tuple(moves)

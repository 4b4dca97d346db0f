"""The sum of bank-gauge: what the count says, what this current leaves, what the voltage may say."""

from dataclasses import dataclass
from math import ceil, floor

from calc.energy import battery, charging, rested, voltages
from calc.energy.battery import Chemistry
from calc.tables import table
from calc.units.compare import at_least, at_most
from calc.units.covered import NotCovered
from calc.worksheet.fields import Problem

UNDER_LOAD, CHARGING, AT_REST = "under load", "charging", "at rest"
BLOCKS = {"12 V": 1.0, "24 V": 2.0, "48 V": 4.0}  # of 12 V, in series
BELOW_ABSORPTION = 0.2  # V a block, by which the monitor's full voltage is set lower: common practice
PLAUSIBLE = (6.0, 16.0)  # V a block: beyond it the nominal voltage is mistaken
WIRING = (
    "Shunt in the negative cable at the battery; every other negative on its far side, inverter, chassis and chargers too",
    "Its sense lead straight to the battery's positive post, with a small fuse of its own there",
    "Capacity set to what the bank holds now, not to what the label said",
    "Full voltage, tail current and charge efficiency set for this bank",
    "A charge to truly full every week or two, so that it can set itself to 100 %",
)


@dataclass(frozen=True, kw_only=True)
class BankGauge:
    """Charges [A·s], times [s], currents [A], voltages [V]; None where there is nothing to say.

    `available` is what is left in the cold, `let_out` what this current lets out of it. `says_low`
    and `says_high` are the states that a rested reading allows, `why` the reason if it names none;
    `past` tells of a reading below any rested bank, `over` of one above what the bank `bears`.
    """

    lead_acid: bool
    remaining: float
    draw: float | None
    cold_factor: float | None
    cold_capacity: float | None
    available: float | None
    let_out: float | None
    time: float | None
    floor: float
    to_floor: float | None
    missing: float
    acceptance_time: float
    turn: float | None
    reached: float | None
    constant: float | None
    falling: float | None
    full_time: float | None
    usual_limit: float
    loss: float
    drift: float
    state_low: float
    tail_rate: float
    tail: float
    absorption: float
    margin: float
    full_voltage: float
    needed_rest: float
    voltage_says: str | None
    why: str | None
    says_low: float | None
    says_high: float | None
    past: bool
    bears: float
    over: bool
    freezes: float | None
    wiring: tuple[str, ...]


def _charge_volts(chemistry: Chemistry, blocks: float) -> float:
    for row in table("charge_voltage").rows:
        if row["chemistry"] == chemistry:
            return float(row["charge_v"]) * _cells(chemistry) / float(row["cells"]) * blocks
    raise KeyError(chemistry)


def _cells(chemistry: Chemistry) -> float:
    """Return the cells of a 12 V block."""
    return 4.0 if chemistry == "LFP" else 6.0


def _voltage(
    chemistry: Chemistry, system: str, reading: float | None, taken: str, rested_for: float, meter: float, current: float
) -> tuple[rested.Band | None, str | None, bool]:
    """Return the band that a reading allows, the reason if it names none, and whether it is past empty."""
    if reading is None:
        return None, None, False
    blocks = BLOCKS[system]
    if not (at_least(reading / blocks, PLAUSIBLE[0]) and at_most(reading / blocks, PLAUSIBLE[1])):
        raise Problem("reading", f"Voltage reading does not fit a {system} bank: choose the bank's nominal voltage.")
    cell = reading / (blocks * _cells(chemistry))
    past = taken == AT_REST and not at_least(cell, rested.lowest(chemistry))
    if taken == UNDER_LOAD and current <= 0:
        return None, "a load pulls the voltage down, more the harder it draws; it comes back within minutes to hours", False
    if taken != AT_REST:
        return None, "a charger holds the voltage up, whatever the state", False
    needed = battery.rest_needed(chemistry)
    if not at_least(rested_for, needed):
        return None, f"it is still settling: it wants {needed / 3600:g} h without load or charge", past
    try:
        return rested.band(chemistry=chemistry, voltage=cell, meter=meter * cell), None, past
    except rested.TooHigh:
        return None, "no rested bank stands so high: something charges it, or its surface charge is still there", False


def run(
    *, capacity: float, chemistry: Chemistry, state: float, current: float, efficiency: float, reading: float | None,
    taken: str, rested_for: float, system: str, meter: float, usable: float, temperature: float,
    exponent: float, rated_hours: float, zero_error: float, since_full: float,
) -> BankGauge:
    """Return what is left of `capacity` [A·s] at `state`, and how long `current` [A] lasts."""
    lead_acid = chemistry.lead_acid
    remaining = capacity * state
    draw = -current if current < 0 else None
    cold = cold_capacity = available = let_out = None
    time = to_floor = full_time = constant = falling = turn = reached = None
    left = (1 - usable) * capacity
    if draw is not None:
        try:
            cold = battery.cold_factor(temperature) if lead_acid else 1.0
        except NotCovered:
            cold = None
        if cold is not None:
            cold_capacity = capacity / cold
            available = max(0.0, cold_capacity - (capacity - remaining))
            let_out = battery.count_share(capacity=cold_capacity, rated_time=rated_hours, current=draw, exponent=exponent)
            time = available * let_out / draw
            left = (1 - usable) * cold_capacity
            to_floor = max(0.0, available - left) * let_out / draw
    known = charging.by_chemistry(chemistry)
    full = charging.full_state(time_constant=known.time_constant, tail=known.tail)
    if current > 0:
        time = (capacity - remaining) / (current * efficiency)
        if at_least(state, full):
            full_time = 0.0
        else:
            stages = charging.stages(capacity=capacity, current=current, from_state=state, to_state=full, efficiency=efficiency, time_constant=known.time_constant)
            turn, reached = min(max(state, stages.meets), stages.reached), stages.reached
            constant, falling, full_time = stages.constant, stages.falling, stages.total
    loss = battery.self_discharge(chemistry)
    drift = (zero_error + loss * capacity) * since_full
    band, why, past = _voltage(chemistry, system, reading, taken, rested_for, meter, current)
    blocks = BLOCKS[system]
    absorption = _charge_volts(chemistry, blocks)
    bears = voltages.max_charge_voltage(chemistry) * blocks
    says = None
    if band is not None:
        says = f"between {floor(band.low * 100 + 1e-6)} and {ceil(band.high * 100 - 1e-6)} %"
    elif why is not None:
        says = "no state at all"
    return BankGauge(
        lead_acid=lead_acid,
        remaining=remaining,
        draw=draw,
        cold_factor=cold if lead_acid else None,
        cold_capacity=cold_capacity,
        available=available,
        let_out=let_out,
        time=time,
        floor=left,
        to_floor=to_floor,
        missing=capacity - remaining,
        acceptance_time=known.time_constant,
        turn=turn,
        reached=reached,
        constant=constant,
        falling=falling,
        full_time=full_time,
        usual_limit=known.most * capacity,
        loss=loss,
        drift=drift,
        state_low=max(0.0, state - drift / capacity),
        tail_rate=known.tail,
        tail=known.tail * capacity,
        absorption=absorption,
        margin=BELOW_ABSORPTION * blocks,
        full_voltage=absorption - BELOW_ABSORPTION * blocks,
        needed_rest=battery.rest_needed(chemistry),
        voltage_says=says,
        why=why,
        says_low=band.low if band else None,
        says_high=band.high if band else None,
        past=past,
        bears=bears,
        over=reading is not None and not at_most(reading * (1 - meter), bears),
        freezes=battery.freezing_point(state) if lead_acid else None,
        wiring=WIRING,
    )

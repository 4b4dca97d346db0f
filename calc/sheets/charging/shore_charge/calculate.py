"""What shore-charge works out: the supply's share, the stages of the charge, and the night."""

from dataclasses import dataclass

from calc.electrical.fuses import CONTINUOUS
from calc.energy import alternator, battery, charging, voltages
from calc.energy.battery import Chemistry
from calc.units.compare import at_least, at_most
from calc.worksheet.fields import Problem
from calc.worksheet.next_steps import Move

TAPER, BANK, CHARGER, SUPPLY = "the taper near full", "the bank", "the charger", "the supply"
UNCORRECTED = 0.5  # power factor of rectifiers without correction, the low end: common practice, no source
CELLS, CHARGED = 6, 2.3  # lead-acid cells of a 12 V battery, and volts of each under charge
CHARGER_ONLY, COMBINED, SWITCHED, JOINED = "charger only", "inverter-charger", "transfer switch", "joined"


@dataclass(frozen=True)
class Stage:
    """A stage of the charge: time [s], states [0..1] and currents [A] at its two ends."""

    name: str
    time: float
    begins: float
    ends: float
    first: float
    last: float


@dataclass(frozen=True, kw_only=True)
class Filling:
    """The charge itself; everything is None where no current is left for the bank.

    Times [s], states [0..1]. `turn` is the state at which the current begins to fall in this
    charge, `shortest` and `longest` span the acceptance as stated.
    """

    hours: float | None = None
    meets: float | None = None
    reached: float | None = None
    turn: float | None = None
    constant_time: float | None = None
    falling_time: float | None = None
    shortest: float | None = None
    longest: float | None = None
    after_night: float | None = None
    put_back: float | None = None
    energy: float | None = None
    stages: tuple[Stage, ...] | None = None
    governs: str | None = None


@dataclass(frozen=True, kw_only=True)
class ShoreCharge(Filling):
    """What a lead and a charger put back, and what they ask of the supply.

    `supply_fits` is the charger's current [A] that the supply carries for hours, `setting` what to set
    it to, `charging` what is left of that for the bank. None where there is no room.
    """

    margin: float
    supply_current: float
    on_lead: float
    supply_load: float
    sustained: float
    left_over: float | None
    left_power: float | None
    correction: float
    uncorrected: float
    supply_fits: float | None
    bank_most: float
    setting: float | None
    charging: float | None
    full_at: float
    acceptance_low: float
    acceptance_high: float
    charge_low: float
    charge_high: float
    transfer_rating: float | None
    lead_acid: bool
    freezes: float | None
    bears_voltage: float
    too_high: bool
    too_low: bool
    may_charge: bool
    over: bool
    moves: tuple[Move, ...] | None


def run(
    *, supply_voltage: float, supply_limit: float, other_load: float, charger: float, charger_efficiency: float,
    voltage: float, capacity: float, chemistry: Chemistry, from_state: float, to_state: float, night: float,
    temperature: float, polarity: str, residual: str, feeds: str, house_load: float, power_factor: float,
    inverter: float, charge_efficiency: float, bank_rate: float, acceptance: float, tail: float,
) -> ShoreCharge:
    """Return the charge of `capacity` [A·s] by a `charger` [A] on a supply of `supply_limit` [A]."""
    if to_state <= from_state:
        raise Problem("to_state", "State of charge at the end must be above that at the start.")
    per_amp = voltage / (charger_efficiency * supply_voltage * power_factor)
    on_lead = charger * per_amp + other_load
    sustained = supply_limit / CONTINUOUS
    room = sustained - other_load
    supply_fits = room / per_amp if room > 1e-9 * sustained else None
    bank_most = bank_rate * capacity
    setting = min(charger, bank_most + house_load, supply_fits) if supply_fits is not None else None
    over = not at_most(on_lead, supply_limit)
    works_at = setting if over else charger
    offered = works_at - house_load if works_at is not None else 0.0
    current = min(offered, bank_most) if offered > 1e-9 * charger else None
    bears = alternator.blocks(voltage) * voltages.max_charge_voltage(chemistry)
    low, high = battery.charge_range(chemistry)
    known = charging.by_chemistry(chemistry)
    full_at = charging.full_state(time_constant=acceptance, tail=tail)
    left_over = None if at_least(on_lead, sustained) else sustained - on_lead
    filling = Filling()
    if current is not None:
        governs = SUPPLY if over else BANK if current < offered else CHARGER
        filling = _filling(
            capacity=capacity, current=current, from_state=from_state, to_state=min(to_state, full_at),
            efficiency=charge_efficiency, time_constant=acceptance, spread=(known.low, known.high), tail=tail, night=night,
            per_charge=voltage / charger_efficiency, governs=governs,
        )
    return ShoreCharge(
        margin=CONTINUOUS,
        supply_current=charger * per_amp,
        on_lead=on_lead,
        supply_load=on_lead / supply_limit,
        sustained=sustained,
        left_over=left_over,
        left_power=left_over * supply_voltage if left_over is not None else None,
        correction=UNCORRECTED,
        uncorrected=charger * per_amp * power_factor / UNCORRECTED + other_load,
        supply_fits=supply_fits,
        bank_most=bank_most,
        setting=setting,
        charging=current,
        full_at=full_at,
        acceptance_low=known.low,
        acceptance_high=known.high,
        charge_low=low,
        charge_high=high,
        transfer_rating=max(supply_limit, inverter / supply_voltage) if feeds in (COMBINED, SWITCHED) else None,
        lead_acid=chemistry.lead_acid,
        freezes=battery.freezing_point(from_state) if chemistry.lead_acid else None,
        bears_voltage=bears,
        too_high=not at_most(voltage, bears),
        too_low=not at_least(voltage, alternator.blocks(voltage) * alternator.BLOCK),
        may_charge=battery.may_charge(chemistry=chemistry, temperature=temperature),
        over=over,
        moves=_moves(chemistry, capacity, voltage),
        **vars(filling),
    )


def _filling(
    *, capacity: float, current: float, from_state: float, to_state: float, efficiency: float, time_constant: float,
    spread: tuple[float, float], tail: float, night: float, per_charge: float, governs: str,
) -> Filling:
    """Return the stages of a charge at `current` [A]; `per_charge` is supply energy per charge [J/(A·s)]."""

    def worked(acceptance: float) -> charging.Charge:
        full = charging.full_state(time_constant=acceptance, tail=tail)
        return charging.stages(
            capacity=capacity, current=current, from_state=from_state, to_state=min(to_state, full),
            efficiency=efficiency, time_constant=acceptance,
        )

    charge = worked(time_constant)
    turn = min(max(from_state, charge.meets), charge.reached)
    after = charging.state_after(
        capacity=capacity, current=current, state=from_state, efficiency=efficiency, time_constant=time_constant, duration=night
    )
    after = min(after, charge.reached)
    put_back = capacity * (after - from_state)
    others = [worked(acceptance).total for acceptance in spread]
    stages = (
        Stage("at full current", charge.constant, from_state, turn, current, current),
        Stage(
            "current falling", charge.falling, turn, charge.reached,
            min(current, charging.taper_current(capacity=capacity, state=turn, time_constant=time_constant)), charge.end_current,
        ),
    )
    return Filling(
        hours=charge.total,
        meets=charge.meets,
        reached=charge.reached,
        turn=turn,
        constant_time=charge.constant,
        falling_time=charge.falling,
        shortest=min(charge.total, *others),
        longest=max(charge.total, *others),
        after_night=after,
        put_back=put_back,
        energy=put_back / efficiency * per_charge,
        stages=tuple(stage for stage in stages if stage.time > 0),
        governs=TAPER if turn <= from_state < charge.reached else governs,
    )


def _moves(chemistry: Chemistry, capacity: float, voltage: float) -> tuple[Move, ...] | None:
    """Return where a lead-acid bank's gas is worked out; LFP makes none in normal charging."""
    if not chemistry.lead_acid:
        return None
    cells = CELLS * max(1, round(voltage / (CELLS * CHARGED)))
    texts = (("chemistry", chemistry), ("capacity", f"{capacity / 3600:.6g} A·h"), ("cells", f"{cells}"))
    return (Move("Air for the gas it makes", texts, "battery-air"),)

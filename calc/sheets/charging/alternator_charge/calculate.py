"""What alternator-charge works out: the current, what it asks of cable and alternator, the charge."""

from dataclasses import dataclass
from math import e, isfinite

from calc.electrical import conductors, fuses
from calc.electrical.ampacity import RuleSet, Surroundings
from calc.electrical.conductors import (
    SAE,
    STRANDED,
    ZERO_RESISTANCE,
    Finish,
    GaugeReading,
    Strands,
)
from calc.electrical.drop import loop_resistance
from calc.energy import alternator as alternators
from calc.energy import battery, charging, voltages
from calc.energy.alternator import Filling
from calc.energy.battery import Chemistry
from calc.energy.limits import HARDLY_FILLS_LEAD
from calc.sheets.charging.alternator_charge.fields import RELAY, problem
from calc.sheets.charging.alternator_charge.states import State, states
from calc.sheets.parts import cable as cables
from calc.units.compare import at_least, at_most
from calc.units.kinds import VOLTAGE
from calc.units.shown import quantity_text


@dataclass(frozen=True, kw_only=True)
class AlternatorCharge(cables.Cable):
    """The current into a bank [A], what it does to cable and alternator, and the charge [A·s].

    None where nothing flows that way. `asked` is what is asked of the alternator beside the vehicle,
    by Ohm's law or by the charger's input, `going_in` what the bank takes at first in the end.
    """

    gauge_resistance: float
    gauge_area: float
    sae_area: float
    sae_share: float | None
    reference: float
    zero: float
    stated: float
    per_length: float
    cable: float
    joints_total: float
    run_total: float
    loop: float
    metric: bool
    computed: bool
    as_sae: bool
    class_2: bool
    measured: bool
    relay: bool
    flows: bool
    drains: bool
    drain: float | None
    give: float
    blocks: float
    ends_at: float
    top_voltage: float
    bears_voltage: float
    too_high: bool
    past_empty: bool
    vehicle_bears: float
    overvolted: bool
    ends_low: bool
    power_first: float
    power_most: float
    input_current: float | None
    input_most: float | None
    input_voltage: float | None
    unfed: bool
    starved: bool
    initial_current: float | None
    cable_current: float | None
    cable_load: float | None
    cable_heat: float | None
    asked: float | None
    alternator_load: float | None
    hot_left: float
    idle_left: float
    fed: float | None
    idle_short: bool
    hot_short: bool
    beyond_rating: bool
    most_taken: float
    takes: float
    coulombic: float
    too_much: bool
    going_in: float | None
    room: float
    rises_to: float
    begins: float
    counted: float
    reach: float
    later_room: float
    steady_time: float | None
    falls_in: float | None
    euler: float
    still_open: float
    full: bool
    tapers: bool
    charge: float | None
    charge_most: float | None
    kept: float | None
    end_state: float | None
    drive_time: float | None
    in_taper: bool
    short: bool
    lead_acid: bool
    freezes: float | None
    may_charge: bool
    warmest: float
    coldest: float
    states: tuple[State, ...]
    rise: float | None
    warm: float | None
    margin: float
    lowest: float | None
    window_open: bool
    fuse: float | None


def run(
    *, method: str, alternator: float, vehicle_load: float, engine_voltage: float, bank_voltage: float,
    bank_resistance: float, charger_limit: float, charger_efficiency: float, output_left: float, conductor: str,
    length: float, insulation: str, chemistry: Chemistry, capacity: float, from_state: float, temperature: float,
    hours: float, wanted: float | None, idle_share: float, hot_share: float, lowest_input: float,
    charge_voltage: float | None, joints: float, joint_resistance: float, run_resistance: float | None,
    copper: float, fault_current: float, surroundings: Surroundings, bundled: float, ambient: float, rule_set: RuleSet,
    gauge_reading: GaugeReading, strands: Strands, finish: Finish,
) -> AlternatorCharge:
    """Return what an alternator puts into a second bank in a drive of `hours` [s], and at what cost."""
    relay = method == RELAY
    if charge_voltage is not None and not at_least(charge_voltage, bank_voltage):
        raise problem("charge_voltage", f"must be no less than that of the bank, {quantity_text(bank_voltage, VOLTAGE)}.")
    size, blocks = conductors.conductor(conductor), voltages.blocks(bank_voltage)
    rises_to = alternators.charge_ends_at(chemistry=chemistry, blocks=blocks)
    ends_at = engine_voltage if relay else charge_voltage if charge_voltage is not None else max(rises_to, bank_voltage)
    top = max(engine_voltage, bank_voltage, ends_at)
    wire = cables.cable(
        conductor=conductor, insulation=insulation, surroundings=surroundings, bundled=bundled, ambient=ambient, voltage=top,
        rule_set=rule_set, gauge_reading=gauge_reading,
    )  # fmt: skip
    gauge_resistance = conductors.tabulated(conductor, finish=finish, strands=strands)
    stated = gauge_resistance * size.area / conductors.copper_area(conductor, gauge_reading)
    per_length = conductors.at_temperature(stated, size.reference, copper)
    cable, joints_total = loop_resistance(length, per_length), joints * joint_resistance
    run_ohms = run_resistance if run_resistance is not None else cable + joints_total
    loop = run_ohms + bank_resistance

    through = alternators.relay_current(engine_voltage=engine_voltage, bank_voltage=bank_voltage, resistance=loop)
    give = alternators.charger_current(limit=charger_limit, output_left=output_left)
    power_first, power_most = (give * volts / charger_efficiency for volts in (bank_voltage, ends_at))
    first, most = (
        alternators.charger_input(power=power, engine_voltage=engine_voltage, resistance=run_ohms) for power in (power_first, power_most)
    )
    unfed = not relay and most is None
    starved = not relay and most is not None and not at_least(most[1], lowest_input)
    drains = relay and at_most(engine_voltage, bank_voltage)
    flows = not (unfed or starved or drains)
    asked = cable_current = None
    if relay:
        asked, cable_current = max(0.0, through), abs(through)
    elif most is not None:
        asked, cable_current = most[0], max(most[0], give)
    initial = (through if relay else give) if flows else None

    hot_left, idle_left = (
        alternators.left_for_bank(rated=alternator, share=share, vehicle_load=vehicle_load) for share in (hot_share, idle_share)
    )
    fed = min(1.0, hot_left / asked) if asked else None
    known, coulombic = charging.by_chemistry(chemistry), battery.charge_efficiency(chemistry)
    room, reach = capacity * (1 - from_state) / coulombic, 1.0
    filling = Filling(current=0.0, steady_time=0.0, later_room=room, falls_in=1.0)
    takes = charging.acceptance(chemistry=chemistry, capacity=capacity, state=from_state)
    if relay:
        rises_to = alternators.full_voltage(chemistry=chemistry, blocks=blocks)
    begins = alternators.own_voltage(
        chemistry=chemistry, state=from_state, bank_voltage=bank_voltage, full_voltage=rises_to, blocks=blocks
    )
    counted = max(0.0, alternators.relay_current(engine_voltage=engine_voltage, bank_voltage=begins, resistance=loop))
    if flows and relay:
        reach = alternators.reach(engine_voltage=engine_voltage, bank_voltage=begins, full_voltage=rises_to)
        filling = alternators.relay_filling(
            chemistry=chemistry, capacity=capacity, state=from_state, current=min(counted, hot_left), reach=reach
        )
    elif flows and fed is not None:
        current = alternators.charger_current(limit=charger_limit, output_left=output_left, fed=fed)
        filling = alternators.charger_filling(chemistry=chemistry, capacity=capacity, state=from_state, current=current)
    charge = filling.after(hours) if flows else None
    drive_time = filling.time_for(wanted) if flows and wanted is not None else None
    coldest, warmest = battery.charge_range(chemistry)
    fused = cables.guard(wire, cable_current, top, fault_current)
    total = vehicle_load + asked if asked is not None else None
    return AlternatorCharge(
        gauge_resistance=gauge_resistance,
        gauge_area=size.area,
        sae_area=conductors.copper_area(conductor, gauge_reading),
        sae_share=1 - size.sae_area / size.area if size.sae_area else None,
        reference=size.reference,
        zero=-ZERO_RESISTANCE,
        stated=stated,
        per_length=per_length,
        cable=cable,
        joints_total=joints_total,
        run_total=run_ohms,
        loop=loop,
        metric=size.series == "mm2",
        computed=size.computed,
        as_sae=gauge_reading == SAE and size.series == "AWG",
        class_2=size.series == "mm2" and strands == STRANDED,
        measured=run_resistance is not None,
        relay=relay,
        flows=flows,
        drains=drains,
        drain=max(0.0, -through) if drains else None,
        give=give,
        blocks=float(blocks),
        ends_at=ends_at,
        top_voltage=top,
        bears_voltage=blocks * voltages.max_charge_voltage(chemistry),
        too_high=not at_most(ends_at, blocks * voltages.max_charge_voltage(chemistry)),
        past_empty=alternators.past_empty(chemistry=chemistry, bank_voltage=bank_voltage, blocks=blocks),
        vehicle_bears=alternators.vehicle_bears(engine_voltage),
        overvolted=not at_most(engine_voltage, alternators.vehicle_bears(engine_voltage)),
        ends_low=not relay and chemistry.lead_acid and not at_least(ends_at, blocks * HARDLY_FILLS_LEAD),
        power_first=power_first,
        power_most=power_most,
        input_current=first[0] if first and most and not relay else None,
        input_most=most[0] if most and not relay else None,
        input_voltage=most[1] if most and not relay else None,
        unfed=unfed,
        starved=starved,
        initial_current=initial,
        cable_current=cable_current,
        cable_load=cable_current / wire.highest if cable_current is not None else None,
        cable_heat=cable_current**2 * run_ohms if cable_current is not None else None,
        asked=asked,
        alternator_load=total / alternator if total is not None else None,
        hot_left=hot_left,
        idle_left=idle_left,
        fed=fed,
        idle_short=total is not None and not at_most(total, alternator * idle_share),
        hot_short=total is not None and not at_most(total, alternator * hot_share),
        beyond_rating=total is not None and not at_most(total, alternator),
        most_taken=known.most * capacity,
        takes=takes,
        coulombic=coulombic,
        too_much=initial is not None and not at_most(initial, known.most * capacity),
        going_in=filling.current if flows else None,
        room=room,
        rises_to=rises_to,
        begins=begins,
        counted=counted,
        reach=reach,
        later_room=filling.later_room,
        steady_time=_finite(filling.steady_time),
        falls_in=_finite(filling.falls_in),
        euler=e,
        still_open=filling.still_open(hours),
        full=at_least(from_state, 1.0),
        tapers=hours > filling.steady_time,
        charge=charge,
        charge_most=min(through * hours, room) if flows and relay else None,
        kept=charge * coulombic if charge is not None else None,
        end_state=from_state + charge * coulombic / capacity if charge is not None else None,
        drive_time=drive_time,
        short=charge is not None and wanted is not None and not at_least(charge, wanted),
        in_taper=drive_time is not None and drive_time > filling.steady_time,
        lead_acid=chemistry.lead_acid,
        freezes=battery.freezing_point(from_state) if chemistry.lead_acid else None,
        may_charge=battery.may_charge(chemistry=chemistry, temperature=temperature),
        warmest=warmest,
        coldest=coldest,
        states=states(alternator, vehicle_load, idle_share, hot_share, total),
        **vars(wire),
        **vars(fused),
        margin=fuses.CONTINUOUS,
    )


def _finite(time: float) -> float | None:
    return time if isfinite(time) else None

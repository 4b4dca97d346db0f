"""What a drive puts into a second bank, and what it asks of cable and alternator.

In scope: an engine whose regulator holds one voltage, a bank that is healthy. Out of scope: the
starter battery's share of the charge, loads on the bank meanwhile.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.cable import Cable, cable
from calc.electrical.conductors import Finish, GaugeReading, Strands
from calc.electrical.protection import Protection, select_fuse
from calc.electrical.run import Run, run_of
from calc.energy import charging
from calc.energy.alternator import (
    Alternator,
    AlternatorLoad,
    alternator_load,
    max_vehicle_voltage,
    vehicle_blocks,
)
from calc.energy.battery import Bank, Chemistry, ColdCutOff, bank, charge_efficiency
from calc.energy.charging import ChargeOffer, ChargeVoltage
from calc.energy.charging import charge_voltage as charge_voltage_of
from calc.energy.drive_parts import Drive, Engine, RisingVoltage, Room
from calc.energy.feeds import (
    STARTS_AT,
    ChargerFeed,
    EngineRun,
    Fused,
    Method,
    RelayFeed,
    StopsBy,
    charger_current,
    charger_feed,
    relay_current,
    relay_feed,
)
from calc.energy.filling import (
    charger_filling,
    full_voltage,
    own_voltage,
    reach,
    relay_filling,
)
from calc.energy.inner_resistance import InnerResistance, inner_resistance
from calc.energy.rested import RestedVoltage
from calc.energy.rested import rested_voltage as rested_of
from calc.energy.voltages import NOMINAL, ShownVoltage, blocks, charge_end, shown_voltage
from calc.judge import Change
from calc.units.compare import at_least
from calc.units.covered import NotCovered
from calc.units.kinds import VOLTAGE
from calc.units.shown import quantity_text
from calc.units.si import Amperes, Share, Volts, Watts


@dataclass(frozen=True, kw_only=True)
class AlternatorCharge:
    """A bank charged on the road: what joins it to the engine, and what becomes of that.

    `inner` is the resistance inside the bank. One of `relay` and `charger` is None, and `rested`
    where no rested voltage is known. `protection` is None where nothing can flow, `offer` and
    `drive` where nothing flows into the bank, `rising` without a relay. `inputs` are the parameters
    that all was found from, by name.
    """

    inputs: Mapping[str, Any] = field(repr=False)
    engine: Engine
    run: EngineRun
    bank: Bank
    shown: ShownVoltage
    rested: RestedVoltage | None
    inner: InnerResistance
    voltage: ChargeVoltage
    relay: RelayFeed | None
    charger: ChargerFeed | None
    cable: Cable
    protection: Protection | None
    fault_current: Amperes
    load: AlternatorLoad
    room: Room
    rising: RisingVoltage | None
    offer: ChargeOffer | None
    drive: Drive | None

    @property
    def feed(self) -> RelayFeed | ChargerFeed:
        """What joins engine and bank."""
        found = self.relay or self.charger
        assert found  # one of them is there
        return found

    @property
    def most_first(self) -> Amperes | None:
        """What a relay passes at first with the least resistance published for such a bank."""
        if self.relay is None or not self.relay.flows:
            return None
        return relay_current(
            engine_voltage=self.relay.engine_voltage,
            bank_voltage=self.relay.bank_voltage,
            resistance=self.run.total + self.inner.low,
        )

    @property
    def initial_current(self) -> Amperes | None:
        """What flows into the bank at first."""
        return self.feed.into_bank

    @property
    def lasting(self) -> Amperes | None:
        """What is asked of the alternator for hours, None where nothing can be.

        Lead-acid's own voltage rises within minutes, and through a relay it then takes what its
        state lets it take. LFP takes the first current until it is nearly full.
        """
        settled = _settled(self.feed, self.bank, self.room)
        return self.load.asked if settled is None else settled

    @property
    def lasting_share(self) -> Share | None:
        """What is asked of the alternator for hours, vehicle and all, of its rating."""
        machine = self.load.alternator
        return (
            None if self.lasting is None else (machine.vehicle_load + self.lasting) / machine.rating
        )

    @property
    def run_drop(self) -> Volts | None:
        """What the run to a charger loses as the charge ends, None where it cannot feed one."""
        if self.charger is None or self.charger.last is None:
            return None
        return self.engine.held - self.charger.last.voltage

    @property
    def run_drop_share(self) -> Share | None:
        """That of the vehicle's nominal voltage, as limits of voltage drop are meant."""
        if self.run_drop is None:
            return None
        return self.run_drop / (NOMINAL * vehicle_blocks(self.engine.held))

    @property
    def cable_load(self) -> Share | None:
        """The current on the run against what the cable can carry and be fused for."""
        on = self.protection
        return None if on is None else on.current / on.highest

    @property
    def cable_heat(self) -> Watts | None:
        """The heat in the run."""
        return None if self.protection is None else self.protection.current**2 * self.run.total

    @property
    def charged(self) -> Bank | None:
        """The bank, where anything flows into it."""
        return self.bank if self.drive else None

    @property
    def relay_voltage(self) -> ChargeVoltage | None:
        """The voltage on the bank, where a relay passes the engine's."""
        return self.voltage if self.relay else None

    @property
    def charger_voltage(self) -> ChargeVoltage | None:
        """The voltage on the bank, where a charger makes it."""
        return self.voltage if self.charger else None

    @property
    def charger_cable(self) -> Cable | None:
        """The cable of a run that feeds a charger."""
        return self.cable if self.charger else None

    @property
    def relay_protection(self) -> Protection | None:
        """The protection of a run with a relay in it: a thicker one passes more."""
        return self.protection if self.relay else None

    @property
    def charger_protection(self) -> Protection | None:
        """The protection of a run that feeds a charger."""
        return self.protection if self.charger else None


def alternator_charge(
    *,
    method: Method,
    alternator: float,
    vehicle_load: float,
    engine_voltage: float,
    bank_voltage: float,
    bank_resistance: float | None,
    charger_limit: float,
    charger_efficiency: float,
    output_left: float,
    stops_by: StopsBy,
    conductor: str,
    length: float,
    insulation: str,
    chemistry: Chemistry,
    capacity: float,
    from_state: float,
    temperature: float,
    cold_cut_off: ColdCutOff,
    rested_voltage: float | None,
    hours: float,
    wanted: float | None,
    idle_share: float,
    hot_share: float,
    lowest_input: float,
    charge_voltage: float | None,
    joints: float,
    joint_resistance: float,
    run_resistance: float | None,
    copper: float,
    fused: Fused,
    fault_current: float,
    surroundings: Surroundings,
    bundled: float,
    ambient: float,
    rule_set: RuleSet,
    gauge_reading: GaugeReading,
    strands: Strands,
    finish: Finish,
) -> AlternatorCharge:
    """Return what an alternator puts into a second bank in a drive of `hours` [s], and how.

    The machine is rated `alternator` [A], of which the vehicle takes `vehicle_load` [A], and holds
    `engine_voltage` [V]; hot it gives `idle_share` and `hot_share` [0..1] of its rating. The bank
    of `capacity` [A·s] at `from_state` [0..1] shows `bank_voltage` [V] and has `bank_resistance`
    [ohm], or what is usual. A charger gives `charger_limit` [A] less what heat leaves it,
    `output_left` [0..1], works with `charger_efficiency` down to `lowest_input` [V], ends at
    `charge_voltage` [V], or where it is usual, and `stops_by` something; `cold_cut_off` is the
    battery's own, `rested_voltage` [V] what it showed at rest, None where not known. The run of
    `length` [m] one way has copper at `copper` [°C] and `joints` of `joint_resistance` [ohm], or
    `run_resistance` [ohm] in all, and is `fused` at some ends. `wanted` [A·s] is the charge asked
    for. The rest says how the run lies: see `calc.electrical.cable`. Raises NotCovered for a
    `charge_voltage` below the bank's, or what the rule set has no figure for.
    """
    inputs = dict(locals())
    voltage = _voltage(
        method=Method(method),
        chemistry=Chemistry(chemistry),
        engine_voltage=engine_voltage,
        bank_voltage=bank_voltage,
        chosen=charge_voltage,
    )
    laid = cable(
        conductor=conductor,
        insulation=insulation_rating(insulation),
        surroundings=surroundings,
        bundled=bundled,
        ambient=ambient,
        max_voltage=max(engine_voltage, voltage.voltage, bank_voltage),
        rule_set=rule_set,
        gauge_reading=gauge_reading,
    )
    copper_run = Run(
        conductor=conductor,
        length=length,
        parallel=1.0,
        temperature=copper,
        finish=finish,
        strands=strands,
        gauge_reading=gauge_reading,
        maker_resistance=None,
    )
    run = EngineRun(
        laid=run_of(copper_run),
        joints=joints,
        joint_resistance=joint_resistance,
        fused=Fused(fused),
        known=run_resistance,
    )
    inner = inner_resistance(
        chemistry=chemistry,
        capacity=capacity,
        blocks=voltage.blocks,
        known=bank_resistance,
    )
    relay: RelayFeed | None = None
    charger: ChargerFeed | None = None
    if method == Method.RELAY:
        relay = relay_feed(
            engine_voltage=engine_voltage,
            bank_voltage=bank_voltage,
            bank_resistance=inner.usual,
            run_resistance=run.total,
        )
    else:
        charger = charger_feed(
            limit=charger_limit,
            efficiency=charger_efficiency,
            output_left=output_left,
            lowest_input=lowest_input,
            stops_by=stops_by,
            starts=STARTS_AT * vehicle_blocks(engine_voltage),
            engine_voltage=engine_voltage,
            bank_voltage=bank_voltage,
            ends_at=voltage.voltage,
            resistance=run.total,
        )
    machine = Alternator(
        rating=alternator, vehicle_load=vehicle_load, idle_share=idle_share, hot_share=hot_share
    )
    feed = relay or charger
    assert feed
    load = alternator_load(machine, feed.asked)
    filled = bank(
        chemistry=chemistry,
        capacity=capacity,
        temperature=temperature,
        state=from_state,
        cut_off=cold_cut_off,
    )
    room = _room(filled)
    rising = _rising(filled, relay, voltage.blocks) if relay else None
    return AlternatorCharge(
        inputs=inputs,
        engine=Engine(held=engine_voltage, most=max_vehicle_voltage(engine_voltage)),
        run=run,
        bank=filled,
        shown=shown_voltage(chemistry=chemistry, voltage=bank_voltage, count=blocks(bank_voltage)),
        rested=None
        if rested_voltage is None
        else rested_of(
            chemistry=chemistry,
            voltage=rested_voltage,
            count=blocks(bank_voltage),
            state=from_state,
        ),
        inner=inner,
        voltage=voltage,
        relay=relay,
        charger=charger,
        cable=laid,
        protection=None
        if feed.run_current is None
        else select_fuse(
            cable=laid,
            current=feed.run_current,
            fault_current=fault_current,
            settled=_settled(feed, filled, room),
        ),
        fault_current=fault_current,
        load=load,
        room=room,
        rising=rising,
        offer=_offer(feed, filled, room),
        drive=_drive(filled, room, load, feed, rising, duration=hours, wanted=wanted),
    )


def changed(found: AlternatorCharge, change: Change) -> AlternatorCharge:
    """Return the same with a `change` of its inputs, worked anew. Raises NotCovered."""
    return alternator_charge(**{**found.inputs, **change.values})


def _voltage(
    *,
    method: Method,
    chemistry: Chemistry,
    engine_voltage: float,
    bank_voltage: float,
    chosen: float | None,
) -> ChargeVoltage:
    """Return the voltage at which the charge ends: the engine's, or the charger's."""
    if chosen is not None and not at_least(chosen, bank_voltage):
        shown = quantity_text(bank_voltage, VOLTAGE)
        raise NotCovered("charge_voltage", f"must be no less than that of the bank, {shown}.")
    count = blocks(bank_voltage)
    by_charger = max(count * charge_end(chemistry), bank_voltage) if chosen is None else chosen
    return charge_voltage_of(
        chemistry=chemistry,
        blocks=count,
        voltage=engine_voltage if method is Method.RELAY else by_charger,
        least=bank_voltage,
    )


def _room(filled: Bank) -> Room:
    coulombic = charge_efficiency(filled.chemistry)
    return Room(
        charge=filled.capacity * (1 - filled.state) / coulombic,
        coulombic=coulombic,
        takes=charging.acceptance(
            chemistry=filled.chemistry, capacity=filled.capacity, state=filled.state
        ),
        most=charging.by_chemistry(filled.chemistry).most * filled.capacity,
    )


def _rising(filled: Bank, relay: RelayFeed, count: float) -> RisingVoltage:
    full = full_voltage(chemistry=filled.chemistry, blocks=int(count))
    begins = own_voltage(
        chemistry=filled.chemistry,
        state=filled.state,
        bank_voltage=relay.bank_voltage,
        full_voltage=full,
        blocks=int(count),
    )
    soon = relay_current(
        engine_voltage=relay.engine_voltage, bank_voltage=begins, resistance=relay.loop
    )
    return RisingVoltage(
        begins=begins,
        full=full,
        current=max(0.0, soon),
        reach=reach(engine_voltage=relay.engine_voltage, bank_voltage=begins, full_voltage=full),
    )


def _settled(feed: RelayFeed | ChargerFeed, filled: Bank, room: Room) -> float | None:
    """Return what a relay passes into lead-acid within minutes, None where nothing eases off."""
    if not isinstance(feed, RelayFeed) or not feed.flows or not filled.lead_acid:
        return None
    return min(feed.current, room.takes)


def _offer(feed: RelayFeed | ChargerFeed, filled: Bank, room: Room) -> ChargeOffer | None:
    """Return what a bank is given: through a relay lead-acid soon takes no more than it can."""
    if feed.into_bank is None:
        return None
    settled = _settled(feed, filled, room)
    return ChargeOffer(
        current=feed.into_bank if settled is None else settled,
        most=room.most,
        fitting=room.most / feed.output_left if isinstance(feed, ChargerFeed) else None,
    )


def _drive(
    filled: Bank,
    room: Room,
    load: AlternatorLoad,
    feed: RelayFeed | ChargerFeed,
    rising: RisingVoltage | None,
    *,
    duration: float,
    wanted: float | None,
) -> Drive | None:
    if feed.into_bank is None:
        return None
    if isinstance(feed, RelayFeed):
        assert rising
        filling = relay_filling(
            chemistry=filled.chemistry,
            capacity=filled.capacity,
            state=filled.state,
            current=min(rising.current, load.hot_left),
            reach=rising.reach,
        )
        most: float | None = min(feed.into_bank * duration, room.charge)
    else:
        assert load.fed is not None
        filling = charger_filling(
            chemistry=filled.chemistry,
            capacity=filled.capacity,
            state=filled.state,
            current=charger_current(limit=feed.limit, output_left=feed.output_left, fed=load.fed),
        )
        most = None
    return Drive(
        bank=filled, room=room, filling=filling, duration=duration, wanted=wanted, most=most
    )

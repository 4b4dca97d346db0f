"""What a drive puts into a second bank, and what it asks of cable and alternator.

In scope: an engine whose regulator holds one voltage, a bank that is healthy. Out of scope: the
starter battery's share of the charge, loads on the bank meanwhile.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import isfinite
from typing import Any

from calc.electrical.ampacity import RuleSet, Surroundings, insulation_rating
from calc.electrical.cable import Cable, cable
from calc.electrical.conductors import Finish, GaugeReading, Strands
from calc.electrical.protection import Protection, select_fuse
from calc.electrical.run import Run, run_of
from calc.energy import charging
from calc.energy.alternator import Alternator, AlternatorLoad, alternator_load, max_vehicle_voltage
from calc.energy.battery import Bank, Chemistry, ColdCutOff, bank, charge_efficiency
from calc.energy.charging import ChargeOffer, ChargeVoltage
from calc.energy.charging import charge_voltage as charge_voltage_of
from calc.energy.feeds import (
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
    Filling,
    charger_filling,
    full_voltage,
    own_voltage,
    reach,
    relay_filling,
)
from calc.energy.inner_resistance import InnerResistance, inner_resistance
from calc.energy.rested import RestedVoltage
from calc.energy.rested import rested_voltage as rested_of
from calc.energy.voltages import ShownVoltage, blocks, charge_end, shown_voltage
from calc.judge import Change
from calc.units.compare import at_least
from calc.units.covered import NotCovered
from calc.units.kinds import VOLTAGE
from calc.units.shown import quantity_text
from calc.units.si import Amperes, Coulombs, Seconds, Share, Volts, Watts


@dataclass(frozen=True, kw_only=True)
class Engine:
    """The voltage that is `held` by an engine, and the `most` that a vehicle's battery is given."""

    held: Volts
    most: Volts


@dataclass(frozen=True, kw_only=True)
class Room:
    """What a bank still takes: `charge` until it is full, `takes` at its state, `most` at all.

    `coulombic` is the share of the charge put in that it keeps.
    """

    charge: Coulombs
    coulombic: Share
    takes: Amperes
    most: Amperes


@dataclass(frozen=True, kw_only=True)
class RisingVoltage:
    """A bank's own voltage in the model of a relay: from `begins` to `full`, evenly as it fills.

    `current` would flow at its beginning, and the engine's voltage reaches a share `reach` of the
    room.
    """

    begins: Volts
    full: Volts
    current: Amperes
    reach: Share


@dataclass(frozen=True, kw_only=True)
class Drive:
    """The charge of a drive of some `duration` into a bank, as its `filling` has it.

    `wanted` is the charge that is asked for, `most` an upper bound by the first current, through a
    relay.
    """

    bank: Bank
    room: Room
    filling: Filling
    duration: Seconds
    wanted: Coulombs | None
    most: Coulombs | None

    @property
    def charge(self) -> Coulombs:
        """What is put in."""
        return self.filling.after(self.duration)

    @property
    def kept(self) -> Coulombs:
        """What the bank keeps of it."""
        return self.charge * self.room.coulombic

    @property
    def end_state(self) -> Share:
        """The state of charge afterwards."""
        return self.bank.state + self.kept / self.bank.capacity

    @property
    def drive_time(self) -> Seconds | None:
        """The drive that puts in what is wanted, None where none does or nothing is."""
        return None if self.wanted is None else self.filling.time_for(self.wanted)

    @property
    def short(self) -> bool:
        """Whether less is put in than is wanted."""
        return self.wanted is not None and not at_least(self.charge, self.wanted)

    @property
    def falls(self) -> bool:
        """Whether the current falls before the drive ends."""
        return self.duration > self.filling.steady_time and self.filling.current > 0

    @property
    def wanted_while_falling(self) -> bool:
        """Whether what is wanted is in only after the current has begun to fall."""
        return self.drive_time is not None and self.drive_time > self.filling.steady_time

    @property
    def still_open(self) -> Share:
        """The share of what goes in with falling current that is still open afterwards."""
        return self.filling.still_open(self.duration)

    @property
    def steady_time(self) -> Seconds | None:
        """How long the current is steady, None where it never falls."""
        return self.filling.steady_time if isfinite(self.filling.steady_time) else None

    @property
    def falls_in(self) -> Seconds | None:
        """The time constant of the fall, None where it never falls."""
        return self.filling.falls_in if isfinite(self.filling.falls_in) else None


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
        else select_fuse(cable=laid, current=feed.run_current, fault_current=fault_current),
        fault_current=fault_current,
        load=load,
        room=room,
        rising=rising,
        offer=_offer(feed, room),
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


def _offer(feed: RelayFeed | ChargerFeed, room: Room) -> ChargeOffer | None:
    if feed.into_bank is None:
        return None
    return ChargeOffer(
        current=feed.into_bank,
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

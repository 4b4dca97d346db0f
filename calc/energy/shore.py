"""Charging on shore power: what a charger takes of the supply, and what a night puts back.

In scope: one mains charger on a supply that holds its voltage, a bank near room temperature. Out of
scope: a supply that sags, chargers side by side, tariffs.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.electrical.fuses import CONTINUOUS
from calc.energy import charging
from calc.energy.battery import Bank, Chemistry, ColdCutOff, bank
from calc.energy.charging import Acceptance, Charge, ChargeOffer, ChargeVoltage, charge_voltage
from calc.energy.rested import RestedVoltage
from calc.energy.rested import rested_voltage as rested_of
from calc.energy.voltages import blocks
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration, NotCovered
from calc.units.si import Amperes, Coulombs, Joules, Number, Seconds, Share, Tag, Volts, Watts

# Of rectifiers, the low end of 0.5 to 0.7: common practice, no source
UNCORRECTED: Annotated[Number, Tag("power factor of a charger without correction")] = 0.5
# Supplies of less are North American or Japanese, of more European or like it: by their standards
BETWEEN_REGIONS: Annotated[Volts, Tag("voltage between the two regions of shore power")] = 160.0
# A breaker to IEC 60898 carries its rating without end: common practice, no source
FULL_RATING: Annotated[Number, Tag("rating of a European breaker to its load for hours")] = 1.0
_NOTHING = 1e-9  # of a whole: no current to speak of


class Polarity(Enumeration):
    """How live and neutral stand at the inlet."""

    UNTESTED = "not-tested"
    CORRECT = "correct"
    REVERSED = "reversed"


class ResidualDevice(Enumeration):
    """How the van's own residual-current device does when it is tested."""

    UNTESTED = "not-tested"
    TRIPS = "trips-when-tested"
    NOT_FITTED = "not-fitted"


class Switching(Enumeration):
    """Which poles the breaker at the inlet switches, or what is usual at the supply's voltage."""

    BY_VOLTAGE = "by-voltage"
    DOUBLE = "both-poles"
    SINGLE = "live-only"
    UNKNOWN = "not-known"


class HoursPractice(Enumeration):
    """How much of a supply's rating is taken for hours on end: by region."""

    BY_VOLTAGE = "by-voltage"
    EIGHTY_PERCENT = "80-percent"
    FULL = "full-rating"


class Feeds(Enumeration):
    """What shore power reaches, and how it is kept from an inverter's output."""

    CHARGER_ONLY = "charger-only"
    COMBINED = "inverter-charger"
    SWITCHED = "transfer-switch"
    JOINED = "joined"


class Governor(Enumeration):
    """What sets the charging current."""

    TAPER = "taper"
    BANK = "bank"
    CHARGER = "charger"
    SUPPLY = "supply"


class StageName(Enumeration):
    """A stage of a charge."""

    CONSTANT = "constant"
    FALLING = "falling"


@dataclass(frozen=True, kw_only=True)
class Supply:
    """Shore power at a `voltage`, of which `other_load` is taken already.

    It gives up to `limit`, and the `margin`-th part of that, `sustained`, for hours on end: by the
    `practice` that is asked for, which may go by the voltage.
    """

    practice: HoursPractice
    voltage: Volts
    limit: Amperes
    other_load: Amperes
    margin: Number
    sustained: Amperes


@dataclass(frozen=True, kw_only=True)
class MainsCharger:
    """A charger set to a `current` at the `voltage` of its bank; `house_load` hangs on the bank."""

    current: Amperes
    voltage: Volts
    efficiency: Share
    power_factor: Number
    house_load: Amperes


@dataclass(frozen=True, kw_only=True)
class SupplyLoad:
    """What a charger takes of a supply: `current`, and `total` with the other loads.

    `left` is what stays for others for hours, and `left_power` that in watts; None where nothing
    does. `room_for` is the charger's output that the supply carries for hours. `uncorrected` is the
    total should the charger have no power-factor correction.
    """

    supply: Supply
    charger: MainsCharger
    current: Amperes
    total: Amperes
    share: Share
    left: Amperes | None
    left_power: Watts | None
    room_for: Amperes | None
    correction: Number
    uncorrected: Amperes

    @property
    def over(self) -> bool:
        """Whether it is more than the supply gives at all."""
        return not at_most(self.total, self.supply.limit)

    @property
    def sustained(self) -> bool:
        """Whether the supply carries it for hours."""
        return at_most(self.total, self.supply.sustained)

    @property
    def may_be_uncorrected(self) -> bool:
        """Whether a charger without correction, if it were one, would be too much for hours."""
        perhaps = at_least(self.charger.power_factor, 1.0)
        return perhaps and not at_most(self.uncorrected, self.supply.sustained)


@dataclass(frozen=True, kw_only=True)
class Inlet:
    """Where shore power comes aboard, and what is known of it.

    `switching` is that of the breaker at the inlet, never by voltage; `usual` tells that it is only
    what is usual at this voltage, and nobody looked. `transfer_rating` is what the switch between
    two sources must carry, None where there is none.
    """

    polarity: Polarity
    switching: Switching
    usual: bool
    residual: ResidualDevice
    feeds: Feeds
    inverter: Watts
    transfer_rating: Amperes | None

    @property
    def tested(self) -> bool:
        """Whether polarity and residual-current device have been tested."""
        known = self.polarity is not Polarity.UNTESTED
        return known and self.residual is not ResidualDevice.UNTESTED

    @property
    def isolates_reversed(self) -> bool:
        """Whether live and neutral are exchanged, and the breaker opens both."""
        return self.polarity is Polarity.REVERSED and self.switching is Switching.DOUBLE

    @property
    def live_when_off(self) -> bool:
        """Whether live and neutral are exchanged, and nobody knows that the breaker opens both."""
        return self.polarity is Polarity.REVERSED and self.switching is not Switching.DOUBLE


@dataclass(frozen=True, kw_only=True)
class Stage:
    """A stage of the charge: its time, the states and the currents at its two ends."""

    name: StageName
    time: Seconds
    begins: Share
    ends: Share
    first: Amperes
    last: Amperes


@dataclass(frozen=True, kw_only=True)
class Night:
    """A charge, and how far it gets in the `duration` on the supply.

    `shortest` and `longest` span the time of the whole charge by the spread of acceptance. `after`
    is the state after the night, `energy` what the supply gave for it.
    """

    charge: Charge
    duration: Seconds
    governs: Governor
    shortest: Seconds
    longest: Seconds
    after: Share
    put_back: Coulombs
    energy: Joules

    @property
    def short(self) -> bool:
        """Whether the night ends before the charge does."""
        return not at_most(self.charge.total, self.duration)

    @property
    def stages(self) -> tuple[Stage, ...]:
        """The stages that the charge has."""
        charge = self.charge
        taper = charging.taper_current(
            capacity=charge.capacity, state=charge.turn, time_constant=charge.time_constant
        )
        stages = (
            Stage(
                name=StageName.CONSTANT,
                time=charge.constant,
                begins=charge.from_state,
                ends=charge.turn,
                first=charge.current,
                last=charge.current,
            ),
            Stage(
                name=StageName.FALLING,
                time=charge.falling,
                begins=charge.turn,
                ends=charge.reached,
                first=min(charge.current, taper),
                last=charge.end_current,
            ),
        )
        return tuple(stage for stage in stages if stage.time > 0)


@dataclass(frozen=True, kw_only=True)
class ShoreCharge:
    """A bank on shore power.

    `setting` is what to set the charger to: the least of what it gives, the bank takes beside the
    loads on it, and the supply carries for hours; None where there is no room. `night` is None
    where no current is left for the bank, `rested` where no rested voltage is known.
    """

    load: SupplyLoad
    inlet: Inlet
    bank: Bank
    rested: RestedVoltage | None
    voltage: ChargeVoltage
    acceptance: Acceptance
    offer: ChargeOffer
    setting: Amperes | None
    to_state: Share
    night: Night | None


def supply_load(*, supply: Supply, charger: MainsCharger) -> SupplyLoad:
    """Return what `charger` takes of `supply`: I = I_c U/(η U_s λ), and what is left beside it."""
    per_amp = charger.voltage / (charger.efficiency * supply.voltage * charger.power_factor)
    current = charger.current * per_amp
    total, room = current + supply.other_load, supply.sustained - supply.other_load
    left = None if at_least(total, supply.sustained) else supply.sustained - total
    return SupplyLoad(
        supply=supply,
        charger=charger,
        current=current,
        total=total,
        share=total / supply.limit,
        left=left,
        left_power=None if left is None else left * supply.voltage,
        room_for=room / per_amp if room > _NOTHING * supply.sustained else None,
        correction=UNCORRECTED,
        uncorrected=current * charger.power_factor / UNCORRECTED + supply.other_load,
    )


def hours_margin(practice: HoursPractice, voltage: float) -> float:
    """Return what a supply is rated to its load for hours: 1.25 by NEC 210.20(A), or 1.

    By `voltage` [V] where the `practice` goes by it. Raises NotCovered.
    """
    practice = HoursPractice(practice)
    if practice is HoursPractice.BY_VOLTAGE:
        return CONTINUOUS if at_most(voltage, BETWEEN_REGIONS) else FULL_RATING
    return CONTINUOUS if practice is HoursPractice.EIGHTY_PERCENT else FULL_RATING


def usual_switching(voltage: float) -> Switching:
    """Return which poles the breaker at an inlet switches at a supply of `voltage` [V].

    Both where plugs go in either way (IEC 60364-7-721), the live one in North America: common
    practice, no source.
    """
    return Switching.SINGLE if at_most(voltage, BETWEEN_REGIONS) else Switching.DOUBLE


def shore_charge(
    *,
    practice: HoursPractice,
    supply_voltage: float,
    supply_limit: float,
    other_load: float,
    charger: float,
    charger_efficiency: float,
    voltage: float,
    capacity: float,
    chemistry: Chemistry,
    from_state: float,
    to_state: float,
    night: float,
    temperature: float,
    cold_cut_off: ColdCutOff,
    rested_voltage: float | None,
    polarity: Polarity,
    switching: Switching,
    residual: ResidualDevice,
    feeds: Feeds,
    house_load: float,
    power_factor: float,
    inverter: float,
    charge_efficiency: float,
    bank_rate: float,
    acceptance: float,
    tail: float,
) -> ShoreCharge:
    """Return the charge of a bank of `capacity` [A·s] on shore power.

    The supply gives `supply_limit` [A] at `supply_voltage` [V], of which `other_load` [A] is taken;
    `practice` says how much of it for hours.
    The `charger` gives so many A at a mean `voltage` [V] of the bank, less `house_load` [A], which
    hangs on the bank. The bank, at `temperature` [°C] with a `cold_cut_off` of its own, showed
    `rested_voltage` [V] at rest (None: not known) and goes from `from_state` to `to_state` [0..1];
    it may be given `bank_rate` [1/s] of its capacity, keeps `charge_efficiency` [0..1] of it, takes
    less by the time constant `acceptance` [s] and is full at `tail` [1/s]. `night` [s] is how long
    it stays on the lead. `inverter` [W] is the largest aboard. Raises NotCovered for a charge that
    goes down, or a name that is not in an enumeration.
    """
    if to_state <= from_state:
        raise NotCovered("to_state", "must be above that at the start.")
    margin = hours_margin(practice, supply_voltage)
    supply = Supply(
        practice=HoursPractice(practice),
        voltage=supply_voltage,
        limit=supply_limit,
        other_load=other_load,
        margin=margin,
        sustained=supply_limit / margin,
    )
    by = MainsCharger(
        current=charger,
        voltage=voltage,
        efficiency=charger_efficiency,
        power_factor=power_factor,
        house_load=house_load,
    )
    load = supply_load(supply=supply, charger=by)
    known = charging.by_chemistry(chemistry)
    taken = Acceptance(
        most=bank_rate, time_constant=acceptance, low=known.low, high=known.high, tail=tail
    )
    most = bank_rate * capacity
    setting = None if load.room_for is None else min(charger, most + house_load, load.room_for)
    return ShoreCharge(
        load=load,
        inlet=_inlet(
            supply,
            polarity=Polarity(polarity),
            switching=Switching(switching),
            residual=ResidualDevice(residual),
            feeds=Feeds(feeds),
            inverter=inverter,
        ),
        bank=bank(
            chemistry=chemistry,
            capacity=capacity,
            temperature=temperature,
            state=from_state,
            cut_off=cold_cut_off,
        ),
        rested=None
        if rested_voltage is None
        else rested_of(
            chemistry=chemistry,
            voltage=rested_voltage,
            count=blocks(voltage),
            state=from_state,
        ),
        voltage=charge_voltage(
            chemistry=chemistry, blocks=blocks(voltage), voltage=voltage, least=0.0
        ),
        acceptance=taken,
        offer=ChargeOffer(
            current=charger - house_load,
            most=most,
            fitting=None if setting is None else most + house_load,
        ),
        setting=setting,
        to_state=to_state,
        night=_night(
            load=load,
            works_at=setting if load.over else charger,
            most=most,
            acceptance=taken,
            capacity=capacity,
            from_state=from_state,
            to_state=to_state,
            efficiency=charge_efficiency,
            duration=night,
        ),
    )


def _inlet(
    supply: Supply,
    *,
    polarity: Polarity,
    switching: Switching,
    residual: ResidualDevice,
    feeds: Feeds,
    inverter: float,
) -> Inlet:
    switched = feeds in (Feeds.COMBINED, Feeds.SWITCHED)
    rating = max(supply.limit, inverter / supply.voltage) if switched else None
    usual = switching is Switching.BY_VOLTAGE
    return Inlet(
        polarity=polarity,
        switching=usual_switching(supply.voltage) if usual else switching,
        usual=usual,
        residual=residual,
        feeds=feeds,
        inverter=inverter,
        transfer_rating=rating,
    )


def _night(
    *,
    load: SupplyLoad,
    works_at: float | None,
    most: float,
    acceptance: Acceptance,
    capacity: float,
    from_state: float,
    to_state: float,
    efficiency: float,
    duration: float,
) -> Night | None:
    """Return the charge by a charger that `works_at` [A], None where the bank gets nothing."""
    offered = 0.0 if works_at is None else works_at - load.charger.house_load
    if offered <= _NOTHING * load.charger.current:
        return None
    current = min(offered, most)

    def worked(time_constant: float) -> Charge:
        full = charging.full_state(time_constant=time_constant, tail=acceptance.tail)
        return charging.stages(
            capacity=capacity,
            current=current,
            from_state=from_state,
            to_state=min(to_state, acceptance.full, full),
            efficiency=efficiency,
            time_constant=time_constant,
        )

    charge = worked(acceptance.time_constant)
    spread = [worked(time).total for time in (acceptance.low, acceptance.high)]
    after = charging.state_after(
        capacity=capacity,
        current=current,
        state=from_state,
        efficiency=efficiency,
        time_constant=acceptance.time_constant,
        duration=duration,
    )
    after = min(after, charge.reached)
    put_back = capacity * (after - from_state)
    governs = Governor.BANK if current < offered else Governor.CHARGER
    if charge.turn <= from_state < charge.reached:
        governs = Governor.TAPER
    elif load.over:
        governs = Governor.SUPPLY
    return Night(
        charge=charge,
        duration=duration,
        governs=governs,
        shortest=min(charge.total, *spread),
        longest=max(charge.total, *spread),
        after=after,
        put_back=put_back,
        energy=put_back / efficiency * load.charger.voltage / load.charger.efficiency,
    )

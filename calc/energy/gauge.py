"""What a monitor counts, how long that lasts, and what a reading of the voltage may say.

In scope: a healthy bank whose capacity is what is said, a current that stays as it is; without a
monitor, one that was read at rest. Out of scope: a count whose last full charge was none.
"""

from dataclasses import dataclass
from typing import Annotated

from calc.energy import bank_load, battery, charging, limits, rested, voltages
from calc.energy.bank_load import Draw
from calc.energy.battery import Bank, Chemistry, Usable
from calc.energy.charging import Acceptance, Charge, ChargeOffer
from calc.energy.rested import Band, RestedVoltage
from calc.energy.voltages import ShownVoltage
from calc.units.compare import at_least, at_most
from calc.units.covered import Enumeration
from calc.units.si import (
    Amperes,
    Coulombs,
    Count,
    LossRate,
    Number,
    PerSecond,
    Seconds,
    Share,
    Tag,
    Volts,
)

# Of the capacity: half of it open is as good as not read; our choice
TOO_WIDE: Annotated[Share, Tag("states left open by a voltage not worth going by")] = 0.5
# Of the states that a voltage leaves open: our choice
FAIR_PART: Annotated[Share, Tag("part of the states left open that counts")] = 0.25


class Taken(Enumeration):
    """How a voltage was read."""

    UNDER_LOAD = "under-load"
    CHARGING = "charging"
    AT_REST = "at-rest"


class Monitor(Enumeration):
    """Whether anything counts what flows in and out."""

    COUNTS = "counts"
    NONE = "no-monitor"


class Silence(Enumeration):
    """Why a voltage tells no state of charge."""

    LOADED = "loaded"
    CHARGED = "charged"
    SETTLING_LEAD_ACID = "settling-lead-acid"
    SETTLING_LFP = "settling-lfp"
    TOO_HIGH = "too-high"


@dataclass(frozen=True, kw_only=True)
class ChargeCount:
    """What a monitor counts as `remaining` of a bank, and by how much that may have drifted.

    It misses a current `zero_error` and the bank's own `loss`, for the time `since_full`. Without a
    monitor `remaining` is the least by the rested voltage, and nothing drifts (None).
    """

    bank: Bank
    zero_error: Amperes
    since_full: Seconds
    remaining: Coulombs
    missing: Coulombs
    loss: LossRate
    drift: Coulombs | None
    state_low: Share | None


@dataclass(frozen=True, kw_only=True)
class Drawn:
    """A current out of a bank: of what is `available` in the cold it lets out a share.

    `time` is how long that lasts, `to_floor` how long until the share that is used is gone. `load`
    is the current beside what such a bank gives; the cold factor is None for LFP.
    """

    bank: Bank
    draw: Amperes
    load: Draw
    rated_time: Seconds
    exponent: Number
    cold_factor: Number | None
    cold_capacity: Coulombs
    available: Coulombs
    let_out: Share
    time: Seconds
    to_floor: Seconds


@dataclass(frozen=True, kw_only=True)
class Filled:
    """A current into a bank that keeps a share `efficiency` of it, and the most that it is given.

    `time` is how long it would take if the current stayed, `full_time` as the bank takes less.
    `charge` is None where it is as full as its tail current makes it.
    """

    bank: Bank
    offer: ChargeOffer
    efficiency: Share
    time: Seconds
    charge: Charge | None
    full_time: Seconds

    @property
    def lead_acid(self) -> bool:
        """Whether the bank is lead-acid."""
        return self.bank.lead_acid


@dataclass(frozen=True, kw_only=True)
class VoltageReading:
    """A reading at the posts of a bank, right to within a share `meter`, and what it says.

    `band` are the states that it allows, or None, and then `silence` tells why. `highest` is the
    most that such a bank is given. `rested` is the reading of a bank that had its rest, `shown` of
    one that is still settling.
    """

    chemistry: Chemistry
    blocks: Count
    voltage: Volts
    taken: Taken
    rested_for: Seconds | None
    meter: Share
    highest: Volts
    band: Band | None
    silence: Silence | None
    rested: RestedVoltage | None
    shown: ShownVoltage | None

    @property
    def too_high(self) -> bool:
        """Whether it is more than such a bank is given, even at the low end of the reading."""
        return not at_most(self.voltage * (1 - self.meter), self.highest)

    @property
    def run_away(self) -> bool:
        """Whether it is more than even equalises such a bank."""
        most = self.blocks * limits.MOST_EQUALISED
        return self.too_high and not at_most(self.voltage * (1 - self.meter), most)


@dataclass(frozen=True, kw_only=True)
class MonitorSettings:
    """What a monitor of a bank is set to: full above `full_voltage` and below `tail`."""

    absorption: Volts
    margin: Volts
    full_voltage: Volts
    tail_rate: PerSecond
    tail: Amperes


@dataclass(frozen=True, kw_only=True)
class Gauge:
    """What is left of a bank, how long `current` lasts, and what the voltage says.

    `usable` is the share that is used, `floor` what is left in. `usual_limit` and `highest` are the
    current and the voltage that such a bank is usually charged with at most. `drawn`, `filled` and
    `reading` are None where no current flows out, none flows in, and no voltage was read. `counted`
    tells that a monitor has the state. `use` is the share that is used of it. Where nothing tells
    the state, `count`, `drawn` and `filled` are None, and the bank's stands for none.
    """

    bank: Bank
    counted: bool
    current: Amperes
    usable: Share
    use: Usable
    floor: Coulombs
    count: ChargeCount | None
    drawn: Drawn | None
    filled: Filled | None
    reading: VoltageReading | None
    acceptance: Acceptance
    needed_rest: Seconds
    usual_limit: Amperes
    highest: Volts
    settings: MonitorSettings

    @property
    def time(self) -> Seconds | None:
        """How long until the bank is empty, or full, at this current."""
        if self.drawn:
            return self.drawn.time
        return self.filled.time if self.filled else None

    @property
    def band(self) -> Band | None:
        """The states that the voltage allows."""
        return self.reading.band if self.reading else None

    @property
    def spent(self) -> bool:
        """Whether the share that is used is gone, by the count."""
        return self.counted and self._down_to_floor(0.0)

    def spent_by_voltage(self, part: float = FAIR_PART) -> bool:
        """Whether such a `part` of the states the voltage allows is down to what is left in."""
        if self.counted or self.band is None:
            return False
        return self._down_to_floor(part * (self.band.high - self.band.low) * self.bank.capacity)

    @property
    def band_too_wide(self) -> bool:
        """Whether the voltage, with nothing counted, leaves more open than is worth going by."""
        band = self.band
        return band is not None and not self.counted and not at_most(band.high - band.low, TOO_WIDE)

    def _down_to_floor(self, more: float) -> bool:
        """Return whether what is left, and `more` [A·s] beside, is all left in."""
        if self.drawn:
            return at_most(self.drawn.available + more, self.floor)
        if self.filled or self.count is None:
            return False
        return at_most(self.count.remaining + more, self.floor)

    @property
    def perhaps_spent(self) -> bool:
        """Whether it may be gone, by what the count may be off."""
        drawn, count = self.drawn, self.count
        if drawn is None or count is None or count.drift is None or not drawn.to_floor:
            return False
        return at_least(count.drift, drawn.available - self.floor)

    @property
    def drifted_far(self) -> bool:
        """Whether the count may be off by so much that a full charge is worth it."""
        low = None if self.count is None else self.count.state_low
        return low is not None and not at_most(self.bank.state - low, limits.DRIFTED)

    @property
    def known(self) -> Bank | None:
        """The bank, where anything tells its state."""
        return self.bank if self.count else None


def gauge(
    bank: Bank,
    *,
    counted: bool,
    known: bool,
    current: float,
    efficiency: float,
    usable: float,
    rated_time: float,
    exponent: float,
    zero_error: float,
    since_full: float,
    blocks: int,
    reading: float | None,
    taken: Taken,
    rested_for: float | None,
    meter: float,
) -> Gauge:
    """Return what is left of `bank` and how long `current` [A] lasts, negative out of it.

    It keeps a share `efficiency` [0..1] of a charge, of which `usable` is used; its label is meant
    over `rated_time` [s], `exponent` is Peukert's. Nothing tells its state unless it is `known`. A
    monitor, if it is `counted`, misses `zero_error` [A] and was full `since_full` [s] ago.
    `reading` [V], or None, is a voltage of `blocks` of 12 V in series, right to within a share
    `meter`, `taken` after a rest of `rested_for` [s]. Raises NotCovered for a reading that such a
    bank never shows.
    """
    chemistry = bank.chemistry
    takes = charging.by_chemistry(chemistry)
    drawn = filled = None
    factor = 1.0
    if known and current < 0:
        factor = bank.cold_factor
        drawn = _drawn(bank, draw=-current, usable=usable, rated_time=rated_time, exponent=exponent)
    elif known and current > 0:
        filled = _filled(bank, current=current, efficiency=efficiency, known=takes)
    absorption = voltages.charge_end(chemistry) * blocks
    margin = limits.BELOW_ABSORPTION * blocks
    read = None
    if reading is not None:
        read = voltage_reading(
            chemistry,
            voltage=reading,
            blocks=blocks,
            taken=Taken(taken),
            rested_for=rested_for,
            meter=meter,
            charged=current > 0,
            stated=bank.state if counted else None,
        )
    return Gauge(
        bank=bank,
        counted=counted,
        current=current,
        usable=usable,
        use=battery.usable(bank, usable),
        floor=(1 - usable) * bank.capacity / factor,
        count=charge_count(bank, zero_error=zero_error, since_full=since_full, counted=counted)
        if known
        else None,
        drawn=drawn,
        filled=filled,
        reading=read,
        acceptance=takes,
        needed_rest=battery.rest_needed(chemistry),
        usual_limit=takes.most * bank.capacity,
        highest=voltages.max_charge_voltage(chemistry) * blocks,
        settings=MonitorSettings(
            absorption=absorption,
            margin=margin,
            full_voltage=absorption - margin,
            tail_rate=takes.tail,
            tail=takes.tail * bank.capacity,
        ),
    )


def charge_count(bank: Bank, *, zero_error: float, since_full: float, counted: bool) -> ChargeCount:
    """Return what a monitor counts that misses `zero_error` [A], full `since_full` [s] ago.

    Nothing drifts where nothing is `counted`.
    """
    loss = battery.self_discharge(bank.chemistry)
    drift = (zero_error + loss * bank.capacity) * since_full
    remaining = bank.capacity * bank.state
    return ChargeCount(
        bank=bank,
        zero_error=zero_error,
        since_full=since_full,
        remaining=remaining,
        missing=bank.capacity - remaining,
        loss=loss,
        drift=drift if counted else None,
        state_low=max(0.0, bank.state - drift / bank.capacity) if counted else None,
    )


def _drawn(bank: Bank, *, draw: float, usable: float, rated_time: float, exponent: float) -> Drawn:
    capacity = bank.cold_capacity
    available = max(0.0, capacity - (bank.capacity - bank.capacity * bank.state))
    let_out = battery.count_share(
        capacity=capacity, rated_time=rated_time, current=draw, exponent=exponent
    )
    return Drawn(
        bank=bank,
        draw=draw,
        load=bank_load.draw(chemistry=bank.chemistry, capacity=bank.capacity, current=draw),
        rated_time=rated_time,
        exponent=exponent,
        cold_factor=bank.cold_factor if bank.lead_acid else None,
        cold_capacity=capacity,
        available=available,
        let_out=let_out,
        time=available * let_out / draw,
        to_floor=max(0.0, available - (1 - usable) * capacity) * let_out / draw,
    )


def _filled(bank: Bank, *, current: float, efficiency: float, known: Acceptance) -> Filled:
    charge, most = None, known.most * bank.capacity
    if not at_least(bank.state, known.full):
        charge = charging.stages(
            capacity=bank.capacity,
            current=current,
            from_state=bank.state,
            to_state=known.full,
            efficiency=efficiency,
            time_constant=known.time_constant,
        )
    return Filled(
        bank=bank,
        offer=ChargeOffer(current=current, most=most, fitting=most),
        efficiency=efficiency,
        time=(bank.capacity - bank.capacity * bank.state) / (current * efficiency),
        charge=charge,
        full_time=charge.total if charge else 0.0,
    )


def voltage_reading(
    chemistry: Chemistry,
    *,
    voltage: float,
    blocks: int,
    taken: Taken,
    rested_for: float | None,
    meter: float,
    charged: bool,
    stated: float | None,
) -> VoltageReading:
    """Return what a `voltage` [V] of `blocks` of 12 V in series says, `taken` as it was.

    `meter` [0..1] is by what share it may be off, `rested_for` [s] the rest before it; `charged`
    tells that a current flows in, `stated` the state by a monitor. Raises NotCovered for a reading
    that such a bank never shows.
    """
    rested.fits(voltage, blocks, "reading")
    read, shown = None, None
    silence = _silence(chemistry, taken=taken, rested_for=rested_for, charged=charged)
    if silence is None:
        read = rested.rested_voltage(
            chemistry=chemistry,
            voltage=voltage,
            count=blocks,
            state=stated,
            meter=meter,
            parameter="reading",
        )
        silence = Silence.TOO_HIGH if read.band is None else None
    elif taken is Taken.AT_REST:
        shown = voltages.shown_voltage(chemistry=chemistry, voltage=voltage, count=blocks)
    return VoltageReading(
        chemistry=chemistry,
        blocks=float(blocks),
        voltage=voltage,
        taken=taken,
        rested_for=rested_for,
        meter=meter,
        highest=voltages.max_charge_voltage(chemistry) * blocks,
        band=None if read is None else read.band,
        silence=silence,
        rested=read,
        shown=shown,
    )


def _silence(
    chemistry: Chemistry, *, taken: Taken, rested_for: float | None, charged: bool
) -> Silence | None:
    """Return why a reading tells no state, None where the bank has rested."""
    if taken is Taken.UNDER_LOAD and not charged:
        return Silence.LOADED
    if taken is not Taken.AT_REST:
        return Silence.CHARGED
    if not at_least(rested_for or 0.0, battery.rest_needed(chemistry)):
        return Silence.SETTLING_LEAD_ACID if chemistry.lead_acid else Silence.SETTLING_LFP
    return None

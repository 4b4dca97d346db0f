"""How long a parked bank may stand: small loads and self-discharge draw it down.

In scope: a steady drain on a healthy bank, which loses the same share of its capacity all the time,
and what a management system draws that no ammeter outside shows.
"""

from dataclasses import dataclass

from calc.energy import bank_load, battery
from calc.energy.bank_load import Draw
from calc.energy.battery import Bank, Chemistry
from calc.energy.limits import HARMFUL_OF_LEAD_ACID, LOW_LFP
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY
from calc.units.covered import NotCovered
from calc.units.si import Amperes, Celsius, Coulombs, LossRate, Number, Seconds, Share


@dataclass(frozen=True, kw_only=True)
class Standing:
    """How long a `bank` may stand with a `drain` on it until it is down to a state `to_state`.

    `bank` is as it is left, on the warmest day; `left` is what is then left of it, on the `coldest`
    (on the warmest, where that is not known). `loss` is what it loses by itself in that warmth,
    from `loss_low` to `loss_high` by the pages we saw; `shortest` and `longest` span that and what
    was found. `management` is what its own management system draws. Of the charge that `may_go` the
    drain has `taken` its part by then, the management system `managed`, and the bank lost its
    `own`. `largest_drain` is what may run on for as long as you are `away`: None if that is not
    known, or if the bank loses too much by itself.
    """

    bank: Bank
    to_state: Share
    drain: Amperes
    management: Amperes
    away: Seconds | None
    coldest: Celsius | None
    left: Bank
    day: Seconds
    warmth: Number
    loss: LossRate
    loss_low: LossRate
    loss_high: LossRate
    may_go: Coulombs
    days: Seconds
    shortest: Seconds
    longest: Seconds
    daily: Coulombs
    taken: Coulombs
    managed: Coulombs | None
    own: Coulombs
    largest_drain: Amperes | None

    @property
    def is_there(self) -> bool:
        """Whether the bank is down there already."""
        return at_most(self.bank.state, self.to_state)

    @property
    def too_long(self) -> bool:
        """Whether you are away for longer than it may stand."""
        return self.away is not None and not at_least(self.days, self.away)

    @property
    def back(self) -> Share | None:
        """The state when you are back, None where it is not known when."""
        if self.away is None:
            return None
        gone = (self.drain + self.management) * self.away / self.bank.capacity
        return max(0.0, self.bank.state - gone - self.loss * self.away)

    @property
    def ruined(self) -> bool:
        """Whether the bank is then as low as harms it."""
        least = 1 - HARMFUL_OF_LEAD_ACID if self.bank.lead_acid else LOW_LFP
        return self.too_long and self.back is not None and not at_least(self.back, least)

    @property
    def drained(self) -> bool:
        """Whether the drain takes more than the bank loses by itself."""
        return not at_most(self.taken, self.own)

    @property
    def draw(self) -> Draw:
        """The drain beside what such a bank gives."""
        bank = self.bank
        return bank_load.draw(
            chemistry=bank.chemistry, capacity=bank.capacity, current=self.drain + self.management
        )

    @property
    def stands_for(self) -> Seconds:
        """How long it will stand: as long as you are away, or as it may."""
        return self.days if self.away is None else self.away


def standing(
    *,
    chemistry: Chemistry,
    capacity: float,
    from_state: float,
    to_state: float,
    drain: float,
    management: float,
    self_discharge: float,
    away: float | None,
    temperature: float,
    coldest: float | None,
) -> Standing:
    """Return how long a bank of `capacity` [A·s] may stand with `drain` [A] on it.

    Its management system draws `management` [A] besides. From `from_state` to `to_state` [0..1],
    losing a share `self_discharge` [1/s] near 25 °C by itself, more at `temperature` [°C], its
    warmest. `coldest` [°C] is its coldest, `away` [s] how long it is left, None where not known.
    Raises NotCovered for a `to_state` above the other, a `coldest` above the warmest, and where
    nothing takes any charge.
    """
    if not at_most(to_state, from_state):
        raise NotCovered(
            "to_state", "must be no higher than at the start: a parked bank only discharges."
        )
    if coldest is not None and coldest > temperature:
        raise NotCovered("coldest", "must be no warmer than the warmest battery.")
    if drain + management + self_discharge <= 0:
        raise NotCovered(
            "self_discharge", "must be more than zero where nothing else drains the bank."
        )
    warmth = battery.warmth_factor(temperature)
    low, high = (rate * warmth for rate in battery.self_discharge_range(chemistry))
    loss, drop = self_discharge * warmth, from_state - to_state

    def stands(rate: float) -> float:
        return battery.standing_time(
            capacity=capacity, drop=drop, drain=drain + management, loss=rate
        )

    days = stands(loss)
    spare = None if away is None else drop * capacity / away - loss * capacity - management
    return Standing(
        bank=battery.bank(
            chemistry=chemistry, capacity=capacity, temperature=temperature, state=from_state
        ),
        to_state=to_state,
        drain=drain,
        management=management,
        away=away,
        coldest=coldest,
        left=battery.bank(
            chemistry=chemistry,
            capacity=capacity,
            temperature=temperature if coldest is None else coldest,
            state=to_state,
        ),
        day=DAY,
        warmth=warmth,
        loss=loss,
        loss_low=low,
        loss_high=high,
        may_go=drop * capacity,
        days=days,
        shortest=min(days, stands(high)),
        longest=max(days, stands(low)),
        daily=drain * DAY,
        taken=drain * days,
        managed=management * days if management else None,
        own=loss * capacity * days,
        largest_drain=spare if spare is not None and spare > 0 else None,
    )

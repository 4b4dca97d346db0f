"""What a bank holds, gives, takes back and loses, by chemistry.

Peukert's law in rated-hours form, with capacity first corrected for cold; size of a bank with room
for ageing; efficiency, self-discharge and the temperatures at which it may be charged. In scope: a
healthy bank of one chemistry. Rested voltage is in `rested`, acceptance over time in `charging`,
other voltages in `voltages`, thresholds in `limits`.
"""

from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise
from typing import Annotated

from calc.energy.limits import RATED_TIME
from calc.tables import SEEN, table
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY, HOUR
from calc.units.covered import Enumeration
from calc.units.si import Amperes, Celsius, Coulombs, Number, Seconds, Share, Tag

# Of a Julian year: by definition
MONTH: Annotated[Seconds, Tag("mean length of a month")] = 365.25 / 12 * DAY
# IEEE 485, table 1
BASE_TEMPERATURE: Annotated[Celsius, Tag("temperature that a label is meant for")] = 25.0


class Chemistry(Enumeration):
    """What a battery is made of."""

    LFP = "LFP"
    AGM = "AGM"
    GEL = "gel"
    FLOODED = "flooded"

    @property
    def lead_acid(self) -> bool:
        """Whether it is one of the lead-acid kinds."""
        return self is not Chemistry.LFP


class ColdCutOff(Enumeration):
    """Whether a battery is known to refuse a charge in the cold by itself."""

    NOT_PROVEN = "not-proven"
    PROVEN = "proven"


@dataclass(frozen=True, kw_only=True)
class BankWarmth:
    """A chemistry at a temperature: it may be charged from `charge_low` to `charge_high`.

    `cut_off` tells whether a cold LFP battery is known to stop a charge by itself.
    """

    chemistry: Chemistry
    temperature: Celsius
    cut_off: ColdCutOff
    charge_low: Celsius
    charge_high: Celsius

    @property
    def lead_acid(self) -> bool:
        """Whether it is lead-acid."""
        return self.chemistry.lead_acid

    @property
    def may_charge(self) -> bool:
        """Whether it may be charged at its temperature, unless its acid has frozen."""
        return at_least(self.temperature, self.charge_low) and at_most(
            self.temperature, self.charge_high
        )


@dataclass(frozen=True, kw_only=True)
class Bank(BankWarmth):
    """A bank of one chemistry at a temperature and a state of charge, and where its limits lie.

    `capacity` is as rated. `cold_factor` is that of the published table, held at its end below it;
    `freezes` is the temperature at which the acid of lead-acid freezes at this state.
    """

    capacity: Coulombs
    state: Share
    cold_factor: Number
    freezes: Celsius | None

    @property
    def cold_capacity(self) -> Coulombs:
        """The capacity at its temperature."""
        return self.capacity / self.cold_factor


@dataclass(frozen=True, kw_only=True)
class Usable:
    """The `share` of a bank that is used: a `charge` out of the `capacity` at its temperature."""

    bank: Bank
    share: Share
    cold_factor: Number
    capacity: Coulombs
    charge: Coulombs


@dataclass(frozen=True, kw_only=True)
class Discharge:
    """A steady current out of a bank whose label is meant over `rated_time`, by Peukert's law.

    It gives its `capacity`, that at its temperature, at the `rated_current`, and no more than
    `most` at a lighter one. `full_time` is how long the whole of it lasts.
    """

    bank: Bank
    capacity: Coulombs
    current: Amperes
    rated_time: Seconds
    exponent: Number
    rated_current: Amperes
    most: Coulombs
    full_time: Seconds

    @property
    def light(self) -> bool:
        """Whether Peukert's law alone would credit a load so light with more than that."""
        slow = max(self.rated_time, RATED_TIME)
        return self.exponent > 1.0 and not at_least(self.current, self.most / slow)


def warmth(
    *, chemistry: Chemistry, temperature: float, cut_off: ColdCutOff = ColdCutOff.NOT_PROVEN
) -> BankWarmth:
    """Return a `chemistry` at `temperature` [°C], with what is known of its cold cut-off.

    Raises NotCovered for a chemistry that is none.
    """
    low, high = charge_range(chemistry)
    return BankWarmth(
        chemistry=Chemistry(chemistry),
        temperature=temperature,
        cut_off=ColdCutOff(cut_off),
        charge_low=low,
        charge_high=high,
    )


def bank(
    *,
    chemistry: Chemistry,
    capacity: float,
    temperature: float,
    state: float,
    cut_off: ColdCutOff = ColdCutOff.NOT_PROVEN,
) -> Bank:
    """Return a bank of `capacity` [A·s] as rated, at `temperature` [°C] and `state` [0..1].

    Raises NotCovered for a chemistry that is none.
    """
    chemistry = Chemistry(chemistry)
    low, high = charge_range(chemistry)
    return Bank(
        chemistry=chemistry,
        capacity=capacity,
        temperature=temperature,
        state=state,
        cut_off=ColdCutOff(cut_off),
        cold_factor=capacity_factor(chemistry, temperature),
        freezes=freezing_point(state) if chemistry.lead_acid else None,
        charge_low=low,
        charge_high=high,
    )


def at_state(bank: Bank, state: float) -> Bank:
    """Return `bank` at another `state` [0..1]."""
    return replace(bank, state=state, freezes=freezing_point(state) if bank.lead_acid else None)


def usable(bank: Bank, share: float) -> Usable:
    """Return what a `share` [0..1] of `bank` gives at its temperature."""
    capacity = bank.cold_capacity
    return Usable(
        bank=bank,
        share=share,
        cold_factor=bank.cold_factor,
        capacity=capacity,
        charge=share * capacity,
    )


def discharge(bank: Bank, *, current: float, rated_time: float, exponent: float) -> Discharge:
    """Return what a `current` [A] does to a `bank` whose label is meant over `rated_time` [s].

    Peukert's law with `exponent`; see `peukert_runtime`. Raises ZeroDivisionError for no current.
    """
    capacity = bank.cold_capacity
    return Discharge(
        bank=bank,
        capacity=capacity,
        current=current,
        rated_time=rated_time,
        exponent=exponent,
        rated_current=capacity / rated_time,
        most=most_charge(capacity=capacity, rated_time=rated_time, exponent=exponent),
        full_time=peukert_runtime(
            capacity=capacity,
            rated_time=rated_time,
            current=current,
            exponent=exponent,
            usable=1.0,
        ),
    )


@cache
def _cold_factors() -> tuple[tuple[float, float], ...]:
    rows = table("ieee485_temperature").rows
    return tuple(((float(row["temperature_f"]) - 32) * 5 / 9, float(row["factor"])) for row in rows)


def coldest() -> float:
    """Return the lowest temperature [°C] of the IEEE 485 table."""
    return _cold_factors()[0][0]


def seen_from() -> float:
    """Return the temperature [°C] from which on the rows were seen in a text, not remembered."""
    rows = table("ieee485_temperature").rows
    return min((float(r["temperature_f"]) - 32) * 5 / 9 for r in rows if r["confidence"] == SEEN)


def cold_factor(temperature: float) -> float:
    """Return the IEEE 485 factor by which a lead-acid bank must be larger at `temperature` [°C].

    Straight line between the printed rows; from 25 °C up it is 1: warmth is not credited. Below the
    table (-3.9 °C) its last factor holds: a bank gives less than that there, by how much is not
    published (`bank.cold-beyond-table` says so). Rows below 4.4 °C are from memory.
    """
    if at_least(temperature, BASE_TEMPERATURE):
        return 1.0
    rows = _cold_factors()
    if temperature <= rows[0][0]:
        return rows[0][1]
    for (low, at_low), (high, at_high) in pairwise(rows):
        if temperature <= high:
            share = (temperature - low) / (high - low)
            return at_low + share * (at_high - at_low)
    return 1.0


def capacity_factor(chemistry: Chemistry, temperature: float) -> float:
    """Return by what the rated capacity is divided at `temperature` [°C]: `cold_factor`, 1 for LFP.

    No published factor for cold LFP was found. Raises NotCovered for a chemistry that is none.
    """
    return cold_factor(temperature) if Chemistry(chemistry).lead_acid else 1.0


def peukert_runtime(
    *, capacity: float, rated_time: float, current: float, exponent: float, usable: float
) -> float:
    """Return run time [s] of `capacity` [A·s], rated over `rated_time` [s], at `current` [A].

    t = usable H (C/(I H))^k. At the rated current C/H it returns usable·H for every exponent. The
    short form t = C/I^k is right only where C is the capacity at 1 A, and is not used. For a light
    load the formula goes on to credit charge that no bank holds: it is held to `most_charge`.
    """
    share: float = (capacity / (current * rated_time)) ** exponent
    most = most_charge(capacity=capacity, rated_time=rated_time, exponent=exponent)
    return usable * min(rated_time * share, most / current)


def most_charge(*, capacity: float, rated_time: float, exponent: float) -> float:
    """Return the most charge [A·s] that is credited to `capacity` [A·s] rated over `rated_time`.

    The label's; where that is meant over less than the usual 20 h, what Peukert's law gives at
    20 h: C (20 h/H)^(1 - 1/k). No lighter load is credited with more.
    """
    longer: float = max(1.0, RATED_TIME / rated_time) ** (1.0 - 1.0 / exponent)
    return capacity * longer


def exponent_range(chemistry: Chemistry) -> tuple[float, float]:
    """Return the published lowest and highest Peukert exponent of `chemistry`. NotCovered."""
    chemistry = Chemistry(chemistry)
    low, high = (by_chemistry("peukert", column)[chemistry] for column in ("low", "high"))
    return float(low), float(high)


def default_exponent(chemistry: Chemistry) -> float:
    """Return the exponent taken for `chemistry`: our choice within the range. NotCovered."""
    return float(by_chemistry("peukert", "default")[Chemistry(chemistry)])


@cache
def by_chemistry(name: str, column: str) -> dict[str, str]:
    """Return a column of the table `name` by chemistry, as text."""
    return {Chemistry(row["chemistry"]): row[column] for row in table(name).rows}


@cache
def _limit(chemistry: Chemistry, column: str) -> float:
    return float(by_chemistry("battery_limits", column)[Chemistry(chemistry)])


def usable_share(chemistry: Chemistry) -> float:
    """Return the share [0..1] of capacity usually used. Common practice, no source. NotCovered."""
    return float(by_chemistry("usable_share", "share")[Chemistry(chemistry)])


def heavy_rate(chemistry: Chemistry) -> float:
    """Return the current per capacity [1/s], from which a load is hard on a bank. NotCovered.

    Beyond it the maker's limit must be read. Common practice, no source.
    """
    return _limit(chemistry, "heavy_load_per_h") / HOUR


def most_rate(chemistry: Chemistry) -> float:
    """Return the current per capacity [1/s], beyond which no such bank is trusted. NotCovered.

    A management system opens, lead-acid sags below every cut-off at once, unless a data sheet
    allows more. Common practice, no source.
    """
    return _limit(chemistry, "most_load_per_h") / HOUR


def rest_needed(chemistry: Chemistry) -> float:
    """Return the rest [s] without charge or load before a reading tells anything. NotCovered.

    6 h lead-acid (an owner manual, which prefers 24 h), 24 h LFP (a paper's abstract).
    """
    return _limit(chemistry, "rest_h") * HOUR


def charge_efficiency(chemistry: Chemistry) -> float:
    """Return charge out per charge in (coulombic, [0..1]). Raises NotCovered.

    Lead-acid: a textbook's 85 %, over most of the range; near full a lead-acid bank gasses and
    takes far less.
    """
    return _limit(chemistry, "coulombic")


def energy_efficiency(chemistry: Chemistry) -> float:
    """Return energy out per energy in [0..1], the low figure of those published. NotCovered.

    It contains the coulombic loss: apply one of the two, not both.
    """
    return _limit(chemistry, "energy")


def self_discharge(chemistry: Chemistry) -> float:
    """Return the share of capacity that a bank loses by itself [1/s] near 25 °C.

    Our choice within `self_discharge_range`; a management system's own draw is not in it. Raises
    NotCovered.
    """
    return _limit(chemistry, "self_discharge") / MONTH


def self_discharge_range(chemistry: Chemistry) -> tuple[float, float]:
    """Return the lowest and highest self-discharge [1/s] of the pages that we saw. NotCovered."""
    return _limit(chemistry, "self_low") / MONTH, _limit(chemistry, "self_high") / MONTH


def warmth_factor(temperature: float) -> float:
    """Return by what self-discharge grows at `temperature` [°C]: twice for each 10 K above 25 °C.

    Common practice. Below 25 °C it is 1: the cold is not credited.
    """
    factor: float = 2.0 ** (max(0.0, temperature - BASE_TEMPERATURE) / 10.0)
    return factor


def charge_range(chemistry: Chemistry) -> tuple[float, float]:
    """Return the lowest and highest temperature [°C] at which the bank may be charged. NotCovered.

    LFP from 0 °C: a cell maker's specification. The rest is common practice: data sheets govern.
    """
    return _limit(chemistry, "charge_low_c"), _limit(chemistry, "charge_high_c")


def may_charge(*, chemistry: Chemistry, temperature: float) -> bool:
    """Return whether a bank at `temperature` [°C] may be charged at all, by `charge_range`.

    It does not know whether a flat lead-acid bank has frozen: that one must thaw first.
    """
    low, high = charge_range(chemistry)
    return at_least(temperature, low) and at_most(temperature, high)


def size(*, charge: float, usable: float, cold: float, ageing: float) -> float:
    """Return the rated capacity [A·s] that still gives `charge` [A·s] when cold and old.

    C = Q f / (u (1 - a)): `usable` share u, IEEE 485 factor f for cold, share `ageing` a lost by
    the time the bank is replaced. Raises ZeroDivisionError for u = 0 or a = 1.
    """
    return charge * cold / (usable * (1.0 - ageing))


def standing_time(*, capacity: float, drop: float, drain: float, loss: float) -> float:
    """Return the time [s] in which state of charge falls by `drop` [0..1].

    dt = drop C / (I + r C), with `drain` I [A] and `loss` r, the share of capacity that a bank
    loses by itself [1/s], taken as steady: it is rather slower as the bank empties. Raises
    ZeroDivisionError if nothing drains it.
    """
    return drop * capacity / (drain + loss * capacity)


def peukert_factor(*, capacity: float, rated_time: float, current: float, exponent: float) -> float:
    """Return by how much `current` [A] empties a bank faster than its charge says, 1 or more.

    Peukert's law, (I H / C)^(k - 1): a light load is not credited. See `peukert_runtime`.
    """
    faster: float = max(1.0, current * rated_time / capacity) ** (exponent - 1.0)
    return faster


def count_share(*, capacity: float, rated_time: float, current: float, exponent: float) -> float:
    """Return the share [0..1] of a charge that comes out at `current` [A], by Peukert's law.

    The inverse of `peukert_factor`, so never more than 1.
    """
    return 1.0 / peukert_factor(
        capacity=capacity, rated_time=rated_time, current=current, exponent=exponent
    )


def _between(rows: tuple[tuple[float, float], ...], at: float) -> float:
    for (low, at_low), (high, at_high) in pairwise(rows):
        if at <= high:
            return at_low + max(0.0, (at - low) / (high - low)) * (at_high - at_low)
    return rows[-1][1]


@cache
def _columns(name: str, of: str, to: str) -> tuple[tuple[float, float], ...]:
    return tuple((float(row[of]), float(row[to])) for row in table(name).rows)


def freezing_point(state: float) -> float:
    """Return the temperature [°C] at which the acid of a lead-acid bank at `state` [0..1] freezes.

    Gravity of a flooded battery by its state, then freezing by gravity, straight lines between the
    printed rows: between them up to about 1 K too cold, so keep `limits.FROST_MARGIN`. Sealed
    batteries mostly hold stronger acid and freeze later.
    """
    gravity = _between(_columns("acid_gravity", "state_percent", "specific_gravity"), state * 100)
    fahrenheit = _between(_columns("acid_freezing", "specific_gravity", "freezes_f"), gravity)
    return (fahrenheit - 32) * 5 / 9

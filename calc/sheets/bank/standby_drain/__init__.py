"""standby-drain: how long may it stand?"""

from dataclasses import dataclass
from types import SimpleNamespace

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.limits import FROST_MARGIN
from calc.sheets.parts.bank import (
    CAPACITY,
    CHEMISTRY,
    USUAL_LEFT,
    USUAL_SELF_DISCHARGE,
    from_state,
    to_state,
)
from calc.units.compare import at_least, at_most
from calc.units.kinds import CHARGE, CURRENT, NUMBER, TEMPERATURE, TIME
from calc.units.kinds.energy import LOSS_RATE
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Problem, Quantity
from calc.worksheet.work import Worksheet

DAY = 86400.0  # s
LONG = 90 * DAY  # s, by when a lead-acid bank wants a charge: common practice
LOW_LFP = 0.10  # state below which little is left until the cells are harmed: common practice


@dataclass(frozen=True, kw_only=True)
class StandbyDrain:
    """How long it may stand [s] and what takes the charge.

    `shortest` and `longest` span the self-discharge of the pages we saw. `largest_drain` [A] is
    what may run on for as long as you are away; None if not asked, or if the bank loses too much by
    itself.
    """

    lead_acid: bool
    day: float
    warmth: float
    loss: float
    may_go: float
    days: float
    daily: float
    taken: float
    own: float
    loss_low: float
    loss_high: float
    shortest: float
    longest: float
    largest_drain: float | None
    freezes: float | None


def run(
    *, drain: float, capacity: float, chemistry: Chemistry, from_state: float, to_state: float, self_discharge: float,
    away: float | None, temperature: float, coldest: float | None,
) -> StandbyDrain:
    """Return how long `capacity` [A·s] may stand with `drain` [A] on it."""
    if to_state > from_state * (1 + 1e-9):
        raise Problem("to_state", "State of charge at the end must be no higher than at the start: a bank that stands only empties.")
    if coldest is not None and coldest > temperature:
        raise Problem("coldest", "Coldest battery must be no warmer than the warmest battery.")
    warmth = battery.warmth_factor(temperature)
    loss = self_discharge * warmth
    low, high = (rate * warmth for rate in battery.self_discharge_range(chemistry))
    drop = from_state - to_state

    def stands(rate: float) -> float:
        return battery.standing_time(capacity=capacity, drop=drop, drain=drain, loss=rate)

    days = stands(loss)
    left = drop * capacity / away - loss * capacity if away is not None else None
    lead_acid = chemistry.lead_acid
    return StandbyDrain(
        lead_acid=lead_acid,
        day=DAY,
        warmth=warmth,
        loss=loss,
        may_go=drop * capacity,
        days=days,
        daily=drain * DAY,
        taken=drain * days,
        own=loss * capacity * days,
        loss_low=low,
        loss_high=high,
        shortest=stands(high),
        longest=stands(low),
        largest_drain=left if left is not None and left > 0 else None,
        freezes=battery.freezing_point(to_state) if lead_acid else None,
    )


def _there(v: SimpleNamespace) -> bool:
    return at_most(v.from_state, v.to_state)


def _may_freeze(v: SimpleNamespace) -> bool:
    return v.freezes is not None and v.coldest is not None and at_most(v.coldest, v.freezes + FROST_MARGIN)


def _too_long(v: SimpleNamespace) -> bool:
    return v.away is not None and not at_least(v.days, v.away)


def _frost(v: SimpleNamespace) -> bool:
    return not v.lead_acid and v.coldest is not None and not battery.may_charge(chemistry=v.chemistry, temperature=v.coldest)


def _hot(v: SimpleNamespace) -> bool:
    return not at_most(v.temperature, battery.charge_range(v.chemistry)[1])


def _deep(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.to_state, 0.5)


def _low(v: SimpleNamespace) -> bool:
    return not v.lead_acid and not at_least(v.to_state, LOW_LFP)


def _sulphates(v: SimpleNamespace) -> bool:
    stands = v.days if v.away is None else v.away
    return bool(v.lead_acid) and not at_most(stands, LONG)


WORKSHEET = Worksheet(
    id="standby-drain",
    title="Standby drain",
    question="How long may it stand?",
    entry_question="Will it start its heater after a month parked?",
    about="Days until small loads and self-discharge have drawn a parked bank down.",
    calculate=run,
    fields=(
        Quantity(id="drain", label="Drain while parked", symbol="I", kinds=(CURRENT,), default="60 mA", low="0 A", high="50 A",
                 hint="Measured at the bank with everything as you leave it: alarms, relays, monitors, chargers."),
        CAPACITY,
        CHEMISTRY,
        from_state("100 %"),
        to_state(usual=USUAL_LEFT),
        Quantity(id="self_discharge", label="Self-discharge", symbol="r_25", kinds=(LOSS_RATE,), low="0.1 %/month", high="100 %/month", default_by=("chemistry", USUAL_SELF_DISCHARGE),
                 hint="Share of the capacity lost in a month near 25 °C. An old battery loses more."),
        Quantity(id="away", label="How long you are away", symbol="t_a", kinds=(TIME,), optional=True, low="1 h", high="1500 days", example="30 days",
                 hint="If you know it: the sheet says whether it fits."),
        Quantity(id="temperature", advanced=True, label="Warmest battery", symbol="T", kinds=(TEMPERATURE,), default="25 °C", low="-30 °C", high="60 °C",
                 hint="Mean of the warm days. Heat doubles self-discharge for each 10 K above 25 °C."),
        Quantity(id="coldest", advanced=True, label="Coldest battery", kinds=(TEMPERATURE,), optional=True, low="-40 °C", high="60 °C", example="-10 °C",
                 hint="If it may stand in frost: a flat lead-acid bank freezes."),
    ),
    results=(
        Output(id="days", label="It may stand", symbol="t", kind=TIME, rounding=DOWN, unit="day"),
        Output(id="shortest", label="Shortest by the pages we saw", kind=TIME, rounding=DOWN, unit="day"),
        Output(id="longest", label="Longest by them", kind=TIME, rounding=DOWN, unit="day"),
        Output(id="daily", label="Drain takes in a day", symbol="Q_d", kind=CHARGE, rounding=UP),
        Output(id="taken", label="Drain takes by then", symbol="Q_I", kind=CHARGE),
        Output(id="own", label="Lost by itself by then", symbol="Q_r", kind=CHARGE),
        Output(id="largest_drain", label="Most that may run on while you are away", symbol="I_a", kind=CURRENT, rounding=DOWN, unit="milliampere", hide_if_none=True),
    ),
    intermediates=(
        Output(id="day", label="One day", symbol="t_d", kind=TIME, unit="hour"),
        Output(id="warmth", label="Factor for warmth", symbol="w", kind=NUMBER, rounding=UP),
        Output(id="loss", label="Self-discharge there", symbol="r", kind=LOSS_RATE, rounding=UP),
        Output(id="may_go", label="Charge that may go", symbol="Q", kind=CHARGE, rounding=DOWN),
        Output(id="loss_low", label="Lowest self-discharge seen", symbol="r_low", kind=LOSS_RATE),
        Output(id="loss_high", label="Highest self-discharge seen", symbol="r_high", kind=LOSS_RATE),
        Output(id="freezes", label="Acid freezes at the end near", kind=TEMPERATURE, rounding=UP),
    ),
    steps=(
        Step(of="warmth", source="practice", says="Twice as much for each 10 K above 25 °C; cold is not credited."),
        Step(of="loss", formula="self_discharge * warmth", source="self-discharge", says="What the bank loses with nothing connected."),
        Step(of="may_go", formula="(from_state - to_state) * capacity", says="Between where it starts and where you stop."),
        Step(of="days", formula="may_go / (drain + loss * capacity)", source="ohm", says="Both take charge at the same time; charge over current is time."),
        Step(of="loss_low", source="self-discharge", says="The kindest page, at this temperature."),
        Step(of="loss_high", source="self-discharge", says="The least kind, at this temperature."),
        Step(of="shortest", formula="may_go / (drain + loss_high * capacity)", source="self-discharge", says="If the bank is as leaky as the least kind page says."),
        Step(of="longest", formula="may_go / (drain + loss_low * capacity)", source="self-discharge", says="If it is as tight as the kindest says."),
        Step(of="daily", formula="drain * day", source="ohm", says="Small, but every day."),
        Step(of="taken", formula="drain * days", source="ohm", says="Current times time."),
        Step(of="own", formula="loss * capacity * days", says="The rest. Together they are the charge that may go."),
        Step(of="largest_drain", formula="may_go / away - loss * capacity", when=lambda v: v.largest_drain is not None, says="What self-discharge leaves over, spread over the time away."),
        Step(of="freezes", source="acid-freezing", when=lambda v: v.lead_acid, says="Acid thins as a battery empties. By the gravity of a flooded battery; sealed ones mostly freeze later."),
    ),
    rules=(
        Verdict(verdict=STOP, when=_there, says="It is there already: charge it before you leave."),
        Verdict(verdict=STOP, when=_may_freeze, says="Down to {to_state} its acid may freeze at {coldest}, and the case bursts. Leave it full and disconnected, or take it inside."),
        Verdict(verdict=STOP, when=lambda v: _too_long(v) and v.largest_drain is None, says="{days} at most. It loses too much by itself for {away}, whatever you switch off: it needs a charge in between."),
        Verdict(verdict=STOP, when=_too_long, says="{days}, not {away}. Bring the drain below {largest_drain}, switch the bank off at the battery, or leave a charger on it."),
        Verdict(verdict=CAUTION, when=_low, says="{days}, but that runs it nearly flat: once the management system has cut off, what is left goes fast and the cells are harmed for good."),
        Verdict(verdict=CAUTION, when=_deep, says="{days}, but below half, and left there, a lead-acid bank loses capacity for good."),
        Verdict(verdict=CAUTION, when=_hot, says="{days} by the sum, but {temperature} is too hot to store a battery: it ages fast."),
        Verdict(verdict=CAUTION, when=lambda v: v.away is not None and not at_least(v.shortest, v.away), says="{days} with self-discharge as taken, but {shortest} by the least kind page: {away} is not sure."),
        Verdict(verdict=CAUTION, when=_sulphates, says="{days} by charge, but a lead-acid bank that stands so long without a charge sulphates. Charge it every two to three months."),
        Verdict(verdict=CAUTION, when=_frost, says="{days}. But at {coldest} an LFP bank must not be charged: see that nothing charges it by itself."),
        Verdict(verdict=FINE, says="It may stand {days} before it is down to {to_state}."),
    ),
    remarks=(
        Remark(when=lambda v: v.lead_acid, source="acid-freezing", says="At {to_state} the acid freezes near {freezes}. Keep 3 K clear of it; never charge a frozen battery: let it thaw and look for cracks first."),
        Remark(when=lambda v: _frost(v) or (not v.lead_acid and v.coldest is None), source="lfp-frost", says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. A solar regulator left on will try."),
        Remark(when=lambda v: not v.lead_acid, source="practice", says="The management system draws a little of its own, which no ammeter outside shows. Store an LFP bank about half full, switched off at the battery, and look at it every few months."),
        Remark(when=lambda v: v.lead_acid and not at_least(v.from_state, 0.95), source="practice", says="A lead-acid bank is stored full. Left part empty it sulphates, and does not come back."),
        Remark(when=lambda v: v.drain > 0, source="practice", says="A fuse stays in the battery's cable while it stands, and gas or carbon monoxide alarms stay on while anybody sleeps aboard."),
        Remark(level=NOTE, source="self-discharge", says="Pages we saw give {loss_low} to {loss_high} for this chemistry at this temperature: {shortest} to {longest}."),
        Remark(level=NOTE, source="practice", says="Measure the drain with an ammeter or clamp in the battery's cable after an hour: many devices take long to fall asleep, and some wake again."),
    ),
    valid="A steady drain on a healthy bank. It is taken to lose the same share of its capacity all the time.",
    summary="about {days}",
)

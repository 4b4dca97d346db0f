"""The working of bank-gauge in words, what a voltage says, and what is said when nothing is wrong."""

# fmt: off
from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.gauge import Gauge, Silence
from calc.energy.limits import FREEZING
from calc.judge import Level, Rule
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.units.kinds import RATIO
from calc.units.shown import quantity_text
from calc.worksheet.declare import Step

WIRING = (
    "Shunt in the negative cable at the battery; every other negative on its load side, including inverter, chassis and chargers",
    "Its sense wire directly to the battery's positive post, with its own small fuse there",
    "Capacity set to what the bank holds now, not to its label",
    "Full voltage, tail current and charge efficiency set for this bank",
    "A charge to truly full every week or two, so that it resets to 100 %",
)


def _settling(chemistry: Chemistry) -> str:
    return f"it settles for {battery.rest_needed(chemistry) / HOUR:g}\u00a0h without load or charge"


WHY: dict[str, str] = {
    Silence.LOADED: "a load pulls it down",
    Silence.CHARGED: "a charger holds the voltage up, whatever the state",
    Silence.SETTLING_LEAD_ACID: _settling(Chemistry.AGM),
    Silence.SETTLING_LFP: _settling(Chemistry.LFP),
    Silence.TOO_HIGH: "something is charging the bank, or was just before",
}


def voltage_says(found: Gauge) -> str | None:
    """Return the states that a reading allows, in words, or None without one."""
    if found.reading is None:
        return None
    if found.band is None:
        return "no state at all"
    low, high = (quantity_text(state, RATIO, digits=2) for state in (found.band.low, found.band.high))
    return f"between {low} and {high}"


def wiring(_: Gauge) -> tuple[str, ...]:
    """Return what a monitor needs, in words."""
    return WIRING


def _lead(found: Gauge) -> bool:
    return found.bank.lead_acid


def _out(found: Gauge) -> bool:
    return found.drawn is not None


def _in(found: Gauge) -> bool:
    return found.filled is not None


def _known(found: Gauge) -> bool:
    return found.known is not None


def _counted(found: Gauge) -> bool:
    return found.counted


def _lead_out(found: Gauge) -> bool:
    return _lead(found) and _out(found)


def _lfp_out(found: Gauge) -> bool:
    return _out(found) and not _lead(found)


def _left_in_cold(found: Gauge) -> bool:
    return found.drawn is not None and bool(found.drawn.available)


def _not_spent(found: Gauge) -> bool:
    return found.drawn is not None and bool(found.drawn.to_floor)


def _staged(found: Gauge) -> bool:
    return found.filled is not None and found.filled.charge is not None


def _named(found: Gauge) -> bool:
    return found.band is not None


def _named_of(found: Gauge, chemistry: Chemistry) -> bool:
    return _named(found) and found.bank.chemistry is chemistry


def _silent(found: Gauge) -> bool:
    return found.reading is not None and found.reading.silence is not None


def _too_high(found: Gauge) -> bool:
    return found.reading is not None and found.reading.too_high


_BAND = "From the lowest state in any table at the low end of the reading to the highest at its high end."

STEPS: tuple[Step[Gauge], ...] = (
    Step(of="taken_state", when=_counted, text="As the monitor counts it."),
    Step(of="taken_state", source="practice", when=lambda g: _known(g) and not _counted(g), text="There is no monitor, so the lowest state by the rested voltage is used."),
    Step(of="remaining", formula="capacity * taken_state", when=_known, text="Charge in the bank at that state."),
    Step(of="draw", source="practice", when=_out, text="Current out of the bank, without its sign."),
    Step(of="cold_factor", source="ieee-485", when=_lead_out, text="A lead-acid bank gives less in the cold; from 25 °C up the factor is 1."),
    Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=_lead_out, text="The published factor multiplies the capacity needed, so the capacity you have is divided by it."),
    Step(of="missing", formula="capacity - remaining", when=_known, text="Charge taken out, by that."),
    Step(of="available", formula="cold_capacity - missing", when=lambda g: _lead_out(g) and _left_in_cold(g), text="Cold reduces what is left at the end."),
    Step(of="available", source="ieee-485", when=lambda g: _lead_out(g) and not _left_in_cold(g), text="More has been taken out than a bank this cold gives."),
    Step(of="available", formula="remaining", when=_lfp_out, text="No published factor for cold LFP is used."),
    Step(of="let_out", formula="min(1, (cold_capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert", when=_lead_out, text="A load above the rated current gets less out; one below it gets no more."),
    Step(of="let_out", formula="min(1, (capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert-li", when=_lfp_out, text="No exponent is published for LFP: 1 is used."),
    Step(of="time", formula="available * let_out / draw", source="ohm", when=_out, text="Charge divided by current is time."),
    Step(of="floor", formula="(1 - usable) * capacity", when=lambda g: not _lead_out(g), text="The part below the share you use."),
    Step(of="floor", formula="(1 - usable) * cold_capacity", when=_lead_out, text="The part below the share you use, of what the bank gives at this temperature."),
    Step(of="to_floor", formula="(available - floor) * let_out / draw", source="ohm", when=_not_spent, text="Only the charge above that part."),
    Step(of="to_floor", source="practice", when=lambda g: _out(g) and not _not_spent(g) and _counted(g), text="Your usable share is already used."),
    Step(of="to_floor", source="practice", when=lambda g: _out(g) and not _not_spent(g) and not _counted(g), text="At the lower end of the band your usable share is already used."),
    Step(of="time", formula="missing / (current * efficiency)", source="charge-efficiency", when=_in, text="If the current stays the same: only part of the charge is stored."),
    Step(of="acceptance_time", source="bulk-end", when=_staged, text="Near full a bank accepts less: the missing charge divided by this time. For LFP it is common practice."),
    Step(of="turn", source="ampere-hour-law", when=_staged, text="Up to here it accepts all of {current}."),
    Step(of="reached", source="practice", when=_staged, text="Where the current has fallen to {tail}: that is full."),
    Step(of="constant", formula="capacity * (turn - taken_state) / (efficiency * current)", source="ohm", when=_staged, text="First, at full current."),
    Step(of="falling", formula="acceptance_time / efficiency * ln((1 - turn) / (1 - reached))", source="ampere-hour-law", when=_staged, text="Then, at falling current."),
    Step(of="full_time", formula="constant + falling", when=_staged, text="Both stages."),
    Step(of="full_time", source="practice", when=lambda g: _in(g) and not _staged(g), text="The state at which the current has fallen to {tail}."),
    Step(of="usual_limit", source="bulk-most", when=lambda g: _in(g) and _lead(g), text="A quarter of the amp-hours, in amps."),
    Step(of="usual_limit", source="practice", when=lambda g: _in(g) and not _lead(g), text="Half of the amp-hours, in amps."),
    Step(of="says_low", source="states-flooded", when=lambda g: _named_of(g, Chemistry.FLOODED), text=_BAND),
    Step(of="says_low", source="states-agm", when=lambda g: _named_of(g, Chemistry.AGM), text=_BAND),
    Step(of="says_low", source="states-gel", when=lambda g: _named_of(g, Chemistry.GEL), text=f"{_BAND} Only one table for gel was found, so those for AGM are used with it."),
    Step(of="says_low", source="states-lfp", when=lambda g: _named_of(g, Chemistry.LFP), text=f"{_BAND} 25 mV a cell are added each way for hysteresis, and 5 % of the state because the table is for one cell."),
    Step(of="says_high", source="lfp-hysteresis", when=lambda g: _named_of(g, Chemistry.LFP), text="A cell reads higher after a charge than after a discharge, at the same state."),
    Step(of="says_high", source="practice", when=lambda g: _named(g) and _lead(g), text="The meter's error is added at both ends."),
    Step(of="voltage_says", source="practice", when=_named, text="A range, not a point. Count on the lower end."),
    Step(of="voltage_says", source="rest-lead", when=lambda g: _silent(g) and _lead(g), text="Read a lead-acid bank after at least {needed_rest} without load or charge; 24 h is better."),
    Step(of="voltage_says", source="rest-lfp", when=lambda g: _silent(g) and not _lead(g), text="An LFP bank settles for {needed_rest} or more, and its voltage hardly changes between 20 % and 90 %."),
    Step(of="why", when=_silent, text="Why no state is given."),
    Step(of="loss", source="self-discharge", text="No monitor measures it: it flows inside the battery."),
    Step(of="drift", formula="(zero_error + loss * capacity) * since_full", source="practice", when=_counted, text="Small errors add up until a full charge resets the monitor."),
    Step(of="state_low", formula="state - drift / capacity", when=lambda g: g.count is not None and bool(g.count.state_low), text="If they all had the same sign."),
    Step(of="state_low", source="practice", when=lambda g: g.count is not None and g.count.state_low == 0, text="By the monitor's error the bank may be empty."),
    Step(of="absorption", source="charge-volts", when=_lead, text="As usual; your charger's own setting is better."),
    Step(of="absorption", source="practice", when=lambda g: not _lead(g), text="As usual; your charger's own setting is better."),
    Step(of="margin", source="practice", text="So that a cable's voltage drop does not keep it from reading full."),
    Step(of="full_voltage", formula="absorption - margin", text="Above it, with the current below the tail current, the monitor resets to 100 %."),
    Step(of="tail_rate", source="practice", text="Amps per amp-hour: 1 to 3 % for lead-acid, 2 to 5 % for LFP. A low setting waits until the bank is really full."),
    Step(of="tail", formula="tail_rate * capacity", text="If the charger stops above it, the monitor never resets to 100 %."),
    Step(of="bears", source="practice", when=_too_high, text="At room temperature; your battery's data sheet is better."),
    Step(of="freezes", source="acid-freezing", when=lambda g: _lead(g) and _known(g) and not at_least(g.bank.temperature, FREEZING), text="By the acid density of a flooded battery; sealed ones usually freeze later."),
)

FINE_BY_VOLTAGE = Rule[Gauge](
    id="bank-gauge.fine-by-voltage", level=Level.FINE, when=lambda g: not g.counted and _known(g),
    headline="At least {count.remaining} left by the rested voltage, {band.low} to {band.high} of the bank.",
)
FINE_AT_REST = Rule[Gauge](
    id="bank-gauge.fine-at-rest", level=Level.FINE, when=lambda g: not _in(g) and not _out(g),
    headline="{count.remaining} left by the monitor; nothing flows now.",
)
FINE_CHARGING = Rule[Gauge](
    id="bank-gauge.fine-charging", level=Level.FINE, when=_in,
    headline="{count.remaining} left by the monitor, and full in about {filled.full_time}.",
)
FINE_DRAWN = Rule[Gauge](
    id="bank-gauge.fine-drawn", level=Level.FINE, when=_out,
    headline="{count.remaining} left by the monitor: {drawn.to_floor} at {drawn.draw} until your usable share is used.",
)

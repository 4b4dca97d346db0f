"""The working of bank-gauge in words, what a voltage says, and what is said when nothing is wrong."""

# fmt: off
from math import ceil, floor

from calc.energy import battery
from calc.energy.battery import Chemistry
from calc.energy.gauge import Gauge, Silence
from calc.energy.limits import FREEZING
from calc.judge import Level, Rule
from calc.units.compare import at_least
from calc.units.constants import HOUR
from calc.worksheet.declare import Step

WIRING = (
    "Shunt in the negative cable at the battery; every other negative on its far side, inverter, chassis and chargers too",
    "Its sense lead straight to the battery's positive post, with a small fuse of its own there",
    "Capacity set to what the bank holds now, not to what the label said",
    "Full voltage, tail current and charge efficiency set for this bank",
    "A charge to truly full every week or two, so that it can set itself to 100 %",
)


def _settling(chemistry: Chemistry) -> str:
    return f"it settles for {battery.rest_needed(chemistry) / HOUR:g}\u00a0h without load or charge"


WHY: dict[str, str] = {
    Silence.LOADED: "a load pulls it down",
    Silence.CHARGED: "a charger holds the voltage up, whatever the state",
    Silence.SETTLING_LEAD_ACID: _settling(Chemistry.AGM),
    Silence.SETTLING_LFP: _settling(Chemistry.LFP),
    Silence.TOO_HIGH: "something charges the bank, or did just before",
}


def voltage_says(found: Gauge) -> str | None:
    """Return the states that a reading allows, in words, or None without one."""
    if found.reading is None:
        return None
    if found.band is None:
        return "no state at all"
    return f"between {floor(found.band.low * 100 + 1e-6)} and {ceil(found.band.high * 100 - 1e-6)} %"


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


_BAND = "From the lowest state that any of the tables gives at the low end of the reading to the highest at its high end."

STEPS: tuple[Step[Gauge], ...] = (
    Step(of="taken_state", when=_counted, text="As the monitor counts it."),
    Step(of="taken_state", source="practice", when=lambda g: _known(g) and not _counted(g), text="No monitor counts, so it is the least that the rested voltage allows."),
    Step(of="remaining", formula="capacity * taken_state", when=_known, text="What is in the bank by that."),
    Step(of="draw", source="practice", when=_out, text="What goes out, without its sign."),
    Step(of="cold_factor", source="ieee-485", when=_lead_out, text="A lead-acid bank gives less in the cold; from 25 °C up the factor is taken as one."),
    Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=_lead_out, text="The published factor multiplies the capacity needed, so what is there is divided by it."),
    Step(of="missing", formula="capacity - remaining", when=_known, text="What has gone out, by that."),
    Step(of="available", formula="cold_capacity - missing", when=lambda g: _lead_out(g) and _left_in_cold(g), text="The cold takes its part from the end."),
    Step(of="available", source="ieee-485", when=lambda g: _lead_out(g) and not _left_in_cold(g), text="More has gone out than so cold a bank gives."),
    Step(of="available", formula="remaining", when=_lfp_out, text="No published factor for cold LFP is used."),
    Step(of="let_out", formula="min(1, (cold_capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert", when=_lead_out, text="A load above the rated current gets less out; one below it is not credited with more."),
    Step(of="let_out", formula="min(1, (capacity / (draw * rated_hours)) ** (exponent - 1))", source="peukert-li", when=_lfp_out, text="No exponent is published for LFP: it counts as one."),
    Step(of="time", formula="available * let_out / draw", source="ohm", when=_out, text="Charge over current is time."),
    Step(of="floor", formula="(1 - usable) * capacity", when=lambda g: not _lead_out(g), text="The part below the share you use."),
    Step(of="floor", formula="(1 - usable) * cold_capacity", when=_lead_out, text="The part below the share you use, of what the bank gives at this temperature."),
    Step(of="to_floor", formula="(available - floor) * let_out / draw", source="ohm", when=_not_spent, text="Only what is above that part."),
    Step(of="to_floor", source="practice", when=lambda g: _out(g) and not _not_spent(g) and _counted(g), text="The share you use is gone already."),
    Step(of="to_floor", source="practice", when=lambda g: _out(g) and not _not_spent(g) and not _counted(g), text="At the lower end of the band the share you use is gone already."),
    Step(of="time", formula="missing / (current * efficiency)", source="charge-efficiency", when=_in, text="If the current stays as it is: only part of what goes in counts."),
    Step(of="acceptance_time", source="bulk-end", when=_staged, text="Near full a bank takes less: the missing charge over this time. For LFP it is common practice."),
    Step(of="turn", source="ampere-hour-law", when=_staged, text="Up to here it takes all of {current}."),
    Step(of="reached", source="practice", when=_staged, text="Where the current has fallen to {tail}: that is what full means."),
    Step(of="constant", formula="capacity * (turn - taken_state) / (efficiency * current)", source="ohm", when=_staged, text="First at this current."),
    Step(of="falling", formula="acceptance_time / efficiency * ln((1 - turn) / (1 - reached))", source="ampere-hour-law", when=_staged, text="Then at less and less."),
    Step(of="full_time", formula="constant + falling", when=_staged, text="Both stages."),
    Step(of="full_time", source="practice", when=lambda g: _in(g) and not _staged(g), text="As full as a tail current of {tail} makes it."),
    Step(of="usual_limit", source="bulk-most", when=lambda g: _in(g) and _lead(g), text="A quarter of the ampere-hours, in amperes."),
    Step(of="usual_limit", source="practice", when=lambda g: _in(g) and not _lead(g), text="Half of the ampere-hours, in amperes."),
    Step(of="says_low", source="states-flooded", when=lambda g: _named_of(g, Chemistry.FLOODED), text=_BAND),
    Step(of="says_low", source="states-agm", when=lambda g: _named_of(g, Chemistry.AGM), text=_BAND),
    Step(of="says_low", source="states-gel", when=lambda g: _named_of(g, Chemistry.GEL), text=f"{_BAND} Only one table for gel was found, so those for AGM are counted with it."),
    Step(of="says_low", source="states-lfp", when=lambda g: _named_of(g, Chemistry.LFP), text=f"{_BAND} 25 mV a cell are added either way for hysteresis, and five hundredths of the state because the table is of one cell."),
    Step(of="says_high", source="lfp-hysteresis", when=lambda g: _named_of(g, Chemistry.LFP), text="A cell reads higher after a charge than after a discharge, at the same state."),
    Step(of="says_high", source="practice", when=lambda g: _named(g) and _lead(g), text="The meter's error counts on both ends."),
    Step(of="voltage_says", source="practice", when=_named, text="A band, not a point. The lower end is the one to count on."),
    Step(of="voltage_says", source="rest-lead", when=lambda g: _silent(g) and _lead(g), text="A lead-acid bank is read after at least {needed_rest} without load or charge; 24 h is better."),
    Step(of="voltage_says", source="rest-lfp", when=lambda g: _silent(g) and not _lead(g), text="An LFP bank settles for {needed_rest} and more, and its voltage hardly differs from a fifth to nine tenths full."),
    Step(of="why", when=_silent, text="The reason why no state is named."),
    Step(of="loss", source="self-discharge", text="No monitor sees it: it flows inside."),
    Step(of="drift", formula="(zero_error + loss * capacity) * since_full", source="practice", when=_counted, text="Small errors add up until a full charge sets the count right."),
    Step(of="state_low", formula="state - drift / capacity", when=lambda g: g.count is not None and bool(g.count.state_low), text="If they all went one way."),
    Step(of="state_low", source="practice", when=lambda g: g.count is not None and g.count.state_low == 0, text="The count may have nothing left in it."),
    Step(of="absorption", source="charge-volts", when=_lead, text="As usual; your charger's own setting is better."),
    Step(of="absorption", source="practice", when=lambda g: not _lead(g), text="As usual; your charger's own setting is better."),
    Step(of="margin", source="practice", text="So that a cable's drop does not keep it from ever seeing full."),
    Step(of="full_voltage", formula="absorption - margin", text="Above it, with the current below the tail, the monitor sets itself to 100 %."),
    Step(of="tail_rate", source="practice", text="Amperes for each ampere-hour: 1 to 3 % for lead-acid, 2 to 5 % for LFP. Set low, it waits until full is full."),
    Step(of="tail", formula="tail_rate * capacity", text="A charger that stops above it never lets the monitor see full."),
    Step(of="bears", source="practice", when=_too_high, text="At room temperature; your battery's data sheet is better."),
    Step(of="freezes", source="acid-freezing", when=lambda g: _lead(g) and _known(g) and not at_least(g.bank.temperature, FREEZING), text="By the gravity of a flooded battery; sealed ones mostly freeze later."),
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
    headline="{count.remaining} left by the monitor: {drawn.to_floor} at this current until the share you use is gone.",
)

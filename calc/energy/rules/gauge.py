"""Judgements on a count, a reading and a current; those on the bank itself are in `bank`."""

# fmt: off
from calc.energy.battery import BASE_TEMPERATURE, Chemistry
from calc.energy.gauge import Filled, Gauge, Taken
from calc.energy.limits import DRIFTED, FULL_REST
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least

_OVERCHARGED = "Fire: switch the charger off, then find the fault. Overcharged lead-acid gives off explosive gas; LFP has only its management system left."


def _named(found: Gauge) -> bool:
    return found.band is not None


def _overcharged(found: Gauge) -> bool:
    return found.reading is not None and found.reading.too_high


def _run_away(found: Gauge) -> bool:
    return found.reading is not None and found.reading.run_away


def _fully_charged_since(found: Gauge) -> Change:
    count = found.count
    assert count and count.drift  # the rule fires where there is some
    return Change({"since_full": DRIFTED * count.since_full * found.bank.capacity / count.drift})


OVERCHARGED_LFP = Rule[Gauge](
    id="gauge.overcharged-lfp", level=Level.STOP, when=lambda g: _overcharged(g) and not g.bank.lead_acid, source="practice",
    headline="Stop the charge: {reading.voltage} is too much for an LFP bank, {highest} at most. Check the charger.",
    text=_OVERCHARGED,
)
RUN_AWAY = Rule[Gauge](
    id="gauge.charger-run-away", level=Level.STOP, when=lambda g: _run_away(g) and g.bank.lead_acid, source="practice",
    headline="Switch the charger off: {reading.voltage} overcharges any bank. Its regulator has failed or is set wrong.",
    text=_OVERCHARGED, covers=frozenset({"gauge.overcharged-lead-acid"}),
)
OVERCHARGED_LEAD_ACID = Rule[Gauge](
    id="gauge.overcharged-lead-acid", level=Level.CAUTION, when=lambda g: _overcharged(g) and g.bank.lead_acid, source="practice",
    headline="Stop the charge and find the cause: {reading.voltage} is above {highest}, unless the bank is cold or being equalised.",
    text=_OVERCHARGED,
)
STATE_UNKNOWN = Rule[Gauge](
    id="gauge.state-unknown", level=Level.CAUTION, when=lambda g: g.known is None, source="practice",
    headline="Let the bank rest and read its voltage, or fit a monitor: the state of charge is not known.",
    text="Without a monitor only a voltage at rest helps: no load and no charge for {needed_rest}. A voltage under load or on charge gives no state.",
)
SPENT = Rule[Gauge](
    id="gauge.spent", level=Level.CAUTION, when=lambda g: g.spent,
    headline="Charge it: {count.remaining} left, and your usable share is used.",
)
SPENT_BY_VOLTAGE = Rule[Gauge](
    id="gauge.spent-by-voltage", level=Level.CAUTION, when=lambda g: g.spent_by_voltage(), source="practice",
    headline="Charge it: {band.low} to {band.high} by the voltage, so your usable share may be used.",
    covers=frozenset({"gauge.band-too-wide"}),
)
SURELY_SPENT_BY_VOLTAGE = Rule[Gauge](
    id="gauge.surely-spent-by-voltage", level=Level.CAUTION, when=lambda g: g.spent_by_voltage(1.0), source="practice",
    headline="Charge it now: {band.low} to {band.high} by the voltage, so your usable share is used.",
    covers=frozenset({"gauge.spent-by-voltage", "gauge.band-too-wide"}),
)
BAND_TOO_WIDE = Rule[Gauge](
    id="gauge.band-too-wide", level=Level.CAUTION, when=lambda g: g.band_too_wide, source="practice",
    headline="Charge it to full or fit a monitor: the voltage only shows {band.low} to {band.high}.",
)
NO_STATE_NAMED = Rule[Gauge](
    id="gauge.no-state-named", level=Level.CAUTION, when=lambda g: g.reading is not None and g.reading.silence is not None,
    headline="{count.remaining} by the monitor. The voltage gives no state: {reading.silence}.",
)
PERHAPS_SPENT = Rule[Gauge](
    id="gauge.perhaps-spent", level=Level.CAUTION, when=lambda g: g.perhaps_spent,
    headline="Charge it to full: the monitor may be off by {count.drift}, so your usable share may be used.",
)
DRIFTED_FAR = Rule[Gauge](
    id="gauge.drifted-far", level=Level.CAUTION, when=lambda g: g.drifted_far,
    headline="Charge it to full, to set the monitor right: after {count.since_full} it may be off by {count.drift}.",
    mend=_fully_charged_since,
)

NOT_AT_REST = Rule[Gauge](
    id="gauge.not-at-rest", level=Level.ADVICE, source="practice",
    when=lambda g: g.reading is not None and g.reading.taken is Taken.AT_REST and g.current != 0,
    text="At rest means no current at all, but {current} flows now: the reading must be from before that.",
)
SHORT_REST = Rule[Gauge](
    id="gauge.short-rest", level=Level.ADVICE, source="rest-lead",
    when=lambda g: _named(g) and g.bank.lead_acid and g.reading is not None and not at_least(g.reading.rested_for or 0.0, FULL_REST),
    text="Under 24 h of rest a lead-acid bank that was charged still reads high: count on the lower end.",
)
FLAT_CURVE = Rule[Gauge](
    id="gauge.flat-curve", level=Level.ADVICE, when=lambda g: _named(g) and g.bank.chemistry is Chemistry.LFP, source="states-lfp",
    text="On this flat curve a voltmeter cannot tell more. It shows nearly empty and nearly full; between, only a monitor helps.",
)
THIS_CURRENT_ALONE = Rule[Gauge](
    id="gauge.this-current-alone", level=Level.ADVICE, when=lambda g: g.drawn is not None, source="practice",
    text="The time is for this current only: a fridge or a pump that starts changes it at once.",
)
LESS_NEAR_FULL = Rule[Filled](
    id="charge.less-near-full", level=Level.ADVICE, when=lambda f: f.lead_acid, source="charge-efficiency",
    text="Leave a lead-acid bank on charge until the tail current has lasted a while: near full it accepts far less. The efficiency is valid over most of the range.",
)
TABLES_NEAR_25 = Rule[Gauge](
    id="gauge.tables-near-25", level=Level.NOTE, when=lambda g: _named(g) and g.bank.lead_acid, source="memory",
    text=f"The tables are for about {BASE_TEMPERATURE:g} °C. A cold bank reads a little lower at the same state, about 1 mV for each kelvin at 12 V.",
)
NEW_MONITOR = Rule[Gauge](
    id="gauge.new-monitor", level=Level.NOTE, source="practice",
    text="A new monitor is not reliable until after one full charge.",
)

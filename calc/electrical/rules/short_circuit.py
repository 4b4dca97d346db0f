"""Judgements on the shorts of a run: how well they are known, and what they do to it."""

from typing import Annotated

from calc.electrical.fault_source import SourceKnown

# fmt: off
from calc.electrical.interrupting import within_margin
from calc.electrical.short_circuit import FaultLevel, ShortCircuit
from calc.electrical.withstand import ADIABATIC_LIMIT
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most
from calc.units.constants import HOUR
from calc.units.si import Amperes, Coulombs, Share, Tag

# Of the sag that a meter may be off before the band is called wide: common practice, no source
ROUGH: Annotated[Share, Tag("error of a meter that makes a sag rough")] = 0.25
# By which a reading may differ from the bank's voltage before it is doubted: common practice
APART: Annotated[Share, Tag("difference of a reading from its bank's voltage")] = 0.1
# From which the maker's own figure is asked for: ABYC E-11 application note
LARGE_BANK: Annotated[Coulombs, Tag("capacity of a bank with large faults")] = 500 * HOUR
# ABYC E-11 application note, from which a class is named
LARGE_FAULT: Annotated[Amperes, Tag("fault current of a large bank")] = 10_000.0


def _rough(short: ShortCircuit) -> bool:
    readings = short.source.readings
    return readings is not None and readings.off > ROUGH * readings.sag


def _of_other_bank(short: ShortCircuit) -> bool:
    readings, voltage = short.source.readings, short.source.voltage
    return readings is not None and abs(readings.open_voltage - voltage) > APART * voltage


def _slow_arc(short: ShortCircuit) -> bool:
    return short.rise is not None and not at_most(short.rise.time_constant, short.rise.tested_at)


def _each_unfused(short: ShortCircuit) -> bool:
    return short.source.strings > 1 and not short.source.each_fused


def finer_meter(short: ShortCircuit) -> Change | None:
    """Return the error of a meter that tells this sag."""
    readings = short.source.readings
    return Change({"meter_error": ROUGH * readings.sag / 2}) if readings else None


def voltage_as_read(short: ShortCircuit) -> Change | None:
    """Return the voltage that was read without load as the bank's."""
    readings = short.source.readings
    return Change({"voltage": readings.open_voltage}) if readings else None


BEYOND_CLASSES = Rule[ShortCircuit](
    id="short.beyond-every-class", level=Level.STOP, when=lambda s: s.near.interrupting_class is None,
    headline="A short at the source may pass {near.current}: no published class breaks that.",
)
ESTIMATED = Rule[ShortCircuit](
    id="short.estimated-by-type", level=Level.CAUTION, when=lambda s: s.source.known is SourceKnown.ESTIMATE, source="breaking-article",
    headline="Get the maker's value: by type alone it is {lowest.current} to {far.current} at the far end, {near.current} at the source.",
    text="Usually {source.usual_low} to {source.usual_high} at the source, {near.current} with thin plates. The highest sets the interrupting rating, the lowest whether a fuse opens.",
)
ROUGH_READINGS = Rule[ShortCircuit](
    id="short.readings-rough", level=Level.CAUTION, when=_rough, source="two-readings",
    headline="Measure again with a larger load: {source.readings.current} shows too little. A short may pass up to {near.current}.",
    text="The meter's error is a large part of the sag, so the highest short is a rough value. Measure again with a larger load or a better meter.",
    mend=finer_meter,
)
OTHER_BANK = Rule[ShortCircuit](
    id="short.readings-of-another-bank", level=Level.CAUTION, when=_of_other_bank, source="practice",
    headline="Measure again: {source.readings.open_voltage} without load does not fit a bank of {source.voltage}.",
    text="The reading without load, {source.readings.open_voltage}, does not fit a bank of {source.voltage}: were both taken at the same posts of the same bank?",
    mend=voltage_as_read,
)
OVERHEATED = Rule[ShortCircuit](
    id="short.insulation-overheated", level=Level.CAUTION, when=lambda s: s.overheated, source="short-temperatures",
    headline="Find out why the wire is at {laid.run.temperature}: {withstand.insulation.label} is rated for less.",
    text="{laid.run.temperature} is hotter than {withstand.insulation.label} is rated for. It is being damaged before any fault, and withstands a short for less time than shown.",
    mend=lambda s: Change({"temperature": s.withstand.insulation.initial}),
)
SLOW_ARC = Rule[ShortCircuit](
    id="short.slower-than-tested", level=Level.CAUTION, when=_slow_arc, source="fuse-test",
    headline="Ask the fuse's maker: the current here has a time constant of {rise.time_constant}, longer than fuses are tested with.",
    text="Ask the maker: fuses are tested with about {rise.tested_at}, and here it is {rise.time_constant}. A slower circuit feeds the arc for longer.",
)

NEVER_TRY = Rule[ShortCircuit](
    id="short.never-try", level=Level.ADVICE, source="practice",
    text="Never short a bank as a test: it burns, welds and can burst a battery. Disconnect the bank, use insulated tools, wear no rings; follow instructions and local rules.",
)
BREAK_AT_SOURCE = Rule[ShortCircuit](
    id="short.break-at-source", level=Level.ADVICE, when=lambda s: s.near.interrupting_class != s.far.interrupting_class, source="33cfr-place",
    text="The fuse of this run is at the source and must break a short right behind it, {near.current}: take one rated {near.interrupting_class} or more, whatever the far end passes.",
)
LARGE_ESTIMATED = Rule[ShortCircuit](
    id="short.large-bank-estimated", level=Level.ADVICE, when=lambda s: s.source.capacity is not None and s.source.capacity > LARGE_BANK, source="abyc-bank",
    text="Above 500 Ah ABYC requires devices that break at least the battery maker's own short-circuit current, and one between each battery and the main fuse.",
)
LATE_READINGS = Rule[ShortCircuit](
    id="short.readings-late", level=Level.ADVICE, when=lambda s: s.source.known is SourceKnown.TWO_READINGS, source="vrla-shorts",
    text="Use a load with its own switch, never a bare wire. Read the voltage within seconds: later, sag makes the source look weaker than it is. Conductance testers read differently.",
)
FUSE_EACH_BATTERY = Rule[ShortCircuit](
    id="short.fuse-each-battery", level=Level.CAUTION, when=lambda s: _each_unfused(s) and s.near.current > LARGE_FAULT, source="abyc-bank",
    headline="Fit a fuse at each battery's post: together they drive {near.current} into a short.",
    text="Give each battery its own fuse, class T for lithium: the others feed a short in one of them, and one main fuse would have to break all of them.",
    mend=lambda s: Change({"each_fused": "yes"}),
)
FUSE_EACH_STRING = Rule[ShortCircuit](
    id="short.fuse-each-string", level=Level.ADVICE, when=_each_unfused, source="abyc-bank",
    text="Strings in parallel feed a short in one of them: each needs its own fuse at its post.",
    mend=lambda s: Change({"each_fused": "yes"}),
)
CLASS_TIGHT = Rule[FaultLevel](
    id="short.class-tight", level=Level.ADVICE, source="practice",
    when=lambda f: f.interrupting_class is not None and within_margin(f.interrupting_class, f.current),
    text="{current} is within a tenth of {interrupting_class}. No source is known that precisely: use the class above there.",
)
IN_ONE_CONDUCTOR = Rule[ShortCircuit](
    id="short.in-one-of-several", level=Level.ADVICE, when=lambda s: s.laid.run.parallel > 1, source="nec-parallel",
    text="Fuse each of the {laid.run.parallel} conductors, or all by a fuse no larger than one can carry: a short in one draws nearly all its current through that one.",
    mend=lambda s: Change({"parallel": 1.0}),
)
ARCS = Rule[ShortCircuit](
    id="short.arcs-pass-less", level=Level.ADVICE, source="practice",
    text="Fire: a short that arcs, or a chafed strand, passes less than any value here, and a fuse may not open. Clips, sleeves and grommets protect against those.",
)

EACH_JUDGED_ALONE = Rule[ShortCircuit](
    id="short.each-judged-alone", level=Level.NOTE, when=lambda s: s.laid.run.parallel > 1, source="nec-parallel",
    text="Each of the {laid.run.parallel} conductors is judged alone. They share a load evenly only if they are alike.",
)
BEYOND_ADIABATIC = Rule[ShortCircuit](
    id="short.beyond-five-seconds", level=Level.NOTE, when=lambda s: s.lowest_start.withstand > ADIABATIC_LIMIT, source="adiabatic",
    text="{lowest_start.withstand} at the lowest short is beyond the 5 s for which the formula is valid. Heat leaves the wire meanwhile, so it lasts a little longer, but its surroundings get that heat.",
)
K_NOT_PRINTED = Rule[ShortCircuit](
    id="short.k-not-printed", level=Level.NOTE, when=lambda s: not s.withstand.insulation.listed, source="short-temperatures",
    text="No list prints a k for PVC rated 105 °C: this is the formula with the end temperature of other PVC.",
)
CHARGERS_FEED = Rule[ShortCircuit](
    id="short.chargers-feed-it", level=Level.NOTE, source="practice",
    text="A charger or alternator at work feeds the short as well, by its own current. A battery's own electronics may switch off a short or may fail to: they are not a fuse.",
)
SOLID_COPPER = Rule[ShortCircuit](
    id="short.highest-by-solid-copper", level=Level.NOTE, source="copper-iacs",
    text="The highest short is calculated with solid copper of the named area, the lowest with the table, which has more resistance: a real cable is between.",
)
RATE_FOR_ALL = Rule[ShortCircuit](
    id="short.rate-for-full-current", level=Level.NOTE, when=lambda s: s.rise is not None, source="dc-guide",
    text="95 % is reached after {rise.settled}. A fast fuse may open before the full current flows, but still needs a rating for it. Large telephone batteries have 5 ms.",
)
LARGE_FAULT_CLASS = Rule[ShortCircuit](
    id="short.large-bank-class", level=Level.NOTE, when=lambda s: s.near.current > LARGE_FAULT, source="abyc-bank",
    text="For banks above 2200 CCA or 500 Ah whose maker states more than 10 kA, ABYC requires 20 kA at 125 V d.c. or more.",
)

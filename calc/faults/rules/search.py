"""Judgements on a search for a fault: where it stands, and what its limits rest on."""

# fmt: off
from collections.abc import Callable

from calc.energy.battery import Chemistry
from calc.faults.graph import Reads, Symptom
from calc.faults.search import FaultSearch
from calc.judge import Level, Rule

ON_THE_WAY = (Symptom.FLICKERS, Symptom.INVERTER, Symptom.HOT)


def _cites(source: str) -> Callable[[FaultSearch], bool]:
    return lambda s: source in s.cited


def _of(chemistry: Chemistry) -> Callable[[FaultSearch], bool]:
    return lambda s: s.circuit.bank.chemistry is chemistry


def _charge_voltage_taken(search: FaultSearch) -> bool:
    return search.circuit.readings.charges and not search.circuit.bank.voltage_given


def _checking(search: FaultSearch) -> bool:
    """A check is fine while nothing is found; a symptom never is."""
    going = not search.found or search.clear
    return search.symptom is Symptom.CHECK and going and not search.danger and not search.at.odd


MAKE_SAFE = Rule[FaultSearch](
    id="search.make-safe", level=Level.STOP, when=lambda s: s.danger and not s.found,
    headline="Make it safe before anything else.",
)
DANGEROUS = Rule[FaultSearch](
    id="search.found-dangerous", level=Level.STOP, when=lambda s: s.danger and s.found,
    headline="Found: {cause}. Do not use it.",
)
NO_FAULT = Rule[FaultSearch](
    id="search.no-fault-found", level=Level.CAUTION, when=lambda s: s.clear and not s.danger and not _checking(s) and not s.as_it_should_be,
    headline="{cause}.",
)
AS_IT_SHOULD_BE = Rule[FaultSearch](
    id="search.as-it-should-be", level=Level.FINE, when=lambda s: s.as_it_should_be,
    headline="{cause}.",
)
FOUND = Rule[FaultSearch](
    id="search.found", level=Level.CAUTION, when=lambda s: s.found and not s.clear and not s.danger,
    headline="Found: {cause}.",
)
NOT_YET = Rule[FaultSearch](
    id="search.not-found-yet", level=Level.CAUTION, when=lambda s: not s.found and not s.danger and not _checking(s),
    headline="Not found yet: step {number}.",
)
CHECKED = Rule[FaultSearch](
    id="search.check-without-a-fault", level=Level.FINE, when=lambda s: _checking(s) and s.found,
    headline="{cause}.",
)
CHECKING = Rule[FaultSearch](
    id="search.nothing-found-so-far", level=Level.CAUTION, when=lambda s: _checking(s) and not s.found,
    headline="Step {number} of the check: nothing is proven good yet.",
)
OVER_FUSE = Rule[FaultSearch](
    id="search.load-over-its-fuse", level=Level.CAUTION, when=lambda s: s.circuit.over_fuse, source="practice",
    headline="Check load and fuse: {circuit.readings.flow} is more than the {circuit.run.rated} on this run.",
)
CABLE_TOO_SMALL = Rule[FaultSearch](
    id="search.cable-too-small", level=Level.CAUTION, when=lambda s: s.cable_by_figures, source="abyc-drop",
    headline="Use a larger cable: by your values one conductor drops {circuit.readings.conductor_drop}, over your limit.",
)
NOT_ENOUGH = Rule[FaultSearch](
    id="search.below-cut-out-when-sound", level=Level.CAUTION, when=lambda s: s.not_enough_by_figures, source="practice",
    headline="Use less load or larger cable: even without a fault the inverter gets {circuit.readings.far}, below its cut-off.",
)

SAFETY = Rule[FaultSearch](
    id="search.safety-first", level=Level.ADVICE, source="practice",
    text="{safety}",
)
ODD_PATH = Rule[FaultSearch](
    id="search.path-does-not-fit", level=Level.ADVICE, when=lambda s: s.at.odd, source="practice",
    text="From some point on the link's steps do not fit this symptom; they are ignored from there.",
)
REMAKE_TOO = Rule[FaultSearch](
    id="search.remake-as-well", level=Level.ADVICE, when=lambda s: s.remade_names is not None, source="practice",
    text="Also remake the joints that were worse than a good one: {remade_names}.",
)
JOINT_LOWERED = Rule[FaultSearch](
    id="search.like-joint-is-no-measure", level=Level.ADVICE, when=lambda s: s.circuit.run.joint_lowered, source="practice",
    text="A joint of {circuit.run.given} is too much for a good one here: see joint heat. {circuit.run.joint} is used.",
)
REPAIR = Rule[FaultSearch](
    id="search.measure-after-repair", level=Level.ADVICE, when=lambda s: s.found and not s.clear, source="practice",
    text="Repair with the isolator open, by the maker's instructions and local rules; gas and mains are for licensed trades. Then measure again: the repair is done when that reads right.",
)

RESTED_FLOODED = Rule[FaultSearch](
    id="rested.flooded-by-trade", level=Level.NOTE, when=_of(Chemistry.FLOODED), source="rested-lead",
    text="{circuit.bank.full} full and at rest, by the battery trade's table.",
)
RESTED_FLOODED_AGREES = Rule[FaultSearch](
    id="rested.flooded-by-army", level=Level.NOTE, when=_of(Chemistry.FLOODED), source="army-rested",
    text="An army manual agrees within 0.05 V for 12 V, down to half charge.",
)
RESTED_AGM = Rule[FaultSearch](
    id="rested.agm-by-maker", level=Level.NOTE, when=_of(Chemistry.AGM), source="rested-agm",
    text="{circuit.bank.full} full and at rest; empty by a battery maker's page.",
)
RESTED_GEL = Rule[FaultSearch](
    id="rested.gel-as-flooded", level=Level.NOTE, when=_of(Chemistry.GEL), source="states-gel",
    text="{circuit.bank.full} full and at rest, taken as flooded. The one table of gel that we found has a little more, 12.85 V at 12 V: such a reading is no fault.",
)
RESTED_LFP = Rule[FaultSearch](
    id="rested.lfp-one-cell", level=Level.NOTE, when=_of(Chemistry.LFP), source="rested-lfp",
    text="{circuit.bank.full} near full and at rest, by one measured cell. Between 25 % and full, LFP voltage changes too little to read the charge from it.",
)
LFP_SETTLES = Rule[FaultSearch](
    id="rested.lfp-settles", level=Level.NOTE, when=_of(Chemistry.LFP), source="lfp-relaxing",
    text="An LFP cell goes on settling for up to a day after charge or load.",
)
CHARGE_VOLTAGE_LEAD = Rule[FaultSearch](
    id="charge-voltage.lead-by-manual", level=Level.NOTE, source="charge-volts",
    when=lambda s: _charge_voltage_taken(s) and s.circuit.bank.chemistry is not Chemistry.LFP,
    text="A charging voltage of {circuit.bank.charging_to} is assumed; your charger's manual is better.",
)
CHARGE_VOLTAGE_LFP = Rule[FaultSearch](
    id="charge-voltage.lfp-by-practice", level=Level.NOTE, source="practice",
    when=lambda s: _charge_voltage_taken(s) and s.circuit.bank.chemistry is Chemistry.LFP,
    text="The usual charging voltage of {circuit.bank.charging_to} is assumed; your charger's manual is better.",
)
GROUND_DROP = Rule[FaultSearch](
    id="limit.ground-drop", level=Level.NOTE, when=_cites("ground-drop"), source="ground-drop",
    text="Below 0.1 V at 12 V a side is not searched; in proportion at a higher voltage.",
)
CABLE_DROP = Rule[FaultSearch](
    id="limit.cable-drop", level=Level.NOTE, when=lambda s: s.cable_by_figures, source="abyc-drop",
    text="3 % for what matters and 10 % for lights: practice for boats, because there is no rule for vans.",
)
LIKE_JOINT = Rule[FaultSearch](
    id="limit.like-joint", level=Level.NOTE, when=_cites("neta-resistance"), source="neta-resistance",
    text="Inspect a joint that is 50 % worse than the best like it.",
)
GOOD_CONTACT = Rule[FaultSearch](
    id="limit.good-contact", level=Level.NOTE, when=_cites("neta-resistance"), source="busbar-joint",
    text="Published for good bolted busbar joints: 5 to 15 µΩ. Up to 100 µΩ for a lug on a stud is common practice, unless you gave your own.",
)
SMALL_TERMINAL = Rule[FaultSearch](
    id="limit.small-terminal", level=Level.NOTE, when=_cites("small-connector"), source="small-connector",
    text="A small connector may have up to 4 mΩ, by a published article; a bolted terminal far less.",
)
FUSE_DROPS = Rule[FaultSearch](
    id="limit.fuse-drop", level=Level.NOTE, when=_cites("fuse-drop"), source="fuse-drop",
    text="Other families drop more or less than this one; compare with a like fuse.",
)
OPEN_PART = Rule[FaultSearch](
    id="limit.open-part", level=Level.NOTE, when=_cites("open-part"), source="open-part",
    text="Across the open part is the whole voltage, across the others none: no current flows.",
)
WORN_BANK = Rule[FaultSearch](
    id="limit.worn-bank", level=Level.NOTE, when=_cites("worn-bank"), source="worn-bank",
    text="80 % of the rating, by industry consensus.",
)
UNMARKED_CABLE = Rule[FaultSearch](
    id="limit.unmarked-cable", level=Level.NOTE, when=_cites("33cfr-table"), source="33cfr-table",
    text="By 60 °C insulation, unless you know better: see fuse choice.",
)
CONTINUOUS = Rule[FaultSearch](
    id="limit.continuous-load", level=Level.NOTE, when=_cites("nec-125"), source="nec-125",
    text="At least 125 % of a load that runs for hours.",
)
MAIN_CABLES = Rule[FaultSearch](
    id="limit.main-cables", level=Level.NOTE, source="army-drop",
    when=lambda s: s.reads is Reads.VOLTS and s.symptom in ON_THE_WAY,
    text="For main cables an army manual allows 0.20 V for each 100 A in a circuit.",
)
MAIN_CABLES_TOGETHER = Rule[FaultSearch](
    id="limit.main-cables-together", level=Level.NOTE, source="army-cables",
    when=lambda s: s.reads is Reads.VOLTS and s.symptom in ON_THE_WAY,
    text="Another allows both main cables together less than 0.5 V at 12 V under 500 A.",
)
SOUND_CIRCUIT = Rule[FaultSearch](
    id="search.sound-circuit", level=Level.NOTE, source="practice",
    text="Good circuit: full bank, equal joints, equal conductors. A half-full bank shows less on its posts; the drops are the same.",
)

STANDS = (MAKE_SAFE, DANGEROUS, NO_FAULT, AS_IT_SHOULD_BE, FOUND, NOT_YET, CHECKED, CHECKING)
BY_FIGURES = (OVER_FUSE, CABLE_TOO_SMALL, NOT_ENOUGH)  # known before anything is measured
JUDGEMENTS = (MAKE_SAFE, DANGEROUS, FOUND, *BY_FIGURES, NO_FAULT, NOT_YET, AS_IT_SHOULD_BE, CHECKED, CHECKING)
ALONG = (SAFETY, ODD_PATH, REMAKE_TOO, JOINT_LOWERED, REPAIR)
LIMITS = (
    RESTED_FLOODED, RESTED_FLOODED_AGREES, RESTED_AGM, RESTED_GEL, RESTED_LFP, LFP_SETTLES,
    CHARGE_VOLTAGE_LEAD, CHARGE_VOLTAGE_LFP,
    GROUND_DROP, CABLE_DROP, LIKE_JOINT, GOOD_CONTACT, SMALL_TERMINAL, FUSE_DROPS, OPEN_PART, WORN_BANK, UNMARKED_CABLE, CONTINUOUS,
    MAIN_CABLES, MAIN_CABLES_TOGETHER, SOUND_CIRCUIT,
)

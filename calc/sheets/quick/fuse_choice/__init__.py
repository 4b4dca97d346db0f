"""fuse-choice: which fuse protects this wire and carries this load?"""

# fmt: off
from calc.electrical.rules import cable, copper, protection
from calc.sheets.parts.fields import (
    AMBIENT,
    BUNDLED,
    GAUGE_READING,
    INSULATION,
    RULE_SET,
    SURROUNDINGS,
    TERMINALS,
    conductor_field,
)
from calc.sheets.parts.wire import AMPACITY, SAE, WARMTH, heat, laying_advice
from calc.sheets.quick.fuse_choice import words
from calc.sheets.quick.fuse_choice.calculate import calculate
from calc.units.kinds import CURRENT, RATIO, VOLTAGE
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import Output, Placed, placed, placed_outputs
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Window
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="fuse-choice",
    title="Fuse choice",
    question="Which fuse protects this wire and carries this load?",
    entry_question="Which fuse for this wire?",
    about="Between what the load needs and what the wire bears.",
    calculate=calculate,
    picture=Window(low="lowest", high="highest", value="fuse",
                   caption="The fuse stands between what the load needs and what the wire bears"),
    fields=(
        Quantity(id="current", label="Continuous current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.01 A", high="600 A",
                 hint="What the load draws for minutes and hours."),
        conductor_field("8 AWG"),
        INSULATION,
        Quantity(id="voltage", label="Highest voltage on the circuit", symbol="V", kinds=(VOLTAGE,), default="14.6 V", low="1 V", high="1000 V",
                 hint="While charging: 14.6 V, 29.2 V or 58.4 V for LFP at 12, 24 and 48 V."),
        Quantity(id="fault_current", label="Fault current at the fuse", symbol="I_f", kinds=(CURRENT,), default="2000 A", low="1 A", high="100000 A",
                 hint="What the bank can push into a dead short here. A lead-acid battery: ten to twenty times its A·h; LFP: ask the maker."),
        SURROUNDINGS,
        BUNDLED,
        AMBIENT,
        RULE_SET,
        GAUGE_READING,
        TERMINALS,
    ),
    results=(
        Output(id="fuse", at="protection.fuse", label="Fuse", symbol="I_n", kind=CURRENT),
        Output(id="lowest", at="protection.lowest", label="The load needs at least", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="highest", at="protection.highest", label="The wire bears at most", symbol="I_max", kind=CURRENT, rounding=DOWN),
        Output(id="ampacity", at="protection.cable.ampacity", label="Ampacity, corrected", symbol="I_z", kind=CURRENT, rounding=DOWN),
        Output(id="families", find=words.families, label="Fuse families that suit, best first"),
        Output(id="remedies", find=words.remedies, label="What would open the window"),
    ),
    intermediates=(
        *placed_outputs("protection.cable", *AMPACITY),
        *placed_outputs("protection.cable.copper", *SAE),
        *placed_outputs("protection.warmth", *WARMTH),
        Output(id="margin", at="protection.margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="ceiling", at="protection.ceiling", label="The law's ceiling", kind=CURRENT, rounding=DOWN),
        Output(id="versioned", at="protection.marked_higher", label="Suits in one version only"),
        Output(id="also", find=words.also, label="Also within the window"),
        Output(id="too_low_in_voltage", at="protection.too_low_in_voltage", label="Refused: d.c. voltage rating too low"),
        Output(id="cannot_break", at="protection.cannot_break", label="Refused: cannot break this fault"),
    ),
    steps=words.STEPS,
    rules=(
        *placed("protection", protection.NO_FAMILY, protection.WINDOW_CLOSED, protection.NO_RATING_BETWEEN),
        *heat("protection"),
        *placed("protection", protection.FROM_MEMORY, protection.MARKED_HIGHER, words.FINE),
        *laying_advice("protection"),
        *placed("protection", protection.WARM_AIR_DERATES, protection.VOLTAGE_TOO_LOW, protection.CANNOT_INTERRUPT,
                protection.PLACE_ON_MAINS, protection.PLACE_AT_SOURCE, protection.FAULT_BURNS, protection.TERMINALS_HAVE_RATINGS),
        *placed("protection.cable", cable.MAINS_SIDE, cable.EDITIONS_DIFFER, cable.RULES_FOR_BOATS, cable.BEYOND_ROWS),
        *placed("protection.cable.copper", copper.MAY_BE_SAE, copper.READ_AS_SAE, copper.GAUGE_READING_IDLE),
        *placed("", words.ONE_FUSE_ONE_WIRE),
        *placed("protection", protection.CEILING_NOT_USED),
        Placed(rule=words.ALSO, at="protection", text="Also within the window: {also}."),
        *placed("protection", protection.SOME_FROM_MEMORY),
    ),
    valid="Copper, continuous current, one fuse for one wire. Motors and inverters that start hard may need a slower fuse: the maker says.",
    summary="{fuse} fuse",
    summary_none="no standard fuse fits",
    keep_distinct=(("lowest", "highest"), ("lowest", "ampacity")),
)

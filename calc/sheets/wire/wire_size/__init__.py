"""wire-size: which conductor for this run?"""

# fmt: off
from dataclasses import replace

from calc.electrical.conductors import Series
from calc.electrical.rules import cable, copper, drop, protection, sizing
from calc.sheets.parts.fields import (
    AMBIENT,
    BUNDLED_OR_APART,
    COPPER,
    DROP_LIMIT,
    GAUGE_READING,
    INSULATION,
    PARALLEL,
    RULE_SET,
    STRANDS,
    SURROUNDINGS,
    TERMINALS,
)
from calc.sheets.parts.wire import AMPACITY, LAID, SAE, WARMTH, heat, laying_advice
from calc.sheets.wire.wire_size import words
from calc.sheets.wire.wire_size.calculate import calculate
from calc.units.kinds import (
    COUNT,
    CURRENT,
    LENGTH,
    LINEAR_RESISTANCE,
    POWER,
    RATIO,
    RESISTANCE,
    TEMPERATURE,
    VOLTAGE,
)
from calc.units.quantities import METRIC, US
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed, placed_outputs
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Ladder
from calc.worksheet.work import Worksheet

# A rule of a cable mends it with thicker wire or an easier way for it; here the conductor is what is
# found, and an easier way for it would bring a thinner one, judged anew
FOUND = tuple((name, "") for name in ("conductor", "ambient", "surroundings", "bundled", "length"))

WORKSHEET = Worksheet(
    id="wire-size",
    title="Wire size",
    question="Which wire size for this run?",
    about="Large enough for voltage drop, for heat and for a fuse.",
    calculate=calculate,
    picture=Ladder(rungs="rungs", load="current",
                   caption="Largest load for each size. A bar that reaches the right edge goes on"),
    fields=(
        Quantity(id="current", label="Continuous current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.01 A", high="2000 A",
                 hint="What the load draws for minutes and hours."),
        Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="1000 m",
                 hint="Along the cable, one way. The return is counted."),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="1 V", high="1000 V",
                 hint="Nominal: 12, 24 or 48 V."),
        replace(DROP_LIMIT, advanced=True, symbol="d_max"),
        INSULATION,
        Choice(id="series", label="Sizes", of=Series, default=Series.AWG, options=(Option(Series.AWG, system=US), Option(Series.METRIC, "mm²", system=METRIC)), hint="Which sizes your shop sells."),
        SURROUNDINGS,
        BUNDLED_OR_APART,
        AMBIENT,
        RULE_SET,
        Quantity(id="temperature", advanced=True, label="Conductor temperature", symbol="T", kinds=(TEMPERATURE,), default="60 °C",
                 low="-40 °C", high="200 °C", hint="Of the copper at work; 60 °C is a warm, loaded wire."),
        COPPER,
        STRANDS,
        GAUGE_READING,
        PARALLEL,
        TERMINALS,
    ),
    results=(
        Output(id="conductor", at="sized.chosen.name", label="Conductor"),
        Output(id="fuse", at="sized.protection.fuse", label="Fuse on each conductor, the smallest that fits", symbol="I_n", kind=CURRENT, hide_if_none=True),
        Output(id="drop", at="sized.loaded.drop", label="Voltage drop", symbol="U", kind=VOLTAGE, digits=2, hide_if_none=True),
        Output(id="decides", at="sized.decides", words=words.DECIDES, label="What decides", hide_if_none=True),
        Output(id="for_drop", at="sized.for_drop.name", label="Size for voltage drop alone"),
        Output(id="for_heat", at="sized.for_heat.name", label="Size for heat alone"),
        Output(id="ampacity", at="sized.protection.cable.ampacity", label="Ampacity of each conductor", symbol="I_z", kind=CURRENT, hide_if_none=True),
        Output(id="drop_percent", at="sized.loaded.drop_share", label="Share of the supply", symbol="d", kind=RATIO, digits=2, hide_if_none=True),
        Output(id="load_voltage", at="sized.loaded.load_voltage", label="Left at the load", symbol="V_L", kind=VOLTAGE, digits=4, hide_if_none=True),
        Output(id="loss", at="sized.loaded.loss", label="Heat in the wire", symbol="P", kind=POWER, hide_if_none=True),
        Output(id="remedies", find=words.remedies, label="What would let a size do"),
    ),
    intermediates=(
        Output(id="each", at="sized.circuit.each", label="Current in each conductor", symbol="I_1", kind=CURRENT),
        Output(id="margin", at="sized.circuit.margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="need", at="sized.circuit.need", label="Each conductor must carry", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="allowed", at="sized.circuit.allowed", label="Drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="resistance_limit", at="sized.circuit.resistance_limit", label="Resistance allowed for each conductor", symbol="r_max", kind=LINEAR_RESISTANCE, digits=4),
        Output(id="together", at="sized.circuit.together", label="Loaded conductors counted", symbol="n_c", kind=COUNT),
        Output(id="charged", at="sized.circuit.charge_ratio", label="Charging voltage over nominal", symbol="c", kind=RATIO, digits=4),
        Output(id="charging", at="sized.circuit.max_voltage", label="Highest voltage, while charging", symbol="V_c", kind=VOLTAGE),
        *placed_outputs("sized.protection.cable", *AMPACITY),
        Output(id="highest", at="sized.protection.highest", label="Largest fuse on each conductor", symbol="I_max", kind=CURRENT),
        Output(id="larger", at="sized.larger.name", label="The larger of both"),
        Output(id="obstacle", find=words.obstacle, label="Why not that one"),
        *placed_outputs("sized.loaded.laid", *LAID),
        *placed_outputs("sized.loaded.laid.copper", *SAE),
        Output(id="resistance", at="sized.loaded.laid.resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE),
        *placed_outputs("sized.warmth", *WARMTH),
        Output(id="warm_drop", at="sized.warm_drop", label="Voltage drop at that temperature", symbol="U_w", kind=VOLTAGE, digits=2),
    ),
    steps=words.STEPS,
    rules=(
        *placed("sized", sizing.NO_SIZE_AT_ALL, sizing.NO_SIZE_FOR_HEAT, sizing.NO_SIZE_FOR_DROP),
        Placed(rule=sizing.NO_FUSE_FITS, at="sized",
               headline="No size will do: {larger} suits, but {obstacle}, nor for larger ones."),
        *placed("sized", sizing.NO_RATED_FAMILY),
        Placed(rule=sizing.ONE_ALONE_TOO_THIN, at="sized", headline="Use {wires}, each with its own {fuse} fuse: one alone cannot carry {loaded.current}."),
        *heat("sized.protection", fields=FOUND),
        Placed(rule=drop.BEYOND_USUAL_LIMIT, at="sized.loaded", fields=FOUND),
        *placed("sized", sizing.WARM_DROP_OVER_LIMIT),
        *placed("sized.circuit", copper.FUSE_BOTH_ENDS_OF_EACH),
        Placed(rule=words.FINE[0], at="sized", headline="Use {wires}. {larger} suits drop and heat, but {obstacle}."),
        *placed("sized", *words.FINE[1:]),
        *placed("sized", sizing.HARDLY_SOLD),
        *placed("sized.circuit", copper.SHARE_EVENLY),
        *laying_advice("sized.protection", fields=FOUND, thin=False),
        Placed(rule=copper.TOO_THIN_TO_JOIN, at="sized.loaded.laid", fields=FOUND),
        Placed(rule=protection.WARM_AIR_DERATES, at="sized.protection", fields=FOUND),
        Placed(rule=drop.ONLY_PLAIN_LIGHTING, at="sized.loaded", fields=FOUND),
        Placed(rule=protection.PLACE_ON_MAINS, at="sized.protection",
               text="Protect it where it takes its supply. Which device, and how near, is for local rules and a licensed person to say."),
        Placed(rule=protection.PLACE_AT_SOURCE, at="sized.protection",
               text="Fuse it at the source: within 7 in (18 cm), or 40 in (1 m) in a sheath or enclosure. It must break the short there: see fuse choice."),
        *placed("sized.protection", protection.TERMINALS_HAVE_RATINGS, protection.TERMINALS_COOL_COLUMN),
        *placed("sized.circuit", cable.MAINS_SIDE, cable.EDITIONS_DIFFER, cable.RULES_FOR_BOATS, drop.TWO_LIMITS),
        *placed("sized.protection.cable.copper", copper.MAY_BE_SAE, copper.READ_AS_SAE),
        *placed("sized.circuit", copper.GAUGE_READING_IDLE, copper.STRANDS_IDLE),
        *placed("sized", sizing.NEC_JOINS_THICK_ONES),
        *placed("sized.protection.cable", cable.BEYOND_ROWS),
    ),
    leads=(
        Lead(label="The fuse for it", sheet="fuse-choice",
             carry=(("current", "each"), ("voltage", "charging"), *alike("conductor", "insulation", "surroundings", "bundled", "ambient", "rule_set", "gauge_reading", "terminals"))),
    ),
    valid="Steady direct current through like copper conductors. Aluminium and copper-clad aluminium need to be larger and are not covered. Motors and inverters with a high starting current may need more.",
    summary="{wires}",
    older_defaults=({"bundled": "2"},),
    summary_none="no size will do",
)

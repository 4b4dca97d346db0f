"""wire-size: which conductor for this run?"""

from types import SimpleNamespace

from calc.electrical.ampacity import NEC
from calc.electrical.conductors import Series
from calc.sheets.parts.fields import (
    AMBIENT,
    BUNDLED,
    COPPER,
    GAUGE_READING,
    INSULATION,
    PARALLEL,
    RULE_SET,
    STRANDS,
    SURROUNDINGS,
)
from calc.sheets.parts.wire import (
    BEARING,
    COPPER_READ,
    HEAT_CAUTIONS,
    PARALLEL_CAUTIONS,
    STRANDS_NOTE,
    THICKEST_NOTE,
    WARMTH,
    WIDEST,
    bearing_steps,
    copper_steps,
    heat_rules,
    loop_steps,
    nec_notes,
    sae_notes,
    warmth_steps,
)
from calc.sheets.wire.wire_size.calculate import DROP, HEAT, MORE, run
from calc.units.compare import at_most
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
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Ladder
from calc.worksheet.work import Worksheet


def _found(v: SimpleNamespace) -> bool:
    return v.conductor is not None


def _over_bundle(v: SimpleNamespace) -> bool:
    return v.uncounted_bundle and v.fuse is not None and not at_most(v.fuse, v.crowded)


def _warm_over(v: SimpleNamespace) -> bool:
    return _found(v) and v.warm > v.temperature and not at_most(v.warm_drop, v.allowed)


WORKSHEET = Worksheet(
    id="wire-size",
    title="Wire size",
    question="Which conductor for this run?",
    entry_question="Which wire do I buy?",
    about="Thick enough for the drop, for the heat, and for a fuse to fit.",
    calculate=run,
    picture=Ladder(rungs="rungs", load="current",
                   caption="The most that each size allows. A bar that reaches the right edge goes on"),
    fields=(
        Quantity(id="current", label="Continuous current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.01 A", high="2000 A",
                 hint="What the load draws for minutes and hours."),
        Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="1000 m",
                 hint="Along the cable from source to load. The sheet counts the way back."),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="1 V", high="1000 V",
                 hint="Nominal: 12, 24 or 48 V."),
        Quantity(id="limit", label="Drop you allow", symbol="d_max", kinds=(RATIO,), default="3 %", low="0.1 %", high="50 %",
                 hint="3 % for feeders, chargers and electronics; 10 % for plain lighting."),
        INSULATION,
        Choice(id="series", label="Sizes", of=Series, default=Series.AWG, options=(Option(Series.AWG), Option(Series.METRIC, "mm²")), hint="Which sizes your shop sells."),
        SURROUNDINGS,
        BUNDLED,
        AMBIENT,
        RULE_SET,
        Quantity(id="temperature", advanced=True, label="Conductor temperature", symbol="T", kinds=(TEMPERATURE,), default="60 °C",
                 low="-40 °C", high="200 °C", hint="Of the copper at work, for the drop; 60 °C is a warm, well loaded wire."),
        COPPER,
        STRANDS,
        GAUGE_READING,
        PARALLEL,
    ),
    results=(
        Output(id="conductor", label="Conductor"),
        Output(id="decides", label="What decides", hide_if_none=True),
        Output(id="for_drop", label="For the drop alone"),
        Output(id="for_heat", label="For the heat alone"),
        Output(id="fuse", label="Fuse on each conductor, the smallest that fits", symbol="I_n", kind=CURRENT, hide_if_none=True),
        Output(id="ampacity", label="Ampacity of each conductor", symbol="I_z", kind=CURRENT, rounding=DOWN, hide_if_none=True),
        Output(id="drop", label="Voltage lost", symbol="U", kind=VOLTAGE, rounding=UP, hide_if_none=True),
        Output(id="drop_percent", label="Share of the supply", symbol="d", kind=RATIO, rounding=UP, hide_if_none=True),
        Output(id="load_voltage", label="Left at the load", symbol="V_L", kind=VOLTAGE, rounding=DOWN, digits=4, hide_if_none=True),
        Output(id="loss", label="Heat in the wire", symbol="P", kind=POWER, rounding=UP, hide_if_none=True),
        Output(id="remedies", label="What would let a size do"),
    ),
    intermediates=(
        Output(id="each", label="Current in each conductor", symbol="I_1", kind=CURRENT, rounding=UP),
        Output(id="margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="need", label="Each conductor must bear", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="allowed", label="Drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="resistance_limit", label="Resistance allowed to each conductor", symbol="r_max", kind=LINEAR_RESISTANCE, digits=4),
        Output(id="together", label="Loaded conductors counted", symbol="n_c", kind=COUNT),
        Output(id="charged", label="Charging voltage over nominal", symbol="c", kind=RATIO, digits=4),
        Output(id="charging", label="Highest voltage, while charging", symbol="V_c", kind=VOLTAGE, rounding=UP),
        *BEARING,
        Output(id="highest", label="Largest fuse on each conductor", symbol="I_max", kind=CURRENT, rounding=DOWN),
        Output(id="bears_bundle", label="Size with room for a fuse, the bundle counted"),
        Output(id="larger", label="The thicker of both"),
        Output(id="obstacle", label="Why not that one"),
        *COPPER_READ,
        Output(id="resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE, rounding=UP),
        *WARMTH,
        Output(id="warm_drop", label="Voltage lost at that temperature", symbol="U_w", kind=VOLTAGE, rounding=UP),
    ),
    steps=(
        Step(of="allowed", formula="limit * voltage", source="abyc-drop", says="The limit you chose, in volts."),
        Step(of="each", formula="current / parallel", when=lambda v: v.parallel > 1, says="If the conductors in parallel are alike, each carries its share."),
        Step(of="resistance_limit", formula="allowed / (2 * length * current)", source="ohm", when=lambda v: v.parallel == 1,
             says="A conductor that resists more, at {temperature}, loses more than that out and back."),
        Step(of="resistance_limit", formula="allowed / (2 * length * each)", source="ohm", when=lambda v: v.parallel > 1,
             says="A conductor that resists more, at {temperature}, loses more than that out and back."),
        Step(of="for_drop", when=lambda v: v.for_drop is not None, says="The thinnest size that resists no more than {resistance_limit} at {temperature}."),
        Step(of="need", formula="margin * current", source="nec-125", when=lambda v: v.parallel == 1,
             says="A fuse that carries a load for hours is rated a quarter above it, and the wire must bear that fuse."),
        Step(of="need", formula="margin * each", source="nec-125", when=lambda v: v.parallel > 1,
             says="A fuse that carries a load for hours is rated a quarter above it. Each conductor has its own, and must bear it."),
        Step(of="for_heat", when=lambda v: v.for_heat is not None, says="The thinnest size that bears {need} by {rule_set}, with {insulation} insulation and the corrections below."),
        Step(of="charging", formula="charged * voltage", source="practice", when=lambda v: v.rule_set != NEC,
             says="A 12 V bank of LFP is charged at 14.6 V, and others in proportion. A fuse must be rated for that, and bundles are counted by it."),
        Step(of="conductor", when=_found, says="The thicker of the two, or the next one on which a standard fuse fits."),
        Step(of="decides", when=_found, says="Drop asks for {for_drop}, heat for {for_heat}."),
        *bearing_steps(_found, "together", "charging"),
        Step(of="fuse", source="fuse-ratings", when=lambda v: v.fuse is not None and v.rule_set != NEC,
             says="The smallest standard rating from {need} to {highest}, of the families rated for {charging} d.c."),
        Step(of="fuse", source="nec-ratings", when=lambda v: v.fuse is not None and v.rule_set == NEC, says="The smallest standard rating from {need} to {highest}."),
        *copper_steps(_found),
        *loop_steps(_found),
        Step(of="drop", formula="current * resistance", source="ohm", when=_found, says="Ohm's law."),
        Step(of="drop_percent", formula="drop / voltage", when=_found, says="Compared with the system voltage."),
        Step(of="load_voltage", formula="voltage - drop", when=_found, says="What is left at the far end."),
        Step(of="loss", formula="current * drop", source="ohm", when=_found, says="This heat is spread along the wire."),
        *warmth_steps(_found, "each"),
        Step(of="warm_drop", formula="drop * (warm - zero) / (temperature - zero)", source="copper-temperature", when=_found,
             says="What that temperature would make of the drop."),
        Step(of="remedies", when=lambda v: not _found(v), says="Each worked by running the same rules again."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not _found(v) and v.for_heat is None and v.for_drop is None,
             says="No size of this series will do: none bears {need} and none keeps within {limit} over {length}."),
        Verdict(verdict=STOP, when=lambda v: not _found(v) and v.for_heat is None, says="No size of this series will do: none bears {need}, the load and a quarter."),
        Verdict(verdict=STOP, when=lambda v: not _found(v) and v.for_drop is None, says="No size of this series will do: none keeps within {limit} over {length}."),
        Verdict(verdict=STOP, when=lambda v: not _found(v), says="No size of this series will do: {larger} suits drop and heat, but {obstacle}, nor does one fit any thicker size."),
        Verdict(verdict=CAUTION, when=lambda v: not v.rated, says="{wires} for drop and heat, but no fuse of our table is rated for {charging} d.c."),
        Verdict(verdict=CAUTION, when=lambda v: v.parallel > 1 and not at_most(v.current, v.highest),
             says="{wires}, but one alone does not bear {current}: all rests on an even share."),
        Verdict(verdict=CAUTION, when=_over_bundle,
             says="{wires} by this rule set, which sets no limit for {together} together below 50 V; heat does."),
        *heat_rules("{wires}"),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.drop_percent, WIDEST),
             says="{wires}: {drop_percent} lost, within the {limit} you allow, but beyond any usual limit."),
        Verdict(verdict=CAUTION, when=_warm_over, says="{wires}, but hot copper may lose {warm_drop}, more than the {limit} you allow: take the next size."),
        Verdict(verdict=FINE, when=lambda v: v.decides == MORE, says="{wires}: {larger} would do for drop and heat, but {obstacle}."),
        Verdict(verdict=FINE, when=lambda v: v.decides == DROP, says="{wires}. The drop decides: {drop_percent} lost; for the heat alone {for_heat} would do."),
        Verdict(verdict=FINE, when=lambda v: v.decides == HEAT, says="{wires}. The heat decides: its fuse may be {highest} at most; for the drop alone {for_drop} would do."),
        Verdict(verdict=FINE, says="{wires}. Drop and heat ask for the same size: {drop_percent} lost, a fuse of {highest} at most."),
    ),
    remarks=(
        Remark(when=_over_bundle, source="33cfr-notes",
               says="{together} loaded conductors together heat each other. This rule set counts that from 50 V on only, ABYC E-11 at any voltage: with its factor each bears {crowded}. Lay circuits apart, or take thicker wire."),
        Remark(when=lambda v: _over_bundle(v) and v.bears_bundle is not None, source="33cfr-notes", says="With the bundle counted so, {bears_bundle} has room for a fuse."),
        *PARALLEL_CAUTIONS,
        *HEAT_CAUTIONS,
        Remark(when=_warm_over, source="practice",
               says="At this current the copper may reach {warm}, hotter than the {temperature} the drop is worked at."),
        Remark(when=lambda v: _found(v) and not at_most(v.drop_percent, 0.03), source="abyc-drop",
               says="More than 3 % is for plain lighting and the like only: feeders, chargers, pumps and electronics are held to 3 %."),
        Remark(when=lambda v: _found(v) and v.rule_set == NEC, source="practice", says="Protect it where it takes its supply. Which device, and how near, is for local rules and a licensed person to say."),
        Remark(when=lambda v: _found(v) and v.rule_set != NEC, source="33cfr-place",
               says="Fuse it at the source: within 7 in (18 cm) of where the wire takes its current, 40 in (1 m) in a sheath or enclosure. Which family of fuse can break a short there is for fuse choice."),
        *nec_notes(_found),
        Remark(level=NOTE, source="abyc-drop",
               says="3 %: panel feeders, electronics and whatever safety hangs on. 10 %: other lighting and circuits that are not critical."),
        *sae_notes(_found),
        STRANDS_NOTE,
        Remark(level=NOTE, source="nec-parallel", when=lambda v: v.rule_set == NEC and v.parallel > 1,
               says="Only sizes from 1/0 AWG (53 mm²) up are tried: NEC joins no thinner ones in parallel for a load like this."),
        THICKEST_NOTE,
        Remark(level=NOTE, source="memory", when=lambda v: v.fuse_from_memory,
               says="Fuses of {fuse} for this voltage are known to us from memory only: look for one before you buy the wire."),
    ),
    valid="Steady direct current through like copper conductors. Aluminium and copper-clad aluminium need to be thicker and are not covered. Motors and inverters that start hard may want more.",
    summary="{wires}",
    summary_none="no size will do",
)

"""wire-drop: how much voltage does this run lose?"""

from types import SimpleNamespace

from calc.electrical.limits import USUAL_INSULATION
from calc.judge import always
from calc.sheets.parts.fields import COPPER, GAUGE_READING, PARALLEL, STRANDS, conductor_field
from calc.sheets.parts.wire import (
    COPPER_READ,
    PARALLEL_CAUTIONS,
    STRANDS_NOTE,
    WIDEST,
    copper_steps,
    loop_steps,
    sae_notes,
)
from calc.sheets.quick.wire_drop.calculate import run
from calc.units.compare import at_most
from calc.units.kinds import (
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
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Bar
from calc.worksheet.work import Worksheet

STRICT = 0.03  # ABYC E-11 11.14.2.6: critical circuits


def _within(v: SimpleNamespace, share: float) -> bool:
    return v.flows and at_most(v.drop_percent, share)


def _read(v: SimpleNamespace) -> bool:
    return not v.from_maker


def _bears_current(v: SimpleNamespace) -> bool:
    return at_most(v.current, v.carries)


def _bears_cool(v: SimpleNamespace) -> bool:
    return at_most(v.current, v.carries_60)


def _too_hot(v: SimpleNamespace) -> bool:
    return v.flows and not at_most(v.temperature, USUAL_INSULATION)


WORKSHEET = Worksheet(
    id="wire-drop",
    title="Wire drop",
    question="How much voltage does this run lose?",
    entry_question="Why is it weak at the far end?",
    about="Voltage lost in a run of wire, and the size that cures it.",
    calculate=run,
    picture=Bar(
        value="drop_percent", limit="limit", caption="Share of the supply lost on the way",
        marks=((STRICT, "3 %"), (WIDEST, "10 %")),
    ),
    fields=(
        Quantity(id="current", label="Current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.001 A", high="2000 A",
                 hint="The most that flows for more than a moment."),
        Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="1000 m",
                 hint="Along the cable from source to load. The sheet counts the way back."),
        conductor_field("8 AWG"),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="1 V", high="1000 V",
                 hint="Nominal: 12, 24 or 48 V."),
        Quantity(id="limit", label="Drop you allow", symbol="d", kinds=(RATIO,), default="3 %", low="0.1 %", high="50 %",
                 hint="3 % for feeders, chargers and electronics; 10 % for plain lighting."),
        Quantity(id="temperature", advanced=True, label="Conductor temperature", symbol="T", kinds=(TEMPERATURE,), default="60 °C",
                 low="-40 °C", high="200 °C", hint="Of the copper at work; 60 °C is a warm, well loaded wire."),
        COPPER,
        Quantity(id="maker_resistance", advanced=True, label="Maker's resistance", symbol="r", kinds=(LINEAR_RESISTANCE,), optional=True,
                 low="0.01 Ω/km", high="1000 Ω/km", example="2.1 Ω/km",
                 hint="Of one conductor at 20 °C, if the data sheet gives it. Empty: the published table."),
        STRANDS,
        GAUGE_READING,
        PARALLEL,
    ),
    results=(
        Output(id="drop", label="Voltage lost", symbol="U", kind=VOLTAGE, rounding=UP),
        Output(id="drop_percent", label="Share of the supply", symbol="d", kind=RATIO, rounding=UP),
        Output(id="resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE, rounding=UP),
        Output(id="loss", label="Heat in the wire", symbol="P", kind=POWER, rounding=UP),
        Output(id="load_voltage", label="Left at the load", symbol="V_L", kind=VOLTAGE, rounding=DOWN, digits=4),
        Output(id="smallest_conductor", label="Thinnest size for the drop alone"),
        Output(id="longest_run", label="Longest run within the limit", symbol="L_max", kind=LENGTH, rounding=DOWN),
    ),
    intermediates=(
        *COPPER_READ,
        Output(id="allowed", label="Drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="carries", label="What the wire bears", kind=CURRENT, rounding=DOWN),
        Output(id="carries_60", label="What it bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
        Output(id="alone", label="What one alone bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
        Output(id="thinnest_bears", label="What the thinnest size bears", kind=CURRENT, rounding=DOWN),
        Output(id="feeds", label="Most that can flow", kind=CURRENT, rounding=DOWN),
    ),
    steps=(
        *copper_steps(_read),
        Step(of="stated", source="copper-iacs", when=lambda v: _read(v) and v.computed,
             says="{conductor}, {finish} copper at {reference}: thinner than the published table begins, so worked from pure copper, and 2 % more because strands run in a helix."),
        Step(of="stated", formula="maker_resistance", when=lambda v: v.from_maker, says="As the maker states it at {reference}."),
        *loop_steps(always),
        Step(of="drop", formula="current * resistance", when=lambda v: v.flows, source="ohm", says="Ohm's law."),
        Step(of="drop_percent", formula="drop / voltage", when=lambda v: v.flows, says="Compared with the system voltage."),
        Step(of="loss", formula="current * drop", when=lambda v: v.flows, source="ohm", says="This heat is spread along the wire."),
        Step(of="load_voltage", formula="voltage - drop", when=lambda v: v.flows, says="What is left at the far end."),
        Step(of="feeds", formula="voltage / resistance", when=lambda v: not v.flows, source="ohm",
             says="With the far end shorted no more than this can flow, so there is no drop to give for more."),
        Step(of="allowed", formula="limit * voltage", source="abyc-drop", says="The limit you chose, in volts."),
        Step(of="smallest_conductor", says="The thinnest size of the same series whose drop stays within the limit at this current, length and temperature. Sizes below 18 AWG and 0.75 mm² are left to signals, unless yours is one."),
        Step(of="longest_run", formula="allowed / (2 * current * per_length)", source="ohm", when=lambda v: v.parallel == 1, says="The run at which this conductor meets the limit exactly."),
        Step(of="longest_run", formula="allowed * parallel / (2 * current * per_length)", source="ohm", when=lambda v: v.parallel > 1,
             says="The run at which these conductors meet the limit exactly."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: not v.flows,
             says="This run cannot carry {current}: even a dead short at the far end would pass only {feeds}."),
        Verdict(verdict=STOP, when=lambda v: not _bears_current(v),
             says="{drop} lost ({drop_percent}), and {wires} is too thin for {current} whatever the drop."),
        Verdict(verdict=STOP, when=lambda v: not _within(v, v.limit) and not _within(v, WIDEST),
             says="{drop} lost, {drop_percent} of the supply: beyond your {limit} and beyond any usual limit."),
        Verdict(verdict=CAUTION, when=lambda v: not _within(v, v.limit),
             says="{drop} lost, {drop_percent} of the supply: more than the {limit} you allow."),
        Verdict(verdict=CAUTION, when=lambda v: not _within(v, WIDEST),
             says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow, but beyond any usual limit."),
        Verdict(verdict=CAUTION, when=lambda v: not _bears_cool(v),
             says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow, but too much current for this wire unless its insulation is rated for heat."),
        Verdict(verdict=CAUTION, when=_too_hot,
             says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow, but copper at {temperature} is too hot for nearly all cable."),
        Verdict(verdict=CAUTION, when=lambda v: v.below_table,
             says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow, but no published limit of current covers so thin a wire."),
        Verdict(verdict=CAUTION, when=lambda v: v.parallel > 1 and not at_most(v.current, v.alone),
             says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow, but one conductor alone does not bear {current}, so all rests on an even share."),
        Verdict(verdict=FINE, says="{drop} lost, {drop_percent} of the supply: within the {limit} you allow."),
    ),
    remarks=(
        Remark(when=lambda v: not _bears_current(v) and not v.below_table, source="33cfr-table",
               says="Risk of fire: {wires} bears at most {carries} even with 105 °C insulation, at 30 °C. Take a thicker size; the drop is not what decides here."),
        Remark(when=lambda v: not _bears_current(v) and v.below_table, source="33cfr-table",
               says="Risk of fire: the published limits of current begin at 18 AWG (0.82 mm²). By its share of that copper (our step, common practice) {wires} bears at most {carries} even with 105 °C insulation, at 30 °C. Take a thicker size."),
        Remark(when=lambda v: _bears_current(v) and v.below_table, source="33cfr-table",
               says="The published limits of current begin at 18 AWG (0.82 mm²). By its share of that copper (our step, common practice) {wires} bears {carries} with 105 °C insulation and {carries_60} with 60 °C. The maker's figure comes first."),
        Remark(when=_too_hot, source="33cfr-table",
               says="{temperature} is hotter than 105 °C, the most that cable on sale for vehicles and boats is usually rated for. Check the insulation, the lugs and why the copper is so hot; its current was not held to a limit at that heat."),
        Remark(when=lambda v: _bears_current(v) and not _bears_cool(v) and not v.below_table, source="33cfr-table",
               says="Only if 105 °C is printed on the cable: {wires} bears {carries} with it, and {carries_60} with 60 °C insulation. See fuse choice for what lies between."),
        Remark(when=lambda v: v.thinnest_bears is not None and not at_most(v.current, v.thinnest_bears), source="33cfr-table",
               says="For the drop alone {smallest_conductor} would do, but it bears at most {thinnest_bears}: the current decides. See fuse choice."),
        Remark(when=lambda v: v.flows and not _within(v, v.limit) and v.thinnest_bears is not None and at_most(v.current, v.thinnest_bears), source="ohm",
               says="{smallest_conductor} keeps within {limit}; or shorten the run to {longest_run} one way, or raise the system voltage."),
        Remark(when=lambda v: v.smallest_conductor is None, source="ohm",
               says="No size of this series keeps within {limit} here. Shorten the run, raise the system voltage, move the source nearer, or ask a specialist about parallel conductors."),
        Remark(when=lambda v: _within(v, v.limit) and _within(v, WIDEST) and not _within(v, STRICT), source="abyc-drop",
               says="Fit for plain lighting and the like only: feeders, chargers, pumps and electronics are held to 3 %."),
        *PARALLEL_CAUTIONS,
        Remark(level=NOTE, source="abyc-drop",
               says="3 %: panel feeders, electronics and whatever safety hangs on. 10 %: other lighting and circuits that are not critical. Boat practice, used for want of a van rule."),
        Remark(level=NOTE, source="en-1648",
               says="For 12 V leisure vehicles EN 1648-2 is quoted with 0.8 V for circuits in general and 0.2 V for the line to the second battery."),
        Remark(level=NOTE, source="practice",
               says="A charger sees the drop as a full battery: its sense wire or a short thick cable cures that. An inverter's low-voltage cut-out comes sooner by as much as is lost."),
        Remark(level=NOTE, source="practice",
               says="Joints, fuse holders and switches lose voltage too. Measure across each one under load; a hot one is loose or corroded."),
        Remark(level=NOTE, source="33cfr-table", when=_bears_cool,
               says="The current was held to what {wires} bears with 60 °C insulation, in air of 30 °C and with no more than two conductors together: {carries_60}. Hotter air and bundles leave less: fuse choice counts them."),
        *sae_notes(_read),
        STRANDS_NOTE,
    ),
    valid="Steady direct current through like copper conductors, out and back. Aluminium and copper-clad aluminium lose far more and are not covered.",
    summary="{drop} lost, {drop_percent}",
    summary_none="this current cannot flow",
)

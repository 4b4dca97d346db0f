"""wire-drop: how much voltage does this run lose?"""

# fmt: off
from dataclasses import replace

from calc.electrical.ampacity import Surroundings
from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.rules import cable, copper, drop, protection, sizing
from calc.sheets.parts.fields import (
    AMBIENT,
    BUNDLED_OR_APART,
    COPPER,
    DROP_LIMIT,
    GAUGE_READING,
    INSULATION,
    PARALLEL,
    STRANDS,
    SURROUNDINGS,
    TERMINALS,
    conductor_field,
)
from calc.sheets.parts.wire import AMPACITY, LAID, SAE, WARMTH, heat, laying_advice
from calc.sheets.quick.wire_drop import words
from calc.sheets.quick.wire_drop.calculate import calculate
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
from calc.worksheet.declare import Output, Placed, placed, placed_outputs
from calc.worksheet.fields import Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Bar, Run
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="wire-drop",
    title="Wire drop",
    question="How much voltage does this run lose?",
    about="Voltage drop in a run of wire, and the size that fixes it.",
    calculate=calculate,
    picture=Run(
        supply="voltage", at_load="load_voltage", fuse="fuse", conductor="conductor", length="length", current="current",
        bar=Bar(
            value="drop_percent", limit="limit", caption="The run out and back, and its drop as a share of the supply",
            marks=tuple((drop_limit(duty), limit_text(duty)) for duty in Duty),
        ),
    ),
    fields=(
        Quantity(id="current", label="Current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.001 A", high="2000 A",
                 hint="What the load draws for minutes and hours."),
        Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="1000 m",
                 hint="Along the cable, one way. The return is counted."),
        conductor_field("6 AWG"),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="1 V", high="1000 V",
                 hint="Nominal: 12, 24 or 48 V."),
        replace(DROP_LIMIT, advanced=True),
        Quantity(id="temperature", advanced=True, label="Conductor temperature", symbol="T", kinds=(TEMPERATURE,), default="60 °C",
                 low="-40 °C", high="200 °C", hint="Of the copper at work; 60 °C is a warm, loaded wire."),
        COPPER,
        Quantity(id="maker_resistance", advanced=True, label="Maker's resistance", symbol="r", kinds=(LINEAR_RESISTANCE,), optional=True,
                 low="0.01 Ω/km", high="1000 Ω/km", example="2.1 Ω/km",
                 hint="One conductor at 20 °C, from its data sheet. Empty: published table."),
        STRANDS,
        GAUGE_READING,
        PARALLEL,
        replace(INSULATION, since=2, before="105 C"),
        replace(SURROUNDINGS, since=2, before=Surroundings.OUTSIDE),
        replace(BUNDLED_OR_APART, since=2, before="2"),
        replace(AMBIENT, since=2, before="30 °C"),
        TERMINALS,
    ),
    older_defaults=({"conductor": "8 AWG"}, {"bundled": "2"}),
    results=(
        Output(id="drop", at="loaded.drop", label="Voltage drop", symbol="U", kind=VOLTAGE, digits=2),
        Output(id="drop_percent", at="loaded.drop_share", label="Share of the supply", symbol="d", kind=RATIO, digits=2),
        Output(id="resistance", at="loaded.laid.resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE),
        Output(id="loss", at="loaded.loss", label="Heat in the wire", symbol="P", kind=POWER),
        Output(id="load_voltage", at="loaded.load_voltage", label="Left at the load", symbol="V_L", kind=VOLTAGE),
        Output(id="ampacity", at="protection.cable.ampacity", label="Ampacity of each conductor", symbol="I_z", kind=CURRENT),
        Output(id="smallest_conductor", label="Smallest size for voltage drop"),
        Output(id="longest_run", label="Longest run within the limit", symbol="L_max", kind=LENGTH, rounding=DOWN),
    ),
    intermediates=(
        *placed_outputs("loaded.laid", *LAID),
        *placed_outputs("loaded.laid.copper", *SAE),
        Output(id="allowed", at="loaded.allowed", label="Drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="each", at="protection.current", label="Current in each conductor", symbol="I_1", kind=CURRENT),
        Output(id="margin", at="protection.margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="lowest", at="protection.lowest", label="The fuse must carry", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="together", at="protection.cable.bundled", label="Loaded conductors counted", symbol="n_c", kind=COUNT),
        Output(id="charging", at="protection.max_voltage", label="Highest voltage, while charging", symbol="V_c", kind=VOLTAGE),
        *placed_outputs("protection.cable", *AMPACITY),
        Output(id="highest", at="protection.highest", label="Largest fuse on each conductor", symbol="I_max", kind=CURRENT),
        Output(id="fuse", at="protection.fuse", label="Smallest fuse that fits each conductor", symbol="I_n", kind=CURRENT),
        Output(id="ceiling", at="protection.ceiling", label="Legal maximum for the fuse", kind=CURRENT),
        *placed_outputs("protection.warmth", *WARMTH),
        Output(id="warm_drop", label="Voltage drop at that temperature", symbol="U_w", kind=VOLTAGE, digits=2),
        Output(id="thinnest_carries", at="smallest_ampacity", label="Ampacity of the smallest size for the drop", kind=CURRENT),
        Output(id="keep_under", at="longest_run", label="Keep the run under", kind=LENGTH, rounding=DOWN, digits=2, needs_step=False),
        Output(id="cure", label="Or use", needs_step=False),
        Output(id="feeds", at="loaded.short_circuit", label="Short-circuit current", kind=CURRENT),
    ),
    steps=words.STEPS,
    rules=(
        *placed("loaded", drop.CANNOT_FLOW),
        drop.LAY_APART, drop.BETTER_APART,
        *placed("protection", *(rule for rule in protection.FITS if rule is not protection.NO_RATING_FOR_FAULT)),
        Placed(rule=drop.BEYOND_ANY_LIMIT, at="loaded", headline="Voltage drop {drop} ({drop_percent}), over every limit we list. Use {cure}, or keep the run under {keep_under}."),
        Placed(rule=drop.OVER_LIMIT, at="loaded", headline="Voltage drop {drop} ({drop_percent}), over your {limit} limit. Use {cure}, or keep the run under {keep_under}."),
        *placed("loaded", drop.BEYOND_USUAL_LIMIT),
        *heat("protection", law_only=True),
        drop.COPPER_TOO_HOT,
        Placed(rule=sizing.WARM_DROP_OVER_LIMIT, fields=(("temperature", ""),)),
        sizing.ONE_ALONE_TOO_THIN,
        *placed("loaded.laid.run", copper.FUSE_BOTH_ENDS_OF_EACH),
        *placed("loaded", words.FINE),
        drop.CURRENT_DECIDES, drop.THICKER_OR_SHORTER, drop.NO_SIZE_WITHIN_LIMIT,
        *placed("loaded", drop.WITHIN_WHEN_COOL, drop.ONLY_PLAIN_LIGHTING),
        *placed("loaded.laid.run", copper.SHARE_EVENLY),
        Placed(rule=copper.TOO_THIN_TO_JOIN, at="loaded.laid", fields=(("conductor", ""),)),
        *laying_advice("protection"),
        *placed("protection", protection.WARM_AIR_DERATES),
        *placed("loaded", drop.TWO_LIMITS, drop.LIMITS_OF_LEISURE_VEHICLES, drop.CHARGERS_AND_INVERTERS, drop.JOINTS_LOSE_TOO),
        *placed("protection.cable", cable.RULES_FOR_BOATS, cable.BEYOND_ROWS),
        *placed("protection", protection.CEILING_NOT_USED),
        *placed("loaded.laid.read_copper", copper.MAY_BE_SAE, copper.READ_AS_SAE),
        *placed("loaded.laid.copper", copper.GAUGE_READING_IDLE),
        *placed("loaded.laid.run", copper.STRANDS_IDLE),
    ),
    keep_distinct=(("lowest", "highest"), ("lowest", "ampacity")),
    leads=(
        Lead(label="The fuse for it", sheet="fuse-choice",
             carry=(("current", "each"), ("voltage", "charging"), *alike("conductor", "insulation", "surroundings", "bundled", "ambient", "gauge_reading", "terminals"))),
    ),
    valid="Steady direct current through like copper conductors, out and back. Aluminium and copper-clad aluminium lose far more and are not covered.",
    summary="{drop} drop, {drop_percent}",
    summary_none="this current cannot flow",
)

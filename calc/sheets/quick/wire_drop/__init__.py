"""wire-drop: how much voltage does this run lose?"""

# fmt: off
from calc.electrical.drop_limits import Duty, drop_limit, limit_text
from calc.electrical.rules import copper, drop
from calc.sheets.parts.fields import (
    COPPER,
    DROP_LIMIT,
    GAUGE_READING,
    PARALLEL,
    STRANDS,
    conductor_field,
)
from calc.sheets.parts.wire import LAID, SAE
from calc.sheets.quick.wire_drop import words
from calc.sheets.quick.wire_drop.calculate import calculate
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
from calc.worksheet.declare import Output, placed, placed_outputs
from calc.worksheet.fields import Quantity
from calc.worksheet.pictures import Bar
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="wire-drop",
    title="Wire drop",
    question="How much voltage does this run lose?",
    entry_question="Why is it weak at the far end?",
    about="Voltage lost in a run of wire, and the size that cures it.",
    calculate=calculate,
    picture=Bar(
        value="drop_percent", limit="limit", caption="Share of the supply lost on the way",
        marks=tuple((drop_limit(duty), limit_text(duty)) for duty in Duty),
    ),
    fields=(
        Quantity(id="current", label="Current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.001 A", high="2000 A",
                 hint="The most that flows for more than a moment."),
        Quantity(id="length", label="Length, one way", symbol="L", kinds=(LENGTH,), default="12 ft", low="1 cm", high="1000 m",
                 hint="Along the cable from source to load. The sheet counts the way back."),
        conductor_field("8 AWG"),
        Quantity(id="voltage", label="System voltage", symbol="V", kinds=(VOLTAGE,), default="12 V", low="1 V", high="1000 V",
                 hint="Nominal: 12, 24 or 48 V."),
        DROP_LIMIT,
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
        Output(id="drop", at="loaded.drop", label="Voltage lost", symbol="U", kind=VOLTAGE, rounding=UP),
        Output(id="drop_percent", at="loaded.drop_share", label="Share of the supply", symbol="d", kind=RATIO, rounding=UP),
        Output(id="resistance", at="loaded.laid.resistance", label="Resistance, out and back", symbol="R", kind=RESISTANCE, rounding=UP),
        Output(id="loss", at="loaded.loss", label="Heat in the wire", symbol="P", kind=POWER, rounding=UP),
        Output(id="load_voltage", at="loaded.load_voltage", label="Left at the load", symbol="V_L", kind=VOLTAGE, rounding=DOWN, digits=4),
        Output(id="smallest_conductor", label="Thinnest size for the drop alone"),
        Output(id="longest_run", label="Longest run within the limit", symbol="L_max", kind=LENGTH, rounding=DOWN),
    ),
    intermediates=(
        *placed_outputs("loaded.laid", *LAID),
        *placed_outputs("loaded.laid.copper", *SAE),
        Output(id="allowed", at="loaded.allowed", label="Drop allowed", symbol="U_max", kind=VOLTAGE),
        Output(id="carries", at="ampacity.at_105", label="What the wire bears", kind=CURRENT, rounding=DOWN),
        Output(id="carries_60", at="ampacity.at_60", label="What it bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
        Output(id="alone", at="ampacity.one_at_60", label="What one alone bears with 60 °C insulation", kind=CURRENT, rounding=DOWN),
        Output(id="thinnest_bears", at="smallest_ampacity", label="What the thinnest size bears", kind=CURRENT, rounding=DOWN),
        Output(id="feeds", at="loaded.short_circuit", label="Most that can flow", kind=CURRENT, rounding=DOWN),
    ),
    steps=words.STEPS,
    rules=(
        *placed("loaded", drop.CANNOT_FLOW),
        drop.OVER_AMPACITY, drop.OVER_AMPACITY_BELOW_TABLE,
        *placed("loaded", drop.BEYOND_ANY_LIMIT, drop.OVER_LIMIT, drop.BEYOND_USUAL_LIMIT),
        drop.NEEDS_HOT_INSULATION, drop.NEEDS_HOT_INSULATION_BELOW_TABLE, drop.COPPER_TOO_HOT,
        drop.NO_PUBLISHED_AMPACITY, drop.ONE_ALONE_TOO_THIN,
        *placed("loaded", words.FINE),
        drop.CURRENT_DECIDES, drop.THICKER_OR_SHORTER, drop.NO_SIZE_WITHIN_LIMIT,
        *placed("loaded", drop.ONLY_PLAIN_LIGHTING),
        *placed("loaded.laid.run", copper.SHARE_EVENLY),
        *placed("loaded.laid", copper.TOO_THIN_TO_JOIN),
        *placed("loaded", drop.TWO_LIMITS, drop.LIMITS_OF_LEISURE_VEHICLES, drop.CHARGERS_AND_INVERTERS, drop.JOINTS_LOSE_TOO),
        drop.HELD_TO_TABLE,
        *placed("loaded.laid.read_copper", copper.MAY_BE_SAE, copper.READ_AS_SAE),
        *placed("loaded.laid.copper", copper.GAUGE_READING_IDLE),
        *placed("loaded.laid.run", copper.STRANDS_IDLE),
    ),
    valid="Steady direct current through like copper conductors, out and back. Aluminium and copper-clad aluminium lose far more and are not covered.",
    summary="{drop} lost, {drop_percent}",
    summary_none="this current cannot flow",
)

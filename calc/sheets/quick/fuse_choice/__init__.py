"""fuse-choice: which fuse protects this wire and carries this load?"""

# fmt: off
from dataclasses import replace

from calc.electrical.fuse_site import Place
from calc.electrical.rules import (
    cable,
    clearing,
    copper,
    feed,
    fitted_fuse,
    interrupting,
    protection,
)
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
from calc.sheets.parts.fuse_families import FAMILIES, NOT_NAMED
from calc.sheets.parts.wire import AMPACITY, SAE, WARMTH, heat, laying_advice
from calc.sheets.quick.fuse_choice import words
from calc.sheets.quick.fuse_choice.calculate import calculate
from calc.units.kinds import CURRENT, LENGTH, LINEAR_RESISTANCE, RATIO, RESISTANCE, VOLTAGE
from calc.units.shown import UP
from calc.worksheet.declare import Output, Placed, placed, placed_outputs
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Window
from calc.worksheet.work import Worksheet

# What a short behind the fuse is worked from: the current that gets to it at the highest voltage
ON_THIS_RUN = (("voltage", "voltage"), ("highest_voltage", "voltage"), ("known", "=maker"), ("source_resistance", "fault_here"), *alike("conductor", "gauge_reading"))
FITTED = (("fuse", "fitted"), ("fuse_family", "fitted_family"))
WHERE_IT_IS = (
    (interrupting.VOLTAGE_TOO_LOW, "Do not use this fuse: its d.c. voltage rating is below {voltage}.", "Above its d.c. voltage rating a fuse can hold an arc instead of opening. Use one rated {voltage} or more."),
    (interrupting.CANNOT_INTERRUPT, "Do not use this fuse: a short here passes {fault_here}, and it breaks {breaks}.", "A fuse that cannot break the fault can burst and burn."),
    (interrupting.NOT_MADE_FOR_IT, "Do not use this fuse: a short here passes {fault_here}, and such a cartridge may break only {weakest}.", ""),
)
RESERVATIONS = (
    (interrupting.UNKNOWN, "Read the fuse's data sheet: it must break {fault_here} at {voltage}, and what it breaks is not listed.", "No text that we saw says what this fuse breaks at {voltage} d.c. Read the fuse and its data sheet."),
    (interrupting.FROM_MEMORY, "Check the data sheet: the fuse must break {fault_here}, and no text that we saw says so.", "What this family breaks is from memory: read the fuse."),
    (interrupting.NO_STANDARD_RATING, "Look at the fuse again: this rating is none of its family's standard ones.", "This rating is not among the standard ones that we know of its family."),
    (interrupting.TIGHT, "Use a stronger family: the fault of {fault_here} is within a tenth of what this one breaks.", "No source is known so well, and a charger adds its own: use the class above."),
    (interrupting.MARKED_HIGHER, "Use only a fuse marked {version} or more: the common version is made for 32 V.", "Above its d.c. rating a fuse can hold an arc instead of opening: look for {version} or more on the fuse."),
)

WORKSHEET = Worksheet(
    id="fuse-choice",
    title="Fuse choice",
    question="Which fuse fits this wire and this load?",
    about="Between what the load needs and what the wire can carry.",
    calculate=calculate,
    picture=Window(low="lowest", high="largest", value="fuse",
                   caption="The fuse rating is between what the load needs and what the wire can carry"),
    fields=(
        Quantity(id="current", label="Continuous current", symbol="I", kinds=(CURRENT,), default="30 A", low="0.01 A", high="600 A",
                 hint="What the load draws for minutes and hours."),
        conductor_field("8 AWG"),
        INSULATION,
        Quantity(id="voltage", label="Highest voltage on the circuit", symbol="V", kinds=(VOLTAGE,), default="14.6 V", low="1 V", high="1000 V",
                 hint="While charging. LFP: 14.6 V, 29.2 V or 58.4 V."),
        Choice(id="fuse_place", since=2, before=Place.AT_BATTERY, label="Where the fuse is", of=Place, default=Place.BEHIND_MAIN,
               options=(Option(Place.AT_BATTERY, "at the battery", aliases=("battery",)), Option(Place.BEHIND_MAIN, "behind a main fuse", aliases=("fuse block",)),
                        Option(Place.KNOWN, "short-circuit current known", aliases=("where its short-circuit current is known",))),
               hint="Fuse block: behind a main fuse. Feed and short-circuit current: More options."),
        Quantity(id="fault_current", advanced=True, label="Short-circuit current of the bank", symbol="I_f", kinds=(CURRENT,), default="2000 A", low="1 A", high="100000 A",
                 hint="Lead-acid: ten to twenty times its Ah. LFP: from the maker."),
        replace(conductor_field("8 AWG"), id="feed_conductor", advanced=True, since=2, label="Feed to the fuse block", only_if=("fuse_place", Place.BEHIND_MAIN), hint="The cable from the main fuse to this fuse."),
        Quantity(id="feed_length", advanced=True, since=2, label="Length of the feed, one way", symbol="L_f", kinds=(LENGTH,), default="4 m", low="1 cm", high="200 m", only_if=("fuse_place", Place.BEHIND_MAIN),
                 hint="From the bank to this fuse. Shorter means more fault current."),
        Quantity(id="allowed", since=2, optional=True, advanced=True, label="Largest fuse by the appliance's label", symbol="I_a", kinds=(CURRENT,), low="0.1 A", high="1200 A", example="15 A",
                 hint="From its label or manual. Empty: it says nothing."),
        Quantity(id="fitted", since=2, optional=True, advanced=True, label="Fuse fitted now", symbol="I_b", kinds=(CURRENT,), low="0.05 A", high="1200 A", example="25 A",
                 hint="To have it checked. Empty: one is chosen."),
        Choice(id="fitted_family", since=2, before=NOT_NAMED, advanced=True, label="Family of that fuse", default=NOT_NAMED, options=(Option(NOT_NAMED, "not named"), *FAMILIES), example="like blade, large (type E) or SF51",
               hint="By construction; the letters are on the fuse or its box."),
        Quantity(id="fitted_voltage", since=2, optional=True, advanced=True, label="Voltage printed on that fuse", symbol="V_b", kinds=(VOLTAGE,), low="1 V", high="1500 V", example="32 V",
                 hint="Its d.c. rating. Empty: not read."),
        SURROUNDINGS,
        BUNDLED,
        AMBIENT,
        RULE_SET,
        GAUGE_READING,
        TERMINALS,
    ),
    results=(
        Output(id="fuse", at="protection.chosen", label="Fuse", symbol="I_n", kind=CURRENT),
        Output(id="lowest", at="protection.lowest", label="The load needs at least", symbol="I_min", kind=CURRENT, rounding=UP),
        Output(id="highest", at="protection.ampacity", label="The wire allows at most", symbol="I_max", kind=CURRENT),
        Output(id="ampacity", at="protection.cable.ampacity", label="Ampacity, corrected", symbol="I_z", kind=CURRENT),
        Output(id="fault_here", at="protection.fault_current", label="Fault current at the fuse", symbol="I_k", kind=CURRENT),
        Output(id="families", find=words.families, label="Fuse families that suit, best first"),
        Output(id="weighed", find=words.weighed, label="Fuses compared"),
        Output(id="remedies", find=words.remedies, label="What would let a fuse fit"),
    ),
    intermediates=(
        *placed_outputs("protection.cable", *AMPACITY),
        *placed_outputs("protection.cable.copper", *SAE),
        *placed_outputs("protection.warmth", *WARMTH),
        Output(id="bank_source", at="site.source", label="The bank's own resistance", symbol="R_s", kind=RESISTANCE),
        Output(id="feed_stated", at="site.feed.least.per_length", label="Lowest resistance per length of the feed", symbol="r_f", kind=LINEAR_RESISTANCE, digits=4),
        Output(id="feed_least", at="site.feed.least.resistance", label="Lowest resistance of the feed, out and back", symbol="R_f", kind=RESISTANCE),
        Output(id="feed_parts", at="site.parts", label="Main fuse, holder and joints of the feed", symbol="R_j", kind=RESISTANCE),
        Output(id="feed_ampacity", at="feed_load.ampacity", label="Ampacity of the feed", kind=CURRENT),
        Output(id="more_feed", label="More feed for a blade", kind=LENGTH, rounding=UP),
        Output(id="blade_breaks", label="A blade breaks", kind=CURRENT),
        Output(id="breaks", at="protection.duty.interrupting_rating", label="The fuse breaks", kind=CURRENT),
        Output(id="version", at="protection.duty.marked_voltage", label="Voltage to look for on the fuse", kind=VOLTAGE),
        Output(id="lasting_load", at="protection.lasting_load", label="Load this fuse can carry for hours", kind=CURRENT),
        Output(id="largest", at="protection.highest", label="Largest fuse allowed", symbol="I_most", kind=CURRENT),
        Output(id="margin", at="protection.margin", label="Margin for a continuous load", symbol="m", kind=RATIO),
        Output(id="ceiling", at="protection.ceiling", label="Legal maximum for the fuse", kind=CURRENT),
        Output(id="versioned", at="protection.marked_higher", label="Suitable in one version only"),
        Output(id="also", find=words.also, label="Also suitable"),
        Output(id="too_low_in_voltage", at="protection.too_low_in_voltage", label="Refused: d.c. voltage rating too low"),
        Output(id="cannot_break", at="protection.cannot_break", label="Refused: cannot break this fault"),
    ),
    steps=words.STEPS,
    rules=(
        *(Placed(rule=rule, at="protection.duty", fields=FITTED, headline=headline, text=text) for rule, headline, text in WHERE_IT_IS),
        *placed("protection", protection.NO_FAMILY, fitted_fuse.LABEL_TOO_SMALL, *protection.FITS),
        Placed(rule=clearing.ABOVE_CEILING, at="protection", fields=FITTED,
               headline="Do not use a {fitted} fuse: it is more than 1.5 times this wire's ampacity, {ampacity}."),
        *(Placed(rule=rule, at="protection", fields=FITTED) for rule in fitted_fuse.RULES[:1]),
        Placed(rule=clearing.NO_OVERLOAD, at="protection", fields=FITTED,
               headline="Use {largest} or less: a {fitted} fuse does not protect this wire against overload."),
        *(Placed(rule=rule, at="protection", fields=FITTED) for rule in fitted_fuse.RULES[1:]),
        *heat("protection"),
        *(Placed(rule=rule, at="protection.duty", fields=FITTED, headline=headline, text=text) for rule, headline, text in RESERVATIONS),
        *placed("feed_load", feed.BELOW_LOAD),
        *placed("protection", words.FINE_FITTED, words.FINE),
        *placed("", words.LONGER_FEED),
        *laying_advice("protection"),
        *placed("protection", protection.WARM_AIR_DERATES, fitted_fuse.LABEL_DECIDES, protection.VOLTAGE_TOO_LOW, protection.CANNOT_INTERRUPT,
                protection.PLACE_ON_MAINS, protection.PLACE_AT_SOURCE, protection.FAULT_BURNS,
                protection.TERMINALS_HAVE_RATINGS, protection.TERMINALS_COOL_COLUMN, protection.TOO_LOW_IN_VOLTAGE, protection.CANNOT_BREAK),
        *placed("protection.cable", cable.MAINS_SIDE, cable.EDITIONS_DIFFER, cable.RULES_FOR_BOATS, cable.BEYOND_ROWS),
        *placed("protection.cable.copper", copper.MAY_BE_SAE, copper.READ_AS_SAE, copper.GAUGE_READING_IDLE),
        *placed("site", words.BEHIND_MAIN),
        *placed("", words.ONE_FUSE_ONE_WIRE),
        *placed("protection", fitted_fuse.RESETS, protection.CEILING_NOT_USED),
        Placed(rule=words.ALSO, at="protection", text="Also suitable: {also}."),
        *placed("protection", protection.SOME_FROM_MEMORY),
    ),
    leads=(
        Lead(label="A short behind it", sheet="fault-current", without=("fitted",),
             carry=(*ON_THIS_RUN, ("fuse", "fuse"), ("fuse_family", "protection.choice.family.name"))),
        Lead(label="A short behind it", sheet="fault-current", needs=("fitted",),
             carry=(*ON_THIS_RUN, ("fuse", "fitted"), ("fuse_family", "fitted_family"), ("fuse_voltage", "fitted_voltage"))),
    ),
    valid="Copper, continuous current, one fuse for one wire. Motors and inverters with a high starting current may need a slower fuse: check the maker's manual.",
    summary="{fuse} fuse",
    summary_none="no standard fuse fits",
    keep_distinct=(("lowest", "highest"), ("lowest", "largest"), ("lowest", "ampacity")),
    older_defaults=({}, {"feed_conductor": "6 AWG"}),
)

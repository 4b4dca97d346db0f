"""fuse-ladder: will the right fuse open first?"""

# fmt: off
from calc.electrical.rules import interrupting as duty
from calc.electrical.rules import selectivity as judged
from calc.sheets.parts.fuse_families import FAMILIES
from calc.sheets.wire.fuse_ladder.calculate import calculate
from calc.sheets.wire.fuse_ladder.words import (
    FINE,
    FINE_BY_LET_THROUGH,
    LET_THROUGH,
    ORDER,
    STEPS,
    evidence,
    opening_time,
    would_settle,
)
from calc.units.kinds import CURRENT, DURATION, RATIO, VOLTAGE
from calc.units.kinds.faults import JOULE_INTEGRAL
from calc.worksheet.declare import Output, Placed
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.pictures import Spans
from calc.worksheet.work import Worksheet

# Beside a refusal only what bears on it is said
BESIDE = frozenset({
    judged.FROM_COLD.id, judged.LARGER_FAULT.id, judged.BY_DATA_SHEET.id, judged.ONE_CURRENT.id,
    duty.MARKED_HIGHER.id, duty.UNKNOWN.id, duty.FROM_MEMORY.id, duty.NO_STANDARD_RATING.id,
})
DOWNSTREAM = (("fuse_family", "downstream_family"), ("fuse", "downstream"))
UPSTREAM = (("fuse_family", "upstream_family"), ("fuse", "upstream"))

REFUSALS = (
    *(
        Placed(
            rule=duty.VOLTAGE_TOO_LOW, at=at, fields=fields, covers=BESIDE,
            headline="Use another fuse: the d.c. voltage rating of one here is below {voltage}.",
            text=f"The {side} fuse is not rated for {{voltage}} d.c.: above its rating it can hold an arc. A 58 V family is not for 58.4 V.",
        )
        for side, at, fields in (("downstream", "downstream_duty", DOWNSTREAM), ("upstream", "upstream_duty", UPSTREAM))
    ),
    Placed(
        rule=duty.CANNOT_INTERRUPT, at="downstream_duty", fields=DOWNSTREAM, covers=BESIDE,
        headline="Use another downstream fuse: its family breaks {downstream_breaks}, and the fault may be {fault_current}.",
        text="A fuse that cannot break the fault can burst and burn. Put a family there that breaks {fault_current}.",
    ),
    Placed(
        rule=duty.CANNOT_INTERRUPT, at="upstream_duty", fields=UPSTREAM, covers=BESIDE,
        headline="Use another upstream fuse: it breaks {upstream_breaks}, and a short between the two passes {fault_current} or more.",
        text="A fuse that cannot break the fault can burst and burn. The upstream fuse must break any short between the two by itself.",
    ),
    *(
        Placed(
            rule=duty.NOT_MADE_FOR_IT, at=at, fields=fields, covers=BESIDE,
            headline=f"Use another {side} fuse: such a cartridge may break only {{weakest}}, and the fault may be {{fault_current}}.",
        )
        for side, at, fields in (("downstream", "downstream_duty", DOWNSTREAM), ("upstream", "upstream_duty", UPSTREAM))
    ),
    Placed(
        rule=judged.OVERLOADED, covers=BESIDE,
        headline="Check the upstream fuse: {upstream} already carries {other_load} and will open without a fault.",
    ),
    Placed(
        rule=judged.WRONG_WAY_ROUND, covers=BESIDE | judged.WRONG_WAY_ROUND.covers,
        headline="Wrong way round: swap the fuses. The {upstream} upstream opens before the {downstream} downstream.",
    ),
    Placed(rule=judged.UPSTREAM_FIRST, covers=BESIDE, headline="The upstream fuse opens first at {decisive}: {how}."),
    Placed(
        rule=judged.CARRIED, covers=BESIDE,
        headline="Use a smaller downstream fuse: {downstream} can carry {lowest} for hours, and does not clear such a fault.",
    ),
)
RESERVATIONS = tuple(
    Placed(rule=rule, at=at, fields=fields, headline=headline.replace("this", side), text=text)
    for rule, headline, text in (
        (duty.UNKNOWN, "Read the data sheet of this fuse: what its family breaks on direct current is not listed.", "What one of these families breaks on direct current is not known to us: read the fuse and its data sheet."),
        (duty.FROM_MEMORY, "Check the data sheet of this fuse: no text that we saw says that it breaks {fault_current}.", "What one of these families breaks is from memory: read the fuse."),
        (duty.NO_STANDARD_RATING, "Look at this fuse again: its rating is not a standard one of its family.", "A rating here is not among the standard ones that we know of its family."),
    )
    for side, at, fields in (("the downstream", "downstream_duty", DOWNSTREAM), ("the upstream", "upstream_duty", UPSTREAM))
)


def _family(side: str, label: str, default: str) -> Choice:
    return Choice(
        id=f"{side}_family", label=label, default=default, options=FAMILIES,
        example="like blade, large (type E) or SF51", hint="By construction; the letters are printed on the fuse or its box.",
    )


WORKSHEET = Worksheet(
    id="fuse-ladder",
    title="Fuse ladder",
    question="Will the right fuse open first?",
    about="Whether the small fuse clears a fault before the large one opens and blacks out the van.",
    calculate=calculate,
    picture=Spans(
        spans=(("downstream", "downstream_earliest", "downstream_latest"), ("upstream", "upstream_earliest", "upstream_latest")),
        caption="Time to open at the deciding current, on a logarithmic scale",
    ),
    fields=(
        Quantity(id="downstream", label="Downstream fuse", symbol="I_d", kinds=(CURRENT,), default="10 A", low="0.05 A", high="1200 A",
                 hint="The one nearer to the load: it should open first."),
        _family("downstream", "Family of the downstream fuse", "blade, miniature (type F)"),
        Quantity(id="upstream", label="Upstream fuse", symbol="I_u", kinds=(CURRENT,), default="80 A", low="0.05 A", high="1200 A",
                 hint="The one nearer to the bank: it should stay closed."),
        _family("upstream", "Family of the upstream fuse", "blade, large (type E)"),
        Quantity(id="fault_current", label="Fault current, highest", symbol="I_k", kinds=(CURRENT,), default="250 A", low="0.1 A", high="200 kA",
                 hint="Through both, with the short behind the downstream fuse: see fault current."),
        Quantity(id="fault_low", advanced=True, label="Fault current, lowest", symbol="I_l", kinds=(CURRENT,), optional=True, low="0.1 A", high="200 kA", example="120 A",
                 hint="From the same sheet. Empty: only the highest is judged."),
        Quantity(id="voltage", advanced=True, label="Highest voltage on the circuit", symbol="V", kinds=(VOLTAGE,), default="14.6 V", low="1 V", high="1000 V",
                 hint="While charging. LFP: 14.6 V, 29.2 V or 58.4 V."),
        Quantity(id="downstream_voltage", since=2, advanced=True, optional=True, label="Voltage printed on the downstream fuse", symbol="V_d", kinds=(VOLTAGE,), low="1 V", high="1500 V", example="32 V",
                 hint="Its d.c. rating. Empty: not read."),
        Quantity(id="upstream_voltage", since=2, advanced=True, optional=True, label="Voltage printed on the upstream fuse", symbol="V_u", kinds=(VOLTAGE,), low="1 V", high="1500 V", example="58 V",
                 hint="Its d.c. rating. Empty: not read."),
        Quantity(id="other_load", advanced=True, label="Other load on the upstream fuse", symbol="I_x", kinds=(CURRENT,), default="0 A", low="0 A", high="2000 A",
                 hint="Its other load at that moment. A loaded fuse opens sooner."),
        Quantity(id="downstream_clearing", advanced=True, label="Downstream: total clearing I²t", symbol="W_d", kinds=(JOULE_INTEGRAL,), optional=True, low="0.001 A²·s", high="1000000 kA²·s", example="900 A²·s",
                 hint="Total clearing I²t at this fault, from its data sheet."),
        Quantity(id="upstream_melting", advanced=True, label="Upstream: least melting I²t", symbol="W_u", kinds=(JOULE_INTEGRAL,), optional=True, low="0.001 A²·s", high="1000000 kA²·s", example="20000 A²·s",
                 hint="Least melting I²t from its data sheet, not a typical one."),
    ),
    results=(
        Output(id="order", label="The downstream fuse", words=ORDER),
        Output(id="downstream_time", label="Downstream opens in", find=lambda s: opening_time(s.downstream_opening)),
        Output(id="upstream_time", label="Upstream opens in", find=lambda s: opening_time(s.upstream_opening)),
        Output(id="downstream_percent", label="Current against the downstream rating", symbol="p_d", kind=RATIO, at="downstream_opening.multiple"),
        Output(id="upstream_percent", label="Current against the upstream rating", symbol="p_u", kind=RATIO, at="upstream_opening.multiple"),
        Output(id="certain_from", label="Order certain from", kind=CURRENT, at="certain.low"),
        Output(id="certain_to", label="Order certain up to", kind=CURRENT, at="certain.high"),
        Output(id="let_through", label="The makers' I²t", words=LET_THROUGH),
        Output(id="settle", label="What would settle it", find=would_settle),
    ),
    intermediates=(
        Output(id="how", label="What it depends on", find=evidence),
        Output(id="lowest", label="Lowest fault checked", kind=CURRENT),
        Output(id="decisive", label="Deciding current", symbol="I", kind=CURRENT, at="decides"),
        Output(id="upstream_current", label="Current in the upstream fuse", symbol="I_v", kind=CURRENT, at="upstream_opening.current"),
        Output(id="downstream_earliest", label="Downstream at the earliest", symbol="t_1", kind=DURATION, at="downstream_opening.least"),
        Output(id="downstream_latest", label="Downstream at the latest", symbol="t_2", kind=DURATION, at="downstream_opening.latest"),
        Output(id="upstream_earliest", label="Upstream at the earliest", symbol="t_3", kind=DURATION, at="upstream_opening.least"),
        Output(id="upstream_latest", label="Upstream at the latest", symbol="t_4", kind=DURATION, at="upstream_opening.latest"),
        Output(id="version", label="Voltage to look for on the fuses", kind=VOLTAGE, at="highest_marked.marked_voltage"),
        Output(id="downstream_breaks", label="Downstream family breaks", kind=CURRENT, at="downstream_duty.interrupting_rating"),
        Output(id="upstream_breaks", label="Upstream family breaks", kind=CURRENT, at="upstream_duty.interrupting_rating"),
    ),
    steps=STEPS,
    rules=(
        *REFUSALS,
        judged.NO_CURVE, judged.FROM_MEMORY,
        Placed(rule=judged.NOT_CERTAIN, headline="Order not certain at {decisive}: use fuses five to one apart, or ask both makers for I²t."),
        judged.UPSTREAM_LOADED,
        Placed(
            rule=duty.MARKED_HIGHER, at="highest_marked",
            headline="Use only fuses marked {version} or more: the common ones are made for 32 V, too little at {voltage}.",
            text="Look for {version} or more on each: blades and strips are made for 32 V unless marked higher, and above it can hold an arc instead of opening.",
        ),
        *RESERVATIONS,
        FINE_BY_LET_THROUGH, FINE,
        Placed(rule=judged.FAR_APART, headline="The {downstream} fuse should open first: the {upstream} upstream is five times as large or more."),
        judged.FROM_COLD, judged.REVERSED_SIZES, judged.LARGER_FAULT, judged.BY_DATA_SHEET, judged.BY_LET_THROUGH,
        judged.ONE_CURRENT, judged.PROTECTION_FIRST, judged.NOT_PROVEN, judged.ASK_FOR_I2T,
    ),
    valid="Two fuses in series, direct current, one fault behind both, from cold. Breakers and electronic switches are not covered.",
    summary="downstream {order}",
    older_defaults=({},),
)

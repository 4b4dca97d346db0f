"""fuse-ladder: will the right fuse open first?"""

from types import SimpleNamespace

from calc.electrical.selectivity import CERTAIN, MEMORY, NO_CURVE, NOT_CERTAIN, WILL_NOT
from calc.sheets.parts.fuse_families import FAMILIES
from calc.sheets.wire.fuse_ladder.calculate import LARGER, NOT_GIVEN, run
from calc.units.kinds import CURRENT, DURATION, RATIO, VOLTAGE
from calc.units.kinds.faults import JOULE_INTEGRAL
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.pictures import Spans
from calc.worksheet.work import Worksheet


def _certain(v: SimpleNamespace) -> bool:
    return bool(v.order == CERTAIN)


def _refused(v: SimpleNamespace) -> bool:
    """Return whether the answer is a refusal: then only what bears on it is said beside it."""
    return any(rule.when(v) for rule in REFUSALS)


def _answered(v: SimpleNamespace) -> bool:
    return not _refused(v)


REFUSALS = (
    Verdict(verdict=STOP, when=lambda v: v.downstream_low_volts or v.upstream_low_volts,
         says="Not on this circuit: a family here has a d.c. voltage rating below {voltage}."),
    Verdict(verdict=STOP, when=lambda v: v.downstream_cannot,
         says="The downstream family breaks {downstream_breaks}, the fault may be {fault_current}: which opens first does not matter."),
    Verdict(verdict=STOP, when=lambda v: v.overloaded,
         says="The upstream fuse of {upstream} carries {other_load} before there is a fault: it will open by itself."),
    Verdict(verdict=STOP, when=lambda v: v.order == WILL_NOT,
         says="The upstream fuse opens first at {decisive}: {how}."),
    Verdict(verdict=STOP, when=lambda v: v.carried,
         says="The downstream fuse of {downstream} carries {lowest} for hours: it does not clear such a fault."),
)


def _choice(side: str, label: str, default: str) -> Choice:
    return Choice(
        id=f"{side}_family", label=label, default=default, options=FAMILIES,
        example="like blade, large (type E) or SF51", hint="By construction; the letters are printed on the fuse or its box.",
    )


WORKSHEET = Worksheet(
    id="fuse-ladder",
    title="Fuse ladder",
    question="Will the right fuse open first?",
    entry_question="Which fuse will blow?",
    about="Whether the small fuse clears a fault before the large one behind it opens and darkens the van.",
    calculate=run,
    picture=Spans(
        spans=(("downstream", "downstream_earliest", "downstream_latest"), ("upstream", "upstream_earliest", "upstream_latest")),
        caption="Time to opening at the current that decides, on a scale that grows by tens",
    ),
    fields=(
        Quantity(id="downstream", label="Downstream fuse", symbol="I_d", kinds=(CURRENT,), default="10 A", low="0.05 A", high="1200 A",
                 hint="The one nearer to the load: it should open first."),
        _choice("downstream", "Family of the downstream fuse", "blade, miniature (type F)"),
        Quantity(id="upstream", label="Upstream fuse", symbol="I_u", kinds=(CURRENT,), default="80 A", low="0.05 A", high="1200 A",
                 hint="The one nearer to the bank: it should hold."),
        _choice("upstream", "Family of the upstream fuse", "blade, large (type E)"),
        Quantity(id="fault_current", label="Fault current, highest", symbol="I_k", kinds=(CURRENT,), default="250 A", low="0.1 A", high="200 kA",
                 hint="Through both, with the short behind the downstream fuse. The fault current sheet works it."),
        Quantity(id="fault_low", label="Fault current, lowest", symbol="I_l", kinds=(CURRENT,), optional=True, low="0.1 A", high="200 kA", example="120 A",
                 hint="From the same sheet. Empty: only the highest is judged."),
        Quantity(id="voltage", advanced=True, label="Highest voltage on the circuit", symbol="V", kinds=(VOLTAGE,), default="14.6 V", low="1 V", high="1000 V",
                 hint="While charging: 14.6 V, 29.2 V or 58.4 V for LFP at 12, 24 and 48 V."),
        Quantity(id="other_load", advanced=True, label="Other load on the upstream fuse", symbol="I_x", kinds=(CURRENT,), default="0 A", low="0 A", high="2000 A",
                 hint="What else it carries at that moment. A fuse under load opens sooner than its published limits, so nothing is certain then."),
        Quantity(id="downstream_clearing", advanced=True, label="Downstream: total clearing I²t", symbol="W_d", kinds=(JOULE_INTEGRAL,), optional=True, low="0.001 A²·s", high="1000000 kA²·s", example="900 A²·s",
                 hint="The most it lets through in all at this fault, from its data sheet. Not the melting figure."),
        Quantity(id="upstream_melting", advanced=True, label="Upstream: least melting I²t", symbol="W_u", kinds=(JOULE_INTEGRAL,), optional=True, low="0.001 A²·s", high="1000000 kA²·s", example="20000 A²·s",
                 hint="The least that melts it, from its data sheet. A “typical” figure proves nothing."),
    ),
    results=(
        Output(id="order", label="The downstream fuse"),
        Output(id="downstream_time", label="Downstream opens in"),
        Output(id="upstream_time", label="Upstream opens in"),
        Output(id="downstream_percent", label="Current against the downstream rating", symbol="p_d", kind=RATIO),
        Output(id="upstream_percent", label="Current against the upstream rating", symbol="p_u", kind=RATIO),
        Output(id="certain_from", label="Certain by time limits from", kind=CURRENT, rounding=UP),
        Output(id="certain_to", label="Certain by time limits up to", kind=CURRENT, rounding=DOWN),
        Output(id="let_through", label="The makers' I²t"),
        Output(id="settle", label="What would settle it"),
    ),
    intermediates=(
        Output(id="how", label="What it rests on"),
        Output(id="lowest", label="Lowest fault judged", kind=CURRENT),
        Output(id="decisive", label="The current that decides", symbol="I", kind=CURRENT),
        Output(id="upstream_current", label="Current in the upstream fuse", symbol="I_v", kind=CURRENT),
        Output(id="downstream_earliest", label="Downstream at the earliest", symbol="t_1", kind=DURATION, rounding=DOWN),
        Output(id="downstream_latest", label="Downstream at the latest", symbol="t_2", kind=DURATION, rounding=UP),
        Output(id="upstream_earliest", label="Upstream at the earliest", symbol="t_3", kind=DURATION, rounding=DOWN),
        Output(id="upstream_latest", label="Upstream at the latest", symbol="t_4", kind=DURATION, rounding=UP),
        Output(id="version", label="Voltage to look for on the fuses", kind=VOLTAGE),
        Output(id="downstream_breaks", label="Downstream family breaks", kind=CURRENT, rounding=DOWN),
        Output(id="upstream_breaks", label="Upstream family breaks", kind=CURRENT, rounding=DOWN),
    ),
    steps=(
        Step(of="downstream_breaks", source="fuse-ratings", when=lambda v: v.downstream_breaks is not None, says="{downstream_family}, at {voltage} d.c. or more."),
        Step(of="upstream_breaks", source="fuse-ratings", when=lambda v: v.upstream_breaks is not None, says="{upstream_family}, at {voltage} d.c. or more."),
        Step(of="decisive", source="fuse-gates", says="The highest current from {lowest} to {fault_current} at which the order is in doubt; where none is, the highest of all."),
        Step(of="upstream_current", formula="decisive + other_load", source="ohm", says="The fault and whatever else it carries."),
        Step(of="downstream_percent", formula="decisive / downstream", says="Where that stands on the downstream fuse's curve."),
        Step(of="upstream_percent", formula="upstream_current / upstream", says="Where it stands on the upstream fuse's."),
        Step(of="downstream_time", source="fuse-gates", says="At the latest by the last published time limit at or below this share, at the earliest by the next one at or above. More current never opens a fuse later; nothing is interpolated."),
        Step(of="upstream_time", source="fuse-gates", says="The same. Beyond the last limit nothing is known of the earliest."),
        Step(of="let_through", source="practice", says="Makers state I²t at ten times the rating and more. What the downstream fuse lets through in all, below what melts the upstream one, proves the order at that fault; other load counts by ((I + I_x)/I)²."),
        Step(of="order", source="fuse-gates", says="For certain only where the latest of the one is no later than the earliest of the other, at every current judged."),
        Step(of="certain_from", source="fuse-gates", when=lambda v: v.certain_from is not None, says="Found by going along both fuses' limits."),
        Step(of="certain_to", source="fuse-gates", when=lambda v: v.certain_to is not None, says="Above, the limits overlap or end."),
        Step(of="settle", when=lambda v: not _certain(v), says="No rule of thumb for the ratio of ratings is used: none that covers these families was found in a text."),
    ),
    rules=(
        *REFUSALS,
        Verdict(verdict=CAUTION, when=lambda v: v.order == NO_CURVE, says="No time limits are published for one of these fuses, so the order is not known. See what would settle it."),
        Verdict(verdict=CAUTION, when=lambda v: v.order == MEMORY, says="Not certain: the time limits of one of these fuses are from memory only, and they prove nothing."),
        Verdict(verdict=CAUTION, when=lambda v: v.order == NOT_CERTAIN, says="Not certain at {decisive}: {how}."),
        Verdict(verdict=CAUTION, when=lambda v: v.loaded,
             says="By limits taken from cold, downstream opens first. The upstream fuse carries {other_load} besides and opens sooner than they say: not certain."),
        Verdict(verdict=CAUTION, when=lambda v: v.version is not None,
             says="Downstream opens first for certain, but only versions rated {version} or more may stand at {voltage}: the common ones are made for 32 V."),
        Verdict(verdict=CAUTION, when=lambda v: v.unrated or v.not_made or v.breaks_from_memory or v.upstream_cannot,
             says="Downstream opens first for certain, with a reservation about the fuses themselves: see below."),
        Verdict(verdict=FINE, when=lambda v: v.by_energy, says="By the I²t figures that you typed, downstream opens first for certain at {fault_current}."),
        Verdict(verdict=FINE, says="Downstream opens first for certain: {how}."),
    ),
    remarks=(
        Remark(source="fuse-gates", when=_answered, says="Time limits are taken from cold, at room temperature, with one fuse alone. An upstream fuse that is warm or already loaded opens sooner than they say."),
        Remark(source="fuse-ratings", when=lambda v: v.downstream_low_volts, says="The downstream family is not rated for {voltage} d.c. Above its rating a fuse can hold an arc instead of opening; a 58 V family is not for a 48 V bank that charges at 58.4 V."),
        Remark(source="fuse-ratings", when=lambda v: v.upstream_low_volts, says="The upstream family is not rated for {voltage} d.c. Above its rating a fuse can hold an arc instead of opening; a 58 V family is not for a 48 V bank that charges at 58.4 V."),
        Remark(source="fuse-ratings", when=lambda v: v.downstream_cannot, says="A fuse that cannot break the fault can burst and burn. Put a family there that breaks {fault_current}."),
        Remark(source="fuse-gates", when=lambda v: v.overloaded, says="{other_load} is more than the upstream fuse is made for. First see what it feeds, and give that a fuse and a wire that bear it."),
        Remark(source="fuse-ratings", when=lambda v: v.version is not None and _answered(v), says="Blade and strip fuses are made for 32 V unless marked higher. Above its d.c. rating a fuse can hold an arc instead of opening: look for {version} or more on each."),
        Remark(source="fuse-ratings", when=lambda v: v.upstream_cannot, says="The upstream family breaks {upstream_breaks}, less than this fault. It must break any short between the two fuses by itself."),
        Remark(source="fuse-ratings", when=lambda v: v.unrated and _answered(v), says="What one of these families breaks on direct current is not known to us: read the fuse and its data sheet."),
        Remark(source="memory", when=lambda v: v.breaks_from_memory and _answered(v), says="What one of these families breaks is from memory: read the fuse."),
        Remark(source="fuse-ratings", when=lambda v: v.not_made and _answered(v), says="A rating here is not among the standard ones that we know of its family."),
        Remark(source="practice", when=lambda v: v.falling, says="The downstream fuse is the larger of the two. Either they have changed places, or one guards the wrong wire."),
        Remark(source="practice", when=lambda v: v.let_through == LARGER and _answered(v), says="These I²t figures belong to a larger fault: {fault_current} is below ten times the downstream rating, or would take more than a tenth of a second, and lets more through."),
        Remark(source="fuse-gates", when=lambda v: _certain(v) and not v.by_standard and _answered(v), says="Certain by makers' data sheets that were quoted, not by a standard itself: set them beside the sheets of your fuses."),
        Remark(source="practice", when=lambda v: v.by_energy, says="This rests on the I²t that you typed: total clearing downstream and least melting upstream, both for this fault and this voltage."),
        Remark(source="fuse-gates", when=lambda v: v.fault_low is None and _certain(v) and _answered(v), says="Judged at one current only. Type the lowest fault as well: a weak short is where a ladder fails most often."),
        Remark(source="practice", says="Order is a comfort, protection a need: each fuse must still suit its own wire. Change no fuse for a larger one to keep the order. Work with the bank disconnected; keep to the makers' instructions and local rules."),
        Remark(level=NOTE, source="practice", when=lambda v: v.let_through == NOT_GIVEN, says="At the current of a dead short near the bank both fuses are beyond their published limits, and only the makers' I²t can tell."),
    ),
    valid="Two fuses in series, direct current, one fault behind both, from cold. Breakers and electronic switches are not covered.",
    summary="downstream {order}",
)

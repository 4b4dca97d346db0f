"""Judgements on two fuses in series."""

# fmt: off
from calc.electrical.selectivity import LetThrough, Order, Selectivity
from calc.judge import Change, Level, Rule

OVERLOADED = Rule[Selectivity](
    id="selectivity.upstream-overloaded", level=Level.STOP, when=lambda s: s.overloaded, source="fuse-gates",
    headline="Check the upstream fuse: {upstream_duty.fuse.rating} already carries {other_load} and will open without a fault.",
    text="{other_load} is more than the upstream fuse is rated for. First check what it feeds, and fit a fuse and a wire that can carry it.",
    mend=lambda s: Change({"other_load": s.upstream_duty.fuse.rating}),
)
UPSTREAM_FIRST = Rule[Selectivity](
    id="selectivity.upstream-first", level=Level.STOP, when=lambda s: s.order is Order.WILL_NOT,
    headline="The upstream fuse opens first at {decides}.",
)
WRONG_WAY_ROUND = Rule[Selectivity](
    id="selectivity.wrong-way-round", level=Level.STOP, when=lambda s: s.reversed_sizes and not s.downstream_first, source="practice",
    headline="Wrong way round: swap the fuses. The {upstream_duty.fuse.rating} upstream opens before the {downstream_duty.fuse.rating} downstream.",
    text="From the upstream rating up to the downstream one only the upstream fuse opens. First check which wire each of them protects.",
    covers=frozenset({"selectivity.upstream-first", "selectivity.reversed-sizes"}),
)
CARRIED = Rule[Selectivity](
    id="selectivity.fault-carried", level=Level.STOP, when=lambda s: s.carried,
    headline="Use a smaller downstream fuse: {downstream_duty.fuse.rating} can carry {lowest} for hours, and does not clear such a fault.",
)
NO_CURVE = Rule[Selectivity](
    id="selectivity.no-curve", level=Level.CAUTION, when=lambda s: s.order is Order.NO_CURVE and not s.far_apart,
    headline="Order not known: no limits are published. Use fuses five to one apart, or ask both makers for I²t.",
)
FROM_MEMORY = Rule[Selectivity](
    id="selectivity.from-memory", level=Level.CAUTION, when=lambda s: s.order is Order.FROM_MEMORY and not s.far_apart,
    headline="Order not certain: use fuses five to one apart, or ask both makers for their curves.",
)
NOT_CERTAIN = Rule[Selectivity](
    id="selectivity.not-certain", level=Level.CAUTION, when=lambda s: s.order is Order.NOT_CERTAIN and not s.far_apart,
    headline="Order not certain at {decides}: use fuses five to one apart, or ask both makers for I²t.",
)
UPSTREAM_LOADED = Rule[Selectivity](
    id="selectivity.upstream-loaded", level=Level.CAUTION, when=lambda s: s.downstream_first and s.other_load > 0 and not s.far_apart,
    headline="Use fuses five to one apart: upstream also carries {other_load}, and opens sooner than limits from cold say.",
    mend=lambda s: Change({"other_load": 0.0}),
)
FAR_APART = Rule[Selectivity](
    id="selectivity.far-apart", level=Level.FINE, when=lambda s: s.in_doubt and s.far_apart, source="practice",
    headline="The {downstream_duty.fuse.rating} fuse should open first: the {upstream_duty.fuse.rating} upstream is five times as large or more.",
)
NOT_PROVEN = Rule[Selectivity](
    id="selectivity.not-proven", level=Level.NOTE, when=FAR_APART.when, source="practice",
    text="Published time limits do not prove this order. Five to one is common practice: melting energy rises with about the square of the rating. The makers' I²t would prove it.",
)

FROM_COLD = Rule[Selectivity](
    id="selectivity.from-cold", level=Level.ADVICE, source="fuse-gates",
    text="Time limits are for a cold fuse at room temperature. An upstream fuse that is warm or already loaded opens sooner.",
)
REVERSED_SIZES = Rule[Selectivity](
    id="selectivity.reversed-sizes", level=Level.ADVICE, when=lambda s: s.reversed_sizes, source="practice",
    text="The downstream fuse is the larger of the two. Either they are swapped, or one protects the wrong wire.",
)
LARGER_FAULT = Rule[Selectivity](
    id="selectivity.i2t-of-larger-fault", level=Level.ADVICE, when=lambda s: s.let_through is LetThrough.OF_LARGER_FAULT, source="practice",
    text="These I²t values belong to a larger fault: {fault_current} is below ten times the downstream rating, or takes longer than 0.1 s, and lets more through.",
)
BY_DATA_SHEET = Rule[Selectivity](
    id="selectivity.by-data-sheet", level=Level.ADVICE, when=lambda s: s.by_data_sheet, source="fuse-gates",
    text="Certain by quoted makers' data sheets, not by a standard: compare them with the sheets of your fuses.",
)
BY_LET_THROUGH = Rule[Selectivity](
    id="selectivity.by-typed-i2t", level=Level.ADVICE, when=lambda s: s.by_let_through, source="practice",
    text="This depends on the I²t that you typed: total clearing downstream and least melting upstream, both for this fault and this voltage.",
)
ONE_CURRENT = Rule[Selectivity](
    id="selectivity.one-current", level=Level.ADVICE, when=lambda s: s.downstream_first and s.lowest_fault is None, source="fuse-gates",
    text="Judged at one current only. Type the lowest fault as well: a weak short is where a ladder fails most often.",
)
PROTECTION_FIRST = Rule[Selectivity](
    id="selectivity.protection-first", level=Level.ADVICE, source="practice",
    text="Fire: each fuse must protect its own wire first. Never fit a larger fuse to keep the order. Work with the bank disconnected; follow the makers' instructions and local rules.",
)
ASK_FOR_I2T = Rule[Selectivity](
    id="selectivity.ask-for-i2t", level=Level.NOTE, when=lambda s: s.let_through is LetThrough.NOT_GIVEN, source="practice",
    text="At the current of a dead short near the bank both fuses are beyond their published limits, and only the makers' I²t can tell.",
)

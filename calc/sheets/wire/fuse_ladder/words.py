"""fuse-ladder in words: its results that are ids or times, its working, and its fine sentences."""

# fmt: off
from calc.electrical.opening import Opening, Trust
from calc.electrical.selectivity import LetThrough, Order, Selectivity
from calc.judge import Level, Rule
from calc.units.kinds import CURRENT, DURATION
from calc.units.shown import quantity_text
from calc.worksheet.declare import Step

ORDER: dict[str, str] = {
    Order.CERTAIN: "opens first for certain",
    Order.NOT_CERTAIN: "not certain",
    Order.FROM_MEMORY: "not certain (from memory)",
    Order.NO_CURVE: "no published curve",
    Order.WILL_NOT: "will not",
}
LET_THROUGH: dict[str, str] = {
    LetThrough.PROVES: "proves it",
    LetThrough.DOES_NOT_PROVE: "does not prove it",
    LetThrough.OF_LARGER_FAULT: "belongs to a larger fault",
    LetThrough.NOT_GIVEN: "not given",
}

STEPS: tuple[Step[Selectivity], ...] = (
    Step(of="downstream_breaks", source="fuse-ratings", when=lambda s: s.downstream_duty.interrupting_rating is not None, text="{downstream_family}, at {voltage} d.c. or more."),
    Step(of="upstream_breaks", source="fuse-ratings", when=lambda s: s.upstream_duty.interrupting_rating is not None, text="{upstream_family}, at {voltage} d.c. or more."),
    Step(of="decisive", source="fuse-gates", text="The highest current from {lowest} to {fault_current} at which the order is in doubt; where none is, the highest of all."),
    Step(of="upstream_current", formula="decisive + other_load", source="ohm", text="The fault and its other load."),
    Step(of="downstream_percent", formula="decisive / downstream", text="The current as a share of the downstream rating, to read on the fuse's curve."),
    Step(of="upstream_percent", formula="upstream_current / upstream", text="The same current in percent of the upstream fuse's rating."),
    Step(of="downstream_time", source="fuse-gates", text="At the latest by the last published time limit at or below this share, at the earliest by the next one at or above. More current never opens a fuse later; nothing is interpolated."),
    Step(of="upstream_time", source="fuse-gates", text="The same. Beyond the last limit the earliest time is not known."),
    Step(of="let_through", source="practice", text="Makers state I²t at ten times the rating and more. What the downstream fuse lets through in all, below what melts the upstream one, proves the order at that fault; other load counts by ((I + I_x)/I)²."),
    Step(of="order", source="fuse-gates", text="For certain only where the latest of the one is no later than the earliest of the other, at every current judged."),
    Step(of="certain_from", source="fuse-gates", when=lambda s: s.certain is not None, text="Found by comparing both fuses' limits."),
    Step(of="certain_to", source="fuse-gates", when=lambda s: s.certain is not None, text="Above, the limits overlap or end."),
    Step(of="settle", when=lambda s: not s.downstream_first, text="No published ratio of ratings covers these families. In practice five to one is enough; this is what would prove an order."),
)

FINE_BY_LET_THROUGH = Rule[Selectivity](
    id="fuse-ladder.fine-by-i2t", level=Level.FINE, when=lambda s: s.by_let_through,
    headline="By the I²t that you typed, downstream opens first for certain at {fault_current}.",
)
FINE = Rule[Selectivity](
    id="fuse-ladder.fine", level=Level.FINE, when=lambda s: s.downstream_first and not s.by_let_through,
    headline="Downstream opens first for certain: {how}.",
)
# fmt: on


def opening_time(opening: Opening) -> str:
    """Return when a fuse opens, as a reader sees it."""
    early = quantity_text(opening.earliest, DURATION) if opening.earliest else ""
    late = quantity_text(opening.latest, DURATION) if opening.latest is not None else ""
    if not early and not late:
        return "not known"
    mark = " (from memory)" if opening.trust is Trust.MEMORY else ""
    if early and late:
        return f"{early} to {late}{mark}"
    return f"at most {late}{mark}" if late else f"at least {early}{mark}"


def evidence(found: Selectivity) -> str:
    """Return what the order rests on."""
    if found.by_let_through:
        return "the makers' I²t proves it"
    down, up = opening_time(found.downstream_opening), opening_time(found.upstream_opening)
    return f"downstream {down}, upstream {up}"


def would_settle(found: Selectivity) -> tuple[str, ...]:
    """Return what would make the order certain."""
    if found.downstream_first:
        return ()
    fault = quantity_text(found.fault_current, CURRENT)
    ways = [
        f"from the makers, at {fault}: the total clearing I²t of the downstream fuse, below the "
        "least melting I²t of the upstream one (with other load on that, below by the square of "
        "both currents' ratio)"
    ]
    if found.certain and found.order is Order.NOT_CERTAIN:
        low = quantity_text(found.certain.low, CURRENT)
        high = quantity_text(found.certain.high, CURRENT)
        ways.append(
            f"a fault between {low} and {high}: there the published time limits do make it certain"
        )
    if found.order in (Order.NO_CURVE, Order.FROM_MEMORY):
        ways.append(
            "the makers' curves: the slow edge of the downstream fuse left of the fast edge of the "
            "upstream one"
        )
    if found.order is Order.WILL_NOT:
        ways.append(
            "a larger or slower fuse upstream, if the wire behind it can carry that, or a smaller or "
            "faster one downstream"
        )
    return tuple(ways)

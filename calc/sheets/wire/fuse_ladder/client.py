"""fuse-ladder explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Change these fuses: the wrong one opens, or one cannot stop the fault.", "stop"),
        Point("Choose fuses further apart in size: which one opens first is not certain.", "selectivity.not-certain selectivity.no-curve selectivity.from-memory"),
        Point("Settle one point of these two fuses before you rely on them.", "caution"),
        Point("Keep this pair: the {downstream} fuse opens before the {upstream} one.", "fine"),
    ),
    reasons=(
        Point("If the small fuse opens first, one circuit goes dark and the rest of the van works on."),
        Point("A fault of {fault_current} is {downstream_percent} of the small fuse, {upstream_percent} of the large one."),
        Point("The small fuse is {downstream}, the one before it {upstream}."),
    ),
    neglect=(
        Point("One faulty lamp switches off the whole van, with fridge and heater."),
    ),
    bars=(Bar("The circuit’s fuse", "downstream"), Bar("The fuse before it", "upstream"), Bar("Fault", "fault_current")),
)

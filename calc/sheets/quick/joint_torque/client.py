"""joint-torque explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not tighten this connection to that value: it can break, or come loose.", "stop"),
        Point("Ask the maker of the part before you tighten this connection.", "caution"),
        Point("Tighten this connection to {torque} with a torque wrench, then mark it.", "fine"),
    ),
    reasons=(
        Point("The thread takes {ceiling} at most before it stretches."),
        Point("Published values for such a connection run from {torque_low} to {torque_high}."),
        Point("Too loose, it gets hot. Too tight, the thread stretches and lets go."),
        Point("A painted line across nut and washer shows later whether it has moved."),
        Point("It takes one minute with the wrench, and no parts."),
    ),
    neglect=(
        Point("A loose connection gets hot, melts what is around it, and can start a fire."),
    ),
    cautions=(
        Point("Short circuit: disconnect the battery before you put a wrench on its connections."),
    ),
    bars=(Bar("Tighten to", "torque"), Bar("The thread takes", "ceiling")),
)

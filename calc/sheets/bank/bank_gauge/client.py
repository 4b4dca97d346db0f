"""bank-gauge explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Act now: the battery is being damaged, or soon will be.", "stop"),
        Point("Read the gauge with care: one point speaks against it.", "caution"),
        Point("Count on {to_floor} at the present use, until the share you use is gone.", "fine"),
        Point("Count on {remaining} in the battery.", "fine"),
        Point("Let the battery rest, and read it again: this tells too little.", "fine"),
    ),
    reasons=(
        Point("Full, the battery holds {capacity}."),
        Point("You use {usable} of it. The rest keeps it alive for years."),
        Point("The monitor’s count may be off by {drift}."),
        Point("While something runs or charges, the voltage alone tells little."),
        Point("A monitor is right again each time the battery is really full."),
    ),
    neglect=(
        Point("A battery treated like this loses capacity for good, or becomes dangerous.", "stop"),
        Point("A gauge that nobody checks shows half full on the evening when the lights go out."),
    ),
    bars=(Bar("Left", "remaining"), Bar("Full", "capacity")),
)

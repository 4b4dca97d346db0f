"""shore-charge explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not plug in like this: put one thing right first.", "stop"),
        Point("Settle one point before you plug in.", "caution"),
        Point("Plug in for the night: afterwards the battery is at {after_night}.", "fine"),
        Point("Plug in for the night.", "fine"),
    ),
    reasons=(
        Point("Charging takes {hours}, and you plug in for {night}."),
        Point("That puts {put_back} into the battery."),
        Point("It loads the hook-up to {supply_load} of its rating."),
        Point("{left_power} is left for a kettle or a heater meanwhile."),
        Point("The hook-up is rated for {supply_limit}."),
        Point("You plug in for {night}."),
    ),
    neglect=(
        Point("A reversed, untested or overloaded hook-up can give a shock or start a fire.", "stop"),
        Point("In the morning the battery is not as full as you count on."),
    ),
    cautions=(
        Point("Shock: mains can kill. Press the test button of the residual-current device each time you plug in."),
    ),
    bars=(Bar("Charging takes", "hours"), Bar("You plug in for", "night")),
)

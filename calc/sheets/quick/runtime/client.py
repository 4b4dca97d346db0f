"""runtime explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("The battery does not last as long as you need: use less, or fit more battery.", "runtime.too-short"),
        Point("Do not use the battery like this: put one thing right first.", "stop"),
        Point("Settle one point first, then count on {runtime}.", "caution"),
        Point("Count on {runtime} from the battery.", "fine"),
    ),
    reasons=(
        Point("Everything that is switched on takes {load} together."),
        Point("At that load {usable_charge} is there to use. The rest is kept, so that the battery lasts for years."),
        Point("You asked for {needed}."),
        Point("Cold, age and every further appliance make the time shorter."),
    ),
    neglect=(
        Point("Lights and heater go off before morning, and the battery wears out years early.", "stop caution"),
        Point("A battery that is emptied too often wears out early and has to be bought again."),
    ),
    bars=(Bar("The battery lasts", "runtime"), Bar("You need", "needed")),
)

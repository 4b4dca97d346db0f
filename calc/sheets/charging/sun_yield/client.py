"""sun-yield explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not count on these panels like this: put one thing right first.", "stop"),
        Point("In {month} the sun alone is not enough: use less, or charge another way too.", "sun.short"),
        Point("In {month} there is little to spare: plan another way to charge.", "sun."),
        Point("Count on {energy} on a usual day of {month}, once one point is settled.", "caution"),
        Point("Count on {energy} on a usual day of {month}.", "fine"),
    ),
    reasons=(
        Point("On a usual day of {month} the panels put {charge} into the battery."),
        Point("That is {covered} of what you use."),
        Point("In {worst_month} the same panels give only {worst_energy} a day."),
        Point("Dirt, wiring and the like cost {losses}, which is taken off."),
    ),
    neglect=(
        Point("The battery is not charged, or charged in a way that ruins it.", "stop"),
        Point("Who counts on sunny days has an empty battery after a few grey ones."),
    ),
    bars=(Bar("A usual day", "energy"), Bar("The worst month", "worst_energy"), Bar("You use", "daily_use")),
)

"""bank-size explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Plan another battery: this one would be damaged, or could not carry the load.", "stop"),
        Point("Plan for {together} of battery, once one point is settled.", "caution"),
        Point("Fit a battery of {capacity} or more: it lasts for {days} without charging.", "fine"),
    ),
    reasons=(
        Point("You use {daily_energy} a day, and want to go {days} without charging."),
        Point("Only {usable} of the battery is used, so that it lasts for years."),
        Point("Every battery gets weaker: {ageing} of it is set aside for that."),
        Point("Batteries of {unit_capacity} make {together} together."),
    ),
    neglect=(
        Point("Too small a battery is emptied too deeply, wears out in a few years and has to be bought again."),
    ),
    bars=(Bar("Needed", "capacity"), Bar("These batteries hold", "together")),
)

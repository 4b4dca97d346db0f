"""week-ahead explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Use less or charge more: the battery is empty after {empty_after}.", "week.empties"),
        Point("Do not set off like this: put one thing right first.", "stop"),
        Point("Settle one point before you set off.", "caution"),
        Point("Set off: the battery never falls below {lowest_state} in this week.", "fine"),
    ),
    reasons=(
        Point("You use {daily_use} a day."),
        Point("In {month} the sun can give {sun_day} a day, driving {drive_day}."),
        Point("At its lowest the battery is at {lowest_state}. Below {floor} nothing should be used."),
        Point("At the end it is at {end_state}."),
    ),
    neglect=(
        Point("After {empty_after} lights, fridge and heater go off, and stay off until you charge.", "stop"),
        Point("The battery is harmed, and a new one has to be bought.", "stop"),
        Point("One grey week or one more appliance, and the battery is empty on the road."),
    ),
    bars=(Bar("You use in a day", "daily_use"), Bar("Sun can give", "sun_day"), Bar("Driving can give", "drive_day")),
    silent="week.empties",
)

"""standby-drain explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not leave the van like this: the battery would be empty or ruined.", "stop"),
        Point("Switch off all that charges and disconnect the battery before you leave: in frost it must not be charged.", "bank.in-frost"),
        Point("Charge the battery in between, or disconnect it before you leave.", "caution"),
        Point("Leave the van for {days} at most, then charge it.", "fine"),
        Point("Disconnect the battery when you leave the van.", "fine"),
    ),
    reasons=(
        Point("Small devices take {daily} a day while everything seems to be off."),
        Point("You plan to be away for {away}."),
        Point("A battery loses charge by itself too, and faster in the heat."),
        Point("At {to_state} it must be charged again."),
    ),
    neglect=(
        Point("A battery that is empty for weeks is ruined, and a new one has to be bought."),
    ),
    bars=(Bar("It can wait", "days"), Bar("You are away", "away")),
)

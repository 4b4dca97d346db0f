"""heat-loss explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not sleep with this heater running: its fumes can kill.", "flame.exhaust-inside flame.no-alarm"),
        Point("Choose another heater: this one does not keep the van warm.", "heater.too-weak"),
        Point("Do not heat like this: the battery is empty before morning.", "stop"),
        Point("Choose a heater that gives at least {to_buy}, once one point is settled.", "caution"),
        Point("Choose a heater that gives at least {to_buy}.", "fine"),
    ),
    reasons=(
        Point("With {inside} inside and {outside} outside, the van loses {loss}."),
        Point("A night of {hours} takes {fuel_used} of {fuel} and {bank_share} of the battery."),
        Point("Electric heat from the battery would take {electric_charge}, and it holds {capacity}."),
        Point("{margin} is added for wind and for warming up."),
    ),
    neglect=(
        Point("Carbon monoxide has no smell: people fall asleep and do not wake up.", "flame."),
        Point("The heater runs all night and the van is still cold. Walls get wet, and water freezes."),
    ),
    cautions=(
        Point("Carbon monoxide: a heater that burns fuel needs its exhaust outside and a working alarm inside."),
    ),
    bars=(Bar("The van loses", "loss"), Bar("Heater needed", "to_buy"), Bar("Your heater gives", "heater_output")),
)

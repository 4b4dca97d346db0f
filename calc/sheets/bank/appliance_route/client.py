"""appliance-route explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Change the plan: the appliance does not get enough hours of power.", "stop"),
        Point("Settle one point before you buy either appliance.", "caution"),
        Point("Take the battery-voltage appliance: it needs {extra_charge} less every day.", "fine"),
        Point("Take the household appliance: it needs {spared_charge} less every day.", "fine"),
        Point("Choose by price: both appliances need about the same.", "fine"),
    ),
    reasons=(
        Point("The battery-voltage appliance needs {dc_charge} a day, the household one {ac_charge}."),
        Point("The inverter that feeds a household appliance needs {idle_charge} of that for itself."),
        Point("To make up for it you would need {extra_bank} more battery."),
        Point("On a hot day it is {dc_hot} against {ac_hot}."),
        Point("What runs every day adds up, and the battery must carry it until the next charge."),
    ),
    neglect=(
        Point("The wrong one empties the battery days earlier: food spoils, or you drive only to charge."),
    ),
    cautions=(
        Point("Shock: an inverter makes mains voltage. Have it fitted with the protection it needs."),
    ),
    bars=(Bar("Battery-voltage one, a day", "dc_charge"), Bar("Household one, a day", "ac_charge")),
)

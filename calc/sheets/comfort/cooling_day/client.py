"""cooling-day explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Change the plan: this air conditioner or this battery is too small.", "stop"),
        Point("Settle one point before you buy this air conditioner.", "caution"),
        Point("Cool for {hours}: that takes {charge}, and the battery lasts for {carries} of it.", "fine"),
        Point("Cool for {hours}: that takes {charge} from the battery.", "fine"),
    ),
    reasons=(
        Point("The air conditioner takes {power} while it runs."),
        Point("{hours} of cooling takes {charge}. The battery gives {gives}."),
        Point("Covers on the windows take {covers_save} of heat off."),
        Point("Shade and window covers cost little and save more than a larger battery."),
    ),
    neglect=(
        Point("It stops in the afternoon heat, and fridge and lights with it."),
    ),
    bars=(Bar("Cooling takes", "charge"), Bar("The battery gives", "gives")),
)

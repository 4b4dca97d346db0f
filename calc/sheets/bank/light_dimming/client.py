"""light-dimming explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not fit this dimmer to these lamps.", "stop"),
        Point("Settle one point before you fit this dimmer.", "caution"),
        Point("Dim the lights to {level}: the same charge then lasts {lasts} instead of {hours}.", "fine"),
        Point("Dim the lights to {level}.", "fine"),
    ),
    reasons=(
        Point("At full brightness the lights take {full_charge} in an evening, dimmed {dimmed_charge}."),
        Point("Dimmed to {level} the light still seems {seen} as bright."),
        Point("What is saved, {saved_charge}, is left for fridge and heater."),
        Point("The lamps are on for {hours} in an evening."),
        Point("The lamps take {power} together."),
        Point("Lamps that run cooler last longer."),
    ),
    neglect=(
        Point("Lamps flicker or fail early, and the dimmer can overheat.", "stop"),
        Point("Lights at full brightness help to empty the battery before anybody notices."),
    ),
    bars=(Bar("At full brightness", "full_charge"), Bar("Dimmed", "dimmed_charge")),
)

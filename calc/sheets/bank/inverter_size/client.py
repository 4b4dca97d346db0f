"""inverter-size explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Choose smaller appliances, or more battery: this is too much for it.", "stop"),
        Point("Choose an inverter rated for at least {continuous}, once one point is settled.", "caution"),
        Point("Choose an inverter rated for at least {continuous}, and {surge_rating} for a moment.", "fine"),
    ),
    reasons=(
        Point("Your appliances take {running}. In volt-amperes (V·A), as on an inverter’s label, that is {continuous}, and {surge_rating} as they start."),
        Point("That needs {dc_current} from the battery, through short and thick cables."),
        Point("Switched on for {hours_on} a day, it takes {idle_charge} by itself: switch it off when it is not used."),
        Point("Of the energy from the battery, {day_efficiency} reaches your appliances."),
    ),
    neglect=(
        Point("The inverter switches off, or the battery does, as soon as the load starts.", "stop"),
        Point("Too small, it switches off when the kettle starts. Too large, it empties the battery doing nothing."),
    ),
    cautions=(
        Point("Shock: an inverter makes mains voltage. Have it fitted with the protection it needs."),
    ),
    bars=(Bar("All the time", "continuous"), Bar("For a moment", "surge_rating")),
)

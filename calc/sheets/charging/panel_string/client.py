"""panel-string explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not connect the panels like this.", "stop"),
        Point("Settle one point before the panels are connected.", "caution"),
        Point("Connect the panels as planned: {series} in a row, {parallel} side by side.", "fine"),
    ),
    reasons=(
        Point("On a cold, bright morning they reach {cold_voc}. The regulator takes {volts_limit} at most."),
        Point("Hot panels give {hot_vmp}."),
        Point("In full sun {peak_current} flows into the battery."),
        Point("The cable from the panels must carry {max_current}."),
    ),
    neglect=(
        Point("The first frosty, sunny morning can destroy the regulator, or a cable overheats in full sun.", "stop"),
        Point("Panels that do not suit their regulator charge badly, or destroy it on a frosty morning."),
    ),
    cautions=(
        Point("Shock: panels give voltage in any daylight. Cover them before you connect anything."),
    ),
    bars=(Bar("Panels, coldest morning", "cold_voc"), Bar("The regulator takes", "volts_limit")),
)

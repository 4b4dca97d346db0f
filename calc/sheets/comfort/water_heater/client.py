"""water-heater explained to a client."""

# fmt: off
from calc.worksheet.explain import Bar, Explanation, Point

EXPLANATION = Explanation(
    advice=(
        Point("Do not use this heater inside: its fumes can kill.", "flame.exhaust-inside flame.no-alarm"),
        Point("Do not heat water like this: put one thing right first.", "stop"),
        Point("Fit a mixing valve: this water can scald.", "water.no-mixing-valve water.scalds"),
        Point("Settle one point before you heat water like this.", "caution"),
        Point("Heat the water for {time}: that takes {bank_share} of what you use of the battery.", "fine"),
        Point("Heat the water for {time} before you need it.", "fine"),
        Point("Heat the water just before you need it.", "fine"),
    ),
    reasons=(
        Point("{volume} of water goes from {from} to {to}."),
        Point("That takes {energy} in all."),
        Point("{charge} of it comes from the battery."),
        Point("It takes {fuel_used} of fuel."),
        Point("Keeping water hot costs more: heat it just before you need it."),
    ),
    neglect=(
        Point("Carbon monoxide has no smell: people fall asleep and do not wake up.", "flame."),
        Point("One long shower can cost as much as a night of light, and the battery is empty."),
    ),
    cautions=(
        Point("Burns: water over 50 °C scalds within seconds. A mixing valve prevents that."),
    ),
    bars=(Bar("Hot water takes", "charge"), Bar("The battery gives", "gives")),
)

"""Practice for water-heater."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="time",
            text="{volume} of water must be heated from {from} to {to}. An element draws {power}, {efficiency} of which reaches the water, and the tank loses {loss}. Water has {specific} and {density}. How long does it take?",
            draw={
                "volume": ("5 L", "10 L", "15 L"),
                "from": ("5 °C", "15 °C"),
                "to": ("45 °C", "55 °C"),
                "power": ("300 W", "500 W", "750 W"),
                "way": ("shore",),
                "efficiency": ("88 %", "100 %"),
                "loss": ("20 W", "40 W"),
            },
            slips=(
                Slip(
                    formula="density * volume * specific * to / (into - loss)",
                    text="Only the rise from cold to hot counts, not the whole of the hot temperature.",
                ),
                Slip(
                    formula="time * (into - loss) / (into + loss)",
                    text="The tank's loss does not heat the water: subtract it from the power.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="An element of {power} on a bank at {voltage} heats {volume} from {from} to {to} in {time}, and the tank then stays hot for {hours} at {loss} of loss. What charge does it take in all?",
            draw={
                "volume": ("5 L", "10 L"),
                "from": ("8 °C", "14 °C"),
                "to": ("45 °C", "50 °C"),
                "power": ("300 W", "500 W"),
                "voltage": ("12.5 V", "25 V"),
                "hours": ("2 h", "6 h"),
                "loss": ("15 W", "25 W"),
                "efficiency": ("100 %",),
            },
            slips=(
                Slip(
                    inputs={"hours": "0 h"}, text="Keeping it hot takes charge too, hour by hour."
                ),
                Slip(
                    formula="power * (time + hours) / voltage",
                    text="Once it is hot the element only replaces the loss.",
                ),
            ),
        ),
        Task(
            asks="current",
            text="An element of {power} runs on a bank at {voltage}. What current flows while it heats?",
            draw={
                "power": ("300 W", "500 W", "750 W", "1200 W"),
                "voltage": ("12.0 V", "12.8 V", "25.6 V", "51.2 V"),
            },
            slips=(
                Slip(
                    formula="power / 120",
                    text="That is the current at mains voltage. The bank's is far lower, so the current is far larger.",
                ),
                Slip(
                    formula="power / 9",
                    text="Divide by the bank's voltage as it is under this load.",
                ),
            ),
        ),
    )
)

"""Practice for light-dimming."""

from calc.practice.declared import Practice, Slip, Task, steps

PRACTICE = Practice(
    tasks=(
        Task(
            asks="saved_charge",
            text="Strips of {power} are on for {hours} at {voltage}. A pulse dimmer is on {level} of the time. What charge does that save in the evening?",
            draw={
                "power": ("18 W", "24 W", "30 W", "36 W"),
                "hours": steps(3, 6, 1, "h"),
                "voltage": ("12.0 V", "12.8 V"),
                "level": ("20 %", "30 %", "40 %", "60 %"),
            },
            slips=(
                Slip(
                    formula="dimmed_charge",
                    text="That is what the lamps still use. The question is what stays in the bank.",
                ),
                Slip(
                    formula="saved_charge * voltage",
                    text="Those are watt-hours. Divide by the voltage for the charge.",
                ),
                Slip(
                    formula="full_charge * (1 - level * level)",
                    text="With pulses, power is proportional to the share of the time, not to its square.",
                ),
            ),
        ),
        Task(
            asks="lasts",
            text="At full brightness the charge you allow for light lasts {hours}. How long does it last with LED strips dimmed by pulses to {level}?",
            draw={
                "hours": steps(2, 6, 1, "h"),
                "level": ("25 %", "40 %", "50 %", "80 %"),
            },
            slips=(
                Slip(formula="hours * level", text="Less power lasts longer: divide by the share."),
                Slip(
                    formula="hours * (2 - level)",
                    text="Half the power lasts twice as long: divide by the share.",
                ),
            ),
        ),
        Task(
            asks="dimmer_rating",
            text="One zone of LED strips takes {power} at {voltage} and is dimmed to {level}. Its diodes hold {held} of the voltage, so while the bank is charged, the current is {growth} times that. With a margin of {margin}, what should its dimmer be rated for?",
            draw={
                "power": ("18 W", "24 W", "36 W", "48 W"),
                "voltage": ("12.0 V", "12.8 V"),
                "held": ("75 %", "80 %"),
                "level": ("30 %", "50 %"),
            },
            oversize=0.25,
            slips=(
                Slip(
                    formula="dimmer_current * margin",
                    text="The charger raises the voltage, and a strip then draws far more: multiply by that too.",
                ),
                Slip(
                    formula="dimmer_rating * level",
                    text="Each pulse is at full current, at any dimming.",
                ),
                Slip(
                    formula="charging_current",
                    text="That leaves no margin: the dimmer would run hot.",
                ),
            ),
        ),
    )
)

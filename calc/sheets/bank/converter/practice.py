"""Practice for converter."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="input_current",
            text="A converter gives {load} at {output_voltage} and works at {efficiency}. The bank may sag to {lowest}. What does it take from the bank then?",
            draw={
                "load": ("8 A", "12 A", "15 A", "18 A"),
                "output_voltage": ("12.5 V", "13.2 V"),
                "efficiency": ("85 %", "90 %", "92 %"),
                "lowest": ("22 V", "23 V"),
            },
            slips=(
                Slip(
                    formula="load_current",
                    text="Power passes through, current does not: at the higher voltage it is smaller.",
                ),
                Slip(
                    formula="output_power / lowest",
                    text="The converter's own loss comes on top: divide by the efficiency.",
                ),
                Slip(
                    formula="input_power / highest",
                    text="The current is highest where the voltage is lowest: size for that.",
                ),
            ),
        ),
        Task(
            asks="loss",
            text="A load of {load} at {output_voltage} is fed through a converter that works at {efficiency}. How much power does the converter turn into heat?",
            draw={
                "load": ("6 A", "10 A", "16 A"),
                "output_voltage": ("12.5 V", "13.5 V"),
                "efficiency": ("85 %", "88 %", "94 %"),
            },
            slips=(
                Slip(
                    formula="output_power * (1 - efficiency)",
                    text="The efficiency is of what goes in. First find that, then take the load away.",
                ),
                Slip(
                    formula="input_power",
                    text="That is all it takes. What the load gets is no heat in the converter.",
                ),
            ),
        ),
        Task(
            asks="standby_charge",
            text="A converter takes {standby} without a load. It is on for {on_hours} a day, and its load runs for {load_hours}. What does it take from the bank for nothing?",
            draw={
                "standby": ("20 mA", "40 mA", "60 mA", "100 mA"),
                "load_hours": ("2 h", "4 h", "6 h"),
                "on_hours": ("20 h", "24 h"),
            },
            slips=(
                Slip(
                    formula="standby_current * on_hours",
                    text="While the load runs, that draw is part of the loss: count the idle hours.",
                ),
                Slip(
                    formula="standby_current * load_hours",
                    text="Those are the hours with the load. Idle is the rest.",
                ),
            ),
        ),
    )
)

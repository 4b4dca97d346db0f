"""Practice for converter."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="input_current",
            text="A converter gives {load} at {output_voltage} and works at {efficiency}. The bank may fall to {lowest}. What current does it draw from the bank then?",
            draw={
                "load": ("8 A", "12 A", "15 A", "18 A"),
                "output_voltage": ("12.5 V", "13.2 V"),
                "efficiency": ("85 %", "90 %", "92 %"),
                "lowest": ("22 V", "23 V"),
            },
            slips=(
                Slip(
                    formula="load_current",
                    text="Power stays the same, current does not: at the higher voltage it is smaller.",
                ),
                Slip(
                    formula="output_power / lowest",
                    text="The converter's own loss comes on top: divide by the efficiency.",
                ),
                Slip(
                    formula="input_power / highest",
                    text="The current is highest at the lowest voltage: size for that.",
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
                    text="Efficiency refers to the input power. Find that first, then subtract the load.",
                ),
                Slip(
                    formula="input_power",
                    text="That is its whole input. What the load gets is not heat in the converter.",
                ),
            ),
        ),
        Task(
            asks="standby_charge",
            text="A converter takes {standby} without a load. It is on for {on_hours} a day, and its load runs for {load_hours}. How much charge is wasted from the bank?",
            draw={
                "standby": ("20 mA", "40 mA", "60 mA", "100 mA"),
                "load_hours": ("2 h", "4 h", "6 h"),
                "on_hours": ("20 h", "24 h"),
            },
            slips=(
                Slip(
                    formula="standby_current * on_hours",
                    text="While the load runs, that draw is part of the loss: use only the idle hours.",
                ),
                Slip(
                    formula="standby_current * load_hours",
                    text="Those are the hours with the load. The rest is idle.",
                ),
            ),
        ),
    )
)

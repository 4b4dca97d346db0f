"""Practice for joint-heat."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="resistance",
            text="Across a bolted joint you read {drop} while {current} flows. What is the joint's resistance?",
            draw={
                "drop": ("4 mV", "9 mV", "15 mV", "30 mV", "45 mV"),
                "current": ("40 A", "60 A", "80 A", "120 A"),
            },
            slips=(
                Slip(
                    formula="resistance * 1000",
                    text="The reading is in millivolts: the answer is a thousand times smaller.",
                ),
            ),
        ),
        Task(
            asks="full_heat",
            text="A joint drops {drop} at {current}. How much heat does it make at the inverter's full {full_current}, if its resistance stays the same?",
            draw={
                "drop": ("6 mV", "12 mV", "20 mV", "35 mV"),
                "current": ("40 A", "50 A", "80 A"),
                "full_current": ("120 A", "160 A", "200 A"),
            },
            slips=(
                Slip(formula="heat", text="That is the heat now, at the smaller current."),
                Slip(
                    formula="heat * full_current / current",
                    text="Heat rises with the square of the current, not in proportion.",
                ),
            ),
        ),
        Task(
            asks="full_drop",
            text="A joint drops {drop} while you can only load it with {current}. What will the drop be at {full_current}?",
            draw={
                "drop": ("5 mV", "10 mV", "18 mV"),
                "current": ("30 A", "40 A", "60 A"),
                "full_current": ("100 A", "150 A", "180 A"),
            },
            slips=(
                Slip(
                    formula="drop",
                    text="That is the drop at the current of the measurement. It grows with the current.",
                ),
                Slip(
                    formula="drop * full_current * full_current / (current * current)",
                    text="The drop is proportional to the current. Heat rises with its square.",
                ),
            ),
        ),
    )
)

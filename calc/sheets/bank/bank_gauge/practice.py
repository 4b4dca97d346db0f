"""Practice for bank-gauge."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="to_floor",
            text="The monitor of a {capacity} LFP bank shows {state} and {current}. You use {usable} of the bank. How long does that current last until your usable share is used?",
            draw={
                "chemistry": ("LFP",),
                "capacity": ("100 Ah", "200 Ah", "280 Ah"),
                "state": ("55 %", "65 %", "80 %"),
                "current": ("-4 A", "-6 A", "-8 A", "-12 A"),
                "usable": ("80 %", "90 %"),
            },
            slips=(
                Slip(
                    formula="remaining / draw",
                    text="That empties the bank completely. Leave in what you do not use.",
                ),
                Slip(
                    formula="usable * capacity / draw",
                    text="That is from full. Start from what the monitor shows.",
                ),
            ),
        ),
        Task(
            asks="time",
            text="A {capacity} lead-acid bank at {state} takes {current}, and its charge efficiency is {efficiency}. If the current stayed as it is, when would the bank be full?",
            draw={
                "chemistry": ("flooded",),
                "capacity": ("100 Ah", "200 Ah", "220 Ah"),
                "state": ("40 %", "50 %", "60 %"),
                "current": ("10 A", "15 A", "20 A"),
                "efficiency": ("85 %", "80 %"),
            },
            slips=(
                Slip(
                    formula="missing / current",
                    text="Only part of the charge is stored: divide by the efficiency too.",
                ),
                Slip(
                    formula="missing * efficiency / current",
                    text="Divide by the efficiency: losses make it longer.",
                ),
                Slip(
                    formula="remaining / (current * efficiency)",
                    text="Use the missing charge, not the charge in the bank.",
                ),
            ),
        ),
        Task(
            asks="voltage_says",
            text="An LFP bank with {current} flowing reads {reading} at its posts, {taken}. Does that give a state of charge? Reply “no state at all”, or “between” with two numbers.",
            draw={
                "chemistry": ("LFP",),
                "current": ("-30 A", "-12 A"),
                "reading": ("12.6 V", "12.9 V", "13.1 V"),
                "taken": ("under load",),
            },
            choices=("no state at all", "between 0 and 40 %", "between 40 and 90 %"),
            hint="Ask first whether the bank is at rest. What does a load do to the voltage?",
            slips=(
                Slip(
                    reply="between 0 and 40 %",
                    text="A load pulls the voltage down. Let it rest first.",
                ),
                Slip(
                    reply="between 40 and 90 %",
                    text="Under load the voltage gives no state. Let it rest first.",
                ),
            ),
        ),
    )
)

"""Practice for bank-size."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="capacity",
            text="A van uses {daily_energy} a day and is parked {days} without charging. The bank is LFP at {voltage}; {usable} of it is used, and {ageing} is kept for ageing. What capacity does it need?",
            draw={
                "chemistry": ("LFP",),
                "daily_energy": ("600 Wh", "900 Wh", "1200 Wh", "1800 Wh"),
                "days": ("2 days", "3 days", "4 days"),
                "voltage": ("12.8 V", "25.6 V"),
                "usable": ("80 %", "90 %"),
                "ageing": ("20 %",),
            },
            oversize=0.25,
            slips=(
                Slip(
                    formula="charge",
                    text="That empties a new bank completely. Divide by the share you use and by what ageing leaves.",
                ),
                Slip(formula="capacity * day / days", text="That is for one day."),
                Slip(
                    formula="charge * usable * (1 - ageing)",
                    text="Divide by the share: using only part of a bank makes it larger.",
                ),
            ),
        ),
        Task(
            asks="capacity",
            text="{daily_energy} a day for {days} are to come from an AGM bank of {voltage} at {temperature}. Half of it is used, {ageing} is kept for ageing, and the factor for cold is {cold_factor}. What capacity does that need?",
            draw={
                "chemistry": ("AGM",),
                "usable": ("50 %",),
                "voltage": ("12 V", "24 V"),
                "daily_energy": ("480 Wh", "720 Wh", "960 Wh", "1200 Wh"),
                "days": ("2 days", "3 days"),
                "temperature": ("50 °F", "60 °F"),
                "ageing": ("20 %",),
            },
            oversize=0.25,
            slips=(
                Slip(
                    inputs={"temperature": "25 °C"},
                    text="That ignores the cold. The factor multiplies the capacity needed.",
                ),
                Slip(inputs={"usable": "100 %"}, text="Only half of the bank is used."),
                Slip(inputs={"ageing": "0 %"}, text="That is for a new bank. Allow for ageing."),
                Slip(
                    formula="capacity / cold_factor / cold_factor",
                    text="The factor multiplies the capacity needed; you divided by it.",
                ),
            ),
        ),
        Task(
            asks="put_back",
            text="A lead-acid bank at {voltage} gave {daily_energy} in {days}. Its charge efficiency is {efficiency}. What charge must go back in?",
            draw={
                "chemistry": ("flooded",),
                "daily_energy": ("600 Wh", "900 Wh", "1200 Wh"),
                "days": ("24 h",),
                "voltage": ("12 V", "12.2 V"),
                "efficiency": ("85 %", "80 %"),
            },
            slips=(
                Slip(
                    formula="charge",
                    text="More must go in than came out: part of it becomes heat and gas.",
                ),
                Slip(
                    formula="charge * efficiency",
                    text="Divide by the efficiency: more must go in than came out.",
                ),
            ),
        ),
    )
)

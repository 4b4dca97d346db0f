"""Practice for appliance-route."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="dc_charge",
            text="A fridge made for the bank takes {dc_power} at {voltage} while it runs, and it runs {dc_duty} of the day. What charge is that a day?",
            draw={
                "dc_power": ("36 W", "45 W", "50 W", "60 W", "72 W"),
                "dc_duty": ("25 %", "30 %", "40 %", "50 %"),
                "voltage": ("12.5 V", "12.8 V"),
            },
            slips=(
                Slip(
                    inputs={"dc_duty": "100 %"},
                    text="It runs only part of the time: multiply by its share of the day.",
                ),
                Slip(formula="dc_charge / 24", text="That is for one hour. A day has 24."),
                Slip(
                    formula="dc_charge * voltage",
                    text="Those are watt-hours. Divide by the voltage for the charge.",
                ),
            ),
        ),
        Task(
            asks="ac_charge",
            text="A household fridge takes {ac_power} for {ac_duty} of the day, through an inverter of {efficiency} with an idle draw of {idle} that stays on. What charge leaves a bank of {voltage} a day?",
            draw={
                "ac_power": ("60 W", "80 W", "90 W", "100 W"),
                "ac_duty": ("30 %", "40 %", "50 %"),
                "idle": ("10 W", "15 W", "20 W"),
                "efficiency": ("85 %", "90 %"),
                "voltage": ("12.8 V",),
            },
            slips=(
                Slip(
                    inputs={"idle": "0 W"},
                    text="The inverter's idle draw is missing: it runs day and night.",
                ),
                Slip(
                    inputs={"efficiency": "100 %"},
                    text="The inverter's loss is missing: divide the appliance's energy by its efficiency.",
                ),
                Slip(
                    formula="ac_charge - idle_charge + idle_charge * ac_duty",
                    text="The inverter idles all day, not only while the compressor runs: a thermostat may call at any hour.",
                ),
            ),
        ),
        Task(
            asks="extra_bank",
            text="The household fridge, {ac_power} while it runs, takes {extra_charge} a day more than the other. The bank must last {days} days without charging, and you use {usable} of it. How much more bank does that need?",
            draw={
                "ac_power": ("70 W", "80 W", "95 W", "110 W"),
                "days": ("2", "3", "4"),
                "usable": ("50 %", "80 %"),
            },
            slips=(
                Slip(
                    formula="extra_charge * days",
                    text="Only a share of the bank is used: divide by it.",
                ),
                Slip(
                    formula="extra_charge / usable",
                    text="That is for one day. The bank must last several.",
                ),
                Slip(
                    formula="extra_charge * days * usable",
                    text="Divide by the share you use: the bank must be larger, not smaller.",
                ),
            ),
        ),
    )
)

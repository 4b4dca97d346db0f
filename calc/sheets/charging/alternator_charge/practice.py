"""Practice for alternator-charge."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="initial_current",
            text="A relay joins a starter battery held at {engine_voltage} and a bank that shows {bank_voltage}. The run has {run_resistance} out and back, the bank {bank_resistance} inside. How much current flows at first?",
            draw={
                "method": ("relay",),
                "chemistry": ("AGM",),
                "engine_voltage": ("13.9 V", "14.2 V", "14.4 V"),
                "bank_voltage": ("12.4 V", "12.7 V", "12.9 V"),
                "run_resistance": ("8 mΩ", "10 mΩ", "15 mΩ"),
                "bank_resistance": ("4 mΩ", "10 mΩ"),
            },
            slips=(
                Slip(
                    formula="(engine_voltage - bank_voltage) / run_total",
                    text="The bank's own resistance is in the loop too.",
                ),
                Slip(
                    formula="engine_voltage / loop",
                    text="The difference of the two voltages drives the current.",
                ),
            ),
        ),
        Task(
            asks="input_current",
            text="A charger gives {charger_limit} to a bank at {bank_voltage} with an efficiency of {charger_efficiency}. The engine holds {engine_voltage} and the run has {run_resistance} out and back. How much does it draw at its input?",
            draw={
                "method": ("charger",),
                "charger_limit": ("20 A", "30 A", "40 A", "50 A"),
                "bank_voltage": ("12.8 V", "13.2 V", "13.6 V"),
                "charger_efficiency": ("85 %", "90 %"),
                "engine_voltage": ("13.8 V", "14.4 V"),
                "run_resistance": ("25 mΩ", "35 mΩ"),
            },
            tolerance=0.015,
            slips=(
                Slip(
                    formula="charger_limit * bank_voltage / engine_voltage",
                    text="The input includes its loss: divide by the efficiency.",
                ),
                Slip(
                    formula="power_first / engine_voltage",
                    text="The voltage at its input is lower than at the engine because of the drop in the run, so the current is higher.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="A {charger_limit} charger is in a hot bay and has {output_left} of its output left. The bank is large and far from full, and the alternator is strong enough. How much charge does a drive of {hours} give?",
            draw={
                "method": ("charger",),
                "charger_limit": ("20 A", "30 A", "40 A"),
                "output_left": ("50 %", "70 %", "75 %", "80 %"),
                "hours": ("1 h", "2 h", "3 h"),
                "capacity": ("600 Ah",),
                "from_state": ("20 %",),
                "alternator": ("250 A",),
                "vehicle_load": ("30 A",),
                "conductor": ("2 AWG",),
            },
            slips=(
                Slip(formula="charger_limit * hours", text="That is its output when cool."),
                Slip(
                    formula="charger_limit * (1 - output_left) * hours",
                    text="That is the charge lost to heat. The question asks for the charge that goes in.",
                ),
            ),
        ),
        Task(
            asks="alternator_load",
            text="Through a relay a bank draws {initial_current}, and the vehicle {vehicle_load}. The alternator is rated {alternator}. What share of its rating is that?",
            draw={
                "method": ("relay",),
                "alternator": ("100 A", "120 A", "150 A", "180 A"),
                "vehicle_load": ("30 A", "40 A", "50 A"),
                "run_resistance": ("15 mΩ",),
                "engine_voltage": ("14.2 V",),
                "bank_voltage": ("12.7 V",),
            },
            slips=(
                Slip(formula="asked / alternator", text="The vehicle's own load counts too."),
                Slip(
                    formula="(vehicle_load + asked) / (alternator * hot_share)",
                    text="That is the share of its hot, continuous output. The question is about its rating.",
                ),
            ),
        ),
    )
)

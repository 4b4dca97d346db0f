"""Practice for inverter-size."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="continuous",
            text="At most {running} run at one time, with a power factor of {power_factor}. What continuous rating in volt-amps must the inverter have?",
            draw={
                "running": ("600 W", "900 W", "1200 W", "1500 W", "1800 W"),
                "power_factor": ("0.6", "0.75", "0.8", "0.9"),
            },
            oversize=0.25,
            slips=(
                Slip(
                    formula="running",
                    text="Those are watts. A power factor below one needs more volt-amps.",
                ),
                Slip(
                    formula="running * power_factor",
                    text="Divide by the power factor: volt-amps are never fewer than watts.",
                ),
            ),
        ),
        Task(
            asks="dc_current",
            text="An inverter with {efficiency} efficiency supplies {running}. The bank is at {voltage}, and under this load it may fall to {lowest_voltage} before the inverter cuts off. What current must the cables carry?",
            draw={
                "running": ("800 W", "1000 W", "1200 W", "1500 W", "2000 W"),
                "efficiency": ("85 %", "88 %", "90 %"),
                "lowest_voltage": ("10.5 V", "11.0 V", "11.5 V"),
                "voltage": ("12.8 V",),
            },
            slips=(
                Slip(
                    formula="running / (voltage * efficiency)",
                    text="The inverter keeps its power constant: the highest current is at the lowest voltage.",
                ),
                Slip(
                    formula="running / lowest_voltage",
                    text="The inverter's loss comes on top: divide by its efficiency.",
                ),
                Slip(
                    formula="running * efficiency / lowest_voltage",
                    text="Divide by the efficiency: the bank gives more than the loads take.",
                ),
            ),
        ),
        Task(
            asks="idle_charge",
            text="An inverter with nothing plugged in takes {idle} from a bank of {voltage}. It is on {hours_on} a day. What charge does that use?",
            draw={
                "idle": ("10 W", "15 W", "20 W", "25 W", "40 W"),
                "hours_on": ("6 h", "12 h", "24 h"),
                "voltage": ("12.5 V", "12.8 V", "25.6 V"),
            },
            slips=(
                Slip(
                    formula="idle_charge * voltage",
                    text="Those are watt-hours. Divide by the voltage for the charge.",
                ),
                Slip(
                    formula="idle_energy / (voltage * efficiency)",
                    text="The idle draw is measured at the bank: efficiency does not apply again.",
                ),
            ),
        ),
    )
)

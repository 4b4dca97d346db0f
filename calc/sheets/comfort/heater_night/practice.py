"""Practice for heater-night."""

from calc.practice.declared import Practice, Slip, Task, steps

PRACTICE = Practice(
    tasks=(
        Task(
            asks="fuel_used",
            text="A van needs {loss} of heat for {hours}. The heater burns {fuel}, which holds {heating}, and {efficiency} of it heats the van. How much fuel is that?",
            draw={
                "loss": ("700 W", "900 W", "1.2 kW", "1.5 kW"),
                "hours": ("8 h", "9 h", "10 h"),
                "fuel": ("diesel", "petrol", "propane"),
                "efficiency": ("75 %", "80 %"),
            },
            slips=(
                Slip(
                    inputs={"efficiency": "100 %"},
                    text="Part of the heat leaves through the exhaust: divide by the efficiency.",
                ),
                Slip(
                    formula="night_heat * efficiency / heating",
                    text="More heat is burnt than reaches the van: divide by the efficiency, do not multiply.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="A fuel heater draws {draw} on average for {hours}, and starts {starts} times with {start_energy} each. The bank is at {voltage}. What charge does it take?",
            draw={
                "draw": ("20 W", "30 W", "40 W"),
                "hours": ("8 h", "10 h", "12 h"),
                "starts": ("2", "4", "6"),
                "start_energy": ("10 Wh",),
                "voltage": ("12.4 V", "12.8 V"),
            },
            slips=(
                Slip(
                    formula="draw * hours / voltage", text="Each start takes its own energy on top."
                ),
                Slip(
                    formula="electric_charge",
                    text="That is for electric heat. Here the fuel makes the heat.",
                ),
            ),
        ),
        Task(
            asks="electric_charge",
            text="Instead of fuel, {loss} of heat for {hours} is to come from the bank at {voltage}, by a resistor directly on it. What charge is that?",
            draw={
                "loss": ("400 W", "900 W", "1.5 kW"),
                "hours": steps(6, 10, 1, "h"),
                "voltage": ("12.8 V", "25.6 V"),
            },
            slips=(
                Slip(
                    formula="electric_current * 3600",
                    text="That is the charge for one hour. Multiply by the hours.",
                ),
                Slip(
                    inputs={"voltage": "12 V"},
                    text="Use the bank's voltage under load, not the nominal one.",
                ),
            ),
        ),
    )
)

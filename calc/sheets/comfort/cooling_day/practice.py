"""Practice for cooling-day."""

from calc.practice.declared import Practice, Slip, Task, steps

PRACTICE = Practice(
    tasks=(
        Task(
            asks="power",
            text="A cooler has {cooling} of cooling power, and its label says {efficiency_ratio}. What power does it draw while it runs?",
            draw={
                "cooling": ("4000 BTU/h", "5000 BTU/h", "6000 BTU/h", "8000 BTU/h"),
                "efficiency_ratio": ("8 EER", "9 EER", "10 EER", "12 EER"),
            },
            slips=(
                Slip(
                    formula="cooling",
                    text="That is the cooling power. A cooler moves more heat than the power it draws.",
                ),
                Slip(
                    formula="cooling / (efficiency_ratio * 3600 / 1055.056)",
                    text="An EER includes BTU: divide BTU/h by it, or convert it to a COP first.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="A cooler of {cooling} with {efficiency_ratio} runs {duty} of {hours} directly from the bank at {voltage}. What charge does it use?",
            draw={
                "cooling": ("1.2 kW", "1.5 kW", "2 kW"),
                "efficiency_ratio": ("2.5 COP", "3 COP"),
                "duty": ("50 %", "60 %", "80 %"),
                "hours": steps(4, 8, 2, "h"),
                "voltage": ("12.8 V",),
            },
            slips=(
                Slip(
                    inputs={"duty": "100 %"},
                    text="It runs only part of the time: multiply by that share.",
                ),
                Slip(
                    inputs={"efficiency_ratio": "1 COP"},
                    text="That uses the cooling as the power. Divide by the ratio first.",
                ),
            ),
        ),
        Task(
            asks="heat_load",
            text="{glazing} of glass in {sun} of sun lets {passed} in, and the roof adds {roof_heat}. It is {outside} outside and {inside} inside, with {shell} for shell and air. {people} people give {each} each, devices {devices}. How much heat must be removed?",
            draw={
                "basis": ("heat load",),
                "cooling": ("3 kW",),
                "sun": ("500 W/m²", "700 W/m²", "900 W/m²"),
                "glazing": ("1 m²", "2 m²", "3 m²"),
                "outside": ("31 °C", "35 °C"),
                "inside": ("25 °C",),
                "people": ("2", "4"),
                "shell": ("60 W/K",),
                "devices": ("60 W",),
            },
            slips=(
                Slip(inputs={"people": "0"}, text="People give off heat too: count them."),
                Slip(
                    formula="heat_load - glass_heat + sun * glazing",
                    text="Not all the sun on the glass comes in.",
                ),
                Slip(
                    inputs={"outside": "25 °C"},
                    text="That leaves out the heat through the shell.",
                ),
            ),
        ),
    )
)

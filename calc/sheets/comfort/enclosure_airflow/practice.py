"""Practice for enclosure-airflow."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="heat",
            text="A charger gives {throughput} at {efficiency} efficiency, and beside it an inverter gives {throughput_2} at {efficiency_2}. How much heat do they make in the bay?",
            draw={
                "throughput": ("300 W", "400 W", "600 W"),
                "efficiency": ("88 %", "92 %", "95 %"),
                "throughput_2": ("150 W", "250 W"),
                "efficiency_2": ("85 %", "90 %"),
            },
            slips=(
                Slip(
                    formula="throughput * (1 - efficiency) + throughput_2 * (1 - efficiency_2)",
                    text="Efficiency is a share of the input, and you have the output: divide first.",
                ),
                Slip(formula="first_heat", text="The second device makes heat as well."),
            ),
        ),
        Task(
            asks="airflow",
            text="A bay makes {given_heat} of heat. Air comes in at {outside} with {density} and {air_heat}, and must not get warmer than {inside_limit}. How much air does it need?",
            draw={
                "given_heat": ("30 W", "60 W", "100 W", "200 W", "500 W"),
                "outside": ("20 °C", "25 °C", "35 °C"),
                "inside_limit": ("40 °C", "45 °C", "50 °C"),
            },
            slips=(
                Slip(
                    formula="heat / (density * air_heat * (inside_limit - outside + outside))",
                    text="Only the difference between the two temperatures counts.",
                ),
                Slip(
                    formula="airflow * 3600",
                    text="Watts are joules per second, so this gives cubic metres per second: convert to hours.",
                ),
            ),
        ),
        Task(
            asks="output_left",
            text="A charger gives full output up to {rated_to}, then {derating} less. Its bay is at {inside_limit}. What share of its output is left?",
            draw={
                "rated_to": ("35 °C", "40 °C"),
                "derating": ("2 %/K", "2.5 %/K", "3 %/K"),
                "inside_limit": ("45 °C", "50 °C", "55 °C"),
            },
            tolerance=0.02,
            slips=(
                Slip(formula="1 - output_left", text="That is the share that is lost."),
                Slip(
                    formula="max(0, 1 - derating * (inside_limit - outside))",
                    text="Start from its rated temperature, not from the outside air.",
                ),
            ),
        ),
        Task(
            asks="vent_area",
            text="A bay makes {given_heat} of heat and draws air at {outside}; its vents are {height} apart. With draught alone it needs {airflow}, for which one opening would need {effective}. How large must each of two vents be?",
            draw={
                "given_heat": ("20 W", "40 W", "60 W", "80 W"),
                "height": ("0.3 m", "0.5 m", "1 m"),
                "outside": ("25 °C", "30 °C"),
            },
            slips=(
                Slip(
                    formula="effective",
                    text="The air passes both in series: each must be larger than one alone, by the square root of two.",
                ),
                Slip(
                    formula="effective * 2",
                    text="Two in series resist more than one, but not twice as much: the square root of two is enough.",
                ),
            ),
        ),
    )
)

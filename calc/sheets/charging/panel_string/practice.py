"""Practice for panel-string."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="cold_voc",
            text="{series} panels with {voc} open-circuit voltage are in series. The label's coefficient is {coefficient}, the coldest morning {cold}. What is the string's open-circuit voltage then?",
            draw={
                "voc": ("22.5 V", "24.3 V", "37.2 V", "45.6 V"),
                "coefficient": ("-0.25 %/K", "-0.28 %/K", "-0.3 %/K"),
                "series": ("2", "3"),
                "cold": ("-10 °C", "-15 °C", "-20 °C", "-25 °C"),
                "volts_limit": ("250 V",),
            },
            slips=(
                Slip(
                    formula="series * voc",
                    text="That is at 25 °C. Each degree below adds its share of the open-circuit voltage.",
                ),
                Slip(
                    formula="voc * cold_factor",
                    text="That is one panel. In series the voltages add.",
                ),
                Slip(
                    formula="series * voc * (2 - cold_factor)",
                    text="The coefficient is negative and the degrees are below 25 °C: in frost the voltage rises.",
                ),
            ),
        ),
        Task(
            asks="hot_vmp",
            text="In air of {hot_air} the sun heats the cells to {cell}. The label's power coefficient is {heat_coefficient}, from {standard} up. {series} panels of {vmp} at maximum power are in series. What voltage is left?",
            draw={
                "vmp": ("18.6 V", "20.4 V", "31.2 V"),
                "series": ("1", "2"),
                "hot_air": ("25 °C", "30 °C", "40 °C"),
                "heat_coefficient": ("-0.35 %/K", "-0.4 %/K"),
            },
            slips=(
                Slip(
                    formula="string_vmp",
                    text="That is the label's value, for cells at 25 °C. On a roof they are far hotter.",
                ),
            ),
        ),
        Task(
            asks="reverse_current",
            text="{parallel} strings of {isc} short-circuit current are in parallel. One has a fault. With {bright} for bright light, what reverse current do the others drive through it?",
            draw={
                "isc": ("5.8 A", "9 A", "10.4 A", "13.9 A"),
                "parallel": ("2", "3", "4"),
                "series": ("1",),
            },
            slips=(
                Slip(
                    formula="parallel * bright * isc",
                    text="The faulty string gives nothing: only the others count.",
                ),
                Slip(
                    formula="(parallel - 1) * isc",
                    text="Light can be 25 % brighter than on the label.",
                ),
            ),
        ),
    )
)

"""Practice for runtime."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="runtime",
            text="A {capacity} LFP bank at {voltage} feeds {load}. You use {usable} of it, and its exponent is {exponent}. How long does it last?",
            draw={
                "capacity": ("100 Ah", "160 Ah", "200 Ah", "280 Ah", "400 Ah"),
                "chemistry": ("LFP",),
                "load": ("45 W", "60 W", "90 W", "120 W", "180 W"),
                "voltage": ("12.8 V", "13.0 V"),
                "usable": ("70 %", "80 %"),
            },
            hint="Find the current: power over voltage. With an exponent of 1, the time is the charge you use over that current.",
            slips=(
                Slip(
                    inputs={"usable": "100 %"},
                    text="That empties the bank. Only the share you use counts.",
                ),
                Slip(
                    formula="usable * capacity / load",
                    text="That uses watts as amps: divide the power by the voltage first.",
                ),
            ),
        ),
        Task(
            asks="runtime",
            text="A {capacity} AGM bank, rated over {rated_hours}, gives {load} at 25 °C. Its Peukert exponent is {exponent}, and you use {usable} of it. How long does it last?",
            draw={
                "capacity": ("100 Ah", "200 Ah", "240 Ah"),
                "chemistry": ("AGM",),
                "load": ("40 A", "60 A", "80 A"),
                "usable": ("50 %",),
                "exponent": ("1.10", "1.12", "1.15"),
            },
            hint="Peukert: the rated time times (capacity over current and rated time) to the power of the exponent. Then take the share you use.",
            slips=(
                Slip(
                    formula="nameplate_time",
                    text="That is charge divided by current. Under a heavy load a lead-acid bank gives less than its label: use Peukert's law.",
                ),
                Slip(
                    formula="usable * (cold_capacity / 3600) / current ** exponent * 3600",
                    text="C/I^k with the 20-hour capacity gives far too little. Refer the law to the rated current: H (C/(I·H))^k.",
                ),
                Slip(
                    inputs={"usable": "100 %"},
                    text="That empties the bank. Only the share you use counts.",
                ),
            ),
        ),
        Task(
            asks="usable_charge",
            text="In winter a {capacity} flooded bank, rated over {rated_hours}, is at {temperature}: divide its capacity by {cold_factor}. It gives {load}, its exponent is {exponent}, and you use {usable}. What charge does it give?",
            draw={
                "capacity": ("110 Ah", "180 Ah", "220 Ah"),
                "chemistry": ("flooded",),
                "load": ("10 A", "15 A", "20 A"),
                "usable": ("50 %",),
                "exponent": ("1.20", "1.25"),
                "temperature": ("0 °C", "5 °C", "10 °C"),
            },
            slips=(
                Slip(
                    inputs={"temperature": "25 °C"},
                    text="That is the charge at 25 °C. In the cold a lead-acid bank gives less.",
                ),
                Slip(
                    formula="usable * cold_capacity",
                    text="That leaves Peukert's law out: above the rated current the bank gives less.",
                ),
                Slip(
                    formula="usable * capacity",
                    text="That is the label's capacity, without the effect of cold and of the heavy load.",
                ),
            ),
        ),
    )
)

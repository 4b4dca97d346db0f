"""Practice for watts-to-amps."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="current",
            text="A {power} load is fed {route} from the bank, which is at {voltage} under load. What current does the bank give?",
            draw={
                "power": ("40 W", "60 W", "90 W", "150 W", "240 W", "350 W", "600 W"),
                "voltage": ("12.2 V", "12.8 V", "24.4 V", "25.6 V", "51.2 V"),
                "route": ("direct",),
            },
            slips=(
                Slip(
                    inputs={"voltage": "12 V"},
                    text="That is on a 12 V bank. The higher the voltage, the less current for the same power.",
                ),
                Slip(
                    formula="power / 120",
                    text="That is the current at household voltage. At the bank the same power needs far more.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="A {power} kettle runs for {hours} through an inverter of {efficiency} efficiency. The bank is at {voltage} meanwhile. What charge is taken from it?",
            draw={
                "power": ("800 W", "1000 W", "1200 W", "1500 W", "1800 W"),
                "hours": ("4 min", "6 min", "10 min", "15 min"),
                "efficiency": ("85 %", "88 %", "91 %"),
                "voltage": ("12.4 V", "12.6 V", "25.2 V"),
                "route": ("inverter",),
                "load_type": ("resistive heat",),
            },
            slips=(
                Slip(
                    formula="charge * factor",
                    text="The inverter's own loss comes from the bank too: divide by its efficiency.",
                ),
                Slip(
                    formula="charge * factor * factor",
                    text="Divide by the efficiency instead of multiplying: the bank gives more than the load takes.",
                ),
                Slip(
                    formula="charge * 60",
                    text="The time is in minutes, but charge is in amp-hours: divide by sixty.",
                ),
                Slip(formula="current * 3600", text="That is the charge of a whole hour."),
            ),
        ),
        Task(
            asks="energy",
            text="An appliance of {power} runs {hours} a day through an inverter of {efficiency} efficiency. What energy does the bank give for it in a day?",
            draw={
                "power": ("45 W", "60 W", "80 W", "120 W", "200 W"),
                "hours": ("2 h", "3 h", "5 h", "8 h"),
                "efficiency": ("82 %", "85 %", "88 %"),
                "route": ("inverter",),
            },
            slips=(
                Slip(
                    formula="energy * factor",
                    text="That is what the appliance takes. The inverter's loss comes on top: divide by its efficiency.",
                ),
                Slip(
                    formula="energy * factor * factor",
                    text="Divide by the efficiency instead of multiplying: the bank gives more than the load takes.",
                ),
            ),
        ),
    )
)

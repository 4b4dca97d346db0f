"""Practice for sun-yield."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="energy",
            text="On a clear day in {month}, {on_plane} fall on a flat panel at {latitude}. The array's label says {array}, a usual day brings {sky} of a clear one, and {losses} are lost on the way. How much energy does it bring in a day?",
            draw={
                "latitude": ("30°", "45°", "52°"),
                "month": ("March", "June", "September"),
                "array": ("100 W", "200 W", "300 W", "600 W"),
                "sky": ("50 %", "60 %", "75 %"),
                "losses": ("14 %", "20 %"),
            },
            slips=(
                Slip(
                    formula="energy / sky",
                    text="That is a day without a cloud. Multiply by the share that a usual day brings.",
                ),
                Slip(
                    formula="energy / (1 - losses)",
                    text="The losses are left out: dirt, shade, wiring and the rest.",
                ),
                Slip(
                    formula="energy * losses / (1 - losses)",
                    text="That is what is lost. What is left is one less the losses.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="On a usual day in {month} at {latitude} an array of {array} brings {energy}. The bank is charged at {voltage}. How many amp-hours is that?",
            draw={
                "latitude": ("40°", "47°", "55°"),
                "month": ("April", "July"),
                "array": ("200 W", "400 W"),
                "voltage": ("13 V", "26 V", "14 V"),
            },
            slips=(
                Slip(
                    inputs={"voltage": "12 V"},
                    text="Divide by the voltage at which the bank is charged, not by the name of the system.",
                ),
            ),
        ),
        Task(
            asks="sun_hours",
            text="At {latitude} a clear day in {month} brings {on_plane} on a flat roof, a usual day {sky} of it. For how many hours of full sun, at {full_sun}, does that stand?",
            draw={
                "latitude": ("-34°", "-20°", "25°", "47°"),
                "month": ("January", "May", "August"),
                "sky": ("45 %", "60 %", "80 %"),
            },
            slips=(
                Slip(
                    formula="sun_hours / sky",
                    text="That holds for a day without a cloud. Take the share of a usual day.",
                ),
            ),
        ),
        Task(
            asks="peak_current",
            text="Panels of {array} charge a bank at {voltage} through a regulator that finds the best voltage. What current can flow at noon in full sun?",
            draw={
                "array": ("200 W", "300 W", "400 W", "600 W"),
                "voltage": ("13 V", "14.4 V", "27 V"),
            },
            slips=(
                Slip(
                    formula="array * sky / voltage",
                    text="At noon under a clear sky the whole label counts: cables and fuse must bear that.",
                ),
            ),
        ),
    )
)

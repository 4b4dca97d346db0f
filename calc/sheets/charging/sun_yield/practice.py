"""Practice for sun-yield."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="energy",
            text="On a clear day in {month}, {on_plane} reach a flat panel at {latitude}. The array is rated {array}, a usual day has {sky} of a clear one, and {losses} are lost. How much energy does it give in a day?",
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
                    text="That is for a cloudless day. Multiply by the share of a usual day.",
                ),
                Slip(
                    formula="energy / (1 - losses)",
                    text="The losses are missing: dirt, shade, wiring and the rest.",
                ),
                Slip(
                    formula="energy * losses / (1 - losses)",
                    text="That is what is lost. What is left is one less the losses.",
                ),
            ),
        ),
        Task(
            asks="charge",
            text="On a usual day in {month} at {latitude} an array of {array} gives {energy}. The bank is charged at {voltage}. How many amp-hours is that?",
            draw={
                "latitude": ("40°", "47°", "55°"),
                "month": ("April", "July"),
                "array": ("200 W", "400 W"),
                "voltage": ("13 V", "26 V", "14 V"),
            },
            slips=(
                Slip(
                    inputs={"voltage": "12 V"},
                    text="Divide by the charging voltage, not by the nominal voltage.",
                ),
            ),
        ),
        Task(
            asks="sun_hours",
            text="At {latitude} a clear day in {month} gives {on_plane} on a flat roof, a usual day {sky} of it. How many hours of full sun, at {full_sun}, is that?",
            draw={
                "latitude": ("-34°", "-20°", "25°", "47°"),
                "month": ("January", "May", "August"),
                "sky": ("45 %", "60 %", "80 %"),
            },
            slips=(
                Slip(
                    formula="sun_hours / sky",
                    text="That is for a cloudless day. Use the share of a usual day.",
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
                    text="At noon under a clear sky the panels give their full rating: cables and fuse must carry that.",
                ),
            ),
        ),
    )
)

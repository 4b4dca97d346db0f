"""Practice for heat-loss."""

from calc.practice.declared import Practice, Slip, Task, steps

PRACTICE = Practice(
    tasks=(
        Task(
            asks="infiltration",
            text="A van of {length} by {width} by {height} inside changes its air {air_changes}. It is {inside} inside and {outside} outside, and air holds {air_heat}. How much heat leaves with the air?",
            draw={
                "length": ("3 m", "3.6 m", "4 m", "5 m"),
                "width": ("1.7 m",),
                "height": ("1.9 m",),
                "air_changes": ("0.5 per hour", "1 per hour", "2 per hour"),
                "inside": ("18 °C", "20 °C"),
                "outside": ("-10 °C", "-5 °C", "5 °C"),
            },
            slips=(
                Slip(
                    formula="infiltration * 3600",
                    text="The changes are per hour: divide by 3600 seconds.",
                ),
                Slip(
                    formula="infiltration * inside / (inside - outside)",
                    text="The difference between inside and outside drives the heat out, not the inside temperature.",
                ),
            ),
        ),
        Task(
            asks="wall_loss",
            text="Walls of {wall_area} have {insulation} of insulation with {conductivity}; the lining is {lining} of plywood with {lining_conductivity}; the steel sheet counts for nothing. Air films: {rsi_wall} and {rse}. It is {inside} inside and {outside} outside. How much do the walls lose?",
            draw={
                "insulation": ("20 mm", "30 mm", "50 mm", "80 mm"),
                "conductivity": ("0.03 W/(m·K)", "0.04 W/(m·K)"),
                "inside": ("18 °C", "20 °C"),
                "outside": ("-15 °C", "-5 °C", "0 °C"),
            },
            slips=(
                Slip(
                    formula="wall_area * conductivity / insulation * rise",
                    text="That leaves out the air films and the lining, which resist as well.",
                ),
                Slip(
                    inputs={"outside": "0.001 °C"},
                    text="The difference counts: from inside to outside, across zero if need be.",
                ),
            ),
        ),
        Task(
            asks="covered_loss",
            text="A van loses {loss}. Its glass, {glazing} of it with {glazing_u}, gets covers of {cover}. It is {inside} inside and {outside} outside. What does it lose then?",
            draw={
                "glazing": ("2 m²", "3 m²", "4 m²"),
                "glazing_u": ("5.8 W/(m²·K)",),
                "cover": ("0.2 m²·K/W", "0.3 m²·K/W", "0.5 m²·K/W"),
                "inside": ("18 °C",),
                "outside": ("-20 °C", "-10 °C"),
            },
            slips=(
                Slip(
                    formula="loss - glass_loss",
                    text="Covers do not stop all of it: they add a resistance to the glass's own.",
                ),
                Slip(
                    formula="loss - glass_loss + glazing * rise / cover",
                    text="Resistances add up. Add the cover's to one over the glass's U-value first.",
                ),
            ),
        ),
        Task(
            asks="heater",
            text="On a night at {outside} a van loses {loss}, and you want {margin} reserve. How much must the heater give?",
            draw={"outside": steps(-20, 4, 4, "°C"), "margin": ("20 %", "30 %", "50 %")},
            slips=(
                Slip(
                    formula="loss",
                    text="That holds the temperature but leaves nothing for wind or warming up.",
                ),
                Slip(
                    formula="loss / (1 - margin)",
                    text="The margin comes on top of the loss; do not divide by what is left.",
                ),
            ),
        ),
    )
)

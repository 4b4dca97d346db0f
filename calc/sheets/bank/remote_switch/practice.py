"""Practice for remote-switch."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="switch_rating",
            text="A hidden motor of {power} runs from a bank at {voltage}. By the published table a contact there is rated {factor} times the steady current. What rating do you look for?",
            draw={
                "power": ("60 W", "120 W", "180 W", "240 W"),
                "voltage": ("12 V", "12.8 V", "24 V", "25.6 V"),
                "kind": ("DC",),
                "load": ("motor",),
            },
            oversize=0.25,
            slips=(
                Slip(
                    formula="line_current",
                    text="That is the steady current. A motor draws more at the start and arcs when switched off, so multiply by the factor.",
                ),
                Slip(
                    formula="sustained",
                    text="A margin of 125 % is for a heater. A motor's factor is larger.",
                ),
            ),
        ),
        Task(
            asks="drop",
            tolerance=0.05,
            text="A relay's coil draws {coil_current}. The switch is {distance} away, and its wire has {per_length}. How much voltage is lost on the way?",
            draw={
                "coil_current": ("0.1 A", "0.15 A", "0.2 A", "0.5 A"),
                "distance": ("2 m", "4 m", "6 m"),
                "series": ("mm2",),
            },
            slips=(
                Slip(
                    formula="drop / 2",
                    text="The current goes to the switch and back: both wires count.",
                ),
                Slip(
                    formula="coil_current * per_length",
                    text="Multiply by the length, out and back.",
                ),
            ),
        ),
        Task(
            asks="held_charge",
            text="A relay's coil draws {coil_current} and is on for {hours} a day. What charge does it use in a day?",
            draw={
                "coil_current": ("0.1 A", "0.15 A", "0.25 A", "1 A"),
                "hours": ("6 h", "10 h", "24 h"),
            },
            slips=(
                Slip(formula="coil_power", text="That is its power. Charge is current times time."),
                Slip(formula="coil_current * 3600", text="It is on for longer than one hour."),
            ),
        ),
    )
)

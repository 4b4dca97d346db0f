"""Practice for wire-drop."""

from calc.practice.declared import Practice, Slip, Task, steps
from calc.sheets.parts.fields import conductor_field

ONE_WAY = "That counts one conductor. The current comes back through a second one: the length counts twice."

PRACTICE = Practice(
    tasks=(
        Task(
            asks="drop",
            tolerance=0.05,
            text="A compressor fridge takes {current} at the end of {length} of {conductor}, measured one way. Warm, each conductor has {per_length}. How much voltage is lost on the way?",
            draw={
                "current": steps(4, 8, 1, "A"),
                "length": steps(3, 7, 0.5, "m"),
                "conductor": ("1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2"),
                "voltage": ("12 V",),
            },
            slips=(
                Slip(formula="drop / 2", text=ONE_WAY),
                Slip(formula="drop * 2", text="That counts the way back twice."),
                Slip(
                    formula="drop_percent * 100",
                    text="That is the share in percent. The question asks for volts.",
                ),
            ),
        ),
        Task(
            asks="drop_percent",
            tolerance=0.05,
            text="A charger draws {current} through {length} of {conductor}, measured one way, on a {voltage} system. Warm, each conductor has {per_length}. What share of the system voltage is lost?",
            draw={
                "current": ("20 A", "25 A", "30 A", "40 A"),
                "length": steps(8, 20, 2, "ft"),
                "conductor": ("10 AWG", "8 AWG", "6 AWG"),
                "voltage": ("12 V", "24 V"),
            },
            slips=(
                Slip(formula="drop_percent / 2", text=ONE_WAY),
                Slip(
                    inputs={"voltage": "12 V"},
                    text="That is the share of 12 V. This system has a higher voltage.",
                ),
                Slip(
                    formula="drop / 100",
                    text="Those are the volts lost. As a share they are compared with the system voltage.",
                ),
                Slip(
                    formula="drop / load_voltage",
                    text="Compare with the system voltage, not with what is left at the load.",
                ),
            ),
        ),
        Task(
            asks="smallest_conductor",
            text="A pump takes {current}, {length} of cable away from the panel, on a {voltage} system; {limit} may be lost. For the drop alone, what is the smallest mm² size that will do? (Flexible copper at {temperature}.)",
            draw={
                "current": ("5 A", "8 A", "10 A", "15 A"),
                "length": steps(2, 8, 1, "m"),
                "voltage": ("12 V",),
                "limit": ("3 %",),
                "conductor": ("2.5 mm2",),
            },
            sizes=conductor_field("10 AWG"),
            sizes_up=2,
            other_sizes={"conductor": "10 AWG"},
            hint="Find the drop that is allowed in volts. Divide it by the current and by twice the length: no metre may have more resistance than that.",
            slips=(
                Slip(times={"length": 0.5}, text=ONE_WAY),
                Slip(
                    inputs={"limit": "10 %"},
                    text="That loses up to 10 %, which is for plain lighting. For a pump the limit is 3 %.",
                ),
                Slip(times={"length": 2}, text="That counts the way back twice."),
            ),
        ),
        Task(
            asks="longest_run",
            text="You have {conductor} for lights that draw {current} on {voltage}, and allow {limit} of drop. Warm, each conductor has {per_length}. How far from the panel can they be, one way?",
            draw={
                "current": ("2 A", "3 A", "4 A", "6 A"),
                "conductor": ("1 mm2", "1.5 mm2", "2.5 mm2"),
                "voltage": ("12 V", "24 V"),
                "limit": ("5 %", "10 %"),
                "length": ("3 m",),
            },
            slips=(
                Slip(
                    formula="longest_run * 2",
                    text="That is the copper out and back. The run is measured one way: half of it.",
                ),
                Slip(formula="longest_run / 2", text="That counts the way back twice."),
            ),
        ),
    )
)

"""Practice for wire-size."""

from calc.electrical.conductors import conductors
from calc.practice.declared import Practice, Slip, Task, steps
from calc.sheets.parts.fields import conductor_field

AWG = tuple(one.name for one in conductors() if one.series == "AWG")
METRIC = tuple(one.name for one in conductors() if one.series == "mm2")
SIZES = conductor_field("10 AWG")

PRACTICE = Practice(
    tasks=(
        Task(
            asks="for_drop",
            text="A load takes {current} over {length}, one way, on {voltage}. {limit} may be lost. What is the smallest AWG size for voltage drop alone, with the copper at {temperature}?",
            draw={
                "current": ("10 A", "15 A", "20 A", "30 A", "40 A"),
                "length": steps(6, 20, 2, "ft"),
                "voltage": ("12 V", "24 V"),
                "limit": ("3 %",),
                "series": ("AWG",),
            },
            choices=AWG,
            sizes=SIZES,
            sizes_up=2,
            other_sizes={"series": "mm2"},
            hint="Find the drop that is allowed in volts. Divide it by the current and by twice the length, then look up the size with that resistance or less.",
            slips=(
                Slip(
                    times={"length": 0.5},
                    text="That counts one conductor. The current comes back through a second one: the length counts twice.",
                ),
                Slip(
                    inputs={"limit": "10 %"},
                    text="That loses up to 10 %, which is for plain lighting.",
                ),
            ),
        ),
        Task(
            asks="for_heat",
            text="A charger puts {current} through its cable for hours. The insulation is rated {insulation}, the air is at {ambient}. What is the smallest mm² size for heat alone, if its fuse must fit between load and wire?",
            draw={
                "current": ("20 A", "30 A", "40 A", "60 A"),
                "insulation": ("60 C", "75 C", "105 C"),
                "series": ("mm2",),
                "length": ("2 m",),
            },
            choices=METRIC,
            sizes=SIZES,
            sizes_up=2,
            other_sizes={"series": "AWG"},
            hint="A fuse needs room above the load. Take the current times its margin, then the first size whose ampacity is that or more.",
            slips=(
                Slip(
                    times={"current": 0.8},
                    text="That can carry only the load, so no fuse fits between. The wire must carry 1.25 times the load.",
                ),
                Slip(
                    inputs={"insulation": "125 C"},
                    text="That is for insulation with a higher temperature rating than this one.",
                ),
            ),
        ),
        Task(
            asks="conductor",
            text="An inverter takes {current} from a {voltage} bank over {length}, one way. {limit} may be lost; the insulation is rated {insulation}, the air is at {ambient}. Which AWG size suits drop, heat and fuse together?",
            draw={
                "current": ("80 A", "100 A", "120 A", "150 A"),
                "voltage": ("12 V", "24 V"),
                "length": ("3 ft", "4 ft", "6 ft", "8 ft"),
                "limit": ("3 %",),
                "insulation": ("75 C", "90 C", "105 C"),
                "series": ("AWG",),
            },
            choices=AWG,
            sizes=SIZES,
            sizes_up=2,
            other_sizes={"series": "mm2"},
            hint="Find the size for the drop and the size for the heat. Take the thicker one, and check that a standard fuse fits.",
            slips=(
                Slip(
                    formula="for_drop",
                    text="That is for drop alone. Here heat needs a larger size.",
                ),
                Slip(
                    formula="for_heat",
                    text="That is for heat alone. Here drop needs a larger size.",
                ),
            ),
        ),
    )
)

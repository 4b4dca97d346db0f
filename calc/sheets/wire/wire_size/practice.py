"""Practice for wire-size."""

from calc.electrical.conductors import conductors
from calc.practice.declared import Practice, Slip, Task, steps

AWG = tuple(one.name for one in conductors() if one.series == "AWG")
METRIC = tuple(one.name for one in conductors() if one.series == "mm2")

PRACTICE = Practice(
    tasks=(
        Task(
            asks="for_drop",
            text="A load takes {current} over {length}, one way, on {voltage}. {limit} may be lost. Which is the thinnest AWG size for the drop alone, with the copper at {temperature}?",
            draw={
                "current": ("10 A", "15 A", "20 A", "30 A", "40 A"),
                "length": steps(6, 20, 2, "ft"),
                "voltage": ("12 V", "24 V"),
                "limit": ("3 %",),
                "series": ("AWG",),
            },
            choices=AWG,
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
            text="A charger puts {current} through its cable for hours. The insulation is rated {insulation}, the air is at {ambient}. Which is the thinnest mm² size for the heat alone, if its fuse must fit between load and wire?",
            draw={
                "current": ("20 A", "30 A", "40 A", "60 A"),
                "insulation": ("60 C", "75 C", "105 C"),
                "series": ("mm2",),
                "length": ("2 m",),
            },
            choices=METRIC,
            slips=(
                Slip(
                    times={"current": 0.8},
                    text="That carries the load and no more, so no fuse fits between. The wire must carry the load and a quarter.",
                ),
                Slip(
                    inputs={"insulation": "125 C"},
                    text="That is for insulation that stands more heat than this one.",
                ),
            ),
        ),
        Task(
            asks="conductor",
            text="An inverter takes {current} from a {voltage} bank over {length}, one way. {limit} may be lost; the insulation is rated {insulation}, the air is at {ambient}. Which AWG size do drop, heat and fuse ask for together?",
            draw={
                "current": ("80 A", "100 A", "120 A", "150 A"),
                "voltage": ("12 V", "24 V"),
                "length": ("3 ft", "4 ft", "6 ft", "8 ft"),
                "limit": ("3 %",),
                "insulation": ("75 C", "90 C", "105 C"),
                "series": ("AWG",),
            },
            choices=AWG,
            slips=(
                Slip(
                    formula="for_drop",
                    text="That is for the drop alone. Here the heat asks for more.",
                ),
                Slip(
                    formula="for_heat",
                    text="That is for the heat alone. Here the drop asks for more.",
                ),
            ),
        ),
    )
)

"""Practice for fuse-choice."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="fuse",
            text="A load of {current} runs for hours on {conductor} that can carry {table_ampacity} with its {insulation} insulation. While charging, the bank reaches {voltage}, and the short-circuit current here is {fault_current}. Small blade fuses should carry at most 75 % of their rating where a larger one fits too. Which standard fuse do you use, or none?",
            draw={
                "current": ("8 A", "12 A", "20 A", "30 A", "40 A"),
                "conductor": ("14 AWG", "10 AWG", "8 AWG", "6 AWG"),
                "insulation": ("60 C", "105 C"),
                "voltage": ("14.6 V",),
                "fuse_place": ("at the battery",),
                "fault_current": ("600 A", "800 A"),
            },
            tolerance=0.0,
            or_none=True,
            hint="The fuse must carry the load for hours, so add its margin. It must not be larger than the ampacity. Take a standard rating between the two.",
            slips=(
                Slip(
                    formula="current",
                    text="A fuse at the load's own current ages and opens without a fault: use at least 1.25 times the load.",
                ),
                Slip(
                    formula="ampacity",
                    text="The ampacity is the upper limit, not the fuse to use: the smallest that lasts with the load protects best.",
                ),
                Slip(
                    inputs={"insulation": "105 C"},
                    text="That needs 105 °C insulation. This cable can carry less.",
                ),
            ),
        ),
        Task(
            asks="lowest",
            text="A load draws {current} for hours. How large must its fuse be at least, before you look at the wire and the standard ratings?",
            draw={
                "current": ("6 A", "9 A", "16 A", "24 A", "35 A", "70 A", "120 A"),
                "conductor": ("4/0 AWG",),
                "insulation": ("105 C",),
            },
            slips=(
                Slip(
                    formula="current",
                    text="A fuse that carries its full rating for hours ages and opens without a fault: use 1.25 times the load.",
                ),
                Slip(
                    formula="current * 1.5",
                    text="The upper limit for the wire's fuse is 1.5 times its ampacity. The load needs 1.25 times its current.",
                ),
                Slip(
                    formula="current * 0.8",
                    text="Eighty percent is the load that a fuse may carry. The other way round, it is 1.25 times the load.",
                ),
            ),
        ),
        Task(
            asks="ampacity",
            text="{conductor} with {insulation} insulation runs in an engine space, where the air is taken as {air}. At 30 °C the table gives {table_ampacity}. What is its ampacity there, by √((T_c − T_a)/(T_c − 30 °C))?",
            draw={
                "conductor": ("12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG"),
                "insulation": ("75 C", "80 C", "90 C"),
                "surroundings": ("inside engine space",),
                "current": ("5 A",),
            },
            hint="The table's value times the factor. Put the insulation's rating as T_c and the air as T_a, both in °C.",
            slips=(
                Slip(
                    inputs={"surroundings": "outside engine space"},
                    text="That is the value at 30 °C. In hotter air the wire reaches its limit at less current.",
                ),
                Slip(
                    formula="table_ampacity * ambient_factor * ambient_factor",
                    text="The square root is missing: heat rises with the square of the current.",
                ),
            ),
        ),
    )
)

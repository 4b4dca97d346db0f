"""Practice for fault-current."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="fault_current",
            text="A bank at {voltage} has {source_resistance} inside. {length} of {conductor} run from it to a panel: at least {cable_least}, out and back, and {joints_total} in the joints. What is the highest current if the far end is shorted?",
            draw={
                "voltage": ("12.8 V", "13.3 V", "26.6 V"),
                "source_resistance": ("2 mΩ", "3 mΩ", "4 mΩ", "6 mΩ"),
                "conductor": ("10 mm2", "16 mm2", "25 mm2", "35 mm2"),
                "length": ("2 m", "3 m", "4 m", "6 m"),
            },
            slips=(
                Slip(
                    formula="voltage / (cable_least + joints_total)",
                    text="The bank's own resistance limits the current too.",
                ),
                Slip(
                    formula="voltage / (source_low + joints_total + cable_least / 2)",
                    text="The fault goes out and back: both conductors count.",
                ),
                Slip(
                    formula="voltage / source_low",
                    text="That is a short at the bank itself. The cable is in the loop as well.",
                ),
            ),
        ),
        Task(
            asks="near_fault",
            text="{batteries} equal batteries are in parallel, each with {source_resistance} and at {voltage}. What current flows if they are shorted at their terminals?",
            draw={
                "voltage": ("12.8 V", "13.3 V"),
                "batteries": ("2", "3", "4"),
                "source_resistance": ("3 mΩ", "4 mΩ", "6 mΩ", "8 mΩ"),
            },
            slips=(
                Slip(
                    inputs={"batteries": "1"},
                    text="That is one battery. All batteries in parallel feed the fault: their currents add.",
                ),
                Slip(
                    formula="voltage / (source_low * batteries * batteries)",
                    text="In parallel the resistance falls with each battery, it does not rise.",
                ),
            ),
        ),
        Task(
            asks="energy_limit",
            text="A cable of {conductor} has {insulation} insulation; k is {k} if it starts warm. What let-through, in A²·s, can it withstand before the insulation is damaged?",
            draw={
                "conductor": ("2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2"),
                "insulation": ("70 C PVC", "90 C XLPE"),
            },
            slips=(
                Slip(formula="k * area", text="The square is missing: (k·S)²."),
                Slip(formula="k * area * area * 1e6", text="k is squared too: (k·S)²."),
            ),
        ),
    )
)

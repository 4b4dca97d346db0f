"""Practice for shore-charge."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="supply_current",
            text="A charger gives {charger} at {voltage} and works at {charger_efficiency}. What current does it draw from a supply of {supply_voltage}, with a power factor of one?",
            draw={
                "charger": ("20 A", "30 A", "50 A", "60 A"),
                "voltage": ("13.8 V", "14.2 V"),
                "charger_efficiency": ("80 %", "90 %"),
                "supply_voltage": ("120 V", "230 V"),
                "supply_limit": ("20 A",),
            },
            slips=(
                Slip(
                    formula="charger",
                    text="Power stays the same, current does not: at the mains the voltage is higher and the current lower.",
                ),
                Slip(
                    formula="supply_current * charger_efficiency ** 2",
                    text="The input is the output plus the loss, so divide by the efficiency.",
                ),
            ),
        ),
        Task(
            asks="supply_load",
            text="A charger that gives {charger} draws {supply_current} from a cable rated {supply_limit}, and other loads draw {other_load}. What share of the rating is in use?",
            draw={
                "charger": ("30 A", "40 A", "50 A"),
                "supply_limit": ("10 A", "15 A", "16 A"),
                "other_load": ("2 A", "3 A", "4 A"),
            },
            slips=(
                Slip(
                    formula="supply_current / supply_limit",
                    text="Everything on the cable counts, not only the charger.",
                ),
                Slip(
                    formula="on_lead / sustained",
                    text="That compares it with the continuous limit. The question is about the rating.",
                ),
            ),
        ),
        Task(
            asks="hours",
            text="An AGM bank of {capacity} at {from_state} gets {charger}. It stores {charge_efficiency} of the charge, and below {to_state} it accepts the charger's full current. How long to {to_state}?",
            draw={
                "capacity": ("200 Ah", "300 Ah", "400 Ah"),
                "chemistry": ("AGM",),
                "charger": ("20 A", "30 A"),
                "from_state": ("30 %", "40 %", "50 %"),
                "to_state": ("70 %", "75 %"),
            },
            slips=(
                Slip(
                    formula="hours * charge_efficiency",
                    text="Not all the charge is stored: divide by the efficiency.",
                ),
                Slip(
                    formula="capacity / charger",
                    text="Only the missing charge counts, not the whole bank.",
                ),
            ),
        ),
    )
)

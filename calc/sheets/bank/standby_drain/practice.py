"""Practice for standby-drain."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="days",
            text="A {capacity} {chemistry} bank at {from_state} is parked with a drain of {drain}. Its self-discharge is {self_discharge}. After how many days is it down to {to_state}? A month is 30.44 days.",
            draw={
                "capacity": ("100 Ah", "200 Ah", "300 Ah"),
                "chemistry": ("AGM", "LFP"),
                "from_state": ("100 %", "90 %"),
                "to_state": ("50 %", "60 %"),
                "drain": ("40 mA", "60 mA", "90 mA", "150 mA"),
                "self_discharge": ("3 %/month", "4 %/month"),
            },
            slips=(
                Slip(
                    formula="may_go / drain",
                    text="Self-discharge counts too. Add it to the drain.",
                ),
                Slip(
                    formula="capacity / (drain + loss * capacity)",
                    text="Only the charge between the two states is available.",
                ),
            ),
        ),
        Task(
            asks="daily",
            text="Alarm, radio memory and a relay together draw {drain} day and night. What charge do they use in a day?",
            draw={"drain": ("25 mA", "60 mA", "85 mA", "120 mA", "250 mA")},
            slips=(
                Slip(formula="drain * day / 2", text="They draw day and night."),
                Slip(formula="drain * day * 30", text="That is for a month."),
            ),
        ),
        Task(
            asks="largest_drain",
            text="A {capacity} AGM bank, full, is left for {away} and may fall to {to_state}. Its self-discharge is {self_discharge}. What is the largest drain allowed? A month is 30.44 days.",
            draw={
                "chemistry": ("AGM",),
                "capacity": ("100 Ah", "200 Ah"),
                "away": ("21 days", "30 days", "45 days"),
                "to_state": ("50 %", "60 %"),
                "self_discharge": ("3 %/month", "4 %/month"),
            },
            slips=(
                Slip(
                    formula="may_go / away",
                    text="That leaves nothing for self-discharge.",
                ),
                Slip(
                    formula="capacity / away - loss * capacity",
                    text="Only the charge above your final state is available.",
                ),
            ),
        ),
    )
)

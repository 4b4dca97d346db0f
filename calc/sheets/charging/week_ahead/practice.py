"""Practice for week-ahead."""

from calc.practice.declared import Practice, Slip, Task

PRACTICE = Practice(
    tasks=(
        Task(
            asks="sun_day",
            text="A clear day in {month} at {latitude} gives {clear_sky} on level ground. This week has {sky} of that, and {losses} are lost between panel and bank. How much can an array of {array} give in a day?",
            draw={
                "month": ("November",),
                "latitude": ("57°",),
                "sky": ("20 %", "30 %", "40 %", "50 %"),
                "tilt": ("0°",),
                "losses": ("14 %",),
                "array": ("100 W", "200 W", "300 W", "400 W"),
            },
            slips=(
                Slip(
                    formula="clear_sky * array * (1 - losses) / standard",
                    text="That is for a cloudless day: use the week's share of it.",
                ),
                Slip(
                    formula="clear_sky * sky * array / standard",
                    text="Subtract the losses between panel and bank.",
                ),
            ),
        ),
        Task(
            asks="daily_use",
            text="A household fridge uses {loads_day} in a day, through an inverter with {efficiency} efficiency and an idle draw of {idle} that stays on day and night. What load on the battery is that in a day?",
            draw={
                "loads": ("fridge:80 W:9.6 h:all:inverter",),
                "efficiency": ("80 %", "85 %", "90 %"),
                "idle": ("10 W", "15 W", "20 W", "30 W"),
                "inverter_on": ("day and night",),
            },
            slips=(
                Slip(
                    formula="loads_day / efficiency",
                    text="The inverter's idle draw comes on top, for all 24 hours.",
                ),
                Slip(
                    formula="loads_day + 24 * 3600 * idle",
                    text="Conversion has a loss: divide the fridge's energy by the efficiency.",
                ),
                Slip(
                    formula="loads_day * efficiency + 24 * 3600 * idle",
                    text="The loss comes on top: divide by the efficiency.",
                ),
            ),
        ),
        Task(
            asks="drive_day",
            text="A charger gives {charger} while the engine runs, and the bank is at {charge_voltage} then. How much can {drive_hours} of driving charge in a day?",
            draw={
                "charger": ("20 A", "30 A", "40 A", "50 A"),
                "drive_hours": ("0.5 h", "1 h", "1.5 h", "2 h"),
            },
            slips=(
                Slip(
                    formula="charger * voltage * drive_hours",
                    text="While it charges the bank's voltage is higher than under load.",
                ),
            ),
        ),
        Task(
            asks="empty_after",
            text="No sun and no driving: loads use {daily_use} in a day, evenly, from an LFP bank of {capacity} at {voltage}, full at the start, of which {usable} is used. After how long is it empty?",
            draw={
                "chemistry": ("LFP",),
                "loads": ("instruments:40 W:24 h",),
                "array": ("0 W",),
                "drive_hours": ("0 h",),
                "capacity": ("100 Ah", "150 Ah", "200 Ah", "300 Ah"),
                "usable": ("70 %", "80 %", "90 %"),
                "voltage": ("12.8 V",),
            },
            hint="Turn the share of the bank that is used into energy. Divide it by the energy the loads take in an hour.",
            slips=(
                Slip(
                    inputs={"usable": "100 %"},
                    text="Only a part of the capacity is used before you call it empty.",
                ),
                Slip(
                    formula="usable * capacity / (daily_use / 86400)",
                    text="Watts are not amps: divide them by the voltage first.",
                ),
            ),
        ),
    )
)

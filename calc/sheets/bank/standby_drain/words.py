"""The working of standby-drain in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.standing import Standing
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[Standing], ...] = (
    Step(of="warmth", source="practice", text="Doubled for each 10 K above 25 °C; no bonus for cold."),
    Step(of="loss", formula="self_discharge * warmth", source="self-discharge", text="What the bank loses with nothing connected."),
    Step(of="may_go", formula="(from_state - to_state) * capacity", text="Between where it starts and where you stop."),
    Step(of="days", formula="may_go / (drain + management + loss * capacity)", source="ohm", text="All act at the same time; charge divided by current is time."),
    Step(of="loss_low", source="self-discharge", text="The lowest published, at this temperature."),
    Step(of="loss_high", source="self-discharge", text="The highest published, at this temperature."),
    Step(of="shortest", formula="min(days, may_go / (drain + management + loss_high * capacity))", source="self-discharge", text="With the highest published self-discharge."),
    Step(of="longest", formula="max(days, may_go / (drain + management + loss_low * capacity))", source="self-discharge", text="With the lowest published self-discharge."),
    Step(of="daily", formula="drain * day", source="ohm", text="Small, but every day."),
    Step(of="taken", formula="drain * days", source="ohm", text="Current times time."),
    Step(of="managed", formula="management * days", source="practice", when=lambda s: s.managed is not None, text="The same, inside the battery."),
    Step(of="own", formula="loss * capacity * days", text="The rest. Together they are the charge that may go."),
    Step(of="back", formula="max(0, from_state - (drain + management) * away / capacity - loss * away)", source="ohm", when=lambda s: s.back is not None, text="The charge used by then, subtracted from the start."),
    Step(of="largest_drain", formula="may_go / away - loss * capacity - management", when=lambda s: s.largest_drain is not None, text="The charge left after self-discharge, spread over the time away."),
    Step(of="freezes", source="acid-freezing", when=lambda s: s.bank.lead_acid, text="Acid gets weaker as a battery empties. By the acid density of a flooded battery; sealed ones usually freeze later."),
)

FINE = Rule[Standing](id="standby-drain.fine", level=Level.FINE, headline="It can be parked for {days} before it is down to {to_state}.")

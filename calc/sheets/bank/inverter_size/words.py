"""The working of inverter-size in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.inverter import InverterNeed
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[InverterNeed], ...] = (
    Step(of="continuous", formula="running / power_factor", source="power-factor", text="Watts over the power factor."),
    Step(of="motor_start", formula="running - motor + start_factor * motor", source="motor-start", when=lambda n: n.motor_start is not None, text="The motor starts while the others run."),
    Step(of="surge_power", formula="max(running, surge, motor_start)", when=lambda n: n.motor_start is not None, text="The larger governs."),
    Step(of="surge_power", formula="max(running, surge)", when=lambda n: n.motor_start is None, text="The larger governs."),
    Step(of="surge_rating", formula="surge_power / power_factor", source="power-factor", text="In a start the power factor is lower than this: take the next larger one if in doubt."),
    Step(of="dc_current", formula="running / (lowest_voltage * efficiency)", source="inverter-input", text="An inverter holds its power: the emptier the bank, the more it takes."),
    Step(of="surge_current", formula="surge_power / (lowest_voltage * efficiency)", source="inverter-input", text="For a moment; the cable's own drop comes on top."),
    Step(of="idle_energy", formula="idle * hours_on", source="ohm", text="With or without a load."),
    Step(of="idle_charge", formula="idle_energy / voltage", source="ohm", text="As the bank counts it."),
    Step(of="day_energy", formula="taken / efficiency + idle_energy", source="ohm", text="The loads, the loss on them, and idling."),
    Step(of="idle_share", formula="idle_energy / day_energy", text="For this share nothing is done."),
    Step(of="day_efficiency", formula="taken / day_energy", text="What the day's work gets of what the bank gives."),
    Step(of="heat", formula="running / efficiency - running", source="device-loss", text="It must leave the locker."),
    Step(of="staggered_power", formula="max(running - can_wait, can_wait)", when=lambda n: n.waiting is not None, text="The one without the other, whichever is larger."),
    Step(of="staggered", formula="staggered_power / power_factor", source="power-factor", when=lambda n: n.waiting is not None, text="If the two are never on together."),
    Step(of="staggered_current", formula="staggered_power / (lowest_voltage * efficiency)", source="inverter-input", when=lambda n: n.waiting is not None, text="In the same way."),
    Step(of="c_rate", formula="dc_current / capacity", source="practice", when=lambda n: n.draw is not None, text="1 C would empty the bank in an hour."),
    Step(of="code_letters", source="code-letters", text="Locked-rotor kV·A for each horsepower (746 W) on the plate. Many plates give the locked-rotor current itself."),
    Step(of="weights", source="weights", text="What each load, as a share of the rating, counts. Made for feeding a grid: an inverter in a van idles far more."),
    )

FINE = Rule[InverterNeed](
    id="inverter-size.fine", level=Level.FINE,
    headline="{continuous} steady and {surge_rating} for a moment, with {current} from the bank.",
)

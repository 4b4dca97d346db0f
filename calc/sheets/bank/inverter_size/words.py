"""The working of inverter-size in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.inverter import InverterNeed
from calc.judge import Level, Rule
from calc.worksheet.declare import Step

STEPS: tuple[Step[InverterNeed], ...] = (
    Step(of="continuous", formula="running / power_factor", source="power-factor", text="Watts divided by the power factor."),
    Step(of="motor_start", formula="running - motor + start_factor * motor", source="motor-start", when=lambda n: n.motor_start is not None, text="The motor starts while the others run."),
    Step(of="surge_power", formula="max(running, surge, motor_start)", when=lambda n: n.motor_start is not None, text="The larger one decides."),
    Step(of="surge_power", formula="max(running, surge)", when=lambda n: n.motor_start is None, text="The larger one decides."),
    Step(of="surge_rating", formula="surge_power / power_factor", source="power-factor", text="During a start the power factor is lower: use the next larger inverter if in doubt."),
    Step(of="dc_current", formula="running / (lowest_voltage * efficiency)", source="inverter-input", text="An inverter keeps its power constant: the lower the bank's voltage, the more current it draws."),
    Step(of="surge_current", formula="surge_power / (lowest_voltage * efficiency)", source="inverter-input", text="For a moment; the cable's own drop comes on top."),
    Step(of="idle_energy", formula="idle * hours_on", source="ohm", text="With or without a load."),
    Step(of="idle_charge", formula="idle_energy / voltage", source="ohm", text="The same as charge from the bank."),
    Step(of="day_energy", formula="taken / efficiency + idle_energy", source="ohm", text="The loads, their losses and the idle draw."),
    Step(of="idle_share", formula="idle_energy / day_energy", text="This share does no work."),
    Step(of="day_efficiency", formula="taken / day_energy", text="The share of the bank's energy that reaches the loads."),
    Step(of="heat", formula="running / efficiency - running", source="device-loss", text="This heat must leave the locker."),
    Step(of="staggered_power", formula="max(running - can_wait, can_wait)", when=lambda n: n.waiting is not None, text="The larger of the two, without the other."),
    Step(of="staggered", formula="staggered_power / power_factor", source="power-factor", when=lambda n: n.waiting is not None, text="If the two are never on together."),
    Step(of="staggered_current", formula="staggered_power / (lowest_voltage * efficiency)", source="inverter-input", when=lambda n: n.waiting is not None, text="In the same way."),
    Step(of="c_rate", formula="dc_current / capacity", source="practice", when=lambda n: n.draw is not None, text="1 C would empty the bank in an hour."),
    Step(of="code_letters", source="code-letters", text="Locked-rotor kV·A for each horsepower (746 W) on the plate. Many plates give the locked-rotor current itself."),
    Step(of="weights", source="weights", text="What each load, as a share of the rating, counts. Made for grid inverters: an inverter in a van idles far more."),
    )

FINE = Rule[InverterNeed](
    id="inverter-size.fine", level=Level.FINE,
    headline="Choose an inverter rated for at least {continuous} and {surge_rating} surge: it draws {current} from the bank.",
)

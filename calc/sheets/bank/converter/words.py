"""The working of converter in words, and what it says when all is well."""

# fmt: off
from calc.electrical.converter import Converter
from calc.judge import Level, Rule
from calc.worksheet.declare import Step


def _derated(c: Converter) -> bool:
    return c.left < 1


def _saves(c: Converter) -> bool:
    return c.copper_saved is not None


def _fuse_in(c: Converter) -> bool:
    return c.input.protection is not None and c.input.protection.fuse is not None


def _fuse_out(c: Converter) -> bool:
    return c.output.protection is not None and c.output.protection.fuse is not None


STEPS: tuple[Step[Converter], ...] = (
    Step(of="load_current", source="ohm", text="As typed, or the load's power divided by {output_voltage}."),
    Step(of="output_power", formula="output_voltage * load_current", source="ohm", text="Power of the load."),
    Step(of="loss", formula="output_power * (1 / efficiency - 1)", source="charger-balance", text="The loss, as heat in the converter."),
    Step(of="input_power", formula="output_power / efficiency", source="charger-balance", text="Both together, whatever the bank's voltage."),
    Step(of="input_current", formula="input_power / lowest", source="ohm", text="The power is constant, so the current is highest at the lowest voltage."),
    Step(of="left", formula="max(1 - derating * (ambient - rated_to), 0)", source="practice", when=_derated, text="It loses {derating} for each degree above {rated_to}."),
    Step(of="available", formula="rated", when=lambda c: not _derated(c), text="The air is cool enough for its full rating."),
    Step(of="available", formula="rated * left", when=_derated, text="Its output in air of {ambient}."),
    Step(of="standby_current", source="ohm", text="As typed, or its power divided by {nominal}."),
    Step(of="idle_time", formula="on_hours - load_hours", when=lambda c: c.on_time > c.load_time, text="Switched on without its load."),
    Step(of="idle_time", source="practice", when=lambda c: c.on_time <= c.load_time, text="It is on no longer than its load runs."),
    Step(of="standby_charge", formula="standby_current * idle_time", text="Wasted from the bank."),
    Step(of="lost", formula="loss * load_hours + standby_charge * nominal", source="charger-balance", text="Under load and idle together, at the bank's nominal voltage."),
    Step(of="input_cable", when=lambda c: c.input.sized.chosen is not None, text="By wire size: {limit} of the bank's voltage at {input_current}, and a fuse of 1.25 times that."),
    Step(of="input_fuse", source="fuse-ratings", when=_fuse_in, text="By fuse choice: rated for {highest} d.c., able to break {fault_current}."),
    Step(of="output_cable", when=lambda c: c.output.sized.chosen is not None, text="The same for {load_current} at {output_voltage}."),
    Step(of="output_fuse", source="fuse-ratings", when=_fuse_out, text="For the same fault: a failed converter may connect the bank directly."),
    Step(of="system_current", formula="power / lowest", source="ohm", text="The largest load of the bank itself, at the lowest voltage."),
    Step(of="ideal_share", formula="(base / nominal) ** 2", source="ohm", when=lambda c: c.ideal_share is not None, text="Half the current through twice the allowed resistance: by drop alone, copper falls with the square of the voltage."),
    Step(of="copper_here", source="copper-iacs", when=lambda c: c.here.copper is not None, text="Length out and back, times the area of the size below, at 8890 kg/m³."),
    Step(of="copper_12", source="copper-iacs", when=lambda c: c.at_12.copper is not None, text="The same load over the same length from 12 V, with the same share of drop."),
    Step(of="copper_saved", formula="copper_12 - copper_here", when=lambda c: _saves(c) and bool(c.copper_saved), text="Sizes come in steps, and heat and fuses matter too, so the real share differs."),
    Step(of="copper_saved", source="practice", when=lambda c: _saves(c) and not c.copper_saved, text="The same size is enough at both voltages."),
    Step(of="systems", text="The same power, length and share of drop at each system voltage, each cable and fuse by wire size."),
)

FINE = Rule[Converter](
    id="converter.fine", level=Level.FINE,
    headline="The converter can supply the load: {input_current} in at {feed.lowest}, {loss} lost as heat.",
)

"""The working of heater-night in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.flame import HeatSource
from calc.comfort.heaters import HeaterNight
from calc.judge import Level, Rule
from calc.sheets.parts.comfort import CO_STEP, burns, night_steps
from calc.worksheet.declare import Step

WAYS: dict[str, str] = {
    HeatSource.DIESEL: "diesel",
    HeatSource.PETROL: "petrol",
    HeatSource.PROPANE: "propane",
    HeatSource.ELECTRIC: "electric, directly from the bank",
    HeatSource.INVERTER: "electric, through an inverter",
}

STEPS: tuple[Step[HeaterNight], ...] = (
    *night_steps("starts * start_energy", "Of the bank, before you call it empty."),
    Step(of="density", source="fuel-density", when=burns, text="Of liquid {fuel}."),
    Step(of="fuel_mass", formula="fuel_used * density", when=burns, text="Bottles are sold by mass."),
    Step(of="electric_share", formula="electric_charge / gives", text="More than 100 % means the bank cannot do it in one night."),
    Step(of="inverter_share", formula="inverter_charge / gives", text="The same through an inverter."),
    Step(of="air_share", source="atmosphere", when=lambda n: burns(n) and n.altitude > 0, text="At {altitude} the air has this share of its oxygen."),
    Step(of="compared", source="practice", text="Each fuel with its usual efficiency; yours with the one above."),
    CO_STEP,
)

FINE = Rule[HeaterNight](
    id="heater-night.fine", level=Level.FINE,
    headline="{fuel_used} of {fuel} and {charge}. Electric heat would take {electric_charge} directly, {inverter_charge} by inverter.",
)

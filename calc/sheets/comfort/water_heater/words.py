"""The working of water-heater in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.water import HotWater, WaterHeat
from calc.judge import Level, Rule
from calc.sheets.parts.comfort import CO_STEP, burns
from calc.worksheet.declare import Step


def _hot(water: HotWater) -> bool:
    return water.tank.time is not None


def _on_bank(water: HotWater) -> bool:
    return water.way is WaterHeat.BANK


STEPS: tuple[Step[HotWater], ...] = (
    Step(of="rise", formula="to - cold", text="A difference of temperatures."),
    Step(of="heat", formula="density * volume * specific * rise", source="heat-in-water", text="Proportional to litres and degrees."),
    Step(of="taken", formula="power / efficiency", when=_on_bank, text="The element's output divided by the efficiency."),
    Step(of="taken", formula="power", when=lambda w: not _on_bank(w), text="Before losses."),
    Step(of="into", formula="power", when=_on_bank, text="The element's whole output reaches the water."),
    Step(of="into", formula="power * efficiency", when=lambda w: not _on_bank(w), text="The part that reaches the water."),
    Step(of="time", formula="heat / (into - loss)", source="heat-in-water", when=_hot, text="The hot tank's loss is subtracted from the start, so the time is slightly too long."),
    Step(of="keeping", formula="loss * hours / efficiency", text="For each hour it stays hot."),
    Step(of="energy", formula="taken * time + keeping", when=_hot, text="Heating and keeping hot together."),
    Step(of="current", formula="taken / voltage", source="ohm", when=lambda w: w.electric, text="In the cable from the supply."),
    Step(of="current", formula="draw / voltage", source="ohm", when=lambda w: not w.electric, text="Of pump, fan and controls."),
    Step(of="charge", formula="energy / voltage", source="ohm", when=lambda w: _on_bank(w) and _hot(w), text="All of it from the bank."),
    Step(of="charge", formula="draw * (time + hours) / voltage", source="ohm", when=lambda w: not w.electric and _hot(w), text="Only to run it."),
    Step(of="gives", formula="capacity * usable", when=lambda w: w.way is not WaterHeat.SHORE, text="Before you call the bank empty."),
    Step(of="bank_share", formula="charge / gives", when=lambda w: w.drawn is not None, text="All other loads come on top."),
    Step(of="heating", source="fuel-heat", when=burns, text="{fuel}, with the water in the exhaust as steam."),
    Step(of="fuel_used", formula="energy / heating", source="fuel-heat", when=lambda w: burns(w) and _hot(w), text="The total energy is burnt as fuel."),
    CO_STEP,
)

FINE_WITHOUT_BANK = Rule[HotWater](
    id="water-heater.fine-without-bank", level=Level.FINE, when=lambda w: w.drawn is None,
    headline="Hot in {time}: {energy} in all, nothing from the bank.",
)
FINE = Rule[HotWater](
    id="water-heater.fine", level=Level.FINE, when=lambda w: w.drawn is not None,
    headline="Hot in {time}: {energy} in all, and {charge} of the bank's {capacity}.",
)

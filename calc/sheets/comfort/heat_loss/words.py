"""The working of heat-loss in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.comfort.cold_night import ColdNight
from calc.judge import Level, Rule
from calc.sheets.parts.comfort import CO_STEP, burns, night_steps
from calc.worksheet.declare import Step

STEPS: tuple[Step[ColdNight], ...] = (
    Step(of="rise", formula="inside - outside", text="The difference that drives the heat out."),
    Step(of="plane", formula="length * width", text="Roof and floor alike."),
    Step(of="wall_area", formula="2 * (length + width) * height - glazing", text="Four walls less the glazing."),
    Step(of="volume", formula="length * width * height", text="Furniture is not subtracted."),
    Step(of="wall_u", formula="1 / (rsi_wall + skin / skin_conductivity + insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946",
         text="Resistances in series add up: air film, lining, {material}, body sheet, air film. Heat goes sideways."),
    Step(of="roof_u", formula="1 / (rsi_roof + skin / skin_conductivity + insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946", text="The same layers; heat goes up."),
    Step(of="floor_u", formula="1 / (rsi_floor + skin / skin_conductivity + floor_insulation / conductivity + lining / lining_conductivity + rse)", source="iso-6946", text="Heat goes down, with open air below."),
    Step(of="bare_u", formula="1 / (rsi_wall + skin / skin_conductivity + rse)", source="iso-10456", text="Steel has almost no thermal resistance: only the air films count."),
    Step(of="wall_loss", formula="wall_u * wall_area * rise", source="iso-6946", text="Conductivity of {material}: {conductivity}. Without ribs."),
    Step(of="roof_loss", formula="roof_u * plane * rise", source="conductivity", text="Without ribs."),
    Step(of="floor_loss", formula="floor_u * plane * rise", source="iso-6946", text="Without ribs."),
    Step(of="bridges", formula="thermal_bridge * (wall_loss + roof_loss + floor_loss)", source="practice", text="A share added for metal that crosses the insulation."),
    Step(of="glass_loss", formula="glazing_u * glazing * rise", source="iso-6946", text="Uncovered."),
    Step(of="conduction", formula="wall_loss + roof_loss + floor_loss + bridges + glass_loss", text="All heat through the shell."),
    Step(of="infiltration", formula="air_heat * air_changes * volume * rise", source="mackay-air", text="Each change of air carries its heat out."),
    Step(of="cold_air", source="ideal-gas", text="By its density at {outside} and 1006 J/(kg·K), dry and at sea level."),
    Step(of="denser", formula="max(infiltration * (cold_air / air_heat - 1), 0)", source="ideal-gas", text="The round value is for mild air; this is added for the cold."),
    Step(of="loss", formula="conduction + infiltration + denser", text="The heat to replace, all night."),
    Step(of="heater", formula="loss * (1 + margin)", source="practice", text="With the margin you chose."),
    Step(of="low", formula="wall_loss + roof_loss + floor_loss + glass_loss + infiltration + denser", text="If no metal crossed the insulation."),
    Step(of="high", formula="max(loss, (1 - ribs) * (wall_loss + roof_loss + floor_loss) + ribs * bare_u * (wall_area + 2 * plane) * rise + glass_loss + infiltration + denser)", source="iso-6946-upper",
         text="If that share of the area were bare sheet, and no less than with the share added. Ribs also draw heat from beside them, so the real loss can be higher."),
    Step(of="to_buy", formula="max(heater, high)", text="With the margin, and enough if the ribs are bare."),
    Step(of="cover_u", formula="1 / (1 / glazing_u + cover)", source="iso-6946", text="A close cover adds its resistance."),
    Step(of="covered_loss", formula="loss - (glazing_u - cover_u) * glazing * rise", text="The loss with every window covered."),
    Step(of="people_heat", formula="people * person", source="metabolic", text="A sleeper gives about 40 W/m² over 1.8 m² of body, 72 W, of which the moisture does not warm the air."),
    Step(of="night_loss", formula="max(loss - people_heat, 0)", text="It helps at night. The heater is still chosen without it."),
    Step(of="fresh", formula="air_changes * volume / people", when=lambda n: n.sleepers.fresh is not None, text="Outside air for each of them."),
    Step(of="store", formula="contents * wood_heat", source="iso-10456", text="The fit-out counted as timber."),
    Step(of="rate", formula="loss / rise", text="Loss for each degree."),
    Step(of="time_constant", formula="store / rate", source="lumped", text="After this time the van is about two thirds of the way to the temperature the heater could reach at full power."),
    Step(of="warm_share", formula="loss / power", text="Share of {power}, the heater output used."),
    Step(of="warm_up", formula="time_constant * ln(1 / (1 - warm_share))", source="lumped", when=lambda n: n.warming.time is not None, text="Calculated as one mass: the air feels warm sooner, the walls stay cold longer."),
    *night_steps("start_energy", "Of the bank, before you call it empty."),
    Step(of="warm_fuel", formula="power * warm_up / (heating * efficiency)", source="fuel-heat", when=lambda n: n.warming.fuel is not None, text="The heater at full power until the cold van is warm, before the {hours} begin."),
    Step(of="warm_charge", formula="draw * warm_up / voltage", source="ohm", when=lambda n: burns(n) and n.warming.charge is not None, text="To run the heater meanwhile."),
    Step(of="warm_charge", formula="power * warm_up / (efficiency * voltage)", source="ohm", when=lambda n: not burns(n) and n.warming.charge is not None, text="The same from the bank."),
    Step(of="air_share", source="atmosphere", when=lambda n: burns(n) and n.altitude > 0, text="At {altitude} the air has this share of its oxygen."),
    CO_STEP,
)

FINE_TO_BUY = Rule[ColdNight](
    id="heat-loss.fine-to-buy", level=Level.FINE, when=lambda n: n.size.output is None,
    headline="Choose a heater of at least {to_buy}. {hours} take {fuel_used} of {fuel} and {charge}.",
)
FINE = Rule[ColdNight](
    id="heat-loss.fine", level=Level.FINE, when=lambda n: n.size.output is not None,
    headline="{power} is enough: the van loses {loss}. {hours} take {fuel_used} of {fuel} and {charge}.",
)

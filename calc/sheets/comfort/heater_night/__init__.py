"""heater-night: fuel or battery?"""

# fmt: off
from dataclasses import replace

from calc.comfort.rules import flame as of_flames
from calc.comfort.rules import heaters as of_heaters
from calc.energy.rules import draw as of_draws
from calc.energy.rules import loads as of_loads
from calc.sheets.comfort.heater_night.calculate import calculate
from calc.sheets.comfort.heater_night.words import FINE, STEPS, WAYS
from calc.sheets.parts import comfort
from calc.units.kinds import CHARGE, COUNT, ENERGY, LENGTH, NUMBER, RATIO, TIME, heat
from calc.worksheet.declare import Placed, placed
from calc.worksheet.fields import Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Bars, Limit, RowsOf
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="heater-night",
    title="Heater night",
    question="How much fuel or charge does a warm night take?",
    about="Litres and amp-hours for a night of heat, and how to keep it safe.",
    calculate=calculate,
    picture=Bars(
        rows=RowsOf("compared", "way", "charge"), limits=(Limit("The bank gives", "gives"),),
        caption="What the same night takes from the bank, by way of heating",
    ),
    fields=(
        Quantity(id="loss", label="Heat needed", symbol="P", kinds=(heat.HEAT,), default="900 W", low="10 W", high="20 kW", hint="The van's heat loss: see heat loss."),
        Quantity(id="hours", label="Hours of heating", symbol="t", kinds=(TIME,), default="9 h", low="0.1 h", high="336 h", hint="The whole heating time."),
        comfort.HEAT_FROM,
        comfort.EXHAUST,
        comfort.ALARM,
        *(replace(one, advanced=True) for one in (comfort.DRAW, comfort.BANK_CHEMISTRY, comfort.VOLTAGE_FIELD, comfort.BANK, comfort.USABLE)),
        comfort.HEATER_EFFICIENCY,
        Quantity(id="starts", advanced=True, label="Starts in that time", symbol="k", kinds=(COUNT,), default="1", low="0", high="200", hint="Each uses charge for the glow plug."),
        Quantity(id="start_energy", advanced=True, label="Energy of a start", symbol="E_s", kinds=(ENERGY,), default="10 Wh", low="0 Wh", high="100 Wh", hint="Glow plug and cool-down (no source)."),
        Quantity(**comfort.BURNS, id="altitude", advanced=True, label="Altitude", symbol="h", kinds=(LENGTH,), default="0 m", low="0 m", high="6000 m", hint="Above sea level: in thin air a heater soots."),
    ),
    results=(
        comfort.FUEL_USED,
        comfort.CHARGE_TAKEN,
        comfort.ELECTRIC_CHARGE,
        comfort.INVERTER_CHARGE,
        Output(id="fuel_mass", label="Fuel, by mass", symbol="m", kind=heat.MASS, hide_if_none=True, at="heating.fuel_mass"),
        comfort.BANK_SHARE,
        Output(id="electric_share", label="Electric directly from the bank, share of the usable bank", symbol="s_e", kind=RATIO, at="heating.direct.share"),
        Output(id="inverter_share", label="Electric through an inverter, share of the usable bank", symbol="s_i", kind=RATIO, at="heating.by_inverter.share"),
        Output(id="compared", label="The same night by each type of heater", at="routes"),
        comfort.CO_POINTS,
    ),
    intermediates=(
        *comfort.NIGHT_BETWEEN,
        Output(id="density", label="Density of the fuel", symbol="ρ", kind=heat.DENSITY, at="heating.fuel.density"),
        Output(id="litre_in_banks", label="A litre of diesel, in full banks", kind=NUMBER, digits=2, needs_step=False, at="heating.litre_in_banks"),
        Output(id="air_share", label="Air pressure against sea level", symbol="p", kind=RATIO),
    ),
    steps=STEPS,
    rules=(
        *comfort.FLAME_STOPS,
        Placed(rule=of_draws.BEYOND_BANK, at="heating.draw", headline="Not enough: {hours} take {charge}, and the bank gives {gives}."),
        Placed(rule=of_loads.ALL_BECOMES_HEAT, at="heating.from_bank", headline="Heat with fuel: {hours} take {charge}, {bank_share} of the usable bank."),
        Placed(rule=of_flames.UNCHECKED, at="flame", headline="Check exhaust, combustion air and alarm first. The night takes {fuel_used} of {fuel} and {charge}."),
        of_heaters.THIN_AIR_FLAME,
        Placed(rule=of_heaters.BEYOND_USUAL, at="heating.loss", headline="Insulate, or check the loss: {loss} is more than most van heaters give."),
        comfort.LITTLE_LEFT_BY_HEATER,
        FINE,
        *comfort.NIGHT_ADVICE,
        *placed("heating", of_heaters.BELOW_LOWEST_STEP),
        Placed(rule=of_draws.HEAT_BEYOND_BANK, at="heating.direct", text="Electric heat from the bank would take {electric_charge} directly, {inverter_charge} through an inverter, and the bank gives {gives}. Use electric heat on shore power only."),
        *placed("flame", of_heaters.WINTER_GRADE),
    ),
    valid="Steady heat through the night. A heater on its lowest step, or one that starts often, uses more fuel and charge.",
    summary="{fuel_used} and {charge}",
    summary_none="{charge} from the bank",
    keep_distinct=(("charge", "gives"),),
    older_defaults=({**comfort.OLDER_BANK, **comfort.OLDER_FLAME},),
    tables=(
        Table(of="compared", columns=(
            Output(id="way", label="Heat from", words=WAYS), Output(id="fuel", label="Fuel", kind=heat.VOLUME), Output(id="mass", label="By mass", kind=heat.MASS),
            Output(id="charge", label="From the bank", kind=CHARGE), Output(id="share", label="Share of your use", kind=RATIO))),
        comfort.CO_TABLE,
    ),
)

"""water-heater: what does hot water cost?"""

# fmt: off
from dataclasses import replace
from typing import Any

from calc.comfort.flame import HeatSource
from calc.comfort.rules import flame as of_flames
from calc.comfort.rules import water as of_water
from calc.comfort.water import DENSITY, SPECIFIC_HEAT, MixingValve, WaterHeat
from calc.energy.rules import bank as of_banks
from calc.energy.rules import draw as of_draws
from calc.energy.rules import loads as of_loads
from calc.sheets.comfort.water_heater.calculate import calculate, onward
from calc.sheets.comfort.water_heater.words import FINE, FINE_WITHOUT_BANK, STEPS
from calc.sheets.parts import comfort
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    ENERGY,
    POWER,
    RATIO,
    RISE,
    TEMPERATURE,
    TIME,
    VOLTAGE,
    heat,
)
from calc.worksheet.declare import Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.outputs import Output
from calc.worksheet.pictures import Parts
from calc.worksheet.work import Worksheet

_EFFICIENCY: dict[str, str] = {WaterHeat.BANK: "100 %", WaterHeat.SHORE: "100 %", WaterHeat.FUEL: "75 %", WaterHeat.ENGINE: "100 %"}
_VOLTAGE: dict[str, str] = {WaterHeat.BANK: "12.8 V", WaterHeat.SHORE: "120 V", WaterHeat.FUEL: "12.8 V", WaterHeat.ENGINE: "12.8 V"}
_DEAR = "Hot in {time} for {charge}, {bank_share} of the usable bank, at {current}."
_IF_FUEL, _IF_SHORE = ("way", WaterHeat.FUEL), ("way", WaterHeat.SHORE)
_FROM_BANK: dict[str, Any] = {"only_if": ("way", WaterHeat.BANK), "or_if": (WaterHeat.FUEL, WaterHeat.ENGINE)}


WORKSHEET = Worksheet(
    id="water-heater",
    title="Water heater",
    question="How much energy does hot water take?",
    about="Time, energy, charge or fuel to heat water and keep it hot.",
    calculate=calculate,
    picture=Parts(
        parts=(("heat", "Into the water"), ("keeping", "To keep it hot")), whole=("energy", "Taken in all"), rest="Lost",
        caption="Where the energy goes",
    ),
    fields=(
        Quantity(id="volume", label="Water", symbol="V", kinds=(heat.VOLUME,), default="10 L", low="0.1 L", high="500 L", hint="In the tank or kettle; a short shower takes 10 L."),
        Quantity(id="from", advanced=True, label="Cold water", kinds=(TEMPERATURE,), default="10 °C", low="0 °C", high="90 °C", hint="As it comes from the tank: near freezing in winter."),
        Quantity(id="to", label="Hot water", symbol="T_2", kinds=(TEMPERATURE,), default="45 °C", low="5 °C", high="95 °C", hint="45 °C is hot for hands; mixed with cold it goes further."),
        Choice(id="way", label="Heat from", of=WaterHeat, default=WaterHeat.BANK, options=(Option(WaterHeat.BANK, "element on the bank"), Option(WaterHeat.SHORE, "element on shore power"), Option(WaterHeat.FUEL, "fuel"), Option(WaterHeat.ENGINE, "engine heat")), hint="What makes the heat."),
        Quantity(id="power", label="Power", symbol="P", kinds=(POWER,), default="500 W", low="10 W", high="20 kW", hint="Of the element, the burner or the coolant."),
        Quantity(id="efficiency", advanced=True, label="Share that reaches the water", symbol="η", kinds=(RATIO,), low="10 %", high="100 %",
                 default_by=("way", _EFFICIENCY), hint="Element directly 100 %, by inverter 88 %, burner 75 % (no source)."),
        Quantity(id="loss", advanced=True, label="Loss while hot", symbol="P_l", kinds=(heat.HEAT,), default="15 W", low="0 W", high="1000 W", hint="10 to 30 W for a small insulated tank (no source)."),
        Quantity(id="hours", advanced=True, label="Kept hot for", symbol="t_h", kinds=(TIME,), default="2 h", low="0 h", high="168 h", hint="After it is hot."),
        Quantity(id="voltage", label="Voltage", symbol="U", kinds=(VOLTAGE,), low="6 V", high="300 V", default_by=("way", _VOLTAGE), hint="The bank's under load, up to 60 V; for shore power the mains."),
        Choice(id="mixing_valve", advanced=True, since=3, before=MixingValve.UNKNOWN, label="Mixing valve", of=MixingValve, default=MixingValve.UNKNOWN, options=(Option(MixingValve.FITTED), Option(MixingValve.MISSING, "not fitted"), Option(MixingValve.UNKNOWN, "not known")), hint="Between tank and taps: limits the temperature."),
        *(replace(one, advanced=True, **_FROM_BANK) for one in (comfort.BANK_CHEMISTRY, comfort.BANK, comfort.USABLE)),
        Quantity(id="supply_limit", only_if=_IF_SHORE, label="Shore supply rated for", symbol="I_s", kinds=(CURRENT,), default="15 A", low="2 A", high="63 A", hint="Of the breaker or the cable, whichever is lower."),
        Choice(id="fuel", only_if=_IF_FUEL, label="Fuel", of=HeatSource, default=HeatSource.PROPANE, options=comfort.BURNT, hint="Propane means bottled gas."),
        replace(comfort.EXHAUST, only_if=_IF_FUEL, or_if=()),
        replace(comfort.ALARM, only_if=_IF_FUEL, or_if=()),
        Quantity(id="draw", only_if=_IF_FUEL, or_if=(WaterHeat.ENGINE,), advanced=True, label="Draw of pump or burner", symbol="P_d", kinds=(POWER,), default="20 W", low="0 W", high="500 W", hint="With fuel or engine heat, all the time it is on."),
    ),
    results=(
        Output(id="time", label="Time to get hot", symbol="t", kind=TIME, at="tank.time"),
        Output(id="energy", label="Total energy", symbol="E", kind=ENERGY, at="tank.energy"),
        replace(comfort.CHARGE_TAKEN, hide_if_none=True, at="drawn.charge"),
        Output(id="current", label="Current while it heats", symbol="I", kind=CURRENT),
        replace(comfort.BANK_SHARE, hide_if_none=True, at="drawn.share"),
        replace(comfort.FUEL_USED, at="fuel_used"),
        comfort.CO_POINTS,
        Output(id="moves", label="Go on with", hide_if_none=True, needs_step=False, find=onward),
    ),
    intermediates=(
        Output(id="cold", label="Water at the start", symbol="T_1", kind=TEMPERATURE, at="tank.cold"),
        Output(id="rise", label="Temperature rise", symbol="ΔT", kind=RISE, at="tank.rise"),
        Output(id="density", label="Density of water", symbol="ρ", kind=heat.DENSITY, digits=4, find=comfort.constant(DENSITY)),
        Output(id="specific", label="Specific heat of water", symbol="c", kind=heat.SPECIFIC_HEAT, digits=4, find=comfort.constant(SPECIFIC_HEAT)),
        Output(id="heat", label="Heat in the water", symbol="E_w", kind=ENERGY, at="tank.heat"),
        Output(id="taken", label="Power drawn", symbol="P_t", kind=heat.HEAT, at="tank.taken"),
        Output(id="into", label="Power into the water", symbol="P_w", kind=heat.HEAT, at="tank.into"),
        Output(id="keeping", label="Energy to keep it hot", symbol="E_k", kind=ENERGY, at="tank.keeping"),
        Output(id="gives", label="Usable charge of the bank", symbol="Q_u", kind=CHARGE, at="bank.gives"),
        Output(id="heating", label="Lower heating value", symbol="H", kind=heat.ENERGY_DENSITY, digits=4, at="burnt.heating"),
    ),
    steps=STEPS,
    rules=(
        *comfort.FLAME_STOPS,
        *placed("tank", of_water.NEVER_HOT),
        *placed("shore", of_water.BEYOND_SUPPLY),
        *placed("drawn", of_draws.BEYOND_BANK),
        Placed(rule=of_flames.UNCHECKED, at="flame", headline="Check exhaust, combustion air and alarm first. Hot in {time} with {fuel_used} of {fuel}."),
        Placed(rule=of_water.HALF_OF_SUPPLY_TAKEN, at="shore", headline="Switch other loads off: {current} is more than half of the shore supply. Hot in {time}."),
        *placed("tank", of_water.STALE),
        of_water.NO_VALVE, of_water.SCALDS,
        *placed("element_draw", of_banks.BEYOND_ANY_BANK, of_banks.HEAVY_LOAD),
        Placed(rule=of_loads.ALL_BECOMES_HEAT, at="heat_from_bank", headline=_DEAR),
        Placed(rule=of_draws.LITTLE_TO_SPARE, at="burner_draw", headline="Leave a reserve: heating takes {charge}, {bank_share} of the usable bank."),
        FINE_WITHOUT_BANK,
        FINE,
        of_water.IDLING_ENGINE,
        *comfort.FLAME_ADVICE,
        *placed("burner_draw", of_draws.LARGE_DRAW),
        comfort.inverter_kills("element"),
        *placed("element", of_loads.LOOSE_JOINT_HEATS, of_water.RUN_DRY),
        of_water.SWITCH_WITHIN_REACH,
        *placed("shore", of_water.MAINS_AND_WATER),
        of_water.MIXING_VALVE,
        *placed("tank", of_water.LEGIONELLA, of_water.RELIEF_VALVE),
        of_water.AS_HOT_AS_COOLANT, of_water.COOLANT,
        *placed("tank", of_water.CHECK_FIGURE),
    ),
    valid="A well mixed tank, steady power, no boiling, no water drawn while it heats.",
    summary="hot in {time}, {energy}",
    summary_none="never gets hot",
    older_defaults=({"usable": "50 %", **comfort.OLDER_FLAME}, {}),
    tables=(comfort.CO_TABLE,),
)

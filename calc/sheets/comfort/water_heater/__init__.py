"""water-heater: what does hot water cost?"""

from dataclasses import dataclass, replace
from types import SimpleNamespace

from calc.comfort import heaters, water
from calc.sheets.parts.comfort import (
    ALARM,
    BANK,
    BANK_SHARE,
    BURNT,
    CHARGE_TAKEN,
    CO_POINTS,
    CO_STEP,
    CO_TABLE,
    EXHAUST,
    FLAME_STOPS,
    FUEL_USED,
    ONE_BATTERY,
    USABLE,
    burns,
    flame_remarks,
    inverter_remark,
    unchecked,
)
from calc.units.compare import at_least, at_most
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
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Problem, Quantity
from calc.worksheet.next_steps import Move
from calc.worksheet.work import Worksheet

BY_BANK, SHORE, FUEL, ENGINE = "bank", "shore", "fuel", "engine"
WARY, SCALDS = 45.0, 48.0  # °C, from which care is needed, from which skin burns in minutes: common practice, no source
GROWS, STORED = 20.0, 60.0  # °C from which legionella grows, and to store hot water at: UK code L8
MOST, LEAST = 60.0, 100.0  # V, the most of a bank and the least of a mains supply
STANDS = 24 * 3600.0  # s heating and kept lukewarm before the sheet warns: common practice, no source
HALF = 0.5  # of a supply, from which little room is left for the rest: common practice, no source


@dataclass(frozen=True, kw_only=True)
class WaterHeater:
    """Time [s], energy [J], charge [A·s] and current [A] of hot water; None where it never gets hot."""

    cold: float
    rise: float
    density: float
    specific: float
    heat: float
    taken: float
    into: float
    time: float | None
    keeping: float
    energy: float | None
    current: float
    charge: float | None
    gives: float
    bank_share: float | None
    heating: float | None
    fuel_used: float | None
    co_points: tuple[heaters.Point, ...] | None
    electric: bool
    flame: bool
    moves: tuple[Move, ...] | None


def run(
    *, volume: float, from_: float, to: float, power: float, way: str, efficiency: float, loss: float, hours: float,
    voltage: float, capacity: float, usable: float, supply_limit: float, fuel: str, exhaust: str, alarm: str, draw: float,
) -> WaterHeater:
    """Return what it takes to heat `volume` [m³] from `from_` to `to` [°C] and keep it for `hours` [s]."""
    if not to > from_:
        raise Problem("to", "Hot water must be warmer than the cold water it starts from.")
    if way == SHORE and not at_least(voltage, LEAST):
        raise Problem("voltage", "Voltage must be that of the shore supply, 100 V or more, like 120 V.")
    if way != SHORE and not at_most(voltage, MOST):
        raise Problem("voltage", "Voltage must be the bank's own voltage, up to 60 V, like 12.8 V.")
    rise, flame, electric = to - from_, way == FUEL, way in (BY_BANK, SHORE)
    needed = water.stored(volume, rise)
    taken = power / efficiency if way == BY_BANK else power
    into = power if way == BY_BANK else power * efficiency
    time = water.time_to_heat(needed, into, loss)
    keeping = loss * hours / efficiency
    energy = taken * time + keeping if time is not None else None
    current = (taken if electric else draw) / voltage
    charge = None
    if time is not None and energy is not None and way != SHORE:
        charge = energy / voltage if way == BY_BANK else draw * (time + hours) / voltage
    burnt = heaters.fuels()[fuel] if flame else None
    return WaterHeater(
        cold=from_,
        rise=rise,
        density=water.DENSITY,
        specific=water.HEAT,
        heat=needed,
        taken=taken,
        into=into,
        time=time,
        keeping=keeping,
        energy=energy,
        current=current,
        charge=charge,
        gives=capacity * usable,
        bank_share=charge / (capacity * usable) if charge is not None else None,
        heating=burnt.heating if burnt else None,
        fuel_used=heaters.fuel_volume(energy, burnt.heating, 1.0) if burnt and energy is not None else None,
        co_points=heaters.carbon_monoxide() if flame else None,
        electric=electric,
        flame=flame,
        moves=_moves(power, voltage, way, straight=at_least(efficiency, 1.0)) if electric else None,
    )


def _moves(power: float, voltage: float, way: str, *, straight: bool) -> tuple[Move, ...]:
    """Return where the element's switch is worked out; behind an inverter its voltage is not known here."""
    line = [("power", f"{power:.6g} W"), ("kind", "DC" if way == BY_BANK and straight else "AC")]
    if way == SHORE or straight:
        line.append(("voltage", f"{voltage:.6g} V"))
    return (Move("A switch within reach for it", tuple(line), "remote-switch"),)


def _hot(v: SimpleNamespace) -> bool:
    return v.time is not None


def _lukewarm(v: SimpleNamespace) -> bool:
    return not at_most(v.to, GROWS) and not at_least(v.to, STORED)


def _stale(v: SimpleNamespace) -> bool:
    return _lukewarm(v) and v.time is not None and not at_most(v.time + v.hours, STANDS)


def _dear(v: SimpleNamespace) -> bool:
    """Standing still, it takes a good part of the bank, or a current that one battery hardly gives."""
    return v.way in (BY_BANK, FUEL) and not (at_most(v.bank_share, 0.25) and at_most(v.current, ONE_BATTERY))


_IF_FUEL, _IF_SHORE = ("way", FUEL), ("way", SHORE)


WORKSHEET = Worksheet(
    id="water-heater",
    title="Water heater",
    question="What does hot water cost?",
    entry_question="What does a hot shower take?",
    about="Time, energy, charge or fuel to heat water and keep it hot.",
    calculate=run,
    fields=(
        Quantity(id="volume", label="Water", symbol="V", kinds=(heat.VOLUME,), default="10 L", low="0.1 L", high="500 L", hint="In the tank or the kettle; a sparing shower takes about 10 L."),
        Quantity(id="from", label="Cold water", kinds=(TEMPERATURE,), default="10 °C", low="0 °C", high="90 °C", hint="As it comes from the tank: near freezing in winter."),
        Quantity(id="to", label="Hot water", symbol="T_2", kinds=(TEMPERATURE,), default="45 °C", low="5 °C", high="95 °C", hint="45 °C is hot for hands; mixed down it goes further."),
        Choice(id="way", label="Heat from", default=BY_BANK, options=(Option(BY_BANK, "element on the bank"), Option(SHORE, "element on shore power"), Option(FUEL, "fuel"), Option(ENGINE, "engine heat")), hint="What makes the heat."),
        Quantity(id="power", label="Power", symbol="P", kinds=(POWER,), default="500 W", low="10 W", high="20 kW", hint="What the element is rated at, the burner burns, or the coolant gives."),
        Quantity(id="efficiency", label="Share that reaches the water", symbol="η", kinds=(RATIO,), low="10 %", high="100 %",
                 default_by=("way", {BY_BANK: "100 %", SHORE: "100 %", FUEL: "75 %", ENGINE: "100 %"}), hint="Element straight on the bank 100 %; on the bank through an inverter the inverter's, about 88 %; a burner 75 % (no source)."),
        Quantity(id="loss", label="Loss while hot", symbol="P_l", kinds=(heat.HEAT,), default="15 W", low="0 W", high="1000 W", hint="Of the tank in its place: 10 to 30 W for a small insulated one (no source)."),
        Quantity(id="hours", label="Kept hot for", symbol="t_h", kinds=(TIME,), default="2 h", low="0 h", high="168 h", hint="After it has got hot."),
        Quantity(id="voltage", label="Voltage", symbol="U", kinds=(VOLTAGE,), low="6 V", high="300 V", default_by=("way", {BY_BANK: "12.8 V", SHORE: "120 V", FUEL: "12.8 V", ENGINE: "12.8 V"}), hint="The bank's own under this load, up to 60 V, also with an inverter between; for shore power the mains."),
        BANK,
        USABLE,
        Quantity(id="supply_limit", only_if=_IF_SHORE, label="Shore supply bears", symbol="I_s", kinds=(CURRENT,), default="15 A", low="2 A", high="63 A", hint="Of the breaker or the lead, whichever is less."),
        Choice(id="fuel", only_if=_IF_FUEL, label="Fuel", default="propane", options=BURNT, hint="Propane stands for bottled gas."),
        replace(EXHAUST, only_if=_IF_FUEL),
        replace(ALARM, only_if=_IF_FUEL),
        Quantity(id="draw", advanced=True, label="Draw of pump or burner", symbol="P_d", kinds=(POWER,), default="20 W", low="0 W", high="500 W", hint="Beside fuel or engine heat, all the time it is on."),
    ),
    results=(
        Output(id="time", label="Time to get hot", symbol="t", kind=TIME, rounding=UP),
        Output(id="energy", label="Energy taken in all", symbol="E", kind=ENERGY, rounding=UP),
        replace(CHARGE_TAKEN, hide_if_none=True),
        Output(id="current", label="Current while it heats", symbol="I", kind=CURRENT, rounding=UP),
        replace(BANK_SHARE, hide_if_none=True),
        replace(FUEL_USED, hide_if_none=True),
        CO_POINTS,
        Output(id="moves", label="Go on with", hide_if_none=True, needs_step=False),
    ),
    intermediates=(
        Output(id="cold", label="Water at the start", symbol="T_1", kind=TEMPERATURE),
        Output(id="rise", label="Warmer by", symbol="ΔT", kind=RISE),
        Output(id="density", label="Density of water", symbol="ρ", kind=heat.DENSITY, digits=4),
        Output(id="specific", label="Specific heat of water", symbol="c", kind=heat.SPECIFIC_HEAT, digits=4),
        Output(id="heat", label="Heat in the water", symbol="E_w", kind=ENERGY, rounding=UP),
        Output(id="taken", label="Power taken", symbol="P_t", kind=heat.HEAT, rounding=UP),
        Output(id="into", label="Power into the water", symbol="P_w", kind=heat.HEAT, rounding=DOWN),
        Output(id="keeping", label="To keep it hot", symbol="E_k", kind=ENERGY, rounding=UP),
        Output(id="gives", label="What you use of the bank", symbol="Q_u", kind=CHARGE, rounding=DOWN),
        Output(id="heating", label="Lower heating value", symbol="H", kind=heat.ENERGY_DENSITY, digits=4),
    ),
    steps=(
        Step(of="rise", formula="to - cold", says="A difference of temperatures."),
        Step(of="heat", formula="density * volume * specific * rise", source="heat-in-water", says="Every litre and every degree counts alike."),
        Step(of="taken", formula="power / efficiency", when=lambda v: v.way == BY_BANK, says="What the element gives, and what is lost on the way to it."),
        Step(of="taken", formula="power", when=lambda v: v.way != BY_BANK, says="Before what is lost."),
        Step(of="into", formula="power", when=lambda v: v.way == BY_BANK, says="All that the element gives reaches the water."),
        Step(of="into", formula="power * efficiency", when=lambda v: v.way != BY_BANK, says="What reaches the water."),
        Step(of="time", formula="heat / (into - loss)", source="heat-in-water", when=_hot, says="The loss of the hot tank taken off from the start: a little long."),
        Step(of="keeping", formula="loss * hours / efficiency", says="For each hour it stays hot."),
        Step(of="energy", formula="taken * time + keeping", when=_hot, says="Heating and keeping together."),
        Step(of="current", formula="taken / voltage", source="ohm", when=lambda v: v.electric, says="In the cable from the supply."),
        Step(of="current", formula="draw / voltage", source="ohm", when=lambda v: not v.electric, says="Of pump, fan and controls."),
        Step(of="charge", formula="energy / voltage", source="ohm", when=lambda v: v.way == BY_BANK and _hot(v), says="All of it out of the bank."),
        Step(of="charge", formula="draw * (time + hours) / voltage", source="ohm", when=lambda v: not v.electric and _hot(v), says="Only to run it."),
        Step(of="gives", formula="capacity * usable", when=lambda v: v.way != SHORE, says="Before you call the bank empty."),
        Step(of="bank_share", formula="charge / gives", when=lambda v: v.charge is not None, says="Everything else aboard comes on top."),
        Step(of="heating", source="fuel-heat", when=burns, says="{fuel}, with the steam leaving as steam."),
        Step(of="fuel_used", formula="energy / heating", source="fuel-heat", when=lambda v: v.flame and _hot(v), says="The energy taken is what is burnt."),
        CO_STEP,
    ),
    rules=(
        *FLAME_STOPS,
        Verdict(verdict=STOP, when=lambda v: not _hot(v), says="It never gets hot: {into} goes in and the hot tank loses {loss}."),
        Verdict(verdict=STOP, when=lambda v: v.way == SHORE and not at_most(v.current, v.supply_limit), says="The element takes {current}, and the shore supply bears {supply_limit}: it will trip, or a lead will overheat."),
        Verdict(verdict=STOP, when=lambda v: v.charge is not None and not at_most(v.charge, v.gives), says="This takes {charge}, and you use {gives} of the bank."),
        Verdict(verdict=CAUTION, when=unchecked, says="{fuel_used} of {fuel}, hot in {time}. First make sure of the exhaust, the combustion air and the alarm."),
        Verdict(verdict=CAUTION, when=lambda v: v.way == SHORE and not at_most(v.current, HALF * v.supply_limit), says="Hot in {time}, {energy} in all; {current} is more than half of what the shore supply bears, so switch other things off."),
        Verdict(verdict=CAUTION, when=_stale, says="Hot in {time}, but water kept below 60 °C so long breeds germs: heat it to 60 °C, or make it fresh each time."),
        Verdict(verdict=CAUTION, when=lambda v: at_least(v.to, SCALDS), says="Hot in {time}, {energy} in all; at {to} it scalds unless a mixing valve takes it down."),
        Verdict(verdict=CAUTION, when=_dear, says="Hot in {time} for {charge}, {bank_share} of what you use of the bank, at {current}."),
        Verdict(verdict=CAUTION, when=lambda v: v.way == ENGINE, says="Hot in {time} from the engine, for as long as you drive anyway. Never idle it for heat where people sleep or under a roof: its exhaust kills."),
        Verdict(verdict=FINE, when=lambda v: v.charge is None, says="Hot in {time}: {energy} in all, nothing from the bank."),
        Verdict(verdict=FINE, says="Hot in {time}: {energy} in all, and {charge} from the bank."),
    ),
    remarks=(
        *flame_remarks(burns),
        inverter_remark(lambda v: v.way == BY_BANK and not at_least(v.efficiency, 1.0)),
        Remark(when=lambda v: v.way == ENGINE, source="co-limits", says="Danger of death: an idling engine fills a garage, a gap between walls or a van with carbon monoxide. Take its heat on the road, never standing where people sleep."),
        Remark(when=lambda v: v.way == BY_BANK, source="practice", says="{current} for as long as it heats: cable, fuse, switch and joints must bear it steadily. Never let an element run dry."),
        Remark(when=lambda v: v.electric, source="practice", says="A hidden heater needs a switch within reach: the line itself while it is small, else a relay beside the tank and a thin wire to its coil. Its thermal cut-out is not that switch."),
        Remark(when=lambda v: v.way == SHORE, source="practice", says="Mains voltage and water: earth, residual-current protection and fixed wiring by a licensed person, to local rules."),
        Remark(when=lambda v: at_least(v.to, WARY) or v.way == ENGINE, source="practice", says="At 45 °C water is too hot for a child, an old or a numb hand; from 48 °C up it burns skin within minutes, and at 60 °C within seconds (no source). Fit a mixing valve at the tap."),
        Remark(when=lambda v: _stale(v) or (_lukewarm(v) and v.hours > 0), source="legionella", says="Legionella grows between 20 and 45 °C, and water is stored safely at 60 °C. Do not keep it cooler for long: heat it through to 60 °C now and then, and drain what has stood."),
        Remark(source="practice", says="Closed tanks need a relief valve, a thermal cut-out and room for the water to expand. Drain tank, pump and pipes before frost."),
        Remark(when=lambda v: v.way == ENGINE, source="practice", says="A tank on the engine gets as hot as the coolant, some 80 to 90 °C (no source), whatever you ask for here. Coolant is under pressure and poisonous: it is joined by hoses and an exchanger made for it, with the engine cold."),
        Remark(level=NOTE, source="heat-in-water", says="Check figure: 10 L made 35 K warmer hold about 0.41 kW·h, which is 32 A·h at 12.8 V."),
    ),
    valid="A well mixed tank, steady power, water that neither boils nor is drawn while it heats.",
    summary="hot in {time}, {energy}",
    summary_none="never gets hot",
    tables=(CO_TABLE,),
)

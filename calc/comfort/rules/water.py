"""Judgements on hot water: the supply it takes, germs and scalds, and the engine that heats it."""

from typing import Annotated

# fmt: off
from calc.comfort.water import HotWater, MixingValve, ShoreLoad, Tank, WaterHeat
from calc.energy.loads import BankLoad
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.constants import DAY
from calc.units.si import Celsius, Seconds, Share, Tag

# From which a child, an old or a numb hand needs care: common practice, no source
CARE: Annotated[Celsius, Tag("water too hot for a child's hand")] = 45.0
# From which skin burns in minutes: common practice, no source
SCALDING: Annotated[Celsius, Tag("water that burns skin in minutes")] = 48.0
# From which legionella grows: UK code L8
GERMS_GROW: Annotated[Celsius, Tag("water in which legionella grows")] = 20.0
# At which hot water is stored: UK code L8
STORED_SAFELY: Annotated[Celsius, Tag("temperature of stored hot water")] = 60.0
# Heating and kept lukewarm: common practice, no source
STANDS_LONG: Annotated[Seconds, Tag("longest time that lukewarm water is left")] = DAY
# Of a supply, from which little room is left for the rest: common practice, no source
HALF_OF_SUPPLY: Annotated[Share, Tag("share of a shore supply that one heater may take")] = 0.5


def _lukewarm(tank: Tank) -> bool:
    return not at_most(tank.hot, GERMS_GROW) and not at_least(tank.hot, STORED_SAFELY)


def _stale(tank: Tank) -> bool:
    return _lukewarm(tank) and tank.warm_for is not None and not at_most(tank.warm_for, STANDS_LONG)


def _fresh_each_time(tank: Tank) -> Change | None:
    if tank.time is None or not at_most(tank.time, STANDS_LONG):
        return None
    return Change({"hours": max(0.0, STANDS_LONG - tank.time)})


def _cooler(water: HotWater) -> Change | None:
    """Return water no hotter than a hand bears; engine heat is not set, so a valve it is."""
    if water.way is WaterHeat.ENGINE or water.tank.cold >= CARE:
        return Change({"mixing_valve": MixingValve.FITTED})
    return Change({"to": CARE})


NEVER_HOT = Rule[Tank](
    id="water.never-hot", level=Level.STOP, when=lambda t: t.time is None,
    headline="Use more power or insulate: it never gets hot, because {into} goes in and the hot tank loses {loss}.",
    mend=lambda t: Change({"loss": t.into / 2}),
)
BEYOND_SUPPLY = Rule[ShoreLoad](
    id="heater.beyond-shore-supply", level=Level.STOP, when=lambda s: not at_most(s.current, s.supply_limit),
    headline="Use a smaller element: {current} is more than the shore supply's {supply_limit}. The breaker trips, or the cable overheats.",
    mend=lambda s: Change({"power": s.power * s.supply_limit / s.current}),
)
HALF_OF_SUPPLY_TAKEN = Rule[ShoreLoad](
    id="heater.half-of-shore-supply", level=Level.CAUTION, when=lambda s: not at_most(s.current, HALF_OF_SUPPLY * s.supply_limit),
    headline="Switch other loads off: {current} is more than half of the shore supply.",
    mend=lambda s: Change({"power": HALF_OF_SUPPLY * s.power * s.supply_limit / s.current}),
)
STALE = Rule[Tank](
    id="water.stale", level=Level.CAUTION, when=_stale,
    headline="Heat it to 60 °C, or fresh each time: cooler water kept for {warm_for} breeds germs.",
    mend=_fresh_each_time,
)
SCALDS = Rule[HotWater](
    id="water.scalds", level=Level.CAUTION, when=lambda w: at_least(w.tank.hot, SCALDING) and w.valve is MixingValve.UNKNOWN,
    headline="Check that a mixing valve is fitted: without one, water at {tank.hot} burns skin.",
    mend=lambda _: Change({"mixing_valve": MixingValve.FITTED}),
)
NO_VALVE = Rule[HotWater](
    id="water.no-mixing-valve", level=Level.CAUTION, source="practice",
    when=lambda w: w.valve is MixingValve.MISSING and (at_least(w.tank.hot, SCALDING) or w.way is WaterHeat.ENGINE),
    headline="Fit a mixing valve: without one, water from this tank burns skin.",
    text="Scalds: from 48 °C up water burns skin within minutes, at 60 °C within seconds (no source), and engine heat takes a tank to 80 °C and more.",
    mend=_cooler,
)
IDLING_ENGINE = Rule[HotWater](
    id="engine.idling-kills", level=Level.ADVICE, when=lambda w: w.way is WaterHeat.ENGINE, source="co-limits",
    text="Danger of death: an idling engine fills a garage, a gap between walls or a van with carbon monoxide. Use its heat on the road, never parked where people sleep.",
)

RUN_DRY = Rule[BankLoad](
    id="water.element-run-dry", level=Level.ADVICE, source="practice",
    text="Never let an element run dry.",
)
SWITCH_WITHIN_REACH = Rule[HotWater](
    id="heater.switch-within-reach", level=Level.ADVICE, when=lambda w: w.electric, source="practice",
    text="Fit a hidden heater's switch within reach: in the line if small, else by a relay beside the tank and a small coil wire. Its thermal cut-out is no switch.",
)
MAINS_AND_WATER = Rule[ShoreLoad](
    id="water.mains", level=Level.ADVICE, source="practice",
    text="Mains voltage and water: earth, residual-current protection and fixed wiring by a licensed person, to local rules.",
)
MIXING_VALVE = Rule[HotWater](
    id="water.mixing-valve", level=Level.ADVICE, when=lambda w: at_least(w.tank.hot, CARE) or w.way is WaterHeat.ENGINE, source="practice",
    text="Scalds: fit a mixing valve at the tap. 45 °C is too hot for children or numb hands; 48 °C burns skin within minutes, 60 °C within seconds (no source).",
)
LEGIONELLA = Rule[Tank](
    id="water.legionella", level=Level.ADVICE, when=lambda t: _stale(t) or (_lukewarm(t) and t.hours > 0), source="legionella",
    text="Legionella grows between 20 and 45 °C: store water at 60 °C behind a mixing valve, or heat it all to 60 °C now and then. Drain stale water.",
)
RELIEF_VALVE = Rule[Tank](
    id="water.relief-valve", level=Level.ADVICE, source="practice",
    text="Burst: closed tanks need a relief valve, a thermal cut-out and room for the water to expand. Drain tank, pump and pipes before frost.",
)
AS_HOT_AS_COOLANT = Rule[HotWater](
    id="engine.tank-as-hot", level=Level.ADVICE, when=lambda w: w.way is WaterHeat.ENGINE, source="practice",
    text="Scalds: a tank on the engine gets as hot as the coolant, some 80 to 90 °C (no source), whatever you type here.",
)
COOLANT = Rule[HotWater](
    id="engine.coolant", level=Level.ADVICE, when=lambda w: w.way is WaterHeat.ENGINE, source="practice",
    text="Coolant is hot, under pressure and poisonous: connect it with the engine cold, by hoses and an exchanger made for it.",
)
CHECK_FIGURE = Rule[Tank](
    id="water.check-figure", level=Level.NOTE, source="heat-in-water",
    text="Check value: heating 10 L by 35 K takes about 0.41 kWh, which is 32 Ah at 12.8 V.",
)

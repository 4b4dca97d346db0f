"""Judgements on heaters, the fuel they burn, and the height at which they burn it."""

from typing import Protocol

# fmt: off
from calc.comfort.flame import Flame, HeatSource
from calc.comfort.fuel import DIESEL_WAXES, FuelInCold
from calc.comfort.heaters import LARGEST_USUAL, LOWEST_STEP, THIN_AIR, HeatedTime
from calc.energy.loads import HeatFromBank
from calc.judge import Change, Level, Rule
from calc.units.compare import at_least, at_most
from calc.units.si import HeatWatts, Metres, Share


class AtAltitude(Protocol):
    """Something that may burn at an altitude, with the air's pressure as a share of the sea's."""

    @property
    def flame(self) -> Flame | None: ...
    @property
    def altitude(self) -> Metres: ...
    @property
    def air_share(self) -> Share: ...


BELOW_LOWEST_STEP = Rule[HeatedTime](
    id="heater.below-lowest-step", level=Level.ADVICE, source="practice", when=lambda h: h.burns and not at_least(h.loss, LOWEST_STEP),
    text="Soot: most small fuel heaters give about 800 W at their lowest step (no source). At {loss} they start and stop, and use more fuel and charge than shown.",
)
BEYOND_USUAL = Rule[HeatWatts](  # asked of the output that a heater must have
    id="heater.beyond-usual", level=Level.CAUTION, when=lambda output: not at_most(output, LARGEST_USUAL),
    headline="That is more than most van heaters give.",
)
THIN_AIR_FLAME = Rule[AtAltitude](
    id="heater.thin-air", level=Level.CAUTION, source="atmosphere", when=lambda h: h.flame is not None and not at_most(h.altitude, THIN_AIR),
    headline="Check that the heater is made or set for {altitude}: in thin air it burns rich.",
    text="Carbon monoxide: air pressure here is {air_share} of that at sea level. Unless the maker allows this height, the flame burns rich, soots up and fails to start.",
    mend=lambda h: Change({"altitude": THIN_AIR}),
)
BEDDING = Rule[HeatFromBank](
    id="heater.clear-of-bedding", level=Level.ADVICE, source="practice",
    text="Fire: keep elements clear of bedding, and never leave one on that touches or can fall against cloth.",
)

FUEL_FAILS = Rule[FuelInCold](
    id="fuel.fails-in-cold", level=Level.CAUTION, when=lambda f: f.fails,
    headline="At {outside} {fuel} may fail: carry fuel sold for such cold, and a second way to keep warm.",
)
DIESEL_TURNS_WAXY = Rule[FuelInCold](
    id="fuel.diesel-waxes", level=Level.ADVICE, source="memory", when=lambda f: f.fuel is HeatSource.DIESEL and at_most(f.outside, DIESEL_WAXES),
    text="At {outside} diesel that is not winter grade waxes and blocks pump and filter. Fill up with winter grade before the cold.",
)
PROPANE_STAYS_LIQUID = Rule[FuelInCold](
    id="fuel.propane-stays-liquid", level=Level.ADVICE, source="memory", when=lambda f: f.fuel is HeatSource.PROPANE and f.fails,
    text="At {outside} even propane hardly turns to gas, and a small bottle gives less than a heater needs. Do not warm it with a flame.",
)
WINTER_GRADE = Rule[Flame](
    id="fuel.winter-grade", level=Level.NOTE, source="practice", when=lambda f: f.fuel is HeatSource.DIESEL,
    text="Diesel that is not winter grade waxes in hard frost and blocks pump and filter: fill up with winter grade before a cold trip.",
)
LOWER_HEATING_VALUE = Rule[Flame](
    id="fuel.lower-heating-value", level=Level.NOTE, source="fuel-heat",
    text="Lower heating values. Many tables have higher ones, which give about 7 to 9 % more. Petrol with 10 % ethanol has 3 % less.",
)

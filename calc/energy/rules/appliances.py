"""Judgements on a household appliance on an inverter beside one made for the bank's voltage."""

# fmt: off
from calc.energy.appliances import BUSY, Figures, Routes
from calc.energy.battery import Chemistry
from calc.judge import Change, Level, Rule
from calc.units.compare import at_most
from calc.units.constants import DAY

NOT_FED = Rule[Routes](
    id="appliance.not-fed-long-enough", level=Level.STOP, when=lambda r: not r.household.served and r.keeps_cold,
    headline="Do not use the household one: it needs to run {household.need} a day and has power for {household.hours_on}. Food warms.",
    mend=lambda r: Change({"hours_on": DAY}),
)
USE_BEYOND_FED = Rule[Routes](
    id="appliance.use-beyond-fed", level=Level.STOP, when=lambda r: not r.household.served and not r.keeps_cold,
    headline="Check the hours: the household one is used {household.need} a day and has power for {household.hours_on}.",
    mend=lambda r: Change({"hours_on": r.household.need}),
)
LITTLE_BETWEEN = Rule[Routes](
    id="appliance.little-between", level=Level.FINE, when=lambda r: r.near,
    headline="Either will do: {direct.charge} a day for the battery-voltage one, {household.charge} for the household one.",
)
DIRECT_WEAK_IN_HEAT = Rule[Routes](
    id="appliance.direct-weak-in-heat", level=Level.CAUTION, when=lambda r: r.dearer and not r.direct.holds_in_heat,
    headline="Use a stronger one at battery voltage: {direct.charge} a day, not {household.charge}, but no reserve on a hot day.",
)
HOUSEHOLD_TAKES_MORE = Rule[Routes](
    id="appliance.household-takes-more", level=Level.FINE, when=lambda r: r.dearer,
    headline="Use the battery-voltage one: {direct.charge} a day against {household.charge}.",
)
HOUSEHOLD_PAUSES = Rule[Routes](
    id="appliance.household-pauses", level=Level.CAUTION, when=lambda r: r.pauses and not r.dearer,
    headline="The household one uses less, {household.charge} a day against {direct.charge}, but it is off for {off} and warms.",
    mend=lambda r: Change({"hours_on": DAY}),
)
HOUSEHOLD_WEAK_IN_HEAT = Rule[Routes](
    id="appliance.household-weak-in-heat", level=Level.CAUTION, source="warm-room", when=lambda r: not r.dearer and not r.household.holds_in_heat,
    headline="The household one uses less, {household.charge} a day against {direct.charge}, but has no reserve on a hot day.",
    text="In air of {hot} the household one would have to run 90 % of its hours or more: it may not stay cold.",
)
NO_IDLE_DRAW = Rule[Routes](
    id="inverter.no-idle-draw", level=Level.CAUTION, when=lambda r: not r.dearer and not r.idle_energy and r.from_bank > 0,
    headline="Measure the inverter's idle draw first: without it the household one uses less, {household.charge} a day against {direct.charge}.",
)
FROM_LABELS = Rule[Routes](
    id="appliance.from-labels", level=Level.CAUTION, source="practice", when=lambda r: not r.dearer and r.figures is Figures.LABELS,
    headline="By the labels the household one uses less, {household.charge} a day against {direct.charge}. Measure both before you decide.",
    text="Measure the charge of two days with the door opened as usual: a label gives the highest draw, not the hours.",
    mend=lambda r: Change({"figures": Figures.MEASURED}),
)

REAL_COST = Rule[Routes](
    id="appliance.real-cost", level=Level.ADVICE, source="practice", when=lambda r: r.dearer and not r.near,
    text="The cheaper appliance needs {extra_bank} more bank for {days} days, more for cold and age, and {extra_array} more array in {sun_hours} of sun a day or {extra_drive} more driving.",
)
IDLES_FOR_A_THERMOSTAT = Rule[Routes](
    id="inverter.idles-for-a-thermostat", level=Level.ADVICE, source="practice", when=lambda r: r.idle_energy > 0 and r.keeps_cold,
    text="The inverter's idle draw takes {idle_charge} a day, {idle_share} of the household one's use. It cools nothing, and runs day and night because a thermostat may switch on.",
)
IDLES_BY_HAND = Rule[Routes](
    id="inverter.idles-though-used-by-hand", level=Level.ADVICE, source="practice",
    when=lambda r: r.idle_energy > 0 and not r.keeps_cold and r.off == 0,
    text="If you use it by hand, switch the inverter off with it and set the hours it has power. Day and night the idle draw alone is {idle_charge}.",
)
SEARCH_MODE = Rule[Routes](
    id="inverter.search-mode-no-cure", level=Level.ADVICE, source="practice", when=lambda r: r.idle_energy > 0 and r.keeps_cold,
    text="A standby or search mode is no solution: it looks for a load in short pulses, and a compressor may not wake it or may fail to start.",
)
COMPRESSOR_START = Rule[Routes](
    id="appliance.compressor-start", level=Level.ADVICE, source="motor-start", when=lambda r: r.keeps_cold,
    text="The inverter must briefly deliver about six times a household compressor's running current at every start, at the end of a cold night too.",
)
OFF_SAVES_IDLE_ONLY = Rule[Routes](
    id="appliance.off-saves-idle-only", level=Level.ADVICE, source="practice", when=lambda r: r.pauses,
    text="Food poisoning: keep food that spoils out of a box that warms above 5 °C. Off for {off} a day saves only idle draw: the compressor catches up later.",
)
FED_BY_OTHERS = Rule[Routes](
    id="appliance.fed-by-others", level=Level.ADVICE, source="practice", when=lambda r: r.carried > 0,
    text="{carried} a day count for neither: shore power or the engine must supply everything then. On the road an inverter still draws from the bank if the charger gives less.",
)
DIRECT_MAY_NOT_HOLD = Rule[Routes](
    id="appliance.direct-may-not-hold", level=Level.ADVICE, source="warm-room", when=lambda r: not r.direct.holds_in_heat,
    text="In air of {hot} the battery-voltage one would have to run 90 % of the day or more: it may not stay cold.",
)
NEVER_RESTS = Rule[Routes](
    id="appliance.never-rests", level=Level.ADVICE, source="practice", when=lambda r: r.keeps_cold and not at_most(r.direct.duty, BUSY),
    text="The battery-voltage one runs nearly all the time, like a cool box without a compressor, which uses several times the charge: compare one with a compressor.",
)
NO_CHARGE_IN_FROST = Rule[Routes](
    id="appliance.no-charge-in-frost", level=Level.ADVICE, source="lfp-frost", when=lambda r: r.chemistry is Chemistry.LFP and r.dearer,
    text="However you charge it: never charge an LFP battery below 0 °C.",
)
HOT_DAY = Rule[Routes](
    id="appliance.hot-day", level=Level.NOTE, source="warm-room", when=lambda r: r.keeps_cold,
    text="On a hot day it is at least {direct.hot_charge} against {household.hot_charge}. Leave room for air behind either one: a covered condenser makes every day a hot one.",
)
YEAR_BY_LABEL = Rule[Routes](
    id="appliance.year-by-label", level=Level.NOTE, source="practice",
    text="At this rate the household one would use {year_energy} a year at its plug. If its energy label says much less, the share of the day above is too high.",
)
PEAK_HOLDS_IDLE = Rule[Routes](
    id="inverter.peak-efficiency-holds-idle", level=Level.NOTE, source="practice",
    text="A peak efficiency already includes a little of the idle draw, so the household value is slightly high.",
)

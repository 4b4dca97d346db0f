"""Where a bank's maker, or common practice, draws the line: temperature, share used, time, current.

What differs by chemistry stands in the tables `battery_limits` and `battery_voltage` and is read by
`calc.energy.battery` and `calc.energy.voltages`. A battery's data sheet governs.
"""

from typing import Annotated

from calc.units.constants import DAY, HOUR
from calc.units.si import Amperes, Celsius, Kelvins, Number, Seconds, Share, Tag, Volts, Watts

# Below it LFP is given less current and lead-acid takes its charge slowly: common practice, no
# source. Makers of LFP say 5 to 10 °C; a bank is colder at night than at the time of typing.
COOL: Annotated[Celsius, Tag("temperature below which a bank is charged slowly")] = 10.0
# Above it lead-acid gasses at the voltage of 25 °C: common practice, no source
WARM: Annotated[Celsius, Tag("temperature above which lead-acid gasses on charge")] = 40.0
# Straight lines between the printed gravities hide up to 1.8 K: our choice
FROST_MARGIN: Annotated[Kelvins, Tag("margin kept to the freezing point of acid")] = 3.0
FREEZING: Annotated[Celsius, Tag("freezing point of water")] = 0.0  # by definition

# More of an LFP bank leaves nothing before it is cut off: high end of common practice
MOST_OF_LFP: Annotated[Share, Tag("most of an LFP bank that is used")] = 0.9
# Of what is used: a tired or cold bank ends early beyond it. Common practice, no source
LITTLE_TO_SPARE: Annotated[Share, Tag("share of the used charge that leaves little")] = 0.9
# Deeper wears a lead-acid bank fast: common practice, no source
MOST_OF_LEAD_ACID: Annotated[Share, Tag("most of a lead-acid bank that is used")] = 0.5
# Below a fifth of its charge lead-acid is damaged: an old rule of practitioners, no source
HARMFUL_OF_LEAD_ACID: Annotated[Share, Tag("use from which lead-acid is damaged")] = 0.8
# Little is left until the cells are harmed: common practice, no source
LOW_LFP: Annotated[Share, Tag("state below which an LFP bank is nearly flat")] = 0.10
# Stored emptier than this a lead-acid bank sulphates: our choice
STORED_FULL: Annotated[Share, Tag("state of a lead-acid bank stored full")] = 0.95

# One battery of 100 Ah is usually allowed this by its maker: common practice, no source
ONE_BATTERY: Annotated[Amperes, Tag("most current of one battery")] = 100.0
# At this current a loose joint is a heater: common practice, no source
HEATING_JOINT: Annotated[Amperes, Tag("current from which a loose joint heats")] = 30.0
# Loads of this size are mostly heat: kettle, hob, hair dryer; common practice, no source
MOSTLY_HEAT: Annotated[Watts, Tag("power from which a load is mostly heat")] = 1000.0
# Batteries side by side: common practice, no source
MOST_PARALLEL: Annotated[Number, Tag("most batteries side by side")] = 4.0
# By then a lead-acid bank that stands wants a charge: common practice, no source
LONGEST_STAND: Annotated[Seconds, Tag("longest time of lead-acid without a charge")] = 90 * DAY
# Over which a label's capacity is meant: on most lead-acid batteries
RATED_TIME: Annotated[Seconds, Tag("rated time of a label")] = 20 * HOUR
# Above it a 12 V lead-acid battery gives no charge worth naming: BCI has 12.65 V full at rest
LEAD_ACID_SPENT_ABOVE: Annotated[Volts, Tag("voltage above which lead-acid gives little")] = 12.5
# Room for ageing that is none: our choice
NO_ROOM_FOR_AGEING: Annotated[Share, Tag("room for ageing that is none")] = 0.05

# Charged below it no battery of a nominal 12 V fills: common practice, no source
FILLS_NO_BLOCK: Annotated[Volts, Tag("charging voltage below which no 12 V block fills")] = 13.0
# A charge that ends below it hardly fills lead-acid of a nominal 12 V: common practice, no source
HARDLY_FILLS_LEAD: Annotated[Volts, Tag("end of charge that hardly fills lead-acid")] = 14.0

# Pages on lead-acid prefer it to the least that they ask for
FULL_REST: Annotated[Seconds, Tag("rest that lead-acid is best read after")] = 24 * HOUR
# Of the capacity, from which a count is worth a full charge: our choice
DRIFTED: Annotated[Share, Tag("drift of a count that is worth a full charge")] = 0.1
# Of a 12 V block, by which a monitor's full voltage is set lower: common practice, no source
BELOW_ABSORPTION: Annotated[Volts, Tag("a monitor's full voltage below that of the charge")] = 0.2
# Of a 12 V block; beyond them the nominal voltage is mistaken: our choice
LOWEST_READING: Annotated[Volts, Tag("lowest reading of a block")] = 6.0
# The same, under a charger that has run away: our choice
HIGHEST_READING: Annotated[Volts, Tag("highest reading of a block")] = 18.0
# Of a 12 V block of flooded lead-acid while it is equalised: common practice, no source
MOST_EQUALISED: Annotated[Volts, Tag("most that equalises a lead-acid block")] = 16.0

"""The working of week-ahead in words, what its answer says when nothing is wrong, and its own notes."""

# fmt: off
from calc.energy import daily_loads, remedies, week
from calc.energy.forecast import WeekAhead
from calc.energy.panels import Regulator
from calc.judge import Level, Rule
from calc.sheets.charging.week_ahead import tables
from calc.units.constants import HOUR
from calc.worksheet.declare import Step


def _measured(found: WeekAhead) -> bool:
    skies = found.inputs.skies
    return skies is not None and skies.clearness is not None


STEPS: tuple[Step[WeekAhead], ...] = (
    Step(of="floor", formula="1 - usable", text="Nothing more is drawn below."),
    Step(of="cold_factor", source="ieee-485", when=lambda w: w.lead_acid, text="A lead-acid bank gives less in the cold."),
    Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=lambda w: w.lead_acid, text="Capacity left in this cold."),
    Step(of="cold_capacity", formula="capacity", when=lambda w: not w.lead_acid, text="No factor for cold is published for this chemistry."),
    Step(of="full_energy", formula="cold_capacity * voltage", source="ohm", text="At the voltage under load."),
    Step(of="coulombic", source="charge-efficiency", text="Of {chemistry}, over most of the range; less near full."),
    Step(of="energy_efficiency", source="charge-efficiency", when=lambda w: w.lead_acid, text="The lowest published value."),
    Step(of="energy_efficiency", source="practice", when=lambda w: not w.lead_acid, text="The lowest value that sellers claim."),
    Step(of="charge_voltage", formula="voltage * coulombic / energy_efficiency", source="charger-balance", text="Consistent with both: an amp going in costs more energy than an amp coming out gives."),
    Step(of="bulk_current", source="bulk-most", when=lambda w: w.lead_acid, text="A quarter of the capacity in an hour; near full it accepts less, in proportion to the missing charge."),
    Step(of="bulk_current", source="practice", when=lambda w: not w.lead_acid, text="Half of the capacity in an hour; only close to full it accepts less."),
    Step(of="rated_current", formula="cold_capacity / rated_time", source="peukert", when=lambda w: w.lead_acid, text="Currents above the rated one use more than their charge: the ratio to the power {exponent} less 1."),
    Step(of="peak_current", source="ohm", text="Each load's watts divided by {voltage}, inverter loads with their losses."),
    Step(of="clear_sky", source="ineichen", text="The 15th of {month}, cloudless, on level ground, {daylight} of daylight."),
    Step(of="beyond", source="fao-56", text="The same day on level ground outside the atmosphere."),
    Step(of="sky_used", formula="sky", when=lambda w: w.inputs.skies is None, text="As you typed it: of the clear day on level ground."),
    Step(of="sky_used", source="typical-sun", when=_measured, text="{climate}: its share of the light outside the atmosphere in {month}, at your latitude, divided by our clear day."),
    Step(of="sky_used", source="practice", when=lambda w: w.inputs.skies is not None and not _measured(w), text="Your own for {month}."),
    Step(of="diffuse_share", source="erbs", text="By how clear the sky is, {clearness} of the light outside the atmosphere."),
    Step(of="beam_ratio", source="klein", text="Added up over the day outside the atmosphere."),
    Step(of="light", formula="clear_sky * sky_used * ((1 - diffuse_share) * beam_ratio + diffuse_share * sky_seen + albedo * ground_seen)", source="klein", when=lambda w: not w.light.held and w.sun.direct > 0, text="Direct light projected onto the panels, the rest from an evenly bright sky."),
    Step(of="light", source="klein", when=lambda w: w.light.held or not w.sun.direct > 0, text="Sun, sky and ground together, and no more than a clear or an evenly grey day gives."),
    Step(of="heat_keeps", source="panel-heat", when=lambda w: w.inputs.heat is not None, text="Cells in the sun, as in sun yield: {mount}, air of {air}."),
    Step(of="regulator_keeps", source="ohm", when=lambda w: w.inputs.regulator is Regulator.PWM, text="A PWM regulator holds the panels at the bank's voltage, as in sun yield."),
    Step(of="noon", source="clear-day", when=lambda w: w.leans_on_low_sun, text="Above a flat horizon: 90° less the angle between latitude and declination."),
    Step(of="sun_day", formula="light * array * (1 - losses) * heat_keeps * regulator_keeps / standard", source="panel-rating", text="Each hour adds its part."),
    Step(of="drive_day", formula="charger * charge_voltage * drive_hours", source="ohm", text="The charger's current at the charging voltage. Its own loss comes from the engine."),
    Step(of="shore_night", formula="shore_charger * charge_voltage * shore_hours", source="ohm", text="The same on shore power."),
    Step(of="loads_day", source="ohm", text="Watts times hours, added up."),
    Step(of="inverter_day", source="inverter-input", text="Conversion at {efficiency}, and {idle} while it is on."),
    Step(of="daily_use", formula="loads_day + inverter_day", text="Hour by hour: full watts while a load is on, nothing while it is off."),
    Step(of="sun_brought", source="bank-balance", text="Hour by hour: loads first, then the bank as far as it accepts charge; the sun before the charger, the charger before shore power."),
    Step(of="drive_brought", source="bank-balance", text="The part of it that was used."),
    Step(of="shore_brought", source="bank-balance", text="The part of shore power that was used."),
    Step(of="not_taken", source="bank-balance", text="The bank was full or could not accept more."),
    Step(of="drawn", source="bank-balance", text="The part the sources did not cover, hour by hour."),
    Step(of="load_used", source="bank-balance", text="Supplied to the loads while the bank was above its floor."),
    Step(of="unmet", source="bank-balance", when=lambda w: w.flows.unmet is not None, text="The energy they needed beyond that."),
    Step(of="load_taken", formula="load_used + conversion + idle_lost", text="Including the inverter's losses."),
    Step(of="came", formula="sun_brought + drive_brought + shore_brought + drawn", text="From the sources and from the bank."),
    Step(of="went", source="bank-balance", formula="load_taken + heavy + charging_lost + stored", text="The same total: every loss is listed."),
    Step(of="alone", source="practice", text="Self-discharge within the published range near 25 °C; doubled for each 10 K above, no less in the cold."),
    Step(of="end_state", formula="from_state + (stored - drawn - alone) / full_energy", text="Charge in less charge out."),
    Step(of="lowest_state", source="bank-balance", text="The lowest to which the loads draw it. Below {floor} they are off, and self-discharge alone goes on."),
    Step(of="lowest_at", source="bank-balance", text="Counted from the midnight at which the week begins."),
    Step(of="recovery_time", source="bank-balance", when=lambda w: w.recovered is not None and w.recovered.time is not None, text="After the trip, every load off, until the charging current has fallen to the tail current."),
    Step(of="empty_after", source="bank-balance", when=lambda w: w.states.emptied is not None, text="The first time that the bank is at {floor} while a load still needs power."),
    Step(of="outlook", when=lambda w: not w.trip, text="The same day repeated. If a day ends no lower than it began, no later day will: it lasts."),
    Step(of="brought", text="Offered, and used."),
    Step(of="lost", text="Each cause added up over the hours."),
    Step(of="days", text="From midnight to midnight, solar time."),
    Step(of="months", when=lambda w: w.months is not None, source="ineichen", text="With the sun of each month’s 15th, its own sky where you chose one, and the same loads and driving."),
    Step(of="carrying", when=lambda w: bool(tables.carrying(w)), text="The changes tried that are enough."),
    Step(of="remedies", when=lambda w: bool(w.tried), text="Each is found by calculating the days again. Amounts are just enough: use more. The size of a change is its new part as a share of the largest tried; for a load, the hours given up; for other appliances, the energy supplied another way; zero for a switch."),
    Step(of="cheapest", when=lambda w: tables.cheapest(w) is not None, text="The first of them. Prices are not considered."),
    )

FINE_TRIP = Rule[WeekAhead](
    id="week-ahead.fine-trip", level=Level.FINE, when=lambda w: w.trip,
    headline="Lasts the trip, never below {states.lowest}, and is full again {recovered.time} later.",
)
FINE = Rule[WeekAhead](
    id="week-ahead.fine", level=Level.FINE,
    headline="Lasts as long as days are like this, with {inputs.drive_hours} of driving: never below {states.lowest}, {states.end} at the end.",
)
OWN_HOURS = Rule[WeekAhead](
    id="week-ahead.own-hours", level=Level.NOTE, source="practice",
    text=f"Our choices: the week begins at midnight, solar time; driving from {week.DRIVE_FROM:g} o’clock, shore power from {week.LEAD_FROM:g} o’clock; if the sun stays up or down all day, night is from {daily_loads.BED:g} to {daily_loads.RISE:g} o’clock. A load longer than day or night runs into the other.",
)
WHAT_IS_TRIED = Rule[WeekAhead](
    id="week-ahead.what-is-tried", level=Level.NOTE, source="practice",
    text=f"Tried, at most: panels of {{inputs.roof}}, {remedies.MOST_BANK:g} times the bank, {remedies.MOST_DRIVE / HOUR:g} h of driving a day, a charger of {remedies.MOST_CHARGER:g} A as far as the bank takes it, every night on shore power, a bank at {remedies.WARM_BANK:g} °C.",
)
LOADS_TRIED = Rule[WeekAhead](
    id="week-ahead.loads-tried", level=Level.NOTE, source="practice",
    text=f"Then the inverter is tried, and the {remedies.BIGGEST} biggest loads halved or left out. Appliances of more than {remedies.MOST_DIRECT:g} W are hardly made for battery voltage.",
)

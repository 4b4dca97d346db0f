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
    Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=lambda w: w.lead_acid, text="What is there in this cold."),
    Step(of="cold_capacity", formula="capacity", when=lambda w: not w.lead_acid, text="No factor for cold is published for this chemistry."),
    Step(of="full_energy", formula="cold_capacity * voltage", source="ohm", text="At the voltage under load."),
    Step(of="coulombic", source="charge-efficiency", text="Of {chemistry}, over most of the range; less near full."),
    Step(of="energy_efficiency", source="charge-efficiency", when=lambda w: w.lead_acid, text="The low figure of those published."),
    Step(of="energy_efficiency", source="practice", when=lambda w: not w.lead_acid, text="The low figure of what sellers claim."),
    Step(of="charge_voltage", formula="voltage * coulombic / energy_efficiency", source="charger-balance", text="Where the two agree: an amp going in costs more energy than an amp coming out gives."),
    Step(of="bulk_current", source="bulk-most", when=lambda w: w.lead_acid, text="A quarter of the capacity in an hour; near full it takes less, in proportion to what is missing."),
    Step(of="bulk_current", source="practice", when=lambda w: not w.lead_acid, text="Half of the capacity in an hour; only close to full it takes less."),
    Step(of="rated_current", formula="cold_capacity / rated_time", source="peukert", when=lambda w: w.lead_acid, text="Heavier currents take more than their charge, by the power {exponent} less 1 of how much heavier."),
    Step(of="peak_current", source="ohm", text="Each load's watts over {voltage}, the inverter's with its losses."),
    Step(of="clear_sky", source="ineichen", text="The 15th of {month} without a cloud, on level ground, from {daylight} of daylight."),
    Step(of="beyond", source="fao-56", text="The same day on level ground outside the air."),
    Step(of="sky_used", formula="sky", when=lambda w: w.inputs.skies is None, text="As you put it: of the clear day on level ground."),
    Step(of="sky_used", source="typical-sun", when=_measured, text="{climate}: its share of the light outside the air in {month}, at your latitude, over our clear day."),
    Step(of="sky_used", source="practice", when=lambda w: w.inputs.skies is not None and not _measured(w), text="Your own for {month}."),
    Step(of="diffuse_share", source="erbs", text="By how clear the sky is, {clearness} of the light outside the air."),
    Step(of="beam_ratio", source="klein", text="Summed over the day outside the air."),
    Step(of="light", formula="clear_sky * sky_used * ((1 - diffuse_share) * beam_ratio + diffuse_share * sky_seen + albedo * ground_seen)", source="klein", when=lambda w: not w.light.held and w.sun.direct > 0, text="The sun's own light turned onto the panels, the rest from a sky equally bright all over."),
    Step(of="light", source="klein", when=lambda w: w.light.held or not w.sun.direct > 0, text="Sun, sky and ground together, and no more than a clear day or an evenly grey one brings."),
    Step(of="heat_keeps", source="panel-heat", when=lambda w: w.inputs.heat is not None, text="Cells in the sun, as in sun yield: {mount}, air of {air}."),
    Step(of="regulator_keeps", source="ohm", when=lambda w: w.inputs.regulator is Regulator.PWM, text="A plain switch holds the panels at the bank's voltage, as in sun yield."),
    Step(of="noon", source="clear-day", when=lambda w: w.leans_on_low_sun, text="Above a flat horizon: 90° less the angle between latitude and declination."),
    Step(of="sun_day", formula="light * array * (1 - losses) * heat_keeps * regulator_keeps / standard", source="panel-rating", text="Each hour brings its part."),
    Step(of="drive_day", formula="charger * charge_voltage * drive_hours", source="ohm", text="The charger's amps at the voltage while charging. What it loses itself is the engine's affair."),
    Step(of="shore_night", formula="shore_charger * charge_voltage * shore_hours", source="ohm", text="The same on shore power."),
    Step(of="loads_day", source="ohm", text="Watts times hours, added up."),
    Step(of="inverter_day", source="inverter-input", text="Conversion at {efficiency}, and {idle} while it is on."),
    Step(of="daily_use", formula="loads_day + inverter_day", text="Laid into the hours: full watts while a load is on, nothing while it is off."),
    Step(of="sun_brought", source="bank-balance", text="Hour by hour: loads first, then the bank as far as it takes it; the sun comes before the charger, that before shore power."),
    Step(of="drive_brought", source="bank-balance", text="What was still taken of it."),
    Step(of="shore_brought", source="bank-balance", text="And of shore power."),
    Step(of="not_taken", source="bank-balance", text="The bank was full, or took no more."),
    Step(of="drawn", source="bank-balance", text="What sources did not cover, hour by hour."),
    Step(of="load_used", source="bank-balance", text="Of the loads, as long as there was something above the floor."),
    Step(of="unmet", source="bank-balance", when=lambda w: w.flows.unmet is not None, text="What they asked for beyond that."),
    Step(of="load_taken", formula="load_used + conversion + idle_lost", text="With what the inverter added."),
    Step(of="came", formula="sun_brought + drive_brought + shore_brought + drawn", text="From the sources and out of the bank."),
    Step(of="went", source="bank-balance", formula="load_taken + heavy + charging_lost + stored", text="The same: nothing is lost on the way that is not listed."),
    Step(of="alone", source="practice", text="Self-discharge within what is published near 25 °C; twice as much for each 10 K above, in the cold not less."),
    Step(of="end_state", formula="from_state + (stored - drawn - alone) / full_energy", text="What went in less what came out."),
    Step(of="lowest_state", source="bank-balance", text="The least of all hours. Where nothing is drawn any more, the bank still loses a little by itself."),
    Step(of="lowest_at", source="bank-balance", text="Counted from the midnight at which the week begins."),
    Step(of="recovery_time", source="bank-balance", when=lambda w: w.recovered is not None and w.recovered.time is not None, text="After the trip, every load off, until the bank takes no more than the tail of a charge."),
    Step(of="empty_after", source="bank-balance", when=lambda w: w.states.emptied is not None, text="The first time that the bank is at {floor} with a load still asking."),
    Step(of="outlook", when=lambda w: not w.trip, text="The same day again and again. Where a day ends no lower than it began, no later one will: it holds."),
    Step(of="brought", text="Offered, and taken."),
    Step(of="lost", text="Each cause added up over the hours."),
    Step(of="days", text="From midnight to midnight, solar time."),
    Step(of="months", when=lambda w: w.months is not None, source="ineichen", text="With the sun of each month’s 15th, its own sky where you chose one, and the same loads and driving."),
    Step(of="carrying", when=lambda w: bool(tables.carrying(w)), text="Those of the tried that are enough."),
    Step(of="remedies", when=lambda w: bool(w.tried), text="Each found by working the days again. Amounts are what just does: take more. Asked is what is new, as a share of the most that is tried; of a load’s hours what is given up; of all that loads take what is fed otherwise; nothing where only a switch is pressed."),
    Step(of="cheapest", when=lambda w: tables.cheapest(w) is not None, text="The first of them. Prices are not known here."),
    )

FINE_TRIP = Rule[WeekAhead](
    id="week-ahead.fine-trip", level=Level.FINE, when=lambda w: w.trip,
    headline="Lasts the trip, never below {states.lowest}, and is full again {recovered.time} later.",
)
FINE = Rule[WeekAhead](
    id="week-ahead.fine", level=Level.FINE,
    headline="Lasts for as long as days are like this: never below {states.lowest}, {states.end} at the end.",
)
OWN_HOURS = Rule[WeekAhead](
    id="week-ahead.own-hours", level=Level.NOTE, source="practice",
    text=f"Our own choices: the week begins at midnight, solar time; driving from {week.DRIVE_FROM:g} o’clock, shore power from {week.LEAD_FROM:g} o’clock; where the sun stays up or down all day, night is from {daily_loads.BED:g} to {daily_loads.RISE:g} o’clock. A load longer than its part of the day runs on into the other.",
)
WHAT_IS_TRIED = Rule[WeekAhead](
    id="week-ahead.what-is-tried", level=Level.NOTE, source="practice",
    text=f"Tried, at most: panels of {{inputs.roof}}, {remedies.MOST_BANK:g} times the bank, {remedies.MOST_DRIVE / HOUR:g} h of driving a day, a charger of {remedies.MOST_CHARGER:g} A as far as the bank takes it, every night on shore power, a bank at {remedies.WARM_BANK:g} °C; then the inverter, and the {remedies.BIGGEST} biggest loads halved or left out. Appliances of more than {remedies.MOST_DIRECT:g} W are hardly made for battery voltage.",
)

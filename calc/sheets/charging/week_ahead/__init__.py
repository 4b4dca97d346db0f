"""week-ahead: will the bank hold through the week?"""

from dataclasses import replace
from types import SimpleNamespace

from calc.energy import remedies, week
from calc.energy.panels import TILT_FLATTERS
from calc.energy.sun import BRIGHT_SKY
from calc.sheets.charging import sun_yield
from calc.sheets.charging.week_ahead.calculate import ALWAYS_ON, WHILE_USED, rest, run
from calc.sheets.parts.bank import CAPACITY, USUAL_SHARE, chemistry_field, from_state
from calc.sheets.parts.fields import EFFICIENCY, ROUTE
from calc.units.compare import at_least, at_most
from calc.units.kinds import (
    CHARGE,
    COUNT,
    CURRENT,
    ENERGY,
    NUMBER,
    POWER,
    RATIO,
    TEMPERATURE,
    TIME,
    VOLTAGE,
    heat,
)
from calc.units.kinds.energy import ANGLE, IRRADIATION
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Chart
from calc.worksheet.result_table import Table
from calc.worksheet.rows import Rows, Text
from calc.worksheet.work import Worksheet

SPARE = 0.1  # of the capacity above the floor, less is a near thing: common practice, no source
NEARLY_FULL = 0.95  # a lead-acid bank wants to get there once a week: common practice, no source
NEAR_FROST = 5.0  # °C, below which makers ask for less current into LFP: common practice, no source
HARD = 3600.0  # s, in which few banks may be emptied: common practice, no source

_ask = sun_yield.WORKSHEET.field


def _empties(v: SimpleNamespace) -> bool:
    return v.empty_after is not None


def _hard(v: SimpleNamespace) -> bool:
    return not at_most(v.peak_current, v.cold_capacity / HARD)


def _never_full(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.fullest, NEARLY_FULL)


def _worn(v: SimpleNamespace) -> bool:
    return bool(v.lead_acid) and not at_least(v.lowest_state, 0.5 - 1e-3)


def _frost(v: SimpleNamespace) -> bool:
    return bool(v.chemistry == "LFP" and v.temperature < 0)


def _tilted(v: SimpleNamespace) -> bool:
    return bool(v.tilt > 0)


def _leans(v: SimpleNamespace) -> bool:
    return v.array > 0 and not at_most(v.on_plane, TILT_FLATTERS * v.even_light)


def _low(v: SimpleNamespace) -> bool:
    return bool(v.low_sun)


WORKSHEET = Worksheet(
    id="week-ahead",
    title="Week ahead",
    question="Will the bank hold through the week?",
    entry_question="Will this van get through a grey week?",
    about="A bank hour by hour for a week, month by month, and what would carry it.",
    calculate=run,
    later_stages=rest,
    picture=Chart(
        states="hourly", lowest="lowest_state", floor="floor", nights="nights",
        sources=(("sun", "sun_hourly", "sun_brought"), ("driving", "drive_hourly", "drive_brought"), ("lead", "shore_hourly", "shore_brought")),
        load=("load_hourly", "load_taken"), caption="Seven days, the nights shaded: the bank, and what came in and went out",
    ),
    fields=(
        CAPACITY,
        chemistry_field("AGM"),
        from_state("100 %"),
        Rows(
            id="loads", label="Loads of a day", one="load", most=12,
            default="fridge:45 W:9.6 h; heater fan:30 W:9 h:night; LED strips:24 W:5 h:night; laptop:60 W:2 h:day:inverter",
            hint="Each with its watts while it runs and the hours it runs in a day. A fridge that runs two fifths of the time: 9.6 h.",
            columns=(
                Text(id="name", label="Name", example="fridge", hint="So that you know it again. Without “:” and “;”."),
                Quantity(id="watts", label="Power", symbol="P", kinds=(POWER,), low="0 W", high="20 kW", example="45 W", hint="While it runs; of a household appliance, at its plug."),
                Quantity(id="hours", label="Hours a day", symbol="t", kinds=(TIME,), low="0 h", high="24 h", example="9.6 h", hint="That it runs, pauses not counted."),
                Choice(id="when", label="When", default="all", options=(Option("all", "any hour"), Option("day"), Option("night")), hint="Spread evenly over that part of the day."),
                ROUTE,
            ),
        ),
        Quantity(id="array", label="Array", symbol="P", kinds=(POWER,), default="200 W", low="0 W", high="20 kW", hint="The power on the labels of all panels together."),
        replace(_ask("latitude"), default="57°"),
        replace(_ask("month"), default="November"),
        replace(_ask("sky"), default="30 %", hint="What this week brings of a cloudless one. Grey days 10 to 30 % (no source), typical months 43 to 87 %."),
        Quantity(id="drive_hours", label="Driving in a day", symbol="t_d", kinds=(TIME,), default="1 h", low="0 h", high="24 h", hint=f"From {week.DRIVE_FROM:g} o’clock on. Type what you are sure of."),
        Quantity(id="charger", label="Charger while driving", symbol="I_d", kinds=(CURRENT,), default="30 A", low="0 A", high="500 A", hint="What it gives the bank."),
        Quantity(id="shore_every", label="Nights from one lead to the next", symbol="n", kinds=(COUNT,), default="0", low="0", high="30", hint="1 is a lead every night, 0 is never. The first comes after so many days."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity, before you call it empty. Nothing is drawn below."),
        Quantity(id="voltage", advanced=True, label="Bank voltage under load", symbol="V", kinds=(VOLTAGE,), low="1 V", high="1000 V",
                 default_by=("chemistry", {"LFP": "12.8 V", "AGM": "12.2 V", "gel": "12.2 V", "flooded": "12.2 V"}), hint="On average. Twice or four times as much for a 24 V or 48 V bank."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="10 °C", low="-30 °C", high="60 °C", hint="Of the battery, through the week."),
        replace(EFFICIENCY, advanced=True, only_if=None),
        Quantity(id="idle", advanced=True, label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="1 kW", hint="Switched on with nothing on it, from its sheet. Counts if a load is on it."),
        Choice(id="inverter_on", advanced=True, label="Inverter stays on", default=ALWAYS_ON, options=(Option(ALWAYS_ON), Option(WHILE_USED)), hint="A fridge starts by itself, so it must stay on."),
        replace(_ask("tilt"), advanced=True),
        replace(_ask("facing"), advanced=True),
        _ask("losses"),
        _ask("turbidity"),
        _ask("altitude"),
        Quantity(id="shore_charger", advanced=True, label="Charger on the lead", symbol="I_l", kinds=(CURRENT,), default="20 A", low="0 A", high="500 A", hint="What it gives the bank."),
        Quantity(id="shore_hours", advanced=True, label="Hours on the lead", symbol="t_l", kinds=(TIME,), default="10 h", low="0 h", high="24 h", hint=f"From {week.LEAD_FROM:g} o’clock on."),
    ),
    results=(
        Output(id="lowest_state", label="Lowest state of charge", symbol="s_min", kind=RATIO, rounding=DOWN),
        Output(id="empty_after", label="Empty after", symbol="t_e", kind=TIME, rounding=DOWN, unit="hour", hide_if_none=True),
        Output(id="outlook", label="If every day is like this, empty"),
        Output(id="cheapest", label="Change that asks least", hide_if_none=True),
        Output(id="end_state", label="State at the end", symbol="s_7", kind=RATIO, rounding=DOWN),
        Output(id="floor", label="Empty, nothing drawn below", symbol="s_0", kind=RATIO, rounding=UP),
        Output(id="lowest_at", label="Lowest after", symbol="t_min", kind=TIME, unit="hour"),
        Output(id="daily_use", label="Asked of the bus in a day", symbol="E_d", kind=ENERGY, rounding=UP),
        Output(id="sun_day", label="Sun can bring in a day", symbol="E_s", kind=ENERGY, rounding=DOWN),
        Output(id="drive_day", label="Driving can bring in a day", symbol="E_g", kind=ENERGY, rounding=DOWN),
        Output(id="unmet", label="Loads went without", symbol="E_u", kind=ENERGY, rounding=UP, hide_if_none=True),
        Output(id="brought", label="What brought how much in the week"),
        Output(id="lost", label="Where energy went astray in the week"),
        Output(id="days", label="Day by day"),
        Output(id="months", label="The same van in each month, always with the same share of a clear sky"),
        Output(id="carrying", label="What would carry the week, the least first"),
        Output(id="remedies", label="All that was tried for that"),
    ),
    intermediates=(
        Output(id="cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE, rounding=DOWN),
        Output(id="full_energy", label="Energy when full", symbol="E_f", kind=ENERGY, rounding=DOWN),
        Output(id="coulombic", label="Charge given back", symbol="η_c", kind=RATIO),
        Output(id="energy_efficiency", label="Energy given back", symbol="η_e", kind=RATIO),
        Output(id="charge_voltage", label="Voltage while charging", symbol="V_c", kind=VOLTAGE),
        Output(id="bulk_current", label="Most current it takes", symbol="I_m", kind=CURRENT),
        Output(id="rated_time", label="Hours of the rating", symbol="H", kind=TIME, unit="hour"),
        Output(id="rated_current", label="Rated current", symbol="I_H", kind=CURRENT),
        Output(id="exponent", label="Peukert exponent", symbol="k", kind=NUMBER),
        Output(id="peak_current", label="With every load on at once", symbol="I_p", kind=CURRENT, rounding=UP),
        Output(id="on_plane", label="Clear day on the panels", symbol="H_T", kind=IRRADIATION, rounding=DOWN),
        Output(id="clear_sky", label="Clear day on level ground", symbol="H", kind=IRRADIATION, rounding=DOWN),
        Output(id="seen", label="Of light from all over, on the panels", symbol="F", kind=RATIO, digits=4),
        Output(id="even_light", label="On the panels if cloud spreads it", symbol="H_e", kind=IRRADIATION, rounding=DOWN),
        Output(id="light", label="The lower of the two", symbol="H_l", kind=IRRADIATION, rounding=DOWN),
        Output(id="noon", label="Height of the sun at noon", symbol="h", kind=ANGLE, rounding=DOWN),
        Output(id="daylight", label="From sunrise to sunset", symbol="t_s", kind=TIME, unit="hour"),
        Output(id="standard", label="Full sun", symbol="G_1", kind=heat.IRRADIANCE),
        Output(id="shore_night", label="A night on the lead can bring", symbol="E_n", kind=ENERGY, rounding=DOWN),
        Output(id="loads_day", label="Loads in a day", symbol="E_l", kind=ENERGY, rounding=UP),
        Output(id="inverter_day", label="Inverter on top in a day", symbol="E_i", kind=ENERGY, rounding=UP),
        Output(id="sun_brought", label="Brought by the sun", symbol="W_s", kind=ENERGY, rounding=DOWN),
        Output(id="drive_brought", label="Brought by driving", symbol="W_g", kind=ENERGY, rounding=DOWN),
        Output(id="shore_brought", label="Brought by the lead", symbol="W_n", kind=ENERGY, rounding=DOWN),
        Output(id="drawn", label="Taken out of the bank", symbol="W_o", kind=ENERGY, rounding=UP),
        Output(id="came", label="Came onto the bus", symbol="W_in", kind=ENERGY),
        Output(id="load_used", label="Went to the loads", symbol="W_l", kind=ENERGY, rounding=UP),
        Output(id="conversion", label="Lost in the inverter's conversion", symbol="W_c", kind=ENERGY, rounding=UP),
        Output(id="idle_lost", label="Lost to the inverter's own draw", symbol="W_0", kind=ENERGY, rounding=UP),
        Output(id="load_taken", label="Taken by loads and inverter", symbol="W_t", kind=ENERGY, rounding=UP),
        Output(id="charging_lost", label="Lost in charging", symbol="W_h", kind=ENERGY, rounding=UP),
        Output(id="heavy", label="Lost to heavy current", symbol="W_k", kind=ENERGY, rounding=UP),
        Output(id="stored", label="Put into the bank", symbol="W_b", kind=ENERGY, rounding=DOWN),
        Output(id="went", label="Left the bus", symbol="W_out", kind=ENERGY),
        Output(id="alone", label="Lost by the bank itself", symbol="W_a", kind=ENERGY, rounding=UP),
        Output(id="not_taken", label="Sun offered, not taken", symbol="W_x", kind=ENERGY),
        Output(id="fullest", label="Fullest after the first day", symbol="s_max", kind=RATIO, rounding=DOWN),
        Output(id="lasts", label="Lasts", symbol="t_l", kind=TIME, rounding=DOWN, unit="day"),
        Output(id="way_out", label="What then"),
    ),
    steps=(
        Step(of="floor", formula="1 - usable", says="Nothing more is drawn below."),
        Step(of="cold_factor", source="ieee-485", when=lambda v: v.lead_acid, says="A lead-acid bank gives less in the cold."),
        Step(of="cold_capacity", formula="capacity / cold_factor", source="ieee-485", when=lambda v: v.lead_acid, says="What is there in this cold."),
        Step(of="cold_capacity", formula="capacity", when=lambda v: not v.lead_acid, says="No factor for cold is published for this chemistry."),
        Step(of="full_energy", formula="cold_capacity * voltage", source="ohm", says="At the voltage under load."),
        Step(of="coulombic", source="charge-efficiency", says="Of {chemistry}, over most of the range; less near full."),
        Step(of="energy_efficiency", source="charge-efficiency", when=lambda v: v.lead_acid, says="The low figure of those published."),
        Step(of="energy_efficiency", source="practice", when=lambda v: not v.lead_acid, says="The low figure of what sellers claim."),
        Step(of="charge_voltage", formula="voltage * coulombic / energy_efficiency", source="charger-balance", says="Where the two agree: an amp going in costs more energy than an amp coming out gives."),
        Step(of="bulk_current", source="bulk-most", when=lambda v: v.lead_acid, says="A quarter of the capacity in an hour; near full it takes less, in proportion to what is missing."),
        Step(of="bulk_current", source="practice", when=lambda v: not v.lead_acid, says="Half of the capacity in an hour; only close to full it takes less."),
        Step(of="rated_current", formula="cold_capacity / rated_time", source="peukert", when=lambda v: v.lead_acid, says="Heavier currents take more than their charge, by the power {exponent} less 1 of how much heavier."),
        Step(of="peak_current", source="ohm", says="Each load's watts over {voltage}, the inverter's with its losses."),
        Step(of="on_plane", source="ineichen", says="The 15th of {month} without a cloud, from {daylight} of daylight."),
        Step(of="clear_sky", source="ineichen", when=_tilted, says="The same day, all of it on level ground."),
        Step(of="seen", source="liu-jordan", when=_tilted, says="(1 + cos β)/2 of the sky, and 20 % of (1 − cos β)/2 thrown back by the ground."),
        Step(of="even_light", formula="clear_sky * seen", source="liu-jordan", when=_tilted, says="As much light, but from all over the sky: then a tilt gains nothing."),
        Step(of="light", formula="min(on_plane, even_light)", when=_tilted, says="A grey week is nearer the lower, and the truth lies between: sun yield gives both."),
        Step(of="sun_day", formula="light * sky * array * (1 - losses) / standard", source="panel-rating", when=_tilted, says="Each hour brings its part."),
        Step(of="noon", source="clear-day", when=_low, says="Above a flat horizon: 90° less the angle between latitude and declination."),
        Step(of="sun_day", when=lambda v: not _tilted(v), formula="on_plane * sky * array * (1 - losses) / standard", source="panel-rating", says="Each hour brings its part."),
        Step(of="drive_day", formula="charger * charge_voltage * drive_hours", source="ohm", says="The charger's amps at the voltage while charging. What it loses itself is the engine's affair."),
        Step(of="shore_night", formula="shore_charger * charge_voltage * shore_hours", source="ohm", says="The same on a lead."),
        Step(of="loads_day", source="ohm", says="Watts times hours, added up."),
        Step(of="inverter_day", source="inverter-input", says="Conversion at {efficiency}, and {idle} while it is on."),
        Step(of="daily_use", formula="loads_day + inverter_day", says="Laid into the hours of day and night."),
        Step(of="sun_brought", source="bank-balance", says="Hour by hour: loads first, then the bank as far as it takes it; the sun comes before the charger, that before the lead."),
        Step(of="drive_brought", source="bank-balance", says="What was still taken of it."),
        Step(of="shore_brought", source="bank-balance", says="And of the lead."),
        Step(of="not_taken", source="bank-balance", says="The bank was full, or took no more."),
        Step(of="drawn", source="bank-balance", says="What sources did not cover, hour by hour."),
        Step(of="load_used", source="bank-balance", says="Of the loads, as long as there was something above the floor."),
        Step(of="unmet", source="bank-balance", when=lambda v: v.unmet is not None, says="What they asked for beyond that."),
        Step(of="load_taken", formula="load_used + conversion + idle_lost", says="With what the inverter added."),
        Step(of="came", formula="sun_brought + drive_brought + shore_brought + drawn", says="From the sources and out of the bank."),
        Step(of="went", source="bank-balance", formula="load_taken + heavy + charging_lost + stored", says="The same: nothing is lost on the way that is not listed."),
        Step(of="alone", source="practice", says="Self-discharge within what is published near 25 °C; twice as much for each 10 K above, in the cold not less."),
        Step(of="end_state", formula="from_state + (stored - drawn - alone) / full_energy", says="What went in less what came out."),
        Step(of="lowest_state", source="bank-balance", says="The least of all hours. Where nothing is drawn any more, the bank still loses a little by itself."),
        Step(of="lowest_at", source="bank-balance", says="Counted from the midnight at which the week begins."),
        Step(of="empty_after", source="bank-balance", when=_empties, says="The first time that the bank is at {floor} with a load still asking."),
        Step(of="outlook", says="The same day again and again. Where a day ends no lower than it began, no later one will: it holds."),
        Step(of="brought", says="Offered, and taken."),
        Step(of="lost", says="Each cause added up over the hours."),
        Step(of="days", says="From midnight to midnight, solar time."),
        Step(of="months", when=lambda v: v.months is not None, source="ineichen", says="With the sun of each month’s 15th and the same sky, loads and driving. In many places winter is greyer than summer: try a month with a sky of its own."),
        Step(of="carrying", when=lambda v: bool(v.carrying), says="Those of the tried that are enough."),
        Step(of="remedies", when=lambda v: bool(v.remedies), says="Each found by working the week again, until the bank is never empty in it. Amounts are what just does: take more. Asked is what is new, as a share of the most that is tried: of driving, array, bank and nights; of a load’s hours what is given up; of all that loads take what is fed otherwise; nothing where only a switch is pressed."),
        Step(of="cheapest", when=lambda v: v.cheapest is not None, says="The first of them. Prices are not known here."),
    ),
    rules=(
        Verdict(verdict=STOP, when=lambda v: v.below, says="The bank starts at {from_state}, where it counts as empty: charge it first."),
        Verdict(verdict=STOP, when=_empties, says="Empty after {empty_after}. {way_out}"),
        Verdict(verdict=CAUTION, when=lambda v: not v.charges, says="Lasts the week, down to {lowest_state}, but at {temperature} it takes no charge: nothing comes back."),
        Verdict(verdict=CAUTION, when=lambda v: v.chemistry == "LFP" and not at_least(v.temperature, NEAR_FROST), says="Lasts the week by this sum, down to {lowest_state}, but at {temperature} it may take its charge slowly, and a little colder not at all."),
        Verdict(verdict=CAUTION, when=lambda v: v.starts_alone, says="Lasts the week by this sum, down to {lowest_state}, but with an inverter that is off when something on it wants to start."),
        Verdict(verdict=CAUTION, when=_hard, says="Lasts the week by charge, but every load at once takes {peak_current}: few batteries of this size may give it."),
        Verdict(verdict=CAUTION, when=lambda v: v.forced, says="Lasts the week by this sum, down to {lowest_state}, but with a charger stronger than such a bank is usually given."),
        Verdict(verdict=CAUTION, when=lambda v: not v.holds and v.lasts is not None, says="Lasts the week, down to {lowest_state}, but it falls: empty after {lasts} of such days."),
        Verdict(verdict=CAUTION, when=lambda v: not v.holds, says="Lasts the week, down to {lowest_state}, and slowly falls."),
        Verdict(verdict=CAUTION, when=_worn, says="Lasts, down to {lowest_state}; below half wears a lead-acid bank fast."),
        Verdict(verdict=CAUTION, when=_never_full, says="Lasts, down to {lowest_state}, but is never nearly full again: a lead-acid bank suffers from that."),
        Verdict(verdict=CAUTION, when=_low, says="Lasts by this sum, down to {lowest_state}, but only with a sun that stands {noon} high at noon: a hill or a tree takes it."),
        Verdict(verdict=CAUTION, when=lambda v: not at_least(v.lowest_state, v.floor + SPARE), says="Lasts, but down to {lowest_state} with {floor} counted as empty: little to spare for a darker week."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.sky, BRIGHT_SKY) and v.array > 0, says="Lasts, down to {lowest_state}, under a nearly clear sky. Try a grey one."),
        Verdict(verdict=FINE, says="Holds for as long as days are like this: never below {lowest_state}, and {end_state} at the end."),
    ),
    remarks=(
        Remark(when=_frost, source="lfp-frost", says="Never charge an LFP battery below 0 °C: lithium plates out and the loss is permanent. Here no source is counted, not even for the loads."),
        Remark(when=lambda v: v.chemistry == "LFP" and 0 <= v.temperature < 10, source="practice", says="Near freezing an LFP battery takes a charge slowly; most makers ask for less current below 5 to 10 °C, and none below 0 °C. A night colder than typed stops the charging."),
        Remark(when=lambda v: v.forced, source="bulk-most", says="Lead-acid is usually given no more amps than a quarter of its A·h, LFP half (common practice): beyond that it heats. Counted is no more than that. Set the charger by the bank’s data sheet."),
        Remark(when=_leans, source="liu-jordan", says="Under cloud light comes from all over, and a tilt gains little: counted is {sky} of {even_light}, not of the {on_plane} of a clear day on panels tilted so. A bright week brings more."),
        Remark(when=lambda v: v.lead_acid and not v.charges, source="practice", says="At {temperature} a lead-acid bank must not be charged."),
        Remark(when=lambda v: v.chemistry == "LFP" and v.temperature > 0 and not v.charges, source="practice", says="At {temperature} most management systems stop the charging."),
        Remark(when=lambda v: v.chemistry == "LFP" and v.temperature < 25, source="practice", says="No published factor for cold LFP capacity is used here: expect less than this in the cold."),
        Remark(when=lambda v: v.lead_acid and v.cold_factor > 1.35, source="memory", says="The factor for cold below 4.4 °C is from memory, not from a text."),
        Remark(when=_never_full, source="incomplete-charge", says="Incomplete charging is the main cause of early loss in lead-acid banks. The fullest it gets after the first day is {fullest}: once a week, a whole night on a lead or a long drive."),
        Remark(when=_worn, source="practice", says="Below half wears a lead-acid bank fast; below a fifth it is damaged, and in frost its weak acid can freeze."),
        Remark(when=lambda v: v.starts_alone, source="practice", says="A load at any hour, such as a fridge, starts by itself: the inverter has to stay on day and night, and its own draw counts for all of it. What a hand switches on, put down for day or night."),
        Remark(when=_hard, source="practice", says="At {peak_current} the bank would be empty within an hour. Battery, cables and fuses may not be made for that: read the data sheets."),
        Remark(when=lambda v: _empties(v) or v.below, source="practice", says="When the bank cuts off, alarms for gas, smoke and carbon monoxide may fall silent with it, and a heater's fan stops hot. Keep alarms on batteries of their own, and leave a heater to run down before the bank is empty."),
        Remark(when=lambda v: not at_most(v.sky, BRIGHT_SKY) and v.array > 0, source="typical-sun", says="Typical months of three stations bring 43 to 87 % of clear days; a grey week far less."),
        Remark(level=NOTE, source="practice", says=f"Our own choices: the week begins at midnight, solar time; driving from {week.DRIVE_FROM:g} o’clock, a lead from {week.LEAD_FROM:g} o’clock; where the sun stays up or down all day, night is from {week.BED:g} to {week.RISE:g} o’clock. A load longer than its part of the day runs on into the other."),
        Remark(level=NOTE, source="ampere-hour-law", when=lambda v: v.lead_acid, says="Near full a lead-acid bank takes a current in proportion to what is missing, so short drives fill it badly."),
        Remark(level=NOTE, source="practice", says=f"Tried, at most: {remedies.MOST_ARRAY:g} W of array, {remedies.MOST_BANK:g} times the bank, {remedies.MOST_DRIVE / 3600:g} h of driving a day, every night on a lead; then the inverter, and the {remedies.BIGGEST} biggest loads halved or left out. An appliance made for battery voltage often takes fewer watts, which saves more than is shown."),
    ),
    valid="Days all alike: the same sky, loads and driving. Shade, snow on the panels, ageing, a monitor's and an alarm's own draw unless listed are not counted.",
    summary="down to {lowest_state}; empty: {outlook}",
    keep_distinct=(("lowest_state", "floor"),),
    tables=(
        Table(of="carrying", cards=True, columns=(
            Output(id="name", label="Change"), Output(id="asks", label="To"), Output(id="outlook", label="Then empty"))),
        Table(of="remedies", cards=True, folded=True, columns=(
            Output(id="name", label="Change"), Output(id="asks", label="To"), Output(id="enough", label="Enough"), Output(id="share", label="Asks, of the most tried", kind=RATIO, rounding=UP, digits=2),
            Output(id="lowest", label="Lowest then", kind=RATIO, rounding=DOWN), Output(id="outlook", label="Then empty"))),
        Table(of="months", columns=(
            Output(id="name", label="Month"), Output(id="outlook", label="Empty"), Output(id="sun", label="Sun in a day", kind=ENERGY, rounding=DOWN))),
        Table(of="brought", folded=True, columns=(
            Output(id="name", label="From"), Output(id="brought", label="Brought", kind=ENERGY, rounding=DOWN), Output(id="offered", label="Offered", kind=ENERGY, rounding=DOWN))),
        Table(of="lost", folded=True, columns=(Output(id="name", label="To"), Output(id="energy", label="Lost", kind=ENERGY, rounding=UP))),
        Table(of="days", folded=True, columns=(
            Output(id="name", label="Day"), Output(id="lowest", label="Lowest", kind=RATIO, rounding=DOWN), Output(id="highest", label="Highest", kind=RATIO, rounding=DOWN),
            Output(id="end", label="End", kind=RATIO, rounding=DOWN), Output(id="brought", label="Brought", kind=ENERGY, rounding=DOWN), Output(id="taken", label="Taken", kind=ENERGY, rounding=UP))),
    ),
)

"""week-ahead: will the bank hold through the week?"""

# fmt: off
from dataclasses import replace

from calc.energy import daily_loads, week
from calc.energy.daily_loads import When
from calc.energy.rules import bank
from calc.energy.rules import week as judged
from calc.energy.week import InverterOn, Question, Recovery
from calc.sheets.charging.week_ahead import tables
from calc.sheets.charging.week_ahead.calculate import calculate, later_stages
from calc.sheets.charging.week_ahead.words import (
    FINE,
    FINE_TRIP,
    LOADS_TRIED,
    OWN_HOURS,
    STEPS,
    WHAT_IS_TRIED,
)
from calc.sheets.parts import sun as asked
from calc.sheets.parts.bank import (
    CAPACITY,
    COLD_CUT_OFF,
    USUAL_SHARE,
    USUAL_VOLTAGE,
    chemistry_field,
    from_state,
)
from calc.sheets.parts.fields import EFFICIENCY, ROUTE
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
from calc.worksheet.declare import Output, Placed, placed
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Chart
from calc.worksheet.result_table import Table
from calc.worksheet.rows import Rows, Text
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="week-ahead",
    title="Week ahead",
    question="Will the bank last the week?",
    about="A bank hour by hour for a week, month by month, and what helps.",
    calculate=calculate,
    later_stages=later_stages,
    picture=Chart(
        states="hourly.states", lowest="lowest_state", floor="floor", nights="hourly.nights",
        sources=(("sun", "hourly.sun", "sun_brought"), ("driving", "hourly.drive", "drive_brought"), ("shore power", "hourly.shore", "shore_brought")),
        load=("hourly.loads", "load_taken"), caption="Seven days, the nights shaded: the bank, and what came in and went out",
    ),
    fields=(
        Choice(id="question", advanced=True, since=2, before=Question.WEEK, label="Purpose", of=Question, default=Question.WEEK, options=(Option(Question.WEEK, "week after week", aliases=("a week, and on and on",)), Option(Question.TRIP, "a trip, then recovery", aliases=("a trip of some nights, then recovery",))), hint="A trip may end low if it recovers afterwards."),
        Quantity(id="nights", advanced=True, since=2, only_if=("question", Question.TRIP), label="Nights of the trip", symbol="N", kinds=(COUNT,), default="2", low="1", high="14", hint="Calculated as this many whole days."),
        Choice(id="recovery", advanced=True, since=2, only_if=("question", Question.TRIP), label="Charging after the trip", of=Recovery, default=Recovery.SHORE, options=(Option(Recovery.SHORE, "shore power"), Option(Recovery.SUN, "sun alone"), Option(Recovery.DRIVING, "driving and sun")), hint="With every load off."),
        CAPACITY,
        chemistry_field("LFP"),
        replace(from_state("100 %"), advanced=True),
        Rows(
            id="loads", label="Loads of a day", one="load", most=12,
            default="fridge:45 W:9.6 h; heater fan:30 W:9 h:night; LED strips:24 W:5 h:night; laptop:60 W:2 h:day:inverter",
            hint="Watts while running and hours a day: a fridge at 40 %: 9.6 h.",
            columns=(
                Text(id="name", label="Name", example="fridge", hint="To recognise it. Without “:” and “;”."),
                Quantity(id="watts", label="Power", symbol="P", kinds=(POWER,), low="0 W", high="20 kW", example="45 W", hint="While it runs; of a household appliance, at its plug."),
                Quantity(id="hours", label="Hours a day", symbol="t", kinds=(TIME,), low="0 h", high="24 h", example="9.6 h", hint="Running time, without pauses."),
                Choice(id="when", label="When", default=When.ALWAYS, of=When,
                       options=(Option(When.ALWAYS, "any hour"), Option(When.DAYTIME), Option(When.NIGHT), *(Option(one, f"{one}, from {start:g}") for one, start in daily_loads.STARTS.items()), Option(When.TWICE, "morning and evening")),
                       hint="Spread over that time, or from that hour on."),
                ROUTE,
            ),
        ),
        Quantity(id="array", label="Array", symbol="P", kinds=(POWER,), default="400 W", low="0 W", high="20 kW", hint="The power on the labels of all panels together."),
        replace(asked.LATITUDE, advanced=True),
        replace(asked.MONTH, default="April"),
        replace(asked.SKY, advanced=True, default="50 %", hint="Share of a cloudless week's sun. Grey days: 10 to 30 %."),
        replace(asked.CLIMATE, advanced=True), asked.OWN_SKIES,
        Quantity(id="drive_hours", advanced=True, label="Driving in a day", symbol="t_d", kinds=(TIME,), default="1 h", low="0 h", high="24 h", hint=f"From {week.DRIVE_FROM:g} o’clock on. Type what you are sure of."),
        Quantity(id="charger", advanced=True, label="Charger while driving", symbol="I_d", kinds=(CURRENT,), default="30 A", low="0 A", high="500 A", hint="Its current into the bank."),
        Quantity(id="shore_every", advanced=True, label="Shore power: every how many nights", symbol="n", kinds=(COUNT,), default="0", low="0", high="30", hint="1 is every night, 0 is never, 3 is every third night."),
        Quantity(id="usable", advanced=True, label="Share you use", symbol="u", kinds=(RATIO,), low="1 %", high="100 %", default_by=("chemistry", USUAL_SHARE), hint="Of the capacity. Below that, nothing is drawn."),
        Quantity(id="voltage", advanced=True, label="Bank voltage under load", symbol="V", kinds=(VOLTAGE,), low="1 V", high="1000 V",
                 default_by=("chemistry", USUAL_VOLTAGE), hint="On average, of the whole bank."),
        Quantity(id="temperature", advanced=True, label="Battery temperature", symbol="T", kinds=(TEMPERATURE,), default="15 °C", low="-30 °C", high="60 °C", hint="Of the battery, through the week."),
        COLD_CUT_OFF,
        replace(EFFICIENCY, advanced=True, only_if=None),
        Quantity(id="idle", advanced=True, label="Inverter's own draw", symbol="P_0", kinds=(POWER,), default="15 W", low="0 W", high="1 kW", hint="Idle draw, from its sheet. Used if a load needs it."),
        Choice(id="inverter_on", advanced=True, label="Inverter stays on", of=InverterOn, default=InverterOn.WHILE_USED, options=(Option(InverterOn.ALWAYS, "day and night"), Option(InverterOn.WHILE_USED, "while used")), hint="A fridge starts at any hour, so it must stay on."),
        replace(asked.TILT, advanced=True),
        replace(asked.FACING, advanced=True),
        asked.LOSSES,
        asked.TURBIDITY,
        asked.ALTITUDE,
        *(replace(one, since=2) for one in (asked.REGULATOR, asked.PANEL_VOLTAGE, asked.AIR, asked.MOUNT, asked.HEAT_COEFFICIENT)),
        Quantity(id="roof", advanced=True, since=2, before="2000 W", label="Roof space for panels", symbol="P_m", kinds=(POWER,), default="800 W", low="0 W", high="20 kW", hint="Upper limit for suggestions."),
        Quantity(id="shore_charger", advanced=True, label="Charger on shore power", symbol="I_l", kinds=(CURRENT,), default="20 A", low="0 A", high="500 A", hint="Its current into the bank."),
        Quantity(id="shore_hours", advanced=True, label="Hours on shore power", symbol="t_l", kinds=(TIME,), default="10 h", low="0 h", high="24 h", hint=f"From {week.LEAD_FROM:g} o’clock on."),
    ),
    results=(
        Output(id="lowest_state", at="states.lowest", label="Lowest state of charge", symbol="s_min", kind=RATIO),
        Output(id="empty_after", at="states.emptied", label="Empty after", symbol="t_e", kind=TIME, unit="hour", long_unit="day", hide_if_none=True),
        Output(id="recovery_time", find=lambda w: w.recovered and w.recovered.time, label="Full again after", symbol="t_r", kind=TIME, hide_if_none=True),
        Output(id="outlook", find=tables.outlook_said, label="If every day is like this, empty", hide_if_none=True),
        Output(id="cheapest", find=tables.cheapest, label="Smallest change that helps", hide_if_none=True),
        Output(id="end_state", at="states.end", label="State at the end", symbol="s_7", kind=RATIO),
        Output(id="floor", at="bank.floor", label="Empty, nothing drawn below", symbol="s_0", kind=RATIO),
        Output(id="lowest_at", at="states.lowest_at", label="Lowest after", symbol="t_min", kind=TIME, unit="hour", long_unit="day"),
        Output(id="daily_use", at="day.use", label="Load on the battery in a day", symbol="E_d", kind=ENERGY),
        Output(id="sun_day", at="day.sun", label="Possible solar charge in a day", symbol="E_s", kind=ENERGY),
        Output(id="drive_day", at="day.drive", label="Possible charge from driving in a day", symbol="E_g", kind=ENERGY),
        Output(id="unmet", at="flows.unmet", label="Energy the loads did not get", symbol="E_u", kind=ENERGY, hide_if_none=True),
        Output(id="brought", find=tables.brought, label="Sources in the week"),
        Output(id="lost", find=tables.lost, label="Losses in the week"),
        Output(id="days", find=tables.days, label="Day by day"),
        Output(id="months", find=tables.months, label="The same van in each month"),
        Output(id="carrying", find=tables.carrying, label="What would help, smallest change first"),
        Output(id="remedies", find=tables.tried, label="All changes tried"),
    ),
    intermediates=(
        Output(id="recovery_days", find=lambda w: w.recovered and w.recovered.time, label="The same in days", kind=TIME, unit="day", digits=2, hide_if_none=True),
        Output(id="cold_factor", at="bank.cold_factor", label="Factor for cold", symbol="f", kind=NUMBER, digits=4),
        Output(id="cold_capacity", at="bank.capacity", label="Capacity at this temperature", symbol="C_T", kind=CHARGE),
        Output(id="full_energy", at="bank.full", label="Energy when full", symbol="E_f", kind=ENERGY),
        Output(id="coulombic", at="bank.coulombic", label="Charge given back", symbol="η_c", kind=RATIO),
        Output(id="energy_efficiency", at="bank.energy_efficiency", label="Energy given back", symbol="η_e", kind=RATIO),
        Output(id="charge_voltage", at="bank.charge_voltage", label="Voltage while charging", symbol="V_c", kind=VOLTAGE),
        Output(id="bulk_current", at="bank.bulk_current", label="Largest charging current", symbol="I_m", kind=CURRENT),
        Output(id="rated_time", at="bank.rated_time", label="Hours of the rating", symbol="H", kind=TIME, unit="hour"),
        Output(id="rated_current", at="bank.rated_current", label="Rated current", symbol="I_H", kind=CURRENT),
        Output(id="exponent", at="bank.exponent", label="Peukert exponent", symbol="k", kind=NUMBER),
        Output(id="peak_current", label="With every load on at once", symbol="I_p", kind=CURRENT),
        Output(id="clear_sky", at="sun.horizontal", label="Clear day on level ground", symbol="H", kind=IRRADIATION),
        Output(id="beyond", at="sun.extraterrestrial", label="Outside the atmosphere", symbol="H_0", kind=IRRADIATION),
        Output(id="sky_used", label="Share of a clear day used", symbol="k_u", kind=RATIO),
        Output(id="clearness", at="light.clearness", label="Share of the light outside the atmosphere", symbol="K_T", kind=RATIO),
        Output(id="diffuse_share", at="light.diffuse_share", label="Of it, diffuse", symbol="K_d", kind=RATIO, digits=4),
        Output(id="beam_ratio", at="light.beam_ratio", label="Sun's own light, on the panels against level", symbol="R_b", kind=NUMBER, digits=4),
        Output(id="sky_seen", at="sun.plane.sky_view_factor", label="Share of the sky they see", symbol="F_s", kind=RATIO, digits=4),
        Output(id="ground_seen", at="sun.plane.ground_view_factor", label="Share of ground they see", symbol="F_g", kind=RATIO, digits=4),
        Output(id="albedo", at="sun.plane.albedo", label="Light reflected by the ground", symbol="ρ", kind=RATIO),
        Output(id="light", at="light.on_plane", label="Usual day on the panels", symbol="H_k", kind=IRRADIATION),
        Output(id="heat_keeps", label="Power left with hot cells", symbol="η_T", kind=RATIO),
        Output(id="regulator_keeps", label="Power left by the regulator", symbol="η_r", kind=RATIO),
        Output(id="noon", at="sun.noon", label="Height of the sun at noon", symbol="h", kind=ANGLE),
        Output(id="daylight", at="sun.daylight", label="From sunrise to sunset", symbol="t_s", kind=TIME, unit="hour"),
        Output(id="standard", at="full_sun", label="Full sun", symbol="G_1", kind=heat.IRRADIANCE),
        Output(id="shore_night", at="day.shore_night", label="Possible charge from a night on shore power", symbol="E_n", kind=ENERGY),
        Output(id="loads_day", at="day.loads", label="Loads in a day", symbol="E_l", kind=ENERGY),
        Output(id="inverter_day", at="day.inverter", label="Inverter losses in a day", symbol="E_i", kind=ENERGY),
        Output(id="sun_brought", at="flows.sun", label="Charge from the sun", symbol="W_s", kind=ENERGY),
        Output(id="drive_brought", at="flows.drive", label="Charge from driving", symbol="W_g", kind=ENERGY),
        Output(id="shore_brought", at="flows.shore", label="Charge from shore power", symbol="W_n", kind=ENERGY),
        Output(id="drawn", at="flows.drawn", label="Taken out of the bank", symbol="W_o", kind=ENERGY),
        Output(id="came", at="flows.came", label="Total supplied", symbol="W_in", kind=ENERGY),
        Output(id="load_used", at="flows.load_used", label="Used by the loads", symbol="W_l", kind=ENERGY),
        Output(id="conversion", at="flows.conversion", label="Lost in the inverter's conversion", symbol="W_c", kind=ENERGY),
        Output(id="idle_lost", at="flows.idle", label="Lost to the inverter's idle draw", symbol="W_0", kind=ENERGY),
        Output(id="load_taken", at="flows.load_taken", label="Used by loads and inverter", symbol="W_t", kind=ENERGY),
        Output(id="charging_lost", at="flows.charging", label="Lost in charging", symbol="W_h", kind=ENERGY),
        Output(id="heavy", at="flows.heavy", label="Lost to high current", symbol="W_k", kind=ENERGY),
        Output(id="stored", at="flows.stored", label="Put into the bank", symbol="W_b", kind=ENERGY),
        Output(id="went", at="flows.went", label="Total used", symbol="W_out", kind=ENERGY),
        Output(id="alone", at="flows.alone", label="Lost to self-discharge", symbol="W_a", kind=ENERGY),
        Output(id="not_taken", at="flows.not_taken", label="Solar energy not used", symbol="W_x", kind=ENERGY),
        Output(id="fullest", at="states.fullest", label="Fullest after the first day", symbol="s_max", kind=RATIO, digits=2),
        Output(id="lasts", at="states.lasts", label="Lasts", symbol="t_l", kind=TIME, unit="day"),
        Output(id="way_out", find=tables.way_out, label="What happens then"),
    ),
    steps=STEPS,
    rules=(
        Placed(rule=bank.CHARGE_IN_FROST, at="charged", covers=frozenset({"bank.in-frost"})),
        Placed(rule=bank.CHARGE_OUTSIDE_TEMPERATURE, at="charged", covers=frozenset({"bank.too-hot"})),
        *placed("lowest_bank", bank.ACID_MAY_FREEZE),
        judged.STARTS_EMPTY, Placed(rule=judged.EMPTIES, headline="Empty after {empty_after}. {way_out}"),
        Placed(rule=bank.CHARGE_HELD_BACK, at="charged", covers=frozenset({"bank.in-frost"}), headline="Lasts, down to {lowest_state}, but at {temperature} the cold cut-off stops all charging: warm the bank."),
        Placed(rule=bank.IN_FROST, at="bank.shared", headline="Lasts, down to {lowest_state}; but at {temperature} the bank must not be charged until it is warmer."),
        Placed(rule=bank.TOO_HOT, at="bank.shared", headline="Lasts, down to {lowest_state}; but {temperature} is too hot for a battery."),
        Placed(rule=bank.COLD_BEYOND_TABLE, at="bank.shared", headline="Lasts, down to {lowest_state}; count on less: the published factors for cold end at −3.9 °C."),
        Placed(rule=bank.CHARGE_NEAR_FROST, at="charged", headline="Lasts, down to {lowest_state}, but at {temperature} it charges slowly, and if colder not at all.", text="Charge slowly: most makers of LFP allow less current below 5 to 10 °C, and none below 0 °C. A night colder than typed stops the charging."),
        Placed(rule=bank.CHARGE_OFF_ROOM, at="charged", headline="Lasts, down to {lowest_state}; but {temperature} needs a charging voltage that follows the battery's temperature."),
        judged.STARTS_ALONE, *placed("heaviest", bank.BEYOND_ANY_BANK), Placed(rule=bank.HEAVY_LOAD, at="heaviest", headline="Lasts by charge, but loads that run together draw {heaviest.current}, a heavy load for this bank: check its limit."), judged.CHARGER_TOO_STRONG, judged.PANELS_TOO_STRONG,
        judged.FALLS, judged.FALLS_SLOWLY, judged.WORN, judged.NEVER_FULL, judged.LOW_SUN_ONLY, judged.LITTLE_TO_SPARE,
        judged.NOT_RECOVERED,
        Placed(rule=judged.LATE, headline="Charge it another way after the trip: it lasts, down to {lowest_state}, but is full again only after {recovery_days}."),
        judged.SLOW_RECOVERY, FINE_TRIP, FINE,
        judged.BRIGHT, judged.NO_SOURCE_IN_FROST,
        *placed("bank.shared", bank.NO_FACTOR_FOR_COLD_LFP, bank.COLD_FROM_MEMORY), judged.ALARMS_FALL_SILENT,
        OWN_HOURS, judged.LEAD_ACID_FILLS_SLOWLY, WHAT_IS_TRIED, LOADS_TRIED,
    ),
    valid="All days equal: the same sky, loads and driving. Not included: shade, snow on the panels, ageing, and monitor and alarm draw unless listed.",
    summary="down to {lowest_state}",
    keep_distinct=(("lowest_state", "floor"),),
    tables=(
        Table(of="carrying", columns=(
            Output(id="name", label="Change"), Output(id="asks", label="Lasts these days with"), Output(id="for_good", label="Lasts for good with"))),
        Table(of="remedies", folded=True, columns=(
            Output(id="name", label="Change"), Output(id="asks", label="To"), Output(id="enough", label="Enough"), Output(id="for_good", label="For good"), Output(id="share", label="Size of the change", kind=RATIO, digits=2),
            Output(id="lowest", label="Lowest then", kind=RATIO), Output(id="outlook", label="Then empty"))),
        Table(of="months", columns=(
            Output(id="name", label="Month"), Output(id="outlook", label="Empty"), Output(id="sun", label="Sun in a day", kind=ENERGY))),
        Table(of="brought", folded=True, columns=(
            Output(id="name", label="From"), Output(id="brought", label="Brought", kind=ENERGY), Output(id="offered", label="Offered", kind=ENERGY))),
        Table(of="lost", folded=True, columns=(Output(id="name", label="To"), Output(id="energy", label="Lost", kind=ENERGY))),
        Table(of="days", folded=True, columns=(
            Output(id="name", label="Day"), Output(id="lowest", label="Lowest", kind=RATIO, digits=2), Output(id="highest", label="Highest", kind=RATIO, digits=2),
            Output(id="end", label="End", kind=RATIO, digits=2), Output(id="brought", label="Brought", kind=ENERGY), Output(id="taken", label="Taken", kind=ENERGY))),
    ),
    older_defaults=(
        {"chemistry": "AGM", "array": "200 W", "latitude": "57°", "month": "November", "sky": "30 %", "temperature": "10 °C", "inverter_on": "day and night"},
    ),
)

"""sun-yield: what will the roof bring on a day of this month?"""

# fmt: off
from dataclasses import replace

from calc.energy import voltages
from calc.energy.battery import Chemistry
from calc.energy.panels import FULL_SUN, RATED_CELL
from calc.energy.rules import bank as banks
from calc.energy.rules import panels as judged
from calc.energy.sun import SOLAR_CONSTANT
from calc.sheets.charging.sun_yield.calculate import calculate
from calc.sheets.charging.sun_yield.words import FINE, MONTHS, STEPS
from calc.sheets.parts.bank import BANK_TEMPERATURE, COLD_CUT_OFF, chemistry_field
from calc.sheets.parts.sun import (
    AIR,
    ALTITUDE,
    CLIMATE,
    FACING,
    HEAT_COEFFICIENT,
    LATITUDE,
    LOSSES,
    MONTH,
    MOUNT,
    OWN_SKIES,
    PANEL_VOLTAGE,
    REGULATOR,
    SKY,
    TILT,
    TURBIDITY,
)
from calc.units.constants import DAY
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    ENERGY,
    NUMBER,
    POWER,
    RATIO,
    RISE,
    TEMPERATURE,
    TIME,
    VOLTAGE,
    heat,
)
from calc.units.kinds.energy import ANGLE, IRRADIATION
from calc.worksheet.declare import Output, placed
from calc.worksheet.fields import Quantity
from calc.worksheet.next_steps import Lead, alike
from calc.worksheet.pictures import Months
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

WORKSHEET = Worksheet(
    id="sun-yield",
    title="Sun yield",
    question="How much will the panels charge?",
    about="Amp-hours from solar panels by latitude and month, flat or tilted.",
    calculate=calculate,
    fields=(
        LATITUDE,
        MONTH,
        Quantity(id="array", label="Array", symbol="P", kinds=(POWER,), default="400 W", low="1 W", high="20 kW", hint="The power on the labels of all panels together."),
        *(replace(one, advanced=True) for one in (TILT, FACING)),
        SKY,
        replace(CLIMATE, advanced=True), OWN_SKIES,
        Quantity(id="daily_use", advanced=True, label="You use in a day", symbol="E_u", kinds=(ENERGY,), optional=True, low="1 Wh", high="200 kWh", example="800 Wh", hint="Empty: not compared."),
        replace(chemistry_field(Chemistry.LFP, more=True), since=2),
        Quantity(id="stored", advanced=True, since=2, label="Share of your use through the bank", symbol="n", kinds=(RATIO,), default="60 %", low="0 %", high="100 %", hint="At night and under cloud. The rest comes directly from the panels."),
        Quantity(id="voltage", label="Charging voltage", symbol="U", kinds=(VOLTAGE,), low="1 V", high="1000 V", default_by=("chemistry", {name: f"{voltages.charge_end(name):.3g} V" for name in Chemistry}), hint="Of the bank while it is charged. Higher means fewer amp-hours."),
        LOSSES,
        BANK_TEMPERATURE,
        COLD_CUT_OFF,
        Quantity(id="sunshine", advanced=True, label="Hours of bright sunshine, if known", symbol="n", kinds=(TIME,), optional=True, low="0 h", high="24 h", example="5 h", hint="Daily mean from weather data. Replaces the sky's share."),
        Quantity(id="regulator_limit", advanced=True, since=2, optional=True, label="Regulator's rated current", symbol="I_r", kinds=(CURRENT,), low="1 A", high="1000 A", example="30 A", hint="On its label, into the bank. Empty: not compared."),
        REGULATOR, PANEL_VOLTAGE, AIR, MOUNT, HEAT_COEFFICIENT,
        TURBIDITY,
        ALTITUDE,
        Quantity(id="albedo", advanced=True, label="Light reflected by the ground", symbol="ρ", kinds=(RATIO,), default="20 %", low="0 %", high="90 %", hint="Grass 20 %, snow 60 to 80 % (no source). For tilted panels."),
    ),
    results=(
        Output(id="charge", label="Charge in a usual day", symbol="Q", kind=CHARGE, at="usual.charge"),
        Output(id="energy", label="Energy in a usual day", symbol="E", kind=ENERGY, at="usual.energy"),
        Output(id="covered", label="Share of your use", symbol="s", kind=RATIO, hide_if_none=True, at="usual.covered"),
        Output(id="needed", label="Share of your use needed to break even", symbol="s_b", kind=RATIO, hide_if_none=True, find=lambda y: None if y.usual.covered is None else y.usual.needed),
        Output(id="sun_hours", label="Full-sun hours", symbol="t", kind=TIME, unit="hour", at="usual.sun_hours"),
        Output(id="on_plane", label="Clear day, on the panel", symbol="H_T", kind=IRRADIATION, at="usual.clear.on_plane"),
        Output(id="clear_sky", label="Clear day, on level ground", symbol="H", kind=IRRADIATION, at="usual.clear.horizontal"),
        Output(id="extraterrestrial", label="Outside the atmosphere", symbol="H_0", kind=IRRADIATION, at="usual.clear.extraterrestrial"),
        Output(id="peak_current", label="Current at noon in full sun", symbol="I", kind=CURRENT, at="usual.array.peak_current"),
        Output(id="usual_plane", label="Usual day, on the panel", symbol="H_k", kind=IRRADIATION, at="usual.light.on_plane"),
        Output(id="best_month", label="Best month", words=MONTHS),
        Output(id="worst_month", label="Worst month", words=MONTHS),
        Output(id="worst_energy", label="Energy in the worst month", symbol="E_w", kind=ENERGY),
        Output(id="grey_energy", label="The same light, all spread by cloud", symbol="E_g", kind=ENERGY, at="usual.grey_energy"),
        Output(id="months", label="The year, month by month"),
        Output(id="skies", label="Measured: this month's share of a clear day"),
        Output(id="loss_parts", label="Parts of the usual losses"),
    ),
    intermediates=(
        Output(id="declination", label="Declination of the sun", symbol="δ", kind=ANGLE, at="usual.clear.declination"),
        Output(id="noon", label="Height of the sun at noon", symbol="h", kind=ANGLE, at="usual.clear.noon"),
        Output(id="daylight", label="From sunrise to sunset", symbol="N", kind=TIME, unit="hour", at="usual.clear.daylight"),
        Output(id="solar_constant", label="Sun at its mean distance", symbol="G_sc", kind=heat.IRRADIANCE, digits=5, find=lambda _: SOLAR_CONSTANT),
        Output(id="nearness", label="Factor for the sun's distance", symbol="E_0", kind=NUMBER, digits=4, at="usual.clear.earth_sun_factor"),
        Output(id="beyond", label="Sun outside the atmosphere", symbol="G_0", kind=heat.IRRADIANCE, digits=4, at="usual.clear.dni_extra"),
        Output(id="day", label="A day", symbol="D", kind=TIME, unit="hour", find=lambda _: DAY),
        Output(id="both_sines", label="sin φ sin δ", symbol="a", kind=NUMBER, digits=4, at="usual.clear.sines"),
        Output(id="both_cosines", label="cos φ cos δ sin ω", symbol="b", kind=NUMBER, digits=4, at="usual.clear.cosines"),
        Output(id="diffuse", label="Of that, from the blue sky", symbol="H_d", kind=IRRADIATION, at="usual.clear.diffuse"),
        Output(id="direct", label="Direct sunlight on the panel", symbol="H_b", kind=IRRADIATION, at="usual.clear.direct"),
        Output(id="sky_seen", label="Share of the sky it sees", symbol="F_s", kind=RATIO, digits=4, at="usual.clear.plane.sky_view_factor"),
        Output(id="ground_seen", label="Share of ground it sees", symbol="F_g", kind=RATIO, digits=4, at="usual.clear.plane.ground_view_factor"),
        Output(id="sky_used", label="Share of a clear day used", symbol="k_u", kind=RATIO, at="usual.sky.used"),
        Output(id="level", label="Usual day, on level ground", symbol="H_l", kind=IRRADIATION, at="usual.light.level"),
        Output(id="clearness", label="Share of the light outside the atmosphere", symbol="K_T", kind=RATIO, digits=4, at="usual.light.clearness"),
        Output(id="diffuse_share", label="Of it, diffuse", symbol="K_d", kind=RATIO, digits=4, at="usual.light.diffuse_share"),
        Output(id="beam_ratio", label="Direct sunlight, on the panel against level", symbol="R_b", kind=NUMBER, digits=4, at="usual.light.beam_ratio"),
        Output(id="by_voltage", label="Returned by the bank, by charge and voltage", symbol="η_v", kind=RATIO, at="usual.bank.by_voltage"),
        Output(id="published", label="Returned by the bank, as published", symbol="η_p", kind=RATIO, at="usual.bank.published"),
        Output(id="gives_back", label="Returned by the bank", symbol="η_e", kind=RATIO, at="usual.bank.gives_back"),
        Output(id="full_sun", label="Full sun", symbol="G_1", kind=heat.IRRADIANCE, find=lambda _: FULL_SUN),
        Output(id="bright", label="Light on the panel in the best hours", symbol="G_w", kind=heat.IRRADIANCE, at="usual.heat.bright"),
        Output(id="warming", label="Temperature rise per light", symbol="w", kind=heat.INSULANCE, at="usual.heat.warming"),
        Output(id="rise", label="Cells warmer than air by", symbol="ΔT", kind=RISE, at="usual.heat.rise"),
        Output(id="cell", label="Temperature of the cells", symbol="T_c", kind=TEMPERATURE, at="usual.heat.cell"),
        Output(id="standard", label="Cells as rated", symbol="T_r", kind=TEMPERATURE, find=lambda _: RATED_CELL),
        Output(id="over", label="Warmer than rated by", symbol="ΔT_r", kind=RISE, at="usual.heat.over"),
        Output(id="heat_keeps", label="Power left with hot cells", symbol="η_T", kind=RATIO, at="usual.heat_keeps"),
        Output(id="regulator_keeps", label="Power left by the regulator", symbol="η_r", kind=RATIO, at="usual.array.regulator_keeps"),
        Output(id="grey_charge", label="Charge of it, all spread by cloud", symbol="Q_g", kind=CHARGE, at="usual.grey_charge"),
        Output(id="usual_loss", label="Usual losses together", symbol="L_u", kind=RATIO, digits=6),
    ),
    steps=STEPS,
    rules=(
        *placed("bank", banks.CHARGE_IN_FROST, banks.CHARGE_OUTSIDE_TEMPERATURE),
        *placed("usual", judged.SUN_DOES_NOT_RISE, judged.PANEL_BELOW_BANK),
        *placed("bank", banks.CHARGE_HELD_BACK),
        *placed("usual", judged.SUN_SHORT, judged.SUN_TIGHT, judged.SUN_LOW, judged.PANEL_NEAR_BANK, judged.SWITCH_WASTES, judged.REGULATOR_TOO_SMALL),
        *placed("bank", banks.CHARGE_NEAR_FROST, banks.CHARGE_OFF_ROOM),
        *placed(
            "usual",
            judged.LOSSES_TOO_FEW, FINE,
            judged.SKY_NEARLY_CLEAR, judged.PANELS_ARE_LIVE, judged.ONE_CELL_IN_SHADE, judged.FLAT_PANEL,
            judged.WELL_ABOVE_BANK, judged.HEAT_NOT_COUNTED,
            judged.TILT_GAINS_LITTLE, judged.REGULATOR_HOLDS_BACK, judged.OPEN_VOLTAGE_IN_FROST, judged.FULL_BANK_TAKES_LESS,
        ),
        *placed("bank", banks.NEVER_CHARGE_IN_FROST),
    ),
    leads=(
        Lead(label="A week with these panels", sheet="week-ahead",
             carry=alike("array", "latitude", "month", "sky", "climate", "own_skies", "chemistry", "temperature", "cold_cut_off", "tilt", "facing", "losses", "turbidity", "altitude", "regulator", "panel_voltage", "air", "mount", "heat_coefficient")),
    ),
    valid="The 15th of the month over a flat, free horizon, panels clean. Single days differ widely from a usual one.",
    summary="about {charge} a day in {month}",
    picture=Months(rows="months", chosen="month", caption="A usual day of each month, with the sky that you chose"),
    tables=(
        Table(
            of="months",
            folded=True,
            columns=(
                Output(id="month", label="Month"),
                Output(id="extraterrestrial", label="Outside the atmosphere", kind=IRRADIATION),
                Output(id="on_plane", label="Clear day, on the panel", kind=IRRADIATION),
                Output(id="sky", label="Sky", kind=RATIO, digits=2),
                Output(id="energy", label="Usual day", kind=ENERGY),
                Output(id="charge", label="Charge", kind=CHARGE),
            ),
        ),
        Table(
            of="skies",
            folded=True,
            columns=(
                Output(id="place", label="Station"),
                Output(id="at", label="Latitude", kind=ANGLE),
                Output(id="share", label="Share of a clear day", kind=RATIO, digits=2),
            ),
        ),
        Table(of="loss_parts", folded=True, columns=(Output(id="loss", label="Loss"), Output(id="share", label="Share", kind=RATIO), Output(id="basis", label="Source"))),
    ),
    older_defaults=({"voltage": dict.fromkeys(Chemistry, "12.8 V")},),
)

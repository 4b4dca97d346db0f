"""sun-yield: what will the roof bring on a day of this month?"""

from types import SimpleNamespace

from calc.sheets.charging.sun_yield.calculate import MONTHS, MPPT, PWM, run
from calc.units.compare import at_least, at_most
from calc.units.kinds import (
    CHARGE,
    CURRENT,
    ENERGY,
    LENGTH,
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
from calc.units.shown import DOWN, UP
from calc.worksheet.declare import CAUTION, FINE, NOTE, STOP, Output, Remark, Step, Verdict
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.pictures import Months
from calc.worksheet.result_table import Table
from calc.worksheet.work import Worksheet

LOW_SUN = 15.0  # deg at noon, below which hills and trees decide: common practice, no source
BRIGHT_SKY = 0.85  # of clear days; the published months lie at 43 to 87 %
SPREADS = 1.1  # by how much a tilt may gain on cloud's even light before it is said
TIGHT = 1.25  # of what is used: charging loses some, and grey days come in a row; no source
FEW_LOSSES = 0.10  # less leaves out something of the published list
NEAR_VOLTAGE = 1.3  # panel over bank; a 12 V panel has 1.4: common practice, no source


def _plain(v: SimpleNamespace) -> bool:
    return v.air is None and v.regulator == MPPT


def _dark(v: SimpleNamespace) -> bool:
    return bool(v.on_plane == 0)


def _short(v: SimpleNamespace) -> bool:
    return v.covered is not None and not at_least(v.covered, 1.0)


def _low(v: SimpleNamespace) -> bool:
    return not at_least(v.noon, LOW_SUN)


def _tight(v: SimpleNamespace) -> bool:
    return v.covered is not None and not at_least(v.covered, TIGHT)


def _leans(v: SimpleNamespace) -> bool:
    return not at_most(v.energy, SPREADS * v.grey_energy)


def _near(v: SimpleNamespace) -> bool:
    return v.regulator == PWM and v.reached and not at_least(v.panel_voltage, NEAR_VOLTAGE * v.voltage)


def _warm(v: SimpleNamespace) -> bool:
    return v.air is not None


_names = {name: (name[:3], str(number), f"{number:02}") for number, name in enumerate(MONTHS, 1)}
_PWM = ("regulator", PWM)

WORKSHEET = Worksheet(
    id="sun-yield",
    title="Sun yield",
    question="What will the roof bring on a day of this month?",
    entry_question="How much will the panels charge?",
    about="Amp-hours from solar panels by latitude and month, flat or tilted.",
    calculate=run,
    fields=(
        Quantity(id="latitude", label="Latitude", symbol="φ", kinds=(ANGLE,), default="47°", low="-90°", high="90°", hint="North of the equator; south of it with a minus, like -34°."),
        Choice(id="month", label="Month", default="June", example="like June or 6", options=tuple(Option(name, aliases=tuple(dict.fromkeys(short for short in _names[name] if short != name))) for name in MONTHS), hint="Its 15th stands for it."),
        Quantity(id="array", label="Array", symbol="P", kinds=(POWER,), default="400 W", low="1 W", high="20 kW", hint="The power on the labels of all panels together."),
        Quantity(id="tilt", label="Tilt", symbol="β", kinds=(ANGLE,), default="0°", low="0°", high="90°", hint="From level. Flat on the roof is 0°."),
        Quantity(id="facing", label="Facing (180° = toward the equator)", symbol="γ", kinds=(ANGLE,), default="180°", low="0°", high="360°",
                 hint="90° east, 270° west, 0° toward the pole. North of the equator this is the compass; south of it 180° points north. Level panels face nowhere."),
        Quantity(id="sky", label="Sky, share of a clear day", symbol="k", kinds=(RATIO,), default="70 %", low="1 %", high="100 %",
                 hint="What a usual day brings of a cloudless one. Typical months of three stations: 43 to 87 %, see below. A grey day 10 to 30 % (no source)."),
        Quantity(id="daily_use", label="You use in a day", symbol="E_u", kinds=(ENERGY,), optional=True, low="1 W·h", high="200 kW·h", example="800 W·h", hint="Empty: not compared."),
        Quantity(id="voltage", label="Charging voltage", symbol="U", kinds=(VOLTAGE,), default="12.8 V", low="1 V", high="1000 V", hint="Of the bank while it is charged: 13 to 14.4 V at 12 V. Higher means fewer amp-hours."),
        Quantity(id="losses", advanced=True, label="Losses", symbol="L", kinds=(RATIO,), default="14 %", low="0 %", high="95 %", hint="Dirt, some shade, wiring and so on; what the 14 % are made of is listed below. Heat apart."),
        Quantity(id="sunshine", advanced=True, label="Hours of bright sun, if you know them", symbol="n", kinds=(TIME,), optional=True, low="0 h", high="24 h", example="5 h", hint="A day's mean in this month, as weather services list it. Then used in place of the sky's share."),
        Choice(id="regulator", advanced=True, label="Regulator", default=MPPT, options=(Option(MPPT, "MPPT (finds the best voltage)"), Option(PWM, "PWM (plain switch)")), hint="A plain switch holds the panel at the bank's voltage."),
        Quantity(id="panel_voltage", advanced=True, only_if=_PWM, label="Panel's voltage at best power", symbol="U_p", kinds=(VOLTAGE,), default="18 V", low="1 V", high="1000 V", hint="On its label as Vmp; panels in a row add."),
        Quantity(id="air", advanced=True, label="Air by day, to count the cells' heat", symbol="T_a", kinds=(TEMPERATURE,), optional=True, low="-50 °C", high="60 °C", example="25 °C", hint="Empty: heat is not counted."),
        Choice(id="mount", advanced=True, label="Mounting", default="close mount", options=(Option("open rack", "open, air all round"), Option("close mount", "close over the roof"), Option("glued", "glued or insulated behind")), hint="Air behind the panel cools it. Counts with the temperature above."),
        Quantity(id="heat_coefficient", advanced=True, label="Power lost per degree", symbol="c", kinds=(heat.DERATING,), default="0.45 %/K", low="0 %/K", high="1 %/K", hint="From the panel's sheet. Crystalline silicon 0.37 to 0.53 %/K."),
        Quantity(id="turbidity", advanced=True, label="Linke turbidity", symbol="T_L", kinds=(NUMBER,), default="3.0", low="1", high="10", hint="Haze of clear air: cold and clean 2, usual 3, hot or dusty 5 and more."),
        Quantity(id="altitude", advanced=True, label="Altitude", symbol="z", kinds=(LENGTH,), default="100 m", low="0 m", high="5000 m", hint="Higher up the air is thinner and the sun stronger."),
        Quantity(id="albedo", advanced=True, label="Light the ground throws back", symbol="ρ", kinds=(RATIO,), default="20 %", low="0 %", high="90 %", hint="Grass and earth 20 %, snow 60 to 80 % (no source). Only a tilted panel sees it."),
    ),
    results=(
        Output(id="charge", label="Charge in a usual day", symbol="Q", kind=CHARGE, rounding=DOWN),
        Output(id="energy", label="Energy in a usual day", symbol="E", kind=ENERGY, rounding=DOWN),
        Output(id="covered", label="Of what you use", symbol="s", kind=RATIO, rounding=DOWN, hide_if_none=True),
        Output(id="grey_energy", label="If cloud spreads all the light", symbol="E_g", kind=ENERGY, rounding=DOWN),
        Output(id="sun_hours", label="Hours of full sun, as it were", symbol="t", kind=TIME, rounding=DOWN, unit="hour"),
        Output(id="on_plane", label="Clear day, on the panel", symbol="H_T", kind=IRRADIATION, rounding=DOWN),
        Output(id="clear_sky", label="Clear day, on level ground", symbol="H", kind=IRRADIATION, rounding=DOWN),
        Output(id="extraterrestrial", label="Outside the air", symbol="H_0", kind=IRRADIATION, rounding=DOWN),
        Output(id="peak_current", label="Current at noon in full sun", symbol="I", kind=CURRENT, rounding=UP),
        Output(id="best_month", label="Best month"),
        Output(id="worst_month", label="Worst month"),
        Output(id="worst_energy", label="Energy in the worst month", symbol="E_w", kind=ENERGY, rounding=DOWN),
        Output(id="months", label="The year, month by month"),
        Output(id="skies", label="Measured: this month's share of a clear day"),
        Output(id="loss_parts", label="What the usual losses are made of"),
    ),
    intermediates=(
        Output(id="declination", label="Declination of the sun", symbol="δ", kind=ANGLE),
        Output(id="noon", label="Height of the sun at noon", symbol="h", kind=ANGLE, rounding=DOWN),
        Output(id="daylight", label="From sunrise to sunset", symbol="N", kind=TIME, unit="hour"),
        Output(id="solar_constant", label="Sun at its mean distance", symbol="G_sc", kind=heat.IRRADIANCE, digits=5),
        Output(id="nearness", label="Stronger as the sun is nearer", symbol="E_0", kind=NUMBER, digits=4),
        Output(id="beyond", label="Sun outside the air", symbol="G_0", kind=heat.IRRADIANCE, digits=4),
        Output(id="day", label="A day", symbol="D", kind=TIME, unit="hour"),
        Output(id="both_sines", label="sin φ sin δ", symbol="a", kind=NUMBER, digits=4),
        Output(id="both_cosines", label="cos φ cos δ sin ω", symbol="b", kind=NUMBER, digits=4),
        Output(id="diffuse", label="Of that, from the blue sky", symbol="H_d", kind=IRRADIATION),
        Output(id="direct", label="Sun's own light on the panel", symbol="H_b", kind=IRRADIATION),
        Output(id="sky_seen", label="Share of the sky it sees", symbol="F_s", kind=RATIO, digits=4),
        Output(id="ground_seen", label="Share of ground it sees", symbol="F_g", kind=RATIO, digits=4),
        Output(id="sky_used", label="Share of a clear day taken", symbol="k_u", kind=RATIO, rounding=DOWN),
        Output(id="full_sun", label="Full sun", symbol="G_1", kind=heat.IRRADIANCE),
        Output(id="bright", label="Light on the panel when it works most", symbol="G_w", kind=heat.IRRADIANCE, rounding=UP),
        Output(id="warming", label="Warming per light", symbol="w", kind=heat.INSULANCE),
        Output(id="rise", label="Cells warmer than air by", symbol="ΔT", kind=RISE, rounding=UP),
        Output(id="cell", label="Temperature of the cells", symbol="T_c", kind=TEMPERATURE, rounding=UP),
        Output(id="standard", label="Cells as rated", symbol="T_r", kind=TEMPERATURE),
        Output(id="over", label="Warmer than rated by", symbol="ΔT_r", kind=RISE, rounding=UP),
        Output(id="heat_keeps", label="Left of the power, cells hot", symbol="η_T", kind=RATIO, rounding=DOWN),
        Output(id="regulator_keeps", label="Left of it by the regulator", symbol="η_r", kind=RATIO, rounding=DOWN),
        Output(id="grey_charge", label="Charge under even cloud", symbol="Q_g", kind=CHARGE, rounding=DOWN),
        Output(id="usual_loss", label="Usual losses together", symbol="L_u", kind=RATIO, digits=6),
    ),
    steps=(
        Step(of="declination", source="almanac", says="How far the noon sun stands north of the equator on the 15th of {month}, as in 2023 or 2027; other years differ by a fraction of a degree."),
        Step(of="noon", source="clear-day", says="Above a flat horizon: 90° less the angle between latitude and declination."),
        Step(of="daylight", source="fao-56", says="Twice the sunset angle ω, with cos ω = −tan φ tan δ; none in polar night, the whole day in polar day."),
        Step(of="nearness", source="spencer", says="The earth's path is not quite a circle."),
        Step(of="beyond", formula="solar_constant * nearness", source="spencer", says="On a plane square to the sun."),
        Step(of="extraterrestrial", formula="beyond * (daylight * both_sines + day / 3.141592653589793 * both_cosines)", source="fao-56", says="On a level plane, summed from sunrise to sunset."),
        Step(of="clear_sky", source="ineichen", says="Summed every ten minutes over a day without a cloud, air of Linke turbidity {turbidity} at {altitude}. No day brings much more: an upper bound, not a forecast."),
        Step(of="diffuse", source="ineichen", says="What the beam leaves of it."),
        Step(of="direct", source="clear-day", says="By the angle between sun and panel, every ten minutes."),
        Step(of="sky_seen", source="liu-jordan", says="(1 + cos β)/2, the sky taken as equally bright all over."),
        Step(of="ground_seen", source="liu-jordan", says="(1 − cos β)/2."),
        Step(of="on_plane", formula="direct + diffuse * sky_seen + clear_sky * albedo * ground_seen", source="liu-jordan", says="Sun, sky and ground together, on a day without a cloud."),
        Step(of="sky_used", formula="(0.25 + 0.5 * sunshine / daylight) / (0.25 + 0.5)", source="fao-sunshine", when=lambda v: v.from_sunshine, says="From the hours of bright sun; even a sunless month gets a third of the clear sum."),
        Step(of="sky_used", formula="sky", when=lambda v: not v.from_sunshine, says="As you put it. It cuts the clear day's sum down to a usual day's."),
        Step(of="sun_hours", formula="on_plane * sky_used / full_sun", source="panel-rating", says="The time in full sun that would bring as much."),
        Step(of="rise", formula="bright * warming", source="panel-heat", when=_warm, says="In a light wind of 1 m/s, on a clear day, weighed by the light."),
        Step(of="cell", source="panel-heat", when=_warm, says="The rise on top of the air's {air}."),
        Step(of="over", formula="air + rise - standard", source="panel-rating", when=_warm, says="Labels are for cells at {standard}."),
        Step(of="heat_keeps", formula="max(1 - max(heat_coefficient * over, 0), 0)", source="panel-coefficients", when=_warm, says="Cold cells give a little more than their label; that is not counted."),
        Step(of="regulator_keeps", formula="voltage / panel_voltage", source="ohm", when=lambda v: v.regulator == PWM and v.reached, says="A plain switch passes the panel's current, at the bank's voltage."),
        Step(of="regulator_keeps", source="practice", when=lambda v: not v.reached, says="The panel's voltage is not above the bank's, so nothing flows."),
        Step(of="energy", formula="on_plane * sky_used / full_sun * array * (1 - losses)", source="panel-losses", when=_plain, says="The label's power for the hours of full sun, less the losses."),
        Step(of="energy", formula="on_plane * sky_used / full_sun * array * (1 - losses) * heat_keeps * regulator_keeps", source="panel-losses", when=lambda v: not _plain(v), says="The label's power for the hours of full sun, less losses, heat and what the regulator leaves."),
        Step(of="charge", formula="energy / voltage", source="ohm", says="Into the bank, as long as it is not full and takes it."),
        Step(of="covered", formula="energy / daily_use", when=lambda v: v.covered is not None, says="On a usual day; grey ones come in a row."),
        Step(of="grey_energy", formula="array * clear_sky * sky_used / full_sun * (sky_seen + albedo * ground_seen) * (1 - losses) * heat_keeps * regulator_keeps", source="liu-jordan",
             says="The same light on level ground, but from all over the sky: then a tilt gains nothing."),
        Step(of="grey_charge", formula="grey_energy / voltage", source="ohm", says="The same as charge."),
        Step(of="peak_current", formula="array / voltage", source="ohm", when=lambda v: v.regulator == MPPT, says="Label's power at the bank. Bright cloud edges can bring more for a moment."),
        Step(of="peak_current", formula="array / panel_voltage", source="ohm", when=lambda v: v.regulator == PWM, says="Label's current. Bright cloud edges can bring more for a moment."),
        Step(of="months", source="ineichen", says="The same sum for the 15th of each month, with the same share of a clear day and the same air."),
        Step(of="best_month", says="The month with the most energy."),
        Step(of="worst_month", says="The month with the least."),
        Step(of="worst_energy", source="ineichen", says="From the row of {worst_month}."),
        Step(of="skies", source="typical-sun", says="Published sums of a typical {month} on level ground, over our clear day at turbidity 3."),
        Step(of="usual_loss", source="panel-losses", says="Each takes its share of what the one before leaves: 1 − Π(1 − L)."),
        Step(of="loss_parts", source="panel-losses", says="Together {usual_loss}. The regulator's own loss is not among them."),
    ),
    rules=(
        Verdict(verdict=STOP, when=_dark, says="Nothing: in {month} the sun does not rise at {latitude}."),
        Verdict(verdict=STOP, when=lambda v: not v.reached, says="Nothing: through a plain switch a panel of {panel_voltage} cannot charge a bank at {voltage}."),
        Verdict(verdict=CAUTION, when=_short, says="About {charge} on a usual day of {month}, {covered} of what you use. The rest has to come from elsewhere."),
        Verdict(verdict=CAUTION, when=_tight, says="About {charge} on a usual day of {month}, {covered} of what you use: too little over for what charging loses and for grey days in a row."),
        Verdict(verdict=CAUTION, when=_low, says="At most {charge}, over a flat horizon: at noon the sun stands only {noon} high, and a hill or a tree takes it."),
        Verdict(verdict=CAUTION, when=_near, says="About {charge} while the panel is cool; hot, its {panel_voltage} falls near the bank's {voltage} and little flows."),
        Verdict(verdict=CAUTION, when=lambda v: not at_most(v.sky_used, BRIGHT_SKY), says="{charge} on a day almost without a cloud. Plan on fewer."),
        Verdict(verdict=CAUTION, when=_leans, says="Between {grey_charge} and {charge} on a usual day of {month}: under cloud the tilt gains little."),
        Verdict(verdict=CAUTION, when=lambda v: not at_least(v.losses, FEW_LOSSES), says="{charge} on a usual day of {month}, with hardly anything lost on the way. Roofs seldom do so well."),
        Verdict(verdict=FINE, says="About {charge} on a usual day of {month}, {sky_used} of what a cloudless one would bring."),
    ),
    remarks=(
        Remark(source="practice", says="Panels are live in any daylight and have no switch. Work on them covered; never pull a plug under load; several in a row reach a voltage that kills. Follow the makers' order of connection, and local rules; roofs are to fall from."),
        Remark(source="practice", says="One shaded cell holds back its whole string: a vent, a rack or a branch costs far more than its shadow. The losses count only a little shade."),
        Remark(source="lfp-frost", says="Never charge an LFP battery below 0 °C: on a bright frosty morning the sun will try. Battery or regulator must cut off by the cells' temperature."),
        Remark(source="practice", when=lambda v: _low(v) and not _dark(v), says="At noon the sun stands {noon} high, and lower before and after: a hill, a house or a row of trees takes most of this."),
        Remark(source="practice", when=lambda v: v.tilt < 10, says="Lying flat, a panel keeps dirt, leaves and snow. Under snow it gives nothing."),
        Remark(source="liu-jordan", when=_leans, says="The sum takes a usual day as a clear day, only weaker. Under cloud light comes from all over and the tilt gains little: then it is {grey_energy} instead of {energy}. The truth lies between."),
        Remark(source="typical-sun", when=lambda v: not at_most(v.sky_used, BRIGHT_SKY), says="The clear day is an upper bound. Of it, typical months of three stations reach 43 to 87 %."),
        Remark(source="practice", when=lambda v: not v.reached or _near(v), says="A panel has to stand well above the bank's charging voltage, hot as it gets. Put panels in a row, or take a regulator that finds the best voltage."),
        Remark(source="panel-losses", when=lambda v: not at_least(v.losses, FEW_LOSSES), says="The published list comes to 14 % without heat, regulator or real shade."),
        Remark(source="practice", when=_dark, says="The bank stands alone until the sun is back: shore, engine or less use."),
        Remark(source="panel-coefficients", when=lambda v: v.air is None, says="Heat is not counted: hot cells lose about 0.45 % of their power per degree. Type the air's temperature to see it."),
        Remark(level=NOTE, source="panel-coefficients", says="In frost a panel's open voltage rises by a third of a percent for each degree below 25 °C: it must stay below the regulator's limit. Size wires and fuses by {peak_current} and the makers' sheets."),
        Remark(level=NOTE, source="practice", says="A bank near full takes less than the sun offers, and gives back less than it took. In many places winter is greyer than summer: lower the sky's share for it."),
    ),
    valid="The 15th of the month over a flat, free horizon, panels clean. Single days lie far to both sides of a usual one.",
    summary="about {charge} a day in {month}",
    picture=Months(rows="months", chosen="month", caption="A usual day of each month, with the same share of a clear one"),
    tables=(
        Table(
            of="months",
            folded=True,
            columns=(
                Output(id="month", label="Month"),
                Output(id="extraterrestrial", label="Outside the air", kind=IRRADIATION, rounding=DOWN),
                Output(id="on_plane", label="Clear day, on the panel", kind=IRRADIATION, rounding=DOWN),
                Output(id="energy", label="Usual day", kind=ENERGY, rounding=DOWN),
                Output(id="charge", label="Charge", kind=CHARGE, rounding=DOWN),
            ),
        ),
        Table(
            of="skies",
            folded=True,
            columns=(
                Output(id="place", label="Station"),
                Output(id="at", label="Latitude", kind=ANGLE),
                Output(id="share", label="Share of a clear day", kind=RATIO, rounding=DOWN, digits=2),
            ),
        ),
        Table(of="loss_parts", folded=True, columns=(Output(id="loss", label="Loss"), Output(id="share", label="Share", kind=RATIO))),
    ),
)

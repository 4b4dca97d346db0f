"""The working of sun-yield in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.panels import Regulator, SolarYield
from calc.energy.sun import Month
from calc.energy.usual_day import CLEAREST, GREYEST
from calc.judge import Level, Rule
from calc.sheets.charging.sun_yield.calculate import SunYield
from calc.worksheet.declare import Step

MONTHS: dict[str, str] = {one: one.value for one in Month}


def _warm(found: SunYield) -> bool:
    return found.usual.heat is not None


def _plain_switch(found: SunYield) -> bool:
    return found.usual.array.regulator is Regulator.PWM


def _plain(found: SunYield) -> bool:
    return not _warm(found) and not _plain_switch(found)


def _typed(found: SunYield) -> bool:
    return found.typed_sky and not found.usual.sky.from_sunshine


def _compared(found: SunYield) -> bool:
    return found.usual.covered is not None


def _correlated(found: SunYield) -> bool:
    return GREYEST <= found.usual.light.clearness <= CLEAREST


STEPS: tuple[Step[SunYield], ...] = (
    Step(of="declination", source="almanac", text="How far north of the equator the noon sun is overhead on the 15th of {month}, as in 2023 or 2027; other years differ by a fraction of a degree."),
    Step(of="noon", source="clear-day", text="Above a flat horizon: 90° less the angle between latitude and declination."),
    Step(of="daylight", source="fao-56", text="Twice the sunset angle ω, with cos ω = −tan φ tan δ; none in polar night, the whole day in polar day."),
    Step(of="nearness", source="spencer", text="The earth's orbit is not quite a circle."),
    Step(of="beyond", formula="solar_constant * nearness", source="spencer", text="On a plane square to the sun."),
    Step(of="extraterrestrial", formula="beyond * (daylight * both_sines + day / 3.141592653589793 * both_cosines)", source="fao-56", text="On a level plane, added up from sunrise to sunset."),
    Step(of="clear_sky", source="ineichen", text="Added up every ten minutes over a cloudless day, air of Linke turbidity {turbidity} at {altitude}. On level ground no day gives much more."),
    Step(of="diffuse", source="ineichen", text="The rest after the direct beam."),
    Step(of="direct", source="clear-day", text="By the angle between sun and panel, every ten minutes."),
    Step(of="sky_seen", source="liu-jordan", text="(1 + cos β)/2, the sky taken as equally bright."),
    Step(of="ground_seen", source="liu-jordan", text="(1 − cos β)/2."),
    Step(of="on_plane", formula="direct + diffuse * sky_seen + clear_sky * albedo * ground_seen", source="liu-jordan", text="Sun, sky and ground together, on a day without a cloud."),
    Step(of="sky_used", formula="(0.25 + 0.5 * sunshine / daylight) / (0.25 + 0.5)", source="fao-sunshine", when=lambda y: y.usual.sky.from_sunshine, text="From the hours of sunshine; even a sunless month gets a third of the clear total."),
    Step(of="sky_used", formula="sky", when=_typed, text="As you typed it. It reduces the clear day's total on level ground to a usual day's."),
    Step(of="sky_used", source="typical-sun", when=lambda y: y.usual.sky.measured, text="{climate}: its share of the light outside the atmosphere in {month}, at your latitude, divided by our clear day."),
    Step(of="sky_used", source="practice", when=lambda y: not y.usual.sky.measured and not y.usual.sky.from_sunshine and not _typed(y), text="Your own for {month}."),
    Step(of="level", formula="clear_sky * sky_used", text="Light on level ground."),
    Step(of="clearness", formula="level / extraterrestrial", source="erbs", when=lambda y: 0 < y.usual.light.clearness < 1, text="How clear the sky is."),
    Step(of="diffuse_share", formula="1.391 - 3.56 * clearness + 4.189 * clearness**2 - 2.137 * clearness**3", source="erbs", when=lambda y: _correlated(y) and y.usual.light.winter, text="By how clear the month is, for a sun that sets early."),
    Step(of="diffuse_share", formula="1.311 - 3.022 * clearness + 3.427 * clearness**2 - 1.821 * clearness**3", source="erbs", when=lambda y: _correlated(y) and not y.usual.light.winter, text="By how clear the month is, for a sun that sets late."),
    Step(of="diffuse_share", source="erbs", when=lambda y: not _correlated(y), text="Below a clearness of 0.3 a straight line to a sky without a sun (our choice), above 0.8 as there."),
    Step(of="beam_ratio", source="klein", text="Added up over the day outside the atmosphere, where no haze weakens a low sun."),
    Step(of="usual_plane", formula="level * ((1 - diffuse_share) * beam_ratio + diffuse_share * sky_seen + albedo * ground_seen)", source="klein", when=lambda y: not y.usual.light.held and y.usual.clear.direct > 0, text="Direct light projected onto the panel, the rest from an evenly bright sky."),
    Step(of="usual_plane", source="klein", when=lambda y: y.usual.light.held or not y.usual.clear.direct > 0, text="Sun, sky and ground together, and no more than a clear or an evenly grey day gives."),
    Step(of="sun_hours", formula="usual_plane / full_sun", source="panel-rating", text="The time in full sun that would give as much."),
    Step(of="rise", formula="bright * warming", source="panel-heat", when=_warm, text="In a light wind of 1 m/s, on a clear day, weighted by the light."),
    Step(of="cell", source="panel-heat", when=_warm, text="The rise on top of the air's {air}."),
    Step(of="over", formula="air + rise - standard", source="panel-rating", when=_warm, text="Labels are for cells at {standard}."),
    Step(of="heat_keeps", formula="max(1 - max(heat_coefficient * over, 0), 0)", source="panel-coefficients", when=_warm, text="Cold cells give a little more than their label; that is not included."),
    Step(of="regulator_keeps", formula="voltage / panel_voltage", source="ohm", when=lambda y: _plain_switch(y) and y.usual.array.reached, text="A PWM regulator passes the panel's current at the bank's voltage."),
    Step(of="regulator_keeps", source="practice", when=lambda y: not y.usual.array.reached, text="The panel's voltage is not above the bank's, so nothing flows."),
    Step(of="energy", formula="usual_plane / full_sun * array * (1 - losses)", source="panel-losses", when=_plain, text="The label's power for the hours of full sun, less the losses."),
    Step(of="energy", formula="usual_plane / full_sun * array * (1 - losses) * heat_keeps * regulator_keeps", source="panel-losses", when=lambda y: not _plain(y), text="The label's power for the hours of full sun, less the losses by heat, regulator and the rest."),
    Step(of="charge", formula="energy / voltage", source="ohm", text="Into the bank, as long as it accepts it."),
    Step(of="covered", formula="energy / daily_use", when=_compared, text="On a usual day; grey ones come in a row."),
    Step(of="by_voltage", source="charge-efficiency", when=_compared, text="Charge returned at the voltage under load, divided by the charging voltage."),
    Step(of="published", source="charge-efficiency", when=_compared, text="The lowest published value for {chemistry}."),
    Step(of="gives_back", formula="min(by_voltage, published)", when=_compared, text="The lower of the two."),
    Step(of="needed", formula="1 - stored + stored / gives_back", when=_compared, text="Use directly from the panels has no storage loss; use through the bank has."),
    Step(of="grey_energy", formula="array * level / full_sun * (sky_seen + albedo * ground_seen) * (1 - losses) * heat_keeps * regulator_keeps", source="liu-jordan",
         text="The same light on level ground, but all of it diffuse: then a tilt gains nothing."),
    Step(of="grey_charge", formula="grey_energy / voltage", source="ohm", text="The same as charge."),
    Step(of="peak_current", formula="array / voltage", source="ohm", when=lambda y: not _plain_switch(y), text="Label's power at the bank. Bright cloud edges can give more for a moment."),
    Step(of="peak_current", formula="array / panel_voltage", source="ohm", when=_plain_switch, text="Label's current. Bright cloud edges can give more for a moment."),
    Step(of="months", source="ineichen", text="The same for the 15th of each month, with its own sky where you chose one, and the same air."),
    Step(of="best_month", text="The month with the most energy."),
    Step(of="worst_month", text="The month with the least."),
    Step(of="worst_energy", source="ineichen", text="From the row of {worst_month}."),
    Step(of="skies", source="typical-sun", text="Published totals of a typical {month} on level ground, divided by our clear day at turbidity 3."),
    Step(of="usual_loss", source="panel-losses", text="Each applies to what the one before leaves: 1 − Π(1 − L). The total is published."),
    Step(of="loss_parts", source="practice", text="Parts by common practice, and the rest of the published {usual_loss}. Heat is separate; the regulator's own loss is not included."),
)

FINE = Rule[SolarYield](
    id="sun-yield.fine", level=Level.FINE,
    headline="About {charge} on a usual day of {month}, with {sky.used} of a clear day's light.",
)

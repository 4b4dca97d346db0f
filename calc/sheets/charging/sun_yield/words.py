"""The working of sun-yield in words, and what its answer says when nothing is wrong."""

# fmt: off
from calc.energy.panels import Regulator, SolarYield
from calc.energy.sun import Month
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


STEPS: tuple[Step[SunYield], ...] = (
    Step(of="declination", source="almanac", text="How far the noon sun stands north of the equator on the 15th of {month}, as in 2023 or 2027; other years differ by a fraction of a degree."),
    Step(of="noon", source="clear-day", text="Above a flat horizon: 90° less the angle between latitude and declination."),
    Step(of="daylight", source="fao-56", text="Twice the sunset angle ω, with cos ω = −tan φ tan δ; none in polar night, the whole day in polar day."),
    Step(of="nearness", source="spencer", text="The earth's path is not quite a circle."),
    Step(of="beyond", formula="solar_constant * nearness", source="spencer", text="On a plane square to the sun."),
    Step(of="extraterrestrial", formula="beyond * (daylight * both_sines + day / 3.141592653589793 * both_cosines)", source="fao-56", text="On a level plane, summed from sunrise to sunset."),
    Step(of="clear_sky", source="ineichen", text="Summed every ten minutes over a day without a cloud, air of Linke turbidity {turbidity} at {altitude}. No day brings much more: an upper bound, not a forecast."),
    Step(of="diffuse", source="ineichen", text="What the beam leaves of it."),
    Step(of="direct", source="clear-day", text="By the angle between sun and panel, every ten minutes."),
    Step(of="sky_seen", source="liu-jordan", text="(1 + cos β)/2, the sky taken as equally bright all over."),
    Step(of="ground_seen", source="liu-jordan", text="(1 − cos β)/2."),
    Step(of="on_plane", formula="direct + diffuse * sky_seen + clear_sky * albedo * ground_seen", source="liu-jordan", text="Sun, sky and ground together, on a day without a cloud."),
    Step(of="sky_used", formula="(0.25 + 0.5 * sunshine / daylight) / (0.25 + 0.5)", source="fao-sunshine", when=lambda y: y.usual.sky.from_sunshine, text="From the hours of bright sun; even a sunless month gets a third of the clear sum."),
    Step(of="sky_used", formula="sky", when=lambda y: not y.usual.sky.from_sunshine, text="As you put it. It cuts the clear day's sum down to a usual day's."),
    Step(of="sun_hours", formula="on_plane * sky_used / full_sun", source="panel-rating", text="The time in full sun that would bring as much."),
    Step(of="rise", formula="bright * warming", source="panel-heat", when=_warm, text="In a light wind of 1 m/s, on a clear day, weighed by the light."),
    Step(of="cell", source="panel-heat", when=_warm, text="The rise on top of the air's {air}."),
    Step(of="over", formula="air + rise - standard", source="panel-rating", when=_warm, text="Labels are for cells at {standard}."),
    Step(of="heat_keeps", formula="max(1 - max(heat_coefficient * over, 0), 0)", source="panel-coefficients", when=_warm, text="Cold cells give a little more than their label; that is not counted."),
    Step(of="regulator_keeps", formula="voltage / panel_voltage", source="ohm", when=lambda y: _plain_switch(y) and y.usual.array.reached, text="A plain switch passes the panel's current, at the bank's voltage."),
    Step(of="regulator_keeps", source="practice", when=lambda y: not y.usual.array.reached, text="The panel's voltage is not above the bank's, so nothing flows."),
    Step(of="energy", formula="on_plane * sky_used / full_sun * array * (1 - losses)", source="panel-losses", when=_plain, text="The label's power for the hours of full sun, less the losses."),
    Step(of="energy", formula="on_plane * sky_used / full_sun * array * (1 - losses) * heat_keeps * regulator_keeps", source="panel-losses", when=lambda y: not _plain(y), text="The label's power for the hours of full sun, less losses, heat and what the regulator leaves."),
    Step(of="charge", formula="energy / voltage", source="ohm", text="Into the bank, as long as it is not full and takes it."),
    Step(of="covered", formula="energy / daily_use", when=lambda y: y.usual.covered is not None, text="On a usual day; grey ones come in a row."),
    Step(of="grey_energy", formula="array * clear_sky * sky_used / full_sun * (sky_seen + albedo * ground_seen) * (1 - losses) * heat_keeps * regulator_keeps", source="liu-jordan",
         text="The same light on level ground, but from all over the sky: then a tilt gains nothing."),
    Step(of="grey_charge", formula="grey_energy / voltage", source="ohm", text="The same as charge."),
    Step(of="peak_current", formula="array / voltage", source="ohm", when=lambda y: not _plain_switch(y), text="Label's power at the bank. Bright cloud edges can bring more for a moment."),
    Step(of="peak_current", formula="array / panel_voltage", source="ohm", when=_plain_switch, text="Label's current. Bright cloud edges can bring more for a moment."),
    Step(of="months", source="ineichen", text="The same sum for the 15th of each month, with the same share of a clear day and the same air."),
    Step(of="best_month", text="The month with the most energy."),
    Step(of="worst_month", text="The month with the least."),
    Step(of="worst_energy", source="ineichen", text="From the row of {worst_month}."),
    Step(of="skies", source="typical-sun", text="Published sums of a typical {month} on level ground, over our clear day at turbidity 3."),
    Step(of="usual_loss", source="panel-losses", text="Each takes its share of what the one before leaves: 1 − Π(1 − L)."),
    Step(of="loss_parts", source="panel-losses", text="Together {usual_loss}. The regulator's own loss is not among them."),
)

FINE = Rule[SolarYield](
    id="sun-yield.fine", level=Level.FINE,
    headline="About {charge} on a usual day of {month}, {sky.used} of what a cloudless one would bring.",
)

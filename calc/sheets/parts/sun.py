"""Fields of a roof in the sun that several worksheets ask in the same words."""

# fmt: off
from collections.abc import Mapping
from typing import Any

from calc.energy.cloud import MonthlySky, climate, climates, own_sky
from calc.energy.panels import Mount, Regulator
from calc.energy.sun import Month
from calc.units.kinds import LENGTH, NUMBER, RATIO, TEMPERATURE, VOLTAGE, heat
from calc.units.kinds.energy import ANGLE
from calc.worksheet.fields import Choice, Option, Quantity
from calc.worksheet.rows import Rows, Text

MONTH_OPTIONS = tuple(
    Option(one, aliases=tuple(dict.fromkeys(short for short in (one[:3], str(number), f"{number:02}") if short != one)))
    for number, one in enumerate(Month, 1)
)

LATITUDE = Quantity(id="latitude", label="Latitude", symbol="φ", kinds=(ANGLE,), default="47°", low="-90°", high="90°", hint="North of the equator; south of it with a minus, like -34°.")
MONTH = Choice(id="month", label="Month", of=Month, default=Month.JUNE, example="like June or 6", options=MONTH_OPTIONS, hint="Calculated for its 15th day.")
TILT = Quantity(id="tilt", label="Tilt", symbol="β", kinds=(ANGLE,), default="0°", low="0°", high="90°", hint="From level. Flat on the roof is 0°.")
FACING = Quantity(id="facing", label="Facing (180° = toward the equator)", symbol="γ", kinds=(ANGLE,), default="180°", low="0°", high="360°",
         hint="0° faces the pole, 90° east, 180° the midday sun, 270° west.")
SKY = Quantity(id="sky", label="Sky, share of a clear day", symbol="k", kinds=(RATIO,), default="70 %", low="1 %", high="100 %",
         hint="Usual day against a cloudless one: 43 to 101 % in twelve places.")
LOSSES = Quantity(id="losses", advanced=True, label="Losses", symbol="L", kinds=(RATIO,), default="14 %", low="0 %", high="95 %", hint="Dirt, some shade, wiring and so on, listed below. Heat apart.")
TURBIDITY = Quantity(id="turbidity", advanced=True, label="Linke turbidity", symbol="T_L", kinds=(NUMBER,), default="3.0", low="1", high="10", hint="Haze: cold, clean air 2, usual 3, hot or dusty 5.")
ALTITUDE = Quantity(id="altitude", advanced=True, label="Altitude", symbol="z", kinds=(LENGTH,), default="100 m", low="0 m", high="5000 m", hint="Higher up the air is thinner and the sun stronger.")
TYPED, OWN = "typed", "own"
CLIMATE = Choice(id="climate", label="Sky of each month", default=TYPED, since=2, before=TYPED, example="like Mannheim",
                 options=(Option(TYPED, "the share above, all year"), *(Option(name, place, group="As measured in") for name, place in climates().items()), Option(OWN, "my own twelve shares")),
                 hint="Choose the place whose weather is most like yours.")
OWN_SKIES = Rows(id="own_skies", label="Your own sky, January to December", one="month", most=12, advanced=True, since=2, only_if=("climate", OWN),
             default="January:40 %;February:45 %",
             hint="Add them in order. Months left out have the share above.",
             columns=(Text(id="name", label="Month", example="January", hint="In order from January."), Quantity(id="of_clear", label="Share of a clear day", symbol="k", kinds=(RATIO,), low="1 %", high="100 %", example="40 %", hint="Of a cloudless day’s light on level ground.")))
REGULATOR = Choice(id="regulator", advanced=True, label="Regulator", of=Regulator, default=Regulator.MPPT, options=(Option(Regulator.MPPT, "MPPT (finds the best voltage)"), Option(Regulator.PWM, "PWM (plain switch)")), hint="A plain switch holds the panel at the bank's voltage.")
PANEL_VOLTAGE = Quantity(id="panel_voltage", advanced=True, only_if=("regulator", Regulator.PWM), label="Panel's voltage at best power", symbol="U_p", kinds=(VOLTAGE,), default="18 V", low="1 V", high="1000 V", hint="On its label as Vmp; panels in a row add.")
AIR = Quantity(id="air", advanced=True, label="Air by day, to count the cells' heat", symbol="T_a", kinds=(TEMPERATURE,), optional=True, low="-50 °C", high="60 °C", example="25 °C", hint="Empty: heat is not counted.")
MOUNT = Choice(id="mount", advanced=True, label="Mounting", of=Mount, default=Mount.CLOSE_MOUNT, options=(Option(Mount.OPEN_RACK, "open, air all round", aliases=("open rack",)), Option(Mount.CLOSE_MOUNT, "close over the roof", aliases=("close mount",)), Option(Mount.GLUED, "glued or insulated behind")), hint="Air behind the panel cools it. Counts with the temperature above.")
HEAT_COEFFICIENT = Quantity(id="heat_coefficient", advanced=True, label="Power lost per degree", symbol="c", kinds=(heat.DERATING,), default="0.45 %/K", low="0 %/K", high="1 %/K", hint="From the panel's sheet. Crystalline silicon 0.37 to 0.53 %/K.")


def monthly_sky(name: str, rows: tuple[Mapping[str, Any], ...], typed: float) -> MonthlySky | None:
    """Return the sky of each month that the climate `name` or the reader's `rows` stand for.

    None where the share `typed` [0..1] goes for all months.
    """
    if name == OWN:
        return own_sky(tuple(row["of_clear"] for row in rows), typed)
    return None if name == TYPED else climate(name)

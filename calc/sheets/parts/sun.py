"""Fields of a roof in the sun that several worksheets ask in the same words."""

# fmt: off
from calc.energy.sun import Month
from calc.units.kinds import LENGTH, NUMBER, RATIO
from calc.units.kinds.energy import ANGLE
from calc.worksheet.fields import Choice, Option, Quantity

MONTH_OPTIONS = tuple(
    Option(one, aliases=tuple(dict.fromkeys(short for short in (one[:3], str(number), f"{number:02}") if short != one)))
    for number, one in enumerate(Month, 1)
)

LATITUDE = Quantity(id="latitude", label="Latitude", symbol="φ", kinds=(ANGLE,), default="47°", low="-90°", high="90°", hint="North of the equator; south of it with a minus, like -34°.")
MONTH = Choice(id="month", label="Month", of=Month, default=Month.JUNE, example="like June or 6", options=MONTH_OPTIONS, hint="Its 15th stands for it.")
TILT = Quantity(id="tilt", label="Tilt", symbol="β", kinds=(ANGLE,), default="0°", low="0°", high="90°", hint="From level. Flat on the roof is 0°.")
FACING = Quantity(id="facing", label="Facing (180° = toward the equator)", symbol="γ", kinds=(ANGLE,), default="180°", low="0°", high="360°",
         hint="90° east, 270° west, 0° toward the pole. North of the equator this is the compass; south of it 180° points north. Level panels face nowhere.")
SKY = Quantity(id="sky", label="Sky, share of a clear day", symbol="k", kinds=(RATIO,), default="70 %", low="1 %", high="100 %",
         hint="What a usual day brings of a cloudless one. Typical months of three stations: 43 to 87 %, see below. A grey day 10 to 30 % (no source).")
LOSSES = Quantity(id="losses", advanced=True, label="Losses", symbol="L", kinds=(RATIO,), default="14 %", low="0 %", high="95 %", hint="Dirt, some shade, wiring and so on; what the 14 % are made of is listed below. Heat apart.")
TURBIDITY = Quantity(id="turbidity", advanced=True, label="Linke turbidity", symbol="T_L", kinds=(NUMBER,), default="3.0", low="1", high="10", hint="Haze of clear air: cold and clean 2, usual 3, hot or dusty 5 and more.")
ALTITUDE = Quantity(id="altitude", advanced=True, label="Altitude", symbol="z", kinds=(LENGTH,), default="100 m", low="0 m", high="5000 m", hint="Higher up the air is thinner and the sun stronger.")

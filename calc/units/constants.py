"""Exact constants of time and temperature that every subject shares."""

from typing import Annotated

from calc.units.si import Celsius, Seconds, Tag

HOUR: Annotated[Seconds, Tag("an hour")] = 3600.0  # by definition
DAY: Annotated[Seconds, Tag("a day")] = 86400.0  # by definition
ABSOLUTE_ZERO: Annotated[Celsius, Tag("absolute zero")] = -273.15  # by definition

"""Exact constants of time and temperature that every subject shares."""

from typing import Annotated

from calc.units.si import Seconds, Tag

HOUR: Annotated[Seconds, Tag("an hour")] = 3600.0  # by definition
DAY: Annotated[Seconds, Tag("a day")] = 86400.0  # by definition

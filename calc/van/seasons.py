"""Trips and seasons as lists: each pattern of use, the year by months, and what would carry it."""

from __future__ import annotations

from collections.abc import Iterable

from calc.units.kinds import ENERGY, RATIO, TIME
from calc.units.shown import quantity_text
from calc.van.listed import ListTable
from calc.van.patterns import Worked, worked_patterns
from calc.van.record import Van

NEVER, NOT_ASKED, NOT_WORKED = "never", "not asked", "not worked"
_MOST_WAYS = 4  # of each pattern, the smallest first


def season_tables(van: Van) -> tuple[ListTable, ...]:
    """Return the lists of a van's trips and seasons, none for a van without a pattern of use."""
    found = worked_patterns(van)
    if not found:
        return ()
    tables = [_trips(found)]
    if any(one.months for one in found):
        tables.append(_year(found))
    if any(one.ways_out for one in found):
        tables.append(_ways_out(found))
    return tuple(tables)


def _trips(found: Iterable[Worked]) -> ListTable:
    return ListTable(
        id="trips",
        title="Trips and seasons",
        columns=("Pattern", "Result", "Lowest", "Empty after", "Full again after"),
        rows=tuple(_trip(one) for one in found),
        note="By the week's worksheet: all days equal, without shade, snow or ageing.",
    )


def _trip(one: Worked) -> tuple[str, ...]:
    if one.lowest is None:
        return one.part.name, one.sentence, NOT_WORKED, NOT_WORKED, NOT_WORKED
    lowest = quantity_text(one.lowest, RATIO, digits=2)
    empty = NEVER if one.empty_after is None else _time(one.empty_after)
    again = NOT_ASKED if one.recovery is None else _time(one.recovery)
    return one.part.name, one.sentence, lowest, empty, again


def _time(seconds: float) -> str:
    return quantity_text(seconds, TIME, digits=2)


def _year(found: Iterable[Worked]) -> ListTable:
    worked = [one for one in found if one.months]
    names = [month.name for month in worked[0].months]
    return ListTable(
        id="year",
        title="The year by months",
        columns=("Month", *(part for one in worked for part in _headings(one))),
        rows=tuple(
            (name, *(cell for one in worked for cell in _month(one, place)))
            for place, name in enumerate(names)
        ),
        note="The same use in each month, with that month's sky where a climate is chosen.",
    )


def _headings(one: Worked) -> tuple[str, str]:
    return f"{one.part.name}: sun in a day", f"{one.part.name}: empty"


def _month(one: Worked, place: int) -> tuple[str, str]:
    month = one.months[place]
    return quantity_text(month.sun, ENERGY, digits=2), month.outlook


def _ways_out(found: Iterable[Worked]) -> ListTable:
    return ListTable(
        id="ways-out",
        title="What would help",
        columns=("Pattern", "Change", "To", "Lowest then"),
        rows=tuple(
            (
                one.part.name,
                way.name,
                way.asks,
                quantity_text(way.lowest, RATIO, digits=2),
            )
            for one in found
            for way in one.ways_out[:_MOST_WAYS]
        ),
        note="The smallest change first. Two in one line are needed together.",
    )

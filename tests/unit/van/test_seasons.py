"""Trips and seasons of a van: by the week's worksheet, and nothing else."""

import calc
from calc.van.bind import filled
from calc.van.demos import demo
from calc.van.patterns import worked_patterns
from calc.van.seasons import season_tables

SOUND = demo("marram")
LONG = SOUND.changed({"patterns[1].nights": "9", "patterns[1].drive_hours": "0 h"})


def by_id(van):
    return {one.id: one for one in season_tables(van)}


def test_a_pattern_is_what_its_worksheet_says():
    for pattern in worked_patterns(SOUND):
        answer = calc.work("week-ahead", filled(SOUND, "week-ahead", pattern.part).texts)
        assert pattern.sentence == answer.sentence and pattern.verdict == answer.verdict
        assert pattern.lowest == answer.values["lowest_state"]
        assert pattern.recovery == answer.values["recovery_time"]
        assert [one.name for one in pattern.months] == [row[0] for row in answer.tables["months"]]


def test_the_year_has_twelve_months_for_each_pattern():
    year = by_id(SOUND)["year"]
    assert [row[0] for row in year.rows][::11] == ["January", "December"]
    assert len(year.columns) == 1 + 2 * len(SOUND.all("patterns"))
    assert len(year.rows) == 12


def test_a_month_has_its_own_sky_where_a_climate_is_chosen():
    south = SOUND.changed({f"patterns[{i}].climate": "lisbon" for i in (1, 2)})
    assert by_id(south)["year"].rows != by_id(SOUND)["year"].rows


def test_what_would_carry_a_trip_that_fails_stands_in_a_list():
    tables = by_id(LONG)
    trip = next(row for row in tables["trips"].rows if row[0] == "winter weekend")
    assert trip[3] != "never"
    ways = [row for row in tables["ways-out"].rows if row[0] == "winter weekend"]
    assert ways and all(len(row) == 4 for row in ways)
    assert "ways-out" not in by_id(SOUND)


def test_a_pattern_that_lacks_a_value_says_which():
    van = SOUND.changed({"patterns[1].month": "not seen"})
    trip = by_id(van)["trips"].rows[0]
    assert "month" in trip[1] and "not worked" in trip


def test_a_van_without_patterns_has_no_such_list():
    van = SOUND
    for _ in SOUND.all("patterns"):
        van = van.without("patterns[1]")
    assert season_tables(van) == ()

"""Worksheets without a van lead on to one another, and the figures go along."""

import re
import subprocess
import sys
from html import unescape

import pytest

import calc
from calc.render.next_steps import leads_html
from calc.worksheet.link import open_fragment, write
from tests.contract.samples import answers, sheets

LEADING = [sheet.id for sheet in sheets() if sheet.leads]


def way(answer, sheet: str):
    """Return the way on from an answer to a worksheet, worked there."""
    (move,) = (one for one in answer.leads if one.sheet == sheet)
    return calc.work(sheet, dict(move.texts))


def test_chains_that_a_reader_follows_are_there():
    ways = {(sheet.id, lead.sheet) for sheet in sheets() for lead in sheet.leads}
    assert ways >= {
        ("wire-size", "fuse-choice"), ("fuse-choice", "fault-current"),
        ("fault-current", "fuse-ladder"), ("heat-loss", "heater-night"),
        ("sun-yield", "week-ahead"), ("alternator-charge", "week-ahead"),
    }  # fmt: skip


@pytest.mark.parametrize("name", LEADING)
def test_a_lead_names_fields_and_values_that_are_there(name):
    sheet, answer = calc.find(name), calc.work(name)
    inputs = {field.id for field in sheet.fields}
    for lead in sheet.leads:
        there = {field.id for field in calc.find(lead.sheet).fields}
        assert {field for field, _ in lead.carry} <= there
        assert {*lead.needs, *lead.without} <= inputs
        for field, source in lead.carry:
            known = source[0] == "=" or "." in source or source in answer.values
            assert known, (field, source)


@pytest.mark.parametrize("name", LEADING)
def test_what_is_carried_opens_there_as_it_was(name):
    """Where the other sheet takes it at all: its limits may be narrower."""
    seen = set()
    for texts, answer in answers(name):
        for move in answer.leads:
            sheet = calc.find(move.sheet)
            carried = dict(move.texts)
            if sheet.problems(carried):
                continue
            opened = open_fragment(sheet, write(sheet, carried))
            assert opened.notes == (), texts
            there = sheet.read(opened.texts)[0]
            for lead in calc.find(name).leads:
                given = {n for n, one in answer.inputs.items() if one.value is not None}
                mine_too = given >= {*lead.needs} and not given & {*lead.without}
                if mine_too and (lead.label, lead.sheet) == (move.label, move.sheet):
                    for field, source in lead.carry:
                        mine = answer.inputs.get(source)
                        if field in carried and mine is not None and mine.applies:
                            number = isinstance(mine.value, float)
                            same = pytest.approx(mine.value) if number else mine.value
                            assert there[field].value == same, field
            seen.add(move.sheet)
    assert seen


@pytest.mark.parametrize("name", LEADING)
def test_the_link_on_the_page_opens_with_what_is_carried(name):
    fused = {"fuse": "60 A", "fuse_family": "SF51"}
    answer = calc.work(name, fused if name == "fault-current" else {})
    links = re.findall(r'href="\.\./([a-z-]+)/#([^"]*)"', str(leads_html(answer)))
    assert len(links) == len(answer.leads) > 0
    for (sheet, fragment), move in zip(links, answer.leads, strict=True):
        opened = open_fragment(calc.find(sheet), unescape(fragment))
        assert opened.notes == ()
        assert opened.texts == dict(move.texts)


def test_an_answer_loads_no_worksheet_that_it_only_leads_to():
    code = (
        "import sys, calc; from calc.render.answer import answer_html;"
        "answer_html(calc.work('sun-yield'));"
        "print('calc.sheets.charging.week_ahead' in sys.modules)"
    )
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "False"


def test_a_wire_goes_on_to_its_fuse_and_that_to_its_short():
    wire = calc.work("wire-size", {"current": "20 A", "length": "3.2 m", "series": "mm2"})
    fuse = way(wire, "fuse-choice")
    assert fuse.values["conductor"] == wire["conductor"]
    assert fuse.values["current"] == pytest.approx(20)
    short = way(fuse, "fault-current")
    assert short.values["conductor"] == wire["conductor"]
    assert short.values["fuse"] == fuse["fuse"].m_as("A")
    # what gets to the fuse is what a short at the source of the run passes
    assert short["near_fault"].m_as("A") == pytest.approx(fuse.values["fault_here"], rel=1e-4)
    order = way(short, "fuse-ladder")
    assert order.values["downstream"] == fuse["fuse"].m_as("A")


def test_a_fitted_fuse_goes_on_in_place_of_the_chosen_one():
    texts = {"fitted": "25 A", "fitted_family": "type C"}
    short = way(calc.work("fuse-choice", texts), "fault-current")
    assert short.values["fuse"] == 25
    assert "type C" in str(short.values["fuse_family"])


def test_a_cold_night_goes_on_with_the_heat_that_it_takes():
    cold = calc.work("heat-loss", {"outside": "-12 °C", "fuel": "propane", "draw": "20 W"})
    night = way(cold, "heater-night")
    assert night.values["loss"] == pytest.approx(cold.values["loss"], rel=5e-4), "four digits"
    assert night["charge"].m == pytest.approx(cold["charge"].m, rel=5e-4)


def test_sources_go_on_to_a_week_with_them():
    sun = way(calc.work("sun-yield", {"array": "330 W", "month": "March"}), "week-ahead")
    assert (sun.values["array"], sun.values["month"]) == (330, "March")
    drive = way(calc.work("alternator-charge", {"charger_limit": "40 A"}), "week-ahead")
    assert drive.values["charger"] == 40
    relay = calc.work("alternator-charge", {"method": "relay"})
    assert not [one for one in relay.leads if one.sheet == "week-ahead"]  # it has no rating
    shore = calc.work("shore-charge", {"charger": "25 A", "night": "9 h"})
    (week,) = (one for one in shore.values["moves"] if one.sheet == "week-ahead")
    night = calc.work("week-ahead", dict(week.texts))
    assert night.values["shore_charger"] == 25
    assert night.values["shore_hours"] == pytest.approx(9 * 3600)


def test_where_no_size_will_do_there_is_nothing_to_go_on_with():
    assert calc.work("wire-size", {"current": "1500 A", "length": "30 m"}).leads == ()

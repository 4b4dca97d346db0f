"""The lists of a van say what schedule, patterns and the sheet of joints say, and no more."""

import csv
import io

import pytest

import calc
from calc.units.kinds import CURRENT, ENERGY
from calc.units.shown import quantity_text
from calc.van.bind import filled
from calc.van.cards import charger_settings, fire_card, shutdown_card, still_live
from calc.van.demos import DEMOS, demo
from calc.van.files import read_van
from calc.van.listed import csv_of, is_formula
from calc.van.lists import Lists, hand_over, tables
from calc.van.schedule import schedule
from calc.van.values import State
from calc.worksheet.rows import joined
from tests.counts import chance, often
from tests.van_samples import drawn_van

IDS = (
    "circuit-schedule", "load-table", "fuse-list", "cable-cut-list", "joint-sheet",
    "bill-of-materials", "inspection-list", "service-log",
)  # fmt: skip
FILE = """
format = 1
none = ["alternator", "shore", "mains", "gas", "panels"]
[van]
name = "Dunlin"
system = "24 V"
[bank]
usable = "80 %"
[[batteries]]
name = "house bank"
chemistry = "LFP"
capacity = "100 Ah"
resistance = "10 mΩ"
units = "2"
fuse = "100 A"
fuse_family = "cartridge, class T"
[[batteries]]
name = "starter"
role = "starter"
chemistry = "AGM"
capacity = "80 Ah"
[[bars]]
name = "fuse block"
pole = "plus"
kind = "fuse-block"
[[isolators]]
name = "main switch"
place = "by the door"
in_line = "main-plus"
[[cables]]
name = "main plus"
pole = "plus"
from = "house-bank"
to = "fuse-block"
length = "1 m"
conductor = "6 AWG"
current = "20 A"
fuse = "60 A"
fuse_family = "cartridge, class T"
[[circuits]]
name = "fridge"
current = "3 A"
hours = "10 h"
from = "fuse-block.1"
length = "3 m"
[[circuits]]
name = "lamp"
power = "24 W"
hours = "2 h"
from = "fuse-block.2"
length = "2 m"
conductor = "14 AWG"
fuse = "none"
[[joints]]
name = "post"
stud = "M8"
maker_torque = "9 N·m"
grade = "brass"
joint = "battery terminal"
torque = [{planned = "9 N·m"},
  {measured = "8.8 N·m", evidence = "measured", who = "P. Moor", when = "2026-05-01"}]
[[joints]]
name = "post"
stud = "M6"
maker_torque = "4 N·m"
joint = "battery terminal"
[[patterns]]
name = "weekend"
[[log]]
date = "2026-04-30"
part = "fridge"
what = "drop"
value = "230 mV"
instrument = "meter 2"
who = "P. Moor"
[[log]]
date = "2025-04-02"
part = "Fridge"
what = "drop"
value = "240 mV"
[[log]]
date = "2026-04-30"
part = "fuse block"
what = "replaced"
value = "cover"
"""


@pytest.fixture(scope="module")
def van():
    return read_van(FILE)


@pytest.fixture(scope="module")
def lists(van):
    return {table.id: table for table in tables(van)}


def cell(table, row: str, column: str, at: int = 0) -> str:
    """Return a cell by its row's first or second cell and its column's heading."""
    own = [one for one in table.rows if row in one[:2]]
    return own[at][table.columns.index(column)].replace("\u00a0", " ")


def test_every_list_is_there_in_the_order_of_the_hand_over(lists):
    assert tuple(lists) == IDS


@pytest.mark.parametrize("name", DEMOS)
def test_every_row_of_a_demo_has_a_cell_for_every_column(name):
    for table in tables(demo(name)):
        assert len(set(table.columns)) == len(table.columns)
        assert {len(row) for row in table.rows} <= {len(table.columns)}
        assert table.blanks | table.numbers <= set(table.columns)
        assert all(0 <= place < len(table.rows) for place in table.sums)


def test_the_schedule_shows_each_run_as_it_is_worked(van, lists):
    table = lists["circuit-schedule"]
    assert [row[1] for row in table.rows] == ["fridge", "lamp", "main plus"], "circuits first"
    for row in schedule(van).rows:
        for column, found in (
            ("Current", row.current), ("Short circuit, highest", row.fault_high),
        ):  # fmt: skip
            shown = cell(table, row.part.name, column).replace(" ", "\u00a0")
            assert shown == ("" if found is None else quantity_text(found, CURRENT))
    assert cell(table, "fridge", "Current") == "3 A"
    assert "chosen: conductor" in cell(table, "fridge", "Note")
    assert cell(table, "fridge", "Length one way") == "3 m"
    assert cell(table, "lamp", "Fuse") == "none fitted"
    assert cell(table, "main plus", "Fuse") == "60 A"


def test_the_load_table_adds_up_by_hand(van, lists):
    """A fridge of 3 A on the bank's voltage for 10 h, a lamp of 24 W for 2 h: 48 Wh."""
    table = lists["load-table"]
    loads = calc.find("week-ahead").field("loads")
    (pattern,) = van.all("patterns")
    fridge, _ = loads.read(filled(van, "week-ahead", pattern).texts["loads"]).value
    assert cell(table, "lamp", "In a day") == "48 Wh"
    assert cell(table, "fridge", "Current") == "3 A"
    assert cell(table, "fridge", "Mark") == "F1"
    total = fridge["watts"] * fridge["hours"] + 48 * 60 * 60
    assert cell(table, "Total", "In a day") == quantity_text(total, ENERGY).replace("\u00a0", " ")
    assert 24 * 30 <= fridge["watts"] * 10 <= 29.2 * 30, "at a voltage that a bank of 24 V shows"


def test_a_pattern_with_its_own_loads_lists_these():
    own = joined([["kettle", "1200 W", "0.1 h", "morning", "by the inverter"]])
    try:
        van = read_van(FILE).changed({"patterns[1].loads": own})
    except calc.InputError:
        own = joined([["kettle", "1200 W", "0.1 h"]])
        van = read_van(FILE).changed({"patterns[1].loads": own})
    table = next(one for one in tables(van) if one.id == "load-table")
    assert [row[0] for row in table.rows] == ["kettle", "Total"]
    assert cell(table, "kettle", "In a day") == "120 Wh"


def test_a_pattern_whose_loads_are_not_known_says_which_value_is_missing():
    van = read_van(FILE).changed({"circuits[1].hours": "not seen"})
    table = next(one for one in tables(van) if one.id == "load-table")
    (row,) = table.rows
    assert row[0] == "weekend" and "fridge" in row[-1] and "not seen" in row[-1]


def test_the_fuse_list_has_every_fuse_and_every_lack_of_one(van, lists):
    table = lists["fuse-list"]
    assert [row[0] for row in table.rows] == ["F1", "F2", "F101", "F201"]
    assert cell(table, "lamp", "Rating") == "" and cell(table, "lamp", "Note") == "none fitted"
    assert cell(table, "F201", "Rating") == "2 × 100 A"
    assert cell(table, "F101", "Protects") == "W101: 6 AWG"
    assert "chosen" in cell(table, "fridge", "Note")


def test_a_run_with_a_source_at_each_end_has_two_fuses():
    text = FILE.replace('"alternator", ', "") + (
        '[alternator]\nmethod = "charger"\ncharger_limit = "20 A"\nlength = "4 m"\n'
        'conductor = "6 AWG"\nfuse = "40 A"\nfused = "both ends"\n'
    )
    table = next(one for one in tables(read_van(text)) if one.id == "fuse-list")
    found = {row[0]: row[2] for row in table.rows}
    assert found["F501"].split() == found["F501.2"].split() == ["40", "A"]


def test_the_joint_sheet_is_that_of_the_worksheet(van, lists):
    table = lists["joint-sheet"]
    answer = calc.work("joint-sheet", filled(van, "joint-sheet", None).texts)
    rows = answer.tables["schedule"]
    assert [row[1 : 1 + len(rows[0])] for row in table.rows] == list(rows)
    assert [row[0] for row in table.rows] == ["J1", "J2"], "two joints of one name stay two"
    assert {row[-4:] for row in table.rows} == {("",) * 4}


def test_the_log_has_last_time_beside_this_time_and_room_for_the_next(lists):
    table = lists["service-log"]
    fridge = next(row for row in table.rows if row[0] == "W1 fridge")
    drop = lists["circuit-schedule"]
    assert fridge[2] == cell(drop, "fridge", "Voltage drop").replace(" ", "\u00a0")
    assert fridge[3:] == (
        "240 mV (2025-04-02)", "230 mV", "2026-04-30", "meter 2", "P. Moor", "", "", "", "",
    )  # fmt: skip
    torque = next(row for row in table.rows if row[:2] == ("J1 post", "Torque"))
    assert torque[2].startswith("9\u00a0N·m")
    assert torque[3:8] == ("", "8.8 N·m", "2026-05-01", "", "P. Moor")
    assert ("fuse block", "Replaced") in {row[:2] for row in table.rows}, "nothing logged is lost"


def test_a_plan_is_no_measurement(lists):
    second = [row for row in lists["service-log"].rows if row[:2] == ("J2 post", "Torque")]
    assert [row[3:] for row in second] == [("",) * 9]


def test_the_inspection_list_has_every_station_and_what_is_not_seen():
    table = next(one for one in tables(demo("half-seen")) if one.id == "inspection-list")
    stations = [row[0] for place, row in enumerate(table.rows) if place in table.sums]
    assert stations == [str(number) for number in range(1, 12)]
    assert len(table.rows) > 20
    assert any(row[3] == "must be proven" for row in table.rows)


def test_both_ends_of_every_conductor_are_marked(van):
    papers = hand_over(van)
    marks = [label.title for label in papers.markers]
    assert marks == ["W1+", "W1+", "W1−", "W1−", "W2+", "W2+", "W2−", "W2−", "W101+", "W101+"]
    assert papers.markers[0].lines == ("here: fuse block 1", "to: fridge +")
    assert papers.markers[1].lines == ("here: fridge +", "to: fuse block 1")


def test_conductors_in_parallel_are_marked_one_by_one():
    van = read_van(FILE).changed({"cables[1].parallel": "2"})
    marks = [label.title for label in hand_over(van).markers if "101" in label.title]
    assert marks == ["W101+.1", "W101+.1", "W101+.2", "W101+.2"]


def test_the_labels_name_each_fuse_and_what_stays_live(van):
    labels = hand_over(van).labels
    fuses = [label.title for label in labels if not label.warns]
    assert fuses == ["F1", "F101", "F201"], "no label for a fuse that is not there"
    (live,) = [label for label in labels if label.warns]
    assert live.title == "Q1 main switch"
    assert live.lines[1:] == ("the batteries and their terminals",)


def test_what_is_not_said_to_be_absent_may_be_live():
    bare = read_van('format = 1\n[van]\nname = "a"\n')
    said = " ".join(still_live(bare))
    assert "panels" in said and "alternator" in said and "shore inlet" in said
    none = bare.stating("panels", State.NONE)
    assert "panels" not in " ".join(still_live(none))


def test_the_shutdown_takes_panels_off_before_the_bank_and_ends_with_a_meter():
    steps = shutdown_card(demo("marram")).steps
    text = " | ".join(steps)
    order = ["engine", "inverter", "shore power", "roof panels", "main switch", "live", "Measure"]
    places = [text.index(word) for word in order]
    assert places == sorted(places)
    assert "supply post first" in text


def test_the_fire_card_begins_with_people_and_the_call():
    steps = fire_card(demo("marram")).steps
    assert "everybody out" in steps[0] and "emergency services" in steps[1]
    assert any("No water" in step and "mains" in step for step in steps)
    assert "gas cylinders" in steps[2] and "LFP" in steps[2]
    assert steps[-1].startswith("Do not go back in")


@pytest.mark.parametrize(
    ("system", "chemistry", "absorption", "never", "cold"),
    [
        # LFP: 3.55 V a cell ends the charge, 3.65 V is the limit: 4, 8 and 16 cells
        ("12 V", "LFP", "14.2 V", "14.6 V", "0 °C"),
        ("24 V", "LFP", "28.4 V", "29.2 V", "0 °C"),
        ("48 V", "LFP", "56.8 V", "58.4 V", "0 °C"),
        ("12 V", "gel", "14.4 V", "14.4 V", "−20 °C"),
        ("24 V", "AGM", "28.8 V", "29.6 V", "−20 °C"),
    ],
)
def test_charger_settings_are_those_of_the_book_for_the_system(
    system, chemistry, absorption, never, cold
):
    changes = {"van.system": system, "batteries[1].chemistry": chemistry}
    (row,) = charger_settings(read_van(FILE).changed(changes)).rows
    shown = tuple(text.replace("\u00a0", " ") for text in row)
    assert shown[1:4] == (absorption, never, cold)


def test_no_setting_is_given_for_what_nobody_knows():
    settings = charger_settings(read_van(FILE).changed({"batteries[1].chemistry": "not seen"}))
    assert settings.rows == () and "maker" in settings.note


def test_the_papers_of_a_small_van_hold_its_link(van):
    from calc.van.link import unpack

    assert unpack(hand_over(van).fragment) == van


def test_drawn_vans_have_lists_and_no_cell_is_a_formula():
    draw = chance("lists")
    for _ in range(often(12, 400)):
        own = Lists(drawn_van(draw))
        for table in (*own.tables, own.papers.settings):
            text = csv_of(table)
            rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
            assert len(rows) == len(table.rows) + 1
            for row in rows:
                assert len(row) == len(table.columns)
                assert not any(map(is_formula, row))

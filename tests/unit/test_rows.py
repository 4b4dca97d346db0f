"""Words and lists as fields: how their text is parted, read, told and written again."""

import json
import time

import pytest

import calc
from calc.__main__ import main
from calc.render.bridge import ask
from calc.units.kinds import COUNT, POWER, TIME
from calc.worksheet.fields import Choice, Option, Problem, Quantity
from calc.worksheet.link import open_fragment, write
from calc.worksheet.rows import Rows, Text, joined, parted

NAME = Text(id="name", label="Name", example="fridge", hint="x")
LOADS = Rows(
    id="loads",
    label="Loads",
    one="load",
    most=4,
    default="fridge:45 W:12 h:all;lamp:9 W",
    columns=(
        NAME,
        Quantity(id="power", label="Power", kinds=(POWER,), low="1 W", high="5 kW", example="45 W"),
        Quantity(id="hours", label="Hours", kinds=(TIME,), low="0 h", high="24 h", default="5 h"),
        Choice(id="when", label="When", default="all", options=tuple(map(Option, ("day", "all")))),
        Quantity(id="pieces", label="Pieces", kinds=(COUNT,), low="1", high="9", optional=True),
    ),
)
SHEET = calc.find("joint-sheet")
JOINTS = SHEET.field("joints")
HUNG = 10  # seconds of this process, of which such a reply takes a fiftieth


def told(text: str, field: Rows = LOADS) -> dict:
    """Return what is said of each cell of a list that cannot be read; None stands for the whole."""
    with pytest.raises(Problem) as refusal:
        field.read(text)
    assert all(problem.field == field.id for problem in refusal.value.each)
    return {problem.cell: problem.message for problem in refusal.value.each}


def reply(**request) -> dict:
    return json.loads(ask(json.dumps({"sheet": "joint-sheet", **request})))


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("fridge", "fridge"),
        ("  main \t fuse\n", "main fuse"),
        ("battery\u202e plus\u200b", "battery plus"),
        ("a\x00b\x07c", "abc"),
        ("mm\u00b2 ½", "mm2 1⁄2"),
        ("lone\ud800half", "lonehalf"),
        ("e\u200d\u0301", "é"),
        ("٣ lamps", "3 lamps"),
        ("<b>{0}</b> & \\", "<b>{0}</b> & \\"),
        ("🔋 " + "x" * 38, "🔋 " + "x" * 38),
    ],
)
def test_words_are_kept_without_what_is_not_seen(typed, read):
    reading = NAME.read(typed)
    assert (reading.value, reading.text, reading.entry, reading.link) == (read,) * 4
    assert NAME.read(reading.link) == reading


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("", "Enter the name, like fridge."),
        (" \n\u202e\x00", "Enter the name, like fridge."),
        ("x" * 41, "Name must be at most 40 characters, like fridge."),
        ("x" * 100_000, "Name must be at most 40 characters, like fridge."),
        ("a:b", "Name must do without “:” and “;”, like fridge."),
        ("a；b", "Name must do without “:” and “;”, like fridge."),
    ],
)
def test_words_that_cannot_stand_in_a_list_are_refused_with_a_sentence(typed, says):
    with pytest.raises(Problem) as refusal:
        NAME.read(typed)
    assert refusal.value.message == says


@pytest.mark.parametrize(
    ("text", "cells"),
    [
        ("", [[""]]),
        ("a", [["a"]]),
        ("a:b;c:d", [["a", "b"], ["c", "d"]]),
        ("a:;", [["a", ""], [""]]),
        (r"a\:b:c\;d\\", [["a:b", "c;d\\"]]),
        ("a\\", [["a"]]),
        ("::;", [["", "", ""], [""]]),
    ],
)
def test_a_list_is_parted_into_rows_and_cells(text, cells):
    assert parted(text) == cells


@pytest.mark.parametrize(
    "cells",
    [
        [["a", "b"], ["c", ""]],
        [["a:b", "c;d"], ["\\", "\\:"]],
        [["", ""], ["", "x"]],
        [[":;\\" * 9]],
    ],
)
def test_what_is_joined_is_parted_into_the_same_cells(cells):
    assert parted(joined(cells)) == cells


def test_a_row_is_a_mapping_from_columns_to_plain_values():
    fridge, lamp = LOADS.read("fridge:0.045 kW:720 min:day:2;lamp:9").value
    assert fridge == {"name": "fridge", "power": 45, "hours": 43200, "when": "day", "pieces": 2}
    assert lamp == {"name": "lamp", "power": 9, "hours": 18000, "when": "all", "pieces": None}


def test_a_list_is_written_in_one_form_and_means_the_same_again():
    reading = LOADS.read(" Fridge : 45,0 watts::ALL ; lamp:9;; ")
    assert reading.link == "Fridge:45.0W;lamp:9W"
    assert LOADS.read(reading.link).value == reading.value
    assert LOADS.read(reading.link).link == reading.link


def test_usual_cells_are_left_out_of_a_link_only_at_the_end_of_a_row():
    reading = LOADS.read("a:9:5:all:2;b:9:6:all;c:9:5 h:day")
    assert reading.link == "a:9W:5h:all:2;b:9W:6h;c:9W:5h:day"


def test_a_list_is_summed_up_by_its_first_names():
    assert LOADS.read("a:1;b:1").text == "a; b"
    assert LOADS.read("a:1;b:1;c:1;d:1").text == "a; b; c; and 1 more"


def test_rows_with_nothing_of_their_own_are_passed_over():
    """What stands in a row that was added and not yet filled in is only what is usual."""
    assert len(LOADS.read("fridge:45 W;::5 h:all:;;").rows) == 1
    assert told(";::5 h:all") == {None: "Enter at least one load, like fridge."}
    assert told(";;;;;;;;;;") == {None: "Enter at least one load, like fridge."}


def test_a_row_without_a_name_is_told_so():
    assert told("fridge:45 W;:9 W") == {(1, 0): "Load 2: Enter the name, like fridge."}


def test_every_bad_cell_is_told_at_once_with_its_row_and_column():
    found = told("a\\:b:45 ft:25 h:never:1.5;lamp;ok:9 W")
    assert list(found) == [(0, 0), (0, 1), (0, 2), (0, 3), (0, 4), (1, 1)]
    assert found[0, 0].startswith("Load 1: Name must do without")
    assert found[0, 1].startswith("Load 1: Power must be in W or kW, like 45")
    assert found[0, 2].startswith("Load 1: Hours must be between 0")
    assert found[0, 3] == "Load 1: When must be day or all."
    assert found[0, 4].startswith("Load 1: Pieces must be a whole number")
    assert found[1, 1].startswith("Load 2: Enter the power, like 45")


def test_a_row_with_too_many_parts_is_told_which_there_are():
    says = "Load 1 must have 5 parts at most: Name, Power, Hours, When, Pieces."
    assert told("fridge:45:5:all:1:more") == {None: says}


def test_more_rows_than_there_may_be_are_refused_and_blank_ones_after_them_are_not():
    rows = ";".join(["lamp:9 W"] * 4)
    assert len(LOADS.read(rows).rows) == len(LOADS.read(f"{rows};;;").rows) == 4
    assert told(f"{rows};;lamp:9 W") == {None: "Loads must be 4 at most; the rest is left out."}


@pytest.mark.parametrize(
    "text",
    ["a;" * 10_000, "a:b:c:d:e:f;" * 10_000, ":" * 100_000, ";" * 100_000, "\\" * 100_000,
     "x" * 1_000_000, "a:M8:" + "9" * 100_000],
)  # fmt: skip
def test_a_list_from_a_stranger_is_cut_to_size_and_refused_soon(text):
    began = time.process_time()
    with pytest.raises(calc.InputError) as refusal:
        SHEET.work({"joints": text})
    assert refusal.value.problems
    got = reply(fragment=f"v=1&joints={text}")
    assert time.process_time() - began < HUNG
    assert not got["answer"]
    assert len(got["fields"]["joints"]["rows"]) <= JOINTS.most
    assert len(got["link"]) < 4000 + 3 * JOINTS.longest


def test_as_many_joints_as_there_may_be_fit_into_a_link_with_names_that_are_all_escapes():
    cells = [["電" * 40, "5/16 in", "299.99 lbf·in", "unknown", "lubricated", "12"]] * JOINTS.most
    link = write(SHEET, {"joints": joined(cells)})
    opened = open_fragment(SHEET, link)
    value = SHEET.read(opened.texts)[0]["joints"].value
    assert value == JOINTS.read(joined(cells)).value
    assert len(value) == JOINTS.most


def test_a_list_can_be_read_in_a_link():
    texts = {"joints": "battery plus:M8:12 N.m;busbar:5/16 in:"}
    link = write(SHEET, texts)
    version = f"v={SHEET.default_set}"
    assert link == f"{version}&joints=battery+plus:M8:12N.m;busbar:5/16in"


def test_the_page_sends_cells_and_signs_typed_into_one_are_told_there_and_kept():
    got = reply(values={"joints": [["a:b;c\\", "M8", "9", "8.8", "dry", "1", "busbar or stud"]]})
    cell = got["fields"]["joints"]["rows"][0][0]
    assert cell["error"].startswith("Joint 1: Name must do without")
    assert cell["entry"] == cell["fill"] == "a:b;c\\"
    assert got["fields"]["joints"]["error"] == ""
    assert got["status"] == cell["error"]
    again = reply(fragment=got["link"])
    assert again["fields"]["joints"]["rows"][0][0]["fill"] == "a:b;c\\"


def test_a_cell_gives_back_its_unit_where_that_is_not_the_columns_own():
    rows = reply(values={"joints": [["a", "M8", "9"], ["b", "M8", "90 lbf in"]]})
    entries = [row[2]["entry"] for row in rows["fields"]["joints"]["rows"]]
    assert entries == ["9", "90 lbf·in"]
    again = reply(values={"joints": [["b", "M8", entries[1]]]})
    assert "90lbf.in" in again["link"]


def test_an_empty_row_of_the_page_keeps_its_place_among_the_replies():
    blank = ["", "M8", "", "unknown", "dry", "1", "busbar or stud"]
    got = reply(values={"joints": [["a", "M8", "9"], blank, ["b", "M99"]]})
    rows = got["fields"]["joints"]["rows"]
    assert [row[1]["error"][:8] for row in rows] == ["", "", "Joint 3:"]


def test_a_link_without_the_list_takes_the_usual_one_and_says_so():
    got = reply(fragment=f"v={SHEET.default_set}&vehicle=Marram")
    rows = got["fields"]["joints"]["rows"]
    assert len(rows) == len(JOINTS.read(JOINTS.default).rows)
    assert got["notes"][-1].endswith("not given: its default is used.")


@pytest.mark.parametrize("value", [None, 5, [], [[]], [[None]], [5], {"a": 1}, [["a", ["b"]]]])
def test_a_list_that_is_none_is_an_answer_or_a_message(value):
    got = reply(values={"joints": value})
    cells = [cell for row in got["fields"]["joints"]["rows"] for cell in row]
    parts = [got["fields"]["joints"], *cells]
    assert bool(got["answer"]) is not any(part["error"] for part in parts)


def test_a_terminal_takes_a_list_and_prints_it_row_by_row(capsys):
    assert main(["joint-sheet", "joints=battery plus:M8:12 N.m;busbar:M8:"]) == 0
    out = capsys.readouterr().out.replace("\u00a0", " ")
    lines = [line.strip() for line in out.splitlines()]
    at = lines.index("battery plus")
    assert lines[at + 1].startswith("Stud: M8; Torque: 12 N·m (106 lbf·in)")
    assert lines[at + 2] == "busbar"


def test_a_terminal_tells_every_bad_cell(capsys):
    assert main(["joint-sheet", "joints=:M9;b:M8:x", "vehicle=a;b"]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert [line[:14] for line in lines] == ["Vehicle must d", "Joint 1: Enter", "Joint 1: Stud ",
                                             "Joint 2: Maker"]  # fmt: skip

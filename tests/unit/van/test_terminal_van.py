"""`lugwise van`: a van reviewed in a terminal, and written out as files."""

import csv
import json
import shlex
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from calc.__main__ import main
from calc.van.circuits_csv import template
from calc.van.demos import DEMOS, demo_text
from calc.van.files import read_van
from calc.van.inspection import inspection_list
from calc.van.lists import tables
from calc.van.review import review
from calc.van.seasons import season_tables
from calc.van.start import start_file

PROJECT = Path(__file__).parents[3]


@pytest.fixture
def run(capsys):
    """Run the command in this process; gives status, standard output and standard error."""

    def command(*words):
        try:
            status = main(["van", *map(str, words)])
        except SystemExit as end:  # argparse's own way out
            status = end.code
        captured = capsys.readouterr()
        return status, captured.out, captured.err

    return command


@pytest.fixture
def file(tmp_path):
    """Write a van's file, a demo by its name or any text, and return where it is."""

    def written(text):
        path = tmp_path / "van.toml"
        path.write_text(demo_text(text) if text in DEMOS else text, "utf-8")
        return path

    return written


@pytest.mark.parametrize(("name", "status"), [("marram", 0), ("ten-mistakes", 1), ("half-seen", 1)])
def test_the_review_is_printed_and_the_status_tells_whether_it_stops(run, file, name, status):
    found = review(read_van(demo_text(name)))
    ended, out, err = run(file(name))
    assert (ended, err) == (status, "")
    assert out.startswith(f"{found.van.name}: {found.disposition.sentence}")
    for one in found.findings:
        assert one.sentence in out and one.rule in out


def test_the_worst_stands_first(run, file):
    _, out, _ = run(file("ten-mistakes"))
    heads = [line.split(" (")[0] for line in out.splitlines() if line and line[0] != " "]
    order = ["Stop", "Caution", "Advice", "Notes"]
    own = [head for head in heads if head in order]
    assert own == sorted(own, key=order.index) and "Stop" in own


def test_what_is_not_proven_stops_and_says_so(run, file):
    status, out, _ = run(file("half-seen"))
    assert status == 1
    assert "[not proven]" in out


def test_the_same_as_data(run, file):
    status, out, err = run(file("ten-mistakes"), "--json")
    data = json.loads(out)
    found = review(read_van(demo_text("ten-mistakes")))
    assert (status, err) == (1, "")
    assert [one["rule"] for one in data["findings"]] == [one.rule for one in found.findings]
    assert data["disposition"]["sentence"] == found.disposition.sentence
    fridge = next(row for row in data["schedule"] if row["mark"] == "F1")
    assert set(fridge) >= {"part", "current", "conductor", "fuse", "drop", "ampacity", "why"}


def test_the_inspection_list_is_a_walk_in_its_order(run, file):
    status, out, err = run(file("half-seen"), "--inspection")
    stops = inspection_list(read_van(demo_text("half-seen")))
    assert (status, err) == (1, "")
    heads = [line for line in out.splitlines() if line[0].isdigit()]
    assert heads == [f"{at}. {stop.title}: {stop.do}" for at, stop in enumerate(stops, 1)]
    assert out.count("[ ]") == sum(len(stop.looks) for stop in stops)


def test_the_schedule_is_written_as_csv_that_a_spreadsheet_opens(run, file, tmp_path):
    out = tmp_path / "schedule.csv"
    status, _, err = run(file("marram"), "--schedule", out)
    assert (status, err) == (0, "")
    assert out.read_bytes().startswith(b"\xef\xbb\xbf")
    with out.open(encoding="utf-8-sig", newline="") as opened:
        rows = list(csv.DictReader(opened, strict=True))
    table = next(
        one for one in tables(read_van(demo_text("marram"))) if one.id == "circuit-schedule"
    )
    assert [row["Mark"] for row in rows] == [row[0] for row in table.rows]


def test_every_list_and_the_papers_are_written_into_a_folder(run, file, tmp_path):
    folder = tmp_path / "deep" / "papers"
    status, _, err = run(file("marram"), "--lists", folder)
    assert (status, err) == (0, "")
    names = {path.name for path in folder.iterdir()}
    van = read_van(demo_text("marram"))
    own = {f"{table.id}.csv" for table in (*tables(van), *season_tables(van))}
    assert names == own | {"charger-settings.csv", "papers.html"}
    html = (folder / "papers.html").read_text("utf-8")
    assert "Cable cut list" in html and "Fire, smoke or a hot smell" in html
    assert "Opens the record" not in html, "there is no address to open"
    address = ("--address", "https://van.invalid/van/")
    assert run(file("marram"), "--lists", folder, *address)[0] == 0, "and may be written again"
    assert "Opens the record" in (folder / "papers.html").read_text("utf-8")


def test_the_diagram_is_written_as_a_picture_by_itself(run, file, tmp_path):
    out = tmp_path / "marram.svg"
    status, _, err = run(file("marram"), "--diagram", out)
    assert (status, err) == (0, "")
    picture = ElementTree.fromstring(out.read_bytes())
    assert picture.tag == "{http://www.w3.org/2000/svg}svg"
    assert "fridge" in " ".join(picture.itertext())


@pytest.mark.parametrize("also", [[], ["--inspection"]])
def test_a_file_to_start_from_is_printed_and_can_be_reviewed(run, file, also):
    status, out, err = run("--new", *also)
    assert (status, err) == (0, "")
    assert out == start_file(inspection=bool(also))
    ended, _, err = run(file(out))
    assert ended in (0, 1) and err == ""


def test_circuits_of_a_spreadsheet_are_put_into_a_van(run, file, tmp_path):
    status, out, _ = run("--template")
    assert (status, out) == (0, template())
    sheet = tmp_path / "circuits.csv"
    sheet.write_bytes("\ufeffName;Current;Length, one way\r\npump;6,5 A;3,2 m\r\n".encode())
    status, out, err = run(file("marram"), "--circuits", sheet)
    assert (status, err) == (0, "")
    last = read_van(out).all("circuits")[-1]
    assert (last.name, last.si("current")) == ("pump", 6.5)


def test_problems_of_a_spreadsheet_name_row_and_column(run, file, tmp_path):
    sheet = tmp_path / "circuits.csv"
    sheet.write_text("Name,Current\npump,much\n", "utf-8")
    status, out, err = run(file("marram"), "--circuits", sheet)
    assert (status, out) == (2, "")
    assert "Row 2, column B" in err


def test_a_bad_file_ends_with_status_2_and_every_problem_with_its_place(run, file):
    text = demo_text("marram").replace('length = "3.2 m"', 'length = "3.2 V"')
    text = text.replace('capacity = "100 Ah"', 'capacitty = "100 Ah"')
    status, out, err = run(file(text))
    assert (status, out) == (2, "")
    assert len(err.splitlines()) >= 2
    assert "circuits[1].length: " in err and "capacit" in err
    assert "Traceback" not in err


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"not = [toml", b'format = 1\nvan = "x"\n'])
def test_what_is_no_van_ends_in_a_sentence(run, tmp_path, content):
    path = tmp_path / "x.toml"
    path.write_bytes(content)
    status, out, err = run(path)
    assert (status, out) == (2, "")
    assert err.strip().endswith(".") and "Traceback" not in err


def test_a_file_that_is_not_there_or_a_place_that_cannot_be_written_is_told(run, file, tmp_path):
    status, out, err = run(tmp_path / "none.toml")
    assert (status, out) == (2, "") and "cannot be read" in err
    status, _, err = run(tmp_path)
    assert status == 2 and "cannot be read" in err
    for option in ("--schedule", "--diagram"):
        status, _, err = run(file("marram"), option, tmp_path / "no" / "where.out")
        assert status == 2 and "cannot be written" in err
    status, _, err = run(file("marram"), "--lists", file("marram"))
    assert status == 2 and "cannot be made" in err


def test_a_file_larger_than_ten_megabytes_is_not_read(run, tmp_path):
    path = tmp_path / "large.toml"
    path.write_bytes(b"#" * 10_000_001)
    status, _, err = run(path)
    assert status == 2 and "10 MB" in err


def test_without_a_file_the_usage_is_shown(run):
    status, out, err = run()
    assert (status, out) == (2, "") and err.startswith("usage")


def test_it_runs_as_a_module_in_a_process_of_its_own(file):
    command = shlex.split(f"{sys.executable} -m calc van {shlex.quote(str(file('marram')))}")
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, cwd=PROJECT)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Marram: ")

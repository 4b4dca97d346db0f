"""`python -m calc`: worksheets in a terminal, for people and for other programs."""

import json
import os
import subprocess
import sys

import pytest

import calc
from calc.__main__ import main


@pytest.fixture
def run(capsys):
    """Run the command in this process; gives status, standard output and standard error."""

    def command(*words):
        try:
            status = main(list(words))
        except SystemExit as end:  # argparse's own way out
            status = end.code
        captured = capsys.readouterr()
        return status, captured.out, captured.err

    return command


def test_it_runs_as_a_module_in_a_process_of_its_own():
    command = [sys.executable, "-m", "calc", "wire-drop", "current=30 A", "length=12 ft"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60)
    assert done.returncode == 0
    assert done.stderr == ""
    answer = calc.work("wire-drop", {"current": "30 A", "length": "12 ft"})
    assert answer.sentence in done.stdout


def test_a_reader_that_has_seen_enough_ends_it_without_a_traceback():
    reader, writer = os.pipe()
    os.close(reader)
    command = [sys.executable, "-m", "calc", "wire-drop"]
    done = subprocess.run(command, stdout=writer, stderr=subprocess.PIPE, text=True, timeout=60)
    os.close(writer)
    assert done.stderr == ""
    assert done.returncode


def test_bad_input_ends_a_process_with_status_2_and_a_sentence_on_standard_error():
    command = [sys.executable, "-m", "calc", "wire-drop", "current=abc"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith("Current must be a number")
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("name", calc.worksheets())
def test_every_worksheet_is_printed_with_answer_working_and_sources(run, name):
    status, out, err = run(name)
    answer = calc.work(name)
    assert (status, err) == (0, "")
    assert answer.worksheet.question in out and answer.sentence in out
    for line in answer.working:
        assert line.text in out and line.value in out
    for said in answer.cautions:
        assert said.text in out
    for field in answer.worksheet.fields:
        reading = answer.inputs[field.id]
        if reading.applies and reading.value is not None:
            assert field.label in out, "what was taken as usual is said"


@pytest.mark.parametrize("name", calc.worksheets())
def test_every_worksheet_is_data_with_units(run, name):
    status, out, err = run(name, "--json")
    data = json.loads(out)
    answer = calc.work(name)
    assert (status, err) == (0, "")
    assert data["worksheet"] == name
    assert (data["verdict"], data["sentence"]) == (answer.verdict, answer.sentence)
    assert set(data["results"]) == {result.id for result in answer.worksheet.results}
    for result in answer.worksheet.results:
        ours, theirs = answer[result.id], data["results"][result.id]
        if result.kind and ours is not None:
            assert theirs["value"] == pytest.approx(ours.magnitude)
            assert ours._REGISTRY.Quantity(theirs["value"], theirs["unit"]) == ours
        elif isinstance(ours, list):
            assert len(theirs) == len(ours)
    assert len(data["working"]) == len(answer.working)
    assert data["inputs"].keys() == answer.inputs.keys()


@pytest.mark.parametrize("place", range(4))
def test_the_switch_for_data_may_stand_anywhere(run, place):
    """The command's own help shows it between the worksheet and its inputs."""
    words = ["wire-drop", "current=6 A", "length=4.5 m"]
    status, out, err = run(*words[:place], "--json", *words[place:])
    assert (status, err) == (0, "")
    assert json.loads(out)["inputs"]["length"]["given"]


def test_a_result_that_is_not_there_is_null_in_the_data(run):
    status, out, _ = run("fuse-choice", "current=81 A", "conductor=8 AWG", "--json")
    data = json.loads(out)
    assert status == 0
    assert data["results"]["fuse"] is None
    assert data["verdict"] == "stop"


def test_the_list_names_every_worksheet_with_its_question_a_line_each(run):
    status, out, err = run("--list")
    assert (status, err) == (0, "")
    lines = [line.split(maxsplit=1) for line in out.splitlines()]
    assert lines == [[name, calc.find(name).question] for name in calc.worksheets()]


@pytest.mark.parametrize("name", calc.worksheets())
def test_the_list_of_one_worksheet_names_every_field_with_its_default(run, name):
    status, out, err = run(name, "--list")
    assert (status, err) == (0, "")
    for field in calc.find(name).fields:
        line = next(line for line in out.splitlines() if line.split()[0] == field.id)
        assert field.label in line and field.default in line


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["wire-drop", "current=abc", "length=12 V"], ["Current must", "Length, one way must"]),
        (["wire-drop", "amps=30"], ["no field 'amps'"]),
        (["wire-drops"], ["no worksheet 'wire-drops'", "wire-drop"]),
        (["wire-drop", "30A"], ["field=value", "30A"]),
        (["wire-drop", "current="], ["Enter the current"]),
        (["wire-drop", "--colour"], ["usage", "--colour"]),
        ([], ["usage"]),
        (["standby-drain", "from_state=50 %", "to_state=60 %"], ["at the end must be"]),
        (["fuse-choice", "conductor=0.75 mm2", "rule_set=ABYC"], ["Conductor must be"]),
    ],
)
@pytest.mark.parametrize("form", [[], ["--json"]], ids=["text", "json"])
def test_what_cannot_be_worked_ends_with_status_2_and_every_sentence(run, words, said, form):
    status, out, err = run(*words, *form)
    assert (status, out) == (2, "")
    for part in said:
        assert part in err
    assert "Traceback" not in err


def test_an_equals_sign_within_a_value_is_part_of_it(run):
    status, _, err = run("wire-drop", "current==30")
    assert status == 2
    assert "Current must be a number" in err

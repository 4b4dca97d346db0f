"""`lugwise wire-size --van FILE --circuit fridge`: a worksheet filled from a van's file."""

import json

import pytest

import calc
from calc.__main__ import main
from calc.van.bind import filled
from calc.van.demos import DEMOS, demo, demo_text


@pytest.fixture
def run(capsys, tmp_path):
    """Run the command on a demo's file; gives status, standard output and standard error."""
    for name in DEMOS:
        (tmp_path / f"{name}.toml").write_text(demo_text(name), "utf-8")

    def command(sheet, van, *words):
        status = main([sheet, "--van", str(tmp_path / f"{van}.toml"), *words])
        captured = capsys.readouterr()
        return status, captured.out, captured.err

    return command


def test_a_circuit_s_wire_is_sized_from_the_van(run):
    status, out, err = run("wire-size", "marram", "--circuit", "fridge")
    assert (status, err) == (0, "")
    van = demo("marram")
    answer = calc.work("wire-size", filled(van, "wire-size", van.by_id("fridge")).texts)
    assert answer.sentence in out
    assert "From the van Marram: Continuous current: 5 A (circuits[1].current)" in out


def test_what_is_typed_stands_in_place_of_the_van_s(run):
    status, out, _ = run("wire-drop", "marram", "--circuit", "fridge", "length=9 m", "--json")
    assert status == 0
    assert json.loads(out)["inputs"]["length"]["text"].startswith("9")


def test_the_only_part_or_the_whole_van_needs_no_name(run):
    assert run("inverter-size", "marram")[0] == 0
    assert run("bank-gauge", "marram")[0] == 0


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("wire-size", "marram", "--circuit", "nothing"), "cannot open for 'nothing'"),
        (("wire-size", "marram"), "Say for which part"),
        (("cooling-day", "marram"), "has nothing for cooling-day"),
        (("wire-drop", "half-seen", "--circuit", "fridge"), "not seen. Type it:"),
        (("wire-drop", "not-there", "--circuit", "fridge"), "cannot be read"),
        (("not-a-sheet", "marram"), "There is no worksheet"),
    ],
)
def test_what_cannot_be_filled_is_told_with_status_2(run, words, told):
    status, out, err = run(*words)
    assert status == 2
    assert out == ""
    assert told in err

"""The file to start a van with reads as it stands, and each of its remarks is a true one."""

import re

import pytest

from calc.van.files import read_van, write_van
from calc.van.parts import PARTS
from calc.van.start import example, start_file
from calc.van.values import State

KEY_LINE = re.compile(r"^(?:# )?([a-z_]+) = \"", re.MULTILINE)
BOTH = pytest.mark.parametrize("inspection", [False, True], ids=["plan", "inspection"])


@BOTH
def test_it_reads_without_an_error_and_holds_a_van_to_go_on_from(inspection):
    van = read_van(start_file(inspection=inspection))
    assert van.inspection == inspection
    assert van.name == "my van"
    assert van.one("circuits").name == "fridge"
    assert read_van(write_van(van)) == van


def test_the_plan_of_it_can_be_worked():
    van = read_van(start_file())
    assert van.one("circuits").si("length") == pytest.approx(3.2)
    assert van.one("batteries").si("capacity") == pytest.approx(100 * 60 * 60)


def test_the_inspection_of_it_takes_nothing_as_seen():
    van = read_van(start_file(inspection=True))
    circuit = van.one("circuits")
    stated = {name for name, value in circuit.values.items() if value.state is State.GIVEN}
    assert stated == {"name"}


@BOTH
def test_every_key_of_every_part_stands_in_it(inspection):
    text = start_file(inspection=inspection)
    for kind in PARTS:
        head = f"[[{kind.id}]]" if kind.many else f"[{kind.id}]"
        own = text.partition(f"{head}\n")[2].partition("\n\n")[0]
        keys = {key.id for key in kind.keys if example(key)}
        assert set(KEY_LINE.findall(own)) == keys, kind.id


@BOTH
def test_with_every_remark_sign_taken_away_it_reads_too(inspection):
    """So each remark shows a text that the key takes, and each table's name is right."""
    lines = start_file(inspection=inspection).splitlines()
    free = [re.sub(r"^# (?=[a-z_]+ = \"|\[)", "", line) for line in lines]
    van = read_van("\n".join(free))
    for kind in PARTS:
        part = van.one(kind.id)
        assert part is not None, kind.id
        for key in kind.keys:
            if example(key) and not (kind.id == "van" and key.id == "kind"):
                assert part[key.id].state is State.GIVEN, f"{kind.id}.{key.id}"


def test_every_key_has_an_example():
    without = [f"{kind.id}.{key.id}" for kind in PARTS for key in kind.keys if not example(key)]
    assert without == []

"""The marks of a van's parts: the worked example is numbered by hand."""

from types import SimpleNamespace

import pytest

from calc.van.marks import marks
from calc.van.parts import PARTS


def van_of(**parts: str | tuple[str, ...]):
    """Return what marks ask of a van: for each kind of part the ids of those that are there."""
    kinds = {kind.id: kind for kind in PARTS}
    return SimpleNamespace(
        parts={
            kind: tuple(
                SimpleNamespace(kind=kinds[kind], id=one)
                for one in ((ids,) if isinstance(ids, str) else ids)
            )
            for kind, ids in parts.items()
        }
    )


VAN = van_of(
    mains="mains",
    circuits=("fridge", "lights"),
    alternator="alternator",
    cables=("main-plus", "main-minus"),
    bars=("plus-bar", "minus-bar", "fuse-block"),
    batteries=("bank-a",),
    isolators=("main-switch",),
    inverter="inverter",
    regulators=("solar",),
    panels=("roof",),
)


def part(van, name: str):
    return next(one for parts in van.parts.values() for one in parts if one.id == name)


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("fridge", "F1"), ("lights", "F2"), ("main-plus", "W101"), ("main-minus", "W102"),
        ("bank-a", "G1"), ("alternator", "G2"), ("solar", "U1"), ("inverter", "U2"),
        ("plus-bar", "X1"), ("fuse-block", "X3"), ("mains", "X4"), ("main-switch", "Q1"),
        ("roof", "B1"),
    ],
)  # fmt: skip
def test_each_part_has_the_letter_of_its_kind_and_a_number(name, mark):
    assert marks(VAN).part(part(VAN, name)) == mark


def test_fuse_cable_and_switch_of_a_run_have_one_number():
    found = marks(VAN)
    lights, solar = part(VAN, "lights"), part(VAN, "solar")
    run = (found.fuse(lights), found.wire(lights, "plus"), found.wire(lights, "minus"))
    assert run == ("F2", "W2+", "W2−")
    assert found.switch(lights) == "S2"
    assert (found.fuse(solar), found.far_fuse(solar), found.wire(solar)) == (
        "F401",
        "F401.2",
        "W401",
    )
    assert found.fuse(part(VAN, "plus-bar")) == found.wire(part(VAN, "plus-bar")) == ""


def test_the_mains_continue_the_letters_of_the_van():
    expected = {"inlet": "X4", "breaker": "Q2", "residual": "Q3", "changeover": "Q4"}
    assert marks(VAN).of_mains == expected


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("fuse-block.3", "X3:3"),
        ("bank-a.plus", "G1:+"),
        ("bank-a.minus", "G1:−"),
        ("plus-bar", "X1"),
        ("somewhere else", "somewhere else"),
        ("bank.plus", "bank.plus"),
    ],
)
def test_a_terminal_is_marked_as_the_record_names_it(text, mark):
    assert marks(VAN).terminal(text) == mark


def test_marks_hold_when_a_van_grows():
    """Nothing that is labelled already gets another mark when a part of another kind is added."""
    small = van_of(
        batteries=("bank-a",), bars=("plus-bar",), circuits=("fridge",), cables=("main",)
    )
    large = van_of(
        cables=("main", "feed"),
        circuits=("fridge", "pump"),
        mains="mains",
        shore="shore",
        bars=("plus-bar", "minus-bar"),
        batteries=("bank-a",),
        panels=("roof",),
    )
    before, after = marks(small), marks(large)
    assert before.of_parts.items() <= after.of_parts.items()
    assert before.numbers.items() <= after.numbers.items()


def test_no_two_parts_of_any_van_have_the_same_mark():
    van = van_of(
        **{
            kind.id: tuple(f"{kind.id}-{place}" for place in range(kind.most))
            for kind in PARTS
            if kind.mark
        }
    )
    found = marks(van)
    runs = [found.fuse(one) for parts in van.parts.values() for one in parts if found.fuse(one)]
    given = [mark for one, mark in found.of_parts.items() if one != "mains-0"]
    given += found.of_mains.values()
    assert len(set(given)) == len(given)
    assert len(set(runs)) == len(runs)

"""What people's van files hold keeps its names: no kind, key or choice is ever renamed."""

from pathlib import Path

import pytest

from calc.van.parts import PARTS
from calc.van.record import KINDS
from calc.worksheet.fields import Choice

FROZEN = (Path(__file__).parents[1] / "van_format.txt").read_text("utf-8").splitlines()


def names() -> list[str]:
    """Return every kind with its keys, and each choice of a field that only vans have."""
    found = []
    for kind in PARTS:
        for key in kind.keys:
            found.append(f"{kind.id}.{key.id}")
            if key.own is not None and isinstance(key.field, Choice):
                found += [f"{kind.id}.{key.id} = {one.id}" for one in key.field.options]
    return found


def test_every_name_that_a_file_may_hold_is_kept_for_ever():
    """A new name is added to tests/van_format.txt; none is taken out."""
    assert set(FROZEN) - set(names()) == set()
    assert set(names()) - set(FROZEN) == set(), "add the new names to tests/van_format.txt"


@pytest.mark.parametrize("kind", PARTS, ids=lambda kind: kind.id)
def test_a_kind_of_part_is_declared_soundly(kind):
    ids = [key.id for key in kind.keys]
    assert len(set(ids)) == len(ids) and "id" not in ids
    assert not {"none", "not_seen"} & set(ids)
    assert kind.many or kind.most == 1
    for key in kind.keys:
        assert bool(key.of) != (key.own is not None), key.id
        assert key.field.label and key.field.id == key.id
        if key.usual:
            key.field.read(key.usual)
        known = {*KINDS, "chassis"}
        assert set(key.refers) <= known, key.id
        hint = key.hint or (key.own.hint if key.own else "")
        assert len(hint.split()) <= 12, hint

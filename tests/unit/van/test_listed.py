"""A few names in a sentence, and how many more there are."""

import pytest

from calc.van.saying import listed


@pytest.mark.parametrize(
    ("labels", "said"),
    [
        (["pump"], "pump"),
        (["pump", "fridge"], "pump and fridge"),
        (["pump", "fridge", "fan"], "pump, fridge and 1 more"),
        (["pump", "fridge", "fan", "lamp"], "pump, fridge and 2 more"),
    ],
)
def test_two_are_named_and_the_others_counted(labels, said):
    assert listed(labels) == said


def test_more_are_named_where_there_is_room():
    assert listed(["pump", "fridge", "fan"], most=3) == "pump, fridge and fan"

"""The one search for what would help: order, kinds, gaps in tables, and amounts by halving."""

from math import sqrt

import pytest

from calc.judge.remedies import Remedy, of_each_kind, smallest_amount, smallest_change
from calc.units.covered import NotCovered


def doubled_from_three(number: int) -> int | None:
    """Help from three up; four lies outside what is known."""
    if number == 4:
        raise NotCovered("number", "must be another.")
    return 2 * number if number >= 3 else None


def test_the_first_change_that_helps_is_returned_with_what_comes_of_it():
    assert smallest_change((1, 2, 3, 5), doubled_from_three) == Remedy(3, 6)
    assert smallest_change((1, 2), doubled_from_three) is None


def test_a_change_that_leads_where_there_is_no_figure_is_passed_over():
    assert smallest_change((4, 5), doubled_from_three) == Remedy(5, 10)


def test_nothing_is_tried_beyond_the_first_that_helps():
    tried = []

    def work(number: int) -> bool | None:
        tried.append(number)
        return number > 1 or None

    assert smallest_change(iter((1, 2, 3)), work) == Remedy(2, True)
    assert tried == [1, 2]


def test_each_kind_gives_its_own_and_a_kind_of_which_nothing_helps_is_left_out():
    assert of_each_kind(((1, 2), (2, 7), (4, 3)), doubled_from_three) == (
        Remedy(7, 14), Remedy(3, 6),
    )  # fmt: skip


def test_the_least_amount_just_helps_and_is_never_short():
    found = smallest_amount(lambda x: x * x >= 2, present=1.0, most=5.0)
    assert found is not None and found == pytest.approx(sqrt(2)) and found * found >= 2


def test_an_amount_may_also_go_down():
    found = smallest_amount(lambda x: x <= 3, present=10.0, most=0.0)
    assert found is not None and found == pytest.approx(3) and found <= 3


def test_where_even_the_most_does_not_help_there_is_none():
    assert smallest_amount(lambda x: x > 9, present=1.0, most=5.0) is None

"""What the fuses ahead of a run let through, counted by hand: every way from a battery adds."""

import pytest

from calc.van.files import read_van
from calc.van.from_fuses import upstream
from calc.van.guard import guard
from calc.van.review import review
from tests.unit.test_van_feeding import SECOND
from tests.van_by_hand import VAN

MAIN = 'fuse = "100 A"\nfuse_family = "class T"\n[[cables]]\nname = "main minus"'
BARE = VAN.replace(MAIN, 'fuse = "none"\n[[cables]]\nname = "main minus"')
POSTS = SECOND[: SECOND.index("[[isolators]]")]  # with no cable of its own
APART = SECOND.replace('length = "0.5 m"', 'length = "0.5 m"\nfuse = "none"').replace(
    'length = "0.4 m"', 'length = "0.4 m"\nfuse = "none"'
)
FUSED = APART.replace('length = "0.5 m"\nfuse = "none"', 'length = "0.5 m"\nfuse = "80 A"')


@pytest.mark.parametrize(
    ("text", "run", "amps"),
    [
        (BARE, "main-plus", 400),  # two of 200 A
        (BARE + POSTS, "main-plus", 600),  # and one more
        (BARE + POSTS, "pump", 600),
        (VAN + POSTS, "pump", 100),  # by the main fuse
        (VAN + APART, "pump", 300),  # and 200 A over the other cable
        (VAN + FUSED, "pump", 180),
        (VAN + FUSED, "plus-b", 200),  # its own battery alone
        (BARE.replace('fuse = "200 A"', 'fuse = "none"'), "main-plus", 0),
        (BARE.replace('fuse = "200 A"\n', ""), "main-plus", None),
        (VAN + SECOND, "pump", None),  # whether those cables have fuses is not said
    ],
)
def test_each_way_from_a_battery_lets_its_own_through(text, run, amps):
    van = read_van(text)
    assert guard(van, van.by_id(run)) == (pytest.approx(amps) if amps is not None else None)


def test_a_cable_that_the_fuses_of_two_batteries_can_overload_is_a_stop():
    """4 AWG carries 160 A by 33 CFR 183.425 table 5 at 105 °C; two fuses of 150 A pass 300 A."""
    thin = BARE.replace('fuse = "200 A"', 'fuse = "150 A"').replace("2 AWG", "4 AWG")
    found = {one.rule for one in review(read_van(thin)).findings if one.part_id == "main-plus"}
    assert "van.run-behind-too-large-fuse" in found


def test_a_fuse_in_one_of_two_ways_is_in_no_order_with_one_behind_both():
    for text, ahead in ((VAN + POSTS, "main-plus"), (VAN + FUSED, None)):
        van = read_van(text)
        found = upstream(van, van.by_id("pump"))
        assert (found.id if found else None) == ahead

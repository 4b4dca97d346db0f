"""What feeds a short in a van: networks of batteries and cables, with the sums by hand beside."""

import pytest

from tests.van_by_hand import AREA_2, JOINTS, REST, VAN, of


def test_the_highest_short_is_at_the_fuse_with_a_full_cold_bank():
    least = 20e-3 / 2 + (1.2 + 1.0) / 58 / AREA_2 + JOINTS
    assert of(VAN).fault_high == pytest.approx(REST / least, rel=1e-3)
    # the main fuse stands at the bank itself
    assert of(VAN, "main-plus").fault_high == pytest.approx(REST / 10e-3, rel=1e-4)


SECOND = """
[[batteries]]
name = "bank B"
chemistry = "LFP"
capacity = "100 A·h"
units = "1"
resistance = "15 mΩ"
fuse = "200 A"
fuse_family = "class T"
[[isolators]]
name = "switch B"
[[cables]]
name = "plus B"
pole = "plus"
from = "bank-b"
to = "switch-b"
current = "60 A"
length = "0.5 m"
conductor = "2 AWG"
[[cables]]
name = "plus B beyond"
pole = "plus"
from = "switch-b"
to = "fuse-block"
current = "60 A"
length = "0.4 m"
conductor = "2 AWG"
[[cables]]
name = "minus B"
pole = "minus"
from = "bank-b"
to = "minus-bar"
current = "60 A"
length = "0.7 m"
conductor = "2 AWG"
"""


def test_batteries_with_cables_of_their_own_feed_a_short_side_by_side():
    """Each in series with its cables, and both in parallel: by hand, with no step of the van's."""
    first = 20e-3 / 2 + (1.2 + 1.0) / 58 / AREA_2 + JOINTS
    # three cables of one pole with half a loop's joints each
    second = 15e-3 + (0.5 + 0.4 + 0.7) / 58 / AREA_2 + 1.5 * JOINTS
    row = of(VAN + SECOND)
    assert row.fault_high == pytest.approx(REST * (1 / first + 1 / second), rel=1e-3)
    over_one = 1 / (1 / 10e-3 + 1 / 15e-3) + (1.2 + 1.0) / 58 / AREA_2 + JOINTS
    assert row.fault_high > 1.05 * REST / over_one
    assert row.fault_low < row.fault_high


ALARM = """
[[circuits]]
name = "alarm"
current = "1 A"
from = "bank-b"
return_to = "bank-b"
length = "1 m"
conductor = "14 AWG"
"""


@pytest.mark.parametrize("first", [VAN + SECOND, VAN + SECOND + ALARM])
def test_a_load_on_a_post_changes_no_short_elsewhere(first):
    """In either order: what was worked before is remembered."""
    asked = of(first).fault_high
    both = {of(text).fault_high for text in (VAN + SECOND, VAN + SECOND + ALARM)}
    assert both == {asked}


def test_a_battery_s_own_cable_is_fed_by_it_or_from_behind_by_the_others():
    """At its fuse whichever is more, by hand; at its far end the battery alone."""
    row = of(VAN + SECOND, "plus-b")
    behind = 10e-3 + (1.2 + 1.0 + 0.5 + 0.4 + 0.7) / 58 / AREA_2 + 2.5 * JOINTS
    assert row.fault_high == pytest.approx(REST / min(15e-3, behind), rel=1e-3)
    assert row.fault_low < of(VAN, "main-plus").fault_low


def test_batteries_in_a_chain_share_the_last_cable():
    """B on A's posts by two links, and A on the bars."""
    links = SECOND[: SECOND.index("[[isolators]]")] + SECOND[SECOND.index("[[cables]]") :].replace(
        'to = "switch-b"', 'to = "bank-a"'
    ).replace('name = "plus B beyond"', 'name = "gone"').replace(
        'to = "minus-bar"', 'to = "bank-a"'
    )
    links = (
        links[: links.index('[[cables]]\nname = "gone"')]
        + links[links.index('[[cables]]\nname = "minus B"') :]
    )
    chain = 15e-3 + (0.5 + 0.7) / 58 / AREA_2 + JOINTS
    least = 1 / (1 / 10e-3 + 1 / chain) + (1.2 + 1.0) / 58 / AREA_2 + JOINTS
    assert of(VAN + links).fault_high == pytest.approx(REST / least, rel=1e-3)


def test_two_cables_side_by_side_are_two_also_where_each_is_written_down():
    twice = VAN + VAN[VAN.index("[[cables]]") : VAN.index("[[circuits]]")].replace("main", "second")
    least = 10e-3 + ((1.2 + 1.0) / 58 / AREA_2 + JOINTS) / 2
    assert of(twice).fault_high == pytest.approx(REST / least, rel=1e-3)


def test_a_return_straight_to_the_post_is_no_longer_than_it_is():
    """At its highest only the plus lies before it; at its lowest a way back beside it as well."""
    row = of(VAN.replace('return_to = "minus-bar"', 'return_to = "bank-a"'))
    least = 10e-3 + 1.2 / 58 / AREA_2 + JOINTS / 2
    assert row.fault_high == pytest.approx(REST / least, rel=1e-3)
    assert row.fault_low < row.fault_high


def test_a_second_battery_on_the_first_ones_posts_shares_its_cables():
    linked = SECOND[: SECOND.index("[[isolators]]")]
    least = 1 / (1 / 10e-3 + 1 / 15e-3) + (1.2 + 1.0) / 58 / AREA_2 + JOINTS
    assert of(VAN + linked).fault_high == pytest.approx(REST / least, rel=1e-3)


STARTER = """
[[batteries]]
name = "starter"
role = "starter"
chemistry = "AGM"
capacity = "70 Ah"
resistance = "4 mΩ"
[[cables]]
name = "starter feed"
from = "starter"
to = "fuse-block"
current = "30 A"
length = "1 m"
conductor = "6 AWG"
fuse = "60 A"
fuse_family = "class T"
"""


def test_a_short_by_the_starter_battery_is_fed_by_it():
    """4 mΩ give more than 10 mΩ of the bank behind a metre of 2 AWG and the feed's own."""
    row = of(VAN + STARTER, "starter-feed")
    full = 6 * 2.13  # AGM rests at 12.8 V when full: common practice
    assert row.fault_high == pytest.approx(full / 4e-3, rel=1e-2)
    weak = of(
        (VAN + STARTER).replace('resistance = "4 mΩ"', 'resistance = "40 mΩ"'), "starter-feed"
    )
    assert weak.fault_high > full / 40e-3


def test_the_lowest_short_is_at_the_far_end_with_an_empty_worn_bank():
    # PVC may reach 160 °C in a short; source and joints half as bad again; 90 % of the voltage
    hot = (234.5 + 160) / (234.5 + 75) / 304.8
    worn = 1.5 * 20e-3 / 2 + (1.2 + 1.0) * 0.194 * hot + 1.5 * JOINTS
    own = 2 * 3.2 * 3.14 * hot + 1.5 * JOINTS
    assert of(VAN).fault_low == pytest.approx(0.9 * REST / (worn + own), rel=1e-2)

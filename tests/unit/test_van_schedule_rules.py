"""Rules on a schedule as a whole: each fires on one side of its threshold and not on the other."""

import pytest

from calc.van.demos import DEMOS, demo
from calc.van.files import read_van
from calc.van.judging import mended
from calc.van.record import Van
from calc.van.rules.schedule_rules import ASKED, RULES
from tests.counts import chance, often
from tests.van_by_hand import VAN
from tests.van_samples import drawn_van


def fires(van: Van) -> set[str]:
    """Return the ids of the rules that fire on a van."""
    return {
        rule.id for asked in ASKED for fact in asked.facts(van) for rule in asked.rules
        if rule.when(fact)
    }  # fmt: skip


SHUNT = """
[shunt]
rating = "50 A"
in_line = "main-minus"
"""
BREAKER = """
[[isolators]]
name = "panel breaker"
kind = "breaker"
in_line = "pump"
interrupting = "1.5 kA"
"""
LINK = """
[[batteries]]
name = "starter"
role = "starter"
fuse = "none"
[[cables]]
name = "link"
from = "bank-a"
to = "starter"
fused = "both ends"
"""
CHARGER = """
[shore]
charger = "30 A"
from = "fuse-block.2"
return_to = "minus-bar"
length = "1 m"
conductor = "12 AWG"
fuse = "40 A"
fused = "house bank only"
"""
ALONE = VAN.replace('none = ["shunt", "inverter", "alternator", "shore"]', "")
# The bank of VAN drives 13.39 V / 10 mΩ = 1339 A; each of its two batteries half of that, and the
# one of three drives 669 A while the two others drive 1339 A into it.
WEAK = VAN.replace('fuse_family = "class T"\n[[bars]]', 'fuse_family = "type C"\n[[bars]]')

BLOCK = VAN.replace('fuse-block"\nrating = "100 A"', 'fuse-block"\nrating = "{}"')
UNNAMED = VAN.replace('"25 A"\nfuse_family = "type C"', '"{}"\nfuse_family = "not named"')

CASES = {
    # the pump takes 20 A
    "van.bar-overloaded": (BLOCK.format("19 A"), BLOCK.format("20 A")),
    "van.shunt-overloaded": (
        ALONE + SHUNT.replace("50 A", "19 A"),
        ALONE + SHUNT.replace("50 A", "20 A"),
    ),
    # 13.39 V through 10 mΩ, 1.13 mΩ of feed and 0.4 mΩ of joints: 1162 A at the fuse of the pump
    "van.breaker-cannot-interrupt": (
        ALONE + BREAKER.replace("1.5 kA", "1.1 kA"),
        ALONE + BREAKER.replace("1.5 kA", "1.2 kA"),
    ),
    "van.batteries-without-own-fuses": (
        VAN.replace('fuse = "200 A"\nfuse_family = "class T"', 'fuse = "none"'),
        VAN.replace('fuse = "200 A"\nfuse_family = "class T"', 'fuse = "none"').replace(
            'units = "2"', 'units = "1"'
        ),
    ),
    # blades of type C break 1000 A: more than 669 A of one battery, less than 1339 A of two
    "van.battery-fuse-cannot-interrupt": (WEAK.replace('units = "2"', 'units = "3"'), WEAK),
    # blades of type C are made for 32 V; charging, a bank of 48 V reaches 58.4 V
    "van.battery-fuse-voltage-too-low": (WEAK.replace('"12 V"', '"48 V"'), WEAK),
    "van.fused-at-one-end": (
        ALONE + LINK.replace("both ends", "house bank only"),
        ALONE + LINK,
    ),
    # 12 AWG carries 45 A at 105 °C: 33 CFR 183.425 table 5
    "van.charger-end-without-fuse": (
        ALONE + CHARGER.replace('"30 A"', '"46 A"'),
        ALONE + CHARGER.replace('"30 A"', '"45 A"'),
    ),
    "van.charger-end-by-its-limit": (
        ALONE + CHARGER,
        ALONE + CHARGER.replace("house bank only", "both ends"),
    ),
    # of no named family, so that no curve is asked
    "van.fuse-order-reversed": (UNNAMED.format("110 A"), UNNAMED.format("100 A")),
}  # fmt: skip


def test_every_rule_has_a_case():
    assert set(CASES) == {rule.id for rule in RULES}
    assert len({rule.id for rule in RULES}) == len(RULES)


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    over, at = CASES[rule]
    assert rule in fires(read_van(over))
    assert rule not in fires(read_van(at))


@pytest.mark.parametrize("rule", CASES)
def test_a_mend_silences_its_rule_and_wakes_no_other(rule):
    van = read_van(CASES[rule][0])
    before = fires(van)
    for asked in ASKED:
        for fact in asked.facts(van):
            for one in asked.rules:
                if one.id == rule and one.when(fact):
                    for mend in one.mends(fact):
                        after = fires(mended(van, mend))
                        assert rule not in after
                        assert after <= before


@pytest.mark.parametrize("name", DEMOS)
def test_demos_break_no_rule_of_these_but_the_one_half_seen(name):
    found = fires(demo(name))
    assert found == ({"van.batteries-without-own-fuses"} if name == "half-seen" else set())


def test_what_is_not_known_fires_nothing():
    """Strike any value: no rule of the schedule speaks that was silent, but for sums of what is
    left."""
    van = read_van(VAN)
    assert fires(van) == set()
    for part in van.everything():
        for key, value in part.values.items():
            if value.statements:
                place = f"{part.place}.{key}"
                assert fires(van.changed({place: "not seen"})) == set(), place


def test_drawn_vans_are_judged_without_an_exception():
    rng = chance("van-schedule-rules")
    for _ in range(often(25, 200)):
        fires(drawn_van(rng))

"""Rules on a fuse at its place: each on either side of where it begins to speak."""

import pytest

from calc.electrical.interrupting import interrupting_duty
from calc.electrical.opening import Fuse
from calc.electrical.rules import interrupting as rules
from calc.judge import Rule
from tests.rules.judging import mended, remedy

C, E = "blade, regular (type C)", "blade, large (type E)"
BLOCK, T = "terminal-mount block", "cartridge, class T"
MARKED = {"printed": 32.0}
GLASS = "glass or ceramic cartridge (UL 248-14)"
MINIATURE = "quick miniature cartridge (IEC 60127)"


def duty(family=E, rating=40.0, voltage=14.6, fault=500.0, printed=None):
    return interrupting_duty(
        fuse=Fuse(family, rating), voltage=voltage, fault_current=fault, printed=printed
    )


@pytest.mark.parametrize(
    ("rule", "fires", "silent"),
    [
        # ISO 8820-3 scope: 32 V and 58 V, 1000 A; class T 125 V and 20 kA by a textbook
        (rules.VOLTAGE_TOO_LOW, {"voltage": 58.1}, {"voltage": 58.0}),
        (rules.VOLTAGE_TOO_LOW, {"family": T, "voltage": 126.0}, {"family": T, "voltage": 125.0}),
        (rules.CANNOT_INTERRUPT, {"fault": 1001.0}, {"fault": 1000.0}),
        (rules.CANNOT_INTERRUPT, {"family": T, "fault": 20001.0}, {"family": T, "fault": 20000.0}),
        (rules.MARKED_HIGHER, {"voltage": 32.1}, {"voltage": 32.0}),
        (rules.MARKED_HIGHER, {"voltage": 58.0}, {"voltage": 58.1}),  # then none is made for it
        (rules.TIGHT, {"fault": 910.0}, {"fault": 909.0}),  # 1000 A over 1.1 is 909.1 A
        (rules.TIGHT, {"fault": 1000.0}, {"fault": 1001.0}),  # then it cannot break it at all
        (rules.UNKNOWN, {"family": GLASS}, {"family": E}),
        # UL 248-14 at 250 V a.c.: 200 A for 3.6 to 10 A, 1500 A up to 30 A and, our step, above
        (rules.NOT_MADE_FOR_IT, {"family": GLASS, "rating": 10.0, "fault": 201.0},
         {"family": GLASS, "rating": 10.0, "fault": 200.0}),
        (rules.NOT_MADE_FOR_IT, {"family": GLASS, "rating": 10.0, "fault": 700.0},
         {"family": GLASS, "rating": 10.1, "fault": 700.0}),
        (rules.NOT_MADE_FOR_IT, {"family": GLASS, "rating": 60.0, "fault": 1501.0},
         {"family": GLASS, "rating": 60.0, "fault": 1500.0}),
        (rules.NOT_MADE_FOR_IT, {"family": MINIATURE, "rating": 3.0, "fault": 36.0},
         {"family": MINIATURE, "rating": 3.0, "fault": 35.0}),
        (rules.NOT_MADE_FOR_IT, {"family": GLASS, "fault": 1e5}, {"family": None, "fault": 1e5}),
        (rules.UNKNOWN, {"family": None}, {"family": E}),
        (rules.VOLTAGE_TOO_LOW, {"voltage": 57.6, "printed": 32.0}, {"voltage": 57.6}),
        (
            rules.VOLTAGE_TOO_LOW,
            {"voltage": 32.1, "printed": 32.0},
            {"voltage": 32.0, "printed": 32.0},
        ),
        (rules.VOLTAGE_TOO_LOW, {"family": None, "printed": 14.0}, {"family": None}),
        (rules.MARKED_HIGHER, {"voltage": 48.0}, {"voltage": 48.0, "printed": 58.0}),
        # single-bolt fuses break 2000 A by the scope of ISO 8820-6, more from memory only: 5000 A
        # below 32 V. 2000 A over 1.1 is 1818.2 A, 5000 A over 1.1 is 4545.5 A
        (rules.FROM_MEMORY, {"family": BLOCK, "fault": 1819.0}, {"family": BLOCK, "fault": 1818.0}),
        (rules.TIGHT, {"family": BLOCK, "fault": 4546.0}, {"family": BLOCK, "fault": 4545.0}),
        (
            rules.TIGHT,
            {"family": BLOCK, "fault": 1819.0, "voltage": 58.0},
            {"family": BLOCK, "fault": 1818.0, "voltage": 58.0},
        ),
        (rules.NO_STANDARD_RATING, {"rating": 41.0}, {"rating": 40.0}),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_a_rule_on_a_fuse_s_place_speaks_from_its_limit_on(rule, fires, silent):
    assert rule.when(duty(**fires))
    assert not rule.when(duty(**silent))


def test_a_family_whose_ratings_are_not_known_is_judged_by_nothing_else():
    unknown = duty(family=GLASS, voltage=500.0, fault=99.0, rating=3.3)
    declared = [rule for rule in vars(rules).values() if isinstance(rule, Rule)]
    speak = [rule.id for rule in declared if rule.when(unknown)]
    assert speak == ["fuse.ratings-unknown"]


def test_a_family_that_suits_the_place_is_offered_where_one_is_made_in_the_rating():
    large = {"downstream": "80 A", "downstream_family": E, "voltage": "58.4 V"}
    main = {"upstream": "200 A", "upstream_family": T}
    after = mended("fuse-ladder", rules.VOLTAGE_TOO_LOW.id, large | main)
    assert after["downstream_family"] == T, "125 V; a blade 58 V"
    glass = {"downstream": "30 A", "downstream_family": GLASS}  # 250 A is within its 1500 A
    assert mended("fuse-ladder", rules.UNKNOWN.id, glass)["downstream_family"] == C


def test_no_family_is_offered_where_none_of_that_rating_is_known_to_suit():
    """A blade breaker breaks 2 kA; of 10 A only the cylinder more than 3 kA, and it ends at 10."""
    after = mended(
        "fuse-ladder", rules.CANNOT_INTERRUPT.id, {"fault_current": "1500 A", "upstream_family": T}
    )
    assert after["downstream_family"] == "blade breaker (CB15)"
    more = {"fault_current": "3.5 kA", "upstream_family": T}
    after = mended("fuse-ladder", rules.CANNOT_INTERRUPT.id, more)
    assert after["downstream_family"] == "cylinder, 10 by 38 mm (gPV)"
    much = {"fault_current": "10.1 kA", "upstream_family": T}
    assert remedy("fuse-ladder", rules.CANNOT_INTERRUPT.id, much) is None


def test_the_next_rating_below_is_offered_for_one_that_is_not_made():
    after = mended("fuse-ladder", rules.NO_STANDARD_RATING.id, {"downstream": "9.5 A"})
    assert after["downstream"].m_as("A") == 7.5

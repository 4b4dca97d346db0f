"""Rules on the fuse that ends the shorts of a run: each on either side of where it begins."""

import pytest

from calc.electrical.rules import cable
from calc.electrical.rules import clearing as rules
from tests.rules.judging import fires, mended, remedy

RUN = {
    "source_resistance": "16 mΩ", "conductor": "6 mm2", "length": "5 m",
    "insulation": "105 C XLPE", "fuse": "30 A", "fuse_family": "type C",
}  # fmt: skip
THIN = {"conductor": "18 AWG", "insulation": "70 C PVC", "length": "3 m"}  # 10 A by 33 CFR table 5
TYPED = THIN | {"source_resistance": "16 mΩ", "fuse_family": "type C", "fuse": "10 A",
                "let_through": "300 A2.s", "opening_time": "0.3 s"}  # fmt: skip
NOT_PROVED = THIN | {"source_resistance": "16 mΩ", "fuse_family": "type C"}
STRIP = RUN | {"fuse_family": "SF30"}
THICK = RUN | {"conductor": "4 mm2", "length": "3 m"}
FAR_SOURCE = RUN | {"source_resistance": "34 mΩ", "let_through": "900 A2.s"}
WEAK = RUN | {"conductor": "1 mm2", "insulation": "70 C PVC", "length": "6 m"}


@pytest.mark.parametrize(
    ("rule", "speaks", "silent"),
    [
        (rules.NEVER, WEAK | {"source_resistance": "14 mΩ"}, RUN),
        (rules.TOO_LATE, WEAK | {"length": "4.5 m", "fuse_family": "type E"}, RUN),
        # 6 mm² in 70 °C PVC: (115 · 6)² is 476 100 A²·s (BS 7671, k of 115)
        (rules.TOO_MUCH, RUN | {"insulation": "70 C PVC", "let_through": "480000 A2.s"},
         RUN | {"insulation": "70 C PVC", "let_through": "470000 A2.s"}),
        (rules.ABOVE_CEILING, TYPED | {"fuse": "15.1 A"}, TYPED | {"fuse": "15 A"}),
        (rules.SHORT_BUT_NO_OVERLOAD, TYPED | {"fuse": "10.1 A"}, TYPED | {"fuse": "10 A"}),
        (rules.NO_OVERLOAD, THIN | {"fuse": "10.1 A"}, THIN | {"fuse": "10 A"}),
        (rules.NO_OVERLOAD, THIN | {"fuse": "10.1 A"}, TYPED | {"fuse": "10.1 A"}),
        (rules.NOT_CERTAIN, RUN | {"conductor": "1.5 mm2", "fuse": "20 A"}, RUN),
        (rules.FROM_MEMORY, RUN | {"fuse": "60 A", "fuse_family": "class T"}, RUN),
        # 13.3 V over 58 mΩ is 230 A at least: three times 60 A it is not certain to be
        (rules.NO_CURVE, STRIP | {"fuse": "60 A"}, STRIP),
        (rules.ONE_DEVICE, STRIP, STRIP | {"fuse": "60 A"}),
        (rules.CURVE_WOULD_PROVE, STRIP, RUN),
        (rules.NO_FUSE, RUN | {"fuse": ""}, RUN),
        # 25 A by 33 CFR table 5 for 60 °C, 45 A for 105 °C
        (rules.ARC_FROM_MEMORY, THICK | {"insulation": "70 C PVC"}, THICK),
        (cable.BELOW_TABLE, TYPED | {"conductor": "20 AWG", "fuse": "7.5 A"}, TYPED),
        (rules.BY_TYPED, TYPED, RUN),
        # 13.3 V over 34 mΩ is 391 A
        (rules.LARGER_FAULT, FAR_SOURCE | {"fuse": "40 A"}, FAR_SOURCE | {"fuse": "30 A"}),
        (rules.ONLY_LET_THROUGH, THIN | {"fuse": "10 A"}, RUN),
        (rules.SLOW_FUSE, RUN | {"fuse": "40 A", "fuse_family": "type E"}, RUN),
        (rules.BY_DATA_SHEET, RUN, TYPED | {"fuse": "20 A", "fuse_family": "not named"}),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_a_rule_on_the_fuse_of_a_run_speaks_from_its_limit_on(rule, speaks, silent):
    assert rule.id in fires("fault-current", speaks)
    assert rule.id not in fires("fault-current", silent)


@pytest.mark.parametrize(
    ("rule", "texts", "fuse"),
    [
        (rules.ABOVE_CEILING, TYPED | {"fuse": "20 A"}, 10),
        (rules.SHORT_BUT_NO_OVERLOAD, TYPED | {"fuse": "15 A"}, 10),
        (rules.NO_OVERLOAD, NOT_PROVED | {"fuse": "15 A"}, 10),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_the_largest_fuse_that_the_wire_can_carry_is_offered(rule, texts, fuse):
    assert mended("fault-current", rule.id, texts)["fuse"].m_as("A") == fuse


@pytest.mark.parametrize(
    ("rule", "change", "fuse"),
    [
        # type F: 110 % for 100 h; in 5 s from 200 % on, in 0.5 s from 350 % on (data sheets)
        (rules.NEVER, {"length": "15 m", "fuse": "30 A", "fuse_family": "type F"}, 10),
        (rules.NOT_CERTAIN, {"length": "4.5 m", "fuse": "40 A"}, 35),
    ],
    ids=lambda value: getattr(value, "id", None),
)
def test_a_smaller_rating_of_the_family_that_is_in_time_is_offered(rule, change, fuse):
    after = mended("fault-current", rule.id, RUN | {"conductor": "2.5 mm2"} | change)
    assert after["fuse"].m_as("A") == fuse


def test_no_rating_is_offered_where_none_of_the_family_is_in_time():
    assert remedy("fault-current", rules.NEVER.id, WEAK | {"source_resistance": "14 mΩ"}) is None

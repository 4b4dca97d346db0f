"""Rules on two fuses in series: each on either side of where it begins to speak."""

import pytest

from calc.electrical.opening import Fuse
from calc.electrical.rules import selectivity as rules
from calc.electrical.selectivity import selectivity
from tests.rules.judging import mended

C, E, F = "blade, regular (type C)", "blade, large (type E)", "blade, miniature (type F)"
BLOCK, GLASS = "terminal-mount block", "glass or ceramic cartridge (UL 248-14)"
SF51 = "bolt-in strip, 51 mm (SF51)"


def pair(
    down=(E, 20.0), up=(E, 80.0), fault=108.0, low=None, load=0.0, clearing=None, melting=None
):
    return selectivity(
        downstream=Fuse(*down), upstream=Fuse(*up), fault_current=fault, lowest_fault=low,
        voltage=14.6, other_load=load, downstream_clearing=clearing, upstream_melting=melting,
    )  # fmt: skip


TYPED = {"down": (C, 10.0), "up": (E, 60.0), "fault": 800.0}


@pytest.mark.parametrize(
    ("rule", "fires", "silent"),
    [
        (rules.OVERLOADED, {"load": 80.1}, {"load": 80.0}),
        # DIN 72581-3 type E: 20 A at 540 % takes 7 s at most, 80 A at 135 % 60 s at least
        (rules.NOT_CERTAIN, {"fault": 108.1}, {"fault": 108.0}),
        (rules.UPSTREAM_FIRST, {"down": (E, 80.0), "up": (E, 20.0)}, {}),
        # of two families too, where no gate says which opens first; a quick one may still hold
        (rules.WRONG_WAY_ROUND, {"down": (E, 80.0), "up": (C, 30.0), "fault": 250.0},
         {"down": (C, 30.0), "up": (E, 30.0), "fault": 250.0}),
        (rules.CARRIED, {"low": 20.0}, {"low": 20.1}),
        (rules.NO_CURVE, {"up": (BLOCK, 80.0)}, {"up": (E, 80.0)}),
        (rules.FROM_MEMORY, {"up": (SF51, 80.0)}, {"up": (E, 80.0)}),
        # five to one is far enough apart: 100 A before 20 A, and 8 A more for 8 A besides
        (rules.NO_CURVE, {"up": (BLOCK, 99.9)}, {"up": (BLOCK, 100.0)}),
        (rules.FROM_MEMORY, {"up": (SF51, 99.9)}, {"up": (SF51, 100.0)}),
        (rules.NOT_CERTAIN, {"down": (C, 7.5), "up": (E, 37.4), "fault": 250.0},
         {"down": (C, 7.5), "up": (E, 37.5), "fault": 250.0}),
        (rules.FAR_APART, {"up": (BLOCK, 108.0), "load": 8.0}, {"up": (BLOCK, 108.0), "load": 8.1}),
        (rules.FAR_APART, {"up": (BLOCK, 100.0)}, {"down": (F, 10.0), "fault": 250.0}),
        (rules.NOT_PROVEN, {"up": (BLOCK, 100.0)}, {"up": (BLOCK, 99.9)}),
        (rules.UPSTREAM_LOADED, {"down": (F, 10.0), "fault": 150.0, "load": 30.1},
         {"down": (F, 10.0), "fault": 150.0, "load": 30.0}),
        (rules.UPSTREAM_LOADED, {"fault": 100.0, "load": 0.1}, {"fault": 100.0, "load": 0.0}),
        (rules.UPSTREAM_LOADED, {"fault": 100.0, "load": 8.0}, {"fault": 100.0, "load": 8.1}),
        (rules.REVERSED_SIZES, {"down": (E, 80.1)}, {"down": (E, 80.0)}),
        # stated at ten times the rating, so 100 A for 10 A; 900 A²·s is a tenth of a second at 95 A
        (rules.LARGER_FAULT, TYPED | {"fault": 99.9, "clearing": 900.0, "melting": 901.0},
         TYPED | {"fault": 100.0, "clearing": 900.0, "melting": 901.0}),
        (rules.BY_LET_THROUGH, TYPED | {"clearing": 900.0, "melting": 901.0},
         TYPED | {"clearing": 900.0, "melting": 900.0}),
        (rules.BY_DATA_SHEET, {"down": (F, 10.0), "fault": 250.0}, {"down": (E, 20.0)}),
        (rules.BY_DATA_SHEET, {"down": (F, 10.0), "fault": 250.0},
         TYPED | {"clearing": 900.0, "melting": 901.0}),
        (rules.ONE_CURRENT, {"low": None}, {"low": 100.0}),
        (rules.ONE_CURRENT, {"low": None}, {"low": None, "fault": 108.1}),
        (rules.ASK_FOR_I2T, {"clearing": 900.0}, {"clearing": 900.0, "melting": 901.0}),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_a_rule_on_two_fuses_speaks_from_its_limit_on(rule, fires, silent):
    assert rule.when(pair(**fires))
    assert not rule.when(pair(**silent))


def test_the_makers_let_through_proves_nothing_of_a_weaker_short():
    typed = TYPED | {"clearing": 900.0, "melting": 901.0}
    assert rules.BY_LET_THROUGH.when(pair(**typed, low=800.0))
    assert not rules.BY_LET_THROUGH.when(pair(**typed, low=799.0))


def test_less_other_load_mends_what_is_said_of_it():
    after = mended("fuse-ladder", rules.OVERLOADED.id, {"other_load": "81 A"})
    assert after["other_load"].m_as("A") == 80
    loaded = {"fault_current": "100 A", "other_load": "9 A", "upstream": "40 A"}
    assert mended("fuse-ladder", rules.UPSTREAM_LOADED.id, loaded)["other_load"].m_as("A") == 0

"""Judgements on a cable and its fuse: each fires on one side of its line and not on the other."""

import pytest

from tests.rules.judging import fires, mended, remedy

SHEET = "fuse-choice"
AT = {"fuse_place": "at the battery"}  # where the fault is what is typed
WEAK = AT | {"fault_current": "900 A"}  # below the 1000 A that a blade fuse breaks
SMALL = WEAK | {"current": "2 A"}  # where nothing is hot but what is said to be
NEC = {"rule_set": "NEC", "insulation": "75 C"}
THIN = {"current": "6 A", "conductor": "18 AWG", "insulation": "60 C"}  # 7.5 to 10 A
BLADE, STRIP = "blade, large (type E)", "bolt-in strip, 51 mm (SF51)"
FITTED_BLADE = WEAK | {"fitted": "40 A", "fitted_family": BLADE}
FITTED_STRIP = WEAK | {"current": "40 A", "fitted_family": STRIP}
FITTED_BLOCK = AT | {"fitted": "40 A", "fitted_family": "terminal-mount block"}
ENGINE = {"surroundings": "inside engine space"}

# 33 CFR 183.425 table 5, 8 AWG: 80 A at 105 °C, 55 A at 60 °C; note 2: 0.7 for three together, 0.6
# for four. A fuse carries 1.25 times the load (NEC 210.20(A)). Class T breaks 20 kA.
CASES = {
    "fuse.no-family": (AT | {"fault_current": "20.1 kA"}, AT | {"fault_current": "20 kA"}),
    "fuse.window-closed": ({"current": "80.1 A"}, {"current": "80 A"}),
    # 64 A × 1.25 = 80 A: beyond it no fuse fits, and up to 80 A the wire itself carries the load
    "fuse.window-narrow": ({"current": "64.1 A"}, {"current": "64 A"}, {"current": "80.1 A"}),
    # class T, which alone breaks 15 kA, begins at 15 A; blades of 7.5 A would do but for that
    "fuse.no-rating-for-this-fault": (
        AT | THIN | {"fault_current": "15 kA"}, AT | THIN | {"fault_current": "900 A"},
    ),
    # gPV cylinders end at 25 A, and all that is larger ends at 125 V
    "fuse.no-family-so-large-at-this-voltage": (
        AT | {"voltage": "230 V"}, AT | {"voltage": "58.4 V"},
    ),
    # 4 AWG carries 160 A: 149 A asks for 186.25 A; 127 A for 158.75 A, and 150 and 175 A are made
    "fuse.no-rating-between": (
        {"current": "127 A", "conductor": "4 AWG"}, {"current": "119 A", "conductor": "4 AWG"},
    ),
    "cable.bundle-by-prudence": (SMALL | {"bundled": "3"}, SMALL | {"bundled": "2"}),
    "cable.below-table": (SMALL | {"conductor": "20 AWG"}, SMALL | {"conductor": "18 AWG"}),
    "cable.column-not-printed": (SMALL | {"insulation": "70 C"}, SMALL | {"insulation": "75 C"}),
    # 125 °C insulation in air of 30 °C: the whole 95 K rise at the ampacity of 90 A, of which 60 K
    # come at 0.795 of it, 71.5 A
    "copper.hot-at-lugs": (
        {"insulation": "125 C", "current": "71.6 A"}, {"insulation": "125 C", "current": "71.4 A"},
    ),
    # NEC 310.16, 8 AWG: 40 A by the 60 °C column, which terminals are taken for: 110.14(C)(1)(a)
    "terminals.taken-as-cool": (WEAK | NEC | {"current": "33 A"}, WEAK | NEC | {"current": "32 A"}),
    "terminals.have-ratings": (SMALL | NEC, SMALL | NEC | {"insulation": "60 C"}),
    "terminals.cool-column": (SMALL | NEC, SMALL | NEC | {"insulation": "60 C"}),
    "fuse.hot-air-not-printed": (SMALL | {"ambient": "50.1 C"}, SMALL | {"ambient": "50 C"}),
    "fuse.hot-air-derates": (SMALL | {"ambient": "50.1 C"}, SMALL | {"ambient": "50 C"}),
    "fuse.warm-air-derates": (SMALL | {"ambient": "40.1 C"}, SMALL | {"ambient": "40 C"}),
    "cable.factor-not-printed": (SMALL | {"ambient": "30.1 C"}, SMALL | {"ambient": "30 C"}),
    # 40 A takes a fuse of 50 A, 40.1 A one of 60 A
    "insulation.only-as-printed": (WEAK | {"current": "40.1 A"}, WEAK | {"current": "40 A"}),
    "insulation.nothing-unless-printed": (
        SMALL | {"ambient": "60 C"}, SMALL | {"ambient": "59.9 C", "conductor": "4/0 AWG"},
    ),
    "cable.only-in-sheath": (
        SMALL | {"conductor": "18 AWG"}, SMALL | {"conductor": "16 AWG"},
    ),
    # single-bolt fuses break 2000 A by the scope of ISO 8820-6, more, with a tenth to spare, from
    # memory only
    "fuse.ratings-from-memory": (
        FITTED_BLOCK | {"fault_current": "1819 A"},
        FITTED_BLOCK | {"fault_current": "1818 A"},
    ),
    "fuse.interrupting-rating-tight": (
        FITTED_BLADE | {"fault_current": "910 A"}, FITTED_BLADE | {"fault_current": "909 A"},
    ),
    "fuse.cannot-interrupt": (
        FITTED_BLADE | {"fault_current": "1001 A"}, FITTED_BLADE | {"fault_current": "1000 A"},
    ),
    "fuse.ratings-unknown": (WEAK | {"fitted": "40 A"}, FITTED_BLADE),
    "fuse.voltage-rating-too-low": (
        FITTED_BLADE | {"voltage": "57.6 V", "fitted_voltage": "32 V"},
        FITTED_BLADE | {"voltage": "57.6 V", "fitted_voltage": "58 V"},
    ),
    "fuse.no-standard-rating": (FITTED_BLADE | {"fitted": "41 A"}, FITTED_BLADE),
    # 8 AWG at 105 °C carries 80 A, one and a half times that is 120 A; 33 CFR 183.455(c)
    "fuse.above-ampacity": (FITTED_STRIP | {"fitted": "100 A"}, FITTED_STRIP | {"fitted": "80 A"}),
    "fuse.above-ceiling": (FITTED_STRIP | {"fitted": "125 A"}, FITTED_STRIP | {"fitted": "100 A"}),
    "fuse.below-load": (
        FITTED_BLADE | {"current": "40.1 A"}, FITTED_BLADE | {"current": "40 A"},
    ),
    "fuse.loaded-hard": (FITTED_BLADE | {"current": "32.1 A"}, FITTED_BLADE | {"current": "32 A"}),
    "fuse.above-label": (
        FITTED_BLADE | {"current": "20 A", "allowed": "35 A"},
        FITTED_BLADE | {"current": "20 A", "allowed": "40 A"},
    ),
    "fuse.label-decides": (SMALL | {"allowed": "79 A"}, SMALL | {"allowed": "80 A"}),
    "fuse-choice.behind-main": ({}, AT),
    # a feed of 8 AWG at 105 °C carries 80 A: 33 CFR 183.425, table 5
    "feed.below-load": (
        {"conductor": "2/0 AWG", "current": "80.1 A"}, {"conductor": "2/0 AWG", "current": "80 A"},
    ),
    "fuse.marked-higher": (
        FITTED_BLADE | {"voltage": "32.1 V"}, FITTED_BLADE | {"voltage": "32 V"},
    ),
    # blades are for 58 V at most
    "fuse.families-of-too-low-voltage": (
        SMALL | {"voltage": "58.1 V"}, SMALL | {"voltage": "58 V"},
    ),
    "fuse.too-low-in-voltage": (SMALL | {"voltage": "58.1 V"}, SMALL | {"voltage": "58 V"}),
    "fuse.families-that-cannot-interrupt": (
        AT | {"fault_current": "1001 A"}, AT | {"fault_current": "1000 A"},
    ),
    "fuse.cannot-break": (
        AT | {"fault_current": "1001 A"}, AT | {"fault_current": "1000 A"},
    ),
    "fault.burns": (AT | {"fault_current": "1000 A"}, AT | {"fault_current": "999 A"}),
    "fuse.ceiling-not-used": (SMALL | {"voltage": "49.9 V"}, SMALL | {"voltage": "50 V"}),
    "fuse.place-on-mains": (SMALL | NEC, SMALL),
    "fuse.place-at-source": (SMALL, SMALL | NEC),
    "cable.mains-side": (SMALL | NEC, SMALL),
    "cable.rules-for-boats": (SMALL, SMALL | NEC),
    "cable.editions-differ": (SMALL | NEC | {"insulation": "60 C"}, SMALL | {"insulation": "60 C"}),
    # 4/0 AWG holds 107.2 mm²
    "cable.beyond-rows": (SMALL | {"conductor": "120 mm2"}, SMALL | {"conductor": "95 mm2"}),
    # panel breakers end at 50 A and 3 kA, limiter strips begin at 35 A: both are from memory
    "fuse.some-families-from-memory": (
        AT | {"fault_current": "3 kA"}, AT | {"fault_current": "6.1 kA"},
    ),
    "copper.may-be-sae": (SMALL, SMALL | {"conductor": "10 mm2"}),
    "copper.read-as-sae": (SMALL | {"gauge_reading": "SAE"}, SMALL),
    "copper.gauge-reading-idle": (
        SMALL | {"gauge_reading": "SAE", "conductor": "10 mm2"}, SMALL | {"gauge_reading": "SAE"},
    ),
}  # fmt: skip


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_line_only(rule):
    there, *not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    for texts in not_there:
        assert rule not in fires(SHEET, texts)


MENDED = [
    "fuse.cannot-interrupt", "fuse.ratings-from-memory", "fuse.interrupting-rating-tight",
    "fuse.no-standard-rating", "fuse.below-load", "fuse.loaded-hard", "fuse.above-label",
    "fuse.above-ceiling", "fuse.above-ampacity",
    "fuse.window-closed", "fuse.window-narrow", "fuse.no-rating-for-this-fault",
    "fuse.no-rating-between",
    "copper.hot-at-lugs", "terminals.taken-as-cool",
    "fuse.hot-air-not-printed", "fuse.hot-air-derates", "fuse.warm-air-derates",
    "insulation.only-as-printed", "cable.only-in-sheath",
]  # fmt: skip


@pytest.mark.parametrize("rule", MENDED)
def test_the_remedy_of_a_rule_silences_it(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_the_first_thicker_wire_that_lets_a_fuse_fit_is_named():
    """By 33 CFR table 5: 70 A ask for 87.5 A; 6 AWG of 105 °C carries 120 A."""
    assert mended(SHEET, "fuse.window-narrow", {"current": "70 A"})["conductor"] == "6 AWG"


def test_thicker_wire_of_the_same_series_is_offered_where_the_marking_decides():
    """60 A need 45 A or more of 60 °C insulation: 6 AWG carries 80 A so, 16 mm² is read as it."""
    for conductor, thicker in (("8 AWG", "6 AWG"), ("10 mm2", "16 mm2")):
        texts = WEAK | {"current": "40.1 A", "conductor": conductor}
        assert mended(SHEET, "insulation.only-as-printed", texts)["conductor"] == thicker


def test_a_cooler_way_is_one_outside_the_engine_space():
    after = mended(SHEET, "fuse.warm-air-derates", SMALL | ENGINE)
    assert after["surroundings"] == "outside-engine-space"


def test_no_remedy_is_offered_where_none_helps():
    """No change of wire or load makes a family break such a fault."""
    assert remedy(SHEET, "fuse.no-family", AT | {"fault_current": "20.1 kA"}) is None

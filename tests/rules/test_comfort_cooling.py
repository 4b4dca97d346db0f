"""Judgements on cooling: each fires on one side of its threshold only.

By hand: 5000 BTU/h at 10 EER are 500 W; half of 200 Ah at 12.8 V are 1280 Wh. Without sun, 60 W/K
of 9 K, two people of 115 W and 60 W of devices are 830 W.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "cooling-day"
HALF = {"usable": "50 %"}
ALWAYS = {**HALF, "duty": "100 %"}
LOAD = {"basis": "heat load", "sun": "0 W/m2", "outside": "35 C", "inside": "26 C"}

CASES = {
    "cooler.too-small": ({**LOAD, "cooling": "829 W"}, {**LOAD, "cooling": "830 W"}),
    # 8 kWh of a bank of which half is used are 500 W for 8 h
    "cooler.beyond-any-bank": ({**ALWAYS, "hours": "8.01 h"}, {**ALWAYS, "hours": "8 h"}),
    "cooler.no-engine-beside-sleepers": (
        {**ALWAYS, "hours": "2.57 h"},
        {**ALWAYS, "hours": "2.56 h"},
    ),
    "draw.beyond-bank": ({**ALWAYS, "hours": "2.57 h"}, {**ALWAYS, "hours": "2.56 h"}),
    # nine tenths of 100 Ah at 39.06 A
    "draw.little-to-spare": ({**ALWAYS, "hours": "2.31 h"}, {**ALWAYS, "hours": "2.3 h"}),
    "cooler.half-of-bank": ({**ALWAYS, "hours": "1.29 h"}, {**ALWAYS, "hours": "1.28 h"}),
    # 12 800 BTU/h at 10 EER are 1280 W, 100 A at 12.8 V
    "cooler.share-guessed": (
        {**HALF, "duty": "40 %", "hours": "2.57 h"},
        {**HALF, "duty": "40 %", "hours": "2.56 h"},
    ),
    "cooler.seldom-rests": ({"duty": "99.9 %"}, ALWAYS),
    # half of 78.1 Ah in an hour are 39.06 A
    "bank.heavy-load": ({"capacity": "78.0 Ah"}, {"capacity": "78.2 Ah"}),
    "cooler.little-in-hand": ({"duty": "80.1 %"}, {"duty": "80 %"}),
    "cooler.seasonal-ratio": ({"efficiency_ratio": "4.51 COP"}, {"efficiency_ratio": "4.5 COP"}),
    "air.open-up": ({**LOAD, "outside": "26 C"}, {**LOAD, "outside": "26.1 C"}),
    "air.too-hot-to-cool": ({**LOAD, "outside": "32.1 C"}, {**LOAD, "outside": "32 C"}),
    "inverter.output-can-kill": ({"route": "inverter"}, {"route": "direct"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


@pytest.mark.parametrize(("outside", "there"), [("35.1 C", True), ("35 C", False)])
def test_in_air_hotter_than_its_label_s_a_cooler_has_little_in_hand(outside, there):
    ask = {**LOAD, "cooling": "3 kW", "outside": outside}
    assert ("cooler.little-in-hand" in fires(SHEET, ask)) is there


@pytest.mark.parametrize(
    "rule",
    [
        "cooler.too-small",
        "cooler.beyond-any-bank",
        "draw.beyond-bank",
        "cooler.half-of-bank",
        "draw.little-to-spare",
        "cooler.seasonal-ratio",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_a_stronger_unit_mends_one_that_hardly_rests():
    mended(SHEET, "cooler.little-in-hand", {**LOAD, "cooling": "900 W"})


def test_a_bank_that_is_large_enough_for_all_the_time_mends_a_guess():
    mended(SHEET, "cooler.share-guessed", CASES["cooler.share-guessed"][0])


@pytest.mark.parametrize("hours", ["1 h", "2.5 h", "3 h", "6 h"])
def test_a_cooler_that_runs_longer_never_does_better(hours):
    shares = [
        calc.work(SHEET, {"duty": f"{d} %", "hours": hours}).verdict for d in range(5, 101, 5)
    ]
    order = ["fine", "caution", "stop"]
    assert shares == sorted(shares, key=order.index)

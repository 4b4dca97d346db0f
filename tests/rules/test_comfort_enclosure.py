"""Judgements on an electrical bay: each fires on one side of its threshold only.

By hand: air of 30 °C has 101325/(287.05 x 303.15) = 1.16438 kg/m³ and holds 1006 J/(kg·K), so 100 W
warm 30.733 m³/h of it by 10 K, 20.489 by 15 K, 15.367 by 20 K, 10.244 by 30 K and 2.5611 by 120 K.
"""

import pytest

import calc
from tests.rules.judging import fires, mended

SHEET = "enclosure-airflow"
HUNDRED = {"given_heat": "100 W", "vents": "1000 cm2"}
HARDY = {**HUNDRED, "inside_limit": "80 C", "rated_to": "90 C"}
OPEN = {"vents": ""}
SHUT = {"vents": "0 cm2"}
AREA = calc.work(SHEET, {"given_heat": "100 W"}).values["vent_area"]


def fan(flow: str, base: dict[str, str] = HUNDRED) -> dict[str, str]:
    """Return a bay with a fan of `flow` [m³/h]."""
    return {**base, "fan": f"{flow} m3/h"}


CASES = {
    "bay.no-cooler-air": ({"outside": "45 C"}, {"outside": "44.9 C"}),
    "bay.ruined": (fan("2.56"), fan("2.57")),
    # the area goes with the heat
    "bay.beyond-vents": (
        {**OPEN, "given_heat": f"{100.1 * 0.2 / AREA:.6f} W"},
        {**OPEN, "given_heat": f"{99.9 * 0.2 / AREA:.6f} W"},
    ),
    "bay.over-limit": (fan("20.48"), fan("20.49")),
    "bay.far-over-limit": (fan("10.24"), fan("10.25")),
    "bay.shut": ({**SHUT, "given_heat": "40 W"}, {**SHUT, "given_heat": "39.9 W"}),
    "bay.shut-and-warm": ({**SHUT, "given_heat": "15.1 W"}, {**SHUT, "given_heat": "15 W"}),
    "bay.walls-do": ({**SHUT, "given_heat": "15 W"}, {**SHUT, "given_heat": "15.1 W"}),
    "device.no-output": ({**OPEN, "derating": "20 %/K"}, {**OPEN, "derating": "19.9 %/K"}),
    "bay.air-unknown": (OPEN, {"vents": "200 cm2"}),
    "bay.too-hot-for-cable": (fan("10.24", HARDY), fan("10.25", HARDY)),
    "bay.warm-for-cable": (fan("15.36", HARDY), fan("15.37", HARDY)),
    "bay.fan-without-vents": ({**OPEN, "fan": "60 m3/h"}, {"fan": "60 m3/h", "vents": "200 cm2"}),
    # 40 m³/h at 2 m/s pass 55.56 cm²
    "bay.vents-too-small-for-fan": (
        {"fan": "40 m3/h", "vents": "55.5 cm2"},
        {"fan": "40 m3/h", "vents": "55.6 cm2"},
    ),
    "device.less-output": (fan("30.7"), fan("30.8")),
    "bay.heat-ages": (fan("20.48"), fan("20.49")),
    "bay.draught-can-fail": (HUNDRED, fan("60")),
    "bay.fan-can-fail": (fan("60"), HUNDRED),
    # five kelvin below the lower of 40 °C and 45 °C
    "bay.thermostat-never-rests": ({"outside": "35 C"}, {"outside": "34.9 C"}),
}


@pytest.mark.parametrize("rule", CASES)
def test_a_rule_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = CASES[rule]
    assert rule in fires(SHEET, there)
    assert rule not in fires(SHEET, not_there)


def test_a_device_that_gives_nothing_at_the_limit_is_a_stop_though_no_vent_is_known():
    """By hand: five degrees above 40 °C at 20 % each leave nothing."""
    answer = calc.work(SHEET, {**OPEN, "derating": "20 %/K"})
    assert (answer.verdict, answer.rule) == ("stop", "device.no-output")


@pytest.mark.parametrize(
    "rule",
    [
        "bay.ruined",
        "bay.over-limit",
        "bay.far-over-limit",
        "bay.shut",
        "bay.shut-and-warm",
        "bay.air-unknown",
        "bay.fan-without-vents",
        "bay.vents-too-small-for-fan",
    ],
)
def test_a_remedy_mends_and_brings_nothing_as_grave(rule):
    mended(SHEET, rule, CASES[rule][0])


def test_larger_vents_mend_a_bay_without_a_fan():
    mended(SHEET, "bay.far-over-limit", {"given_heat": "100 W", "vents": "50 cm2"})


def test_a_shut_bay_with_hardly_any_heat_in_it_is_left_so():
    """3.1 W through a square metre of plywood of some 3 W/(m²·K) warm it by 1 K."""
    charger = {"throughput": "100 W", "efficiency": "97 %", "vents": "0 cm2", "outside": "30 C"}
    answer = calc.work(SHEET, charger)
    assert answer.verdict == "fine"
    assert answer.values["reached"] == pytest.approx(31, abs=0.1)
    assert calc.work(SHEET, {**charger, "vents": ""}).verdict == "fine"
    assert calc.work(SHEET, {**charger, "vents": "0.1 cm2"}).verdict == "fine"
    assert calc.work(SHEET, {**charger, "outside": "44.5 C"}).verdict == "caution"


def test_more_heat_in_a_bay_or_less_vent_never_gets_it_a_better_verdict():
    grave = ["fine", "caution", "stop"]
    watts = ["1 W", "14 W", "16 W", "30 W", "39 W", "41 W", "80 W", "300 W"]
    for vents in ("0 cm2", "0.1 cm2", "20 cm2", "300 cm2"):
        found = [calc.work(SHEET, {"given_heat": heat, "vents": vents}).verdict for heat in watts]
        assert found == sorted(found, key=grave.index), vents
    for heat in watts:
        sizes = ["300 cm2", "60 cm2", "20 cm2", "1 cm2", "0.1 cm2", "0 cm2"]
        found = [calc.work(SHEET, {"given_heat": heat, "vents": vents}).verdict for vents in sizes]
        assert found == sorted(found, key=grave.index), heat

"""What an inverter must bear and ask: starts, pulses of current, and where verdicts turn."""

from itertools import pairwise
from math import cos, pi, sqrt

import pytest

import calc
from calc.energy import inverter
from tests.contract.samples import answers, fine

SIZE = "inverter-size"
SMALL = {"running": "300 W", "surge": "500 W", "hours_on": "2 h"}


def test_weights_add_up_to_the_whole_as_an_average_must():
    for name in ("cec", "european"):
        shares = [getattr(row, name) for row in inverter.weights()]
        assert sum(float(s.rstrip(" %")) for s in shares if s != "none") == pytest.approx(100)


def test_code_letters_follow_on_one_another_and_the_remembered_row_says_so():
    rows = {row.letter: row.power for row in inverter.code_letters()}
    ends = [[float(part.split()[0]) for part in text.split(" to ")] for text in rows.values()]
    for (low, high), (after, _) in pairwise(ends):
        assert low < high < after <= high + 0.02
    assert [letter for letter, text in rows.items() if "(from memory)" in text] == ["H"]


def test_a_motor_of_code_g_starts_within_what_the_start_factor_spans():
    """A published start: 50 hp, 460 V, 65 A at full load, code G: 376 A, 5.8 times."""
    low, high = (float(x.split()[0]) for x in inverter.code_letters()[1].power.split(" to "))
    starts = [50 * kva * 1000 / (460 * sqrt(3)) / 65 for kva in (low, high)]
    assert starts[0] < 5.8 < starts[1]
    assert starts[0] > 5 and starts[1] < 7


def test_current_in_pulses_heats_by_nearly_a_quarter_more_than_its_average():
    """The current of a single phase without storage, 1 - cos 2wt, added up over a period."""
    taken = [1 - cos(2 * pi * tick / 1000) for tick in range(1000)]
    heating = sqrt(sum(i * i for i in taken) / 1000) / (sum(taken) / 1000)
    assert 1.2 < heating < 1.25


def test_energy_in_is_energy_out_and_heat_and_idling():
    """Power in at the lowest voltage less power out is the heat."""
    answer = calc.work(SIZE)
    taken_in = answer["dc_current"].m_as("A") * 11.5
    assert taken_in - answer.values["running"] == pytest.approx(answer["heat"].m_as("W"))


@pytest.mark.parametrize(
    ("changed", "verdict"),
    [
        ({}, "fine"),
        ({"hours_on": "24 h"}, "caution"),
        ({"capacity": "58 Ah"}, "caution"),
        ({"capacity": "60 Ah"}, "fine"),
        ({"capacity": "110 Ah", "chemistry": "AGM"}, "caution"),
        ({"capacity": "120 Ah", "chemistry": "AGM"}, "fine"),
        ({"surge": "2000 W"}, "fine"),
        ({"surge": "2100 W"}, "caution"),
        ({"surge": "2100 W", "capacity": "400 Ah"}, "fine"),
        ({"surge": "1900 W", "capacity": "60 Ah"}, "caution"),
        ({"surge": "1900 W", "capacity": "100 Ah"}, "fine"),
        ({"lowest_voltage": "12.8 V"}, "caution"),
        ({"lowest_voltage": "12.2 V"}, "fine"),
        ({"max_current": "29 A"}, "stop"),
        ({"max_current": "45 A"}, "caution"),
        ({"max_current": "50 A"}, "fine"),
    ],
)
def test_where_the_verdict_turns(changed, verdict):
    """300 W at 11.5 V and 88 % are 29.6 A; 500 W are 49.4 A, 2024 W 200 A."""
    assert calc.work(SIZE, {**SMALL, **changed}).verdict == verdict


def test_more_than_one_battery_gives_is_fine_only_when_the_bank_is_said_to_give_it():
    for texts, answer in fine(SIZE):
        v = answer.values
        drawn = answer.result.draw  # half, a quarter and a fifth of the ampere-hours
        bank = 100 if drawn is None else drawn.heavy_rate * drawn.capacity
        assert v["dc_current"] <= (v["max_current"] or bank) * (1 + 1e-9), texts
        assert v["max_current"] is None or v["surge_current"] <= v["max_current"] * (1 + 1e-9)
        assert v["dc_current"] <= v["thickest_cable"] * (1 + 1e-9), texts


def test_every_answer_says_that_the_output_can_kill_and_never_feeds_an_inlet():
    for texts, answer in answers(SIZE)[:200]:
        said = " ".join(one.text for one in answer.cautions)
        assert "can kill" in said and "inlet" in said, texts


@pytest.mark.parametrize("watts", [3000, 3200, 3300, 4000, 4400])
def test_two_cables_are_asked_for_just_where_wire_size_has_none_that_does_alone(watts):
    size = calc.work(SIZE, {"running": f"{watts} W", "max_current": "900 A", "taken": "50 kWh"})
    amps = f"{watts / (11.5 * 0.88)} A"
    wire = calc.work("wire-size", {"current": amps, "length": "0.2 m", "voltage": "12.8 V"})
    assert ("cable.beyond-one" in size.rules) == (wire.verdict == "stop")
    assert ("cables in parallel" in size.sentence) == (wire.verdict == "stop")
    assert ("inverter.cable-and-fuse" in size.rules) == (wire.verdict != "stop")  # one fuse
    laid = {"current": amps, "length": "0.2 m", "voltage": "12.8 V"}
    cables = f"{size.result.single_cable.cables:.0f}"
    assert calc.work("wire-size", laid | {"parallel": cables})["conductor"] is not None


def test_a_motor_beside_a_heater_is_said_to_ask_more_than_their_common_power_factor_tells():
    said = [remark.text for remark in calc.work(SIZE, {"motor": "300 W"}).cautions]
    assert any("own power factor" in text for text in said)
    poor = calc.work(SIZE, {"motor": "300 W", "power_factor": "0.6"})
    assert not any("own power factor" in remark.text for remark in poor.cautions)


@pytest.mark.parametrize("name", ["motor", "can_wait"])
def test_a_part_larger_than_the_whole_is_refused(name):
    with pytest.raises(calc.InputError) as refusal:
        calc.work(SIZE, {"running": "500 W", name: "501 W"})
    assert refusal.value.field == name


def test_a_lowest_voltage_above_the_bank_s_is_refused():
    with pytest.raises(calc.InputError) as refusal:
        calc.work(SIZE, {"lowest_voltage": "13 V"})
    assert refusal.value.field == "lowest_voltage"

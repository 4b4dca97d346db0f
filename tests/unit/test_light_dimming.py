"""Lamps fed in pulses: averages, the eye, strips on the charger, and where the verdicts turn."""

from math import sqrt

import pytest

import calc
from calc.energy import loads
from tests.contract.samples import answers, fine

DIM = "light-dimming"


@pytest.mark.parametrize("level", [0.05, 0.25, 0.4, 1.0])
def test_the_average_of_a_square_wave_is_its_share_of_the_time(level):
    """By adding up a period of full current and none, a thousandth at a time."""
    taken = [1.0 if tick < level * 1000 else 0.0 for tick in range(1000)]
    assert loads.pulsed_share(level=level, exponent=1.0) == pytest.approx(sum(taken) / 1000)


def test_a_filament_sees_the_root_mean_square_of_its_pulses():
    """Lamp rerating gives power by voltage to 1.6; a quarter of the time is half of the voltage."""
    rms = sqrt(sum([1.0] * 250 + [0.0] * 750) / 1000)
    assert loads.pulsed_share(level=0.25, exponent=loads.FILAMENT_POWER / 2) == pytest.approx(
        rms**1.6
    )


def test_current_and_power_of_a_filament_agree_within_the_rounding_of_their_exponents():
    """Power is voltage times current: 1 + 0.55 against 1.6 as printed."""
    assert abs(1 + loads.FILAMENT_CURRENT - loads.FILAMENT_POWER) < 0.06


def test_lightness_meets_itself_where_the_curve_becomes_a_line():
    below, above = loads.lightness(loads.DARK), loads.lightness(loads.DARK * 1.0001)
    assert below == pytest.approx(0.08, abs=1e-4)
    assert above == pytest.approx(below, rel=1e-3)
    assert loads.lightness(1.0) == pytest.approx(1.0)
    assert loads.lightness(0.0) == 0.0


def test_a_string_of_diodes_and_a_resistor_by_kirchhoff():
    """Three diodes of 3.2 V and 120 ohm: 20 mA at 12 V, 41.7 mA at 14.6 V."""
    at_rest, charging = (12 - 9.6) / 120, (14.6 - 9.6) / 120
    growth = loads.strip_growth(rise=14.6 / 12, held=9.6 / 12)
    assert at_rest * growth == pytest.approx(charging)


@pytest.mark.parametrize(
    ("changed", "verdict"),
    [
        ({"frequency": "1.2 kHz"}, "caution"),
        ({"frequency": "2 kHz"}, "fine"),
        ({"frequency": "100 Hz", "level": "99 %"}, "caution"),
        ({"returns": "the body"}, "caution"),
        ({"returns": "the body", "switches": "plus"}, "fine"),
        ({"returns": "own wire", "switches": "minus"}, "fine"),
        ({"returns": "the body", "switches": "minus"}, "stop"),
        ({"rated": "3.9 A"}, "caution"),
        ({"rated": "3.1 A"}, "stop"),
    ],
)
def test_where_the_verdict_turns(changed, verdict):
    assert calc.work(DIM, changed).verdict == verdict


def test_pulses_are_said_to_be_judged_from_memory():
    slow = calc.work(DIM, {"frequency": "200 Hz"})
    assert any("(from memory)" in one.text for one in slow.cautions)


def test_a_lamp_with_its_own_regulator_gets_no_figure_for_what_it_saves():
    for texts, answer in answers(DIM):
        if answer.values["lamp"] == "own-regulator":
            assert answer.verdict == "stop", texts
            for name in ("saved_charge", "dimmed_charge", "seen", "lasts"):
                assert answer[name] is None


def test_fine_means_that_the_dimmer_bears_the_charger_and_saves_more_than_it_takes():
    for texts, answer in fine(DIM):
        v = answer.values
        assert v["rated"] is None or v["rated"] >= 1.25 * v["charging_current"] * (1 - 1e-9)
        assert v["saved_charge"] >= v["own_charge"] * (1 - 1e-9), texts
        assert not (v["returns"] == "the-body" and v["switches"] != "plus"), texts
        assert not (v["returns"] == "not-known" and v["switches"] == "minus"), texts


def test_a_strip_known_by_its_label_is_told_how_to_be_reckoned():
    """24 W at 12 V are 2 A; three diodes of 10 V leave 2 V to the resistor, 4.6 V at 14.6 V."""
    (said,) = (one.text for one in calc.work(DIM).cautions if one.rule == "strip.rated-at-12-v")
    assert "enter 12 V as bank voltage, 122 % as charging voltage, 83 % as share across" in said
    label = calc.work(DIM, {"voltage": "12 V", "rise": "122 %", "held": "83 %"})
    assert label["charging_current"].m_as("A") == pytest.approx(2 * 4.6 / 2, rel=0.01)


def test_a_filament_is_said_to_start_cold_and_a_dimmer_to_be_looked_at():
    lamps = calc.work(DIM, {"lamp": "filament"})
    assert "filament.dims-fast" in lamps.rules
    assert any("minus is the body" in one.text for one in calc.work(DIM).notes)


def test_a_zone_larger_than_all_lamps_is_refused():
    with pytest.raises(calc.InputError) as refusal:
        calc.work(DIM, {"power": "24 W", "zone_power": "25 W"})
    assert refusal.value.field == "zone_power"

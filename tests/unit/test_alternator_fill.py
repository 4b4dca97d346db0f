"""How a bank fills on the road, and what a hot bay costs of it."""

from dataclasses import replace
from itertools import pairwise

import pytest

import calc
from calc.energy import battery, charging, filling

HOUR = 3600.0


@pytest.mark.parametrize("chemistry", battery.Chemistry)
@pytest.mark.parametrize("state", [0.0, 0.3, 0.7, 0.9, 0.99])
def test_no_relay_fills_a_bank_faster_than_the_bank_takes_it(chemistry, state):
    capacity, efficiency = 200 * HOUR, battery.charge_efficiency(chemistry)
    filled = filling.relay_filling(
        chemistry=chemistry, capacity=capacity, state=state, current=500.0, reach=1.0
    )
    times = [60.0 * n for n in range(0, 1200, 20)]
    for before, after in pairwise(times):
        put = filled.after(before)
        now = min(1.0, state + put * efficiency / capacity)
        most = charging.acceptance(chemistry=chemistry, capacity=capacity, state=now)
        assert (filled.after(after) - put) / (after - before) <= most * (1 + 1e-9) + 1e-9
        assert filled.after(after) <= filled.room * (1 + 1e-12)


@pytest.mark.parametrize("chemistry", battery.Chemistry)
@pytest.mark.parametrize("state", [0.0, 0.5, 0.76, 0.95])
@pytest.mark.parametrize("hours", [0.5, 3, 9, 30])
def test_a_charger_fills_as_the_charge_by_stages_does(chemistry, state, hours):
    """`calc.energy.charging` follows the state of charge; this follows the charge put in."""
    capacity, known = 200 * HOUR, charging.by_chemistry(chemistry)
    efficiency, current = battery.charge_efficiency(chemistry), 30.0
    filled = filling.charger_filling(
        chemistry=chemistry, capacity=capacity, state=state, current=current
    )
    reached = charging.state_after(
        capacity=capacity,
        current=min(current, known.most * capacity),
        state=state,
        efficiency=efficiency,
        time_constant=known.time_constant,
        duration=hours * HOUR,
    )
    ours = state + filled.after(hours * HOUR) * efficiency / capacity
    assert ours == pytest.approx(reached, rel=1e-9)


@pytest.mark.parametrize("share", [0.05, 0.5, 0.95, 0.999])
def test_the_time_for_a_charge_is_the_time_after_which_it_is_in(share):
    for filled in (
        filling.charger_filling(chemistry="AGM", capacity=3.6e5, state=0.4, current=20.0),
        filling.relay_filling(chemistry="gel", capacity=3.6e5, state=0.2, current=40.0, reach=0.7),
    ):
        wanted = share * filled.room
        assert filled.after(filled.time_for(wanted)) == pytest.approx(wanted, rel=1e-9)


def test_what_the_bank_has_no_room_for_takes_no_time_but_never_comes():
    filled = filling.charger_filling(chemistry="AGM", capacity=3.6e5, state=0.4, current=20.0)
    assert filled.time_for(filled.room) is None
    assert replace(filled, current=0.0).time_for(1.0) is None


@pytest.mark.parametrize("inside", ["38 C", "45 C", "50 C", "58 C"])
@pytest.mark.parametrize("hours", ["0.5 h", "2 h", "3 h"])
def test_heat_costs_the_same_charge_by_the_bay_and_by_the_drive(inside, hours):
    """What enclosure-airflow says is lost is what alternator-charge gives less."""
    bay = calc.work("enclosure-airflow", {"inside_limit": inside, "rated": "30 A", "hours": hours})
    drive = {"charger_limit": "30 A", "hours": hours, "capacity": "400 A.h", "from_state": "20 %"}
    left = f"{bay['output_left'].m_as('percent'):.12g} %"
    cool = calc.work("alternator-charge", drive)
    hot = calc.work("alternator-charge", {**drive, "output_left": left})
    lost = cool["charge"] - hot["charge"]
    assert lost.m_as("A*h") == pytest.approx(bay["charge_lost"].m_as("A*h"), rel=1e-9, abs=1e-9)


def test_the_bay_hands_its_output_on_to_the_drive_near_enough():
    ask = {"inside_limit": "47.3 C", "rated": "30 A", "hours": "2 h"}
    bay = calc.work("enclosure-airflow", ask)
    (move,) = bay["carried"]
    assert move.sheet == "alternator-charge"
    drive = calc.work(move.sheet, dict(move.texts))
    assert drive.values["output_left"] == pytest.approx(bay.values["output_left"], rel=1e-4)
    lost = 60 - drive["charge"].m_as("A*h")
    assert lost == pytest.approx(bay["charge_lost"].m_as("A*h"), rel=1e-3)


def test_a_bay_too_hot_for_any_output_hands_nothing_on():
    assert calc.work("enclosure-airflow", {"inside_limit": "80 C", "vents": ""})["carried"] is None

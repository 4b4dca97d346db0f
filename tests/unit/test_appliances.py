"""A household appliance behind an inverter, and what it costs a bank to be fed for fewer hours."""

import pytest

import calc
from calc.energy import appliances
from tests.contract.samples import answers, fine

ROUTE = "appliance-route"


def box(fed: float, room: float = 25.0, days: int = 12, step: float = 20.0) -> tuple[float, float]:
    """Return the hours that a thermostat's compressor runs in a day, and the warmest inside [°C].

    A box of 60 kJ/K leaks 1 W/K from the `room` [°C]; the compressor pumps 50 W between 5 and 6 °C
    for as long as it is fed in a day. The last of `days` counts.
    """
    inside, on, ran, warmest = 5.0, False, 0.0, 5.0
    for tick in range(int(days * 86400 / step)):
        hour = tick * step % 86400 / 3600
        on = (inside > 6.0 or (on and inside > 5.0)) and hour < fed
        inside += ((room - inside) - (50.0 if on else 0.0)) * step / 60e3
        if tick * step >= (days - 1) * 86400:
            ran += step * on / 3600
            warmest = max(warmest, inside)
    return ran, warmest


def test_a_box_that_is_always_fed_runs_for_what_leaks_in():
    """19.5 W leak in at 5.5 °C, 50 W are pumped: 39 % of 24 h."""
    ran, warmest = box(24.0)
    assert ran == pytest.approx(24 * 19.5 / 50, rel=0.03)
    assert warmest < 6.1


@pytest.mark.parametrize("fed", [18.0, 14.0])
def test_hours_switched_off_save_less_than_their_share_and_the_box_warms(fed):
    """By a simulated box: the truth lies below ours and above a duty taken in those hours only."""
    always, _ = box(24.0)
    ran, warmest = box(fed)
    ours = appliances.running_time(duty=always / 24, fed=fed * 3600) / 3600
    assert always * fed / 24 < ran <= ours * 1.03
    assert warmest > 8.0


def test_a_box_fed_too_little_never_gets_cold_and_is_refused():
    assert box(6.0)[0] == pytest.approx(6.0, rel=0.02)
    short = calc.work(ROUTE, {"hours_on": "6 h", "ac_duty": "39 %"})
    assert short.verdict == "stop"
    assert short["ac_charge"] is not None


def test_a_warmer_room_makes_a_simulated_box_run_as_much_more_as_the_factor_says():
    """Ten kelvin more around a box at 5 to 6 °C."""
    usual, hot = box(24.0)[0], box(24.0, room=35.0)[0]
    factor = appliances.warmth_factor(room=25.0, hot=35.0, cold=5.5)
    assert hot / usual == pytest.approx(factor, rel=0.03)


def test_a_hot_day_cooler_than_the_room_never_makes_a_box_that_hardly_rests_fine():
    """38 Wh an hour in 30 °C; 20 °C is no hot day."""
    busy = {"ac_duty": "95 %", "ac_power": "40 W", "dc_duty": "100 %", "dc_power": "90 W"}
    cool = calc.work(ROUTE, {**busy, "figures": "measured", "room": "30 C", "hot": "20 C"})
    assert cool["ac_hot"].m == pytest.approx(cool["ac_charge"].m)
    assert cool.verdict == "caution"


def test_a_box_that_hardly_rests_is_not_recommended_for_taking_less():
    """93 % of the day at 25 °C leaves nothing for a hot one."""
    busy = calc.work(ROUTE, {"dc_duty": "93 %"})
    assert busy["extra_charge"].m > 0
    assert "Take" not in busy.sentence and "no reserve" in busy.sentence
    assert calc.work(ROUTE).sentence.startswith("Use the battery-voltage one")


def test_what_is_used_by_hand_is_carried_by_either_route_in_the_same_hours():
    """An hour of two on a lead: half of either remains; both hours: nothing."""
    hand = {"use": "by hand", "hours_on": "2 h", "dc_duty": "8 %", "ac_duty": "8 %"}
    whole, half, none = (calc.work(ROUTE, {**hand, "carried": f"{h} h"}) for h in (0, 1, 2))
    for name in ("dc_charge", "ac_charge"):
        assert half[name].m == pytest.approx(whole[name].m / 2)
        assert none[name].m == 0
    assert none.sentence.startswith("Either will do")


def test_the_array_gives_back_what_was_taken():
    """Forwards: 100 W for 2 h of sun, 14 % lost, 92 % out of the bank again, are 158.24 Wh."""
    array = appliances.array_for(
        energy=158.24 * 3600, efficiency=0.92, losses=0.14, sun_time=2 * 3600
    )
    assert array == pytest.approx(100.0)


def test_the_same_appliance_costs_more_by_inverter_unless_that_were_perfect():
    same = {"dc_power": "60 W", "ac_power": "60 W", "dc_duty": "35 %", "ac_duty": "35 %"}
    assert calc.work(ROUTE, {**same, "efficiency": "99 %", "idle": "0 W"})["extra_charge"].m > 0
    assert calc.work(ROUTE, {**same, "efficiency": "100 %", "idle": "1 W"})["extra_charge"].m > 0
    assert calc.work(ROUTE, {**same, "efficiency": "100 %", "idle": "0 W"})["extra_charge"].m == 0


def test_nothing_is_recommended_that_costs_more_or_rests_on_labels_or_warms():
    for texts, answer in fine(ROUTE):
        v, found = answer.values, answer.result
        assert found.household.served, texts
        if v["extra_charge"] is not None:  # the battery-voltage one is, or either
            assert found.direct.holds_in_heat, texts
            assert answer.sentence.startswith(("Use the battery-voltage one", "Either")), texts
            continue
        assert v["figures"] == "measured", texts
        assert v["idle"] > 0 or v["from_bank"] == 0, texts
        assert v["use"] == "by-hand" or v["hours_on"] == 86400, texts


def test_the_household_one_is_said_to_be_mains_and_lfp_to_mind_frost():
    for texts, answer in answers(ROUTE)[:200]:
        said = " ".join(one.text for one in answer.cautions)
        assert "can kill" in said, texts
        if answer.values["chemistry"] == "LFP" and answer.values["extra_charge"] is not None:
            assert "never charge an LFP battery below 0 °C" in said, texts


def test_what_others_feed_takes_nothing_from_the_bank_by_either_route():
    whole = calc.work(ROUTE)
    quarter = calc.work(ROUTE, {"carried": "6 h"})
    for name in ("dc_charge", "ac_charge"):
        assert quarter[name].m == pytest.approx(0.75 * whole[name].m)
    none = calc.work(ROUTE, {"carried": "24 h"})
    assert (none["ac_charge"].m, none["dc_charge"].m) == (0, 0)
    with pytest.raises(calc.InputError) as refusal:
        calc.work(ROUTE, {"hours_on": "5 h", "carried": "6 h"})
    assert refusal.value.field == "carried"

"""What sun-yield says of a roof, and that it errs to the safe side."""

import pytest
from pvlib.pvsystem import pvwatts_dc, pvwatts_losses

import calc
from calc.energy import panels
from calc.sheets.charging.sun_yield.calculate import MONTHS


def work(**texts):
    return calc.work("sun-yield", texts)


def watt_hours(answer, name="energy"):
    return answer[name].m_as("W*h")


def test_the_usual_losses_together_are_pvlibs():
    shares = tuple(share for _, share in panels.usual_losses())
    assert panels.together(shares) * 100 == pytest.approx(pvwatts_losses(), rel=1e-12)
    default = calc.find("sun-yield").field("losses").default
    assert default == f"{panels.together(shares) * 100:.0f} %"


def test_heat_takes_what_pvlibs_power_form_takes():
    answer = work(air="35 C", mount="glued", heat_coefficient="0.4 %/K")
    left = pvwatts_dc(1000, answer.values["cell"], 1.0, -0.004)
    assert answer.values["heat_keeps"] == pytest.approx(left, rel=1e-12)
    assert 60 < answer.values["cell"] < 100


def test_a_cold_day_is_not_credited_above_the_label():
    assert watt_hours(work(air="-20 C")) == watt_hours(work())
    assert watt_hours(work(air="40 C")) < watt_hours(work())


def test_more_air_behind_the_panel_gives_more():
    hot = [
        watt_hours(work(air="30 C", mount=mount)) for mount in ("open rack", "close mount", "glued")
    ]
    assert hot == sorted(hot, reverse=True)


def test_the_hint_s_range_is_that_of_the_published_months():
    shares = [place.share for month in MONTHS for place in work(month=month).values["skies"]]
    field = calc.find("sun-yield").field("sky")
    assert f"{100 * min(shares):.0f} to {100 * max(shares):.0f} %" in field.hint
    assert len(shares) == 36


@pytest.mark.parametrize("latitude", ["-47", "0", "52", "80"])
def test_the_month_that_is_asked_for_stands_in_the_year_as_answered(latitude):
    for month in ("February", "October"):
        answer = work(latitude=latitude, month=month, tilt="35", air="20 C", daily_use="1 kW.h")
        row = next(row for row in answer.values["months"] if row.month == month)
        assert (row.energy, row.charge) == (answer.values["energy"], answer.values["charge"])
        assert row.on_plane == answer.values["on_plane"]
        assert [one.month for one in answer.values["months"]] == list(MONTHS)


def test_the_worst_month_is_december_in_the_north_and_june_in_the_south():
    assert (work()["worst_month"], work()["best_month"]) == ("December", "June")
    south = work(latitude="-47")
    assert (south["worst_month"], south["best_month"]) == ("June", "December")


def test_a_number_a_short_name_and_a_full_name_mean_the_same_month():
    texts = ("9", "09", "Sep", "september", "SEPTEMBER")
    assert {work(month=text).inputs["month"].value for text in texts} == {"September"}


def test_facing_toward_the_equator_is_half_a_turn_on_both_halves_of_the_earth():
    for latitude, month in (("47", "December"), ("-47", "June")):
        toward = work(latitude=latitude, month=month, tilt="60", facing="180")
        away = work(latitude=latitude, month=month, tilt="60", facing="0")
        assert watt_hours(toward) > 2 * watt_hours(away)


def test_hours_of_sunshine_take_the_place_of_the_share():
    bright, dull = work(sunshine="15 h", sky="1 %"), work(sunshine="0 h", sky="90 %")
    assert bright.values["sky_used"] > 0.95
    assert dull.values["sky_used"] == pytest.approx(1 / 3)


def test_more_sunshine_than_daylight_is_refused_in_a_sentence():
    with pytest.raises(calc.InputError, match=r"at most the 8\.\d+ h between") as refusal:
        work(month="December", sunshine="9 h")
    assert refusal.value.field == "sunshine"
    with pytest.raises(calc.InputError, match=r"at most the 0\.00 h"):
        work(latitude="80", month="December", sunshine="1 h")


def test_polar_night_brings_nothing_and_says_what_to_do():
    answer = work(latitude="75", month="December", sunshine="0 h")
    assert (answer.verdict, watt_hours(answer)) == ("stop", 0)
    assert "does not rise" in answer.sentence
    assert any("shore" in str(caution) for caution in answer.cautions)


def test_polar_day_is_a_day_of_24_hours():
    answer = work(latitude="75", month="June")
    assert answer.values["daylight"] == 86400
    assert watt_hours(answer) > 0


def test_a_tilt_under_a_grey_sky_is_never_called_fine_when_it_flatters():
    for latitude in ("35", "47", "-55"):
        for month in MONTHS:
            for tilt in ("0", "20", "45"):
                answer = work(latitude=latitude, month=month, tilt=tilt, sky="50 %")
                if answer.verdict == "fine":
                    assert watt_hours(answer) <= 1.1 * watt_hours(answer, "grey_energy") + 1e-6


def test_a_level_panel_gains_and_loses_nothing_by_cloud_that_spreads_the_light():
    answer = work(sky="45 %")
    assert watt_hours(answer, "grey_energy") == pytest.approx(watt_hours(answer), rel=1e-12)


@pytest.mark.parametrize(
    ("texts", "says"),
    [
        ({}, "cloudless"),
        ({"daily_use": "5 kW.h"}, "from elsewhere"),
        ({"daily_use": "1.9 kW.h"}, "too little over"),
        ({"latitude": "60", "month": "December"}, "flat horizon"),
        ({"sky": "95 %"}, "without a cloud"),
        ({"month": "November", "tilt": "60"}, "the tilt gains little"),
        ({"losses": "3 %"}, "hardly anything lost"),
        ({"regulator": "PWM", "panel_voltage": "14 V"}, "falls near"),
        ({"regulator": "PWM", "panel_voltage": "12 V"}, "cannot charge"),
    ],
)
def test_each_weakness_is_said_in_the_verdict(texts, says):
    answer = work(**texts)
    assert says in answer.sentence
    assert (answer.verdict == "fine") == (not texts)


def test_frost_daylight_and_shade_are_cautioned_whatever_is_asked():
    for texts in ({}, {"latitude": "80", "month": "December"}, {"tilt": "45"}):
        said = " ".join(map(str, work(**texts).cautions))
        for word in ("below 0 °C", "live in any daylight", "shaded cell"):
            assert word in said


def test_a_plain_switch_never_gives_more_than_one_that_finds_the_best_voltage():
    for voltage in ("18 V", "24 V", "40 V"):
        answer = work(regulator="PWM", panel_voltage=voltage)
        assert watt_hours(answer) < watt_hours(work())


def test_charge_and_energy_are_rounded_down_and_the_current_up():
    answer = work()
    assert float(answer.shown["charge"].split("\u00a0")[0]) <= answer["charge"].m_as("A*h")
    assert float(answer.shown["peak_current"].split("\u00a0")[0]) >= 31.25


def test_a_low_sun_is_cautioned_even_where_the_verdict_is_about_something_else():
    """60° N in December: the noon sun stands under 7°."""
    answer = work(latitude="60", month="December", daily_use="5 kW.h")
    assert "from elsewhere" in answer.sentence
    assert any("row of trees" in str(caution) for caution in answer.cautions)
    assert not any("row of trees" in str(caution) for caution in work().cautions)


def test_that_heat_is_left_out_stands_beside_the_answer():
    assert any("Heat is not counted" in str(caution) for caution in work().cautions)
    assert not any("Heat is not counted" in str(caution) for caution in work(air="20 C").cautions)

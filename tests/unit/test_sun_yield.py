"""What sun-yield says of a roof, and that it errs to the safe side."""

import pytest
from pvlib.pvsystem import pvwatts_dc, pvwatts_losses

import calc
from calc.energy import panels
from calc.energy.sun import Month
from calc.tables import table


def work(**texts):
    return calc.work("sun-yield", texts)


def watt_hours(answer, name="energy"):
    return answer[name].m_as("W*h")


def test_the_usual_losses_together_are_pvlibs():
    shares = tuple(one.share for one in panels.usual_losses())
    assert panels.combined_loss(shares) * 100 == pytest.approx(pvwatts_losses(), rel=1e-12)
    default = calc.find("sun-yield").field("losses").default
    assert default == f"{panels.combined_loss(shares) * 100:.0f} %"


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
    shares = [place.share for month in Month for place in work(month=month).values["skies"]]
    field = calc.find("sun-yield").field("sky")
    assert f"{100 * min(shares):.0f} to {100 * max(shares):.0f} %" in field.hint
    assert len(shares) == 144


@pytest.mark.parametrize("latitude", ["-47", "0", "52", "80"])
def test_the_month_that_is_asked_for_stands_in_the_year_as_answered(latitude):
    for month in ("February", "October"):
        answer = work(latitude=latitude, month=month, tilt="35", air="20 C", daily_use="1 kW.h")
        row = next(row for row in answer.values["months"] if row.month == month)
        assert (row.energy, row.charge) == (answer.values["energy"], answer.values["charge"])
        assert row.on_plane == answer.values["on_plane"]
        assert [one.month for one in answer.values["months"]] == list(Month)


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
    assert answer.rule == "sun.does-not-rise"
    assert any("shore" in str(caution) for caution in answer.cautions)


def test_polar_day_is_a_day_of_24_hours():
    answer = work(latitude="75", month="June")
    assert answer.values["daylight"] == 86400
    assert watt_hours(answer) > 0


def test_a_tilt_that_gains_is_said_to_gain_nothing_in_a_grey_spell():
    tilted = work(month="November", tilt="60", sky="50 %")
    assert tilted.verdict == "fine" and "tilt.gains-little" in tilted.rules
    assert watt_hours(tilted, "grey_energy") < watt_hours(tilted)
    assert "tilt.gains-little" not in work(month="November", sky="50 %").rules


def test_a_level_panel_gains_and_loses_nothing_by_cloud_that_spreads_the_light():
    answer = work(sky="45 %")
    assert watt_hours(answer, "grey_energy") == pytest.approx(watt_hours(answer), rel=1e-12)


@pytest.mark.parametrize(
    ("texts", "rule"),
    [
        ({}, "sun-yield.fine"),
        ({"daily_use": "5 kW.h"}, "sun.short"),
        ({"daily_use": "1.8 kW.h"}, "sun.tight"),
        ({"latitude": "60", "month": "December"}, "sun.low"),
        ({"regulator_limit": "15 A"}, "panel.regulator-too-small"),
        ({"losses": "3 %"}, "panel.losses-too-few"),
        ({"regulator": "PWM", "panel_voltage": "16 V"}, "panel.near-bank"),
        ({"regulator": "PWM", "panel_voltage": "12 V"}, "panel.below-bank"),
    ],
)
def test_each_weakness_is_said_in_the_verdict(texts, rule):
    answer = work(**texts)
    assert answer.rule == rule
    assert (answer.verdict == "fine") == (not texts)


def test_frost_daylight_and_shade_are_cautioned_whatever_is_asked():
    for texts in ({}, {"latitude": "80", "month": "December"}, {"tilt": "45"}):
        said = {caution.rule for caution in work(**texts).cautions}
        assert said >= {"bank.never-charge-in-frost", "panel.live", "panel.one-cell-in-shade"}


def test_a_plain_switch_never_gives_more_than_one_that_finds_the_best_voltage():
    for voltage in ("18 V", "24 V", "40 V"):
        answer = work(regulator="PWM", panel_voltage=voltage)
        assert watt_hours(answer) < watt_hours(work())


def test_charge_and_current_are_shown_to_the_nearest_everywhere():
    answer = work(voltage="12.8 V")
    charge = answer["charge"].m_as("A*h")
    assert float(answer.shown["charge"].split("\u00a0")[0]) == float(f"{charge:.3g}")
    assert answer.shown["peak_current"] == "31.2\u00a0A", "31.25 A: a tie goes to the even digit"
    worked = {line.symbol: line.value for line in answer.working}
    assert worked["Q"] == answer.shown["charge"]


def test_a_low_sun_is_cautioned_even_where_the_verdict_is_about_something_else():
    """60° N in December: the noon sun stands under 7°."""
    answer = work(latitude="60", month="December", daily_use="5 kW.h")
    assert answer.rule == "sun.short"
    assert "sun.low" in {caution.rule for caution in answer.cautions}
    assert "sun.low" not in work().rules


def test_that_heat_is_left_out_stands_beside_the_answer():
    assert "panel.heat-not-counted" in {caution.rule for caution in work().cautions}
    assert "panel.heat-not-counted" not in work(air="20 C").rules


def test_the_tilt_of_a_winter_gains_what_klein_has():
    """37° N in December at a clearness of 0.55: 1.87 times the level."""
    place = {"latitude": "37", "month": "December", "sky": "87 %"}
    level, tilted = work(**place), work(**place, tilt="50")
    assert tilted.values["clearness"] == pytest.approx(0.546, abs=0.002)
    gain = watt_hours(tilted) / watt_hours(level)
    assert gain == pytest.approx(1.87, abs=0.01)


def test_agm_that_gives_back_seventy_percent_needs_more_than_lithium():
    """126 % of the use, 80 % by night: break-even is 134 %, or where 61 % goes through the bank."""
    yields = watt_hours(work(chemistry="AGM", voltage="14.4 V"))
    use = {"daily_use": f"{yields / 1.26:.9g} W.h", "voltage": "14.4 V"}
    agm = work(**use, chemistry="AGM", stored="80 %")
    assert (agm.verdict, agm.rule) == ("caution", "sun.short")
    assert agm.values["needed"] == pytest.approx(0.2 + 0.8 / 0.7, rel=1e-3)
    even = work(**use, chemistry="AGM", stored="60.6 %").values["needed"]
    assert even == pytest.approx(1.26, abs=0.001)
    assert work(**use, chemistry="LFP", stored="80 %").verdict == "fine"


def test_a_higher_charging_voltage_gives_less_back():
    low, high = (
        work(daily_use="900 W.h", voltage=volts).values["gives_back"]
        for volts in ("13.8 V", "14.6 V")
    )
    assert high < low
    assert high == pytest.approx(0.99 * 12.8 / 14.6)


@pytest.mark.parametrize("name", ["granada", "mannheim", "sydney"])
def test_a_measured_climate_gives_at_its_own_place_what_was_measured(name):
    row = next(row for row in table("typical_sun").rows if row["id"] == name)
    for month in ("January", "June"):
        answer = work(
            latitude=row["latitude_deg"],
            altitude=f"{row['altitude_m']} m",
            month=month,
            climate=name,
        )
        measured = float(row[f"m{list(Month).index(month) + 1}"])
        if answer.values["sky_used"] < 1:
            assert answer.values["level"] / 3.6e6 == pytest.approx(measured, rel=1e-9)
        assert answer.verdict == "fine" or answer.rule != "sky.nearly-clear"


def test_each_month_has_its_own_sky_and_december_is_greyer_than_july():
    rows = {row.month: row.sky for row in work(climate="mannheim").values["months"]}
    assert rows["December"] < rows["July"] - 0.1


def test_twelve_shares_of_ones_own_and_the_share_above_for_the_rest():
    own = "January:20 %;February:30 %;March:40 %"
    rows = [row.sky for row in work(climate="own", own_skies=own).values["months"]]
    assert rows == pytest.approx([0.2, 0.3, 0.4, *[0.7] * 9])


def test_the_parts_of_the_losses_make_up_the_published_total():
    parts = panels.usual_losses()
    assert [one.basis.startswith("common practice") for one in parts] == [True, True, True, False]
    left = 1.0
    for one in parts:
        left *= 1 - one.share
    assert 1 - left == pytest.approx(0.1408, abs=5e-5)


def test_four_hundred_watts_on_a_regulator_of_thirty_amps_is_fine_and_said_in_a_note():
    answer = work(array="400 W", voltage="12.8 V", regulator_limit="30 A")
    assert answer.verdict == "fine" and "panel.regulator-holds-back" in answer.rules
    assert (
        "panel.regulator-holds-back"
        not in work(array="400 W", voltage="14 V", regulator_limit="30 A").rules
    )


def test_hours_of_bright_sun_are_used_in_their_month_in_place_of_a_climate():
    alone, both = work(sunshine="3 h"), work(sunshine="3 h", climate="granada")
    assert both.values["energy"] == alone.values["energy"]
    december = next(row for row in both.values["months"] if row.month == "December")
    assert december.sky != both.values["sky_used"]

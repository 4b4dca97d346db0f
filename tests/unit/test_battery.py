"""How long a bank lasts: identities that hold for every exponent, and the cold."""

import math

import pytest

import calc
from calc.energy import battery
from calc.energy.loads import bank_current
from calc.tables import table

CHEMISTRIES = ("LFP", "AGM", "gel", "flooded")


def ask(**inputs):
    return calc.work("runtime", inputs)


def hours(answer, name="runtime"):
    return answer[name].m_as("hour")


@pytest.mark.parametrize("exponent", [1.0, 1.05, 1.2, 1.4, 2.0])
@pytest.mark.parametrize("usable", [0.2, 0.5, 1.0])
def test_at_the_rated_current_every_exponent_gives_the_rated_hours(exponent, usable):
    """By definition of the rating: C/H for H hours empties C, whatever the exponent."""
    time = battery.peukert_runtime(
        capacity=360000, rated_time=72000, current=5, exponent=exponent, usable=usable
    )
    assert time == pytest.approx(usable * 72000, rel=1e-12)


@pytest.mark.parametrize("current", [0.5, 5, 50, 500])
def test_an_exponent_of_one_is_capacity_over_current(current):
    time = battery.peukert_runtime(
        capacity=360000, rated_time=72000, current=current, exponent=1.0, usable=1.0
    )
    assert time == pytest.approx(360000 / current, rel=1e-12)


@pytest.mark.parametrize("k", [1.1, 1.25, 1.6])
def test_twice_the_load_shortens_the_time_by_two_to_the_exponent(k):
    def time(current):
        return battery.peukert_runtime(
            capacity=360000, rated_time=72000, current=current, exponent=k, usable=0.5
        )

    assert math.log2(time(10) / time(20)) == pytest.approx(k, rel=1e-12)


def test_the_naive_form_is_not_used():
    """t = C/I^k with a 20 h label gives 100/10^1.2 = 6.3 h; the rated-hours form 8.7 h."""
    answer = ask(
        capacity="100 Ah", chemistry="flooded", load="10 A", exponent="1.2", usable="100 %"
    )
    assert hours(answer) == pytest.approx(20 * 0.5**1.2, rel=1e-9)
    assert hours(answer) > 8


@pytest.mark.parametrize("name", CHEMISTRIES)
def test_an_empty_share_and_exponent_are_those_of_the_chemistry(name):
    """80 % for LFP, 50 % for the others: common practice. Exponents: within the published range."""
    answer = ask(chemistry=name)
    rows = {row["chemistry"]: row for row in table("peukert").rows}
    assert answer.values["usable"] == pytest.approx(0.8 if name == "LFP" else 0.5)
    assert answer.values["exponent"] == float(rows[name]["default"])
    low, high = battery.exponent_range(name)
    assert low <= answer.values["exponent"] <= high


def test_the_spread_of_published_exponents_holds_the_answer():
    for name in CHEMISTRIES:
        for load in ("2 A", "10 A", "100 A"):
            answer = ask(chemistry=name, load=load)
            assert hours(answer, "shortest") <= hours(answer) <= hours(answer, "longest")


@pytest.mark.parametrize("load", ["4 A", "50 A"])  # lighter and heavier than the rated 10 A
@pytest.mark.parametrize("exponent", ["", "1", "1.1", "1.5", "2"])
def test_the_spread_is_that_of_the_published_exponents_whatever_exponent_is_given(load, exponent):
    """Published for AGM: 1.05 to 1.15. By hand: 0.5 × 20 h × (10 A / load) to that power.

    Never more than the label gives, 100 Ah over the load.
    """
    answer = ask(chemistry="AGM", capacity="200 Ah", load=load, exponent=exponent)
    amps = float(load.split()[0])
    ends = sorted(min(0.5 * 20 * (10 / amps) ** k, 100 / amps) for k in (1.05, 1.15))
    assert [hours(answer, name) for name in ("shortest", "longest")] == pytest.approx(ends)


def test_a_current_is_shown_to_the_nearest():
    """100 W at 12.8 V are 7.8125 A."""
    assert ask(load="100 W", voltage="12.8 V").shown["current"].startswith("7.81")


@pytest.mark.parametrize("row", table("ieee485_temperature").rows, ids=lambda r: r["temperature_f"])
def test_the_cold_factor_is_the_printed_one_at_every_printed_temperature(row):
    """IEEE 485 table 1 is printed for Fahrenheit; above 77 °F warmth is not credited."""
    celsius = (float(row["temperature_f"]) - 32) / 1.8
    printed = max(1.0, float(row["factor"]))
    assert battery.cold_factor(celsius) == pytest.approx(printed, abs=5e-4)


def test_colder_is_never_better():
    factors = [battery.cold_factor(-3.8 + k * 0.1) for k in range(400)]
    assert factors == sorted(factors, reverse=True)
    assert factors[-1] == 1


def test_below_the_table_its_last_factor_holds_and_that_is_cautioned():
    """IEEE 485 at 25 °F, its last row: 1.520. Half of 152 Ah over 4 A is then 12.5 h."""
    for celsius in ("-4 C", "-10 C", "-20 C"):
        answer = ask(chemistry="AGM", capacity="152 Ah", load="4 A", temperature=celsius)
        assert hours(answer) <= 12.5 * (1 + 1e-9)
        assert (answer.verdict, answer.rule) == ("caution", "bank.cold-beyond-table")
    assert hours(ask(chemistry="AGM", capacity="152 Ah", load="4 A", temperature="25 F")) == (
        pytest.approx(12.5)
    )
    assert ask(chemistry="LFP", temperature="-4 C").verdict == "caution"


def test_frost_warns_before_charging_lfp():
    """Cell data sheet: charging from 0 °C up."""
    cold = ask(chemistry="LFP", temperature="-1 C")
    assert cold.rule == "bank.in-frost"
    mild = ask(chemistry="LFP", temperature="0 C")
    assert "bank.in-frost" not in mild.rules and mild.verdict == "fine"


def test_a_light_load_on_lead_acid_is_not_promised_more_than_the_label():
    """At a tenth of the rated current the formula alone would credit 177 h, up to 398 h."""
    answer = ask(capacity="100 Ah", chemistry="flooded", load="0.5 A")
    label = 0.5 * 100 / 0.5  # hours, by hand
    for name in ("runtime", "shortest", "longest"):
        assert hours(answer, name) == pytest.approx(label)
    assert "runtime.lighter-than-rated" in answer.rules and answer.verdict == "fine"
    assert "100" in answer.sentence


def test_the_charge_given_is_current_times_time():
    answer = ask(chemistry="AGM", load="300 W", voltage="12 V")
    assert answer["usable_charge"].m_as("A*hour") == pytest.approx(25 * hours(answer), rel=1e-12)


@pytest.mark.parametrize(
    ("power", "voltage", "efficiency", "current"),
    [(1500, 12.5, 1.0, 120), (1000, 12.5, 0.8, 100), (48, 48, 1.0, 1)],
)
def test_the_bank_s_current_is_power_over_voltage_and_losses(power, voltage, efficiency, current):
    """Worked by hand."""
    assert bank_current(power, voltage, efficiency) == pytest.approx(current, rel=1e-12)


def test_energy_at_the_bank_is_the_load_s_and_the_losses():
    """The inverter's loss of 12 % of what goes in, found apart from the sum."""
    inputs = {"power": "1000 W", "hours": "2 h", "route": "inverter", "efficiency": "88 %"}
    inputs["voltage"] = "12.5 V"
    answer = calc.work("watts-to-amps", inputs)
    energy = answer["energy"].m_as("W*hour")
    assert energy - 0.12 * energy == pytest.approx(2000, rel=1e-12)
    assert answer["charge"].m_as("A*hour") * 12.5 == pytest.approx(energy, rel=1e-12)

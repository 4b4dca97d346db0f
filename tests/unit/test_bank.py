"""The bank as a store: what it holds, loses, takes back, and when it must not be charged."""

import pytest

import calc
from calc.energy import battery, limits
from calc.units.covered import NotCovered
from tests.contract.samples import answers

HOUR = 3600.0
DAY = 24 * HOUR


def celsius(fahrenheit):
    return (fahrenheit - 32) / 1.8


def size(**inputs):
    return calc.work("bank-size", inputs)


def standby(**inputs):
    return calc.work("standby-drain", inputs)


# Size


@pytest.mark.parametrize("row", [("77 F", 1.0), ("50 F", 1.19), ("40 F", 1.3)])
def test_cold_makes_a_lead_acid_bank_larger_by_the_printed_factor(row):
    """IEEE 485 table 1: the factor multiplies what is needed, so a bank is never divided by it."""
    text, printed = row
    warm, cold = size(chemistry="gel", temperature="25 C"), size(chemistry="gel", temperature=text)
    ratio = cold["capacity"].m_as("A*hour") / warm["capacity"].m_as("A*hour")
    assert ratio == pytest.approx(printed, rel=1e-9)


def test_an_exact_number_of_batteries_is_not_rounded_up_by_a_float():
    """960 Wh × 2 / 12.8 V / (0.75 × 0.8) is 250 Ah: five of 50, two of 125, one of 250."""
    for one, count in (("50 Ah", 5), ("125 Ah", 2), ("250 Ah", 1), ("249.9 Ah", 2)):
        answer = size(daily_energy="960 Wh", usable="75 %", temperature="15 C", unit_capacity=one)
        assert answer["units"].m_as("") == count


def test_the_batteries_always_hold_what_is_needed_and_last_as_long_as_asked():
    for texts, answer in answers("bank-size"):
        values = answer.values
        assert values["together"] >= values["capacity"] * (1 - 1e-9), texts
        assert values["lasts_new"] >= values["days"] * (1 - 1e-9), texts


def test_a_kettle_can_ask_for_more_bank_than_the_days_do():
    """Common practice: half of the ampere-hours in amperes. 1700 W at 12.8 V is 133 A."""
    few = size(daily_energy="600 Wh", heaviest="1700 W")
    assert few["units"].m_as("") == 2 and few.rule == "bank.heavy-load"
    assert size(daily_energy="600 Wh", heaviest="1200 W").verdict == "fine"


@pytest.mark.parametrize(
    "inputs",
    [
        {"chemistry": "AGM", "usable": "60 %", "unit_capacity": "400 Ah"},
        {"ageing": "0 %"},
        {"temperature": "-0.1 C"},
        {"temperature": "50 C"},
        {"unit_capacity": "50 Ah"},
        {"chemistry": "AGM", "temperature": "-4 C", "unit_capacity": "400 Ah"},
    ],
)
def test_a_bank_with_something_against_it_is_not_called_fine(inputs):
    assert size(**inputs).verdict == "caution"


def test_a_lead_acid_bank_colder_than_the_table_is_sized_by_its_last_factor():
    """IEEE 485 at 25 °F: 1.520 against 1 at 77 °F."""
    asked = {"chemistry": "flooded", "voltage": "12 V", "ageing": "20 %"}
    cold = size(temperature="-12 C", **asked)
    assert cold.values["capacity"] == pytest.approx(
        1.52 * size(temperature="25 C", **asked).values["capacity"]
    )
    assert cold.verdict == "caution" and "bank.cold-beyond-table" in cold.rules


# Loss, efficiency, charging limits


@pytest.mark.parametrize("name", battery.Chemistry)
def test_what_is_taken_as_usual_lies_within_what_was_found(name):
    """Coulombic: around 85 % lead-acid, almost 100 % lithium; energy: 70 to 85 %, 92 to 98 %."""
    low, high = battery.self_discharge_range(name)
    assert low <= battery.self_discharge(name) <= high
    lithium = name == "LFP"
    assert (
        (0.98 if lithium else 0.8) <= battery.charge_efficiency(name) <= (1.0 if lithium else 0.9)
    )
    assert (0.92 if lithium else 0.7) <= battery.energy_efficiency(name)
    assert battery.energy_efficiency(name) < battery.charge_efficiency(name)
    assert 0 < battery.usable_share(name) < 1


def test_a_chemistry_that_is_not_known_is_an_error():
    for ask in (battery.usable_share, battery.charge_efficiency, battery.self_discharge):
        with pytest.raises(NotCovered):
            ask("lead")


@pytest.mark.parametrize(
    ("temperature", "may"), [(-0.1, False), (0.0, True), (45.0, True), (46, False)]
)
def test_lfp_is_charged_from_freezing_up(temperature, may):
    """Cell specification: charging 0 to 60 °C; packs narrow it to 45 °C (common practice)."""
    assert battery.may_charge(chemistry="LFP", temperature=temperature) is may


def test_ten_kelvin_of_warmth_double_the_loss_and_cold_is_not_credited():
    """Common practice, and a seller's page: about twice for each 10 °C."""
    assert battery.warmth_factor(35.0) == pytest.approx(2.0, rel=1e-12)
    assert battery.warmth_factor(45.0) == pytest.approx(4.0, rel=1e-12)
    assert battery.warmth_factor(25.0) == battery.warmth_factor(-20.0) == 1.0


@pytest.mark.parametrize(
    ("state", "fahrenheit"),
    [(0.75, -35), (1.0, -75)],
)
def test_acid_freezes_where_the_owner_manual_says(state, fahrenheit):
    """1.225 freezes at -35 °F and 1.265 at -75 °F; BCI has these gravities at 75 and 100 %."""
    assert battery.freezing_point(state) == pytest.approx(celsius(fahrenheit), abs=0.05)


def test_the_emptier_the_sooner_it_freezes_and_a_flat_one_near_minus_ten():
    """TM 5-1185: 1.100 at +19 °F, 1.150 at +5 °F; a flat battery is 1.120 by BCI."""
    points = [battery.freezing_point(s / 100) for s in range(101)]
    assert points == sorted(points, reverse=True)
    assert celsius(5) < points[0] < celsius(19)


def test_the_reprinted_freezing_column_that_is_far_too_cold_is_not_reproduced():
    """A reprint gives -34 °F at half charge and -10 °F at empty; two texts contradict it."""
    assert battery.freezing_point(0.5) > celsius(-34) + 10
    assert battery.freezing_point(0.0) > celsius(-10) + 10


def test_the_margin_for_frost_is_more_than_straight_lines_can_hide():
    """By hand: through 1.15, 1.20 and 1.25 (+5, -16, -62 °F) a curve lies at most 3.2 °F higher."""
    curve = 5 - 21 * 0.5 + (-25) * (0.5 * -0.5) / 2
    line = 5 - 21 * 0.5
    assert (curve - line) / 1.8 < limits.FROST_MARGIN


# Standing


def test_drain_and_self_discharge_are_together_what_went():
    for texts, answer in answers("standby-drain"):
        values = answer.values
        went = values["taken"] + (values["managed"] or 0.0) + values["own"]
        assert went == pytest.approx(values["may_go"], rel=1e-9), texts
        assert values["shortest"] <= values["days"] <= values["longest"]


def test_a_management_system_takes_its_part_of_a_long_stand():
    """By hand: 4 mA over 500 days is 48 Ah, and 2 % a month of 100 Ah is 32.9 Ah: 19.1 left."""
    asked = {"capacity": "100 Ah", "drain": "1 mA", "self_discharge": "2 %/month"}
    for start, left, verdict in (("100 %", 0.191, "caution"), ("80 %", 0.0, "stop")):
        answer = standby(from_state=start, away="500 days", **asked)
        assert answer.values["back"] == pytest.approx(left, abs=5e-4)
        assert answer.verdict == verdict


def test_a_bank_that_loses_nothing_by_itself_stands_by_its_drain_alone():
    still = standby(self_discharge="0 %/month", drain="100 mA", management="0 A", to_state="50 %")
    assert still["days"].m_as("day") == pytest.approx(100 / 0.1 / 24)
    assert still.values["shortest"] <= still.values["days"]
    with pytest.raises(calc.InputError) as refusal:
        standby(chemistry="AGM", self_discharge="0 %/month", drain="0 A")
    assert refusal.value.field == "self_discharge"


def test_with_the_largest_drain_it_stands_exactly_as_long_as_you_are_away():
    asked = {"chemistry": "AGM", "away": "30 days", "to_state": "50 %"}
    most = standby(drain="500 mA", **asked)["largest_drain"].m_as("mA")
    again = standby(drain=f"{most:.9f} mA", **asked)
    assert again["days"].m_as("day") == pytest.approx(30, rel=1e-6)
    assert again.verdict != "stop"


def test_a_bank_that_loses_too_much_by_itself_has_no_drain_that_fits():
    """30 % a month for three months is 90 % of it, and half may go."""
    answer = standby(
        chemistry="flooded", self_discharge="30 %/month", away="91 days", to_state="50 %"
    )
    assert answer["largest_drain"] is None and answer.verdict == "stop"


@pytest.mark.parametrize(("coldest", "verdict"), [("-25 C", "stop"), ("-20 C", "fine")])
def test_half_empty_acid_freezes_in_hard_frost(coldest, verdict):
    """1.190 by BCI, between +5 °F at 1.150 and -16 °F at 1.200: about -24 °C; 3 K clear of it."""
    answer = standby(chemistry="AGM", away="14 days", temperature="5 C", coldest=coldest)
    assert answer.verdict == verdict


@pytest.mark.parametrize(
    "inputs",
    [
        {"from_state": "50 %", "to_state": "50 %"},
        {"to_state": "5 %"},
        {"chemistry": "gel", "to_state": "40 %"},
        {"temperature": "50 C"},
        {"chemistry": "AGM", "away": "50 days"},
        {"coldest": "-5 C", "temperature": "20 C"},
        {"chemistry": "flooded", "drain": "10 mA", "self_discharge": "3 %/month"},
    ],
)
def test_a_parked_bank_with_something_against_it_is_not_called_fine(inputs):
    assert standby(**inputs).verdict != "fine"


def test_a_coldest_battery_that_is_warmer_than_the_warmest_is_refused():
    with pytest.raises(calc.InputError) as refusal:
        standby(temperature="5 C", coldest="10 C")
    assert refusal.value.field == "coldest"

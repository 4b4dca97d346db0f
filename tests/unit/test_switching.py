"""Which contact breaks a line, and that its coil closes: the regulator's table and the verdicts."""

import pytest

import calc
from calc.electrical import switching
from calc.tables import table
from calc.units.covered import NotCovered
from tests.contract.samples import answers, until

PUMP = {"power": "60 W", "voltage": "12 V", "kind": "DC", "load": "motor", "distance": "2 m"}

# FAA AC 43.13-1B, table 11-4, as printed.
TABLE_11_4 = [
    (28, "lamp", 8), (28, "coil", 4), (28, "heater", 2), (28, "motor", 3),
    (12, "lamp", 5), (12, "coil", 2), (12, "heater", 1), (12, "motor", 2),
]  # fmt: skip


def said(answer) -> str:
    """Return every caution of an answer as one text."""
    return " ".join(remark.text for remark in answer.cautions)


@pytest.mark.parametrize(("volts", "load", "factor"), TABLE_11_4)
def test_a_contact_on_dc_is_derated_as_the_regulator_prints_it(volts, load, factor):
    assert switching.derating(supply="DC", voltage=volts, load=load) == factor


@pytest.mark.parametrize("load", switching.SwitchedLoad)
def test_no_factor_is_guessed_above_the_table_and_none_shrinks_with_voltage(load):
    at = [switching.derating(supply="DC", voltage=v, load=load) for v in (5, 12, 16, 24, 29, 32)]
    assert at == sorted(at)
    assert switching.derating(supply="DC", voltage=33, load=load) is None


def test_the_table_has_a_factor_for_every_load_and_for_no_other():
    assert {row["load"] for row in table("switch_derating").rows} == set(switching.SwitchedLoad)


@pytest.mark.parametrize(
    ("function", "wrong"),
    [
        (switching.derating, {"supply": "ac", "voltage": 120.0, "load": "heater"}),
        (switching.derating, {"supply": "AC", "voltage": 120.0, "load": "heating"}),
    ],
)
def test_a_name_that_is_not_there_is_refused_and_no_other_factor_given(function, wrong):
    with pytest.raises(NotCovered, match="must be '"):
        function(**wrong)


def test_a_bank_of_12_v_stays_in_its_row_while_it_charges_and_so_does_one_of_24_v():
    """14.6 and 29.2 V are what LFP banks of these names are charged at."""
    assert switching.derating(supply="DC", voltage=14.6, load="heater") == 1
    assert switching.derating(supply="DC", voltage=29.2, load="heater") == 2


def test_a_contact_is_rated_for_hours_even_where_the_table_asks_for_less():
    """NEC 210.20(A): 125 %."""
    assert switching.contact_rating(current=10.0, factor=1.0) == 12.5
    assert switching.contact_rating(current=10.0, factor=2.0) == 20.0


def test_a_coil_has_what_is_left_above_110_percent_of_its_pull_in():
    """The state department's rule: 1.1 x 9 V = 9.9 V; a bank at 11 V leaves 1.1 V."""
    left = switching.coil_allowance(voltage=12.0, lowest=11 / 12, pull_in=0.75)
    assert left == pytest.approx(1.1)


def test_a_switch_for_ac_never_breaks_dc():
    for texts, answer in answers("remote-switch"):
        v = answer.values
        if v["kind"] == "DC" and v["switch"] is not None and v["marked"] == "AC":
            assert answer.verdict == "stop", texts
    assert calc.work("remote-switch", {**PUMP, "switch": "15 A", "marked": "AC"}).verdict == "stop"


@pytest.mark.parametrize(
    ("rating", "marked", "verdict"),
    [
        ("4.9 A", "DC", "stop"),
        ("5 A", "DC", "caution"),
        ("9.9 A", "DC", "caution"),
        ("10 A", "DC", "fine"),
        ("10 A", "not said", "caution"),
    ],
)
def test_a_switch_at_hand_must_carry_the_line_bear_the_load_and_say_so(rating, marked, verdict):
    """60 W at 12 V are 5 A; a motor's factor is 2."""
    ask = {**PUMP, "switch": rating, "marked": marked}
    assert calc.work("remote-switch", ask).verdict == verdict


def test_fine_means_dc_within_the_table_with_wire_and_volts_for_what_is_switched():
    seen = set()
    for texts, answer in until("remote-switch", lambda: seen == set(switching.Route)):
        v = answer.values
        if answer.verdict != "fine":
            continue
        seen.add(v["route"])
        assert v["kind"] == "DC" and v["switch_rating"] is not None, texts
        assert v["switch_rating"] >= 1.25 * v["line_current"] * (1 - 1e-9)
        if answer.result.relayed:
            at_coil = v["control_voltage"] * v["lowest"] - v["drop"]
            assert at_coil >= 1.1 * v["pull_in"] * v["control_voltage"] * (1 - 1e-9), texts
        else:
            assert v["line_conductor"] is not None
        if v["switch"] is not None:
            assert v["marked"] == "DC" and v["switch"] >= v["switch_rating"] * (1 - 1e-9)
    assert seen == set(switching.Route)


def test_mains_is_never_simply_fine_and_always_for_a_licensed_person():
    for texts, answer in answers("remote-switch"):
        if answer.values["kind"] == "AC":
            assert answer.verdict != "fine", texts
            assert "switch.mains-kills" in answer.rules


def test_a_heater_s_cut_out_is_never_its_switch():
    rule = "switch.cut-out-is-no-switch"
    assert rule in calc.work("remote-switch").rules
    assert rule not in calc.work("remote-switch", PUMP).rules


def test_a_coil_that_may_not_close_is_a_stop():
    """At 88 % of its voltage a coil with a pull-in of 80 % has nothing to spare: 1.1 x 80 %."""
    relay = {"power": "1500 W", "voltage": "12 V", "kind": "DC"}
    assert calc.work("remote-switch", {**relay, "lowest": "88 %"}).verdict == "stop"
    assert calc.work("remote-switch", {**relay, "lowest": "90 %"}).verdict == "fine"


@pytest.mark.parametrize(
    ("kind", "voltage"), [("AC", "12 V"), ("AC", "99.9 V"), ("DC", "65.1 V"), ("DC", "120 V")]
)
def test_a_voltage_that_does_not_go_with_its_kind_is_refused(kind, voltage):
    with pytest.raises(calc.InputError, match="Voltage of the line must be") as refusal:
        calc.work("remote-switch", {"kind": kind, "voltage": voltage})
    assert refusal.value.field == "voltage"


@pytest.mark.parametrize(("kind", "voltage"), [("AC", "100 V"), ("DC", "65 V")])
def test_the_lowest_mains_and_the_highest_bank_are_answered(kind, voltage):
    assert calc.work("remote-switch", {"kind": kind, "voltage": voltage}).verdict


def test_a_longer_way_never_gets_a_thinner_wire_to_the_coil():
    drops = []
    for metres in (1, 3, 10, 30, 100):
        answer = calc.work("remote-switch", {"distance": f"{metres} m", "coil_current": "1 A"})
        drops.append(answer["drop"].m_as("V"))
        assert answer["drop"].m_as("V") <= answer.values["allowed"] * (1 + 1e-9)
        assert answer["longest"].m_as("m") >= metres * (1 - 1e-9)
    assert drops[0] < drops[1]


def test_what_one_cable_does_not_carry_takes_two_and_what_four_do_not_is_a_stop():
    """33 CFR 183.425, table 5: 4/0 AWG bears 445 A; a quarter more than 320 A is 400 A.

    Two side by side are four loaded conductors, 0.6 of that: 267 A, and 250 A is the largest fuse.
    """
    heavy = {"kind": "DC", "voltage": "12 V"}
    assert calc.work("remote-switch", {**heavy, "power": "3840 W"}).verdict == "fine"
    two = calc.work("remote-switch", {**heavy, "power": "4300 W"})
    assert two.verdict == "caution" and two.sentence.startswith("Use two cables in parallel")
    assert calc.work("remote-switch", {**heavy, "power": "20 kW"}).verdict == "stop"


def test_where_no_factor_is_published_the_rating_is_asked_for_such_a_load():
    """Lamps on 48 V: their inrush is not in the quarter more."""
    lamps = {"kind": "DC", "voltage": "48 V", "load": "lamp"}
    assert "for such a load" in calc.work("remote-switch", lamps).sentence


def test_the_switch_of_a_coil_is_said_to_break_dc_on_a_mains_line_too():
    mains = calc.work(
        "remote-switch", {"kind": "AC", "power": "1500 W", "switch": "10 A", "marked": "AC"}
    )
    assert mains.verdict == "stop"
    assert "relay.coil-is-dc" in mains.rules
    assert mains.rule == "switch.rated-below-current" and "A DC-rated switch" in mains.sentence


def test_contacts_are_kept_from_gas_and_vented_batteries():
    for texts, answer in answers("remote-switch")[:200]:
        assert "gas locker" in said(answer) and "vented battery" in said(answer), texts


@pytest.mark.parametrize("way", ["bank", "shore"])
@pytest.mark.parametrize("power", ["20 W", "500 W", "1500 W"])
def test_a_water_heater_leads_to_its_switch_with_power_and_voltage(way, power):
    heater = calc.work("water-heater", {"way": way, "power": power, "efficiency": "100 %"})
    (move,) = heater["moves"]
    switch = calc.work(move.sheet, dict(move.texts))
    assert move.sheet == "remote-switch"
    assert switch.values["kind"] == ("DC" if way == "bank" else "AC")
    assert switch["line_current"].m_as("A") == pytest.approx(heater["current"].m_as("A"), rel=1e-6)


def test_a_water_heater_behind_an_inverter_is_switched_at_mains_voltage():
    (move,) = calc.work("water-heater", {"way": "bank", "efficiency": "88 %"})["moves"]
    assert dict(move.texts) == {"power": "500 W", "kind": "AC"}


@pytest.mark.parametrize("way", ["fuel", "engine"])
def test_a_water_heater_without_an_element_has_no_such_switch(way):
    assert calc.work("water-heater", {"way": way})["moves"] is None


def test_a_relay_leads_to_what_its_coil_drains_and_a_bank_s_line_to_its_wire():
    relay = {"power": "1500 W", "voltage": "12 V", "kind": "DC", "coil_current": "1 A"}
    coil, line = calc.work("remote-switch", relay)["moves"]
    assert calc.work(coil.sheet, dict(coil.texts)).values["drain"] == pytest.approx(1.0)
    assert calc.work(line.sheet, dict(line.texts)).values["current"] == pytest.approx(125.0)

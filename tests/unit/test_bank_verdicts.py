"""What speaks against a bank is said in its verdict, and sheets that ask the same answer alike."""

import pytest

import calc
from calc.energy import battery
from calc.energy.gauge import Silence
from calc.tables import SEEN, table

CELLS = {"LFP": 4, "AGM": 6, "gel": 6, "flooded": 6}


def work(sheet, **texts):
    return calc.work(sheet, texts)


# Size


def test_a_lead_acid_bank_that_is_drawn_within_hours_is_not_called_fine():
    """Its label is meant over 20 h; 20 kWh a day for two hours is 137 A on average."""
    asked = {"chemistry": "AGM", "voltage": "12.2 V", "unit_capacity": "800 Ah"}
    quick = work("bank-size", days="2 h", daily_energy="20 kW.h", **asked)
    assert quick.rule == "bank-size.drawn-within-hours"
    assert work("bank-size", days="2 days", daily_energy="2 kW.h", **asked).verdict == "fine"


def test_an_lfp_bank_that_is_emptied_within_the_hour_is_not_called_fine():
    """Common practice: half of the ampere-hours in amperes, whatever the heaviest load."""
    asked = {"days": "1 h", "daily_energy": "24 kW.h", "unit_capacity": "125 Ah"}
    assert work("bank-size", **asked).rule == "bank-size.drawn-within-hours"


def test_an_lfp_bank_that_keeps_nothing_back_is_not_called_fine():
    """Common practice: 80 to 90 % are used."""
    for usable, verdict in (("90 %", "fine"), ("95 %", "caution"), ("100 %", "caution")):
        assert work("bank-size", usable=usable).verdict == verdict
        assert work("runtime", usable=usable).verdict == verdict


def test_cold_is_claimed_only_where_a_factor_for_it_is_used():
    assert work("bank-size").rule == "bank-size.fine-old"
    lead = work("bank-size", chemistry="AGM", voltage="12.2 V", unit_capacity="400 Ah")
    assert lead.rule == "bank-size.fine-cold-and-old"


@pytest.mark.parametrize(
    ("volts", "said"), [("12.8 V", True), ("25.6 V", True), ("12.2 V", False), ("24.4 V", False)]
)
def test_lead_acid_by_the_voltage_of_another_chemistry_is_told_so(volts, said):
    """At 12.8 V a 12 V lead-acid battery rests full (BCI: 12.65 V); it gives its charge lower."""
    answer = work("bank-size", chemistry="AGM", voltage=volts, unit_capacity="400 Ah")
    assert ("bank-size.voltage-of-lead-acid" in answer.rules) is said


# Gauge


@pytest.mark.parametrize("chemistry", battery.Chemistry)
@pytest.mark.parametrize("temperature", ["25 C", "50 F", "40 F"])
@pytest.mark.parametrize("draw", ["20 A", "45 A"])
def test_from_full_gauge_and_run_time_give_the_same_time(chemistry, temperature, draw):
    asked = {"capacity": "200 Ah", "chemistry": chemistry, "temperature": temperature}
    gauge = work("bank-gauge", state="100 %", current=f"-{draw}", **asked)
    runtime = work("runtime", load=draw, **asked)
    assert gauge.values["to_floor"] == pytest.approx(runtime.values["runtime"], rel=1e-9)


@pytest.mark.parametrize("chemistry", battery.Chemistry)
@pytest.mark.parametrize("current", ["0 A", "-1 A"])
def test_an_empty_bank_is_never_fine_whether_or_not_current_flows(chemistry, current):
    answer = work("bank-gauge", chemistry=chemistry, state="5 %", current=current)
    assert answer.rule == "gauge.spent"


def test_nobody_is_told_to_charge_an_lfp_bank_in_frost():
    rested = {"reading": "13.1 V", "taken": "at rest", "rested_for": "40 h"}
    for state in ("0 %", "10 %", "70 %", "100 %"):
        for others in ({}, {"since_full": "90 days"}, rested):
            for current in ("0 A", "-6 A"):
                asked = {"state": state, "current": current, "temperature": "-5 C"}
                answer = work("bank-gauge", **asked, **others)
                assert (answer.verdict, answer.rule) == ("caution", "bank.in-frost")


@pytest.mark.parametrize("temperature", ["25 C", "4 C"])
def test_frost_is_cautioned_wherever_an_lfp_bank_is_charged(temperature):
    answer = work("bank-gauge", current="10 A", temperature=temperature)
    assert "bank.never-charge-in-frost" in answer.rules
    assert ("charge.near-frost" in answer.rules) is (temperature == "4 C")
    assert "bank.never-charge-in-frost" in work("bank-size").rules
    assert "standing.coldest-not-known" in work("standby-drain").rules


@pytest.mark.parametrize("chemistry", battery.Chemistry)
def test_a_charge_in_the_cool_is_given_a_time_at_best(chemistry):
    """Below 10 °C: common practice, as for a night on a lead."""
    answer = work("bank-gauge", chemistry=chemistry, current="10 A", temperature="6 C")
    assert answer.verdict == "caution" and "at best" in answer.sentence


def test_a_lead_acid_bank_on_charge_is_told_of_its_gas():
    assert (
        "charge.lead-acid-gasses" in work("bank-gauge", chemistry="flooded", current="10 A").rules
    )


@pytest.mark.parametrize(
    ("chemistry", "volts", "verdict"),
    [("LFP", 14.4, "caution"), ("LFP", 15.0, "stop"), ("gel", 15.0, "caution")],
)
@pytest.mark.parametrize("blocks", [1, 2, 4])
def test_a_voltage_that_overcharges_is_said_before_anything_else(chemistry, volts, verdict, blocks):
    """3.65 V a cell is an LFP maker's absolute limit: 14.6 V for four (handling guide, seen)."""
    answer = work(
        "bank-gauge",
        chemistry=chemistry,
        current="10 A",
        taken="charging",
        reading=f"{volts * blocks} V",
        system=f"{12 * blocks} V",
    )
    assert answer.verdict == verdict
    assert ("overcharged" in answer.rule) is (volts > 14.6)


def test_while_current_flows_in_no_load_is_blamed_for_the_voltage():
    """The reading's own field is easily left at its default."""
    charged = work("bank-gauge", reading="13.9 V", current="30 A").result
    drawn = work("bank-gauge", reading="12.9 V", current="-30 A").result
    assert (charged.reading.silence, drawn.reading.silence) == (Silence.CHARGED, Silence.LOADED)


def test_a_hot_bank_is_not_called_fine_though_it_is_not_charged():
    for current in ("-6 A", "0 A"):
        assert work("bank-gauge", temperature="58 C", current=current).rule == "bank.too-hot"


def test_a_share_that_is_smaller_than_the_count_s_own_error_is_not_called_fine():
    """By hand: 2 % of 200 Ah are left to use; 50 mA and 3 % a month for 7 days are 9.8 Ah."""
    answer = work("bank-gauge", state="22 %")
    assert answer.rule == "gauge.perhaps-spent"
    assert work("bank-gauge", state="30 %").verdict == "fine"


# The fault search reads the same tables


def test_each_rested_voltage_of_the_fault_search_is_a_row_of_the_fuller_table_but_gel_s():
    """Gel is taken as flooded there, as old links have it; that lies in the gauge's band."""
    states = {"full_v": 100, "part_v": 75, "empty_v": 0}
    lithium = {"full_v": 98, "part_v": 25, "empty_v": 5}
    for row in table("rested_voltage").rows:
        if row["chemistry"] == "gel":
            continue
        assert row["confidence"] == SEEN
        for column, state in (lithium if row["chemistry"] == "LFP" else states).items():
            rows = [
                float(one["low_v"]) / float(one["cells"])
                for one in table("rested_states").rows
                if one["chemistry"] == row["chemistry"] and float(one["state_low"]) == state
            ]
            assert float(row[column]) / float(row["cells"]) in rows, (row["chemistry"], column)


def test_a_gel_bank_that_is_taken_as_flooded_is_told_what_a_maker_says():
    """A battery maker's question page, gel after 24 h: 12.85 V full."""
    answer = work("find-fault", symptom="flickers", chemistry="gel", path="flickers.no.all.low")
    full = min(
        float(row["low_v"])
        for row in table("rested_states").rows
        if row["chemistry"] == "gel" and row["state_low"] == "100"
    )
    assert any(f"{full:g} V" in remark.text for remark in answer.notes)

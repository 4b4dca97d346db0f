"""A fuse stands between what the load needs and what the wire bears, and can break the fault."""

import re

import pytest

import calc
from calc.tables import table
from tests.contract.samples import answers, until
from tests.unit.fuse_names import offered, owed

REMEDIES = {
    r"thicker wire: (?P<conductor>.+), with a fuse of (?P<fuse>[\d.]+) A": {},
    r"insulation rated (?P<insulation>\d+) °C, with a fuse of (?P<fuse>[\d.]+) A": {},
    r"no more than 2 loaded conductors together, with a fuse of (?P<fuse>[\d.]+) A": {
        "bundled": "2"
    },
    r"split the load into (?P<parts>\d) circuits of [\d.]+ A, "
    r"each on this wire with a fuse of (?P<fuse>[\d.]+) A": {},
}
NO_SINGLE_CHANGE = "no single change: take"
OTHER_FUSE = "a source with less fault current, or a fuse whose data sheet"


def ask(**inputs):
    return calc.work("fuse-choice", inputs)


def amps(answer, name):
    return answer[name].m_as("A")


def rated(voltage):
    """Return from the table's own rows the current that each family breaks at `voltage` [V]."""
    found = {}
    for row in table("fuse_families").rows:
        if float(row["dc_voltage_v"]) >= voltage:
            amps_broken = float(row["interrupting_a"])
            found[row["family"]] = max(found.get(row["family"], 0), amps_broken)
    return found


def test_the_load_needs_a_quarter_more_than_it_draws():
    """NEC 210.20(A): 125 % of a continuous load; 30 A gives 37.5 A, and the next rating is 40 A."""
    answer = ask(current="30 A", conductor="8 AWG", fault_current="1000 A")
    assert amps(answer, "lowest") == pytest.approx(37.5)
    assert amps(answer, "fuse") == 40
    assert answer.verdict == "fine"


def test_a_rating_that_is_just_what_the_load_needs_will_do():
    """32 A × 1.25 is 40 A exactly; a hair more asks for the next one printed."""
    ratings = {float(row["rating_a"]) for row in table("fuse_ratings").rows}
    assert amps(ask(current="32 A"), "fuse") == 40
    assert amps(ask(current="32.01 A"), "fuse") == min(r for r in ratings if r > 40)


def test_a_rating_that_is_just_what_the_wire_bears_will_do():
    """33 CFR 183.425 table 5: 8 AWG at 105 °C bears 80 A, and 64 A × 1.25 is 80 A exactly."""
    answer = ask(current="64 A", conductor="8 AWG")
    assert amps(answer, "fuse") == amps(answer, "highest") == 80
    assert ask(current="64.01 A", conductor="8 AWG")["fuse"] is None


def test_a_shut_window_stops_with_what_would_open_it():
    answer = ask(current="80 A", conductor="8 AWG")
    assert answer.verdict == "stop"
    assert answer["fuse"] is None
    assert answer["remedies"]
    assert answer.working


def test_a_window_without_a_standard_rating_in_it_stops_too():
    """9 A asks for 11.25 A; 18 AWG of 80 °C in air of 35 °C bears 15 A × √(45/50) = 14.2 A.

    At 58.4 V only families from 15 A up are left.
    """
    answer = ask(
        current="9 A", conductor="18 AWG", insulation="80 C", ambient="35 C", voltage="58.4 V"
    )
    assert amps(answer, "lowest") == pytest.approx(11.25)
    assert amps(answer, "highest") == pytest.approx(14.2, abs=0.05)
    assert answer["fuse"] is None
    assert answer.verdict == "stop"
    assert answer.rule == "fuse.no-rating-between"


@pytest.mark.parametrize("voltage", ["58.4 V", "58.01 V", "80 V"])
def test_a_58_volt_family_is_refused_above_58_volts(voltage):
    """A 48 V bank of LFP charges at 58.4 V: ISO 8820-3 blades end at 58 V."""
    answer = ask(current="10 A", voltage=voltage, fault_current="900 A")
    refused = answer.values["too_low_in_voltage"]
    low = {row["family"] for row in table("fuse_families").rows} - set(rated(float(voltage[:-2])))
    assert {"blade, regular (type C)", "terminal-mount block"} <= low
    assert set(refused) == low
    assert not [family for family in answer["families"] if "blade" in family]
    assert "fuse.families-of-too-low-voltage" in answer.rules


def test_a_58_volt_family_stands_at_58_volts_by_its_higher_version_alone():
    answer = ask(current="10 A", voltage="58 V", fault_current="900 A")
    assert "blade, regular (type C), rated 58 V or more" in answer["families"]
    assert "blade, regular (type C)" not in answer["families"]


def test_a_family_that_cannot_break_the_fault_is_refused():
    """ISO 8820-3 blades break 1000 A."""
    within = ask(current="10 A", voltage="14.6 V", fault_current="1000 A")
    beyond = ask(current="10 A", voltage="14.6 V", fault_current="1001 A")
    assert "blade, regular (type C)" in within["families"]
    assert "blade, regular (type C)" not in beyond["families"]
    assert "blade, regular (type C)" in beyond.values["cannot_break"]


def test_no_family_at_all_stops_and_names_another_fuse():
    answer = ask(current="10 A", voltage="120 V", fault_current="30000 A")
    assert answer.verdict == "stop"
    assert answer["fuse"] is None
    assert OTHER_FUSE in answer["remedies"][0]


def test_families_seen_in_a_text_stand_before_those_from_memory():
    for _, answer in answers("fuse-choice"):
        marks = ["(from memory)" in family for family in answer["families"]]
        assert marks == sorted(marks)


def test_every_chosen_family_is_rated_for_circuit_and_fault_and_is_made_in_the_rating():
    made = {}
    for row in table("fuse_ratings").rows:
        made.setdefault(row["family"], set()).add(float(row["rating_a"]))
    for texts, answer in answers("fuse-choice"):
        breaks = rated(answer.values["voltage"] * (1 - 1e-9))
        for family in answer["families"]:
            plain = offered(family).name
            assert offered(family) == owed(plain, answer.values["voltage"]), texts
            assert breaks[plain] >= answer.values["fault_current"] * (1 - 1e-9), texts
            assert answer.values["fuse"] in made[plain]


def test_the_smallest_rating_in_the_window_is_taken():
    """Found again by going through every printed rating."""
    ratings = {(row["family"], float(row["rating_a"])) for row in table("fuse_ratings").rows}
    for texts, answer in answers("fuse-choice"):
        values = answer.values
        breaks = rated(values["voltage"] * (1 - 1e-9))
        fitting = [
            rating
            for family, rating in ratings
            if breaks.get(family, 0) >= values["fault_current"] * (1 - 1e-9)
            and values["lowest"] * (1 - 1e-9) <= rating <= values["highest"] * (1 + 1e-9)
        ]
        assert values["fuse"] == min(fitting, default=None), texts
        assert (answer.verdict == "stop") is (values["fuse"] is None)


def test_remedies_are_named_only_where_there_is_no_fuse():
    for _, answer in answers("fuse-choice"):
        assert bool(answer["remedies"]) is (answer["fuse"] is None)


def test_every_remedy_opens_the_window_when_it_is_done():
    done = set()
    for texts, answer in until("fuse-choice", lambda: done == set(REMEDIES)):
        for remedy in answer["remedies"]:
            if NO_SINGLE_CHANGE in remedy or OTHER_FUSE in remedy:
                assert len(answer["remedies"]) == 1
                continue
            matches = {pattern: re.fullmatch(pattern, remedy) for pattern in REMEDIES}
            pattern, found = next((p, match) for p, match in matches.items() if match)
            change = found.groupdict()
            promised = float(change.pop("fuse"))
            if parts := change.pop("parts", None):
                change["current"] = f"{answer.values['current'] / int(parts)!r} A"
            if "insulation" in change:
                change["insulation"] += " C"
            again = ask(**{**texts, **REMEDIES[pattern], **change})
            assert again["fuse"] is not None, f"{remedy} does not help {texts}"
            assert amps(again, "fuse") == promised
            done.add(pattern)
    assert done == set(REMEDIES), "some remedy never came up"


def test_the_law_s_ceiling_is_named_and_not_used():
    """33 CFR 183.455: at most 150 % of table 5; the wire's own figure stays the limit."""
    answer = ask(current="30 A", conductor="8 AWG")
    assert answer.values["ceiling"] == pytest.approx(120)
    assert amps(answer, "highest") == 80

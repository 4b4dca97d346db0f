"""A fuse stands between what the load needs and what the wire bears, and can break the fault."""

import re

import pytest

import calc
from calc.tables import table
from tests.contract.samples import answers, until
from tests.unit.fuse_names import offered, owed

REMEDIES = {
    r"larger wire: (?P<conductor>.+), with a fuse of (?P<fuse>[\d.]+) A": {},
    r"insulation rated (?P<insulation>\d+) °C, with a fuse of (?P<fuse>[\d.]+) A": {},
    r"no more than 2 loaded conductors together, with a fuse of (?P<fuse>[\d.]+) A": {
        "bundled": "2"
    },
    r"split the load into (?P<parts>\d) circuits of [\d.]+ A, "
    r"each on this wire with a fuse of (?P<fuse>[\d.]+) A": {},
}
NO_SINGLE_CHANGE = "no single change: combine"
PLUGGED = ("blade, regular (type C)", "blade, miniature (type F)", "blade breaker (CB15)")
OTHER_FUSE = "a source with less fault current, or a fuse whose data sheet"


def ask(**inputs):
    """Ask for a fuse at the battery, where the fault is what is typed."""
    return calc.work("fuse-choice", {"fuse_place": "at the battery"} | inputs)


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
    """32 A × 1.25 is 40 A exactly; a hair more takes the next that shops keep, 50 A."""
    assert amps(ask(current="32 A", fault_current="3 kA"), "fuse") == 40
    assert amps(ask(current="32.01 A", fault_current="3 kA"), "fuse") == 50


def test_a_rating_that_is_just_what_the_wire_bears_will_do():
    """33 CFR 183.425 table 5: 8 AWG at 105 °C bears 80 A, and 64 A × 1.25 is 80 A exactly."""
    answer = ask(current="64 A", conductor="8 AWG")
    assert amps(answer, "fuse") == amps(answer, "highest") == 80
    assert ask(current="64.01 A", conductor="8 AWG")["fuse"] is None


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
            fault = answer.values["fault_here"]
            assert offered(family) == owed(plain, answer.values["voltage"], fault), texts
            assert breaks[plain] >= fault * (1 - 1e-9), texts
            assert answer.values["fuse"] in made[plain]


def published(voltage):
    """Return from the rows what a text says that each family breaks at `voltage` [V]."""
    found = {}
    for row in table("fuse_families").rows:
        if float(row["dc_voltage_v"]) >= voltage and row["confidence"] != "from memory":
            amps_broken = float(row["interrupting_a"])
            found[row["family"]] = max(found.get(row["family"], 0), amps_broken)
    return found


def lowest_of(family):
    """Return the lowest d.c. voltage rating [V] of a family, that of its common version."""
    rows = table("fuse_families").rows
    return min(float(row["dc_voltage_v"]) for row in rows if row["family"] == family)


def test_what_is_published_and_not_too_large_is_taken_before_what_is_not():
    """Found again by going through every printed rating."""
    ratings = {(row["family"], float(row["rating_a"])) for row in table("fuse_ratings").rows}
    for texts, answer in answers("fuse-choice"):
        values = answer.values
        volts, fault = values["voltage"] * (1 - 1e-9), values["fault_here"] * (1 - 1e-9)
        breaks, said = rated(volts), published(volts)
        fitting = {
            (family, rating)
            for family, rating in ratings
            if breaks.get(family, 0) >= fault
            and values["lowest"] * (1 - 1e-9) <= rating <= values["largest"] * (1 + 1e-9)
        }
        chosen = values["fuse"]
        assert (chosen is None) is (not fitting), texts
        if chosen is None:
            carried = values["current"] <= values["ampacity"] * (1 + 1e-9)
            assert answer.verdict == "stop" or (carried and answer.verdict == "caution"), texts
            continue
        best = offered(answer["families"][0]).name
        assert (best, chosen) in fitting, texts
        sure = {(family, rating) for family, rating in fitting if said.get(family, 0) >= fault}
        wide = {pair for pair in sure if said[pair[0]] >= 1.1 * fault}
        common = {pair for pair in wide if volts <= 32 or lowest_of(pair[0]) >= volts}
        assert not common or (best, chosen) in common, texts
        wide = common or wide
        assert not sure or (best, chosen) in sure, texts
        assert not wide or (best, chosen) in wide, texts
        within = {rating for _, rating in wide if rating <= 2 * values["lowest"]}
        assert not within or chosen <= 2 * values["lowest"] * (1 + 1e-9), texts
        rare = {(r["family"], float(r["rating_a"])) for r in table("fuse_rare_ratings").rows}
        smaller = [r for family, r in fitting - rare if family == best and r < chosen]
        if smaller:
            assert best in PLUGGED, texts
            assert values["current"] > 0.75 * max(smaller) * (1 - 1e-9), texts


@pytest.mark.parametrize(
    ("current", "conductor", "fuse"),
    [
        # A small blade is loaded to 75 % at most where the next larger one suits as well.
        ("6 A", "4 mm2", 10),
        ("2 A", "1 mm2", 3),
        ("7 A", "4 mm2", 10),
        ("10 A", "2.5 mm2", 15),
        ("7.5 A", "4 mm2", 10),
        ("7.6 A", "4 mm2", 15),
        # 8 A asks for 10 A; 18 AWG of 60 °C carries no more, so 80 % it is.
        ("8 A", "18 AWG", 10),
        # A larger construction may carry 80 %.
        ("40 A", "10 mm2", 50),
    ],
)
def test_the_rating_that_an_electrician_would_take_from_the_box(current, conductor, fuse):
    asked = {"current": current, "conductor": conductor, "fault_current": "800 A"}
    narrow = {"insulation": "60 C"} if conductor == "18 AWG" else {}
    assert amps(ask(**asked, **narrow), "fuse") == fuse
    size = {"current": current, "length": "1 m", "limit": "10 %"}
    if not narrow:
        assert amps(calc.work("wire-size", size), "fuse") == fuse, "one choice for all sheets"


def test_a_small_load_needs_no_large_fuse_where_the_fault_is_larger_than_blades_break():
    """Blades break 1000 A, blade breakers 2000 A, a cylinder of gPV type 10 kA; class T begins
    at 15 A."""
    for fault, fuse, family in (
        ("1001 A", 7.5, "blade breaker (CB15), rated 28 V or more"),
        ("1800 A", 7.5, "blade breaker (CB15), rated 28 V or more"),
        ("2001 A", 8, "cylinder, 10 by 38 mm (gPV)"),
        ("8 kA", 8, "cylinder, 10 by 38 mm (gPV)"),
    ):
        answer = ask(current="5 A", conductor="12 AWG", insulation="105 C", fault_current=fault)
        assert amps(answer, "fuse") == fuse
        assert answer["families"][0] == family
        assert answer.verdict == "fine"


def test_a_longer_feed_is_named_where_a_blade_is_just_too_weak():
    """With so much more of it a blade breaks the short, with a tenth to spare."""
    near = {"current": "6 A", "conductor": "4 mm2", "feed_conductor": "16 mm2"}
    block = {"fuse_place": "behind a main fuse", "fault_current": "2000 A"}
    short = ask(**near, **block, feed_length="2 m")
    assert "fuse-choice.longer-feed-for-a-blade" in short.rules
    long = ask(**near, **block, feed_length=f"{2 + short.values['more_feed'] + 0.001} m")
    assert "fuse-choice.longer-feed-for-a-blade" not in long.rules
    assert long["families"][0] == "blade, regular (type C)" and amps(long, "fuse") == 10


def test_a_rating_that_shops_hardly_keep_gives_way_to_the_next():
    at_battery = {"fuse_place": "at the battery", "fault_current": "2500 A"}
    for current, size, fuse in (("34 A", "16 mm2", 50), ("66.7 A", "35 mm2", 100)):
        assert amps(ask(current=current, conductor=size, **at_battery), "fuse") == fuse
    narrow = ask(current="34 A", conductor="14 AWG", bundled="1", **at_battery)
    assert narrow["fuse"] is None or amps(narrow, "fuse") == 45


def test_the_feed_to_a_fuse_block_holds_the_fault_back_as_on_the_fault_current_sheet():
    """15 joints of 0.1 mΩ stand for the main fuse, its holder and the joints."""
    parts = {"joints": "15", "joint_resistance": "0.1 mohm"}
    feed = {"conductor": "16 mm2", "length": "3 m", **parts}
    short = calc.work("fault-current", {"voltage": "14.6 V", "source_resistance": "2 kA", **feed})
    block = {"fuse_place": "behind a main fuse", "feed_conductor": "16 mm2", "feed_length": "3 m"}
    answer = ask(**block, voltage="14.6 V", fault_current="2 kA")
    assert answer.values["fault_here"] == pytest.approx(short.values["fault_current"], rel=1e-9)
    # 14.6 V over 7.3 mΩ, 1.5 mΩ, and 6 m of 16 mm² at 58 m/(Ω·mm²)
    by_hand = 14.6 / (0.0073 + 0.0015 + 6 / (58 * 16))
    assert answer.values["fault_here"] == pytest.approx(by_hand, rel=1e-6)


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
            again = calc.work("fuse-choice", {**texts, **REMEDIES[pattern], **change})
            assert again["fuse"] is not None, f"{remedy} does not help {texts}"
            assert amps(again, "fuse") == promised
            done.add(pattern)
    assert done == set(REMEDIES), "some remedy never came up"


def test_the_law_s_ceiling_is_named_and_not_used():
    """33 CFR 183.455: at most 150 % of table 5; the wire's own figure stays the limit."""
    answer = ask(current="30 A", conductor="8 AWG")
    assert answer.values["ceiling"] == pytest.approx(120)
    assert amps(answer, "highest") == 80

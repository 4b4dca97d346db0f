"""What stands beside a fuse's rating: the version to ask for, other ratings, the bundle's heat."""

import pytest

import calc
from calc.electrical import fuse_order, fuses
from tests.contract.samples import those, until
from tests.unit.fuse_names import offered


def ask(**inputs):
    """Ask for a fuse at the battery, where the fault is what is typed."""
    return calc.work("fuse-choice", {"fuse_place": "at the battery"} | inputs)


def amps(answer, name):
    return answer[name].m_as("A")


def test_a_family_knows_what_it_breaks_and_which_version_to_ask_for():
    breaks = tuple(fuses.Breaks(*one) for one in ((14, 10000), (32, 5000), (58, 2000)))
    family = fuses.Family("made up", breaks, (30.0,))
    assert family.interrupting(12) == 10000
    assert family.interrupting(14.6) == 5000
    assert family.interrupting(58.4) is None
    asked = {12: None, 14: None, 14.6: 32, 32: 32, 32.1: 58, 58: 58, 58.4: None}
    assert {volts: family.version(volts) for volts in asked} == asked
    assert family.named_for(12) == "made up"
    assert family.named_for(14.6) == "made up, rated 32 V or more"
    remembered = fuses.Family(
        "made up", tuple(one._replace(from_memory=True) for one in breaks), ()
    )
    assert remembered.named_for(12) == "made up (from memory)"
    assert remembered.named_for(58) == "made up, rated 58 V or more (from memory)"


def test_a_figure_seen_in_a_text_is_not_from_memory_because_others_of_its_family_are():
    breaks = (fuses.Breaks(32, 5000, True), fuses.Breaks(58, 2000))
    family = fuses.Family("made up", breaks, (30.0,))
    assert (family.interrupting(12), family.published(12)) == (5000, 2000)
    assert not family.from_memory(12, 2000)
    assert family.from_memory(12, 2001)
    assert [family.relied_on(12, fault) for fault in (2000, 2001)] == [2000, 5000]
    assert family.named_for(12, 2000) == "made up"
    assert family.named_for(12, 2001) == "made up (from memory)"
    strip = fuses.named("bolt-in strip, 51 mm (SF51)")
    assert strip is not None and not strip.from_memory(14.6, 2000), "ISO 8820-5:2015, scope"


def test_the_ratings_between_are_those_of_all_families_once_each_with_both_ends():
    breaks = (fuses.Breaks(32.0, 1000.0),)
    among = tuple(
        fuses.Family(name, breaks, ratings)
        for name, ratings in (("one", (30.0, 50.0)), ("other", (20.0, 30.0, 40.0, 60.0)))
    )
    assert fuses.ratings_between(30, 50, among) == (30, 40, 50)
    assert fuses.ratings_between(30.1, 39.9, among) == ()
    assert fuses.ratings_between(30, 50, ()) == ()
    assert fuses.standard_rating(31, 60, among) == 40
    assert fuses.standard_rating(61, 90, among) is None


def test_what_else_is_offered_bears_the_same_marks():
    """Each rating beside the chosen one names its families as a reader must ask for them."""
    seen = []
    for texts, answer in until("fuse-choice", lambda: len(seen) > 100):
        values = answer.values
        suitable = fuse_order.suitable(values["voltage"], values["fault_here"])
        for offer in values["also"]:
            rating = float(offer.split(" A ")[0])
            for family in suitable:
                if rating in family.ratings:
                    name = family.named_for(values["voltage"], values["fault_here"])
                    assert name in offer, texts
                    seen.append(offer)
    assert len(seen) > 100


@pytest.mark.parametrize(
    ("bundled", "current", "ampacity", "fuse", "verdict"),
    [
        # 33 CFR 183.425 table 5: 8 AWG at 105 °C can carry 80 A, at 60 °C 55 A. Note 2: 0.7, 0.6,
        # 0.5 and 0.4.
        ("2", "40 A", 80, 50, "fine"),
        ("3", "30 A", 56, 40, "fine"),
        ("3", "46 A", 56, None, "caution"),
        ("4", "24 A", 48, 30, "fine"),
        ("6", "48.1 A", 48, None, "stop"),
        ("7", "32 A", 40, 40, "fine"),
        ("24", "38 A", 40, None, "caution"),
        ("25", "32.1 A", 32, None, "stop"),
    ],
)
def test_a_bundle_is_counted_at_any_voltage_and_it_is_said_whose_rule_that_is(
    bundled, current, ampacity, fuse, verdict
):
    """The law counts it from 50 V on, ABYC E-11 at any voltage; a bundle is as hot at 12 V."""
    answer = ask(current=current, conductor="8 AWG", bundled=bundled, fault_current="900 A")
    assert amps(answer, "ampacity") == pytest.approx(ampacity)
    assert answer.values["fuse"] == fuse
    assert answer.verdict == verdict
    said = [one.text for one in answer.cautions if one.rule == "cable.bundle-by-prudence"]
    assert len(said) == (bundled != "2")
    assert all("precaution" in text and "50 V" in text for text in said)


@pytest.mark.parametrize("change", [{"voltage": "50 V"}, {"rule_set": "ABYC E-11"}])
def test_a_bundle_that_the_rule_set_counts_is_counted_once(change):
    """33 CFR 183.425 table 5 note 2 from 50 V, ABYC E-11 always: 80 A × 0.7."""
    answer = ask(current="30 A", conductor="8 AWG", bundled="3", fault_current="900 A", **change)
    assert amps(answer, "ampacity") == pytest.approx(56)
    assert "cable.bundle-by-prudence" not in answer.rules


def test_what_needs_no_higher_version_is_offered_first_over_32_volts():
    for voltage in ("32.1 V", "57.6 V"):
        answer = ask(current="10 A", voltage=voltage, fault_current="900 A")
        assert answer["families"][0] == "cartridge, class T"
        assert "blade, regular (type C), rated 58 V or more" in answer["families"]
        assert answer.verdict == "fine"


@pytest.mark.parametrize(
    ("voltage", "version", "verdict"),
    [("32 V", "", "fine"), ("32.1 V", ", rated 58 V or more", "caution")],
)
def test_a_fuse_of_a_family_with_a_higher_version_is_a_caution_over_32_volts(
    voltage, version, verdict
):
    """GB/T 31465.3-2015 (ISO 8820-3:2010): blades are made for 32 V, some for 58 V."""
    blade = {"fitted": "15 A", "fitted_family": "blade, regular (type C)"}
    answer = ask(current="10 A", voltage=voltage, fault_current="900 A", **blade)
    assert answer.verdict == verdict
    assert (answer.rule == "fuse.marked-higher") is bool(version)
    assert ("58\xa0V" in answer.sentence) is bool(version)


def test_a_version_is_asked_of_the_families_that_have_one():
    """At 58.4 V strips have versions for 70 V and 80 V; class T is rated 125 V and has no other."""
    answer = ask(current="40 A", voltage="58.4 V", fault_current="2000 A", insulation="105 C")
    assert "bolted limiter strip" in answer.values["versioned"]
    assert answer["families"][0] == "cartridge, class T"
    versions = {offered(one).name: offered(one).version for one in answer["families"]}
    assert versions["bolted limiter strip"] == 80
    assert versions["bolt-in strip, 51 mm (SF51)"] == 70
    assert answer.verdict == "fine", "20 kA at 125 V: a textbook on photovoltaic installations"


def test_no_fuse_that_is_there_is_fine_over_32_volts_while_a_higher_version_is_to_be_looked_for():
    def marked(answer):
        duty = answer.result.protection.duty
        there = answer.values["fitted"] is not None and duty is not None
        return there and answer.values["voltage"] > 32.001 and duty.marked_voltage is not None

    assert "fine" not in {answer.verdict for _, answer in those("fuse-choice", marked, 5)}

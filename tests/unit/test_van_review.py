"""The review of the three vans of our own: the sound one, the ten mistakes, the one half seen."""

import re
from datetime import date

import pytest

import calc
from calc.judge import Level
from calc.van.demos import DEMOS, demo
from calc.van.inspection import Decision, inspection_list
from calc.van.judging import Mend, mended
from calc.van.keys import Walk
from calc.van.mends import MOST_OFFERED, holds, mends_of
from calc.van.patterns import worked_patterns
from calc.van.record import place_of
from calc.van.review import review
from calc.van.told import AS_USUAL, NOT_PROVEN, NOT_SEEN, NOT_STATED
from calc.van.values import State

GRAVE = (Level.STOP, Level.CAUTION)
# The ten usual mistakes as the page of them has them, and the finding that tells each.
MISTAKES = {
    "a cable joint without a lock": "van.joint-not-locked",
    "a plain relay from the alternator": "van.unregulated-alternator",
    "an electrical bay that cannot breathe": "van.bay-without-air",
    "heat from the battery": "van.water-heated-from-bank",
    "a hidden appliance without a switch in reach": "van.hidden-water-heater",
    "too little heating or cooling to sleep": "van.heat-not-held",
    "a household appliance that keeps the inverter on": "van.appliance-keeps-inverter-on",
    "no battery monitor": "van.no-counting-monitor",
    "no way to plug in": "van.no-inlet",
    "lights without a dimmer": "van.light-without-dimmer",
}
TEN = review(demo("ten-mistakes"))
SOUND = review(demo("marram"))
HALF = review(demo("half-seen"))


def by_rule(found, rule):
    (one,) = (one for one in found.findings if one.rule == rule)
    return one


def told(found):
    """Return the rules of the findings that a reader is told of by themselves."""
    return sorted(
        one.rule for one in found.findings if one.level in GRAVE or one.rule.startswith("van.")
    )


def test_the_sound_van_yields_no_stop_and_no_caution():
    assert [one for one in SOUND.findings if one.level in GRAVE] == []
    assert SOUND.disposition.decision is Decision.MAY


def test_the_van_with_ten_mistakes_yields_exactly_these_ten():
    assert told(TEN) == sorted(MISTAKES.values())
    assert TEN.disposition.decision is Decision.NOT


@pytest.mark.parametrize("rule", MISTAKES.values())
def test_a_mistake_that_is_mended_is_gone_and_nothing_new_of_its_level_has_come(rule):
    finding = by_rule(TEN, rule)
    offered = mends_of(TEN.van, TEN, finding)
    assert 0 < len(offered) <= MOST_OFFERED
    for mend in offered:
        after = review(mended(TEN.van, mend))
        assert rule not in {one.rule for one in after.findings}
        assert holds(TEN, after, finding)
        known = {one.key for one in TEN.findings}
        assert not [o for o in after.findings if o.key not in known and o.rank <= finding.rank]


def test_all_ten_mended_leave_a_van_with_none_of_them():
    van = TEN.van
    for rule in MISTAKES.values():
        found = review(van)
        for finding in (one for one in found.findings if one.rule == rule):
            van = mended(van, mends_of(van, found, finding)[0])
    assert not set(told(review(van))) & set(MISTAKES.values())


def test_a_mend_carries_its_parts():
    (inlet, *_) = mends_of(TEN.van, TEN, by_rule(TEN, "van.no-inlet"))
    after = mended(TEN.van, inlet)
    mains, charger = after.one("mains"), after.one("shore")
    assert mains["breaker"].known and mains.choice("switching") == "both-poles"
    assert mains.choice("residual") == "trips-when-tested" and mains.choice("earth") == "yes"
    assert charger is not None and charger["charger"].known
    (engine, *_) = mends_of(TEN.van, TEN, by_rule(TEN, "van.unregulated-alternator"))
    after = mended(TEN.van, engine).one("alternator")
    assert after.choice("method") == "charger" and after.choice("fused") == "both-ends"


def test_parts_that_go_are_taken_out_the_last_first():
    van = SOUND.van
    for number in range(1, 5):
        texts = {"name": f"lamp {number}", "load": "light", "current": "1 A", "length": "1 m"}
        van = van.added("circuits", texts)
    count = len(van.all("circuits"))
    gone = (f"circuits[{count}]", "circuits[9]")
    kept = mended(van, Mend(text="Take two out.", removes=gone)).all("circuits")
    left = [one.name for one in van.all("circuits") if one.place not in gone]
    assert count > 10 and [one.name for one in kept] == left


def test_the_best_three_mends_come_first():
    assert len(TEN.best) == 3
    finding, _ = TEN.best[0]
    assert finding.level is Level.STOP
    assert SOUND.best == ()


def test_what_can_kill_is_mended_before_what_can_burn_or_fail():
    van = demo("ten-mistakes").changed({"gas.locker": "open inside"})
    finding, _ = review(van).best[0]
    assert finding.rule == "van.gas-locker-open-inside"


WEAK = {
    "run.drop-over-limit": {"circuits[1].conductor": "16 AWG"},
    "fuse.below-load": {"circuits[4].fuse": "5 A"},
    "van.block-cannot-interrupt": {"batteries[1].resistance": "4 mΩ"},
    "fuse.window-closed": {"cables[1].conductor": "8 AWG"},
    "fuse.window-narrow": {"cables[1].conductor": "6 AWG"},
    "string.none-in-series": {"regulators[1].max_voltage": "40 V"},
    "charge.held-by-cold-cut-off": {"bank.coldest": "-5 °C"},
    "week.empties": {"patterns[1].nights": "9", "patterns[1].drive_hours": "0 h"},
    "shore.night-too-short": {"shore.charger": "10 A"},
    "alternator.hot-too-small": {"alternator.charger_limit": "80 A"},
    "van.sources-stopped-by-signal": {"alternator.charger_limit": "80 A"},
    "bay.ruined": {"bay.vents": "20 cm²", "bay.fan": "none"},
}


@pytest.mark.parametrize(("rule", "changes"), WEAK.items(), ids=WEAK)
def test_what_a_worksheet_finds_is_mended_in_the_van_and_nothing_as_grave_comes(rule, changes):
    van = SOUND.van.changed(changes)
    found = review(van)
    finding = next(one for one in found.findings if one.rule == rule)
    offered = mends_of(van, found, finding)
    assert offered
    for mend in offered:
        after = review(mended(van, mend))
        known = {one.key for one in found.findings} - {finding.key}
        assert not [o for o in after.findings if o.key not in known and o.rank <= finding.rank]


def test_what_is_not_seen_and_what_is_told_ranks_as_a_stop_of_its_own_kind():
    stops = [one for one in HALF.findings if one.not_proven and one.level is Level.STOP]
    places = {place for one in stops for place in one.places}
    assert {one.rule for one in stops} == {NOT_PROVEN}
    assert "management.fitted" in places  # the owner told it
    assert {"gas.locker", "inverter.neutral_bond", "cables[1].fuse"} <= places
    assert HALF.disposition.decision is Decision.NOT
    assert (HALF.disposition.signed_by, HALF.disposition.date) == ("A. Brandt", "2026-11-20")
    assert date.fromisoformat(HALF.disposition.date) and HALF.disposition.signed
    for one in stops:
        assert mends_of(HALF.van, HALF, one) == ()


def test_the_inspection_list_walks_in_a_safe_order():
    stations = inspection_list(HALF.van)
    assert [one.walk for one in stations] == list(Walk)
    for one in stations:
        assert one.do and one.caution and len(one.caution.split()) <= 30
    looks = {look.place: look for one in stations for look in one.looks}
    assert looks["management.fitted"].only_told
    unproven = {p for one in HALF.findings if one.rule == NOT_PROVEN for p in one.places}
    assert unproven <= set(looks)
    mains = next(one for one in stations if one.walk is Walk.MAINS_LIVE)
    assert "licensed" in mains.caution


@pytest.mark.parametrize("name", DEMOS)
def test_each_finding_says_what_where_and_by_what(name):
    found = {"marram": SOUND, "ten-mistakes": TEN, "half-seen": HALF}[name]
    for one in found.findings:
        assert one.sentence and not re.search(r"\{|\}|None", one.sentence), one
        assert one.part_id and one.part_name
        if one.not_proven:
            assert one.rule in (NOT_PROVEN, NOT_SEEN, NOT_STATED, AS_USUAL)
        if one.rule.startswith("van.") and not one.not_proven:
            assert place_of(one.place)
        if one.sheet:
            assert one.texts
    ranks = [one.rank for one in found.findings]
    assert ranks == sorted(ranks)
    assert len({(one.key, one.not_proven, one.places) for one in found.findings}) == len(ranks)


def test_the_evidence_of_a_finding_opens_in_its_worksheet_and_says_the_same():
    wrong = {place: text for one in WEAK.values() for place, text in one.items()}
    for van in (SOUND.van.changed(wrong), TEN.van, HALF.van):
        for one in review(van).findings:
            if not one.sheet:
                continue
            sheet = calc.find(one.sheet)
            assert sheet.problems(one.texts) == ()
            if not one.rule.startswith("van."):
                assert one.rule in calc.work(one.sheet, one.texts).rules


def test_a_plan_that_leaves_the_used_share_open_takes_that_of_its_chemistry():
    van = SOUND.van.changed({"bank.usable": ""})
    used = worked_patterns(van)[0].quick.inputs["usable"]
    assert used.text == "80\u00a0%" and not used.given
    unseen = worked_patterns(SOUND.van.changed({"bank.usable": "not seen"}))[0]
    assert unseen.quick is None and "share" in unseen.sentence


def test_each_pattern_is_worked_by_the_week():
    winter, summer = worked_patterns(SOUND.van)
    assert winter.verdict == "fine" and winter.quick.worksheet.id == "week-ahead"
    assert 0 < winter.lowest < 1 and winter.empty_after is None
    assert winter.recovery > 0
    assert len(summer.months) == 12


def test_a_pattern_that_fails_is_told_with_what_would_carry_it():
    van = SOUND.van.changed({"patterns[1].nights": "9", "patterns[1].drive_hours": "0 h"})
    found = review(van)
    (empties,) = (one for one in found.findings if one.rule == "week.empties")
    assert empties.level is Level.STOP and empties.part_name == "winter weekend"
    assert mends_of(van, found, empties)
    worked = worked_patterns(van)[0]
    assert worked.empty_after and worked.ways_out


@pytest.mark.parametrize(("peak", "told"), [("148 A", True), ("150 A", False)])
def test_the_peak_of_the_management_system_carries_a_surge(peak, told):
    """1500 W with 0.88 left, from 11.5 V, are 148.2 A; the bank gives 100 A for hours."""
    texts = {"inverter.rating": "800 W", "inverter.surge": "1500 W"}
    limits = {"management.discharge_limit": "100 A", "management.peak": peak}
    found = demo("marram").changed({**texts, **limits}).review().findings
    assert ("inverter.surge-beyond-bank" in {one.rule for one in found}) is told


def test_what_is_stated_and_does_not_fit_is_not_asked_for_again():
    """Two chemistries: both are stated, so nobody is to add one."""
    second = {"name": "old bank", "chemistry": "AGM", "capacity": "100 Ah"}
    found = demo("marram").added("batteries", second).review().findings
    said = [one.sentence for one in found if one.part_name == "old bank" and one.not_proven]
    assert said and not any("Add to old bank: chemistry" in one for one in said)


CHILLY = {"bank.coldest": "6 °C", "patterns[1].temperature": "6 °C"}


@pytest.mark.parametrize(
    ("changes", "level"),
    [
        # 200 Ah; 30 A from the alternator are 0.15 of it in an hour
        ({}, Level.NOTE),
        ({"alternator.charger_limit": "40 A"}, Level.NOTE),
        ({"alternator.charger_limit": "41 A"}, Level.CAUTION),
        ({"bank.coldest": "4.9 °C", "patterns[1].temperature": "4.9 °C"}, Level.CAUTION),
        ({"management.cold_cut_off": "not proven"}, Level.CAUTION),
        ({"batteries[1].capacity": ""}, None),
    ],
)
def test_a_gentle_charge_above_five_degrees_with_a_proven_cut_off_is_but_a_note(changes, level):
    found = review(SOUND.van.changed({**CHILLY, **changes})).findings
    levels = {one.level for one in found if one.rule == "charge.near-frost"}
    assert levels == ({level} if level else set())


def test_a_measured_joint_is_told_of_once_and_mended():
    """120 mV at 50 A is more than a joint may lose, at full current too; remade it loses 5 mV."""
    texts = {"joints[1].drop": "120 mV", "joints[1].current": "50 A"}
    found = review(SOUND.van.changed({**texts, "joints[1].full_current": "80 A"}))
    (one,) = (one for one in found.findings if one.rule.startswith("contact."))
    assert one.level is Level.STOP
    (mend, *_) = mends_of(found.van, found, one)
    assert mended(found.van, mend).at("joints[1].drop").text == "5 mV"


def test_what_was_not_seen_of_many_runs_is_told_once():
    van = SOUND.van.changed({"van.kind": "inspection"})
    van = van.changed({f"circuits[{n}].return_by": "not seen" for n in (1, 2, 3)})
    stops = [one for one in review(van).findings if one.rule == NOT_PROVEN]
    (runs,) = (one for one in stops if "circuits[1].return_by" in one.places)
    assert {f"circuits[{n}].return_by" for n in (1, 2, 3)} <= set(runs.places)
    assert "return path" in runs.sentence and "runs" in runs.sentence
    assert not [o for o in stops if o is not runs and "circuits[2].return_by" in o.places]


@pytest.mark.parametrize(
    ("gone", "hours", "by"),
    [((), "0 h", "shore"), (("shore",), "1 h", "driving"), (("shore",), "0 h", "sun")],
)
def test_a_trip_is_recovered_from_by_what_the_van_has(gone, hours, by):
    van = SOUND.van.changed({"patterns[1].recovery": "", "patterns[1].drive_hours": hours})
    for kind in gone:
        van = van.stating(kind, State.NONE)
    quick = worked_patterns(van)[0].quick
    assert quick.inputs["recovery"].value == by


def test_a_pattern_has_twelve_skies_of_its_own():
    own = {"patterns[2].climate": "my own twelve shares"}
    dull = {**own, "patterns[2].own_skies": "January:10 %;February:90 %"}
    first, second, *_ = worked_patterns(SOUND.van.changed(dull))[1].months
    bright = {**own, "patterns[2].own_skies": "January:90 %;February:90 %"}
    other, same, *_ = worked_patterns(SOUND.van.changed(bright))[1].months
    assert first.sun < other.sun / 2 and second.sun == same.sun

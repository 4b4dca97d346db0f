"""Judgements on a bank: each fires on one side of its threshold and not on the other."""

import pytest

from calc.energy import bank_load, battery, loads
from calc.energy.battery import Chemistry
from calc.energy.rules import bank as judged
from calc.judge import Rule, fired


def bank(chemistry, temperature, state=1.0):
    return battery.bank(
        chemistry=Chemistry(chemistry), capacity=360000.0, temperature=temperature, state=state
    )


# A cell's data sheet: charging from 0 °C; packs to 45 °C, lead-acid from -20 to 50 °C, and 10 to
# 40 °C for an easy charge, by common practice. Acid of a flat bank, gravity 1.120, freezes between
# +5 °F at 1.150 and +19 °F at 1.100: at 13.4 °F on the straight line, -10.3 °C; 3 K clear of it.
ON_A_BANK = {
    "charge.in-frost": (bank("LFP", -0.1), bank("LFP", 0.0)),
    "charge.outside-temperature": (bank("LFP", 45.1), bank("LFP", 45.0)),
    "bank.acid-may-freeze": (bank("AGM", -7.5, 0.0), bank("AGM", -7.2, 0.0)),
    "charge.near-frost": (bank("LFP", 9.9), bank("LFP", 10.0)),
    "charge.off-room": (bank("gel", 9.9), bank("gel", 10.0)),
    "bank.in-frost": (bank("LFP", -0.1), bank("LFP", 0.0)),
    "bank.too-hot": (bank("flooded", 50.1), bank("flooded", 50.0)),
    "bank.near-frost": (bank("LFP", 9.9), bank("LFP", 10.0)),
    "bank.never-charge-in-frost": (bank("LFP", 0.0), bank("LFP", -0.1)),
    "bank.freezing-point": (bank("flooded", -0.1), bank("flooded", 0.0)),
    "bank.no-factor-for-cold-lfp": (bank("LFP", 24.9), bank("LFP", 25.0)),
    "bank.cold-beyond-table": (bank("AGM", -3.9), bank("AGM", -3.8)),  # 25 °F is -3.89 °C
    "bank.cold-factor-from-memory": (bank("AGM", 4.4), bank("AGM", 4.5)),  # the row of 40 °F
}
RULES = {rule.id: rule for rule in vars(judged).values() if isinstance(rule, Rule)}


def _ids(rules, subject):
    return {rule.id for rule in fired(rules, subject)}


@pytest.mark.parametrize("rule", ON_A_BANK)
def test_a_rule_on_a_bank_fires_on_one_side_of_its_threshold_only(rule):
    there, not_there = ON_A_BANK[rule]
    assert RULES[rule].when(there) and not RULES[rule].when(not_there)


@pytest.mark.parametrize(
    ("rule", "other"),
    [
        ("charge.outside-temperature", bank("AGM", -20.1)),
        ("charge.outside-temperature", bank("AGM", 50.1)),
        ("charge.off-room", bank("AGM", 40.1)),
        ("bank.too-hot", bank("LFP", 45.1)),
        ("bank.acid-may-freeze", bank("flooded", -70.0)),  # 1.265 freezes at -75 °F, -59.4 °C
    ],
)
def test_the_other_end_of_a_range_counts_too(rule, other):
    assert RULES[rule].when(other)


@pytest.mark.parametrize(
    ("rule", "other"),
    [
        ("charge.in-frost", bank("AGM", -5.0)),
        ("charge.outside-temperature", bank("LFP", -5.0)),  # said as frost
        ("charge.near-frost", bank("LFP", -5.0)),
        ("charge.near-frost", bank("gel", 5.0)),
        ("charge.off-room", bank("LFP", 5.0)),
        ("bank.acid-may-freeze", bank("LFP", -30.0, 0.0)),
        ("bank.never-charge-in-frost", bank("AGM", 20.0)),
        ("bank.freezing-point", bank("LFP", -5.0)),
        ("bank.cold-factor-from-memory", bank("LFP", 0.0)),
        ("bank.cold-beyond-table", bank("LFP", -10.0)),
    ],
)
def test_a_rule_is_silent_for_what_it_does_not_speak_of(rule, other):
    assert not RULES[rule].when(other)


@pytest.mark.parametrize("chemistry", Chemistry)
@pytest.mark.parametrize("state", [0.0, 0.5, 1.0])
@pytest.mark.parametrize("celsius", [-40.0, -21.0, -8.0, -1.0, 0.0, 5.0, 10.0, 30.0, 44.0, 60.0])
def test_no_bank_is_charged_unremarked_where_it_must_not_be(chemistry, state, celsius):
    """By the printed ranges and the acid alone: what the sheets call stop, and nothing else."""
    found = bank(chemistry, celsius, state)
    low, high = (0.0, 45.0) if chemistry == "LFP" else (-20.0, 50.0)
    frozen = chemistry != "LFP" and celsius <= battery.freezing_point(state) + 3
    stopped = {rule.id for rule in fired(judged.CHARGED, found) if rule.level == "stop"}
    assert bool(stopped) is (not low <= celsius <= high or frozen)
    kept = {rule.id for rule in fired(judged.KEPT, found)}
    assert ("bank.in-frost" in kept) is (chemistry == "LFP" and celsius < 0)
    assert ("bank.acid-may-freeze" in kept) is frozen


@pytest.mark.parametrize("rule", [rule for rule in ON_A_BANK if RULES[rule].mend])
def test_a_bank_brought_to_the_temperature_of_the_remedy_is_not_spoken_of(rule):
    before = ON_A_BANK[rule][0]
    change = RULES[rule].mend(before)
    after = bank(before.chemistry, change.values["temperature"], before.state)
    assert not RULES[rule].when(after)
    graver = {"charge.in-frost", "charge.outside-temperature", "bank.acid-may-freeze"}
    rules = (*judged.CHARGED, *judged.KEPT)
    assert not (_ids(rules, after) - _ids(rules, before)) & graver


@pytest.mark.parametrize(
    ("chemistry", "share", "rules"),
    [
        ("AGM", 0.5, set()),
        ("AGM", 0.51, {"bank.deeper-than-half"}),
        ("gel", 0.8, {"bank.deeper-than-half"}),
        ("gel", 0.81, {"bank.deeper-than-half", "bank.below-a-fifth"}),
        ("LFP", 0.9, set()),
        ("LFP", 0.91, {"bank.nothing-kept-back"}),
    ],
)
def test_the_share_that_is_used_is_judged_by_chemistry(chemistry, share, rules):
    """Half of lead-acid, 80 to 90 % of LFP, never below a fifth: common practice."""
    known = (judged.DEEPER_THAN_HALF, judged.BELOW_A_FIFTH, judged.NOTHING_KEPT_BACK)
    used = battery.usable(bank(chemistry, 25.0), share)
    assert _ids(known, used) == rules
    for rule in known:
        if rule.id in rules:
            assert not rule.when(battery.usable(used.bank, rule.mend(used).values["usable"]))


@pytest.mark.parametrize(
    ("chemistry", "amps", "hard"),
    [
        ("LFP", 50, False),
        ("LFP", 51, True),
        ("AGM", 25, False),
        ("AGM", 26, True),
        ("gel", 20, False),
        ("flooded", 21, True),
    ],
)
def test_a_load_is_hard_on_a_bank_of_100_amp_hours_by_chemistry(chemistry, amps, hard):
    """Half, a quarter and a fifth of the ampere-hours in amperes: common practice."""
    draw = bank_load.draw(chemistry=Chemistry(chemistry), capacity=360000.0, current=float(amps))
    assert judged.HEAVY_LOAD.when(draw) is hard
    if hard:
        larger = judged.HEAVY_LOAD.mend(draw).values["capacity"]
        again = bank_load.draw(chemistry=draw.chemistry, capacity=larger, current=draw.current)
        assert not judged.HEAVY_LOAD.when(again)


def test_a_bank_gives_no_more_than_its_maker_allows():
    for amps, more in ((100.0, False), (100.1, True)):
        asked = bank_load.Allowed(current=amps, most=100.0)
        assert judged.BEYOND_ALLOWED.when(asked) is more


@pytest.mark.parametrize("celsius", [-0.1, -2.0, -20.0])
def test_a_proven_cut_off_makes_a_charge_in_frost_a_caution(celsius):
    """Without it the charge goes in and ruins the cells; with it nothing comes back."""
    for cut_off, rule in (
        ("not-proven", "charge.in-frost"),
        ("proven", "charge.held-by-cold-cut-off"),
    ):
        found = battery.warmth(
            chemistry=Chemistry.LFP, temperature=celsius, cut_off=battery.ColdCutOff(cut_off)
        )
        charged = (judged.CHARGE_IN_FROST, judged.CHARGE_HELD_BACK)
        assert _ids(charged, found) == {rule}
        assert set(RULES[rule].mend(found).values) == {"temperature"}
    warm = battery.warmth(
        chemistry=Chemistry.LFP, temperature=0.0, cut_off=battery.ColdCutOff.PROVEN
    )
    assert not judged.CHARGE_HELD_BACK.when(warm)


def test_one_battery_gives_100_amps_and_no_more():
    for amps, more in ((100.0, False), (100.1, True)):
        load = loads.of_current(
            current=amps, voltage=12.8, route=loads.Route.DIRECT, efficiency=1.0
        )
        assert judged.BEYOND_ONE_BATTERY.when(load) is more

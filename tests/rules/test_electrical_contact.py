"""Rules on a joint that was measured: each on either side of where it begins to speak."""

import pytest

import calc
from calc.electrical.contact import measured_joint, softening_drop
from calc.electrical.rules import contact as rules
from calc.electrical.sound_parts import sound_fuse, sound_joint
from calc.judge import Rule, always, mends
from tests.contract.samples import until
from tests.rules.judging import mended

BOLTED, PLUG, SWITCH, NAMELESS = map(sound_joint, ("bolted", "plug-in", "switch", "unknown"))
FUSE, BREAKER = sound_fuse("fuse", 30.0), sound_fuse("breaker", 50.0)  # up to 4.33 and 3 mΩ


def joint(**changes):
    """Return a bolted joint of 100 µΩ, as good as its like: 10 mV and 1 W at its full 100 A."""
    usual = {
        "sound": BOLTED,
        "drop": 0.010, "current": 100.0, "full_current": 100.0, "good_drop": 0.010, "rise": None,
        "rise_over": "air", "voltage": 12.0, "temperature": 60.0,
    }  # fmt: skip
    return measured_joint(**usual | changes)


def case(rule, fires, silent, **both):
    """Return a case in which `rule` fires on the first, and not on the second of two neighbours."""
    return pytest.param(rule, both | fires, both | silent, id=f"{rule.id} {fires}")


def drop(volts, **others):
    return {"drop": volts, "good_drop": volts, **others}


def full(amperes):
    return {"full_current": amperes}


def rise(kelvins):
    return {"rise": kelvins}


ALONE, PAIR = {"good_drop": None}, {"good_drop": 0.010}
OVER_AIR, OVER_LIKE = {"rise_over": "air"}, {"rise_over": "like-joint"}
FROM_105 = softening_drop(105.0)  # 83.5 mV: its own test has it by hand
EITHER_SIDE = (
    # 12 V over 50 mΩ are 240 A.
    case(rules.NOT_REACHED, full(240.0), full(239.0), **drop(5.0)),
    case(rules.LOSES_ALREADY, drop(0.1001), drop(0.1)),  # SAE, as quoted
    case(rules.LOSES_AT_FULL, full(1001.0), full(1000.0)),  # 100.1 mV
    case(rules.SOFTENS, full(1e4 * FROM_105 + 1), full(1e4 * FROM_105 - 1), temperature=105.0),
    case(rules.SOFTENS, {"temperature": 105.0}, {"temperature": 60.0}, **full(900.0)),
    case(rules.GLOWS, full(592.0), full(591.0)),  # 35.05 and 34.93 W
    case(rules.GLOWS, drop(0.0875, current=400.0), drop(0.0874, current=400.0), **full(1.0)),
    case(rules.TOO_HOT, {"temperature": 105.1}, {"temperature": 105.0}),
    case(rules.HOT_METAL, {"temperature": 90.1}, {"temperature": 90.0}),
    # NETA: over like parts 1 to 3 K, 4 to 15 K and above; over air 1 to 10 K up to above 40 K.
    case(rules.WORST_CLASS, rise(15.1), rise(15.0), **OVER_LIKE),
    case(rules.WORST_CLASS, rise(40.1), rise(40.0)),
    case(rules.WORST_CLASS, OVER_LIKE, OVER_AIR, rise=16.0),
    case(rules.WORST_CLASS, full(200.0), full(100.0), rise=11.0),  # 44 K by the square
    case(rules.WARMER_THAN_SHOULD_BE, rise(1.0), rise(0.99)),
    case(rules.WARMER_THAN_SHOULD_BE, rise(1.0), rise(None)),
    # Twice the 100 µΩ of a sound lug; twice the 300 µΩ of a switch; twice 4.333 mΩ of a fuse.
    case(rules.BEYOND_ANY_LIKE, drop(0.0201), drop(0.0199)),
    # 10 W at 316.3 A and 100 µΩ would be sound; at 201 µΩ they are not.
    case(
        rules.SCORCHES_SOON, drop(0.0501, current=200.0), drop(0.0499, current=200.0), **full(200.0)
    ),
    case(
        rules.SCORCHES_SOON,
        {"sound": BOLTED},
        {"sound": FUSE},
        **drop(0.0501, current=200.0),
        **full(200.0),
    ),
    # 10 W to the last digit are no more than 10 W.
    case(rules.SCORCHES_SOON, drop(0.1001), drop(0.1)),
    # 5 µΩ is the least published; a fuse has no such least.
    case(rules.LESS_THAN_ANY, drop(0.00049), drop(0.0005)),
    case(rules.LESS_THAN_ANY, {"sound": BOLTED}, {"sound": FUSE}, **drop(0.00049)),
    case(rules.BEYOND_ANY_LIKE, drop(0.0601), drop(0.0599), sound=SWITCH),
    case(rules.BEYOND_ANY_LIKE, drop(0.0868, current=10.0), drop(0.0866, current=10.0), sound=FUSE),
    case(rules.BEYOND_ANY_LIKE, {"sound": BOLTED}, {"sound": NAMELESS}, drop=0.0201),
    case(rules.PART_NOT_NAMED, {"sound": NAMELESS}, {"sound": BOLTED}, **drop(0.0201)),
    case(rules.PART_NOT_NAMED, drop(0.0201), drop(0.0199), sound=NAMELESS),
    case(rules.PART_NOT_NAMED, ALONE, PAIR, drop=0.0101, sound=NAMELESS),
    case(rules.BEYOND_RANGE, {"drop": 0.0101}, {"drop": 0.0100}, **ALONE),
    case(rules.BEYOND_RANGE, ALONE, PAIR, drop=0.0101),
    # The like one clears it if it is itself below 200 µΩ.
    case(rules.BEYOND_RANGE, {"good_drop": 0.0201}, {"good_drop": 0.0199}, drop=0.0150),
    case(rules.BEYOND_RANGE, {"sound": BOLTED}, {"sound": PLUG}, drop=0.0150, **ALONE),
    case(rules.OVER_RATING, full(31.0), full(30.0), sound=FUSE),
    case(rules.OVER_RATING, full(51.0), full(50.0), sound=BREAKER),
    case(rules.OVER_RATING, {"sound": BREAKER}, {"sound": BOLTED}),
    case(rules.WHERE_THE_PROBES_GO, {"sound": BOLTED}, {"sound": FUSE}),
    case(rules.BUSBAR_RANGE, {"sound": NAMELESS}, {"sound": SWITCH}),
    case(rules.POWER_CONTACT_RANGE, {"sound": SWITCH}, {"sound": BOLTED}),
    case(rules.MOVE_THE_PROBES, {"sound": BREAKER}, {"sound": PLUG}),
    case(rules.MOVE_THE_PROBES, {"sound": SWITCH}, {"sound": BOLTED}),
    case(rules.OXIDE_GLOWS, {"sound": PLUG}, {"sound": FUSE}),
    case(rules.SPOT_WOULD_MELT, {"sound": BOLTED}, {"sound": SWITCH}, **drop(0.42)),
    case(rules.SOFTENS, {"sound": BOLTED}, {"sound": FUSE}, **full(1100.0)),
    case(rules.GLOWS, {"sound": SWITCH}, {"sound": BREAKER}, **full(592.0)),
    case(rules.WARM, {"sound": SWITCH}, {"sound": FUSE}, **full(224.0)),
    case(rules.NEAR_LIMIT, {"sound": BOLTED}, {"sound": SWITCH}, **full(501.0)),
    case(rules.WARM_FUSE, {"sound": FUSE}, {"sound": SWITCH}),
    # 300 mV are the limit of a switch.
    case(rules.LOSES_ALREADY, {"sound": BOLTED}, {"sound": SWITCH}, drop=0.2),
    case(rules.LOSES_ALREADY, {"sound": SWITCH, "drop": 0.301}, {"sound": SWITCH, "drop": 0.3}),
    case(rules.BEYOND_LIKE, {"good_drop": 0.00666}, {"good_drop": 0.00667}),
    case(rules.BEYOND_LIKE, {"good_drop": 0.001}, ALONE),
    case(rules.LIKE_IS_WORSE, {"good_drop": 0.01501}, {"good_drop": 0.01499}),
    case(rules.LIKE_IS_WORSE, {"good_drop": 0.020}, ALONE),
    # 1 mV at 9.9 A would be 101 µΩ.
    case(
        rules.SMALL_READING, drop(0.00099, current=9.9), drop(0.00099, current=10.0), **full(10.0)
    ),
    case(rules.SMALL_READING, full(501.0), full(500.0)),  # a fifth
    case(rules.LIGHT_LOAD, full(251.0), full(250.0), rise=0.1),  # 40 %
    case(rules.LIGHT_LOAD, rise(0.1), rise(None), **full(251.0)),
    case(rules.WARM, full(224.0), full(223.0)),  # 5.02 and 4.97 W
    case(rules.WARM, OVER_LIKE, OVER_AIR, rise=0.01, **full(224.0)),
    case(rules.WARM, rise(0.5), rise(0.1), **full(230.0)),  # 2.6 K is of a class, 0.5 K of none
    case(rules.WARM, full(251.0), full(250.0), rise=0.01),  # too light a load to clear it
    case(rules.NEAR_LIMIT, full(501.0), full(500.0)),  # 50 mV
    case(rules.NEAR_LIMIT, full(501.0), full(1001.0)),  # none is left: it loses too much
    case(rules.LEAVE_OFF, full(592.0), full(591.0)),
    case(rules.LEAVE_OFF, {"temperature": 105.1}, {"temperature": 105.0}),
    case(rules.GLOWED_IN_TESTS, full(224.0), full(223.0)),
    case(rules.SPOT_WOULD_MELT, drop(0.42), drop(0.40), temperature=20.0),  # 1083 °C and 1040 °C
    case(rules.SPOT_WOULD_MELT, full(239.0), full(240.0), **drop(5.0)),
    case(rules.WARM_AS_ITS_LIKE, full(224.0), full(223.0), rise=0.1, **OVER_LIKE),
    case(rules.WARM_AS_ITS_LIKE, OVER_LIKE, OVER_AIR, rise=0.1, **full(224.0)),
    case(rules.NO_LIKE, ALONE, PAIR),
    case(rules.CABLE_IS_WARM_TOO, OVER_AIR, OVER_LIKE, rise=0.1),
    case(rules.CABLE_IS_WARM_TOO, rise(0.1), rise(None)),
    case(rules.SCALES_DISAGREE, rise(0.1), rise(None)),
    case(rules.RISE_AT_FULL, full(250.0), full(251.0), rise=0.1),
    case(rules.RISE_AT_FULL, rise(0.1), rise(None)),
)


@pytest.mark.parametrize(("rule", "fires", "silent"), EITHER_SIDE)
def test_a_rule_speaks_on_its_side_of_the_line_only(rule, fires, silent):
    assert rule.when(joint(**fires))
    assert not rule.when(joint(**silent))


def test_every_rule_that_may_be_silent_has_its_case():
    every = {rule for rule in vars(rules).values() if isinstance(rule, Rule)}
    tested = {one.values[0].id for one in EITHER_SIDE}
    assert {rule.id for rule in every if rule.when is not always} == tested


def test_nothing_is_said_of_a_good_joint():
    assert [rule.id for rule in rules.JUDGEMENTS if rule.when(joint())] == []


@pytest.mark.parametrize(
    ("rule", "texts", "amperes"),
    [
        # 6 mΩ: 50 mV, which leave room for twice the resistance, at 8.3 A.
        (rules.NOT_REACHED, {"drop": "60 mV", "current": "10 A", "full_current": "2000 A"}, 8),
        # 100 µΩ: 5 W at 223.6 A.
        (rules.LOSES_AT_FULL, {"drop": "10 mV", "current": "100 A", "full_current": "1100 A"}, 223),
        (rules.GLOWS, {"drop": "10 mV", "current": "100 A", "full_current": "600 A"}, 223),
        (rules.WARM, {"drop": "10 mV", "current": "100 A", "full_current": "300 A"}, 223),
        (rules.SOFTENS, {"drop": "10 mV", "current": "100 A", "full_current": "1200 A"}, 223),
        # A breaker of 50 A at its own rating.
        (rules.OVER_RATING, {"probed": "breaker", "drop": "60 mV", "full_current": "80 A"}, 50),
        # 10 mΩ: 50 mV at 5 A.
        (rules.NEAR_LIMIT, {"drop": "60 mV", "current": "6 A", "full_current": "6 A"}, 5),
    ],
    ids=lambda value: getattr(value, "id", None),
)
def test_a_joint_may_carry_the_current_that_a_rule_offers(rule, texts, amperes):
    after = calc.work("joint-heat", mended("joint-heat", rule.id, texts))
    assert after.values["full_current"] == amperes


def test_no_current_is_offered_for_a_joint_that_is_bad_as_it_was_measured():
    """90 mV at 400 A are 36 W already; what is asked of it later changes nothing."""
    assert rules.GLOWS.mend(joint(**drop(0.090, current=400.0, full_current=400.0))) is None


def test_every_remedy_offered_on_drawn_joints_mends():
    offered, wanted = set(), {rule.id for rule in rules.JUDGEMENTS if rule.mend}
    for _, answer in until("joint-heat", lambda: offered == wanted):
        found = answer.result
        for rule in rules.JUDGEMENTS:
            change = rule.mend(found) if rule.mend and rule.when(found) else None
            if change:
                offered.add(rule.id)
                read, warmth = found.reading, found.warmth
                after = measured_joint(
                    sound=found.sound, drop=read.drop, current=read.current,
                    good_drop=read.good_drop,
                    voltage=read.voltage, temperature=read.temperature,
                    rise=warmth and warmth.rise, rise_over=warmth.rise_over if warmth else "air",
                    **change.values,
                )  # fmt: skip
                assert mends(rule, rules.JUDGEMENTS, found, after), rule.id
    assert offered == wanted

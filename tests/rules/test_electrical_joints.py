"""Rules on a bolted joint: each on either side of where it begins to speak."""

import pytest

import calc
from calc.electrical.joints import bolted_joint
from calc.electrical.rules import joints as rules
from calc.electrical.threads import studs
from calc.judge import Level, Rule, always, mends
from calc.worksheet.rows import joined
from tests.contract.samples import answers, until
from tests.rules.judging import mended

BATTERY, FUSE, CHASSIS = "battery-terminal", "fuse-holder-or-breaker", "chassis-ground"


def joint(**changes):
    usual = {
        "stud": "M8", "grade": "8.8", "condition": "dry", "maker_torque": 12.0,
        "kind": "busbar-or-stud", "lugs": 1.0, "opened": "seldom",
    }  # fmt: skip
    return bolted_joint(**usual | changes)


def case(rule, fires, silent, **both):
    """Return a case in which `rule` fires on the first, and not on the second of two neighbours."""
    return pytest.param(rule, both | fires, both | silent, id=f"{rule.id} {fires}")


def torque(newton_metres):
    return {"maker_torque": newton_metres}


# Published for M8: 6 to 17 N·m, in five tables; for 5/16 in: 9 N·m alone. Ceilings of a dry M8,
# 0.2 × 8 mm × 75 %, by hand: × 21 200 N in class 8.8 25.44 N·m, × 36.6 mm² × 240 MPa 10.54 N·m.
EMPTY = {"maker_torque": ""}
NONE, DRY, OILED = torque(None), {"condition": "dry"}, {"condition": "lubricated"}
UNKNOWN, BRASS, COPPER, STEEL = ({"grade": one} for one in ("unknown", "brass", "copper", "8.8"))
M5, M6, M8, M12 = ({"stud": one} for one in ("M5", "M6", "M8", "M12"))
QUARTER, FIVE_SIXTEENTHS = {"stud": "1/4 in"}, {"stud": "5/16 in"}
EITHER_SIDE = (
    case(rules.TOO_MANY_LUGS, {"lugs": 5.0}, {"lugs": 4.0}),
    case(rules.TOO_TIGHT, torque(25.45), torque(25.44)),
    case(rules.TOO_TIGHT, STEEL, UNKNOWN, maker_torque=25.45),
    case(rules.TOO_TIGHT_IF_WEAK, torque(10.55), torque(10.54), grade="unknown"),
    case(rules.TOO_TIGHT_IF_WEAK, UNKNOWN, BRASS, maker_torque=10.55),
    # class 10.9 on a dry M4: 0.2 × 4 mm × 75 % × 7290 N are 4.37 N·m
    case(rules.OVER_ANY, torque(4.38), torque(4.37), stud="M4", **UNKNOWN),
    case(rules.OVER_ANY, UNKNOWN, STEEL, stud="M4", maker_torque=10.0),
    # 1.2 N·m is published for M4; copper can take 0.84 N·m, brass 1.26 N·m.
    case(rules.NO_TORQUE, COPPER, BRASS, maker_torque=None, stud="M4"),
    # 54.3 N·m is published for 1/2 in, and brass or mild steel can take 41.8 N·m.
    case(rules.PUBLISHED_TOO_TIGHT_IF_WEAK, UNKNOWN, BRASS, maker_torque=None, stud="1/2 in"),
    case(rules.PUBLISHED_TOO_TIGHT_IF_WEAK, {"stud": "1/2 in"}, M8, **NONE, **UNKNOWN),
    case(rules.FAR_BELOW_PUBLISHED, torque(2.99), torque(3.0)),
    case(rules.BELOW_PUBLISHED, torque(5.99), torque(6.0)),
    case(rules.BELOW_PUBLISHED, torque(4.49), torque(4.5), **FIVE_SIXTEENTHS),
    case(rules.ABOVE_PUBLISHED, torque(17.01), torque(17.0), kind=FUSE),
    case(rules.ABOVE_PUBLISHED, torque(18.01), torque(18.0), kind=BATTERY, **FIVE_SIXTEENTHS),
    # three quarters of 17
    case(rules.ABOVE_PUBLISHED, torque(12.76), torque(12.75), kind=FUSE, **OILED),
    # class 8.8 is known to take 20 N·m, and there is no plastic or lead in a chassis ground
    case(rules.ABOVE_PUBLISHED, UNKNOWN, STEEL, kind=CHASSIS, maker_torque=20.0),
    case(rules.LUBRICATED, OILED, DRY),
    case(rules.LUBRICATED, torque(12.0), NONE, **OILED),
    # 21 200 N × 0.10 × 8 mm is 16.96 N·m.
    case(rules.MAY_STRETCH, torque(16.97), torque(16.95), **OILED),
    case(rules.NONE_FOR_BATTERY, NONE, torque(12.0), kind=BATTERY),
    case(rules.NONE_FOR_BATTERY, {"kind": BATTERY}, {"kind": FUSE}, **NONE),
    case(rules.ONE_SOURCE_OILED, FIVE_SIXTEENTHS, M8, **NONE, **OILED),
    case(rules.ONE_SOURCE_OILED, OILED, DRY, **NONE, **FIVE_SIXTEENTHS),
    case(rules.ONE_SOURCE, FIVE_SIXTEENTHS, M8, **NONE),
    case(rules.BORROWED_OILED, OILED, DRY, **NONE),
    case(rules.BORROWED, NONE, torque(12.0)),
    case(rules.LUG_ORDER, {"lugs": 2.0}, {"lugs": 1.0}),
    case(rules.UNKNOWN_MATERIAL, UNKNOWN, COPPER),
    case(rules.BATTERY_TERMINAL, {"kind": BATTERY}, {"kind": FUSE}),
    case(rules.PLASTIC_BODY, {"kind": FUSE}, {"kind": CHASSIS}),
    case(rules.CHASSIS_GROUND, {"kind": CHASSIS}, {"kind": BATTERY}),
    case(rules.DRY_STAINLESS, DRY, OILED, grade="A2-70"),
    case(rules.DRY_STAINLESS, {"grade": "A4-80"}, STEEL),
    case(rules.TORQUE_FROM_MEMORY, NONE, torque(1.5), stud="No. 10"),
    case(rules.TORQUE_FROM_MEMORY, {"stud": "No. 10"}, QUARTER, **NONE),
    case(rules.INCH_GRADES, {"grade": "4.8"}, BRASS, **QUARTER),
    case(rules.INCH_GRADES, QUARTER, M6),
    case(rules.OILED_PUBLISHED, OILED, DRY),
    case(rules.SWITCHGEAR_TORQUE, M12, M5),
    case(rules.BRASS, BRASS, COPPER),
)


@pytest.mark.parametrize(("rule", "fires", "silent"), EITHER_SIDE)
def test_a_rule_speaks_on_its_side_of_the_line_only(rule, fires, silent):
    assert rule.when(joint(**fires))
    assert not rule.when(joint(**silent))


def test_every_rule_that_may_be_silent_has_its_case():
    """A rule without a test of its own fires on every joint, and has no line."""
    every = {rule for rule in vars(rules).values() if isinstance(rule, Rule)}
    assert {rule.id for rule in every if rule.when is not always} == {
        one.values[0].id for one in EITHER_SIDE
    }


@pytest.mark.parametrize(
    ("rule", "texts", "to"),
    [
        (rules.TOO_MANY_LUGS, {"lugs": "7"}, {"lugs": 4.0}),
        # 12 N·m on M8: 240 MPa can take 10.54 N·m, and 11 350 N in class 4.8 13.6 N·m.
        (rules.TOO_TIGHT, {"grade": "brass", "maker_torque": "12 N.m"}, {"grade": "4.8"}),
        (rules.TOO_TIGHT_IF_WEAK, {"maker_torque": "12 N.m"}, {"grade": "4.8"}),
        (rules.NO_TORQUE, {"stud": "M4", "grade": "copper", **EMPTY}, {"grade": "brass"}),
        (rules.PUBLISHED_TOO_TIGHT_IF_WEAK, {"stud": "1/2 in", **EMPTY}, {"grade": "A2-70"}),
        (rules.LUBRICATED, {"maker_torque": "12 N.m", **STEEL, **OILED}, DRY),
        (rules.MAY_STRETCH, {"maker_torque": "17 N.m", **STEEL, **OILED}, DRY),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_what_a_rule_offers_mends_it(rule, texts, to):
    after = mended("joint-torque", rule.id, texts)
    assert calc.work("joint-torque", after).values | to == calc.work("joint-torque", after).values


def test_no_remedy_is_offered_that_brings_another_caution():
    """5 N·m is above the lowest published on oil, 4.5 N·m, but below the 6 N·m of a dry thread."""
    assert rules.LUBRICATED.mend(joint(maker_torque=5.0, **OILED)) is None
    assert rules.TOO_TIGHT.mend(joint(maker_torque=300.0)) is None  # no stud is that strong


def test_every_remedy_offered_on_drawn_joints_mends():
    offered, wanted = set(), {rule.id for rule in rules.JUDGEMENTS if rule.mend}
    for _, answer in until("joint-torque", lambda: offered == wanted):
        found = answer.result
        for rule in rules.JUDGEMENTS:
            change = rule.mend(found) if rule.mend and rule.when(found) else None
            if change:
                offered.add(rule.id)
                asked = {
                    "stud": found.thread.stud.name, "grade": found.thread.grade,
                    "condition": found.thread.condition, "maker_torque": found.maker_torque,
                    "kind": found.kind, "lugs": found.lugs, "opened": found.opened,
                }  # fmt: skip
                after = bolted_joint(**asked | change.values)
                assert mends(rule, rules.JUDGEMENTS, found, after), (rule.id, asked)
    assert offered == wanted


def row(name, texts):
    columns = [column.id for column in calc.find("joint-sheet").field("joints").columns]
    texts = {"maker_torque": "10 N.m"} | texts  # the usual one, which a list has not
    return [name, *(texts.get(column, "") for column in columns[1:])]


def test_a_joint_has_the_same_verdict_alone_and_in_a_list():
    """Both by the same rules; the worst row decides."""
    drawn = [(texts, answer.verdict) for texts, answer in answers("joint-torque")]
    grave = {"fine": 0, "caution": 1, "stop": 2}
    for place, (texts, verdict) in enumerate(drawn):
        listed = calc.work("joint-sheet", {"joints": joined([row("this one", texts)])})
        assert listed.verdict == verdict, texts
        others = drawn[place - 3 : place]
        rows = [row(f"joint {n}", one) for n, (one, _) in enumerate((*others, (texts, "")))]
        worst = max((verdict, *(one for _, one in others)), key=grave.__getitem__)
        assert calc.work("joint-sheet", {"joints": joined(rows)}).verdict == worst


def test_a_list_names_the_joints_in_which_a_rule_fires():
    joints = joined(
        [
            ["{torque}", "M8", "30 N.m", "8.8"],
            ["sound", "M8", "12 N.m", "8.8"],
            ["crowded", "M8", "12 N.m", "8.8", "dry", "6"],
            ["weak", "M4", "", "copper"],
        ]
    )
    answer = calc.work("joint-sheet", {"joints": joints})
    assert answer.rule == rules.TOO_MANY_LUGS.id
    assert "stud: crowded. " in answer.sentence
    said = {one.rule: one.text for one in answer.cautions}
    assert said[rules.TOO_TIGHT.id].endswith(": {torque}.")  # a name is no place for a value
    assert said[rules.NO_TORQUE.id].endswith(": weak.")
    assert rules.ABOVE_PUBLISHED.id not in said, "said already: it is over what the thread takes"


def test_a_rule_covers_another_in_its_own_row_only():
    """18 N·m on M8 is above every published torque; brass can't take it, class 8.8 can."""
    joints = "soft:M8:18 N.m:brass;hard:M8:18 N.m:8.8:dry:1:battery terminal"
    said = {one.rule: one.text for one in calc.work("joint-sheet", {"joints": joints}).cautions}
    assert said[rules.TOO_TIGHT.id].endswith(": soft.")
    assert said[rules.ABOVE_PUBLISHED.id].startswith("Above every published torque: hard.")


def test_every_stud_is_judged_alone_by_every_rule():
    for one in studs():
        for grade in ("unknown", "copper", "10.9"):
            for torque in (None, 0.1, 300.0):
                found = joint(stud=one.name, grade=grade, maker_torque=torque)
                levels = {rule.level for rule in rules.JUDGEMENTS if rule.when(found)}
                assert levels <= {Level.STOP, Level.CAUTION}
                assert levels or torque is not None

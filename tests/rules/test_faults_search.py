"""Rules on a search for a fault: what each speaks of, and a choice beside it without a word."""

import pytest

from calc.faults.rules import search as rules
from tests.rules.judging import fires

MINUS = {"symptom": "flickers", "path": "flickers.no.one"}  # a side, against all limits of a side
HAZARD = {"symptom": "flickers", "path": "flickers.yes"}
POST = {"symptom": "flickers", "path": "flickers.no.one.high.high"}  # on a bank: dangerous
GROUND = {"symptom": "hot", "path": "hot.only.good.gnd.high"}
SMOKED = {"symptom": "hot", "path": "hot.bad.done.cab.high.ok"}
ONLY_WARM = {"symptom": "hot", "path": "hot.only.good.cab.high.ok"}
CLEAR = {"symptom": "flickers", "path": "flickers.no.one.ok.ok.else"}
CHARGE = {"symptom": "charge", "path": "charge.no.low.low"}

THIN = {"conductor": "12 AWG", "load": "40 A", "length": "3 m"}  # 17 mΩ: 0.67 V, and 0.18 V allowed
SOUND = {"symptom": "check", "path": "check.no.firm.ok.t.t.t.t.t.t.t.t.t.t.no"}
SOME = {"symptom": "flickers", "path": "flickers.no.one.high.some"}


def at(path):
    return {"symptom": path.split(".")[0], "path": path}


@pytest.mark.parametrize(
    ("rule", "speaks", "silent"),
    [
        (rules.MAKE_SAFE, HAZARD, MINUS),
        (rules.DANGEROUS, POST, GROUND),
        (rules.DANGEROUS, POST, HAZARD),
        (rules.DANGEROUS, SMOKED, ONLY_WARM),
        (rules.NOT_YET, MINUS, POST),
        (rules.NOT_YET, MINUS, HAZARD),
        (rules.FOUND, GROUND, POST),
        (rules.FOUND, GROUND, CLEAR),
        (rules.FOUND, GROUND, MINUS),
        (rules.NO_FAULT, CLEAR, POST),
        (rules.REPAIR, POST, CLEAR),
        (rules.ODD_PATH, at("flickers.no.nonsense"), at("flickers.no")),
        (rules.RESTED_FLOODED, {"chemistry": "flooded"}, {"chemistry": "AGM"}),
        (rules.RESTED_FLOODED_AGREES, {"chemistry": "flooded"}, {"chemistry": "gel"}),
        (rules.RESTED_AGM, {"chemistry": "AGM"}, {"chemistry": "flooded"}),
        (rules.RESTED_GEL, {"chemistry": "gel"}, {"chemistry": "flooded"}),
        (rules.RESTED_LFP, {"chemistry": "LFP"}, {"chemistry": "AGM"}),
        (rules.LFP_SETTLES, {"chemistry": "LFP"}, {"chemistry": "gel"}),
        (rules.CHARGE_VOLTAGE_LEAD, CHARGE, CHARGE | {"charge_voltage": "14.2 V"}),
        (rules.CHARGE_VOLTAGE_LEAD, CHARGE, CHARGE | {"chemistry": "LFP"}),
        (rules.CHARGE_VOLTAGE_LEAD, CHARGE, MINUS),
        (rules.CHARGE_VOLTAGE_LFP, CHARGE | {"chemistry": "LFP"}, CHARGE),
        (rules.GROUND_DROP, MINUS, {"symptom": "flickers"}),
        (rules.LIKE_JOINT, MINUS | {"path": "flickers.no.one.high"}, {"symptom": "flickers"}),
        (rules.GOOD_CONTACT, MINUS | {"path": "flickers.no.one.high"}, {"symptom": "flickers"}),
        (rules.CABLE_DROP, MINUS | THIN, MINUS),
        (rules.CABLE_TOO_SMALL, MINUS | THIN, MINUS),
        (rules.OVER_FUSE, MINUS | {"fuse": "49 A"}, MINUS | {"fuse": "50 A"}),
        (rules.NOT_ENOUGH, {"symptom": "inverter", "cutoff": "12.4 V"}, {"symptom": "inverter"}),
        (rules.NOT_ENOUGH, {"symptom": "inverter", "cutoff": "12.4 V"}, {"cutoff": "12.4 V"}),
        (rules.CHECKED, SOUND, at("flickers.no.one.ok.ok.else")),
        (rules.AS_IT_SHOULD_BE, at("charge.none.none.ok"), at("charge.none.none.low")),
        (rules.CHECKED, SOUND, {"symptom": "check"}),
        (rules.CHECKING, {"symptom": "check"}, {"symptom": "flickers"}),
        (rules.CHECKING, {"symptom": "check"}, SOUND),
        (rules.REMAKE_TOO, SOME, at("flickers.no.one.high.ok")),
        (rules.JOINT_LOWERED, {"joint": "0.2 mohm"}, {"joint": "0.13 mohm"}),
        (rules.SMALL_TERMINAL, at("flickers.no.one.high.ok.ok.ok"), MINUS),
        (rules.FUSE_DROPS, at("flickers.yes.hot.fus"), at("flickers.yes.hot.cab")),
        (rules.UNMARKED_CABLE, at("flickers.yes.hot.cab"), at("flickers.yes.hot.fus")),
        (rules.CONTINUOUS, at("flickers.yes.hot.fus.ok"), at("flickers.yes.hot.fus")),
        (rules.OPEN_PART, at("dead.no"), MINUS),
        (rules.WORN_BANK, at("flat.no.ok.ok.ok.ok.ok"), MINUS),
        (rules.MAIN_CABLES, MINUS, CHARGE),
        (rules.MAIN_CABLES, MINUS, HAZARD),
        (rules.MAIN_CABLES_TOGETHER, MINUS, CHARGE),
    ],
    ids=lambda value: getattr(value, "id", None),
)
def test_a_rule_of_the_search_speaks_of_what_it_is_about_and_of_nothing_else(rule, speaks, silent):
    assert rule.id in fires("find-fault", speaks)
    assert rule.id not in fires("find-fault", silent)


def test_one_rule_says_where_the_search_stands():
    stands = {rule.id for rule in rules.STANDS}
    for texts in (MINUS, HAZARD, POST, GROUND, CLEAR, CHARGE):
        assert len(stands & fires("find-fault", texts)) == 1, texts

"""Ten faults put into a van are found by somebody with a meter, and a sound van is given none.

The van is a network of its own (`fault_van.py`) that knows nothing of the search; each fault comes
in several degrees, and is looked for from every symptom that it would show itself by.
"""

import pytest

import calc
from calc.faults import graph
from tests.unit.fault_van import (
    CHARGER,
    FRIDGE,
    INVERTER,
    LARGE,
    LEAD,
    OPEN,
    follow,
    with_fault,
)

SOUND = {
    "check.hazard": "no", "check.look": "firm", "check.log": "no",
    "flickers.hazard": "none", "flickers.comes": "bump", "flickers.which": "every",
    "flickers.log": "none", "flickers.look": "firm", "flickers.tug": "firm",
    "flickers.back": "else",
    "hot.hazard": "only", "hot.where": "cab", "hot.air": "no",
    "flat.hazard": "none", "flat.by": "done",
    "charge.hazard": "none", "charge.log": "none", "charge.source": "engine",
    "fuse.hazard": "none", "fuse.look": "none", "fuse.when": "late",
    "fuse.shake": "no", "fuse.air": "no",
    "inverter.hazard": "no", "inverter.alarm": "sag", "inverter.look": "firm",
    "inverter.surge": "no",
    "gauge.hazard": "no", "gauge.kind": "shun", "gauge.sync": "yes",
    "dead.hazard": "none", "dead.look": "firm", "dead.device": "yes",
}  # fmt: skip
"""What the owner of a sound van answers to each question that comes up."""

VANS = {"fridge": FRIDGE, "inverter": INVERTER, "charger": CHARGER, "large": LARGE}
SUPPLIES = [FRIDGE, INVERTER, LARGE]
SHARES = (0.03, 0.1, 0.4)  # of the system voltage, lost in the fault at full current


def lost(van, share: float) -> float:
    """Return the resistance [ohm] that takes a share of the supply, with the device as it is."""
    return share / (1 - share) * van.volts / van.amps


def charge_lost(van, share: float) -> float:
    """Return the resistance [ohm] that takes a share of the supply from the charger's current."""
    return share * van.volts / van.charger


def found(van, symptom: str, **told: str) -> str:
    answers = SOUND | {name.replace("_", "."): turn for name, turn in told.items()}
    return follow(van, symptom, answers)[0]


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("van", SUPPLIES)
def test_a_loose_negative_joint_that_carries_the_main_current_is_found(van, share):
    faulty = with_fault(van, extra={"minus post": lost(van, share)})
    assert found(faulty, "flickers") == "loose-minus"
    assert found(faulty, "flickers", flickers_which="single") == "loose-minus"
    assert found(faulty, "inverter") == "loose-minus"
    assert found(faulty, "hot", hot_where="min") == "loose-minus"
    if share > 0.1:
        assert found(faulty, "dead") == "loose-minus"


def test_an_open_negative_joint_is_found_too():
    assert found(with_fault(FRIDGE, extra={"minus post": OPEN}), "dead") == "loose-minus"


@pytest.mark.parametrize("share", (0.14, 0.2, 0.4))
def test_a_loose_negative_joint_is_found_from_a_weak_charge(share):
    """The least of them only makes the charger ease off early: its voltage is reached too soon."""
    faulty = with_fault(CHARGER, extra={"minus post": charge_lost(CHARGER, share)})
    assert found(faulty, "charge") == "loose-minus"


@pytest.mark.parametrize("factor", (2.0, 3.0, 6.0))
@pytest.mark.parametrize("van", SUPPLIES)
def test_a_cable_with_less_copper_than_it_is_marked_for_is_found(van, factor):
    faulty = with_fault(van, cable_factor=factor)
    assert found(faulty, "hot") == "thin-cable"
    if factor * van.reading(graph.step("run.m-run"), False) > 0.1 * van.volts / 12:
        assert found(faulty, "flickers", flickers_which="single") == "thin-cable"
        assert found(faulty, "inverter") == "thin-cable"


@pytest.mark.parametrize("name", ("18 AWG", "0.75 mm2"))
@pytest.mark.parametrize("symptom", ("flickers", "inverter", "hot"))
def test_a_cable_that_was_never_thick_enough_is_said_before_anything_is_measured(symptom, name):
    """By the reader's own figures it loses more than they allow, though it is what it is marked."""
    faulty = with_fault(FRIDGE, texts=FRIDGE.texts | {"conductor": name})
    begun = calc.work("find-fault", faulty.texts | {"symptom": symptom})
    assert begun.rule == "search.cable-too-small"
    _, path = follow(faulty, symptom, SOUND)
    ended = calc.work("find-fault", faulty.texts | {"symptom": symptom, "path": path})
    assert ended.rule == "search.cable-too-small"


@pytest.mark.parametrize("van", SUPPLIES)
def test_a_blown_fuse_is_found(van):
    assert found(with_fault(van, extra={"fuse": OPEN}), "dead") == "blown-fuse"
    assert found(with_fault(van, extra={"fuse": OPEN}), "flickers") == "blown-fuse"
    assert found(with_fault(van, extra={"fuse": OPEN}), "inverter") == "blown-fuse"


def test_a_blown_fuse_of_the_charger_is_found():
    assert found(with_fault(CHARGER, extra={"fuse": OPEN}), "charge") == "blown-fuse"


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("van", SUPPLIES)
def test_a_fuse_holder_with_too_much_resistance_is_found(van, share):
    faulty = with_fault(van, extra={"fuse": lost(van, share)})
    assert found(faulty, "flickers") == "fuse-holder"
    assert found(faulty, "inverter") == "fuse-holder"
    assert found(faulty, "hot", hot_where="fus") == "fuse-holder"
    assert found(faulty, "fuse") == "fuse-holder"


def test_a_fuse_holder_with_too_much_resistance_is_found_from_a_weak_charge():
    faulty = with_fault(CHARGER, extra={"fuse": charge_lost(CHARGER, 0.2)})
    assert found(faulty, "charge") == "fuse-holder"


@pytest.mark.parametrize("gone", (0.75, 1.0, 1.4))
@pytest.mark.parametrize("symptom", ("flat", "inverter", "flickers"))
def test_a_dead_cell_is_found(symptom, gone):
    """A cell that has lost three quarters of itself, all, or is driven the wrong way round."""
    faulty = with_fault(INVERTER, gone=gone * INVERTER.cell)
    assert found(faulty, symptom) == "dead-cell"


@pytest.mark.parametrize("gone", (0.75, 1.0))
def test_a_dead_cell_is_found_among_batteries_in_series(gone):
    assert found(with_fault(LARGE, gone=gone * LARGE.cell), "flat") == "dead-cell"
    assert found(with_fault(LARGE, gone=gone * LARGE.cell), "inverter") == "dead-cell"


@pytest.mark.parametrize("idle", (0.4, 1.2, 3.0))
@pytest.mark.parametrize("standby", (0.05, 0.1, 0.2))
def test_an_inverter_that_is_left_on_is_found(idle, standby):
    texts = FRIDGE.texts | {"idle": f"{idle} A", "standby": f"{standby} A"}
    drawn = {"inverter_idle": idle, "standby": standby}
    faulty = with_fault(FRIDGE, texts=texts, inverter_left_on=True, **drawn)
    assert found(faulty, "flat") == "inverter-on"


def test_what_else_stays_awake_is_not_laid_upon_the_inverter():
    assert found(with_fault(FRIDGE, standby=0.9), "flat") == "parasite"


@pytest.mark.parametrize("share", (0.3, 0.5, 0.8))
@pytest.mark.parametrize("symptom", ("charge", "flat"))
def test_a_charger_that_throttles_when_hot_is_found(symptom, share):
    assert found(with_fault(CHARGER, warm_share=share), symptom) == "throttling"


@pytest.mark.parametrize("factor", (0.2, 0.5, 0.9, 1.1, 2.0, 5.0))
@pytest.mark.parametrize("van", SUPPLIES)
def test_a_gauge_that_is_set_wrong_is_found(van, factor):
    assert found(with_fault(van, gauge_factor=factor), "gauge") == "calibration"


@pytest.mark.parametrize("van", SUPPLIES)
def test_a_gauge_whose_sense_is_reversed_is_found(van):
    """Though it is set right in everything else, and even where it is not."""
    assert found(with_fault(van, gauge_sign=-1), "gauge") == "reversed"
    assert found(with_fault(van, gauge_sign=-1, gauge_factor=0.5), "gauge") == "reversed"


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("van", SUPPLIES)
def test_a_corroded_ground_is_found(van, share):
    faulty = with_fault(van, extra={"ground": lost(van, share)})
    assert found(faulty, "flickers") == "ground"
    assert found(faulty, "inverter") == "ground"
    assert found(faulty, "hot", hot_where="gnd") == "ground"
    if share > 0.1:
        assert found(faulty, "dead") == "ground"


def test_a_ground_that_is_open_is_found_too():
    assert found(with_fault(FRIDGE, extra={"ground": OPEN}), "dead") == "ground"


OTHER = {
    "plus post": "loose-plus", "between": "middle-joint", "terminal": "far-joint",
    "minus terminal": "far-joint", "shunt": "shunt-joint",
}  # fmt: skip


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("part", OTHER)
def test_every_other_joint_on_the_way_is_found(part, share):
    for van in SUPPLIES:
        faulty = with_fault(van, extra={part: lost(van, share)})
        assert found(faulty, "flickers") == OTHER[part]


@pytest.mark.parametrize("part", ("cable", "between", "terminal"))
def test_a_plus_side_that_is_open_behind_the_fuse_is_found(part):
    assert found(with_fault(FRIDGE, extra={part: OPEN}), "dead") == "broken-plus"


def test_an_open_plus_post_is_found():
    assert found(with_fault(FRIDGE, extra={"plus post": OPEN}), "dead") == "loose-plus"


@pytest.mark.parametrize("ohms", (0.0, 0.1, 1.0))
def test_a_shorted_cable_is_found(ohms):
    faulty = with_fault(FRIDGE, extra={"short": ohms})
    assert found(faulty, "fuse", fuse_when="once") == "chafed"


def test_a_load_that_takes_too_much_is_found():
    faulty = with_fault(FRIDGE, amps=9.5)
    assert found(faulty, "fuse") == "overload"
    assert found(faulty, "hot") == "overload"


def test_a_bank_that_is_worn_out_is_found():
    assert found(with_fault(FRIDGE, ampere_hours=140.0), "flat") == "worn-bank"


PLACES = ("cab", "min", "plu", "fus", "gnd", "mid", "far")


SYMPTOMS = ("flickers", "hot", "flat", "charge", "fuse", "inverter", "gauge", "dead")
UNFIT = ("fridge", "charge")  # its thin flex is no cable for a charger, and is found to be none


@pytest.mark.parametrize("off", (0.9, 1.0, 1.1))
@pytest.mark.parametrize(
    ("name", "symptom"), [(n, s) for n in VANS for s in SYMPTOMS if (n, s) != UNFIT]
)
def test_a_sound_van_is_given_no_cause(name, symptom, off):
    """Though each of its parts is a tenth better or worse than the book."""
    van = with_fault(VANS[name], off=off)
    for place in PLACES if symptom == "hot" else PLACES[:1]:
        assert graph.end(found(van, symptom, hot_where=place)).clear


MAIN = with_fault(INVERTER, texts=INVERTER.texts | {"heaviest": "120 A", "fuse": "150 A"})
BAD = 0.25e-3  # ohm on top of a sound joint: what joint heat would look into

TWENTY = {
    "minus post": ("flickers", {"extra": {"minus post": BAD}}, {}, "loose-minus"),
    "plus post": ("flickers", {"extra": {"plus post": BAD}}, {}, "loose-plus"),
    "shunt bolts": ("flickers", {"extra": {"shunt": BAD}}, {}, "shunt-joint"),
    "ground point": ("flickers", {"extra": {"ground": BAD}}, {}, "ground"),
    "bar or switch": ("flickers", {"extra": {"between": BAD}}, {}, "middle-joint"),
    "plus terminal": ("inverter", {"extra": {"terminal": BAD}}, {}, "far-joint"),
    "minus terminal": ("inverter", {"extra": {"minus terminal": BAD}}, {}, "far-joint"),
    "fuse holder": ("flickers", {"extra": {"fuse": 1e-3}}, {}, "fuse-holder"),
    "blown fuse": ("flickers", {"extra": {"fuse": OPEN}}, {}, "blown-fuse"),
    "cable of half the copper": ("inverter", {"cable_factor": 2.2}, {}, "thin-cable"),
    "hot lug": ("hot", {"extra": {"minus post": BAD}}, {"hot.where": "min"}, "loose-minus"),
    "dead cell": ("inverter", {"gone": LEAD}, {}, "dead-cell"),
    "loose crimp, seen": ("check", {}, {"check.look": "seen"}, "seen-joint"),
    "loose lug at the inverter": ("inverter", {}, {"inverter.look": "seen"}, "seen-joint"),
    "chafed cable, seen": ("fuse", {}, {"fuse.look": "cable"}, "chafed"),
    "cut-off by the battery": ("flickers", {}, {"flickers.comes": "self"}, "cut-off"),
    "breaker that cools": ("flickers", {}, {"flickers.comes": "cool"}, "breaker"),
    "inverter left on": ("flat", {"inverter_left_on": True}, {}, "inverter-on"),
    "something awake": ("flat", {"standby": 0.9}, {}, "parasite"),
    "read by a voltmeter": (
        "flat", {}, {"flat.by": "volt", "flat.kind": "volt"}, "full-by-voltage",
    ),
    "reversed shunt": ("gauge", {"gauge_sign": -1}, {}, "reversed"),
    "gauge for another shunt": ("gauge", {"gauge_factor": 0.5}, {}, "calibration"),
    "worn bank": ("flat", {"ampere_hours": 140.0}, {}, "worn-bank"),
    "shorted cable": ("fuse", {"extra": {"short": 0.05}}, {"fuse.when": "once"}, "chafed"),
}  # fmt: skip


@pytest.mark.parametrize("amps", (30.0, 60.0, 120.0))
@pytest.mark.parametrize("name", TWENTY)
def test_twenty_faults_are_found_at_three_test_currents(name, amps):
    symptom, changes, told, cause = TWENTY[name]
    load = MAIN.texts | {"load": f"{amps} A"}
    faulty = with_fault(MAIN, texts=load, amps=amps, **changes)
    assert follow(faulty, symptom, SOUND | told)[0] == cause


@pytest.mark.parametrize("charger", (15.0, 30.0, 40.0))
@pytest.mark.parametrize(
    ("changes", "told", "cause"),
    [
        ({"warm_share": 0.6}, {}, "throttling"),
        ({}, {"charge.log": "heat"}, "throttling"),
        ({"extra": {"fuse": OPEN}}, {}, "blown-fuse"),
        ({"extra": {"signal": 13.0}}, {"charge.log": "input"}, "no-signal"),
        ({"extra": {"feed": 1.5, "link": 30e-3}}, {"charge.log": "input"}, "input-drop"),
        ({"lost": 0.2}, {}, "loose-minus"),  # as much as makes its voltage come up too soon
    ],
    ids=("throttles", "says it is hot", "fuse", "run signal", "feed", "minus post"),
)
def test_a_charger_s_faults_are_found_at_three_currents(charger, changes, told, cause):
    texts = CHARGER.texts | {"charger": f"{charger} A", "heaviest": "40 A"}
    van = with_fault(CHARGER, texts=texts, charger=charger)
    if "lost" in changes:
        changes = {"extra": {"minus post": charge_lost(van, changes["lost"])}}
    faulty = with_fault(van, **changes)
    assert follow(faulty, "charge", SOUND | told)[0] == cause


@pytest.mark.parametrize("amps", (1.0, 6.0, 23.9))
def test_a_fridge_is_no_test_of_the_main_joints(amps):
    """A fifth of the 120 A that the bank gives are 24 A."""
    with pytest.raises(calc.InputError, match=r"at least 24\sA") as refusal:
        follow(with_fault(MAIN, texts=MAIN.texts | {"load": f"{amps} A"}), "flickers", SOUND)
    assert refusal.value.field == "load"

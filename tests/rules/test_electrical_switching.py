"""Rules on a switch that works from afar: each on either side of where it begins to speak."""

import pytest

import calc
from calc.electrical.rules import switching as rules
from calc.electrical.rules.single_cable import BEYOND_ONE_CABLE, PARALLEL
from calc.electrical.single_cable import single_cable
from calc.electrical.switching import remote_switch
from calc.judge import Rule, always, mends
from tests.contract.samples import until
from tests.rules.judging import fires, mended


def remote(**changes):
    """Return a pump of 60 W on 12 V, 2 m away: 5 A, so that its contact is rated 10 A."""
    usual = {
        "power": 60.0, "voltage": 12.0, "kind": "DC", "load": "motor", "distance": 2.0,
        "coil_current": 0.15, "control_voltage": 12.0, "hours": 86400.0, "switch": None,
        "marked": "not-said", "lowest": 0.92, "pull_in": 0.8, "series": "AWG", "power_factor": 1.0,
    }  # fmt: skip
    return remote_switch(**usual | changes)


def case(rule, fires, silent, **both):
    """Return a case in which `rule` fires on the first, and not on the second of two neighbours."""
    return pytest.param(rule, both | fires, both | silent, id=f"{rule.id} {fires}")


def switch(amperes, marked="DC"):
    return {"switch": amperes, "marked": marked}


RELAY = {"power": 1500.0, "load": "heater"}  # 125 A
MAINS = {"kind": "AC", "voltage": 120.0}
MAINS_HEATER = MAINS | {"load": "heater"}
BANK = {"kind": "DC", "voltage": 12.0}
COIL = {"coil_current": 10.0}
LARGE_COIL = RELAY | COIL
EITHER_SIDE = (
    case(rules.AC_SWITCH_ON_DC, switch(20.0, "AC"), switch(20.0, "not-said")),
    case(rules.AC_SWITCH_ON_DC, switch(20.0, "AC"), switch(None, "AC")),
    case(rules.AC_SWITCH_ON_DC, BANK, MAINS, **switch(20.0, "AC")),
    case(rules.SWITCH_TOO_WEAK, switch(4.99), switch(5.0)),
    case(rules.SWITCH_TOO_WEAK, switch(4.99), switch(None)),
    case(rules.SWITCH_SMALL_FOR_LOAD, switch(9.99), switch(10.0)),  # table 11-4: twice for a motor
    case(rules.SWITCH_SMALL_FOR_LOAD, switch(5.0), {}),
    case(rules.SWITCH_SMALL_FOR_LOAD, {"voltage": 32.0}, {"voltage": 33.0}, **switch(1.9)),
    case(rules.MARKED_FOR_ANOTHER, switch(20.0, "not-said"), switch(20.0, "DC")),
    case(rules.MARKED_FOR_ANOTHER, switch(20.0, "DC"), switch(20.0, "AC"), **MAINS),
    case(rules.NO_FACTOR_PUBLISHED, {"voltage": 32.1}, {"voltage": 32.0}),  # the table's own end
    # 1.1 × 80 % is 88 % of the coil's voltage.
    case(rules.RELAY_MAY_NOT_CLOSE, {"lowest": 0.88}, {"lowest": 0.8801}, **RELAY),
    case(rules.RELAY_MAY_NOT_CLOSE, RELAY, {}, lowest=0.88),
    # 4/0 AWG, NEC chapter 9 table 8: 0.0608 Ω/1000 ft at 75 °C, 0.19 mΩ/m at 60 °C. Of 0.48 V
    # 10 A loses all on 126 m, out and back.
    case(rules.NO_WIRE_TO_COIL, {"distance": 130.0}, {"distance": 120.0}, **LARGE_COIL),
    case(rules.NO_WIRE_TO_COIL, RELAY, {"power": 60.0, "load": "motor"}, distance=130.0, **COIL),
    case(rules.NO_WIRE_TO_COIL, {"lowest": 0.8801}, {"lowest": 0.88}, distance=9.0, **LARGE_COIL),
    case(rules.MAINS_BY_RELAY, MAINS, BANK, **RELAY),
    # 15.6 and 14.6 A, with a quarter more: panel switches go to 15 A.
    case(rules.MAINS_BY_RELAY, {"power": 1500.0}, {"power": 1400.0}, **MAINS_HEATER),
    case(rules.MAINS_ITSELF, {"power": 1400.0}, {"power": 1500.0}, **MAINS_HEATER),
    case(rules.MAINS_ITSELF, MAINS, BANK),
    # Of 0.36 V, 3 % of 12 V, 5 A loses all on 189 m of 4/0 AWG.
    case(rules.LINE_TOO_LONG, {"distance": 190.0}, {"distance": 188.0}),
    case(rules.LINE_TOO_LONG, {"power": 60.0}, {"power": 600.0}, distance=300.0),  # by a relay
    case(rules.LINE_TOO_LONG, BANK, MAINS, distance=300.0),
    case(rules.DC_FIGURE, BANK, MAINS),
    case(rules.MAINS_KILLS, MAINS, BANK),
    case(rules.MAINS_CONTACT, MAINS, BANK),
    case(rules.COIL_KICKS_BACK, RELAY, {}),
    case(rules.COIL_IS_DC, MAINS, BANK, **RELAY),
    case(rules.COIL_IS_DC, RELAY, {}, **MAINS),
    case(rules.SMALL_COIL_CURRENT, {"coil_current": 0.49}, {"coil_current": 0.5}, **RELAY),
    case(rules.SMALL_COIL_CURRENT, RELAY, {}, coil_current=0.49),
    case(rules.HELD_COIL, {"hours": 1.0}, {"hours": 0.0}, **RELAY),
    case(rules.HELD_COIL, RELAY, {}),
    case(rules.CUT_OUT_IS_NO_SWITCH, {"load": "heater"}, {"load": "motor"}),
    case(rules.MAY_START_BY_ITSELF, {"load": "lamp"}, {"load": "heater"}),
    case(rules.COIL_WHILE_CHARGING, RELAY, {}),
    case(rules.INVERTER_REMOTE, MAINS, BANK),
)  # fmt: skip


@pytest.mark.parametrize(("rule", "fires", "silent"), EITHER_SIDE)
def test_a_rule_speaks_on_its_side_of_the_line_only(rule, fires, silent):
    assert rule.when(remote(**fires))
    assert not rule.when(remote(**silent))


def test_every_rule_that_may_be_silent_has_its_case():
    every = {rule for rule in vars(rules).values() if isinstance(rule, Rule)}
    tested = {one.values[0].id for one in EITHER_SIDE}
    assert {rule.id for rule in every if rule.when is not always} == tested


def test_nothing_is_said_of_a_pump_on_a_short_line():
    assert [rule.id for rule in rules.JUDGEMENTS if rule.when(remote())] == []


@pytest.mark.parametrize(
    ("current", "voltage", "fits"),
    [
        # 33 CFR 183.425, table 5: 4/0 AWG with 105 °C insulation bears 445 A; a quarter more than
        # the load must find a standard fuse below that, and 400 A is the last one.
        (320.0, 14.6, True),
        (320.1, 14.6, False),
        # No fuse in the table is rated for so much: the cable alone is asked. 445 / 1.25 is 356 A.
        (356.0, 1000.0, True),
        (356.1, 1000.0, False),
    ],
)
def test_one_cable_carries_what_a_standard_fuse_lets_through(current, voltage, fits):
    found = single_cable(current=current, max_voltage=voltage)
    assert found.thickest == 445
    assert found.fits is fits
    assert BEYOND_ONE_CABLE.when(found) is not fits


@pytest.mark.parametrize(
    ("current", "cables"),
    [
        # Table 5 note 2: four loaded conductors 0.6, six 0.6, eight 0.5 of 445 A: 267, 267 and
        # 222 A. The largest fuses below are of 250, 250 and 200 A.
        (320.0, 1), (320.1, 2), (400.0, 2), (400.1, 3), (600.0, 3), (600.1, 4), (640.0, 4),
        (640.1, None),
    ],
)  # fmt: skip
def test_what_is_too_much_for_one_cable_is_shared_by_as_few_as_do(current, cables):
    found = single_cable(current=current, max_voltage=14.6)
    assert found.cables == cables
    spoken = {rule.id for rule in PARALLEL if rule.when(found)}
    assert ("cable.beyond-two" in spoken) is (cables in (3, 4))
    assert ("cable.beyond-parallel" in spoken) is (cables is None)


def test_a_line_on_a_bank_is_judged_for_one_cable_and_mains_is_not():
    heavy = {"power": "4300 W", "voltage": "12 V", "kind": "DC"}
    assert BEYOND_ONE_CABLE.id in fires("remote-switch", heavy)
    assert remote(power=4300.0, **MAINS).single_cable is None
    assert (
        BEYOND_ONE_CABLE.id
        not in calc.work("remote-switch", {"kind": "AC", "power": "20 kW"}).rules
    )


HEATER = {"power": "600 W", "load": "heater", "distance": "90 m"}  # 50 A
MADE_FOR_IT = {"switch": "70 A", "marked": "DC"}
TEN_AMPS = {"coil_current": "10 A", "lowest": "89 %"}


@pytest.mark.parametrize(
    ("rule", "texts", "field", "value"),
    [
        (rules.AC_SWITCH_ON_DC, {"switch": "20 A", "marked": "AC"}, "marked", "DC"),
        (rules.SWITCH_TOO_WEAK, {"switch": "4 A", "marked": "DC"}, "switch", 10.0),
        (rules.SWITCH_SMALL_FOR_LOAD, {"switch": "6 A", "marked": "DC"}, "switch", 10.0),
        (rules.MARKED_FOR_ANOTHER, {"switch": "20 A"}, "marked", "DC"),
        # 4/0 AWG at 60 °C, 0.19 mΩ/m: 0.36 V at 50 A, and 1 % of 12 V at 10 A.
        (rules.LINE_TOO_LONG, {**HEATER, **MADE_FOR_IT}, "distance", 0.36 / 0.019),
        (rules.NO_WIRE_TO_COIL, {**HEATER, **TEN_AMPS}, "distance", 0.12 / 0.0038),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_what_a_rule_offers_mends_it(rule, texts, field, value):
    pump = {"power": "60 W", "voltage": "12 V", "kind": "DC", "load": "motor"}
    after = mended("remote-switch", rule.id, pump | texts)
    assert calc.work("remote-switch", after).values[field] == (
        value if isinstance(value, str) else pytest.approx(value, rel=0.01)
    )


def test_every_remedy_offered_on_drawn_switches_mends():
    offered, wanted = set(), {rule.id for rule in rules.JUDGEMENTS if rule.mend}
    for _, answer in until("remote-switch", lambda: offered == wanted):
        found = answer.result
        for rule in rules.JUDGEMENTS:
            change = rule.mend(found) if rule.mend and rule.when(found) else None
            if change:
                offered.add(rule.id)
                line, coil = found.line, found.coil
                asked = {
                    "power": line.power, "voltage": line.voltage, "kind": line.kind,
                    "load": line.load, "power_factor": line.power_factor,
                    "distance": coil.distance, "coil_current": coil.current,
                    "control_voltage": coil.voltage, "hours": coil.hours, "lowest": coil.lowest,
                    "pull_in": coil.pull_in, "switch": found.switch.rated,
                    "marked": found.switch.marked, "series": found.series,
                }  # fmt: skip
                after = remote_switch(**asked | change.values)
                assert mends(rule, rules.JUDGEMENTS, found, after), rule.id
    assert offered == wanted

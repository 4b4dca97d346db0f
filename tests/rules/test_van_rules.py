"""Judgements on a whole van: each fires on one side of its threshold and not on the other.

Every case changes the sound van. Sums that decide are worked beside them, by hand.
"""

import re
from typing import get_args, get_type_hints

import pytest

from calc.judge import Level
from calc.sources import SOURCES
from calc.van.demos import demo
from calc.van.files import read_van
from calc.van.mends import mends_of
from calc.van.review import ASKED, fired
from calc.van.rules import alarms, bank, blocks, joints, mains, use, wiring
from calc.van.values import State
from calc.worksheet.outputs import kind_at

SOUND = demo("marram")


def van(changes):
    """Return the sound van with changes: texts by place, kinds that are none, parts that go."""
    found = SOUND
    for kind in changes.get("none", ()):
        found = found.stating(kind, State.NONE)
    for place in changes.get("gone", ()):
        found = found.without(place)
    for kind, texts in changes.get("added", ()):
        found = found.added(kind, texts)
    texts = {place: text for place, text in changes.items() if "." in place}
    return found.changed(texts) if texts else found


def ids(changes):
    return {rule.id for rule, _ in fired(van(changes))}


RELAY = {"alternator.method": "relay", "alternator.charger_limit": ""}
AGM = ("batteries", {"name": "second", "chemistry": "AGM", "capacity": "100 Ah"})
LIKE = {"name": "second", "chemistry": "LFP", "capacity": "100 Ah"}
CONVERTER = {"name": "step-down", "output_voltage": "12 V", "from": "plus-bar"}
PUMP = {"name": "tank pump", "load": "motor", "current": "8 A", "from": "step-down"}
FAN = {"name": "ceiling fan", "load": "fan", "current": "3 A", "from": "step-down"}
WATER = {"volume": "10 L", "way": "engine", "mixing_valve": "fitted", "switch": "in reach"}
REVERSED = {"none": ("shore",), "mains.polarity": "reversed"}
COLD_CUT_OFF_NOT = {"management.cold_cut_off": "not proven"}


def behind(rated, fuse, conductor="14 AWG"):
    """Return changes: a pump on a wire and a fuse behind a converter of a rated current."""
    wire = {"length": "1 m", "conductor": conductor, "fuse": fuse, "fuse_family": "type C"}
    converter = ("converters", {**CONVERTER, "rated_current": rated})
    return {"added": (converter, ("circuits", {**PUMP, **wire}))}


CASES = {
    # the mains
    "van.no-inlet": ({"mains.inlet": "no"}, {"mains.inlet": "yes"}),
    "van.inlet-without-breaker": ({"mains.breaker": "none"}, {"mains.breaker": "10 A"}),
    "van.inlet-breaker-above-supply": ({"mains.breaker": "16.1 A"}, {"mains.breaker": "16 A"}),
    "van.inlet-breaker-one-pole": (
        {"mains.switching": "live only"},
        {"mains.switching": "not known"},
    ),
    "van.no-residual-device": ({"mains.residual": "not fitted"}, {"mains.residual": "not tested"}),
    "van.residual-type-ac": (
        {"mains.residual_type": "AC"},
        {"mains.residual_type": "AC", "mains.residual": "not fitted"},
    ),
    "van.no-protective-earth": ({"mains.earth": "no"}, {"mains.earth": "yes"}),
    "van.earth-resistance-high": (
        {"mains.earth_resistance": "0.51 Ω"},
        {"mains.earth_resistance": "0.5 Ω"},
    ),
    "van.insulation-too-low": (
        {"mains.insulation_resistance": "0.99 MΩ"},
        {"mains.insulation_resistance": "1 MΩ"},
    ),
    "van.sources-joined": (
        {"mains.changeover": "nothing"},
        {"mains.changeover": "separate sockets"},
    ),
    "van.neutral-bond-on-shore": (
        {"inverter.neutral_bond": "always"},
        {"inverter.neutral_bond": "never"},
    ),
    "van.residual-device-cannot-trip": (
        {"inverter.neutral_bond": "never"},
        {"inverter.neutral_bond": "never", "inverter.residual": "no"},
    ),
    "van.inverter-without-residual-device": (
        {"inverter.residual": "no"},
        {"inverter.residual": "no", "inverter.neutral_bond": "never"},
    ),
    # the bank
    "van.mixed-chemistries": ({"added": (AGM,)}, {"added": (("batteries", LIKE),)}),
    "van.unlike-batteries": (
        {"added": (("batteries", {**LIKE, "capacity": "101 Ah"}),)},
        {"added": (("batteries", LIKE),)},
    ),
    "van.batteries-not-matched": (
        {"bank.matched": "no"},
        {"bank.matched": "no", "batteries[1].units": "1"},
    ),
    "van.bank-taken-off-at-one-end": (
        {"bank.take_off": "both at one end"},
        {"bank.take_off": "each by its own cable to bus bars"},
    ),
    "van.no-main-fuse": (
        {"batteries[1].fuse": "none", "cables[1].fuse": "none"},
        {"batteries[1].fuse": "none"},
    ),
    "van.no-main-isolator": ({"none": ("isolators",)}, {}),
    # 30 A from the alternator, 30 A by the regulator of 2 x 170 W / 12 V = 28.3 A, 20 A on shore
    "van.charger-over-bank-limit": (
        {"management.charge_limit": "29.9 A"},
        {"management.charge_limit": "30 A"},
    ),
    "van.sources-over-bank-limit": (
        {"management.charge_limit": "58 A", "management.stop_signal": "no"},
        {"management.charge_limit": "59 A", "management.stop_signal": "no"},
    ),
    "van.sources-stopped-by-signal": (
        {"management.charge_limit": "58 A"},
        {"management.charge_limit": "59 A"},
    ),
    # half of 200 Ah for LFP, a quarter for lead-acid; 28.3 A of sun and 30 A while driving
    "van.sources-too-strong-together": (
        {"management.charge_limit": "", "batteries[1].capacity": "58 Ah"},
        {"management.charge_limit": "", "batteries[1].capacity": "59 Ah"},
    ),
    "van.polarity-reversed": (
        {**REVERSED, "mains.switching": "live only"},
        {**REVERSED, "mains.switching": "both poles"},
    ),
    "van.charged-in-frost": (
        {**COLD_CUT_OFF_NOT, "bank.coldest": "-0.1 °C"},
        {**COLD_CUT_OFF_NOT, "bank.coldest": "0 °C"},
    ),
    "van.isolator-opens-running-alternator": (
        {"isolators[1].kind": "breaker", "cables[1].from": "starter-battery"},
        {"isolators[1].kind": "breaker"},
    ),
    "van.isolator-of-starter-battery": ({"cables[1].from": "starter-battery"}, {}),
    "van.isolator-may-open-last-battery": ({**RELAY, "gone": ("batteries[2]",)}, RELAY),
    "van.isolator-too-small": ({"isolators[1].rating": "119 A"}, {"isolators[1].rating": "120 A"}),
    "van.isolator-below-its-fuse": (
        {"isolators[1].rating": "199 A"},
        {"isolators[1].rating": "200 A"},
    ),
    # of the system, as isolators are marked
    "van.isolator-voltage-too-low": (
        {"isolators[1].rated_voltage": "11.9 V"},
        {"isolators[1].rated_voltage": "12 V"},
    ),
    # LFP in four blocks of 14.6 V charges at 58.4 V; at 12 V the name covers it
    "van.isolator-below-charging-voltage": (
        {"van.system": "48 V", "isolators[1].rated_voltage": "58 V"},
        {"van.system": "48 V", "isolators[1].rated_voltage": "59 V"},
    ),
    "van.isolator-out-of-reach": ({"isolators[1].reach": "no"}, {"isolators[1].reach": "yes"}),
    "van.unregulated-alternator": (RELAY, {}),
    "van.panels-before-battery": (
        {"panels[1].isolator": "no"},
        {"panels[1].isolator": "no", "regulators[1].panels_first": "yes"},
    ),
    "van.no-counting-monitor": ({"none": ("monitor",)}, {"monitor.monitor": "counts"}),
    "van.shunt-bypassed": ({"shunt.bypassed_by": "heater"}, {"shunt.bypassed_by": "none"}),
    # alarms and gas
    "van.no-carbon-monoxide-alarm": (
        {"gone": ("alarms[2]",)},
        {"gone": ("alarms[2]",), "none": ("gas",), "heater.fuel": "electric"},
    ),
    "van.no-smoke-alarm": ({"gone": ("alarms[1]",)}, {}),
    "van.no-gas-alarm": ({"gone": ("alarms[3]",)}, {"gone": ("alarms[3]",), "none": ("gas",)}),
    "van.carbon-monoxide-alarm-silent": (
        {"alarms[2].tested": "silent"},
        {"alarms[1].tested": "silent"},
    ),
    "van.carbon-monoxide-alarm-expired": (
        {"van.date": "2033-07-01", "alarms[2].expiry": "2033-06"},
        {"van.date": "2033-06-30", "alarms[2].expiry": "2033-06"},
    ),
    "van.gas-alarm-silent": (
        {"alarms[3].tested": "silent"},
        {"alarms[3].tested": "silent", "none": ("gas",)},
    ),
    "van.expiry-not-judged": ({"van.date": ""}, {"van.date": "2026-11"}),
    "van.alarm-silent": ({"alarms[1].tested": "silent"}, {"alarms[2].tested": "silent"}),
    "van.alarm-expired": ({"van.date": "2034-07-01"}, {"van.date": "2031-06-30"}),
    "van.alarm-behind-isolator": (
        {"alarms[3].supply": "behind-isolator"},
        {"alarms[3].supply": "own-battery"},
    ),
    "van.gas-locker-open-inside": (
        {"gas.locker": "open-inside"},
        {"gas.locker": "sealed-and-vented"},
    ),
    "van.gas-sparks": ({"gas.sparks": "yes"}, {"gas.sparks": "no"}),
    "van.cooker-without-air": ({"gas.flueless": "no"}, {"gas.flueless": "none"}),
    # joints and bars
    "van.joint-not-locked": ({"joints[1].lock": "nothing"}, {"joints[1].lock": "spring clamp"}),
    "van.joint-moved": ({"joints[1].tug": "moved"}, {"joints[1].tug": "held firm"}),
    "van.bar-without-cover": ({"bars[1].cover": "no"}, {"bars[3].cover": "no"}),
    "van.bar-below-its-fuse": ({"bars[1].rating": "199 A"}, {"bars[1].rating": "200 A"}),
    "van.bar-too-many-lugs": ({"bars[1].lugs_on_stud": "5"}, {"bars[1].lugs_on_stud": "4"}),
    # wiring
    "van.run-without-fuse": (
        {
            f"{place}.fuse": "none"
            for place in ("circuits[1]", "cables[4]", "cables[1]", "batteries[1]")
        },
        {"circuits[1].fuse": "none"},
    ),
    # 10 AWG of 105 °C: 60 A by 33 CFR, which lets a fuse be half as large again and no more
    "van.run-behind-too-large-fuse": (
        {"circuits[1].fuse": "none", "cables[4].fuse": "91 A"},
        {"circuits[1].fuse": "none", "cables[4].fuse": "90 A"},
    ),
    "van.run-behind-larger-fuse": (
        {"circuits[1].fuse": "none", "cables[4].fuse": "61 A"},
        {"circuits[1].fuse": "none", "cables[4].fuse": "60 A"},
    ),
    # two batteries side by side, and 120 A over the main cable
    "van.fuses-ahead-below-current": (
        {"batteries[1].fuse": "59 A"},
        {"batteries[1].fuse": "60 A"},
    ),
    # 100 Ah of 300 carry 40 A of these 120 A; the other 80 A
    "van.battery-fuse-below-share": (
        {"added": (("batteries", {**LIKE, "fuse": "39 A", "units": "1"}),)},
        {"added": (("batteries", {**LIKE, "fuse": "40 A", "units": "1"}),)},
    ),
    # 3 % of 12 V is 0.36 V; the copper of the fridge loses a third of that
    "van.measured-drop-over-limit": (
        {"circuits[1].measured_drop": "370 mV"},
        {"circuits[1].measured_drop": "360 mV"},
    ),
    # 7 in are 17.8 cm, and 40 in 101.6 cm
    "van.main-fuse-far-from-bank": (
        {"cables[1].unfused": "18 cm"},
        {"cables[1].unfused": "101 cm", "cables[1].sheathed": "yes"},
    ),
    "van.main-fuse-too-far-from-bank": (
        {"cables[1].unfused": "102 cm", "cables[1].sheathed": "yes"},
        {"cables[1].unfused": "101 cm"},
    ),
    # 14 AWG of 105 °C carries 35 A by 33 CFR, a converter of 20 A half as much again: 30 A
    "van.fuse-behind-converter-idle": (behind("20 A", "20 A"), behind("20 A", "15 A")),
    # 16 AWG carries 25 A
    "van.fuse-behind-converter-too-large": (
        behind("20 A", "20 A", "16 AWG"),
        behind("20 A", "15 A", "16 AWG"),
    ),
    # 1000 A is what a blade breaks, by ISO 8820-3; a tenth below it is tight
    "van.block-cannot-interrupt": (
        {"batteries[1].resistance": "4 mΩ"},
        {"batteries[1].resistance": "8 mΩ"},
    ),
    "van.block-interrupts-tightly": ({}, {}),  # its own test
    "van.end-not-in-record": ({"circuits[1].from": "attic"}, {"circuits[1].from": "fuse-block.9"}),
    "van.return-without-bond": (
        {"circuits[1].return_by": "chassis", "circuits[1].bond_point": "none"},
        {"circuits[1].return_by": "chassis", "circuits[1].bond_point": "floor stud"},
    ),
    # use and comfort
    "van.appliance-keeps-inverter-on": (
        {
            "circuits[1].load": "household-appliance",
            "circuits[1].route": "inverter",
            "inverter.inverter_on": "day and night",
        },
        {
            "circuits[1].load": "household-appliance",
            "circuits[1].route": "inverter",
            "inverter.inverter_on": "while used",
        },
    ),
    "van.light-without-dimmer": ({"circuits[2].dimmer": "none"}, {"circuits[1].dimmer": "none"}),
    "van.heat-from-bank": ({"circuits[4].load": "resistive heat"}, {"circuits[4].load": "motor"}),
    "van.water-heated-from-bank": (
        {"added": (("water_heater", {**WATER, "way": "bank", "power": "300 W"}),)},
        {"added": (("water_heater", WATER),)},
    ),
    "van.space-heated-from-bank": ({"heater.fuel": "electric"}, {"heater.fuel": "petrol"}),
    "van.hidden-appliance": (
        {"circuits[4].switch": "hidden or at the appliance"},
        {"circuits[4].switch": "its own thermostat"},
    ),
    "van.hidden-water-heater": (
        {"added": (("water_heater", {**WATER, "switch": "hidden or at the appliance"}),)},
        {"added": (("water_heater", WATER),)},
    ),
    "van.no-heater": (
        {"none": ("heater",), "patterns[1].heats": "no", "patterns[1].outside": "11.9 °C"},
        {"none": ("heater",), "patterns[1].heats": "no", "patterns[1].outside": "12 °C"},
    ),
    "van.no-cooler": ({"patterns[2].cools": "yes"}, {"patterns[2].cools": "no"}),
    "van.converter-too-small": (
        {"added": (("converters", {**CONVERTER, "rated_current": "7.9 A"}), ("circuits", PUMP))},
        {"added": (("converters", {**CONVERTER, "rated_current": "8 A"}), ("circuits", PUMP))},
    ),
    "van.converter-loads-together": (
        {
            "added": (
                ("converters", {**CONVERTER, "rated_current": "10.9 A"}),
                ("circuits", PUMP),
                ("circuits", FAN),
            )
        },
        {
            "added": (
                ("converters", {**CONVERTER, "rated_current": "11 A"}),
                ("circuits", PUMP),
                ("circuits", FAN),
            )
        },
    ),
    "van.bay-without-air": ({"bay.vents": "none", "bay.fan": "none"}, {"bay.vents": "none"}),
    "van.heat-not-held": ({"heater.output": "500 W"}, {"heater.output": "5 kW"}),
    "van.cooling-not-held": ({}, {}),  # its own test: `hot`
}
MODULES = (alarms, bank, blocks, joints, mains, use, wiring)  # the rest: test_van_schedule_rules
OWN = {rule.id for module in MODULES for asked in module.ASKED for rule in asked.rules}
RULES = {rule.id: rule for asked in ASKED for rule in asked.rules}


@pytest.mark.parametrize("rule", [one for one in CASES if CASES[one] != ({}, {})])
def test_a_rule_fires_on_one_side_and_not_on_the_other(rule):
    fires, silent = CASES[rule]
    assert rule in ids(fires)
    assert rule not in ids(silent)


def test_every_rule_of_the_whole_has_its_two_sides():
    assert set(CASES) == OWN


def test_an_isolator_of_an_inverter_carries_what_that_takes():
    """1000 W with 0.88 left, from 11.5 V, are 98.8 A."""
    line = {"isolators[1].in_line": "inverter"}
    assert "van.isolator-too-small" in ids({**line, "isolators[1].rating": "98 A"})
    assert "van.isolator-too-small" not in ids({**line, "isolators[1].rating": "99 A"})


@pytest.mark.parametrize(("gives", "told"), [("26 A", True), ("25 A", False)])
def test_behind_a_converter_what_it_gives_is_the_guard_and_no_fuse_before_it(gives, told):
    """16 AWG of 105 °C carries 25 A by 33 CFR; the fuse of 15 A is before the converter."""
    fed = {"length": "1 m", "conductor": "16 AWG", "fuse": "none"}
    found = SOUND.added("converters", {**CONVERTER, "fuse": "15 A", "rated_current": gives})
    rules = {rule.id for rule, _ in fired(found.added("circuits", {**PUMP, **fed}))}
    assert ("van.run-behind-larger-fuse" in rules) is told


@pytest.mark.parametrize(("when", "told"), [("2033-07-01", True), ("2033-06-30", False)])
def test_without_a_date_of_its_own_a_record_is_as_old_as_what_was_last_stated(when, told):
    text = 'format = 1\n[heater]\nfuel = "diesel"\n[[alarms]]\nkind = "co"\nexpiry = "2033-06"\n'
    text += f'tested = {{ found = "sounded", evidence = "seen", when = "{when}" }}\n'
    found = {rule.id for rule, _ in fired(read_van(text))}
    assert ("van.carbon-monoxide-alarm-expired" in found) is told


def test_a_fault_at_the_block_is_told_once_and_the_feed_mends_it():
    """A lower resistance of the bank takes the blades from room to a tenth, and then over it."""
    levels = []
    for resistance in ("60 mΩ", "13 mΩ", "8 mΩ", "4 mΩ", "2 mΩ"):
        found = SOUND.changed({"batteries[1].resistance": resistance}).review()
        of_block = [one for one in found.findings if one.rule.startswith("van.block-")]
        assert len(of_block) <= 1
        circuits = {one.id for one in SOUND.all("circuits")}
        each = [o for o in found.findings if "interrupt" in o.rule and o.part_id in circuits]
        assert each == []
        levels.append(of_block[0].level if of_block else None)
        if of_block:
            (mend, *_) = mends_of(found.van, found, of_block[0])
            assert "long" in mend.text and list(mend.changes) == ["cables[4].length"]
    assert levels == sorted(levels, key=[None, Level.CAUTION, Level.STOP].index)
    assert set(levels) == {None, Level.CAUTION, Level.STOP}


def hot(cooling):
    texts = {
        "cooling": cooling, "efficiency_ratio": "10 EER", "route": "inverter", "hours": "4 h",
        "inside": "25 °C", "sun": "600 W/m²",
    }  # fmt: skip
    own = SOUND.added("cooler", texts)
    return own.changed({"patterns[2].cools": "yes", "patterns[2].hottest": "35 °C"})


def test_a_cooler_that_does_not_hold_the_climate_is_told():
    weak = {rule.id for rule, _ in fired(hot("1000 BTU/h"))}
    assert "van.cooling-not-held" in weak
    assert "van.cooling-not-held" not in {rule.id for rule, _ in fired(hot("30000 BTU/h"))}


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_a_sentence_leads_with_what_to_do_and_is_short(rule):
    assert len(rule.headline.split()) <= 20
    assert len(rule.text.split()) <= 30
    assert rule.headline[0].isupper() and rule.headline.endswith(".")
    assert rule.source in SOURCES


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_a_sentence_names_only_what_its_fact_has(rule):
    asked = next(one for one in ASKED if rule in one.rules)
    fact = get_args(get_type_hints(asked.facts)["return"])[0]
    for name in re.findall(r"\{([^}]*)\}", rule.headline + rule.text):
        kind_at(fact, name)  # raises where there is no such attribute


def test_what_is_only_for_comfort_is_no_fault():
    for name in ("van.no-inlet", "van.no-counting-monitor", "van.light-without-dimmer"):
        assert RULES[name].level is Level.NOTE


def test_ids_stand_once():
    every = [rule.id for asked in ASKED for rule in asked.rules]
    assert len(every) == len(set(every))
    assert all(one.startswith("van.") for one in every)


def test_a_van_of_nothing_is_told_of_no_part_that_it_has_not():
    found = {rule.id for rule, _ in fired(read_van("format = 1\n"))}
    assert found <= {"van.no-inlet", "van.no-counting-monitor", "van.no-smoke-alarm"}


def test_a_batterys_share_is_of_all_that_leaves_the_bank_and_of_like_batteries_alone():
    """60 A come over the main cable and 99.4 A straight to the inverter, so 53 A of a third."""
    third = ("batteries", {**LIKE, "fuse": "40 A", "units": "1"})
    plain = {"added": (third,), "cables[1].current": "60 A"}
    assert "van.battery-fuse-below-share" not in ids(plain)
    assert "van.battery-fuse-below-share" in ids(plain | {"inverter.from": "house-bank"})
    mixed = ("batteries", {**LIKE, "chemistry": "AGM", "fuse": "39 A", "units": "1"})
    assert "van.battery-fuse-below-share" not in ids({"added": (mixed,)})


def test_no_fuse_ahead_of_a_converter_is_asked_to_be_larger():
    low = {"name": "low cable", "from": "step-down", "to": "low bar", "current": "25 A"}
    changes = {"added": (("converters", {**CONVERTER, "rated_current": "20 A"}), ("cables", low))}
    assert "van.fuses-ahead-below-current" not in ids(changes)

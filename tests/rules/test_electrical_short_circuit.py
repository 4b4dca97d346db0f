"""Rules on the shorts of a run: each on either side of where it begins to speak."""

import pytest

import calc
from calc.electrical.rules import short_circuit as rules
from calc.electrical.short_circuit import fault_level
from calc.electrical.withstand import withstand_of
from tests.rules.judging import fires, mended

# 12.8 V, sagging by 0.4 V at 100 A; a meter off by 10 mV is off by a twentieth of that
READ = {
    "voltage": "12.8 V", "known": "two readings", "open_voltage": "12.8 V",
    "loaded_voltage": "12.4 V", "loaded_current": "100 A", "meter_error": "10 mV",
}  # fmt: skip
GUESSED = {"known": "estimate", "voltage": "12.8 V"}
NEW = {
    "conductor": "6 mm2", "source_resistance": "16 mohm", "ageing": "0 %", "insulation": "70 C PVC",
}  # fmt: skip
SHORT = {"conductor": "240 mm2", "length": "1 cm", "joints": "0"}


@pytest.mark.parametrize(
    ("rule", "speaks", "silent"),
    [
        # the largest published class is 200 kA: 20 V over 0.1 mΩ
        (rules.BEYOND_CLASSES, {"voltage": "20.1 V", "source_resistance": "0.1 mohm"},
         {"voltage": "20 V", "source_resistance": "0.1 mohm"}),
        (rules.ESTIMATED, GUESSED, READ),
        (rules.ROUGH_READINGS, READ | {"meter_error": "51 mV"}, READ | {"meter_error": "50 mV"}),
        (rules.OTHER_BANK, READ | {"voltage": "11.6 V"}, READ | {"voltage": "11.7 V"}),
        (rules.OTHER_BANK, READ | {"voltage": "14.3 V"}, READ | {"voltage": "14.2 V"}),
        (rules.OVERHEATED, {"insulation": "70 C PVC", "temperature": "70.1 C"},
         {"insulation": "70 C PVC", "temperature": "70 C"}),
        (rules.LARGE_ESTIMATED, GUESSED | {"capacity": "501 Ah"}, GUESSED | {"capacity": "500 Ah"}),
        (rules.LARGE_ESTIMATED, GUESSED | {"capacity": "251 Ah", "batteries": "2"},
         GUESSED | {"capacity": "250 Ah", "batteries": "2"}),
        (rules.LATE_READINGS, READ, GUESSED),
        (rules.FUSE_EACH_STRING, {"batteries": "2"}, {"batteries": "1"}),
        (rules.IN_ONE_CONDUCTOR, {"parallel": "2"}, {"parallel": "1"}),
        (rules.EACH_JUDGED_ALONE, {"parallel": "2"}, {"parallel": "1"}),
        (rules.K_NOT_PRINTED, {"insulation": "105 C PVC"}, {"insulation": "105 C XLPE"}),
        (rules.RATE_FOR_ALL, {"inductance": "5 uH"}, {}),
        # 13.3 V over 1.33 mΩ is 10 kA
        (rules.LARGE_FAULT_CLASS, {"source_resistance": "1.329 mohm"},
         {"source_resistance": "1.331 mohm"}),
        (rules.BREAK_AT_SOURCE, {"length": "3 m"}, SHORT),
        # 6 mm² in 70 °C PVC takes (115 · 6)² A²·s, for 5 s 309 A: 11.97 V over 38.8 mΩ, of which
        # 16.4 mΩ are source and joints, the rest 2.84 m of pair at 70 °C
        (rules.BEYOND_ADIABATIC, NEW | {"length": "2.9 m"}, NEW | {"length": "2.8 m"}),
    ],
    ids=lambda value: getattr(value, "id", None),
)  # fmt: skip
def test_a_rule_on_shorts_speaks_from_its_limit_on(rule, speaks, silent):
    assert rule.id in fires("fault-current", speaks)
    assert rule.id not in fires("fault-current", silent)


@pytest.mark.parametrize(("ohms", "speaks"), [(2.925e-3, True), (2.927e-3, False)])
def test_a_class_is_tight_within_a_tenth_of_the_fault(ohms, speaks):
    """13.3 V over 2.926 mΩ is 4545 A, and 1.1 times that the class of 5000 A."""
    conductor = withstand_of(insulation_name="70 C PVC", area=6e-6)
    level = fault_level(voltage=13.3, source=ohms, rest=0.0, withstand=conductor)
    assert rules.CLASS_TIGHT.when(level) is speaks


def test_a_slow_circuit_is_one_slower_than_30_cfr_tests_fuses_for_that_current():
    """13.3 V over 4.4 mΩ and a solid wire pass above 1000 A: 8 ms, so L of 8 ms times R."""
    loop = 10e-3 + 2 * 0.01 / (58e6 * 240e-6)
    for share, speaks in ((1.001, True), (0.999, False)):
        texts = SHORT | {
            "source_resistance": "10 mohm",
            "inductance": f"{share * 8e-3 * loop * 1e6:.9f} uH",
        }
        assert (rules.SLOW_ARC.id in fires("fault-current", texts)) is speaks


@pytest.mark.parametrize(
    ("rule", "texts"),
    [
        (rules.ROUGH_READINGS, READ | {"meter_error": "80 mV"}),
        (rules.OTHER_BANK, READ | {"voltage": "24 V"}),
        (rules.OVERHEATED, {"insulation": "70 C PVC", "temperature": "90 C"}),
        (rules.FUSE_EACH_STRING, {"batteries": "3"}),
        (rules.IN_ONE_CONDUCTOR, {"parallel": "2"}),
    ],
    ids=lambda value: getattr(value, "id", None),
)
def test_what_a_rule_on_shorts_asks_for_mends_it(rule, texts):
    mended("fault-current", rule.id, texts)


BANK = {"source_resistance": "4 mohm", "batteries": "2"}  # 13.3 V over 2 mΩ: 6650 A
STRIP = {"fuse": "60 A", "fuse_family": "bolt-in strip, 51 mm (SF51)"}  # breaks 2000 A


@pytest.mark.parametrize(
    ("rule", "there", "not_there"),
    [
        # 13.3 V over a quarter of 5.3 and 5.4 mΩ: 10 038 and 9852 A, either side of 10 kA
        ("short.fuse-each-battery", {"batteries": "4", "source_resistance": "5.3 mohm"},
         {"batteries": "4", "source_resistance": "5.4 mohm"}),
        ("short.fuse-each-battery", {"batteries": "4", "source_resistance": "2 mohm"},
         {"batteries": "4", "source_resistance": "2 mohm", "each_fused": "yes"}),
        ("short.fuse-each-string", BANK, BANK | {"each_fused": "yes"}),
        ("short.main-fuse-alone", BANK | STRIP, STRIP | {"source_resistance": "4 mohm"}),
        ("short.main-fuse-alone", BANK | STRIP, BANK | STRIP | {"each_fused": "yes"}),
        ("run.fused-at-one-end", {"far_end": "this-end-only"}, {"far_end": "both-ends"}),
        ("run.fused-at-one-end", {"far_end": "this-end-only"}, {"far_end": "a-load"}),
        ("short.name-the-fuse", {}, STRIP),
    ],
)  # fmt: skip
def test_a_rule_of_the_sheet_fires_on_one_side_of_its_line_only(rule, there, not_there):
    assert rule in fires("fault-current", there)
    assert rule not in fires("fault-current", not_there)


def test_each_battery_its_own_fuse_is_the_first_thing_said_of_a_large_bank():
    large = {"batteries": "4", "source_resistance": "2 mohm"}
    assert calc.work("fault-current", large).sentence.startswith("Fit a fuse at each battery")
    behind = calc.work("fault-current", large | STRIP)
    assert behind.verdict == "stop"
    assert behind.sentence.startswith("Fit a fuse to each battery")


def test_a_fuse_is_judged_by_the_voltage_printed_on_it():
    bank = {"voltage": "51.2 V", "source_resistance": "80 mohm", "highest_voltage": "57.6 V"}
    blade = {"fuse": "40 A", "fuse_family": "blade, large (type E)"}
    for printed, rule in (("32 V", "fuse.voltage-rating-too-low"), ("", "fuse.marked-higher")):
        assert rule in fires("fault-current", bank | blade | {"fuse_voltage": printed})
    marked = fires("fault-current", bank | blade | {"fuse_voltage": "58 V"})
    assert not marked & {"fuse.voltage-rating-too-low", "fuse.marked-higher"}

"""A van's schedule: each run worked, with the sums by hand beside them."""

import pytest

from calc.judge import Level
from calc.van import bind
from calc.van import schedule as schedules
from calc.van.data import van_as_data, van_from_data
from calc.van.demos import DEMOS, demo
from calc.van.files import read_van
from calc.van.from_runs import source_resistance
from calc.van.schedule import schedule
from tests.counts import chance, often
from tests.van_by_hand import AREA_2, JOINTS, OHMS_2, OHMS_14, VAN, of
from tests.van_samples import drawn_van

FAN = """
[[circuits]]
name = "fan"
current = "3 A"
from = "fuse-block.2"
return_to = "minus-bar"
length = "1 m"
"""
STEP_DOWN = """
[[converters]]
name = "step-down"
from = "fuse-block.1"
return_to = "minus-bar"
output_voltage = "5 V"
rated_current = "30 A"
length = "1 m"
conductor = "10 AWG"
"""


def test_twenty_amps_over_three_metres_of_14_awg():
    row = of(VAN)
    drop = 20 * 2 * 3.2 * OHMS_14  # 1.25 V, a tenth
    assert row.drop == pytest.approx(drop, rel=5e-3)
    assert row.drop_share == pytest.approx(drop / 12, rel=5e-3)
    assert row.ampacity == 35  # 33 CFR 183.425 table 5, 14 AWG at 105 °C, two together
    assert (row.conductor, row.fuse, row.current) == ("14 AWG", 25, 20)
    assert not row.chosen
    assert row.level is not Level.FINE  # a tenth is lost


def test_the_voltage_at_the_load_counts_the_feed_as_well():
    feed = 60 * (1.2 + 1.0) * OHMS_2  # 0.08 V over plus and minus
    drop = 20 * 2 * 3.2 * OHMS_14
    assert of(VAN).load_voltage == pytest.approx(12 - drop - feed, rel=2e-3)


def test_a_cable_of_one_pole_loses_half_of_what_a_pair_does():
    """60 A over 1.2 m of 2 AWG."""
    assert of(VAN, "main-plus").drop == pytest.approx(60 * 1.2 * OHMS_2, rel=2e-3)
    pair = VAN.replace('name = "main plus"', 'name = "main plus"\npole = "both"')
    assert of(pair, "main-plus").drop == pytest.approx(2 * 60 * 1.2 * OHMS_2, rel=2e-3)


def test_the_fuse_is_judged_by_the_lowest_short_of_the_whole_way():
    row = of(VAN)
    lows = [one.answer.values["fault_low"] for one in row.judged if one.sheet == "fault-current"]
    assert len(lows) == 2
    assert min(lows) == pytest.approx(row.fault_low, rel=1e-4)
    highs = [one.answer.values["near_fault"] for one in row.judged if one.sheet == "fault-current"]
    assert max(highs) == pytest.approx(row.fault_high, rel=1e-4)


def test_what_a_plan_leaves_open_is_chosen_and_marked():
    row = of(
        VAN.replace(
            'length = "3.2 m"\nconductor = "14 AWG"\nfuse = "25 A"\nfuse_family = "type C"',
            'length = "3.2 m"',
        )
    )
    assert row.chosen == {"conductor", "fuse", "family"}
    # 3 % of 12 V over 6.4 m at 20 A: 2.8 mΩ/m or less, which 8 AWG has and 10 AWG has not
    assert row.conductor == "8 AWG"
    # 1.25 × 20 A and no more than the wire carries
    assert 25 <= row.fuse <= row.ampacity
    assert row.level in (Level.FINE, Level.CAUTION)


def test_a_metric_van_gets_metric_sizes():
    text = VAN.replace('conductor = "2 AWG"', 'conductor = "35 mm2"').replace(
        'conductor = "14 AWG"\n', ""
    )
    assert of(text).conductor == "10 mm2"


def test_in_an_inspection_nothing_is_chosen():
    text = VAN.replace('system = "12 V"', 'system = "12 V"\nkind = "inspection"')
    row = of(text.replace('conductor = "14 AWG"\n', "").replace('fuse = "25 A"\n', ""))
    assert row.conductor is None
    assert row.why["conductor"] == "Conductor of pump: not seen"
    assert row.why["fuse"] == "Fuse of pump: not seen"
    assert not row.chosen
    assert row.level is None


def test_what_was_said_not_to_be_seen_is_not_chosen_in_a_plan_either():
    row = of(VAN.replace('conductor = "14 AWG"', 'conductor = "not seen"'))
    assert row.conductor is None
    assert row.missing["drop"] == "circuits[1].conductor"


def test_a_fuse_that_is_not_there_is_told_and_what_would_suit():
    row = of(VAN.replace('fuse = "25 A"', 'fuse = "none"').replace('fuse_family = "type C"\n', ""))
    assert row.fuse is None
    assert row.why["fuse"] == "none fitted"
    assert row.suits["fuse"] == "25 A"


def test_lithium_without_its_resistance_leaves_the_shorts_open():
    row = of(
        VAN.replace('resistance = "20 mΩ"\n', "").replace(
            'fuse = "25 A"\nfuse_family = "type C"\n', ""
        )
    )
    assert row.fault_high is None
    assert row.why["fault_high"] == "Internal resistance of one of bank A: not stated"
    # wire and load still tell a rating, from 1.25 × 20 A to 35 A; of which family is open
    assert 25 <= row.fuse <= 35
    assert (row.family, row.chosen) == (None, {"fuse"})


def test_a_cable_without_a_stated_current_carries_its_branches():
    text = VAN.replace('current = "60 A"\n', "") + FAN
    assert of(text, "main-plus").current == pytest.approx(23)
    assert of(text, "main-minus").current == pytest.approx(23)


def test_a_load_by_its_power_draws_at_the_banks_voltage():
    row = of(VAN.replace('current = "20 A"', 'power = "128 W"'))
    assert row.current == pytest.approx(128 / 12.8)


def test_a_converter_draws_its_full_output_at_the_lowest_voltage_of_the_bank():
    """30 A at 5 V with nine tenths left, from 11 V, at which its worksheet takes a 12 V bank."""
    text = VAN.replace('from = "fuse-block.1"', 'from = "step-down"') + STEP_DOWN
    row = of(text, "step-down")
    assert row.current == pytest.approx(30 * 5 / 0.9 / 11, rel=1e-4)


def test_behind_a_converter_the_bank_s_short_is_not_told():
    text = VAN.replace('from = "fuse-block.1"', 'from = "step-down"')
    row = of(text + STEP_DOWN)
    assert row.fault_high is None
    assert row.drop_share == pytest.approx(20 * 2 * 3.2 * OHMS_14 / 5, rel=5e-3)  # of 5 V


@pytest.mark.parametrize("name", DEMOS)
def test_an_edit_of_one_circuit_leaves_the_other_rows_as_they_were(name):
    van = demo(name).changed({"batteries[1].resistance": "20 mΩ"})
    before = schedule(van)
    after = schedule(van.changed({"circuits[1].length": "7 m"}))
    for was, now in zip(before.rows[:], after.rows, strict=True):
        if was.part.id != van.all("circuits")[0].id:
            assert (was.judged is now.judged) or was == now


def seen(van):
    """Return what a schedule says, value by value."""
    return [
        (row.part.id, row.mark, *(getattr(row, name) for name in VALUES), row.rules, dict(row.why))
        for row in schedule(van).rows
    ]


def forget():
    """Forget all that was worked for any van."""
    for memo in (bind._kept, schedules._kept):
        memo._kept.clear()


EDITS = {
    "circuits": {"length": "2.5 m", "current": "4 A", "conductor": "6 AWG", "fuse": "15 A"},
    "cables": {"length": "1.5 m", "current": "", "conductor": "", "parallel": "2"},
    "batteries": {"resistance": "9 mΩ", "units": "3", "chemistry": "AGM", "fuse": "none"},
    "bars": {"rating": "40 A"},
    "van": {"system": "24 V", "rule_set": "ABYC"},
}


def test_what_was_worked_before_an_edit_never_shows_after_it():
    rng = chance("van-schedule-memo")
    for _ in range(often(12, 100)):
        van = drawn_van(rng, circuits=4)
        forget()
        schedule(van)
        for _ in range(4):
            kind = rng.choice([one for one in EDITS if van.all(one)])
            part = rng.choice(van.all(kind))
            key = rng.choice(list(EDITS[kind]))
            van = van.changed({f"{part.place}.{key}": EDITS[kind][key]})
            if rng.random() < 0.2 and len(van.all("circuits")) > 1:
                van = van.without("circuits[1]")
            after_edit = seen(van)
            forget()
            assert after_edit == seen(van_from_data(van_as_data(van)))


VALUES = ("current", "conductor", "fuse", "family", "drop", "ampacity", "fault_high", "fault_low")


def test_drawn_vans_give_a_value_or_the_reason_and_never_an_exception():
    rng = chance("van-schedule")
    for _ in range(often(25, 200)):
        van = drawn_van(rng)
        for row in schedule(van).rows:
            minus = row.part.kind.id == "cables" and row.part.choice("pole") == "minus"
            if minus or row.part.kind.id == "panels" or "current" in row.why:
                continue
            for name in VALUES:
                assert (getattr(row, name) is None) == (name in row.why), (name, row)
            if van.inspection:
                assert not row.chosen
            if row.level is Level.FINE:  # a short that a converter limits has no figure
                assert row.why.keys() == ({"fault_high", "fault_low"} if row.limited else set())
            if row.fault_low is not None and row.fault_high is not None:
                assert row.fault_low < row.fault_high


def test_the_source_of_a_run_is_all_that_lies_before_it():
    van = read_van(VAN)
    came = source_resistance(van, van.by_id("pump"))
    assert came.si == pytest.approx(20e-3 / 2 + (1.2 + 1.0) / 58 / AREA_2 + JOINTS, rel=1e-3)
    assert source_resistance(van, van.by_id("main-plus")).text == "20 mΩ"  # of one of two


RUN = """
insulation = "105 C"
surroundings = "outside engine space"
bundled = "2"
ambient = "30 °C"
parallel = "1"
limit = "3 %"
return_by = "cable"
"""
INSPECTED = (
    VAN.replace("[van]", '[van]\nkind = "inspection"\nrule_set = "33 CFR 183.425"')
    .replace('units = "2"', 'units = "2"\nseries = "1"\nrole = "house"')
    .replace("20 mΩ", "30 mΩ")
    .replace("[[circuits]]", f'[[circuits]]\nroute = "direct"{RUN}')
    .replace("[[cables]]", f"[[cables]]{RUN}")
    .replace('name = "main plus"', 'name = "main plus"\npole = "plus"')
    .replace('"14 AWG"', '"8 AWG"')
)


def test_a_struck_value_makes_no_row_better():
    """A blank never counts as fine: what is struck from an inspection is not proven, or as bad."""
    van = read_van(INSPECTED)
    order = [Level.FINE, Level.CAUTION, Level.STOP]
    before = {row.part.id: row.level for row in schedule(van).rows}
    assert set(before.values()) == {Level.FINE}
    struck = 0
    for part in van.everything():
        for key, value in part.values.items():
            if value.statements and key not in ("kind", "name"):
                after = schedule(van.changed({f"{part.place}.{key}": "not seen"}))
                for row in after.rows:
                    was = before[row.part.id]
                    assert row.level is None or order.index(row.level) >= order.index(was)
                    struck += row.level is None
    assert struck > 20

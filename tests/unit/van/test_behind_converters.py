"""Runs behind a converter, of an inverter and of a second battery: other volts, another source."""

import pytest

from calc.judge import Level
from calc.van.demos import demo
from calc.van.files import read_van
from tests.unit.test_van_schedule import STEP_DOWN
from tests.van_by_hand import OHMS_14, VAN, of


def test_a_load_behind_a_converter_draws_at_its_voltage():
    """60 W of 5 V are 12 A, whatever the bank has; what is lost before the converter is not it."""
    text = VAN.replace('from = "fuse-block.1"', 'from = "step-down"')
    row = of(text.replace('current = "20 A"', 'power = "60 W"') + STEP_DOWN)
    assert row.current == pytest.approx(12)
    lost = 12 * 2 * 3.2 * OHMS_14
    assert row.load_voltage == pytest.approx(5 - lost, rel=5e-3)


def test_a_fuse_behind_a_converter_opens_at_the_voltage_of_that():
    """A blade fuse for 32 V opens behind the converter of a bank of 48 V, and not before it."""
    text = VAN.replace('"12 V"', '"48 V"') + STEP_DOWN
    behind = text.replace('from = "fuse-block.1"', 'from = "step-down"', 1)

    def stops(text):
        found = read_van(text).review().findings
        return {one.rule for one in found if one.part_id == "pump" and one.level is Level.STOP}

    assert "fuse.voltage-rating-too-low" in stops(text)
    assert "fuse.voltage-rating-too-low" not in stops(behind)


def test_amps_before_a_converter_are_not_compared_with_those_behind_it():
    """A fuse of 25 A behind the converter, one of 15 A before it: the volts differ as well."""
    before = STEP_DOWN + 'fuse = "15 A"\n'
    found = read_van(VAN.replace('from = "fuse-block.1"', 'from = "step-down"') + before).review()
    assert "van.fuse-order-reversed" not in {one.rule for one in found.findings}
    ahead = VAN.replace('fuse = "100 A"', 'fuse = "15 A"', 1).replace(
        'fuse_family = "type C"\n', ""
    )
    orders = {one.rule for one in read_van(ahead).review().findings}
    assert orders & {"van.fuse-order-reversed", "selectivity.wrong-way-round"}


def test_no_fuse_of_the_house_bank_stands_ahead_of_a_starter_battery():
    """150 A at the starter battery, 50 A at the house bank's end of the charging run."""
    feed = {
        "name": "starter feed", "from": "starter-battery", "to": "alternator", "length": "1 m",
        "conductor": "1/0 AWG", "fuse": "150 A", "fuse_family": "class T", "current": "100 A",
    }  # fmt: skip

    def orders(changes):
        found = demo("marram").added("cables", {**feed, **changes}).review().findings
        mine = {one.rule for one in found if one.part_id == "starter-feed"}
        return mine & {"van.fuse-order-reversed", "selectivity.wrong-way-round"}

    assert not orders({})
    assert orders({"from": "fuse-block", "to": "fridge"})


@pytest.mark.parametrize(("system", "blocks"), [("12 V", 1), ("24 V", 2), ("48 V", 4)])
def test_an_inverter_is_worked_at_every_voltage(system, blocks):
    """1000 W with 0.88 left, from 11.5 V for each block of 12 V."""
    text = VAN.replace('"12 V"', f'"{system}"').replace('"inverter", ', "")
    text += '[inverter]\nrating = "1000 W"\nfrom = "fuse-block"\nlength = "1 m"\n'
    assert of(text, "inverter").current == pytest.approx(1000 / 0.88 / (11.5 * blocks), rel=1e-3)

"""Ways on from appliances, lamps and inverters carry their figures and open without a complaint."""

import pytest

import calc
from calc.worksheet.link import open_fragment, write
from tests.contract.samples import answers

SHEETS = ("appliance-route", "light-dimming", "inverter-size", "remote-switch", "water-heater")


@pytest.mark.parametrize("name", SHEETS)
def test_every_way_on_opens_and_can_be_read(name):
    seen = set()
    for texts, answer in answers(name):
        for move in answer.values.get("onward") or answer.values.get("moves") or ():
            sheet = calc.find(move.sheet)
            opened = open_fragment(sheet, write(sheet, dict(move.texts)))
            assert opened.notes == (), texts
            assert sheet.read(opened.texts)[1] == (), (texts, move)
            seen.add(move.sheet)
    assert seen


def test_a_week_with_either_appliance_asks_of_the_bank_what_a_day_of_it_does():
    """A day of the battery-voltage one as reckoned here and by the week, in energy at the bus."""
    route = calc.work("appliance-route")
    by_hand = {"battery-voltage": 432, "household": 24 * 15 + 24 * 80 * 0.4 / 0.88}
    for move in route.values["onward"]:
        if move.sheet == "week-ahead":
            asked = calc.work(move.sheet, dict(move.texts))["daily_use"].m_as("W*hour")
            name = "household" if "household" in move.label else "battery-voltage"
            assert asked == pytest.approx(by_hand[name], rel=1e-9)


def test_what_follows_has_the_same_bank_inverter_and_day():
    """80 W for 9.6 h are 768 Wh at the plug; a bank of 25.6 V goes on as one of 25.6 V."""
    route = calc.work("appliance-route", {"voltage": "25.6 V", "efficiency": "90 %"})
    for move in route.values["onward"]:
        went = calc.work(move.sheet, dict(move.texts))
        assert went.values["voltage"] == pytest.approx(25.6)
        assert went.values["efficiency"] == pytest.approx(0.9)
    assert went["idle_charge"].m == pytest.approx(route["idle_charge"].m)
    assert went.values["taken"] == pytest.approx(768 * 3600, rel=1e-5)
    assert "far below" not in went.sentence
    size = calc.work("inverter-size", {"voltage": "25.6 V", "lowest_voltage": "23 V"})
    lasts = next(move for move in size.values["onward"] if move.sheet == "runtime")
    assert calc.work("runtime", dict(lasts.texts)).values["voltage"] == pytest.approx(25.6)


def test_the_cable_is_asked_for_at_the_lowest_voltage():
    size = calc.work("inverter-size")
    cable = next(move for move in size.values["onward"] if move.sheet == "wire-size")
    wire = calc.work(cable.sheet, dict(cable.texts))
    assert wire.values["current"] == pytest.approx(1000 / (11.5 * 0.88), rel=1e-5)

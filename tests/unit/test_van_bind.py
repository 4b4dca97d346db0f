"""A van feeds every worksheet: each field from its place, and what is changed goes back there."""

import re

import pytest

import calc
from calc.van.bind import (
    bound_fields,
    changed_places,
    filled,
    put_back,
    results_back,
    targets,
)
from calc.van.bindings import BINDINGS, RESULTS, TARGETS, WHOLE
from calc.van.demos import DEMOS, demo, demo_text
from calc.van.derived import DERIVED, LOOKED_UP
from calc.van.files import read_van
from calc.van.record import KINDS
from calc.van.schedule import schedule
from calc.van.worked import worked
from calc.worksheet.fields import Choice, Quantity
from tests.counts import chance, often
from tests.van_samples import SOUND, drawn_van, sound

SHEETS = calc.worksheets()


def kinds_of(sheet: str, source: str):
    """Return the kinds of parts that a source that is a key may be of, and the key's id."""
    kind, point, key = source.rstrip("?!").partition(".")
    return ((kind,), key) if point else (tuple(k for k in TARGETS[sheet] if k != WHOLE), kind)


def test_every_worksheet_opens_for_something_of_a_van():
    assert set(TARGETS) == set(SHEETS)
    assert {sheet for sheet, _ in BINDINGS} == set(SHEETS)
    assert {kind for kinds in TARGETS.values() for kind in kinds if kind != WHOLE} <= set(KINDS)


@pytest.mark.parametrize(("sheet", "field"), BINDINGS)
def test_what_a_binding_names_is_there(sheet, field):
    declared = calc.find(sheet).field(field)
    assert not calc.find(sheet).field(field).only_above, "a van reads what goes by a choice alone"
    source = BINDINGS[sheet, field]
    if source.endswith("()"):
        assert source.removesuffix("()") in DERIVED
        return
    kinds, key = kinds_of(sheet, source)
    there = [kind for kind in kinds if key in {one.id for one in KINDS[kind].keys}]
    assert there, f"no part of {kinds} has {key}"
    for kind in there:
        own = KINDS[kind].key(key).field
        if isinstance(declared, Quantity):
            texts = [own.sample] if isinstance(own, Quantity) else [o.typed for o in own.options]
        elif isinstance(declared, Choice):
            texts = [option.typed for option in own.options]
        else:
            texts = [own.example if hasattr(own, "example") else own.default]
        for text in texts:
            declared.read(text)


def test_functions_and_results_name_what_is_there():
    used = {source.removesuffix("()") for source in BINDINGS.values() if source.endswith("()")}
    assert used == set(DERIVED)
    assert used >= LOOKED_UP
    for (sheet, result), source in RESULTS.items():
        calc.find(sheet).result(result)
        kinds, key = kinds_of(sheet, source)
        assert any(key in {one.id for one in KINDS[kind].keys} for kind in kinds)


FOLLOW = (
    "watts-to-amps", "runtime", "find-fault", "inverter-size", "bank-gauge", "standby-drain",
    "alternator-charge", "shore-charge", "week-ahead", "heat-loss", "heater-night", "battery-air",
)  # fmt: skip


@pytest.mark.parametrize("chemistry", ["LFP", "AGM"])
def test_the_bank_is_changed_once_and_twelve_worksheets_follow(chemistry):
    """But for the air of a battery, which lithium needs none of."""
    before = demo("marram").changed({"batteries[1].chemistry": chemistry})
    after = before.changed({"batteries[1].capacity": "150 Ah"})
    followed = set()
    for sheet in SHEETS:
        for was, now in zip(targets(before, sheet), targets(after, sheet), strict=True):
            one, other = filled(before, sheet, was), filled(after, sheet, now)
            if one.texts.get("capacity") == "200 Ah" and other.texts["capacity"] == "300 Ah":
                followed.add(sheet)
    assert followed == set(FOLLOW) - ({"battery-air"} if chemistry == "LFP" else set())


def test_the_system_is_changed_once_and_every_voltage_follows():
    before = demo("marram")
    after = before.changed({"van.system": "24 V"})
    fridge = after.by_id("fridge")
    assert filled(before, "fuse-choice", before.by_id("fridge")).texts["voltage"] == "14.6 V"
    assert filled(after, "fuse-choice", fridge).texts["voltage"] == "29.2 V"
    assert filled(after, "wire-drop", fridge).texts["voltage"] == "24 V"
    assert filled(after, "week-ahead", after.all("patterns")[0]).texts["voltage"] == "25.6 V"
    assert "cells" not in filled(after, "battery-air", None).texts
    lead = after.changed({"batteries[1].chemistry": "AGM"})
    assert filled(lead, "battery-air", None).texts["cells"] == "12"
    # 11.5 V of the worksheet of inverters for each of two blocks
    assert filled(after, "inverter-size", after.one("inverter")).texts["lowest_voltage"] == "23 V"


def everything(van):
    """Yield every worksheet with everything of a van that it opens for."""
    for sheet in SHEETS:
        for part in targets(van, sheet):
            yield sheet, part


@pytest.mark.parametrize("name", DEMOS)
def test_what_a_van_fills_and_gets_back_leaves_it_as_it_is(name):
    van = demo(name)
    for sheet, part in everything(van):
        texts = filled(van, sheet, part).texts
        assert put_back(van, sheet, part, texts) is van, (sheet, part)


@pytest.mark.parametrize("name", DEMOS)
def test_a_worksheet_s_own_usual_text_never_gets_into_a_van(name):
    van = demo(name)
    for sheet, part in everything(van):
        found = filled(van, sheet, part)
        readings = calc.find(sheet).read(found.texts)[0]
        shown = {
            field.id: field.default or readings[field.id].entry
            for field, _, _ in bound_fields(sheet)
            if field.id in readings
        }
        assert changed_places(van, sheet, part, {**shown, **found.texts}) == {}, (sheet, part)


def test_drawn_vans_fill_every_worksheet_and_get_everything_back():
    rng = chance("van-bind")
    for _ in range(often(20, 200)):
        van = drawn_van(rng)
        for sheet, part in everything(van):
            found = filled(van, sheet, part)
            assert set(found.lacking) <= set(found.missing)
            assert put_back(van, sheet, part, found.texts) is van


def test_what_is_not_known_is_left_out_and_named():
    van = read_van(SOUND.replace('conductor = "10 AWG"\n', ""))
    found = filled(van, "wire-drop", van.by_id("fridge"))
    assert "conductor" not in found.texts
    assert found.missing["conductor"] == "circuits[1].conductor"
    assert "conductor" in found.lacking


def test_a_label_that_is_not_known_is_not_taken_as_the_worksheet_s_usual_one():
    """Three panels side by side, of which nobody read how much a faulty one may get."""
    read = demo_text("marram").replace('series = "2"', 'series = "1"\nstrings = "3"')
    found = {}
    for name, text in (("told", read), ("unread", read.replace('series_fuse = "15 A"\n', ""))):
        van = read_van(text)
        found[name] = filled(van, "panel-string", van.one("panels")).texts
    assert found["unread"]["series_fuse"] == ""
    assert calc.work("panel-string", found["told"]).rule == "strings.no-fuse-fits"
    assert calc.work("panel-string", found["unread"]).rule == "strings.limit-not-known"


def test_in_an_inspection_nothing_is_taken_as_usual():
    text = SOUND.replace('system = "12 V"', 'system = "12 V"\nkind = "inspection"')
    van = read_van(text)
    found = filled(van, "wire-drop", van.by_id("fridge"))
    assert {"insulation", "bundled", "ambient"} <= set(found.lacking)
    # what the run is held to is no fact of the van: there the worksheet's own limit stands
    assert "limit" not in {*found.texts, *found.missing}


PUT = [
    ("wire-drop", "fridge", "length", "4 m", {"circuits[1].length": "4 m"}),
    ("wire-drop", "fridge", "current", "6 A", {"circuits[1].current": "6 A"}),
    ("wire-drop", "fridge", "voltage", "24 V", {"van.system": "24 V"}),
    ("runtime", "fridge", "capacity", "300 Ah", {"batteries[1].capacity": "150 Ah"}),
    ("runtime", "fridge", "chemistry", "AGM", {"batteries[1].chemistry": "AGM"}),
    ("runtime", "fridge", "temperature", "-5 °C", {"bank.coldest": "-5 °C"}),
    ("fuse-choice", "fridge", "fitted", "20 A", {"circuits[1].fuse": "20 A"}),
    ("fuse-choice", "fridge", "feed_length", "9 m", {}),  # of several cables: nowhere
    ("wire-drop", "fridge", "length", "3200 mm", {}),  # the same in another unit
]  # fmt: skip


@pytest.mark.parametrize(("sheet", "part", "field", "text", "places"), PUT)
def test_what_is_changed_goes_to_its_place(sheet, part, field, text, places):
    van = sound()
    own = van.by_id(part)
    texts = {**filled(van, sheet, own).texts, field: text}
    assert changed_places(van, sheet, own, texts) == places
    after = put_back(van, sheet, own, texts)
    for place, put in places.items():
        assert after.at(place).text == put


def test_what_was_not_known_can_be_put_in():
    van = read_van(re.sub(r'length = "3.2 m"\n', "", SOUND))
    fridge = van.by_id("fridge")
    after = put_back(van, "wire-drop", fridge, {"length": "3.2 m"})
    assert after.at("circuits[1].length").text == "3.2 m"


def test_the_result_of_a_size_is_handed_back():
    van = sound()
    fridge = van.by_id("fridge")
    answer = worked("wire-size", filled(van, "wire-size", fridge).texts)
    back = results_back(van, "wire-size", fridge, answer)
    assert back == {
        "circuits[1].conductor": answer["conductor"],
        "circuits[1].fuse": f"{answer['fuse'].m_as('A'):g} A",
    }
    van.changed(back)


def test_every_result_that_is_handed_back_is_taken_by_the_record():
    for name in DEMOS:
        van = demo(name).changed({"batteries[1].resistance": "4 mΩ"})
        for sheet in {sheet for sheet, _ in RESULTS}:
            for part in targets(van, sheet):
                found = filled(van, sheet, part)
                if not found.lacking:
                    back = results_back(van, sheet, part, worked(sheet, found.texts))
                    van.changed(back)


PAIRS = """
format = 1
[van]
system = "12 V"
[[batteries]]
name = "bank A"
chemistry = "AGM"
capacity = "100 Ah"
[[cables]]
name = "main"
pole = "both"
from = "bank-a"
to = "first"
length = "2 m"
conductor = "2 AWG"
[[cables]]
name = "feed"
pole = "both"
from = "first"
to = "second"
length = "1 m"
conductor = "10 AWG"
[[bars]]
name = "first"
[[bars]]
name = "second"
[[circuits]]
name = "pump"
from = "second"
return_to = "second"
current = "5 A"
length = "3 m"
conductor = "14 AWG"
"""


@pytest.mark.parametrize("name", DEMOS)
def test_a_short_has_one_figure_wherever_it_is_shown(name):
    """What a fuse must break is the same in its schedule and in each worksheet about it."""
    van = demo(name)
    for row in schedule(van).rows:
        for sheet, result in (("fuse-choice", "fault_here"), ("fault-current", "near_fault")):
            if row.fault_high is None or row.part not in targets(van, sheet):
                continue
            own = filled(van, sheet, row.part)
            if not own.lacking:
                shown = worked(sheet, own.texts).values[result]
                assert shown == pytest.approx(row.fault_high, rel=1e-4), (row.part.id, sheet)


def test_a_cable_of_one_pole_is_half_of_a_loop_in_a_worksheet():
    """2 m of plus lose what 1 m out and back loses; what is typed there goes back as it is laid."""
    van = read_van(PAIRS.replace('pole = "both"', 'pole = "plus"', 1))
    one, pair = van.by_id("main"), van.by_id("feed")
    assert filled(van, "wire-drop", one).texts["length"] == "1 m"
    assert filled(van, "wire-drop", pair).texts["length"] == "1 m"
    texts = {**filled(van, "wire-drop", one).texts, "length": "1.5 m"}
    assert put_back(van, "wire-drop", one, texts).at("cables[1].length").text == "3 m"

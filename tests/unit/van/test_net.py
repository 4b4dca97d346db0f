"""What is joined to what: conductors of both poles, returns by the chassis, the way to the bank."""

from calc.van.files import read_van
from calc.van.paths import way
from tests.counts import chance, often
from tests.van_samples import drawn_van, sound

HEAD = "format = 1\n"
BARS = """
[[bars]]
name = "block"
pole = "plus"
kind = "fuse-block"
[[bars]]
name = "minus bar"
pole = "minus"
"""


def drawn(van, part):
    """Return each conductor of a part as a line."""
    return [f"{one.pole}: {one.start} to {one.end}" for one in van.net.of(part)]


def test_a_circuit_is_two_conductors_between_named_terminals():
    van = sound()
    fridge = van.by_id("fridge")
    assert drawn(van, fridge) == [
        "plus: fuse-block.1 to fridge.plus", "minus: minus-bar to fridge.minus"
    ]  # fmt: skip
    plus, minus = van.net.of(fridge)
    assert plus.fuse == "15 A" and minus.fuse == ""
    assert plus.length == minus.length == 3.2 and plus.size == "10 AWG"
    assert not plus.assumed and not plus.by_chassis


def test_a_main_cable_has_the_pole_it_says():
    van = sound()
    assert drawn(van, van.by_id("main-plus")) == ["plus: bank-a.plus to fuse-block"]
    assert drawn(van, van.by_id("main-minus")) == ["minus: bank-a.minus to minus-bar"]
    pair = read_van(
        f'{HEAD}[[cables]]\npole = "both"\nfrom = "bank"\nto = "shore"\nreturn_to = "bank"'
    )
    assert drawn(pair, pair.all("cables")[0]) == [
        "plus: bank.plus to shore.plus", "minus: bank.minus to shore.minus"
    ]  # fmt: skip


def test_a_return_by_the_chassis_starts_at_the_metal_and_tells_its_bond():
    van = read_van(
        f'{HEAD}[van]\nchassis_bond = "minus-bar"\n{BARS}[[circuits]]\nname = "pump"\n'
        'return_by = "chassis"\nbond_point = "stud by the sink"'
    )
    minus = van.net.of(van.by_id("pump"))[1]
    assert minus.by_chassis and minus.start == "chassis" and minus.bond == "stud by the sink"
    assert van.net.chassis_bond == "minus-bar"


def test_what_a_plan_leaves_open_is_assumed_only_where_it_can_hardly_be_elsewhere():
    van = read_van(f'{HEAD}{BARS}[[circuits]]\nname = "pump"')
    assert drawn(van, van.by_id("pump")) == [
        "plus: block to pump.plus",
        "minus: minus-bar to pump.minus",
    ]
    assert all(one.assumed == {"start"} for one in van.net.of(van.by_id("pump")))
    two = read_van(f'{HEAD}{BARS}[[bars]]\npole = "minus"\n[[circuits]]\nname = "pump"')
    assert drawn(two, two.by_id("pump"))[1] == "minus:  to pump.minus"
    seen = read_van(f'{HEAD}[van]\nkind = "inspection"\n{BARS}[[circuits]]\nname = "pump"')
    assert drawn(seen, seen.by_id("pump")) == ["plus:  to pump.plus", "minus:  to pump.minus"]


def test_panels_lead_to_their_regulator_and_loads_of_an_inverter_to_its_outlet():
    van = read_van(
        f"""{HEAD}
        [[panels]]
        name = "roof"
        regulator = "tracker"
        [[regulators]]
        name = "tracker"
        from = "bank"
        [inverter]
        from = "bank"
        [[circuits]]
        name = "kettle"
        from = "inverter"
        return_to = "inverter"
        """
    )
    assert drawn(van, van.by_id("roof"))[0] == "plus: tracker.panel-plus to roof.plus"
    assert drawn(van, van.by_id("kettle")) == [
        "plus: inverter.out-plus to kettle.plus", "minus: inverter.out-minus to kettle.minus"
    ]  # fmt: skip
    assert drawn(van, van.by_id("inverter"))[0] == "plus: bank.plus to inverter.plus"
    assert [one.id for one in way(van, van.by_id("kettle")).runs] == ["inverter"]


def test_the_way_to_the_bank_goes_by_bars_isolators_and_converters_either_way_round():
    van = read_van(
        f"""{HEAD}
        [[batteries]]
        name = "house"
        [[batteries]]
        name = "starter"
        role = "starter"
        [[converters]]
        name = "step down"
        from = "block"
        [[bars]]
        name = "block"
        pole = "plus"
        [[isolators]]
        name = "main switch"
        [[cables]]
        name = "first"
        from = "house"
        to = "main-switch"
        [[cables]]
        name = "second"
        from = "block"
        to = "main-switch"
        [[cables]]
        name = "stray"
        from = "starter"
        to = "nowhere"
        [[circuits]]
        name = "radio"
        from = "step-down"
        [[circuits]]
        name = "horn"
        from = "nowhere.2"
        [[circuits]]
        name = "lamp"
        from = "bank"
        """
    )
    radio = way(van, van.by_id("radio"))
    assert [one.id for one in radio.runs] == ["step-down", "second", "first"]
    assert way(van, van.by_id("horn")) is None
    assert way(van, van.by_id("lamp")).runs == ()
    places = {one.place: one for one in van.net.problems}
    assert set(places) == {"cables[3].to", "circuits[2].from"}
    assert "nowhere" in places["circuits[2].from"].sentence


def test_a_name_of_the_wrong_kind_or_nearly_right_is_told():
    van = read_van(
        f'{HEAD}[[panels]]\nname = "roof"\nregulator = "fridge"\n'
        '[[circuits]]\nname = "fridge"\nfrom = "blokc.1"\n[[bars]]\nname = "block"'
    )
    first, second = van.net.problems
    assert first.place == "panels[1].regulator" and first.near == ""
    assert second.place == "circuits[1].from" and second.near == "block"


def test_of_any_van_every_run_has_its_conductors_and_a_way_or_none():
    rng = chance("nets")
    for _ in range(often(50, 2000)):
        van = drawn_van(rng)
        for part in (one.part for one in van.net.conductors):
            own = van.net.of(part)
            assert [one.pole for one in own] in ([""], ["plus"], ["minus"], ["plus", "minus"])
            path = way(van, part)
            assert path is None or len({one.id for one in path.runs}) == len(path.runs)
        assert all(one.sentence for one in van.net.problems)

"""A plan that is opened as an inspection: what the plan says has yet to be seen."""

from calc.van.demos import demo

AS_PLANNED = demo("marram")


def test_nothing_is_proven_by_the_plan_alone():
    van = AS_PLANNED.changed({"van.kind": "inspection"})
    assert not [one for one in AS_PLANNED.review().findings if one.not_proven]
    places = {one.place for one in van.review().findings if one.not_proven}
    assert any(place.startswith("circuits[1]") for place in places)
    safety = {key.id for key in van.all("circuits")[0].kind.keys if key.safety}
    assert not {key for key in safety if van.all("circuits")[0][key].proven}


def test_what_is_seen_then_is_proven_and_the_plan_stays_beside_it():
    van = AS_PLANNED.changed({"van.kind": "inspection"})
    seen = van.changed({"circuits[1].fuse": "15 A"})
    value = seen.at("circuits[1].fuse")
    assert value.proven and [said.text for said in value.statements] == ["15 A", "15 A"]
    before = [one for one in van.review().findings if one.not_proven]
    after = [one for one in seen.review().findings if one.not_proven]
    assert 0 < len(after) <= len(before)


def test_a_drawn_van_with_a_list_of_loads_is_reviewed():
    loads = "kettle:800 W:0.2 h:evening:inverter"
    van = AS_PLANNED.changed({"van.kind": "inspection", "patterns[1].loads": loads})
    assert van.review().findings

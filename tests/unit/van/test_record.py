"""What a van says at each place: its value, the state of that value, and who stated it."""

import pytest

import calc
from calc.van.files import read_van
from calc.van.values import Evidence, Stage, State
from tests.van_samples import SOUND, sound

PLAN = 'format = 1\n[van]\nkind = "plan"\n'
INSPECTION = 'format = 1\n[van]\nkind = "inspection"\n'


def circuit(lines: str, head: str = PLAN):
    """Return the only circuit of a van that has the given lines."""
    return read_van(f"{head}[[circuits]]\n{lines}").all("circuits")[0]


def told(text: str) -> dict[str, str]:
    """Return what is wrong with a file, by place."""
    with pytest.raises(calc.InputError) as error:
        read_van(text)
    return {problem.field: problem.message for problem in error.value.problems}


def test_a_value_is_read_by_the_field_of_the_worksheet_that_asks_for_it():
    part = circuit('length = "12 ft"\nconductor = "8 AWG"')
    assert part.si("length") == pytest.approx(12 * 0.3048, rel=1e-12)
    assert part.choice("conductor") == "8 AWG"
    assert part.text("length") == "12 ft"


def test_a_blank_is_a_default_in_a_plan_and_not_seen_in_an_inspection():
    plan, inspection = circuit(""), circuit("", INSPECTION)
    assert plan["bundled"].state is State.DEFAULT
    assert plan.text("bundled") == "2" and plan.si("bundled") == 2
    assert plan["length"].state is State.BLANK
    assert plan.text("length") == "" and plan.si("length") is None
    for value in inspection.values.values():
        assert value.state is State.NOT_SEEN and value.reading is None and value.text == ""


@pytest.mark.parametrize("text", ["not seen", "Not seen", "NOT-SEEN", " not  seen "])
def test_not_seen_is_an_answer_everywhere(text):
    part = circuit(f'length = "{text}"\nfuse = "{text}"')
    assert part["length"].state is part["fuse"].state is State.NOT_SEEN
    assert part.text("length") == "" and part.choice("fuse") is None


def test_none_is_an_answer_only_where_there_may_be_none():
    assert circuit('fuse = "none"')["fuse"].state is State.NONE
    wrong = told(f'{PLAN}[[circuits]]\nname = "fridge"\nlength = "none"')
    assert list(wrong) == ["circuits[1].length"]
    assert "“not seen”" in wrong["circuits[1].length"]
    assert "fridge" in wrong["circuits[1].length"]


def test_none_is_a_choice_where_the_field_has_it():
    van = read_van(f'{PLAN}[[joints]]\nname = "stud"\nlock = "none"')
    assert van.at("joints[1].lock").state is State.GIVEN


def test_the_stages_stand_side_by_side_and_the_last_judges():
    part = circuit(
        """conductor = [
          { measured = "6 AWG", who = "A. Brandt", when = "2026-11-21", instrument = "calliper" },
          { planned = "10 AWG" },
          { found = "8 AWG", evidence = "label", when = 2026-11-20 },
        ]"""
    )
    value = part["conductor"]
    assert [said.stage for said in value.statements] == list(Stage)
    assert part.choice("conductor") == "6 AWG"
    assert value.statements[0].evidence is Evidence.PLAN
    assert value.statements[1].evidence is Evidence.LABEL
    assert value.statements[1].when == "2026-11-20"  # as a date and as a text
    assert value.statements[2].evidence is Evidence.MEASURED
    assert value.statements[2].who == "A. Brandt"


def test_of_two_at_one_stage_the_later_date_judges():
    part = circuit(
        """measured_drop = [
          { measured = "250 mV", when = "2027-11-20" },
          { measured = "210 mV", when = "2026-11-20" },
        ]"""
    )
    assert part.text("measured_drop") == "250 mV"
    assert [said.text for said in part["measured_drop"].statements] == ["210 mV", "250 mV"]


def test_what_was_only_told_or_only_planned_is_not_proven():
    assert circuit('fuse = "15 A"', INSPECTION)["fuse"].proven
    assert circuit('fuse = "none"', INSPECTION)["fuse"].proven
    told_only = circuit('fuse = { found = "15 A", evidence = "told" }', INSPECTION)
    planned = circuit('fuse = { planned = "15 A" }', INSPECTION)
    for part in (told_only, planned):
        assert part.text("fuse") == "15 A" and not part["fuse"].proven
    assert not circuit("", INSPECTION)["fuse"].proven
    assert not circuit('fuse = "not seen"', INSPECTION)["fuse"].proven


def test_a_number_without_quotation_marks_is_read_where_it_has_one_meaning():
    assert circuit("bundled = 3").si("bundled") == 3
    assert circuit("name = 12").name == "12"
    wrong = told(f"{PLAN}[[circuits]]\nlength = 3.2\nlimit = 3\n")
    assert "needs its unit" in wrong["circuits[1].length"]
    assert "needs its unit" in wrong["circuits[1].limit"]


def test_every_problem_is_told_at_once_at_its_place():
    wrong = told(
        """format = 1
        none = ["van", "batery"]
        [van]
        sistem = "12 V"
        system = "13 V"
        [[circuits]]
        name = "fridge"
        [[circuits]]
        name = "pump"
        lenght = "3 m"
        length = "3 V"
        [[circuits]]
        measured_drop = [{ measured = "2 V", found = "3 V" }]
        fuse = { found = "3 A", evidence = "hearsay" }
        """
    )
    assert set(wrong) == {
        "none", "van.sistem", "van.system", "circuits[2].lenght", "circuits[2].length",
        "circuits[3].measured_drop", "circuits[3].fuse",
    }  # fmt: skip
    assert "“system”" in wrong["van.sistem"] and "“length”" in wrong["circuits[2].lenght"]
    assert "12 V, 24 V or 48 V" in wrong["van.system"]
    assert "pump" in wrong["circuits[2].length"] and "mm" in wrong["circuits[2].length"]
    assert "measured, seen, label or told" in wrong["circuits[3].fuse"]


def test_an_id_is_made_of_the_name_and_no_two_are_alike():
    van = read_van(
        f"""{PLAN}
        [[circuits]]
        name = "Kühlbox, vorn"
        [[circuits]]
        name = "kühlbox vorn"
        [[circuits]]
        name = "电池"
        [[circuits]]
        id = "circuit-4"
        [[circuits]]
        [[batteries]]
        name = "bank"
        """
    )
    ids = [part.id for part in van.everything()]
    assert ids == [
        "van", "bank-2", "kuhlbox-vorn", "kuhlbox-vorn-2", "circuit-3", "circuit-4", "circuit-5",
    ]  # fmt: skip
    assert van.by_id("kuhlbox-vorn-2").place == "circuits[2]"
    assert (
        "another part"
        in told(f'{PLAN}[[circuits]]\nid = "a"\n[[batteries]]\nid = "a"').popitem()[1]
    )
    assert list(told(f'{PLAN}[[circuits]]\nid = "A b"')) == ["circuits[1].id"]


def test_a_kind_of_part_may_be_stated_as_a_whole():
    van = read_van(
        'format = 1\nnone = ["gas", "alarms"]\nnot_seen = ["joints"]\n[inverter]\nnone = true'
    )
    assert van.stated("gas") is van.stated("alarms") is van.stated("inverter") is State.NONE
    assert van.stated("joints") is State.NOT_SEEN
    assert van.stated("heater") is State.BLANK
    assert van.at("inverter.rating").state is State.NONE
    assert read_van(INSPECTION).stated("heater") is State.NOT_SEEN
    assert "bank" in told('format = 1\nnone = ["bank"]')["none"]
    assert list(told('format = 1\nnone = ["gas"]\n[gas]\n')) == ["none"]


def test_a_van_always_has_the_part_van():
    van = read_van("format = 1")
    assert van.one("van").text("system") == "12 V"
    assert van.one("bank") is None and not van.inspection


def test_a_change_is_another_van_and_the_text_typed_judges():
    before = sound()
    after = before.changed({"circuits[1].length": "4 m", "inverter.rating": "800 W"})
    assert before.at("circuits[1].length").text == "3.2 m" and before.one("inverter") is None
    assert after.at("circuits[1].length").text == "4 m"
    assert after.one("inverter").si("rating") == 800
    assert after.all("circuits")[1] is before.all("circuits")[1]
    assert after.changed({"circuits[1].length": ""}).at("circuits[1].length").state is State.BLANK
    measured = before.changed({"circuits[1].length": {"measured": "5 m", "who": "A. Brandt"}})
    assert [s.text for s in measured.at("circuits[1].length").statements] == ["3.2 m", "5 m"]
    again = measured.changed({"circuits[1].length": "6 m"})
    assert again.at("circuits[1].length").text == "6 m"


def test_a_change_that_cannot_be_tells_every_place():
    with pytest.raises(calc.InputError) as error:
        sound().changed(
            {"circuits[1].length": "4 V", "circuits[9].length": "4 m", "circuits.length": "4 m",
             "circuits[1].colour": "red", "bank.coldest": "none"}
        )  # fmt: skip
    assert [problem.field for problem in error.value.problems] == [
        "circuits[1].length", "circuits[9].length", "circuits.length", "circuits[1].colour",
        "bank.coldest",
    ]  # fmt: skip


def test_parts_come_go_and_move_and_keep_their_ids():
    van = sound().added("circuits", {"name": "fridge", "current": "4 A"})
    assert [part.id for part in van.all("circuits")] == ["fridge", "lights", "fridge-2"]
    moved = van.moved("circuits[3]", 1)
    assert [part.id for part in moved.all("circuits")] == ["fridge-2", "fridge", "lights"]
    assert moved.all("circuits")[0].place == "circuits[1]"
    assert moved.moved("circuits[1]", 3) == van
    assert van.without("circuits[3]") == sound()
    assert read_van(SOUND) == sound()
    with pytest.raises(calc.InputError, match="no place"):
        van.without("circuits[4]")
    with pytest.raises(calc.InputError):
        van.added("circuits", {"length": "4 V"})


def test_a_new_id_goes_to_whatever_names_the_part():
    van = sound().changed({"bars[1].id": "block"})
    assert van.at("circuits[1].from").text == "block.1" and van.at("cables[1].to").text == "block"
    assert van.by_id("fuse-block") is None and not van.net.problems
    assert van.changed({"bars[1].id": "fuse-block"}) == sound()
    for wrong in ("A b", "minus-bar", "bank"):
        with pytest.raises(calc.InputError):
            van.changed({"bars[1].id": wrong})


def test_a_kind_is_stated_and_a_part_takes_the_place_of_that():
    van = sound().stating("inverter", State.NONE)
    assert van.stated("inverter") is State.NONE
    assert van.changed({"inverter.rating": "1 kW"}).stated("inverter") is State.GIVEN
    assert van.stating("circuits", State.NOT_SEEN).all("circuits") == ()
    with pytest.raises(calc.InputError):
        van.stating("bank", State.NONE)


def test_a_plan_that_becomes_an_inspection_takes_nothing_as_usual():
    van = sound().changed({"van.kind": "inspection"})
    assert van.inspection
    assert van.at("circuits[1].bundled").state is State.NOT_SEEN
    assert van.at("circuits[1].length").text == "3.2 m"
    assert not van.at("circuits[1].fuse").proven
    assert van.changed({"circuits[1].fuse": "15 A"}).at("circuits[1].fuse").proven
    assert read_van(calc.van.files.write_van(van)) == van

"""What a page about a van asks and is told: JSON in and out, nothing typed is lost or live."""

import json
import re
from random import Random

import pytest

from calc.render.bridge import ask
from calc.render.van import SECTIONS, load_texts, ready_loads
from calc.van.demos import DEMOS, demo_text
from calc.van.files import read_van
from calc.van.parts import PARTS
from calc.van.record import Van
from calc.van.values import State


def told(do: str, **more):
    return json.loads(ask(json.dumps({"van": {"do": do, **more}})))


def opened(source: str) -> str:
    return told("open", source=source)["text"]


def van_in(reply) -> Van:
    return read_van(reply["text"])


@pytest.fixture
def plan() -> str:
    return told("new", name="Fern")["text"]


@pytest.fixture(params=DEMOS)
def sample(request) -> str:
    return told("demo", name=request.param)["text"]


def change(text: str, place: str, drafts=None, **what):
    return told("change", text=text, drafts=drafts or {}, changes={place: what})


def test_a_new_van_is_what_it_was_asked_to_be():
    assert van_in(told("new", name="Fern")).name == "Fern"
    assert not van_in(told("new")).inspection
    assert van_in(told("new", inspection="x")).inspection


def test_every_kind_of_part_stands_once_under_a_heading():
    named = [name for _, names in SECTIONS for name in names]
    assert sorted(named) == sorted(kind.id for kind in PARTS)
    assert len(set(named)) == len(named)


def test_a_van_is_written_and_opened_as_it_was(sample):
    van = read_van(sample)
    for form in ("toml", "json"):
        written = told("write", text=sample, **{"as": form})
        assert written["file"].endswith(form)
        assert read_van(written["content"]) == van
        assert opened(written["content"]) == sample
    link = told("link", text=sample, start="https://fern.example/van/#")
    fragment = link["link"].partition("#")[2]
    assert told("unpack", link=f"#{fragment}")["text"] == sample
    assert str(len(link["link"])) in link["said"]


def long_van(entries: int) -> str:
    """Return a van whose log nobody can pack small."""
    draw = Random(entries)
    words = ("".join(draw.choices("abcdefghijklmnopqrstuvwxyz", k=36)) for _ in range(entries))
    return opened("format = 1\n[van]\n" + "\n".join(f'[[log]]\npart = "{one}"' for one in words))


def test_a_link_that_would_be_cut_is_not_made_and_its_size_is_told():
    reply = told("link", text=long_van(400), start="x#")
    said = reply["problems"][0]["message"]
    size = int(re.search(r"(\d+) characters", said)[1])
    assert size > 8000 and "file" in said and "link" not in reply


def test_a_small_van_has_a_square_code_and_a_large_one_says_why_it_has_none(plan):
    assert told("link", text=plan, start="x#")["code"].startswith("<svg")
    large = told("link", text=long_van(80), start="x#")
    assert not large["code"] and "too large" in large["said"]


def test_what_cannot_be_opened_is_told_with_its_places():
    said = told("open", source='format = 1\n[van]\nsystem = "13 V"\n[[circuits]]\nlength = "x"\n')
    places = [one["place"] for one in said["problems"]]
    assert places == ["van.system", "circuits[1].length"]
    assert told("unpack", link="#v=1&van=AAAA")["problems"]
    assert told("nothing")["problems"]
    assert told("parts", text="no van")["problems"]


def test_a_value_is_changed_with_the_unit_that_is_picked_beside_it(plan):
    text = told("add", text=plan, of="circuits", ready="")["text"]
    reply = change(text, "circuits[1].length", typed="3,5", unit="m")
    assert van_in(reply).at("circuits[1].length").text == "3,5 m"
    said = reply["fields"]["circuits[1].length"]
    assert (said["entry"], said["unit"], said["error"]) == ("3.5", "m", "")
    assert "3.5\u00a0m" in reply["lines"]["circuits[1]"]
    typed = change(text, "circuits[1].length", typed="12 ft", unit="m")
    assert typed["fields"]["circuits[1].length"]["unit"] == "ft"


def test_what_cannot_be_read_stays_in_its_box_and_the_value_before_still_counts(plan):
    text = told("add", text=plan, of="circuits", ready="fridge")["text"]
    text = change(text, "circuits[1].length", typed="3 m")["text"]
    reply = change(text, "circuits[1].length", typed="3 furlongs", unit="m")
    assert van_in(reply).at("circuits[1].length").text == "3 m"
    assert reply["drafts"] == {"circuits[1].length": "3 furlongs"}
    said = reply["fields"]["circuits[1].length"]
    assert said["entry"] == "3 furlongs"
    assert said["error"].startswith("Length, one way") and "3\u00a0m counts" in said["error"]
    form = told("part", text=text, place="circuits[1]", drafts=reply["drafts"])["html"]
    assert 'value="3 furlongs"' in form and "must be" in form
    mended = change(text, "circuits[1].length", reply["drafts"], typed="4 m")
    assert mended["drafts"] == {}


def test_drafts_move_with_their_parts_and_go_with_them(plan):
    text = plan
    for _ in range(3):
        text = told("add", text=text, of="circuits", ready="fridge")["text"]
    drafts = {"circuits[2].length": "x", "circuits[3].length": "y", "van.name": "a:b"}
    removed = told("remove", text=text, place="circuits[2]", drafts=drafts)
    assert removed["drafts"] == {"circuits[2].length": "y", "van.name": "a:b"}
    moved = told("move", text=text, place="circuits[3]", by=-1, drafts=drafts)
    assert moved["drafts"] == {
        "circuits[3].length": "x",
        "circuits[2].length": "y",
        "van.name": "a:b",
    }
    copied = told("copy", text=text, place="circuits[2]", drafts=drafts)
    assert copied["drafts"] == {
        "circuits[2].length": "x",
        "circuits[4].length": "y",
        "van.name": "a:b",
    }


def test_a_copy_stands_below_its_first_under_a_name_of_its_own(plan):
    text = told("add", text=plan, of="circuits", ready="fridge")["text"]
    text = told("add", text=text, of="circuits", ready="roof-fan")["text"]
    reply = told("copy", text=text, place="circuits[1]")
    assert [one.name for one in van_in(reply).all("circuits")] == ["fridge", "fridge 2", "roof fan"]
    assert reply["where"] == "circuits[2]"
    again = told("copy", text=reply["text"], place="circuits[2]")
    assert van_in(again).all("circuits")[2].name == "fridge 3"


def test_a_state_is_said_and_taken_back(plan):
    text = told("add", text=plan, of="circuits", ready="fridge")["text"]
    none = change(text, "circuits[1].fuse", says="none")
    assert van_in(none).at("circuits[1].fuse").state is State.NONE
    assert none["fields"]["circuits[1].fuse"]["is"] == "none"
    back = change(none["text"], "circuits[1].fuse", typed="", says="")
    assert van_in(back).at("circuits[1].fuse").state is State.BLANK
    whole = told("whole", text=text, of="inverter", says="none")
    assert van_in(whole).stated("inverter") is State.NONE
    again = told("whole", text=whole["text"], of="inverter", says="none")
    assert van_in(again).stated("inverter") is State.BLANK


def test_an_inspection_says_by_what_a_value_is_known_by_whom_and_when():
    text = told("new", inspection="x")["text"]
    text = change(text, "van.inspector", typed="A. Brandt")["text"]
    text = change(text, "van.date", typed="2026-11-20")["text"]
    text = told("add", text=text, of="circuits", ready="fridge")["text"]
    told_so = change(text, "circuits[1].conductor", typed="14 AWG", by="told")
    value = van_in(told_so).at("circuits[1].conductor")
    assert not value.proven
    (said,) = value.statements
    assert (said.evidence, said.who, said.when) == ("told", "A. Brandt", "2026-11-20")
    seen = change(told_so["text"], "circuits[1].conductor", typed="14 AWG", by="seen")
    assert van_in(seen).at("circuits[1].conductor").proven


def test_in_an_inspection_a_ready_load_brings_no_figure_that_nobody_has_seen():
    text = told("new", inspection="x")["text"]
    (part,) = van_in(told("add", text=text, of="circuits", ready="fridge")).all("circuits")
    assert part.name == "fridge"
    assert not part["power"].known and not part["hours"].known


@pytest.mark.parametrize("row", ready_loads().rows, ids=lambda row: row["id"])
def test_every_ready_load_makes_a_circuit_that_can_be_read(plan, row):
    reply = told("add", text=plan, of="circuits", ready=row["id"])
    (part,) = van_in(reply).all("circuits")
    assert all(part[key].known for key in load_texts(row["id"]))
    assert reply["box"] == "circuits[1].length"


def test_a_new_circuit_is_fed_where_the_last_one_is():
    text = opened(demo_text("marram"))
    last = read_van(text).all("circuits")[-1]
    new = van_in(told("add", text=text, of="circuits", ready="fridge")).all("circuits")[-1]
    assert new.text("from") == last.text("from").partition(".")[0] != ""


def test_a_mend_that_is_pressed_takes_its_finding_away():
    text = told("demo", name="ten-mistakes")["text"]
    best = told("best", text=text)["html"]
    key = re.search(r'data-mend="([^"]+)"', best)[1]
    rule, part, _ = key.split("|")
    before = told("review", text=text)["html"]
    reply = told("mend", text=text, mend=key)
    after = told("review", text=reply["text"])["html"]
    card = f'data-way-out="{rule}|{part}"'
    assert card in before and card not in after
    assert told("mend", text=text, mend="no|such|0")["problems"]


def test_a_sheet_opens_for_a_circuit_and_is_put_back():
    text = told("demo", name="marram")["text"]
    targets = told("sheets", text=text, id="v1", sheet="wire-drop")["targets"]
    first = targets[0]
    assert first["link"].endswith(f"&van=v1:{first['where']}") and "length=" in first["link"]
    put = {"sheet": "wire-drop", "place": first["where"]}
    reply = told("put", text=text, **put, values={"length": "7"}, units={"length": "m"})
    assert van_in(reply).at(f"{first['where']}.length").text == "7 m"
    same = told("put", text=reply["text"], **put, values={"length": "7"}, units={"length": "m"})
    assert same["text"] == reply["text"] and "already" in same["said"]
    assert told("put", text=text, sheet="wire-drop", place="circuits[99]")["problems"]
    assert told("sheets", text=text, sheet="no-such-sheet")["targets"] == []


def test_marks_stand_at_parts_and_kinds_that_the_page_shows():
    text = told("demo", name="ten-mistakes")["text"]
    marks = told("review", text=text)["marks"]
    parts = told("parts", text=text)["html"]
    assert marks
    for place in marks:
        assert f'data-mark="{place}"' in parts


def test_the_circuits_of_a_spreadsheet_are_added(plan):
    reply = told("add-circuits", text=plan, source="name;length\nlamp;2 m\nfan;3,5 m\n")
    assert [one.name for one in van_in(reply).all("circuits")] == ["lamp", "fan"]
    assert reply["said"] == "2 circuits added."
    assert told("add-circuits", text=plan, source="name;length\nlamp;x\n")["problems"]
    assert told("template", text=plan)["content"]


def test_lists_and_sheets_of_the_diagram_are_saved_as_files(sample):
    html = told("lists", text=sample)["html"]
    names = re.findall(r'data-writes-csv="([^"]+)"', html)
    assert names
    for name in names:
        assert told("csv", text=sample, list=name)["content"].count("\r\n") > 1
    assert told("csv", text=sample, list="none")["problems"]
    assert told("sheet", text=sample, sheet=1)["content"].startswith("<?xml")
    assert told("sheet", text=sample, sheet=9)["problems"]

"""Whatever is typed or sent: an answer or a sentence, soon, and nothing else."""

import json
import math
import time

from hypothesis import given
from hypothesis import strategies as st

import calc
from calc.render.bridge import ask
from calc.worksheet.link import open_fragment, write
from tests.properties.inputs import NAMES, NUMBERISH, TEXTS, inputs_of, tried

HUNG = 10  # seconds of this process, of which a plain answer takes some thousandths


@given(st.data(), NAMES)
@tried(750)
def test_any_text_in_any_field_gives_an_answer_or_an_input_error(data, name):
    sheet = calc.find(name)
    ids = [field.id for field in sheet.fields]
    texts = data.draw(st.dictionaries(st.sampled_from(ids), TEXTS, min_size=1))
    began = time.process_time()
    try:
        answer = calc.work(sheet.id, texts)
    except calc.InputError as error:
        assert error.problems
        assert {problem.field for problem in error.problems} <= {f.id for f in sheet.fields}
        assert all(0 < len(problem.message) < 400 for problem in error.problems)
    else:
        assert answer.sentence
        for value in answer.values.values():
            assert not isinstance(value, float) or math.isfinite(value)
    assert time.process_time() - began < HUNG


@given(st.data(), NAMES)
@tried(200)
def test_the_door_takes_any_text_and_any_unit(data, name):
    sheet = calc.find(name)
    ids = [field.id for field in sheet.fields]
    values = data.draw(st.dictionaries(st.sampled_from(ids), TEXTS))
    units = data.draw(st.dictionaries(st.sampled_from(ids), TEXTS))
    reply = json.loads(ask(json.dumps({"sheet": sheet.id, "values": values, "units": units})))
    parts = list(reply["fields"].values())
    cells = [cell for part in parts for row in part.get("rows", []) for cell in row]
    wrong = [part for part in (*parts, *cells) if part["error"]]
    assert bool(reply["answer"]) is not bool(wrong)
    assert reply["status"]


@given(st.data(), NAMES)
@tried(200)
def test_inputs_that_each_field_accepts_are_worked_or_refused_by_name(data, name):
    sheet = calc.find(name)
    texts = data.draw(inputs_of(sheet))
    try:
        answer = sheet.work(texts)
    except calc.InputError as error:  # the sum itself has no figure for these together
        assert len(error.problems) == 1
        assert error.message.startswith(sheet.field(error.field).label)
    else:
        assert answer.working


@given(NAMES, st.one_of(st.text(), st.text("v=1&%#+;currentlod. 0123456789<>\"'").map(str)))
@tried(500)
def test_any_fragment_opens_without_raising(name, fragment):
    sheet = calc.find(name)
    began = time.process_time()
    opened = open_fragment(sheet, fragment)
    json.loads(ask(json.dumps({"sheet": sheet.id, "fragment": fragment})))
    assert set(opened.texts) <= {field.id for field in sheet.fields}
    assert time.process_time() - began < HUNG


@given(st.data(), NAMES)
@tried(250)
def test_a_link_made_from_inputs_gives_the_same_inputs_back(data, name):
    sheet = calc.find(name)
    texts = data.draw(inputs_of(sheet))
    link = write(sheet, texts)
    again = open_fragment(sheet, link)
    assert again.notes == ()
    assert write(sheet, again.texts) == link
    before, _ = sheet.read(texts)
    after, _ = sheet.read(again.texts)
    assert {k: (r.value, r.text) for k, r in before.items() if r.applies} == {
        k: (r.value, r.text) for k, r in after.items() if r.applies
    }


@given(st.data(), NAMES, NUMBERISH)
@tried(250)
def test_a_link_keeps_what_cannot_be_read_too(data, name, text):
    sheet = calc.find(name)
    field = data.draw(st.sampled_from([f.id for f in sheet.fields if not f.conditional]))
    again = open_fragment(sheet, write(sheet, {field: text}))
    _, before = sheet.read({field: text})
    _, after = sheet.read(again.texts)
    assert [p.message for p in before] == [p.message for p in after] or not text.strip()

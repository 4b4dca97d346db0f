"""Whatever a van holds, its file and its data hold it too; whatever a file holds, a sentence."""

import json
from random import Random

from hypothesis import given
from hypothesis import strategies as st

import calc
from calc.van.files import read_van, van_as_data, van_from_data, write_van
from calc.van.parts import PARTS
from calc.van.values import State
from tests.properties.inputs import TEXTS, tried, valid
from tests.van_samples import drawn_van

VANS = st.integers(0, 10**9).map(lambda number: drawn_van(Random(number)))
KEYS = [(kind, key) for kind in PARTS for key in kind.keys]


@given(VANS)
@tried(60)
def test_a_van_comes_back_from_its_file_and_from_its_data(van):
    assert read_van(write_van(van)) == van
    stored = json.loads(json.dumps(van_as_data(van)))
    assert van_from_data(stored) == van
    assert read_van(json.dumps(stored)) == van


@given(st.data(), st.sampled_from(KEYS), st.booleans())
@tried(400)
def test_a_text_that_a_field_takes_stands_in_the_file_as_it_was_typed(data, pair, inspection):
    kind, key = pair
    text = data.draw(valid(key.field))
    van = van_from_data({"format": 1, "van": {"kind": "inspection" if inspection else "plan"}})
    van = (
        van.added(kind.id, {key.id: text})
        if kind.many
        else van.changed({f"{kind.id}.{key.id}": text})
    )
    assert read_van(write_van(van)) == van
    part = van.all(kind.id)[-1]
    if part[key.id].state is State.GIVEN:
        read, own = part[key.id].reading, key.field.read(text)
        assert (read.value, read.kind) == (own.value, own.kind)


@given(VANS, st.data())
@tried(60)
def test_a_struck_value_is_as_if_it_had_never_been(van, data):
    places = [
        f"{part.place}.{name}"
        for part in van.everything()
        for name, value in part.values.items()
        if value.statements and f"{part.place}.{name}" != "van.kind"
    ]
    if not places:
        return
    place = data.draw(st.sampled_from(places))
    struck = van.changed({place: ""})
    assert not struck.at(place).statements
    assert struck.at(place).state is (State.NOT_SEEN if van.inspection else struck.at(place).state)
    assert struck.at(place).state in (State.NOT_SEEN, State.BLANK, State.DEFAULT)


@given(st.dictionaries(st.sampled_from(KEYS), TEXTS, min_size=1), st.booleans())
@tried(300)
def test_any_text_at_any_key_is_a_van_or_a_problem_at_its_place(texts, as_statement):
    data: dict = {"format": 1}
    for (kind, key), text in texts.items():
        part = {key.id: {"found": text} if as_statement else text}
        data.setdefault(kind.id, [{}] if kind.many else {})
        (data[kind.id][0] if kind.many else data[kind.id]).update(part)
    places = {f"{kind.id}{'[1]' * kind.many}.{key.id}" for kind, key in texts}
    try:
        van = van_from_data(data)
    except calc.InputError as error:
        assert {problem.field for problem in error.problems} <= places
        assert all(0 < len(problem.message) < 500 for problem in error.problems)
    else:
        assert read_van(write_van(van)) == van


@given(VANS, st.data())
@tried(60)
def test_a_mangled_file_is_a_van_or_an_input_error(van, data):
    text = write_van(van)
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(text)))
        gone = data.draw(st.integers(0, 30))
        text = text[:at] + data.draw(st.one_of(st.just(""), TEXTS, SIGNS)) + text[at + gone :]
    try:
        found = read_van(text)
    except calc.InputError as error:
        assert all(problem.message for problem in error.problems)
    else:
        assert read_van(write_van(found)) == found


SIGNS = st.text("[]{}=.,\"'#\n\\ 1a", max_size=12)


@given(VANS, st.sampled_from(KEYS), st.integers(0, 3), TEXTS)
@tried(200)
def test_any_change_is_another_van_or_an_input_error(van, pair, number, text):
    kind, key = pair
    place = f"{kind.id}[{number}].{key.id}" if kind.many else f"{kind.id}.{key.id}"
    before = write_van(van)
    try:
        changed = van.changed({place: text})
    except calc.InputError as error:
        assert {problem.field for problem in error.problems} == {place}
    else:
        assert read_van(write_van(changed)) == changed
    assert write_van(van) == before

"""A file from a stranger: a sentence for each, soon, whatever is in it."""

import json
import time

import pytest

import calc
from calc.van.files import read_van, van_from_data, write_van

HUNG = 20  # seconds of this process; the longest takes about one
MANY = 1_000_000

HOSTILE = {
    "nothing": "",
    "no TOML": "<html><body onload=alert(1)>",
    "11 MB of one text": 'format = 1\n[van]\nname = "' + "x" * 11 * MANY + '"',
    "10 MB of one text": 'format = 1\n[van]\nname = "' + "x" * 9 * MANY + '"',
    "10 MB of escapes": 'format = 1\n[van]\nname = "' + r"\n" * 4 * MANY + '"',
    "10 MB of a comment": "format = 2 #" + "x" * 9 * MANY,
    "many comments": "#\n" * 4 * MANY,
    "nested lists": "format = 1\nvan = " + "[" * 100_000 + "]" * 100_000,
    "nested tables": "format = 1\nvan = " + "{a=" * 100_000 + "1" + "}" * 100_000,
    "nested names": "format = 1\n" + "a." * 100_000 + "b = 1",
    "nested heads": "format = 1\n[" + "a." * 100_000 + "b]",
    "quoted names": "format = 1\n" + '"a".' * 100_000 + "b = 1",
    "two million keys": "format = 1\n" + "".join(f"a{n}=1\n" for n in range(MANY)),
    "two million keys in a line": "van={" + ",".join(f"a{n}=1" for n in range(MANY)) + "}",
    "many parts": "format = 1\n" + "[[circuits]]\n" * 90_000,
    "many kinds": "format = 1\n" + "".join(f"[k{n}]\n" for n in range(60_000)),
    "a long list": "format = 1\nnone = [" + '"gas",' * 190_000 + "]",
    "a number of a million digits": "format = " + "9" * MANY,
    "a hexadecimal number of a million digits": "format = 1\n[van]\nname = 0x" + "f" * MANY,
    "many quotation marks": "format = 1\n[van]\nname = " + '"' * MANY,
    "a text that never ends": "format = 1\n[van]\nname = '''" + "\\" * MANY,
    "nested JSON": '{"format": 1, "van": ' + "[" * 100_000 + "]" * 100_000 + "}",
    "JSON cut short": '{"format": 1, "van": {',
    "JSON of one number": '{"format": ' + "9" * 10_000 + "}",
    "JSON that is no table": "[1, 2]",
    "JSON that says two things": '{"format": 1, "van": {"name": "a", "name": "b"}}',
    "JSON of what is no number": '{"format": NaN}',
    "a format of the future": "format = 2",
    "a format that is no number": "format = true",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_gets_sentences_soon(name):
    began = time.process_time()
    with pytest.raises(calc.InputError) as error:
        read_van(HOSTILE[name])
    assert time.process_time() - began < HUNG
    problems = error.value.problems
    assert 0 < len(problems) <= 201
    assert all(0 < len(problem.message) < 2000 for problem in problems)
    assert all(len(problem.field) < 80 for problem in problems)


VALUES = (
    "inf", "-inf", "nan", "1e999", "-1e308", "0x7fffffffffffffffffffffff", "9007199254740993000000",
    "true", "1979-05-27T07:32:00Z", "1979-05-27", "07:32:00", "[]", "[[]]", "[1]", "{}", "[{}]",
    "{ found = {} }", "{ found = [] }", "{ found = 1, who = 2 }",
    '{ found = "3 m", when = "soon" }',
    '{ found = "3 m", evidence = [] }', '{ found = "3 m", when = 07:32:00 }', '"10**10**8"',
    '{ planned = "3 m", evidence = "seen" }', '"__class__"', '"\\u202e3 m"', '"\\u0000\\u0007"',
)  # fmt: skip


@pytest.mark.parametrize("text", VALUES)
@pytest.mark.parametrize("key", ["length", "conductor", "name", "fuse", "from"])
def test_any_value_at_any_key_is_read_or_refused_at_its_place(text, key):
    try:
        van = read_van(f"format = 1\n[[circuits]]\n{key} = {text}")
    except calc.InputError as error:
        assert {problem.field for problem in error.problems} == {f"circuits[1].{key}"}
    else:
        assert read_van(write_van(van)) == van


def test_html_and_signs_that_turn_the_text_are_only_text_or_gone():
    van = read_van(
        'format = 1\n[van]\nname = "<img src=x onerror=alert(1)>"\n'
        '[[circuits]]\nname = "\\u202efri\\u0000dge\\u200b\\u0007"\nplace = "a\\nb\\tc"'
    )
    assert van.name == "<img src=x onerror=alert(1)>"
    assert van.all("circuits")[0].name == "fridge"
    assert van.all("circuits")[0].text("place") == "a b c"


@pytest.mark.parametrize(
    "data",
    [None, 1, "x", [], [[]], {}, {"format": 1, "van": None, "circuits": {}},
     {"format": 1, "van": []},
     {"format": 1, "circuits": "x"}, {"format": 1, "circuits": [1, None, "x"]}, {"format": 1, 7: 8},
     {"format": 1, "none": "gas"}, {"format": 1, "none": [[]]}, {"format": 1, "none": {"gas": 1}},
     {"format": 1, "van": {"name": "\ud800", "kind": {"found": None}}},
     {"format": 1, "circuits": [{"length": float("nan"), 3: 4, "fuse": 10**5000}]}],
)  # fmt: skip
def test_any_data_is_a_van_or_an_input_error(data):
    try:
        van = van_from_data(data)
    except calc.InputError as error:
        assert error.problems
    else:
        json.dumps(calc.van.files.van_as_data(van)).encode()


def test_a_file_of_many_mistakes_names_the_first_and_counts_the_rest():
    with pytest.raises(calc.InputError) as error:
        read_van("format = 1\n[van]\n" + "".join(f'x{n} = "1"\n' for n in range(500)))
    assert len(error.value.problems) == 201
    assert "300" in error.value.problems[-1].message


def test_a_line_that_is_no_toml_is_named():
    with pytest.raises(calc.InputError, match="Line 3, column 8"):
        read_van("format = 1\n[van]\nname = A van")

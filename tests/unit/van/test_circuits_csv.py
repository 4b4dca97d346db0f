"""Circuits from a spreadsheet, and lists as CSV: what comes back is what went out, or is told."""

import csv
import io

import pytest

import calc
from calc.van.circuits_csv import TEMPLATE_KEYS, read_circuits, template
from calc.van.listed import ListTable, csv_of, is_formula
from calc.van.parts import CIRCUITS
from tests.counts import chance, often

HEAD = "Name,Current,Length,Conductor,Fuse"
LENGTH = CIRCUITS.key("length").field.label


def read_back(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline=""), strict=True))


def table(*rows: tuple[str, ...]) -> ListTable:
    return ListTable(id="t", title="T", columns=("a", "b"), rows=rows)


def test_cells_with_commas_quotes_and_line_ends_come_back_as_they_were():
    """RFC 4180, section 2: rules 5 to 7."""
    rows = (("a,b", 'say "on"'), ("two\r\nlines", ""), ("plain", "ü 2.5 mm²"))
    text = csv_of(table(*rows))
    assert text.splitlines(keepends=True)[0] == "a,b\r\n"
    assert text.endswith("\r\n")
    assert '"say ""on"""' in text
    assert read_back(text)[1:] == [list(row) for row in rows]


HOSTILE = (
    "=1+1", "+1", "-1", "@SUM(A1)", " =1+1", "\t=1+1", "\r=1+1", "\n=1+1", "＝1+1", "\u00a0=1",
    "=cmd|' /C calc'!A0", "\tx", "\rx", '=HYPERLINK("x","y")', "-2+3",
)  # fmt: skip


@pytest.mark.parametrize("text", HOSTILE)
def test_no_cell_begins_as_a_formula(text):
    for row in read_back(csv_of(table((text, text))))[1:]:
        for cell in row:
            assert cell.startswith("'")
            assert not is_formula(cell)
            assert cell[0] not in "=+-@\t\r\n"


@pytest.mark.parametrize("text", ["fridge", "F3+", "5 A", "−5 °C", "a=b", "1-2", ""])
def test_an_innocent_cell_is_left_alone(text):
    assert read_back(csv_of(table((text, "x"))))[1][0] == text


def test_what_was_guarded_is_read_without_the_guard():
    name = "-3 spare"
    out = csv_of(ListTable(id="c", title="C", columns=("Name", "Current"), rows=((name, "5 A"),)))
    assert read_circuits(out) == ({"name": name, "current": "5 A"},)


def test_the_template_names_its_columns_and_is_read_when_a_row_is_filled_in():
    text = template()
    rows = read_back(text)
    assert rows[2] == [CIRCUITS.key(key).field.label for key in TEMPLATE_KEYS]
    assert all(row[0].startswith("#") for row in (rows[0], rows[1], rows[3]))
    with pytest.raises(calc.InputError, match="no circuit under them"):
        read_circuits(text)
    (found,) = read_circuits(text.replace("# fridge", "fridge"))
    assert found["name"] == "fridge" and found["length"] == "3.2 m"
    assert set(found) <= set(TEMPLATE_KEYS)


@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_a_comma_a_semicolon_and_a_tab_may_part_the_cells(sign):
    text = sign.join(("Name", "Current", "Length")) + "\r\n"
    text += sign.join(("fridge", '"4,5 A"', '"3,2 m"')) + "\r\n"
    assert read_circuits(text) == ({"name": "fridge", "current": "4,5 A", "length": "3,2 m"},)


def test_a_decimal_comma_needs_no_quotes_where_semicolons_part_the_cells():
    assert read_circuits("Name;Length\nfridge;3,2 m\n")[0]["length"] == "3,2 m"


def test_a_comma_within_a_heading_parts_nothing():
    found = read_circuits(f'Name;"{LENGTH}"\nfridge;3 m\n')
    assert "," in LENGTH and found == ({"name": "fridge", "length": "3 m"},)


def test_headings_may_be_ids_or_labels_in_any_case_with_a_mark_of_byte_order():
    text = f'\ufeffNAME,"{LENGTH.upper()}",fuse_family\nfridge,3 m,cartridge\n'
    with pytest.raises(calc.InputError) as raised:
        read_circuits(text)
    assert [problem.cell for problem in raised.value.problems] == [(1, 2)]


def test_every_problem_is_told_by_its_row_and_column():
    text = f"{HEAD}\n# a remark\nfridge,much,3 m,12 AWG,10 A\n,5 A,3 V,7 AWG,10 A\npump,5 A,2 m\n"
    with pytest.raises(calc.InputError) as raised:
        read_circuits(text)
    told = {problem.cell: problem.message for problem in raised.value.problems}
    assert set(told) == {(2, 1), (3, 0), (3, 2), (3, 3)}
    assert told[2, 1].startswith("Row 3, column B: Current must be a number")
    assert told[3, 2].startswith("Row 4, column C: ")
    assert "12 AWG" not in told[3, 3] and "Conductor must be" in told[3, 3]
    assert told[3, 0] == "Row 4: give the circuit a name."


def test_a_heading_that_is_unknown_or_stands_twice_is_told():
    with pytest.raises(calc.InputError) as raised:
        read_circuits("Name,Colour,Current,Current\nfridge,red,5 A,6 A\n")
    assert [problem.cell for problem in raised.value.problems] == [(0, 1), (0, 3)]


def test_states_are_read_where_the_key_takes_them():
    found = read_circuits("Name,Fuse,Conductor\nfridge,none,not seen\n")
    assert found == ({"name": "fridge", "fuse": "none", "conductor": "not seen"},)
    with pytest.raises(calc.InputError, match="Conductor cannot be “none”"):
        read_circuits("Name,Conductor\nfridge,none\n")


@pytest.mark.parametrize(
    "text",
    ["", "\n\n", "# only a remark\n", "Name\n", "Current\n5 A\n", "Name\n" + "a\n" * 61,
     "Name\n" + "a" * 200_000 + "\n", 'Name,Current\n"fridge,5 A\n', 'Name\n"a"b\n',
     "x" * 10_000_001,
     "Name\nfridge,5 A\n", "\0", "Name\n\0\n"],
    ids=range(13),
)  # fmt: skip
def test_what_is_no_list_of_circuits_ends_in_sentences(text):
    with pytest.raises(calc.InputError) as raised:
        read_circuits(text)
    for problem in raised.value.problems:
        assert problem.message.endswith(".") and len(problem.message) < 300


def test_drawn_rubbish_is_read_or_told():
    draw = chance("csv")
    for _ in range(often(300, 20_000)):
        signs = draw.choices("Name,;\t\"\n\r#='5 Afridge\0é", k=draw.randint(0, 60))
        text = draw.choice(("", "Name,Current\n")) + "".join(signs)
        try:
            found = read_circuits(text)
        except calc.InputError:
            continue
        assert all(one["name"] for one in found)

"""A link carries its inputs whole, and every link that was ever made opens still."""

import re
from dataclasses import replace
from itertools import zip_longest
from pathlib import Path
from urllib.parse import unquote_plus

import pytest

import calc
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.link import open_fragment, write
from calc.worksheet.rows import Rows, parted
from tests.contract.samples import MOST_ROWS, answers, as_read, needed_by, sheets, wrong_for
from tests.counts import chance, often

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
OLD_LINKS = [
    line
    for line in (Path(__file__).parents[1] / "old_links.txt").read_text("utf-8").splitlines()
    if line.strip() and not line.startswith("#")
]


@EACH
def test_a_link_is_plain_readable_text_and_opens_to_the_same_inputs(sheet):
    """What is read alike is worked alike; that it is so, a few show by being worked again."""
    for texts, answer in answers(sheet.id):
        link = write(sheet, texts)
        opened = open_fragment(sheet, link)
        assert opened.notes == ()
        assert write(sheet, opened.texts) == link
        readings, problems = sheet.read(opened.texts)
        assert problems == ()
        assert as_read(readings) == as_read(answer.inputs), link
        assert link.startswith(f"v={sheet.default_set}&")
        assert re.fullmatch(r"[\w=&.%/*'(),:;@$~!+-]+", link, re.ASCII), link
        # The name and some two dozen letters for each field; a table may be as long as it is.
        most = sum(len(field.id) + 24 + longest(field) for field in sheet.fields)
        assert len(link) < most


@EACH
def test_an_opened_link_gives_the_same_answer(sheet):
    found = answers(sheet.id)
    for texts, answer in chance("links", sheet.id).sample(found, often(10, len(found))):
        again = sheet.work(open_fragment(sheet, write(sheet, texts)).texts)
        assert (again.values, again.shown) == (answer.values, answer.shown)
        assert (again.verdict, again.sentence) == (answer.verdict, answer.sentence)


def longest(field) -> int:
    """Return how long a drawn list can get in a link: its names may be all escapes."""
    return 400 * MOST_ROWS if isinstance(field, Rows) else 0


def changed_sheet():
    """Return wire-drop as it would be after two changes of its defaults."""
    sheet = calc.find("wire-drop")
    fields = [
        replace(field, since=3, before="2")
        if field.id == "parallel"
        else replace(field, since=1, before="")
        for field in sheet.fields
    ]
    older = ({"limit": "5 %", "voltage": "24 V"}, {"limit": "4 %"})
    return replace(sheet, fields=tuple(fields), older_defaults=older)


@pytest.mark.parametrize(
    ("fragment", "means"),
    [
        ("v=1&current=30A", {"limit": "5 %", "voltage": "24 V", "parallel": "2"}),
        ("v=2&current=30A", {"limit": "4 %", "parallel": "2"}),
        ("v=3&current=30A", {}),
        ("v=1&limit=3percent&parallel=1", {"voltage": "24 V"}),
    ],
)
def test_what_a_link_leaves_out_means_what_it_meant_when_it_was_made(fragment, means):
    sheet = changed_sheet()
    opened = open_fragment(sheet, fragment)
    assert opened.notes == ()
    assert {k: v for k, v in opened.texts.items() if f"{k}=" not in fragment} == means
    assert write(sheet, opened.texts).startswith("v=3&")
    assert open_fragment(sheet, write(sheet, opened.texts)).notes == ()


@pytest.mark.parametrize("version", ["0", "4", "-1", "1e9", "²", "9" * 30, ""])
def test_a_link_of_a_set_that_never_was_is_told(version):
    (note,) = open_fragment(changed_sheet(), f"v={version}&current=30A").notes
    assert "another version" in note


def test_a_default_that_goes_by_a_choice_is_kept_by_choice():
    sheet = calc.find("runtime")
    sheet = replace(sheet, older_defaults=({"usable": {"AGM": "40 %"}},))
    assert open_fragment(sheet, "v=1&chemistry=AGM").texts["usable"] == "40 %"
    assert "usable" not in open_fragment(sheet, "v=1&chemistry=LFP").texts
    assert "usable" not in open_fragment(sheet, "v=1&chemistry=nonsense").texts
    assert "usable" not in open_fragment(sheet, "v=2&chemistry=AGM").texts


@EACH
def test_what_cannot_be_read_is_still_in_the_link(sheet):
    for field in sheet.fields:
        text = f"{wrong_for(field)} & <b>"
        opened = open_fragment(sheet, write(sheet, needed_by(sheet, field) | {field.id: text}))
        assert opened.texts[field.id] == text


def changes():
    """Return what has changed on purpose: the link, and what its line says that no longer holds."""
    lines = (Path(__file__).parents[1] / "verdict_changes.txt").read_text("utf-8").splitlines()
    for line in lines:
        if line and not line.startswith("#"):
            name, fragment, old, *_ = (part.strip() for part in line.split(" | "))
            yield name, fragment.lstrip("#"), old if "=" in old else f"verdict = {old}"


CHANGED = set(changes())


@pytest.mark.parametrize("line", OLD_LINKS)
def test_an_old_link_opens_and_gives_the_answer_noted_beside_it(line):
    address, _, noted = line.partition(" => ")
    name, _, fragment = address.partition("#")
    expected, _, _source = noted.partition(" | ")
    stands = [part for part in expected.split("; ") if (name, fragment, part) not in CHANGED]
    sheet = calc.find(name)
    opened = open_fragment(sheet, fragment)
    assert opened.notes == ()
    if stands and expected.startswith("refused"):
        with pytest.raises(calc.InputError) as refusal:
            sheet.work(opened.texts)
        assert f"refused = {refusal.value.field}" == expected
        return
    answer = sheet.work(opened.texts)
    aside = {key for key in opened.texts if not answer.inputs[key].applies}
    assert all(answer.inputs[key].given for key in opened.texts if key not in aside)
    if aside:  # a field that has no meaning any more beside the others changes nothing
        without = {key: text for key, text in opened.texts.items() if key not in aside}
        assert sheet.work(without).values == answer.values
    for part in stands:
        agrees(answer, part)


def agrees(answer, part):
    """Assert that an answer has what a line says: `fuse = 40 A`, `verdict = fine`."""
    result, _, value = part.partition(" = ")
    ours = answer.verdict if result == "verdict" else answer[result]
    if hasattr(ours, "magnitude"):
        number, unit = value.split(" ", 1)
        half = 0.5 * 10.0 ** -len(number.partition(".")[2])
        assert ours.m_as(unit) == pytest.approx(float(number), rel=1e-9, abs=half)
    else:
        assert str(ours) == value


def test_the_old_links_hold_every_key_unit_and_choice_that_a_link_can_hold_today():
    """A name that has stood in a link may never change its meaning, so each is kept in the file."""
    kept = {
        tuple(address.split("#")[0:1]) + tuple(part.split("="))
        for address in (line.partition(" => ")[0] for line in OLD_LINKS)
        for part in address.split("#")[1].split("&")
    }
    missing = []
    for sheet in sheets():
        for field in sheet.fields:
            values = {value for name, key, value in kept if (name, key) == (sheet.id, field.id)}
            missing += [f"{sheet.id}: {field.id}={link}" for link in not_in(field, values)]
    assert missing == []


def not_in(field, values: set[str]) -> list[str]:
    """Return what the links of a field can hold and none of `values` does."""
    match field:
        case Choice():
            links = {field.read(option.id).link for option in field.options}
            return sorted(links - values)
        case Quantity():
            units = {re.sub(r"^-?[\d.]+(e-?\d+)?", "", value) for value in values}
            return [f"…{unit}" for unit in {unit.link for _, unit in field.units} - units]
        case Rows():
            rows = [row for value in values for row in parted(unquote_plus(value))]
            cells = zip_longest(*rows, fillvalue="")
            pairs = list(zip(field.columns, cells, strict=False))
            unused = [f"{column.id}: any" for column in field.columns[len(pairs) :]]
            held = [(column, link) for column, kept in pairs for link in not_in(column, set(kept))]
            return unused + [f"{column.id}: {link}" for column, link in held]
    return [] if values else ["any words"]

"""Every claim has its source, and every source is used."""

import re
from pathlib import Path

import pytest

import calc
from calc.electrical.conductors import conductors
from calc.sources import SOURCES
from calc.tables import SEEN, Table, table
from calc.worksheet.fields import Choice
from evidence import load_cases
from tests.contract.samples import answers, sheets

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def cited() -> set[str]:
    """Return every source that a step or a remark names."""
    return {
        part.source
        for sheet in sheets()
        for part in (*sheet.steps, *(use.rule for use in sheet.uses))
        if part.source
    }


def test_no_key_stands_in_two_chapters_of_the_bibliography():
    files = Path(calc.__file__).with_name("sources").glob("*.py")
    texts = "".join(file.read_text("utf-8") for file in files)
    keys = re.findall(r'^    "([^"]+)": Source\(', texts, re.MULTILINE)
    assert len(keys) > 100
    assert len(keys) == len(set(keys))


def test_every_source_that_is_named_is_in_the_bibliography():
    assert cited() <= set(SOURCES)


def test_every_source_of_the_bibliography_is_named():
    assert set(SOURCES) - cited() == set()


def test_every_source_says_how_we_came_by_it_unless_it_is_no_source():
    for key, source in SOURCES.items():
        none = "no source" in source.title or "From memory" in source.title
        assert none is not bool(source.read), key
    assert len({str(source) for source in SOURCES.values()}) == len(SOURCES)


@pytest.mark.parametrize("one", conductors(), ids=lambda one: one.name)
def test_a_conductor_s_resistance_is_shown_with_the_table_of_its_series(one):
    answer = calc.work("wire-drop", {"conductor": one.name})
    shown = next(line for line in answer.working if line.label.startswith("Stated resistance"))
    by_gauge = "copper-iacs" if one.name in ("22 AWG", "20 AWG") else "nec-8"
    assert shown.source is SOURCES[by_gauge if one.series == "AWG" else "iec-60228"]


def used_tables() -> list[Table]:
    """Return every table that the library itself reads."""
    texts = [path.read_text("utf-8") for path in Path(calc.__file__).parent.rglob("*.py")]
    names = {name for text in texts for name in re.findall(r'\btable\("(\w+)"\)', text)}
    return [table(name) for name in sorted(names)]


def begins_with(source: str, name: str) -> bool:
    """Return whether a source begins with a name, spaces and hyphens aside."""
    return re.sub(r"[ -]", "", source).startswith(re.sub(r"[ -]", "", name))


def test_no_rule_set_from_memory_is_a_default():
    """Each rule set is known by its tables; the default's were all seen in a text."""
    fields = [field for sheet in sheets() for field in sheet.fields if field.id == "rule_set"]
    assert fields
    for field in fields:
        assert isinstance(field, Choice)
        own = {
            option.id: [one for one in used_tables() if begins_with(one.about["source"], option.id)]
            for option in field.options
        }
        assert all(own.values()), "a rule set without a table of its own"
        for one in own[field.default]:
            marks = {row["confidence"] for row in one.rows if "confidence" in row}
            assert marks <= {SEEN}, one.name
            assert marks or one.about["confidence"] == f"{SEEN}, each row", one.name


@EACH
def test_what_is_looked_up_has_a_source(sheet):
    """A step without a formula reads a table or a rule, unless it only sorts what stands above."""
    kinds = {named.id: named.kind for named in (*sheet.results, *sheet.intermediates)}
    bare = [one for one in sheet.steps if not one.formula and not one.source and kinds[one.of]]
    for texts, answer in answers(sheet.id):
        for step in (step for step in bare if step.when(answer.result)):
            above = [value for name, value in answer.values.items() if name != step.of]
            assert answer.values[step.of] in (None, *above), f"{step.of}: {step.text} for {texts}"


@EACH
def test_every_worksheet_warns_with_a_source(sheet):
    cautions = [use.rule for use in sheet.uses if use.rule.level != "note"]
    assert any(caution.source for caution in cautions)


@EACH
def test_every_worksheet_meets_a_printed_or_exact_figure_that_is_not_its_own_table(sheet):
    own = [case for case in load_cases() if case.worksheet == sheet.id]
    assert [case for case in own if case.evidence in ("published", "exact")]


def test_a_case_that_reads_back_our_own_table_is_called_a_copy():
    """Counted apart on the page, and no evidence for a worksheet."""
    told = {case.id for case in load_cases() if case.note.startswith("Reads back")}
    assert told == {case.id for case in load_cases() if case.evidence == "copy"}
    assert told

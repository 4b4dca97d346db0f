"""Every claim has its source, and every source is used."""

import pytest

from calc.electrical.conductors import conductors
from calc.sources import SOURCES
from tests.contract.samples import answers, sheets
from tests.published.cases import load_cases

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
COPY = "Reads back"  # begins the note of a case that only proves a table's copy


def cited() -> set[str]:
    """Return every source that a step, a remark or a conductor names."""
    parts = [part for sheet in sheets() for part in (*sheet.steps, *sheet.remarks)]
    return {part.source for part in parts if part.source} | {c.source for c in conductors()}


def test_every_source_that_is_named_is_in_the_bibliography():
    assert cited() <= set(SOURCES)


def test_every_source_of_the_bibliography_is_named():
    assert set(SOURCES) - cited() == set()


def test_every_source_says_how_we_came_by_it_unless_it_is_no_source():
    for key, source in SOURCES.items():
        none = "no source" in source.title or "From memory" in source.title
        assert none is not bool(source.read), key
    assert len({str(source) for source in SOURCES.values()}) == len(SOURCES)


@EACH
def test_what_is_looked_up_has_a_source(sheet):
    """A step without a formula reads a table or a rule, unless it only sorts what stands above."""
    for step in sheet.steps:
        if not step.formula and not step.source:
            named = {named.id: named for named in (*sheet.results, *sheet.between)}[step.of]
            values = [answer.values[step.of] for _, answer in answers(sheet.id) if step.when]
            assert named.kind is None or None in values, f"{step.of}: {step.says}"


@EACH
def test_every_worksheet_warns_with_a_source(sheet):
    cautions = [remark for remark in sheet.remarks if remark.level == "caution"]
    assert any(remark.source for remark in cautions)


@EACH
def test_every_worksheet_meets_a_printed_or_exact_figure_that_is_not_its_own_table(sheet):
    own = [case for case in load_cases() if case.worksheet == sheet.id]
    strong = [case for case in own if case.evidence in ("published", "exact")]
    assert strong
    assert [case for case in strong if not case.note.startswith(COPY)]

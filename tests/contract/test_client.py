"""Every sheet can be explained to a client, in our own sentences and in plain words."""

import re

import pytest

from calc.judge import JUDGING, Level
from calc.sheets import explanation_of
from calc.worksheet.explain import REASONS, Explanation, Point, explained, headlines
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.shown_values import NAME
from calc.worksheet.writer import Writer
from tests.contract.samples import answers, search, sheets

MOST_WORDS = {"advice": 20, "reasons": 25, "neglect": 25, "cautions": 20}
APPROVING = re.compile(
    r"\b(?:fine|safe|safely|ok|okay|right|correct|good|sound|approved|enough|suits?)\b",
    re.IGNORECASE,
)
LEVELS = [level.value for level in JUDGING]

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)


def filled(headline: str, values: tuple[str, ...]) -> str:
    """Return a headline with its values put in, in their order."""
    left = iter(values)
    return NAME.sub(lambda _: next(left), headline)


def points(how: Explanation) -> list[tuple[str, Point]]:
    return [(part, point) for part in MOST_WORDS for point in getattr(how, part)]


@EACH
def test_an_explanation_names_only_what_is_there(sheet):
    how = explanation_of(sheet.id)
    outputs = {one.id: one for one in (*sheet.results, *sheet.intermediates)}
    fields = {field.id: field for field in sheet.fields}
    tables = {table.of for table in sheet.tables}
    assert set(how.names) <= (outputs.keys() | fields.keys()) - tables
    for name in how.names:
        assert name in outputs or isinstance(fields[name], (Quantity, Choice)), name
    rules = [use.rule.id for use in sheet.uses]
    for _, point in points(how):
        for word in point.of.split():
            assert word in LEVELS or any(rule.startswith(word) for rule in rules), word
    assert None not in kinds_of(sheet, how.bars)


def kinds_of(sheet, bars) -> set:
    outputs = {one.id: one for one in (*sheet.results, *sheet.intermediates)}
    names = [bar.name for bar in bars]
    return {
        kind
        for name in names
        for kind in ([outputs[name].kind] if name in outputs else sheet.field(name).kinds)
    }


@EACH
def test_its_sentences_are_short_and_plain(sheet):
    how = explanation_of(sheet.id)
    for part, point in points(how):
        words = re.sub(r"\{[^}]*\}", "value", point.text).split()
        assert len(words) <= MOST_WORDS[part], point.text
        assert point.text[0].isupper() or point.text[0] == "{"
        assert point.text.endswith("."), point.text
        assert not re.search(r"\b(?:bank|ampacity|C-rate|SoC|VA|Voc)\b", point.text), point.text


@EACH
def test_no_advice_approves_by_itself(sheet):
    """Whoever writes a link chooses the numbers: that all is fine is said by a calculation only."""
    for point in explanation_of(sheet.id).advice:
        if not point.of or Level.FINE in point.of.split():
            assert not APPROVING.search(point.text), point.text


@EACH
def test_every_answer_is_explained(sheet):
    how = explanation_of(sheet.id)
    asked = headlines(sheet)
    for texts, answer in answers(sheet.id):
        said = explained(answer, how)
        fine = answer.verdict == Level.FINE
        assert len(said.reasons) + bool(said.rule) == REASONS, texts
        assert not set(said.values.values()) & {"none", "not given", ""}, (texts, said.values)
        if fine or any(map(answer.rule.startswith, how.silent.split())):
            assert not said.rule
        else:
            assert said.rule.split("~")[0] == answer.rule
            assert filled(asked[said.rule], said.found) == answer.sentence
        shares = [share for share in said.shares if share is not None]
        assert not shares or (max(shares) == 100 and min(shares) >= 0 and len(shares) > 1)
        bars = [b for b, share in zip(how.bars, said.shares, strict=True) if share is not None]
        assert len(kinds_of(sheet, bars)) <= 1, "only what is of one kind can be compared"


@EACH
def test_the_first_stage_of_a_long_calculation_explains_as_the_whole_does(sheet):
    if not sheet.later_stages:
        return
    for _, answer in answers(sheet.id)[:20]:
        first = Writer(sheet, answer.inputs, sheet.first(answer.inputs)).answer()
        how = explanation_of(sheet.id)
        assert explained(first, how) == explained(answer, how)


@EACH
def test_every_piece_of_advice_is_given_to_some_answer(sheet):
    """But the last of a level, which is there for what no sample has."""
    how = explanation_of(sheet.id)
    last = {point.of: place for place, point in enumerate(how.advice)}
    left = set(range(len(how.advice))) - {last.get(level) for level in LEVELS}
    for _, answer in search(sheet.id):
        left.discard(explained(answer, how).advice)
        if not left:
            break
    assert not [how.advice[place].text for place in left]

"""What stands in the built pages for a reader in whose browser no script runs.

That it can be seen there, a browser is asked for a page of each kind.
"""

from collections import Counter
from pathlib import Path

import pytest

import calc
from evidence import load_cases
from tests.markup import spaced, text_of, tree, with_class
from tests.whole import whole_reply

PROJECT = Path(__file__).parents[2]
EACH = pytest.mark.parametrize("name", calc.worksheets())


@EACH
def test_a_page_shows_its_own_figures_with_their_working_before_any_script(built, name):
    """What the page's Python would say first, and the line that will speak it, stand there too."""
    page = tree((built / "checks" / name / "index.html").read_text("utf-8"))
    (sheet,) = [part for part in page.iter("section") if part.get("data-sheet") == name]
    (answer,) = [part for part in sheet.iter("div") if part.get("data-answer") is not None]
    ours = calc.work(name)
    said = "These are default values. Turn JavaScript on to change them."
    assert [text_of(part) for part in sheet.iter("noscript")] == [said]
    (key,) = [part for part in sheet.iter("div") if part.get("data-key") is not None]
    (gist,) = [part for part in sheet.iter("div") if part.get("data-gist") is not None]
    if walked := ours.worksheet.walked:
        listed = [text_of(item) for item in with_class(key, "lw-symptoms")[0].iter("li")]
        assert len(listed) == len(walked.starts)
        for item, (_, words, about) in zip(listed, walked.starts, strict=True):
            assert words in item and about in item
        assert walked.danger in text_of(key)
    else:
        first = ours.shown[ours.worksheet.results[0].id]
        assert spaced(text_of(with_class(key, "lw-figure")[0])) == spaced(first)
    (words,) = with_class(gist, "lw-gist-words")
    assert spaced(text_of(words)) == spaced(ours.sentence)
    cautions = [item for part in with_class(answer, "lw-cautions") for item in part.iter("li")]
    for caution, remark in zip(cautions, ours.cautions, strict=True):
        assert spaced(remark.text) in spaced(text_of(caution))
    (working,) = [f for f in answer.iter("details") if f.get("data-fold") == "working"]
    assert working.get("open") is None
    for step, line in zip(working.iter("li"), ours.working, strict=True):
        text = spaced(text_of(step))
        assert spaced(line.value) in text and spaced(line.text) in text
    assert {"admonition", "warning"} in [set(one.get("class", "").split()) for one in page.iter()]
    (status,) = [part for part in sheet.iter() if part.get("data-status") is not None]
    assert status.get("role") == "status"
    first = {field.id: field.default for field in ours.worksheet.fields if field.default}
    assert whole_reply({"sheet": name, "values": first})["status"].endswith(ours.sentence)


def test_every_check_and_every_table_stands_folded_in_the_page_of_checks(built):
    page = tree((built / "how-we-check" / "index.html").read_text("utf-8"))
    (article,) = page.iter("article")
    folds = list(article.iter("details"))
    cases = Counter(case.worksheet for case in load_cases())
    summaries = [f"{calc.find(name).title}: {cases[name]} cases" for name in calc.worksheets()]
    tables = list((PROJECT / "calc" / "tables").glob("*.csv"))
    assert len(folds) == len(summaries) + len(tables)
    for words, fold in zip(summaries, folds, strict=False):
        assert text_of(next(fold.iter("summary"))) == words
    assert not [fold for fold in folds if fold.get("open") is not None]
    assert sum(len(list(fold.iter("td"))) for fold in folds) > 6 * len(load_cases())


def test_every_field_is_listed_with_its_units(built):
    page = tree((built / "units-links-privacy" / "index.html").read_text("utf-8"))
    listed = {text_of(cell).strip() for cell in page.iter() if cell.tag in ("td", "th")}
    labels = {field.label for name in calc.worksheets() for field in calc.find(name).fields}
    assert labels <= listed

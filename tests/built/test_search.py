"""The site's own search, asked in plain words: the theme's worker under node, with our index."""

import json
import re
import subprocess
import tomllib
from pathlib import Path

import calc
from build_scripts import glossary

HERE = Path(__file__).parent
QUESTIONS = tomllib.loads((HERE / "search_questions.toml").read_text("utf-8"))


def pages_found(site: Path, queries: list[str]) -> list[list[str]]:
    """Return the addresses of the pages found for each query, the best first."""
    (worker,) = (site / "assets" / "javascripts" / "workers").glob("search.*.js")
    command = ["node", HERE / "search.mjs", worker, site / "search" / "search_index.json"]
    answer = subprocess.run(
        command, input=json.dumps(queries), capture_output=True, text=True, check=True, timeout=120
    )
    found: list[list[str]] = json.loads(answer.stdout)
    return found


def test_nine_in_ten_plain_questions_find_their_page_first_and_all_within_three(built):
    found = dict(zip(QUESTIONS, pages_found(built, list(QUESTIONS)), strict=True))
    assert len(QUESTIONS) >= 80
    not_first = {query: pages for query, pages in found.items() if pages[:1] != [QUESTIONS[query]]}
    far = {query: pages for query, pages in not_first.items() if QUESTIONS[query] not in pages[:3]}
    assert far == {}
    assert len(not_first) <= len(QUESTIONS) * 8 // 80, not_first


def test_each_worksheet_is_found_by_its_title_its_question_and_the_labels_of_its_form(built):
    sheets = [calc.find(name) for name in calc.worksheets()]
    by_title = pages_found(built, [sheet.title for sheet in sheets])
    by_question = pages_found(built, [sheet.question for sheet in sheets])
    for sheet, *found in zip(sheets, by_title, by_question, strict=True):
        for said, pages in zip((sheet.title, sheet.question), found, strict=True):
            assert f"checks/{sheet.id}/" in pages[:3], said
    index = json.loads((built / "search" / "search_index.json").read_text("utf-8"))
    texts = {entry["location"]: entry for entry in index["docs"]}
    for sheet in sheets:
        entry = texts[f"checks/{sheet.id}/"]
        assert entry.get("tags"), f"{sheet.id} has no plain phrases"
        missing = [field.label for field in sheet.fields if field.label not in entry["text"]]
        assert missing == []


def test_each_word_of_the_glossary_is_found_with_its_sentence(built):
    index = json.loads((built / "search" / "search_index.json").read_text("utf-8"))
    texts = {entry["location"]: entry["text"] for entry in index["docs"]}
    page = (built / "glossary" / "index.html").read_text("utf-8")
    for term in glossary.terms():
        assert texts[f"glossary/#{term.id}"]
        assert re.search(rf'id="?{term.id}[" >]', page), f"{term.name} leads nowhere"


def test_the_words_of_another_country_find_the_same_page(built):
    pairs = (
        ("gauge", "cross section"), ("hookup", "shore power"), ("aircon", "air conditioner"),
        ("propane", "diesel heater"), ("split charge", "DC to DC"), ("earth", "ground"),
    )  # fmt: skip
    found = pages_found(built, [query for pair in pairs for query in pair])
    for pair, one, other in zip(pairs, found[::2], found[1::2], strict=True):
        assert set(one[:3]) & set(other[:3]), pair

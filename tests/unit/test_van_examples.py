"""The samples of the van in its guides: what their review finds is read without scripts."""

import re

import pytest

from build_scripts.van_examples import example_html
from calc.render.van_bridge import reply
from calc.van.demos import demo
from calc.van.files import write_van
from calc.van.lists import tables
from calc.van.review import review


def words_of(html):
    return " ".join(re.sub(r"<[^>]+>", "", html).replace("&amp;", "&").split())


@pytest.mark.parametrize("name", ["marram", "ten-mistakes", "half-seen"])
def test_a_sample_shows_every_finding_its_diagram_and_its_lists(name):
    html = example_html(name, "../../")
    said = words_of(html)
    for one in review(demo(name)).findings:
        assert " ".join(one.sentence.split()) in said
    assert "<button" not in html and "<script" not in html
    assert html.count("<svg") >= 1
    for table in tables(demo(name)):
        assert not table.rows or f"{table.title} ({len(table.rows)})" in said


def test_the_ten_mistakes_are_shown_with_what_mends_them():
    said = words_of(example_html("ten-mistakes", "../../", lists=False))
    assert said.count("Fix: ") == 7  # of ten, three are but notes
    assert "Circuit schedule" not in said


def test_the_page_gets_the_year_and_the_recovery_of_each_pattern():
    van = demo("marram")
    answer = reply(
        {"do": "seasons", "text": reply({"do": "open", "source": write_van(van)})["text"]}
    )
    said = words_of(answer["html"])
    assert "The year by months" in said and "Full again after" in said
    for part in van.all("patterns"):
        assert part.name in said

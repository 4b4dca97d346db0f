"""Lists, labels and cards as HTML: nothing in a van is markup, and a document stands by itself."""

import re

import pytest

from calc.render.code import LONGEST
from calc.render.van_lists import document_html, hand_over_html, list_html, lists_html
from calc.van.demos import DEMOS, demo
from calc.van.files import read_van
from calc.van.handover import HandOver
from calc.van.listed import ListTable
from calc.van.lists import Lists

HOSTILE = """
format = 1
[van]
name = "<script>alert(1)</script>"
[[circuits]]
name = "<img src=x onerror=y>"
place = "\\" onclick=\\"x"
length = "3 m"
current = "5 A"
"""


@pytest.fixture(scope="module")
def marram():
    return Lists(demo("marram"))


def test_a_name_is_never_markup():
    own = Lists(read_van(HOSTILE))
    html = document_html(own.van.name, lists_html(own.tables), hand_over_html(own.papers))
    assert "<script" not in html and "<img" not in html
    assert "&lt;img src=x onerror=y&gt;" in html
    assert not re.search(r'\sonclick="', html)


@pytest.mark.parametrize("name", DEMOS)
def test_a_document_needs_nothing_from_elsewhere_and_runs_nothing(name):
    own = Lists(demo(name))
    html = document_html(own.van.name, lists_html(own.tables), hand_over_html(own.papers))
    assert html.startswith("<!doctype html>")
    assert not re.search(r"<script|<link|src=|@import|url\(|https?://(?!www\.w3\.org)", html)
    assert "@page" in html and "@media print" in html


def test_each_cell_of_a_card_has_its_heading_and_the_first_names_the_row():
    table = ListTable(id="t", title="T", columns=("A", "B"), rows=(("x", "1"),))
    html = list_html(table)
    assert '<th scope="row" role="rowheader">x</th>' in html
    assert 'data-label="B">1</td>' in html


def test_a_list_without_rows_says_so():
    table = ListTable(id="t", title="T", columns=("A", "B"), rows=())
    assert "Nothing to list." in list_html(table)


def test_the_square_code_is_drawn_where_the_link_fits(marram):
    html = hand_over_html(marram.papers, "https://van.invalid/van/")
    assert "<svg" in html and "Opens the record of this van." in html
    assert "<svg" not in hand_over_html(marram.papers), "without an address there is no link"


def test_a_link_that_is_too_long_for_a_code_is_told(marram):
    own = marram.papers
    long = HandOver(
        markers=own.markers, labels=own.labels, settings=own.settings, cards=own.cards,
        fragment="v=1&van=" + "a" * LONGEST,
    )  # fmt: skip
    html = hand_over_html(long, "https://van.invalid/van/")
    assert "<svg" not in html and f"{LONGEST}" in html and "file goes with the van" in html


def test_every_mark_stands_on_its_strips(marram):
    html = hand_over_html(marram.papers)
    for label in marram.papers.markers:
        assert f"<strong>{label.title}</strong>" in html
    assert html.count('class="vl-warns"') == 1

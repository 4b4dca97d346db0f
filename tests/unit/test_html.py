"""Elements as text: everything that is not markup already is escaped."""

import pytest

from calc.render.html import Markup, el, join

HOSTILE = "<img src=x onerror=\"alert('1')\"> & more"


def test_text_is_escaped_and_markup_is_not():
    assert el("p", "a < b & c") == "<p>a &lt; b &amp; c</p>"
    assert el("p", el("b", "x")) == "<p><b>x</b></p>"
    assert isinstance(el("p"), Markup)


def test_a_hostile_text_is_dead_as_child_and_as_attribute():
    child = el("p", HOSTILE)
    assert "<img" not in child
    attribute = el("p", title=HOSTILE)
    assert attribute.count('"') == 2
    assert "<img" not in attribute and "&quot;" in attribute


def test_text_that_says_it_is_escaped_is_escaped_again():
    assert el("p", "&lt;") == "<p>&amp;lt;</p>"


def test_numbers_and_lists_are_children_and_nothing_is_none():
    assert el("p", 1, None, ["a", ("b", 2.5)], False) == "<p>1ab2.5</p>"
    assert el("p", 0) == "<p>0</p>"
    assert join("a", None, "<") == "a&lt;"


def test_a_class_of_text_that_is_not_markup_does_not_pass_for_it():
    class Loud(str):
        __slots__ = ()

    assert join(Loud("<b>")) == "&lt;b&gt;"


@pytest.mark.parametrize(
    ("attributes", "html"),
    [
        ({"class_": "a"}, '<i class="a"></i>'),
        ({"for_": "x"}, '<i for="x"></i>'),
        ({"aria_label": "x"}, '<i aria-label="x"></i>'),
        ({"hidden": True}, "<i hidden></i>"),
        ({"hidden": False, "title": None}, "<i></i>"),
        ({"cx": 12, "y": 0}, '<i cx="12" y="0"></i>'),
    ],
)
def test_attributes_are_written_as_html_has_them(attributes, html):
    assert el("i", **attributes) == html


def test_elements_without_content_are_not_closed():
    assert el("input", type="text") == '<input type="text">'
    assert el("br") == "<br>"
    assert el("div") == "<div></div>"

"""The form that a reader fills in, as HTML."""

from html.parser import HTMLParser
from itertools import pairwise

import pytest

import calc
from calc.render import sheet_html
from calc.render.answer import answer_html
from calc.units.shown import kept_together
from calc.worksheet.fields import Choice, Quantity
from calc.worksheet.rows import Rows
from tests.contract.samples import answers, sheets
from tests.markup import whole
from tests.whole import live_html, shown_html, whole_reply

EACH = pytest.mark.parametrize("sheet", sheets(), ids=lambda sheet: sheet.id)
VOID = {"input", "br", "hr"}


class Form(HTMLParser):
    """Every element with its attributes and the text within it; complains about bad nesting."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[str] = []
        self._open: list[int] = []
        self.feed(html)
        assert not self._open, "an element is not closed"

    def handle_starttag(self, tag, attributes):
        assert len(dict(attributes)) == len(attributes), f"<{tag}> has an attribute twice"
        self.elements.append((tag, dict(attributes)))
        self.texts.append("")
        if tag not in VOID:
            self._open.append(len(self.elements) - 1)

    def handle_endtag(self, tag):
        assert self.elements[self._open.pop()][0] == tag

    def handle_data(self, data):
        for place in self._open:
            self.texts[place] += data

    def all(self, *tags):
        """Return attributes and text of every element with one of the tags."""
        pairs = zip(self.elements, self.texts, strict=True)
        return [(attributes, text) for (tag, attributes), text in pairs if tag in tags]


def form(sheet) -> Form:
    return Form(sheet_html(calc.work(sheet.id)))


@EACH
def test_every_field_has_a_control_with_its_label_and_hint(sheet):
    page = form(sheet)
    labels = {a.get("for"): text for a, text in page.all("label")}
    labels |= {a["id"].removesuffix("-label"): text for a, text in page.all("span") if "id" in a}
    controls = {a["name"]: a for a, _ in page.all("input", "select") if "name" in a}
    groups = {a["id"]: a for a, _ in page.all("div") if a.get("role") == "radiogroup"}
    texts = {a.get("id"): text for a, text in page.all("p", "dd")}
    for field in sheet.fields:
        if isinstance(field, Rows):
            continue  # its cells have no names of their own: see below
        control = controls[field.id]
        if control.get("type") == "radio":
            control = groups[f"{sheet.id}-{field.id}"]
            assert control["aria-labelledby"] == f"{control['id']}-label"
        assert labels[control["id"]] == field.label
        if field.hint:
            assert texts[control["aria-describedby"].split()[0]] == kept_together(field.hint)


LISTS = [
    pytest.param(sheet, field, id=f"{sheet.id}-{field.id}")
    for sheet in sheets()
    for field in sheet.fields
    if isinstance(field, Rows)
]


@pytest.mark.parametrize(("sheet", "field"), LISTS)
def test_every_cell_of_a_list_has_its_label_and_the_hint_of_its_column(sheet, field):
    page = form(sheet)
    labels = {a.get("for"): text for a, text in page.all("label")}
    controls = {a["id"]: a for a, _ in page.all("input", "select") if "id" in a}
    texts = {a.get("id"): text for a, text in page.all("dd")}
    rows = len(field.read(field.default).rows)
    for place in range(rows + 1):  # the first of them stands ready to be copied
        for column in field.columns:
            name = f"{sheet.id}-{field.id}-{place}-{column.id}"
            assert labels[name].startswith(column.label)
            if isinstance(column, Quantity) and column.bare[1].symbol:
                assert f"({column.bare[1].symbol})" in labels[name], "what a bare number is"
            hint, error = controls[name]["aria-describedby"].split()
            assert texts[hint] == kept_together(column.hint)
            assert error == f"{name}-error"
            assert "name" not in controls[name], "the whole list is sent under one name"


@pytest.mark.parametrize(("sheet", "field"), LISTS)
def test_a_list_is_a_group_of_groups_with_words_on_its_buttons(sheet, field):
    page = form(sheet)
    legends = [text for _, text in page.all("legend")]
    rows = range(len(field.read(field.default).rows) + 1)
    assert legends.count(field.label) == 1
    named = [f"{field.one} {place}".capitalize() for place in rows]
    assert [text for text in legends if text in named] == [*named[1:], named[0]]
    buttons = [" ".join(text.split()) for _, text in page.all("button")]
    removes = [text for text in buttons if text.startswith(f"×Remove {field.one} ")]
    assert [f"×Remove {field.one} {place}" for place in rows if place] == removes[: len(rows) - 1]
    assert {f"Add a {field.one}", f"Add an {field.one}"} & set(buttons)


@EACH
def test_every_id_stands_once_and_every_reference_leads_to_one(sheet):
    page = form(sheet)
    ids = [a["id"] for _, a in page.elements if "id" in a]
    assert len(ids) == len(set(ids))
    for _, attributes in page.elements:
        for name in ("for", "aria-describedby", "aria-labelledby", "aria-controls"):
            for reference in (attributes.get(name) or "").split():
                assert reference in ids, f"{name} names {reference}, which is not there"


@EACH
def test_every_control_has_a_name_for_those_who_cannot_see_it(sheet):
    page = form(sheet)
    labelled = {a.get("for") for a, _ in page.all("label")}
    pairs = pairwise([*zip(page.elements, page.texts, strict=True), (("", {}), "")])
    beside = {id(one): text for ((_, one), _), (_, text) in pairs if one.get("type") == "radio"}
    for attributes, text in page.all("input", "select", "button"):
        text = text or beside.get(id(attributes), "")  # of the label that a button stands in
        named = attributes.get("id") in labelled or attributes.get("aria-label") or text.strip()
        assert named, attributes


@EACH
def test_numbers_are_typed_as_text_beside_every_unit(sheet):
    page = form(sheet)
    inputs = {a["name"]: a for a, _ in page.all("input") if "name" in a}
    shown = sheet_html(calc.work(sheet.id))
    assert 'type="number"' not in shown
    for field in sheet.fields:
        if isinstance(field, Quantity):
            assert inputs[field.id]["type"] == "text"
            units = [unit.symbol for _, unit in field.units if unit.symbol]
            options = {text for _, text in page.all("option", "span")}
            assert set(units) <= options


@EACH
def test_a_choice_lists_every_option_with_the_default_picked(sheet):
    page = form(sheet)
    radios = [a for a, _ in page.all("input") if a.get("type") == "radio"]
    picked = {a["value"] for a, _ in page.all("option") if "selected" in a}
    values = {a["value"] for a, _ in page.all("option")}
    columns = [one for f in sheet.fields if isinstance(f, Rows) for one in f.columns]
    for field in (*sheet.fields, *columns):
        if own := [a for a in radios if a["name"] == field.id]:
            assert [a["value"] for a in own] == [option.id for option in field.options]
            assert [a["value"] for a in own if "checked" in a] == [field.default]
        elif isinstance(field, Choice):
            assert {option.id for option in field.options} <= values
            assert field.default in picked


def test_a_few_short_choices_are_buttons_and_others_a_list():
    page = form(calc.find("wire-drop"))
    radios = {a["name"] for a, _ in page.all("input") if a["type"] == "radio"}
    lists = {a["name"] for a, _ in page.all("select")}
    assert {"finish", "gauge_reading"} <= radios
    assert {"conductor", "surroundings"} <= lists
    assert not radios & lists


@EACH
def test_the_form_gives_back_the_default_answer(sheet):
    """What stands in the controls, sent as a browser would, is what the page shows already."""

    page = form(sheet)
    boxes = [a for a, _ in page.all("input") if "name" in a]
    sent = [a for a in boxes if a["type"] != "radio" or "checked" in a]
    values = {a["name"]: a["value"] for a in sent}
    units = {}
    cells = {}
    name = ""
    for tag, attributes in page.elements:
        if tag == "select":
            name = attributes.get("name") or attributes["id"]
        elif tag == "option" and "selected" in attributes:
            unit, kept = name.endswith(".unit"), attributes["value"]
            (units if unit else values)[name.removesuffix(".unit")] = kept
        elif tag == "input" and "id" in attributes and "name" not in attributes:
            cells[attributes["id"]] = attributes.get("value")
    cells |= {name: values.pop(name) for name in list(values) if name.startswith(f"{sheet.id}-")}
    for field in sheet.fields:
        if isinstance(field, Rows):
            values[field.id] = [
                [cells[f"{sheet.id}-{field.id}-{place}-{column.id}"] for column in field.columns]
                for place in range(1, len(field.read(field.default).rows) + 1)
            ]
    reply = whole_reply({"sheet": sheet.id, "values": values, "units": units})
    assert shown_html(reply) == live_html(calc.work(sheet.id))


@EACH
def test_every_answer_is_whole_html(sheet):
    for _, answer in answers(sheet.id)[::5]:
        for tag, attributes in whole(f"{answer_html(answer)}{live_html(answer)}"):
            assert "style" not in attributes, "the policy forbids style attributes"
            assert not [name for name in attributes if name.startswith("on")]
            if tag == "svg" and attributes.get("role") == "img":
                assert attributes["aria-label"]
            elif tag == "svg":
                assert attributes["aria-hidden"] == "true"


@pytest.mark.parametrize(
    "broken",
    [
        "<p>",
        "<p><b></p></b>",
        "</p>",
        "<p></p></p>",
        '<p id="a" id="b"></p>',
        "<p>1 < 2</p>",
        "2 > 1",
        "<p></p>&lt;<",
        '<p title="<b>"></p>',
        '<p id="a"class="b"></p>',
        "<p id=a></p>",
    ],
)
def test_html_that_is_not_whole_is_found(broken):
    with pytest.raises(AssertionError):
        whole(broken)

"""A van's diagram as SVG and HTML: well formed, coloured by the style sheet, told as a list."""

import re
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import pytest

from calc.render.van_diagram import diagram_files, drawing_html
from calc.render.van_symbols import PATHS
from calc.tables import text
from calc.van.demos import DEMOS, demo
from calc.van.diagram import layout
from calc.van.diagram.symbols import SYMBOLS
from tests.van_samples import sound

PROJECT = Path(__file__).parents[3]
SVG = "{http://www.w3.org/2000/svg}"
HOSTILE = '<script>alert(1)</script> & "x"'


@cache
def css() -> str:
    return text("calc.render", "van_diagram.css")


@cache
def html(name: str) -> str:
    return str(drawing_html(layout(demo(name))))


@pytest.mark.parametrize("name", DEMOS)
def test_a_file_is_well_formed_and_needs_nothing_else(name):
    drawing = layout(demo(name))
    files = diagram_files(drawing)
    assert len(files) == len(drawing.sheets)
    for file in files:
        root = ElementTree.fromstring(file)
        assert root.tag == f"{SVG}svg"
        assert root.find(f"{SVG}title").text.startswith("Electrical diagram of ")
        described = root.find(f"{SVG}desc").text
        assert all(
            entry in described for entries in dict(drawing.said).values() for entry in entries
        )
        used = set(re.findall(r"var\((--[\w-]+)\)", css()))
        for scheme in ("light", "dark"):
            declared = re.findall(r"(--lw-\w+): #[0-9a-f]{6};", root.find(f"{SVG}style").text)
            assert used <= set(declared), scheme
            assert declared.count("--lw-ink") == 2
        assert "http" not in file.replace(SVG[1:-1], "")


def test_names_are_only_text():
    van = sound().changed({"van.name": HOSTILE, "circuits[1].name": HOSTILE})
    drawing = layout(van)
    for markup in (*diagram_files(drawing), str(drawing_html(drawing))):
        assert "<script" not in markup
    words = "".join(ElementTree.fromstring(diagram_files(drawing)[0]).itertext())
    assert HOSTILE in words


@pytest.mark.parametrize("name", DEMOS)
def test_a_page_gets_no_style_of_its_own(name):
    """The site's policy forbids inline style, and ids would meet those of other sheets."""
    assert not re.search(r"<style|\sstyle=|\son\w+=|\sid=", html(name))


@pytest.mark.parametrize("name", DEMOS)
def test_every_class_has_a_rule(name):
    classes = {one for found in re.findall(r'class="([^"]+)"', html(name)) for one in found.split()}
    own = {one for one in classes if one.startswith("lw-plan")}
    assert len(own) > 10
    assert {one for one in own if f".{one}" not in css()} == set()


def test_the_site_has_the_same_rules():
    assert (PROJECT / "docs/assets/van-diagram.css").read_text("utf-8") == css()
    assert "assets/van-diagram.css" in (PROJECT / "mkdocs.yml").read_text("utf-8")


@pytest.mark.parametrize("name", DEMOS)
def test_the_list_says_every_run_and_every_bar(name):
    van = demo(name)
    told = re.sub(r"<[^>]+>", "\n", html(name).split("<details", 1)[1])
    for kind in ("circuits", "batteries", "bars", "panels", "regulators"):
        for part in van.all(kind):
            assert part.name in told, part.id
    assert "<ul>" in html(name) and "<h3>Circuits</h3>" in html(name)


def test_each_sheet_has_its_buttons_and_the_sizes_they_choose():
    page = html("marram")
    assert page.count("<svg") == page.count('data-zoom="100"') == 1
    script = (PROJECT / "docs/assets/zoom.js").read_text("utf-8")
    sizes = re.search(r"SIZES = \[(.*?)\]", script)[1].replace('"', "").split(", ")
    assert all(f'[data-zoom="{size}"] > svg' in css() for size in sizes)
    steps = set(re.findall(r'data-plan="(\w+)"', page))
    assert all(f'"{step}"' in script for step in steps)
    assert re.search(r'viewBox="0 0 1596 \d+"', page)
    assert '[data-zoom="100"] > svg { width: 1596px; }' in css()


def test_every_symbol_is_drawn():
    assert PATHS.keys() == SYMBOLS.keys()
    assert all(any(paths) for paths in PATHS.values())


def test_earth_chassis_and_negative_are_three_signs():
    signs = {PATHS[name] for name in ("earth", "chassis", "negative")}
    words = {SYMBOLS[name].word for name in ("earth", "chassis", "negative")}
    assert len(signs) == len(words) == 3


def test_no_two_symbols_look_the_same():
    assert len({PATHS[name] for name in PATHS}) == len(PATHS)

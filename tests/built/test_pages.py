"""What a reader gets before any script has run, and what no page may do."""

import base64
import hashlib
import re
from functools import cache
from html import unescape
from html.parser import HTMLParser

import pytest

import calc
from calc.practice import question
from calc.sheets import practice_of
from calc.worksheet.work import Worksheet
from tests.markup import spaced

FETCHING = {
    "src", "srcset", "href", "xlink:href", "action", "formaction", "poster", "data", "background",
    "manifest", "ping", "cite", "longdesc", "archive", "codebase", "profile", "imagesrcset",
}  # fmt: skip
NOT_FETCHED = {"canonical"}  # a link that is only stated

EACH = pytest.mark.parametrize("name", calc.worksheets())


class Page(HTMLParser):
    """A page's elements in order and its inline scripts."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.scripts: list[str] = []
        self._inline = False
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.elements.append((tag, dict(attributes)))
        kind = dict(attributes).get("type")
        self._inline = tag == "script" and "src" not in dict(attributes)
        if self._inline and kind in (None, "", "module", "text/javascript"):
            self.scripts.append("")
        else:
            self._inline = False

    def handle_endtag(self, tag):
        self._inline = False

    def handle_data(self, data):
        if self._inline:
            self.scripts[-1] += data


@cache
def page_of(text: str) -> Page:
    """Return what stands in a page, parsed once for all that is asked of it."""
    return Page(text)


def pages(built):
    found = {path: path.read_text("utf-8") for path in sorted(built.rglob("*.html"))}
    assert len(found) >= 10
    return found


def words_of(built, name: str) -> str:
    """Return the text of a worksheet's page, without its markup."""
    html = (built / "checks" / name / "index.html").read_text("utf-8")
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]*>", "", html)))


@EACH
def test_the_default_answer_stands_in_the_page_before_any_script(built, name):
    """If this fails after a change in calc, build_scripts/build has not been run since."""
    answer = calc.work(name)
    text = words_of(built, name)
    walked = answer.worksheet.walked
    results = () if walked else answer.worksheet.results  # a search begins with a list
    for _, words, about in walked.starts if walked else ():
        assert words in text and about in text
    for result in results[:1]:
        assert spaced(answer.shown[result.id]) in text
    assert spaced(answer.sentence) in text
    assert spaced(answer.worksheet.question) in text
    for result in results:
        if result.hide_if_none and answer[result.id] is None:
            continue
        if result.id in answer.tables:
            parts = [cell for row in answer.tables[result.id] for cell in row]
        elif isinstance(answer[result.id], list):
            words = [getattr(part, "label", str(part)) for part in answer[result.id]]
            parts = [part.replace(" mm2", " mm²") for part in words]
        else:
            parts = [answer.shown[result.id]]
        assert all(spaced(part) in text for part in parts)
    for said in (*answer.cautions, *answer.notes):
        assert spaced(said.text) in text
    for line in answer.working:
        assert spaced(line.text) in text and spaced(line.value) in text


@EACH
def test_the_questions_to_try_stand_in_the_page_with_their_answers(built, name):
    if not practice_of(name).tasks:
        return
    text = words_of(built, name)
    for number in (1, 2, 3):
        asked = question(name, number)
        assert spaced(asked.text) in text
        assert spaced(f"{asked.asked.label}: {asked.shown}") in text
        assert all(spaced(wrong.slip.text) in text for wrong in asked.slips)


@EACH
def test_every_field_stands_in_the_page_with_its_default(built, name):
    sheet: Worksheet = calc.find(name)
    page = Page((built / "checks" / name / "index.html").read_text("utf-8"))
    named = [a for tag, a in page.elements if tag in ("input", "select") and "name" in a]
    live = {a["name"]: a for a in named if a.get("type") != "radio" or "checked" in a}
    lists = {a["data-rows"] for _, a in page.elements if "data-rows" in a}
    assert {field.id for field in sheet.fields} <= set(live) | lists
    for field in sheet.fields:
        if field.id in lists:
            cells = [cell.entry for row in field.read(field.default).rows for cell in row]
            names = {a.get("value") for tag, a in page.elements if tag in ("input", "option")}
            assert set(cells) - {""} <= names
        elif "value" in live[field.id] and field.default:
            shown, declared = live[field.id]["value"] or "", field.default
            assert field.read(shown).value == field.read(declared).value


def test_no_page_fetches_from_or_leads_to_the_outside(built):
    for path, text in pages(built).items():
        for tag, attributes in page_of(text).elements:
            if attributes.get("rel") in NOT_FETCHED:
                continue
            for name in FETCHING & set(attributes):
                url = (attributes[name] or "").strip().lower()
                outside = re.search(r"(?:^|[\s,])(?:[a-z][a-z0-9+.-]*:)?//", url)
                assert not outside, f"{path}: <{tag} {name}={url}>"
                assert not url.startswith(("javascript:", "blob:", "filesystem:", "ftp:"))
            assert "http-equiv" not in attributes or attributes["http-equiv"] != "refresh"


def test_no_style_sheet_fetches_from_the_outside(built):
    for path in built.rglob("*.css"):
        text = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
        assert not re.findall(r"(?:url\(\s*|@import\s*)[\"']?(?:https?:)?//[^)\"']*", text), path


def test_our_own_scripts_name_no_address(built):
    names = ("page", "share", "worker", "offline", "install", "van", "van_store")
    for path in [*(built / "assets" / f"{name}.js" for name in names), built / "sw.js"]:
        assert not re.search(r"(?:https?|wss?):/" + "/", path.read_text("utf-8")), path


def policy_of(text: str) -> dict[str, str]:
    """Return the rules of a page's content security policy."""
    metas = [attributes for tag, attributes in page_of(text).elements if tag == "meta"]
    metas = [meta for meta in metas if meta.get("http-equiv") == "Content-Security-Policy"]
    assert len(metas) == 1
    rules = (metas[0]["content"] or "").split("; ")
    return {name: values for name, _, values in (rule.partition(" ") for rule in rules)}


def test_every_page_forbids_all_but_its_own_origin(built):
    for path, text in pages(built).items():
        policy = policy_of(text)
        assert policy["default-src"] == "'none'", path
        for rule in ("connect-src", "worker-src", "style-src", "manifest-src"):
            assert policy[rule] == "'self'"
        assert policy["object-src"] == policy["base-uri"] == policy["form-action"] == "'none'"
        whole = " ".join(policy.values())
        assert "unsafe-inline" not in whole and "'unsafe-eval'" not in whole
        assert not re.search(r"https?:|(?:^| )\*(?: |$)", whole)
        place = text.lower().index("content-security-policy")
        marks = [mark for mark in ("<script", "<link", "<title") if mark in text]
        assert place < min(map(text.index, marks))


def test_every_inline_script_has_its_hash_in_every_policy(built):
    """Under instant navigation the next page's scripts run under the first page's policy."""
    found = pages(built)
    scripts = {script for text in found.values() for script in page_of(text).scripts}
    hashes = {
        f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'"
        for script in scripts
    }
    for text in found.values():
        assert hashes <= set(policy_of(text)["script-src"].split())


def test_no_page_has_inline_style_or_handlers_which_the_policy_would_drop(built):
    for path, text in pages(built).items():
        for tag, attributes in page_of(text).elements:
            assert tag != "style", path
            assert "style" not in attributes, f"{path}: <{tag} style>"
            assert not [name for name in attributes if name.startswith("on")], path


def test_no_fence_stand_in_or_number_box_is_left(built):
    for path, text in pages(built).items():
        assert "```" not in text, path
        assert 'type="number"' not in text, path
        body = re.sub(r"<script.*?</script>", "", text, flags=re.DOTALL)
        plain = unescape(re.sub(r"<[^>]*>", " ", body)).lower()
        assert not re.search(r"\{[a-z][a-z0-9]*\.[a-z_]+\}", plain), path
        unfinished = r"\bto-?do\b|\blorem\W+ipsum\b|coming\W+soon|\bplace-?holder\b"
        assert not re.search(unfinished, plain), path


def test_every_page_has_a_language_a_title_one_heading_and_a_description(built):
    for path, text in pages(built).items():
        elements = page_of(text).elements
        assert dict(elements)["html"].get("lang", "").startswith("en")
        assert re.search(r"<title>[^<]+</title>", text)
        if path.name != "404.html":
            assert [tag for tag, _ in elements].count("h1") == 1, path
            assert any(a.get("name") == "description" and a.get("content") for _, a in elements)


@EACH
def test_a_sheet_leads_to_its_guide_its_examples_and_its_practice(built, name):
    page = Page((built / "checks" / name / "index.html").read_text("utf-8"))
    ids = [a["id"] for _, a in page.elements if "id" in a]
    jumps = [a["href"] for _, a in page.elements if "data-jump" in a]
    assert len(jumps) == (3 if practice_of(name).tasks else 2)
    assert all(ids.count(jump.removeprefix("#")) == 1 for jump in jumps)


def test_a_messenger_finds_a_title_a_line_and_our_own_picture(built):
    """But on the page that is not there, which nobody sends."""
    for path, html in pages(built).items():
        assert ".invalid" not in html.partition("</head>")[0], path
        if path.name == "404.html":
            continue
        held = {
            a.get("property"): a.get("content") for tag, a in Page(html).elements if tag == "meta"
        }
        assert held["og:title"] and held["og:description"], path
        assert (path.parent / held["og:image"]).is_file(), path

"""What the finishing step refuses, and what it leaves behind."""

import base64
import hashlib
import json
import shutil

import pytest

from build_scripts.finish import SiteError, finish
from build_scripts.site_list import list_files

HEAD = '<!doctype html><html><head><meta charset="utf-8"><title>A</title></head><body>'
SCRIPT = "document.title"


@pytest.fixture
def site(tmp_path):
    (tmp_path / "assets/runtime").mkdir(parents=True)
    (tmp_path / "assets/javascripts/lunr").mkdir(parents=True)
    (tmp_path / "deep").mkdir()
    for path, text in {
        "index.html": f"{HEAD}<script>{SCRIPT}</script><a href='deep/#x'>on</a>",
        "deep/index.html": f'{HEAD}<script type="application/json">1</script><a href="..">up</a>',
        "404.html": f'{HEAD}<link rel="stylesheet" href="/assets/a.css">',
        "assets/a.css": "/* url(https://example.org) */ a{background:url(data:image/png;base64,)}",
        "assets/a.css.map": "",
        "assets/javascripts/lunr/stemmer.js": "",
        "assets/runtime/python.wasm.bin": "",
        "sitemap.xml": "<url><loc>https://x.example/</loc>\n  <lastmod>2030-01-01</lastmod></url>",
        "sitemap.xml.gz": "",
    }.items():
        (tmp_path / path).write_text(text)
    return tmp_path


def test_a_finished_site_holds_what_a_reader_fetches_and_nothing_else(site):
    files = finish(site)
    assert set(files) == {
        "index.html",
        "deep/index.html",
        "404.html",
        "assets/a.css",
        "assets/runtime/python.wasm.bin",
    }
    assert files == list_files(site)


def test_every_page_carries_the_hashes_of_all_inline_scripts(site):
    finish(site)
    digest = base64.b64encode(hashlib.sha256(SCRIPT.encode()).digest()).decode()
    for page in ("index.html", "deep/index.html", "404.html"):
        text = (site / page).read_text()
        policy = text.split('http-equiv="Content-Security-Policy" content="')[1].split('"')[0]
        assert f"'sha256-{digest}'" in policy
        assert policy.count("sha256-") == 1  # data for scripts is not run, so it has no hash
        assert "unsafe-inline" not in policy
        assert "frame-ancestors" not in policy
        assert text.index("Security-Policy") < text.index("<title>")
    assert f"{policy}; frame-ancestors 'none'" in (site / "_headers").read_text()


def test_the_worker_carries_the_list_and_the_headers(site):
    files = finish(site)
    worker = (site / "sw.js").read_text()
    listed = worker.split("const FILES = ")[1].split("; //")[0]
    assert json.loads(listed) == {path: list(entry) for path, entry in files.items()}
    assert "frame-ancestors 'none'" in worker
    assert "__" not in worker.replace("__proto__", "")


def test_the_same_site_gives_the_same_worker(site, tmp_path_factory):
    other = shutil.copytree(site, tmp_path_factory.mktemp("other") / "site")
    finish(site)
    finish(other)
    assert (site / "sw.js").read_bytes() == (other / "sw.js").read_bytes()


@pytest.mark.parametrize(
    ("markup", "said"),
    [
        ('<img src="https://example.org/a.png">', "outside"),
        ('<img src="//example.org/a.png">', "outside"),
        ('<img srcset="a.png 1x, https://example.org/a.png 2x">', "outside"),
        ('<script src="https://example.org/a.js"></script>', "outside"),
        ('<link rel="preconnect" href="https://example.org">', "outside"),
        ('<iframe src="https://example.org"></iframe>', "outside"),
        ('<a href="https://example.org">more</a>', "outside"),
        ('<a href="javascript:void 0">more</a>', "outside"),
        ('<svg><use xlink:href="https://example.org/a.svg#b"/></svg>', "outside"),
        ('<meta http-equiv="refresh" content="0; url=https://example.org/">', "outside"),
        ('<a href="/deep/">more</a>', "absolute path"),
        ('<a href="nowhere/">more</a>', "not in the site"),
        ('<p style="color: red">more</p>', "policy forbids"),
        ("<style>p { color: red }</style>", "policy forbids"),
        ('<p onclick="go()">more</p>', "policy forbids"),
        ("<p>```worksheet\nwire-drop\n```</p>", "not rendered"),
        ('<div class="language-example highlight"></div>', "not rendered"),
        ("<h1>Macro Rendering Error</h1>", "macro"),
    ],
)
def test_a_page_that_breaks_a_promise_stops_the_build(site, markup, said):
    (site / "deep/index.html").write_text(HEAD + markup)
    with pytest.raises(SiteError, match=rf"deep/index\.html: .*{said}"):
        finish(site)


@pytest.mark.parametrize(
    "rule",
    [
        "a{background:url(https://example.org/a.png)}",
        "@import 'https://example.org/a.css';",
        '@import url("//example.org/a.css");',
        "a{background:url( '../gone.png' )}",
    ],
)
def test_a_style_sheet_that_fetches_from_outside_or_nowhere_stops_the_build(site, rule):
    (site / "assets/a.css").write_text(rule)
    with pytest.raises(SiteError, match=r"assets/a\.css: "):
        finish(site)


def test_an_address_that_is_only_stated_may_be_outside(site):
    canonical = '<link rel="canonical" href="https://lugwise.example/deep/">'
    (site / "deep/index.html").write_text(HEAD + canonical)
    finish(site)

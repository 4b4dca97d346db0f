"""The files of the built site: the list to save, the runtime, and what a phone installs."""

import gzip
import hashlib
import io
import json
import re
import struct
import zipfile
from pathlib import Path

import calc
from build_scripts.runtime import WIRE_BUDGET
from build_scripts.runtime_sheets import known
from build_scripts.site import runtime_key
from calc.render.bridge import ask

LATER = {"van.zip.bin", "questions.zip.bin", "client.zip.bin", "memory.bin"}
CHAPTERS = ("quick", "wire", "joints", "bank", "charging", "comfort")
PROMISED = 6_000_000  # bytes until the first live answer


def listed(built) -> dict[str, list]:
    """Return the list inside the service worker: path -> SHA-256 and size."""
    found = re.search(r"const FILES = (\{.*?\});? *(?://.*)?$", (built / "sw.js").read_text(), re.M)
    assert found
    return json.loads(found.group(1))


def sent(path: Path) -> int:
    """Return a file's bytes on the wire."""
    return len(path.read_bytes() if path.suffix == ".bin" else gzip.compress(path.read_bytes()))


def png_size(path: Path) -> tuple[int, int]:
    """Return width and height from a PNG's first chunk (RFC 2083, 11.2.1)."""
    head = path.read_bytes()[:24]
    assert head[:8] == b"\x89PNG\r\n\x1a\n" and head[12:16] == b"IHDR"
    width, height = struct.unpack(">II", head[16:24])
    return width, height


def test_every_listed_file_is_there_with_its_hash_and_size(built):
    for path, (digest, size) in listed(built).items():
        content = (built / path).read_bytes()
        assert (hashlib.sha256(content).hexdigest(), len(content)) == (digest, size), path


def test_every_file_that_a_reader_may_ask_for_is_listed(built):
    here = {p.relative_to(built).as_posix() for p in built.rglob("*") if p.is_file()}
    for_others = {
        "sw.js",
        "_headers",
        ".htaccess",
        "sitemap.xml",
    }  # the list's carrier, hosts and crawlers
    assert here - set(listed(built)) <= for_others
    assert set(listed(built)) <= here


def test_the_pages_are_saved_before_the_large_files(built):
    order = list(listed(built))
    pages = [place for place, path in enumerate(order) if path.endswith("index.html")]
    large = [n for n, path in enumerate(order) if (built / path).stat().st_size > 500_000]
    assert max(pages) < min(n for n in large if n not in pages)


def archive(built, name: str) -> list[str]:
    """Return the names of the files in one of the runtime's archives."""
    packed = gzip.decompress((built / "assets" / "runtime" / f"{name}.bin").read_bytes())
    return zipfile.ZipFile(io.BytesIO(packed)).namelist()


def test_the_runtime_is_within_its_budget(built):
    """As a host sends it: what is not packed yet is packed on the way.

    Of the chapters a page has its own, here the largest. The archives of a van and of practice
    are fetched when they are asked for (test_van_kept.py and
    test_practice.py in tests/browser), the memory only to be saved with the rest
    (test_start_ladder.py there).
    """
    folder = built / "assets" / "runtime"
    chapters = {folder / f"{name}.zip.bin" for name in CHAPTERS}
    runtime = sum(sent(f) for f in {*folder.iterdir()} - chapters if f.name not in LATER)
    runtime += max(map(sent, chapters))
    assert runtime <= WIRE_BUDGET
    page = (built / "checks" / "wire-drop" / "index.html").read_text()
    assets = set(re.findall(r'(?:src|href)="(?:\.\./)+(assets/[^"]+\.(?:js|css))"', page))
    assert assets
    first = sum(sent(built / path) for path in assets) + len(gzip.compress(page.encode()))
    assert runtime + first <= PROMISED


def test_the_runtime_is_made_of_the_code_as_it_stands(built):
    """If this fails after a change in calc, build_scripts/build has not been run since."""
    stamp = built.parent / "build" / "runtime.key"
    assert stamp.read_text() == runtime_key()


def test_what_the_page_has_no_use_for_is_not_in_its_bundle(built):
    """The terminal's command, and the frames of pages, which stand there as they are built."""
    names = archive(built, "app.zip")
    assert "calc/worksheet/work.pyc" in names
    every = names + archive(built, "van.zip") + archive(built, "questions.zip")
    every += [name for chapter in CHAPTERS for name in archive(built, f"{chapter}.zip")]
    unused = ("__main__", "calc/terminal_", "practice_page", "van_page")
    assert not [name for name in every if any(part in name for part in unused)]


def test_the_memory_is_the_one_that_its_check_is_of(built):
    """By its hash, and by the replies that this Python gives to the known questions."""
    runtime = built / "assets" / "runtime"
    told = json.loads((runtime / "boot.json").read_bytes())["memory"]
    content = (runtime / "memory.bin").read_bytes()
    assert told["hash"] == hashlib.sha256(content).hexdigest()
    assert told["sample"] in known()
    replies = [ask(question).encode() for question in known()]
    assert told["replies"] == sorted(hashlib.sha256(reply).hexdigest() for reply in replies)
    assert len(told["replies"]) == len(calc.worksheets()) + 1  # each as it opens, and the sample
    length, count, more = struct.unpack_from("<3I", gzip.decompress(content))
    assert length < 48_000_000
    assert 500 < more < count < 4000  # pages of 4 KiB: what a new module holds, what it does not


def test_the_code_of_the_van_is_an_archive_of_its_own(built):
    """Every page starts from the core, and none but a page about a van pays for a van."""
    core, van = archive(built, "app.zip"), archive(built, "van.zip")
    assert not [name for name in core if name.startswith(("calc/van", "calc/render/van"))]
    assert {"calc/van/record.pyc", "calc/render/van_bridge.pyc", "calc/tables/van_loads.csv"} <= {
        *van
    }
    assert not set(core) & set(van)
    assert not {"tomllib/__init__.pyc"} & set(archive(built, "stdlib.zip"))


def test_a_chapter_is_an_archive_of_its_own_and_holds_nothing_else(built):
    """A worksheet more costs the pages of other chapters nothing before their first answer."""
    found = {name: archive(built, f"{name}.zip") for name in CHAPTERS}
    for chapter, names in found.items():
        assert all(name.startswith(f"calc/sheets/{chapter}/") for name in names)
    sheets = {
        name.split("/")[3].replace("_", "-"): chapter
        for chapter, names in found.items()
        for name in names
        if name.endswith("/calculate.pyc")
    }
    boot = json.loads((built / "assets" / "runtime" / "boot.json").read_bytes())
    assert boot["chapters"] == sheets and set(sheets) == set(calc.worksheets())
    core = {name for name in archive(built, "app.zip") if name.startswith("calc/sheets/")}
    assert {name.split("/")[2] for name in core} == {"__init__.pyc", "__init__.made", "parts"}


def test_practice_is_an_archive_of_its_own_with_the_questions_of_every_sheet(built):
    practice = archive(built, "questions.zip")
    others = [name for other in ("app", "van") for name in archive(built, f"{other}.zip")]
    assert not [name for name in others if "practice" in name]
    assert {"calc/practice/checking.pyc", "calc/render/practice_bridge.pyc"} <= {*practice}
    questions = [name for name in practice if name.endswith("/practice.pyc")]
    assert len([name for name in questions if "sheets" in name]) == len(calc.worksheets())
    assert all("practice" in name for name in practice)


def test_the_code_for_clients_is_an_archive_of_its_own(built):
    """The sentences for clients are read on their page only."""
    core, client = archive(built, "app.zip"), archive(built, "client.zip")
    explained = [name for name in client if name.endswith("/client.pyc")]
    assert len(explained) == len(calc.worksheets()) + 1  # and what puts them into HTML
    assert "calc/worksheet/explain.pyc" in client
    assert not set(core) & set(client)


def test_no_map_no_source_and_no_left_over_is_shipped(built):
    names = [path.relative_to(built).as_posix() for path in built.rglob("*") if path.is_file()]
    assert not [name for name in names if re.search(r"\.(map|py|pyc|ts|md|toml|lock)$", name)]
    names.remove(".htaccess")
    assert not [name for name in names if re.search(r"(^|/)\.|~$|\.orig$|\.tmp$", name)]


def test_the_manifest_makes_the_site_installable(built):
    """What Chromium asks of an installable page: name, start, display, and two sizes of icon."""
    manifest = json.loads((built / "manifest.webmanifest").read_text("utf-8"))
    assert manifest["name"] and len(manifest["short_name"]) <= 12
    assert manifest["start_url"] == manifest["scope"] == manifest["id"] == "./"
    assert manifest["display"] in ("standalone", "minimal-ui")
    sizes = {}
    for icon in manifest["icons"]:
        width, height = map(int, icon["sizes"].split("x"))
        assert icon["type"] == "image/png"
        assert png_size(built / icon["src"]) == (width, height)
        sizes.setdefault(icon["purpose"], set()).add(width)
    assert {192, 512} <= sizes["any"]
    assert 512 in sizes["maskable"]
    for colour in (manifest["theme_color"], manifest["background_color"]):
        assert re.fullmatch(r"#[0-9a-f]{6}", colour)


def test_every_shortcut_of_the_manifest_leads_to_a_worksheet(built):
    manifest = json.loads((built / "manifest.webmanifest").read_text("utf-8"))
    targets = [shortcut["url"] for shortcut in manifest["shortcuts"]]
    assert targets == [f"./checks/{name}/" for name in calc.chapters()[0][1]]  # a phone shows a few
    assert all((built / target / "index.html").is_file() for target in targets)


def test_a_phone_s_home_screen_has_its_icon(built):
    """180 pixels: the size that phones ask for by this link."""
    page = (built / "index.html").read_text("utf-8")
    link = re.search(r'<link[^>]*rel="apple-touch-icon"[^>]*href="([^"]+)"', page) or re.search(
        r'<link[^>]*href="([^"]+)"[^>]*rel="apple-touch-icon"', page
    )
    assert link
    assert png_size(built / link.group(1)) == (180, 180)


def test_every_page_names_the_manifest(built):
    for path in built.rglob("index.html"):
        found = re.search(r'rel="manifest"[^>]*href="([^"]+)"', path.read_text("utf-8"))
        assert found, path
        manifest = built / "manifest.webmanifest"
        assert (path.parent / found.group(1)).resolve() == manifest.resolve()


def test_the_headers_for_hosts_carry_the_policy_and_the_types(built):
    text = (built / "_headers").read_text("utf-8")
    assert text.startswith("/*\n")
    assert "Content-Security-Policy: default-src 'none'" in text
    assert "frame-ancestors 'none'" in text
    for path in listed(built):
        if path.endswith((".webmanifest", ".bin")):
            assert f"\n/{path}\n  Content-Type: " in text


def test_both_files_of_headers_say_the_same(built):
    lines = (built / ".htaccess").read_text("utf-8").splitlines()
    set_ = {line.split()[2]: line.split('"')[1] for line in lines if line.startswith("Header set ")}
    block = (built / "_headers").read_text("utf-8").split("\n\n")[0].splitlines()[1:]
    assert set_ == dict(line.strip().split(": ", 1) for line in block)
    assert "AddType application/manifest+json .webmanifest" in lines
    assert "AddType application/octet-stream .bin" in lines


def test_no_address_of_a_page_names_a_host_that_does_not_exist(built):
    for file in built.rglob("*.html"):
        for tag in re.findall(r"<(?:link|meta|a|img|script)\b[^>]*>", file.read_text("utf-8")):
            assert ".invalid" not in tag, f"{file}: {tag}"


def test_no_file_has_an_ending_that_hosts_send_each_in_their_own_way(built):
    """`.mjs` comes as mere bytes from some, and `.gz` as something that is packed on the way."""
    assert not [path for path in listed(built) if path.endswith((".mjs", ".gz", ".wasm"))]

"""Everything shipped that others made is named with its licence, and each name is borne out."""

import gzip
import io
import json
import re
import zipfile
from functools import cache
from html import unescape
from pathlib import Path
from urllib.parse import unquote

import material
import pytest

from build_scripts import shipped
from build_scripts.runtime import LOADER

PROJECT = Path(__file__).parents[2]
PYODIDE = PROJECT / "node_modules" / "pyodide"
THEME = Path(material.__file__).parent / "templates"
TABLES = shipped.tables()
LICENCE_WORDS = {
    "0BSD": "Permission to use, copy, modify, and/or distribute",
    "Apache-2.0": "Apache License",
    "Apache-2.0 WITH LLVM-exception": "LLVM Exceptions",
    "BSD-2-Clause": "Redistribution and use",
    "BSD-3-Clause": "Redistribution and use",
    "CC-BY-4.0": "CC BY 4.0",
    "MIT": "Permission is hereby granted",
    "MPL-2.0": "Mozilla Public License",
    "PSF-2.0": "PYTHON SOFTWARE FOUNDATION LICENSE",
    "Unicode-3.0": "UNICODE LICENSE V3",
    "W3C-20150513": "Permission to copy, modify, and distribute this work",
    "Zlib": "This software is provided 'as-is'",
    "blessing": "May you do good and not evil",
    "bzip2-1.0.6": "Redistribution and use",
    "public domain": "public domain",
}
NOTICE = re.compile(r"(?:copyright|\(c\)|©)[^\n\0\"'`<>{}]{0,160}", re.I)
YEARS = re.compile(r"(?:copyright|\(c\)|©|\d{4}|present|\bby\b|[\s,:*-])+", re.I)


@cache
def texts() -> str:
    """Return every licence and notice that is kept, on one line."""
    files = [PROJECT / "LICENSE", *sorted(shipped.LICENCES.iterdir())]
    return " ".join(" ".join(file.read_text("utf-8").split()) for file in files).lower()


@cache
def unpacked(file: Path) -> bytes:
    """Return what a shipped file holds, with what is packed in it."""
    content = file.read_bytes()
    if file.suffix == ".bin":
        content = gzip.decompress(content)
    if content[:4] == b"PK\3\4":
        archive = zipfile.ZipFile(io.BytesIO(content))
        content = b"\n".join(archive.read(name) for name in archive.namelist())
    return content


def holders(text: str) -> set[str]:
    """Return whom the notices of a text name: what follows a year or a sign, up to a comma."""
    found = set()
    for notice in NOTICE.findall(text):
        after = YEARS.match(notice)
        name = notice[after.end() if after else 0 :].strip()
        named = re.match(r"[A-Z][a-zA-Z*&]{2,}(?: (?:[A-Z][a-zA-Z]+|and|of|for|the))*", name)
        if named and re.search(r"\d{4}|\(c\)|©", notice, re.I):
            found.add(named[0].lower())
    return found


@pytest.mark.parametrize("part", shipped.parts(), ids=lambda part: part.ref)
def test_a_part_has_its_licence_its_version_and_its_source(part):
    text = part.texts[0].read_text("utf-8")
    assert LICENCE_WORDS[part.licence] in text
    assert part.numbered or part.version == f"as in {part.within}"
    assert re.match(r"[\w.-]+\.\w+", part.source)
    assert not part.within or part.within in {one.name for one in shipped.parts()}


def test_no_licence_is_kept_of_what_is_not_shipped():
    kept = {file.name for file in shipped.LICENCES.iterdir()}
    assert kept == {text.name for part in shipped.parts() for text in part.texts}


def test_what_is_said_to_be_in_a_file_is_in_it(built):
    for table in TABLES:
        if evidence := table.get("evidence"):
            assert evidence.encode() in unpacked(built / table["in"]), table["name"]
            if "\0" in evidence or table["name"] in {"zlib", "Zstandard", "Expat", "bzip2"}:
                assert table["version"] in evidence, table["name"]


def test_every_library_in_the_line_that_links_the_page_s_python_is_named():
    """By the settings that its builders left in the package."""
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        (name,) = [one for one in archive.namelist() if "_sysconfigdata_" in one]
        told: dict = {}
        exec(archive.read(name), told)
    line = told["build_time_vars"]["MODLIBS"]
    linked = set(re.findall(r"-l(?!m\b)(\w+)|-s(\w+)|(\w+\.a)\b", line))
    known = {name for table in TABLES for name in table.get("linked", ())}
    assert {"".join(names) for names in linked} == known


def test_every_source_that_the_page_s_python_names_is_a_named_part_s(built):
    """Failed asserts would say the file they stand in: where each was compiled from."""
    python = unpacked(built / "assets/runtime/pyodide.asm.wasm.bin")
    paths = set(re.findall(rb"[\w./+-]{4,}\.(?:c|h|cpp|hpp|cc)(?=[\0\" ])", python))
    systems = {
        match[1].decode()
        for path in paths
        if (match := re.match(rb".*/system/lib/([\w-]+)/", path))
    }
    assert systems <= {"compiler-rt", "libcxxabi", "libcxx"}
    modules = {m[1].decode() for path in paths if (m := re.match(rb"(?:\./)?Modules/(\w+)/", path))}
    own = {"_ctypes", "_io", "_sqlite", "_sre", "_testcapi", "_testinternalcapi"}
    own |= {"_testlimitedcapi", "_zstd", "cjkcodecs", "clinic", "_remote_debugging"}
    assert modules - own <= {"_decimal", "_hacl", "expat"}
    exported = set(
        re.findall(
            rb"\b(ZSTD|ZDICT|BZ2|lzma|sqlite3|ffi|hiwire|XML|mpd|uv|curl|ssl|png|jpeg)_", python
        )
    )
    assert exported <= {
        b"ZSTD",
        b"ZDICT",
        b"BZ2",
        b"lzma",
        b"sqlite3",
        b"ffi",
        b"hiwire",
        b"XML",
        b"mpd",
    }


def test_what_is_said_to_be_unchanged_is_unchanged(built):
    runtime = built / "assets" / "runtime"
    for name in LOADER:
        assert (runtime / f"{name.removesuffix('.mjs')}.js").read_bytes() == (
            PYODIDE / name
        ).read_bytes()
    python = unpacked(runtime / "pyodide.asm.wasm.bin")
    assert python == (PYODIDE / "pyodide.asm.wasm").read_bytes()
    changed = [
        file.name
        for file in (built / "assets").rglob("*.min.*")
        if file.read_bytes() != (THEME / file.relative_to(built)).read_bytes()
    ]
    assert len(changed) == 1 and changed[0].startswith("bundle.")


def test_every_package_of_the_theme_s_scripts_and_sheets_is_named(built):
    """By the maps that come with them, which name the files that each was made of."""
    found = set()
    for file in (built / "assets").rglob("*.min.*"):
        map_ = json.loads(
            (THEME / file.relative_to(built)).with_name(f"{file.name}.map").read_text()
        )
        for source in map_["sources"]:
            found |= set(re.findall(r"node_modules/((?:@[\w.-]+/)?[\w.-]+)/", source))
    assert found == {table["theme"] for table in TABLES if "theme" in table}


def test_every_icon_of_the_theme_s_style_sheets_is_of_a_named_set(built):
    def bare(path: str) -> str:
        return re.sub(r"[\s,]", "", path)

    sets: dict[str, set[str]] = {}
    for file in (THEME / ".icons").rglob("*.svg"):
        for path in re.findall(r'\bd="([^"]+)"', file.read_text("utf-8")):
            sets.setdefault(bare(path), set()).add(file.relative_to(THEME / ".icons").parts[0])
    named = {table["icons"] for table in TABLES if "icons" in table}
    used = set()
    for file in (built / "assets" / "stylesheets").glob("*.css"):
        images = r"url\(([\"']?)(data:image/svg\+xml.*?)\1\)"
        for _, image in re.findall(images, file.read_text("utf-8")):
            for path in re.findall(r"\bd=['\"]([^'\"]+)['\"]", unquote(image)):
                assert sets[bare(path)] & named, path[:40]
                used |= sets[bare(path)] & named
    assert used == named


def test_every_package_in_an_archive_is_named(built):
    found = set()
    for file in (built / "assets" / "runtime").glob("*.zip.bin"):
        if file.name == "stdlib.zip.bin":
            continue
        with zipfile.ZipFile(io.BytesIO(gzip.decompress(file.read_bytes()))) as archive:
            found |= {name.split("/")[0].removesuffix(".pyc") for name in archive.namelist()}
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        library = {name.split("/")[0].removesuffix(".py") for name in archive.namelist()}
    assert found - library - {"calc"} == {"segno"}


def test_every_notice_in_a_shipped_file_is_among_the_licences(built):
    found = {}
    for file in built.rglob("*"):
        if file.suffix in {".bin", ".js", ".css", ".svg"} and file.name != "memory.bin":
            text = unpacked(file).decode("utf-8", errors="replace")
            found |= dict.fromkeys(holders(text), file.name)
    assert len(found) > 10
    assert not {name: file for name, file in found.items() if name not in texts()}


def test_the_page_of_licences_has_every_part_and_every_text(built):
    page = unescape((built / "licences" / "index.html").read_text("utf-8"))
    for part in shipped.parts():
        assert f"<td>{part.name}</td><td>{part.version}</td><td>{part.licence}</td>" in page
        for file in part.texts:
            assert file.read_text("utf-8").strip() in page
    assert 'href="../materials.json"' in page


def test_the_bill_of_materials_has_what_its_standard_asks_for(built):
    """CycloneDX 1.6: `required` of its schema, and that every reference is of something."""
    bill = json.loads((built / shipped.MATERIALS).read_text("utf-8"))
    assert (bill["bomFormat"], bill["specVersion"], bill["version"]) == ("CycloneDX", "1.6", 1)
    components = [bill["metadata"]["component"], *bill["components"]]
    types = {"application", "library"}
    for one in components:
        assert one["type"] in types and one["name"]
        for choice in one["licenses"]:
            assert [*choice] in (["license"], ["expression"])
            assert len(choice.get("license", {"id": 1}).keys() & {"id", "name"}) == 1
        for reference in one.get("externalReferences", ()):
            assert reference["type"] and re.match(r"https://[\w.-]+\.\w+", reference["url"])
        assert re.fullmatch(
            r"pkg:(npm|pypi|generic)/[\w.-]+(@[\w.]+)?", one.get("purl", "pkg:npm/a")
        )
    refs = [one["bom-ref"] for one in components]
    assert len(refs) == len(set(refs))
    told = [ref for one in bill["dependencies"] for ref in (one["ref"], *one["dependsOn"])]
    assert set(told) == set(refs)
    assert len(bill["components"]) == len(shipped.parts())

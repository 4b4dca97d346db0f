"""Arrows point one way: calc knows no site, the sums know no worksheet, JavaScript no sums."""

import re
import subprocess
import sys
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

import calc
from calc.worksheet.fields import Choice, Quantity
from tests.contract.code import code_at, in_each, name_of
from tests.contract.samples import sheets

PROJECT = Path(__file__).parents[2]
CALC = sorted((PROJECT / "calc").rglob("*.py"))
SCRIPTS = sorted((PROJECT / "docs" / "assets").glob("*.js"))
TERMINAL = "calc/terminal_van.py"  # on top of all: it reads a van's file and writes its papers
MADE = {".venv", "node_modules", "build", "site", ".git"}


def imports(path: Path) -> frozenset[str]:
    """Return the full name of every module that a file imports, `from x import y` as `x.y`."""
    code = code_at(path)
    assert not code.imports_relatively, f"{name_of(path)} imports relatively"
    return code.imports


def files(*patterns: str) -> Iterator[Path]:
    """Yield the project's own files, without what is made or installed."""
    own = [path for path in sorted(PROJECT.iterdir()) if path.name not in MADE]
    for pattern in patterns:
        for path in own:
            yield from sorted(path.rglob(pattern)) if path.is_dir() else []
        yield from (path for path in own if path.match(pattern))


def module_within(module: str, *packages: str) -> bool:
    return any(module == one or module.startswith(f"{one}.") for one in packages)


@in_each(CALC)
def test_the_library_imports_itself_and_two_named_packages(path):
    outside = {"calc/units/quantities.py": ("pint",), "calc/render/code.py": ("segno",)}
    allowed = ("calc", *sys.stdlib_module_names, *outside.get(name_of(path), ()))
    assert {module for module in imports(path) if not module_within(module, *allowed)} == set()


@in_each(CALC)
def test_the_library_has_no_clock_no_chance_no_network_and_no_browser(path):
    kept_out = (
        "time", "datetime", "random", "secrets", "os", "socket", "subprocess", "urllib.request",
        "http", "tempfile", "shutil", "threading", "asyncio", "js", "pyodide", "build_scripts",
        "tests",
    )  # fmt: skip
    assert {module for module in imports(path) if module_within(module, *kept_out)} == set()


@in_each(CALC)
def test_two_files_and_the_terminal_read_files_and_no_other(path):
    readers = {"calc/tables/__init__.py", "calc/units/quantities.py", TERMINAL}
    code = code_at(path)
    reads = re.search(
        r"\bread_text\b|\bread_bytes\b|\bpathlib\b|\bresources\b|\bget_data\b|__file__", code.text
    )
    assert not code.calls_open
    assert bool(reads) == (name_of(path) in readers)


MOST_STATEMENTS = 205
MOST_CHARACTERS = 9000  # of JavaScript, without its comments
BOOK = ("electrical", "energy", "comfort")
BOTTOM = ("units", "tables", "sources", "judge")


def package(path: Path) -> str:
    """Return the package of `calc` that a file lies in, nothing for one beside them."""
    parts = path.relative_to(PROJECT / "calc").parts
    return parts[0] if len(parts) > 1 else ""


def of(*packages: str) -> list[Path]:
    """Return the files of packages of `calc`."""
    return [path for path in CALC if package(path) in packages]


def knows(path: Path) -> set[str]:
    """Return the packages of `calc`, or the modules beside them, that a file imports from."""
    own = {module for module in imports(path) if module_within(module, "calc")}
    return {module.split(".")[1] if "." in module else module for module in own}


@in_each(of(*BOOK))
def test_the_book_knows_units_tables_judgements_and_itself_only(path):
    assert knows(path) <= {*BOOK, "units", "tables", "judge"}


@in_each(of(*BOTTOM))
def test_what_stands_at_the_bottom_knows_nothing_above_it(path):
    below = {
        "units": {"units"},
        "tables": {"tables"},
        "sources": {"sources"},
        "judge": {"judge", "units"},
    }
    assert knows(path) <= below[package(path)]


@in_each(of("worksheet"))
def test_how_a_worksheet_is_worked_knows_no_worksheet_and_no_subject(path):
    assert knows(path) <= {"worksheet", *BOTTOM}


def test_no_two_modules_of_the_worksheet_import_each_other():
    graph = {
        f"calc.worksheet.{path.stem}": {
            ".".join(module.split(".")[:3]) for module in imports(path) if "worksheet." in module
        }
        for path in of("worksheet")
    }

    def reaches(start: str, seen: frozenset[str] = frozenset()) -> set[str]:
        found = graph.get(start, set()) - seen
        return found.union(*(reaches(one, seen | found) for one in found))

    assert {name for name in graph if name in reaches(name)} == set()


@in_each(of("sheets"))
def test_a_sheet_knows_no_other_sheet_but_by_its_parts(path):
    own = ".".join(("calc", *path.relative_to(PROJECT / "calc").parts[:3]))
    others = {module for module in imports(path) if module_within(module, "calc.sheets")}
    shared = {"calc.sheets.IDS", "calc.sheets.worksheet"}
    strange = {
        m for m in others if not module_within(m, own, "calc.sheets.parts") and m not in shared
    }
    assert strange == set() or package(path) == "" or path.parent.name == "sheets"


@in_each(of("van"))
def test_a_van_knows_worksheets_by_the_public_face_only(path):
    below = {*BOOK, *BOTTOM, "faults", "van", "worksheet"}
    assert knows(path) <= below | {"calc"} | set(calc.__all__)


@in_each(of(*BOOK, *BOTTOM, "worksheet", "sheets", "faults"))
def test_nothing_below_a_van_knows_of_vans(path):
    assert "van" not in knows(path)


def test_the_library_starts_without_what_a_van_is_made_of():
    code = "import calc, sys; print([m for m in sys.modules if m.startswith('calc.van')])"
    command = [sys.executable, "-c", code]
    done = subprocess.run(command, capture_output=True, text=True, cwd=PROJECT, check=True)
    assert done.stdout.strip() == "[]"


BUILD = sorted((PROJECT / "build_scripts").glob("*.py"))


@in_each(BUILD)
def test_build_scripts_know_the_public_face_and_never_the_inside_of_a_sheet(path):
    known = {"calc", *BOOK, *BOTTOM, "faults", "practice", "render", "van", "worksheet"}
    public = {"Answer", "InputError", "Problem", "Worksheet", *dir(calc)}
    assert knows(path) - {"sheets"} <= known | public
    assert "sheets" not in knows(path)


@in_each([*CALC, *BUILD])
def test_nothing_in_production_imports_tests(path):
    assert {module for module in imports(path) if module_within(module, "tests")} == set()


@in_each(of("sheets"))
def test_a_worksheet_s_folder_has_the_five_files(path):
    if path.name == "__init__.py" and len(path.relative_to(PROJECT / "calc" / "sheets").parts) == 3:
        names = {one.name for one in path.parent.glob("*.py")}
        assert {"__init__.py", "calculate.py", "words.py", "client.py", "practice.py"} <= names


RENDERS_NOTHING = [p for p in CALC if package(p) != "render" and name_of(p) != TERMINAL]


@in_each(RENDERS_NOTHING)
def test_only_what_renders_and_the_terminal_know_html(path):
    assert {module for module in imports(path) if module_within(module, "calc.render")} == set()


@in_each([p for p in CALC if "sheets" not in p.parts])
def test_nothing_but_the_register_knows_a_single_worksheet(path):
    own = {module for module in imports(path) if module_within(module, "calc.sheets")}
    register = {
        "calc.sheets.CHAPTERS",
        "calc.sheets.IDS",
        "calc.sheets.worksheet",
        "calc.sheets.practice_of",
        "calc.sheets.explanation_of",
    }
    assert own <= register
    if path.parent.name != "sources" and package(path) != "van":  # a van fills them by their ids
        text = code_at(path).text.split('"""', 2)[-1]  # docstrings may show an example
        names = {sheet.id for sheet in sheets()}
        assert not {name for name in names if f'"{name}"' in text and "calc.work(" not in text}


def test_no_folder_of_tests_is_passed_over(pytestconfig):
    """Pytest passes over folders of some names, such as build, without a word."""
    passed_over = pytestconfig.getini("norecursedirs")
    folders = {path.parent.name for path in (PROJECT / "tests").rglob("test_*.py")}
    assert len(folders) > 5
    assert not [(f, p) for f in folders for p in passed_over if fnmatch(f, p)]


def test_python_files_are_short():
    """Counted in statements, so that nobody meets the limit by making lines longer.

    A file's width and its sentences do not count.
    """
    counts = {name_of(path): code_at(path).statements for path in files("*.py")}
    assert {name: count for name, count in counts.items() if count > MOST_STATEMENTS} == {}


def test_javascript_files_are_short():
    sizes = {name_of(path): len(code_of(path)) for path in files("*.js", "*.mjs")}
    assert {name: size for name, size in sizes.items() if size > MOST_CHARACTERS} == {}


def code_of(path: Path) -> str:
    """Return JavaScript without its comments."""
    text = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
    return re.sub(r"(^|\s)//.*", r"\1", text)


@in_each(SCRIPTS)
def test_javascript_knows_no_field(path):
    """A list's `.length`, the event `"load"`, a `.state` and a picture's `.width` of the browser's
    are not our words.
    """
    browsers = (
        r'\.length\b|EventListener\("load"|\b(?:history|worker|source)\.state\b'
        r"|\b(?:image|canvas|style)\.(?:width|height)\b|\bArray\.from\b"
        r'|"\w+\.css"|\bblock: "nearest"'
    )
    code = re.sub(browsers, "", code_of(path))
    ids = {field.id for sheet in sheets() for field in sheet.fields}
    ids |= {named.id for sheet in sheets() for named in (*sheet.results, *sheet.intermediates)}
    assert all(re.fullmatch(r"\w+", name) for name in ids), "they are looked for as whole words"
    words = set(re.findall(r"""["'`.](\w+)\b(?!-)""", code)) | set(re.findall(r"(\w+)\s*:", code))
    assert words & ids == set()


@in_each(SCRIPTS)
def test_javascript_knows_no_unit(path):
    code = code_of(path)
    fields = [field for sheet in sheets() for field in sheet.fields if isinstance(field, Quantity)]
    units = {unit for field in fields for kind in field.kinds for unit in kind.units}
    words = {word for unit in units for word in re.findall(r"[a-z]{4,}", unit.name)}
    assert {word for word in words if re.search(rf"\b{word}s?\b", code)} == set()
    texts = {unit.symbol for unit in units} | {unit.link for unit in units}
    literals = re.findall(r'"([^"\n]*)"|\'([^\'\n]*)\'|`([^`]*)`', code)
    quoted = {text for groups in literals for text in groups if text}
    assert quoted & (texts - {""}) == set()
    assert not {q for q in quoted if re.search(r"\d\s?(?:V|A|W|Ω|m|ft|°C|%)\b", q)}


@in_each(SCRIPTS)
def test_javascript_has_no_formula_and_no_choice(path):
    code = code_of(path)
    numbers = re.findall(r"(?<![\w.#])\d[\d_]*\.\d+|\bMath\.(?:pow|sqrt|log|exp)\b|\*\*", code)
    assert numbers == []
    fields = [field for sheet in sheets() for field in sheet.fields if isinstance(field, Choice)]
    options = {option.id for field in fields for option in field.options if len(option.id) > 3}
    assert {text for text in options if re.search(rf'["\'`]{re.escape(text)}["\'`]', code)} == set()


NUMBERS = {
    "page.js": {
        "0", "1",  # places
        "300",  # milliseconds until the address is written
        "2000",  # and until Python starts where the browser does not say that it is idle
        "65536",  # characters of a link that are read
    },
    "box.js": {"0", "700"},  # milliseconds until a box in use is told what is wrong with it
    "python.js": {
        "0", "1",
        "2",  # restarts
        "1000", "10000", "15000", "60000",  # milliseconds: a tick, a stage, a saved start, a start
        "5000",  # and until a file that is asked for is said not to come
    },
    "standing.js": {"0", "200", "800"},  # milliseconds until an answer is stale, and is said to be
    "rows.js": {"0", "1", "5"},  # the 5 letters of `.unit`
    "parts.js": {"1"},  # less: no stop of the tab key
}  # fmt: skip
"""All numbers in the scripts through which figures go: places and times, nothing of the trade."""


@pytest.mark.parametrize("name", NUMBERS)
def test_the_page_holds_no_number_but_places_and_times(name):
    code = code_of(PROJECT / "docs" / "assets" / name)
    numbers = {n.replace("_", "") for n in re.findall(r"(?<![\w$.])\d[\d_]*", code)}
    assert numbers <= NUMBERS[name]


def test_no_box_of_ours_is_of_the_type_that_turns_1_comma_5_into_15():
    for path in files("*.py", "*.js", "*.mjs", "*.html", "*.md"):
        if "tests" not in path.parts:
            assert not re.search("type=[\"']?number", path.read_text("utf-8")), name_of(path)

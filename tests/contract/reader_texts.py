"""Every text that a reader may see, with its place: read from the files, without working a sheet.

Texts in Python are its strings but documentation, ids and class names; an f-string's values are
`{}`. What only a developer sees (the message of an assertion) is read as well and does no harm.
"""

import ast
import json
import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path

PROJECT = Path(__file__).parents[2]
DOCS = PROJECT / "docs"
FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FRONT_MATTER = re.compile(r"\A---\n.*?^---\n", re.MULTILINE | re.DOTALL)
# An id, a class, a file, a selector: nothing but such letters, and no capital that begins a word.
UNREAD = re.compile(r"[a-z0-9_.:/#\-]*|(?:lw|md)-[\w -]*|<[^>]*>")


@cache
def texts() -> tuple[tuple[str, str], ...]:
    """Return (place, text) of everything that a reader may see."""
    return (*_of_python(), *_of_data(), *_of_scripts(), *_of_pages())


def _place(path: Path, line: int = 0) -> str:
    name = path.relative_to(PROJECT).as_posix()
    return f"{name}:{line}" if line else name


def strings_of(code: str) -> Iterator[tuple[int, str]]:
    """Yield each string of Python with its line; a documentation string is none."""
    inside: set[int] = set()
    tree = ast.parse(code)
    for node in ast.walk(tree):  # breadth first: what holds a string comes before the string
        match node:
            case ast.Expr(value=ast.Constant()):
                inside.add(id(node.value))
            case ast.JoinedStr():
                inside |= {id(value) for value in node.values}
                parts = (v.value if isinstance(v, ast.Constant) else "{}" for v in node.values)
                yield node.lineno, "".join(map(str, parts))
            case ast.Constant(value=str(text)) if id(node) not in inside:
                yield node.lineno, text


def _of_python() -> Iterator[tuple[str, str]]:
    for folder in ("calc", "build_scripts"):
        for path in sorted((PROJECT / folder).rglob("*.py")):
            for line, text in strings_of(path.read_text("utf-8")):
                if not UNREAD.fullmatch(text):
                    yield _place(path, line), text


def _leaves(value: object) -> Iterator[str]:
    match value:
        case str():
            yield value
        case dict():
            for held in value.values():
                yield from _leaves(held)
        case list():
            for held in value:
                yield from _leaves(held)


def _of_data() -> Iterator[tuple[str, str]]:
    for path in sorted((PROJECT / "calc" / "faults").glob("*.json")):
        for text in _leaves(json.loads(path.read_text("utf-8"))):
            if not UNREAD.fullmatch(text):
                yield _place(path), text
    path = PROJECT / "build_scripts" / "glossary.toml"
    for text in _leaves(tomllib.loads(path.read_text("utf-8"))):
        yield _place(path), text


def _of_scripts() -> Iterator[tuple[str, str]]:
    """Yield what stands between quotation marks in our scripts, where it has a space."""
    for path in sorted((DOCS / "assets").glob("*.js")):
        for line, code in enumerate(path.read_text("utf-8").splitlines(), 1):
            code = re.sub(r"(?:^|\s)//.*|^\s*/?\*.*", "", code)
            for pair in re.findall(r'"([^"]*)"|`([^`]*)`', code):
                text = re.sub(r"\$\{[^}]*\}", "{}", "".join(pair))
                if " " in text.strip():
                    yield _place(path, line), text


def _of_pages() -> Iterator[tuple[str, str]]:
    for path in sorted(DOCS.rglob("*.md")):
        text = path.read_text("utf-8")
        # Plain phrases in `tags` are what people type, not what we say.
        text = FRONT_MATTER.sub(_without_tags, text)
        text = FENCE.sub(lambda found: "\n" * found[0].count("\n"), text)
        for line, said in enumerate(text.splitlines(), 1):
            yield _place(path, line), re.sub(r"\]\([^)]*\)|`[^`]*`|<[^>]*>", "", said)
    for path in sorted((PROJECT / "overrides").glob("*.html")):
        said = re.sub(r"\{[%{#].*?[%}#]\}|<[^>]*>", " ", path.read_text("utf-8"), flags=re.DOTALL)
        yield _place(path), said


def _without_tags(front_matter: re.Match[str]) -> str:
    return re.sub(r"^  - .*$", "", front_matter[0], flags=re.MULTILINE)

"""The files that the page's bundle is made of, and how they are packed."""

import ast
import io
import re
import zipfile
from collections.abc import Iterable
from pathlib import Path

import deflate

Files = dict[str, bytes]

CORE, VAN, PRACTICE, CLIENT = "app.zip", "van.zip", "questions.zip", "client.zip"
"""The code that every page has; what is fetched on top for a van, for practice, for a client."""

OF_VAN = ("calc/van", "calc/render/van", "calc/tables/van_")
"""How the names begin of what only pages about a van have a use for."""

OF_PRACTICE = ("calc/practice", "calc/render/practice")
"""How the names begin of what only practice has a use for, beside the questions of each sheet."""

OF_CHAPTER = re.compile(r"calc/sheets/(?!parts/)(\w+)/")
"""How the names begin of a chapter's own: a page has those of its own first, the others later."""

OF_CLIENT = re.compile(
    r"calc/(render/client\w*|worksheet/(client_link|explain)|sheets/.*/client)\."
)
"""The names of what only a link for a client has a use for."""


def page_files(own: Path) -> list[Path]:
    """The files of `calc`, in the folder `own`, that the page has a use for.

    It has no terminal, and what stands in its pages as they are built is not made again there: the
    frames of the pages of a van and of a practice set.
    """
    built = ("practice_page", "van_page", "van_keys", "client_page")
    unused = {own / "__main__.py", *own.glob("terminal_*.py")}
    unused |= {*(own / "render" / f"{name}.py" for name in built)}
    kept = (file for file in own.rglob("*") if "__pycache__" not in file.parts)
    return [file for file in kept if file.is_file() and file not in unused]


def archive_of(name: str) -> str:
    """The archive in which a file of `calc`, by its name in an archive, comes to the page."""
    if name.startswith(OF_VAN):
        return VAN
    if OF_CLIENT.match(name):
        return CLIENT
    in_sheet = name.startswith("calc/sheets") and "/practice." in name
    if in_sheet or name.startswith(OF_PRACTICE):
        return PRACTICE
    chapter = OF_CHAPTER.match(name)
    return f"{chapter[1]}.zip" if chapter else CORE


def chapters_of(names: Iterable[str], ids: Iterable[str]) -> dict[str, str]:
    """The chapter of each worksheet, by its id, as these names have it: its folder."""
    found = filter(None, map(OF_CHAPTER.match, names))
    folders = {one.string.split("/")[3]: one[1] for one in found}
    return {name: folders[name.replace("-", "_")] for name in ids}


def read_files(base: Path, roots: Iterable[Path]) -> Files:
    """Every file under the roots, by its path from `base`, without what Python left behind."""
    found = [file for root in roots for file in ([root] if root.is_file() else root.rglob("*"))]
    return {
        file.relative_to(base).as_posix(): file.read_bytes()
        for file in found
        if file.is_file() and "__pycache__" not in file.parts
    }


class _Lean(ast.NodeTransformer):
    """Takes out what the page never reads: docstrings, and annotations of plain functions."""

    def visit_Module(self, node: ast.Module) -> ast.Module:
        return self._bare(node)

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.ClassDef:
        return self._bare(node)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
        arguments = node.args
        named = (*arguments.posonlyargs, *arguments.args, *arguments.kwonlyargs)
        for one in (*named, *filter(None, (arguments.vararg, arguments.kwarg))):
            one.annotation = None
        if not node.decorator_list:  # a property's tells the kind of its value
            node.returns = None
        return self._bare(node)

    def _bare[N: (ast.Module, ast.ClassDef, ast.FunctionDef)](self, node: N) -> N:
        if ast.get_docstring(node, clean=False) is not None:
            node.body = node.body[1:] or [ast.Pass()]
        self.generic_visit(node)
        return node


def lean(source: bytes) -> bytes:
    """Return Python source that does the same, without docstrings and functions' annotations.

    Asserts stay, to be heard. A string that stands below a constant goes as well.
    """
    tree = _Lean().visit(ast.parse(source))
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef):
            said = [part for part in node.body if not _is_text(part)]
            node.body = said or [ast.Pass()]
        if isinstance(node, ast.ClassDef) and node.decorator_list:
            # Without a text `dataclasses` writes one, from a signature that it works out first.
            node.body.insert(0, ast.Expr(ast.Constant("-")))
    return ast.unparse(tree).encode()


def _is_text(node: ast.stmt) -> bool:
    return (
        isinstance(node, ast.Expr)
        and isinstance(node.value, ast.Constant)
        and isinstance(node.value.value, str)
    )


def read_zip(file: Path) -> Files:
    """The files in an archive."""
    with zipfile.ZipFile(file) as archive:
        return {name: archive.read(name) for name in archive.namelist() if not name.endswith("/")}


def zipped(files: Files) -> bytes:
    """An archive that depends on nothing but its content; stored, because it is packed whole."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        for name in sorted(files):
            archive.writestr(zipfile.ZipInfo(name), files[name])
    return buffer.getvalue()


def packed(content: bytes) -> bytes:
    """Gzip without a date, by libdeflate, whose best is 3 % smaller than zlib's.

    Packed whole, an archive is 10 % smaller than file by file.
    """
    return bytes(deflate.gzip_compress(content, 12))

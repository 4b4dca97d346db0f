"""Which files the page's Python has a use for, and what lies beside them."""

import ast
import base64
from pathlib import Path

from build_scripts.runtime_files import Files, archive_of, page_files

PACKAGES = ("pint", "flexcache", "flexparser", "platformdirs", "typing_extensions", "segno")
"""What `calc` imports from outside, and what that imports; all pure Python."""


def used_of(paths: list[str], boot: dict) -> set[str]:
    """The names, in an archive or in the library, of the files that modules were read from."""
    return {name_of(path, boot) for path in paths}


def name_of(path: str, boot: dict) -> str:
    """The name that a file has in an archive, by where the page's Python reads it."""
    return path.partition(".zip/")[2] or path.removeprefix(f"{boot['sitePackages']}/")


def made_beside(files: Files, made: dict[str, str], boot: dict) -> Files:
    """What `runtime_quick` looks for beside these modules, of all that was `made`."""
    contents = {name_of(path, boot): base64.b64decode(text) for path, text in made.items()}
    return {
        f"{name.removesuffix('.pyc')}.made": contents[name]
        for name in files.keys() & contents.keys()
    }


def only_later(start: set[str], later: set[str]) -> set[str]:
    """Those of `later` that can lie in an archive of their own: a package is read in one place."""
    packages = {name.partition("/")[0] for name in start if "/" in name}
    return {n for n in later - start if n.partition("/")[0] not in packages}


def imported_by(own: Path, *archives: str) -> list[str]:
    """Every module that any line of `calc` could import, also on paths that no question takes.

    Not the packages: they come only as far as a question needs them. With `archives`, the code of
    all others is left out.
    """
    names = set()
    for file in (file for file in page_files(own) if file.suffix == ".py"):
        if _left_out(file.relative_to(own.parent).as_posix(), archives):
            continue
        names.add(".".join(file.relative_to(own.parent).with_suffix("").parts))
        for line in ast.walk(ast.parse(file.read_bytes())):
            if isinstance(line, ast.Import):
                names |= {alias.name for alias in line.names}
            elif isinstance(line, ast.ImportFrom):
                names |= {f"{line.module}.{alias.name}" for alias in line.names} | {line.module}
    names = {name.removesuffix(".__init__") for name in names}
    names = {name for name in names if not _left_out(f"{name.replace('.', '/')}.py", archives)}
    return sorted(name for name in names if name.split(".")[0] not in PACKAGES)


def _left_out(name: str, archives: tuple[str, ...]) -> bool:
    return bool(archives) and archive_of(name) not in archives

"""The files that the page's bundle is made of, and how they are packed."""

import io
import zipfile
import zlib
from collections.abc import Iterable
from pathlib import Path

Files = dict[str, bytes]


def page_files(own: Path) -> list[Path]:
    """The files of `calc`, in the folder `own`, that the page has a use for.

    It has no terminal, and the questions of the practice sets come built into its guides.
    """
    unused = {own / "__main__.py", own / "render" / "practice.py"}
    unused |= {*(own / "practice").rglob("*"), *(own / "sheets").rglob("practice.py")}
    kept = (file for file in own.rglob("*") if "__pycache__" not in file.parts)
    return [file for file in kept if file.is_file() and file not in unused]


def read_files(base: Path, roots: Iterable[Path]) -> Files:
    """Every file under the roots, by its path from `base`, without what Python left behind."""
    found = [file for root in roots for file in ([root] if root.is_file() else root.rglob("*"))]
    return {
        file.relative_to(base).as_posix(): file.read_bytes()
        for file in found
        if file.is_file() and "__pycache__" not in file.parts
    }


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
    """Gzip without a date. Packed whole, an archive is 10 % smaller than file by file."""
    # Memory level 7 makes shorter blocks, which fit compiled code better than the default's.
    deflate = zlib.compressobj(9, zlib.DEFLATED, 31, 7)
    return deflate.compress(content) + deflate.flush()

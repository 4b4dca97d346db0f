"""Compiled code without the tables that name the line of each step: a tenth of its bytes.

Runs in the browser's own Python under node, for compiled code is written by the Python that reads
it. The page says what went wrong, not on which line of whose library.
"""

import base64
import binascii
import marshal
import zipfile
from types import CodeType

HEADER = 16  # bytes before the code: PEP 552
STEPS = 8  # of code, at most, to an entry of the table
NOWHERE = 0xF8  # an entry for one step that belongs to no line; the steps beyond it are added


def strip_archive(path: str) -> None:
    """Write the archive of `.pyc` files at `path` anew, with no lines in it."""
    with zipfile.ZipFile(path) as archive:
        files = {name: archive.read(name) for name in archive.namelist()}
    with zipfile.ZipFile(path, "w") as archive:
        for name, content in files.items():
            code = name.endswith(".pyc")
            archive.writestr(name, bare(content) if code else content)


def bare(content: bytes) -> bytes:
    """Return a `.pyc` file with no lines in it."""
    code = without_lines(marshal.loads(content[HEADER:]))
    return content[:HEADER] + marshal.dumps(code)


def without_lines(code: CodeType) -> CodeType:
    """Return `code`, and all code within it, with a table that names no line."""
    steps = len(code.co_code) // 2
    whole, rest = divmod(steps, STEPS)
    table = bytes([NOWHERE + STEPS - 1] * whole + ([NOWHERE + rest - 1] if rest else []))
    inner = tuple(
        without_lines(one) if isinstance(one, CodeType) else one for one in code.co_consts
    )
    return code.replace(co_linetable=table, co_consts=inner)


def made(texts: list[str]) -> str:
    """Return what `runtime_quick` finds beside a module: its texts compiled, by their checksum.

    In base64; as often as each text stands there. Raises ValueError if two texts share a checksum.
    """
    kept: dict[int, list[CodeType]] = {}
    for text in texts:
        code = without_lines(compile(text, "<string>", "exec"))
        kept.setdefault(binascii.crc32(text.encode()), []).append(code)
    if len(kept) < len(set(texts)):
        raise ValueError(f"Two texts with one checksum in {texts}")
    return base64.b64encode(marshal.dumps(kept)).decode()

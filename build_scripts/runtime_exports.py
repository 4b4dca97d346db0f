"""Which of the exports of Python's program the loader uses.

It goes through all that it is given, four times at each start. The program exports thousands of
names, so that parts compiled by others could be linked to it; the page loads no such part.
"""

import re
from collections.abc import Iterator

EXPORTS = 7
"""The section of a wasm module that names its exports (WebAssembly core specification, 5.5.10)."""

MAGIC = b"\0asm\x01\0\0\0"
WORD = re.compile(r"[A-Za-z_$][\w$]*")
READ = re.compile(r'wasmExports\["([\w$]+)"\]\.')
"""An export of which something is read as it is assigned: the value of a variable."""


def used_exports(wasm: bytes, loader: str) -> list[str]:
    """Return the names of the exports that the script `loader` uses, in the order of the wasm.

    A function that only stands in the loader's lists of all of them (where each is declared,
    assigned from its export, or handed on as an import) is not used. Raises ValueError if the wasm
    or the script is not made as this was written for.
    """
    words = {*WORD.findall(_without_lists(loader)), *READ.findall(loader)}
    return [name for name in exported(wasm) if name in words or f"_{name}" in words]


def exported(wasm: bytes) -> Iterator[str]:
    """Yield the names that a wasm module exports. Raises ValueError if it is none."""
    if not wasm.startswith(MAGIC):
        raise ValueError("This is no WebAssembly module of version 1")
    at = len(MAGIC)
    while at < len(wasm):
        section, (size, at) = wasm[at], _number(wasm, at + 1)
        if section == EXPORTS:
            count, at = _number(wasm, at)
            for _ in range(count):
                length, at = _number(wasm, at)
                yield wasm[at : at + length].decode()
                _, at = _number(wasm, at + length + 1)  # its kind, then its index
            return
        at += size


def _number(wasm: bytes, at: int) -> tuple[int, int]:
    """Read an unsigned LEB128 number; return it and the place behind it."""
    found = shift = 0
    while True:
        byte = wasm[at]
        at += 1
        found |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return found, at


def _without_lists(loader: str) -> str:
    """The script without what names every export: its variables, their assignment, the imports."""
    assigns = loader.index("function assignWasmExports(")
    declares = loader.rindex("var ", 0, assigns)
    assigned = loader.index("}", assigns)
    imports = loader.index("var wasmImports={", assigned)
    imported = loader.index("}", imports)
    return loader[:declares] + loader[assigned:imports] + loader[imported:]

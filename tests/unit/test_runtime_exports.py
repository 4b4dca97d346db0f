"""Which names of Python's program the loader is given: against what node finds in the same file."""

import json
import subprocess

import pytest

from build_scripts.runtime import PYODIDE
from build_scripts.runtime_exports import exported, used_exports

WASM = PYODIDE / "pyodide.asm.wasm"
LISTS = """
var _used,_unused,value;
function assignWasmExports(wasmExports){_used=wasmExports["used"];_unused=wasmExports["unused"];
value=wasmExports["value"].value}
var wasmImports={unused:_unused,used:_used};
"""
NODE = """
const bytes = require("fs").readFileSync(process.argv[1]);
const found = WebAssembly.Module.exports(new WebAssembly.Module(bytes));
console.log(JSON.stringify(found.map(({ name }) => name)));
"""


def module(*names: str) -> bytes:
    """One function of no type, exported under each name: by the specification, section 5.5."""
    entries = b"".join(bytes([len(name)]) + name.encode() + b"\0\0" for name in names)
    exports = bytes([len(names)]) + entries
    body = b"\x01\x04\x01\x60\0\0" + b"\x03\x02\x01\0" + bytes([7, len(exports)]) + exports
    return b"\0asm\1\0\0\0" + body + b"\x0a\x04\x01\x02\0\x0b"


def test_every_export_is_found_as_node_finds_it():
    done = subprocess.run(["node", "-e", NODE, WASM], capture_output=True, text=True, check=True)
    assert list(exported(WASM.read_bytes())) == json.loads(done.stdout)


def test_what_only_stands_in_the_lists_is_left_out():
    names = ["unused", "value", "used"]
    assert used_exports(module(*names), LISTS + "_used();") == ["value", "used"]
    assert used_exports(module(*names), "exports.unused;" + LISTS) == ["unused", "value"]


def test_another_kind_of_file_is_refused():
    with pytest.raises(ValueError):
        list(exported(b"MZ"))
    with pytest.raises(ValueError):
        used_exports(module("used"), "no lists here")

"""What stands in a file of Python, read and parsed once for all the tests that look into it."""

import ast
from dataclasses import dataclass
from functools import cache
from pathlib import Path


@dataclass(frozen=True)
class Code:
    """The text of a file and what was found in it.

    `imports` has the full name of every module that it imports, `from x import y` as `x.y`;
    `numbers` every number that it writes.
    """

    text: str
    imports: frozenset[str]
    numbers: frozenset[float]
    statements: int
    imports_relatively: bool
    calls_open: bool


@cache
def code_at(path: Path) -> Code:
    """Return what stands in the file of Python at `path`."""
    text = path.read_text("utf-8")
    imports: set[str] = set()
    numbers: set[float] = set()
    statements = 0
    relative = opens = False
    for node in ast.walk(ast.parse(text)):
        statements += isinstance(node, ast.stmt)
        match node:
            case ast.Import():
                imports |= {alias.name for alias in node.names}
            case ast.ImportFrom():
                relative |= bool(node.level)
                imports |= {f"{node.module}.{alias.name}" for alias in node.names}
            case ast.Call(func=ast.Name(id="open")):
                opens = True
            case ast.Constant(value=int() | float()) if not isinstance(node.value, bool):
                numbers.add(node.value)
    return Code(text, frozenset(imports), frozenset(numbers), statements, relative, opens)

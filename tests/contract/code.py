"""What stands in a file of Python, read and parsed once for all the tests that look into it."""

import ast
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

PROJECT = Path(__file__).parents[2]


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


def name_of(path: Path) -> str:
    """Return a file's name as it stands in the project."""
    return path.relative_to(PROJECT).as_posix()


def in_each(paths: Sequence[Path]) -> Callable[[Callable[[Path], None]], Callable[[], None]]:
    """Return what makes one test of a test of a file: it holds for each and tells all that fail.

    A test a file is thousands of them, and to begin and end one takes longer than to look.
    """
    assert paths

    def of_all(test: Callable[[Path], None]) -> Callable[[], None]:
        def whole() -> None:
            wrong = []
            for path in paths:
                try:
                    test(path)
                except AssertionError as error:
                    wrong.append(f"{name_of(path)}: {error}")
            assert not wrong, "\n".join(wrong)

        whole.__name__, whole.__doc__ = test.__name__, test.__doc__
        return whole

    return of_all

"""Each threshold and constant has one home, is tagged, and says where it is from."""

import ast
from collections import defaultdict
from importlib import import_module
from pathlib import Path
from typing import Annotated, Any, get_args, get_origin, get_type_hints

from calc.units.si import Tag
from tests.contract.code import code_at, in_each, name_of

PROJECT = Path(__file__).parents[2]
FILES = sorted((PROJECT / "calc").rglob("*.py"))
BOOK = [
    f
    for f in FILES
    if f.relative_to(PROJECT / "calc").parts[0] in ("electrical", "energy", "comfort")
]

# Two homes on purpose: the tag, and why.
TWO_HOMES: dict[str, str] = {}
# Numbers of the book without a tag: the file and name, and why.
UNTAGGED: dict[str, str] = {}


def tagged() -> list[tuple[str, str, Any]]:
    """Return the tag, the home and the value of every tagged constant."""
    found = []
    for path in FILES:
        if "Tag(" not in code_at(path).text:
            continue
        module = import_module(
            name_of(path).removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        )
        for name, hint in get_type_hints(module, include_extras=True).items():
            marks = get_args(hint)[1:] if get_origin(hint) is Annotated else ()
            tags = [mark.quantity for mark in marks if isinstance(mark, Tag)]
            found += [(tag, f"{module.__name__}.{name}", getattr(module, name)) for tag in tags]
    return found


def test_a_tag_has_one_home_and_one_value():
    homes = defaultdict(list)
    for tag, home, value in tagged():
        homes[tag].append((home, value))
    assert len(homes) > 60
    assert {
        tag: places for tag, places in homes.items() if len(places) > 1 and tag not in TWO_HOMES
    } == {}
    assert set(TWO_HOMES) <= {tag for tag, places in homes.items() if len(places) > 1}, (
        "no longer needed"
    )


def is_number(node: ast.expr | None) -> bool:
    """Return whether an expression is made of numbers alone."""
    if isinstance(node, ast.Constant):
        return isinstance(node.value, int | float) and not isinstance(node.value, bool)
    if isinstance(node, ast.UnaryOp):
        return is_number(node.operand)
    return isinstance(node, ast.BinOp) and is_number(node.left) and is_number(node.right)


@in_each(BOOK)
def test_a_number_with_a_name_is_tagged(path):
    """Whole numbers that only count, such as tries, and private tolerances need none."""
    for node in ast.parse(path.read_text("utf-8")).body:
        if not isinstance(node, ast.Assign) or not isinstance(node.targets[0], ast.Name):
            continue
        name = node.targets[0].id
        whole = isinstance(node.value, ast.Constant) and isinstance(node.value.value, int)
        if name.isupper() and name[0] != "_" and is_number(node.value) and not whole:
            assert f"{name_of(path)}: {name}" in UNTAGGED, f"{name_of(path)}: {name} has no tag"


def comment_above(lines: list[str], number: int) -> str:
    """Return the comment on a line (from 1) or right above it, or the words right below."""
    own = lines[number - 1]
    above = lines[number - 2].strip() if number > 1 else ""
    below = lines[number].strip() if number < len(lines) else ""
    return (
        own.partition("#")[2]
        or (above if above.startswith("#") else "")
        or (below if below.startswith('"""') else "")
    )


@in_each([f for f in FILES if "Tag(" in code_at(f).text])
def test_a_tagged_number_says_where_it_is_from(path):
    text = code_at(path).text
    lines = text.splitlines()
    for node in ast.parse(text).body:
        if isinstance(node, ast.AnnAssign) and "Tag(" in (ast.unparse(node.annotation)):
            first = [node.lineno, node.end_lineno or node.lineno]
            assert any(comment_above(lines, at) for at in first), f"{name_of(path)}:{node.lineno}"


@in_each([f for f in FILES if f.name != "constants.py"])
def test_hours_and_days_have_one_home(path):
    assert not code_at(path).numbers & {3600, 86400}, name_of(path)

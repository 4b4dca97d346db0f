"""Formulas as a reader would write them, kept as data.

One text serves three ends: it is shown with symbols, shown again with the reader's own numbers put
in, and worked by a test that proves it equals the code's own intermediate.
"""

import ast
import math
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

from calc.units.shown import decimal_sign

_JOINED = {ast.Add: (1, "+"), ast.Sub: (1, "\u2212"), ast.Mult: (2, "×"), ast.Div: (2, "÷")}
_FUNCTIONS: dict[str, Callable[..., Any]] = {
    "sqrt": lambda x: x**0.5,
    "ln": lambda x: math.log(x),
    "min": min,
    "max": max,
}
_SPOKEN = {"ln": "ln ", "min": "the smaller of ", "max": "the larger of "}


@cache
def _tree(text: str) -> ast.expr:
    tree = ast.parse(text, mode="eval").body
    for node in ast.walk(tree):
        if not isinstance(
            node, (ast.BinOp, ast.Name, ast.Constant, ast.Call, ast.operator, ast.Load)
        ):
            raise ValueError(f"{text!r} holds {type(node).__name__}, which a formula may not")
    return tree


def names(text: str) -> set[str]:
    """Return the names that the formula uses."""
    found = {node.id for node in ast.walk(_tree(text)) if isinstance(node, ast.Name)}
    return found - set(_FUNCTIONS)


def work(text: str, values: Mapping[str, Any]) -> Any:
    """Return the formula's value, with floats or with quantities. Raises KeyError."""

    def value(node: ast.expr) -> Any:
        match node:
            case ast.Constant():
                return node.value
            case ast.Name():
                return values[node.id]
            case ast.Call(func=ast.Name(id=name), args=args):
                return _FUNCTIONS[name](*map(value, args))
            case ast.BinOp(left, op, right):
                a, b = value(left), value(right)
                match op:
                    case ast.Add():
                        return a + b
                    case ast.Sub():
                        return a - b
                    case ast.Mult():
                        return a * b
                    case ast.Div():
                        return a / b
                    case ast.Pow():
                        return a**b
        raise ValueError(f"{text!r} cannot be worked")

    return value(_tree(text))


def written(text: str, put: Callable[[str], str]) -> str:
    """Return the formula as written by hand, each name replaced by `put(name)`.

    Powers come as `base^{exponent}`; the page sets the braces' content higher.
    """

    def write(node: ast.expr) -> tuple[int, str]:
        match node:
            case ast.Constant(value=number):
                plain = f"{number:g}" if isinstance(number, float) else str(number)
                return 9, plain.replace(".", decimal_sign.get())
            case ast.Name():
                return 9, put(node.id)
            case ast.Call(func=ast.Name(id="sqrt"), args=[inner]):
                return 9, f"√({write(inner)[1]})"
            case ast.Call(func=ast.Name(id=name), args=args):
                return 9, f"{_SPOKEN[name]}({' and '.join(write(part)[1] for part in args)})"
            case ast.BinOp(left, ast.Pow(), right):
                strength, base = write(left)
                if strength < 9 or any(map(str.isspace, base)):
                    base = f"({base})"
                return 3, f"{base}^{{{write(right)[1]}}}"
            case ast.BinOp(left, op, right):
                strength, sign = _JOINED[type(op)]
                left_text, right_text = write(left), write(right)
                first = left_text[1] if left_text[0] >= strength else f"({left_text[1]})"
                tight = right_text[0] > strength or (
                    right_text[0] == strength and isinstance(op, (ast.Add, ast.Mult))
                )
                second = right_text[1] if tight else f"({right_text[1]})"
                return strength, f"{first} {sign} {second}"
        raise ValueError(f"{text!r} cannot be written")

    return write(_tree(text))[1]


def close(ours: float, code: float) -> bool:
    """Return whether a formula's value equals the code's own, to the last digits of a float."""
    return math.isclose(ours, code, rel_tol=1e-9, abs_tol=1e-12)

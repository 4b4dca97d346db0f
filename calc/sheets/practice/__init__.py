"""The practice of each worksheet: that of `wire-drop` lives in `calc.sheets.practice.wire_drop`.

Beside the declarations and not in them, since the page has no use for it.
"""

from __future__ import annotations

from functools import cache
from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # at run time each declaration imports it, and this module comes first
    from calc.practice.declared import Practice


@cache
def practice_of(name: str) -> Practice:
    """Return the practice of the worksheet with the id `name`. Raises ImportError if it has none."""
    found: Practice = import_module(f"calc.sheets.practice.{name.replace('-', '_')}").PRACTICE
    return found

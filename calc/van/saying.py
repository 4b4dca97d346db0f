"""A rule's sentence with the facts of a van put in, each number as a reader sees it."""

from __future__ import annotations

import re
from typing import Any

from calc.units.kinds import NUMBER
from calc.units.shown import quantity_text
from calc.van.judging import Fact
from calc.worksheet.outputs import kind_at, part_of

_NAME = re.compile(r"\{([a-z_][\w.]*)\}")


def said(sentence: str, fact: Fact) -> str:
    """Return a sentence with the `{names}` of a fact's attributes put in."""

    def put(found: re.Match[str]) -> str:
        return _shown(fact, found[1])

    return _NAME.sub(put, sentence)


def _shown(fact: Fact, name: str) -> str:
    value: Any = part_of(fact, name)
    if not isinstance(value, float):
        return str(value)
    return quantity_text(value, kind_at(type(fact), name) or NUMBER)


def listed(labels: list[str], most: int = 2) -> str:
    """Return the first few of `labels` as words, and how many more there are."""
    few, more = labels[:most], len(labels) - most
    if more > 0:
        return f"{', '.join(few)} and {more} more"
    return " and ".join([", ".join(few[:-1]), few[-1]] if few[1:] else few)

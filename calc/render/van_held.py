"""The van that a request carries, as text, and what of it goes back into every reply."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from calc.van.data import van_as_data
from calc.van.files import read_van
from calc.van.record import KINDS, Van
from calc.worksheet.answer import InputError
from calc.worksheet.fields import Problem

_REMEMBERED = 12  # vans, the last ones asked about
_LONGEST_DRAFT = 400

Asked = Mapping[str, Any]
Reply = dict[str, Any]
Drafts = dict[str, str]

_vans: dict[str, Van] = {}


def text_of(van: Van) -> str:
    """Return the text by which a page holds a van."""
    text = json.dumps(van_as_data(van), ensure_ascii=False, separators=(",", ":"))
    _keep(text, van)
    return text


def van_of(asked: Asked) -> Van:
    """Return the van that a request is about. Raises InputError."""
    text = str(asked.get("text", ""))
    van = _vans.get(text)
    if van is None:
        van = read_van(text)
    _keep(text, van)
    return van


def _keep(text: str, van: Van) -> None:
    _vans.pop(text, None)
    _vans[text] = van
    while len(_vans) > _REMEMBERED:
        del _vans[next(iter(_vans))]


def about(van: Van) -> Reply:
    """Return what every reply that makes a van says of it."""
    return {"text": text_of(van), "name": van.name, "inspection": van.inspection}


def refusal(says: str, place: str = "") -> InputError:
    """Return the error that says one thing."""
    return InputError((Problem(place, says),))


def drafts_in(asked: Asked) -> Drafts:
    """Return what stands in boxes and could not be read, by place."""
    given = asked.get("drafts")
    if not isinstance(given, Mapping):
        return {}
    return {str(place): draft(text) for place, text in given.items()}


def draft(text: Any) -> str:
    """Return what was typed, as it goes back into its box."""
    return str(text)[:_LONGEST_DRAFT]


def kind_in(asked: Asked) -> str:
    """Return the kind of part that a request names. Raises InputError."""
    kind = str(asked.get("of"))
    if kind not in KINDS:
        raise refusal("A van has no such kind of part.")
    return kind

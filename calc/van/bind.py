"""A van and the worksheets: each field filled from the record, and what is changed there put back.

A part's own values, the single parts of the van and what is worked out of several come together as
the texts of one worksheet: `filled(van, sheet, part)`. `put_back` is the way back of what a person
changes there, `results_back` that of what the worksheet found.
"""

from __future__ import annotations

from collections.abc import Container, Hashable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

import calc
from calc.units.quantities import from_base
from calc.units.shown import UP, rounded
from calc.van import back, scope
from calc.van.bindings import BINDINGS, RESULTS, RUNS, TARGETS, WHOLE
from calc.van.came import Came, key_of, key_of_kind
from calc.van.derived import DERIVED, LOOKED_UP
from calc.van.from_fuses import upstream
from calc.van.net import MINUS
from calc.van.record import Part, Van
from calc.van.scope import Memo
from calc.van.values import State
from calc.van.worked import Outcome
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Choice, Field, ParsedInput, Problem

# Options that say that somebody could not tell: the worksheet judges that by itself
_UNKNOWN = frozenset(
    {"not-known", "not-said", "not-tested", "not-checked", "not-proven", "not-named", "unknown"}
)
_FUSED = ("fuse-choice", "fault-current", "fuse-ladder")  # worksheets about a fuse on a run
_OF_RUNS = ("wire-drop", "wire-size", *_FUSED)
_WITH = {"sun-yield": "panels", "cooling-day": "cooler", "heater-night": "heater"}
_FUNCTION = "()"
_OR_USUAL, _HELD_TO = "?", "!"  # whose usual text is good enough: see `bindings`


@dataclass(frozen=True, kw_only=True)
class Filled:
    """A worksheet's fields as a van fills them: `texts` by field id, each from its place.

    `missing` are the places of what the van should tell and does not: such a field is left out, or
    says that it is not known where the worksheet has a choice for that. `lacking` are the fields
    among them without which the worksheet can only be worked with its own usual text.
    """

    texts: Mapping[str, str]
    places: Mapping[str, str]
    missing: Mapping[str, str]
    lacking: tuple[str, ...]


def targets(van: Van, sheet: str) -> tuple[Part | None, ...]:
    """Return for what of a van a worksheet can be opened: parts, or None for the whole van."""
    kinds = TARGETS.get(sheet, ())
    found = [
        part
        for kind in kinds
        if kind != WHOLE
        for part in van.all(kind)
        if _suits(van, sheet, part)
    ]
    if found:
        return tuple(found)
    return (None,) if WHOLE in kinds else ()


def _suits(van: Van, sheet: str, part: Part) -> bool:
    if part.kind.id in RUNS and sheet in _OF_RUNS:
        by_inverter = "route" in part.values and part.choice("route") == "inverter"
        minus = part.kind.id == "cables" and part.choice("pole") == MINUS
        fused = part["fuse"].state is not State.NONE and upstream(van, part) is not None
        ladder = sheet != "fuse-ladder" or fused
        return not by_inverter and ladder and not (minus and sheet in _FUSED)
    if sheet in _WITH and not van.all(_WITH[sheet]):
        return False
    if sheet in ("heat-loss", "heater-night") and part.kind.id == "patterns":
        return part["outside"].known or part.choice("heats") == "yes"
    if sheet == "light-dimming":
        return part.choice("load") == "light"
    return sheet != "appliance-route" or part.choice("load") not in ("light", "socket")


_kept: Memo[Filled] = Memo()


def _scope(van: Van, sheet: str, part: Part | None) -> Hashable:
    """Return a key of all that the fields of a worksheet for a part come from."""
    if part is not None and sheet in _OF_RUNS:
        return scope.of_run(van, part)
    if part is not None and part.kind.id == scope.CIRCUITS:
        return scope.of_circuit(van, part)
    return scope.whole(van), part.id if part else WHOLE


def filled(van: Van, sheet: str, part: Part | None) -> Filled:
    """Return the fields of a worksheet that a van fills, for a part or for the whole (None)."""
    key = sheet, _scope(van, sheet, part)
    return _kept.get(key) or _kept.keep(key, _filled(van, sheet, part))


@cache
def bound_fields(sheet: str) -> tuple[tuple[Field, str, str], ...]:
    """Return the fields of a worksheet that come from a van, each with its source.

    With each stands its choice that says that it is not known, nothing where it has none.
    """
    return tuple(
        (one, BINDINGS[sheet, one.id], _says_unknown(one))
        for one in calc.find(sheet).fields
        if (sheet, one.id) in BINDINGS
    )


def partly_filled(van: Van, sheet: str, part: Part | None, names: Container[str]) -> Filled:
    """Return what a van fills of some fields of a worksheet, those with `names`.

    For what a worksheet works out on the way to others: those may ask for it in turn.
    """
    return _filled(van, sheet, part, names)


def _filled(van: Van, sheet: str, part: Part | None, names: Container[str] | None = None) -> Filled:
    declared = calc.find(sheet)
    texts: dict[str, str] = {}
    places: dict[str, str] = {}
    missing: dict[str, str] = {}
    lacking = []
    for field, source, not_known in bound_fields(sheet):
        if names is not None and field.id not in names:
            continue
        if not _applies(declared, field, texts, missing):
            continue
        came = came_from(van, source, part)
        if came is None:
            continue
        if came.text:
            texts[field.id], places[field.id] = came.text, came.place
            continue
        missing[field.id] = came.place
        if not_known:
            texts[field.id] = not_known
        elif field.default_by and _open_in_plan(van, came.place):
            del missing[field.id]  # the usual one by chemistry, as in the worksheet
        elif not field.optional:
            lacking.append(field.id)
        elif field.default:
            texts[field.id] = ""  # an emptied box: not known, and no usual text instead
    return Filled(texts=texts, places=places, missing=missing, lacking=tuple(lacking))


def _open_in_plan(van: Van, place: str) -> bool:
    """Return whether a plan leaves the value at a place open, so that the usual one stands."""
    return "." in place and not van.inspection and van.at(place).state is State.BLANK


def _applies(
    declared: Declaration, field: Field, texts: Mapping[str, str], missing: Mapping[str, str]
) -> bool:
    """Return whether a field has a meaning beside what is filled; so it has where that is open."""
    if field.only_if is None or field.only_if[0] in missing:
        return True
    other, choice = field.only_if
    of = declared.field(other)
    return _reading(of, texts.get(other, of.default)) in (choice, *field.or_if)


def came_from(van: Van, source: str, part: Part | None) -> Came | None:
    """Return what a source of `BINDINGS` says; None where the van has no such thing."""
    if source.endswith(_FUNCTION):
        return DERIVED[source.removesuffix(_FUNCTION)](van, part)
    kind, point, key = source.rstrip(_OR_USUAL + _HELD_TO).partition(".")
    if point:
        came = key_of_kind(van, kind, key)
    else:
        came = key_of(part, kind) if part is not None else None
    if came is None or came.text:
        return came
    usual = source.endswith(_OR_USUAL) and _is_open(van, came.place)
    return None if usual or source.endswith(_HELD_TO) else came


def _is_open(van: Van, place: str) -> bool:
    return not van.inspection and van.at(place).state is State.BLANK


def _says_unknown(field: Field) -> str:
    """Return the option of a choice that says that it is not known, nothing where it has none."""
    options = field.options if isinstance(field, Choice) else ()
    return next((one.typed for one in options if one.id in _UNKNOWN), "")


def _read(field: Field, text: str) -> ParsedInput | None:
    try:
        return field.read(text)
    except Problem:
        return None


def _reading(field: Field, text: str) -> Any:
    found = _read(field, text) if text else None
    return found.value if found else None


def changed_places(
    van: Van, sheet: str, part: Part | None, texts: Mapping[str, str]
) -> Mapping[str, str]:
    """Return what the `texts` of a worksheet change in a van: a text for each place.

    A text that says what the van says changes nothing, nor does one that a van does not hold, nor
    the worksheet's own usual text where the van says nothing. An emptied box strikes the value.
    """
    declared, before = calc.find(sheet), filled(van, sheet, part)
    found: dict[str, str] = {}
    for field, source, _ in bound_fields(sheet):
        if field.id not in texts:
            continue
        text, was = texts[field.id].strip(), before.texts.get(field.id)
        if _same(field, text, _usual(declared, field, texts) if was is None else was):
            continue
        found |= _put(van, source, part, field, text)
    return found


def _usual(declared: Declaration, field: Field, texts: Mapping[str, str]) -> str:
    """Return the text that a worksheet takes for a field by itself, beside others."""
    if field.default_by is None:
        return field.default
    other, by_choice = field.default_by
    choice = _reading(declared.field(other), texts.get(other, "") or declared.field(other).default)
    return by_choice.get(str(choice), "")


def _same(field: Field, text: str, was: str) -> bool:
    if text == was or not (text and was):
        return text == was
    one, other = _read(field, text), _read(field, was)
    if one is None or other is None:
        return False
    return (one.value, one.kind) == (other.value, other.kind)


def _put(van: Van, source: str, part: Part | None, field: Field, text: str) -> Mapping[str, str]:
    if not source.endswith(_FUNCTION):
        key = source.rstrip(_OR_USUAL + _HELD_TO)
        if "." in key:
            return {key: text}
        return {f"{part.place}.{key}": text} if part is not None else {}
    name = source.removesuffix(_FUNCTION)
    if name in back.BACK:
        return back.BACK[name](van, part, field, text)
    came = DERIVED[name](van, part)
    known_place = came is not None and "." in came.place
    return {came.place: text} if came and known_place and name in LOOKED_UP else {}


def put_back(van: Van, sheet: str, part: Part | None, texts: Mapping[str, str]) -> Van:
    """Return the van with what a person changed in a worksheet. Raises InputError with places."""
    places = changed_places(van, sheet, part, texts)
    return van.changed(places) if places else van


def results_back(
    van: Van, sheet: str, part: Part | None, answer: Answer | Outcome
) -> Mapping[str, str]:
    """Return what a worksheet that sizes something hands back: a text for each place of the van."""
    found = {}
    for (one, result), source in RESULTS.items():
        text = _result_text(answer, result) if one == sheet else ""
        if not text:
            continue
        kind, point, key = source.partition(".")
        if not point:
            if part is not None and source in part.values:
                found[f"{part.place}.{source}"] = text
        elif (own := van.one(kind)) is not None:
            found[f"{own.place}.{key}"] = text
    return found


def _result_text(answer: Answer | Outcome, name: str) -> str:
    """Return a result as it would be typed; of a list its first, the best; else nothing.

    Each is a need, rounded so that it is met.
    """
    result = next((one for one in answer.worksheet.results if one.id == name), None)
    value = answer.values.get(name)
    if result is None or value is None:
        return ""
    if name == "families":
        choice = answer.result.protection.choice
        return choice.family.name if choice and choice.family else ""
    if result.kind is None:
        return str(value)
    unit = result.kind.unit(result.unit) if result.unit else result.kind.units[0]
    number = rounded(from_base(value, result.kind, unit.name), 3, UP)
    return f"{number} {unit.link}".strip()

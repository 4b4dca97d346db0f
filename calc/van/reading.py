"""What one place of a file says: the statements that stand there, and the value they make."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from calc.units.kinds import RATIO
from calc.units.typed import fold
from calc.van.keys import Key, PartKind, words
from calc.van.values import NONE, NOT_SEEN, Evidence, Stage, State, Statement, Value
from calc.worksheet.fields import Field, ParsedInput, Problem, Quantity
from calc.worksheet.rows import Rows, Text

MOST_STATEMENTS = 12  # at one place
PLAIN = {False: (Stage.PLANNED, Evidence.PLAN), True: (Stage.FOUND, Evidence.SEEN)}
"""What a plain text is in a plan, and in an inspection."""

USUAL_EVIDENCE = {
    Stage.PLANNED: Evidence.PLAN,
    Stage.FOUND: Evidence.SEEN,
    Stage.MEASURED: Evidence.MEASURED,
}

_ORDER = tuple(Stage)
_STATEMENT = ("evidence", "who", "when", "instrument")
_DATE = re.compile(r"[12]\d{3}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])")
_LARGEST = 1e15  # of a number that is written without quotation marks
_REMEMBERED = 20_000  # texts
_LONG = 400  # characters of a text that is not remembered
_SAID = {fold(NOT_SEEN): NOT_SEEN, fold(NONE): NONE}
_WHO = {
    "who": words("who", "Who", "A. Brandt"),
    "instrument": words("instrument", "Instrument", "meter 2"),
}

_readings: dict[tuple[str, str, str], ParsedInput | Problem] = {}
_values: dict[tuple[str, str, bool, str], Value] = {}
_missing: dict[tuple[str, bool], Mapping[str, Value]] = {}


def printable(text: str) -> str:
    """Return a text in one line without control characters and those that turn its direction."""
    if text.isascii() and text.isprintable():
        return text.strip()
    spaced = (" " if sign.isspace() else sign for sign in text)
    return "".join(sign for sign in spaced if sign.isprintable()).strip()


def reading_of(kind: PartKind, key: Key, text: str) -> ParsedInput:
    """Return what a text says by the field of its key. Raises Problem."""
    if len(text) > _LONG:
        return key.field.read(text)
    memo = (kind.id, key.id, text)
    if memo not in _readings:
        if len(_readings) > _REMEMBERED:
            _readings.clear()
        try:
            _readings[memo] = key.field.read(text)
        except Problem as problem:
            _readings[memo] = problem
    found = _readings[memo]
    if isinstance(found, Problem):
        raise found.with_traceback(None)
    return found


def missing(kind: PartKind, inspection: bool) -> Mapping[str, Value]:
    """Return the values of a part of which nothing was stated."""
    if (kind.id, inspection) not in _missing:
        _missing[kind.id, inspection] = {
            key.id: _unsaid(kind, key, inspection) for key in kind.keys
        }
    return _missing[kind.id, inspection]


def _unsaid(kind: PartKind, key: Key, inspection: bool) -> Value:
    if inspection:
        return Value(state=State.NOT_SEEN)
    if not key.usual:
        return Value(state=State.BLANK)
    return Value(state=State.DEFAULT, reading=reading_of(kind, key, key.usual), usual=key.usual)


def value_of(
    kind: PartKind, key: Key, statements: tuple[Statement, ...], inspection: bool
) -> Value:
    """Return the value that some statements, in the order of their stages, make. Raises Problem."""
    if not statements:
        return missing(kind, inspection)[key.id]
    last = statements[-1]
    if last.text == NOT_SEEN:
        return Value(state=State.NOT_SEEN, statements=statements)
    planned = inspection and last.stage is Stage.PLANNED
    if last.text == NONE and key.none:
        return Value(state=State.NONE, statements=statements, only_planned=planned)
    reading = reading_of(kind, key, last.text)
    return Value(state=State.GIVEN, reading=reading, statements=statements, only_planned=planned)


def read_plain(kind: PartKind, key: Key, text: str, inspection: bool) -> Value:
    """Return the value that a plain text makes. Raises Problem."""
    memo = (kind.id, key.id, inspection, text)
    if len(text) <= _LONG and memo in _values:
        return _values[memo]
    stage, evidence = PLAIN[inspection]
    said = Statement(stage=stage, text=stated_text(kind, key, text), evidence=evidence)
    if len(_values) > _REMEMBERED:
        _values.clear()
    value = value_of(kind, key, (said,) if said.text else (), inspection)
    if len(text) <= _LONG:
        _values[memo] = value
    return value


def stated_text(kind: PartKind, key: Key, raw: Any) -> str:
    """Return the text that stands for `raw`, which a key's field reads. Raises Problem."""
    text = printable(_as_text(key, raw))
    said = _SAID.get(fold(text)) if len(text) <= len(NOT_SEEN) + 2 else None
    if not text or said == NOT_SEEN or (said == NONE and key.none):
        return said or ""
    if isinstance(key.field, Rows) and len(text) > key.field.longest:
        raise key.field.problem(f"must be at most {key.field.longest} characters.")
    try:
        reading = reading_of(kind, key, text)
    except Problem as problem:
        if said == NONE:
            raise key.field.problem(
                "cannot be “none”. Write “not seen” if you cannot tell."
            ) from None
        raise problem from None
    return reading.text if isinstance(key.field, Text) else text  # words in one form


def _as_text(key: Key, raw: Any) -> str:
    if isinstance(raw, str):
        return raw
    if isinstance(raw, bool) or not isinstance(raw, int | float):
        whole = raw.isoformat() if hasattr(raw, "isoformat") else ""
        if _DATE.fullmatch(whole) and not isinstance(key.field, Quantity):
            return str(whole)
        raise key.field.problem("must be a text in quotation marks.")
    if not abs(raw) < _LARGEST:
        raise key.field.problem("is not a number that a van has.")
    field = key.field
    if not is_plain_number(field):
        assert isinstance(field, Quantity)
        sample = field.default or field.sample
        raise field.problem(f"needs its unit, in quotation marks, like “{sample}”.")
    return str(raw)


def is_plain_number(field: Field) -> bool:
    """Return whether a number without a unit can be read in one way only."""
    return not isinstance(field, Quantity) or (len(field.units) == 1 and field.kind is not RATIO)


def read_value(kind: PartKind, key: Key, raw: Any, inspection: bool) -> Value:
    """Return the value that the raw data at a key make.

    `raw` is a text, a number or a date, or a table with a stage, or a list of such tables. Raises
    Problem.
    """
    if isinstance(raw, str):
        return read_plain(kind, key, raw, inspection)
    if isinstance(raw, Mapping):
        raw = [raw]
    if not isinstance(raw, list | tuple):
        return read_plain(kind, key, stated_text(kind, key, raw), inspection)
    if len(raw) > MOST_STATEMENTS:
        raise key.field.problem(f"must have {MOST_STATEMENTS} statements at most.")
    statements = in_order(read_statement(kind, key, one) for one in raw)
    return value_of(kind, key, statements, inspection)


def in_order(statements: Iterable[Statement]) -> tuple[Statement, ...]:
    """Return the statements that say something by their stages, and within one by their dates."""
    said = (one for one in statements if one.text)
    return tuple(sorted(said, key=lambda one: (_ORDER.index(one.stage), one.when)))


def read_statement(kind: PartKind, key: Key, raw: Any) -> Statement:
    """Return what one table states: a stage with its text, and by whom and what. Raises Problem."""
    field = key.field
    if not isinstance(raw, Mapping):
        raise field.problem("must be a text, or a table with planned, found or measured.")
    names = [name for name in raw if name in {str(stage) for stage in Stage}]
    if strange := [name for name in raw if name not in (*names, *_STATEMENT)]:
        listed = ", ".join(("planned, found or measured", *_STATEMENT))
        raise field.problem(f"has “{printable(str(strange[0]))[:40]}”, but takes {listed}.")
    if len(names) != 1:
        raise field.problem("must say one of planned, found and measured in each table.")
    stage = Stage(names[0])
    return Statement(
        stage=stage,
        text=stated_text(kind, key, raw[stage]),
        evidence=_evidence(key, stage, raw.get("evidence", USUAL_EVIDENCE[stage])),
        who=_words(key, "who", raw.get("who", "")),
        when=_date(key, raw.get("when", "")),
        instrument=_words(key, "instrument", raw.get("instrument", "")),
    )


def _evidence(key: Key, stage: Stage, raw: Any) -> Evidence:
    accepted = [one for one in Evidence if (one is Evidence.PLAN) == (stage is Stage.PLANNED)]
    if raw not in [str(one) for one in accepted]:
        listed = " or ".join((", ".join(accepted[:-1]), accepted[-1])) if accepted[1:] else "plan"
        raise key.field.problem(f"was {stage}: its evidence must be {listed}.")
    return Evidence(raw)


def _words(key: Key, name: str, raw: Any) -> str:
    if not isinstance(raw, str):
        raise key.field.problem(f"must have a text as “{name}”.")
    text = printable(raw)
    if not text:
        return ""
    try:
        return str(_WHO[name].read(text).value)
    except Problem as problem:
        raise key.field.problem(f"has a name that is not allowed: {problem.message}") from None


def _date(key: Key, raw: Any) -> str:
    text = printable(raw) if isinstance(raw, str) else getattr(raw, "isoformat", str)()
    if text and not _DATE.fullmatch(text):
        raise key.field.problem("must have a date like 2026-11-20 as “when”.")
    return str(text)

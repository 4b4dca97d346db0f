"""What a worksheet finds wrong with a part of a van, each in its own sentence, remembered."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from calc.judge import Change, Level
from calc.units.quantities import from_base
from calc.units.shown import DOWN, UP, rounded
from calc.van.worked import attempted, headline_of
from calc.worksheet.declare import Declaration
from calc.worksheet.fields import Quantity
from calc.worksheet.outputs import part_of

GRAVE = (Level.STOP, Level.CAUTION)
_KEPT = 2000  # of the worksheets of some vans of forty circuits


@dataclass(frozen=True)
class Judged:
    """One rule that fired on a worksheet, in the sheet's words.

    `at` is the place of its subject in the sheet's result. `change` is what would silence it, by
    the sheet's own fields, or None where there is no single one.
    """

    rule: str
    level: Level
    sentence: str
    text: str
    source: str
    covers: frozenset[str]
    change: Change | None
    at: str = ""


def judged(sheet: str, texts: Mapping[str, str]) -> tuple[Judged, ...] | None:
    """Return what stops or cautions on worksheet `sheet`; None where it takes not these `texts`."""
    return _judged(sheet, tuple(sorted(texts.items())))


@lru_cache(_KEPT)
def _judged(sheet: str, texts: tuple[tuple[str, str], ...]) -> tuple[Judged, ...] | None:
    outcome = attempted(sheet, dict(texts))
    if outcome is None:
        return None
    found = []
    for one in outcome.found:
        use, rule = one.use, one.use.rule
        if rule.level not in GRAVE:
            continue
        single = rule.mend is not None and one.rows == (None,)
        puts = outcome.writer.puts
        own = headline_of(use)
        found.append(
            Judged(
                rule=rule.id,
                level=rule.level,
                sentence=puts(one, own, rule.headline),
                text=puts(one, use.text, rule.text) if use.text or rule.text else "",
                source=rule.source,
                covers=one.covers,
                change=use.mend(part_of(outcome.result, use.at)) if single else None,
                at=use.at,
            )
        )
    return tuple(found)


def ways_to_type(sheet: Declaration, name: str, value: float | str) -> Iterator[str]:
    """Yield a field's value [base unit of its first kind] as it would be typed, rounded either way.

    A remedy stands right on a threshold: which way it may be rounded only a trial tells.
    """
    field = sheet.field(name)
    if isinstance(value, str) or not isinstance(field, Quantity):
        yield str(value)
        return
    unit = field.kind.best_unit(value)
    number = from_base(value, field.kind, unit.name)
    for digits, way in ((2, UP), (2, DOWN), (4, UP), (4, DOWN)):
        yield f"{rounded(number, digits, way)} {unit.symbol}".strip()

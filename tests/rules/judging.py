"""Which rules fire on a worksheet's inputs, and what is left of them once a remedy is applied."""

from collections.abc import Mapping
from typing import Any

import calc
from calc.judge import JUDGING, Change, Level
from calc.units.quantities import quantity
from calc.worksheet.fields import Quantity
from calc.worksheet.outputs import part_of, parts_at

Texts = Mapping[str, Any]


def fires(sheet: str, texts: Texts) -> set[str]:
    """Return the ids of the rules that fire, also of those that others cover."""
    result = calc.work(sheet, texts).result
    return {use.rule.id for use in calc.find(sheet).uses if _holds(use, result)}


def remedy(sheet: str, rule: str, texts: Texts) -> Change | None:
    """Return what would mend `rule` where it fires on `texts`. Raises AssertionError elsewhere."""
    result = calc.work(sheet, texts).result
    uses = [use for use in calc.find(sheet).uses if use.rule.id == rule]
    (use,) = (use for use in uses if _holds(use, result))
    return use.mend(part_of(result, use.at))


def mended(sheet: str, rule: str, texts: Texts) -> dict[str, Any]:
    """Return `texts` with what would mend `rule`, having seen that it does.

    The rule is then silent, and no judgement as grave or graver that was silent speaks up, unless a
    graver one fell silent with it: what burned may then be merely tight.
    """
    change = remedy(sheet, rule, texts)
    assert change, f"{rule} has no remedy"
    found = calc.find(sheet)
    inputs = calc.work(sheet, texts).inputs
    texts = {name: text for name, text in texts.items() if inputs[name].applies}
    after = {**texts, **{name: _typed(found.field(name), to) for name, to in change.values.items()}}
    levels = {use.rule.id: use.rule.level for use in found.uses}
    before, now = fires(sheet, texts), fires(sheet, after)
    assert rule not in now, f"{rule} still fires for {after}"
    spoke = {one for one in now - before if _as_grave(levels[one], levels[rule])}
    eased = {one for one in before - now - {rule} if levels[one] is Level.STOP}
    assert not spoke or (eased and all(levels[one] is not Level.STOP for one in spoke))
    return after


def _holds(use: Any, result: Any) -> bool:
    return any(use.rule.when(subject) for _, subject in parts_at(result, use.at))


def _typed(field: Any, value: Any) -> Any:
    return quantity(value, field.kind) if isinstance(field, Quantity) else str(value)


def _as_grave(level: Level, than: Level) -> bool:
    order = (*JUDGING[:2], Level.ADVICE)
    return level in order and order.index(level) <= order.index(than if than in order else level)

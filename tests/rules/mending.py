"""A rule's remedy put to the test on a worksheet: applied, and judged again."""

from collections.abc import Mapping

import calc
from calc.judge import Change, Level
from calc.worksheet.declare import Declaration, Placed, part_of
from calc.worksheet.work import parameter

GRAVE = (Level.STOP, Level.CAUTION, Level.ADVICE, Level.NOTE)  # the worst first

Spoken = dict[tuple[str, str], Level]  # by rule and place


def speaking(sheet: Declaration, result: object) -> Spoken:
    """Return every rule that fires on `result`, by its id and its place, with its level."""
    return {
        (use.rule.id, use.at): use.rule.level
        for use in sheet.uses
        if (subject := part_of(result, use.at)) is not None and use.rule.when(subject)
    }


def placed(sheet: Declaration, rule: str, result: object) -> Placed:
    """Return the first use of `rule` that fires on `result`."""
    spoken = speaking(sheet, result)
    uses = [use for use in sheet.uses if use.rule.id == rule and (rule, use.at) in spoken]
    assert uses, f"{rule} does not fire here"
    return uses[0]


def mended(name: str, texts: Mapping[str, str], rule: str) -> Change:
    """Return the remedy of `rule` where it fires for `texts`, once it has been seen to hold.

    With it the rule is silent, and no rule of its level or a worse one that was silent speaks.
    """
    sheet = calc.find(name)
    answer = sheet.work(texts)
    use = placed(sheet, rule, answer.result)
    change = use.mend(part_of(answer.result, use.at))
    assert change is not None, f"{rule} has no remedy here"
    given = {parameter(f.id): f.argument(answer.inputs[f.id]) for f in sheet.fields}
    changed = {parameter(name): value for name, value in change.values.items()}
    assert set(changed) <= set(given), f"{rule}: the sheet has no such field"
    before = speaking(sheet, answer.result)
    after = speaking(sheet, sheet.run(given | changed))
    assert (rule, use.at) not in after
    worse = GRAVE[: GRAVE.index(use.rule.level) + 1]
    new = [one for one, level in after.items() if one not in before and level in worse]
    assert new == [], f"{rule} mended, and {new} speak now"
    return change

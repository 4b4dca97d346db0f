"""What a judgement is: a rule with an id, a level, a test on a typed subject, and its words.

A rule stands once, beside the domain that it judges (`calc.electrical.rules` and so on). Worksheets
and reviews name the rules that they use; this package knows no domain and no worksheet.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Level(StrEnum):
    """How grave it is that a rule fires.

    STOP, CAUTION and FINE make the verdict. ADVICE stands beside the numbers whatever the verdict,
    a NOTE stands folded away.
    """

    STOP = "stop"
    CAUTION = "caution"
    FINE = "fine"
    ADVICE = "advice"
    NOTE = "note"


JUDGING = (Level.STOP, Level.CAUTION, Level.FINE)  # the worst first


@dataclass(frozen=True)
class Change:
    """What would mend a finding: new values by the name of the input that they are for.

    A value is an SI float, a choice, or the name of a size.
    """

    values: Mapping[str, float | str]


def always(_: object) -> bool:
    """The test of a rule that fires in every case."""
    return True


@dataclass(frozen=True, kw_only=True)
class Rule[S]:
    """One judgement on a subject of type S.

    `id` is `subject.finding`, never reused with another meaning. `when` is the test: it can be
    asked alone, of every subject. `headline` is the sentence of the verdict, `text` what stands
    among the cautions or notes; both may hold `{names}` of the subject's attributes, such as
    `{run.current}`. `source` is an id of `calc.sources`. `mend` gives the change after which the
    rule is silent, or None where there is no single one. `covers` names rules that need not speak
    where this one does.
    """

    id: str
    level: Level
    when: Callable[[S], bool] = always
    headline: str = ""
    text: str = ""
    source: str = ""
    mend: Callable[[S], Change | None] | None = None
    covers: frozenset[str] = field(default=frozenset())


def fired[S](rules: Iterable[Rule[S]], subject: S) -> tuple[Rule[S], ...]:
    """Return the rules that fire on `subject`, in their order, without those that others cover."""
    found = [rule for rule in rules if rule.when(subject)]
    return uncovered(found)


def uncovered[S](found: Iterable[Rule[S]]) -> tuple[Rule[S], ...]:
    """Return the rules of `found` that no other of them covers."""
    kept = tuple(found)
    covered = {name for rule in kept for name in rule.covers}
    return tuple(rule for rule in kept if rule.id not in covered)


def verdict(found: Iterable[Rule[object]]) -> Level:
    """Return the worst level among rules that fired: FINE where none of them judges."""
    levels = {rule.level for rule in found}
    return next((level for level in JUDGING if level in levels), Level.FINE)


def mends[S](rule: Rule[S], rules: Iterable[Rule[S]], before: S, after: S) -> bool:
    """Return whether a change, from `before` to `after` it, mends what the `rule` found.

    It does if the rule is silent then, and none of the `rules` of the same or a worse level that
    was silent before it speaks.
    """
    grave = JUDGING[: JUDGING.index(rule.level) + 1]
    return not rule.when(after) and not any(
        one.level in grave and one.when(after) and not one.when(before) for one in rules
    )

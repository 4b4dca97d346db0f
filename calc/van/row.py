"""One run of a van as it was worked, and the worksheets that judged it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from calc.judge import JUDGING, Level
from calc.units.si import Amperes, Count, Share, Volts
from calc.van.record import Part
from calc.van.worked import Outcome

_SHORTS = frozenset({"fault_high", "fault_low"})
ALL_LEVELS = frozenset(JUDGING)


@dataclass(frozen=True)
class Judged:
    """A worksheet as it was worked for a run: the `texts` are a link into it.

    `levels` are those that count for the run: of the order of two fuses only a stop does. `beside`
    are rules that do not count: what a fuse must break is no matter of the lowest short.
    """

    sheet: str
    texts: Mapping[str, str]
    answer: Outcome
    levels: frozenset[Level] = ALL_LEVELS
    beside: frozenset[str] = frozenset()


@dataclass(frozen=True, kw_only=True)
class Row:
    """One run of a van, worked. `mark` is that of its fuse and `wire` that of its conductors.

    `drop` is that of the run alone, `load_voltage` what is left behind all the runs up to it.
    `fault_high` is what its fuse must interrupt, `fault_low` what it must clear. `chosen` names
    what was chosen here. `why` tells for each value that is None what is not known, `missing` at
    which place. `suits` are the fuse and family that the worksheet would take, by key.
    `limited` tells that a converter limits any short, and that the conductor carries what it gives.
    """

    mark: str
    wire: str
    part: Part
    current: Amperes | None = None
    conductor: str | None = None
    parallel: Count | None = None
    fuse: Amperes | None = None
    family: str | None = None
    drop: Volts | None = None
    drop_share: Share | None = None
    load_voltage: Volts | None = None
    ampacity: Amperes | None = None
    fault_high: Amperes | None = None
    fault_low: Amperes | None = None
    chosen: frozenset[str] = frozenset()
    suits: Mapping[str, str] = field(default_factory=dict)
    why: Mapping[str, str] = field(default_factory=dict)
    missing: Mapping[str, str] = field(default_factory=dict)
    judged: tuple[Judged, ...] = ()
    limited: bool = False

    @cached_property
    def rules(self) -> tuple[str, ...]:
        """The ids of the rules that fired in its worksheets and count, each once."""
        found = (rule for one in self.judged for rule, _ in counting(one))
        return tuple(dict.fromkeys(found))

    @cached_property
    def level(self) -> Level | None:
        """The worst that was found; FINE only if everything could be worked, else None."""
        verdicts = {level for one in self.judged for _, level in counting(one)}
        worst = next((one for one in JUDGING if one in verdicts), None)
        open_ = self.why.keys() - (_SHORTS if self.limited else frozenset())
        return None if worst is Level.FINE and open_ else worst


def counting(one: Judged) -> Iterator[tuple[str, Level]]:
    """Yield the rules of a worksheet that fired and count for the run, each with its level."""
    for found in one.answer.found:
        rule = found.use.rule
        if rule.level in one.levels and rule.id not in one.beside:
            yield rule.id, rule.level

"""One run of a van as it was worked, and the worksheets that judged it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from calc.judge import JUDGING, Level
from calc.units.si import Amperes, Count, Share, Volts
from calc.van.record import Part
from calc.van.worked import Outcome

ALL_LEVELS = frozenset(JUDGING)


@dataclass(frozen=True)
class Judged:
    """A worksheet as it was worked for a run: the `texts` are a link into it.

    `levels` are those that count for the run: of the order of two fuses only a stop does.
    """

    sheet: str
    texts: Mapping[str, str]
    answer: Outcome
    levels: frozenset[Level] = ALL_LEVELS


@dataclass(frozen=True, kw_only=True)
class Row:
    """One run of a van, worked. `mark` is that of its fuse and `wire` that of its conductors.

    `drop` is that of the run alone, `load_voltage` what is left behind all the runs up to it.
    `fault_high` is what its fuse must interrupt, `fault_low` what it must clear. `chosen` names
    what was chosen here. `why` tells for each value that is None what is not known, `missing` at
    which place. `suits` are the fuse and family that the worksheet would take, by key.
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

    @cached_property
    def rules(self) -> tuple[str, ...]:
        """The ids of the rules that fired in its worksheets and count, each once."""
        found = (rule for one in self.judged for rule, level in _fired(one) if level in one.levels)
        return tuple(dict.fromkeys(found))

    @cached_property
    def level(self) -> Level | None:
        """The worst that was found; FINE only if everything could be worked, else None."""
        verdicts = {one.answer.level for one in self.judged if _counts(one)}
        worst = next((one for one in JUDGING if one in verdicts), None)
        return None if worst is Level.FINE and self.why else worst


def _counts(one: Judged) -> bool:
    return one.answer.level in one.levels


def _fired(one: Judged) -> tuple[tuple[str, Level], ...]:
    return tuple((found.use.rule.id, found.use.rule.level) for found in one.answer.found)

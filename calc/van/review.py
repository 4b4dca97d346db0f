"""The review of a van: what the worksheets and the rules of the whole find, the gravest first.

Every part is judged by the worksheets that it can be opened in, by the same rules as there. What is
not known is not judged: it is told by itself, and ranks as a stop where safety depends on it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Any

from calc.judge import Level
from calc.van.bind import filled, targets
from calc.van.from_fuses import upstream
from calc.van.judged import judged
from calc.van.judging import Asked, Fact, Mend, VanRule
from calc.van.once import once_for_each_van
from calc.van.paths import runs
from calc.van.proven import kinds_not_seen, unproven
from calc.van.record import KINDS, Part, Van
from calc.van.reviewed import EVIDENCE, LEFT_OUT, REVIEWED, about, milder, settled
from calc.van.row import ALL_LEVELS
from calc.van.rules import alarms, bank, blocks, joints, mains, schedule_rules, use, wiring
from calc.van.saying import said
from calc.van.schedule import schedule
from calc.van.told import (
    NOT_STATED,
    Told,
    told_of_absent,
    told_of_kind,
    told_of_part,
    told_of_runs,
)
from calc.van.usual import as_usual
from calc.van.worked import refusal

if TYPE_CHECKING:
    from calc.van.inspection import Disposition

ASKED: tuple[Asked[Any], ...] = (
    *alarms.ASKED, *bank.ASKED, *mains.ASKED, *wiring.ASKED, *joints.ASKED, *use.ASKED,
    *schedule_rules.ASKED, *blocks.ASKED,
)  # fmt: skip
"""The rules of the whole, with the facts that they are asked of."""
ORDER = {Level.STOP: 0, Level.CAUTION: 1, Level.ADVICE: 2, Level.NOTE: 3}
RUNS = "runs"  # stands for several as a part's id
MEASURED_JOINT = "contact"
UPSTREAM = "upstream_duty"  # of two fuses: what is wrong with the one ahead
CANNOT_BE_WORKED = "van.cannot-be-worked"


@dataclass(frozen=True, kw_only=True)
class Finding:
    """One thing that is wrong with a van, or that nobody has proven.

    `place` is where it stands in the record, `part_id` and `part_name` whose it is. `sheet` and
    `texts` are the evidence: a link into the worksheet with its figures, and `opened_for` the id of
    the part that it was opened for, where that is another one. `places` are those of the
    values that are not proven, and `also` the ids of the other parts that are not judged for them.
    It stands for what it `covers`: on its own part, on the parts `over`, or anywhere.
    """

    rule: str
    level: Level
    sentence: str
    text: str = ""
    source: str = "practice"
    not_proven: bool = False
    place: str = ""
    part_id: str = ""
    part_name: str = ""
    sheet: str = ""
    opened_for: str = ""
    texts: Mapping[str, str] = field(default_factory=dict)
    places: tuple[str, ...] = ()
    also: frozenset[str] = frozenset()
    covers: frozenset[str] = frozenset()
    over: frozenset[str] = frozenset()

    @property
    def key(self) -> tuple[str, str]:
        """What makes it the same finding after an edit: its rule and its part.

        A measured joint is told of once, by the gravest: all that is wrong with it is one thing.
        """
        kind = self.rule.partition(".")[0]
        return kind if kind == MEASURED_JOINT else self.rule, self.part_id

    @property
    def rank(self) -> int:
        """How grave it is, 0 the gravest."""
        return ORDER[self.level]


@dataclass(frozen=True)
class Review:
    """All findings of a van, the gravest first, and what follows from them."""

    van: Van
    findings: tuple[Finding, ...]

    @cached_property
    def disposition(self) -> Disposition:
        """What may be done with the van."""
        from calc.van.inspection import disposition

        return disposition(self)

    @cached_property
    def best(self) -> tuple[tuple[Finding, Mend], ...]:
        """The three mends that help most, each with the finding that it is for."""
        from calc.van.mends import best

        return best(self)

    def of(self, part: Part) -> tuple[Finding, ...]:
        """Return the findings on a part."""
        return tuple(one for one in self.findings if one.part_id == part.id)

    @property
    def stops(self) -> bool:
        """Whether any finding stops, one that is not proven among them."""
        return any(one.level is Level.STOP for one in self.findings)


@once_for_each_van
def review(van: Van) -> Review:
    """Return the review of a van; of the same van it is the same."""
    found = list(_by_sheets(van))
    found += _by_rules(van)
    found += _unproven(van, found)
    return Review(van, tuple(sorted(_once(found), key=lambda one: (one.rank, one.not_proven))))


def _once(found: Iterable[Finding]) -> Iterator[Finding]:
    """Yield each finding once, without those that others cover."""
    kept = sorted(found, key=lambda one: one.opened_for not in ("", one.part_id))
    anywhere = (one for one in kept if one.rule.startswith("van.") and not one.over)
    whole = {name for one in anywhere for name in one.covers}
    beside = {
        (name, id) for one in kept for name in one.covers for id in one.over or (one.part_id,)
    }
    seen = set()
    for one in sorted(kept, key=lambda one: one.rank):
        if one.rule in whole or (one.rule, one.part_id) in beside or one.key in seen:
            continue
        seen.add(one.key)
        yield one


def _by_sheets(van: Van) -> Iterator[Finding]:
    """Yield what the worksheets find, and what they cannot judge for want of a value.

    A run is judged as its schedule works it, with what is chosen there.
    """
    done: set[tuple[str, str]] = set()
    for row in schedule(van).rows:
        for one in row.judged:
            done.add((one.sheet, row.part.id))
            if one.sheet not in LEFT_OUT.get(row.part.kind.id, ()):
                yield from _worked(van, one.sheet, one.texts, row.part, one.levels, one.beside)
    for sheet, kinds in REVIEWED.items():
        for part in targets(van, sheet):
            kind, id = (part.kind.id, part.id) if part else ("", "")
            if kind in kinds and (sheet, id) not in done and about(van, sheet, part):
                yield from of_sheet(van, sheet, part)


def of_sheet(van: Van, sheet: str, part: Part | None) -> Iterator[Finding]:
    """Yield what one worksheet finds on a part, or on the van as a whole."""
    own = filled(van, sheet, part)
    at = part if part is not None else _stands_for(van, sheet)
    usual = as_usual(sheet, own)
    if lacking := [one for one in own.lacking if one not in usual]:
        places = tuple(own.missing[one] for one in lacking)
        yield Finding(
            rule=NOT_STATED, level=Level.CAUTION, not_proven=True, sentence="", places=places,
            place=places[0], part_id=at.id, part_name=at.name, sheet=sheet, texts=own.texts,
        )  # fmt: skip
        return
    texts = {**own.texts, **usual}
    yield from _worked(van, sheet, texts, at)


def _worked(
    van: Van,
    sheet: str,
    texts: Mapping[str, str],
    at: Part,
    levels: frozenset[Level] = ALL_LEVELS,
    beside: frozenset[str] = frozenset(),
) -> Iterator[Finding]:
    """Yield what a worksheet finds for `texts` on a part, of some levels and not `beside`."""
    found = judged(sheet, texts)
    if found is None:
        yield Finding(
            rule=CANNOT_BE_WORKED, level=Level.CAUTION, not_proven=True,
            sentence=refusal(sheet, texts), place=at.place, part_id=at.id, part_name=at.name,
            sheet=sheet, texts=texts, source="",
        )  # fmt: skip
        return
    for one in found:
        if one.level not in levels or one.rule in beside or settled(van, one.rule, sheet, texts):
            continue
        ahead = upstream(van, at) if one.at == UPSTREAM else None
        if ahead is not None and ahead.kind.id == "batteries":
            continue  # the fuse of a battery is judged at its own post
        mine = _of_the_bank(van, one.rule) or ahead or at
        level = Level.NOTE if milder(van, one.rule, sheet, texts) else one.level
        yield Finding(
            rule=one.rule, level=level, sentence=one.sentence, text=one.text, source=one.source,
            place=mine.place, part_id=mine.id, part_name=mine.name, sheet=sheet, texts=texts,
            opened_for=at.id, covers=one.covers,
        )  # fmt: skip


def _stands_for(van: Van, sheet: str) -> Part:
    """Return the part that a worksheet of the whole is about."""
    kind = "bay" if sheet == "enclosure-airflow" else "bank"
    return van.one(kind) or van.parts["van"][0]


def _of_the_bank(van: Van, rule: str) -> Part | None:
    """Return the bank for a rule that is about it, whichever part's worksheet told it."""
    return van.one("bank") if rule.startswith(("bank.", "charge.")) else None


def fired(van: Van) -> Iterator[tuple[VanRule[Fact], Fact]]:
    """Yield each rule of the whole that fires on a van, with the fact that it fires on."""
    for one in ASKED:
        for fact in one.facts(van):
            for rule in one.rules:
                if rule.when(fact):
                    yield rule, fact


def _by_rules(van: Van) -> Iterator[Finding]:
    for rule, fact in fired(van):
        part = _part_at(van, fact.at)
        sheet = EVIDENCE.get(rule.id, "")
        yield Finding(
            rule=rule.id, level=rule.level, sentence=said(rule.headline, fact),
            text=said(rule.text, fact), source=rule.source,
            place=f"{fact.at}.{rule.key}" if rule.key else fact.at,
            part_id=part.id if part else fact.at, part_name=fact.part, covers=rule.covers,
            over=getattr(fact, "over", frozenset()),
            sheet=sheet, texts=_evidence(van, sheet, part),
        )  # fmt: skip


def _part_at(van: Van, place: str) -> Part | None:
    kind, _, rest = place.split(".")[0].partition("[")
    own = van.all(kind)
    index = int(rest.rstrip("]")) if rest else 1
    return own[index - 1] if index <= len(own) else None


def _evidence(van: Van, sheet: str, part: Part | None) -> Mapping[str, str]:
    """Return the texts of the worksheet that shows the figures of a rule of the whole."""
    if not sheet:
        return {}
    own = targets(van, sheet)
    if part in own:
        return filled(van, sheet, part).texts
    return filled(van, sheet, own[0] if own else None).texts


def _unproven(van: Van, found: list[Finding]) -> Iterator[Finding]:
    """Yield what is not proven, one finding a part and level, and take the sheets' own into it."""
    lacking = [one for one in found if one.rule == NOT_STATED]
    found[:] = [one for one in found if one.rule != NOT_STATED]
    wanted: dict[str, dict[str, set[str]]] = {}
    for one in lacking:
        for place in one.places:
            owner = _part_at(van, place)
            told_at = owner.id if owner else place.split(".")[0]
            wanted.setdefault(told_at, {}).setdefault(place, set()).add(one.part_id)
    for kind in kinds_not_seen(van):
        yield _told(told_of_kind(kind, wanted.pop(kind, {})), kind, KINDS[kind].title)
    own = {part.id: tuple(unproven(van, part)) for part in van.everything()}
    together = told_of_runs(tuple((part, own[part.id]) for part in runs(van)), wanted)
    for told, count in together:
        yield _told(told, RUNS, f"{count} runs")
    said = {place for told, _ in together for place in told.places}
    for part in van.everything():
        rest = tuple(one for one in own[part.id] if one.place not in said)
        for told in told_of_part(van, part, rest, wanted.pop(part.id, {})):
            yield _told(told, part.id, part.name)
    for kind, places in wanted.items():
        yield _told(told_of_absent(kind, places), kind, KINDS[kind].title)


def _told(one: Told, part_id: str, part_name: str) -> Finding:
    return Finding(
        rule=one.rule,
        level=one.level,
        sentence=one.sentence,
        text=one.text,
        not_proven=True,
        place=one.places[0],
        places=one.places,
        also=one.also,
        part_id=part_id,
        part_name=part_name,
    )

"""What would mend a finding: each way is tried on the whole van before it is offered.

A mend is offered only if the finding is gone after it and nothing new of its level or worse has
come. The work is bounded: so many trials for a finding, and no more are offered than anybody reads.
"""

from __future__ import annotations

from collections.abc import Iterator

from calc.judge import Level
from calc.van.judging import Mend, mended
from calc.van.record import Van
from calc.van.review import Finding, Review, fired, review
from calc.van.rules import alarms, mains
from calc.van.ways import ways
from calc.worksheet.answer import InputError

MOST_TRIED = 14
MOST_OFFERED = 3
_MOST_WEIGHED = 8  # findings, the gravest first, among which the best mends are looked for
_BEST = 3
_LEVELS = tuple(Level)  # the worst first
# Rules on what can kill: gas, flames and alarms, then mains, with those of worksheets on the same.
_DEADLY = tuple(
    frozenset(rule.id for asked in each for rule in asked.rules)
    for each in (alarms.ASKED, mains.ASKED)
)
_OF_SHEETS = ("flame.", "shore.polarity")
_WEIGHTS = {Level.STOP: 100, Level.CAUTION: 10, Level.ADVICE: 1, Level.NOTE: 1}


def mends_of(van: Van, found: Review, finding: Finding) -> tuple[Mend, ...]:
    """Return the ways to mend a finding that were tried and hold, the best first.

    What is not proven is not mended but looked at: see `calc.van.inspection`.
    """
    return tuple(mend for mend, _ in tried(van, found, finding))


def tried(
    van: Van, found: Review, finding: Finding, offers: int = MOST_OFFERED
) -> tuple[tuple[Mend, Review], ...]:
    """Return the first mends that hold, so many `offers`, each with the review of the van after."""
    if finding.not_proven:
        return ()
    kept: list[tuple[Mend, Review]] = []
    helped: set[frozenset[str]] = set()  # of two that touch the same, the first is the smaller
    for count, mend in enumerate(_candidates(van, finding)):
        if count >= MOST_TRIED or len(kept) >= offers:
            break
        if mend.touches in helped:
            continue
        try:
            after = review(mended(van, mend))
        except InputError:
            continue
        if holds(found, after, finding):
            kept.append((mend, after))
            helped.add(mend.touches)
    return tuple(kept)


def holds(before: Review, after: Review, finding: Finding) -> bool:
    """Return whether a finding is gone, and nothing new of its level or worse has come."""
    known = {one.key: set(one.places) for one in before.findings}
    for one in after.findings:
        if one.key == finding.key:
            return False
        new = one.key not in known or not set(one.places) <= known[one.key]
        if new and one.rank <= finding.rank:
            return False
    return True


def _candidates(van: Van, finding: Finding) -> Iterator[Mend]:
    if finding.rule.startswith("van."):
        for rule, fact in fired(van):
            if rule.id == finding.rule and fact.at == finding.place.removesuffix(f".{rule.key}"):
                yield from rule.mends(fact)
    yield from ways(van, finding)


def best(found: Review) -> tuple[tuple[Finding, Mend], ...]:
    """Return the mends to make first, each with what it is for.

    What can kill comes before what can burn or fail: gas and alarms, then mains, then the rest; in
    each, what takes the most off the van's findings.
    """
    weighed = []
    proven = [one for one in found.findings if not one.not_proven]
    for finding in sorted(proven, key=_danger)[:_MOST_WEIGHED]:
        for mend, after in tried(found.van, found, finding, offers=1):
            lighter = _weight(after) - _weight(found)
            weighed.append(((*_danger(finding), lighter), finding, mend))
    weighed.sort(key=lambda one: one[0])
    return tuple((finding, mend) for _, finding, mend in weighed[:_BEST])


def _danger(finding: Finding) -> tuple[int, int]:
    """Return the place of a finding among dangers: its level, then what it can do to people."""
    kind = next((place for place, one in enumerate(_DEADLY) if finding.rule in one), len(_DEADLY))
    of_sheet = (place for place, one in enumerate(_OF_SHEETS) if finding.rule.startswith(one))
    return _LEVELS.index(finding.level), next(of_sheet, kind)


def _weight(found: Review) -> int:
    return sum(_WEIGHTS[one.level] for one in found.findings)

"""What a client is told of a van: sentences as data, chosen by its review.

Every sentence is ours. A link says which of them were chosen, and the numbers and the names of
parts that stand in them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from calc import find
from calc.judge import Level
from calc.van.compared import Compared, compared
from calc.van.judging import Mend
from calc.van.record import place_of
from calc.van.review import ASKED, RUNS, Finding, Review
from calc.van.reviewed import REVIEWED
from calc.worksheet.answer import InputError
from calc.worksheet.shown_values import NAME

TITLE = "What to mend in this van"
ADVICE = (
    "Do not build the electrics like this: {stops} and {cautions}. Begin with: {first}.",
    "Do not use the electrics yet: {stops} and {cautions}. Begin with: {first}.",
    "Do not use the electrics yet: {stops}, not proven, and {cautions}. Look first at: {first}.",
    "Settle {cautions} before you rely on the electrics. Begin with: {first}.",
    "Have the van checked again when anything in it changes: {stops} and {cautions} found.",
)
PLAN, STOPPED, UNPROVEN, CAUTIONED, CLEAR = range(len(ADVICE))
NEGLECT = (
    "A stop can burn, shock, poison or ruin the battery, also while nobody is watching.",
    "Parts heat, wear early or fail on the road, and a small repair becomes a large one.",
    "Joints work loose and batteries age: faults come that nobody looks for.",
)
CAUTIONS = (
    "Shock and fire: have the batteries disconnected before anybody touches a cable.",
    "Only what was written down is judged. Mains and gas are for licensed trades.",
)
REASONS = 3
UNKNOWN = "not-proven"
NAMED = frozenset({"part", "ahead_part", "bypassed_by"})
"""The names in headlines that stand for a part's own name, which is any text."""

_LONGEST = 40  # characters of a value
_NTH = "~"
_GRAVE = (Level.STOP, Level.CAUTION)


@dataclass(frozen=True)
class Reason:
    """One finding as a client reads it.

    `key` names its headline, `found` are the values in it, in order. `where` is the place of its
    part such as `circuits.3`, empty where it stands for several, and `name` what the van calls it.
    """

    key: str
    found: tuple[str, ...]
    where: str
    name: str
    mend: str


NOTHING = Reason("nothing-found", (), "", "", "")
"""What stands there where nothing stops or cautions."""


@dataclass(frozen=True)
class Advised:
    """Which sentences a van calls for, by their places, and what stands in them."""

    level: Level
    advice: int
    neglect: int
    counts: Mapping[str, str]
    reasons: tuple[Reason, ...]
    bars: tuple[Compared, ...]


def advised(review: Review) -> Advised:
    """Return what a client is told of a van: what stops first, of that what can be mended."""
    grave = [one for one in review.findings if one.level in _GRAVE]
    stops = [one for one in grave if one.level is Level.STOP]
    mends = {one.key: mend for one, mend in review.best if one.level in _GRAVE}
    best = list(mends)
    first = sorted(
        grave,
        key=lambda one: (
            one.rank,
            best.index(one.key) if one.key in mends else len(best),
            one.not_proven,
        ),
    )
    if not stops:
        advice = CAUTIONED if grave else CLEAR
    elif all(one.not_proven for one in stops):
        advice = UNPROVEN
    else:
        advice = STOPPED if review.van.inspection else PLAN
    return Advised(
        level=grave[0].level if grave else Level.FINE,
        advice=advice,
        neglect=0 if stops else 1 if grave else 2,
        counts={
            "stops": _count(len(stops), "stop"),
            "cautions": _count(len(grave) - len(stops), "caution"),
        },
        reasons=tuple(_reason(one, mends.get(one.key)) for one in first[:REASONS]) or (NOTHING,),
        bars=compared(review.van, first),
    )


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def _reason(one: Finding, mend: Mend | None) -> Reason:
    key, found = _headline_of(one)
    where = "" if one.part_id == RUNS else _where(one.place)
    return Reason(key, found, where, one.part_name[:_LONGEST], mend.text if mend else "")


def _where(place: str) -> str:
    """Return a part's place as a link has it, nothing where it is not one part's."""
    try:
        kind, index, _ = place_of(place)
    except InputError:
        return ""
    if kind.id == "van":
        return ""
    return f"{kind.id}.{index}" if kind.many else kind.id


def _headline_of(one: Finding) -> tuple[str, tuple[str, ...]]:
    """Return the key of the headline that a finding's sentence is made of, and its values."""
    for key, pattern in _patterns().get(one.rule, ()):
        if not one.not_proven and (match := pattern.fullmatch(one.sentence)):
            return key, tuple(text[:_LONGEST] for text in match.groups())
    return UNKNOWN if one.not_proven else one.level.value, ()


@cache
def headlines() -> dict[str, str]:
    """Return every headline that may stop or caution in a van's review, as written, by its key.

    The key is the rule's id; where a rule has several headlines, a later one has its number.
    """
    found = {
        UNKNOWN: "Have it looked at and measured: nobody has proven it yet.",
        Level.STOP.value: "Have it mended before the van is used.",
        Level.CAUTION.value: "Have it checked.",
        NOTHING.key: "This is about what is written down: what is missing there is not judged.",
    }
    seen: dict[str, list[str]] = {}
    for rule, text in _written():
        own = seen.setdefault(rule, [])
        if text and text not in own:
            own.append(text)
            found[f"{rule}{_NTH}{len(own)}" if own[1:] else rule] = text
    return found


def _written() -> Iterator[tuple[str, str]]:
    for asked in ASKED:
        yield from ((rule.id, rule.headline) for rule in asked.rules if rule.level in _GRAVE)
    for sheet in REVIEWED:
        for use in find(sheet).uses:
            if use.rule.level in _GRAVE:
                yield use.rule.id, use.headline
                yield use.rule.id, use.rule.headline


@cache
def _patterns() -> dict[str, list[tuple[str, re.Pattern[str]]]]:
    patterns: dict[str, list[tuple[str, re.Pattern[str]]]] = {}
    for key, text in headlines().items():
        pieces = NAME.split(text)
        written = "".join("(.+?)" if n % 2 else re.escape(piece) for n, piece in enumerate(pieces))
        patterns.setdefault(key.partition(_NTH)[0], []).append((key, re.compile(written)))
    return patterns

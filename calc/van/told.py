"""What is not proven, as findings: one for each part and level, with its places."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from calc.judge import Level
from calc.van.proven import Gap, Unproven, at_a_desk
from calc.van.record import KINDS, Part, Van, place_of
from calc.van.saying import listed
from calc.van.values import State
from calc.worksheet.answer import InputError

NOT_PROVEN, NOT_SEEN, NOT_STATED = "van.not-proven", "van.not-seen", "van.not-stated"
AS_USUAL = "van.taken-as-usual"
# Kinds of which somebody must know whether there are any before the van may be energised.
VITAL_KINDS = frozenset({
    "batteries", "management", "alternator", "mains", "inverter", "bars", "isolators", "cables",
    "circuits", "gas", "alarms", "heater", "bank", "panels", "shore", "water_heater",
})  # fmt: skip


_OFTEN = 3  # runs of which the same was not seen: told once
_USUAL = "Usual values stand in for what nobody has seen."
_IN_FULL = "They are not judged in full."


@dataclass(frozen=True, kw_only=True)
class Told:
    """One thing to say of what is not proven."""

    rule: str
    level: Level
    sentence: str
    places: tuple[str, ...]
    text: str = ""
    also: frozenset[str] = frozenset()


type Wanted = Mapping[str, Collection[str]]
"""The places of values that worksheets lack, each with the ids of the parts that lack it."""


def told_of_kind(kind: str, wanted: Wanted) -> Told:
    """Return what is said where nobody knows whether a van has parts of a kind."""
    vital = kind in VITAL_KINDS
    title = KINDS[kind].title
    return Told(
        rule=NOT_PROVEN if vital else NOT_SEEN,
        level=Level.STOP if vital else Level.CAUTION if wanted else Level.NOTE,
        sentence=f"Find out about {_small(title)}: not seen, so nothing of it is judged.",
        places=(kind, *wanted),
        also=_also(wanted, kind),
    )


def told_of_absent(kind: str, wanted: Wanted) -> Told:
    """Return what is said where a plan lists no part of a kind that worksheets want."""
    title, also = KINDS[kind].title, _also(wanted, kind)
    return Told(
        rule=NOT_STATED,
        level=Level.CAUTION,
        sentence=f"State {_small(title)}, or that there is none.",
        text=f"{_not_judged(len(also))}.",
        places=tuple(wanted),
        also=also,
    )


def told_of_part(van: Van, part: Part, found: Iterable[Unproven], wanted: Wanted) -> Iterator[Told]:
    """Yield what is said of a part: of what was not seen or only told, and of what is lacked."""
    found = tuple(found)
    vital = [one for one in found if one.key.safety and one.gap is not Gap.BLANK and not one.idle]
    if vital:
        yield _vital(part, vital, wanted)
    said = {one.place for one in vital}
    rest = [one for one in found if one not in vital]
    grave = [one for one in rest if one.place in wanted or one.gap is Gap.BLANK or _heavy(one)]
    places = tuple(
        dict.fromkeys([*(p for p in wanted if p not in said), *(one.place for one in grave)])
    )
    if places:
        yield _grave(van, part, places, {place: wanted.get(place, ()) for place in places})
    light = tuple(one for one in rest if one not in grave)
    if light:
        labels = listed([one.label for one in light])
        yield Told(
            rule=AS_USUAL,
            level=Level.NOTE,
            sentence=f"Ask about {name_of(part)}: {labels}.",
            text=_USUAL,
            places=tuple(one.place for one in light),
        )


def told_of_runs(
    found: Sequence[tuple[Part, Sequence[Unproven]]], wanted: dict[str, dict[str, set[str]]]
) -> tuple[tuple[Told, int], ...]:
    """Return what is to be said once over several runs, and of how many: it would be read but once.

    What worksheets lack of it is taken out of `wanted`, by part and place.
    """
    every = [
        (_class_of(one, wanted.get(part.id, {})), one)
        for part, own in found
        for one in own
        if one.gap is Gap.NOT_SEEN
    ]
    often = Counter((kind, one.key.id) for kind, one in every)
    made = []
    for kind in ("vital", "grave", "light"):
        own = [o for k, o in every if k == kind and often[k, o.key.id] >= _OFTEN]
        if own:
            made.append(_told_of_runs(kind, own, wanted))
    return tuple(made)


def _class_of(one: Unproven, wanted: Wanted) -> str:
    if one.key.safety and not one.idle:
        return "vital"
    return "grave" if one.place in wanted or _heavy(one) else "light"


def _told_of_runs(
    kind: str, own: list[Unproven], wanted: dict[str, dict[str, set[str]]]
) -> tuple[Told, int]:
    ids = frozenset(one.part.id for one in own)
    labels = listed(list(dict.fromkeys(one.label for one in own)))
    lacking = [wanted.get(one.part.id, {}).pop(one.place, set()) for one in own]
    name = f"{len(ids)} runs"
    rule, level, sentence, text = {
        "vital": (NOT_PROVEN, Level.STOP, f"Look at {name} first: {labels}. Not proven.", ""),
        "grave": (NOT_SEEN, Level.CAUTION, f"Find out about {name}: {labels}.", _IN_FULL),
        "light": (AS_USUAL, Level.NOTE, f"Ask about {name}: {labels}.", _USUAL),
    }[kind]
    return Told(
        rule=rule,
        level=level,
        sentence=sentence,
        text=text,
        places=tuple(one.place for one in own),
        also=ids.union(*lacking),
    ), len(ids)


def _small(title: str) -> str:
    return f"{title[0].lower()}{title[1:]}"


def _vital(part: Part, vital: list[Unproven], wanted: Wanted) -> Told:
    labels = listed([one.label for one in vital])
    places = tuple(one.place for one in vital)
    if all(one.gap is Gap.TOLD for one in vital):
        sentence = f"See {name_of(part)} for yourself: {labels}. Told is not proven."
    else:
        sentence = f"Look at {name_of(part)} first: {labels}. Not proven."
    also = _also({place: wanted.get(place, ()) for place in places}, part.id)
    return Told(rule=NOT_PROVEN, level=Level.STOP, sentence=sentence, places=places, also=also)


def _heavy(one: Unproven) -> bool:
    """Whether a value that nobody saw could have been seen in the van."""
    return not (at_a_desk(one.key) or one.idle)


def _grave(van: Van, part: Part, places: tuple[str, ...], wanted: Wanted) -> Told:
    labels = listed([label_of(van, place, part) for place in places])
    also = _also(wanted, part.id)
    blank = not van.inspection and not any(_not_seen(van, place) for place in places)
    first = "Add to" if blank else "Find out about"
    stated = blank and all(_known(van, place) for place in places)
    says = f"Check {name_of(part)}: {labels} does not go with the rest of the record."
    return Told(
        rule=NOT_STATED if blank else NOT_SEEN,
        level=Level.CAUTION,
        sentence=says if stated else f"{first} {name_of(part)}: {labels}.",
        text=f"{_not_judged(len(also))}.",
        places=places,
        also=also,
    )


def _also(wanted: Wanted, own: str) -> frozenset[str]:
    return frozenset(one for ids in wanted.values() for one in ids if one != own)


def _not_judged(others: int) -> str:
    if others > 1:
        return f"{others} other parts are not judged in full"
    return "Another part is not judged in full" if others else "It is not judged in full"


def name_of(part: Part) -> str:
    """Return a part's name as it stands in a sentence: one alone has an article."""
    if part.kind.id == "van":
        return "the van"
    return part.name if part.kind.many else f"the {part.name}"


def _known(van: Van, place: str) -> bool:
    try:
        return van.at(place).known
    except InputError:
        return False


def _not_seen(van: Van, place: str) -> bool:
    try:
        return van.at(place).state is State.NOT_SEEN
    except InputError:
        return False


def label_of(van: Van, place: str, near: Part | None = None) -> str:
    """Return what a reader calls the value at a place, with its part where that is another one."""
    try:
        kind, index, key = place_of(place)
    except InputError:
        return KINDS[place].title.lower() if place in KINDS else place
    own = van.all(kind.id)
    part = own[index - 1] if index <= len(own) else None
    name = kind.key(key).field.label if key and key in {one.id for one in kind.keys} else kind.title
    name = short(name if name[1:2].isupper() else name[0].lower() + name[1:])
    if part is None or part is near or not key:
        return name
    return f"{name} of {part.name}"


def short(label: str) -> str:
    """Return a label without what stands behind its first comma or bracket."""
    return label.split(",")[0].split(" (")[0]

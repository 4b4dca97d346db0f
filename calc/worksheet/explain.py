"""How a sheet's answer is explained to a client: sentences as data, chosen by the answer.

Every sentence is ours. A link says which of them were chosen and the numbers that stand in them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from calc.judge import JUDGING, Level, always
from calc.units.shown import NO_BREAK_SPACE
from calc.worksheet.answer import Answer
from calc.worksheet.declare import Declaration, Placed
from calc.worksheet.shown_values import NAME
from calc.worksheet.writer import Writer

REASONS = 3
_WHOLE = 100  # the longest bar
_TINY = 1e-3  # of the largest: what is less has a unit of its own
_NTH = "~"


@dataclass(frozen=True)
class Point:
    """A sentence for a client, with names of the sheet's fields and results in braces.

    It applies where each of its names has a value, where `when` holds of the result, and, if `of`
    is given, where the verdict or the beginning of the deciding rule's id is one of its words.
    """

    text: str
    of: str = ""
    when: Callable[[Any], bool] = always

    @property
    def names(self) -> tuple[str, ...]:
        """The fields and results that it names."""
        return tuple(NAME.findall(self.text))


@dataclass(frozen=True)
class Bar:
    """A result or field to be compared with others, by its id, where `of` and `when` apply."""

    label: str
    name: str
    of: str = ""
    when: Callable[[Any], bool] = always


@dataclass(frozen=True, kw_only=True)
class Explanation:
    """What a sheet has to say to a client.

    Of `advice` and `neglect` (what happens if nothing is done) the first that applies is said, of
    `reasons` the first three; where the verdict is not fine, the finding itself comes before two of
    them. Every one of the `cautions` that applies is said, and all of them while nothing is
    checked. `bars` are compared with each other, all of one kind; those whose `of` names the
    deciding rule stand alone. `silent` are beginnings of the ids of rules whose finding the advice
    says already.
    """

    advice: tuple[Point, ...]
    reasons: tuple[Point, ...]
    neglect: tuple[Point, ...]
    cautions: tuple[Point, ...] = ()
    bars: tuple[Bar, ...] = ()
    silent: str = ""

    @property
    def names(self) -> tuple[str, ...]:
        """Every field and result that a sentence or a bar names, once."""
        points = (*self.advice, *self.reasons, *self.neglect, *self.cautions)
        named = [name for point in points for name in point.names]
        return tuple(dict.fromkeys([*named, *(bar.name for bar in self.bars)]))


@dataclass(frozen=True)
class Explained:
    """Which sentences of an explanation an answer calls for, by their places, and the numbers.

    `rule` is the deciding one, nothing where none is told, and `found` what stands in its headline,
    in order. `shares` are the bars in whole percent of the longest, None for one that has no value.
    `values` are all the other texts, by name.
    """

    advice: int
    reasons: tuple[int, ...]
    neglect: int
    cautions: tuple[int, ...]
    rule: str
    found: tuple[str, ...]
    shares: tuple[int | None, ...]
    values: Mapping[str, str]


def explained(answer: Answer, how: Explanation) -> Explained:
    """Return what is said of an answer."""

    def applying(points: Iterable[Point]) -> list[int]:
        return [place for place, point in enumerate(points) if _applies(point, answer)]

    told = answer.verdict != Level.FINE and not any(map(answer.rule.startswith, how.silent.split()))
    advice, neglect = applying(how.advice)[0], applying(how.neglect)[0]
    reasons = tuple(applying(how.reasons)[: REASONS - told])
    cautions = tuple(applying(how.cautions))
    rule, found = _found(answer) if told else ("", ())
    shares = _shares(answer, how.bars)
    said = (
        how.advice[advice],
        how.neglect[neglect],
        *(how.reasons[place] for place in reasons),
        *(how.cautions[place] for place in cautions),
    )
    names = [name for point in said for name in point.names]
    compared = [bar.name for bar, one in zip(how.bars, shares, strict=True) if one is not None]
    values = {name: _shown(answer, name) for name in names} | _alike(answer, compared)
    return Explained(advice, reasons, neglect, cautions, rule, found, shares, values)


def headlines(sheet: Declaration) -> dict[str, str]:
    """Return the headline of each rule of a sheet that may decide against it, as written.

    By the rule's id; where a sheet asks one rule of several parts, a later one has its number.
    """
    return {key: _headline(use) for key, use in _keyed(sheet) if use.rule.level in JUDGING[:-1]}


def _keyed(sheet: Declaration) -> list[tuple[str, Placed]]:
    keyed: list[tuple[str, Placed]] = []
    for use in sheet.uses:
        same = sum(one.rule.id == use.rule.id for _, one in keyed)
        keyed.append((f"{use.rule.id}{_NTH}{same + 1}" if same else use.rule.id, use))
    return keyed


def _headline(use: Placed) -> str:
    return use.headline or use.rule.headline


def _found(answer: Answer) -> tuple[str, tuple[str, ...]]:
    """Return the deciding rule by its key, and the values in its headline."""
    writer = Writer(answer.worksheet, answer.inputs, answer.result)
    first = writer.judged[2]
    key = next(key for key, use in _keyed(answer.worksheet) if use is first.use)
    own = bool(first.use.headline)
    slots = [f"{{{name}}}" for name in NAME.findall(_headline(first.use))]
    return key, tuple(writer.puts(first, slot if own else "", slot) for slot in slots)


def _applies(point: Point | Bar, answer: Answer) -> bool:
    words = point.of.split()
    if words and answer.verdict not in words and not any(map(answer.rule.startswith, words)):
        return False
    names = point.names if isinstance(point, Point) else (point.name,)
    return all(_has(answer, name) for name in names) and point.when(answer.result)


def _shown(answer: Answer, name: str) -> str:
    """Return a value as shown, in one system of units: a client needs no other."""
    outputs = (*answer.worksheet.results, *answer.worksheet.intermediates)
    both = any(one.id == name and one.both for one in outputs)
    return answer.shown[name].partition(" (")[0] if both else answer.shown[name]


def _has(answer: Answer, name: str) -> bool:
    reading = answer.inputs.get(name)
    return answer.values[name] is not None and (reading is None or reading.applies)


def _alike(answer: Answer, names: list[str]) -> dict[str, str]:
    """Return the values that are compared as shown, results in the unit of the largest of all."""
    results = {one.id: one for one in (*answer.worksheet.results, *answer.worksheet.intermediates)}
    texts = {name: _shown(answer, name) for name in names}
    if not names:
        return texts
    most = max(names, key=lambda name: answer.values[name])
    unit = _unit(texts[most])
    writer = Writer(answer.worksheet, answer.inputs, answer.result)
    for name in names:
        one = results.get(name)
        if one is None or one.kind is None or one.unit or _unit(texts[name]) == unit:
            continue
        if answer.values[name] >= _TINY * answer.values[most]:
            same = next((own for own in one.kind.units if own.symbol == unit), None)
            if same:
                alike = replace(one, unit=same.name)
                texts[name] = writer.put(alike, answer.values[name], digits=one.digits)
    return texts


def _unit(text: str) -> str:
    return text.rpartition(NO_BREAK_SPACE)[2]


def _shares(answer: Answer, bars: tuple[Bar, ...]) -> tuple[int | None, ...]:
    own = [bar for bar in bars if any(map(answer.rule.startswith, bar.of.split()))]
    apply = [bar for bar in own or bars if _applies(bar, answer)]
    values = [answer.values[bar.name] if bar in apply else None for bar in bars]
    most = max((value for value in values if value is not None), default=0)
    if most <= 0 or sum(value is not None for value in values) < 2:
        return (None,) * len(bars)
    return tuple(None if v is None else round(_WHOLE * max(v, 0) / most) for v in values)

"""Inputs to try every worksheet with: its defaults, each choice, each limit, and many drawn ones.

They are made from the declared fields alone, so a new worksheet is tried without a line here. What
is drawn is another sample in each run. What must come up at least once is looked for further, in a
draw that is the same in every run: `search`.
"""

import os
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import replace
from functools import cache
from itertools import chain, count, islice
from math import exp, log
from random import Random

import calc
from calc.faults.trail import Trail
from calc.units.kinds import TEMPERATURE
from calc.units.quantities import Kind, from_base
from calc.worksheet.answer import Answer
from calc.worksheet.fields import Choice, Field, ParsedInput, Quantity
from calc.worksheet.rows import Rows, Text, joined
from calc.worksheet.work import Worksheet
from evidence import Case, load_cases
from tests.contract.trails import trails
from tests.counts import chance, often

DRAWN = often(150, 5000)  # a worksheet
AROUND = often(40, 1000)  # a worksheet, near a published case
STAGED = 4  # times fewer of a sheet that is worked in stages, for each takes as long as a hundred
FURTHER = 1000  # a worksheet, of the draw that is the same in every run
MOST_ROWS = 5  # of a list that is drawn; half have one, since the worst of many decides a verdict

NAMES = ("main fuse", "Brams Eck (links)", "Sœur n° 2", "<b> & 'x'", "a\\b", "x" * 40, "电池 +")
"""Words that a reader might type as a name, and some that only a stranger would."""

Texts = dict[str, str]

RARE: dict[str, list[Texts]] = {
    "week-ahead": [
        {"question": "trip", "capacity": "5000 Ah", "chemistry": "flooded", "from_state": "0.24 %"},
        {"question": "trip", "loads": "fridge:45 W:9.6 h", "array": "40 W", "drive_hours": "0 h",
         "recovery": "sun", "month": "October", "latitude": "50", "sky": "40 %"},
    ],
    "converter": [
        {"output_voltage": "59.6 V", "insulation": "60 C", "lowest": "13.6 V", "ambient": "119 F",
         "bundled": "34"}
    ],
}  # fmt: skip
"""What makes a rule fire that the draw of `search` would meet only after hundreds of others."""


def sheets() -> list[Worksheet]:
    """Return every worksheet, or the one that `build_scripts/check` asks about."""
    only = os.environ.get("LUGWISE_SHEET")
    return [calc.find(name) for name in calc.worksheets() if only in (None, name)]


def needed_by(sheet: Worksheet, field: Field) -> Texts:
    """Return the inputs beside which `field` has a meaning."""
    found = dict([field.only_if]) if field.only_if else {}
    if field.only_above:
        found[field.only_above] = sheet.field(field.only_above).example
    for other in tuple(found):
        if sheet.field(other).conditional:
            found = needed_by(sheet, sheet.field(other)) | found
    return found


def ends(field: Quantity) -> list[str]:
    """Return the limits of a field as declared, for each of its kinds."""
    return [end.strip() for end in (*field.low.split("|"), *field.high.split("|"))]


def single(sheet: Worksheet) -> list[Texts]:
    """Return inputs that set one field: to each of its choices, or to each of its limits."""
    return [
        {**needed_by(sheet, field), field.id: text}
        for field in sheet.fields
        for text in extremes(field)
    ] + along(sheet)


def along(sheet: Worksheet) -> list[Texts]:
    """Return inputs that lead to every step and every end of a search, if the sheet is one."""
    fields = [field for field in sheet.fields if isinstance(field, Trail)]
    return [{f.start: path.split(".")[0], f.id: path} for f in fields for path in trails()]


def extremes(field: Field) -> list[str]:
    """Return each of a field's choices, or each of its limits; for a list, those of each column."""
    match field:
        case Choice():
            return [option.id for option in field.options]
        case Quantity():
            return ends(field)
        case Rows():
            cells = [(one, text) for one in field.columns for text in extremes(one)]
            return [row_with(field, column, text) for column, text in cells]
    return list(NAMES)


def wrong_for(field: Field) -> str:
    """Return a text that `field` refuses."""
    if isinstance(field, Rows):
        return row_with(field, field.columns[1], wrong_for(field.columns[1]))
    return "a:b" if isinstance(field, Text) else "abc"


def row_with(field: Rows, column: Field, text: str, others: Texts | None = None) -> str:
    """Return a list of one row whose cell in `column` is `text`, the `others` as given or usual."""
    first = field.columns[0]
    texts = {one.id: "" if one.optional else one.default for one in field.columns}
    texts |= {first.id: "somewhere"} | (others or {})
    for one in field.columns:
        if isinstance(one, Quantity) and not texts[one.id] and not one.optional:
            texts[one.id] = one.example
    return joined([[(texts | {column.id: text})[one.id] for one in field.columns]])


def drawn(sheet: Worksheet, draw: Random, times: int) -> Iterator[Texts]:
    """Yield inputs with every field drawn from its whole range, or left to its default."""
    ways = along(sheet) or [{}]
    for _ in range(times):
        yield {
            field.id: _box(field, draw)
            for field in sheet.fields
            if draw.random() > (0.5 if field.default_by or field.optional else 0.25)
        } | draw.choice(ways)


@cache
def _published() -> tuple[Case, ...]:
    return tuple(load_cases())


def published(sheet: Worksheet) -> dict[str, list[Texts]]:
    """Return the inputs of a sheet's published cases by the verdict expected, if any."""
    cases: dict[str, list[Texts]] = {}
    for case in _published():
        if case.worksheet == sheet.id:
            cases.setdefault(case.expect.get("verdict", ""), []).append(dict(case.inputs))
    return cases


def around(sheet: Worksheet, draw: Random, times: int) -> Iterator[Texts]:
    """Yield inputs near published cases.

    Where every field is drawn at once, a verdict that asks a lot of things to be right is hardly
    ever met. So two fields alone are drawn anew, and each verdict that a case expects is taken as
    often as any other.
    """
    cases = list(published(sheet).values())
    fields = [field for field in sheet.fields if not isinstance(field, Trail)]
    for _ in range(times if cases and fields else 0):
        near = draw.choice(draw.choice(cases))
        yield near | {field.id: _box(field, draw) for field in draw.choices(fields, k=2)}


def _box(field: Field, draw: Random) -> str:
    """Return what stands in a box: where its default may be taken out, often nothing."""
    if field.optional and field.default and draw.random() < 0.5:
        return ""
    return _text(field, draw)


def _text(field: Field, draw: Random) -> str:
    if isinstance(field, Choice):
        return draw.choice(field.options).id
    if isinstance(field, Text):
        return draw.choice(NAMES)
    if isinstance(field, Rows):
        count = 1 if draw.random() < 0.5 else draw.randint(2, MOST_ROWS)
        return joined(_row(field, draw) for _ in range(count))
    assert isinstance(field, Quantity)
    kind = draw.choice(field.kinds)
    unit = draw.choice(kind.units)
    number = from_base(between(field, kind, draw.random()), kind, unit.name)
    spelling = draw.choice((unit.symbol, unit.link, *unit.spellings))
    return f"{number:.0f}" if kind.whole else f"{number:.6g} {spelling}"


def _row(field: Rows, draw: Random) -> list[str]:
    """Draw a row's cells; one that may be empty, or has a usual text, is often left so."""
    first = field.columns[0]
    return [
        _text(one, draw)
        if one is first or draw.random() > 0.4 or not (one.optional or one.default)
        else ""
        for one in field.columns
    ]


def between(field: Quantity, kind: Kind, share: float) -> float:
    """Return a value [base unit of `kind`] a `share` of the way from a field's low end to its high.

    The way is even in the logarithm, so that small and large values come as often; but where values
    may lie below zero it is even in the value.
    """
    bounds = field.bounds(kind)
    assert bounds is not None, f"{field.id} has no limits as a {kind.id}"
    low, high = bounds[:2]
    if kind is TEMPERATURE or low < 0:
        return low + share * (high - low)
    first = log(low or high * 1e-6)
    value = exp(first + (0.0001 + 0.9998 * share) * (log(high) - first))
    return float(round(value)) if kind.whole else value


@cache
def answers(name: str) -> tuple[tuple[Texts, Answer], ...]:
    """Return each of the inputs that worksheet `name` can answer, with its answer.

    Each is worked once in a process, and all that is asked of every answer is asked of these.
    """
    sheet = calc.find(name)
    judged = [texts for verdict, own in published(sheet).items() if verdict for texts in own]
    fresh = chance("drawn", name)
    few = STAGED if sheet.later_stages else 1
    near = (*drawn(sheet, fresh, DRAWN // few), *around(sheet, fresh, AROUND // few))
    return tuple(worked(sheet, ({}, *single(sheet), *judged, *RARE.get(name, ()), *near)))


def worked(sheet: Worksheet, inputs: Iterable[Texts]) -> Iterator[tuple[Texts, Answer]]:
    """Yield each of the inputs that a worksheet can answer, with its answer."""
    for texts in inputs:
        with suppress(calc.InputError):
            yield texts, sheet.work(texts)


def search(name: str) -> Iterator[tuple[Texts, Answer]]:
    """Return the answers, and then more from inputs that are the same in every run.

    For what is met by few inputs and has to be met: whoever looks for it stops when it is found.
    """
    return chain(answers(name), _further(name))


def until(name: str, enough: Callable[[], bool]) -> Iterator[tuple[Texts, Answer]]:
    """Yield all the answers, and go on as `search` does until there is `enough`."""
    yield from answers(name)
    for one in _further(name):
        if enough():
            return
        yield one


def those(
    name: str, wanted: Callable[[Answer], bool], least: int = 1
) -> list[tuple[Texts, Answer]]:
    """Return the answers that are `wanted`, and as many more as make `least`.

    Raises AssertionError if so many cannot be found.
    """
    found = [one for one in answers(name) if wanted(one[1])]
    more = (one for one in _further(name) if wanted(one[1]))
    found += islice(more, max(0, least - len(found)))
    assert len(found) >= least, f"only {len(found)} such answers of {name}"
    return found


def fine(name: str, least: int = 10) -> list[tuple[Texts, Answer]]:
    """Return the answers that are fine, as many as there are and at `least` so many."""
    return those(name, lambda answer: answer.verdict == "fine", least)


@cache
def _further(name: str) -> "Once[tuple[Texts, Answer]]":
    sheet = calc.find(name)
    near = around(sheet, Random(f"around {name}"), FURTHER)
    return Once(worked(sheet, chain(near, drawn(sheet, Random(name), FURTHER))))


class Once[T]:
    """What an iterator yields, for many readers: each part is made once, when it is asked for."""

    def __init__(self, coming: Iterator[T]) -> None:
        self.made: list[T] = []
        self.coming = coming

    def __iter__(self) -> Iterator[T]:
        for place in count():
            if place == len(self.made):
                try:
                    self.made.append(next(self.coming))
                except StopIteration:
                    return
            yield self.made[place]


def as_read(readings: Mapping[str, ParsedInput]) -> dict[str, ParsedInput]:
    """Return all that a calculation is given, without whether it was typed."""
    return {name: _as_typed(one) for name, one in readings.items() if one.applies}


def _as_typed(one: ParsedInput) -> ParsedInput:
    return replace(one, given=True, rows=tuple(tuple(map(_as_typed, row)) for row in one.rows))

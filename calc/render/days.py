"""Some days of a bank, as data ready to draw, in words and as a table."""

from dataclasses import dataclass
from functools import lru_cache

from calc.render.html import Markup, el
from calc.units.compare import at_most
from calc.units.kinds import ENERGY, RATIO
from calc.units.quantities import from_base
from calc.units.shown import grouped, quantity_text, rounded

DAY = 24  # h
BLOCK = 3  # hours: as narrow as a bar may be for its pattern to be seen on a phone
_DIGITS = 3


@dataclass(frozen=True)
class Flow:
    """Energies [J] by the hour under their word, and their sum as shown."""

    words: str
    hours: tuple[float, ...]
    total: str

    @property
    def any(self) -> bool:
        return max(self.hours, default=0.0) > 0

    @property
    def blocks(self) -> tuple[float, ...]:
        return tuple(sum(self.hours[at : at + BLOCK]) for at in range(0, len(self.hours), BLOCK))

    @property
    def said(self) -> str:
        return f"{self.words} {self.total}"


@dataclass(frozen=True)
class Days:
    """All that is drawn: shares [0..1], nights [s since the first midnight], energies."""

    states: tuple[float, ...]
    lowest: str
    floor: float
    floor_shown: str
    nights: tuple[tuple[float, float], ...]
    sources: tuple[Flow, ...]
    load: Flow
    caption: str

    @property
    def hours(self) -> int:
        return len(self.states) - 1

    @property
    def low_hour(self) -> int:
        return self.states.index(min(self.states))

    @property
    def dry(self) -> tuple[tuple[int, int], ...]:
        """Return the spans of hours that begin and end at the floor or under it."""
        spans: list[tuple[int, int]] = []
        low = [at_most(share, self.floor) for share in self.states]
        for hour in range(self.hours):
            if low[hour] and low[hour + 1]:
                joins = spans and spans[-1][1] == hour
                spans.append((spans.pop()[0] if joins else hour, hour + 1))
        return tuple(spans)

    @property
    def dry_time(self) -> int:
        """Return for how many hours it is so."""
        return sum(end - start for start, end in self.dry)


def alternative(days: Days) -> str:
    """Return the picture in words."""
    brought = ", ".join(flow.said if flow.any else f"{flow.words} nothing" for flow in days.sources)
    empty = f"it counts as empty at {days.floor_shown}"
    if days.dry:
        empty += f" and is so for {days.dry_time} h"
    if min(days.states) < days.floor <= days.states[0]:
        empty += "; nothing is drawn below, but it still loses a little by itself"
    return (
        f"Bank over {days.hours // DAY} days: {_share(days.states[0])} at the start, lowest"
        f" {days.lowest} on {_when(days.low_hour, days.hours)}, {_share(days.states[-1])} at the"
        f" end; {empty}. Brought in: {brought}. The {days.load.said}."
    )


def _when(hour: int, last: int) -> str:
    """Return an hour as a day and a time of day; the end of the last day is its 24:00."""
    day, time = (hour // DAY, hour % DAY) if hour < last else (hour // DAY - 1, DAY)
    return f"day {day + 1} at {time:02d}:00"


def _share(share: float) -> str:
    return quantity_text(share, RATIO)


def days_table(days: Days) -> Markup:
    """Return the figures behind the drawing, folded: a line for each block of hours."""
    unit = ENERGY.units[0]
    flows = [flow for flow in days.sources if flow.any] + [days.load]
    columns = [[_energy(sum_, unit.name) for sum_ in flow.blocks] for flow in flows]
    heads = ["from", "bank then", *(flow.words for flow in flows)]
    bodies = [
        el(
            "tbody",
            el("tr", el("th", f"Day {day + 1}", scope="rowgroup", colspan=len(heads))),
            *(
                _line(
                    f"{BLOCK * block % DAY:02d}:00",
                    _share(days.states[BLOCK * block]),
                    *(column[block] for column in columns),
                )
                for block in range(day * DAY // BLOCK, (day + 1) * DAY // BLOCK)
            ),
        )
        for day in range(days.hours // DAY)
    ]
    label = f"{unit.symbol} each {BLOCK} h, and totals"
    sums = [flow.total.removesuffix(unit.symbol).rstrip() for flow in flows]
    table = el(
        "table",
        el("caption", label),
        el("thead", el("tr", *(el("th", head, scope="col") for head in heads))),
        *bodies,
        el("tfoot", _line("end", _share(days.states[-1]), *sums)),
        class_="lw-table lw-hours",
    )
    region = el("div", table, class_="lw-scroll", tabindex="0", role="group", aria_label=label)
    return el("details", el("summary", f"Every {BLOCK} h in numbers"), region, data_fold="hours")


def _line(name: str, *cells: str) -> Markup:
    return el("tr", el("th", name, scope="row"), *map(_cell, cells))


@lru_cache(maxsize=128)  # most hours bring nothing, and what comes again and again is alike
def _cell(words: str) -> Markup:
    return el("td", words)


def _energy(energy: float, unit: str) -> str:
    return grouped(rounded(from_base(energy, ENERGY, unit), _DIGITS)) if energy else "0"

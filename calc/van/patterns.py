"""Trips and seasons: each pattern of use worked by the worksheet of weeks, at once or in full."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from calc.units.si import Joules, Seconds, Share
from calc.van.bind import filled
from calc.van.record import Part, Van
from calc.van.told import label_of
from calc.van.worked import Outcome, attempted, refusal, worked
from calc.worksheet.answer import Answer

SHEET = "week-ahead"


@dataclass(frozen=True)
class Month:
    """The same use in one month: what the panels offer in a day [J], and when the bank is empty."""

    name: str
    sun: Joules
    outlook: str


@dataclass(frozen=True)
class WayOut:
    """One change, or two together, and whether it carries the pattern."""

    name: str
    asks: str
    enough: bool
    lowest: Share

    @property
    def combined(self) -> bool:
        """Whether it is two changes together."""
        return " and " in self.name


@dataclass(frozen=True)
class Worked:
    """A pattern as worked: by the `texts` of its worksheet, or why it is not.

    `lacking` names the values that are not known. What is quick is there at once; the year by
    months, the recovery and the ways out are worked when they are asked for.
    """

    part: Part
    texts: Mapping[str, str]
    lacking: tuple[str, ...]
    problem: str
    quick: Outcome | None

    @property
    def verdict(self) -> str:
        """Fine, caution or stop; nothing where it is not worked."""
        return self.quick.verdict if self.quick else ""

    @property
    def sentence(self) -> str:
        """The verdict in words, or why there is none."""
        if self.quick:
            return self.quick.sentence
        return self.problem or f"Not calculated: {', '.join(self.lacking)} not known."

    @property
    def lowest(self) -> Share | None:
        """The lowest state of the bank."""
        return self.quick.values["lowest_state"] if self.quick else None

    @property
    def empty_after(self) -> Seconds | None:
        """When the bank is empty [s], None where it is not."""
        return self.quick.values["empty_after"] if self.quick else None

    @cached_property
    def full(self) -> Answer | None:
        """The whole answer, with everything that takes time."""
        return worked(SHEET, self.texts) if self.quick else None

    @property
    def recovery(self) -> Seconds | None:
        """How long the bank takes to be full again after the trip [s]."""
        return self.quick.values["recovery_time"] if self.quick else None

    @property
    def months(self) -> tuple[Month, ...]:
        """The year by months, each with its own sky."""
        rows = (self.full.values["months"] if self.full else None) or ()
        return tuple(Month(row.name, row.sun, row.outlook) for row in rows)

    @property
    def ways_out(self) -> tuple[WayOut, ...]:
        """What would carry it, the smallest change first, pairs of changes among them."""
        rows = (self.full.values["remedies"] if self.full else None) or ()
        made = (WayOut(row.name, row.asks, row.works, row.lowest) for row in rows)
        return tuple(one for one in made if one.enough)


def worked_patterns(van: Van) -> tuple[Worked, ...]:
    """Return each pattern of use of a van as worked."""
    return tuple(worked_pattern(van, part) for part in van.all("patterns"))


def worked_pattern(van: Van, part: Part) -> Worked:
    """Return one pattern of use as worked."""
    own = filled(van, SHEET, part)
    lacking = tuple(dict.fromkeys(label_of(van, own.missing[one], part) for one in own.lacking))
    if lacking:
        return Worked(part, own.texts, lacking, "", None)
    quick = attempted(SHEET, own.texts)
    problem = "" if quick else refusal(SHEET, own.texts)
    return Worked(part, own.texts, (), problem, quick)

"""What a van's record holds at one place: a value with its state, and who says so by what."""

from __future__ import annotations

from dataclasses import dataclass

from calc.units.covered import Enumeration
from calc.worksheet.fields import ParsedInput

NOT_SEEN, NONE = "not seen", "none"  # as they are written in a file


class State(Enumeration):
    """How it stands with a value. Only what is given or a default can be worked with.

    BLANK is a value that nobody has typed and that has no usual one: in an inspection it is
    NOT_SEEN instead, for there nothing is taken as usual.
    """

    GIVEN = "given"
    DEFAULT = "default"
    NOT_SEEN = "not-seen"
    NONE = "none"
    BLANK = "blank"


class Stage(Enumeration):
    """When a value was stated. The later judges: measured before found before planned."""

    PLANNED = "planned"
    FOUND = "found"
    MEASURED = "measured"


class Evidence(Enumeration):
    """By what a value is known. What was only told passes no safety item."""

    PLAN = "plan"
    MEASURED = "measured"
    SEEN = "seen"
    LABEL = "label"
    TOLD = "told"


@dataclass(frozen=True, kw_only=True)
class Statement:
    """One value as somebody stated it: `text` as typed, `not seen` or `none` among it."""

    stage: Stage
    text: str
    evidence: Evidence = Evidence.PLAN
    who: str = ""
    when: str = ""  # a date, 2026-11-20
    instrument: str = ""


@dataclass(frozen=True, kw_only=True)
class Value:
    """What stands at one place of a record.

    `reading` is what the text that judges says, by the field of its key; None unless the state is
    GIVEN or DEFAULT. `statements` are all that was stated, by their stages and dates, the last
    of which judges. `usual` is the text of a default. `only_planned` tells that an inspection has
    nothing but the plan's word for it.
    """

    state: State
    reading: ParsedInput | None = None
    statements: tuple[Statement, ...] = ()
    usual: str = ""
    only_planned: bool = False

    @property
    def text(self) -> str:
        """The text that judges, as it would be typed into a worksheet; nothing if there is none."""
        return self.statements[-1].text if self.statements else self.usual

    @property
    def known(self) -> bool:
        """Whether there is a value to work with."""
        return self.state in (State.GIVEN, State.DEFAULT)

    @property
    def proven(self) -> bool:
        """Whether it is known by more than hearsay: told passes no safety item.

        Nor does what an inspection finds in the plan alone.
        """
        if self.state not in (State.GIVEN, State.NONE) or self.only_planned:
            return False
        return not self.statements or self.statements[-1].evidence is not Evidence.TOLD

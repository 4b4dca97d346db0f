"""The rows of week-ahead's tables, and its changes in words."""

from dataclasses import dataclass, replace

from calc.energy import remedies
from calc.energy.balance import HOUR, HOURS
from calc.energy.outlook import HORIZON, Outlook
from calc.energy.remedies import Remedy
from calc.energy.week import Plan
from calc.units.kinds import CHARGE, POWER, TIME
from calc.units.shown import DOWN, UP, quantity_text

NEVER = "never"


@dataclass(frozen=True, kw_only=True)
class Brought:
    """What one source offered and brought over the week [J]."""

    name: str
    offered: float
    brought: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Lost:
    """Energy lost over the week [J] to one cause."""

    name: str
    energy: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class OneDay:
    """One day of the week: its states [0..1], and energies [J] brought and taken by the loads."""

    name: str
    lowest: float
    highest: float
    end: float
    brought: float
    taken: float

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Month:
    """One month: what the array offers in a day [J], when the bank is empty [s], and in words."""

    name: str
    sun: float
    empty: float | None
    outlook: str

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, kw_only=True)
class Change:
    """One change in words, the share [0..1] that it asks, the lowest state with it, what follows."""

    name: str
    asks: str
    share: float
    lowest: float
    outlook: str
    works: bool

    @property
    def enough(self) -> str:
        """Whether it carries the week, in a word."""
        return "yes" if self.works else "no"

    def __str__(self) -> str:
        return f"{self.name}, {self.asks}"


def said(outlook: Outlook) -> str:
    if outlook.holds:
        return NEVER
    if outlook.empty == 0.0:
        return "at once"
    if outlook.empty is None:
        return f"after more than {HORIZON} days"
    return f"after {_time(outlook.empty)}"


def then(one: Change) -> str:
    """Return what follows a change that works, as the end of a sentence."""
    return "never empty" if one.outlook == NEVER else f"empty {one.outlook}"


def _time(seconds: float) -> str:
    unit = "day" if seconds >= 2 * HOURS * HOUR else "hour"
    return quantity_text(seconds, TIME, digits=2 if unit == "day" else 3, way=DOWN, unit=unit)


def change(plan: Plan, one: Remedy) -> Change:
    """Return a change of `plan` in words.

    The lowest state is told as far as loads draw it down: below the floor goes only what the bank
    loses by itself.
    """
    name, asks = _words(plan, one)
    if one.besides:
        other, _ = _words(plan, replace(one, kind=one.besides))
        name = f"{other} and {name}"
    return Change(name=name, asks=asks, share=one.share, lowest=max(one.lowest, plan.bank.floor), outlook=said(one.outlook), works=one.works)


def _words(plan: Plan, one: Remedy) -> tuple[str, str]:
    """Return what is changed and to what, rounded to what is enough."""
    amount = one.amount or 0.0
    match one.kind:
        case remedies.DRIVE:
            hours = [quantity_text(time, TIME, way=UP, unit="hour") for time in (amount, plan.drive_hours)]
            return "more driving", _instead(f"{hours[0]} a day", plan.drive_hours and hours[1])
        case remedies.SHORE:
            return "nights on a lead", "every night" if amount == 1 else f"every {amount:g} nights"
        case remedies.ARRAY:
            return "more array", _instead(quantity_text(amount, POWER, way=UP), plan.array and quantity_text(plan.array, POWER))
        case remedies.BANK:
            return "more bank", _instead(quantity_text(amount, CHARGE, way=UP), quantity_text(plan.capacity, CHARGE))
        case remedies.OFF:
            return "inverter off while not used", "switched by hand"
        case remedies.ROUTE:
            return "the inverter’s loads on battery voltage", "with the same watts"
        case remedies.HALF:
            return one.load, "half as long"
    return one.load, "left out"


def _instead(new: str, old: str | float) -> str:
    return f"{new} instead of {old or 'none'}"
